/** By axle: the travel that is left before something stops it, and how high the hub stands on its tire. */
import { figure, firstOf, left, maybe, refuse, right } from '../catalog.js';
import * as told from '../inputs/ride.js';
import { cornerMass } from './loads.js';
import * as ride from './ride.js';
import { ratioOfAxle } from './ride.js';
import { riseSince, travelSince } from './standing.js';
import { freeRadius } from './tires.js';
import { leverRatio } from './wheels.js';

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
export const damperRatio = figure({
  path: 'damper.ratioHere',
  scope: 'axle',
  name: 'motion ratio of the damper with these wheels',
  label: 'damper ratio here',
  symbol: 'MR_d',
  dimension: 'ratio',
  needs: { told: told.damperRatio, lever: maybe(leverRatio) },
  compute: ({ told, lever }) => told * (lever ?? 1),
  source: 'front-view geometry',
});
export const stopGap = figure({
  path: 'bumpStop.gapNow',
  scope: 'axle',
  name: 'gap to the bump stop as it stands',
  label: 'bump stop gap now',
  symbol: 's_g',
  words: ['bump stop gap', 'stop gap', 'gap to bump stop'],
  dimension: 'length',
  needs: {
    gap: told.bumpStopGap,
    ratio: firstOf(damperRatio, ratioOfAxle),
    left: maybe(left(travelSince)),
    right: maybe(right(travelSince)),
  },
  compute: ({ gap, ratio, left, right }) => gap - (ratio * ((left ?? 0) + (right ?? 0))) / 2,
  source: 'damper travel from wheel travel',
  carriesOn: told.bumpStopGap,
});
export const stopTravel = figure({
  path: 'stopTravel',
  scope: 'axle',
  name: 'bump travel until the bump stop',
  label: 'bump until the stop',
  symbol: 'u_g',
  words: ['travel to bump stop', 'travel to the stop'],
  dimension: 'length',
  needs: { gap: stopGap, ratio: firstOf(damperRatio, ratioOfAxle) },
  compute: ({ gap, ratio }) => gap / ratio,
  formula: 'gap / ratio',
  source: 'wheel travel from damper travel',
});
export const bumpTravel = figure({
  path: 'bumpTravel',
  scope: 'axle',
  name: 'bump travel left',
  symbol: 'u',
  words: ['bump travel', 'bump travel left', 'travel left'],
  dimension: 'length',
  typical: { range: [0.03, 0.1], of: 'lowered road cars; common practice, no source' },
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

export const squeezedRadius = figure({
  path: 'tire.squeezedRadius',
  scope: 'axle',
  name: 'loaded radius from the free radius',
  label: 'radius under load',
  symbol: 'r_l',
  dimension: 'length',
  needs: { free: freeRadius, left: left(cornerMass), right: right(cornerMass), tire: told.tireRate },
  compute: ({ free, left, right, tire }) => free - ((left + right) * g) / (2 * tire),
  formula: 'free - (left + right) * g / (2 * tire)',
  source: 'a linear tire: free radius less load over rate',
});
export const measuredRadiusNow = figure({
  path: 'tire.measuredRadiusNow',
  scope: 'axle',
  name: 'measured loaded radius as it stands',
  label: 'radius, as read',
  symbol: 'r_l',
  dimension: 'length',
  needs: {
    measured: told.loadedRadiusTold,
    leftRise: maybe(left(riseSince)),
    rightRise: maybe(right(riseSince)),
    leftTravel: maybe(left(travelSince)),
    rightTravel: maybe(right(travelSince)),
  },
  compute: ({ measured, leftRise = 0, rightRise = 0, leftTravel = 0, rightTravel = 0 }) =>
    measured + (leftRise + leftTravel + rightRise + rightTravel) / 2,
  source: 'the reading, and how much the hub has risen with the body and towards it since',
  carriesOn: told.loadedRadiusTold,
});
export const loadedRadius = figure({
  path: 'tire.loadedRadiusNow',
  scope: 'axle',
  name: 'loaded radius of the tire',
  label: 'loaded radius',
  main: true,
  symbol: 'r_l',
  words: ['loaded radius', 'static loaded radius', 'static radius', 'loaded tire radius'],
  dimension: 'length',
  needs: { radius: firstOf(measuredRadiusNow, squeezedRadius) },
  compute: ({ radius }) => radius,
  formula: 'radius',
  source: 'not the rolling radius, which gearing uses',
});
