/** From what each error contributes to the half-width that holds 19 in 20. */

/** The parts of contributions that a width is made of. */
export interface Part {
  readonly amount: number;
  readonly bend: number;
}
/** Root sum of squares of the contributions: errors of different names are independent (JCGM 100, 5.1.2). */
export function widthOf(parts: readonly Part[]): number {
  let square = 0;
  for (const { amount } of parts) square += amount * amount;
  return Math.sqrt(square);
}
