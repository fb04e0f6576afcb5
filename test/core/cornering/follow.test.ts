/** Following a solution to a car that differs a little, against the full search for that car: by definition the same. */
import { describe, expect, it } from 'vitest';
import { isRefusal } from '../../../core/catalog.js';
import { cornerBraking } from '../../../core/subjects/braking/inTurn.js';
import { courseOf, equilibrium, followed } from '../../../core/subjects/cornering/equilibrium.js';
import { liftOffs } from '../../../core/subjects/cornering/lifts.js';
import { axleLimit, axleUse, crossing, stopContact } from '../../../core/subjects/cornering/limits.js';
import { type CornerModel, steadyTurn } from '../../../core/subjects/cornering/model.js';
import { at } from '../../../core/subjects/cornering/residual.js';
import type { Condition, Reached } from '../../../core/subjects/cornering/roots.js';
import { pair } from './randomPairs.js';

const cars = 60;
/** Every kind of thing that may be off, each by a few per cent. */
const changes: readonly ((model: CornerModel, part: number) => CornerModel)[] = [
  (model, part) => ({ ...model, cgHeight: model.cgHeight * (1 + part), sprungCgHeight: model.sprungCgHeight * (1 + part) }),
  ({ axles: [front, rear], ...model }, part) => ({ ...model, axles: [{ ...front, track: front.track * (1 + part) }, rear] }),
  ({ axles: [front, rear], ...model }, part) => ({
    ...model,
    axles: [front, { ...rear, bar: rear.bar && { ...rear.bar, stiffness: rear.bar.stiffness * (1 + part) } }],
  }),
  ({ axles: [front, rear], ...model }, part) => ({
    ...model,
    axles: [{ ...front, rollCentreHeight: front.rollCentreHeight + part }, rear],
  }),
];
/** Each random car with each change to both sides; a part of the change that was there is what a followed number may be off. */
function each(visit: (model: CornerModel, changed: CornerModel) => void, most = cars): void {
  for (let seed = 0; seed < most; seed++) {
    const { model } = pair(seed);
    for (const change of changes) for (const part of [0.04, -0.04]) visit(model, change(model, part));
  }
}
const turn = steadyTurn(0.6);

describe('following a solution', () => {
  it('ends where the full search ends: a state', () => {
    let compared = 0;
    each((model, changed) => {
      const [from, found] = [equilibrium(model, turn), equilibrium(changed, turn)];
      if (isRefusal(from) || isRefusal(found)) return;
      const near = followed(courseOf(model, turn, from), changed, turn);
      if (!near) return;
      compared++;
      const moved = Math.max(...found.x.slice(at.load, at.load + 4).map((load, i) => Math.abs(load - from.x[at.load + i]!)));
      for (let i = at.load; i < at.load + 4; i++) expect(Math.abs(near.x[i]! - found.x[i]!)).toBeLessThan(1e-3 * moved + 1e-5);
    });
    expect(compared).toBeGreaterThan(450);
  });
  const searches: readonly [string, Condition, (model: CornerModel, near?: Reached['course']) => ReturnType<typeof axleLimit>][] = [
    ['where the front gives up', { kind: 'limit', axle: 0 }, (model, near) => axleLimit(model, 0, 1, steadyTurn(0), near)],
    ['where the rear gives up', { kind: 'limit', axle: 1 }, (model, near) => axleLimit(model, 1, 1, steadyTurn(0), near)],
    ['where a wheel meets its stop', { kind: 'contact', wheel: 1 }, (model, near) => stopContact(model, 1, 1, steadyTurn(0), near)],
  ];
  for (const [name, condition, search] of searches)
    it(`ends where the full search ends: ${name}`, () => {
      let compared = 0;
      each((model, changed) => {
        const from = search(model);
        if (isRefusal(from)) return;
        const [near, found] = [search(changed, from.course), search(changed)];
        // From nearby it gets where the search from rest may not; what it finds is then looked at by itself, below.
        if (isRefusal(near) || isRefusal(found)) return;
        compared++;
        const most = 1e-3 * Math.abs(near.lateral - from.lateral) + 1e-7;
        // Of several places the search may come to another than the first: walking up from rest decides.
        const first = Math.abs(near.lateral - found.lateral) < most ? found : crossing(changed, steadyTurn(0), 1, condition, 3);
        if (isRefusal(first)) throw new Error(first.refused);
        expect(Math.abs(near.lateral - first.lateral)).toBeLessThan(most);
      });
      expect(compared).toBeGreaterThan(60);
    });
  it('holds what is asked of it also where the search from rest gives up', () => {
    let found = 0;
    each((model, changed) => {
      const from = axleLimit(model, 1, 1, steadyTurn(0));
      const near = isRefusal(from) ? from : axleLimit(changed, 1, 1, steadyTurn(0), from.course);
      if (isRefusal(near)) return;
      found++;
      expect(axleUse(changed, steadyTurn(near.lateral), near.state, 1)).toBeCloseTo(1, 4);
      const again = equilibrium(changed, steadyTurn(near.lateral), near.state);
      if (isRefusal(again)) throw new Error(again.refused);
      for (let i = at.load; i < at.load + 4; i++) expect(Math.abs(again.x[i]! - near.state.x[i]!)).toBeLessThan(0.5);
    });
    expect(found).toBeGreaterThan(100);
  });
  it('ends where the full search ends: where wheels lift', () => {
    let compared = 0;
    each((model, changed) => {
      const from = liftOffs(model, steadyTurn(0), 1);
      if (isRefusal(from) || from.walked) return;
      const [near, found] = [liftOffs(changed, steadyTurn(0), 1, from), liftOffs(changed, steadyTurn(0), 1)];
      if (isRefusal(near) || isRefusal(found)) throw new Error('one car stands and its neighbour does not');
      if (near.walked || found.walked) return;
      compared++;
      for (const [n, lift] of near.lifts.entries()) {
        const moved = Math.abs(found.lifts[n]!.lateral - from.lifts[n]!.lateral);
        expect(Math.abs(lift.lateral - found.lifts[n]!.lateral)).toBeLessThan(1e-3 * moved + 1e-8);
      }
    });
    expect(compared).toBeGreaterThan(100);
  });
  it('ends where the full search ends: how hard the car brakes in the turn', () => {
    let compared = 0;
    each((model, changed) => {
      const from = cornerBraking(model, 0.4, 0.65);
      if (isRefusal(from)) return;
      const [near, found] = [cornerBraking(changed, 0.4, 0.65, from), cornerBraking(changed, 0.4, 0.65)];
      if (isRefusal(near) || isRefusal(found)) throw new Error('one car brakes and its neighbour does not');
      compared++;
      expect(Math.abs(near.braking - found.braking)).toBeLessThan(1e-3 * Math.abs(found.braking - from.braking) + 1e-7);
    }, 20);
    expect(compared).toBeGreaterThan(60);
  });
});
