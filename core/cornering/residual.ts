/**
 * The thirteen equations of the four-wheel equilibrium and their analytic Jacobian.
 * Unknowns: body height and roll at each axle (0 to 3), wheel heights (4 to 7), vertical loads (8 to 11), chassis torque (12).
 * All rows are forces (N) or moments (N m); heights are changes from the reference state, m; roll is in rad.
 */
import type { AxleModel, CornerModel, Manoeuvre } from './model.js';

export const unknowns = 13;
export const at = { height: (j: number) => 2 * j, roll: (j: number) => 2 * j + 1, wheel: 4, load: 8, torque: 12 } as const;
/** Stands for the rate of a rigid tire in the complementarity of load and gap: only its units matter, not its size. */
const gapScale = 2e5;

const sign = [1, -1] as const;
const noArms = [0, 0] as const;
const axleLoad = (axle: AxleModel): number => axle.reference[0] + axle.reference[1];
export const axleUnsprung = (axle: AxleModel): number => axle.unsprung[0] + axle.unsprung[1];
export const axleSprung = (axle: AxleModel): number => axleLoad(axle) - axleUnsprung(axle);
export const carWeight = ({ axles }: CornerModel): number => axleLoad(axles[0]) + axleLoad(axles[1]);

/** Lateral force that the axle's wheels must give together, N: from the total mass and the balance of yaw moments, never from the loads of the moment. */
export function lateralForce(model: CornerModel, { lateral, yawMoment }: Manoeuvre, j: number): number {
  const wheelbase = model.toFront + model.toRear;
  const arm = j === 0 ? model.toRear : model.toFront;
  return (carWeight(model) * lateral * arm + (j === 0 ? -1 : 1) * yawMoment) / wheelbase;
}

/** What a wheel can give sideways at a load while it drives or brakes, N, and its slope over the load. */
export function sideways(axle: AxleModel, i: number, load: number, drive: number): { readonly force: number; readonly slope: number } {
  if (load <= 0) return { force: 0, slope: axle.grip[i]!.coefficient(0) };
  const grip = axle.grip[i]!;
  const mu = grip.coefficient(load);
  const whole = mu * load;
  const slope = mu + grip.slope(load) * load;
  if (drive === 0) return { force: whole, slope };
  const square = whole * whole - drive * drive;
  if (square <= 0) return { force: 0, slope: 0 };
  const force = Math.sqrt(square);
  return { force, slope: (whole * slope) / force };
}

/** How far a wheel stands clear of the ground, as a force (its tire's rate times the gap): zero while it carries load. */
export function clearance({ axles }: CornerModel, x: Float64Array, wheel: number): number {
  const { tireRate, reference } = axles[wheel >> 1]!;
  const height = x[at.wheel + wheel]!;
  return Number.isFinite(tireRate) ? tireRate * height + x[at.load + wheel]! - reference[wheel & 1]! : gapScale * height;
}

/** Writes the residual and, row after row, the Jacobian at `x`. Both buffers are overwritten. */
export function residual(model: CornerModel, manoeuvre: Manoeuvre, x: Float64Array, out: Float64Array, jacobian: Float64Array): void {
  out.fill(0);
  jacobian.fill(0);
  const n = unknowns;
  const { lateral: a, longitudinal, drive } = manoeuvre;
  const wheelbase = model.toFront + model.toRear;
  const alongTransfer = (carWeight(model) * longitudinal * model.cgHeight) / wheelbase;
  const gravity = model.gravity ? 1 : 0;
  const torque = x[at.torque]!;

  for (let j = 0; j < 2; j++) {
    const axle = model.axles[j]!;
    const { track: t, rollCentreHeight, tireRate, bar } = axle;
    const [height, roll] = [at.height(j), at.roll(j)];
    const [wl, wr, nl, nr] = [at.wheel + 2 * j, at.wheel + 2 * j + 1, at.load + 2 * j, at.load + 2 * j + 1];
    const unsprung = axleUnsprung(axle);
    const sprung = axleSprung(axle);
    const force = lateralForce(model, manoeuvre, j);
    const [rowHeave, rowRoll] = [8 + 2 * j, 9 + 2 * j];

    // CORNERING 1: a wheel carries load, or stands clear of the ground.
    for (let i = 0; i < 2; i++) {
      const row = 2 * j + i;
      const load = x[nl + i]!;
      const gap = clearance(model, x, 2 * j + i);
      if (load <= gap) {
        out[row] = load;
        jacobian[row * n + nl + i] = 1;
      } else {
        out[row] = gap;
        jacobian[row * n + wl + i] = Number.isFinite(tireRate) ? tireRate : gapScale;
        jacobian[row * n + nl + i] = Number.isFinite(tireRate) ? 1 : 0;
      }
    }

    // 8: gravity's share acts at the sideways shift of the sprung weight; the roll centre rides on the wheels.
    const shiftPerRoll = gravity * (model.sprungCgHeight - rollCentreHeight);
    const tireRoll = Number.isFinite(tireRate) ? 1 / (tireRate * t) : 0;
    const shift = shiftPerRoll * x[roll]! + gravity * rollCentreHeight * tireRoll * (x[nr]! - x[nl]!);
    const torqueSign = j === 0 ? -1 : 1;
    out[rowRoll] = sprung * (a * model.sprungCgHeight + shift) + torqueSign * torque;
    jacobian[rowRoll * n + roll]! += sprung * shiftPerRoll;
    jacobian[rowRoll * n + nl]! -= sprung * gravity * rollCentreHeight * tireRoll;
    jacobian[rowRoll * n + nr]! += sprung * gravity * rollCentreHeight * tireRoll;
    jacobian[rowRoll * n + at.torque]! += torqueSign;
    // 7
    out[rowHeave] = -(sprung + (j === 0 ? -alongTransfer : alongTransfer));

    if (axle.kind === 'independent') {
      const left = sideways(axle, 0, x[nl]!, drive[2 * j]!);
      const right = sideways(axle, 1, x[nr]!, drive[2 * j + 1]!);
      const both = left.force + right.force;
      const bumpL = x[wl]! - x[height]! - (t / 2) * x[roll]!;
      const bumpR = x[wr]! - x[height]! + (t / 2) * x[roll]!;
      // 3: the bar's torque, at each wheel through its own arm.
      const [armL, armR] = bar ? bar.arms : noArms;
      const barTorque = bar ? bar.stiffness * (armL * bumpL - armR * bumpR + bar.mismatch) : 0;
      const barSlope = bar ? bar.stiffness : 0;
      for (let i = 0; i < 2; i++) {
        const s = sign[i]!;
        const bump = i === 0 ? bumpL : bumpR;
        const spring = axle.law[i]!.force(bump);
        const slope = axle.law[i]!.slope(bump);
        const mine = i === 0 ? left : right;
        const share = both > 0 ? mine.force / both : 0.5;
        // 4 and 5: the wheel's part of the lateral force, through the links, lifts or lowers the body.
        const linked = force * share - axle.unsprung[i]! * a;
        const lever = (-2 * s * rollCentreHeight) / t;
        const arm = s * (i === 0 ? armL : armR);
        const push = spring + arm * barTorque + lever * linked + drive[2 * j + i]! * axle.driveLift;
        const row = 4 + 2 * j + i;
        out[row] = x[nl + i]! - (axle.unsprung[i]! + push - (s * unsprung * a * axle.unsprungHeight) / t);
        jacobian[row * n + nl + i]! += 1;
        out[rowHeave]! += push;
        out[rowRoll]! += s * (t / 2) * push;
        const add = (column: number, value: number): void => {
          jacobian[row * n + column]! -= value;
          jacobian[rowHeave * n + column]! += value;
          jacobian[rowRoll * n + column]! += s * (t / 2) * value;
        };
        const perLeft = arm * barSlope * armL;
        const perRight = -arm * barSlope * armR;
        add(wl, (i === 0 ? slope : 0) + perLeft);
        add(wr, (i === 1 ? slope : 0) + perRight);
        add(height, -slope - perLeft - perRight);
        add(roll, -(t / 2) * (s * slope + perLeft - perRight));
        if (both > 0) {
          const perOwn = (lever * force * (both - mine.force)) / (both * both);
          const perOther = (-lever * force * mine.force) / (both * both);
          add(nl, i === 0 ? perOwn * left.slope : perOther * left.slope);
          add(nr, i === 1 ? perOwn * right.slope : perOther * right.slope);
        }
      }
    } else {
      // 6: the axle rolls on its tires, the body on springs that stand on their own base.
      const axleRoll = (x[wl]! - x[wr]!) / t;
      const half = axle.springBase / 2;
      const relative = axleRoll - x[roll]!;
      const mean = (x[wl]! + x[wr]!) / 2;
      const bumpL = mean - x[height]! + half * relative;
      const bumpR = mean - x[height]! - half * relative;
      const [springL, springR] = [axle.law[0].force(bumpL), axle.law[1].force(bumpR)];
      const [slopeL, slopeR] = [axle.law[0].slope(bumpL), axle.law[1].slope(bumpR)];
      const [armL, armR] = bar ? bar.arms : noArms;
      const halfLinks = bar ? bar.linkSpacing / 2 : 0;
      const barSlope = bar ? bar.stiffness : 0;
      // Its links stand on the axle: they turn the ends by the axle's roll, and by its heave where the arms differ.
      const heave = mean - x[height]!;
      const barTorque = bar ? bar.stiffness * ((armL - armR) * heave + halfLinks * (armL + armR) * relative + bar.mismatch) : 0;
      const barPush = (armL - armR) * barTorque;
      const moment = half * (springL - springR) + halfLinks * (armL + armR) * barTorque;
      const linkedMoment = (force - unsprung * a) * rollCentreHeight;
      const lift = (drive[2 * j]! + drive[2 * j + 1]!) * axle.driveLift;
      const [rowSum, rowMoment] = [4 + 2 * j, 5 + 2 * j];
      out[rowSum] = x[nl]! + x[nr]! - unsprung - springL - springR - barPush - lift;
      out[rowMoment] = (t / 2) * (x[nl]! - x[nr]!) - moment + linkedMoment + unsprung * axle.unsprungHeight * (a + gravity * axleRoll);
      out[rowHeave]! += springL + springR + barPush + lift;
      out[rowRoll]! += moment - linkedMoment;
      jacobian[rowSum * n + nl]! += 1;
      jacobian[rowSum * n + nr]! += 1;
      jacobian[rowMoment * n + nl]! += t / 2;
      jacobian[rowMoment * n + nr]! -= t / 2;
      // Each unknown moves the axle against the body by some heave and some roll.
      const add = (column: number, heaving: number, rolling: number): void => {
        const left = slopeL * (heaving + half * rolling);
        const right = slopeR * (heaving - half * rolling);
        const turned = barSlope * ((armL - armR) * heaving + halfLinks * (armL + armR) * rolling);
        const sum = left + right + (armL - armR) * turned;
        const turning = half * (left - right) + halfLinks * (armL + armR) * turned;
        jacobian[rowSum * n + column]! -= sum;
        jacobian[rowHeave * n + column]! += sum;
        jacobian[rowMoment * n + column]! -= turning;
        jacobian[rowRoll * n + column]! += turning;
      };
      add(wl, 0.5, 1 / t);
      add(wr, 0.5, -1 / t);
      add(height, -1, 0);
      add(roll, 0, -1);
      jacobian[rowMoment * n + wl]! += (unsprung * axle.unsprungHeight * gravity) / t;
      jacobian[rowMoment * n + wr]! -= (unsprung * axle.unsprungHeight * gravity) / t;
    }
  }

  const twist = x[at.roll(0)]! - x[at.roll(1)]!;
  if (Number.isFinite(model.chassisStiffness)) {
    out[12] = torque - model.chassisStiffness * twist;
    jacobian[12 * n + 12] = 1;
    jacobian[12 * n + at.roll(0)] = -model.chassisStiffness;
    jacobian[12 * n + at.roll(1)] = model.chassisStiffness;
  } else {
    // Scaled to moments, so that one tolerance holds for all rows.
    out[12] = 1e6 * twist;
    jacobian[12 * n + at.roll(0)] = 1e6;
    jacobian[12 * n + at.roll(1)] = -1e6;
  }
}
