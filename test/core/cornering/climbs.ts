/** Lift-offs and rollover of random cars against a climb by small steps in the second formulation (independent.ts). */
import { isRefusal } from '../../../core/catalog.js';
import { equilibrium } from '../../../core/subjects/cornering/equilibrium.js';
import { liftOffs } from '../../../core/subjects/cornering/lifts.js';
import { steadyTurn } from '../../../core/subjects/cornering/model.js';
import { climb } from './independent.js';
import { pair } from './randomPairs.js';

export interface Climbed {
  readonly seed: number;
  /** What the core has otherwise, in words; none where both agree within a step. */
  readonly otherwise: readonly string[];
  /** Whether the car goes over with one of its inner wheels, or both, still on the ground. */
  readonly falls: boolean;
}
export function climbed(seed: number, stride: number): Climbed {
  const { model, body, lateral } = pair(seed);
  const way = lateral < 0 ? -1 : 1;
  const found = liftOffs(model, steadyTurn(0), way);
  if (isRefusal(found)) return { seed, otherwise: [found.refused], falls: false };
  const { lifted, last } = climb(body, way, stride, (at) => {
    const state = equilibrium(model, steadyTurn(way * at));
    if (isRefusal(state)) return undefined;
    const list = (...of: number[]): number[] => of.map((k) => state.x[k]!);
    return [...list(0, 2), ...list(...(Number.isFinite(body.torsion) ? [1, 3] : [1])), ...list(4, 5, 6, 7)];
  });
  const otherwise: string[] = [];
  // A little more than a step, for what the solver of either leaves.
  const near = 1.05 * stride;
  if (!(found.over > last - 1e-6 && found.over < last + near)) otherwise.push(`over at ${found.over}, the climb ends at ${last}`);
  for (const { wheel, after, by } of lifted) {
    const own = found.lifts.find((one) => one.wheel === wheel)?.lateral;
    if (own === undefined || own < after - 1e-6 || own > by + 1e-6)
      otherwise.push(`wheel ${wheel} lifts at ${own}, in the climb from ${after} to ${by}`);
  }
  for (const { wheel, lateral: own } of found.lifts)
    if (own < last - 1e-6 && !lifted.some((one) => one.wheel === wheel))
      otherwise.push(`wheel ${wheel} lifts at ${own}, and never in the climb`);
  return { seed, otherwise, falls: found.lifts.length < 2 };
}
