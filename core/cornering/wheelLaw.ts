/** What pushes a wheel down: its spring through the motion ratio, the bump stop and coil bind above, the droop stop below. */
import { compressionAt, type ForceLaw, forceAt, rateAt } from '../springs/law.js';
import { type MotionRatio, ratioAt, ratioRise, springTravel } from '../springs/motionRatio.js';
import type { WheelLaw } from './model.js';

export interface Suspension {
  /** The spring with all that stands in line with it. */
  readonly stack: ForceLaw;
  readonly ratio: MotionRatio;
  /** Bump travel at which the car stands, in the travel of `ratio`, m. */
  readonly here: number;
  /** What the spring carries there at the wheel, N. */
  readonly carried: number;
  /** Bump travel from there to the bump stop, m, and its rate at the wheel, N/m; Infinity where none is known. */
  readonly stop: { readonly at: number; readonly rate: number };
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
      (u > stop.at ? stop.rate * (u - stop.at) : 0) +
      hard * (beyond(u - bind) - beyond(-droop - u)),
    slope: (u) => {
      const compression = rest + springTravel(ratio, here + u);
      const lever = ratioAt(ratio, here + u);
      const spring =
        compression > 0 ? lever * lever * rateAt(stack, compression) + forceAt(stack, compression) * ratioRise(ratio, here + u) : 0;
      return spring + (u > stop.at ? stop.rate : 0) + (u > bind || u < -droop ? hard : 0);
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
    force: (u) => Math.max(0, carried + rate * u) + (u > stop.at ? stop.rate * (u - stop.at) : 0) - hard * Math.max(0, -droop - u),
    slope: (u) => (u > loose ? rate : 0) + (u > stop.at ? stop.rate : 0) + (u < -droop ? hard : 0),
  };
}
