import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { beamDriveLimit, thrustLimit } from '../../../core/subjects/traction/limit.js';
import { inch } from './cars.js';

describe('thrust of a driven axle', () => {
  it("is CORNERING's: loads 1000 and 3000 N, mu 1, 2000 N sideways", () => {
    expect(thrustLimit([1000, 3000], 2000, { kind: 'open' })).toBeCloseTo(2000, 9);
    expect(thrustLimit([1000, 3000], 2000, { kind: 'biasing', bias: 2 })).toBeCloseTo(3000, 9);
    expect(thrustLimit([1000, 3000], 2000, { kind: 'locked' })).toBeCloseTo(3464.10161514, 6);
  });
  it('never grows with less of a differential, never passes what the tires have, and ends where the corner takes all', () => {
    const force = fc.double({ min: 1, max: 9000, noNaN: true });
    fc.assert(
      fc.property(
        force,
        force,
        fc.double({ min: 0, max: 1.2, noNaN: true }),
        fc.double({ min: 1, max: 6, noNaN: true }),
        (left, right, part, bias) => {
          const lateral = part * (left + right);
          const open = thrustLimit([left, right], lateral, { kind: 'open' });
          const biasing = thrustLimit([left, right], lateral, { kind: 'biasing', bias });
          const locked = thrustLimit([left, right], lateral, { kind: 'locked' });
          const slack = 1e-9 * (left + right);
          expect(open).toBeLessThanOrEqual(biasing + slack);
          expect(biasing).toBeLessThanOrEqual(locked + slack);
          if (part >= 1) expect(locked).toBe(0);
          else expect(Math.hypot(locked, lateral)).toBeLessThanOrEqual((left + right) * (1 + 1e-12));
        },
      ),
    );
  });
  it('is unloaded by the propeller shaft on a beam axle: 0.557244 against 0.6 locked (CORNERING, after Gillespie)', () => {
    // REFERENCES L2: h 19, L 95, rear share 0.48, track 57 in, roll stiffness 620/400; r 11.8 in, final drive 4.1, mu 1.
    expect(beamDriveLimit(1, 0.48, 19 / 95, 11.8 * inch, 4.1, 57 * inch, 620 / 1020)).toBeCloseTo(0.557244, 6);
    expect(beamDriveLimit(1, 0.48, 19 / 95, 0, 4.1, 57 * inch, 620 / 1020)).toBeCloseTo(0.6, 12);
  });
});
