/** A sum as it goes to whoever works it out, and what comes back. Data. */
import type { Base } from './base.js';

/** One thing that a name in a sum can stand for. */
export interface Meant {
  /** In the coherent SI unit of its dimension; of a place on a scale, counted from where there is none of it (0 K, a vacuum). */
  readonly si: number;
  readonly base: Base;
  /** 1 for a place on a scale, `70 °F` or `30 psi absolute`; 0 for an amount. What is added up may count several, or none, of its places. */
  readonly points: 0 | 1;
  /** Of a place: the same number of degrees as an amount. */
  readonly difference?: number;
  /** `10%`, which is of something when it is added to something. */
  readonly percent?: boolean;
}
export interface Sum {
  /** What mathjs reads: numbers, names, operators, brackets and functions. */
  readonly text: string;
  /** By name: what the member wrote, and all that it can mean, the likeliest first. */
  readonly names: ReadonlyMap<string, { readonly said: string; readonly meant: readonly Meant[] }>;
}
/** What was taken for granted on the way. */
export type Assumed = 'percent of' | 'radians';
/** One way to read a sum: each of its names in one meaning. */
export interface Worked {
  readonly value: number;
  readonly base: Base;
  /** 1: a place on a scale; 0: an amount, or the difference of two places. */
  readonly points: number;
  readonly percent: boolean;
  readonly assumed: readonly Assumed[];
  /** Which meaning of each name, by the place in its list. */
  readonly meaning: ReadonlyMap<string, number>;
}
/** All ways that make sense, that of the likeliest meanings first; or one sentence why there is none. */
export type WorkedOut = { readonly ways: readonly [Worked, ...Worked[]] } | { readonly refused: string };

/** The functions of a sum, with how many numbers each takes. */
export const functions: ReadonlyMap<string, readonly [least: number, most: number]> = new Map([
  ...['abs', 'sin', 'cos', 'tan', 'asin', 'acos', 'atan', 'exp', 'log10', 'log2', 'ceil', 'floor', 'sign', 'sqrt', 'cbrt'].map(
    (name): [string, readonly [number, number]] => [name, [1, 1]],
  ),
  ...['min', 'max', 'sum', 'mean', 'median', 'hypot'].map((name): [string, readonly [number, number]] => [name, [1, 50]]),
  ['log', [1, 2]],
  ['round', [1, 2]],
  ['atan2', [2, 2]],
]);
export const constants: ReadonlySet<string> = new Set(['pi', 'e', 'tau']);
export const deepestBrackets = 30;
