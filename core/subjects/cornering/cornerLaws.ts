/** What each corner pushes with as the cornering model has it, and what resists roll beside the springs; of axles that are told by their rates alone too. */
import { figure, ifTold, left, maybe, quantity, type Refusal, refuse, right, structure, thisSide, way } from '../../catalog.js';
import { barModel, barRollStiffness } from '../bars/stiffness.js';
import { sprungMass } from '../mass/loads.js';
import { track } from '../mass/told.js';
import { bindTravel } from '../ride/corner.js';
import { looseTravel } from '../ride/rideTravel.js';
import { travelSince } from '../ride/standing.js';
import { bumpStopGap, damperMotion, travelOfAxle } from '../ride/travel.js';
import { springRollStiffness, suspensionRollStiffness } from '../roll/stiffness.js';
import { motionRatio, springStack } from '../springs/forces.js';
import { springLever } from '../springs/springLever.js';
import { springRate } from '../springs/told.js';
import { cornerWheelRate } from '../springs/wheelRates.js';
import * as axles from '../suspension/told.js';
import type { BarModel, WheelLaw } from './model.js';
import { linearWheelLaw, noStop, type Stop, stopBehind, wheelLaw } from './wheelLaw.js';

const g = 9.80665;

export const droopStopNow = figure({
  path: 'droopStop.now',
  scope: 'axle',
  name: 'droop travel until the stop as it stands',
  label: 'droop until stop now',
  symbol: 'u_d',
  words: ['droop stop', 'droop stop travel', 'droop limit'],
  dimension: 'length',
  needs: { told: axles.droopStopTravel, left: maybe(left(travelSince)), right: maybe(right(travelSince)) },
  compute: ({ told, left = 0, right = 0 }) => told + (left + right) / 2,
  source: 'the reading, and how much the wheels have come up since',
  carriesOn: axles.droopStopTravel,
});
export const nowhere = Number.POSITIVE_INFINITY;
export const bumpStop = structure({
  path: 'cornering.bumpStop',
  scope: 'axle',
  name: 'bump stop at the wheel',
  needs: { gap: maybe(bumpStopGap), rate: axles.bumpStopRate, motion: maybe(damperMotion), ...travelOfAxle },
  // On its stop already, a car is taken to have just met it.
  compute: ({ gap, rate, motion, left, right }) =>
    gap === undefined || motion === undefined ? noStop : stopBehind(motion, (left + right) / 2, Math.max(0, gap), rate),
  source: 'damper travel and force through its motion ratio where the wheel is: virtual work',
});
/** What pushes a wheel down, and where it meets its first stop. */
interface Corner {
  readonly law: WheelLaw;
  readonly contact: number;
}
const carriedBy = { left: left(sprungMass), right: right(sprungMass), track, base: springLever, side: thisSide } as const;
interface Carried {
  readonly left: number;
  readonly right: number;
  readonly track: number;
  readonly base: number;
  readonly side: 'left' | 'right';
}
/** The springs of a beam stand closer together than its wheels: weight off center loads them more unlike than the wheels. N, at the spring's place. */
const carriedOf = ({ left, right, track, base, side }: Carried): number =>
  ((left + right) / 2 + ((side === 'left' ? left - right : right - left) * track) / (2 * base)) * g;
const carriesNothing = refuse('The weight lies so far to one side that a spring carries nothing.', 'scale', 'spring.base');
const stopsThere = { stop: maybe(bumpStop), droop: maybe(droopStopNow) } as const;
/** A corner that is known by its rate at the wheel alone. */
function cornerOfRate(is: Carried & { rate: number; stop: Stop | undefined; droop: number | undefined }): Corner | Refusal {
  const carried = carriedOf(is);
  if (!(carried > 0)) return carriesNothing;
  const stop = is.stop ?? noStop;
  const law = linearWheelLaw({ rate: is.rate, carried, stop, droop: Math.max(0, is.droop ?? carried / is.rate) });
  return { law, contact: stop.at };
}
const oneRate = 'one rate over the travel; bump stop and droop stop as they are known; a spring never pulls';
/** Of an axle whose springs nobody told: how it carries the body hardly moves how the body leans. */
export const usualWheelRate = quantity({
  path: 'cornering.usualRate',
  scope: 'corner',
  name: 'wheel rate of a usual ride frequency',
  label: 'usual wheel rate',
  symbol: 'k_w',
  dimension: 'rate',
  asks: { words: 'how stiff its springs are', tell: springRate },
  ways: [
    way({
      needs: { sprung: sprungMass },
      compute: ({ sprung }) => sprung * (2 * Math.PI * 1.6) ** 2,
      source: '1.6 Hz without its tire; common practice, no source',
      ...{ sort: 'model', within: { relative: 0.5 } },
    }),
  ],
});
export const cornerLaw = structure({
  path: 'cornering.law',
  scope: 'corner',
  name: 'spring and stops at the wheel',
  ways: [
    way({
      needs: { rate: ifTold(cornerWheelRate), ...stopsThere, ...carriedBy },
      compute: cornerOfRate,
      source: `the wheel rate told; ${oneRate}`,
      basis: 'wheel rate as told',
    }),
    way({
      needs: { stiffness: ifTold(springRollStiffness), ...stopsThere, ...carriedBy },
      compute: (is) => cornerOfRate({ ...is, rate: (2 * is.stiffness) / is.base ** 2 }),
      source: `the roll stiffness of the springs told, both sides alike; ${oneRate}`,
      basis: 'roll stiffness of the springs as told',
    }),
    way({
      needs: {
        stack: springStack,
        ratio: motionRatio,
        travel: maybe(travelSince),
        ...carriedBy,
        stop: bumpStop,
        bind: maybe(bindTravel),
        loose: looseTravel,
        droop: maybe(droopStopNow),
      },
      compute: ({ stack, ratio, travel = 0, stop, bind, loose, droop, ...is }): Corner | Refusal => {
        const carried = carriedOf(is);
        if (!(carried > 0)) return carriesNothing;
        const bound = bind ?? nowhere;
        const law = wheelLaw({ stack, ratio, here: travel, carried, stop, bind: bound, droop: Math.max(0, droop ?? loose) });
        return { law, contact: Math.min(stop.at, bound) };
      },
      source:
        'spring force through the motion ratio; bump stop through that of the damper; a coil never pulls: a lifted wheel hangs on its droop stop, or where its spring is loose',
    }),
    way({
      needs: { told: ifTold(suspensionRollStiffness), rate: usualWheelRate, ...stopsThere, ...carriedBy },
      compute: cornerOfRate,
      source: `1.6 Hz in heave, of an axle that is known by its roll stiffness alone; ${oneRate}`,
      basis: 'springs of 1.6 Hz in heave',
    }),
  ],
});
/**
 * What resists roll beside the springs, with the arms of the bar where that is known, so that its mismatch stays what it is.
 * Below zero where the springs alone are stiffer than the whole that was told.
 */
function besides(beside: number, track: number, bar: BarModel | undefined): BarModel {
  if (!bar || bar.stiffness === 0) return { stiffness: beside, arms: [1 / track, 1 / track], mismatch: 0, linkSpacing: track };
  const { arms, linkSpacing } = bar;
  const stiffness = beside / (((arms[0] + arms[1]) * linkSpacing) / 2) ** 2;
  return { stiffness, arms, linkSpacing, mismatch: bar.mismatch === 0 ? 0 : (bar.mismatch * bar.stiffness) / stiffness };
}
export const besideSprings = structure({
  path: 'roll.besideSprings',
  scope: 'axle',
  name: 'what resists roll beside the springs',
  ways: [
    way({
      needs: {
        whole: ifTold(suspensionRollStiffness),
        left: left(cornerLaw),
        right: right(cornerLaw),
        base: springLever,
        track,
        bar: maybe(barModel),
      },
      compute: ({ whole, left, right, base, track, bar }): BarModel => {
        const [l, r] = [left.law.slope(0), right.law.slope(0)];
        return besides(whole - (base ** 2 * l * r) / (l + r), track, bar);
      },
      source: 'the roll stiffness told, less that of the springs at ride height: a torsion spring between the wheels',
      basis: 'roll stiffness as told',
    }),
    way({ needs: { bar: barModel }, compute: ({ bar }): BarModel => bar, source: 'the bar itself' }),
    way({
      needs: { stiffness: barRollStiffness, track },
      compute: ({ stiffness, track }): BarModel => besides(stiffness, track, undefined),
      source: 'the roll stiffness of the bar: a torsion spring between the wheels',
    }),
  ],
});
