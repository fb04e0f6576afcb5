/** What a part of a sum comes to, in one of the ways in which its names can be meant; and the sentences that refuse it. */
import { type Base, baseOf, sameBase } from '../../commands/sums/base.js';
import type { Assumed, Worked } from '../../commands/sums/sum.js';

export interface Value extends Omit<Worked, 'meaning'> {
  /** Of one name that is a place on a scale: the same number of degrees as an amount. */
  readonly difference?: number;
  readonly meant: readonly (readonly [name: string, at: number])[];
}
/** A value, or why there is none: a sentence for the member. */
export type Tried = Value | string;

export const notFinite = 'That has no finite answer: a division by zero, a root or logarithm of less than zero, or a number out of range.';
export const scaleOnly =
  'Temperatures on a scale can be added to, taken from each other and averaged; to multiply or divide them, write them in K.';

const temperature = baseOf('temperature');
/** Whether it is a place on a scale of temperature: half as much of it means nothing. */
export const isPlace = ({ base, points }: Value): boolean => points !== 0 && sameBase(base, temperature);

interface More {
  readonly points?: number;
  readonly percent?: boolean;
  readonly assumed?: Assumed;
}
/** A value made from others: it rests on their meanings, and on what they took for granted. */
export function made(value: number, base: Base, from: readonly Value[], { points = 0, percent = false, assumed }: More = {}): Tried {
  if (!Number.isFinite(value)) return notFinite;
  const all = [...from.flatMap((one) => one.assumed), ...(assumed === undefined ? [] : [assumed])];
  return { value, base, points, percent, assumed: [...new Set(all)], meant: from.flatMap((one) => one.meant) };
}
