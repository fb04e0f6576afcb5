/**
 * Motion ratio: change of spring length per change of vertical wheel travel (spring over wheel), a function of bump travel u (m),
 * 0 where the car stood when its height was measured. Its square, not itself, carries a rate from spring to wheel.
 */
import { type Curve, type Refusal, refuse } from '../catalog.js';

/** `ratio` at u = 0 and its even `rise` (1/m); or, where there is a `table`, the table with the spring travel at each of its points. */
export interface MotionRatio {
  readonly ratio: number;
  readonly rise: number;
  readonly table?: { readonly u: readonly number[]; readonly ratio: readonly number[]; readonly travel: readonly number[] };
}

/** A ratio that is the same, or changes evenly, over the travel. */
export const evenRatio = (ratio: number, rise: number): MotionRatio => ({ ratio, rise });

const pieceOf = (u: readonly number[], value: number): number => {
  let piece = u.length - 2;
  while (piece > 0 && u[piece]! > value) piece--;
  return piece;
};
const slopeOf = (u: readonly number[], ratio: readonly number[], piece: number): number =>
  (ratio[piece + 1]! - ratio[piece]!) / (u[piece + 1]! - u[piece]!);

/** A ratio read at several wheel heights, straight from one to the next; held beyond the ends. */
export function ratioOfTable({ x, y }: Curve): MotionRatio | Refusal {
  if (!y.every((ratio) => ratio > 0)) return refuse('A motion ratio must stay above zero over the whole travel.');
  if (x.length < 2) return { ratio: y[0]!, rise: 0 };
  const travel = [0];
  for (let i = 1; i < x.length; i++) travel.push(travel[i - 1]! + ((y[i]! + y[i - 1]!) / 2) * (x[i]! - x[i - 1]!));
  const open = { ratio: 0, rise: 0, table: { u: x, ratio: y, travel } };
  const atRide = springTravel(open, 0);
  const table = { u: x, ratio: y, travel: travel.map((s) => s - atRide) };
  return { ratio: ratioAt(open, 0), rise: ratioRise(open, 0), table };
}

/** Motion ratio at bump travel u. */
export function ratioAt({ ratio, rise, table }: MotionRatio, u: number): number {
  if (!table) return ratio + rise * u;
  const last = table.u.length - 1;
  if (u <= table.u[0]!) return table.ratio[0]!;
  if (u >= table.u[last]!) return table.ratio[last]!;
  const piece = pieceOf(table.u, u);
  return table.ratio[piece]! + slopeOf(table.u, table.ratio, piece) * (u - table.u[piece]!);
}

/** Its change per bump travel, 1/m. */
export function ratioRise({ rise, table }: MotionRatio, u: number): number {
  if (!table) return rise;
  if (u < table.u[0]! || u > table.u[table.u.length - 1]!) return 0;
  const piece = pieceOf(table.u, u);
  return slopeOf(table.u, table.ratio, piece);
}

/** Spring travel (m, compression positive) from u = 0 to bump travel u: the integral of the ratio. */
export function springTravel({ ratio, rise, table }: MotionRatio, u: number): number {
  if (!table) return u * (ratio + (rise * u) / 2);
  const last = table.u.length - 1;
  if (u <= table.u[0]!) return table.travel[0]! + table.ratio[0]! * (u - table.u[0]!);
  if (u >= table.u[last]!) return table.travel[last]! + table.ratio[last]! * (u - table.u[last]!);
  const piece = pieceOf(table.u, u);
  const over = u - table.u[piece]!;
  return table.travel[piece]! + over * (table.ratio[piece]! + (slopeOf(table.u, table.ratio, piece) * over) / 2);
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
  const first = table.ratio[piece]!;
  const over = s - table.travel[piece]!;
  return table.u[piece]! + (2 * over) / (first + Math.sqrt(first * first + 2 * slopeOf(table.u, table.ratio, piece) * over));
}

/** The same spring seen from a wheel whose lever is longer: `lever` is old over new, and each spring travel takes that much more wheel travel. */
export function withLever({ ratio, rise, table }: MotionRatio, lever: number): MotionRatio {
  const even = { ratio: ratio * lever, rise: rise * lever * lever };
  return table
    ? { ...even, table: { u: table.u.map((u) => u / lever), ratio: table.ratio.map((r) => r * lever), travel: table.travel } }
    : even;
}

/** Wheel travel (m, bump positive) from bump travel `here` on, until the spring has travelled s further; refused where the ratio falls to nothing before. */
export function wheelTravel(motion: MotionRatio, here: number, s: number): number | Refusal {
  const there = bumpAt(motion, springTravel(motion, here) + s);
  return typeof there === 'number' ? there - here : there;
}
