import { describe, expect, it } from 'vitest';
import { type Bar, barRate, secondMomentOfArea, withLinks } from '../../../core/bars/bar.js';

const mm = 1e-3;
/** REFERENCES A5: D 22, B 900, A 200 mm, G 79.3, E 206.8 GPa. */
const a5 = (over: Partial<Bar> = {}): Bar => ({
  outer: 22 * mm,
  bore: 0,
  length: 0.9,
  lever: 0.2,
  arm: 0.2,
  armStiffness: 206.8e9 * secondMomentOfArea(22 * mm, 0),
  shearModulus: 79.3e9,
  ...over,
});

describe('a bar as a beam', () => {
  it('has the sections of REFERENCES A3', () => {
    const polar = (outer: number, bore: number) => 2 * secondMomentOfArea(outer * mm, bore * mm) * 1e12;
    expect(polar(25.4, 0)).toBeCloseTo(40863.42, 1);
    expect(polar(25.4, 19.05)).toBeCloseTo(27933.98, 1);
    expect(polar(22, 0)).toBeCloseTo(22998.03, 1);
    expect(polar(28, 20)).toBeCloseTo(44635.75, 1);
  });
  it('keeps 0.684 of its stiffness with a bore of three quarters (A4)', () => {
    expect(secondMomentOfArea(1, 0.75) / secondMomentOfArea(1, 0)).toBeCloseTo(0.68359375, 12);
  });
  it('twists and bends as REFERENCES A5: 50.6595, 445.874, together 45.4909 N/mm', () => {
    expect(barRate(a5({ armStiffness: Number.POSITIVE_INFINITY })) / 1000).toBeCloseTo(50.6595, 3);
    expect(barRate(a5({ length: 1e-12 })) / 1000).toBeCloseTo(445.874, 2);
    expect(barRate(a5()) / 1000).toBeCloseTo(45.4909, 3);
  });
  it('is A6 in inches: 267.971 lbf/in with G 12.0e6 and E 30e6 psi', () => {
    const inch = 0.0254;
    const psi = 6894.757293168361;
    const outer = 0.875 * inch;
    const bar: Bar = {
      outer,
      bore: 0,
      length: 36 * inch,
      lever: 8 * inch,
      arm: 8 * inch,
      armStiffness: 30e6 * psi * secondMomentOfArea(outer, 0),
      shearModulus: 12e6 * psi,
    };
    expect(barRate(bar) / 175.12683524647636).toBeCloseTo(267.971, 3);
  });
  it('is softer through links, and as it was through rigid ones', () => {
    expect(withLinks(40000, Number.POSITIVE_INFINITY)).toBe(40000);
    expect(withLinks(40000, 400000)).toBeCloseTo(1 / (1 / 40000 + 1 / 200000), 6);
  });
});
