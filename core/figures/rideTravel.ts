/** What the wheel rates make of the ride of an axle: rear against front, how the rate rises, droop and deflection. */
import { figure, front, left, rear, right } from '../catalog.js';
import { tireRate } from '../inputs/ride.js';
import { axleSprungMass } from './loads.js';
import { knee, looseTravel } from './ride.js';
import { rateRiseHere, rideFrequency } from './wheelRates.js';

const g = 9.80665;
const mean = 'mean of both sides';

export const frequencyRatio = figure({
  path: 'frequencyRatio',
  scope: 'car',
  name: 'rear over front ride frequency',
  label: 'rear over front Hz',
  main: true,
  symbol: 'f_r/f_f',
  words: ['frequency ratio', 'ride frequency ratio', 'flat ride', 'flat ride ratio'],
  dimension: 'ratio',
  typical: { range: [0.9, 1.2], of: 'street cars 1.1 to 1.2; common practice, no source' },
  needs: { front: front(rideFrequency), rear: rear(rideFrequency) },
  compute: ({ front, rear }) => rear / front,
  formula: 'rear / front',
  source: 'by definition',
  nonlinear: knee,
});
export const rateRise = figure({
  path: 'rateRise',
  scope: 'axle',
  name: 'rise of the wheel rate per bump travel, part of itself',
  label: 'wheel rate rise',
  symbol: 'dk/k du',
  words: ['rate rise', 'rising rate', 'wheel rate rise'],
  dimension: 'ratioPerLength',
  needs: { left: left(rateRiseHere), right: right(rateRiseHere) },
  compute: ({ left, right }) => (left + right) / 2,
  formula: '(left + right) / 2',
  source: mean,
  nonlinear: knee,
});
export const droopTravel = figure({
  path: 'droopTravel',
  scope: 'axle',
  name: 'droop travel until the spring is loose',
  label: 'droop until loose',
  symbol: 'u_d',
  words: ['droop travel', 'droop', 'travel until loose'],
  dimension: 'length',
  needs: { left: left(looseTravel), right: right(looseTravel) },
  compute: ({ left, right }) => (left + right) / 2,
  formula: '(left + right) / 2',
  source: mean,
});
export const staticDeflection = figure({
  path: 'staticDeflection',
  scope: 'axle',
  name: 'static deflection of springs and tires',
  label: 'static deflection',
  symbol: 'd_s',
  words: ['static deflection', 'deflection', 'sag', 'static sag'],
  dimension: 'length',
  typical: { range: [0.03, 0.25], of: '3 Hz to 1 Hz' },
  needs: { droop: droopTravel, sprung: axleSprungMass, tire: tireRate },
  compute: ({ droop, sprung, tire }) => droop + (sprung * g) / (2 * tire),
  formula: 'droop + sprung * g / (2 * tire)',
  source: 'wheel travel from the loose spring, and what the sprung weight squeezes the tire; weight over ride rate where all is linear',
});
