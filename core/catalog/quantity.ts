/** Quantities: told, worked out, or both; and the same quantity of a wheel and of its axle. */
import type { Dimension } from '../dimensions.js';
import { type Asks, type Entry, type Made, make, shownAs } from './entry.js';
import { given, left, type Need, type Needs, right } from './needs.js';
import type { TypicalSpec } from './typical.js';
import { usuallyTold } from './usually.js';
import type { Around, Refusal, Scope, Told, Within } from './values.js';
import { type AnyWay, addWay, type Compute, type Way, way } from './ways.js';

/** How to estimate an input that the member has not told: one way, the older spelling. */
export interface Rule<S extends Scope, V, N extends Needs<S>> {
  readonly needs: N;
  readonly compute: (given: { readonly [K in keyof N]: N[K] extends Need<Scope, infer G> ? G : never }) => V | Refusal;
  readonly within: Within;
  /** One error for all places (the same tire, the same modulus), or a separate one for each (the default). */
  readonly error?: 'common' | 'each';
  /** What a text-book sum takes for granted: counted in a plain sum too. */
  readonly constant?: true;
  /** What carries a sum of a line's own data: counted in a plain sum too, and said. */
  readonly usual?: true;
  readonly source: string;
}

/** What every entry that can be told says of itself. */
export interface Tellable<P extends string, S extends Scope> {
  readonly path: P;
  readonly scope: S;
  readonly name: string;
  /** The name in a row of a phone's screen, where `name` is longer than 21 characters. */
  readonly label?: string;
  /** A short, usual caution where the work or the number can hurt somebody. */
  readonly caution?: string;
  /** An amount that a whole shares out (a weight), so that naming an axle does not tell each corner's. */
  readonly extensive?: true;
  /** Usually the same all round: told without a place it holds for every place (a tire size, a pressure), instead of being asked. */
  readonly alike?: true;
  /** Entries of one such name and place say the same thing in different ways: recording one forgets the others. */
  readonly instead?: string;
  /** What the car was found to be, rather than what it is made of (a ride height, a scale reading): true only of the moment it was taken. Every told result is. */
  readonly state?: true;
  /** A ratio that is said in per cent. */
  readonly percent?: true;
  /** To change it is work on the car: its caution stands under a change that is recorded, too. */
  readonly work?: true;
  /** `car`: what the car is, neither put on it nor set. `piece`: comes in pieces, each of one size, with nothing between two of them. Left out: it is set. */
  readonly nature?: 'car' | 'piece';
  /** What it was where nothing was told of it, beside a part that is put on now: nothing. */
  readonly untold?: 0;
}
interface Measured<P extends string, S extends Scope> extends Tellable<P, S> {
  /** What members talk of: shown before the steps on the way, where many figures move or differ. */
  readonly main?: true;
  readonly symbol?: string;
  readonly dimension: Dimension;
  /** How to measure it, in a sentence or two; left out: it cannot be measured at home. */
  readonly measure?: string;
  /** The step in which it is bought or set, where inches or millimetres are the trade; SI. Common practice, no source. */
  readonly step?: { readonly inch: number; readonly metric: number };
  /** The unit in which it is sold and spoken of everywhere, whatever the member's own: bars in mm. */
  readonly trade?: string;
  /** How far off it may be when told; left out: what is usual for its dimension. */
  readonly told?: Told;
  /** People also count what has this length (`hole 2`): how to measure it instead. */
  readonly counted?: string;
  readonly typical?: TypicalSpec;
  readonly untypical?: string;
  readonly nonlinear?: string;
  readonly asks?: Asks;
  /**
   * What the car is made of or set to, though it can be worked out as well (a spring's rate, from its coil): a told value holds until another is told,
   * and is not carried on when something else changes, as a told result is.
   */
  readonly part?: true;
  /** The state input that this is, worked out: what the input becomes when the car has changed since it was taken. */
  readonly carriesOn?: Entry;
}
/** What people type for it, the plainest first; lower case, singular, American spelling; the reader knows plurals, tyre, centre. What has words can be told. */
type Named =
  | {
      readonly words: readonly string[];
      /** SI; outside it an amount is refused, and a bare number is read in another unit. */
      readonly sane: readonly [number, number];
    }
  | { readonly words?: never; readonly sane?: readonly [number, number] };
export type QuantitySpec<P extends string, S extends Scope> = Measured<P, S> & Named;

interface Listed<S extends Scope> {
  /** Fullest first; none: it can only be told. */
  readonly ways?: readonly Way<Around<S>, number>[];
}
const isSum = (one: AnyWay): boolean => one.sort !== 'estimate' && !one.inverse && !one.twin;

function makeQuantity<P extends string, S extends Scope>(
  spec: QuantitySpec<P, S>,
  ways: readonly AnyWay[],
  workedOut: boolean,
): Made<P, S, number> {
  const { typical, ...own } = spec;
  const { dimension, scope, sane, measure } = own;
  const told = spec.told ?? (sane && usuallyTold(dimension, scope, sane, measure !== undefined));
  const state = workedOut && sane ? ({ state: true } as const) : {};
  return make({ ...own, ...(told ? { told } : {}), ...state, kind: workedOut ? 'figure' : 'quantity' }, ways, typical);
}

/**
 * A number with a name: told, worked out in any of its ways, or both. `ways` are listed fullest first; the first whose needs are known is taken, and
 * where that refuses, its refusal is the answer: a plainer way would only hide what is wrong with what was told.
 */
export function quantity<const P extends string, S extends Scope, const N extends Needs<S> = Record<never, never>>(
  spec: QuantitySpec<P, S> & Listed<S> & { readonly estimate?: Rule<S, number, N> },
): Made<P, S, number> {
  const { estimate, ways = [], ...rest } = spec;
  const all: AnyWay[] = [...ways];
  if (estimate) all.push(way({ ...estimate, sort: 'estimate' }));
  return makeQuantity<P, S>(rest as QuantitySpec<P, S>, all, !rest.part && all.some(isSum));
}

export interface FigureSpec<P extends string, S extends Scope, V, N extends Needs<S>>
  extends Pick<Measured<P, S>, 'label' | 'main' | 'caution' | 'percent'> {
  readonly path: P;
  readonly scope: S;
  readonly name: string;
  readonly symbol: string;
  /** What people type for it; a figure without words is a step on the way, and is shown by `why`. */
  readonly words?: readonly string[];
  readonly dimension: Dimension;
  readonly typical?: TypicalSpec;
  readonly needs: N;
  readonly compute: Compute<N, V>;
  readonly formula?: string;
  readonly source: string;
  readonly carriesOn?: Entry;
  readonly nonlinear?: string;
}
/** A quantity of one way that cannot be told: the older spelling. */
export function figure<const P extends string, S extends Scope, const N extends Needs<S>>(
  spec: FigureSpec<P, S, number, N>,
): Made<P, S, number> {
  const { needs, compute, formula, source, typical, ...rest } = spec;
  return make({ ...rest, kind: 'figure' }, [way({ needs, compute, source, ...(formula === undefined ? {} : { formula }) })], typical);
}

type OfCorner<C extends string> = Partial<Omit<Measured<C, 'corner'>, 'scope'>> & {
  readonly words?: readonly string[];
  readonly sane?: readonly [number, number];
};
export interface Twins<P extends string, C extends string> {
  readonly axle: Made<P, 'axle', number>;
  readonly corner: Made<C, 'corner', number>;
}
/**
 * The same quantity of a wheel and of its axle, written once, with the ways of a wheel. The axle's is the mean of its wheels, or their sum;
 * told of the axle it holds for both wheels alike, with one error, unless a wheel has its own.
 * @param spec of the axle; `corner` is what differs at the wheel. Its path is `corner.` and the axle's, its words those of the axle and `corner` before the first
 */
export function wheels<const P extends string, const C extends string = `corner.${P}`>(
  spec: Omit<Measured<P, 'axle'>, 'scope'> &
    Named & { readonly over: 'mean' | 'sum'; readonly corner?: OfCorner<C>; readonly ways: readonly Way<Around<'corner'>, number>[] },
): Twins<P, C> {
  const { over, corner: differs, ways, ...shared } = spec;
  const isMean = over === 'mean';
  const workedOut = !shared.part && ways.some(isSum);
  const axleSpec = { ...shared, scope: 'axle' } as QuantitySpec<P, 'axle'>;
  const axle = makeQuantity(axleSpec, [], workedOut);
  const fromAxle: AnyWay = {
    ...way({
      needs: { axle: given(axle) },
      compute: ({ axle }) => (isMean ? axle : axle / 2),
      formula: isMean ? 'axle' : 'axle / 2',
      source: 'as told of the axle, both sides alike',
    }),
    inverse: true,
    twin: true,
  };
  const words = shared.words && { words: [...shared.words, `corner ${shared.words[0]}`] };
  const cornerSpec = { ...shared, ...words, path: `corner.${spec.path}`, ...differs, scope: 'corner' } as unknown as QuantitySpec<
    C,
    'corner'
  >;
  const corner = makeQuantity(cornerSpec, [fromAxle, ...ways], workedOut);
  const down = ofBoth(corner, isMean);
  // It reads the wheels, which had to be made first.
  addWay(axle, down);
  return { axle: workedOut ? Object.assign(axle, shownAs(down)) : axle, corner };
}
/** An axle's quantity from those of its wheels. */
function ofBoth(corner: Need<'corner', number>, isMean: boolean): AnyWay {
  return {
    ...way({
      needs: { left: left(corner), right: right(corner) },
      compute: ({ left, right }) => (isMean ? (left + right) / 2 : left + right),
      formula: isMean ? '(left + right) / 2' : 'left + right',
      source: isMean ? 'mean of both sides' : 'sum of both sides',
    }),
    twin: true,
  };
}
