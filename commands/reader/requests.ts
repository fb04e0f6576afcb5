/** What a row may ask for: one builder for each kind of request. Each says what the request costs beyond its words, or that the row is none of it. */
import { canBeTold, isInput } from '../../core/catalog.js';
import type { Clause, Item, Reading } from '../reading.js';
import type { Cues } from './cues.js';
import type { AskedAs, Gathered, ToldAs } from './gather.js';
import { prices } from './prices.js';

export interface Candidate {
  readonly reading: Reading;
  readonly price: number;
  readonly left: readonly number[];
  /** What it was made of, for the trace. */
  readonly gathered: Gathered;
  readonly kind: string;
}
interface Line {
  readonly gathered: Gathered;
  readonly cues: Cues;
  readonly text: string;
  /** Whether the asker has a car in use. */
  readonly hasCar: boolean;
  readonly ownCar: number | undefined;
}
type Built = { readonly reading: Partial<Reading> & Pick<Reading, 'verb' | 'sides' | 'tried'>; readonly price: number } | undefined;
const { request } = prices;
const isCondition = (item: Item): boolean => item.entry.scope === 'question';
const itemsOf = (told: readonly ToldAs[]): readonly Item[] => told.flatMap(({ fact }) => fact.items);
const askedItems = (asked: readonly AskedAs[]): readonly Item[] => unique(asked.flatMap(({ items }) => items));
const keyOf = (item: Item): string => `${item.entry.path} ${item.places.join('+')}`;
const unique = (items: readonly Item[]): readonly Item[] =>
  items.filter((item, n) => items.findIndex((other) => keyOf(other) === keyOf(item)) === n);
/** A cue that is there costs nothing, one that is missing a little, one for something else more. */
const cued = (strength: number): number => (1 - strength) * request.noCue;
const twice = (items: readonly Item[]): number => {
  const keys = items.flatMap((item) => item.places.map((place) => `${place} ${item.entry.path}`));
  return (keys.length - new Set(keys).size) * request.twice;
};
const alternatives = ({ told }: Gathered): readonly ToldAs[] => told.filter(({ fact }) => fact.others !== undefined);
const clause = (items: readonly Item[], { subjects }: Gathered, side = 0): Clause => ({ items, subjects: subjects[side] ?? [] });

/** `what is ...`, with facts for the answer only. */
function ask({ gathered, cues }: Line): Built {
  const asked = askedItems(gathered.asked);
  if (asked.length === 0 || gathered.sides > 1) return undefined;
  const tried = itemsOf(gathered.told);
  const bareName = tried.length === 0 ? 0.1 : request.noCue;
  const plainly = Math.max(cues.for.ask, cues.question ? 0.9 : 0);
  const price =
    (1 - plainly) * bareName +
    (new Set(asked.map(({ entry }) => entry)).size - 1) * request.extraAsked +
    alternatives(gathered).length * request.unused +
    twice(tried) +
    (tried.length > 0 && !cues.question ? cues.for.try * 0.5 : 0) +
    asked.filter(({ entry }) => entry.scope === 'question').length;
  return { price, reading: { verb: 'show', sides: [clause(asked, gathered)], tried } };
}
/** Facts that are recorded. */
function tell({ gathered, cues }: Line): Built {
  if (gathered.told.length === 0 || gathered.asked.length > 0 || gathered.sides > 1) return undefined;
  const facts = gathered.told.flatMap(({ fact }) => {
    // `from 15 to 19`: what it is now.
    const last = fact.others?.at(-1);
    return last ?? fact.items;
  });
  const own = facts.filter((item) => !isCondition(item));
  const conditions = facts.filter(isCondition);
  if (own.length === 0) return undefined;
  const undecided = alternatives(gathered).filter(({ fact }) => fact.joined === 'versus').length * request.unused;
  const price =
    0.15 * (1 - cues.for.set) +
    (cues.question ? request.questionTold : 0) +
    cues.for.ask * request.wrongCue * 0.7 +
    cues.for.try * request.wrongCue +
    cues.for.find * 0.3 +
    (gathered.told.some(({ role }) => role === 'goal') ? request.wrongCue * 0.5 : 0) +
    conditions.length * request.mixedSides +
    undecided +
    twice(own) +
    gathered.told.filter(({ fact }) => !fact.named).length * 0.15;
  return { price, reading: { verb: 'set', sides: [clause(own, gathered)], tried: conditions } };
}
/** A change that is only looked at. */
function tryOut({ gathered, cues }: Line): Built {
  if (gathered.told.length === 0 || gathered.sides > 1) return undefined;
  const facts = gathered.told.flatMap(({ fact }) => fact.others?.at(-1) ?? fact.items);
  const changed = facts.filter((item) => !isCondition(item));
  if (changed.length === 0) return undefined;
  const asked = askedItems(gathered.asked);
  const plainly = Math.max(cues.for.try, cues.question && asked.length === 0 ? 0.8 : 0);
  const price =
    (1 - plainly) * 1.2 +
    alternatives(gathered).filter(({ fact }) => fact.joined === 'versus').length * request.unused +
    (asked.length > 0 ? 0.3 + (1 - cues.for.try) * 0.5 : 0) +
    twice(changed);
  return { price, reading: { verb: 'try', sides: [clause([...asked, ...changed], gathered)], tried: facts.filter(isCondition) } };
}
/** Two or more sides: parted by a word, or the values of one fact. */
function sides(line: Line): Built {
  const { gathered, cues } = line;
  const asked = askedItems(gathered.asked);
  const parted = gathered.sides > 1 ? byWord(gathered) : (byValue(gathered) ?? byRepeat(gathered) ?? byPlace(gathered));
  if (!parted) return undefined;
  const tried = gathered.told
    .filter(({ role, fact }) => role === 'with' || role === 'at' || fact.items.every(isCondition))
    .flatMap(({ fact }) => fact.items);
  const empty = parted.sides.filter(({ items, subjects }) => items.length + subjects.length === 0).length;
  const shared = parted.sides.map((side) => ({
    ...side,
    items: unique([
      ...asked,
      ...side.items.filter((item) => item.said !== undefined),
      ...side.items.filter((item) => item.said === undefined),
    ]),
  }));
  const price = parted.price + cued(Math.max(cues.for.compare, parted.plain ? 1 : 0)) + empty * request.emptySide;
  return { price, reading: { verb: 'compare', sides: shared, tried, ...(gathered.replacing ? { replacing: true as const } : {}) } };
}
interface Parted {
  readonly sides: readonly Clause[];
  readonly price: number;
  /** The words say that these are sides. */
  readonly plain: boolean;
}
const onlyFacts = (told: readonly ToldAs[]): readonly ToldAs[] =>
  told.filter(({ role, fact }) => role !== 'with' && role !== 'at' && !fact.items.every(isCondition));
function byWord(gathered: Gathered): Parted {
  const made = Array.from(
    { length: gathered.sides },
    (_, side): Clause => clause(itemsOf(onlyFacts(gathered.told).filter((one) => one.side === side)), gathered, side),
  );
  return { sides: made, price: 0, plain: true };
}
function byValue(gathered: Gathered): Parted | undefined {
  const [choice, another] = alternatives(gathered);
  if (!choice || another) return undefined;
  const common = itemsOf(onlyFacts(gathered.told).filter((one) => one !== choice));
  const ways = [choice.fact.items, ...(choice.fact.others ?? [])];
  return { sides: ways.map((items) => clause([...common, ...items], gathered)), price: 0, plain: choice.fact.joined !== undefined };
}
/** The same thing told twice: `22 bar, 24 bar, which is stiffer`. */
function byRepeat(gathered: Gathered): Parted | undefined {
  const facts = onlyFacts(gathered.told);
  const repeated = facts.filter(({ fact }) =>
    facts.some((other) => other.fact !== fact && keyOf(other.fact.items[0]!) === keyOf(fact.items[0]!)),
  );
  if (repeated.length < 2 || repeated.length > 4) return undefined;
  if (new Set(repeated.map(({ fact }) => keyOf(fact.items[0]!))).size > 1) return undefined;
  const common = itemsOf(facts.filter((one) => !repeated.includes(one)));
  return { sides: repeated.map(({ fact }) => clause([...common, ...fact.items], gathered)), price: 0.4, plain: false };
}
/** `camber front or rear`: one thing asked at two places. */
function byPlace(gathered: Gathered): Parted | undefined {
  const [either] = gathered.asked.filter(({ alternatives }) => alternatives);
  return either && gathered.told.length === 0
    ? { sides: [clause([], gathered), clause([], gathered)], price: -request.emptySide * 2 + 0.2, plain: true }
    : undefined;
}
/** What reaches a target. */
function find({ gathered, cues }: Line): Built {
  if (gathered.sides > 1) return undefined;
  const isGoal = ({ fact, role }: ToldAs): boolean =>
    fact.items.length === 1 &&
    (role === 'goal' || !isInput(fact.items[0]!.entry)) &&
    canBeTold(fact.items[0]!.entry) &&
    !isCondition(fact.items[0]!);
  const goals = gathered.told
    .filter(isGoal)
    .sort((a, b) => Number(isInput(a.fact.items[0]!.entry)) - Number(isInput(b.fact.items[0]!.entry)));
  const [goal] = goals;
  if (!goal) return undefined;
  const sought = askedItems(gathered.asked).filter(({ entry }) => isInput(entry) && entry.scope !== 'question');
  const lost = askedItems(gathered.asked).length - sought.length;
  const tried = itemsOf(gathered.told.filter((one) => one !== goal));
  const target = goal.fact.items[0]!;
  const price =
    cued(Math.max(cues.for.find, cues.for.ask * 0.8)) +
    (sought.length === 0 ? 1.2 : 0) +
    Math.max(0, new Set(sought.map(({ entry }) => entry)).size - 1) * request.extraAsked +
    lost * 0.8 +
    (isInput(target.entry) ? 1.5 : 0) +
    (goal.role === 'goal' ? -0.25 : 0.2) -
    (isInput(target.entry) ? 0 : Math.min(prices.role.resultTold, 0.5)) +
    alternatives(gathered).length * request.unused;
  return { price, reading: { verb: 'find', sides: [clause(sought, gathered)], tried, goal: target } };
}
/** Why, how sure: of a result. */
const ofResult =
  (verb: 'why' | 'doubt') =>
  ({ gathered, cues }: Line): Built => {
    if (cues.for[verb] === 0 || gathered.sides > 1) return undefined;
    const asked = askedItems(gathered.asked);
    const tried = itemsOf(gathered.told);
    if (asked.length === 0) return undefined;
    return {
      price: cued(cues.for[verb]) + (asked.length - 1) * request.extraAsked - 0.2,
      reading: { verb, sides: [clause(asked, gathered)], tried },
    };
  };
function draw({ gathered, cues }: Line): Built {
  if (cues.for.draw === 0 || gathered.sides > 2) return undefined;
  const range = gathered.told.find(({ fact }) => fact.range !== undefined);
  const against = range?.fact.range?.[0] ?? askedItems(gathered.asked.filter(({ role }) => role === 'along'))[0];
  const asked = askedItems(gathered.asked.filter(({ items }) => !against || items[0] !== against));
  if (asked.length === 0) return undefined;
  return {
    price: cued(cues.for.draw) + (against ? 0 : 0.2) - 0.2,
    reading: {
      verb: 'draw',
      sides: [clause(asked, gathered)],
      tried: itemsOf(gathered.told.filter((one) => one !== range)),
      ...(against ? { against } : {}),
    },
  };
}
function showEverything({ gathered, cues }: Line): Built {
  if (!gathered.everything || gathered.asked.length > 0 || gathered.told.length > 0) return undefined;
  const places = gathered.floating.flatMap(({ places }) => places).filter((place) => place === 'front' || place === 'rear');
  return { price: cued(cues.for.ask), reading: { verb: 'show', sides: [clause([], gathered)], tried: [], everything: { places } } };
}
const builders: readonly (readonly [string, (line: Line) => Built])[] = [
  ['ask', ask],
  ['tell', tell],
  ['try', tryOut],
  ['sides', sides],
  ['find', find],
  ['why', ofResult('why')],
  ['doubt', ofResult('doubt')],
  ['draw', draw],
  ['everything', showEverything],
];
export function candidatesOf(line: Line): readonly Candidate[] {
  const { gathered, text } = line;
  return builders.flatMap(([kind, build]): readonly Candidate[] => {
    const built = build(line);
    if (!built) return [];
    const { verb } = built.reading;
    const recorded = verb === 'set' || verb === 'try';
    const unit = gathered.unit !== undefined && !recorded ? { wantedUnit: gathered.unit } : {};
    const lostUnit = gathered.unit !== undefined && recorded ? prices.left.unit : 0;
    const lostEverything = gathered.everything && kind !== 'everything' ? 0.1 : 0;
    const reading: Reading = {
      names: [],
      rest: text,
      echoes: [],
      mended: false,
      ...unit,
      ...(gathered.evidence && verb === 'set' ? { evidence: gathered.evidence } : {}),
      ...built.reading,
    };
    return [{ reading, price: gathered.price + built.price + lostUnit + lostEverything, left: gathered.left, gathered, kind }];
  });
}
