/**
 * A spring's force law: force against compression, its inverse and its tangent rate, for every kind of spring.
 * A coil never pulls: below zero compression the force is zero.
 */
import type { Curve, Refusal } from '../../catalog.js';
import { refuse } from '../../catalog.js';

/**
 * The law in pieces, each starting at compression `x` with force `f`. Inside a piece the rising spring is compressed by s:
 * `F = f + rate s + rise s^2/2`, while springs in series with it give way by `give` metres a newton: `X = x + s + give (F - f)`.
 * Pieces are contiguous from 0, 0; the last one has no end.
 */
export interface ForceLaw {
  readonly x: readonly number[];
  readonly f: readonly number[];
  readonly rate: readonly number[];
  readonly rise: readonly number[];
  readonly give: readonly number[];
}

/** One rate for all its travel, N/m, above 0. */
export const linearLaw = (rate: number): ForceLaw => ({ x: [0], f: [0], rate: [rate], rise: [0], give: [0] });

/** The piece in which a rising list's value lies. */
function pieceOf(starts: readonly number[], value: number): number {
  let piece = starts.length - 1;
  while (piece > 0 && starts[piece]! > value) piece--;
  return piece;
}
/** Root of `a/2 s^2 + b s = c` that grows from 0 with c, without cancellation. */
const grown = (a: number, b: number, c: number): number => (a === 0 ? c / b : (2 * c) / (b + Math.sqrt(b * b + 2 * a * c)));

/** How far the rising spring of the piece is compressed at total compression X. */
function insidePiece(law: ForceLaw, piece: number, compression: number): number {
  const give = law.give[piece]!;
  const over = compression - law.x[piece]!;
  return give === 0 ? over : grown(give * law.rise[piece]!, 1 + give * law.rate[piece]!, over);
}

/** Force (N) at a compression (m) from free; 0 when it is loose. */
export function forceAt(law: ForceLaw, compression: number): number {
  if (compression <= 0) return 0;
  const piece = law.x.length === 1 ? 0 : pieceOf(law.x, compression);
  const s = insidePiece(law, piece, compression);
  return law.f[piece]! + s * (law.rate[piece]! + (law.rise[piece]! * s) / 2);
}

/** Tangent rate dF/dx (N/m) at a compression (m); 0 when it is loose. At a knee: of the stiffer side's start. */
export function rateAt(law: ForceLaw, compression: number): number {
  if (compression < 0) return 0;
  const piece = law.x.length === 1 ? 0 : pieceOf(law.x, compression);
  const rate = law.rate[piece]! + law.rise[piece]! * insidePiece(law, piece, compression);
  return rate / (1 + law.give[piece]! * rate);
}

/** How much the tangent rate rises with compression, d2F/dx2 (N/m per m); 0 when it is loose. */
export function riseAt(law: ForceLaw, compression: number): number {
  if (compression < 0) return 0;
  const piece = pieceOf(law.x, compression);
  const rate = law.rate[piece]! + law.rise[piece]! * insidePiece(law, piece, compression);
  return law.rise[piece]! / (1 + law.give[piece]! * rate) ** 3;
}

/** Compression (m) that carries a force (N): the law's inverse, which for a progressive spring is not force over rate. 0 for no force. */
export function compressionAt(law: ForceLaw, force: number): number {
  if (force <= 0) return 0;
  const piece = law.f.length === 1 ? 0 : pieceOf(law.f, force);
  const over = force - law.f[piece]!;
  return law.x[piece]! + grown(law.rise[piece]!, law.rate[piece]!, over) + law.give[piece]! * over;
}

/**
 * The law of a spring whose rate is known along its travel: evenly rising from point to point (`line`) or in steps.
 * Before the first point its rate is the first one, beyond the last point the last one.
 */
export function lawOfRates({ x, y, between }: Curve): ForceLaw | Refusal {
  if (!y.every((rate) => rate > 0)) return refuse('A spring rate must stay above zero over the whole travel.');
  const at: number[] = [];
  const rate: number[] = [];
  const rise: number[] = [];
  const add = (start: number, first: number, slope: number): void => {
    at.push(start);
    rate.push(first);
    rise.push(slope);
  };
  if (x[0]! > 0) add(0, y[0]!, 0);
  x.forEach((start, i) => {
    const next = x[i + 1];
    const slope = between === 'step' || next === undefined ? 0 : (y[i + 1]! - y[i]!) / (next - start);
    if (next === undefined || next > 0) add(Math.max(start, 0), y[i]! + slope * Math.max(-start, 0), slope);
  });
  const f = [0];
  for (let i = 1; i < at.length; i++) {
    const s = at[i]! - at[i - 1]!;
    f.push(f[i - 1]! + s * (rate[i - 1]! + (rise[i - 1]! * s) / 2));
  }
  return { x: at, f, rate, rise, give: at.map(() => 0) };
}

/** The law of a spring whose force was read at several compressions, straight from one point to the next, and on at the last slope. */
export function lawOfForces({ x, y }: Curve): ForceLaw | Refusal {
  const points = x.map((at, i) => [at, y[i]!] as const);
  if (points[0]?.[0] !== 0) points.unshift([0, 0]);
  if (points[0]?.[1] !== 0) return refuse('A free spring has no force: the table of forces must start with 0 at 0.');
  if (points.length < 2) return refuse('A table of forces needs at least one point beyond the free spring.');
  const rate = points.slice(1).map(([at, force], i) => (force - points[i]![1]) / (at - points[i]![0]));
  if (!rate.every((one) => one > 0 && Number.isFinite(one)))
    return refuse('The force of a spring must rise with its compression, point by point.');
  const starts = points.slice(0, -1);
  return { x: starts.map(([at]) => at), f: starts.map(([, force]) => force), rate, rise: rate.map(() => 0), give: rate.map(() => 0) };
}

/** Splits the piece that holds a value of `x` or `f` so that a piece starts there. */
function splitAt(law: ForceLaw, along: 'x' | 'f', value: number): { law: ForceLaw; piece: number } {
  const piece = pieceOf(law[along], value);
  if (law[along][piece] === value) return { law, piece };
  const compression = along === 'x' ? value : compressionAt(law, value);
  const s = insidePiece(law, piece, compression);
  const cut = (list: readonly number[], started: number): number[] => [...list.slice(0, piece + 1), started, ...list.slice(piece + 1)];
  return {
    piece: piece + 1,
    law: {
      x: cut(law.x, compression),
      f: cut(law.f, forceAt(law, compression)),
      rate: cut(law.rate, law.rate[piece]! + law.rise[piece]! * s),
      rise: cut(law.rise, law.rise[piece]!),
      give: cut(law.give, law.give[piece]!),
    },
  };
}

/**
 * The law with a linear spring in series (an isolator, a helper or tender spring) of `rate` N/m. Where it closes at a force, it gives way no further.
 */
export function withSeries(law: ForceLaw, rate: number, closesAt = Number.POSITIVE_INFINITY): ForceLaw {
  const { law: split, piece } = closesAt < Number.POSITIVE_INFINITY ? splitAt(law, 'f', closesAt) : { law, piece: law.x.length };
  return {
    ...split,
    x: split.x.map((x, i) => x + Math.min(split.f[i]!, closesAt) / rate),
    give: split.give.map((give, i) => (i < piece ? give + 1 / rate : give)),
  };
}

/** The law with a linear spring of `rate` N/m beside it that touches after `gap` metres. Not for a law that already has springs in series. */
export function withBeside(law: ForceLaw, rate: number, gap: number): ForceLaw {
  const { law: split, piece } = splitAt(law, 'x', gap);
  return {
    ...split,
    f: split.f.map((f, i) => f + rate * Math.max(split.x[i]! - gap, 0)),
    rate: split.rate.map((own, i) => (i < piece ? own : own + rate)),
  };
}
