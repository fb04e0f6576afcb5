/** What must hold of every equilibrium, on random cars and at every lateral acceleration. */
import { describe, expect, it } from 'vitest';
import { isRefusal } from '../../../core/catalog.js';
import { type Equilibrium, equilibrium, tangent } from '../../../core/subjects/cornering/equilibrium.js';
import { liftOffs } from '../../../core/subjects/cornering/lifts.js';
import { axleLimit, axleUse, crossing, stopContact } from '../../../core/subjects/cornering/limits.js';
import { mirrored } from '../../../core/subjects/cornering/mirror.js';
import { type AxleModel, type CornerModel, type Manoeuvre, steadyTurn } from '../../../core/subjects/cornering/model.js';
import { partsOf } from '../../../core/subjects/cornering/parts.js';
import { axleSprung, axleUnsprung, carWeight, free, residual } from '../../../core/subjects/cornering/residual.js';
import { type Condition, leftUntil } from '../../../core/subjects/cornering/roots.js';
import { at, unknowns } from '../../../core/subjects/cornering/unknowns.js';
import { carL2 } from './cars.js';
import { pair } from './randomPairs.js';

const cars = 120;
function each(check: (model: CornerModel, state: Equilibrium, lateral: number, seed: number) => void): void {
  let solved = 0;
  for (let seed = 0; seed < cars; seed++) {
    const { model, lateral } = pair(seed);
    const state = equilibrium(model, steadyTurn(lateral));
    if (isRefusal(state)) continue;
    solved++;
    check(model, state, lateral, seed);
  }
  expect(solved).toBeGreaterThan(0.8 * cars);
}
const swapped = <T>([left, right]: readonly [T, T]): readonly [T, T] => [right, left];
function mirrorOf(model: CornerModel): CornerModel {
  const turned = (axle: AxleModel): AxleModel => ({
    ...axle,
    law: swapped(axle.law),
    unsprung: swapped(axle.unsprung),
    reference: swapped(axle.reference),
    contact: swapped(axle.contact),
    camber: axle.camber && { ...axle.camber, standing: swapped(axle.camber.standing) },
    rest: { body: -axle.rest.body, axle: -axle.rest.axle },
    bar: axle.bar && { ...axle.bar, arms: swapped(axle.bar.arms), mismatch: -axle.bar.mismatch },
  });
  return { ...model, axles: [turned(model.axles[0]), turned(model.axles[1])] };
}

describe('every equilibrium', () => {
  it('carries the weight, axle by axle, and no tire pulls', () => {
    each((model, { x }) => {
      model.axles.forEach(({ reference }, j) => {
        expect((x[at.load + 2 * j]! + x[at.load + 2 * j + 1]!) / (reference[0] + reference[1])).toBeCloseTo(1, 9);
      });
      for (let i = 0; i < 4; i++) expect(x[at.load + i]!).toBeGreaterThan(-1e-6);
    });
  });
  it('balances the overturning moment: transfer over the tracks is W h a and the weight that leaned out (CORNERING)', () => {
    each((model, { x }, lateral) => {
      let held = 0;
      let out = carWeight(model) * model.cgHeight * lateral;
      model.axles.forEach((axle, j) => {
        const { track, reference, rollCentreHeight, tireRate } = axle;
        const moved = (x[at.load + 2 * j + 1]! - reference[1] - x[at.load + 2 * j]! + reference[0]) / 2;
        held += track * moved;
        const roll = x[at.roll(j)]!;
        const onTires = (2 * moved) / (tireRate * track);
        out += axleSprung(axle) * (model.sprungCgHeight * roll - rollCentreHeight * (roll - onTires));
        if (axle.kind === 'beam')
          out += (axleUnsprung(axle) * axle.unsprungHeight * (x[at.wheel + 2 * j]! - x[at.wheel + 2 * j + 1]!)) / track;
      });
      expect(Math.abs(held - out)).toBeLessThan(1e-4);
    });
  });
  it('turns with its mirror image', () => {
    each((model, state, lateral) => {
      const other = equilibrium(mirrorOf(model), steadyTurn(-lateral));
      if (isRefusal(other)) throw new Error(other.refused);
      for (const [a, b] of [
        [8, 9],
        [10, 11],
        [4, 5],
        [6, 7],
      ] as const) {
        expect(other.x[a]!).toBeCloseTo(state.x[b]!, 5);
        expect(other.x[b]!).toBeCloseTo(state.x[a]!, 5);
      }
      expect(other.x[at.roll(0)]!).toBeCloseTo(-state.x[at.roll(0)]!, 9);
    });
  });
  it('splits each transfer into parts that are its sum', () => {
    each((model, { x }, lateral) => {
      for (const one of partsOf(model, steadyTurn(lateral), x)) {
        expect(one.unsprung + one.geometric + one.elastic + one.jacking + one.gravity).toBeCloseTo(one.transfer, 8);
      }
    });
  });
  it('is the same from any start: cold, or from a state nearby', () => {
    each((model, state, lateral) => {
      const near = equilibrium(model, steadyTurn(0.97 * lateral));
      if (isRefusal(near)) throw new Error(near.refused);
      const warm = equilibrium(model, steadyTurn(lateral), near);
      if (isRefusal(warm)) throw new Error(warm.refused);
      for (let i = 0; i < 4; i++) expect(Math.abs(warm.x[at.load + i]! - state.x[at.load + i]!)).toBeLessThan(3e-6);
    });
  });
  it('rolls on as it begins: the tangent at rest is that of small turns', () => {
    for (let seed = 0; seed < 30; seed++) {
      const { model } = pair(seed);
      const rest = equilibrium(model, steadyTurn(0));
      if (isRefusal(rest)) throw new Error(rest.refused);
      const slopes = tangent(model, rest);
      // From one side: where left and right lean unlike, a right turn begins otherwise.
      const [near, far] = [equilibrium(model, steadyTurn(1e-3)), equilibrium(model, steadyTurn(2e-3))];
      if (isRefusal(near) || isRefusal(far)) throw new Error('no state near rest');
      const slope = (4 * near.x[at.roll(0)]! - far.x[at.roll(0)]! - 3 * rest.x[at.roll(0)]!) / 2e-3;
      expect(slope / slopes[at.roll(0)]!).toBeCloseTo(1, 5);
    }
  });
});

describe('monotony', () => {
  it('more lateral acceleration takes load from an inner wheel, until it lifts', () => {
    const car = carL2({ gravity: true, tireRate: 210_000 });
    let before = Number.POSITIVE_INFINITY;
    for (let a = 0; a < 1.2; a += 0.05) {
      const state = equilibrium(car, steadyTurn(a));
      if (isRefusal(state)) throw new Error(state.refused);
      expect(state.x[at.load]!).toBeLessThan(before);
      before = state.x[at.load]!;
    }
  });
  it('a stiffer front adds front transfer; not any more once its inner wheel has lifted', () => {
    const front = (stiffness: number, a: number): number => {
      const state = equilibrium(carL2({ stiffness: [stiffness, 200], gravity: true }), steadyTurn(a));
      if (isRefusal(state)) throw new Error(state.refused);
      return state.x[at.load + 1]! - state.x[at.load]!;
    };
    expect(front(950, 0.9)).toBeGreaterThan(front(900, 0.9) + 10);
    expect(front(950, 1.25)).toBeCloseTo(front(900, 1.25), 4);
  });
});

describe('limits, lift-off and stops', () => {
  const all: readonly Condition[] = [
    ...([0, 1] as const).map((axle) => ({ kind: 'limit', axle }) as const),
    ...([0, 1, 2, 3] as const).map((wheel) => ({ kind: 'lift', wheel }) as const),
    ...([0, 1, 2, 3] as const).map((wheel) => ({ kind: 'contact', wheel }) as const),
  ];
  it('are where the bracketed search, which walks up from rest, finds them', () => {
    let compared = 0;
    for (let seed = 0; seed < 25; seed++) {
      const { model } = pair(seed);
      for (const direction of [1, -1] as const) {
        for (const [j, found] of [axleLimit(model, 0, direction, steadyTurn(0)), axleLimit(model, 1, direction, steadyTurn(0))].entries()) {
          const walked = crossing(model, steadyTurn(0), direction, { kind: 'limit', axle: j as 0 | 1 }, 3);
          if (isRefusal(found) || isRefusal(walked)) continue;
          compared++;
          expect(Math.abs(found.lateral - walked.lateral), `car ${seed}, axle ${j}, ${direction}`).toBeLessThan(1e-7);
          expect(axleUse(model, steadyTurn(found.lateral), found.state, j)).toBeCloseTo(1, 8);
        }
        for (const wheel of direction === 1 ? ([0, 2] as const) : ([1, 3] as const)) {
          const outer = (wheel ^ 1) as 0 | 1 | 2 | 3;
          const offs = liftOffs(model, steadyTurn(0), direction);
          const lift = isRefusal(offs) ? undefined : offs.lifts.find((one) => one.wheel === wheel);
          const contact = stopContact(model, outer, direction, steadyTurn(0));
          for (const [found, condition] of [
            [lift?.lateral, { kind: 'lift', wheel }],
            [isRefusal(contact) ? undefined : Math.abs(contact.lateral), { kind: 'contact', wheel: outer }],
          ] as const) {
            const walked = crossing(model, steadyTurn(0), direction, condition, 3);
            if (found === undefined || isRefusal(walked)) continue;
            compared++;
            expect(Math.abs(found - Math.abs(walked.lateral)), `car ${seed}, ${condition.kind} ${condition.wheel}`).toBeLessThan(1e-7);
          }
        }
      }
    }
    expect(compared).toBeGreaterThan(120);
  });
  it('know their slopes: analytic against differences, of the equations too', () => {
    for (let seed = 0; seed < 25; seed++) {
      const { model } = pair(seed);
      const manoeuvre: Manoeuvre = { lateral: 0.45, longitudinal: -0.2, drive: [-300, -320, -200, -220], yawMoment: 30 };
      const x = Float64Array.from({ length: unknowns }, (_, k) =>
        k === 12 ? 50 : k >= 8 ? 2500 + 400 * Math.sin(k) : 0.004 * Math.cos(3 * k),
      );
      const make = (): { r: Float64Array; j: Float64Array; s: Float64Array } => ({
        r: new Float64Array(13),
        j: new Float64Array(169),
        s: new Float64Array(13),
      });
      const [here, up, down] = [make(), make(), make()];
      const into = (m: Manoeuvre, y: Float64Array, b: typeof here): void => residual(model, m, y, b.r, b.j, b.s, free);
      into(manoeuvre, x, here);
      const close = (got: number, expected: number): void =>
        expect(Math.abs(got - expected)).toBeLessThan(2e-5 * Math.max(1, Math.abs(expected)));
      for (let k = 0; k < unknowns; k++) {
        const step = k >= 8 ? 1e-2 : 1e-7;
        const [plus, minus] = [x.with(k, x[k]! + step), x.with(k, x[k]! - step)];
        into(manoeuvre, plus, up);
        into(manoeuvre, minus, down);
        for (let row = 0; row < unknowns; row++) close(here.j[row * 13 + k]!, (up.r[row]! - down.r[row]!) / (2 * step));
      }
      into({ ...manoeuvre, lateral: 0.45 + 1e-4 }, x, up);
      into({ ...manoeuvre, lateral: 0.45 - 1e-4 }, x, down);
      for (let row = 0; row < unknowns; row++) close(here.s[row]!, (up.r[row]! - down.r[row]!) / 2e-4);
      for (const condition of all) {
        const { gradient } = leftUntil(model, manoeuvre, x, condition);
        const slopes = Float64Array.from(gradient);
        for (let k = 0; k < unknowns; k++) {
          const step = k >= 8 ? 1e-2 : 1e-7;
          const value = (y: Float64Array): number => leftUntil(model, manoeuvre, y, condition).left;
          close(slopes[k]!, (value(x.with(k, x[k]! + step)) - value(x.with(k, x[k]! - step))) / (2 * step));
        }
      }
    }
  });
  it('are the same both ways for a car whose sides are alike, which says so', () => {
    expect(mirrored(carL2({ gravity: true }))).toBe(true);
    const uneven = pair(3).model;
    expect(mirrored(uneven)).toBe(false);
  });
});
