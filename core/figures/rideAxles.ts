/** The same by axle, as most cars are asked about: left and right together. */
import { figure, left, right } from '../catalog.js';
import { wire } from '../inputs/springs.js';
import { coilStress } from '../springs/coil.js';
import * as ride from './ride.js';
import { meanDiameter, wahl } from './springs.js';

const mean = 'mean of both sides';

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
