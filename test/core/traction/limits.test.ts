import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { isRefusal, type Refusal } from '../../../core/catalog.js';
import { falling } from '../../../core/numeric/falling.js';
import { equilibrium } from '../../../core/subjects/cornering/equilibrium.js';
import type { CornerModel } from '../../../core/subjects/cornering/model.js';
import { type CornerThrust, cornerThrust } from '../../../core/subjects/traction/corner.js';
import { type Driven, notDriven, sidewaysLeft, splitAtLimit } from '../../../core/subjects/traction/driven.js';
import { type Differential, thrustLimit } from '../../../core/subjects/traction/limit.js';
import { lockAt, type StraightCar, straightThrust } from '../../../core/subjects/traction/straight.js';
import { carL2, carM8, fallingGrip, inch, pound } from '../cornering/cars.js';

function known<T extends object>(value: T | Refusal): T {
  if (isRefusal(value)) throw new Error(value.refused);
  return value;
}
const open: Differential = { kind: 'open' };
const locked: Differential = { kind: 'locked' };
const biasing: Differential = { kind: 'biasing', bias: 2 };
const drives = (differential: Differential, more: Partial<Driven> = {}): Driven => ({
  differential,
  share: 1,
  shaft: 0,
  reaction: 0,
  ...more,
});
const weight = 2600 * pound;
const straightL2: StraightCar = {
  loads: [0.26 * weight, 0.26 * weight, 0.24 * weight, 0.24 * weight],
  heightOverBase: 0.2,
  grip: [(n) => n, (n) => n],
  track: [58 * inch, 57 * inch],
};
/** L2 with its rear axle a beam; roll stiffness 620/400. */
function beamL2(): CornerModel {
  const car = carL2();
  return { ...car, axles: [car.axles[0], { ...car.axles[1], kind: 'beam' }] };
}

describe('along a straight line', () => {
  it("is the equilibrium's at no lateral g, front, rear and both driven", () => {
    for (const driven of [
      [drives(open), notDriven],
      [notDriven, drives(open)],
      [drives(open, { share: 0.4 }), drives(locked, { share: 0.6 })],
    ] as const) {
      const straight = straightThrust(straightL2, driven);
      expect(known(cornerThrust(carL2(), 0, driven)).thrust / straight).toBeCloseTo(1, 8);
    }
  });
  it('unloads a wheel of a beam axle by the shaft as the equilibrium does', () => {
    const shaft = (11.8 * inch) / 4.1;
    const rear = drives(open, { shaft, reaction: 620 / 1020 });
    const straight = straightThrust(straightL2, [notDriven, rear]);
    expect(straight / weight).toBeCloseTo(0.557244, 6);
    // The equilibrium knows nothing of the formula: it has the torque on the axle and the body.
    expect(known(cornerThrust(beamL2(), 0, [notDriven, rear])).thrust / straight).toBeCloseTo(1, 8);
    // Locked, the wheels pull unlike, which turns the car and takes a little side force of both axles: hardly less than the 0.6 of REFERENCES L16.
    const spool = known(cornerThrust(beamL2(), 0, [notDriven, drives(locked, { shaft })])).thrust / weight;
    expect(spool).toBeLessThan(0.6);
    expect(spool).toBeGreaterThan(0.5995);
  });
  it('finds the root of any falling function', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.01, max: 0.99, noNaN: true }),
        fc.double({ min: 0.2, max: 4, noNaN: true }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (root, power, guess) => {
          expect(falling((x) => root ** power - x ** power, guess, 1)).toBeCloseTo(root, 9);
        },
      ),
    );
    expect(falling(() => -1, 0.5, 1)).toBe(0);
  });
  it('locks a lighter wheel first', () => {
    const lopsided: StraightCar = { ...straightL2, loads: [0.28 * weight, 0.24 * weight, 0.24 * weight, 0.24 * weight] };
    expect(lockAt(lopsided, 1, 0.7)).toBeLessThan(lockAt(lopsided, 0, 0.7));
  });
});

describe('a differential', () => {
  it('splits the thrust so that its limit is just what the wheels hold', () => {
    const force = fc.double({ min: 10, max: 9000, noNaN: true });
    const kinds = fc.constantFrom(open, biasing, locked);
    fc.assert(
      fc.property(force, force, fc.double({ min: 0.01, max: 0.99, noNaN: true }), kinds, (left, right, part, kind) => {
        const grip = [left, right] as const;
        const lateral = part * (left + right);
        const thrust = thrustLimit(grip, lateral, kind);
        const [a, b] = splitAtLimit(grip, kind);
        expect(a + b).toBeCloseTo(1, 12);
        // No wheel beyond its own grip, and the corner just held, or the weaker wheel spinning with grip to spare.
        expect(thrust * a).toBeLessThanOrEqual(left * (1 + 1e-9));
        expect(thrust * b).toBeLessThanOrEqual(right * (1 + 1e-9));
        const rest = sidewaysLeft(grip, kind, thrust);
        const spinning = Math.max((thrust * a) / left, (thrust * b) / right) > 1 - 1e-9;
        if (!spinning) expect(rest / lateral).toBeCloseTo(1, 6);
        else expect(rest).toBeGreaterThanOrEqual(lateral * (1 - 1e-6));
        // Asked for far too much: locked, both spin; else the stronger wheel keeps what the bias can't take from it.
        const [weak, strong] = [Math.min(left, right), Math.max(left, right)];
        const bias = kind.kind === 'open' ? 1 : kind.kind === 'biasing' ? kind.bias : Number.POSITIVE_INFINITY;
        const kept = Math.sqrt(Math.max(0, strong ** 2 - (bias * weak) ** 2));
        expect(sidewaysLeft(grip, kind, 1e3 * (left + right))).toBeCloseTo(kept, 6);
      }),
    );
  });
});

describe('in a corner', () => {
  const grip = fallingGrip(1.35, 0.0005 / pound);
  const car = (stiffness: readonly [number, number] = [620, 400]): CornerModel =>
    carL2({ grip, stiffness, gravity: true, tireRate: 210_000 });
  const at = (model: CornerModel, lateral: number, kind: Differential, near?: CornerThrust): CornerThrust =>
    known(cornerThrust(model, lateral, [notDriven, drives(kind)], near));

  it('holds what it says it holds: the equilibrium under that thrust has both wheels inside their ellipses, and no more to give', () => {
    for (const model of [car(), carM8()])
      for (const kind of [open, biasing, locked])
        for (const lateral of [0.2, -0.5, 0.7]) {
          const { thrust, axles } = at(model, lateral, kind);
          const { grip, lateral: asked } = axles[1];
          const split = splitAtLimit(grip, kind);
          const drive = [0, 0, thrust * split[0], thrust * split[1]] as const;
          const total = model.axles.reduce((sum, { reference }) => sum + reference[0] + reference[1], 0);
          const yawMoment = ((drive[3] - drive[2]) * model.axles[1].track) / 2;
          const state = known(equilibrium(model, { lateral, longitudinal: thrust / total, drive, yawMoment }));
          const loads = [state.x[10]!, state.x[11]!] as const;
          const whole = loads.map((load, i) => load * model.axles[1].grip[i]!.coefficient(load));
          expect(whole[0]! / grip[0]).toBeCloseTo(1, 7);
          const rest = (i: number): number => Math.sqrt(Math.max(0, whole[i]! ** 2 - drive[2 + i]! ** 2));
          // Open or biasing, the inner wheel may spin while the axle could still hold more sideways.
          expect(rest(0) + rest(1)).toBeGreaterThan(asked * (1 - 1e-4));
          expect(thrust).toBeGreaterThan(0);
        }
  });
  it('is found again from a near start, and is the same to the left and to the right of a car that is', () => {
    const cold = at(car(), 0.6, biasing);
    expect(at(car(), 0.6, biasing, at(car([640, 380]), 0.55, biasing)).thrust / cold.thrust).toBeCloseTo(1, 8);
    expect(at(car(), -0.6, biasing).thrust / cold.thrust).toBeCloseTo(1, 8);
  });
  it('falls with lateral g to nothing; a differential that locks passes more while the corner is easy', () => {
    let before = Number.POSITIVE_INFINITY;
    for (const lateral of [0, 0.2, 0.4, 0.6, 0.8, 0.95, 1.2]) {
      const limits = [open, biasing, locked].map((kind) => at(car(), lateral, kind).thrust);
      // Near the limit the outer wheel's pull turns the car in, and the rear axle has to hold more sideways: then it may pass less.
      if (lateral <= 0.6) {
        expect(limits[0]!).toBeLessThanOrEqual(limits[1]! * (1 + 1e-9));
        expect(limits[1]!).toBeLessThanOrEqual(limits[2]! * (1 + 1e-9));
      }
      expect(limits[2]!).toBeLessThan(before + 1e-9);
      before = limits[2]!;
    }
    expect(before).toBe(0);
  });
  it('a stiffer rear bar costs thrust on an open differential: the inner wheel carries less (common practice, no source)', () => {
    expect(at(car([620, 600]), 0.6, open).thrust).toBeLessThan(at(car([620, 400]), 0.6, open).thrust);
  });
  it('a beam axle with a shaft turned as engines turn pulls harder out of left turns than out of right ones', () => {
    const car = beamL2();
    const rear = drives(open, { shaft: 0.08 });
    const [left, right] = [0.4, -0.4].map((lateral) => known(cornerThrust(car, lateral, [notDriven, rear])).thrust);
    expect(left!).toBeGreaterThan(right!);
  });
});
