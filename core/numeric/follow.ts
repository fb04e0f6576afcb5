/**
 * Where a solution goes when the car changes a little, by the slopes that it has (implicit differentiation): the Jacobian is worked out and
 * factored once, at the solution of the car as it is, and serves for every doubt. A step with those slopes is the linear change; each further one
 * multiplies what is left by how much the slopes have changed, and what is left is looked at, so that stops, lifted wheels and knees are seen.
 */
import { factor, solveFactored } from './linear.js';

/** What a solution solves: as many equations as unknowns, and, where a number `t` is sought as well, one condition more. */
export interface Equations {
  /** Writes what is left of each equation, N or N m; and row after row the Jacobian over `x`, where it is asked for. */
  residual(x: Float64Array, t: number, out: Float64Array, jacobian?: Float64Array): void;
  /** What is left until the condition, in N; without it `t` is as given. */
  until?(x: Float64Array, t: number): number;
}
export interface Followed {
  readonly x: Float64Array;
  readonly t: number;
}

/** What is left is small against what the change had left at the start: what it does to a number is then known to about a part in a hundred thousand. */
const close = 1e-4;
/** As in Newton's method: a ten-millionth of a newton is rounding. */
const least = 1e-7;
/** A step has to leave this part at most, or the slopes are not those of where it goes: they are then taken anew, there (Newton's method). */
const shrinks = 0.3;
const mostSteps = 24;
const mostAnew = 8;
/** Step of `t`, over g, for its slopes. */
const nudge = 1e-5;

interface Frame {
  readonly factors: Float64Array;
  readonly order: Int32Array;
  /** Slope of `x` over `t`, by the equations. */
  readonly perT: Float64Array;
  /** Slope of the condition over `t`, along that. */
  readonly along: number;
}

/** A solution that others nearby are found from. */
export class Course {
  readonly #equations: Equations;
  readonly #x: Float64Array;
  readonly #t: number;
  #frame: Frame | undefined;
  #tried = false;

  constructor(equations: Equations, x: Float64Array, t: number) {
    this.#equations = equations;
    this.#x = x;
    this.#t = t;
  }

  /**
   * The solution of other equations near by.
   * @param t where there is no condition, what it is there
   * @returns undefined where the slopes do not lead there: the full search has to
   */
  follow(equations: Equations, t = this.#t): Followed | undefined {
    let frame = this.#slopes();
    let anew = 0;
    const n = this.#x.length;
    const x = Float64Array.from(this.#x);
    const [out, step] = [new Float64Array(n), new Float64Array(n)];
    const { until } = equations;
    let at = t;
    let first = Number.NaN;
    let before = Number.POSITIVE_INFINITY;
    for (let k = 0; k < mostSteps && frame; k++) {
      equations.residual(x, at, out);
      let square = 0;
      for (let i = 0; i < n; i++) square += out[i]! * out[i]!;
      // What a change does not touch stays exactly where it is.
      if (k === 0 && square <= least * least && (!until || Math.abs(until(x, at)) <= least)) return { x: this.#x, t: at };
      solveFactored(frame.factors, frame.order, out, step);
      for (let i = 0; i < n; i++) x[i]! -= step[i]!;
      const gap = until ? until(x, at) : 0;
      const left = Math.sqrt(square + gap * gap);
      if (!(left < 1e8)) return undefined;
      if (left > shrinks * before && left > least) {
        if (++anew > mostAnew) return undefined;
        for (let i = 0; i < n; i++) x[i]! += step[i]!;
        frame = frameOf(equations, x, at);
        before = Number.POSITIVE_INFINITY;
        continue;
      }
      if (until) {
        const change = -gap / frame.along;
        at += change;
        for (let i = 0; i < n; i++) x[i]! += frame.perT[i]! * change;
      }
      if (k === 0) first = left;
      // The step that was just made takes off most of it again.
      if (left <= least || (k > 0 && left <= close * first)) return { x, t: at };
      before = left;
    }
    return undefined;
  }

  #slopes(): Frame | undefined {
    if (!this.#tried) {
      this.#tried = true;
      this.#frame = frameOf(this.#equations, this.#x, this.#t);
    }
    return this.#frame;
  }
}

function frameOf(equations: Equations, x: Float64Array, t: number): Frame | undefined {
  const n = x.length;
  const factors = new Float64Array(n * n);
  const order = new Int32Array(n);
  const here = new Float64Array(n);
  equations.residual(x, t, here, factors);
  if (!factor(factors, order, n)) return undefined;
  const perT = new Float64Array(n);
  if (!equations.until) return { factors, order, perT, along: 0 };
  const there = new Float64Array(n);
  equations.residual(x, t + nudge, there);
  for (let i = 0; i < n; i++) there[i] = (here[i]! - there[i]!) / nudge;
  solveFactored(factors, order, there, perT);
  const moved = x.map((value, i) => value + perT[i]! * nudge);
  const along = (equations.until(moved, t + nudge) - equations.until(x, t)) / nudge;
  return Number.isFinite(along) && along !== 0 ? { factors, order, perT, along } : undefined;
}
