/** The same by axle, as most cars are asked about: left and right together; and the travel that is left before something stops it. */
import { asMeasured, figure, firstOf, front, left, maybe, rear, refuse, right } from '../catalog.js';
import * as told from '../inputs/ride.js';
import { wire } from '../inputs/springs.js';
import { coilStress } from '../springs/coil.js';
import * as ride from './ride.js';
import { meanDiameter, wahl } from './springs.js';
import { axleSprungMass, cornerMass, travelSince } from './standing.js';
import { freeRadius } from './tires.js';
import { leverRatio } from './wheels.js';

const g = 9.80665;
const mean = 'mean of both sides';
const oscillator = 'a mass on a spring, undamped; left and right together';

export const ratioOfAxle = figure({
  path: 'motionRatio',
  scope: 'axle',
  name: 'motion ratio at this height',
  symbol: 'MR',
  words: ['motion ratio', 'motion ratio at this height', 'mr'],
  dimension: 'ratio',
  needs: { left: left(ride.ratioHere), right: right(ride.ratioHere) },
  compute: ({ left, right }) => (left + right) / 2,
  formula: '(left + right) / 2',
  source: mean,
});
export const springForce = figure({
  path: 'springForce',
  scope: 'axle',
  name: 'spring force at ride height',
  symbol: 'F_s',
  words: ['spring force', 'spring load'],
  dimension: 'force',
  needs: { left: left(ride.springForce), right: right(ride.springForce) },
  compute: ({ left, right }) => (left + right) / 2,
  formula: '(left + right) / 2',
  source: mean,
});
export const coilStressHere = figure({
  path: 'coil.stress',
  scope: 'axle',
  name: 'shear stress of the wire at ride height',
  symbol: 'tau',
  words: ['coil stress', 'wire stress', 'spring stress', 'shear stress'],
  dimension: 'stress',
  typical: { range: [2e8, 8e8], of: 'suspension springs at ride height; common practice, no source' },
  needs: { wahl, force: springForce, wire, diameter: meanDiameter },
  compute: ({ wahl, force, wire, diameter }) => coilStress(wahl, force, wire, diameter),
  formula: 'wahl * 8 * force * diameter / (pi * wire^3)',
  source: 'Bhandari, Design of Machine Elements, ch. 10, with the factor of Wahl',
});
export const springCompression = figure({
  path: 'springCompression',
  scope: 'axle',
  name: 'spring compression at ride height',
  symbol: 'x',
  words: ['spring compression', 'compression'],
  dimension: 'length',
  needs: { left: left(ride.springCompression), right: right(ride.springCompression) },
  compute: ({ left, right }) => (left + right) / 2,
  formula: '(left + right) / 2',
  source: mean,
});
export const springRateHere = figure({
  path: 'springRateHere',
  scope: 'axle',
  name: 'spring rate at this height',
  symbol: 'k',
  words: ['spring rate at this height', 'tangent rate', 'tangent spring rate', 'spring rate at ride height', 'spring rate here'],
  dimension: 'rate',
  needs: { left: left(ride.springRateHere), right: right(ride.springRateHere) },
  compute: ({ left, right }) => (left + right) / 2,
  formula: '(left + right) / 2',
  source: `tangent of the force law; ${mean}`,
});
export const wheelRate = figure({
  path: 'wheelRate',
  scope: 'axle',
  name: 'wheel rate',
  symbol: 'k_w',
  words: ['wheel rate', 'wheelrate', 'rate at the wheel'],
  dimension: 'rate',
  typical: { range: [12000, 80000], of: 'road cars to track cars; common practice, no source' },
  needs: { left: left(ride.cornerWheelRate), right: right(ride.cornerWheelRate) },
  compute: ({ left, right }) => (left + right) / 2,
  formula: '(left + right) / 2',
  source: mean,
});
export const rideRate = figure({
  path: 'rideRate',
  scope: 'axle',
  name: 'ride rate, with tire',
  symbol: 'k_r',
  words: ['ride rate'],
  dimension: 'rate',
  needs: { left: left(ride.cornerRideRate), right: right(ride.cornerRideRate) },
  compute: ({ left, right }) => (left + right) / 2,
  formula: '(left + right) / 2',
  source: mean,
});
export const rideFrequency = figure({
  path: 'rideFrequency',
  scope: 'axle',
  name: 'ride frequency',
  symbol: 'f',
  words: ['ride frequency', 'frequency', 'ride', 'hz', 'natural frequency'],
  dimension: 'frequency',
  typical: { range: [1, 3], of: 'street 1.0 to 1.5, autocross 1.5 to 2.5, race without wings to 3; common practice, no source' },
  needs: { left: left(ride.cornerRideRate), right: right(ride.cornerRideRate), sprung: axleSprungMass },
  compute: ({ left, right, sprung }) => Math.sqrt((left + right) / sprung) / (2 * Math.PI),
  formula: 'sqrt((left + right) / sprung) / (2 * pi)',
  source: `${oscillator}, tires in series`,
});
export const springFrequency = figure({
  path: 'springFrequency',
  scope: 'axle',
  name: 'ride frequency on the springs alone, no tire',
  symbol: 'f_w',
  words: ['spring frequency', 'frequency without tire', 'ride frequency without tire', 'ride frequency on spring'],
  dimension: 'frequency',
  needs: { left: left(ride.cornerWheelRate), right: right(ride.cornerWheelRate), sprung: axleSprungMass },
  compute: ({ left, right, sprung }) => Math.sqrt((left + right) / sprung) / (2 * Math.PI),
  formula: 'sqrt((left + right) / sprung) / (2 * pi)',
  source: oscillator,
});
export const frequencyRatio = figure({
  path: 'frequencyRatio',
  scope: 'car',
  name: 'rear over front ride frequency',
  symbol: 'f_r/f_f',
  words: ['frequency ratio', 'ride frequency ratio'],
  dimension: 'ratio',
  typical: { range: [0.9, 1.2], of: 'street cars 1.1 to 1.2; common practice, no source' },
  needs: { front: front(rideFrequency), rear: rear(rideFrequency) },
  compute: ({ front, rear }) => rear / front,
  formula: 'rear / front',
  source: 'by definition',
});
export const rateRise = figure({
  path: 'rateRise',
  scope: 'axle',
  name: 'rise of the wheel rate per bump travel, part of itself',
  symbol: 'dk/k du',
  words: ['rate rise', 'rising rate', 'wheel rate rise'],
  dimension: 'ratioPerLength',
  needs: { left: left(ride.rateRiseHere), right: right(ride.rateRiseHere) },
  compute: ({ left, right }) => (left + right) / 2,
  formula: '(left + right) / 2',
  source: mean,
});
export const droopTravel = figure({
  path: 'droopTravel',
  scope: 'axle',
  name: 'droop travel until the spring is loose',
  symbol: 'u_d',
  words: ['droop travel', 'droop', 'travel until loose'],
  dimension: 'length',
  needs: { left: left(ride.looseTravel), right: right(ride.looseTravel) },
  compute: ({ left, right }) => (left + right) / 2,
  formula: '(left + right) / 2',
  source: mean,
});
export const staticDeflection = figure({
  path: 'staticDeflection',
  scope: 'axle',
  name: 'static deflection of springs and tires',
  symbol: 'd_s',
  words: ['static deflection', 'deflection'],
  dimension: 'length',
  typical: { range: [0.03, 0.25], of: '3 Hz to 1 Hz' },
  needs: { droop: droopTravel, sprung: axleSprungMass, tire: told.tireRate },
  compute: ({ droop, sprung, tire }) => droop + (sprung * g) / (2 * tire),
  formula: 'droop + sprung * g / (2 * tire)',
  source: 'wheel travel from the loose spring, and what the sprung weight squeezes the tire; weight over ride rate where all is linear',
});

export const bindTravel = figure({
  path: 'bindTravel',
  scope: 'axle',
  name: 'bump travel until the spring binds',
  symbol: 'u_b',
  words: ['travel to coil bind', 'travel to bind'],
  dimension: 'length',
  needs: { left: left(ride.bindTravel), right: right(ride.bindTravel) },
  compute: ({ left, right }) => Math.min(left, right),
  formula: 'min(left, right)',
  source: 'the side that binds first',
  caution: 'A spring that binds or a stop that is hit in a corner throws load on that tire at once.',
});
export const damperRatio = figure({
  path: 'damper.ratioHere',
  scope: 'axle',
  name: 'motion ratio of the damper with these wheels',
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
  words: ['bump travel', 'bump travel left', 'travel left', 'bump'],
  dimension: 'length',
  typical: { range: [0.03, 0.1], of: 'lowered road cars; common practice, no source' },
  needs: { bind: maybe(bindTravel), stop: maybe(stopTravel) },
  compute: ({ bind, stop }) =>
    bind === undefined && stop === undefined
      ? refuse('Neither the gap to the bump stop nor the travel of the spring until it binds is known.', 'bumpStop.gap', 'spring.travel')
      : Math.min(bind ?? Number.POSITIVE_INFINITY, stop ?? Number.POSITIVE_INFINITY),
  source: 'the nearer of bind and bump stop',
  caution: 'A spring that binds or a stop that is hit in a corner throws load on that tire at once.',
});

export const squeezedRadius = figure({
  path: 'tire.squeezedRadius',
  scope: 'axle',
  name: 'loaded radius from the free radius',
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
  symbol: 'r_l',
  dimension: 'length',
  needs: { measured: told.loadedRadiusTold, now: maybe(squeezedRadius), then: maybe(asMeasured(squeezedRadius)) },
  compute: ({ measured, now, then }) => measured + (now === undefined || then === undefined ? 0 : now - then),
  source: 'the reading, and what has changed since',
  carriesOn: told.loadedRadiusTold,
});
export const loadedRadius = figure({
  path: 'tire.loadedRadiusNow',
  scope: 'axle',
  name: 'loaded radius of the tire',
  symbol: 'r_l',
  words: ['loaded radius', 'static loaded radius', 'static radius', 'loaded tire radius'],
  dimension: 'length',
  needs: { radius: firstOf(measuredRadiusNow, squeezedRadius) },
  compute: ({ radius }) => radius,
  formula: 'radius',
  source: 'not the rolling radius, which gearing uses',
});
