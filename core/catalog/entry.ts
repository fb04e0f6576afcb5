/** A catalog entry with its types forgotten: what the engine and the commands see. */
import type { Dimension } from '../dimensions.js';
import type { AnyNeeds, Need, Term } from './needs.js';
import { type Typical, type TypicalOverAll, type TypicalSpec, typically } from './typical.js';
import type { Refusal, Scope, Told, Value, Within } from './values.js';
import type { AnyWay } from './ways.js';

/**
 * Of a guess that cannot be told itself: what it is about, and what a member tells instead. A guess without it is never named as what an answer
 * rests on: a reader could do nothing about it.
 */
export interface Asks {
  /** What is not known, as it stands in a sentence: `whether you were in it when it was weighed`. */
  readonly words: string;
  /** What settles it, at the same place. */
  readonly tell: Entry;
  /** Told so, all is as it was guessed. Left out: what it has to be told follows from a measurement. */
  readonly as?: Value;
}

export interface Entry {
  /** `figure`: a quantity that is worked out (see `isWorkedOut`), by its older name. */
  readonly kind: 'quantity' | 'choice' | 'curve' | 'designation' | 'figure' | 'structure' | 'place';
  readonly path: string;
  readonly scope: Scope;
  readonly name: string;
  readonly label?: string;
  readonly main?: true;
  /** Order of making, which is the order of the file: for display. */
  readonly order: number;
  /** How it can be worked out: inverses first, then the fullest way before the plainer ones. The first whose needs are known is taken. */
  readonly ways: readonly AnyWay[];
  /** What a told value has become since the car changed, where the entry says so itself; at most one. */
  readonly carries: readonly AnyWay[];
  readonly words?: readonly string[];
  readonly symbol?: string;
  readonly dimension?: Dimension;
  readonly along?: Dimension;
  readonly sane?: readonly [number, number];
  readonly saneAlong?: readonly [number, number];
  readonly step?: { readonly inch: number; readonly metric: number };
  readonly told?: Told;
  readonly options?: readonly string[];
  readonly optionWords?: Readonly<Partial<Record<string, readonly string[]>>>;
  readonly alone?: readonly string[];
  readonly counted?: string;
  readonly measure?: string;
  readonly caution?: string;
  readonly extensive?: true;
  readonly alike?: true;
  readonly instead?: string;
  /** Of a designation: further `instead` groups that it says too, by what it stands for: `15x7 ET25` says the offset as well. */
  alsoSays?(value: object): readonly string[];
  readonly state?: true;
  readonly part?: true;
  readonly percent?: true;
  readonly work?: true;
  readonly nature?: 'car' | 'piece';
  readonly untold?: 0;
  /** The whole of what is typical, in one range. */
  readonly typical?: TypicalOverAll;
  /** The same by kind of car. */
  readonly typicals: readonly Typical[];
  /** Why nothing is typical of it, of an amount that could be compared from car to car. */
  readonly untypical?: string;
  readonly nonlinear?: string;
  readonly asks?: Asks;
  readonly carriesOn?: Entry;
  /** Of its fullest way down, for those that show one way only. */
  readonly needs?: AnyNeeds;
  readonly formula?: string;
  readonly source?: string;
  readonly within?: Within;
  readonly error?: 'common' | 'each';
  // Method syntax on purpose: the engine gives exactly what `needs` lists, which is what the typed function asked for.
  compute?(given: Readonly<Record<string, unknown>>, near?: unknown): unknown;
  parse?(text: string): object | Refusal;
  write?(value: object): string;
}
export type Made<P extends string, S extends Scope, V> = Entry & Need<S, V> & { readonly path: P; readonly scope: S };

const inputKinds: ReadonlySet<string> = new Set(['quantity', 'choice', 'curve', 'designation']);
/** What is told of a car, or set on it: it has no way but estimates and those up again from told results, or is a part for all its ways. */
export const isInput = (entry: Entry): boolean => inputKinds.has(entry.kind);
/** A result: a number that follows from others, whether it can be told as well or not. */
export const isWorkedOut = (entry: Entry): boolean => entry.kind === 'figure';
/** What a member can tell: every input, and every result that has a sane range. */
export const canBeTold = (entry: Entry): boolean => isInput(entry) || (isWorkedOut(entry) && entry.sane !== undefined);
/** Whether an answer may say that it rests on this: what can be told, or says what to tell instead. */
export const canBeNamed = (entry: Entry): boolean => canBeTold(entry) || entry.asks !== undefined;
export const isNumeric = (entry: Entry): boolean => entry.kind === 'quantity' || entry.kind === 'figure';
export const isEntry = (v: unknown): v is Entry => typeof v === 'object' && v !== null && 'kind' in v && 'path' in v && 'terms' in v;

type Own = Omit<Entry, 'order' | 'ways' | 'carries' | 'needs' | 'compute' | 'formula' | 'within' | 'error' | 'typical' | 'typicals'>;
let made = 0;
/** Makes an entry of its kind. `ways` are listed fullest first. */
export function make<P extends string, S extends Scope>(
  spec: Own & { readonly path: P; readonly scope: S },
  ways: readonly AnyWay[] = [],
  typical?: TypicalSpec,
): Entry & { path: P; scope: S; terms: readonly Term[] } {
  const fullest = ways.find((one) => !one.inverse);
  const own = { ways: [...ways], carries: [], order: made++, terms: [] as Term[] };
  const it = { ...(fullest ? shownAs(fullest) : {}), ...spec, ...typically(typical), ...own };
  it.terms.push({ entry: it, at: [] });
  return it;
}
/** What an entry shows of its fullest way. */
export function shownAs({ needs, compute, formula, source, within, error, nonlinear }: AnyWay): Partial<Entry> {
  return {
    needs,
    compute,
    source,
    ...(formula === undefined ? {} : { formula }),
    ...(within === undefined ? {} : { within }),
    ...(error === undefined ? {} : { error }),
    ...(nonlinear === undefined ? {} : { nonlinear }),
  };
}
