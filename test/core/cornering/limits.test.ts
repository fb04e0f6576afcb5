import { describe, expect, it } from 'vitest';
import { isRefusal } from '../../../core/catalog.js';
import { equilibrium } from '../../../core/subjects/cornering/equilibrium.js';
import { liftOffs } from '../../../core/subjects/cornering/lifts.js';
import { axleLimit, axleUse, balance } from '../../../core/subjects/cornering/limits.js';
import { steadyTurn } from '../../../core/subjects/cornering/model.js';
import { carL2, fallingGrip, pound } from './cars.js';

const grip = fallingGrip(1.35, 0.0005 / pound);
function reached(found: ReturnType<typeof axleLimit>): number {
  if (isRefusal(found)) throw new Error(found.refused);
  return found.lateral;
}
describe('limits of both ends', () => {
  it('M4: front first, by the balance of the check row; stiffnesses swapped, rear first', () => {
    const car = carL2({ grip });
    const [front, rear] = [reached(axleLimit(car, 0, 1, steadyTurn(0))), reached(axleLimit(car, 1, 1, steadyTurn(0)))];
    expect(front).toBeCloseTo(0.898148, 6);
    expect(rear).toBeCloseTo(0.91772, 6);
    expect(balance(front, rear)).toBeCloseTo(2.17916, 4);
    const swapped = carL2({ grip, stiffness: [400, 620] });
    const [f, r] = [reached(axleLimit(swapped, 0, 1, steadyTurn(0))), reached(axleLimit(swapped, 1, 1, steadyTurn(0)))];
    expect(r).toBeCloseTo(0.85825, 6);
    expect(f).toBeGreaterThan(r);
  });
  it('is the same in both directions for a symmetric car', () => {
    const car = carL2({ grip, gravity: true, tireRate: 210000 });
    expect(reached(axleLimit(car, 0, -1, steadyTurn(0)))).toBeCloseTo(-reached(axleLimit(car, 0, 1, steadyTurn(0))), 9);
  });
  it('refuses where a load is beyond what mu = A - B*N holds for: N below A/(2B) (CORNERING)', () => {
    const steep = axleLimit(carL2({ grip: fallingGrip(1.35, 0.0008 / pound) }), 0, 1, steadyTurn(0));
    expect(steep).toHaveProperty('refused', expect.stringContaining('law of grip'));
  });
  it('M7: the front wheel lifts at 1.15741 g', () => {
    const car = carL2({ stiffness: [900, 200], gravity: true });
    const found = liftOffs(car, steadyTurn(0), 1);
    if (isRefusal(found)) throw new Error(found.refused);
    expect(found.lifts[0]?.wheel).toBe(0);
    expect(found.lifts[0]?.lateral).toBeCloseTo(1.15741, 5);
    // It still holds 1.3 g there.
    expect(found.over).toBeGreaterThan(1.3);
  });
  it('M11: braking at 0.5 g, front share 0.65', () => {
    const car = carL2({});
    const braking = 0.5 * 2600 * pound;
    const drive = [-0.65, -0.65, -0.35, -0.35].map((s) => (s * braking) / 2);
    const manoeuvre = { lateral: 0, longitudinal: -0.5, drive: [drive[0]!, drive[1]!, drive[2]!, drive[3]!], yawMoment: 0 } as const;
    const state = equilibrium(car, manoeuvre);
    if (isRefusal(state)) throw new Error(state.refused);
    // Use along the road: brake force over what the loads can give at mu 1.
    const use = (j: number) => Math.abs(drive[2 * j]! + drive[2 * j + 1]!) / (state.x[8 + 2 * j]! + state.x[9 + 2 * j]!);
    expect(use(0)).toBeCloseTo(0.524194, 6);
    expect(use(1)).toBeCloseTo(0.460526, 6);
    expect(axleUse(car, manoeuvre, state, 0)).toBe(0);
  });
});
