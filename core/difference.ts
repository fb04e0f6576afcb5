/** The change of a number between two evaluations, with the doubt of the change: what both share cancels. */
import { isRefusal, type Refusal } from './catalog.js';
import { type Evaluation, largestFirst, type Share, widthOf } from './engine.js';

export interface DifferenceShare extends Share {
  /** Whether the error is of both, or of one alone. */
  readonly side: 'from' | 'to' | 'both';
}
export interface Difference {
  readonly from: number;
  readonly to: number;
  readonly change: number;
  /** Half-width of the change that holds 19 in 20, SI. */
  readonly within: number;
  /** What it is made of, largest first. */
  readonly shares: readonly DifferenceShare[];
}
/** There is no change to tell, because one or both have no value. */
export interface NoDifference extends Refusal {
  readonly missing: 'from' | 'to' | 'both';
}
export interface Compared {
  /** Two states of one car share its estimates; two cars share only the facts that have one source (a copied car). */
  readonly sameCar: boolean;
  /** The path in the second evaluation, where it is another one: the rear against the front. */
  readonly toPath?: string;
}

const minus = (to: number, from: number): number => (Number.isFinite(to) && Number.isFinite(from) ? to - from : Number.POSITIVE_INFINITY);

function missingSide(from: number | Refusal, to: number | Refusal): NoDifference | undefined {
  if (isRefusal(from)) return { ...from, missing: isRefusal(to) ? 'both' : 'from' };
  return isRefusal(to) ? { ...to, missing: 'to' } : undefined;
}

/** Subtracts the contributions error by error, before they are squared: errors that both share cancel as far as they act alike. */
function sharesOf(from: readonly Share[], to: readonly Share[], sameCar: boolean): DifferenceShare[] {
  const shares: DifferenceShare[] = [];
  const before = new Map(from.map((share) => [share.error, share]));
  for (const share of to) {
    const old = sameCar || share.evidence !== 'rule' ? before.get(share.error) : undefined;
    if (!old) {
      shares.push({ ...share, side: 'to' });
      continue;
    }
    before.delete(share.error);
    const amount = minus(share.amount, old.amount);
    const bend = share.bend - old.bend;
    if (amount !== 0 || bend !== 0) {
      shares.push({ ...share, paths: [...new Set([...old.paths, ...share.paths])], amount, bend, side: 'both' });
    }
  }
  for (const share of before.values()) shares.push({ ...share, amount: -share.amount, bend: -share.bend, side: 'from' });
  return shares.sort(largestFirst);
}

/**
 * The change of a number from one evaluation to another of the same catalog.
 * Both ends are worked out in full, so that a change across a limit (a stop, a spring that closes) is right however large it is.
 */
export function difference(a: Evaluation, b: Evaluation, path: string, { sameCar, toPath = path }: Compared): Difference | NoDifference {
  const from = a.number(path);
  const to = b.number(toPath);
  if (isRefusal(from) || isRefusal(to)) return missingSide(from, to)!;
  const shares = sharesOf(a.shares(path), b.shares(toPath), sameCar);
  return { from, to, change: to - from, within: widthOf(shares), shares };
}
