/** Braking: what each end uses of its grip, which locks first and at what g, straight and in a corner. */

import {
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
  thisAxle,
  thisSide,
  way,
} from '../../catalog.js';
import { falling } from '../../numeric/falling.js';
import { braking, lateral, turn } from '../cornering/asked.js';
import { bends, cgHeightNow, cornerModel, cornerState, manoeuvre } from '../cornering/car.js';
import { roadSpeed } from '../gearing/told.js';
import { gripCoefficient } from '../grip/told.js';
import { frontShareNow, totalMass } from '../mass/aboard.js';
import { cgHeight, wheelbase } from '../mass/told.js';
import { weighedShare } from '../mass/weighed.js';
import { wheel } from '../ride/standing.js';
import { lockAt, straightLoads } from '../traction/straight.js';
import { straightCar } from '../traction/thrust.js';
import { brakeShareNow } from './brakes.js';
import { axleGripUse, type CornerBraking, cornerBraking } from './inTurn.js';

const g = 9.80665;
const straight =
  'statics of the whole car, the grip at each load, the loads moved by the braking itself; springs alike left and right; no drag';
const inCorner = 'four-wheel equilibrium under that braking, friction ellipse of each wheel; both wheels of an axle brake alike';
const care =
  'Brakes are safety: change their share only with the maker, your rules and a licensed workshop, and try it first where nobody can be hurt.';
const rearFirst = 'A rear end that locks first spins the car.';

export const brakeForce = quantity({
  path: 'brake.force',
  scope: 'car',
  name: 'brake force of the car',
  label: 'brake force',
  symbol: 'F_b',
  words: ['brake force', 'braking force'],
  dimension: 'force',
  sane: [0, 80_000],
  ways: [
    way({
      needs: { mass: totalMass, braking },
      compute: ({ mass, braking }) => mass * braking,
      formula: 'mass * braking',
      source: 'Newton; no drag',
    }),
  ],
});
export const brakeTransfer = quantity({
  path: 'brake.transfer',
  scope: 'car',
  name: 'load that braking moves to the front axle',
  label: 'moved by braking',
  symbol: 'dN_x',
  words: ['braking load transfer', 'longitudinal load transfer', 'weight transfer under braking'],
  dimension: 'force',
  sane: [0, 60_000],
  ways: [
    way({
      needs: { mass: totalMass, braking, height: cgHeightNow, wheelbase },
      compute: ({ mass, braking, height, wheelbase }) => (mass * braking * height) / wheelbase,
      formula: 'mass * braking * height / wheelbase',
      source: 'statics',
    }),
  ],
});
export const idealBrakeShare = quantity({
  path: 'brake.idealShare',
  percent: true,
  typical: [inPractice('road cars, hard braking', 0.6, 0.85)],
  scope: 'car',
  name: 'front brake share at which both ends use their grip alike',
  label: 'ideal brake share',
  symbol: 'p_i',
  words: ['ideal brake share', 'ideal brake bias', 'ideal front brake share', 'ideal brake balance'],
  dimension: 'ratio',
  sane: [0.2, 1.5],
  caution: care,
  ways: [
    way({
      needs: { share: frontShareNow, braking, height: cgHeightNow, wheelbase },
      compute: ({ share, braking, height, wheelbase }) => share + ((braking / g) * height) / wheelbase,
      formula: 'share + braking / g * height / wheelbase',
      source: 'front load over weight at the braking asked; tires alike, grip that does not fall with load',
    }),
  ],
});
export const brakeTransferPerWheel = quantity({
  path: 'brake.transferPerWheel',
  scope: 'car',
  name: 'load that braking adds to each front wheel',
  label: 'braking, each wheel',
  symbol: 'dN/2',
  words: ['braking load transfer per wheel', 'braking load per wheel'],
  dimension: 'force',
  sane: [0, 30_000],
  ways: [
    way({ needs: { moved: brakeTransfer }, compute: ({ moved }) => moved / 2, formula: 'moved / 2', source: 'both front wheels alike' }),
  ],
});
export const brakingAxleLoad = quantity({
  path: 'brake.axleLoad',
  scope: 'axle',
  name: 'load on the axle under the braking asked',
  label: 'axle load, braking',
  symbol: 'N_j',
  words: ['axle load under braking', 'load under braking'],
  dimension: 'force',
  sane: [0, 60_000],
  ways: [
    way({
      needs: { car: straightCar, mass: totalMass, braking, axle: thisAxle },
      compute: ({ car, mass, braking, axle }) => {
        const loads = straightLoads(car, -mass * braking);
        return axle === 'front' ? loads[0] + loads[1] : loads[2] + loads[3];
      },
      source: straight,
    }),
    way({
      needs: { mass: totalMass, share: frontShareNow, moved: brakeTransfer, axle: thisAxle },
      compute: ({ mass, share, moved, axle }) => (axle === 'front' ? mass * g * share + moved : mass * g * (1 - share) - moved),
      source: 'statics of the whole car',
    }),
  ],
});
export const brakeUse = quantity({
  path: 'brake.use',
  percent: true,
  typical: [inPractice('a stop that every wheel holds', 0.1, 1)],
  scope: 'axle',
  name: 'share of its grip that the axle uses under the braking asked',
  label: 'grip used, braking',
  symbol: 'U_b',
  words: ['grip used braking', 'brake use', 'braking use'],
  dimension: 'ratio',
  sane: [0, 5],
  ways: [
    way({
      needs: { car: straightCar, mass: totalMass, braking, share: brakeShareNow, axle: thisAxle },
      compute: ({ car, mass, braking, share, axle }) => {
        const loads = straightLoads(car, -mass * braking);
        const grip = axle === 'front' ? car.grip[0](loads[0]) + car.grip[0](loads[1]) : car.grip[1](loads[2]) + car.grip[1](loads[3]);
        const force = mass * braking * (axle === 'front' ? share : 1 - share);
        if (force === 0) return 0;
        return grip > 0 ? force / grip : refuse('The axle carries no load there.', 'braking');
      },
      source: straight,
    }),
  ],
});
export const wheelLock = quantity({
  path: 'brake.wheelLock',
  scope: 'corner',
  name: 'braking at which the wheel locks',
  label: 'wheel locks at',
  symbol: 'a_l',
  words: ['wheel lock', 'lock up', 'lockup'],
  dimension: 'acceleration',
  sane: [0.1, 40],
  ways: [
    way({
      needs: { car: straightCar, share: brakeShareNow, axle: thisAxle, side: thisSide },
      compute: ({ car, share, axle, side }) => {
        const at = lockAt(car, wheel(axle, side), axle === 'front' ? share : 1 - share);
        return Number.isFinite(at) ? at * g : refuse('With this brake share the wheel never locks.', 'share');
      },
      source: `the others taken to hold; ${straight}`,
    }),
  ],
});
const lighter = 'The lighter of two wheels locks first: where both are alike, a doubt of either counts whole.';
export const axleLock = quantity({
  path: 'brake.lock',
  scope: 'axle',
  name: 'braking at which the axle begins to lock',
  label: 'axle locks at',
  main: true,
  symbol: 'a_l',
  words: ['lock', 'locks at', 'lock up', 'lockup', 'locking'],
  dimension: 'acceleration',
  sane: [0.1, 40],
  ways: [
    way({
      needs: { left: left(wheelLock), right: right(wheelLock) },
      compute: ({ left, right }) => Math.min(left, right),
      formula: 'min(left, right)',
      source: `the lighter wheel first; ${straight}`,
    }),
    way({
      needs: { weight: weighedShare, height: cgHeight, wheelbase, share: brakeShareNow, mu: gripCoefficient, axle: thisAxle },
      compute: ({ weight, height, wheelbase, share, mu, axle }) => {
        const moved = (mu * height) / wheelbase;
        const [load, asked] = axle === 'front' ? [weight, share - moved] : [1 - weight, 1 - share + moved];
        return asked > 0
          ? (mu * load * g) / asked
          : refuse('With this brake share the axle never locks: the load that comes to it outruns its brakes.', 'brake.frontShare');
      },
      source: 'Gillespie, Fundamentals of Vehicle Dynamics, ch. 3, from memory; grip that does not fall with load',
      basis: 'both wheels alike',
    }),
  ],
  nonlinear: lighter,
});
export const brakeLimit = quantity({
  path: 'brake.limit',
  scope: 'car',
  name: 'hardest braking before a wheel locks, straight ahead',
  label: 'brakes hold up to',
  main: true,
  symbol: 'a_b',
  words: ['braking limit', 'hardest braking', 'how hard brake', 'stopping power', 'max braking', 'brake limit', 'threshold braking'],
  dimension: 'acceleration',
  sane: [0.1, 40],
  typical: { range: [6, 11], of: 'road tires on dry asphalt; common practice, no source' },
  caution: care,
  nonlinear: 'Of front and rear the first: near the change-over a doubt counts by its two ends.',
  ways: [
    way({
      needs: { front: front(axleLock), rear: rear(axleLock) },
      compute: ({ front, rear }) => Math.min(front, rear),
      formula: 'min(front, rear)',
      source: straight,
    }),
  ],
});
export const lockOrder = quantity({
  path: 'brake.order',
  scope: 'car',
  name: 'how much later the rear locks than the front, below 0 where it locks first',
  label: 'rear locks later by',
  main: true,
  symbol: 'd_l',
  words: ['locks first', 'which locks first', 'which end locks first', 'end locks first', 'lock order', 'brake order', 'rear lock margin'],
  dimension: 'ratio',
  sane: [-5, 5],
  typical: { range: [0, 0.4], of: 'road cars: the front locks first; common practice, no source' },
  caution: `${rearFirst} ${care}`,
  nonlinear: lighter,
  ways: [
    way({
      needs: { front: front(axleLock), rear: rear(axleLock) },
      compute: ({ front, rear }) => (rear - front) / Math.min(front, rear),
      formula: '(rear - front) / min(front, rear)',
      source: 'difference of the braking at which each end locks, over the lesser',
    }),
  ],
});
export const bestBraking = quantity({
  path: 'brake.best',
  scope: 'car',
  name: 'braking if every wheel used all its grip',
  label: 'all grip braking',
  symbol: 'a_max',
  words: ['best braking', 'all the grip braking', 'braking with all grip'],
  dimension: 'acceleration',
  sane: [0.1, 40],
  ways: [
    way({
      needs: { car: straightCar },
      compute: ({ car }) => {
        const weight = car.loads[0] + car.loads[1] + car.loads[2] + car.loads[3];
        const left = (force: number): number => {
          const loads = straightLoads(car, -force);
          return car.grip[0](loads[0]) + car.grip[0](loads[1]) + car.grip[1](loads[2]) + car.grip[1](loads[3]) - force;
        };
        return (falling(left, left(0), 3 * weight) / weight) * g;
      },
      source: straight,
    }),
  ],
});
/** What is asked, else as hard as the car can. A stop of no braking never ends. */
const asHard = 'steady braking as hard as asked, else at the limit; no reaction time, no build-up';
export const slowing = quantity({
  path: 'brake.slowing',
  nonlinear: 'Of front and rear the first to lock: near the change-over a doubt counts by its two ends.',
  scope: 'car',
  name: 'braking of the stop',
  symbol: 'a_s',
  dimension: 'acceleration',
  ways: [
    way({
      needs: { braking, limit: maybe(brakeLimit) },
      compute: ({ braking, limit }) =>
        braking > 0
          ? braking
          : (limit ??
            refuse(
              'How hard it brakes is not known: add the braking, as in braking 0.9 g, or the grip of the tires.',
              'braking',
              'grip.mu',
            )),
      source: asHard,
    }),
  ],
});

export const stopTime = quantity({
  path: 'brake.stopTime',
  nonlinear: 'Of front and rear the first to lock: near the change-over a doubt counts by its two ends.',
  scope: 'car',
  name: 'time to stop',
  symbol: 't_s',
  words: ['stop time', 'time to stop', 'stopping time'],
  dimension: 'time',
  sane: [0.05, 60],
  ways: [
    way({
      needs: { slowing, speed: roadSpeed },
      compute: ({ slowing, speed }) => speed / slowing,
      formula: 'speed / slowing',
      source: asHard,
    }),
  ],
});
export const stopDistance = quantity({
  path: 'brake.stopDistance',
  nonlinear: 'Of front and rear the first to lock: near the change-over a doubt counts by its two ends.',
  scope: 'car',
  name: 'distance to stop',
  symbol: 's_s',
  words: ['stop distance', 'stopping distance', 'braking distance', 'distance to stop'],
  dimension: 'length',
  sane: [0.05, 3000],
  ways: [
    way({
      needs: { slowing, speed: roadSpeed },
      compute: ({ slowing, speed }) => speed ** 2 / (2 * slowing),
      formula: 'speed^2 / (2 * slowing)',
      source: asHard,
    }),
  ],
  caution: 'A real stop is longer.',
});
inverse(slowing, {
  needs: { distance: given(stopDistance), speed: roadSpeed },
  compute: ({ distance, speed }) => speed ** 2 / (2 * distance),
  formula: 'speed^2 / (2 * distance)',
  source: 'steady braking',
  basis: 'from the distance to stop',
});
inverse(slowing, {
  needs: { time: given(stopTime), speed: roadSpeed },
  compute: ({ time, speed }) => speed / time,
  formula: 'speed / time',
  source: 'steady braking',
  basis: 'from the time to stop',
});
export const brakeEnergy = quantity({
  path: 'brake.energy',
  scope: 'car',
  name: 'energy that the brakes take in a stop',
  label: 'energy of the stop',
  symbol: 'E_b',
  words: ['brake energy', 'energy of the stop', 'braking energy'],
  dimension: 'energy',
  sane: [100, 2e7],
  ways: [
    way({
      needs: { mass: totalMass, speed: roadSpeed },
      compute: ({ mass, speed }) => (mass * speed ** 2) / 2,
      formula: 'mass * speed^2 / 2',
      source: 'all the motion of the car; what turns left out',
    }),
  ],
});

export const useInTurn = quantity({
  path: 'brake.useInTurn',
  percent: true,
  typical: [inPractice('a stop that every wheel holds', 0.1, 1)],
  scope: 'axle',
  name: 'share of its grip that the axle uses, turning and braking as asked',
  label: 'grip used, turning',
  symbol: 'U',
  words: ['grip used in the turn', 'use in the turn', 'grip used turning and braking'],
  dimension: 'ratio',
  sane: [0, 5],
  nonlinear: bends,
  ways: [
    way({
      needs: { model: cornerModel, manoeuvre, state: cornerState, axle: thisAxle },
      compute: ({ model, manoeuvre, state, axle }) => {
        const use = axleGripUse(model, manoeuvre, state, axle === 'front' ? 0 : 1);
        return Number.isFinite(use)
          ? use
          : refuse('A wheel of the axle is off the ground and asked to brake or drive: it locks or spins.', 'lateral');
      },
      source:
        'the part of their grip that both wheels need together, for the force along and the force across; solved with the loads, not added up',
    }),
  ],
});
export const brakingInTurn = structure({
  path: 'brake.turn',
  scope: 'car',
  name: 'how hard the car can brake in the turn',
  needs: { model: cornerModel, lateral, turn, braking, share: brakeShareNow },
  compute: ({ model, lateral, turn, braking, share }, near?: CornerBraking) => {
    // A search of its own: only for a question about braking.
    if (!(braking > 0)) return refuse('Ask it with some braking in the turn: braking 0.3 g.', 'braking');
    const signed = ((turn === 'left' ? 1 : -1) * lateral) / g;
    return cornerBraking(model, signed, share, near);
  },
  source: inCorner,
});
export const brakeLimitInTurn = quantity({
  path: 'brake.limitInTurn',
  scope: 'car',
  name: 'hardest braking before a wheel locks, in the turn',
  label: 'brakes hold, turning',
  symbol: 'a_b',
  words: ['braking limit in the turn', 'trail braking limit', 'hardest braking in the turn'],
  dimension: 'acceleration',
  sane: [0, 40],
  caution: care,
  nonlinear: 'Of front and rear the first, and nothing where the corner takes all: a doubt that gets there counts by its two ends.',
  ways: [
    way({
      needs: { turning: brakingInTurn },
      compute: ({ turning }) => turning.braking * g,
      source: inCorner,
    }),
  ],
});
export const lockOrderInTurn = quantity({
  path: 'brake.orderInTurn',
  typical: [inPractice('road cars: the front locks first', -0.1, 0.4)],
  scope: 'car',
  name: 'use of grip of the front less that of the rear at the braking limit in the turn, below 0 where the rear goes first',
  label: 'front first by, turn',
  symbol: 'd_U',
  words: ['locks first in the turn', 'lock order in the turn'],
  dimension: 'ratio',
  sane: [-5, 5],
  caution: `${rearFirst} ${care}`,
  nonlinear: 'The end that is first used up stands at 1 and the other moves: near the change-over a doubt counts by its two ends.',
  ways: [
    way({
      needs: { turning: brakingInTurn },
      compute: ({ turning }) => turning.use[0] - turning.use[1],
      source: inCorner,
    }),
  ],
});
