import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Curve, isRefusal, type Refusal } from '../../../core/catalog.js';
import {
  compressionAt,
  type ForceLaw,
  forceAt,
  lawOfForces,
  lawOfRates,
  linearLaw,
  rateAt,
  riseAt,
  withBeside,
  withSeries,
} from '../../../core/subjects/springs/law.js';
import { inParallelRate, inSeriesRate } from './rates.js';

const known = (made: ForceLaw | Refusal): ForceLaw => {
  if (isRefusal(made)) throw new Error(made.refused);
  return made;
};
const rate = fc.double({ min: 5e3, max: 3e5, noNaN: true });
const part = fc.double({ min: 0, max: 1, noNaN: true });
/** Two to five points, at least 5 mm apart. */
const rates = fc
  .tuple(
    fc.array(fc.tuple(fc.double({ min: 0.005, max: 0.06, noNaN: true }), rate), { minLength: 2, maxLength: 5 }),
    fc.constantFrom('line' as const, 'step' as const),
    part,
  )
  .map(([points, between, start]): Curve => {
    let at = start * 0.02 - 0.005;
    return { x: points.map(([gap]) => (at += gap)), y: points.map(([, one]) => one), between };
  });
/** Any spring that can be told: progressive or not, with another beside it, a helper that closes, an isolator. */
const laws: fc.Arbitrary<ForceLaw> = fc
  .tuple(fc.oneof(rates.map(lawOfRates).map(known), rate.map(linearLaw)), rate, part, rate, part, rate, fc.nat(7))
  .map(([law, beside, gap, helper, closes, pad, which]) => {
    let made = law;
    if (which & 1) made = withBeside(made, beside, gap * 0.05);
    if (which & 2) made = withSeries(made, helper, 50 + closes * 4000);
    if (which & 4) made = withSeries(made, pad * 10);
    return made;
  });

describe('force laws', () => {
  it('carry no load when loose, and never pull', () => {
    fc.assert(
      fc.property(
        laws,
        part,
        (law, x) => forceAt(law, 0) === 0 && forceAt(law, -x) === 0 && rateAt(law, -x - 1e-9) === 0 && compressionAt(law, -x) === 0,
      ),
    );
  });
  it('are inverted by their inverse', () => {
    fc.assert(
      fc.property(laws, part, (law, x) => {
        const compression = 0.3 * x;
        expect(compressionAt(law, forceAt(law, compression))).toBeCloseTo(compression, 12);
      }),
    );
  });
  it('rise everywhere, without jumps, by their rate', () => {
    fc.assert(
      fc.property(laws, part, (law, x) => {
        const at = 0.001 + 0.3 * x;
        const step = 1e-7;
        const [below, here, above] = [forceAt(law, at - step), forceAt(law, at), forceAt(law, at + step)];
        expect(below).toBeLessThan(here);
        expect(here).toBeLessThan(above);
        // A knee may lie between: the chord is then between both rates.
        const chord = (above - below) / (2 * step);
        const [least, most] = [
          Math.min(rateAt(law, at - step), rateAt(law, at + step)),
          Math.max(rateAt(law, at - step), rateAt(law, at + step)),
        ];
        expect(chord).toBeGreaterThan(least * (1 - 1e-4));
        expect(chord).toBeLessThan(most * (1 + 1e-4));
      }),
    );
  });
  it('have a rate that rises by riseAt', () => {
    const law = withSeries(known(lawOfRates({ x: [0, 0.1], y: [3e4, 9e4], between: 'line' })), 9e5);
    for (const x of [0.01, 0.05, 0.09]) expect(riseAt(law, x)).toBeCloseTo((rateAt(law, x + 1e-6) - rateAt(law, x - 1e-6)) / 2e-6, 0);
  });
  it('in series share the force, side by side the travel', () => {
    fc.assert(
      fc.property(rates.map(lawOfRates).map(known), rate, part, (law, other, f) => {
        const force = 6000 * f;
        expect(compressionAt(withSeries(law, other), force)).toBeCloseTo(compressionAt(law, force) + force / other, 12);
        const x = 0.15 * f;
        const both = forceAt(law, x) + other * x;
        expect(Math.abs(forceAt(withBeside(law, other, 0), x) - both)).toBeLessThan(1e-9 * (1 + both));
      }),
    );
  });
  it('agree with series and parallel of plain springs', () => {
    fc.assert(
      fc.property(rate, rate, (a, b) => {
        expect(rateAt(withSeries(linearLaw(a), b), 0.05) / inSeriesRate(a, b)).toBeCloseTo(1, 12);
        expect(rateAt(withBeside(linearLaw(a), b, 0), 0.05) / inParallelRate(a, b)).toBeCloseTo(1, 12);
        expect(inSeriesRate(a, b)).toBeLessThan(Math.min(a, b));
        expect(inSeriesRate(a, a)).toBeCloseTo(a / 2, 6);
      }),
    );
  });
  it('a helper closes at its force and the main spring goes on alone', () => {
    fc.assert(
      fc.property(rate, rate, part, (main, helper, f) => {
        const closes = 100 + 2000 * f;
        const law = withSeries(linearLaw(main), helper, closes);
        expect(rateAt(law, compressionAt(law, closes * 0.9)) / inSeriesRate(main, helper)).toBeCloseTo(1, 9);
        expect(rateAt(law, compressionAt(law, closes * 1.1)) / main).toBeCloseTo(1, 9);
        expect(compressionAt(law, closes * 2)).toBeCloseTo((closes * 2) / main + closes / helper, 12);
      }),
    );
  });
  it('of a table of forces go through its points, and on at its last slope', () => {
    const law = known(lawOfForces({ x: [0.01, 0.03, 0.05], y: [200, 800, 1800], between: 'line' }));
    expect([0.01, 0.03, 0.05, 0.07].map((x) => Math.round(forceAt(law, x) * 1e6) / 1e6)).toEqual([200, 800, 1800, 2800]);
    expect(forceAt(law, 0.005)).toBeCloseTo(100, 9);
  });
  it('evenly or in two steps are not the same: 25 to 45 N/mm over 80 mm', () => {
    const even = known(lawOfRates({ x: [0, 0.08], y: [25e3, 45e3], between: 'line' }));
    const steps = known(lawOfRates({ x: [0, 0.08], y: [25e3, 45e3], between: 'step' }));
    expect(forceAt(even, 0.08)).toBeCloseTo(2800, 9);
    expect(forceAt(steps, 0.08)).toBeCloseTo(2000, 9);
    expect(rateAt(even, 0.1)).toBe(45e3);
    expect(rateAt(steps, 0.1)).toBe(45e3);
    expect(rateAt(steps, 0.079)).toBe(25e3);
  });
  it('refuse what no spring does', () => {
    const refused = (made: ForceLaw | Refusal): string => (isRefusal(made) ? made.refused : 'taken');
    expect(refused(lawOfRates({ x: [0, 0.1], y: [3e4, 0], between: 'line' }))).toContain('above zero');
    expect(refused(lawOfForces({ x: [0, 0.02, 0.04], y: [0, 900, 800], between: 'line' }))).toContain('must rise');
    expect(refused(lawOfForces({ x: [0, 0.02], y: [100, 900], between: 'line' }))).toContain('start with 0');
    expect(refused(lawOfForces({ x: [0], y: [0], between: 'line' }))).toContain('at least one point');
  });
});
