/** What a coil is wound of: wire, coils, and the steel. */
import { given, inPractice, inverse, quantity, refuse, type Told } from '../../catalog.js';

const calipered: Told = { usually: 'measured', measured: { absolute: 0.00005 }, spec: { absolute: 0.0001 } };

export const wire = quantity({
  path: 'coil.wire',
  scope: 'axle',
  name: 'wire diameter',
  symbol: 'd',
  words: ['wire', 'wire diameter', 'wire thickness', 'coil wire'],
  dimension: 'length',
  sane: [0.0003, 0.03],
  told: calipered,
  measure: 'Caliper on bare wire, paint scraped off: 1 % here is 4 % of the rate.',
});
export const coilMeanDiameter = quantity({
  path: 'coil.diameter',
  scope: 'axle',
  name: 'mean coil diameter',
  symbol: 'D',
  instead: 'coil diameter',
  words: ['mean diameter', 'mean dia', 'coil diameter', 'mean coil diameter', 'coil dia'],
  dimension: 'length',
  sane: [0.003, 0.3],
  told: { usually: 'measured', measured: { absolute: 0.0005 }, spec: { absolute: 0.0005 } },
  measure: 'Outside diameter less one wire.',
});
export const coilOuterDiameter = quantity({
  path: 'coil.outer',
  scope: 'axle',
  name: 'outside coil diameter',
  symbol: 'D_o',
  instead: 'coil diameter',
  words: ['coil outside diameter', 'coil outer diameter', 'spring od', 'coil od', 'outer coil diameter'],
  dimension: 'length',
  sane: [0.003, 0.35],
  told: { usually: 'measured', measured: { absolute: 0.0005 }, spec: { absolute: 0.0005 } },
  measure: 'Caliper over the coils.',
});
inverse(coilMeanDiameter, {
  needs: { outer: given(coilOuterDiameter), wire },
  compute: ({ outer, wire }) =>
    outer > 2 * wire ? outer - wire : refuse('The coil is no wider than two wires.', 'coil.outer', 'coil.wire'),
  formula: 'outer - wire',
  source: 'by definition',
});
export const activeTurns = quantity({
  path: 'coil.turns',
  typical: [inPractice('suspension springs', 3, 12)],
  scope: 'axle',
  name: 'active coils',
  symbol: 'n',
  words: ['active turn', 'active coil', 'coil turn', 'turn', 'active winding'],
  dimension: 'ratio',
  sane: [1, 40],
  told: { usually: 'measured', measured: { absolute: 0.2 }, spec: { absolute: 0.1 } },
  measure: 'All coils less those that lie flat at the ends (about one at each squared end).',
});
export const deadTurns = quantity({
  path: 'coil.dead',
  typical: [inPractice('ground and unground ends', 1, 2)],
  scope: 'axle',
  name: 'dead coils at the ends',
  label: 'dead coils',
  symbol: 'n_e',
  words: ['dead coil', 'dead turn', 'end coil', 'inactive coil'],
  dimension: 'ratio',
  sane: [0, 4],
  told: { usually: 'measured', measured: { absolute: 0.2 }, spec: { absolute: 0.1 } },
  measure: 'Coils that lie flat on their neighbours: two for squared and ground ends.',
  estimate: { needs: {}, compute: () => 2, within: { absolute: 0.5 }, source: 'squared ends; common practice, no source' },
});
export const shearModulus = quantity({
  path: 'coil.modulus',
  scope: 'axle',
  name: 'shear modulus of the wire',
  label: 'shear modulus',
  symbol: 'G',
  alike: true,
  words: ['shear modulus', 'modulus', 'wire modulus'],
  dimension: 'stress',
  sane: [30e9, 100e9],
  told: { usually: 'spec', measured: { relative: 0.01 }, spec: { relative: 0.02 } },
  measure: 'Of the wire steel, from its data sheet; titanium wire is near 42 GPa.',
  estimate: {
    needs: {},
    compute: () => 79.3e9,
    within: { relative: 0.03 },
    error: 'common',
    constant: true,
    source: 'spring steel, 78.5 to 81.5 GPa; common practice, no source',
  },
});
