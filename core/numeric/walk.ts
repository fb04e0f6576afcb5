/** Walks a function along a range: where it has a value, where it turns, and where it takes a target. */
import type { InPieces } from '../pieces.js';
import { bisect, type Scalar, turningPoint } from './bracket.js';

export type Point = readonly [x: number, y: number];

const steps = 64;
/** A range over more than this is walked in equal ratios: spring rates, not camber angles. */
const wide = 20;
/** A change this small, against all that the function does nearby, is none. */
export const negligible = 1e-9;

/** Places in a range, its ends among them, and those that are asked for. */
export function grid([low, high]: readonly [number, number], also: readonly number[]): number[] {
  const geometric = low > 0 && high / low > wide;
  const at = (n: number): number => (geometric ? low * (high / low) ** (n / steps) : low + ((high - low) * n) / steps);
  const inner = Array.from({ length: steps - 1 }, (_, n) => at(n + 1));
  return [...new Set([low, ...inner, high, ...also.filter((x) => x > low && x < high)])].sort((a, b) => a - b);
}

/** Stretches of the range where the function has a value, each walked from one edge to the other. */
export function* stretches(f: Scalar, xs: readonly number[]): InPieces<Point[][]> {
  const found: Point[][] = [];
  let open: Point[] | undefined;
  let before: number | undefined;
  function* edge(inside: number, outside: number): InPieces<Point> {
    const [x] = yield* bisect((at) => f(at) !== undefined, inside, outside);
    return [x, f(x)!];
  }
  for (const x of xs) {
    yield;
    const y = f(x);
    if (y !== undefined) {
      if (!open) {
        open = before === undefined ? [] : [yield* edge(x, before)];
        found.push(open);
      }
      if (open.at(-1)?.[0] !== x) open.push([x, y]);
    } else if (open && before !== undefined) {
      const last = yield* edge(before, x);
      if (last[0] !== before) open.push(last);
      open = undefined;
    }
    before = x;
  }
  return found;
}

/** Adds the turning points between the samples, so that a root on either side of one is not stepped over. */
export function* withTurns(f: Scalar, points: readonly Point[]): InPieces<Point[]> {
  const out: Point[] = [];
  for (const [n, point] of points.entries()) {
    out.push(point);
    const [before, after] = [points[n - 1], points[n + 1]];
    if (!before || !after || (point[1] - before[1]) * (after[1] - point[1]) >= 0) continue;
    const turn = yield* turningPoint(f, before[0], after[0], point[1] > before[1] ? 'greatest' : 'least');
    if (turn && turn[0] !== point[0]) out.push(turn);
  }
  return out.sort((a, b) => a[0] - b[0]);
}

/** Beside a crossing, steps of these parts of the way between two samples; a crossing shrinks with them, a jump or a pole does not. */
const [near, nearer] = [1e-5, 1e-8] as const;
/** What a function still goes on the smaller step, against the larger one, where it jumps: at a root it is a thousandth, where it is steep as a cube root a tenth. */
const stays = 0.3;
/** Whether a function goes past the target at a place by jumping or through a pole, rather than by taking it. */
function isJump(f: Scalar, inside: number, outside: number, step: number): boolean {
  const [a, b] = [f(inside), f(outside)];
  if (a === undefined || b === undefined) return true;
  const way = Math.sign(outside - inside);
  const over = (part: number): number => Math.abs((f(outside + way * part * step) ?? b) - (f(inside - way * part * step) ?? a));
  const [far, close] = [over(near), over(nearer)];
  // What the last digits of a number leave is no jump.
  return close > stays * far && close > negligible * Math.max(Math.abs(a), Math.abs(b));
}

/** Where the function takes the target, and where it jumps past it. */
export function* crossings(f: Scalar, points: readonly Point[], target: number): InPieces<{ roots: number[]; jumps: number[] }> {
  const roots: number[] = [];
  const jumps: number[] = [];
  /** How far the function goes from a sample to the nearer of those beside it: beside a pole the other one is far off, and nothing would be far from it. */
  const about = (n: number): number => {
    const y = points[n]![1];
    return Math.min(...[points[n - 1], points[n + 1]].flatMap((other) => (other ? [Math.abs(other[1] - y)] : [])));
  };
  const taken = points.map(([, y], n) => Math.abs(y - target) <= negligible * about(n));
  for (const [n, [x, y]] of points.entries()) {
    const next = points[n + 1];
    if (taken[n]) {
      roots.push(x);
    } else if (next && !taken[n + 1] && y > target !== next[1] > target) {
      const [inside, outside] = yield* bisect((at) => (f(at) ?? Number.NaN) > target === y > target, x, next[0]);
      (isJump(f, inside, outside, next[0] - x) ? jumps : roots).push(inside);
    }
  }
  return { roots: distinct(roots), jumps };
}
/** Touching the target at a turning point is one root, however many samples lie there. */
const distinct = (xs: readonly number[]): number[] => xs.filter((x, n) => n === 0 || Math.abs(x - xs[n - 1]!) > 1e-6 * Math.abs(x) + 1e-12);
