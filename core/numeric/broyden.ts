/** Broyden's method for a few equations `v = next(v)`: the slopes are learned as it goes, and can be handed to the next search. */

/** What is left of `next(v) - v`, over `v`: the inverse of its slopes, row after row. */
export type Slopes = Float64Array;
/** As if `next` did not depend on `v`. */
export function noSlopes(n: number): Slopes {
  const slopes = new Float64Array(n * n);
  for (let k = 0; k < n; k++) slopes[k * n + k] = -1;
  return slopes;
}

/** Writes the step `-H r` that the slopes suggest. */
export function step(slopes: Slopes, left: Float64Array, into: Float64Array): void {
  const n = left.length;
  for (let row = 0; row < n; row++) {
    let sum = 0;
    for (let k = 0; k < n; k++) sum -= slopes[row * n + k]! * left[k]!;
    into[row] = sum;
  }
}

/**
 * Learns from a step: `moved` is what was stepped, `changed` what that changed of what is left.
 * @source C. G. Broyden, "A class of methods for solving nonlinear simultaneous equations", 1965 (the inverse by Sherman and Morrison)
 */
export function learn(slopes: Slopes, moved: Float64Array, changed: Float64Array): void {
  const n = moved.length;
  const foreseen = new Float64Array(n);
  const back = new Float64Array(n);
  let along = 0;
  for (let row = 0; row < n; row++)
    for (let k = 0; k < n; k++) {
      foreseen[row]! += slopes[row * n + k]! * changed[k]!;
      back[k]! += moved[row]! * slopes[row * n + k]!;
    }
  let size = 0;
  for (let k = 0; k < n; k++) {
    along += moved[k]! * foreseen[k]!;
    size += moved[k]! * moved[k]!;
  }
  // A step of which nothing can be learned.
  if (!(Math.abs(along) > 0.1 * size)) return;
  for (let row = 0; row < n; row++) for (let k = 0; k < n; k++) slopes[row * n + k]! += ((moved[row]! - foreseen[row]!) * back[k]!) / along;
}
