import { describe, expect, it } from 'vitest';
import { type Bar, barMass, barStiffness, secondMomentOfArea } from '../../../core/subjects/bars/bar.js';

const mm = 1e-3;
const end = { lever: 0.2, arm: 0.2 };
/** REFERENCES A5: D 22, B 900, A 200 mm, G 79.3, E 206.8 GPa. */
const a5 = (over: Partial<Bar> = {}): Bar => ({
  outer: 22 * mm,
  bore: 0,
  length: 0.9,
  ends: [end, end],
  youngsModulus: 206.8e9,
  shearModulus: 79.3e9,
  link: Number.POSITIVE_INFINITY,
  ...over,
});
/** Per relative displacement of the ends, N/m. */
const rate = (bar: Bar): number => barStiffness(bar) / bar.ends[0].lever ** 2;

describe('a bar as a beam', () => {
  it('has the sections of REFERENCES A3 (exact)', () => {
    const polar = (outer: number, bore: number) => 2 * secondMomentOfArea(outer * mm, bore * mm) * 1e12;
    expect(polar(25.4, 0)).toBeCloseTo(40863.42, 1);
    expect(polar(25.4, 19.05)).toBeCloseTo(27933.98, 1);
    expect(polar(22, 0)).toBeCloseTo(22998.03, 1);
    expect(polar(28, 20)).toBeCloseTo(44635.75, 1);
  });
  it('keeps 0.684 of its stiffness and 0.4375 of its mass with a bore of three quarters (A4, exact)', () => {
    expect(secondMomentOfArea(1, 0.75) / secondMomentOfArea(1, 0)).toBeCloseTo(0.68359375, 12);
    expect(barMass(1, 0.75, 1, 1) / barMass(1, 0, 1, 1)).toBeCloseTo(0.4375, 12);
  });
  it('twists and bends as REFERENCES A5: 50.6595, 445.874, together 45.4909 N/mm (beam theory)', () => {
    expect(rate(a5({ youngsModulus: Number.POSITIVE_INFINITY })) / 1000).toBeCloseTo(50.6595, 3);
    expect(rate(a5({ shearModulus: Number.POSITIVE_INFINITY })) / 1000).toBeCloseTo(445.874, 2);
    expect(rate(a5()) / 1000).toBeCloseTo(45.4909, 3);
  });
  it('is A6 in inches: 267.971 lbf/in with G 12.0e6 and E 30e6 psi', () => {
    const inch = 0.0254;
    const psi = 6894.757293168361;
    const inches = { lever: 8 * inch, arm: 8 * inch };
    const bar = a5({ outer: 0.875 * inch, length: 36 * inch, ends: [inches, inches], youngsModulus: 30e6 * psi, shearModulus: 12e6 * psi });
    expect(rate(bar) / 175.12683524647636).toBeCloseTo(267.971, 3);
  });
  it('turns as the shaft of REFERENCES A1: solid 30 mm, 0.4 m, G 77 GPa, 250 N m, 0.93572 deg', () => {
    const shaft = a5({ outer: 0.03, length: 0.4, shearModulus: 77e9, youngsModulus: Number.POSITIVE_INFINITY });
    expect((250 / barStiffness(shaft)) * (180 / Math.PI)).toBeCloseTo(0.93572, 5);
  });
  it('winds as the wire of REFERENCES A2: 0.5 mm, 25 m, 10 turns, G 82 GPa, 1.264543e-3 N m', () => {
    const wire = a5({ outer: 0.0005, length: 25, shearModulus: 82e9, youngsModulus: Number.POSITIVE_INFINITY });
    expect(barStiffness(wire) * 20 * Math.PI).toBeCloseTo(1.264543e-3, 9);
  });
  it('is softer through links: 2/k_link of compliance in series', () => {
    expect(rate(a5({ link: 400000 }))).toBeCloseTo(1 / (1 / rate(a5()) + 2 / 400000), 6);
  });
  it('stands between its two holes where the sides are set apart', () => {
    const long = { lever: 0.24, arm: 0.24 };
    const between = (a: typeof end, b: typeof end) => barStiffness(a5({ ends: [a, b] })) / (a.lever * b.lever);
    expect(between(long, end)).toBeGreaterThan(between(long, long));
    expect(between(long, end)).toBeLessThan(between(end, end));
    expect(between(long, end)).toBeCloseTo(between(end, long), 6);
  });
});
