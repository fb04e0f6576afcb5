/** Random cars told twice from the same numbers: to the core's model, and to the formulation that shares nothing with it. */
import { isRefusal } from '../../../core/catalog.js';
import { powerGrip } from '../../../core/subjects/cornering/grip.js';
import type { AxleModel, CornerModel } from '../../../core/subjects/cornering/model.js';
import { stopBehind, wheelLaw } from '../../../core/subjects/cornering/wheelLaw.js';
import { lawOfRates } from '../../../core/subjects/springs/law.js';
import { evenRatio } from '../../../core/subjects/springs/motionRatio.js';
import { type Random, seeded } from '../cars.js';
import type { Axle, Body, Wheel } from './independent.js';

interface SpringNumbers {
  readonly first: number;
  readonly last: number;
  readonly over: number;
  readonly ratio: number;
  readonly rise: number;
  readonly carried: number;
  /** Along the damper. */
  readonly stop: number;
  readonly stopRate: number;
  readonly damper: number;
  readonly damperRise: number;
  readonly droop: number;
}
const hard = 1e6;

/** Force at the wheel, from the numbers, without the core's laws. */
function springOf({
  first,
  last,
  over,
  ratio,
  rise,
  carried,
  stop,
  stopRate,
  damper,
  damperRise,
  droop,
}: SpringNumbers): (bump: number) => number {
  const force = (x: number): number => {
    if (x <= 0) return 0;
    const inside = Math.min(x, over);
    return first * inside + ((last - first) * inside * inside) / (2 * over) + last * (x - inside);
  };
  let [low, high] = [0, 1];
  for (let n = 0; n < 200; n++) {
    const middle = (low + high) / 2;
    if (force(middle) < carried / ratio) low = middle;
    else high = middle;
  }
  return (u) =>
    (ratio + rise * u) * force(low + ratio * u + (rise * u * u) / 2) +
    (damper + damperRise * u) * stopRate * Math.max(0, damper * u + (damperRise * u * u) / 2 - stop) -
    hard * Math.max(0, -droop - u);
}

const between = (random: Random, low: number, high: number): number => low + (high - low) * random();

/** A car by number: half of them with a beam behind or in front, a third with a body that twists, some lifted easily by stiff ends. */
export function pair(seed: number): { readonly model: CornerModel; readonly body: Body; readonly lateral: number } {
  const random = seeded(4000 + seed);
  const pick = (low: number, high: number): number => between(random, low, high);
  // Of its own, so that the other numbers of a car stay what they were.
  const stops = seeded(7000 + seed);
  const damping = (low: number, high: number): number => between(stops, low, high);
  const sprungHeight = pick(0.45, 0.68);
  const torsion = random() < 0.35 ? pick(1.5e5, 2e6) : Number.POSITIVE_INFINITY;
  const stiffEnd = random() < 0.4 ? (random() < 0.5 ? 0 : 1) : -1;
  const made = [0, 1].map((j): { core: AxleModel; own: Axle } => {
    const beam = random() < 0.35;
    const track = pick(1.3, 1.6);
    const springSpacing = beam ? pick(0.7, 1.1) : track;
    const linkSpacing = beam ? pick(0.6, 1.1) : track;
    const rollCenter = beam ? pick(0.15, 0.35) : pick(-0.03, 0.14);
    const unsprungHeight = pick(0.26, 0.34);
    const tire = pick(1.4e5, 3.5e5);
    const sprung = [pick(2000, 3200), 0];
    sprung[1] = sprung[0]! * pick(0.93, 1.07);
    const unsprung = [pick(280, 500), pick(280, 500)] as const;
    const hasBar = random() < 0.8;
    const twist = hasBar ? pick(200, 4000) * (stiffEnd === j ? 3 : 1) : 0;
    const arms = [pick(2, 4), 0];
    arms[1] = arms[0]! * (random() < 0.3 ? pick(0.85, 1.15) : 1);
    const mismatch = random() < 0.3 ? pick(-0.02, 0.02) : 0;
    const mu0 = pick(0.8, 1.5);
    const n = pick(0, 0.3);
    const [best, sharpness] = [pick(0, 0.06), random() < 0.6 ? pick(0, 25) : 0];
    const gain = pick(-0.9, 0.1);
    const standing = [pick(-0.05, 0), pick(-0.05, 0)] as const;
    const weightLeft = ((sprung[0]! - sprung[1]!) * track) / (2 * (sprung[0]! + sprung[1]!));
    // A beam's springs stand closer together than its wheels.
    const unlike = ((sprung[0]! - sprung[1]!) * track) / (2 * springSpacing);
    const mean = (sprung[0]! + sprung[1]!) / 2;
    const first = pick(20_000, 70_000);
    const alike = {
      first,
      last: first * (random() < 0.4 ? pick(1, 2.2) : 1),
      over: pick(0.05, 0.12),
      ratio: pick(0.6, 1),
      rise: pick(-0.3, 0.5),
      stop: random() < 0.4 ? pick(0.015, 0.06) : 1,
      stopRate: pick(2e4, 1.5e5),
      droop: pick(0.04, 0.1),
      damper: damping(0.6, 1),
      damperRise: damping(-0.5, 1.5),
    };
    const numbers = [0, 1].map((i): SpringNumbers => ({ ...alike, carried: mean + (i === 0 ? unlike : -unlike) }));
    const stop = stopBehind(evenRatio(alike.damper, alike.damperRise), 0, alike.stop, alike.stopRate);
    const laws = numbers.map(({ first, last, over, ratio, rise, carried, droop }) => {
      const stack = lawOfRates({ x: [0, over], y: [first, last], between: 'line' });
      if (isRefusal(stack)) throw new Error(stack.refused);
      const suspension = { stack, ratio: evenRatio(ratio, rise), here: 0, carried, stop };
      return wheelLaw({ ...suspension, bind: Number.POSITIVE_INFINITY, droop });
    });
    const stands = [sprung[0]! + unsprung[0], sprung[1]! + unsprung[1]] as const;
    const grip = powerGrip(mu0, 3000, n);
    const wheel = (i: 0 | 1): Wheel => ({
      spring: springOf(numbers[i]!),
      unsprung: unsprung[i],
      stands: stands[i],
      arm: arms[i]!,
      mu: (load, lean) => (mu0 * Math.max(load / 3000, 1 / 50) ** -n * (1 + sharpness * best ** 2)) / (1 + sharpness * (lean - best) ** 2),
      camber: standing[i],
      camberGain: gain,
    });
    return {
      core: {
        kind: beam ? 'beam' : 'independent',
        track,
        springBase: springSpacing,
        law: [laws[0]!, laws[1]!],
        bar: hasBar ? { stiffness: twist, arms: [arms[0]!, arms[1]!], mismatch, linkSpacing } : undefined,
        rollCentreHeight: rollCenter,
        unsprungHeight,
        unsprung,
        tireRate: tire,
        reference: stands,
        grip: [grip, grip],
        camber: sharpness > 0 ? { standing, gain, best, sharpness } : undefined,
        contact: [Math.min(stop.at, 1), Math.min(stop.at, 1)],
        rest: { body: ((sprung[0]! - sprung[1]!) * track) / 2, axle: beam ? ((unsprung[0] - unsprung[1]) * track) / 2 : 0 },
        driveLift: 0,
      },
      own: {
        beam,
        track,
        springSpacing,
        linkSpacing,
        wheels: [wheel(0), wheel(1)],
        tire,
        rollCenter,
        unsprungHeight,
        barTorsion: twist,
        barTwistAtRest: mismatch,
        weightLeft,
      },
    };
  });
  const [front, rear] = [made[0]!, made[1]!];
  const wheelbase = pick(2.1, 2.8);
  const load = (axle: AxleModel): number => axle.reference[0] + axle.reference[1];
  const weight = load(front.core) + load(rear.core);
  const low = [front.core, rear.core].reduce((sum, axle) => sum + (axle.unsprung[0] + axle.unsprung[1]) * axle.unsprungHeight, 0);
  const unsprung = [front.core, rear.core].reduce((sum, axle) => sum + axle.unsprung[0] + axle.unsprung[1], 0);
  return {
    model: {
      axles: [front.core, rear.core],
      toFront: (wheelbase * load(rear.core)) / weight,
      toRear: (wheelbase * load(front.core)) / weight,
      cgHeight: (sprungHeight * (weight - unsprung) + low) / weight,
      sprungCgHeight: sprungHeight,
      chassisStiffness: torsion,
      gravity: true,
    },
    body: { axles: [front.own, rear.own], wheelbase, sprungHeight, torsion },
    lateral: (random() < 0.5 ? 1 : -1) * pick(0, 1.25),
  };
}
