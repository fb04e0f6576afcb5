import { describe, expect, it } from 'vitest';
import { isRefusal } from '../../../core/catalog.js';
import { type Equilibrium, equilibrium } from '../../../core/subjects/cornering/equilibrium.js';
import { type CornerModel, type Manoeuvre, steadyTurn } from '../../../core/subjects/cornering/model.js';
import { at, free, residual, unknowns } from '../../../core/subjects/cornering/residual.js';
import { carL2, carM5, carM8, degree, fallingGrip, pound } from './cars.js';

function held(model: CornerModel, manoeuvre: Manoeuvre): Equilibrium {
  const found = equilibrium(model, manoeuvre);
  if (isRefusal(found)) throw new Error(found.refused);
  return found;
}
const rollOf = (e: Equilibrium, j: 0 | 1 = 0): number => e.x[at.roll(j)]! / degree;
/** What the axle's outer wheel carries more than at rest: half of right minus left, in a left turn. */
const transfer = (e: Equilibrium, j: 0 | 1): number => (e.x[at.load + 2 * j + 1]! - e.x[at.load + 2 * j]!) / 2;
const near = (value: number, expected: number, tolerance: number): void => expect(Math.abs(value / expected - 1)).toBeLessThan(tolerance);

// CORNERING, check rows: an independent solver and closed forms agree on them.
describe('check rows of the cornering model', () => {
  it('M1: the textbook car, gravity off and on', () => {
    const off = held(carL2(), steadyTurn(1));
    near(rollOf(off), 2.8, 1e-6);
    near(transfer(off, 0) / pound, 436.8276, 1e-6);
    near(transfer(off, 1) / pound, 422.1754, 1e-6);
    const on = held(carL2({ gravity: true }), steadyTurn(1));
    near(rollOf(on), 2.943864, 1e-6);
    near(transfer(on, 0) / pound, 455.2819, 1e-6);
    near(transfer(on, 1) / pound, 434.2903, 1e-6);
  });
  it('M2: tires of 1200 lbf/in', () => {
    const e = held(carL2({ tireRate: 1200 * 175.12683524647636 }), steadyTurn(1));
    near(rollOf(e), 3.514357, 1e-6);
    near(transfer(e, 0) / pound, 436.3141, 1e-6);
    near(transfer(e, 1) / pound, 422.698, 1e-6);
  });
  it('M3: a body without torsional stiffness', () => {
    const e = held(carL2({ chassisStiffness: 0 }), steadyTurn(1));
    near(rollOf(e, 0), 2.843848, 1e-6);
    near(rollOf(e, 1), 2.732035, 1e-6);
  });
  it('M7: a front wheel lifts, and the rear takes all the rest', () => {
    const car = carL2({ stiffness: [900, 200], gravity: true });
    const before = held(car, steadyTurn(1.1574));
    expect(before.x[at.load]!).toBeGreaterThan(0);
    const after = held(car, steadyTurn(1.15742));
    expect(after.x[at.load]!).toBeCloseTo(0, 6);
    const e = held(car, steadyTurn(1.3));
    near(rollOf(e), 6.21631, 1e-5);
    [0, 1352, 119.959, 1128.04].forEach((load, i) => {
      expect(e.x[at.load + i]! / pound).toBeCloseTo(load, 2);
    });
  });
  it('M8: a beam axle behind, on its spring base', () => {
    const off = held(carM8(), steadyTurn(0.8));
    near(rollOf(off), 4.67174, 3e-6);
    near(transfer(off, 0), 1924.17, 3e-6);
    near(transfer(off, 1), 1595.74, 3e-6);
    const axle = (e: Equilibrium) => (e.x[at.wheel + 2]! - e.x[at.wheel + 3]!) / 1.42 / degree;
    near(axle(off), 0.643866, 3e-6);
    const on = held(carM8({ gravity: true }), steadyTurn(0.8));
    near(rollOf(on), 5.20902, 3e-6);
    near(transfer(on, 0), 2118.82, 3e-6);
    near(transfer(on, 1), 1676.52, 3e-6);
    near(axle(on), 0.67646, 3e-6);
  });
  it('M9: a left link 5 mm longer', () => {
    const off = held(carM8({ independent: true, mismatch: 0.005 }), steadyTurn(0));
    const loads = (e: Equilibrium, model: CornerModel) =>
      [0, 1, 2, 3].map((i) => e.x[at.load + i]! - model.axles[i >> 1]!.reference[i & 1]!);
    const model = carM8({ independent: true, mismatch: 0.005 });
    loads(off, model).forEach((d, i) => {
      expect(d).toBeCloseTo([31.539, -31.539, -32.2053, 32.2053][i]!, 3);
    });
    const on = carM8({ independent: true, mismatch: 0.005, gravity: true });
    loads(held(on, steadyTurn(0)), on).forEach((d, i) => {
      expect(d).toBeCloseTo([25.6794, -25.6794, -34.7432, 34.7432][i]!, 3);
    });
  });
  it('M5: springs whose force rises exponentially: the body rises as it rolls', () => {
    const law = { force: (u: number) => 3000 * Math.exp(u / 0.1), slope: (u: number) => 30000 * Math.exp(u / 0.1) };
    const moment = 3000 * 1.45 * Math.tanh((1.45 * 3 * degree) / 0.2);
    expect(moment).toBeCloseTo(1576.3, 2);
    const e = held(carM5(law), steadyTurn(moment / (6000 * 0.5)));
    near(rollOf(e), 3, 1e-6);
    expect(e.x[at.height(0)]! * 1000).toBeCloseTo(7.03848, 5);
    expect(e.x[at.load]!).toBeCloseTo(1912.9, 1);
    expect(e.x[at.load + 1]!).toBeCloseTo(4087.1, 1);
  });
  it('M6: springs that stiffen in bump', () => {
    const law = {
      force: (u: number) => 3000 + 20000 * u + 20000 * Math.max(0, u - 0.01),
      slope: (u: number) => (u > 0.01 ? 40000 : 20000),
    };
    const e = held(carM5(law), steadyTurn(900 / (6000 * 0.5)));
    near(rollOf(e), 2.03703, 3e-6);
    expect(e.x[at.height(0)]! * 1000).toBeCloseTo(5.25862, 5);
    expect(e.x[at.load]!).toBeCloseTo(2379.31, 2);
    expect(e.x[at.load + 1]!).toBeCloseTo(3620.69, 2);
  });
  it('rolls over where both wheels of a side would leave the ground', () => {
    expect(isRefusal(equilibrium(carL2({ gravity: true }), steadyTurn(1.8)))).toBe(true);
  });
  it('has an analytic Jacobian that differences confirm', () => {
    const uneven = (model: CornerModel): CornerModel => {
      const bars = { stiffness: 1800, arms: [3, 3.6], mismatch: 0.01, linkSpacing: 0.9 } as const;
      return {
        ...model,
        axles: [
          { ...model.axles[0], bar: bars },
          { ...model.axles[1], bar: bars },
        ],
      };
    };
    const cars = [
      uneven(carM8({ gravity: true })),
      carM8({ gravity: true }),
      carM8({ independent: true, gravity: true }),
      carL2({ tireRate: 200000, gravity: true, chassisStiffness: 4e5, grip: fallingGrip(1.35, 0.0005 / pound) }),
    ];
    for (const model of cars) {
      const manoeuvre: Manoeuvre = { lateral: 0.5, longitudinal: -0.2, drive: [-300, -320, -200, -220], yawMoment: 30 };
      const x = Float64Array.from({ length: unknowns }, (_, k) =>
        k === 12 ? 50 : k >= 8 ? 2500 + 400 * Math.sin(k) : 0.004 * Math.cos(3 * k),
      );
      const [r, slopes, jacobian, up, down, ignored] = [
        new Float64Array(13),
        new Float64Array(13),
        new Float64Array(169),
        new Float64Array(13),
        new Float64Array(13),
        new Float64Array(169),
      ];
      residual(model, manoeuvre, x, r, jacobian, slopes, free);
      for (let k = 0; k < unknowns; k++) {
        const step = k >= 8 ? 1e-2 : 1e-7;
        const [plus, minus] = [Float64Array.from(x), Float64Array.from(x)];
        plus[k]! += step;
        minus[k]! -= step;
        residual(model, manoeuvre, plus, up, ignored, slopes, free);
        residual(model, manoeuvre, minus, down, ignored, slopes, free);
        for (let row = 0; row < unknowns; row++) {
          const difference = (up[row]! - down[row]!) / (2 * step);
          expect(Math.abs(difference - jacobian[row * 13 + k]!)).toBeLessThan(1e-5 * Math.max(1, Math.abs(difference)));
        }
      }
    }
  });
});
