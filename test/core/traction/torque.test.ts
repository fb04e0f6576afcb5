import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { isRefusal, type Refusal } from '../../../core/catalog.js';
import { lastSpeedAt, lawOfCurve, lawOfPeaks, type TorqueLaw, torqueAt } from '../../../core/subjects/engine/torque.js';

const rpm = Math.PI / 30;
function known<T extends object | number>(value: T | Refusal): T {
  if (isRefusal(value)) throw new Error(value.refused);
  return value;
}
const peaks = { torque: 180, torqueSpeed: 4800 * rpm, power: 98e3, powerSpeed: 6400 * rpm, redline: 7200 * rpm, fit: 1 };

describe('the curve through two peaks', () => {
  it('passes through both, stands still at both, and never passes either, for any pair that fits', () => {
    let tried = 0;
    fc.assert(
      fc.property(
        fc.double({ min: 30, max: 900, noNaN: true }),
        fc.double({ min: 1500, max: 9000, noNaN: true }),
        fc.double({ min: 0.3, max: 0.95, noNaN: true }),
        fc.double({ min: 0.03, max: 0.97, noNaN: true }),
        (torque, powerRevs, ratio, fall) => {
          const powerSpeed = powerRevs * rpm;
          const torqueSpeed = ratio * powerSpeed;
          const power = torque * ratio ** fall * powerSpeed;
          const law = known<TorqueLaw>(lawOfPeaks({ torque, torqueSpeed, power, powerSpeed, redline: 1.15 * powerSpeed, fit: 1 }));
          tried++;
          expect(law.torque(torqueSpeed) / torque).toBeCloseTo(1, 12);
          expect((law.torque(powerSpeed) * powerSpeed) / power).toBeCloseTo(1, 12);
          const near = 1e-4;
          // Still at its peak: the change over a small step is of its square.
          expect(Math.abs(law.torque(torqueSpeed * (1 + near)) / torque - 1)).toBeLessThan(
            20 * near * near * (1 / (1 - ratio)) ** 2 + 1e-9,
          );
          for (let k = 0; k <= 100; k++) {
            const speed = law.from + ((law.to - law.from) * k) / 100;
            expect(law.torque(speed)).toBeLessThanOrEqual(torque * (1 + 1e-12));
            expect(law.torque(speed) * speed).toBeLessThanOrEqual(power * (1 + 1e-12));
            expect(law.torque(speed)).toBeGreaterThan(0);
          }
        },
      ),
      { numRuns: 200 },
    );
    expect(tried).toBe(200);
  });
  it('is not moved at its peaks by the doubt of the curve, and is elsewhere', () => {
    const [as, high] = [known(lawOfPeaks(peaks)), known(lawOfPeaks({ ...peaks, fit: 1.1 }))];
    for (const speed of [peaks.torqueSpeed, peaks.powerSpeed]) expect(high.torque(speed)).toBeCloseTo(as.torque(speed), 9);
    expect(high.torque(2000 * rpm) / as.torque(2000 * rpm)).toBeGreaterThan(1.08);
    expect(high.torque(5600 * rpm) / as.torque(5600 * rpm)).toBeCloseTo(1.05, 3);
  });
  it('refuses peaks that no engine has together', () => {
    const of = (change: Partial<typeof peaks>): string => {
      const law = lawOfPeaks({ ...peaks, ...change });
      return isRefusal(law) ? law.refused : 'a law';
    };
    expect(of({})).toBe('a law');
    expect(of({ power: 130e3 })).toContain('more than the peak torque');
    expect(of({ power: 80e3 })).toContain('more power at its torque peak');
    expect(of({ torqueSpeed: 6500 * rpm })).toContain('lower engine speed');
  });
  it('ends at the redline and where the engine no longer pulls', () => {
    const law = known(lawOfPeaks(peaks));
    expect(known(torqueAt(law, 7200 * rpm))).toBeGreaterThan(100);
    expect(torqueAt(law, 7300 * rpm)).toMatchObject({ refused: expect.stringContaining('highest engine speed') });
    expect(torqueAt(law, 500 * rpm)).toMatchObject({ refused: expect.stringContaining('too slowly') });
  });
});

describe('a told curve', () => {
  const curve = { x: [2000 * rpm, 4000 * rpm, 6000 * rpm], y: [150, 200, 120], between: 'line' } as const;
  it('is straight from point to point; its power peaks inside the falling piece', () => {
    const law = known(lawOfCurve(curve));
    expect(law.torque(3000 * rpm)).toBeCloseTo(175, 12);
    expect(law.peak).toEqual({ torque: 200, speed: 4000 * rpm });
    // Torque 360 - 0.04 n (n in rpm) beyond 4000: power is greatest at 4500, exactly.
    expect(law.most.speed / rpm).toBeCloseTo(4500, 6);
    expect(law.most.power).toBeCloseTo(180 * 4500 * rpm, 6);
  });
  it('refuses a single point and no torque', () => {
    expect(lawOfCurve({ x: [1], y: [1], between: 'line' })).toMatchObject({ refused: expect.stringContaining('two points') });
    expect(lawOfCurve({ x: [1, 2], y: [1, 0], between: 'line' })).toMatchObject({ refused: expect.stringContaining('above zero') });
  });
});

describe('the last speed at which a torque is reached', () => {
  it('gives back the torque, and is the last', () => {
    const law = known(lawOfPeaks(peaks));
    fc.assert(
      fc.property(fc.double({ min: 20, max: 179.99, noNaN: true }), (wanted) => {
        const speed = lastSpeedAt(law, wanted)!;
        if (speed === law.to) expect(law.torque(speed)).toBeGreaterThanOrEqual(wanted);
        else expect(law.torque(speed)).toBeCloseTo(wanted, 6);
        for (let k = 1; k <= 20; k++) {
          const later = speed + ((law.to - speed) * k) / 20;
          if (later > speed * (1 + 1e-9) && speed < law.to) expect(law.torque(later)).toBeLessThanOrEqual(wanted + 1e-6);
        }
      }),
    );
    expect(lastSpeedAt(law, 181)).toBeUndefined();
  });
});
