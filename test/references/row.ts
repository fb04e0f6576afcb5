/** A published or derived value, and how close to it we have to come. */
export interface Row {
  readonly id: string;
  /** Where it is printed, or that it is exact by derivation, common practice, or from memory. */
  readonly source: string;
  readonly input: string;
  readonly got: () => number;
  readonly expected: number;
  /** Relative, unless `absolute`. */
  readonly tolerance: number;
  readonly absolute?: true;
  readonly why: string;
}
/** How far off a row is, in parts of its tolerance: up to 1 is right. Exact rows allow the rounding of a few operations. */
export function off({ got, expected, tolerance, absolute }: Row): number {
  const value = got();
  if (!Number.isFinite(value)) return Number.POSITIVE_INFINITY;
  return Math.abs(value - expected) / (absolute ? tolerance : tolerance * Math.abs(expected));
}
