/** Which end gives up first, where wheels leave the ground and where they meet their stops: roots along the lateral acceleration. */
import { isRefusal, type Refusal, refuse } from '../../catalog.js';
import type { Course } from '../../numeric/follow.js';
import { type Equilibrium, equilibrium, nearby } from './equilibrium.js';
import { capacity } from './grip.js';
import type { AxleModel, CornerModel, Manoeuvre, WheelLaw } from './model.js';
import { axleCapacity, clearance, lateralForce } from './residual.js';
import { type Condition, courseOf, followedRoot, leftUntil, type Reached, rootOf } from './roots.js';
import { at } from './unknowns.js';

const parts = [capacity(), capacity()] as const;

/** Share of its grip that an axle uses: the lateral force that it must give over what its wheels can give at their loads. Infinite where they can give nothing. */
export function axleUse(model: CornerModel, manoeuvre: Manoeuvre, { x }: Equilibrium, j: number): number {
  const grip = axleCapacity(model, manoeuvre, x, j, parts);
  const force = Math.abs(lateralForce(model, manoeuvre, j));
  return grip > 0 ? force / grip : force > 0 ? Number.POSITIVE_INFINITY : 0;
}

/** What is left until the condition holds in a real state; a lifted wheel counts its gap, so that it falls on through zero. */
function left(model: CornerModel, manoeuvre: Manoeuvre, { x }: Equilibrium, condition: Condition): number {
  if (condition.kind === 'limit') return 1 - axleUse(model, manoeuvre, { lateral: manoeuvre.lateral, x, steps: 0 }, condition.axle);
  return condition.kind === 'lift'
    ? x[at.load + condition.wheel]! - clearance(model, x, condition.wheel)
    : leftUntil(model, manoeuvre, x, condition).left;
}

/**
 * Where a condition comes to hold as the lateral acceleration grows, by false position inside a bracket; each state starts from the last.
 * Slower than Newton's method on condition and equations together, and surer: it walks up from rest, so that it finds the first.
 * @param longest how far to look, g
 */
export function crossing(
  model: CornerModel,
  manoeuvre: Manoeuvre,
  direction: 1 | -1,
  condition: Condition,
  longest: number,
): Reached | Refusal {
  const along = (lateral: number): Manoeuvre => ({ ...manoeuvre, lateral });
  const state = (a: number, near: Equilibrium): Equilibrium | undefined => nearby(model, along(direction * a), near);
  const value = (s: Equilibrium): number => left(model, along(s.lateral), s, condition);
  const rest = equilibrium(model, along(0));
  if (isRefusal(rest)) return rest;
  let [low, lowState, lowValue] = [0, rest, value(rest)];
  if (lowValue <= 0) return { lateral: 0, state: rest };
  let [high, highState, highValue]: [number, Equilibrium | undefined, number] = [0, undefined, 0];
  let stride = Math.min(0.5, longest);
  while (highState === undefined) {
    if (low >= longest) return refuse(`It does not happen up to ${longest} g.`);
    if (stride < 1e-3) return refuse('The car would roll over before that.');
    const next = state(Math.min(longest, low + stride), lowState);
    if (!next) {
      // Past the car's last equilibrium there is nothing to bracket with: approach it from this side.
      stride /= 2;
      continue;
    }
    const v = value(next);
    const reached = Math.abs(next.lateral);
    if (v > 0) {
      // A little past where the line through the last two would cross, since a step too far may have no equilibrium.
      const needed = v < lowValue ? (1.1 * v * (reached - low)) / (lowValue - v) : 0.5;
      [low, lowState, lowValue] = [reached, next, v];
      stride = Math.min(0.5, Math.max(0.01, needed));
    } else [high, highState, highValue] = [reached, next, v];
  }
  let stale = 0;
  for (let tries = 0; tries < 100 && high - low > 1e-10 * Math.max(1, high); tries++) {
    // False position with the stale end halved (Illinois); an infinite end halves the bracket instead.
    const guess = Number.isFinite(highValue) ? low + ((high - low) * lowValue) / (lowValue - highValue) : (low + high) / 2;
    const middle = guess > low && guess < high ? guess : (low + high) / 2;
    const s = state(middle, Math.abs(middle - low) < Math.abs(high - middle) ? lowState : highState);
    if (!s) return refuse('There is no steady state on the way there.');
    const v = value(s);
    if (v === 0) return { lateral: direction * middle, state: s };
    if (v > 0) {
      [low, lowState, lowValue] = [middle, s, v];
      if (stale === 1) highValue /= 2;
      stale = 1;
    } else {
      [high, highState, highValue] = [middle, s, v];
      if (stale === -1) lowValue /= 2;
      stale = -1;
    }
  }
  return { lateral: direction * high, state: highState };
}

/** No car on tires goes beyond this, g. */
const farthest = 3;

/** Where both inner wheels are off the ground and the car goes over, where Newton's method finds that. */
function rolloverOf(model: CornerModel, manoeuvre: Manoeuvre, direction: 1 | -1): Reached | undefined {
  const inner = direction === 1 ? ([0, 2] as const) : ([1, 3] as const);
  const [front, rear] = inner.map((wheel) => rootOf(model, manoeuvre, direction, { kind: 'lift', wheel }));
  if (!front || !rear) return undefined;
  return Math.abs(front.lateral) > Math.abs(rear.lateral) ? front : rear;
}

/** Newton's root; where that does not settle, the bracketed search, unless even at the rollover it does not come to it. */
function searched(model: CornerModel, manoeuvre: Manoeuvre, direction: 1 | -1, condition: Condition): Reached | Refusal {
  // A car that stands on its stop meets it at 0 g, and need not be looked at further.
  const rest = condition.kind === 'contact' ? equilibrium(model, { ...manoeuvre, lateral: 0 }) : undefined;
  if (rest && !isRefusal(rest) && left(model, { ...manoeuvre, lateral: 0 }, rest, condition) <= 0) return { lateral: 0, state: rest };
  const found = rootOf(model, manoeuvre, direction, condition);
  if (found) return Math.abs(found.lateral) <= farthest ? found : refuse(`It does not happen up to ${farthest} g.`);
  if (condition.kind !== 'lift') {
    const over = rolloverOf(model, manoeuvre, direction);
    if (over && left(model, { ...manoeuvre, lateral: over.lateral }, over.state, condition) > 0)
      return refuse('The car would roll over before that.');
  }
  return crossing(model, manoeuvre, direction, condition, farthest);
}
/** The first place at which a condition holds: followed from that of a car nearby, or searched for. */
function first(model: CornerModel, manoeuvre: Manoeuvre, direction: 1 | -1, condition: Condition, near?: Course): Reached | Refusal {
  const followed = near && followedRoot(near, model, manoeuvre, direction, condition);
  if (followed) return followed;
  const found = searched(model, manoeuvre, direction, condition);
  return near || isRefusal(found) ? found : { ...found, course: courseOf(model, manoeuvre, condition, found) };
}

/**
 * The lateral acceleration over g at which an end has no more grip, while the other is taken to hold.
 * @param direction 1 for left turns, -1 for right
 * @param near of a car nearby
 * @returns its signed value, or a refusal where the car rolls over first, or a load is beyond what the tire's grip law was fitted to
 */
export function axleLimit(model: CornerModel, j: 0 | 1, direction: 1 | -1, manoeuvre: Manoeuvre, near?: Course): Reached | Refusal {
  const found = first(model, manoeuvre, direction, { kind: 'limit', axle: j }, near);
  if (isRefusal(found)) return found;
  for (let i = 0; i < 2; i++)
    if (found.state.x[at.load + 2 * j + i]! > model.axles[j].grip[i]!.valid)
      return refuse('A tire carries more there than its law of grip holds for: told as mu = A - B*N it is good below N = A/(2B).');
  return found;
}

/** The same up to where the wheel meets its stop; beyond that it goes on as without one, so that no knee lies where it is searched for. */
function untilMet(model: CornerModel, wheel: 0 | 1 | 2 | 3): CornerModel {
  const [j, i] = [wheel >> 1, wheel & 1] as const;
  const axle = model.axles[j]!;
  const law = axle.law[i]!;
  const met = axle.contact[i]!;
  const smooth: WheelLaw = {
    force: (u) => (u <= met ? law.force(u) : law.force(met) + law.slope(met) * (u - met)),
    slope: (u) => law.slope(Math.min(u, met)),
  };
  const changed: AxleModel = { ...axle, law: i === 0 ? [smooth, axle.law[1]] : [axle.law[0], smooth] };
  return { ...model, axles: j === 0 ? [changed, model.axles[1]] : [model.axles[0], changed] };
}
/** The lateral acceleration over g at which a wheel meets its first stop in bump; refused where it has none or never does. */
export function stopContact(
  model: CornerModel,
  wheel: 0 | 1 | 2 | 3,
  direction: 1 | -1,
  manoeuvre: Manoeuvre,
  near?: Course,
): Reached | Refusal {
  if (model.axles[wheel >> 1]!.contact[wheel & 1] === Number.POSITIVE_INFINITY)
    return refuse('Where that wheel meets a stop is not known.');
  return first(untilMet(model, wheel), manoeuvre, direction, { kind: 'contact', wheel }, near);
}

/** Our index of balance, in per cent: positive when the front gives up first. */
export const balance = (front: number, rear: number): number =>
  (100 * (Math.abs(rear) - Math.abs(front))) / Math.min(Math.abs(front), Math.abs(rear));
