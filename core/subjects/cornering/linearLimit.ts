/** The limit of an axle whose load transfer is known per g: no springs, no roll, no equilibrium. */
import { falling } from '../../numeric/falling.js';
import type { GripLaw } from './model.js';

/** g: no tire grips more. */
const farthest = 5;
/**
 * Lateral acceleration over g at which an axle has no more grip: `W a = mu(N_o) N_o + mu(N_i) N_i` at the loads `N_o + a dN` and `N_i - a dN`.
 * Once the inner wheel is off the ground, the outer one carries the axle.
 * @param outer load of the outer wheel at rest, N; `inner` of the inner one
 * @param perG what the outer gains and the inner loses per g, N
 */
export function linearLimit(outer: number, inner: number, perG: number, grip: GripLaw): number {
  const weight = outer + inner;
  const give = (load: number): number => (load > 0 ? grip.coefficient(load) * load : 0);
  const left = (a: number): number => {
    const carried = Math.min(weight, outer + perG * a);
    return (give(carried) + give(weight - carried)) / weight - a;
  };
  return falling(left, grip.coefficient(weight / 2), farthest);
}
