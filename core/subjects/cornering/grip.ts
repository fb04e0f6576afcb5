/** What a wheel can give sideways: its load, its lean and its drive or brake force. */
import type { AxleModel } from './model.js';
import { at } from './unknowns.js';

const sign = [1, -1] as const;

/** Force (N) and its slopes over load and lean (N/rad). Written into a buffer: the solver asks millions of times. */
export interface Capacity {
  force: number;
  perLoad: number;
  perLean: number;
}
export const capacity = (): Capacity => ({ force: 0, perLoad: 0, perLean: 0 });

/** How far a wheel leans toward the turn, rad; `turn` is 1 to the left, -1 to the right. */
export function leanOf(axle: AxleModel, j: number, i: number, x: Float64Array, turn: number): number {
  const { camber } = axle;
  if (!camber) return 0;
  return turn * (sign[i]! * camberAt(axle, j, i, x, camber.standing[i]!, camber.gain));
}
/** Camber under way, rad, against the ground: the roll of the body takes the outer wheel's top outward. */
export function camberAt(axle: AxleModel, j: number, i: number, x: Float64Array, standing: number, gain: number): number {
  const s = sign[i]!;
  const [wl, wr] = [x[at.wheel + 2 * j]!, x[at.wheel + 2 * j + 1]!];
  if (axle.kind === 'beam') return standing - (s * (wl - wr)) / axle.track;
  const roll = x[at.roll(j)]!;
  const bump = (i === 0 ? wl : wr) - x[at.height(j)]! - (s * axle.track * roll) / 2;
  return standing - s * roll + gain * bump;
}

/** Fills `into` for a wheel. `drive` is its longitudinal force, N; what is left sideways lies on the friction ellipse. */
export function fillCapacity(axle: AxleModel, i: number, load: number, lean: number, drive: number, into: Capacity): void {
  const grip = axle.grip[i]!;
  const { camber } = axle;
  let factor = 1;
  let factorPerLean = 0;
  if (camber) {
    const off = lean - camber.best;
    const below = 1 + camber.sharpness * off * off;
    factor = (1 + camber.sharpness * camber.best * camber.best) / below;
    factorPerLean = (-2 * camber.sharpness * off * factor) / below;
  }
  if (load <= 0) {
    into.force = 0;
    into.perLoad = grip.coefficient(0) * factor;
    into.perLean = 0;
    return;
  }
  const mu = grip.coefficient(load);
  const whole = mu * load * factor;
  into.perLoad = (mu + grip.slope(load, mu) * load) * factor;
  into.perLean = mu * load * factorPerLean;
  into.force = whole;
  if (drive === 0) return;
  const square = whole * whole - drive * drive;
  if (square <= 0) {
    into.force = 0;
    into.perLoad = 0;
    into.perLean = 0;
    return;
  }
  into.force = Math.sqrt(square);
  into.perLoad *= whole / into.force;
  into.perLean *= whole / into.force;
}

/**
 * Load-sensitive grip: `mu = mu0*(N/N0)^-n`. Below a fiftieth of the reference load the coefficient is held, so that it stays finite.
 * @param coefficient mu0, at the reference load N0 (N)
 * @param exponent n, 0 for a tire whose coefficient does not fall, below 1
 */
export function powerGrip(coefficient: number, reference: number, exponent: number): AxleModel['grip'][0] {
  const least = reference / 50;
  const most = coefficient * 50 ** exponent;
  return {
    coefficient: (load) => (load > least ? coefficient * (load / reference) ** -exponent : most),
    slope: (load, mu) => (load > least ? (-exponent * mu) / load : 0),
    valid: Number.POSITIVE_INFINITY,
  };
}
