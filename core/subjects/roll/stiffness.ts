/** Roll stiffness, tangent at ride height: of springs, bar and tires, of an axle and of the car; and the share of it in front. Each can be told as well. */

import { addWay } from '../../catalog/ways.js';
import {
  firstOf,
  front,
  given,
  inPractice,
  inverse,
  left,
  maybe,
  quantity,
  rear,
  refuse,
  right,
  structure,
  type Told,
  thisAxle,
  way,
} from '../../catalog.js';
import { barRate, barRollStiffness } from '../bars/stiffness.js';
import { barDiameter, barRateTold } from '../bars/told.js';
import { track } from '../mass/told.js';
import { tireRate } from '../ride/told.js';
import { springLever } from '../springs/springLever.js';
import { cornerWheelRate, stackRate } from '../springs/wheelRates.js';
import { beamAxle, springBase } from '../suspension/told.js';

/** N m/rad, of an axle: none, as a soft car with both bars off nearly has, to a stiff race car. */
const saneAxle = [0, 5e5] as const;
const saneCar = [0, 1e6] as const;
const toldStiffness: Told = { usually: 'spec', measured: { relative: 0.05 }, spec: { relative: 0.1 } };
const toldShare: Told = { usually: 'spec', measured: { absolute: 0.02 }, spec: { absolute: 0.04 } };
const definition = 'by definition';
const bothAxles = 'both axles under one body';
const nothing = refuse('There is no roll stiffness at either end, so that there is no share of it.', 'front', 'rear');

const likeRates = 'both sides solved with their sum fixed; with like rates k t^2/2';
export const springRollStiffness = quantity({
  path: 'roll.springs',
  typical: [inPractice('street cars', 12_000, 40_000), inPractice('autocross and track cars', 25_000, 90_000)],
  scope: 'axle',
  name: 'roll stiffness of the springs',
  label: 'spring roll stiffness',
  symbol: 'K_s',
  words: ['spring roll stiffness', 'roll stiffness of the spring'],
  dimension: 'rollStiffness',
  sane: saneAxle,
  told: toldStiffness,
  ways: [
    way({
      needs: { left: left(cornerWheelRate), right: right(cornerWheelRate), base: springLever },
      compute: ({ left, right, base }) => (base ** 2 * left * right) / (left + right),
      formula: 'base^2 * left * right / (left + right)',
      source: likeRates,
    }),
    way({
      needs: { beam: beamAxle, left: left(stackRate), right: right(stackRate), base: springBase },
      compute: ({ left, right, base }) => (base ** 2 * left * right) / (left + right),
      source: `${likeRates}; the springs stand upright on the axle`,
      basis: 'springs upright on the axle',
    }),
  ],
});
/** Known where nothing is told of a bar, so that a plain sum leaves it out and says so; a bar that is told is never left out. */
export const untoldBar = structure({
  path: 'bar.untold',
  scope: 'axle',
  name: 'an axle of whose bar nothing is told',
  needs: { diameter: maybe(given(barDiameter)), rate: maybe(given(barRateTold)), atEnds: maybe(given(barRate)) },
  compute: (told) => (Object.values(told).some((one) => one !== undefined) ? refuse('A bar is told.', 'bar.diameter') : told),
  source: definition,
});
export const suspensionRollStiffness = quantity({
  path: 'roll.suspension',
  scope: 'axle',
  name: 'roll stiffness, springs and bar',
  label: 'roll stiffness',
  main: true,
  symbol: 'K_phi',
  words: ['roll stiffness', 'suspension roll stiffness', 'roll rate', 'axle roll stiffness'],
  dimension: 'rollStiffness',
  sane: saneAxle,
  told: toldStiffness,
  typical: [inPractice('street cars', 15_000, 50_000), inPractice('autocross and track cars', 35_000, 120_000)],
  ways: [
    way({
      needs: { springs: springRollStiffness, bar: barRollStiffness },
      compute: ({ springs, bar }) => springs + bar,
      formula: 'springs + bar',
      source: 'side by side; the tires come in series with the whole',
    }),
    way({
      needs: { springs: springRollStiffness, untold: untoldBar },
      compute: ({ springs }) => springs,
      source: 'no bar in it, since none is told',
      basis: 'springs alone',
    }),
  ],
});
export const tireRollStiffness = quantity({
  path: 'roll.tires',
  typical: [inPractice('car tires', 140_000, 360_000)],
  scope: 'axle',
  name: 'roll stiffness of the tires',
  label: 'tire roll stiffness',
  symbol: 'K_t',
  words: ['tire roll stiffness'],
  dimension: 'rollStiffness',
  sane: [0, 3e6],
  told: toldStiffness,
  ways: [
    way({
      needs: { rate: tireRate, track },
      compute: ({ rate, track }) => (rate * track ** 2) / 2,
      formula: 'rate * track^2 / 2',
      source: 'two springs on the track',
    }),
  ],
});
export const axleRollStiffness = quantity({
  path: 'roll.axle',
  typical: [inPractice('road cars', 9000, 80_000)],
  scope: 'axle',
  name: 'roll stiffness with tires',
  label: 'roll, with tires',
  symbol: 'K_j',
  words: ['roll stiffness with tire', 'total axle roll stiffness'],
  dimension: 'rollStiffness',
  sane: saneAxle,
  told: toldStiffness,
  ways: [
    way({
      needs: { suspension: suspensionRollStiffness, tires: tireRollStiffness },
      compute: ({ suspension, tires }) => (suspension * tires) / (suspension + tires),
      formula: 'suspension * tires / (suspension + tires)',
      source:
        'tires in series with springs and bar together, never wheel by wheel; exact with roll center and unsprung weight on the ground',
      basis: 'tires in line with springs and bar',
    }),
  ],
});
const bothSuspensions = { front: front(suspensionRollStiffness), rear: rear(suspensionRollStiffness) } as const;
export const rollStiffnessShare = quantity({
  path: 'roll.frontShare',
  percent: true,
  scope: 'car',
  name: 'front share of the roll stiffness, springs and bars',
  label: 'front roll share',
  main: true,
  symbol: 'lambda_K',
  words: [
    'front share of roll stiffness',
    'front roll stiffness share',
    'roll stiffness share',
    'front roll share',
    'roll stiffness distribution',
  ],
  dimension: 'ratio',
  sane: [0, 1],
  told: toldShare,
  typical: [inPractice('front-drive cars', 0.4, 0.62), inPractice('rear-drive cars', 0.52, 0.75)],
  ways: [
    way({
      needs: bothSuspensions,
      compute: ({ front, rear }) => (front + rear > 0 ? front / (front + rear) : nothing),
      formula: 'front / (front + rear)',
      source: 'by definition; not the share of load transfer, which roll centers and unsprung weight change',
    }),
  ],
});
const shareLeaves = (part: number, share: number): number | ReturnType<typeof refuse> =>
  share > 0 ? part / share : refuse('An axle that has no share of the roll stiffness says nothing of the whole.', 'share');
export const carRollStiffness = quantity({
  path: 'roll.car',
  scope: 'car',
  name: 'roll stiffness of the car, springs and bars',
  label: 'roll stiffness',
  symbol: 'K',
  words: ['roll stiffness', 'car roll stiffness', 'total roll stiffness'],
  dimension: 'rollStiffness',
  sane: saneCar,
  told: toldStiffness,
  typical: { range: [25_000, 180_000], of: 'road cars; common practice, no source' },
  ways: [
    way({
      needs: bothSuspensions,
      compute: ({ front, rear }) => front + rear,
      formula: 'front + rear',
      source: bothAxles,
    }),
    way({
      needs: { front: bothSuspensions.front, share: given(rollStiffnessShare) },
      compute: ({ front, share }) => shareLeaves(front, share),
      formula: 'front / share',
      source: definition,
      basis: 'from one axle and the front share told',
    }),
    way({
      needs: { rear: bothSuspensions.rear, share: given(rollStiffnessShare) },
      compute: ({ rear, share }) => shareLeaves(rear, 1 - share),
      formula: 'rear / (1 - share)',
      source: definition,
      basis: 'from one axle and the front share told',
    }),
  ],
});
inverse(suspensionRollStiffness, {
  needs: { whole: given(carRollStiffness), share: given(rollStiffnessShare), axle: thisAxle },
  compute: ({ whole, share, axle }) => whole * (axle === 'front' ? share : 1 - share),
  source: definition,
  basis: 'of the whole and the front share told',
});
// No inverse: each axle would need what is given of the other, which may follow from what is given of this one.
addWay(
  suspensionRollStiffness,
  way({
    needs: { whole: given(carRollStiffness), other: firstOf(given(bothSuspensions.front), given(bothSuspensions.rear)) },
    compute: ({ whole, other }) =>
      whole >= other ? whole - other : refuse('One axle has more roll stiffness than the whole car.', 'whole', 'other'),
    formula: 'whole - other',
    source: 'what the other axle leaves of the whole',
    basis: 'of the whole and the other axle told',
  }),
);
const bothWithTires = { front: front(axleRollStiffness), rear: rear(axleRollStiffness) } as const;
export const carRollStiffnessWithTires = quantity({
  path: 'roll.carWithTires',
  typical: [inPractice('road cars', 22_000, 150_000)],
  scope: 'car',
  name: 'roll stiffness of the car with tires',
  label: 'roll, with tires',
  symbol: 'K',
  words: ['car roll stiffness with tire', 'roll stiffness with tire'],
  dimension: 'rollStiffness',
  sane: saneCar,
  told: toldStiffness,
  ways: [way({ needs: bothWithTires, compute: ({ front, rear }) => front + rear, formula: 'front + rear', source: bothAxles })],
});
export const rollStiffnessShareWithTires = quantity({
  path: 'roll.frontShareWithTires',
  percent: true,
  typical: [inPractice('road cars', 0.45, 0.72)],
  scope: 'car',
  name: 'front share of the roll stiffness with tires',
  label: 'front share, tires in',
  symbol: 'lambda_K',
  words: ['front share of roll stiffness with tire', 'roll stiffness share with tire'],
  dimension: 'ratio',
  sane: [0, 1],
  told: toldShare,
  ways: [
    way({
      needs: bothWithTires,
      compute: ({ front, rear }) => (front + rear > 0 ? front / (front + rear) : nothing),
      formula: 'front / (front + rear)',
      source: definition,
    }),
  ],
});
export const barShare = quantity({
  path: 'roll.barShare',
  percent: true,
  typical: [inPractice('front axles of road cars', 0.3, 0.65), inPractice('rear axles of road cars', 0, 0.5)],
  scope: 'axle',
  name: "the bar's part of the axle's roll stiffness",
  label: "bar's part of roll",
  symbol: 'K_bar/K_phi',
  words: ['bar share', 'sway bar share', 'bar part of roll stiffness'],
  dimension: 'ratio',
  sane: [0, 1],
  told: toldShare,
  ways: [
    way({
      needs: { bar: barRollStiffness, suspension: suspensionRollStiffness },
      compute: ({ bar, suspension }) =>
        suspension > 0 ? bar / suspension : refuse('The axle has no roll stiffness, so that there is no part of it.', 'suspension'),
      formula: 'bar / suspension',
      source: definition,
    }),
  ],
});
