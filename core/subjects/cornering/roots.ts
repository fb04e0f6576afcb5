/**
 * The lateral acceleration at which something happens: Newton's method on the thirteen equations and that condition together,
 * which costs about as much as one equilibrium. What it can't settle is left to the bracketed search of limits.ts.
 */
import { isRefusal, type Refusal } from '../../catalog.js';
import { Course, type Equations } from '../../numeric/follow.js';
import { solveInPlace } from '../../numeric/linear.js';
import { type Equilibrium, equilibrium, overturned } from './equilibrium.js';
import { capacity } from './grip.js';
import type { CornerModel, Manoeuvre } from './model.js';
import { at, axleCapacity, forcePerLateral, free, lateralForce, residual, turnOf, unknowns } from './residual.js';

/** An axle has no more grip; a wheel's load is down to nothing; a wheel meets its stop. */
export type Condition =
  | { readonly kind: 'limit'; readonly axle: 0 | 1 }
  | { readonly kind: 'lift'; readonly wheel: 0 | 1 | 2 | 3 }
  | { readonly kind: 'contact'; readonly wheel: 0 | 1 | 2 | 3 };
export interface Reached {
  /** Signed, over g. */
  readonly lateral: number;
  readonly state: Equilibrium;
  /** Where the same of cars nearby is found from. */
  readonly course?: Course;
}
/** Scales a length so that its tolerance is that of a force. */
const stopScale = 1e5;

const parts = [capacity(), capacity()] as const;
/** Slope of the condition over each unknown. */
const gradient = new Float64Array(unknowns);
/** One for all calls: its next call overwrites it. */
const until = { left: 0, gradient, perLateral: 0 };

/** What is left until the condition holds, N, falling through zero, and its slopes over the unknowns and over the lateral acceleration. */
export function leftUntil(model: CornerModel, manoeuvre: Manoeuvre, x: Float64Array, condition: Condition): Readonly<typeof until> {
  gradient.fill(0);
  until.perLateral = 0;
  until.left = fill(model, manoeuvre, x, condition);
  return until;
}
function fill(model: CornerModel, manoeuvre: Manoeuvre, x: Float64Array, condition: Condition): number {
  if (condition.kind === 'lift') {
    gradient[at.load + condition.wheel] = 1;
    return x[at.load + condition.wheel]!;
  }
  if (condition.kind === 'contact') return untilContact(model, x, condition.wheel);
  const j = condition.axle;
  const axle = model.axles[j];
  const turn = turnOf(manoeuvre);
  const grip = axleCapacity(model, manoeuvre, x, j, parts);
  const force = lateralForce(model, manoeuvre, j);
  const sign = force < 0 ? -1 : 1;
  until.perLateral = -sign * forcePerLateral(model, j);
  const [wl, wr] = [at.wheel + 2 * j, at.wheel + 2 * j + 1];
  gradient[at.load + 2 * j] = parts[0].perLoad;
  gradient[at.load + 2 * j + 1] = parts[1].perLoad;
  const [leanL, leanR] = [parts[0].perLean, parts[1].perLean];
  if (axle.camber && axle.kind === 'beam') {
    gradient[wl] = (-turn * (leanL + leanR)) / axle.track;
    gradient[wr] = (turn * (leanL + leanR)) / axle.track;
  } else if (axle.camber) {
    const gain = axle.camber.gain;
    gradient[wl] = turn * gain * leanL;
    gradient[wr] = -turn * gain * leanR;
    gradient[at.height(j)] = turn * gain * (leanR - leanL);
    gradient[at.roll(j)] = -turn * (1 + (gain * axle.track) / 2) * (leanL + leanR);
  }
  return grip - sign * force;
}
function untilContact({ axles }: CornerModel, x: Float64Array, wheel: number): number {
  const j = wheel >> 1;
  const s = wheel & 1 ? -1 : 1;
  const axle = axles[j]!;
  const stop = axle.contact[wheel & 1]!;
  const [wl, wr] = [at.wheel + 2 * j, at.wheel + 2 * j + 1];
  gradient[at.height(j)] = stopScale;
  if (axle.kind === 'beam') {
    const perRoll = (s * axle.springBase) / 2;
    gradient[wl] = -stopScale * (0.5 + perRoll / axle.track);
    gradient[wr] = -stopScale * (0.5 - perRoll / axle.track);
    gradient[at.roll(j)] = stopScale * perRoll;
  } else {
    gradient[at.wheel + wheel] = -stopScale;
    gradient[at.roll(j)] = (stopScale * s * axle.track) / 2;
  }
  let bump = 0;
  for (let k = 0; k < unknowns; k++) bump -= (gradient[k]! * x[k]!) / stopScale;
  return stopScale * (stop - bump);
}

/** Over g: what lies beyond is no road car's, and is left to the bracketed search to refuse. */
const farthest = 3;

const jacobian = new Float64Array(unknowns * unknowns);
const right = new Float64Array(unknowns);
const slopes = new Float64Array(unknowns);

/** A wheel that lifts second takes the car over just there; any other condition past that is none. */
const isReal = (x: Float64Array, lateral: number, direction: 1 | -1, { kind }: Condition): boolean =>
  lateral * direction > 0 && Math.abs(lateral) <= farthest && (kind === 'lift' || !overturned(x));
/** Newton from a state; undefined when it does not settle. Full steps: the bracketed search takes over where a kink throws it. */
function newton(model: CornerModel, manoeuvre: Manoeuvre, condition: Condition, from: Reached): Reached | undefined {
  const x = Float64Array.from(from.state.x);
  let lateral = from.lateral;
  const direction = lateral < 0 ? -1 : 1;
  const held = holdOf(condition);
  for (let step = 0; step < 14; step++) {
    const here: Manoeuvre = { lateral, longitudinal: manoeuvre.longitudinal, drive: manoeuvre.drive, yawMoment: manoeuvre.yawMoment };
    residual(model, here, x, right, jacobian, slopes, held);
    const { left: gap, perLateral } = leftUntil(model, here, x, condition);
    let norm = gap * gap;
    for (let k = 0; k < unknowns; k++) norm += right[k]! * right[k]!;
    if (norm < 1e-14) {
      return isReal(x, lateral, direction, condition) ? { lateral, state: { lateral, x, steps: step } } : undefined;
    }
    if (!(norm < 1e16)) return undefined;
    if (!solveInPlace(jacobian, right, unknowns, slopes)) return undefined;
    let [along, across] = [perLateral, gap];
    for (let k = 0; k < unknowns; k++) {
      along -= gradient[k]! * slopes[k]!;
      across -= gradient[k]! * right[k]!;
    }
    const change = -across / along;
    if (!Number.isFinite(change)) return undefined;
    const whole = Math.max(-0.6, Math.min(0.6, change));
    for (let k = 0; k < unknowns; k++) x[k]! -= right[k]! + slopes[k]! * whole;
    lateral += whole;
    if (lateral * direction < 0) lateral = direction * 1e-3;
  }
  return undefined;
}

const holdOf = (condition: Condition): number => (condition.kind === 'lift' ? condition.wheel : free);
/** The equations of a car and the condition together; what is sought beside the unknowns is the lateral acceleration. */
function equationsOf(model: CornerModel, manoeuvre: Manoeuvre, condition: Condition): Equations {
  const { longitudinal, drive, yawMoment } = manoeuvre;
  const turning = (lateral: number): Manoeuvre => ({ lateral, longitudinal, drive, yawMoment });
  const held = holdOf(condition);
  return {
    residual: (x, lateral, out, into) => residual(model, turning(lateral), x, out, into, into && slopes, held),
    until: (x, lateral) => leftUntil(model, turning(lateral), x, condition).left,
  };
}
export const courseOf = (model: CornerModel, manoeuvre: Manoeuvre, condition: Condition, { lateral, state }: Reached): Course =>
  new Course(equationsOf(model, manoeuvre, condition), state.x, lateral);
/** The root of a car that differs a little; undefined where the full search has to find it, or find that there is none. */
export function followedRoot(
  course: Course,
  model: CornerModel,
  manoeuvre: Manoeuvre,
  direction: 1 | -1,
  condition: Condition,
): Reached | undefined {
  const found = course.follow(equationsOf(model, manoeuvre, condition));
  if (!found || !isReal(found.x, found.t, direction, condition)) return undefined;
  return { lateral: found.t, state: { lateral: found.t, x: found.x, steps: 0 } };
}

/**
 * The root, from half a g.
 * @param direction 1 for left turns, -1 for right
 * @returns undefined where Newton's method does not settle, or the car has no steady state at half a g
 */
export function rootOf(model: CornerModel, manoeuvre: Manoeuvre, direction: 1 | -1, condition: Condition): Reached | undefined {
  const lateral = 0.5 * direction;
  const state: Equilibrium | Refusal = equilibrium(model, { ...manoeuvre, lateral });
  return isRefusal(state) ? undefined : newton(model, manoeuvre, condition, { lateral, state });
}
