/** A driven axle, and how its differential shares the thrust between its wheels. */
import type { Differential } from './limit.js';

export interface Driven {
  readonly differential: Differential;
  /** Part of the car's thrust that this axle takes; 0 where it is not driven. */
  readonly share: number;
  /** Torque of the propeller shaft on a beam axle per thrust of the axle, N m/N: the rolling radius over the final drive. 0 for an independent axle. */
  readonly shaft: number;
  /** Part of that torque that the other axle's springs hold, through the body, so that it stays between this axle's wheels. */
  readonly reaction: number;
}
export const notDriven: Driven = { differential: { kind: 'open' }, share: 0, shaft: 0, reaction: 0 };

/** The bias that a differential allows, 1 for an open one. */
const biasOf = (differential: Differential): number =>
  differential.kind === 'locked' ? Number.POSITIVE_INFINITY : differential.kind === 'open' ? 1 : differential.bias;

/**
 * How the thrust lies on the left and the right wheel at the limit, as parts that add to 1: as the wheels grip, as far as the differential lets it.
 * @param grip what each wheel can give in one direction, N
 */
export function splitAtLimit(grip: readonly [number, number], differential: Differential): readonly [number, number] {
  const both = grip[0] + grip[1];
  if (!(both > 0)) return [0.5, 0.5];
  const bias = biasOf(differential);
  const strong = Math.max(grip[0], grip[1]);
  const part = Math.min(strong / both, Number.isFinite(bias) ? bias / (1 + bias) : 1);
  return grip[0] >= grip[1] ? [part, 1 - part] : [1 - part, part];
}

/**
 * The sideways force that is left to an axle that is asked for `thrust`, N.
 * A wheel that is asked for more than it has spins, and keeps nothing sideways; across the differential the other then gets no more than the bias allows,
 * so that an open one lets the inner wheel spin while the outer holds on.
 */
export function sidewaysLeft(grip: readonly [number, number], differential: Differential, thrust: number): number {
  const split = splitAtLimit(grip, differential);
  const across = differential.kind === 'locked' ? Number.POSITIVE_INFINITY : biasOf(differential) * Math.min(grip[0], grip[1]);
  let left = 0;
  for (const i of [0, 1] as const) {
    const along = Math.min(thrust * split[i], across);
    left += Math.sqrt(Math.max(0, grip[i] * grip[i] - along * along));
  }
  return left;
}
