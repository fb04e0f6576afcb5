/** What the tires pass on along a straight line: drive and brakes, loads moving with the acceleration. */

import { falling } from '../../numeric/falling.js';
import type { Driven } from './driven.js';
import { thrustLimit } from './limit.js';

/** A car along a straight line: springs alike on both sides, so that what moves with the acceleration is shared evenly by an axle's wheels. */
export interface StraightCar {
  /** Loads at rest, N: left front, right front, left rear, right rear. */
  readonly loads: readonly [number, number, number, number];
  /** CG height over wheelbase. */
  readonly heightOverBase: number;
  /** What a wheel can give in one direction at a load, N: of the front tires, of the rear. */
  readonly grip: readonly [(load: number) => number, (load: number) => number];
  /** Front and rear, m. */
  readonly track: readonly [number, number];
}
const transferOf = (car: StraightCar, force: number): number => {
  const { loads } = car;
  const moved = force * car.heightOverBase;
  // An axle can't give more than it carries.
  return Math.max(-(loads[2] + loads[3]), Math.min(loads[0] + loads[1], moved));
};
const loadAt = (car: StraightCar, wheel: number, transfer: number): number =>
  Math.max(0, car.loads[wheel]! + (wheel < 2 ? -transfer : transfer) / 2);

/** What an axle's wheels pass while the whole car pushes with `thrust`, by its differential, N. */
function axleLimit(car: StraightCar, j: 0 | 1, { differential, share, shaft, reaction }: Driven, thrust: number): number {
  const transfer = transferOf(car, thrust);
  // A shaft that turns as engines do, clockwise seen from the front, loads the left wheel.
  const moved = (shaft * reaction * thrust * share) / car.track[j];
  const left = car.grip[j](Math.max(0, loadAt(car, 2 * j, transfer) + moved));
  const right = car.grip[j](Math.max(0, loadAt(car, 2 * j + 1, transfer) - moved));
  return thrustLimit([left, right], 0, differential);
}
/** The thrust that the first of the driven axles allows, if the car were pushing with `thrust`. */
function allowed(car: StraightCar, driven: readonly [Driven, Driven], thrust: number): number {
  let least = Number.POSITIVE_INFINITY;
  for (const j of [0, 1] as const) if (driven[j].share > 0) least = Math.min(least, axleLimit(car, j, driven[j], thrust) / driven[j].share);
  return least;
}

/**
 * The thrust at which the first driven wheel spins, N, the loads having moved by the acceleration that it makes.
 * @source statics of the whole car; REFERENCES L16 for a coefficient that does not fall with load (exact)
 */
export function straightThrust(car: StraightCar, driven: readonly [Driven, Driven]): number {
  const weight = car.loads[0] + car.loads[1] + car.loads[2] + car.loads[3];
  const left = (thrust: number): number => allowed(car, driven, thrust) - thrust;
  return falling(left, allowed(car, driven, 0), 4 * weight);
}

/** Loads of the four wheels while the car speeds up (positive) or brakes, N; `force` is what pushes the whole car along. */
export function straightLoads(car: StraightCar, force: number): readonly [number, number, number, number] {
  const transfer = transferOf(car, force);
  return [loadAt(car, 0, transfer), loadAt(car, 1, transfer), loadAt(car, 2, transfer), loadAt(car, 3, transfer)];
}

/**
 * Deceleration over g at which a wheel locks while the others are taken to hold.
 * @param share what part of the whole brake force this wheel's axle takes, half of it at each wheel
 * @returns Infinity where the wheel never locks
 * @source REFERENCES B2 for a coefficient that does not fall with load (exact)
 */
export function lockAt(car: StraightCar, wheel: 0 | 1 | 2 | 3, share: number): number {
  const weight = car.loads[0] + car.loads[1] + car.loads[2] + car.loads[3];
  const j = wheel < 2 ? 0 : 1;
  const left = (force: number): number => car.grip[j](loadAt(car, wheel, transferOf(car, -force))) - (share * force) / 2;
  const most = 3 * weight;
  if (left(most) > 0) return Number.POSITIVE_INFINITY;
  return falling(left, 0.8 * weight, most) / weight;
}
