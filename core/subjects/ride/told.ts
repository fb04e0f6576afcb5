/** Tire stiffness, stops and the body: what the ride figures need besides springs and weights. */
import { inPractice, left, quantity, right, way } from '../../catalog.js';
import { tirePressure } from '../tires/pressureTold.js';
import { tireSize } from '../tires/told.js';
import { verticalRate } from '../tires/verticalRate.js';

const bySize = 'by size and pressure; Rhyne, Tire Science and Technology 33 (2005), from memory';
export const tireRate = quantity({
  path: 'tire.rate',
  typical: [inPractice('road and autocross tires', 150_000, 300_000)],
  scope: 'axle',
  name: 'vertical rate of the tire',
  label: 'tire rate',
  symbol: 'k_t',
  alike: true,
  words: ['tire rate', 'tire stiffness', 'tire spring rate', 'tire vertical rate'],
  dimension: 'rate',
  sane: [80000, 600000],
  step: { inch: 4378.17088, metric: 5000 },
  told: { usually: 'measured', measured: { relative: 0.05 }, spec: { relative: 0.1 } },
  measure: 'At its running pressure, add a known weight over one wheel and read how much closer the rim comes to the ground.',
  ways: [
    way({
      needs: { size: tireSize, left: left(tirePressure), right: right(tirePressure) },
      compute: ({ size, left, right }) => verticalRate(size, (left + right) / 2),
      ...{ sort: 'estimate', within: { relative: 0.12 }, error: 'common', source: bySize },
    }),
    way({
      needs: { size: tireSize },
      compute: ({ size }) => verticalRate(size, 220_000),
      ...{ sort: 'estimate', within: { relative: 0.17 }, error: 'common', source: `${bySize}; at 220 kPa` },
    }),
    way({
      needs: {},
      compute: () => 225_000,
      ...{ sort: 'estimate', within: { relative: 0.22 }, error: 'common', source: 'common practice, no source' },
    }),
  ],
});
export const damperRatio = quantity({
  path: 'damper.ratio',
  typical: [inPractice('struts and live axles', 0.8, 1), inPractice('wishbones and links', 0.5, 0.9)],
  scope: 'axle',
  name: 'motion ratio of the damper, damper over wheel',
  label: 'damper motion ratio',
  symbol: 'MR_d',
  words: ['damper motion ratio', 'damper ratio', 'shock motion ratio', 'shock ratio'],
  dimension: 'ratio',
  sane: [0.25, 1.3],
  told: { usually: 'measured', measured: { relative: 0.02 }, spec: { relative: 0.05 } },
  measure: 'Change of damper length for 25 mm (1 in) of wheel travel; told only where the damper is not inside the spring.',
});
export const chassisStiffness = quantity({
  path: 'chassis.stiffness',
  nature: 'car',
  typical: [inPractice('open road cars', 250_000, 800_000), inPractice('closed road cars', 600_000, 2_500_000)],
  scope: 'car',
  name: 'torsional stiffness of the body',
  label: 'chassis stiffness',
  symbol: 'K_c',
  words: [
    'chassis stiffness',
    'torsional stiffness',
    'body stiffness',
    'chassis torsion',
    'torsional rigidity',
    'chassis rigidity',
    'chassis rate',
    'chassis',
  ],
  dimension: 'rollStiffness',
  sane: [20000, 1e8],
  told: { usually: 'spec', measured: { relative: 0.1 }, spec: { relative: 0.2 } },
  measure: 'Torque between the axles over their twist. Not told, the body is taken as rigid.',
});

export const springLoad = quantity({
  path: 'springLoad',
  nature: 'car',
  scope: 'question',
  name: 'load on the spring',
  symbol: 'F',
  words: ['spring load', 'load on spring', 'load', 'force', 'spring force'],
  dimension: 'force',
  sane: [1, 60000],
  told: { usually: 'spec', measured: { absolute: 0 }, spec: { absolute: 0 } },
  measure: 'Asked about: the rate, compression or stress of the spring under this force, instead of what it carries at ride height.',
});
export const bump = quantity({
  path: 'bump',
  scope: 'question',
  name: 'wheel travel from ride height, bump positive',
  label: 'bump from ride height',
  symbol: 'u',
  words: ['bump', 'at bump', 'wheel travel', 'travel'],
  dimension: 'length',
  sane: [-0.2, 0.2],
  told: { usually: 'spec', measured: { absolute: 0 }, spec: { absolute: 0 } },
  measure: 'Asked about: rates and forces with the wheel this far up from ride height; droop is negative.',
});
