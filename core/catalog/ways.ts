/** The ways in which something can be worked out. */
import type { Entry } from './entry.js';
import type { AnyNeeds, Given, Need, Needs } from './needs.js';
import type { Refusal, Scope, Within } from './values.js';

/** `near` is what the same structure of the same car is when no error is in play: somewhere to start from, where a search has one. What it ends at must not depend on it. */
export type Compute<N, V> = (given: Given<N>, near?: V) => V | Refusal;

/** `exact` follows from its needs; a `model` leaves things out; an `estimate` is a guess. */
export type Sort = 'exact' | 'model' | 'estimate';
interface Surely {
  readonly sort?: 'exact' | 'model';
  /** How far off the way itself may be, where that is known of a model. */
  readonly within?: Within;
  readonly constant?: never;
  readonly usual?: never;
}
interface Roughly {
  readonly sort: 'estimate';
  /** How far off the guess may be; a width of 0 makes it a convention (no spacer, a left turn), which every sum takes for granted. */
  readonly within: Within;
  /** What a text-book sum takes for granted (the shear modulus of steel): counted in a plain sum too. */
  readonly constant?: true;
  /** What carries a sum of a line's own data (the rolling factor of a tire, air at sea level): counted in a plain sum too, and said. */
  readonly usual?: true;
}
interface Sum<N, V> {
  readonly needs: N;
  readonly compute: Compute<N, V>;
  /** The formula in the names of `needs`, in mathjs's syntax, `g` being standard gravity; a test computes it and its dimension, and compares. */
  readonly formula?: string;
  readonly source: string;
  /** A few words, where two text books would differ: `twist of the bar`, `no tire in it`. */
  readonly basis?: string;
  /** One error for all places (the same tire, the same modulus), or a separate one for each (the default). */
  readonly error?: 'common' | 'each';
  /** Known to be far from linear in its errors within their widths; how it is treated is said here. */
  readonly nonlinear?: string;
}
export type WaySpec<N, V> = Sum<N, V> & (Surely | Roughly);

/** A way with its needs forgotten: only S, the places that it reads, and V, what it gives, are kept, so that lists of ways are checked by variance. */
export interface Way<out S extends Scope, out V> {
  readonly needs: AnyNeeds;
  // Method syntax on purpose: the engine gives exactly what `needs` lists, which is what the typed function asked for.
  compute(given: Readonly<Record<string, unknown>>, near?: unknown): unknown;
  readonly formula?: string;
  readonly source: string;
  readonly basis?: string;
  readonly sort: Sort;
  readonly within?: Within;
  readonly error?: 'common' | 'each';
  readonly constant?: true;
  readonly usual?: true;
  /** Of a choice: a guess that a plain sum does not make; without it, the option that is taken for granted. */
  readonly guess?: true;
  readonly nonlinear?: string;
  /** Up again, from what was told of something that reads this. */
  readonly inverse?: true;
  /** Between a wheel's quantity and the same of its axle. */
  readonly twin?: true;
  /** For the compiler only. */
  readonly reads?: S;
  readonly gives?: V;
}
export type AnyWay = Way<Scope, unknown>;

/** One way to work something out. What it gives and where it reads are inferred; the quantity that lists it checks both. */
export function way<const N extends AnyNeeds, V>(spec: WaySpec<N, V>): Way<N[keyof N]['scope'], V> {
  return { sort: 'exact', ...(spec as WaySpec<AnyNeeds, V> & Pick<AnyWay, 'compute'>) };
}

const listOf = (of: Entry): AnyWay[] => of.ways as AnyWay[];
/** Adds a way after those that are listed: for a quantity whose way reads what had to be made after it. */
export function addWay(of: Entry, added: AnyWay): void {
  listOf(of).push(added);
}
/**
 * Adds the way up again: from something that reads `of`, when that was told. It stands before all ways that go down.
 * Stated after both are made, in the file of `of`; what it goes up to it reads as `given(x)`.
 */
export function inverse<S extends Scope, V, const N extends Needs<S>>(of: Entry & Need<S, V>, spec: WaySpec<N, V>): void {
  const ways = listOf(of);
  // What was told of the wheel itself says more than what was told of its axle.
  const last = ways.findLastIndex((one) => one.inverse && !one.twin);
  ways.splice(last + 1, 0, { ...way(spec), inverse: true });
}
/**
 * Says what a told value has become since the car changed, where `told + its ways now - its ways then` is not the answer:
 * a ride height has no way of its own, and moves with the springs. It reads `asMeasured(given(x))`, and what has moved it.
 */
export function carry<S extends Scope, V, const N extends Needs<S>>(of: Entry & Need<S, V>, spec: WaySpec<N, V>): void {
  if (of.carries.length > 0) throw new Error(`${of.path} is carried on twice`);
  (of.carries as AnyWay[]).push(way(spec));
}
