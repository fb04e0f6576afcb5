/** How long one equilibrium takes from a near start, and one search for a limit from rest. */
import { isRefusal } from '../../core/catalog.js';
import { type Equilibrium, equilibrium } from '../../core/subjects/cornering/equilibrium.js';
import { crossing } from '../../core/subjects/cornering/limits.js';
import { type CornerModel, steadyTurn } from '../../core/subjects/cornering/model.js';
import { pair } from '../core/cornering/randomPairs.js';

const cars = 60;
const runs = 15;
const warmUps = 5;
const median = (values: readonly number[]): number => [...values].sort((a, b) => a - b)[values.length >> 1]!;

/** Microseconds an equilibrium, from the state at a hundredth of a g less; milliseconds a limit, walked up from rest; medians over random cars. */
export function measureCornering(): { equilibriumUs: number; limitMs: number } {
  const garage: { readonly model: CornerModel; readonly near: Equilibrium }[] = [];
  for (let seed = 0; garage.length < cars; seed++) {
    const { model } = pair(seed);
    const near = equilibrium(model, steadyTurn(0.59));
    if (!isRefusal(near) && !isRefusal(crossing(model, steadyTurn(0), 1, { kind: 'limit', axle: 0 }, 3))) garage.push({ model, near });
  }
  let solved = 0;
  const time = (work: (car: (typeof garage)[number]) => boolean): number => {
    const start = performance.now();
    for (const car of garage) if (work(car)) solved++;
    return (performance.now() - start) / garage.length;
  };
  const equilibria = (): number => time(({ model, near }) => !isRefusal(equilibrium(model, steadyTurn(0.6), near)));
  const limits = (): number => time(({ model }) => !isRefusal(crossing(model, steadyTurn(0), 1, { kind: 'limit', axle: 0 }, 3)));
  for (let n = 0; n < warmUps; n++) equilibria() + limits();
  const equilibriumUs = 1000 * median(Array.from({ length: runs }, equilibria));
  const limitMs = median(Array.from({ length: runs }, limits));
  if (solved < cars) throw new Error('the cars do not corner: nothing was measured');
  return { equilibriumUs, limitMs };
}
