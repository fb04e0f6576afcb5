/** The anti-roll bars: round, solid or hollow, an arm at each end, a link to the suspension. A bar that is not told of may be there: 0 mm is none. */
import { choice, firstOf, ifTold, inPractice, left, maybe, quantity, refuse, right, type Told, thisAxle, way } from '../../catalog.js';
import { suspension } from '../layout/told.js';
import { track } from '../mass/told.js';
import { weighedTotal } from '../mass/weighed.js';
import { axleKind } from '../suspension/told.js';

const inch = 0.0254;
const degree = Math.PI / 180;
const poundPerInch = 175.12683524647636;
const calipered: Told = { usually: 'measured', measured: { absolute: 0.0001 }, spec: { absolute: 0.0002 } };
const taped: Told = { usually: 'measured', measured: { absolute: 0.003 }, spec: { absolute: 0.006 } };
const tension =
  'A bar under preload springs when a link comes off: car level on its wheels or both sides hanging, and torque the links as the maker says.';

export const barDiameter = quantity({
  path: 'bar.diameter',
  nature: 'piece',
  untold: 0,
  scope: 'axle',
  name: 'anti-roll bar, diameter',
  label: 'bar diameter',
  symbol: 'd',
  instead: 'bar',
  words: [
    'bar',
    'sway bar',
    'anti-roll bar',
    'antiroll bar',
    'anti roll bar',
    'arb',
    'roll bar',
    'stabilizer',
    'stabilizer bar',
    'bar diameter',
  ],
  dimension: 'length',
  sane: [0, 0.06],
  // Also in countries of inches bars are sold by the millimetre.
  step: { inch: 0.001, metric: 0.001 },
  trade: 'mm',
  told: calipered,
  measure: 'Caliper on the straight part, paint off: 1 % here is 4 % of its stiffness. 0: no bar.',
  caution: tension,
});
export const barRateTold = quantity({
  path: 'bar.rate',
  nature: 'piece',
  typical: [inPractice('road cars to autocross', 10_000, 150_000)],
  scope: 'axle',
  name: 'anti-roll bar, rate as told',
  label: 'bar rate as told',
  symbol: 'K_b',
  instead: 'bar',
  words: ['bar rate', 'sway bar rate', 'anti-roll bar rate', 'bar', 'sway bar', 'arb', 'arb rate', 'bar stiffness'],
  dimension: 'rate',
  sane: [7000, 1e6],
  step: { inch: 10 * poundPerInch, metric: 1000 },
  told: { usually: 'spec', measured: { relative: 0.05 }, spec: { relative: 0.15 } },
  measure: 'Hold one end, move the other: force over movement, at the hole in use, links left out.',
  caution: tension,
});
/** What nobody has said anything of: most cars have a bar at the front, many at the rear. */
export const barUsual = quantity({
  path: 'bar.usual',
  typical: [inPractice('front bars of road cars', 5000, 40_000), inPractice('rear bars of road cars', 1000, 20_000)],
  scope: 'axle',
  name: 'anti-roll bar, not told',
  label: 'bar, not told',
  symbol: 'K_bar',
  instead: 'bar',
  words: ['usual bar', 'bar not told'],
  dimension: 'rollStiffness',
  sane: [0, 2e5],
  told: { usually: 'spec', measured: { relative: 0.15 }, spec: { relative: 0.3 } },
  measure: 'Look whether there is one. Then tell its diameter, or 0 where there is none.',
  ways: [
    way({
      needs: { mass: weighedTotal, track, axle: thisAxle },
      compute: ({ mass, track, axle }) => (axle === 'front' ? 12 : 3.4) * mass * track ** 2,
      ...{ sort: 'estimate', within: { relative: 1.15 } },
      source: 'by the size of the car; common practice, no source',
    }),
    way({
      needs: { axle: thisAxle },
      compute: ({ axle }) => (axle === 'front' ? 29_000 : 8200),
      ...{ sort: 'estimate', within: { relative: 1.3 } },
      source: 'of a car of 1100 kg; common practice, no source',
    }),
  ],
});
export const barWall = quantity({
  path: 'bar.wall',
  scope: 'axle',
  name: 'anti-roll bar, wall of a hollow one',
  label: 'bar wall',
  symbol: 's',
  instead: 'bar bore',
  words: ['bar wall', 'wall', 'wall thickness', 'bar wall thickness', 'sway bar wall'],
  dimension: 'length',
  sane: [0.0005, 0.03],
  step: { inch: inch / 64, metric: 0.0005 },
  told: { usually: 'spec', measured: { absolute: 0.0002 }, spec: { absolute: 0.0003 } },
  measure: 'At an open end, or half of outside less bore. Half the diameter is a solid bar.',
});
/** m: what rounding and measuring may make of a wall that is half the diameter. */
const wallSlack = 0.0005;
export const barBore = quantity({
  path: 'bar.bore',
  scope: 'axle',
  name: 'anti-roll bar, bore',
  symbol: 'd_i',
  instead: 'bar bore',
  words: ['bar bore', 'sway bar bore', 'bar inside diameter', 'hollow', 'bore'],
  dimension: 'length',
  sane: [0, 0.055],
  step: { inch: inch / 16, metric: 0.001 },
  told: { usually: 'spec', measured: { absolute: 0.0003 }, spec: { absolute: 0.0005 } },
  measure: 'Diameter of the hole through a hollow bar: outside less two walls. 0: solid.',
  estimate: {
    needs: { diameter: barDiameter, wall: maybe(barWall) },
    compute: ({ diameter, wall }) =>
      wall !== undefined && 2 * wall > diameter + wallSlack
        ? refuse('The wall of the bar is more than half its diameter.', 'bar.wall', 'bar.diameter')
        : Math.max(0, diameter - 2 * (wall ?? diameter / 2)),
    within: { absolute: 0 },
    source: 'outside less two walls; solid unless told',
  },
});
export const barLength = quantity({
  path: 'bar.length',
  scope: 'axle',
  name: 'anti-roll bar, length that twists',
  label: 'bar length',
  symbol: 'B',
  words: ['bar length', 'sway bar length', 'bar twisting length', 'torsion length', 'bar width'],
  dimension: 'length',
  sane: [0.2, 1.6],
  step: { inch: inch, metric: 0.01 },
  told: taped,
  measure: 'Along the axis about which it twists, from one arm to the other; not along the bends.',
  estimate: { needs: { track }, compute: ({ track }) => 0.66 * track, within: { relative: 0.17 }, source: 'common practice, no source' },
});
export const barLever = quantity({
  path: 'bar.lever',
  scope: 'corner',
  name: 'anti-roll bar, lever of the hole in use',
  label: 'bar hole, lever',
  symbol: 'l',
  words: ['bar hole', 'hole', 'bar lever', 'sway bar hole', 'endlink', 'end link', 'endlink hole', 'bar arm', 'sway bar arm', 'lever'],
  dimension: 'length',
  sane: [0.05, 0.5],
  step: { inch: inch / 4, metric: 0.01 },
  told: { usually: 'measured', measured: { absolute: 0.002 }, spec: { absolute: 0.003 } },
  counted: 'from the axis of the bar square to the line of the link, 8.5 in',
  measure: 'From the axis about which the bar twists square to the line of the link, at the hole in use. A shorter one is stiffer.',
  caution: tension,
  estimate: { needs: {}, compute: () => 0.245, within: { relative: 0.28 }, error: 'common', source: 'common practice, no source' },
});
/** Of a hole that is not told, but is on the other side: the same. */
export const leverHere = quantity({
  path: 'bar.leverHere',
  scope: 'corner',
  name: 'lever of the bar at this end',
  label: 'bar lever here',
  symbol: 'l',
  dimension: 'length',
  ways: [
    way({ needs: { lever: ifTold(barLever) }, compute: ({ lever }) => lever, formula: 'lever', source: 'as told' }),
    way({
      needs: { other: firstOf(ifTold(left(barLever)), ifTold(right(barLever))) },
      compute: ({ other }) => other,
      formula: 'other',
      source: 'as told of the other side',
    }),
    way({ needs: { lever: barLever }, compute: ({ lever }) => lever, formula: 'lever', source: 'as bars usually have it' }),
  ],
});
export const barArm = quantity({
  path: 'bar.arm',
  scope: 'corner',
  name: 'anti-roll bar, length of the arm itself',
  label: 'bar arm length',
  symbol: 'A',
  words: ['bar arm length', 'arm length', 'true arm length'],
  dimension: 'length',
  sane: [0.05, 0.6],
  told: taped,
  measure:
    'Along the arm from the twisting part to the hole: what bends. Told only where it runs at a slant, and is longer than the lever.',
  estimate: {
    needs: { lever: leverHere },
    compute: ({ lever }) => lever,
    within: { relative: 0.1 },
    source: 'the lever, arms square to the bar; common practice, no source',
  },
});
/** End over wheel. */
const usualRatio = { strut: 0.9, wishbone: 0.62, multilink: 0.62, 'trailing arm': 0.7, 'twist beam': 0.85, 'live axle': 0.95 } as const;
export const barRatio = quantity({
  path: 'bar.ratio',
  typical: [inPractice('link at a strut or a beam', 0.85, 1), inPractice('link at an arm', 0.45, 0.8)],
  scope: 'axle',
  name: 'motion ratio of the anti-roll bar, end over wheel',
  label: 'bar motion ratio',
  symbol: 'MR_b',
  words: ['bar motion ratio', 'bar ratio', 'sway bar motion ratio', 'sway bar ratio', 'arb motion ratio', 'endlink ratio'],
  dimension: 'ratio',
  sane: [0.15, 1.3],
  told: { usually: 'measured', measured: { relative: 0.02 }, spec: { relative: 0.05 } },
  measure:
    'How far the end of the bar moves for 25 mm (1 in) of travel of its wheel, the other wheel at rest; on a beam, of the axle where the link stands.',
  ways: [
    way({
      needs: { suspension },
      compute: ({ suspension }) => usualRatio[suspension],
      ...{ sort: 'estimate', within: { relative: 0.25 }, source: 'by the kind of suspension; common practice, no source' },
    }),
    way({
      needs: { kind: axleKind },
      compute: ({ kind }) => (kind === 'beam' ? usualRatio['live axle'] : 0.76),
      ...{ sort: 'estimate', within: { relative: 0.38 }, source: 'by the kind of axle; common practice, no source' },
    }),
  ],
});
export const barLinkSpacing = quantity({
  path: 'bar.linkSpacing',
  scope: 'axle',
  name: 'distance between the links of the bar on a beam axle',
  label: 'bar link spacing',
  symbol: 'd_l',
  words: ['link spacing', 'endlink spacing', 'bar link spacing'],
  dimension: 'length',
  sane: [0.2, 1.7],
  told: taped,
  measure: 'From link to link, where they act on the beam.',
  estimate: { needs: { track }, compute: ({ track }) => 0.72 * track, within: { relative: 0.22 }, source: 'common practice, no source' },
});
export const barLinkRate = quantity({
  path: 'bar.linkRate',
  typical: [inPractice('links with rubber ends', 300_000, 3_000_000), inPractice('links with ball joints', 2_000_000, 20_000_000)],
  scope: 'axle',
  name: 'stiffness of one link of the bar with its bushings',
  label: 'bar link stiffness',
  symbol: 'k_l',
  words: ['link rate', 'endlink rate', 'link stiffness', 'endlink stiffness', 'bar bushing rate', 'bar bushing'],
  dimension: 'rate',
  sane: [1e5, 1e12],
  told: { usually: 'spec', measured: { relative: 0.2 }, spec: { relative: 0.4 } },
  measure: 'Press the link on a scale; rubber 1 to 4 kN/mm, ball joints 20 kN/mm and more. The bushings of the bar itself count too.',
  estimate: { needs: {}, compute: () => 3e6, within: { relative: 0.6 }, source: 'rubber; common practice, no source' },
});
export const barShearModulus = quantity({
  path: 'bar.shearModulus',
  scope: 'axle',
  name: 'shear modulus of the bar',
  label: 'bar shear modulus',
  symbol: 'G',
  alike: true,
  words: ['bar shear modulus', 'bar modulus'],
  dimension: 'stress',
  sane: [25e9, 90e9],
  told: { usually: 'spec', measured: { relative: 0.01 }, spec: { relative: 0.02 } },
  measure: 'Of its steel, from a data sheet.',
  estimate: {
    needs: {},
    compute: () => 79.3e9,
    within: { relative: 0.03 },
    error: 'common',
    constant: true,
    source: 'spring steel; common practice, no source',
  },
});
export const barYoungsModulus = quantity({
  path: 'bar.youngsModulus',
  scope: 'axle',
  name: "Young's modulus of the arms of the bar",
  label: 'bar Young modulus',
  symbol: 'E',
  alike: true,
  words: ['bar youngs modulus', "bar young's modulus", 'arm modulus'],
  dimension: 'stress',
  sane: [60e9, 1e15],
  told: { usually: 'spec', measured: { relative: 0.01 }, spec: { relative: 0.02 } },
  measure: 'Of the steel of its arms.',
  estimate: {
    needs: {},
    compute: () => 206.8e9,
    within: { relative: 0.03 },
    error: 'common',
    constant: true,
    source: 'steel; common practice, no source',
  },
});
export const linkLonger = quantity({
  path: 'bar.linkLonger',
  scope: 'axle',
  name: 'left link of the bar longer than it needs to be',
  label: 'left link longer by',
  symbol: 'e_l',
  words: [
    'left link longer',
    'link mismatch',
    'endlink mismatch',
    'left endlink longer',
    'link difference',
    'preload length',
    'bar preload',
  ],
  dimension: 'length',
  sane: [-0.06, 0.06],
  step: { inch: inch / 16, metric: 0.001 },
  told: { usually: 'measured', measured: { absolute: 0.0005 }, spec: { absolute: 0.001 } },
  measure:
    'Car on level ground as it runs, right link fitted: how much the left link would have to be shortened for its bolt to slip in by hand. Too short is negative.',
  caution: tension,
  estimate: {
    needs: {},
    compute: () => 0,
    within: { absolute: 0.001 },
    source: 'links set neutral unless told; common practice, no source',
  },
});
export const barEnd = choice({
  path: 'bar.end',
  scope: 'axle',
  name: 'where the end of the bar lies against the suspension arm',
  label: 'bar end',
  words: ['bar end', 'sway bar end', 'end of the bar'],
  options: ['above', 'below'],
  optionWords: { above: ['over', 'link down'], below: ['under', 'link up'] },
  measure: 'Above: the link goes down from the bar to the arm. It decides which way a longer link pushes the wheel.',
  estimate: { needs: {}, compute: () => 'above' as const, source: 'common practice, no source' },
});
export const linkAngle = quantity({
  path: 'bar.linkAngle',
  typical: [inPractice('links as they are fitted', -0.3491, 0.3491)],
  scope: 'axle',
  name: 'angle of the link away from square to the bar arm',
  label: 'bar link angle',
  symbol: 'alpha_l',
  words: ['link angle', 'endlink angle'],
  dimension: 'angle',
  sane: [-60 * degree, 60 * degree],
  told: { usually: 'measured', measured: { absolute: 3 * degree }, spec: { absolute: 5 * degree } },
  measure: 'Between the link and the direction in which the end of the bar moves; 0 when they agree.',
  estimate: { needs: {}, compute: () => 0, within: { absolute: 10 * degree }, source: 'common practice, no source' },
});
