/** What the driven wheels pass on in a corner: thrust and equilibrium found together, since each moves the loads of the other. */

import { isRefusal, type Refusal } from '../../catalog.js';
import { learn, noSlopes, type Slopes, step } from '../../numeric/broyden.js';
import { falling } from '../../numeric/falling.js';
import { solveInPlace } from '../../numeric/linear.js';
import { type Equilibrium, equilibrium, overturned } from '../cornering/equilibrium.js';
import { capacity } from '../cornering/grip.js';
import type { AxleModel, CornerModel, Manoeuvre } from '../cornering/model.js';
import { axleCapacity, unknowns as carUnknowns, carWeight, free, lateralForce, residual } from '../cornering/residual.js';
import { type Driven, splitAtLimit } from './driven.js';
import { thrustLimit } from './limit.js';

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
  /** Where the search ended and what it learned, for the next one to start with. */
  readonly found: Float64Array;
  readonly slopes: Slopes;
  /** How the state moves with the thrust over the weight, where that was worked out. */
  readonly perThrust: Float64Array;
  /** The state leaps past the limit there (a rate that falls lets a corner drop): steps don't meet it, nor from nearby; it is bracketed. */
  readonly leaps?: true;
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

/** What is searched: thrust over the car's weight, and the right wheel's part of it at each axle. */
const unknowns = 3;
function driving(model: CornerModel, lateral: number, driven: readonly [Driven, Driven], weight: number, at: Float64Array): Manoeuvre {
  const [front, rear] = [at[0]! * weight * driven[0].share, at[0]! * weight * driven[1].share];
  const drive = [front * (1 - at[1]!), front * at[1]!, rear * (1 - at[2]!), rear * at[2]!] as const;
  const yawMoment = ((drive[1] - drive[0]) * model.axles[0].track + (drive[3] - drive[2]) * model.axles[1].track) / 2;
  return { lateral, longitudinal: at[0]!, drive, yawMoment };
}

const parts = [capacity(), capacity()] as const;
const nothing = [0, 0, 0, 0] as const;
/** What the wheels of an axle could give if they did not push. */
function gripOf(model: CornerModel, manoeuvre: Manoeuvre, state: Equilibrium, j: 0 | 1): DrivenAxle {
  axleCapacity(model, { ...manoeuvre, drive: nothing }, state.x, j, parts);
  return { grip: [parts[0].force, parts[1].force], lateral: Math.abs(lateralForce(model, manoeuvre, j)) };
}

/** What a state allows: writes what is left of each unknown, and returns the axles. */
function allow(
  model: CornerModel,
  manoeuvre: Manoeuvre,
  state: Equilibrium,
  driven: readonly [Driven, Driven],
  at: Float64Array,
  left: Float64Array,
): readonly [DrivenAxle, DrivenAxle] {
  const axles = [gripOf(model, manoeuvre, state, 0), gripOf(model, manoeuvre, state, 1)] as const;
  let allowed = Number.POSITIVE_INFINITY;
  for (const j of [0, 1] as const) {
    const { differential, share } = driven[j];
    left[1 + j] = share > 0 ? splitAtLimit(axles[j].grip, differential)[1] - at[1 + j]! : 0;
    if (share > 0) allowed = Math.min(allowed, thrustLimit(axles[j].grip, axles[j].lateral, differential) / share);
  }
  left[0] = allowed / carWeight(model) - at[0]!;
  return axles;
}
/** How far the search is from its end, in parts of the car's weight. */
const offBy = (at: Float64Array, left: Float64Array): number => Math.abs(left[0]!) + at[0]! * (Math.abs(left[1]!) + Math.abs(left[2]!));
/** Steps to where the slopes point, inside what is possible; writes how far it moved. */
function advance(at: Float64Array, slopes: Slopes, left: Float64Array, moved: Float64Array): void {
  step(slopes, left, moved);
  for (let n = 0; n < unknowns; n++) {
    const next = n === 0 ? Math.max(0, at[0]! + moved[0]!) : Math.min(1, Math.max(0, at[n]! + moved[n]!));
    moved[n] = next - at[n]!;
    at[n] = next;
  }
}

/** The thrust settles to this part of the car's weight. */
const settled = 1e-9;
/** What the search ends at; nothing where it may as well be nothing, so that nobody divides by what is left of the search. */
const worth = (thrust: number): number => (thrust > settled ? thrust : 0);
const tries = 30;
/** So often no steady state is met before the sure way is taken. */
const mostRefused = 3;
/** Steps from a near solution before what was learned is forgotten. */
const patience = 8;

const jacobian = new Float64Array(carUnknowns * carUnknowns);
const residue = new Float64Array(carUnknowns);
const unused = new Float64Array(carUnknowns);
/** From a near solution, equilibrium and thrust settle side by side, one step of each in turn; undefined where that does not settle. */
function nearThrust(model: CornerModel, lateral: number, driven: readonly [Driven, Driven], near: CornerThrust): CornerThrust | undefined {
  const weight = carWeight(model);
  const at = Float64Array.from(near.found);
  const x = Float64Array.from(near.state.x);
  const state: Equilibrium = { lateral, x, steps: 0 };
  let slopes: Slopes = Float64Array.from(near.slopes);
  const left = new Float64Array(unknowns);
  const before = new Float64Array(unknowns);
  const moved = new Float64Array(unknowns);
  for (let k = 0; k < 3 * patience; k++) {
    const pushing = withShaft(model, driven, at[0]! * weight);
    const manoeuvre = driving(model, lateral, driven, weight, at);
    residual(pushing, manoeuvre, x, residue, jacobian, unused, free);
    let square = 0;
    for (let n = 0; n < carUnknowns; n++) square += residue[n]! * residue[n]!;
    if (!(square < 1e12) || !solveInPlace(jacobian, residue, carUnknowns)) return undefined;
    for (let n = 0; n < carUnknowns; n++) x[n]! -= residue[n]!;
    const axles = allow(pushing, manoeuvre, state, driven, at, left);
    const off = offBy(at, left);
    // Newton's step squares what was left: a hundredth of a newton is then far below what is asked.
    if (off <= settled && square < 1e-4)
      return overturned(x) ? undefined : { thrust: worth(at[0]!) * weight, axles, state, found: at, slopes, perThrust: near.perThrust };
    if (!(off < 1)) return undefined;
    // What was learned on the other side of a kink only leads back and forth: it learns anew.
    if (k > 0 && k % patience === 0) slopes = noSlopes(unknowns);
    else if (k > 0) {
      for (let n = 0; n < unknowns; n++) before[n] = left[n]! - before[n]!;
      learn(slopes, moved, before);
    }
    before.set(left);
    advance(at, slopes, left, moved);
    for (let n = 0; n < carUnknowns; n++) x[n]! += near.perThrust[n]! * moved[0]!;
  }
  return undefined;
}

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
  if (near?.leaps) return bracketed(model, lateral, driven);
  const quick = near && nearThrust(model, lateral, driven, near);
  if (quick) return quick;
  const weight = carWeight(model);
  const at = Float64Array.of(0, 0.5, 0.5);
  let slopes = noSlopes(unknowns);
  let from: Equilibrium | undefined;
  const left = new Float64Array(unknowns);
  const before = new Float64Array(unknowns);
  const moved = new Float64Array(unknowns);
  let refusals = 0;
  let learning = false;
  let closest = Number.POSITIVE_INFINITY;
  let rest: Float64Array | undefined;
  for (let k = 0; k < tries; k++) {
    const pushing = withShaft(model, driven, at[0]! * weight);
    const manoeuvre = driving(model, lateral, driven, weight, at);
    const state = equilibrium(pushing, manoeuvre, from);
    if (isRefusal(state)) {
      // Too much thrust for any steady state: halve it. Without any, there is none.
      if (at[0] === 0) return state;
      if (++refusals > mostRefused) break;
      at[0] = at[0]! > 1e-3 ? at[0]! / 2 : 0;
      from = undefined;
      learning = false;
      continue;
    }
    from = state;
    rest ??= state.x;
    const axles = allow(pushing, manoeuvre, state, driven, at, left);
    const off = offBy(at, left);
    if (off <= settled) {
      const [start, thrust, end] = [rest, at[0]!, state.x];
      const perThrust = end.map((value, n) => (thrust > 0 ? (value - start[n]!) / thrust : 0));
      return { thrust: worth(thrust) * weight, axles, state, found: at, slopes, perThrust };
    }
    if (learning) {
      for (let n = 0; n < unknowns; n++) before[n] = left[n]! - before[n]!;
      // What it has learned leads astray across a kink: begin anew.
      if (off > 2 * closest) slopes = noSlopes(unknowns);
      else learn(slopes, moved, before);
    }
    closest = Math.min(closest, off);
    before.set(left);
    advance(at, slopes, left, moved);
    learning = true;
  }
  return bracketed(model, lateral, driven);
}

/** More thrust over the weight than any tires hold. */
const most = 2.5;
/** The sure way, and the slow one: for each thrust its split is settled, and the thrust is bracketed. Past the last steady state is past the limit. */
function bracketed(model: CornerModel, lateral: number, driven: readonly [Driven, Driven]): CornerThrust | Refusal {
  const weight = carWeight(model);
  const at = Float64Array.of(0, 0.5, 0.5);
  const left = new Float64Array(unknowns);
  let last: { readonly state: Equilibrium; readonly axles: readonly [DrivenAxle, DrivenAxle] } | undefined;
  let refused: Refusal | undefined;
  const above = (thrust: number): number => {
    at[0] = thrust;
    for (let k = 0; k < tries; k++) {
      const pushing = withShaft(model, driven, thrust * weight);
      const manoeuvre = driving(model, lateral, driven, weight, at);
      const state = equilibrium(pushing, manoeuvre, last?.state);
      if (isRefusal(state)) {
        refused = state;
        return -1;
      }
      last = { state, axles: allow(pushing, manoeuvre, state, driven, at, left) };
      if (thrust * (Math.abs(left[1]!) + Math.abs(left[2]!)) <= settled) break;
      // Half of the way, once it seems to go back and forth.
      const part = k < tries / 3 ? 1 : 0.5;
      at[1]! += part * left[1]!;
      at[2]! += part * left[2]!;
    }
    return left[0]!;
  };
  const rest = above(0);
  if (!last) return refused ?? { refused: 'The car has no steady state there.' };
  const thrust = rest > 0 ? falling(above, Math.min(rest, most / 2), most, settled) : 0;
  above(thrust);
  return { thrust: thrust * weight, ...last, found: at, slopes: noSlopes(unknowns), perThrust: new Float64Array(carUnknowns), leaps: true };
}
