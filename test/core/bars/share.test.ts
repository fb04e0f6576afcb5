import { describe, expect, it } from 'vitest';
import { twistRatio } from '../../../core/subjects/bars/ratio.js';
import { barForShare } from '../../../core/subjects/bars/share.js';

describe('a bar for a share of the roll stiffness', () => {
  it('is found in the share that it makes', () => {
    for (const springs of [0.4, 0.55, 0.6])
      for (const wanted of [0.35, 0.5, 0.62, 0.8]) {
        const front = barForShare(springs, wanted, 'front');
        expect((springs + front) / (1 + front)).toBeCloseTo(wanted, 12);
        const rear = barForShare(springs, wanted, 'rear');
        expect(springs / (1 + rear)).toBeCloseTo(wanted, 12);
      }
  });
  it('is below zero where a bar at that end works the other way', () => {
    expect(barForShare(0.6, 0.8, 'rear')).toBeCloseTo(-0.25, 12);
    expect(barForShare(0.6, 0.5, 'front')).toBeCloseTo(-0.2, 12);
    expect(barForShare(0.6, 0.6, 'rear')).toBe(0);
  });
});

describe('one bar over another', () => {
  const bar = (outer: number, bore = 0, lever = 1) => ({ outer, bore, lever });
  it('follows the polar second moments of REFERENCES A3: 40863.42 and 27933.98 mm^4', () => {
    expect(twistRatio(bar(25.4), bar(25.4, 19.05))).toBeCloseTo(27_933.98 / 40_863.42, 6);
    expect(twistRatio(bar(28, 20), bar(22))).toBeCloseTo(22_998.03 / 44_635.75, 6);
  });
  it('is 0.68359375 at a bore of three quarters: REFERENCES A4', () => {
    expect(twistRatio(bar(1), bar(1, 0.75))).toBeCloseTo(0.68359375, 12);
  });
  it('goes with the lever squared, and there and back is nothing', () => {
    expect(twistRatio(bar(1, 0, 9.5), bar(1, 0, 8))).toBeCloseTo((9.5 / 8) ** 2, 12);
    expect(twistRatio(bar(22, 3, 9), bar(25, 5, 8)) * twistRatio(bar(25, 5, 8), bar(22, 3, 9))).toBeCloseTo(1, 12);
  });
});
