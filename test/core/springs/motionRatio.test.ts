import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Curve, isRefusal, type Refusal } from '../../../core/catalog.js';
import {
  bumpAt,
  evenRatio,
  type MotionRatio,
  ratioAt,
  ratioOfTable,
  ratioRise,
  springTravel,
  wheelTravel,
  withLever,
} from '../../../core/subjects/springs/motionRatio.js';

const known = (made: MotionRatio | Refusal): MotionRatio => {
  if (isRefusal(made)) throw new Error(made.refused);
  return made;
};
const tables = fc
  .tuple(
    fc.double({ min: 0.5, max: 1, noNaN: true }),
    fc.double({ min: -1, max: 1, noNaN: true }),
    fc.double({ min: -4, max: 4, noNaN: true }),
    fc.integer({ min: 2, max: 7 }),
  )
  .map(([ratio, slope, curved, points]): Curve => {
    const x = Array.from({ length: points }, (_, n) => -0.06 + (0.13 * n) / (points - 1));
    return { x, y: x.map((u) => ratio + slope * u + curved * u * u), between: 'line' };
  });
const motions: fc.Arbitrary<MotionRatio> = fc.oneof(
  tables.map((table) => known(ratioOfTable(table))),
  fc
    .tuple(fc.double({ min: 0.4, max: 1.1, noNaN: true }), fc.double({ min: -1.5, max: 1.5, noNaN: true }))
    .map(([ratio, rise]) => evenRatio(ratio, rise)),
);
const bump = fc.double({ min: -0.09, max: 0.09, noNaN: true });

describe('motion ratio', () => {
  it('travels nothing at ride height, and by its ratio from there', () => {
    fc.assert(
      fc.property(motions, bump, (motion, u) => {
        expect(springTravel(motion, 0)).toBeCloseTo(0, 15);
        const step = 1e-6;
        expect((springTravel(motion, u + step) - springTravel(motion, u - step)) / (2 * step)).toBeCloseTo(ratioAt(motion, u), 5);
      }),
    );
  });
  it('comes back from spring travel to wheel travel', () => {
    fc.assert(
      fc.property(motions, bump, bump, (motion, u, here) => {
        expect(bumpAt(motion, springTravel(motion, u))).toBeCloseTo(u, 11);
        expect(wheelTravel(motion, here, springTravel(motion, u) - springTravel(motion, here))).toBeCloseTo(u - here, 11);
      }),
    );
  });
  it('of a table goes through its points, and is exact for a parabola', () => {
    fc.assert(
      fc.property(tables, (table) => {
        const motion = known(ratioOfTable(table));
        for (const [i, u] of table.x.entries()) expect(ratioAt(motion, u)).toBeCloseTo(table.y[i]!, 12);
      }),
    );
    const parabola = (u: number): number => 0.7 + 0.4 * u - 2 * u * u;
    const x = [-0.06, -0.02, 0.01, 0.05];
    const motion = known(ratioOfTable({ x, y: x.map(parabola), between: 'line' }));
    for (const u of [-0.05, -0.01, 0, 0.03]) {
      expect(ratioAt(motion, u)).toBeCloseTo(parabola(u), 12);
      expect(ratioRise(motion, u)).toBeCloseTo(0.4 - 4 * u, 10);
    }
    expect(ratioAt(motion, 0.2)).toBe(parabola(0.05));
  });
  it('of a longer lever takes more wheel travel for the same spring travel', () => {
    fc.assert(
      fc.property(motions, fc.double({ min: -0.04, max: 0.04, noNaN: true }), (motion, u) => {
        const longer = withLever(motion, 0.99);
        expect(springTravel(longer, u / 0.99)).toBeCloseTo(springTravel(motion, u), 13);
        expect(ratioAt(longer, u / 0.99)).toBeCloseTo(0.99 * ratioAt(motion, u), 13);
        expect(ratioRise(longer, 0)).toBeCloseTo(0.99 ** 2 * ratioRise(motion, 0), 12);
      }),
    );
  });
  it('refuses to travel where it has fallen to nothing', () => {
    expect(bumpAt(evenRatio(0.5, -5), 0.03)).toHaveProperty('refused');
    expect(ratioOfTable({ x: [-0.05, 0.05], y: [0.5, 0], between: 'line' })).toHaveProperty('refused');
  });
});
