/**
 * A second formulation of the four-wheel equilibrium that shares nothing with the core: free bodies and virtual work instead of the core's thirteen rows,
 * loads as functions of the heights instead of unknowns, slopes by differences instead of by hand, Levenberg-Marquardt instead of Newton's method.
 *
 * Coordinates: height and roll of the body at each axle (one roll where it is rigid), and the height of each wheel.
 * A tire presses with its rate times what it is squeezed, never less than nothing. A wheel that goes up by du moves its contact patch sideways by
 * (2 h_RC/t) du toward its own side, which is what a roll center means; so a lateral force does work on bump travel.
 */

export interface Wheel {
  /** Force of spring and stops at the wheel over bump travel, N; at no travel it carries what stands on it. */
  readonly spring: (bump: number) => number;
  readonly unsprung: number;
  readonly stands: number;
  /** Turn of the bar's end per travel of its link, rad/m. */
  readonly arm: number;
  readonly mu: (load: number, lean: number) => number;
  /** Camber at rest, top outward, rad, and its change per bump travel. */
  readonly camber: number;
  readonly camberGain: number;
}
export interface Axle {
  readonly beam: boolean;
  readonly track: number;
  readonly springSpacing: number;
  readonly linkSpacing: number;
  readonly wheels: readonly [Wheel, Wheel];
  readonly tire: number;
  readonly rollCenter: number;
  readonly unsprungHeight: number;
  readonly barTorsion: number;
  readonly barTwistAtRest: number;
  /** Where the sprung weight of this axle lies, left of the middle, m. */
  readonly weightLeft: number;
}
export interface Body {
  readonly axles: readonly [Axle, Axle];
  readonly wheelbase: number;
  readonly sprungHeight: number;
  readonly torsion: number;
}
export interface Solution {
  readonly loads: readonly number[];
  readonly rolls: readonly [number, number];
}

const sides = [1, -1] as const;
const sum = (list: readonly number[]): number => list.reduce((a, b) => a + b, 0);

/** Loads and imbalances (N and N m) of all free bodies at given coordinates. */
function imbalance(
  body: Body,
  lateral: number,
  q: readonly number[],
): { readonly forces: number[]; readonly loads: number[]; readonly rolls: [number, number] } {
  const rigid = !Number.isFinite(body.torsion);
  const heights = [q[0]!, q[1]!];
  const rolls: [number, number] = [q[2]!, rigid ? q[2]! : q[3]!];
  const wheelHeights = q.slice(rigid ? 3 : 4);
  const weight = sum(body.axles.flatMap(({ wheels }) => wheels.map((wheel) => wheel.stands)));
  const loads: number[] = [];
  const onBodyUp: number[] = [];
  const onBodyRoll: number[] = [];
  const onWheels: number[] = [];
  body.axles.forEach((axle, j) => {
    const { track: t, wheels } = axle;
    const [hl, hr] = [wheelHeights[2 * j]!, wheelHeights[2 * j + 1]!];
    const own = wheels.map((wheel, i) => Math.max(0, wheel.stands - axle.tire * (i === 0 ? hl : hr)));
    loads.push(...own);
    const sprung = sum(wheels.map((wheel) => wheel.stands - wheel.unsprung));
    const unsprung = sum(wheels.map((wheel) => wheel.unsprung));
    // Moments about the vertical through the other axle's middle: the axles share the lateral force as they share the weight.
    const standing = sum(wheels.map((wheel) => wheel.stands));
    const side = weight * lateral * (standing / weight);
    const roll = rolls[j]!;
    const tilt = (hl - hr) / t;
    const tireRoll = (own[1]! - wheels[1]!.stands - own[0]! + wheels[0]!.stands) / (axle.tire * t);
    // The weight turns with the wheels about the ground, and on from there about the roll center.
    const shift = body.sprungHeight * tireRoll + (body.sprungHeight - axle.rollCenter) * (roll - tireRoll);
    onBodyUp.push(-sprung);
    // The inertia of the sprung weight, and the weight itself where it has gone: both turn the body to the right.
    onBodyRoll.push(sprung * (lateral * body.sprungHeight + shift - axle.weightLeft));
    if (axle.beam) {
      const mean = (hl + hr) / 2 - heights[j]!;
      const spread = tilt - roll;
      const push = wheels.map((wheel, i) => wheel.spring(mean + (sides[i]! * axle.springSpacing * spread) / 2));
      const ends = wheels.map((wheel, i) => wheel.arm * (mean + (sides[i]! * axle.linkSpacing * spread) / 2));
      const torque = axle.barTorsion * (ends[0]! - ends[1]! + axle.barTwistAtRest);
      const links = [wheels[0].arm * torque, -wheels[1].arm * torque];
      const up = sum(push) + sum(links);
      const turning = ((push[0]! - push[1]!) * axle.springSpacing + (links[0]! - links[1]!) * axle.linkSpacing) / 2;
      const throughLink = side - unsprung * lateral;
      onBodyUp[j]! += up;
      onBodyRoll[j]! += turning - throughLink * axle.rollCenter;
      onWheels.push(
        sum(own) - unsprung - up,
        // About the ground below its middle: tires, springs and bar, the link's pull, its own inertia and lean. Unlike weights left and right stay unlike.
        ((own[0]! - wheels[0]!.unsprung - own[1]! + wheels[1]!.unsprung) * t) / 2 -
          turning +
          throughLink * axle.rollCenter +
          unsprung * axle.unsprungHeight * (lateral + tilt),
      );
    } else {
      const bumps = [hl - heights[j]! - (t / 2) * roll, hr - heights[j]! + (t / 2) * roll];
      const turn = lateral < 0 ? -1 : 1;
      const grips = wheels.map((wheel, i) => {
        const camber = wheel.camber - sides[i]! * roll + wheel.camberGain * bumps[i]!;
        return own[i]! * wheel.mu(own[i]!, turn * sides[i]! * camber);
      });
      const torque = axle.barTorsion * (wheels[0].arm * bumps[0]! - wheels[1].arm * bumps[1]! + axle.barTwistAtRest);
      wheels.forEach((wheel, i) => {
        const s = sides[i]!;
        const part = sum(grips) > 0 ? grips[i]! / sum(grips) : 0.5;
        const throughLinks = side * part - wheel.unsprung * lateral;
        const up = wheel.spring(bumps[i]!) + s * wheel.arm * torque - ((2 * s * axle.rollCenter) / t) * throughLinks;
        onBodyUp[j]! += up;
        onBodyRoll[j]! += (s * t * up) / 2;
        // The unsprung weight's own overturning goes straight to the ground, half to each wheel.
        onWheels.push(own[i]! - wheel.unsprung - up + (s * unsprung * lateral * axle.unsprungHeight) / t);
      });
    }
  });
  const twisted = rigid ? 0 : body.torsion * (rolls[0] - rolls[1]);
  const turned = rigid ? [onBodyRoll[0]! + onBodyRoll[1]!] : [onBodyRoll[0]! - twisted, onBodyRoll[1]! + twisted];
  return { forces: [...onBodyUp, ...turned, ...onWheels], loads, rolls };
}

/** Solves A y = b by Householder reflections; A has at least as many rows as columns. */
function leastSquares(rows: number[][], right: number[]): number[] {
  const [m, n] = [rows.length, rows[0]!.length];
  const a = rows.map((row) => [...row]);
  const b = [...right];
  for (let k = 0; k < n; k++) {
    let norm = Math.hypot(...a.slice(k).map((row) => row[k]!));
    if (norm === 0) continue;
    if (a[k]![k]! > 0) norm = -norm;
    const v = a.slice(k).map((row) => row[k]!);
    v[0]! -= norm;
    const square = sum(v.map((one) => one * one));
    if (square === 0) continue;
    const reflect = (get: (i: number) => number, put: (i: number, value: number) => void): void => {
      const dot = (2 * sum(v.map((one, i) => one * get(k + i)))) / square;
      for (let i = k; i < m; i++) put(i, get(i) - dot * v[i - k]!);
    };
    for (let c = k; c < n; c++)
      reflect(
        (i) => a[i]![c]!,
        (i, value) => {
          a[i]![c] = value;
        },
      );
    reflect(
      (i) => b[i]!,
      (i, value) => {
        b[i] = value;
      },
    );
  }
  const y = new Array<number>(n).fill(0);
  for (let k = n - 1; k >= 0; k--) {
    let rest = b[k]!;
    for (let c = k + 1; c < n; c++) rest -= a[k]![c]! * y[c]!;
    y[k] = rest / a[k]![k]!;
  }
  return y;
}

/** Levenberg and Marquardt's method from a start; the largest imbalance that it leaves comes with it. */
function settle(f: (q: readonly number[]) => number[], start: readonly number[]): { readonly q: number[]; readonly left: number } {
  let q = [...start];
  let forces = f(q);
  let damping = 1e-3;
  const size = (list: readonly number[]): number => Math.hypot(...list);
  for (let step = 0; step < 400 && size(forces) > 1e-8; step++) {
    const slopes = forces.map(() => new Array<number>(q.length).fill(0));
    q.forEach((value, k) => {
      const h = 1e-6;
      const [up, down] = [f(q.with(k, value + h)), f(q.with(k, value - h))];
      up.forEach((one, row) => {
        slopes[row]![k] = (one - down[row]!) / (2 * h);
      });
    });
    const scale = q.map((_, k) => Math.hypot(...slopes.map((row) => row[k]!)) || 1);
    let better = false;
    for (let tries = 0; tries < 40; tries++) {
      const extra = scale.map((one, k) => q.map((_, c) => (c === k ? one * Math.sqrt(damping) : 0)));
      const move = leastSquares([...slopes, ...extra], [...forces.map((one) => -one), ...q.map(() => 0)]);
      const next = q.map((value, k) => value + move[k]!);
      const there = f(next);
      if (size(there) < size(forces)) {
        [q, forces] = [next, there];
        damping = Math.max(damping / 10, 1e-18);
        better = true;
        break;
      }
      damping *= 4;
    }
    if (!better) break;
  }
  return { q, left: Math.max(...forces.map(Math.abs)) };
}

/** Builds the turn up in steps, smaller ones where those do not settle; undefined where even the smallest do not. */
export function solve(body: Body, lateral: number): Solution | undefined {
  for (const stride of [0.1, 0.02, 0.004]) {
    const found = buildUp(body, lateral, stride);
    if (found) return found;
  }
  return undefined;
}
/** Settles from given coordinates: height and roll of the body at each axle, and the four wheels' heights. */
export function settleFrom(
  body: Body,
  lateral: number,
  heights: readonly number[],
  rolls: readonly number[],
  wheels: readonly number[],
): Solution | undefined {
  const start = [...heights, ...(Number.isFinite(body.torsion) ? rolls : rolls.slice(0, 1)), ...wheels];
  const { q, left } = settle((at) => imbalance(body, lateral, at).forces, start);
  const { loads, rolls: found } = imbalance(body, lateral, q);
  return left > 1e-5 ? undefined : { loads, rolls: found };
}
function buildUp(body: Body, lateral: number, stride: number): Solution | undefined {
  const rigid = !Number.isFinite(body.torsion);
  let q: number[] = new Array<number>(rigid ? 7 : 8).fill(0);
  const steps = Math.max(4, Math.ceil(Math.abs(lateral) / stride));
  for (let step = 0; step <= steps; step++) {
    const a = (lateral * step) / steps;
    const found = settle((at) => imbalance(body, a, at).forces, q);
    if (found.left > 1e-5) return undefined;
    q = found.q;
  }
  const { loads, rolls } = imbalance(body, lateral, q);
  return { loads, rolls };
}

export interface Climb {
  /** By wheel: the first turn of the climb in which its tire carries nothing, and the one before it. */
  readonly lifted: readonly { readonly wheel: number; readonly after: number; readonly by: number }[];
  /** The last turn of the climb that settles, g; no step from there does, smaller or larger. */
  readonly last: number;
}
/**
 * Builds a turn up by small steps until the car finds no balance.
 * @param across coordinates to start from where no step leads on: a body that snaps over to its droop stop stands there, and no small step gets there
 */
export function climb(body: Body, way: 1 | -1, stride: number, across: (lateral: number) => readonly number[] | undefined): Climb {
  let q: number[] = new Array<number>(Number.isFinite(body.torsion) ? 8 : 7).fill(0);
  const inner = way === 1 ? [0, 2] : [1, 3];
  const lifted: { wheel: number; after: number; by: number }[] = [];
  let last = 0;
  const settled = (lateral: number, from: readonly number[] = q): boolean => {
    const found = settle((at) => imbalance(body, way * lateral, at).forces, from);
    const over = inner.every((wheel) => imbalance(body, way * lateral, found.q).loads[wheel] === 0);
    if (found.left > 1e-5 || over) return false;
    q = found.q;
    for (const wheel of inner)
      if (imbalance(body, way * lateral, q).loads[wheel] === 0 && !lifted.some((one) => one.wheel === wheel))
        lifted.push({ wheel, after: last, by: lateral });
    last = lateral;
    return true;
  };
  // At a kink its differences may mislead it: smaller steps, or one over it, lead on.
  const snapped = (lateral: number): boolean => {
    const from = across(lateral);
    return from !== undefined && settled(lateral, from);
  };
  const on = (part: number): boolean => settled(last + part * stride);
  while (last < 3 && ([1, 1 / 4, 1 / 16, 3 / 2].some(on) || snapped(last + stride / 4)));
  return { lifted, last };
}
