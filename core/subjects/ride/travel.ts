/** By axle: the travel that is left before something stops it, and how high the hub stands on its tire. */
import {
  asMeasured,
  carry,
  figure,
  given,
  inPractice,
  left,
  maybe,
  quantity,
  refine,
  refuse,
  right,
  structure,
  way,
} from '../../catalog.js';
import { cornerMass } from '../mass/loads.js';
import { motionRatio } from '../springs/forces.js';
import { evenRatio, type MotionRatio, springTravel, wheelTravel } from '../springs/motionRatio.js';
import { freeRadius } from '../tires/dimensions.js';
import { leverRatio } from '../wheels/fit.js';
import * as ride from './corner.js';
import { ratioOfAxle } from './corner.js';
import { riseSince, travelSince } from './standing.js';
import * as told from './told.js';

const g = 9.80665;

export const bindTravel = figure({
  path: 'bindTravel',
  scope: 'axle',
  name: 'bump travel until the spring binds',
  label: 'bump until bind',
  symbol: 'u_b',
  words: ['travel to coil bind', 'travel to bind'],
  dimension: 'length',
  needs: { left: left(ride.bindTravel), right: right(ride.bindTravel) },
  compute: ({ left, right }) => Math.min(left, right),
  formula: 'min(left, right)',
  source: 'the side that binds first',
  caution: 'A spring that binds or a stop that is hit in a corner throws load on that tire at once.',
  nonlinear: ride.knee,
});
/** Where an axle stands in the travel of its motion ratios: of both its wheels. */
export const travelOfAxle = { left: refine(left(travelSince), 0), right: refine(right(travelSince), 0) } as const;
export const damperMotion = structure({
  path: 'damper.motion',
  scope: 'axle',
  name: 'motion ratio of the damper over the travel',
  ways: [
    way({
      needs: { told: told.damperRatio, lever: refine(leverRatio, 1, 'wheels that stand further out or in') },
      compute: ({ told, lever }): MotionRatio => evenRatio(told * lever, 0),
      source: 'as told, the same over the travel',
    }),
    way({
      needs: { motion: motionRatio },
      compute: ({ motion }): MotionRatio => motion,
      source: 'the damper stands inside the spring',
      basis: 'damper as the spring',
    }),
  ],
});
export const damperRatio = quantity({
  path: 'damper.ratioHere',
  scope: 'axle',
  name: 'motion ratio of the damper with these wheels',
  label: 'damper ratio here',
  symbol: 'MR_d',
  dimension: 'ratio',
  ways: [
    way({
      needs: { told: told.damperRatio, lever: refine(leverRatio, 1, 'wheels that stand further out or in') },
      compute: ({ told, lever }) => told * lever,
      formula: 'told * lever',
      source: 'front-view geometry',
    }),
    way({
      needs: { spring: ratioOfAxle },
      compute: ({ spring }) => spring,
      formula: 'spring',
      source: 'the damper stands inside the spring',
      basis: 'damper as the spring',
    }),
  ],
});
export const bumpStopGap = quantity({
  path: 'bumpStop.gap',
  scope: 'axle',
  name: 'gap to the bump stop, along the damper',
  label: 'bump stop gap',
  symbol: 's_g',
  state: true,
  words: ['bump stop gap', 'bumpstop gap', 'stop gap', 'gap to bump stop', 'shaft travel left'],
  dimension: 'length',
  sane: [0, 0.25],
  told: { usually: 'measured', measured: { absolute: 0.002 }, spec: { absolute: 0.005 } },
  measure: 'At ride height, from the stop to what it will hit, along the damper shaft.',
});
carry(bumpStopGap, {
  needs: {
    measured: asMeasured(given(bumpStopGap)),
    motion: damperMotion,
    ...travelOfAxle,
  },
  compute: ({ measured, motion, left, right }) => measured - (springTravel(motion, left) + springTravel(motion, right)) / 2,
  source: 'damper travel from wheel travel, the integral of the motion ratio',
});
export const stopTravel = quantity({
  path: 'stopTravel',
  scope: 'axle',
  name: 'bump travel until the bump stop',
  label: 'bump until the stop',
  symbol: 'u_g',
  words: ['travel to bump stop', 'travel to the stop'],
  dimension: 'length',
  sane: [-0.1, 0.4],
  ways: [
    way({
      needs: { gap: bumpStopGap, motion: damperMotion, ...travelOfAxle },
      compute: ({ gap, motion, left, right }) => wheelTravel(motion, (left + right) / 2, gap),
      source: 'wheel travel from damper travel, the integral of the motion ratio',
    }),
    way({
      needs: { gap: bumpStopGap, ratio: damperRatio },
      compute: ({ gap, ratio }) => gap / ratio,
      formula: 'gap / ratio',
      source: 'wheel travel from damper travel',
    }),
  ],
});
export const bumpTravel = figure({
  path: 'bumpTravel',
  scope: 'axle',
  name: 'bump travel left',
  symbol: 'u',
  words: ['bump travel', 'bump travel left', 'travel left'],
  dimension: 'length',
  typical: [inPractice('standard road cars', 0.06, 0.12), inPractice('lowered road cars', 0.03, 0.07)],
  needs: { bind: maybe(bindTravel), stop: maybe(stopTravel) },
  compute: ({ bind, stop }) => {
    if (bind === undefined && stop === undefined)
      return refuse(
        'Neither the gap to the bump stop nor the travel of the spring until it binds is known.',
        'bumpStop.gap',
        'spring.travel',
      );
    const least = Math.min(bind ?? Number.POSITIVE_INFINITY, stop ?? Number.POSITIVE_INFINITY);
    if (least >= 0) return least;
    return bind === least
      ? refuse('The spring is bound at ride height: its coils touch.', 'spring.travel')
      : refuse('The bump stop is pressed at ride height.', 'bumpStop.gap');
  },
  source: 'the nearer of bind and bump stop',
  caution: 'A spring that binds or a stop that is hit in a corner throws load on that tire at once.',
  nonlinear: 'The nearer of two limits: a doubt in which the other comes first is taken from its two ends.',
});

export const loadedRadiusTold = quantity({
  path: 'tire.loadedRadius',
  scope: 'axle',
  name: 'loaded radius of the tire, measured',
  label: 'loaded radius, read',
  symbol: 'r_l',
  state: true,
  words: ['measured loaded radius', 'hub height', 'wheel center height', 'axle height'],
  dimension: 'length',
  sane: [0.18, 0.55],
  told: { usually: 'measured', measured: { absolute: 0.0015 }, spec: { absolute: 0.004 } },
  measure: 'From the ground to the middle of the hub, car on its wheels.',
});
carry(loadedRadiusTold, {
  needs: {
    measured: asMeasured(given(loadedRadiusTold)),
    leftRise: refine(left(riseSince), 0),
    rightRise: refine(right(riseSince), 0),
    leftTravel: refine(left(travelSince), 0),
    rightTravel: refine(right(travelSince), 0),
  },
  compute: ({ measured, leftRise, rightRise, leftTravel, rightTravel }) => measured + (leftRise + leftTravel + rightRise + rightTravel) / 2,
  formula: 'measured + (leftRise + leftTravel + rightRise + rightTravel) / 2',
  source: 'the reading, and how much the hub has risen with the body and towards it since',
});
export const loadedRadius = quantity({
  path: 'tire.loadedRadiusNow',
  scope: 'axle',
  name: 'loaded radius of the tire',
  label: 'loaded radius',
  main: true,
  symbol: 'r_l',
  words: ['loaded radius', 'static loaded radius', 'static radius', 'loaded tire radius'],
  dimension: 'length',
  sane: [0.15, 0.6],
  ways: [
    way({ needs: { measured: loadedRadiusTold }, compute: ({ measured }) => measured, formula: 'measured', source: 'as read' }),
    way({
      needs: { free: freeRadius, left: left(cornerMass), right: right(cornerMass), tire: told.tireRate },
      compute: ({ free, left, right, tire }) => free - ((left + right) * g) / (2 * tire),
      formula: 'free - (left + right) * g / (2 * tire)',
      source: 'a linear tire: free radius less load over rate; not the rolling radius, which gearing uses',
    }),
  ],
});
