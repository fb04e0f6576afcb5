/** The two grip parameters from what a member measured: pairs of load and force, or steady laps of a skidpad with this car. */
import { isRefusal, type Refusal, refuse } from '../../catalog.js';
import { studentHalfWidth } from '../../numeric/student.js';

/** mu = coefficient*(N/reference)^-exponent, each with the half-width that holds 19 in 20. */
export interface GripFit {
  readonly coefficient: number;
  readonly exponent: number;
  /** Undefined where the points are just as many as what is fitted, so that nothing tells how far off it is. */
  readonly within: { readonly coefficient: number; readonly exponent: number } | undefined;
}
export interface GripPair {
  /** Load of the tire and the most force it gave in one direction there, N. */
  readonly load: number;
  readonly force: number;
}

/** A straight line through points by least squares: value at 0, slope, and the standard errors of both with their degrees of freedom. */
function line(
  x: readonly number[],
  y: readonly number[],
): { at: number; slope: number; errors: readonly [number, number]; degrees: number } {
  const n = x.length;
  const mean = (values: readonly number[]): number => values.reduce((sum, one) => sum + one, 0) / n;
  const [middle, height] = [mean(x), mean(y)];
  let [square, product] = [0, 0];
  for (let k = 0; k < n; k++) {
    square += (x[k]! - middle) ** 2;
    product += (x[k]! - middle) * (y[k]! - height);
  }
  const slope = product / square;
  const at = height - slope * middle;
  let rest = 0;
  for (let k = 0; k < n; k++) rest += (y[k]! - at - slope * x[k]!) ** 2;
  const degrees = n - 2;
  const variance = degrees > 0 ? rest / degrees : 0;
  return { at, slope, degrees, errors: [Math.sqrt(variance * (1 / n + (middle * middle) / square)), Math.sqrt(variance / square)] };
}

/**
 * Fits the two parameters to pairs of load and force, by least squares of the logarithms: relative errors of the force count alike.
 * @param reference load at which the coefficient is told, N, above 0
 * @returns a refusal for fewer than two pairs, for pairs at about one load, and for loads or forces that are not above zero
 */
export function fitPairs(pairs: readonly GripPair[], reference: number): GripFit | Refusal {
  if (pairs.length < 2) return refuse('Two pairs of load and force are needed at least; three tell how sure it is.');
  if (!pairs.every(({ load, force }) => load > 0 && force > 0)) return refuse('Loads and forces must be above zero.');
  const loads = pairs.map(({ load }) => load);
  if (Math.max(...loads) < 1.05 * Math.min(...loads))
    return refuse('The loads must differ, by a fifth or more if they can: the fall of grip shows only between them.');
  const { at, slope, errors, degrees } = line(
    pairs.map(({ load }) => Math.log(load / reference)),
    pairs.map(({ load, force }) => Math.log(force / load)),
  );
  const coefficient = Math.exp(at);
  if (degrees === 0) return { coefficient, exponent: -slope, within: undefined };
  const wide = studentHalfWidth(degrees);
  return { coefficient, exponent: -slope, within: { coefficient: coefficient * wide * errors[0], exponent: wide * errors[1] } };
}

/** Lateral acceleration of a steady lap, m/s^2: 4*pi^2*R/T^2 (exact kinematics). `radius` in m, of the middle of the car; `time` of a whole circle, s. */
export const lapAcceleration = (radius: number, time: number): number => (4 * Math.PI ** 2 * radius) / time ** 2;

/** A lap: what it reached (over g) and its half-width; and the limit that the car as it was then has with given grip. */
export interface Lap {
  readonly lateral: number;
  readonly within: number;
  limit(coefficient: number, exponent: number): number | Refusal;
}
const smallStep = 1e-3;

/**
 * Fits the coefficient to laps, at an exponent that is taken as known: one lap is enough.
 * The doubt is that of the laps, and does not hold that of the exponent.
 */
export function fitCoefficient(
  laps: readonly Lap[],
  exponent: number,
  start: number,
): (Pick<GripFit, 'coefficient'> & { within: number }) | Refusal {
  if (laps.length === 0) return refuse('A lap of a skidpad is needed: its radius and its time.');
  const fit = gaussNewton(laps, [start, exponent], [true, false]);
  return isRefusal(fit) ? fit : { coefficient: fit.at[0], within: fit.within[0] };
}

/**
 * Fits both parameters to laps in which the tires were loaded differently: with and without a passenger or ballast, or on other bars.
 * @returns a refusal for fewer than two laps, and where the laps do not tell the parameters apart
 */
export function fitLaps(laps: readonly Lap[], start: readonly [number, number]): GripFit | Refusal {
  if (laps.length < 2)
    return refuse('One lap tells the coefficient alone. Two, differently loaded, are needed for the fall of grip with load.');
  const fit = gaussNewton(laps, start, [true, true]);
  return isRefusal(fit)
    ? fit
    : { coefficient: fit.at[0], exponent: fit.at[1], within: { coefficient: fit.within[0], exponent: fit.within[1] } };
}

interface Fitted {
  readonly at: readonly [number, number];
  readonly within: readonly [number, number];
}
/** Least squares weighted by the laps' own doubts; in the logarithm of the coefficient, to which a limit is nearly proportional. */
function gaussNewton(laps: readonly Lap[], start: readonly [number, number], free: readonly [boolean, boolean]): Fitted | Refusal {
  if (!laps.every(({ lateral, within }) => lateral > 0 && within > 0)) return refuse('A lap needs a lateral g and how far it may be off.');
  let [log, exponent] = [Math.log(start[0]), start[1]];
  for (let tries = 0; tries < 40; tries++) {
    // Normal equations of two unknowns: a, b, c of the matrix, d, e of the right side.
    let [a, b, c, d, e] = [0, 0, 0, 0, 0];
    for (const lap of laps) {
      const here = lap.limit(Math.exp(log), exponent);
      const more = lap.limit(Math.exp(log + smallStep), exponent);
      const fall = free[1] ? lap.limit(Math.exp(log), exponent + smallStep) : here;
      for (const one of [here, more, fall]) if (isRefusal(one)) return one;
      if (isRefusal(here) || isRefusal(more) || isRefusal(fall)) return refuse('The car has no limit in one of the laps.');
      const [p, q] = [(more - here) / smallStep / lap.within, (fall - here) / smallStep / lap.within];
      const left = (lap.lateral - here) / lap.within;
      a += p * p;
      b += p * q;
      c += q * q;
      d += p * left;
      e += q * left;
    }
    if (!free[1]) c = 1;
    const whole = a * c - b * b;
    if (!(whole > 1e-5 * a * c))
      return refuse('These laps do not load the tires differently enough to tell the fall of grip from the grip.');
    const [moveLog, moveExponent] = [(c * d - b * e) / whole, free[1] ? (a * e - b * d) / whole : 0];
    log += Math.max(-0.5, Math.min(0.5, moveLog));
    exponent += Math.max(-0.2, Math.min(0.2, moveExponent));
    if (Math.abs(moveLog) + Math.abs(moveExponent) < 1e-8) {
      // The laps' half-widths stand for 19 in 20, and so do these.
      return { at: [Math.exp(log), exponent], within: [Math.exp(log) * Math.sqrt(c / whole), free[1] ? Math.sqrt(a / whole) : 0] };
    }
  }
  return refuse('No grip is found that fits these laps.');
}
