/** A bump stop behind a motion ratio that changes: where it is met, and what it holds, by summing up small steps. */
import { describe, expect, it } from 'vitest';
import { stopBehind } from '../../../core/subjects/cornering/wheelLaw.js';
import { evenRatio, type MotionRatio, ratioOfTable } from '../../../core/subjects/springs/motionRatio.js';
import { ask, bothEnds, type Told } from '../ride/ask.js';

const table = ratioOfTable({ x: [-0.05, 0, 0.03, 0.08], y: [0.7, 0.78, 0.86, 0.95], between: 'line' });
if ('refused' in table) throw new Error(table.refused);
const motions: readonly (readonly [string, MotionRatio, here: number])[] = [
  ['rising', evenRatio(0.7, 2), 0.01],
  ['falling', evenRatio(0.95, -1.5), -0.02],
  ['even', evenRatio(0.8, 0), 0],
  ['by a table', table, 0.005],
];
const [gap, rate] = [0.025, 90_000];
/** Damper travel by steps of a hundredth of a millimetre, from nothing but readings of the ratio. */
function travelled(ratio: (u: number) => number, from: number, to: number): number {
  const steps = Math.ceil((to - from) / 1e-5);
  const h = (to - from) / steps;
  let sum = 0;
  for (let n = 0; n < steps; n++) sum += h * ratio(from + (n + 0.5) * h);
  return sum;
}
const even =
  ({ ratio, rise }: MotionRatio) =>
  (u: number): number =>
    ratio + rise * u;

describe('a bump stop behind a motion ratio that changes', () => {
  it('is met where the damper has travelled the gap', () => {
    for (const [name, motion, here] of motions) {
      if (motion.table) continue;
      expect(travelled(even(motion), here, here + stopBehind(motion, here, gap, rate).at), name).toBeCloseTo(gap, 9);
    }
  });
  it('holds as much work at the wheel as its rubber, and its slope is that of its force', () => {
    for (const [name, motion, here] of motions) {
      const stop = stopBehind(motion, here, gap, rate);
      const end = stop.at + 0.02;
      const work = travelled(stop.force, stop.at, end);
      // Where the stop is pressed to: what the damper travels, from the force at the end and the ratio there by differences of work.
      const h = 1e-6;
      const ratio = Math.sqrt(stop.slope(stop.at + 1e-9) / rate);
      expect(ratio, name).toBeGreaterThan(0.5);
      const pressed = Math.sqrt((2 * work) / rate);
      const power = (Math.sqrt((2 * (work + stop.force(end) * h)) / rate) - pressed) / h;
      expect(stop.force(end), name).toBeCloseTo(rate * pressed * power, 0);
      for (const u of [stop.at + 0.003, end])
        expect(stop.slope(u) / ((stop.force(u + h) - stop.force(u - h)) / (2 * h)), name).toBeCloseTo(1, 6);
      if (!motion.table) expect(pressed, name).toBeCloseTo(travelled(even(motion), here + stop.at, here + end), 7);
      expect([stop.force(stop.at - 1e-6), stop.slope(stop.at - 1e-6)], name).toEqual([0, 0]);
    }
  });
  it('is never met where the ratio falls to nothing before', () => {
    expect(stopBehind(evenRatio(0.5, -6), 0, 0.05, rate).at).toBe(Number.POSITIVE_INFINITY);
  });
  it('gives the travel until contact at rest, and the gap after a change of height', () => {
    const told: Told = {
      ...{ mass: 1200, frontShare: 0.54, wheelbase: 2.5, driver: 'in', 'front.bumpStop.gap': 0.03 },
      ...bothEnds({ 'spring.rate': 60_000, 'spring.ratio': 0.75, 'spring.ratioRise': 2 }),
    };
    const until = ask(told, 'front.stopTravel');
    expect(travelled((u) => 0.75 + 2 * u, 0, until)).toBeCloseTo(0.03, 8);
    const lower: Told = { ...told, 'lf.spacer': -0.01, 'rf.spacer': -0.01 };
    const sunk = ask(lower, 'lf.travelSince', told);
    expect(ask(lower, 'front.bumpStop.gap', told)).toBeCloseTo(0.03 - travelled((u) => 0.75 + 2 * u, 0, sunk), 8);
    expect(sunk + ask(lower, 'front.stopTravel', told)).toBeCloseTo(until, 8);
    expect(ask({ ...told, 'front.damper.ratio': 0.9 }, 'front.stopTravel')).toBeCloseTo(0.03 / 0.9, 9);
  });
});
