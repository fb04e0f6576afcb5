import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { isRefusal, type Refusal } from '../../../core/catalog.js';
import { studentHalfWidth } from '../../../core/numeric/student.js';
import { powerGrip } from '../../../core/subjects/cornering/grip.js';
import { axleLimit } from '../../../core/subjects/cornering/limits.js';
import { steadyTurn } from '../../../core/subjects/cornering/model.js';
import { fitCoefficient, fitLaps, fitPairs, type Lap, lapAcceleration } from '../../../core/subjects/grip/fit.js';
import { normal, seeded } from '../cars.js';
import { carL2 } from '../cornering/cars.js';

function known<T extends object>(value: T | Refusal): T {
  if (isRefusal(value)) throw new Error(value.refused);
  return value;
}
const reference = 3000;
const lawOf = (coefficient: number, exponent: number) => (load: number) => coefficient * (load / reference) ** -exponent * load;

describe("Student's half-width", () => {
  it('is that of REFERENCES N8 (scipy)', () => {
    const rows = [
      [1, 12.7062047],
      [2, 4.3026527],
      [4, 2.7764451],
      [8, 2.3060041],
      [10, 2.2281389],
      [30, 2.0422725],
    ] as const;
    expect(rows.length).toBe(6);
    for (const [degrees, expected] of rows) expect(Math.abs(studentHalfWidth(degrees) / expected - 1)).toBeLessThan(1e-7);
    expect(() => studentHalfWidth(0)).toThrow();
    expect(() => studentHalfWidth(1.5)).toThrow();
  });
});

describe('grip from pairs of load and force', () => {
  it('gives back the law that made them', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.5, max: 1.8, noNaN: true }), fc.double({ min: 0, max: 0.5, noNaN: true }), (mu, n) => {
        const force = lawOf(mu, n);
        const fit = known(
          fitPairs(
            [1200, 2500, 4100, 5600].map((load) => ({ load, force: force(load) })),
            reference,
          ),
        );
        expect(fit.coefficient).toBeCloseTo(mu, 10);
        expect(fit.exponent).toBeCloseTo(n, 10);
        expect(fit.within!.coefficient).toBeLessThan(1e-6);
      }),
    );
  });
  it('has a half-width that holds the true values in 19 of 20 noisy sets', () => {
    const random = seeded(5);
    const force = lawOf(1.1, 0.15);
    let [held, heldExponent] = [0, 0];
    const sets = 2000;
    for (let k = 0; k < sets; k++) {
      const pairs = [1500, 2200, 3000, 4000, 5200].map((load) => ({ load, force: force(load) * Math.exp(0.02 * normal(random)) }));
      const fit = known(fitPairs(pairs, reference));
      if (Math.abs(fit.coefficient - 1.1) <= fit.within!.coefficient) held++;
      if (Math.abs(fit.exponent - 0.15) <= fit.within!.exponent) heldExponent++;
    }
    for (const part of [held / sets, heldExponent / sets]) {
      expect(part).toBeGreaterThan(0.935);
      expect(part).toBeLessThan(0.965);
    }
  });
  it('is exact with two pairs, of which nothing tells the doubt; refuses one, one load, and no load', () => {
    const force = lawOf(1.2, 0.2);
    const two = known(
      fitPairs(
        [2000, 4000].map((load) => ({ load, force: force(load) })),
        reference,
      ),
    );
    expect(two.exponent).toBeCloseTo(0.2, 10);
    expect(two.within).toBeUndefined();
    expect(fitPairs([{ load: 2000, force: 2000 }], reference)).toMatchObject({ refused: expect.stringContaining('Two pairs') });
    expect(
      fitPairs(
        [
          { load: 2000, force: 2000 },
          { load: 2010, force: 2010 },
        ],
        reference,
      ),
    ).toMatchObject({ refused: expect.stringContaining('must differ') });
    expect(
      fitPairs(
        [
          { load: 0, force: 1 },
          { load: 2000, force: 2000 },
        ],
        reference,
      ),
    ).toMatchObject({ refused: expect.stringContaining('above zero') });
  });
});

describe('grip from laps of a skidpad', () => {
  /** The lesser limit of both ends of the car of L2, with roll stiffness that a lap has. */
  const limitWith =
    (stiffness: readonly [number, number]) =>
    (coefficient: number, exponent: number): number | Refusal => {
      const grip = powerGrip(coefficient, reference, exponent);
      const model = carL2({ stiffness, gravity: true, tireRate: 210_000, grip });
      const ends = [axleLimit(model, 0, 1, steadyTurn(0)), axleLimit(model, 1, 1, steadyTurn(0))];
      let least = Number.POSITIVE_INFINITY;
      for (const end of ends) {
        if (isRefusal(end)) return end;
        least = Math.min(least, end.lateral);
      }
      return least;
    };
  const lap = (stiffness: readonly [number, number], mu: number, n: number): Lap => {
    const limit = limitWith(stiffness);
    const lateral = limit(mu, n);
    if (isRefusal(lateral)) throw new Error(lateral.refused);
    return { lateral, within: 0.01, limit };
  };
  it('C3: radius 9.125 m in 5.0 s is 1.469373 g', () => {
    expect(Math.abs(lapAcceleration(9.125, 5) / 9.80665 / 1.469373 - 1)).toBeLessThan(1e-6);
  });
  it('one lap gives the coefficient that made it, at a known exponent', () => {
    const fit = known(fitCoefficient([lap([620, 400], 1.07, 0.15)], 0.15, 0.9));
    expect(fit.coefficient).toBeCloseTo(1.07, 6);
    // A hundredth of a g of a lap of about one g.
    expect(fit.within).toBeGreaterThan(0.008);
    expect(fit.within).toBeLessThan(0.015);
  });
  it('laps with the load shared otherwise give both; without, they are refused', () => {
    const both = known(fitLaps([lap([900, 200], 1.07, 0.18), lap([550, 480], 1.07, 0.18), lap([620, 400], 1.07, 0.18)], [1, 0.1]));
    expect(both.coefficient).toBeCloseTo(1.07, 5);
    expect(both.exponent).toBeCloseTo(0.18, 5);
    expect(both.within!.exponent).toBeGreaterThan(0.01);
    expect(fitLaps([lap([620, 400], 1, 0.1), lap([620, 400], 1, 0.1)], [1, 0.1])).toMatchObject({
      refused: expect.stringContaining('differently enough'),
    });
    expect(fitLaps([lap([620, 400], 1, 0.1)], [1, 0.1])).toMatchObject({ refused: expect.stringContaining('One lap') });
  });
});
