/** What a coil's dimensions make of it: rate, stress factors, weight, and how far it can be pressed. */
import { inPractice, quantity, refuse, way } from '../../catalog.js';
import { activeMass, bergstraesserFactor, coilRate as rateOfCoil, solidLength, springIndex, surgeFrequency, wahlFactor } from './coil.js';
import { activeTurns, coilMeanDiameter, deadTurns, shearModulus, wire } from './coilTold.js';
import { springFreeLength, springTravel } from './told.js';

const springTexts = 'Bhandari, Design of Machine Elements, ch. 10';
const exact = 'by definition';

export const coilIndex = quantity({
  path: 'coil.index',
  scope: 'axle',
  name: 'spring index, coil over wire',
  label: 'spring index',
  symbol: 'C',
  words: ['spring index', 'coil index'],
  dimension: 'ratio',
  sane: [1.5, 40],
  typical: { range: [5, 12], of: 'cold-wound springs; common practice, no source' },
  ways: [
    way({
      needs: { wire, diameter: coilMeanDiameter },
      compute: ({ wire, diameter }) =>
        diameter > wire ? springIndex(wire, diameter) : refuse('The coil is narrower than its wire.', 'coil.wire', 'coil.diameter'),
      formula: 'diameter / wire',
      source: springTexts,
    }),
  ],
});
export const coilRate = quantity({
  path: 'coil.rate',
  typical: [inPractice('street cars', 15_000, 50_000), inPractice('autocross and track cars', 40_000, 140_000)],
  scope: 'axle',
  name: 'spring rate from the coil',
  label: 'rate from the coil',
  main: true,
  symbol: 'k',
  words: ['coil rate', 'coil stiffness', 'coil spring rate', 'stiff'],
  dimension: 'rate',
  sane: [100, 2e6],
  ways: [
    way({
      needs: { modulus: shearModulus, wire, diameter: coilMeanDiameter, turns: activeTurns },
      compute: ({ modulus, wire, diameter, turns }) => rateOfCoil(modulus, wire, diameter, turns),
      formula: 'modulus * wire^4 / (8 * diameter^3 * turns)',
      source: springTexts,
    }),
  ],
});
export const wahl = quantity({
  path: 'coil.wahl',
  typical: [inPractice('springs of index 5 to 12', 1.11, 1.32)],
  scope: 'axle',
  name: "Wahl's factor",
  symbol: 'K_W',
  words: ['wahl factor', 'wahl'],
  dimension: 'ratio',
  sane: [1, 3],
  ways: [
    way({
      needs: { index: coilIndex },
      compute: ({ index }) => wahlFactor(index),
      formula: '(4 * index - 1) / (4 * index - 4) + 0.615 / index',
      source: springTexts,
    }),
  ],
});
export const bergstraesser = quantity({
  path: 'coil.bergstraesser',
  typical: [inPractice('springs of index 5 to 12', 1.1, 1.31)],
  scope: 'axle',
  name: "Bergstraesser's factor",
  label: 'Bergstraesser factor',
  symbol: 'K_B',
  words: ['bergstraesser factor', 'bergstrasser factor'],
  dimension: 'ratio',
  sane: [1, 3],
  ways: [
    way({
      needs: { index: coilIndex },
      compute: ({ index }) => bergstraesserFactor(index),
      formula: '(4 * index + 2) / (4 * index - 3)',
      source: 'Shigley, Mechanical Engineering Design, ch. 10, from memory',
    }),
  ],
});
/** kg/m^3, of spring steel. */
const steel = 7850;
export const coilMass = quantity({
  path: 'coil.mass',
  scope: 'axle',
  name: 'weight of the active coils',
  label: 'active coil weight',
  symbol: 'm_a',
  words: ['coil weight', 'active coil weight'],
  dimension: 'mass',
  sane: [0.001, 30],
  ways: [
    way({
      needs: { wire, diameter: coilMeanDiameter, turns: activeTurns },
      compute: ({ wire, diameter, turns }) => activeMass(wire, diameter, turns, steel),
      source: 'volume of the wire, steel of 7850 kg/m^3',
    }),
  ],
});
export const surge = quantity({
  path: 'coil.surge',
  typical: [inPractice('suspension springs', 40, 150)],
  scope: 'axle',
  name: 'surge frequency of the coil',
  label: 'surge frequency',
  symbol: 'f_s',
  words: ['surge frequency', 'coil surge', 'surge'],
  dimension: 'frequency',
  sane: [5, 5000],
  ways: [
    way({
      needs: { rate: coilRate, mass: coilMass },
      compute: ({ rate, mass }) => surgeFrequency(rate, mass),
      formula: 'sqrt(rate / mass) / 2',
      source: 'a rod held at both ends; EN 13906-1 prints the same within 0.05 %, from memory',
    }),
  ],
});
export const coilSolid = quantity({
  path: 'coil.solid',
  scope: 'axle',
  name: 'length with all coils touching',
  label: 'solid length',
  symbol: 'L_c',
  words: ['solid length', 'solid height', 'coil bind length', 'block length'],
  dimension: 'length',
  sane: [0.002, 0.6],
  measure: 'Press it until its coils touch, or count all coils times the wire.',
  ways: [
    way({
      needs: { wire, turns: activeTurns, dead: deadTurns },
      compute: ({ wire, turns, dead }) => solidLength(wire, turns, dead),
      formula: 'wire * (turns + dead)',
      source: `${springTexts}, ground ends`,
    }),
  ],
});
export const travelToBind = quantity({
  path: 'spring.travelToBind',
  scope: 'axle',
  name: 'spring travel until it binds',
  label: 'travel to bind',
  symbol: 's_b',
  words: ['coil bind', 'travel until bind', 'bind'],
  dimension: 'length',
  sane: [0.001, 0.6],
  ways: [
    way({ needs: { travel: springTravel }, compute: ({ travel }) => travel, formula: 'travel', source: exact }),
    way({
      needs: { length: springFreeLength, solid: coilSolid },
      compute: ({ length, solid }) =>
        length > solid
          ? length - solid
          : refuse('The spring is no longer than its coils touching each other.', 'spring.length', 'coil.wire', 'coil.turns'),
      formula: 'length - solid',
      source: 'free length less the length with all coils touching',
    }),
  ],
});
