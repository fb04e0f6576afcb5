/**
 * Motion ratio: change of spring length per change of vertical wheel travel (spring over wheel), a function of bump travel u (m),
 * 0 where the car stood when its height was measured. Its square, not itself, carries a rate from spring to wheel.
 */
import { type Curve, type Refusal, refuse } from '../../catalog.js';

/** `ratio` at u = 0 and its even `rise` (1/m); or, where there is a `table`, that. */
export interface MotionRatio {
  readonly ratio: number;
  readonly rise: number;
  readonly table?: Table;
}
/** A table made smooth: from `u[i]` on the ratio is `a + b t + c t^2 + d t^3` with t the part of the step, and the spring has travelled `travel[i]` there. */
interface Table {
  readonly u: readonly number[];
  readonly ratio: readonly number[];
  readonly travel: readonly number[];
  readonly pieces: readonly (readonly [a: number, b: number, c: number, d: number])[];
}

/** A ratio that is the same, or changes evenly, over the travel. */
export const evenRatio = (ratio: number, rise: number): MotionRatio => ({ ratio, rise });

/** Slope at each point: of the parabola through it and its neighbours; through the first or last three at the ends. */
function slopesOf(x: readonly number[], y: readonly number[]): number[] {
  const last = x.length - 1;
  const chord = (i: number): number => (y[i + 1]! - y[i]!) / (x[i + 1]! - x[i]!);
  if (last === 1) return [chord(0), chord(0)];
  return x.map((at, i) => {
    const middle = Math.min(Math.max(i, 1), last - 1);
    const curved = (chord(middle) - chord(middle - 1)) / (x[middle + 1]! - x[middle - 1]!);
    return chord(middle - 1) + curved * (2 * at - x[middle - 1]! - x[middle]!);
  });
}

/**
 * A ratio read at several wheel heights. Between them it is smooth (cubic, with the slopes of parabolas through neighbours), because its slope
 * counts in the wheel rate and a reader rarely has many points; beyond the ends it is held.
 */
export function ratioOfTable({ x: u, y: ratio }: Curve): MotionRatio | Refusal {
  if (!ratio.every((one) => one > 0)) return refuse('A motion ratio must stay above zero over the whole travel.');
  if (u.length < 2) return { ratio: ratio[0]!, rise: 0 };
  const slopes = slopesOf(u, ratio);
  const pieces = u.slice(1).map((next, i) => {
    const step = next - u[i]!;
    const [first, second] = [ratio[i]!, ratio[i + 1]!];
    const [b, e] = [step * slopes[i]!, step * slopes[i + 1]!];
    return [first, b, 3 * (second - first) - 2 * b - e, 2 * (first - second) + b + e] as const;
  });
  const travel = [0];
  pieces.forEach(([a, b, c, d], i) => {
    travel.push(travel[i]! + (u[i + 1]! - u[i]!) * (a + b / 2 + c / 3 + d / 4));
  });
  const open: MotionRatio = { ratio: 0, rise: 0, table: { u, ratio, travel, pieces } };
  const atRide = springTravel(open, 0);
  return { ratio: ratioAt(open, 0), rise: ratioRise(open, 0), table: { u, ratio, travel: travel.map((s) => s - atRide), pieces } };
}

const pieceOf = (starts: readonly number[], value: number): number => {
  let piece = starts.length - 2;
  while (piece > 0 && starts[piece]! > value) piece--;
  return piece;
};

/** Motion ratio at bump travel u. */
export function ratioAt({ ratio, rise, table }: MotionRatio, u: number): number {
  if (!table) return ratio + rise * u;
  const last = table.u.length - 1;
  if (u <= table.u[0]!) return table.ratio[0]!;
  if (u >= table.u[last]!) return table.ratio[last]!;
  const piece = pieceOf(table.u, u);
  const [a, b, c, d] = table.pieces[piece]!;
  const t = (u - table.u[piece]!) / (table.u[piece + 1]! - table.u[piece]!);
  return a + t * (b + t * (c + t * d));
}

/** Its change per bump travel, 1/m. */
export function ratioRise({ rise, table }: MotionRatio, u: number): number {
  if (!table) return rise;
  if (u < table.u[0]! || u > table.u[table.u.length - 1]!) return 0;
  const piece = pieceOf(table.u, u);
  const [, b, c, d] = table.pieces[piece]!;
  const step = table.u[piece + 1]! - table.u[piece]!;
  const t = (u - table.u[piece]!) / step;
  return (b + t * (2 * c + 3 * t * d)) / step;
}

/** Spring travel (m, compression positive) from u = 0 to bump travel u: the integral of the ratio. */
export function springTravel({ ratio, rise, table }: MotionRatio, u: number): number {
  if (!table) return u * (ratio + (rise * u) / 2);
  const last = table.u.length - 1;
  if (u <= table.u[0]!) return table.travel[0]! + table.ratio[0]! * (u - table.u[0]!);
  if (u >= table.u[last]!) return table.travel[last]! + table.ratio[last]! * (u - table.u[last]!);
  const piece = pieceOf(table.u, u);
  const [a, b, c, d] = table.pieces[piece]!;
  const step = table.u[piece + 1]! - table.u[piece]!;
  const t = (u - table.u[piece]!) / step;
  return table.travel[piece]! + step * t * (a + t * (b / 2 + t * (c / 3 + (t * d) / 4)));
}

/** Bump travel at which the spring has travelled s from u = 0; refused where the ratio falls to nothing before. */
export function bumpAt(motion: MotionRatio, s: number): number | Refusal {
  const { ratio, rise, table } = motion;
  if (!table) {
    const under = ratio * ratio + 2 * rise * s;
    return under > 0
      ? (2 * s) / (ratio + Math.sqrt(under))
      : refuse('The motion ratio falls to nothing before the spring travels that far.');
  }
  const last = table.u.length - 1;
  if (s <= table.travel[0]!) return table.u[0]! + (s - table.travel[0]!) / table.ratio[0]!;
  if (s >= table.travel[last]!) return table.u[last]! + (s - table.travel[last]!) / table.ratio[last]!;
  const piece = pieceOf(table.travel, s);
  let low = table.u[piece]!;
  let high = table.u[piece + 1]!;
  let u = low + ((high - low) * (s - table.travel[piece]!)) / (table.travel[piece + 1]! - table.travel[piece]!);
  // Newton inside a bracket: the travel rises with u.
  for (let n = 0; n < 60; n++) {
    const over = springTravel(motion, u) - s;
    if (over > 0) high = u;
    else low = u;
    const next = u - over / ratioAt(motion, u);
    const step = next > low && next < high ? next - u : (low + high) / 2 - u;
    u += step;
    if (Math.abs(step) < 1e-15) break;
  }
  return u;
}

/** Wheel travel (m, bump positive) from bump travel `here` on, until the spring has travelled s further; refused where the ratio falls to nothing before. */
export function wheelTravel(motion: MotionRatio, here: number, s: number): number | Refusal {
  const there = bumpAt(motion, springTravel(motion, here) + s);
  return typeof there === 'number' ? there - here : there;
}

/** The same spring seen from a wheel whose lever is longer: `lever` is old over new, and each spring travel takes that much more wheel travel. */
export function withLever({ ratio, rise, table }: MotionRatio, lever: number): MotionRatio {
  const even = { ratio: ratio * lever, rise: rise * lever * lever };
  if (!table) return even;
  return {
    ...even,
    table: {
      u: table.u.map((u) => u / lever),
      ratio: table.ratio.map((one) => one * lever),
      travel: table.travel,
      pieces: table.pieces.map(([a, b, c, d]) => [a * lever, b * lever, c * lever, d * lever] as const),
    },
  };
}
