/** From what each error contributes to the half-width that holds 19 in 20. */

/** What one error contributes: half of the way between the ends of its half-width, and how far the middle of both lies from the number. */
export interface Part {
  readonly amount: number;
  readonly bend: number;
}
/** A number whose changes up and down differ by more than this part of their mean is looked at more closely. */
const crooked = 0.25;
/** Half of the whole change from one end to the other; where one side has no value, what the other is alone. */
export function amountOf(up: number, down: number): number {
  if (Number.isNaN(up)) return Number.isNaN(down) ? Number.POSITIVE_INFINITY : -down;
  return Number.isNaN(down) ? up : (up - down) / 2;
}
export const bendOf = (up: number, down: number): number => (Number.isNaN(up + down) ? 0 : (up + down) / 2);
export const isCrooked = (up: number, down: number): boolean => !(Math.abs(up + down) <= crooked * Math.abs(up - down));
/** The farther of end and middle; where there is no value at the end, the way to the middle twice. */
export function farther(end: number, half: number): number {
  if (Number.isNaN(end)) return 2 * half;
  return Math.abs(half) > Math.abs(end) ? half : end;
}

/**
 * The square of what one error contributes. Where the number is linear that is its amount's; where it moves on one side only, as past a knee,
 * that side's: up = J and down = 0 make an amount and a bend of J/2 each, and J squared of both.
 */
export const square = (amount: number, bend: number): number => amount * amount + 3 * bend * bend;

/** The half-width of all contributions: errors of different names are independent, so that their squares add (JCGM 100, 5.1.2). */
export const widthOf = (parts: readonly Part[]): number =>
  Math.sqrt(parts.reduce((sum, { amount, bend }) => sum + square(amount, bend), 0));

/** For sorting shares. */
export const largestFirst = (a: Part, b: Part): number => square(b.amount, b.bend) - square(a.amount, a.bend) || 0;
