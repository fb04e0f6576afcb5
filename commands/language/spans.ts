/**
 * A section's atoms into items: the cheapest way to cut it into spans of words, places and at most one amount, each naming an entry.
 * Words may stand before or after their amount; a span without words takes the entry of its neighbour, or the one that its dimension allows.
 */
import { type Entry, isInput } from '../../core/catalog.js';
import type { Dimension } from '../../core/dimensions.js';
import { placesOf } from '../../core/engine.js';
import type { Preferences } from '../context.js';
import type { Item, Said } from '../reading.js';
import { meaningsOf } from '../units.js';
import { nouns, stem } from '../words.js';
import type { Atom } from './atom.js';
import { type AmountAtom, atomText, canBe, type TextAtom, textWorth, type Worth, worth } from './values.js';
import { keyOf, type Phrase, stemsOf, type Vocabulary } from './vocabulary.js';

/** What a section is for: it decides between an input and a figure of one name, and where a bare amount looks first. */
export type Mode = 'record' | 'ask' | 'goal' | 'condition';
export interface Trouble {
  readonly kind: 'dimension' | 'range' | 'negative' | 'kind' | 'unit' | 'place' | 'word' | 'alone';
  readonly why: () => string;
  readonly entry?: Entry;
  readonly places?: readonly string[];
  readonly units?: readonly string[];
  readonly amount?: AmountAtom;
}
export interface Candidate {
  readonly item: Item;
  /** A list, one for each place in their order. */
  readonly each?: readonly Said[];
  readonly note?: string;
  readonly unlikely: boolean;
}
/** One span, read: one candidate, several, or what is wrong with it. */
export interface Slot {
  readonly candidates: readonly Candidate[];
  readonly trouble?: Trouble;
  readonly text: () => string;
  /** The words that named it. */
  readonly words?: readonly string[];
  readonly gear?: string;
}
type Valued = Worth & { readonly each?: readonly Said[] };
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
export interface Ground {
  readonly vocabulary: Vocabulary;
  readonly preferences: Preferences;
  /** The topic of the line, whose word the others may leave out: `bar 22 mm, length 900 mm`. */
  readonly topic?: string;
}
const waysKept = 16;
const longestSpan = 9;
/** No phrase of the catalogs has more. */
const mostWords = 7;
const rank: Readonly<Record<Entry['scope'], number>> = { question: 0, car: 0, gear: 1, axle: 1, corner: 2 };

const isAmount = (atom: Atom | undefined): atom is AmountAtom => atom?.is === 'amount';
const percent = (amount: AmountAtom): boolean =>
  amount.token.unit !== undefined && meaningsOf(amount.token.unit).some((one) => one.dimension === 'ratio' && one.unit.shown === '%');
const ordinalOf = (gear: string): string => gear + (gear === '1' ? 'st' : gear === '2' ? 'nd' : gear === '3' ? 'rd' : 'th');

/** Where an entry can be, given the places that the words left open; undefined when nowhere. */
function placing(
  entry: Entry,
  reach: readonly string[] | undefined,
  gear: string | undefined,
): { places: readonly string[]; placed: boolean } | undefined {
  const all = placesOf(entry.scope);
  if (entry.scope === 'gear') {
    if (reach) return undefined;
    return gear === undefined ? { places: all, placed: false } : all.includes(gear) ? { places: [gear], placed: true } : undefined;
  }
  if (gear !== undefined && entry.scope !== 'question') return undefined;
  if (all.length === 1) return reach ? undefined : { places: all, placed: true };
  if (!reach) return { places: all, placed: false };
  const places = all.filter((place) => reach.includes(place));
  return places.length > 0 ? { places, placed: true } : undefined;
}
/** Adds a way to those that end at one place, which stay in order and few. */
function keepCheapest(ways: Way[], way: Way): void {
  const last = ways[ways.length - 1];
  if (ways.length >= waysKept && last && last.cost <= way.cost) return;
  let at = ways.length;
  while (at > 0 && ways[at - 1]!.cost > way.cost) at--;
  ways.splice(at, 0, way);
  if (ways.length > waysKept) ways.pop();
}
type End = Extract<Atom, { is: 'place' }>;
/** The ways in which place words can be part of an entry's own name, the most of them first, and the places that the others leave. */
function withinNames(ends: readonly End[]): readonly { readonly taken: readonly string[]; readonly left: readonly string[] | undefined }[] {
  const ways = Array.from({ length: 2 ** Math.min(ends.length, 3) }, (_, mask) => {
    const rest = ends.filter((_end, n) => (mask & (1 << n)) === 0);
    const left = rest.reduce<readonly string[] | undefined>(
      (places, end) => (places ? places.filter((place) => end.places.includes(place)) : end.places),
      undefined,
    );
    return { taken: ends.filter((_end, n) => (mask & (1 << n)) !== 0).map(({ word }) => word), left };
  });
  return ways.filter(({ left }) => left === undefined || left.length > 0).sort((a, b) => b.taken.length - a.taken.length);
}
class Section {
  readonly #atoms: readonly Atom[];
  readonly #mode: Mode;
  readonly #ground: Ground;
  readonly #hasAmounts: boolean;
  /** Dimensions of what the section's words can name: an amount of another takes no neighbour's words. */
  readonly #named = new Set<Dimension>();

  /** Whether an amount without words may be any entry that its dimension allows: a last resort, and a long search. */
  readonly #wide: boolean;
  readonly #valued = new Map<AmountAtom | TextAtom, Map<Entry, Valued>>();

  constructor(atoms: readonly Atom[], mode: Mode, ground: Ground, wide: boolean) {
    this.#atoms = atoms;
    this.#wide = wide;
    this.#mode = mode;
    this.#ground = ground;
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
      const own = isAmount(amount) && placeWords.length > 0 && percent(amount) ? this.#byWords([], ends, reach, gear, amount) : undefined;
      if (own && own.candidates.length > 0) out.push({ piece: slot(own.candidates), cost: 1 });
      const slang = isAmount(amount) && (plural || amount.token.plural) ? this.#slang(amount, reach) : undefined;
      if (slang) out.push({ piece: slot(slang.candidates, slang.trouble), cost: 1 });
      if (!this.#wide && amount.is === 'amount' && gear === undefined) return out;
      const alone = this.#byDimension(amount, reach, gear);
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
    const found = this.#byWords(words, ends, reach, gear, amount);
    const out: { piece: Piece; cost: number }[] = [];
    if (found.candidates.length > 0) {
      const inputOnly = found.candidates.every((one) => isInput(one.item.entry) && one.item.said === undefined);
      const bare = amount === undefined && inputOnly && this.#hasAmounts && this.#mode !== 'goal' ? 11 : 0;
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
  /** What an amount is worth to an entry: asked for many spans, worked out once. */
  #worth(entry: Entry, amount: AmountAtom | TextAtom): Valued {
    const of = this.#valued.get(amount) ?? new Map<Entry, Valued>();
    this.#valued.set(amount, of);
    const value = of.get(entry) ?? this.#worthAnew(entry, amount);
    of.set(entry, value);
    return value;
  }
  #worthAnew(entry: Entry, amount: AmountAtom | TextAtom): Valued {
    if (amount.is === 'text') return textWorth(entry, amount);
    const { list } = amount;
    if (!list) return worth(entry, amount, this.#ground.preferences);
    const places = placesOf(entry.scope).length;
    if (places < 2 || (entry.scope === 'gear' ? list.length > places : list.length !== places))
      return { bad: 'kind', why: () => `${list.length} amounts for ${entry.name}: say which is which` };
    const each: Said[] = [];
    let note: string | undefined;
    for (const token of list) {
      const one = worth(entry, { is: 'amount', token }, this.#ground.preferences);
      if ('bad' in one) return one;
      note ??= one.note;
      each.push(one.said);
    }
    const [first] = each;
    if (!first) throw new Error('a list has amounts');
    return { said: first, each, unlikely: false, ...(note ? { note } : {}) };
  }
  /** Entries whose words are these words: all of them, place words taken in or left out; else those whose words hold them. */
  #byWords(
    words: readonly string[],
    ends: readonly End[],
    reach: readonly string[] | undefined,
    gear: string | undefined,
    amount: AmountAtom | TextAtom | undefined,
  ): { candidates: readonly Candidate[]; trouble?: Trouble; cost: number } {
    const { phrases } = this.#ground.vocabulary;
    const asPercent = isAmount(amount) && percent(amount);
    let trouble: Trouble | undefined;
    // The more place words an entry's own words take, the more exactly it was named.
    for (const { taken, left } of withinNames(ends)) {
      const all = [...words, ...taken];
      const keys = asPercent ? [keyOf(all), keyOf([...all, 'percent']), keyOf([...all, 'share'])] : [keyOf(all)];
      for (const key of keys) {
        const found = phrases.get(key);
        if (!found) continue;
        const one = this.#choose(found, left, gear, amount);
        if (one.candidates.length > 0) return { candidates: one.candidates, cost: 0 };
        if (!trouble || one.trouble.kind !== 'dimension') trouble = one.trouble;
      }
    }
    if (trouble) return { candidates: [], trouble, cost: 0 };
    if (words.length === 0) return { candidates: [], cost: 0 };
    const { topic } = this.#ground;
    const ofTopic = topic === undefined || words.includes(topic) ? undefined : phrases.get(keyOf([...words, topic]));
    const own = ofTopic && this.#choose(ofTopic, reach, gear, amount);
    if (own && own.candidates.length > 0) return { candidates: own.candidates, cost: 0.2 };
    return reach?.length === 0 ? { candidates: [], cost: 0 } : this.#wider(words, reach, gear, amount);
  }
  #wider(
    words: readonly string[],
    reach: readonly string[] | undefined,
    gear: string | undefined,
    amount: AmountAtom | TextAtom | undefined,
  ) {
    const { holding, phrases } = this.#ground.vocabulary;
    const [first = ''] = words;
    let trouble: Trouble | undefined;
    const sizes = new Map<number, Phrase[]>();
    for (const key of holding.get(first) ?? []) {
      const parts = key.split(' ');
      if (parts.length > words.length + 2 || !words.every((word) => parts.includes(word))) continue;
      const extra = parts.length - words.length;
      const alike = sizes.get(extra) ?? [];
      alike.push(...(phrases.get(key) ?? []).filter((one) => one.option === undefined));
      sizes.set(extra, alike);
    }
    for (const extra of [0, 1, 2]) {
      const found = sizes.get(extra);
      if (!found) continue;
      const one = this.#choose(found, reach, gear, amount);
      if (one.candidates.length > 0) return { candidates: one.candidates, cost: 0.8 + 0.4 * extra };
      trouble ??= one.trouble;
    }
    return trouble ? { candidates: [], trouble, cost: 1 } : { candidates: [], cost: 0 };
  }
  /** The phrases that fit the places and the amount, narrowed to the likeliest. */
  #choose(
    found: readonly Phrase[],
    reach: readonly string[] | undefined,
    gear: string | undefined,
    amount: AmountAtom | TextAtom | undefined,
  ) {
    const candidates: (Candidate & { readonly rank: number; readonly told: boolean })[] = [];
    let trouble: Trouble | undefined;
    for (const { entry, option } of found) {
      const input = isInput(entry);
      if (amount && !input && this.#mode !== 'goal') {
        trouble ??= { kind: 'kind', why: () => `${entry.name} is worked out, not told`, entry };
        continue;
      }
      if (!amount && input && entry.scope === 'question' && this.#mode !== 'record' && option === undefined) continue;
      const where = placing(entry, reach, gear);
      if (!where) {
        const better: Trouble = {
          kind: 'place',
          why: () => placeWhy(entry, reach, gear),
          entry,
          places: placesOf(entry.scope),
          ...(isAmount(amount) ? { amount } : {}),
        };
        if (!trouble || trouble.kind === 'kind') trouble = better;
        continue;
      }
      const told = input && (this.#mode === 'record' || amount !== undefined);
      if (option !== undefined) {
        if (!amount)
          candidates.push({
            item: { entry, ...where, said: { value: option, text: option } },
            unlikely: false,
            rank: rank[entry.scope],
            told,
          });
        continue;
      }
      if (!amount) {
        candidates.push({ item: { entry, ...where }, unlikely: false, rank: rank[entry.scope], told: input });
        continue;
      }
      const value = this.#worth(entry, amount);
      if ('bad' in value) {
        const likelier =
          !trouble ||
          trouble.kind === 'place' ||
          trouble.kind === 'kind' ||
          (trouble.kind === 'dimension' && value.bad !== 'kind' && value.bad !== 'dimension');
        if (likelier)
          trouble = {
            kind: value.bad,
            why: value.why,
            entry,
            places: where.places,
            ...(value.units ? { units: value.units } : {}),
            ...(isAmount(amount) ? { amount } : {}),
          };
        continue;
      }
      candidates.push({
        item: { entry, ...where, said: value.said },
        unlikely: value.unlikely,
        rank: rank[entry.scope],
        told,
        ...extras(value),
      });
    }
    return {
      candidates: this.#likeliest(candidates, amount !== undefined),
      trouble: trouble ?? { kind: 'word' as const, why: () => '' },
    };
  }
  #likeliest(all: readonly (Candidate & { readonly rank: number; readonly told: boolean })[], amount: boolean): readonly Candidate[] {
    let left = all;
    const keep = (test: (one: (typeof all)[number]) => boolean) => {
      const some = left.filter(test);
      if (some.length > 0) left = some;
    };
    // A weight that is shared out is told where it is whole.
    keep((one) => !(one.item.entry.extensive && one.item.places.length > 1));
    keep((one) => !one.unlikely);
    if (!amount) keep((one) => one.item.said !== undefined);
    if (!amount) keep((one) => isInput(one.item.entry) === (this.#mode === 'record'));
    else if (this.#mode === 'goal') keep((one) => !isInput(one.item.entry));
    if (!amount) keep((one) => one.item.entry.kind !== 'curve');
    // One thing that can be told in several ways is meant in the plainest, where no amount says which.
    if (!amount) keep((one) => left.find((other) => sameThing(other.item.entry, one.item.entry)) === one);
    // One thing of the car, of an axle, of a wheel: it is meant where the words say, and as a whole where they don't.
    const least = Math.min(...left.map((one) => one.rank));
    if (related(left.map((one) => one.item.entry))) keep((one) => one.rank === least);
    const entries = new Set<Entry>();
    return left.filter((one) => !entries.has(one.item.entry) && entries.add(one.item.entry));
  }
  /** An amount without words: every entry that its dimension, its size and the places allow. */
  #byDimension(
    amount: AmountAtom | TextAtom,
    reach: readonly string[] | undefined,
    gear: string | undefined,
  ): { candidates: readonly Candidate[]; trouble?: Trouble } {
    const { vocabulary } = this.#ground;
    const pool = this.#mode === 'goal' ? this.#figuresFor(amount) : vocabulary.inputs;
    const candidates: Candidate[] = [];
    let trouble: Trouble | undefined;
    for (const entry of pool) {
      if (amount.is === 'text' && entry.kind !== 'designation') continue;
      if (entry.scope === 'question' && this.#mode === 'record') continue;
      if (
        !entry.words ||
        (isAmount(amount) && !amount.list && amount.change === undefined && !canBe(entry, amount.token, this.#ground.preferences))
      )
        continue;
      const where = placing(entry, reach, gear);
      if (!where || (entry.extensive && where.places.length > 1)) continue;
      if (gear !== undefined && entry.scope !== 'gear') continue;
      const value = this.#worth(entry, amount);
      if ('bad' in value) {
        if (amount.is === 'text' && value.bad === 'range') trouble ??= { kind: 'range', why: value.why, entry, places: where.places };
        continue;
      }
      candidates.push({
        item: { entry, ...where, said: value.said },
        unlikely: value.unlikely,
        ...extras(value),
      });
    }
    const likely = candidates.filter((one) => !one.unlikely);
    let left: readonly Candidate[] = likely.length > 0 ? likely : candidates;
    if (amount.is === 'text' && left.length > 1) {
      // A size is the size of what stands on the car, unless its words say otherwise.
      const axle = left.filter((one) => one.item.entry.scope === 'axle');
      if (axle.length > 0) left = axle;
    }
    if (left.length === 0 && isAmount(amount) && amount.token.sign === '-') {
      const { sign: _, ...token } = amount.token;
      const [above] = this.#byDimension({ ...amount, token: { ...token, value: Math.abs(token.value) } }, reach, gear).candidates;
      if (above)
        trouble = {
          kind: 'negative',
          why: () => `${above.item.entry.name} must be above 0`,
          entry: above.item.entry,
          places: above.item.places,
          amount,
        };
    }
    return { candidates: left, trouble: trouble ?? { kind: 'alone', why: () => (amount.is === 'text' ? amount.text : atomText(amount)) } };
  }
  #figuresFor(amount: AmountAtom | TextAtom): readonly Entry[] {
    if (amount.is === 'text') return [];
    const { byDimension } = this.#ground.vocabulary;
    const unit = amount.token.unit;
    const dimensions: readonly Dimension[] = unit === undefined ? [...byDimension.keys()] : meaningsOf(unit).map((one) => one.dimension);
    return dimensions.flatMap((dimension) => byDimension.get(dimension) ?? []).filter((entry) => !isInput(entry));
  }
  /** `350s`, `425 rears`, `4.10s`: what people call by its number alone. */
  #slang(amount: AmountAtom, reach: readonly string[] | undefined): { candidates: readonly Candidate[]; trouble?: Trouble } | undefined {
    const { phrases } = this.#ground.vocabulary;
    const { value } = amount.token;
    if (amount.token.unit !== undefined) return undefined;
    const width = value >= 135 && value <= 355 && value % 10 === 5;
    const candidates: Candidate[] = [];
    for (const word of ['spring', 'final drive'])
      for (const { entry } of phrases.get(keyOf(word.split(' ').map(stem))) ?? []) {
        if (entry.kind !== 'quantity' || entry.scope === 'corner') continue;
        const where = placing(entry, reach, undefined);
        const said = where && this.#worth(entry, amount);
        if (where && said && !('bad' in said) && !said.unlikely)
          candidates.push({ item: { entry, ...where, said: said.said }, unlikely: false, ...(said.note ? { note: said.note } : {}) });
      }
    if (!width) return candidates.length > 0 ? { candidates } : undefined;
    const why = () => `${amount.token.text}: springs of ${value}, or tires ${value} wide? A tire needs its whole size, like ${value}/40R17`;
    return {
      candidates: [],
      trouble: {
        kind: 'unit',
        why,
        amount,
        ...(candidates[0] ? { entry: candidates[0].item.entry, places: candidates[0].item.places } : {}),
      },
    };
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
        const value = where && this.#worth(item.entry, amount);
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
/** Pressures, speeds and the like have one plainest thing that they are of; in a question so has a rate or a weight. */
export function plainest(candidates: readonly Candidate[], changes: boolean, { phrases }: Vocabulary): readonly Candidate[] {
  const usual = candidates.flatMap(({ item }) => {
    const { dimension } = item.entry;
    const noun = dimension === undefined || (changes && (dimension === 'rate' || dimension === 'mass')) ? undefined : nouns.get(dimension);
    return noun === undefined ? [] : (phrases.get(keyOf(stemsOf(noun))) ?? []).map(({ entry }) => entry);
  });
  const plain = candidates.filter(({ item }) => usual.includes(item.entry) && item.entry.kind !== 'curve');
  const least = Math.min(...plain.map(({ item }) => rank[item.entry.scope]));
  return plain.length > 0 ? plain.filter(({ item }) => rank[item.entry.scope] === least) : candidates;
}
const sameThing = (a: Entry, b: Entry): boolean => a === b || (a.instead !== undefined && a.instead === b.instead && a.scope === b.scope);
/** Whether entries of one word are one thing at different places, as their names tell. */
function related(entries: readonly Entry[]): boolean {
  const [first, ...others] = entries;
  if (!first) return false;
  if (others.every((one) => one.extensive && first.extensive) || others.every((one) => !isInput(one) && !isInput(first))) return true;
  if (others.some((one) => one.dimension !== first.dimension)) return false;
  const words = new Set(stemsOf(first.name));
  return others.every((one) => stemsOf(one.name).some((word) => words.has(word)));
}
const extras = (value: { readonly note?: string; readonly each?: readonly Said[] }) => ({
  ...(value.note ? { note: value.note } : {}),
  ...(value.each ? { each: value.each } : {}),
});
const spannable = (atom: Atom): boolean =>
  atom.is === 'word' || atom.is === 'place' || atom.is === 'gear' || atom.is === 'amount' || atom.is === 'text';
function placeWhy(entry: Entry, reach: readonly string[] | undefined, gear: string | undefined): string {
  if (gear !== undefined && entry.scope !== 'gear') return `${entry.name} is not told for a gear`;
  if (reach && entry.scope === 'axle') return `${entry.name} is told for an axle, front or rear`;
  if (entry.scope === 'gear') return `${entry.name} is told for a gear`;
  return `${entry.name} is told for the whole car`;
}
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
