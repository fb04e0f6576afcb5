/** What the load transfer of each axle in an equilibrium is made of. */
import { capacity } from './grip.js';
import type { AxleModel, CornerModel, Manoeuvre } from './model.js';
import { axleCapacity, axleSprung, axleUnsprung, lateralForce } from './residual.js';
import { at } from './unknowns.js';

/** All in N, positive to the outside of the turn; `transfer` is the sum of the five others, exactly. */
export interface AxleParts {
  /** Half of what the outer wheel gained on the inner, from the reference state. */
  readonly transfer: number;
  readonly unsprung: number;
  readonly geometric: number;
  readonly elastic: number;
  readonly jacking: number;
  readonly gravity: number;
  /** Lift of the body by the links: what their forces of both sides leave. Not a part of the transfer. */
  readonly lift: number;
}

/** Bump travel of a wheel from where the car stands, m; on a beam that of its spring. */
export function bumpOf(axle: AxleModel, j: number, i: number, x: Float64Array): number {
  const s = i === 0 ? 1 : -1;
  const [wl, wr] = [x[at.wheel + 2 * j]!, x[at.wheel + 2 * j + 1]!];
  const [height, roll] = [x[at.height(j)]!, x[at.roll(j)]!];
  return axle.kind === 'beam'
    ? (wl + wr) / 2 - height + ((s * axle.springBase) / 2) * ((wl - wr) / axle.track - roll)
    : (i === 0 ? wl : wr) - height - (s * axle.track * roll) / 2;
}

/** Torque in the bar of an axle, N m, positive where it pushes the left wheel down. */
export function barTorque(axle: AxleModel, j: number, x: Float64Array): number {
  const { bar, track } = axle;
  if (!bar) return 0;
  const [armL, armR] = bar.arms;
  if (axle.kind === 'independent') return bar.stiffness * (armL * bumpOf(axle, j, 0, x) - armR * bumpOf(axle, j, 1, x) + bar.mismatch);
  const [wl, wr] = [x[at.wheel + 2 * j]!, x[at.wheel + 2 * j + 1]!];
  const heave = (wl + wr) / 2 - x[at.height(j)]!;
  const relative = (wl - wr) / track - x[at.roll(j)]!;
  return bar.stiffness * ((armL - armR) * heave + (bar.linkSpacing / 2) * (armL + armR) * relative + bar.mismatch);
}

const wheels = [capacity(), capacity()] as const;
/** Side force of each wheel of an axle, N, positive to the left: each gives as it can at its load. */
export function sideForces(model: CornerModel, manoeuvre: Manoeuvre, x: Float64Array, j: number): readonly [number, number] {
  const both = axleCapacity(model, manoeuvre, x, j, wheels);
  const force = lateralForce(model, manoeuvre, j);
  const share = both > 0 ? wheels[0].force / both : 0.5;
  return [force * share, force * (1 - share)];
}
/** Lift of the body by both wheels' links, N: the wheel that grips more is lifted more than the other is pulled down. */
function liftOf(model: CornerModel, manoeuvre: Manoeuvre, x: Float64Array, j: number): number {
  const axle = model.axles[j]!;
  if (axle.kind === 'beam') return 0;
  const [forceL, forceR] = sideForces(model, manoeuvre, x, j);
  const linkedL = forceL - axle.unsprung[0] * manoeuvre.lateral;
  const linkedR = forceR - axle.unsprung[1] * manoeuvre.lateral;
  return ((linkedR - linkedL) * 2 * axle.rollCentreHeight) / axle.track;
}

/**
 * The split. `elastic` is what springs and bars carry between left and right, without `gravity` (their share of the sprung weight times its
 * sideways shift; on a beam also that of the axle itself) and without `jacking`.
 * `jacking` is what a rise of the body alone does between a left and a right spring of unlike force: the springs' transfer less that at the same roll and no rise.
 */
export function partsOf(model: CornerModel, manoeuvre: Manoeuvre, x: Float64Array): [AxleParts, AxleParts] {
  const turn = manoeuvre.lateral < 0 ? -1 : 1;
  const gravity = model.gravity ? 1 : 0;
  const raw = [0, 1].map((j) => {
    const axle = model.axles[j]!;
    const { track, reference } = axle;
    const unsprung = axleUnsprung(axle);
    const tilt = (x[at.wheel + 2 * j]! - x[at.wheel + 2 * j + 1]!) / track;
    const transfer = (x[at.load + 2 * j + 1]! - reference[1] - x[at.load + 2 * j]! + reference[0]) / 2;
    const ofUnsprung = (unsprung * manoeuvre.lateral * axle.unsprungHeight) / track;
    const ofLinks = ((lateralForce(model, manoeuvre, j) - unsprung * manoeuvre.lateral) * axle.rollCentreHeight) / track;
    const ofTilt = axle.kind === 'beam' ? (gravity * unsprung * axle.unsprungHeight * tilt) / track : 0;
    const tires = Number.isFinite(axle.tireRate) ? (2 * transfer) / (axle.tireRate * track) : 0;
    const roll = x[at.roll(j)]!;
    const shift = model.sprungCgHeight * roll - axle.rollCentreHeight * (roll - tires);
    return {
      transfer,
      unsprung: ofUnsprung,
      geometric: ofLinks,
      ofTilt,
      suspension: transfer - ofUnsprung - ofLinks - ofTilt,
      track,
      moment: gravity * axleSprung(axle) * shift,
      jacking: jackingOf(axle, j, x),
      lift: liftOf(model, manoeuvre, x, j),
    };
  });
  const whole = raw.reduce((sum, { suspension, track }) => sum + suspension * track, 0);
  const moment = raw.reduce((sum, one) => sum + one.moment, 0);
  const made = raw.map((one): AxleParts => {
    const ofGravity = whole === 0 ? 0 : (one.suspension * moment) / whole;
    return {
      transfer: turn * one.transfer,
      unsprung: turn * one.unsprung,
      geometric: turn * one.geometric,
      elastic: turn * (one.suspension - ofGravity - one.jacking),
      jacking: turn * one.jacking,
      gravity: turn * (ofGravity + one.ofTilt),
      lift: one.lift,
    };
  });
  return [made[0]!, made[1]!];
}

/** Half of right less left of the spring forces as they are, less the same with the body lowered to the height that it has at rest. */
function jackingOf(axle: AxleModel, j: number, x: Float64Array): number {
  const [bumpL, bumpR] = [bumpOf(axle, j, 0, x), bumpOf(axle, j, 1, x)];
  const mean = (bumpL + bumpR) / 2;
  const half = (left: number, right: number): number => (axle.law[1].force(right) - axle.law[0].force(left)) / 2;
  const base = axle.kind === 'beam' ? axle.springBase / axle.track : 1;
  return base * (half(bumpL, bumpR) - half(bumpL - mean, bumpR - mean));
}
