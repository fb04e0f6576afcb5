/** The value below which the share `q` of the samples lies, by linear interpolation between order statistics. */
export function quantile(samples: readonly number[], q: number): number {
  const sorted = samples.toSorted((a, b) => a - b);
  const at = (sorted.length - 1) * q;
  const low = sorted[Math.floor(at)];
  const high = sorted[Math.ceil(at)];
  if (low === undefined || high === undefined) throw new Error('no samples');
  return low + (high - low) * (at - Math.floor(at));
}
export const median = (samples: readonly number[]): number => quantile(samples, 0.5);
