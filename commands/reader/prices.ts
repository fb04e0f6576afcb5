/**
 * The one price list. A reading explains every token of a line by exactly one thing, each at a price; the cheapest reading wins. The unit is about what an
 * unknown word costs. Prices say what is unlikely, never what is forbidden.
 */
export const prices = {
  /** A token that nothing of the reading explains, by what it is. */
  left: {
    filler: 0.04,
    little: 0.08,
    relation: 0.12,
    mark: 0.03,
    everyday: 0.2,
    unknown: 0.55,
    change: 0.7,
    catalog: 1.3,
    place: 1.3,
    name: 1.5,
    unit: 1,
    gear: 2.2,
    amount: 4,
    size: 4,
    cue: 0.1,
    note: 0.3,
  },
  /** A gap inside a phrase, on top of what its tokens cost. */
  gap: 0.12,
  /** A name: each of its words that the line leaves out, a slip mended, one rank further down its entry's list. */
  name: { missing: 0.75, missingOfLong: 0.45, mended: 0.35, rank: 0.05 },
  /** What an amount is to what it is told of. */
  value: { near: 0.35, otherUnit: 0.35, outside: 3, sign: 2, wordy: 0.3 },
  /** A place that the entry has no use for; a place not said where there are several; a place taken from a neighbour. */
  place: { unused: 1.2, unsaid: 0.25, carried: 0.15 },
  /** Told without a name, by its unit: on top, one step down the list of what it may be. */
  nameless: { unit: 0.7, step: 0.45, size: 0.2 },
  /** A result told as a fact, an input asked for. */
  role: { resultTold: 0.5, inputAsked: 0.35, smallFigure: 0.15, nonNumber: 0.6 },
  /** What a request needs and has not, or has and cannot use. */
  request: {
    noCue: 0.5,
    wrongCue: 1.4,
    questionTold: 2.2,
    unused: 2.5,
    oneSide: 2,
    extraAsked: 0.4,
    guessedAsk: 1.1,
    depth: 0.06,
    emptySide: 1.5,
    twice: 1.5,
    mixedSides: 0.6,
    cut: 0.35,
  },
  /** By the calculation graph: what is asked has no value; a told thing that nothing asked reads; the sum needs the saved car. */
  graph: { noValue: 1.6, unread: 1.3, needsCar: 0.4, sought: 1.5 },
} as const;
/** Acting needs this much between the cheapest reading and the next one that answers otherwise. */
export const surely = 0.3;
/** A reading dearer than this for the line's length is none. */
export const dearest = (tokens: number): number => 3.2 + 0.16 * tokens;
