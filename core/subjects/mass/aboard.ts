/** What is aboard, what came aboard since the car was weighed, and what the car weighs as it stands. */
import {
  asMeasured,
  figure,
  front,
  given,
  inPractice,
  inverse,
  maybe,
  quantity,
  rear,
  refuse,
  structure,
  thisAxle,
  way,
} from '../../catalog.js';
import { type Cargo, gained } from './cargo.js';
import * as told from './told.js';
import { weighedAxle, weighedShare, weighedTotal } from './weighed.js';

const share = 'statics: a weight is shared between the axles by its distance from each';
const g = 9.80665;
const sum = 'sum';

/** kg/m^3: gasoline at 15 C is 720 to 775 (EN 228, from memory). */
const gasoline = 745;
const fuelText = 'gasoline, 0.745 kg/l (0.720 to 0.775 by EN 228, from memory)';
export const fuelWeight = quantity({
  path: 'fuel.weight',
  scope: 'car',
  name: 'weight of the fuel',
  label: 'fuel weight',
  symbol: 'm_f',
  words: ['fuel weight', 'weight of fuel', 'gas weight'],
  dimension: 'mass',
  sane: [0, 150],
  ways: [
    way({ needs: { volume: told.fuelVolume }, compute: ({ volume }) => volume * gasoline, source: fuelText }),
    way({ needs: { share: told.fuelShare, tank: told.tankSize }, compute: ({ share, tank }) => share * tank * gasoline, source: fuelText }),
  ],
});
/** What is not known of it stops only what it has changed. */
export const aboard = structure({
  path: 'aboard',
  scope: 'car',
  name: 'driver, passenger, ballast and fuel',
  needs: {
    driver: told.driver,
    driverWeight: maybe(told.driverWeight),
    driverBehind: maybe(told.driverBehind),
    driverRight: maybe(told.driverRight),
    passenger: told.passengerWeight,
    passengerBehind: maybe(told.passengerBehind),
    passengerRight: maybe(told.passengerRight),
    ballast: told.ballastWeight,
    ballastBehind: maybe(told.ballastBehind),
    ballastRight: maybe(told.ballastRight),
    fuel: maybe(fuelWeight),
    tankBehind: maybe(told.tankBehind),
    tankRight: maybe(told.tankRight),
    wheelbase: maybe(told.wheelbase),
  },
  compute: (is): Cargo => ({
    wheelbase: is.wheelbase,
    driver: { weight: is.driver === 'in' ? is.driverWeight : 0, behind: is.driverBehind, right: is.driverRight },
    passenger: { weight: is.passenger, behind: is.passengerBehind, right: is.passengerRight },
    ballast: { weight: is.ballast, behind: is.ballastBehind, right: is.ballastRight },
    fuel: { weight: is.fuel, behind: is.tankBehind, right: is.tankRight },
  }),
  source: share,
});
// Numbers, not a structure: what has not changed is 0 without a doubt, and carries none of its errors any further.
export const addedWeight = quantity({
  path: 'added.weight',
  scope: 'axle',
  name: 'weight that came aboard since the car was weighed',
  label: 'came aboard',
  symbol: 'dm',
  dimension: 'mass',
  ways: [
    way({
      needs: { now: aboard, then: asMeasured(aboard), axle: thisAxle },
      compute: ({ now, then, axle }) => gained(then, now, (gain) => gain[axle]),
      source: share,
    }),
  ],
});
export const addedMoment = quantity({
  path: 'added.moment',
  scope: 'axle',
  name: 'moment to the left of what came aboard since the car was weighed',
  label: 'moment came aboard',
  symbol: 'dM',
  dimension: 'torque',
  ways: [
    way({
      needs: { now: aboard, then: asMeasured(aboard), axle: thisAxle },
      compute: ({ now, then, axle }) => {
        const moment = gained(then, now, (gain) => gain[`${axle}Moment`]);
        return typeof moment === 'number' ? g * moment : moment;
      },
      source: share,
    }),
  ],
  nonlinear:
    'A weight times where it sits. Where both may be nothing (fuel used, a tank in the middle) the doubt is a product of two, which one error at a time does not see: too narrow there, and small.',
});

export const axleMass = figure({
  path: 'axleMass',
  scope: 'axle',
  name: 'axle weight as it stands',
  label: 'axle weight',
  main: true,
  symbol: 'W_j',
  words: ['weight', 'axle weight', 'axle load'],
  dimension: 'mass',
  needs: { weighed: weighedAxle, added: addedWeight },
  compute: ({ weighed, added }) => weighed + added,
  formula: 'weighed + added',
  source: share,
  carriesOn: told.axleWeight,
});
export const totalMass = figure({
  path: 'totalMass',
  scope: 'car',
  name: 'weight of the car as it stands',
  label: 'weight',
  main: true,
  symbol: 'W',
  words: ['weight', 'total weight', 'car weight', 'mass'],
  dimension: 'mass',
  typical: { range: [600, 1800], of: 'road cars; common practice, no source' },
  needs: { weighed: weighedTotal, front: front(addedWeight), rear: rear(addedWeight) },
  compute: ({ weighed, front, rear }) => weighed + front + rear,
  formula: 'weighed + front + rear',
  source: sum,
  carriesOn: told.mass,
});
export const frontShareNow = figure({
  path: 'frontShareNow',
  percent: true,
  scope: 'car',
  name: 'front share of the weight as it stands',
  label: 'front share',
  main: true,
  symbol: 'w_f',
  words: ['front share', 'front percent', 'percent front', 'weight distribution'],
  dimension: 'ratio',
  typical: [
    inPractice('front-drive cars', 0.58, 0.66),
    inPractice('rear-drive cars, engine in front', 0.48, 0.57),
    inPractice('mid-engined cars', 0.38, 0.48),
  ],
  needs: { share: weighedShare, weighed: maybe(weighedTotal), front: front(addedWeight), rear: rear(addedWeight) },
  compute: ({ share, weighed, front, rear }) => {
    if (front === 0 && rear === 0) return share;
    if (weighed === undefined) return refuse('What came aboard moves the front share, and the weight of the car is not known.', 'mass');
    return (share * weighed + front) / (weighed + front + rear);
  },
  source: share,
  carriesOn: told.frontShare,
});
export const rearShareNow = quantity({
  path: 'rearShareNow',
  percent: true,
  scope: 'car',
  name: 'rear share of the weight as it stands',
  label: 'rear share',
  symbol: 'w_r',
  words: ['rear share', 'rear percent', 'percent rear', 'rear weight share', 'rear weight percent'],
  dimension: 'ratio',
  sane: [0.28, 0.7],
  told: { usually: 'measured', measured: { absolute: 0.005 }, spec: { absolute: 0.015 } },
  typical: [
    inPractice('front-drive cars', 0.34, 0.42),
    inPractice('rear-drive cars, engine in front', 0.43, 0.52),
    inPractice('mid-engined cars', 0.52, 0.62),
  ],
  measure: 'Weigh each axle on level ground; the rear weight over the sum of both.',
  ways: [
    way({
      needs: { front: frontShareNow },
      compute: ({ front }) => 1 - front,
      formula: '1 - front',
      source: 'both shares are the whole; by definition',
    }),
  ],
});
export const cgBehind = quantity({
  path: 'cg.behind',
  scope: 'car',
  name: 'center of gravity, behind the front axle',
  label: 'CG behind front axle',
  symbol: 'a',
  words: ['cg behind front axle', 'cg behind', 'cg from front axle', 'cg to front axle'],
  dimension: 'length',
  sane: [0.4, 2.6],
  ways: [
    way({
      needs: { share: frontShareNow, wheelbase: told.wheelbase },
      compute: ({ share, wheelbase }) => wheelbase * (1 - share),
      formula: 'wheelbase * (1 - share)',
      source: 'statics: moments about the front axle',
    }),
  ],
});
inverse(told.frontShare, {
  needs: { rear: given(rearShareNow) },
  compute: ({ rear }) => 1 - rear,
  formula: '1 - rear',
  source: 'both shares are the whole; by definition',
});
inverse(told.frontShare, {
  needs: { behind: given(cgBehind), wheelbase: told.wheelbase },
  compute: ({ behind, wheelbase }) =>
    behind < wheelbase
      ? 1 - behind / wheelbase
      : refuse('The center of gravity cannot lie behind the rear axle: it is told further back than the wheelbase.', 'behind', 'wheelbase'),
  formula: '1 - behind / wheelbase',
  source: 'statics: moments about the rear axle',
});
