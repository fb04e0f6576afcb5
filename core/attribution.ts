/** Whose doing a change is: the difference of a figure between two cars split over the inputs that differ, in no order (Shapley's value). */
import type { InPieces } from './pieces.js';

export interface Attribution {
  /** What each of the differing groups adds, in their order; together they are the whole change. */
  readonly parts: readonly number[];
  /** Standard error of each part: 0 where every order was worked out. */
  readonly errors: readonly number[];
}
/** Up to here every subset is worked out: 4096 evaluations. */
const exactUpTo = 12;

/**
 * Splits `value(all) - value(none)` over `count` groups of inputs.
 * @param value the figure with the groups whose bits are set as the other car has them; called once for each subset
 * @param orders how many random orders to draw where there are too many groups for every subset; at least 2
 * @param random numbers in [0, 1), for those orders
 * @returns undefined where a mixture of both cars has no such figure
 * @source L. S. Shapley, "A Value for n-Person Games", 1953; equal to the mean over all orders of changing one group after another
 */
export function* attribute(
  count: number,
  value: (mask: bigint) => number | undefined,
  orders: number,
  random: () => number,
): InPieces<Attribution | undefined> {
  const seen = new Map<bigint, number>();
  function* at(mask: bigint): InPieces<number | undefined> {
    const known = seen.get(mask);
    if (known !== undefined) return known;
    yield;
    const fresh = value(mask);
    if (fresh !== undefined) seen.set(mask, fresh);
    return fresh;
  }
  return yield* count <= exactUpTo ? exact(count, at) : sampled(count, at, orders, random);
}

type At = (mask: bigint) => InPieces<number | undefined>;
function* exact(count: number, at: At): InPieces<Attribution | undefined> {
  const parts = new Array<number>(count).fill(0);
  // Weight of a subset of size s that one group joins: s!(n-s-1)!/n!.
  const weight = Array.from({ length: count }, (_, s) => {
    let inverse = count;
    for (let k = 1; k <= s; k++) inverse *= (count - k) / k;
    return 1 / inverse;
  });
  for (let mask = 0n; mask < 1n << BigInt(count); mask++) {
    let size = 0;
    for (let k = 0n; k < BigInt(count); k++) if (mask & (1n << k)) size++;
    const without = yield* at(mask);
    if (without === undefined) return undefined;
    for (let k = 0; k < count; k++) {
      const bit = 1n << BigInt(k);
      if (mask & bit) continue;
      const joined = yield* at(mask | bit);
      if (joined === undefined) return undefined;
      parts[k]! += weight[size]! * (joined - without);
    }
  }
  return { parts, errors: parts.map(() => 0) };
}

function* sampled(count: number, at: At, orders: number, random: () => number): InPieces<Attribution | undefined> {
  const mean = new Array<number>(count).fill(0);
  const squares = new Array<number>(count).fill(0);
  const order = Array.from({ length: count }, (_, k) => k);
  for (let drawn = 1; drawn <= orders; drawn++) {
    for (let k = count - 1; k > 0; k--) {
      const other = Math.floor(random() * (k + 1));
      [order[k], order[other]] = [order[other]!, order[k]!];
    }
    let mask = 0n;
    let before = yield* at(mask);
    for (const k of order) {
      mask |= 1n << BigInt(k);
      const after = yield* at(mask);
      if (before === undefined || after === undefined) return undefined;
      // Welford's running mean and squares: no difference of large sums.
      const step = after - before - mean[k]!;
      mean[k]! += step / drawn;
      squares[k]! += step * (after - before - mean[k]!);
      before = after;
    }
  }
  return { parts: mean, errors: squares.map((q) => Math.sqrt(q / (orders - 1) / orders)) };
}
