/** The kinds of entry that are no quantity: choices, tables, designations, and the structures that quantities read. */
import type { Dimension } from '../dimensions.js';
import { type Entry, type Made, make } from './entry.js';
import type { Needs } from './needs.js';
import type { Rule, Tellable } from './quantity.js';
import { usuallyTold } from './usually.js';
import type { Around, Curve, Refusal, Scope, Told } from './values.js';
import { type AnyWay, type Compute, type Way, way } from './ways.js';

interface Worded {
  /** What people type for it, the plainest first; lower case, singular, American spelling; the reader knows plurals, tyre, centre. */
  readonly words: readonly string[];
  /** How to measure it, in a sentence or two. */
  readonly measure: string;
}
export interface ChoiceSpec<P extends string, S extends Scope, O extends string> extends Tellable<P, S>, Worded {
  readonly options: readonly O[];
  /** Other words for an option. */
  readonly optionWords?: Readonly<Partial<Record<NoInfer<O>, readonly string[]>>>;
  /** Of these, words that need no noun: `lsd`. */
  readonly alone?: readonly string[];
}
/** Which option holds when none was told. It is taken for granted in every sum, unless it is a `guess`, which a plain sum does not make. */
type Unless<S extends Scope, O, N extends Needs<S>> = Omit<Rule<S, O, N>, 'within' | 'error' | 'constant' | 'usual'> & {
  readonly guess?: true;
};
/** A fact that is one of a few words. */
export function choice<const P extends string, S extends Scope, const O extends string, const N extends Needs<S> = Record<never, never>>(
  spec: ChoiceSpec<P, S, O> & { readonly estimate?: Unless<S, NoInfer<O>, N> },
): Made<P, S, O> {
  const { estimate, ...rest } = spec;
  const ways: AnyWay[] = estimate ? [{ ...way(estimate), sort: 'estimate', ...(estimate.guess ? { guess: true as const } : {}) }] : [];
  return make({ ...rest, kind: 'choice' }, ways);
}

export interface CurveSpec<P extends string, S extends Scope> extends Tellable<P, S>, Worded {
  readonly dimension: Dimension;
  readonly along: Dimension;
  readonly sane: readonly [number, number];
  readonly saneAlong: readonly [number, number];
  readonly told?: Told;
}
/** A fact that is a table: a spring's rates over its travel, torque over engine speed. Its error scales the whole table. */
export function curve<const P extends string, S extends Scope>(spec: CurveSpec<P, S>): Made<P, S, Curve> {
  const told = spec.told ?? usuallyTold(spec.dimension, spec.scope, [1, 2], true);
  return make({ ...spec, told, kind: 'curve' });
}

export interface DesignationSpec<P extends string, S extends Scope, V extends object> extends Tellable<P, S>, Worded {
  /** Reads the text into what it stands for, or says what is wrong with it. */
  parse(text: string): V | Refusal;
  /** The one way to write it. */
  write(value: V): string;
  /** Groups of `instead` that it says too, by what it stands for: `15x7 ET25` says the offset as well. */
  alsoSays?(value: V): readonly string[];
}
/** A fact that is a text which stands for several quantities: a tire size. Computes are given what it stands for. */
export function designation<const P extends string, S extends Scope, V extends object>(spec: DesignationSpec<P, S, V>): Made<P, S, V> {
  // The engine gives only what it has parsed, so these functions of V are never given anything else.
  return make({ ...(spec as Omit<typeof spec, 'write' | 'alsoSays'> & Pick<Entry, 'write' | 'alsoSays'>), kind: 'designation' });
}

interface StructureOf<P extends string, S extends Scope> {
  readonly path: P;
  readonly scope: S;
  readonly name: string;
}
interface OneWay<V, N> {
  readonly needs: N;
  readonly compute: Compute<N, V>;
  readonly source: string;
  readonly ways?: never;
}
/**
 * A structure that quantities read (an equilibrium, a force law): computed once for a car and a condition; only numbers have a plus-or-minus.
 * In several ways, fullest first, or in one.
 */
export function structure<const P extends string, S extends Scope, V extends object>(
  spec: StructureOf<P, S> & { readonly ways: readonly Way<Around<S>, V>[] },
): Made<P, S, V>;
export function structure<const P extends string, S extends Scope, V extends object, const N extends Needs<S>>(
  spec: StructureOf<P, S> & OneWay<V, N>,
): Made<P, S, V>;
export function structure<const P extends string, S extends Scope, V extends object, const N extends Needs<S>>(
  spec: StructureOf<P, S> & ({ readonly ways: readonly Way<Around<S>, V>[] } | OneWay<V, N>),
): Made<P, S, V> {
  const { path, scope, name } = spec;
  const ways: readonly AnyWay[] = spec.ways ?? [way({ needs: spec.needs, compute: spec.compute, source: spec.source })];
  return make({ path, scope, name, kind: 'structure' }, ways);
}

/** Which end a compute function is working for: for the few formulas that differ by it. */
export const thisAxle: Made<'axle', 'axle', 'front' | 'rear'> = make({ kind: 'place', path: 'axle', scope: 'axle', name: 'axle' });
/** Which side. */
export const thisSide: Made<'side', 'corner', 'left' | 'right'> = make({ kind: 'place', path: 'side', scope: 'corner', name: 'side' });
