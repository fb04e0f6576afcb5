/** Which end gives up first, and where wheels leave the ground: roots along the lateral acceleration. */
import { isRefusal, type Refusal, refuse } from '../catalog.js';
import { type Equilibrium, equilibrium } from './equilibrium.js';
import type { CornerModel, Manoeuvre } from './model.js';
import { at, clearance, lateralForce, sideways } from './residual.js';

/** Share of its grip that an axle uses: the lateral force that it must give over what its wheels can give at their loads. Infinite where they can give nothing. */
export function axleUse(model: CornerModel, manoeuvre: Manoeuvre, { x }: Equilibrium, j: number): number {
  const axle = model.axles[j]!;
  let grip = 0;
  for (let i = 0; i < 2; i++) grip += sideways(axle, i, x[at.load + 2 * j + i]!, manoeuvre.drive[2 * j + i]!).force;
  const force = Math.abs(lateralForce(model, manoeuvre, j));
  return grip > 0 ? force / grip : force > 0 ? Number.POSITIVE_INFINITY : 0;
}

const along = (manoeuvre: Manoeuvre, lateral: number): Manoeuvre => ({ ...manoeuvre, lateral });

/** Where a falling function of the lateral acceleration crosses zero, by bisection guarded false position; each state starts from the last. */
function crossing(
  model: CornerModel,
  manoeuvre: Manoeuvre,
  direction: 1 | -1,
  left: (state: Equilibrium, manoeuvre: Manoeuvre) => number,
  longest: number,
): { readonly lateral: number; readonly state: Equilibrium } | Refusal {
  const state = (a: number, near?: Equilibrium): Equilibrium | Refusal => equilibrium(model, along(manoeuvre, direction * a), near);
  const value = (s: Equilibrium): number => left(s, along(manoeuvre, s.lateral));
  const rest = state(0);
  if (isRefusal(rest)) return rest;
  let [low, lowState, lowValue] = [0, rest, value(rest)];
  if (lowValue <= 0) return { lateral: 0, state: rest };
  let [high, highState, highValue]: [number, Equilibrium | undefined, number] = [0, undefined, 0];
  let stride = 0.5;
  while (highState === undefined) {
    if (low >= longest || stride < 1e-5)
      return refuse(`It is not reached before ${low >= longest ? `${longest} g` : 'the car would roll over'}.`);
    const next = state(low + stride, lowState);
    if (isRefusal(next)) {
      // Past the car's last equilibrium there is nothing to bracket with: approach it from this side.
      stride /= 2;
      continue;
    }
    const v = value(next);
    if (v > 0) {
      // A little past where the line through the last two would cross, since a step too far may have no equilibrium.
      const needed = v < lowValue ? (1.1 * v * stride) / (lowValue - v) : 0.5;
      [low, lowState, lowValue] = [low + stride, next, v];
      stride = Math.min(0.5, Math.max(0.01, needed));
    } else [high, highState, highValue] = [low + stride, next, v];
  }
  let last = 0;
  for (let tries = 0; tries < 100 && high - low > 1e-10 * Math.max(1, high); tries++) {
    // False position with the stale end halved (Illinois); an infinite end halves the bracket instead.
    const guess = Number.isFinite(highValue) ? low + ((high - low) * lowValue) / (lowValue - highValue) : (low + high) / 2;
    const middle = guess > low && guess < high ? guess : (low + high) / 2;
    const s = state(middle, Math.abs(middle - low) < Math.abs(high - middle) ? lowState : highState);
    if (isRefusal(s)) return s;
    const v = value(s);
    if (v === 0) return { lateral: direction * middle, state: s };
    if (v > 0) {
      [low, lowState, lowValue] = [middle, s, v];
      if (last === 1) highValue /= 2;
      last = 1;
    } else {
      [high, highState, highValue] = [middle, s, v];
      if (last === -1) lowValue /= 2;
      last = -1;
    }
  }
  return { lateral: direction * high, state: highState };
}

/**
 * The lateral acceleration over g at which an end has no more grip, while the other is taken to hold.
 * @param direction 1 for left turns, -1 for right
 * @returns its signed value, or a refusal where the car rolls over first
 */
export function axleLimit(
  model: CornerModel,
  j: number,
  direction: 1 | -1,
  manoeuvre: Manoeuvre,
): { readonly lateral: number; readonly state: Equilibrium } | Refusal {
  return crossing(model, manoeuvre, direction, (s, m) => 1 - axleUse(model, m, s, j), 3);
}

/** The lateral acceleration over g at which a wheel's load comes down to nothing; refused where it never does. */
export function liftOff(
  model: CornerModel,
  wheel: 0 | 1 | 2 | 3,
  direction: 1 | -1,
  manoeuvre: Manoeuvre,
): { readonly lateral: number; readonly state: Equilibrium } | Refusal {
  return crossing(model, manoeuvre, direction, ({ x }) => x[at.load + wheel]! - clearance(model, x, wheel), 3);
}

/** Our index of balance, in per cent: positive when the front gives up first. */
export const balance = (front: number, rear: number): number =>
  (100 * (Math.abs(rear) - Math.abs(front))) / Math.min(Math.abs(front), Math.abs(rear));
