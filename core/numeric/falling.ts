/** Where something that is left comes down to nothing. */

/**
 * The root of a function that falls through zero between 0 and `most`: secants from a guess, halving where they gain little.
 * @param within how close the root is wanted where the function leaps over it
 * @returns 0 where it starts at or below zero, `most` where it never gets there
 */
export function falling(left: (at: number) => number, guess: number, most: number, within = 1e-14 * most): number {
  let [low, high] = [0, most];
  let [before, beforeValue] = [0, left(0)];
  if (!(beforeValue > 0)) return 0;
  let at = guess > 1e-3 * most && guess < most ? guess : most;
  let width = most;
  for (let tries = 1; tries < 200; tries++) {
    const value = left(at);
    if (value > 0) low = at;
    else high = at;
    if (value === 0 || low === most) return at;
    let next = at - (value * (at - before)) / (value - beforeValue);
    if (Math.abs(next - at) <= 1e-13 * most && next >= low && next <= high) return next;
    const slow = tries % 4 === 0 && high - low > width / 4;
    if (tries % 4 === 0) width = high - low;
    if (slow || !(next > low && next < high)) next = (low + high) / 2;
    if (high - low <= within) return next;
    [before, beforeValue, at] = [at, value, next];
  }
  return at;
}
