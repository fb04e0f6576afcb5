/** What pushes a wheel down: its spring through the motion ratio, the bump stop and coil bind above, the droop stop below. */
import { compressionAt, type ForceLaw, forceAt, rateAt } from '../springs/law.js';
import { type MotionRatio, ratioAt, ratioRise, springTravel, wheelTravel } from '../springs/motionRatio.js';
import type { WheelLaw } from './model.js';

/** A bump stop as the wheel meets it: force (N) and slope (N/m) at the wheel over bump travel from where the car stands, nothing before `at`. */
export interface Stop extends WheelLaw {
  readonly at: number;
}
/** No stop, always the same one, so that what depends on it sees no change. */
export const noStop: Stop = { at: Number.POSITIVE_INFINITY, force: () => 0, slope: () => 0 };
/**
 * A stop that stands in line with a damper. By virtual work its force comes to the wheel through the damper's motion ratio where the wheel is, and it is met
 * where the damper has travelled the gap.
 * @param here bump travel at which the car stands, in the travel of `motion`, m
 * @param gap along the damper from there, m, at least 0
 * @param rate along the damper, N/m
 */
export function stopBehind(motion: MotionRatio, here: number, gap: number, rate: number): Stop {
  const at = wheelTravel(motion, here, gap);
  // The ratio falls to nothing first: the damper does not travel that far.
  if (typeof at !== 'number') return noStop;
  const closed = springTravel(motion, here) + gap;
  const pressed = (u: number): number => springTravel(motion, here + u) - closed;
  return {
    at,
    force: (u) => (u > at ? ratioAt(motion, here + u) * rate * pressed(u) : 0),
    slope: (u) => (u > at ? rate * (ratioAt(motion, here + u) ** 2 + pressed(u) * ratioRise(motion, here + u)) : 0),
  };
}

export interface Suspension {
  /** The spring with all that stands in line with it. */
  readonly stack: ForceLaw;
  readonly ratio: MotionRatio;
  /** Bump travel at which the car stands, in the travel of `ratio`, m. */
  readonly here: number;
  /** What the spring carries there at the wheel, N. */
  readonly carried: number;
  readonly stop: Stop;
  /** Bump travel from there until the coil binds, m. */
  readonly bind: number;
  /** Droop travel from there until the wheel hangs on its stop, m, at least 0. */
  readonly droop: number;
}
/** A bound coil and a topped-out damper stand for rigid: N/m at the wheel, stiff beside any spring and soft enough to solve. */
export const hard = 1e6;

/** Force (N) at the wheel and its slope (N/m) over bump travel from where the car stands. Below droop it is negative: the wheel hangs, no coil pulls. */
export function wheelLaw({ stack, ratio, here, carried, stop, bind, droop }: Suspension): WheelLaw {
  const rest = compressionAt(stack, carried / ratioAt(ratio, here)) - springTravel(ratio, here);
  const beyond = (u: number): number => Math.max(0, u);
  return {
    force: (u) =>
      ratioAt(ratio, here + u) * forceAt(stack, rest + springTravel(ratio, here + u)) +
      stop.force(u) +
      hard * (beyond(u - bind) - beyond(-droop - u)),
    slope: (u) => {
      const compression = rest + springTravel(ratio, here + u);
      const lever = ratioAt(ratio, here + u);
      const spring =
        compression > 0 ? lever * lever * rateAt(stack, compression) + forceAt(stack, compression) * ratioRise(ratio, here + u) : 0;
      return spring + stop.slope(u) + (u > bind || u < -droop ? hard : 0);
    },
  };
}

/** The same of a wheel that is known by one rate alone, N/m. A spring never pulls: past where it is loose, the wheel hangs on its droop stop. */
export function linearWheelLaw({
  rate,
  carried,
  stop,
  droop,
}: { rate: number } & Pick<Suspension, 'carried' | 'stop' | 'droop'>): WheelLaw {
  const loose = -carried / rate;
  return {
    force: (u) => Math.max(0, carried + rate * u) + stop.force(u) - hard * Math.max(0, -droop - u),
    slope: (u) => (u > loose ? rate : 0) + stop.slope(u) + (u < -droop ? hard : 0),
  };
}
