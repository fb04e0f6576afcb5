/**
 * How the car stands: the static equilibrium of a body on four sprung wheels, told as its change since the car was measured.
 *
 * Signs of ISO 8855: z up, y to the left, roll positive with the right side down. `u` is bump travel of a wheel relative to the body.
 * Both kinds of axle are one: springs on a base, wheels on a track. Where each wheel moves alone the base is the track. A beam joins them, so that
 *   spring places  y = A w, w the rise of the wheels, and wheel loads N = W_u + A P, with A = [a b; b a], a = (1 + base/track)/2, b = 1 - a
 * (a weight over one spring comes to both wheels, and one wheel that rises lifts both springs).
 * Unknowns: body height and roll at each axle, and the four u, each at its spring's place. No bars. Equations:
 *   spring   P = MR(u) F(X0 + dL + s(u)), F >= 0: a coil never pulls
 *   tire     w = A_t - N/k_t, with A_t the change of free radius plus the deflection when measured; u + b = A w, b the rise of the body there
 *   heave    the two P of an axle carry its share of the sprung weight, which statics alone give
 *   roll     sum of y P over an axle, and the body's torque K_c (phi_f - phi_r), carry the sprung moments about the center line
 * Newton's method with the two u of an axle eliminated together and the heights axle by axle, so that one or two unknowns are left.
 * Limits: small angles; the sideways move of the center of gravity as the body tilts is left out.
 */
import { isRefusal, type Refusal, refuse } from '../../catalog.js';
import { type Axle, type AxleStand, axleOf, type Four, lookAt, move, resting, type Support } from './axle.js';

/** Weight (N) and its moment to the left (N m) that came aboard since the car was weighed, as statics share it between the axles. */
export interface Added {
  readonly front: number;
  readonly rear: number;
  readonly frontMoment: number;
  readonly rearMoment: number;
}

/** How the car stands, by wheel in the order of `Four`. */
export interface StaticState {
  /** Bump travel of the wheel since the car was measured, m. */
  readonly travel: Four<number>;
  /** Rise of the body over the ground, at the wheel, since then, m. */
  readonly rise: Four<number>;
  /** What the wheel carries of the body, N. */
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
  const front = axleOf([then[0], then[1]], [now[0], now[1]], now[0].sprung + now[1].sprung + added.front, added.frontMoment);
  if (isRefusal(front)) return front;
  const rear = axleOf([then[2], then[3]], [now[2], now[3]], now[2].sprung + now[3].sprung + added.rear, added.rearMoment);
  if (isRefusal(rear)) return rear;
  const axles = [front, rear] as const;
  const at = [resting(), resting()] as const;
  const [rollStiffness, lack, turn, roll] = [
    [0, 0],
    [0, 0],
    [0, 0],
    [0, 0],
  ];
  for (let step = 0; step < mostSteps; step++) {
    const lifts = [0, 0];
    const crosses = [0, 0];
    const both = [0, 0];
    for (const j of [0, 1] as const) {
      const { arm, weight, moment } = axles[j];
      lookAt(axles[j], at[j]);
      const { stiff, reach } = at[j];
      both[j] = stiff[0] + 2 * stiff[1] + stiff[2];
      if (!(both[j]! > 0)) return refuse('The springs of an axle have no rate where the car would stand.');
      crosses[j] = (stiff[0] - stiff[2]) * arm;
      lifts[j] = reach[0] + reach[1] - weight;
      rollStiffness[j] = (stiff[0] - 2 * stiff[1] + stiff[2]) * arm * arm - crosses[j]! ** 2 / both[j]!;
      lack[j] = (reach[0] - reach[1]) * arm - (crosses[j]! * lifts[j]!) / both[j]! - moment;
    }
    turnBody(lack, rollStiffness, roll, torsion, turn);
    let largest = 0;
    for (const j of [0, 1] as const) {
      const rise = (lifts[j]! - crosses[j]! * turn[j]!) / both[j]!;
      roll[j]! += turn[j]!;
      largest = Math.max(largest, move(axles[j], at[j], rise, turn[j]!));
    }
    if (!(largest < Number.POSITIVE_INFINITY)) break;
    if (largest < settled) return stateOf(then, axles, at);
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
/** From the springs' places to the wheels. */
function stateOf(then: Four<Support>, axles: readonly [Axle, Axle], at: readonly [AxleStand, AxleStand]): StaticState {
  const four = (of: (axle: Axle, standing: AxleStand, i: 0 | 1) => number): Four<number> => [
    of(axles[0], at[0], 0),
    of(axles[0], at[0], 1),
    of(axles[1], at[1], 0),
    of(axles[1], at[1], 1),
  ];
  const across = (from: readonly [number, number], spread: number, i: 0 | 1): number =>
    (from[0] + from[1]) / 2 + ((i === 0 ? 1 : -1) * (from[0] - from[1])) / (2 * spread);
  const spreadOf = ({ now }: Axle): number => now[0].halfBase / now[0].halfTrack;
  // A rise or a travel is further out at the wheel than at the spring; a force is there more evenly shared.
  const sprung = four(({ own, other }, { force }, i) => own * force[i] + other * force[i === 0 ? 1 : 0]);
  const load = four(({ now }, _, i) => now[i].unsprung).map((unsprung, i) => unsprung + sprung[i]!);
  const gain = (i: 0 | 1 | 2 | 3): number => kept(load[i]! - then[i].sprung - then[i].unsprung, settledForce);
  return {
    travel: four((axle, { u }, i) => kept(across(u, spreadOf(axle), i), settled)),
    rise: four((axle, { body }, i) => kept(across(body, spreadOf(axle), i), settled)),
    sprung,
    load: [load[0]!, load[1]!, load[2]!, load[3]!],
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
