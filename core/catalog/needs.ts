/** How one entry reads another: from where, and what is given when it is not known. */
import type { Entry } from './entry.js';
import type { Around, Scope } from './values.js';

/** Something that a compute function may ask for: V is what it will be given, S the places where it can be asked. */
export interface Need<S extends Scope, V> {
  readonly scope: S;
  /** Tried in order; the first that has a value is given. */
  readonly terms: readonly Term[];
  /** Present when the need may be missing: what is given then. */
  readonly absent?: V;
  /** Of a refinement, what an answer says when it is counted: `links that give`. */
  readonly refines?: string;
}
export interface Term {
  readonly entry: Entry;
  readonly at: readonly Turn[];
  /**
   * What of the entry is read; left out, the best that is known of it.
   * `given`: only as it was told, or as it follows from what was told of entries above it.
   * `told`: the best that is known, but only if it was given, now or when the car was measured.
   */
  readonly only?: 'given' | 'told';
}
/** A step from the asker's place to another. `higher` is the next gear up; `then` is the car as it was when it was last measured. */
export type Turn = 'front' | 'rear' | 'left' | 'right' | 'higher' | 'then';

export type AnyNeeds = Readonly<Record<string, Need<Scope, unknown>>>;
export type Needs<S extends Scope> = Readonly<Record<string, Need<Around<S>, unknown>>>;
export type Given<N> = { readonly [K in keyof N]: N[K] extends Need<Scope, infer V> ? V : never };

/** A need of other terms: an entry that is read brings nothing of itself but where it stands. */
const reading = <S extends Scope, V>(need: Need<Scope, V>, scope: S, terms: readonly Term[]): Need<S, V> => ({
  scope,
  terms,
  ...('absent' in need ? { absent: need.absent as V } : {}),
  ...(need.refines === undefined ? {} : { refines: need.refines }),
});
const turn =
  (t: Turn) =>
  <S extends Scope, V>(need: Need<Scope, V>, scope: S): Need<S, V> =>
    reading(
      need,
      scope,
      need.terms.map((term) => ({ ...term, at: [t, ...term.at] })),
    );
export const front = <V>(n: Need<'axle', V>): Need<'car', V> => turn('front')(n, 'car');
export const rear = <V>(n: Need<'axle', V>): Need<'car', V> => turn('rear')(n, 'car');
export const left = <V>(n: Need<'corner', V>): Need<'axle', V> => turn('left')(n, 'axle');
export const right = <V>(n: Need<'corner', V>): Need<'axle', V> => turn('right')(n, 'axle');
/** The same of the next gear up; missing in the top gear. */
export const higher = <V>(n: Need<'gear', V>): Need<'gear', V> => turn('higher')(n, 'gear');
/** The same, of the car as it was when its ride heights and scale readings were taken. Facts that have not changed since share their errors. */
export const asMeasured = <S extends Scope, V>(n: Need<S, V>): Need<S, V> => turn('then')(n, n.scope);

const only = <S extends Scope, V>(what: 'given' | 'told', need: Need<S, V>): Need<S, V> =>
  reading(
    need,
    need.scope,
    need.terms.map((term) => ({ ...term, only: what })),
  );
/**
 * Only as it was told, or as it follows from what was told of things above it: never as it is worked out from below.
 * Inverse ways read so what they go up to, which is why ways in both directions never need each other.
 */
export const given = <S extends Scope, V>(n: Need<S, V>): Need<S, V> => only('given', n);
/** The best that is known of it, but only where it was given, now or when the car was measured. Structures read told results so. */
export const ifTold = <S extends Scope, V>(n: Need<S, V>): Need<S, V> => only('told', n);

/** The first of these that is known, most direct first: for two different things, since the same thing worked out in two ways is one quantity. */
export const firstOf = <S extends Scope, V>(first: Need<S, V>, ...others: readonly Need<S, V>[]): Need<S, V> => ({
  scope: first.scope,
  terms: [first, ...others].flatMap((n) => n.terms),
});
/** Given as undefined when it is not known, instead of refusing the way. */
export const maybe = <S extends Scope, V>(n: Need<S, V>): Need<S, V | undefined> => ({ scope: n.scope, terms: n.terms, absent: undefined });
/**
 * Counted where it is known; else the way runs as if it were `neutral`, which leaves it out of the sum: a rigid link, no rubber, no bar.
 * @param words what an answer says when it is counted: `links that give`; left out where that would say nothing
 */
export const refine = <S extends Scope, V>(n: Need<S, V>, neutral: NoInfer<V>, words?: string): Need<S, V> => ({
  scope: n.scope,
  terms: n.terms,
  absent: neutral,
  ...(words === undefined ? {} : { refines: words }),
});
