/**
 * The thirteen equations of the four-wheel equilibrium and their analytic Jacobian, numbered as in CORNERING's derivation.
 * All rows are forces (N) or moments (N m); heights are changes from the reference state, m; roll is in rad.
 */
import { type Capacity, capacity, fillCapacity, leanOf } from './grip.js';
import type { AxleModel, CornerModel, Manoeuvre } from './model.js';
import { at, unknowns } from './unknowns.js';

export { at, unknowns } from './unknowns.js';

/** Stands for the rate of a rigid tire in the complementarity of load and gap: only its units matter, not its size. */
const gapScale = 2e5;
/** No wheel is held down. */
export const free = -1;

const n = unknowns;
const noArms = [0, 0] as const;
const axleLoad = (axle: AxleModel): number => axle.reference[0] + axle.reference[1];
export const axleUnsprung = (axle: AxleModel): number => axle.unsprung[0] + axle.unsprung[1];
export const axleSprung = (axle: AxleModel): number => axleLoad(axle) - axleUnsprung(axle);
export const carWeight = ({ axles }: CornerModel): number => axleLoad(axles[0]) + axleLoad(axles[1]);

/** Lateral force of an axle per g, N: its share by the balance of yaw moments. */
export const forcePerLateral = (model: CornerModel, j: number): number =>
  (carWeight(model) * (j === 0 ? model.toRear : model.toFront)) / (model.toFront + model.toRear);
/** Lateral force that the axle's wheels must give together, N: from the total mass and the balance of yaw moments, never from the loads of the moment. */
export const lateralForce = (model: CornerModel, { lateral, yawMoment }: Manoeuvre, j: number): number =>
  forcePerLateral(model, j) * lateral + ((j === 0 ? -1 : 1) * yawMoment) / (model.toFront + model.toRear);
/** 1 for a left turn, or none; -1 for a right one. */
export const turnOf = ({ lateral }: Manoeuvre): 1 | -1 => (lateral < 0 ? -1 : 1);

/** How far a wheel stands clear of the ground, as a force (its tire's rate times the gap): zero while it carries load. */
export function clearance({ axles }: CornerModel, x: Float64Array, wheel: number): number {
  const { tireRate, reference } = axles[wheel >> 1]!;
  const height = x[at.wheel + wheel]!;
  return Number.isFinite(tireRate) ? tireRate * height + x[at.load + wheel]! - reference[wheel & 1]! : gapScale * height;
}

const left = capacity();
const right = capacity();

/**
 * Writes the residual and, row after row, the Jacobian at `x`, and the slope of each row over the lateral acceleration. Buffers are overwritten.
 * @param jacobian left out where the residual alone is asked for, which costs a third; `perLateral` is then not written
 * @param held a wheel that is taken to stay on the ground whatever it pulls, or `free`: its load goes on through zero where it lifts
 */
export function residual(
  model: CornerModel,
  manoeuvre: Manoeuvre,
  x: Float64Array,
  out: Float64Array,
  jacobian: Float64Array | undefined,
  perLateral: Float64Array | undefined,
  held: number,
): void {
  out.fill(0);
  jacobian?.fill(0);
  perLateral?.fill(0);
  const alongTransfer = (carWeight(model) * manoeuvre.longitudinal * model.cgHeight) / (model.toFront + model.toRear);
  for (let j = 0; j < 2; j++) {
    const axle = model.axles[j]!;
    contact(model, axle, j, x, out, jacobian, held);
    bodyRoll(model, axle, j, manoeuvre.lateral, x, out, jacobian, perLateral);
    // 7
    out[8 + 2 * j] = -(axleSprung(axle) + (j === 0 ? -alongTransfer : alongTransfer));
    if (axle.kind === 'independent') independent(model, axle, j, manoeuvre, x, out, jacobian, perLateral);
    else beam(model, axle, j, manoeuvre, x, out, jacobian, perLateral);
  }
  const twist = x[at.roll(0)]! - x[at.roll(1)]!;
  const rigid = !Number.isFinite(model.chassisStiffness);
  // A rigid body's row is scaled to moments, so that one tolerance holds for all rows.
  const stiffness = rigid ? -1e6 : model.chassisStiffness;
  out[12] = (rigid ? 0 : x[at.torque]!) - stiffness * twist;
  if (!jacobian) return;
  jacobian[12 * n + at.torque] = rigid ? 0 : 1;
  jacobian[12 * n + at.roll(0)] = -stiffness;
  jacobian[12 * n + at.roll(1)] = stiffness;
}

/** 1: a wheel carries load, or stands clear of the ground. */
function contact(
  model: CornerModel,
  axle: AxleModel,
  j: number,
  x: Float64Array,
  out: Float64Array,
  jacobian: Float64Array | undefined,
  held: number,
): void {
  const soft = Number.isFinite(axle.tireRate);
  for (let i = 0; i < 2; i++) {
    const wheel = 2 * j + i;
    const load = x[at.load + wheel]!;
    const gap = clearance(model, x, wheel);
    if (load <= gap && wheel !== held) {
      out[wheel] = load;
      if (jacobian) jacobian[wheel * n + at.load + wheel] = 1;
    } else {
      out[wheel] = gap;
      if (!jacobian) continue;
      jacobian[wheel * n + at.wheel + wheel] = soft ? axle.tireRate : gapScale;
      jacobian[wheel * n + at.load + wheel] = soft ? 1 : 0;
    }
  }
}

/** 8: gravity's share acts at the sideways shift of the sprung weight; the roll centre rides on the wheels. */
function bodyRoll(
  model: CornerModel,
  axle: AxleModel,
  j: number,
  lateral: number,
  x: Float64Array,
  out: Float64Array,
  jacobian: Float64Array | undefined,
  perLateral: Float64Array | undefined,
): void {
  const gravity = model.gravity ? 1 : 0;
  const sprung = axleSprung(axle);
  const roll = at.roll(j);
  const [nl, nr] = [at.load + 2 * j, at.load + 2 * j + 1];
  const perRoll = gravity * (model.sprungCgHeight - axle.rollCentreHeight);
  const perLoad = Number.isFinite(axle.tireRate) ? (gravity * axle.rollCentreHeight) / (axle.tireRate * axle.track) : 0;
  // The roll of the tires is what the loads have changed, not what they are.
  const shift = perRoll * x[roll]! + perLoad * (x[nr]! - axle.reference[1] - x[nl]! + axle.reference[0]);
  const row = 9 + 2 * j;
  const torqueSign = j === 0 ? -1 : 1;
  out[row] = sprung * (lateral * model.sprungCgHeight + shift) + torqueSign * x[at.torque]! - axle.rest.body;
  if (!jacobian || !perLateral) return;
  perLateral[row] = sprung * model.sprungCgHeight;
  jacobian[row * n + roll]! += sprung * perRoll;
  jacobian[row * n + nl]! -= sprung * perLoad;
  jacobian[row * n + nr]! += sprung * perLoad;
  jacobian[row * n + at.torque]! += torqueSign;
}

function independent(
  model: CornerModel,
  axle: AxleModel,
  j: number,
  manoeuvre: Manoeuvre,
  x: Float64Array,
  out: Float64Array,
  jacobian: Float64Array | undefined,
  perLateral: Float64Array | undefined,
): void {
  const { track: t, rollCentreHeight, bar } = axle;
  const { lateral: a, drive } = manoeuvre;
  const [height, roll] = [at.height(j), at.roll(j)];
  const [wl, wr, nl, nr] = [at.wheel + 2 * j, at.wheel + 2 * j + 1, at.load + 2 * j, at.load + 2 * j + 1];
  const [rowHeave, rowRoll] = [8 + 2 * j, 9 + 2 * j];
  const unsprung = axleUnsprung(axle);
  const perForce = forcePerLateral(model, j);
  const force = lateralForce(model, manoeuvre, j);
  const turn = turnOf(manoeuvre);
  fillCapacity(axle, 0, x[nl]!, leanOf(axle, j, 0, x, turn), drive[2 * j]!, left);
  fillCapacity(axle, 1, x[nr]!, leanOf(axle, j, 1, x, turn), drive[2 * j + 1]!, right);
  const both = left.force + right.force;
  const bumpL = x[wl]! - x[height]! - (t / 2) * x[roll]!;
  const bumpR = x[wr]! - x[height]! + (t / 2) * x[roll]!;
  // 3: the bar's torque, at each wheel through its own arm.
  const [armL, armR] = bar ? bar.arms : noArms;
  const barSlope = bar ? bar.stiffness : 0;
  const barTorque = bar ? barSlope * (armL * bumpL - armR * bumpR + bar.mismatch) : 0;
  for (let i = 0; i < 2; i++) {
    const s = i === 0 ? 1 : -1;
    const bump = i === 0 ? bumpL : bumpR;
    const spring = axle.law[i]!.force(bump);
    const mine = i === 0 ? left : right;
    const share = both > 0 ? mine.force / both : 0.5;
    // 4 and 5: the wheel's part of the lateral force, through the links, lifts or lowers the body.
    const lever = (-2 * s * rollCentreHeight) / t;
    const arm = s * (i === 0 ? armL : armR);
    const linked = force * share - axle.unsprung[i]! * a;
    const linkedPerLateral = lever * (perForce * share - axle.unsprung[i]!);
    const push = spring + arm * barTorque + lever * linked + drive[2 * j + i]! * axle.driveLift;
    const row = 4 + 2 * j + i;
    const ownRoll = (s * unsprung * axle.unsprungHeight) / t;
    out[row] = x[nl + i]! - (axle.unsprung[i]! + push - ownRoll * a);
    out[rowHeave]! += push;
    out[rowRoll]! += s * (t / 2) * push;
    if (!jacobian || !perLateral) continue;
    const slope = axle.law[i]!.slope(bump);
    perLateral[row] = ownRoll - linkedPerLateral;
    jacobian[row * n + nl + i]! += 1;
    perLateral[rowHeave]! += linkedPerLateral;
    perLateral[rowRoll]! += s * (t / 2) * linkedPerLateral;
    const perLeft = arm * barSlope * armL;
    const perRight = -arm * barSlope * armR;
    const side = s * (t / 2);
    add(jacobian, row, rowHeave, rowRoll, side, wl, (i === 0 ? slope : 0) + perLeft);
    add(jacobian, row, rowHeave, rowRoll, side, wr, (i === 1 ? slope : 0) + perRight);
    add(jacobian, row, rowHeave, rowRoll, side, height, -slope - perLeft - perRight);
    add(jacobian, row, rowHeave, rowRoll, side, roll, -(t / 2) * (s * slope + perLeft - perRight));
    if (both > 0 && lever !== 0) {
      // The share goes up with the wheel's own grip and down with the other's.
      const weight = (s * lever * force) / (both * both);
      const [perL, perR] = [weight * right.force, -weight * left.force];
      add(jacobian, row, rowHeave, rowRoll, side, nl, perL * left.perLoad);
      add(jacobian, row, rowHeave, rowRoll, side, nr, perR * right.perLoad);
      if (axle.camber) leaning(axle, j, row, side, turn, perL * left.perLean, perR * right.perLean, jacobian);
    }
  }
}
/** A slope of a wheel's push: in its own row, in the heave and the roll of its axle. */
function add(jacobian: Float64Array, row: number, rowHeave: number, rowRoll: number, side: number, column: number, value: number): void {
  jacobian[row * n + column]! -= value;
  jacobian[rowHeave * n + column]! += value;
  jacobian[rowRoll * n + column]! += side * value;
}
/** The same through the lean of both wheels of an independent axle, by which their grip changes. */
function leaning(
  axle: AxleModel,
  j: number,
  row: number,
  side: number,
  turn: number,
  perL: number,
  perR: number,
  jacobian: Float64Array,
): void {
  const gain = axle.camber!.gain;
  const [rowHeave, rowRoll] = [8 + 2 * j, 9 + 2 * j];
  add(jacobian, row, rowHeave, rowRoll, side, at.wheel + 2 * j, perL * turn * gain);
  add(jacobian, row, rowHeave, rowRoll, side, at.wheel + 2 * j + 1, -perR * turn * gain);
  add(jacobian, row, rowHeave, rowRoll, side, at.height(j), turn * gain * (perR - perL));
  add(jacobian, row, rowHeave, rowRoll, side, at.roll(j), -turn * (1 + (gain * axle.track) / 2) * (perL + perR));
}

/** 6: a beam rolls on its tires, the body on springs that stand on their own base. */
function beam(
  model: CornerModel,
  axle: AxleModel,
  j: number,
  manoeuvre: Manoeuvre,
  x: Float64Array,
  out: Float64Array,
  jacobian: Float64Array | undefined,
  perLateral: Float64Array | undefined,
): void {
  const { track: t, rollCentreHeight, bar } = axle;
  const [height, roll] = [at.height(j), at.roll(j)];
  const [wl, wr, nl, nr] = [at.wheel + 2 * j, at.wheel + 2 * j + 1, at.load + 2 * j, at.load + 2 * j + 1];
  const [rowSum, rowMoment, rowHeave, rowRoll] = [4 + 2 * j, 5 + 2 * j, 8 + 2 * j, 9 + 2 * j];
  const unsprung = axleUnsprung(axle);
  const gravity = model.gravity ? 1 : 0;
  const axleRoll = (x[wl]! - x[wr]!) / t;
  const half = axle.springBase / 2;
  const relative = axleRoll - x[roll]!;
  const heave = (x[wl]! + x[wr]!) / 2 - x[height]!;
  const [bumpL, bumpR] = [heave + half * relative, heave - half * relative];
  const [springL, springR] = [axle.law[0].force(bumpL), axle.law[1].force(bumpR)];
  const [armL, armR] = bar ? bar.arms : noArms;
  // The bar's links stand on the axle: they turn the ends by the axle's roll, and by its heave where the arms differ.
  const perHeave = armL - armR;
  const perRelative = bar ? (bar.linkSpacing / 2) * (armL + armR) : 0;
  const barSlope = bar ? bar.stiffness : 0;
  const barTorque = bar ? barSlope * (perHeave * heave + perRelative * relative + bar.mismatch) : 0;
  const moment = half * (springL - springR) + perRelative * barTorque;
  const linkedMoment = (lateralForce(model, manoeuvre, j) - unsprung * manoeuvre.lateral) * rollCentreHeight;
  const linkedPerLateral = (forcePerLateral(model, j) - unsprung) * rollCentreHeight;
  const lift = (manoeuvre.drive[2 * j]! + manoeuvre.drive[2 * j + 1]!) * axle.driveLift;
  const push = springL + springR + perHeave * barTorque + lift;
  const tipping = unsprung * axle.unsprungHeight;
  out[rowSum] = x[nl]! + x[nr]! - unsprung - push;
  out[rowMoment] =
    (t / 2) * (x[nl]! - x[nr]!) - moment + linkedMoment + tipping * (manoeuvre.lateral + gravity * axleRoll) - axle.rest.axle;
  out[rowHeave]! += push;
  out[rowRoll]! += moment - linkedMoment;
  if (!jacobian || !perLateral) return;
  const [slopeL, slopeR] = [axle.law[0].slope(bumpL), axle.law[1].slope(bumpR)];
  perLateral[rowMoment] = linkedPerLateral + tipping;
  perLateral[rowRoll]! -= linkedPerLateral;
  jacobian[rowSum * n + nl]! += 1;
  jacobian[rowSum * n + nr]! += 1;
  jacobian[rowMoment * n + nl]! += t / 2;
  jacobian[rowMoment * n + nr]! -= t / 2;
  // Each unknown moves the axle against the body by some heave and some roll.
  for (let k = 0; k < 4; k++) {
    const column = k === 0 ? wl : k === 1 ? wr : k === 2 ? height : roll;
    const heaving = k < 2 ? 0.5 : k === 2 ? -1 : 0;
    const rolling = k === 0 ? 1 / t : k === 1 ? -1 / t : k === 2 ? 0 : -1;
    const ofLeft = slopeL * (heaving + half * rolling);
    const ofRight = slopeR * (heaving - half * rolling);
    const turned = barSlope * (perHeave * heaving + perRelative * rolling);
    const sum = ofLeft + ofRight + perHeave * turned;
    const turning = half * (ofLeft - ofRight) + perRelative * turned;
    jacobian[rowSum * n + column]! -= sum;
    jacobian[rowHeave * n + column]! += sum;
    jacobian[rowMoment * n + column]! -= turning;
    jacobian[rowRoll * n + column]! += turning;
  }
  jacobian[rowMoment * n + wl]! += (tipping * gravity) / t;
  jacobian[rowMoment * n + wr]! -= (tipping * gravity) / t;
}

/** What an axle can give sideways at a state, N, both wheels; each wheel's part is left in `parts`. */
export function axleCapacity(
  model: CornerModel,
  manoeuvre: Manoeuvre,
  x: Float64Array,
  j: number,
  parts: readonly [Capacity, Capacity],
): number {
  const axle = model.axles[j]!;
  const turn = turnOf(manoeuvre);
  for (let i = 0; i < 2; i++)
    fillCapacity(axle, i, x[at.load + 2 * j + i]!, leanOf(axle, j, i, x, turn), manoeuvre.drive[2 * j + i]!, parts[i]!);
  return parts[0].force + parts[1].force;
}
