/** What the driven wheels pass on in a corner: thrust and equilibrium found together, since each moves the loads of the other. */
import { isRefusal, type Refusal } from '../catalog.js';
import { type Equilibrium, equilibrium } from '../cornering/equilibrium.js';
import { capacity } from '../cornering/grip.js';
import type { AxleModel, CornerModel, Manoeuvre } from '../cornering/model.js';
import { axleCapacity, carWeight, lateralForce } from '../cornering/residual.js';
import { thrustLimit } from '../cornering/traction.js';
import { type Driven, splitAtLimit } from './driven.js';

/** An axle at the thrust that it just holds. */
export interface DrivenAxle {
  /** What each wheel could give in one direction, N, left and right. */
  readonly grip: readonly [number, number];
  /** The lateral force that the corner asks of the axle, N, without sign. */
  readonly lateral: number;
}
export interface CornerThrust {
  /** N; 0 where the corner already takes all that the driven wheels have. */
  readonly thrust: number;
  readonly axles: readonly [DrivenAxle, DrivenAxle];
  readonly state: Equilibrium;
  /** How fast the limit grows with the thrust, for the next search to start with. */
  readonly slope: number;
}

/** The shaft's torque on a beam axle, held by the body: clockwise seen from the front, as engines turn, so that the left wheel gains. */
function withShaft(model: CornerModel, driven: readonly [Driven, Driven], thrust: number): CornerModel {
  if (driven[0].shaft * driven[0].share === 0 && driven[1].shaft * driven[1].share === 0) return model;
  const turned = (j: 0 | 1): AxleModel => {
    const axle = model.axles[j];
    const torque = axle.kind === 'beam' ? driven[j].shaft * driven[j].share * thrust : 0;
    return torque === 0 ? axle : { ...axle, rest: { body: axle.rest.body - torque, axle: axle.rest.axle + torque } };
  };
  return { ...model, axles: [turned(0), turned(1)] };
}

type Split = readonly [readonly [number, number], readonly [number, number]];
function driving(model: CornerModel, lateral: number, driven: readonly [Driven, Driven], thrust: number, split: Split): Manoeuvre {
  const force = (j: 0 | 1, i: 0 | 1): number => thrust * driven[j].share * split[j][i];
  const drive = [force(0, 0), force(0, 1), force(1, 0), force(1, 1)] as const;
  const yawMoment = ((drive[1] - drive[0]) * model.axles[0].track + (drive[3] - drive[2]) * model.axles[1].track) / 2;
  return { lateral, longitudinal: thrust / carWeight(model), drive, yawMoment };
}

const parts = [capacity(), capacity()] as const;
/** What the wheels of an axle could give if they did not push. */
function gripOf(model: CornerModel, manoeuvre: Manoeuvre, state: Equilibrium, j: 0 | 1): DrivenAxle {
  const freely: Manoeuvre = { ...manoeuvre, drive: [0, 0, 0, 0] };
  axleCapacity(model, freely, state.x, j, parts);
  return { grip: [parts[0].force, parts[1].force], lateral: Math.abs(lateralForce(model, manoeuvre, j)) };
}

/** The thrust settles to this part of the car's weight. */
const settled = 1e-10;
const tries = 60;

/**
 * The largest thrust with which the driven wheels still hold the corner.
 * @param lateral over g, positive to the left
 * @param near a solution of a car nearby, to start from
 * @returns a refusal where the car has no steady state; a thrust of 0 where the corner takes all that the driven wheels have
 * @source CORNERING, "Thrust while cornering", at the loads of the equilibrium under that thrust
 */
export function cornerThrust(
  model: CornerModel,
  lateral: number,
  driven: readonly [Driven, Driven],
  near?: CornerThrust,
): CornerThrust | Refusal {
  const weight = carWeight(model);
  let thrust = near?.thrust ?? 0;
  let slope = near?.slope ?? 0;
  let split: Split = near
    ? [splitAtLimit(near.axles[0].grip, driven[0].differential), splitAtLimit(near.axles[1].grip, driven[1].differential)]
    : [
        [0.5, 0.5],
        [0.5, 0.5],
      ];
  let state: Equilibrium | Refusal | undefined = near?.state;
  let before: { readonly thrust: number; readonly allowed: number } | undefined;
  for (let k = 0; k < tries; k++) {
    const pushing = withShaft(model, driven, thrust);
    const manoeuvre = driving(model, lateral, driven, thrust, split);
    state = equilibrium(pushing, manoeuvre, state);
    if (isRefusal(state)) {
      // Too much thrust for any steady state: halve it. Without any, there is none.
      if (thrust === 0) return state;
      thrust = thrust > 1e-3 * weight ? thrust / 2 : 0;
      before = undefined;
      state = undefined;
      continue;
    }
    const axles = [gripOf(pushing, manoeuvre, state, 0), gripOf(pushing, manoeuvre, state, 1)] as const;
    let allowed = Number.POSITIVE_INFINITY;
    for (const j of [0, 1] as const)
      if (driven[j].share > 0)
        allowed = Math.min(allowed, thrustLimit(axles[j].grip, axles[j].lateral, driven[j].differential) / driven[j].share);
    if (Math.abs(allowed - thrust) <= settled * weight) return { thrust, axles, state, slope };
    split = [splitAtLimit(axles[0].grip, driven[0].differential), splitAtLimit(axles[1].grip, driven[1].differential)];
    // The limit moves with the thrust by a steady fraction of it: a secant finds that fraction.
    if (before && Math.abs(thrust - before.thrust) > 1e-6 * weight) {
      const seen = (allowed - before.allowed) / (thrust - before.thrust);
      if (seen > -2 && seen < 0.9) slope = seen;
    }
    before = { thrust, allowed };
    thrust = Math.max(0, thrust + (allowed - thrust) / (1 - slope));
  }
  return { refused: 'No thrust is found that the driven wheels just hold there.' };
}
