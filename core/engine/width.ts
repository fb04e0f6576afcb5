/** From what each error contributes to the half-width that holds 19 in 20. */
import type { Contributions } from './errors.js';

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
/** The same for all nodes at once. */
export function widthsOf({ nodes, amounts }: Contributions, size: number): Float64Array {
  const widths = new Float64Array(size);
  for (let n = 0; n < nodes.length; n++) widths[nodes[n]!]! += amounts[n]! ** 2;
  for (let index = 0; index < size; index++) widths[index] = Math.sqrt(widths[index]!);
  return widths;
}
