/**
 * How the car stands: the static equilibrium of a body on four sprung wheels, told as its change since the car was measured.
 *
 * Signs of ISO 8855: z up, y to the left, roll positive with the right side down. `u` is bump travel of a wheel relative to the body.
 * Unknowns: body height and roll at each axle, and the four u. Equations (CORNERING's 1, 2, 5, 7 and 8 at no lateral acceleration, all wheels independent, no bars):
 *   spring   P = MR(u) F(X0 + dL + s(u)), F >= 0: a coil never pulls
 *   tire     u + b = A - (W_u + P)/k_t, with A the change of free radius plus the deflection when measured; b the rise of the body over the wheel
 *   heave    the two P of an axle carry its share of the sprung weight, which statics alone give
 *   roll     sum of y P over an axle, and the body's torque K_c (phi_f - phi_r), carry the sprung moments about the center line
 * Newton's method with the four u eliminated corner by corner and the heights axle by axle, so that one or two unknowns are left.
 * Limits: small angles; the sideways move of the center of gravity as the body tilts is left out; a beam axle is taken as two independent wheels.
 */
import { type Refusal, refuse } from '../catalog.js';
import { compressionAt, type ForceLaw, forceAt, rateAt } from '../springs/law.js';
import { type MotionRatio, ratioAt, ratioRise, springTravel } from '../springs/motionRatio.js';

/** What stands between the body and the ground at one wheel. Weights in N, lengths in m. */
export interface Support {
  /** The spring, helper included; and the same with its isolators in series. */
  readonly law: ForceLaw;
  readonly stack: ForceLaw;
  readonly ratio: MotionRatio;
  /** Since the car was measured: how much longer the spring is when free, and how much more stands in its line (spacer, perch, isolators). */
  readonly longer: number;
  readonly packed: number;
  /** What spring and isolators are sold to do to the height of this car, since then: `lowered` replaces the length of the spring, `raised` adds. */
  readonly lowered: number;
  readonly raised: number;
  readonly tireRate: number;
  /** How much the free radius of the tire has grown since then. */
  readonly taller: number;
  readonly halfTrack: number;
  /** Weight on the ground by wheel, hub and brake; and what the spring carried of the body when the car was weighed. */
  readonly unsprung: number;
  readonly sprung: number;
}
/** Four of something: left front, right front, left rear, right rear. */
export type Four<T> = readonly [T, T, T, T];

/** Weight (N) and its moment to the left (N m) that came aboard since the car was weighed, as statics share it between the axles. */
export interface Added {
  readonly front: number;
  readonly rear: number;
  readonly frontMoment: number;
  readonly rearMoment: number;
}

/** How the car stands, by wheel in the order of `Four`. */
export interface StaticState {
  /** Bump travel since the car was measured, m. */
  readonly travel: Four<number>;
  /** Rise of the body over the ground, at the wheel, since then, m. */
  readonly rise: Four<number>;
  /** What the spring carries of the body, at the wheel, N. */
  readonly sprung: Four<number>;
  /** Load of the tire on the ground, N, and how much it has gained since then. */
  readonly load: Four<number>;
  readonly gain: Four<number>;
}

const mostSteps = 40;
/** Metres: a thousandth of what a height gauge reads, a million times over. */
const settled = 1e-12;
/** Newtons: what that is on a stiff tire. */
const settledForce = 1e-6;
/** Longest step of a wheel in one iteration, so that a knee is not jumped over. */
const longestStep = 0.08;
/** Part of its first rate that a loose spring keeps in the derivative only, so that an axle never loses all stiffness. */
const loosePart = 1e-3;

/** How much the spring's line has grown: its length, or what the spring is sold to do instead, and all that stands in line with it. */
function grown(then: Support, now: Support): number {
  const { longer, packed, lowered, raised, ratio, law } = now;
  const spring =
    lowered === 0
      ? longer
      : compressionAt(law, then.sprung / ratioAt(ratio, lowered)) -
        compressionAt(then.law, then.sprung / then.ratio.ratio) -
        springTravel(ratio, lowered);
  return spring + packed - (raised === 0 ? 0 : springTravel(ratio, -raised));
}

/**
 * Solves how the car stands.
 * @param then the corners when the car was measured, with the loads that the scales then gave
 * @param now the corners as they are
 * @param added what came aboard since
 * @param torsion stiffness of the body between the axles, N m/rad; infinite for a rigid one
 * Refused where a wheel carries nothing at all or where no equilibrium is found.
 */
export function staticState(then: Four<Support>, now: Four<Support>, added: Added, torsion: number): StaticState | Refusal {
  const nothingAdded = added.front === 0 && added.rear === 0 && added.frontMoment === 0 && added.rearMoment === 0;
  if (nothingAdded && then[0] === now[0] && then[1] === now[1] && then[2] === now[2] && then[3] === now[3]) return unchanged(now);
  for (let i = 0; i < 4; i++) if (!(then[i]!.sprung > 0)) return refuse('The unsprung weight is more than the scale reads at a wheel.');

  const start = [0, 0, 0, 0];
  const tire = [0, 0, 0, 0];
  const arm = [0, 0, 0, 0];
  for (let i = 0; i < 4; i++) {
    const a = then[i]!;
    const b = now[i]!;
    start[i] = compressionAt(a.stack, a.sprung / a.ratio.ratio) + grown(a, b);
    tire[i] = b.taller + (a.sprung + a.unsprung) / a.tireRate;
    arm[i] = i % 2 === 0 ? b.halfTrack : -b.halfTrack;
  }
  const weight = [now[0].sprung + now[1].sprung + added.front, now[2].sprung + now[3].sprung + added.rear];
  // Moments as they were weighed, on the tracks of that moment.
  const moment = [
    then[0].halfTrack * now[0].sprung - then[1].halfTrack * now[1].sprung + added.frontMoment,
    then[2].halfTrack * now[2].sprung - then[3].halfTrack * now[3].sprung + added.rearMoment,
  ];

  const u = [0, 0, 0, 0];
  const body = [0, 0, 0, 0];
  const force = [0, 0, 0, 0];
  const slope = [0, 0, 0, 0];
  const misfit = [0, 0, 0, 0];
  const stiffness = [0, 0, 0, 0];
  const reach = [0, 0, 0, 0];
  const rollStiffness = [0, 0];
  const lack = [0, 0];
  const turn = [0, 0];
  const roll = [0, 0];
  for (let step = 0; step < mostSteps; step++) {
    for (let i = 0; i < 4; i++) {
      const { stack, ratio, tireRate, unsprung } = now[i]!;
      const compression = start[i]! + springTravel(ratio, u[i]!);
      const lever = ratioAt(ratio, u[i]!);
      const spring = forceAt(stack, compression);
      force[i] = lever * spring;
      const rate = compression > 0 ? rateAt(stack, compression) : loosePart * rateAt(stack, 0);
      slope[i] = lever * lever * rate + spring * ratioRise(ratio, u[i]!);
      misfit[i] = u[i]! + body[i]! - tire[i]! + (unsprung + force[i]!) / tireRate;
      const give = 1 + slope[i]! / tireRate;
      stiffness[i] = slope[i]! / give;
      reach[i] = force[i]! - (slope[i]! * misfit[i]!) / give;
    }
    for (let j = 0; j < 2; j++) {
      const l = 2 * j;
      const r = l + 1;
      const both = stiffness[l]! + stiffness[r]!;
      if (!(both > 0)) return refuse('The springs of an axle have no rate where the car would stand.');
      const excess = reach[l]! + reach[r]! - weight[j]!;
      const crossed = stiffness[l]! * arm[l]! + stiffness[r]! * arm[r]!;
      rollStiffness[j] = stiffness[l]! * arm[l]! * arm[l]! + stiffness[r]! * arm[r]! * arm[r]! - (crossed * crossed) / both;
      lack[j] = reach[l]! * arm[l]! + reach[r]! * arm[r]! - (crossed * excess) / both - moment[j]!;
    }
    turnBody(lack, rollStiffness, roll, torsion, turn);
    let largest = 0;
    for (let j = 0; j < 2; j++) {
      const l = 2 * j;
      const r = l + 1;
      const both = stiffness[l]! + stiffness[r]!;
      const lift = (reach[l]! + reach[r]! - weight[j]! - (stiffness[l]! * arm[l]! + stiffness[r]! * arm[r]!) * turn[j]!) / both;
      roll[j]! += turn[j]!;
      for (let i = l; i <= r; i++) {
        const rise = lift + arm[i]! * turn[j]!;
        const move = -(misfit[i]! + rise) / (1 + slope[i]! / now[i]!.tireRate);
        u[i]! += Math.max(-longestStep, Math.min(longestStep, move));
        body[i]! += rise;
        largest = Math.max(largest, Math.abs(move), Math.abs(rise));
      }
    }
    if (!(largest < Number.POSITIVE_INFINITY)) break;
    if (largest < settled) return stateOf(then, now, u, body, force);
  }
  return refuse('No height was found at which the springs carry this car: check spring rates, lengths and spacers.');
}

/** The turns of the body at both axles that leave no moment over; one turn for both where it is rigid. */
function turnBody(lack: number[], stiffness: number[], roll: number[], torsion: number, turn: number[]): void {
  if (torsion === Number.POSITIVE_INFINITY) {
    turn[0] = (lack[0]! + lack[1]!) / (stiffness[0]! + stiffness[1]!);
    turn[1] = turn[0];
    return;
  }
  const twist = torsion * (roll[0]! - roll[1]!);
  const f = lack[0]! - twist;
  const r = lack[1]! + twist;
  const kf = stiffness[0]! + torsion;
  const kr = stiffness[1]! + torsion;
  const determinant = kf * kr - torsion * torsion;
  turn[0] = (f * kr + r * torsion) / determinant;
  turn[1] = (r * kf + f * torsion) / determinant;
}

/** What is less than the solution is settled to is rounding: nothing. */
const kept = (value: number, least: number): number => (Math.abs(value) < least ? 0 : value);
function stateOf(then: Four<Support>, now: Four<Support>, u: number[], body: number[], force: number[]): StaticState {
  const load = (i: 0 | 1 | 2 | 3): number => force[i]! + now[i].unsprung;
  const gain = (i: 0 | 1 | 2 | 3): number => kept(load(i) - then[i].sprung - then[i].unsprung, settledForce);
  return {
    travel: [kept(u[0]!, settled), kept(u[1]!, settled), kept(u[2]!, settled), kept(u[3]!, settled)],
    rise: [kept(body[0]!, settled), kept(body[1]!, settled), kept(body[2]!, settled), kept(body[3]!, settled)],
    sprung: [force[0]!, force[1]!, force[2]!, force[3]!],
    load: [load(0), load(1), load(2), load(3)],
    gain: [gain(0), gain(1), gain(2), gain(3)],
  };
}
const none: Four<number> = [0, 0, 0, 0];
/** Exactly as it was measured. */
const unchanged = (now: Four<Support>): StaticState => ({
  travel: none,
  rise: none,
  sprung: [now[0].sprung, now[1].sprung, now[2].sprung, now[3].sprung],
  load: [
    now[0].sprung + now[0].unsprung,
    now[1].sprung + now[1].unsprung,
    now[2].sprung + now[2].unsprung,
    now[3].sprung + now[3].unsprung,
  ],
  gain: none,
});
