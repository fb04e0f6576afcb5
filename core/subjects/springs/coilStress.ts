/** What the spring's load does to its wire. */
import { quantity, way } from '../../catalog.js';
import { axleSpringForce } from '../ride/corner.js';
import { coilStress } from './coil.js';
import { wahl } from './coilFigures.js';
import { coilMeanDiameter, wire } from './coilTold.js';

export const coilStressHere = quantity({
  path: 'coil.stress',
  scope: 'axle',
  name: 'shear stress of the wire',
  label: 'wire stress',
  main: true,
  symbol: 'tau',
  words: ['coil stress', 'wire stress', 'spring stress', 'shear stress'],
  dimension: 'stress',
  sane: [1e6, 3e9],
  typical: { range: [2e8, 8e8], of: 'suspension springs at ride height; common practice, no source' },
  ways: [
    way({
      needs: { wahl, force: axleSpringForce, wire, diameter: coilMeanDiameter },
      compute: ({ wahl, force, wire, diameter }) => coilStress(wahl, force, wire, diameter),
      formula: 'wahl * 8 * force * diameter / (pi * wire^3)',
      source: 'Bhandari, Design of Machine Elements, ch. 10, with the factor of Wahl',
    }),
  ],
});
