/** Solves the four-wheel equilibrium: semismooth Newton, with continuation from the static state. */
import { type Refusal, refuse } from '../../catalog.js';
import { Course, type Equations } from '../../numeric/follow.js';
import { solveInPlace } from '../../numeric/linear.js';
import { type CornerModel, type Manoeuvre, steadyTurn } from './model.js';
import { at, axleSprung, carWeight, free, residual, unknowns } from './residual.js';

export interface Equilibrium {
  readonly lateral: number;
  /** Unknowns in the order of residual.ts; a warm start for the next. */
  readonly x: Float64Array;
  /** Newton steps that it took. */
  readonly steps: number;
}
const jacobian = new Float64Array(unknowns * unknowns);
const right = new Float64Array(unknowns);
const trial = new Float64Array(unknowns);
const trialRight = new Float64Array(unknowns);
const unusedSlopes = new Float64Array(unknowns);

const size = (v: Float64Array): number => {
  let sum = 0;
  for (let k = 0; k < unknowns; k++) sum += v[k]! * v[k]!;
  return Math.sqrt(sum);
};

const mostSteps = 30;
const mostHalvings = 5;
/** Smallest part of a manoeuvre in which it is built up. */
const leastStride = 1 / 256;

/**
 * Newton from a start. Loads settle to a millionth of a newton.
 * @returns the number of steps, or undefined when it does not settle from there
 */
function newton(model: CornerModel, manoeuvre: Manoeuvre, x: Float64Array, most = mostSteps): number | undefined {
  residual(model, manoeuvre, x, right, jacobian, unusedSlopes, free);
  let norm = size(right);
  for (let step = 0; step < most; step++) {
    if (norm < 1e-7) return step;
    if (!Number.isFinite(norm)) return undefined;
    if (!solveInPlace(jacobian, right, unknowns)) return undefined;
    let scale = 1;
    // The full step nearly always; halved where a kink (a lifted wheel, a stop) throws it too far.
    for (let halving = 0; ; halving++) {
      for (let k = 0; k < unknowns; k++) trial[k] = x[k]! - scale * right[k]!;
      residual(model, manoeuvre, trial, trialRight, jacobian, unusedSlopes, free);
      const next = size(trialRight);
      if (next < norm || next < 1e-7 || (halving >= mostHalvings && Number.isFinite(next))) {
        // At the floor of rounding no step makes it smaller: what is there is the answer.
        if (next >= norm && norm < 1e-5) return step;
        norm = next;
        break;
      }
      if (halving >= mostHalvings) return undefined;
      scale /= 2;
    }
    x.set(trial);
    right.set(trialRight);
  }
  return undefined;
}

/** A start: the reference state, with its loads. */
function reference(model: CornerModel): Float64Array {
  const x = new Float64Array(unknowns);
  model.axles.forEach((axle, j) => {
    x[at.load + 2 * j] = axle.reference[0];
    x[at.load + 2 * j + 1] = axle.reference[1];
  });
  return x;
}

const between = (whole: Manoeuvre, part: number): Manoeuvre => ({
  lateral: whole.lateral * part,
  longitudinal: whole.longitudinal * part,
  drive: [whole.drive[0] * part, whole.drive[1] * part, whole.drive[2] * part, whole.drive[3] * part],
  yawMoment: whole.yawMoment * part,
});

/** Both wheels of one side in the air: the car is going over. */
export const overturned = (x: Float64Array): boolean =>
  (x[at.load]! <= 1e-6 && x[at.load + 2]! <= 1e-6) || (x[at.load + 1]! <= 1e-6 && x[at.load + 3]! <= 1e-6);

const over = refuse('Both wheels of one side are off the ground there: the car would roll over.');
/** More than its own leaning could make up for, parts of the moment that the loads can hold. */
const makeUp = 1.2;
/** Whether the overturning moment is more than all of the load on the outer wheels could hold: then there is nothing to solve. */
function beyondHelp(model: CornerModel, { lateral, longitudinal }: Manoeuvre): boolean {
  const weight = carWeight(model);
  const along = (weight * longitudinal * model.cgHeight) / (model.toFront + model.toRear);
  const [front, rear] = model.axles;
  const ahead = front.reference[0] + front.reference[1] - along;
  const held = (front.track * ahead + rear.track * (weight - ahead)) / 2;
  const offset = Math.abs(front.rest.body + front.rest.axle + rear.rest.body + rear.rest.axle);
  return weight * model.cgHeight * Math.abs(lateral) > makeUp * held + offset;
}

/**
 * The state next to another of the same car; undefined when Newton's method does not settle from there, or the car goes over.
 * @param most steps of Newton's method
 */
export function nearby(model: CornerModel, manoeuvre: Manoeuvre, near: Equilibrium, most = mostSteps): Equilibrium | undefined {
  if (beyondHelp(model, manoeuvre)) return undefined;
  const x = Float64Array.from(near.x);
  const steps = newton(model, manoeuvre, x, most);
  return steps !== undefined && !overturned(x) ? { lateral: manoeuvre.lateral, x, steps } : undefined;
}

/**
 * The state in which the car holds a manoeuvre.
 * @param near a state of the same car nearby, to start from; without it the manoeuvre is built up from rest in steps that halve where one fails
 * @returns the state, or a refusal: no equilibrium (gravity overcomes the springs), or over on two wheels
 */
export function equilibrium(model: CornerModel, manoeuvre: Manoeuvre, near?: Equilibrium): Equilibrium | Refusal {
  for (const axle of model.axles)
    if (!(axleSprung(axle) > 0)) return refuse('The unsprung weight of an axle is more than the axle carries.');
  if (beyondHelp(model, manoeuvre)) return over;
  const warm = near && nearby(model, manoeuvre, near);
  if (warm) return warm;
  const x = reference(model);
  let total = newton(model, between(manoeuvre, 0), x);
  if (total === undefined) return refuse('The car does not come to rest on its springs with these facts.');
  let part = 0;
  let stride = 1;
  const last = Float64Array.from(x);
  while (part < 1) {
    const next = Math.min(1, part + stride);
    const steps = newton(model, between(manoeuvre, next), x);
    if (steps !== undefined && !(overturned(x) && next < 1)) {
      total += steps;
      part = next;
      last.set(x);
      stride *= 2;
    } else {
      x.set(last);
      stride /= 2;
      if (stride < leastStride) return refuse('There is no steady state there: the car does not find its balance on its springs.');
    }
  }
  if (overturned(x)) return over;
  return { lateral: manoeuvre.lateral, x, steps: total };
}

/** The equations of a car in a manoeuvre. */
const equationsOf = (model: CornerModel, manoeuvre: Manoeuvre): Equations => ({
  residual: (x, _, out, slopes) => residual(model, manoeuvre, x, out, slopes, slopes && unusedSlopes, free),
});
/** Where the states of cars nearby are found from. */
export const courseOf = (model: CornerModel, manoeuvre: Manoeuvre, { x }: Equilibrium): Course =>
  new Course(equationsOf(model, manoeuvre), x, 0);
/** The state of a car that differs a little; undefined where the full search has to find it, or find that there is none. */
export function followed(course: Course, model: CornerModel, manoeuvre: Manoeuvre): Equilibrium | undefined {
  if (!model.axles.every((axle) => axleSprung(axle) > 0) || beyondHelp(model, manoeuvre)) return undefined;
  const x = course.follow(equationsOf(model, manoeuvre))?.x;
  return x && !overturned(x) ? { lateral: manoeuvre.lateral, x, steps: 0 } : undefined;
}

/** Slope of every unknown over the lateral acceleration (per g) at an equilibrium at rest; not finite where the car has no stiffness. */
export function tangent(model: CornerModel, { x }: Equilibrium): Float64Array {
  const slopes = new Float64Array(unknowns);
  residual(model, steadyTurn(0), x, right, jacobian, slopes, free);
  if (!solveInPlace(jacobian, slopes, unknowns)) return slopes.fill(Number.NaN);
  for (let k = 0; k < unknowns; k++) slopes[k] = -slopes[k]!;
  return slopes;
}
