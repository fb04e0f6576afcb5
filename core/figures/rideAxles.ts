/** The same by axle, as most cars are asked about: left and right together. */
import { figure, front, left, rear, right } from '../catalog.js';
import * as told from '../inputs/ride.js';
import { wire } from '../inputs/springs.js';
import { coilStress } from '../springs/coil.js';
import { axleSprungMass } from './loads.js';
import * as ride from './ride.js';
import { meanDiameter, wahl } from './springs.js';

const g = 9.80665;
const mean = 'mean of both sides';
const oscillator = 'a mass on a spring, undamped; left and right together';

export const ratioOfAxle = figure({
  path: 'motionRatio',
  scope: 'axle',
  name: 'motion ratio at this height',
  label: 'motion ratio here',
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
  name: 'spring force',
  symbol: 'F_s',
  words: ['spring force', 'spring load'],
  dimension: 'force',
  needs: { left: left(ride.springForce), right: right(ride.springForce) },
  compute: ({ left, right }) => (left + right) / 2,
  formula: '(left + right) / 2',
  source: mean,
  nonlinear: ride.knee,
});
export const coilStressHere = figure({
  path: 'coil.stress',
  scope: 'axle',
  name: 'shear stress of the wire',
  label: 'wire stress',
  main: true,
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
  name: 'spring compression',
  symbol: 'x',
  words: ['spring compression', 'compression'],
  dimension: 'length',
  needs: { left: left(ride.springCompression), right: right(ride.springCompression) },
  compute: ({ left, right }) => (left + right) / 2,
  formula: '(left + right) / 2',
  source: mean,
  nonlinear: ride.knee,
});
export const springRateHere = figure({
  path: 'springRateHere',
  scope: 'axle',
  name: 'spring rate at this height',
  label: 'spring at this height',
  main: true,
  symbol: 'k',
  words: ['spring rate at this height', 'rate', 'tangent rate', 'tangent spring rate', 'spring rate at ride height', 'spring rate here'],
  dimension: 'rate',
  needs: { left: left(ride.springRateHere), right: right(ride.springRateHere) },
  compute: ({ left, right }) => (left + right) / 2,
  formula: '(left + right) / 2',
  source: `tangent of the force law; ${mean}`,
  nonlinear: ride.knee,
});
export const wheelRate = figure({
  path: 'wheelRate',
  scope: 'axle',
  name: 'wheel rate',
  main: true,
  symbol: 'k_w',
  words: ['wheel rate', 'wheelrate', 'rate at the wheel'],
  dimension: 'rate',
  typical: { range: [12000, 80000], of: 'road cars to track cars; common practice, no source' },
  needs: { left: left(ride.cornerWheelRate), right: right(ride.cornerWheelRate) },
  compute: ({ left, right }) => (left + right) / 2,
  formula: '(left + right) / 2',
  source: mean,
  nonlinear: ride.knee,
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
  nonlinear: ride.knee,
});
export const rideFrequency = figure({
  path: 'rideFrequency',
  scope: 'axle',
  name: 'ride frequency',
  main: true,
  symbol: 'f',
  words: ['ride frequency', 'frequency', 'ride', 'hz', 'natural frequency'],
  dimension: 'frequency',
  typical: { range: [1, 3], of: 'street 1.0 to 1.5, autocross 1.5 to 2.5, race without wings to 3; common practice, no source' },
  needs: { left: left(ride.cornerRideRate), right: right(ride.cornerRideRate), sprung: axleSprungMass },
  compute: ({ left, right, sprung }) => Math.sqrt((left + right) / sprung) / (2 * Math.PI),
  formula: 'sqrt((left + right) / sprung) / (2 * pi)',
  source: `${oscillator}, tires in series`,
  nonlinear: ride.knee,
});
export const springFrequency = figure({
  path: 'springFrequency',
  scope: 'axle',
  name: 'ride frequency on the springs alone, no tire',
  label: 'frequency, no tire',
  symbol: 'f_w',
  words: ['spring frequency', 'frequency without tire', 'ride frequency without tire', 'ride frequency on spring'],
  dimension: 'frequency',
  needs: { left: left(ride.cornerWheelRate), right: right(ride.cornerWheelRate), sprung: axleSprungMass },
  compute: ({ left, right, sprung }) => Math.sqrt((left + right) / sprung) / (2 * Math.PI),
  formula: 'sqrt((left + right) / sprung) / (2 * pi)',
  source: oscillator,
  nonlinear: ride.knee,
});
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
  nonlinear: ride.knee,
});
export const rateRise = figure({
  path: 'rateRise',
  scope: 'axle',
  name: 'rise of the wheel rate per bump travel, part of itself',
  label: 'wheel rate rise',
  symbol: 'dk/k du',
  words: ['rate rise', 'rising rate', 'wheel rate rise'],
  dimension: 'ratioPerLength',
  needs: { left: left(ride.rateRiseHere), right: right(ride.rateRiseHere) },
  compute: ({ left, right }) => (left + right) / 2,
  formula: '(left + right) / 2',
  source: mean,
  nonlinear: ride.knee,
});
export const droopTravel = figure({
  path: 'droopTravel',
  scope: 'axle',
  name: 'droop travel until the spring is loose',
  label: 'droop until loose',
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
  label: 'static deflection',
  symbol: 'd_s',
  words: ['static deflection', 'deflection', 'sag', 'static sag'],
  dimension: 'length',
  typical: { range: [0.03, 0.25], of: '3 Hz to 1 Hz' },
  needs: { droop: droopTravel, sprung: axleSprungMass, tire: told.tireRate },
  compute: ({ droop, sprung, tire }) => droop + (sprung * g) / (2 * tire),
  formula: 'droop + sprung * g / (2 * tire)',
  source: 'wheel travel from the loose spring, and what the sprung weight squeezes the tire; weight over ride rate where all is linear',
});
