/** Narrowing down a place on a line: where a condition ends, and where a function turns. In pieces of one value of the function each. */
import type { InPieces } from '../pieces.js';

/** A function that may have no value at some places. */
export type Scalar = (x: number) => number | undefined;

/** Halvings after which two doubles of one size are neighbours. */
const halvings = 60;

/** Between a place where the condition holds and one where it does not: the last that holds and the first that does not, next to each other. */
export function* bisect(holds: (x: number) => boolean, inside: number, outside: number): InPieces<readonly [number, number]> {
  let [yes, no] = [inside, outside];
  for (let n = 0; n < halvings; n++) {
    const middle = (yes + no) / 2;
    if (middle === yes || middle === no) break;
    yield;
    if (holds(middle)) yes = middle;
    else no = middle;
  }
  return [yes, no];
}

const golden = (Math.sqrt(5) - 1) / 2;
/** A turning point is flat: its place cannot be told to more than half of a double's digits. */
const flat = 1e-8;

/** The greatest or the least value between two places, by golden section; undefined where the function has no value on the way. */
export function* turningPoint(
  f: Scalar,
  from: number,
  to: number,
  which: 'greatest' | 'least',
): InPieces<readonly [number, number] | undefined> {
  const sign = which === 'greatest' ? 1 : -1;
  const height = (x: number): number => sign * (f(x) ?? Number.NaN);
  let [low, high] = [from, to];
  let [a, b] = [high - golden * (high - low), low + golden * (high - low)];
  let [atA, atB] = [height(a), height(b)];
  while (high - low > flat * (Math.abs(low) + Math.abs(high)) && high - low > flat * (to - from)) {
    if (Number.isNaN(atA) || Number.isNaN(atB)) return undefined;
    yield;
    if (atA > atB) {
      [high, b, atB] = [b, a, atA];
      a = high - golden * (high - low);
      atA = height(a);
    } else {
      [low, a, atA] = [a, b, atB];
      b = low + golden * (high - low);
      atB = height(b);
    }
  }
  const x = atA > atB ? a : b;
  const y = f(x);
  return y === undefined ? undefined : [x, y];
}
