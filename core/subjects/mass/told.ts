/** What the car weighs, where, and what was in it. Weights are masses here: scales are read in kilograms or pounds. */
import { asMeasured, carry, choice, given, inPractice, maybe, quantity, refine, type Told, way } from '../../catalog.js';
import { drivenAxle } from '../gearing/told.js';
import { axleKind, enginePlace, suspension } from '../layout/told.js';
import { trackShift } from '../wheels/track.js';

const weighed: Told = { usually: 'measured', measured: { relative: 0.005 }, spec: { relative: 0.02 } };
/** What people type without a word of how they know it is from a sheet: options, fuel and the maker's rounding are in its doubt. */
const ofSheet: Told = { usually: 'spec', measured: { relative: 0.005 }, spec: { relative: 0.03 } };
const shareOfSheet: Told = { usually: 'spec', measured: { absolute: 0.005 }, spec: { absolute: 0.015 } };
const shared: Told = { usually: 'measured', measured: { absolute: 0.005 }, spec: { absolute: 0.015 } };
const taped: Told = { usually: 'spec', measured: { absolute: 0.005 }, spec: { absolute: 0.005 } };
const placed: Told = { usually: 'measured', measured: { absolute: 0.03 }, spec: { absolute: 0.03 } };
const guessed: Told = { usually: 'spec', measured: { relative: 0.03 }, spec: { relative: 0.1 } };

export const mass = quantity({
  path: 'mass',
  nature: 'car',
  scope: 'car',
  name: 'weight of the car',
  label: 'weight',
  symbol: 'W',
  extensive: true,
  state: true,
  words: ['weight', 'mass', 'car weight', 'total weight', 'whole weight', 'wt', 'weigh'],
  dimension: 'mass',
  sane: [300, 3500],
  told: ofSheet,
  measure: 'All four wheels on scales or on a weighbridge, as it runs; say whether the driver is in it and how much fuel.',
});
/** With the engine in front. */
const usualShare = { front: 0.61, rear: 0.53, both: 0.575 } as const;
export const frontShare = quantity({
  path: 'frontShare',
  percent: true,
  nature: 'car',
  typical: [
    inPractice('front-drive cars', 0.58, 0.66),
    inPractice('rear-drive cars, engine in front', 0.48, 0.57),
    inPractice('mid-engined cars', 0.38, 0.48),
  ],
  scope: 'car',
  name: 'front share of the weight',
  label: 'front share',
  symbol: 'w_f',
  state: true,
  words: [
    'front share',
    'front percent',
    'percent front',
    'front weight share',
    'front weight percent',
    'weight distribution',
    'weight split',
  ],
  dimension: 'ratio',
  sane: [0.3, 0.72],
  told: shareOfSheet,
  measure: 'Weigh each axle on level ground; the front weight over the sum of both.',
  ways: [
    way({
      needs: { driven: drivenAxle, engine: enginePlace },
      compute: ({ driven, engine }) => (engine === 'front' ? usualShare[driven] : engine === 'mid' ? 0.43 : 0.39),
      ...{
        sort: 'estimate',
        within: { absolute: 0.05 },
        source: 'by the driven axle and the place of the engine; common practice, no source',
      },
    }),
    way({
      needs: { engine: enginePlace },
      compute: ({ engine }) => (engine === 'front' ? 0.57 : engine === 'mid' ? 0.43 : 0.39),
      ...{ sort: 'estimate', within: { absolute: 0.08 }, source: 'by the place of the engine; common practice, no source' },
    }),
    way({
      needs: { driven: drivenAxle },
      compute: ({ driven }) => (driven === 'rear' ? 0.505 : usualShare[driven]),
      ...{ sort: 'estimate', within: { absolute: 0.09 }, source: 'by the driven axle; common practice, no source' },
    }),
    way({ needs: {}, compute: () => 0.54, ...{ sort: 'estimate', within: { absolute: 0.12 }, source: 'common practice, no source' } }),
  ],
});
export const leftShare = quantity({
  path: 'leftShare',
  percent: true,
  nature: 'car',
  typical: [inPractice('cars with the driver in', 0.48, 0.53)],
  scope: 'car',
  name: 'left share of the weight',
  label: 'left share',
  symbol: 'w_l',
  state: true,
  words: ['left share', 'left percent', 'percent left', 'left weight share', 'left weight percent'],
  dimension: 'ratio',
  sane: [0.4, 0.6],
  told: shared,
  measure: 'Four scales on level ground; both left wheels over the sum of all four.',
  estimate: { needs: {}, compute: () => 0.5, within: { absolute: 0.02 }, source: 'common practice, no source' },
});
export const axleWeight = quantity({
  path: 'axleWeight',
  nature: 'car',
  scope: 'axle',
  name: 'axle weight',
  symbol: 'W_j',
  extensive: true,
  state: true,
  words: ['weight', 'axle weight', 'axle load', 'axle mass'],
  dimension: 'mass',
  sane: [120, 2000],
  told: weighed,
  measure: 'Both wheels of the axle on scales, the others on blocks of the same height.',
});
export const scaleReading = quantity({
  path: 'scale',
  nature: 'car',
  scope: 'corner',
  name: 'scale reading',
  symbol: 'W_i',
  extensive: true,
  state: true,
  words: ['weight', 'scale', 'scale reading', 'corner weight', 'wheel weight', 'corner', 'wheel load'],
  dimension: 'mass',
  sane: [40, 1100],
  told: { usually: 'measured', measured: { relative: 0.007 }, spec: { relative: 0.03 } },
  measure: 'Four scales, level to 1 mm, tires at pressure, bars unhooked at one end, car rolled on and settled.',
  caution: 'Chock the wheels and never lie under a car on scales or ramps.',
});
export const wheelbase = quantity({
  path: 'wheelbase',
  nature: 'car',
  scope: 'car',
  name: 'wheelbase',
  symbol: 'L',
  words: ['wheelbase', 'wb', 'wheel base'],
  dimension: 'length',
  sane: [1.5, 3.6],
  told: taped,
  measure: 'Wheels straight ahead, from hub centre to hub centre along the ground; the mean of both sides.',
  estimate: { needs: {}, compute: () => 2.5, within: { relative: 0.12 }, source: 'common practice, no source' },
});
export const track = quantity({
  path: 'track',
  scope: 'axle',
  name: 'track',
  symbol: 't',
  alike: true,
  words: ['track', 'track width'],
  dimension: 'length',
  sane: [0.9, 2],
  told: taped,
  measure: 'Between the middles of the two tire treads, on the ground.',
  estimate: { needs: {}, compute: () => 1.48, within: { relative: 0.08 }, error: 'common', source: 'common practice, no source' },
});
carry(track, {
  needs: { measured: asMeasured(given(track)), shift: refine(trackShift, 0) },
  compute: ({ measured, shift }) => measured + shift,
  formula: 'measured + shift',
  source: 'as told of the wheels that were on, and how much further out these stand',
});
export const cgHeight = quantity({
  path: 'cg.height',
  nature: 'car',
  scope: 'car',
  name: 'height of the center of gravity',
  label: 'CG height',
  symbol: 'h',
  words: ['cg height', 'cg', 'cg ht', 'center of gravity', 'center of gravity height', 'height of cg'],
  dimension: 'length',
  sane: [0.2, 1],
  told: { usually: 'spec', measured: { absolute: 0.015 }, spec: { absolute: 0.03 } },
  measure: 'Raise one axle at least 0.4 m with the suspension blocked and read how the other axle gains weight.',
  caution: 'A raised axle needs a rated lift or stands, chocks, and nobody under it.',
  ways: [
    way({
      needs: { driven: drivenAxle, engine: maybe(enginePlace), wheelbase },
      // Front-drive cars are short for their height; with the engine amidships a car is low.
      compute: ({ driven, engine, wheelbase }) =>
        (engine === 'mid' || engine === 'rear' ? 0.19 : driven === 'rear' ? 0.199 : 0.212) * wheelbase,
      ...{
        sort: 'estimate',
        within: { relative: 0.13 },
        source: 'by the driven axle and the place of the engine; after measured cars, Heydinger et al., SAE 1999-01-1336, from memory',
      },
    }),
    way({
      needs: { wheelbase },
      compute: ({ wheelbase }) => 0.205 * wheelbase,
      ...{ sort: 'estimate', within: { relative: 0.15 }, source: 'common practice, no source' },
    }),
  ],
});
export const cgRight = quantity({
  path: 'cg.right',
  nature: 'car',
  scope: 'car',
  name: 'center of gravity, right of center',
  label: 'CG right of center',
  symbol: 'y',
  state: true,
  words: ['cg right of center', 'cg right', 'cg offset', 'cg sideways'],
  dimension: 'length',
  sane: [-0.2, 0.2],
  told: { usually: 'measured', measured: { absolute: 0.01 }, spec: { absolute: 0.02 } },
  measure:
    'From four scale readings: each weight times its distance from the middle, summed, over the whole weight. Left of center is negative.',
});

export const unsprungAxle = quantity({
  path: 'unsprung.axle',
  nature: 'car',
  scope: 'axle',
  name: 'axle unsprung weight',
  label: 'unsprung, both',
  symbol: 'W_u',
  extensive: true,
  words: ['unsprung', 'unsprung weight', 'unsprung mass', 'axle unsprung'],
  dimension: 'mass',
  sane: [20, 350],
  told: guessed,
  measure: 'Weigh wheels, tires, hubs and brakes, half of the arms, springs and dampers (all of a beam axle); both sides together.',
});
export const unsprungCorner = quantity({
  path: 'unsprung',
  nature: 'car',
  scope: 'corner',
  name: 'corner unsprung weight',
  label: 'unsprung',
  symbol: 'W_ui',
  extensive: true,
  words: ['unsprung', 'unsprung weight', 'unsprung mass', 'corner unsprung'],
  dimension: 'mass',
  sane: [10, 175],
  told: guessed,
  measure: 'Weigh wheel, tire, hub and brake, and half of the arms, spring and damper of this corner.',
});
export const unsprungShare = quantity({
  path: 'unsprung.share',
  percent: true,
  nature: 'car',
  typical: [inPractice('independent axles', 0.1, 0.18), inPractice('live axles', 0.18, 0.28)],
  scope: 'axle',
  name: 'unsprung share of the axle weight',
  label: 'unsprung share',
  symbol: 'w_u',
  words: ['unsprung share', 'unsprung percent'],
  dimension: 'ratio',
  sane: [0.03, 0.4],
  told: { usually: 'spec', measured: { relative: 0.05 }, spec: { relative: 0.15 } },
  measure: 'Unsprung weight of the axle over the weight on its scales.',
  ways: [
    way({
      needs: { suspension },
      compute: ({ suspension }) => (suspension === 'live axle' ? 0.2 : suspension === 'twist beam' ? 0.155 : 0.125),
      ...{ sort: 'estimate', within: { absolute: 0.035 }, source: 'by the kind of suspension; common practice, no source' },
    }),
    way({
      needs: { kind: axleKind },
      compute: ({ kind }) => (kind === 'beam' ? 0.2 : 0.13),
      ...{ sort: 'estimate', within: { absolute: 0.055 }, source: 'by the kind of axle; common practice, no source' },
    }),
  ],
});
export const sprungTold = quantity({
  path: 'sprung',
  nature: 'car',
  scope: 'corner',
  name: 'sprung weight on the wheel',
  label: 'sprung weight',
  symbol: 'W_s',
  state: true,
  words: ['sprung', 'sprung weight', 'sprung mass', 'sprung corner weight', 'sprung corner'],
  dimension: 'mass',
  sane: [40, 900],
  told: weighed,
  measure: 'The scale reading of this corner less its unsprung weight: what the spring carries, on one wheel.',
});

export const driver = choice({
  path: 'driver',
  scope: 'car',
  name: 'driver',
  words: ['driver', 'driver aboard'],
  options: ['in', 'out'],
  optionWords: { in: ['with', 'aboard', 'yes', 'seated'], out: ['without', 'no', 'empty', 'absent'] },
  measure: 'Whether the driver sits in the car as it is weighed and driven.',
  estimate: { needs: {}, compute: () => 'in' as const, source: 'common practice, no source: weighed as it runs, driver in' },
});
export const driverSeat = choice({
  path: 'driver.seat',
  scope: 'car',
  name: 'side on which the driver sits',
  label: 'driver seat',
  words: ['driver seat', 'driver side', 'hand drive'],
  options: ['left', 'right', 'center'],
  optionWords: { left: ['lhd'], right: ['rhd'], center: ['middle'] },
  measure: 'Seen from behind the car.',
  estimate: { needs: {}, compute: () => 'left' as const, source: 'common practice, no source: left-hand drive' },
});
export const driverWeight = quantity({
  path: 'driver.weight',
  scope: 'car',
  name: 'weight of the driver',
  label: 'driver weight',
  symbol: 'm_d',
  words: ['driver weight', 'driver mass'],
  dimension: 'mass',
  sane: [30, 200],
  told: { usually: 'measured', measured: { absolute: 1 }, spec: { absolute: 3 } },
  measure: 'On a bathroom scale, with helmet and shoes.',
  estimate: { needs: {}, compute: () => 80, within: { absolute: 25 }, source: 'common practice, no source' },
});
export const driverBehind = quantity({
  path: 'driver.behind',
  scope: 'car',
  name: 'driver, behind the front axle',
  label: 'driver behind axle',
  symbol: 'x_d',
  words: ['driver behind front axle', 'driver behind', 'driver position'],
  dimension: 'length',
  sane: [-0.5, 4],
  told: placed,
  measure: "Along the ground, from the front hub centre back to the driver's belt buckle.",
  estimate: {
    needs: { wheelbase },
    compute: ({ wheelbase }) => 0.53 * wheelbase,
    within: { absolute: 0.25 },
    source: 'common practice, no source',
  },
});
export const driverRight = quantity({
  path: 'driver.right',
  scope: 'car',
  name: 'driver, right of center',
  label: 'driver to the right',
  symbol: 'y_d',
  words: ['driver right of center', 'driver right', 'driver offset'],
  dimension: 'length',
  sane: [-0.9, 0.9],
  told: placed,
  measure: 'From the middle of the car across to the middle of the seat; left of center is negative.',
  ways: [
    way({
      needs: { seat: given(driverSeat) },
      compute: ({ seat }) => (seat === 'left' ? -0.36 : seat === 'right' ? 0.36 : 0),
      ...{ sort: 'estimate', within: { absolute: 0.08 }, source: 'by the side on which the driver sits; common practice, no source' },
    }),
    way({
      needs: {},
      compute: () => -0.36,
      ...{ sort: 'estimate', within: { absolute: 0.72 }, source: 'on the left, or on the right; common practice, no source' },
    }),
  ],
});
export const passengerWeight = quantity({
  path: 'passenger.weight',
  scope: 'car',
  name: 'weight of the passenger',
  label: 'passenger',
  symbol: 'm_p',
  words: ['passenger', 'passenger weight', 'instructor', 'codriver'],
  dimension: 'mass',
  sane: [0, 400],
  told: { usually: 'measured', measured: { absolute: 2 }, spec: { absolute: 5 } },
  measure: 'On a bathroom scale, with helmet; 0 for an empty seat.',
  estimate: { needs: {}, compute: () => 0, within: { absolute: 0 }, source: 'no passenger unless told' },
});
export const passengerBehind = quantity({
  path: 'passenger.behind',
  scope: 'car',
  name: 'passenger, behind the front axle',
  label: 'passenger behind',
  symbol: 'x_p',
  words: ['passenger behind front axle', 'passenger behind', 'passenger position'],
  dimension: 'length',
  sane: [-0.5, 4],
  told: placed,
  measure: "Along the ground, from the front hub centre back to the passenger's belt buckle.",
  estimate: {
    needs: { driverBehind },
    compute: ({ driverBehind }) => driverBehind,
    within: { absolute: 0.1 },
    source: 'common practice, no source: seats abreast',
  },
});
export const passengerRight = quantity({
  path: 'passenger.right',
  scope: 'car',
  name: 'passenger, right of center',
  label: 'passenger right',
  symbol: 'y_p',
  words: ['passenger right of center', 'right of center', 'passenger right', 'passenger offset'],
  dimension: 'length',
  sane: [-0.9, 0.9],
  told: placed,
  measure: 'From the middle of the car across to the middle of the seat; left of center is negative.',
  estimate: {
    needs: { driverRight },
    compute: ({ driverRight }) => -driverRight,
    within: { absolute: 0.06 },
    source: 'common practice, no source: seats abreast',
  },
});
export const ballastWeight = quantity({
  path: 'ballast.weight',
  scope: 'car',
  name: 'ballast or luggage',
  label: 'ballast',
  symbol: 'm_b',
  words: ['ballast', 'luggage', 'cargo', 'ballast weight', 'load', 'tool', 'spare wheel'],
  dimension: 'mass',
  sane: [0, 500],
  told: { usually: 'measured', measured: { relative: 0.02 }, spec: { relative: 0.05 } },
  measure: 'Weigh what is put in; 0 when it is out. Several pieces: their sum, at their common center.',
  caution: 'Ballast has to be bolted down as your rules say: a loose piece is dangerous in a stop.',
  estimate: { needs: {}, compute: () => 0, within: { absolute: 0 }, source: 'none unless told' },
});
export const ballastBehind = quantity({
  path: 'ballast.behind',
  scope: 'car',
  name: 'ballast, behind the front axle',
  label: 'ballast behind',
  symbol: 'x_b',
  words: ['ballast behind front axle', 'luggage behind front axle', 'ballast behind', 'behind front axle'],
  dimension: 'length',
  sane: [-1.2, 4.5],
  told: placed,
  measure: 'Along the ground, from the front hub centre back to its middle; ahead of the front axle is negative.',
  estimate: {
    needs: { wheelbase },
    compute: ({ wheelbase }) => wheelbase,
    within: { absolute: 0.5 },
    source: 'common practice, no source: in the trunk',
  },
});
export const ballastRight = quantity({
  path: 'ballast.right',
  scope: 'car',
  name: 'ballast, right of center',
  label: 'ballast to the right',
  symbol: 'y_b',
  words: ['ballast right of center', 'luggage right of center', 'ballast right', 'ballast offset'],
  dimension: 'length',
  sane: [-1, 1],
  told: placed,
  measure: 'From the middle of the car across to its middle; left of center is negative.',
  estimate: { needs: {}, compute: () => 0, within: { absolute: 0.3 }, source: 'common practice, no source' },
});
export const fuelVolume = quantity({
  path: 'fuel.volume',
  scope: 'car',
  name: 'fuel in the tank',
  label: 'fuel',
  symbol: 'V',
  instead: 'fuel',
  words: ['fuel', 'gas', 'gasoline', 'petrol', 'fuel volume'],
  dimension: 'volume',
  sane: [0, 0.2],
  told: { usually: 'measured', measured: { absolute: 0.002 }, spec: { absolute: 0.004 } },
  measure: 'What was filled into an empty tank.',
  caution: 'Fuel only in the open, engine off, no flame near.',
});
export const fuelShare = quantity({
  path: 'fuel.share',
  percent: true,
  untypical: 'It is what is in the tank.',
  scope: 'car',
  name: 'fuel, share of the tank',
  label: 'fuel, part of tank',
  symbol: 's',
  instead: 'fuel',
  words: ['tank', 'fuel share', 'fuel level', 'tank share', 'full tank', 'fuel', 'gas'],
  dimension: 'ratio',
  sane: [0, 1],
  told: { usually: 'measured', measured: { absolute: 0.08 }, spec: { absolute: 0.08 } },
  measure: 'The fuel gauge, on level ground: 0 empty, 1 full.',
  estimate: { needs: {}, compute: () => 0.5, within: { absolute: 0.35 }, source: 'common practice, no source' },
});
export const tankSize = quantity({
  path: 'tank.size',
  scope: 'car',
  name: 'size of the tank',
  label: 'tank size',
  symbol: 'V_t',
  words: ['tank size', 'tank volume', 'tank capacity', 'fuel capacity'],
  dimension: 'volume',
  sane: [0.005, 0.2],
  told: { usually: 'spec', measured: { relative: 0.02 }, spec: { relative: 0.03 } },
  measure: "The owner's manual, or a fill from empty.",
  estimate: { needs: {}, compute: () => 0.055, within: { relative: 0.25 }, source: 'common practice, no source' },
});
export const tankBehind = quantity({
  path: 'tank.behind',
  scope: 'car',
  name: 'tank, behind the front axle',
  label: 'tank behind axle',
  symbol: 'x_t',
  words: ['tank behind front axle', 'tank behind', 'tank position'],
  dimension: 'length',
  sane: [-1, 4.5],
  told: placed,
  measure: 'Along the ground, from the front hub centre back to the middle of the tank.',
  estimate: {
    needs: { wheelbase },
    compute: ({ wheelbase }) => 0.9 * wheelbase,
    within: { absolute: 0.4 },
    source: 'common practice, no source',
  },
});
export const tankRight = quantity({
  path: 'tank.right',
  scope: 'car',
  name: 'tank, right of center',
  label: 'tank to the right',
  symbol: 'y_t',
  words: ['tank right of center', 'tank right', 'tank offset'],
  dimension: 'length',
  sane: [-0.9, 0.9],
  told: placed,
  measure: 'From the middle of the car across to the middle of the tank; left of center is negative.',
  estimate: { needs: {}, compute: () => 0, within: { absolute: 0.15 }, source: 'common practice, no source' },
});
