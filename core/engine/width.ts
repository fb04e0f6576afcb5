/** From what each error contributes to the half-width that holds 19 in 20. */

/** What one error contributes: half of the way between the ends of its half-width, and how far the middle of both lies from the number. */
export interface Part {
  readonly amount: number;
  readonly bend: number;
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
