/** One axle at rest on its springs and tires: what it pushes with where it is, and how it answers to a rise and a turn of the body. See equilibrium.ts. */
import { type Refusal, refuse } from '../../catalog.js';
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
  /** Half the distance at which the springs resist roll: of a beam, their own; else the track. */
  readonly halfBase: number;
  /** Weight on the ground by wheel, hub and brake; and what the wheel carried of the body when the car was weighed. */
  readonly unsprung: number;
  readonly sprung: number;
}
/** Four of something: left front, right front, left rear, right rear. */
export type Four<T> = readonly [T, T, T, T];

/** Longest step of a wheel in one iteration, so that a knee is not jumped over. */
const longestStep = 0.08;
/** Part of its first rate that a loose spring keeps in the derivative only, so that an axle never loses all stiffness. */
const loosePart = 1e-3;

/** How much the spring's line has grown: its length, or what the spring is sold to do instead, and all that stands in line with it. */
function grown(then: Support, now: Support, carried: number): number {
  const { longer, packed, lowered, raised, ratio, law } = now;
  const spring =
    lowered === 0
      ? longer
      : compressionAt(law, carried / ratioAt(ratio, lowered)) -
        compressionAt(then.law, carried / then.ratio.ratio) -
        springTravel(ratio, lowered);
  return spring + packed - (raised === 0 ? 0 : springTravel(ratio, -raised));
}

/** What of an axle does not change while it is solved. Two of each: left, right. */
export interface Axle {
  readonly now: readonly [Support, Support];
  /** Of a wheel, what goes with its own spring, and what with the other. */
  readonly own: number;
  readonly other: number;
  /** Compression of the stack at no travel; where the springs' places would be with no load on the tires; their lever in roll. */
  readonly start: readonly [number, number];
  readonly free: readonly [number, number];
  readonly arm: number;
  /** What gives as the springs press: of a place under its own spring, and under the other. */
  readonly give: readonly [number, number, number];
  /** Sprung weight, N, and its moment to the left, N m. */
  readonly weight: number;
  readonly moment: number;
}
/** How an axle stands, and how it answers. */
export interface AxleStand {
  readonly u: [number, number];
  readonly body: [number, number];
  readonly force: [number, number];
  /** Stiffness of the places of both springs, tires in series: own, between them, own. */
  readonly stiff: [number, number, number];
  /** What the springs would push with if their tires fitted. */
  readonly reach: [number, number];
  readonly misfit: [number, number];
  readonly slope: [number, number];
}
/** The springs of a beam stand closer together than its wheels: weight off center loads them more unlike than the wheels. */
const atSprings = (left: number, right: number, spread: number): readonly [number, number] => [
  (left + right) / 2 + (left - right) / (2 * spread),
  (left + right) / 2 - (left - right) / (2 * spread),
];
export function axleOf(
  then: readonly [Support, Support],
  now: readonly [Support, Support],
  weight: number,
  moment: number,
): Axle | Refusal {
  for (const { sprung } of then) if (!(sprung > 0)) return refuse('The unsprung weight is more than the scale reads at a wheel.');
  const [l, r] = now;
  const carried = atSprings(then[0].sprung, then[1].sprung, then[0].halfBase / then[0].halfTrack);
  if (!(carried[0] > 0 && carried[1] > 0))
    return refuse('The weight lies so far to one side that a spring of the beam axle carries nothing.', 'scale', 'spring.base');
  const spread = l.halfBase / l.halfTrack;
  const [own, other] = [(1 + spread) / 2, (1 - spread) / 2];
  const start = (i: 0 | 1): number => compressionAt(then[i].stack, carried[i] / then[i].ratio.ratio) + grown(then[i], now[i], carried[i]);
  /** Where the wheel is with what is unsprung on its tire, from where it was. */
  const wheel = (i: 0 | 1): number =>
    now[i].taller + (then[i].sprung + then[i].unsprung) / then[i].tireRate - now[i].unsprung / now[i].tireRate;
  const [wl, wr] = [wheel(0), wheel(1)];
  const [cl, cr] = [1 / l.tireRate, 1 / r.tireRate];
  return {
    now,
    own,
    other,
    start: [start(0), start(1)],
    free: [own * wl + other * wr, other * wl + own * wr],
    arm: l.halfBase,
    give: [own * own * cl + other * other * cr, own * other * (cl + cr), other * other * cl + own * own * cr],
    weight,
    // Moments as they were weighed, on the tracks of that moment.
    moment: then[0].halfTrack * l.sprung - then[1].halfTrack * r.sprung + moment,
  };
}
/** Forces, misfits and stiffness of an axle where it is. */
export function lookAt({ now, start, free, give }: Axle, { u, body, force, stiff, reach, misfit, slope }: AxleStand): void {
  for (const i of [0, 1] as const) {
    const { stack, ratio } = now[i];
    const compression = start[i] + springTravel(ratio, u[i]);
    const lever = ratioAt(ratio, u[i]);
    const spring = forceAt(stack, compression);
    const rate = compression > 0 ? rateAt(stack, compression) : loosePart * rateAt(stack, 0);
    force[i] = lever * spring;
    slope[i] = lever * lever * rate + spring * ratioRise(ratio, u[i]);
  }
  const [own, cross, far] = give;
  misfit[0] = u[0] + body[0] - free[0] + own * force[0] + cross * force[1];
  misfit[1] = u[1] + body[1] - free[1] + cross * force[0] + far * force[1];
  // (1/slope + give) inverted, without a division by a slope that may be nothing.
  const [p, q] = slope;
  const whole = (1 + p * own) * (1 + q * far) - p * q * cross * cross;
  stiff[0] = (p * (1 + q * far)) / whole;
  stiff[1] = (-p * q * cross) / whole;
  stiff[2] = (q * (1 + p * own)) / whole;
  reach[0] = force[0] - stiff[0] * misfit[0] - stiff[1] * misfit[1];
  reach[1] = force[1] - stiff[1] * misfit[0] - stiff[2] * misfit[1];
}
/** Moves an axle by a rise and a turn of its body; the largest move of it. */
export function move({ arm, give }: Axle, it: AxleStand, rise: number, turn: number): number {
  const { u, body, stiff, misfit, reach, force } = it;
  const lifts = [rise + arm * turn, rise - arm * turn] as const;
  // What the springs push with after it, and so where their places are.
  const pl = reach[0] - stiff[0] * lifts[0] - stiff[1] * lifts[1] - force[0];
  const pr = reach[1] - stiff[1] * lifts[0] - stiff[2] * lifts[1] - force[1];
  const moves = [-misfit[0] - lifts[0] - give[0] * pl - give[1] * pr, -misfit[1] - lifts[1] - give[1] * pl - give[2] * pr] as const;
  for (const i of [0, 1] as const) {
    u[i] += Math.max(-longestStep, Math.min(longestStep, moves[i]));
    body[i] += lifts[i];
  }
  return Math.max(...moves.map(Math.abs), ...lifts.map(Math.abs));
}

export const resting = (): AxleStand => ({
  u: [0, 0],
  body: [0, 0],
  force: [0, 0],
  stiff: [0, 0, 0],
  reach: [0, 0],
  misfit: [0, 0],
  slope: [0, 0],
});
