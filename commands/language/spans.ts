/**
 * A section's atoms into items: the cheapest way to cut it into spans of words, places and at most one amount, each naming an entry.
 * Words may stand before or after their amount; a span without words takes the entry of its neighbour, or the one that its dimension allows.
 */
import { isInput } from '../../core/catalog.js';
import type { Dimension } from '../../core/dimensions.js';
import { placesOf } from '../../core/engine.js';
import { meaningsOf } from '../units.js';
import { type Atom, isAmount } from './atom.js';
import { byWords, percent, type Search } from './named.js';
import { byAmount, byNumber } from './nameless.js';
import { type End, placing } from './placing.js';
import type { Candidate, Ground, Mode, Slot, Trouble } from './slots.js';
import { type AmountAtom, atomText, type TextAtom } from './values.js';
import { extras, Worths } from './worths.js';

interface Partial {
  readonly amount: AmountAtom | TextAtom;
  readonly reach: readonly string[] | undefined;
  readonly gear: string | undefined;
  readonly text: () => string;
}
type Piece = { readonly is: 'slot'; readonly slot: Slot } | { readonly is: 'partial'; readonly partial: Partial };
interface Way {
  readonly cost: number;
  readonly piece: Piece | undefined;
  readonly before: Way | undefined;
}
const piecesOf = (way: Way): Piece[] => {
  const pieces: Piece[] = [];
  for (let at: Way | undefined = way; at; at = at.before) if (at.piece) pieces.push(at.piece);
  return pieces.reverse();
};
const waysKept = 16;
const longestSpan = 9;
/** No phrase of the catalogs has more. */
const mostWords = 7;
const ordinalOf = (gear: string): string => gear + (gear === '1' ? 'st' : gear === '2' ? 'nd' : gear === '3' ? 'rd' : 'th');

/** Adds a way to those that end at one place, which stay in order and few. */
function keepCheapest(ways: Way[], way: Way): void {
  const last = ways[ways.length - 1];
  if (ways.length >= waysKept && last && last.cost <= way.cost) return;
  let at = ways.length;
  while (at > 0 && ways[at - 1]!.cost > way.cost) at--;
  ways.splice(at, 0, way);
  if (ways.length > waysKept) ways.pop();
}
class Section {
  readonly #atoms: readonly Atom[];
  readonly #search: Search;
  readonly #hasAmounts: boolean;
  /** Dimensions of what the section's words can name: an amount of another takes no neighbour's words. */
  readonly #named = new Set<Dimension>();

  /** Whether an amount without words may be any entry that its dimension allows: a last resort, and a long search. */
  readonly #wide: boolean;

  constructor(atoms: readonly Atom[], mode: Mode, ground: Ground, wide: boolean) {
    this.#atoms = atoms;
    this.#wide = wide;
    this.#search = { mode, ground, worths: new Worths(ground.preferences) };
    const { holding, phrases } = ground.vocabulary;
    for (const atom of atoms)
      if (atom.is === 'word')
        for (const key of holding.get(atom.word) ?? [])
          for (const { entry } of phrases.get(key) ?? []) if (entry.dimension && isInput(entry)) this.#named.add(entry.dimension);
    this.#hasAmounts = atoms.some((atom) => atom.is === 'amount' || atom.is === 'text');
  }
  /** All ways, the cheapest first. */
  ways(): readonly Way[] {
    const atoms = this.#atoms;
    const best: Way[][] = Array.from({ length: atoms.length + 1 }, () => []);
    best[0]!.push({ cost: 0, piece: undefined, before: undefined });
    for (let from = 0; from < atoms.length; from++) {
      const here = best[from]!;
      if (here.length === 0) continue;
      if (atoms[from]!.is === 'break' || !spannable(atoms[from]!)) {
        for (const way of here) keepCheapest(best[from + 1]!, way);
        continue;
      }
      let amounts = 0;
      let words = 0;
      for (let to = from + 1; to <= atoms.length && to - from <= longestSpan; to++) {
        const last = atoms[to - 1]!;
        if (!spannable(last)) break;
        if (last.is === 'amount' || last.is === 'text') amounts++;
        if (amounts > 1) break;
        if (last.is === 'word' && ++words > mostWords) break;
        for (const { piece, cost } of this.#span(from, to))
          for (const way of here) keepCheapest(best[to]!, { cost: way.cost + cost, piece, before: way });
      }
    }
    return best[atoms.length]!;
  }
  /** What a span can be, with what it costs to believe it. */
  #span(from: number, to: number): { piece: Piece; cost: number }[] {
    const words: string[] = [];
    const placeWords: string[] = [];
    const ends: End[] = [];
    let reach: readonly string[] | undefined;
    let plural = false;
    let amount: AmountAtom | TextAtom | undefined;
    let gear: string | undefined;
    for (const atom of this.#atoms.slice(from, to)) {
      if (atom.is === 'word') {
        // bar anti-roll bar
        if (!words.includes(atom.word)) words.push(atom.word);
      } else if (atom.is === 'place') {
        if (placeWords.includes(atom.word)) return [];
        const before: readonly string[] | undefined = reach;
        reach = before ? before.filter((place) => atom.places.includes(place)) : atom.places;
        placeWords.push(atom.word);
        ends.push(atom);
        plural ||= atom.plural;
      } else if (atom.is === 'gear') {
        if (gear !== undefined) return [];
        gear = atom.gear;
      } else if (atom.is === 'amount' || atom.is === 'text') amount = atom;
    }
    // `front rear` is no place; `rear front view lever` is one of a name.
    if (reach?.length === 0 && words.length === 0) return [];
    const text = () => this.#textOf(from, to);
    const slot = (candidates: readonly Candidate[], trouble?: Trouble): Piece => ({
      is: 'slot',
      slot: { candidates, text, words, ...(trouble ? { trouble } : {}), ...(gear === undefined ? {} : { gear }) },
    });
    if (words.length === 0 && amount) {
      const out: { piece: Piece; cost: number }[] = [];
      const shared =
        amount.is === 'text' ||
        amount.token.unit === undefined ||
        meaningsOf(amount.token.unit).some(({ dimension }) => this.#named.has(dimension) || dimension === 'ratio');
      if (shared) out.push({ piece: { is: 'partial', partial: { amount, reach, gear, text } }, cost: 1.4 });
      // Words that only name an end can be an entry's own: 52.5% front.
      const own =
        isAmount(amount) && placeWords.length > 0 && percent(amount) ? byWords(this.#search, [], ends, reach, gear, amount) : undefined;
      if (own && own.candidates.length > 0) out.push({ piece: slot(own.candidates), cost: 1 });
      const slang = isAmount(amount) && (plural || amount.token.plural) ? byNumber(this.#search, amount, reach) : undefined;
      if (slang) out.push({ piece: slot(slang.candidates, slang.trouble), cost: 1 });
      // A unit leaves few entries to look at.
      if (!this.#wide && amount.is === 'amount' && gear === undefined && amount.token.unit === undefined) return out;
      const alone = byAmount(this.#search, amount, reach, gear);
      if (alone.candidates.length > 0)
        out.push({ piece: slot(alone.candidates), cost: gear === undefined && amount.is === 'amount' ? 3 : 1.2 });
      else out.push({ piece: slot([], alone.trouble), cost: amount.is === 'text' ? 10 : 14 });
      return out;
    }
    if (words.length === 0) {
      // A place or a gear alone says where, not what.
      const where = placeWords.join(' ') || (gear === undefined ? '' : ordinalOf(gear));
      return to - from === 1 ? [{ piece: slot([], { kind: 'alone', why: () => where }), cost: 6 }] : [];
    }
    const found = byWords(this.#search, words, ends, reach, gear, amount);
    const out: { piece: Piece; cost: number }[] = [];
    if (found.candidates.length > 0) {
      const inputOnly = found.candidates.every((one) => isInput(one.item.entry) && one.item.said === undefined);
      const bare = amount === undefined && inputOnly && this.#hasAmounts && this.#search.mode !== 'goal' ? 11 : 0;
      out.push({ piece: slot(found.candidates), cost: 1 + found.cost + bare });
    } else if (found.trouble)
      out.push({
        piece: slot([], found.trouble),
        cost: (found.trouble.kind === 'kind' ? 14 : found.trouble.kind === 'word' ? 15 : 10) + found.cost - 0.1 * words.length,
      });
    if (to - from === 1) out.push({ piece: slot([], { kind: 'word', why: () => '' }), cost: 16 });
    return out;
  }
  #textOf(from: number, to: number): string {
    return this.#atoms
      .slice(from, to)
      .map((atom) =>
        atom.is === 'amount'
          ? atomText(atom)
          : atom.is === 'text'
            ? atom.text
            : atom.is === 'word'
              ? atom.typed
              : atom.is === 'place'
                ? atom.word
                : atom.is === 'gear'
                  ? ordinalOf(atom.gear)
                  : '',
      )
      .join(' ')
      .trim();
  }
  /** The spans without words take the entry of the one before, else of the one after; undefined where that can't be. `extra` is what it costs. */
  fill(way: Way): { readonly slots: readonly Slot[]; readonly extra: number } | undefined {
    const pieces = piecesOf(way);
    const slots: (Slot | undefined)[] = pieces.map((piece) => (piece.is === 'slot' ? piece.slot : undefined));
    let extra = 0;
    const take = (n: number, neighbour: Slot | undefined): void => {
      const piece = pieces[n];
      if (piece?.is !== 'partial' || !neighbour) return;
      const { amount, reach, gear, text } = piece.partial;
      let trouble: Trouble | undefined;
      const candidates = neighbour.candidates.flatMap(({ item }): Candidate[] => {
        if (item.said === undefined || item.entry.scope === 'question') return [];
        const placed = reach === undefined && gear === undefined && item.placed && placesOf(item.entry.scope).length > 1;
        const where = placed ? { places: item.places, placed: true } : placing(item.entry, reach, gear);
        const value = where && this.#search.worths.of(item.entry, amount);
        if (!where || !value) return [];
        if ('bad' in value) {
          if (value.bad === 'range' || value.bad === 'negative')
            trouble ??= {
              kind: value.bad,
              why: value.why,
              entry: item.entry,
              places: where.places,
              ...(isAmount(amount) ? { amount } : {}),
            };
          return [];
        }
        return [{ item: { entry: item.entry, ...where, said: value.said }, unlikely: value.unlikely, ...extras(value) }];
      });
      if (candidates.length === 0 && !trouble) return;
      if (candidates.length === 0) extra += 0.5;
      slots[n] = { candidates, text, ...(candidates.length === 0 && trouble ? { trouble } : {}) };
    };
    // What is wrong with a neighbour's entry is wrong here too, so slots in trouble pass on their neighbour's.
    const source = (n: number, step: 1 | -1): Slot | undefined => {
      for (let k = n + step; k >= 0 && k < slots.length; k += step) if (slots[k] && !slots[k]!.trouble) return slots[k];
      return undefined;
    };
    for (let n = 0; n < slots.length; n++) if (!slots[n]) take(n, source(n, -1));
    for (let n = slots.length - 1; n >= 0; n--) if (!slots[n]) take(n, source(n, 1));
    return slots.every((slot) => slot !== undefined) ? { slots, extra } : undefined;
  }
}
const spannable = (atom: Atom): boolean =>
  atom.is === 'word' || atom.is === 'place' || atom.is === 'gear' || atom.is === 'amount' || atom.is === 'text';
const same = (a: readonly Slot[], b: readonly Slot[]): boolean => signature(a) === signature(b);
const signature = (slots: readonly Slot[]): string =>
  slots
    .map(
      (slot) =>
        slot.candidates
          .map(({ item }) => `${item.places.join('+')}.${item.entry.path}=${JSON.stringify(item.said?.value)}${item.said?.to ?? ''}`)
          .join('|') + (slot.trouble ? `!${slot.text()}` : ''),
    )
    .sort()
    .join(';');

/** Above this a reading holds a word that nothing took, or an amount that is none. */
const doubtful = 8;
/** The readings of a section that cost least: one, or several that cost the same and differ. */
export function readings(atoms: readonly Atom[], mode: Mode, ground: Ground, lastResorts = true): readonly (readonly Slot[])[] {
  const near = cheapest(new Section(atoms, mode, ground, false));
  if (!lastResorts || (near.cost < doubtful && near.out.every((slots) => slots.every((slot) => !slot.trouble)))) return near.out;
  return cheapest(new Section(atoms, mode, ground, true)).out;
}
function cheapest(section: Section): { readonly cost: number; readonly out: readonly (readonly Slot[])[] } {
  let cost = Number.POSITIVE_INFINITY;
  let out: (readonly Slot[])[] = [];
  for (const way of section.ways()) {
    if (way.cost > cost + 1e-6) break;
    const found = section.fill(way);
    if (!found || way.cost + found.extra > cost + 1e-6) continue;
    if (way.cost + found.extra < cost - 1e-6) {
      cost = way.cost + found.extra;
      out = [found.slots];
    } else if (!out.some((slots) => same(slots, found.slots))) out.push(found.slots);
  }
  return { cost, out };
}
