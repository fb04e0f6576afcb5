/** How much of its grip an axle uses while it brakes in a corner, and how hard it can. */

import { isRefusal, type Refusal, refuse } from '../../catalog.js';
import { falling } from '../../numeric/falling.js';
import { Course, type Equations } from '../../numeric/follow.js';
import { type Equilibrium, equilibrium, overturned } from '../cornering/equilibrium.js';
import { capacity } from '../cornering/grip.js';
import type { CornerModel, Manoeuvre } from '../cornering/model.js';
import { axleCapacity, carWeight, free, lateralForce, residual, unknowns } from '../cornering/residual.js';

/**
 * The share of their grip that two wheels need for a lateral force together while each brakes or drives with its own: 1 at the limit.
 * Straight ahead it is the use of the wheel that uses most; without brakes the lateral force over all the grip.
 * @param grip what each wheel can give in one direction, N; `along` its longitudinal force; `lateral` the axle's lateral force, without sign
 * @returns Infinity where a wheel that has no grip is asked for some
 */
function gripUse(grip: readonly [number, number], along: readonly [number, number], lateral: number): number {
  const part = (i: 0 | 1): number => (along[i] === 0 ? 0 : grip[i] > 0 ? Math.abs(along[i]) / grip[i] : Number.POSITIVE_INFINITY);
  const least = Math.max(part(0), part(1));
  if (!Number.isFinite(least)) return least;
  const both = grip[0] + grip[1];
  if (!(both > 0)) return lateral > 0 ? Number.POSITIVE_INFINITY : 0;
  const [square0, square1] = [along[0] * along[0], along[1] * along[1]];
  const given = (use: number): number =>
    Math.sqrt(Math.max(0, (use * grip[0]) ** 2 - square0)) + Math.sqrt(Math.max(0, (use * grip[1]) ** 2 - square1));
  if (given(least) >= lateral) return least;
  // Enough for sure: what is needed sideways alone and along alone, in turn.
  const most = least + lateral / both;
  if (square0 === 0 && square1 === 0) return most;
  return most - falling((back) => given(most - back) - lateral, 0.3 * (most - least), most - least);
}

const parts = [capacity(), capacity()] as const;
const nothing = [0, 0, 0, 0] as const;
/** The same of an axle in a state of the car. */
export function axleGripUse(model: CornerModel, manoeuvre: Manoeuvre, state: Equilibrium, j: 0 | 1): number {
  axleCapacity(model, { ...manoeuvre, drive: nothing }, state.x, j, parts);
  const along = [manoeuvre.drive[2 * j]!, manoeuvre.drive[2 * j + 1]!] as const;
  return gripUse([parts[0].force, parts[1].force], along, Math.abs(lateralForce(model, manoeuvre, j)));
}

export interface CornerBraking {
  /** The hardest braking before a wheel passes its grip, over g; 0 where the corner takes it all. */
  readonly braking: number;
  /** Use of grip there, front and rear; the larger is 1. */
  readonly use: readonly [number, number];
  readonly state: Equilibrium;
  /** Where the same of cars nearby is found from; none where the corner takes it all. */
  readonly course?: Course;
}
/** Braking, over g, with its front share of the brake force; both wheels of an axle brake alike. */
function braked(weight: number, lateral: number, share: number, braking: number): Manoeuvre {
  const [f, r] = [(-braking * weight * share) / 2, (-braking * weight * (1 - share)) / 2];
  return { lateral, longitudinal: -braking, drive: [f, f, r, r], yawMoment: 0 };
}
const bothUse = (model: CornerModel, manoeuvre: Manoeuvre, state: Equilibrium): readonly [number, number] => [
  axleGripUse(model, manoeuvre, state, 0),
  axleGripUse(model, manoeuvre, state, 1),
];
const unusedSlopes = new Float64Array(unknowns);
/** The equations of the car, and that a wheel has no more grip; what is sought beside the unknowns is the braking. */
function equationsOf(model: CornerModel, lateral: number, share: number): Equations {
  const weight = carWeight(model);
  return {
    residual: (x, braking, out, slopes) =>
      residual(model, braked(weight, lateral, share, braking), x, out, slopes, slopes && unusedSlopes, free),
    until: (x, braking) => weight * (1 - Math.max(...bothUse(model, braked(weight, lateral, share, braking), { lateral, x, steps: 0 }))),
  };
}
/**
 * How hard the car can brake in a corner, the equilibrium solved anew for each try.
 * @param lateral over g, positive to the left
 * @param share front share of the brake force; both wheels of an axle brake alike
 * @param near a solution of a car nearby, to start from
 */
export function cornerBraking(model: CornerModel, lateral: number, share: number, near?: CornerBraking): CornerBraking | Refusal {
  const weight = carWeight(model);
  const next = near?.course?.follow(equationsOf(model, lateral, share));
  if (next && next.t > 0 && !overturned(next.x)) {
    const state: Equilibrium = { lateral, x: next.x, steps: 0 };
    return { braking: next.t, use: bothUse(model, braked(weight, lateral, share, next.t), state), state };
  }
  let state: Equilibrium | undefined = near?.state;
  let refused: Refusal | undefined;
  let use: readonly [number, number] = [0, 0];
  const left = (braking: number): number => {
    const manoeuvre = braked(weight, lateral, share, braking);
    const found = equilibrium(model, manoeuvre, state);
    // Past the last steady state is past the limit.
    if (isRefusal(found)) {
      refused = found;
      return -1;
    }
    state = found;
    use = bothUse(model, manoeuvre, state);
    return Math.max(-1, 1 - Math.max(use[0], use[1]));
  };
  const most = 2.5;
  const rest = left(0);
  if (state === undefined || refused) return refused ?? refuse('The car has no steady state there.');
  if (rest <= 0) return { braking: 0, use, state };
  const braking = falling(left, near?.braking || 0.7 * rest, most);
  left(braking);
  return { braking, use, state, course: new Course(equationsOf(model, lateral, share), state.x, braking) };
}
