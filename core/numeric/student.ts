/** Student's t distribution, for the half-widths of fits. */

import { whole } from '../pieces.js';
import { bisect } from './bracket.js';

/**
 * The half-width, in standard errors, that holds 95 in 100 of a mean or slope estimated with this many degrees of freedom.
 * Exact: the finite series of the distribution for whole degrees, inverted by halving.
 * @param degrees of freedom, a whole number of at least 1
 * @source M. Abramowitz and I. Stegun, 26.7.3 and 26.7.4; checked against REFERENCES N8
 */
export function studentHalfWidth(degrees: number): number {
  if (!(Number.isInteger(degrees) && degrees >= 1)) throw new Error(`${degrees} degrees of freedom`);
  const [angle] = whole(bisect((tried) => within(degrees, tried) < 0.95, 0, Math.PI / 2));
  return Math.sqrt(degrees) * Math.tan(angle);
}

/** Probability of lying within t = sqrt(degrees)*tan(angle) of the middle. */
function within(degrees: number, angle: number): number {
  const [sine, cosine] = [Math.sin(angle), Math.cos(angle)];
  const odd = degrees % 2 === 1;
  if (degrees === 1) return (2 * angle) / Math.PI;
  let term = odd ? cosine : 1;
  let sum = term;
  for (let k = odd ? 3 : 2; k <= degrees - 2; k += 2) {
    term *= (cosine * cosine * (k - 1)) / k;
    sum += term;
  }
  return odd ? (2 / Math.PI) * (angle + sine * sum) : sine * sum;
}
