/** The springs: what a coil's dimensions make of it, and the one force law that everything else reads. */
import { figure, firstOf, maybe, refine, refuse, structure } from '../catalog.js';
import * as told from '../inputs/springs.js';
import {
  activeMass,
  bergstraesserFactor,
  coilRate as rateOfCoil,
  solidLength,
  springIndex,
  surgeFrequency,
  wahlFactor,
} from '../springs/coil.js';
import { type ForceLaw, forceAt, lawOfForces, lawOfRates, linearLaw, withBeside, withSeries } from '../springs/law.js';
import { evenRatio, type MotionRatio, ratioOfTable, withLever } from '../springs/motionRatio.js';
import { leverRatio } from './wheels.js';

const springTexts = 'Bhandari, Design of Machine Elements, ch. 10';
const exact = 'by definition';

export const coilOfOuter = figure({
  path: 'coil.ofOuter',
  scope: 'axle',
  name: 'mean coil diameter from the outside',
  label: 'mean dia. by outside',
  symbol: 'D',
  dimension: 'length',
  needs: { outer: told.coilOuterDiameter, wire: told.wire },
  compute: ({ outer, wire }) => (outer > 2 * wire ? outer - wire : refuse('The coil is no wider than two wires.')),
  formula: 'outer - wire',
  source: exact,
});
/** As told, or from the outside. */
export const meanDiameter = firstOf(told.coilMeanDiameter, coilOfOuter);
export const coilIndex = figure({
  path: 'coil.index',
  scope: 'axle',
  name: 'spring index, coil over wire',
  label: 'spring index',
  symbol: 'C',
  words: ['spring index', 'coil index'],
  dimension: 'ratio',
  typical: { range: [5, 12], of: 'cold-wound springs; common practice, no source' },
  needs: { wire: told.wire, diameter: meanDiameter },
  compute: ({ wire, diameter }) => (diameter > wire ? springIndex(wire, diameter) : refuse('The coil is narrower than its wire.')),
  formula: 'diameter / wire',
  source: springTexts,
});
export const coilRate = figure({
  path: 'coil.rate',
  scope: 'axle',
  name: 'spring rate from the coil',
  label: 'rate from the coil',
  main: true,
  symbol: 'k',
  words: ['coil rate', 'coil stiffness', 'coil spring rate', 'stiff'],
  dimension: 'rate',
  needs: { modulus: told.shearModulus, wire: told.wire, diameter: meanDiameter, turns: told.activeTurns },
  compute: ({ modulus, wire, diameter, turns }) => rateOfCoil(modulus, wire, diameter, turns),
  formula: 'modulus * wire^4 / (8 * diameter^3 * turns)',
  source: springTexts,
});
export const wahl = figure({
  path: 'coil.wahl',
  scope: 'axle',
  name: "Wahl's factor",
  symbol: 'K_W',
  words: ['wahl factor', 'wahl'],
  dimension: 'ratio',
  needs: { index: coilIndex },
  compute: ({ index }) => wahlFactor(index),
  formula: '(4 * index - 1) / (4 * index - 4) + 0.615 / index',
  source: springTexts,
});
export const bergstraesser = figure({
  path: 'coil.bergstraesser',
  scope: 'axle',
  name: "Bergstraesser's factor",
  label: 'Bergstraesser factor',
  symbol: 'K_B',
  words: ['bergstraesser factor', 'bergstrasser factor'],
  dimension: 'ratio',
  needs: { index: coilIndex },
  compute: ({ index }) => bergstraesserFactor(index),
  formula: '(4 * index + 2) / (4 * index - 3)',
  source: 'Shigley, Mechanical Engineering Design, ch. 10, from memory',
});
/** kg/m^3, of spring steel. */
const steel = 7850;
export const coilMass = figure({
  path: 'coil.mass',
  scope: 'axle',
  name: 'weight of the active coils',
  label: 'active coil weight',
  symbol: 'm_a',
  words: ['coil weight', 'active coil weight'],
  dimension: 'mass',
  needs: { wire: told.wire, diameter: meanDiameter, turns: told.activeTurns },
  compute: ({ wire, diameter, turns }) => activeMass(wire, diameter, turns, steel),
  source: 'volume of the wire, steel of 7850 kg/m^3',
});
export const surge = figure({
  path: 'coil.surge',
  scope: 'axle',
  name: 'surge frequency of the coil',
  label: 'surge frequency',
  symbol: 'f_s',
  words: ['surge frequency', 'coil surge', 'surge'],
  dimension: 'frequency',
  needs: { rate: coilRate, mass: coilMass },
  compute: ({ rate, mass }) => surgeFrequency(rate, mass),
  formula: 'sqrt(rate / mass) / 2',
  source: 'a rod held at both ends; EN 13906-1 prints the same within 0.05 %, from memory',
});
export const coilSolid = figure({
  path: 'coil.solid',
  scope: 'axle',
  name: 'length with all coils touching',
  label: 'solid length',
  symbol: 'L_c',
  words: ['solid length', 'solid height', 'coil bind length', 'block length'],
  dimension: 'length',
  needs: { wire: told.wire, turns: told.activeTurns, dead: told.deadTurns },
  compute: ({ wire, turns, dead }) => solidLength(wire, turns, dead),
  formula: 'wire * (turns + dead)',
  source: `${springTexts}, ground ends`,
});
export const travelOfCoil = figure({
  path: 'coil.travel',
  scope: 'axle',
  name: 'travel of the coil until it binds',
  label: 'coil travel to bind',
  symbol: 's_b',
  dimension: 'length',
  needs: { length: told.springFreeLength, solid: coilSolid },
  compute: ({ length, solid }) => (length > solid ? length - solid : refuse('The spring is no longer than its coils touching each other.')),
  formula: 'length - solid',
  source: exact,
});
export const travelToBind = figure({
  path: 'spring.travelToBind',
  scope: 'axle',
  name: 'spring travel until it binds',
  label: 'travel to bind',
  symbol: 's_b',
  words: ['coil bind', 'travel until bind', 'bind'],
  dimension: 'length',
  needs: { travel: firstOf(told.springTravel, travelOfCoil) },
  compute: ({ travel }) => travel,
  formula: 'travel',
  source: exact,
});

export const lawFromRate = structure({
  path: 'spring.lawFromRate',
  scope: 'axle',
  name: 'spring by its rate',
  needs: { rate: told.springRate },
  compute: ({ rate }): ForceLaw => linearLaw(rate),
  source: "Hooke's law",
});
export const lawFromRates = structure({
  path: 'spring.lawFromRates',
  scope: 'axle',
  name: 'spring by its rates',
  needs: { rates: told.springRates },
  compute: ({ rates }) => lawOfRates(rates),
  source: 'force is the integral of the rate',
});
export const lawFromForces = structure({
  path: 'spring.lawFromForces',
  scope: 'axle',
  name: 'spring by its forces',
  needs: { forces: told.springForces },
  compute: ({ forces }) => lawOfForces(forces),
  source: exact,
});
export const lawFromCoil = structure({
  path: 'spring.lawFromCoil',
  scope: 'axle',
  name: 'spring by its coil',
  needs: { rate: coilRate },
  compute: ({ rate }): ForceLaw => linearLaw(rate),
  source: "Hooke's law",
});
export const lawOfCorner = structure({
  path: 'spring.lawOfCorner',
  scope: 'corner',
  name: 'spring by its own rate',
  needs: { rate: told.cornerSpringRate },
  compute: ({ rate }): ForceLaw => linearLaw(rate),
  source: "Hooke's law",
});
export const coilLaw = structure({
  path: 'spring.coilLaw',
  scope: 'corner',
  name: 'force law of the main spring, with one beside it',
  needs: {
    // The corner's own wins; it stands last again for a car whose axle has no other.
    own: maybe(lawOfCorner),
    law: firstOf(lawFromRate, lawFromRates, lawFromForces, lawFromCoil, lawOfCorner),
    beside: told.besideRate,
    gap: told.besideGap,
  },
  compute: ({ own, law, beside, gap }): ForceLaw => (beside > 0 ? withBeside(own ?? law, beside, gap) : (own ?? law)),
  source: 'springs side by side: forces add',
});
export const helperClosing = figure({
  path: 'helper.closing',
  scope: 'axle',
  name: 'force that closes the helper',
  label: 'helper closes at',
  symbol: 'F_h',
  dimension: 'force',
  needs: { rate: told.helperRate, travel: told.helperTravel },
  compute: ({ rate, travel }) => rate * travel,
  formula: 'rate * travel',
  source: "Hooke's law",
});
export const springLaw = structure({
  path: 'spring.law',
  scope: 'corner',
  name: 'force law of the spring, with its helper',
  needs: { law: coilLaw, helper: maybe(told.helperRate), closing: maybe(firstOf(told.helperForce, helperClosing)) },
  compute: ({ law, helper, closing }) => {
    if (helper === undefined) return law;
    return closing === undefined
      ? refuse(
          'A helper spring is fitted, and where it closes is not known: tell its travel or the force that closes it.',
          'helper.travel',
          'helper.force',
        )
      : withSeries(law, helper, closing);
  },
  source: 'springs in series: travels add until the helper is closed',
});
export const isolatorFitted = figure({
  path: 'isolator.fitted',
  scope: 'axle',
  name: 'stiffness of the isolator that is fitted at the spring',
  label: 'isolator stiffness',
  symbol: 'k_c',
  dimension: 'rate',
  needs: { thickness: told.isolatorThickness, rate: told.isolatorRate },
  compute: ({ thickness, rate }) => (thickness > 0 ? rate : refuse('No isolator is fitted at the spring.', 'isolator.thickness')),
  source: exact,
});
export const perchIsolatorFitted = figure({
  path: 'perchIsolator.fitted',
  scope: 'axle',
  name: 'stiffness of the isolator that is fitted at the perch',
  label: 'perch isolator rate',
  symbol: 'k_p',
  dimension: 'rate',
  needs: { thickness: told.perchIsolatorThickness, rate: told.perchIsolatorRate },
  compute: ({ thickness, rate }) => (thickness > 0 ? rate : refuse('No isolator is fitted at the perch.', 'perchIsolator.thickness')),
  source: exact,
});
export const springStack = structure({
  path: 'spring.stack',
  scope: 'corner',
  name: 'force law of the spring with its isolators',
  needs: { law: springLaw, isolator: maybe(isolatorFitted), perchIsolator: maybe(perchIsolatorFitted) },
  compute: ({ law, isolator, perchIsolator }): ForceLaw => {
    const padded = isolator === undefined ? law : withSeries(law, isolator);
    return perchIsolator === undefined ? padded : withSeries(padded, perchIsolator);
  },
  source: 'springs in series: travels add',
});
export const bindForce = figure({
  path: 'spring.bindForce',
  scope: 'corner',
  name: 'spring force when it binds',
  label: 'force at bind',
  symbol: 'F_b',
  words: ['bind force', 'force at bind'],
  dimension: 'force',
  needs: { law: coilLaw, travel: travelToBind },
  compute: ({ law, travel }) => forceAt(law, travel),
  source: 'the force law at its last travel',
});

export const ratioTabled = structure({
  path: 'spring.ratioTabled',
  scope: 'axle',
  name: 'motion ratio by its table',
  needs: { table: told.springRatioTable },
  compute: ({ table }) => ratioOfTable(table),
  source: exact,
});
export const ratioEven = structure({
  path: 'spring.ratioEven',
  scope: 'axle',
  name: 'motion ratio that changes evenly',
  needs: { ratio: told.springRatio, rise: refine(told.springRatioRise, 0, 'a motion ratio that changes') },
  compute: ({ ratio, rise }): MotionRatio => evenRatio(ratio, rise),
  source: exact,
});
/** The ratio as it was measured, and with the wheels that are on: a wheel that stands further out has a longer lever. */
export const motionRatio = structure({
  path: 'spring.motion',
  scope: 'axle',
  name: 'motion ratio over the travel',
  needs: { measured: firstOf(ratioTabled, ratioEven), lever: maybe(leverRatio) },
  compute: ({ measured, lever }): MotionRatio => (lever === undefined || lever === 1 ? measured : withLever(measured, lever)),
  source: "front-view geometry: MR' = MR e/(e + change of offset)",
});
