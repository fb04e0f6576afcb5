/** What is aboard, what came aboard since the car was weighed, and what the car weighs as it stands. */
import { asMeasured, figure, firstOf, front, maybe, rear, refuse, structure, thisAxle } from '../catalog.js';
import * as told from '../inputs/mass.js';
import { weighedAxle, weighedShare, weighedTotal } from './mass.js';

const share = 'statics: a weight is shared between the axles by its distance from each';
const g = 9.80665;
const sum = 'sum';
const definition = 'definition';

export const fuelOfShare = figure({
  path: 'fuel.ofShare',
  scope: 'car',
  name: 'fuel from its share of the tank',
  label: 'fuel',
  symbol: 'V',
  dimension: 'volume',
  needs: { share: told.fuelShare, tank: told.tankSize },
  compute: ({ share, tank }) => share * tank,
  formula: 'share * tank',
  source: definition,
});
/** kg/m^3: gasoline at 15 C is 720 to 775 (EN 228, from memory). */
const gasoline = 745;
export const fuelWeight = figure({
  path: 'fuel.weight',
  scope: 'car',
  name: 'weight of the fuel',
  label: 'fuel weight',
  symbol: 'm_f',
  words: ['fuel weight', 'weight of fuel', 'gas weight'],
  dimension: 'mass',
  needs: { volume: firstOf(told.fuelVolume, fuelOfShare) },
  compute: ({ volume }) => volume * gasoline,
  source: 'gasoline, 0.745 kg/l (0.720 to 0.775 by EN 228, from memory)',
});
/** Weights (kg) and their moments to the left (kg m), shared between the axles. */
export interface Aboard {
  readonly front: number;
  readonly rear: number;
  readonly frontMoment: number;
  readonly rearMoment: number;
}
export const aboard = structure({
  path: 'aboard',
  scope: 'car',
  name: 'driver, passenger, ballast and fuel',
  needs: {
    driver: told.driver,
    driverWeight: told.driverWeight,
    driverBehind: told.driverBehind,
    driverRight: told.driverRight,
    passenger: told.passengerWeight,
    passengerBehind: told.passengerBehind,
    passengerRight: told.passengerRight,
    ballast: told.ballastWeight,
    ballastBehind: told.ballastBehind,
    ballastRight: told.ballastRight,
    fuel: fuelWeight,
    tankBehind: told.tankBehind,
    tankRight: told.tankRight,
    wheelbase: told.wheelbase,
  },
  compute: (is): Aboard => {
    let [front, rear, frontMoment, rearMoment] = [0, 0, 0, 0];
    const load = (weight: number, behind: number, toTheRight: number): void => {
      const back = (weight * behind) / is.wheelbase;
      front += weight - back;
      rear += back;
      frontMoment -= (weight - back) * toTheRight;
      rearMoment -= back * toTheRight;
    };
    load(is.driver === 'in' ? is.driverWeight : 0, is.driverBehind, is.driverRight);
    load(is.passenger, is.passengerBehind, is.passengerRight);
    load(is.ballast, is.ballastBehind, is.ballastRight);
    load(is.fuel, is.tankBehind, is.tankRight);
    return { front, rear, frontMoment, rearMoment };
  },
  source: share,
});
// Numbers, not a structure: what has not changed is 0 without a doubt, and carries none of its errors any further.
export const addedWeight = figure({
  path: 'added.weight',
  scope: 'axle',
  name: 'weight that came aboard since the car was weighed',
  label: 'came aboard',
  symbol: 'dm',
  dimension: 'mass',
  needs: { now: aboard, then: asMeasured(aboard), axle: thisAxle },
  compute: ({ now, then, axle }) => now[axle] - then[axle],
  source: share,
});
export const addedMoment = figure({
  path: 'added.moment',
  scope: 'axle',
  name: 'moment to the left of what came aboard since the car was weighed',
  label: 'moment came aboard',
  symbol: 'dM',
  dimension: 'torque',
  needs: { now: aboard, then: asMeasured(aboard), axle: thisAxle },
  compute: ({ now, then, axle }) => g * (axle === 'front' ? now.frontMoment - then.frontMoment : now.rearMoment - then.rearMoment),
  source: share,
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
  scope: 'car',
  name: 'front share of the weight as it stands',
  label: 'front share',
  main: true,
  symbol: 'w_f',
  words: ['front share', 'front percent', 'percent front', 'weight distribution'],
  dimension: 'ratio',
  typical: { range: [0.4, 0.65], of: 'road cars; common practice, no source' },
  needs: { share: weighedShare, weighed: maybe(weighedTotal), front: front(addedWeight), rear: rear(addedWeight) },
  compute: ({ share, weighed, front, rear }) => {
    if (front === 0 && rear === 0) return share;
    if (weighed === undefined) return refuse('What came aboard moves the front share, and the weight of the car is not known.', 'mass');
    return (share * weighed + front) / (weighed + front + rear);
  },
  source: share,
  carriesOn: told.frontShare,
});
export const rearShareNow = figure({
  path: 'rearShareNow',
  scope: 'car',
  name: 'rear share of the weight as it stands',
  label: 'rear share',
  symbol: 'w_r',
  words: ['rear share', 'rear percent', 'percent rear', 'rear weight share', 'rear weight percent'],
  dimension: 'ratio',
  typical: { range: [0.35, 0.6], of: 'road cars; common practice, no source' },
  needs: { front: frontShareNow },
  compute: ({ front }) => 1 - front,
  formula: '1 - front',
  source: 'both shares are the whole; by definition',
});
