/** Braking: what each end uses of its grip, which locks first and at what g, straight and in a corner. */
import { figure, front, isRefusal, left, rear, refuse, right, structure, thisAxle, thisSide } from '../catalog.js';
import { roadSpeed } from '../inputs/gearing.js';
import { wheelbase } from '../inputs/mass.js';
import { braking, lateral, turn } from '../inputs/turning.js';
import { axleGripUse, type CornerBraking, cornerBraking } from '../traction/braking.js';
import { falling, lockAt, straightLoads } from '../traction/straight.js';
import { frontShareNow, totalMass } from './aboard.js';
import { brakeShareNow } from './brakes.js';
import { bends, cgHeightNow, cornerModel, cornerState, manoeuvre } from './cornering.js';
import { wheel } from './standing.js';
import { straightCar } from './traction.js';

const g = 9.80665;
const straight =
  'statics of the whole car, the grip at each load, the loads moved by the braking itself; springs alike left and right; no drag';
const inCorner = 'four-wheel equilibrium under that braking, friction ellipse of each wheel; both wheels of an axle brake alike';
const care =
  'Brakes are safety: change their share only with the maker, your rules and a licensed workshop, and try it first where nobody can be hurt.';
const rearFirst = 'A rear end that locks first spins the car.';

export const brakeForce = figure({
  path: 'brake.force',
  scope: 'car',
  name: 'brake force of the car',
  label: 'brake force',
  symbol: 'F_b',
  words: ['brake force', 'braking force'],
  dimension: 'force',
  needs: { mass: totalMass, braking },
  compute: ({ mass, braking }) => mass * braking,
  formula: 'mass * braking',
  source: 'Newton; no drag',
});
export const brakeTransfer = figure({
  path: 'brake.transfer',
  scope: 'car',
  name: 'load that braking moves to the front axle',
  label: 'moved by braking',
  symbol: 'dN_x',
  words: ['braking load transfer', 'longitudinal load transfer', 'weight transfer under braking'],
  dimension: 'force',
  needs: { mass: totalMass, braking, height: cgHeightNow, wheelbase },
  compute: ({ mass, braking, height, wheelbase }) => (mass * braking * height) / wheelbase,
  formula: 'mass * braking * height / wheelbase',
  source: 'statics',
});
export const idealBrakeShare = figure({
  path: 'brake.idealShare',
  scope: 'car',
  name: 'front brake share at which both ends use their grip alike',
  label: 'ideal brake share',
  symbol: 'p_i',
  words: ['ideal brake share', 'ideal brake bias', 'ideal front brake share', 'ideal brake balance'],
  dimension: 'ratio',
  needs: { share: frontShareNow, braking, height: cgHeightNow, wheelbase },
  compute: ({ share, braking, height, wheelbase }) => share + ((braking / g) * height) / wheelbase,
  formula: 'share + braking / g * height / wheelbase',
  source: 'front load over weight at the braking asked; tires alike, grip that does not fall with load',
  caution: care,
});
export const brakingAxleLoad = figure({
  path: 'brake.axleLoad',
  scope: 'axle',
  name: 'load on the axle under the braking asked',
  label: 'load, braking',
  symbol: 'N_j',
  words: ['axle load under braking', 'load under braking'],
  dimension: 'force',
  needs: { car: straightCar, mass: totalMass, braking, axle: thisAxle },
  compute: ({ car, mass, braking, axle }) => {
    const loads = straightLoads(car, -mass * braking);
    return axle === 'front' ? loads[0] + loads[1] : loads[2] + loads[3];
  },
  source: straight,
});
export const brakeUse = figure({
  path: 'brake.use',
  scope: 'axle',
  name: 'share of its grip that the axle uses under the braking asked',
  label: 'grip used, braking',
  symbol: 'U_b',
  words: ['grip used braking', 'brake use', 'braking use'],
  dimension: 'ratio',
  needs: { car: straightCar, mass: totalMass, braking, share: brakeShareNow, axle: thisAxle },
  compute: ({ car, mass, braking, share, axle }) => {
    const loads = straightLoads(car, -mass * braking);
    const grip = axle === 'front' ? car.grip[0](loads[0]) + car.grip[0](loads[1]) : car.grip[1](loads[2]) + car.grip[1](loads[3]);
    const force = mass * braking * (axle === 'front' ? share : 1 - share);
    if (force === 0) return 0;
    return grip > 0 ? force / grip : refuse('The axle carries no load there.', 'braking');
  },
  source: straight,
});
export const wheelLock = figure({
  path: 'brake.wheelLock',
  scope: 'corner',
  name: 'braking at which the wheel locks',
  label: 'wheel locks at',
  symbol: 'a_l',
  words: ['wheel lock', 'lock up', 'lockup'],
  dimension: 'acceleration',
  needs: { car: straightCar, share: brakeShareNow, axle: thisAxle, side: thisSide },
  compute: ({ car, share, axle, side }) => {
    const at = lockAt(car, wheel(axle, side), axle === 'front' ? share : 1 - share);
    return Number.isFinite(at) ? at * g : refuse('With this brake share the wheel never locks.', 'share');
  },
  source: `the others taken to hold; ${straight}`,
});
const lighter = 'The lighter of two wheels locks first: where both are alike, a doubt of either counts whole.';
export const axleLock = figure({
  path: 'brake.lock',
  scope: 'axle',
  name: 'braking at which the axle begins to lock',
  label: 'locks at',
  main: true,
  symbol: 'a_l',
  words: ['lock', 'locks at', 'lock up', 'lockup', 'locking'],
  dimension: 'acceleration',
  needs: { left: left(wheelLock), right: right(wheelLock) },
  compute: ({ left, right }) => Math.min(left, right),
  formula: 'min(left, right)',
  source: `the lighter wheel first; ${straight}`,
  nonlinear: lighter,
});
export const brakeLimit = figure({
  path: 'brake.limit',
  scope: 'car',
  name: 'hardest braking before a wheel locks, straight ahead',
  label: 'brakes hold up to',
  main: true,
  symbol: 'a_b',
  words: ['braking limit', 'hardest braking', 'how hard brake', 'stopping power', 'max braking', 'brake limit', 'threshold braking'],
  dimension: 'acceleration',
  typical: { range: [6, 11], of: 'road tires on dry asphalt; common practice, no source' },
  needs: { front: front(axleLock), rear: rear(axleLock) },
  compute: ({ front, rear }) => Math.min(front, rear),
  formula: 'min(front, rear)',
  source: straight,
  caution: care,
  nonlinear: 'Of front and rear the first: near the change-over a doubt counts by its two ends.',
});
export const lockOrder = figure({
  path: 'brake.order',
  scope: 'car',
  name: 'how much later the rear locks than the front, below 0 where it locks first',
  label: 'rear locks later by',
  main: true,
  symbol: 'd_l',
  words: ['locks first', 'which locks first', 'which end locks first', 'end locks first', 'lock order', 'brake order', 'rear lock margin'],
  dimension: 'ratio',
  typical: { range: [0, 0.4], of: 'road cars: the front locks first; common practice, no source' },
  needs: { front: front(axleLock), rear: rear(axleLock) },
  compute: ({ front, rear }) => (rear - front) / Math.min(front, rear),
  formula: '(rear - front) / min(front, rear)',
  source: 'difference of the braking at which each end locks, over the lesser',
  caution: `${rearFirst} ${care}`,
  nonlinear: lighter,
});
export const bestBraking = figure({
  path: 'brake.best',
  scope: 'car',
  name: 'braking if every wheel used all its grip',
  label: 'all grip braking',
  symbol: 'a_max',
  words: ['best braking', 'all the grip braking', 'braking with all grip'],
  dimension: 'acceleration',
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
});
/** What is asked, else as hard as the car can. */
const slowing = { braking, limit: brakeLimit };
const slowingSource = 'steady braking as hard as asked, else at the limit; no reaction time, no build-up';
export const stopTime = figure({
  path: 'brake.stopTime',
  scope: 'car',
  name: 'time to stop',
  symbol: 't_s',
  words: ['stop time', 'time to stop', 'stopping time'],
  dimension: 'time',
  needs: { ...slowing, speed: roadSpeed },
  compute: ({ braking, limit, speed }) => speed / (braking > 0 ? braking : limit),
  formula: 'speed / (braking > 0 ? braking : limit)',
  source: slowingSource,
});
export const stopDistance = figure({
  path: 'brake.stopDistance',
  scope: 'car',
  name: 'distance to stop',
  symbol: 's_s',
  words: ['stop distance', 'stopping distance', 'braking distance', 'distance to stop'],
  dimension: 'length',
  needs: { ...slowing, speed: roadSpeed },
  compute: ({ braking, limit, speed }) => speed ** 2 / (2 * (braking > 0 ? braking : limit)),
  formula: 'speed^2 / (2 * (braking > 0 ? braking : limit))',
  source: slowingSource,
  caution: 'A real stop is longer.',
});

export const useInTurn = figure({
  path: 'brake.useInTurn',
  scope: 'axle',
  name: 'share of its grip that the axle uses, turning and braking as asked',
  label: 'grip used, turning',
  symbol: 'U',
  words: ['grip used in the turn', 'use in the turn', 'grip used turning and braking'],
  dimension: 'ratio',
  needs: { model: cornerModel, manoeuvre, state: cornerState, axle: thisAxle },
  compute: ({ model, manoeuvre, state, axle }) => {
    const use = axleGripUse(model, manoeuvre, state, axle === 'front' ? 0 : 1);
    return Number.isFinite(use)
      ? use
      : refuse('A wheel of the axle is off the ground and asked to brake or drive: it locks or spins.', 'lateral');
  },
  source:
    'the part of their grip that both wheels need together, for the force along and the force across; solved with the loads, not added up',
  nonlinear: bends,
});
/** The last solution, for the next search to start with; where it ends does not depend on it. */
let last: CornerBraking | undefined;
export const brakingInTurn = structure({
  path: 'brake.turn',
  scope: 'car',
  name: 'how hard the car can brake in the turn',
  needs: { model: cornerModel, lateral, turn, braking, share: brakeShareNow },
  compute: ({ model, lateral, turn, braking, share }, near?: CornerBraking) => {
    // A search of its own: only for a question about braking.
    if (!(braking > 0)) return refuse('Ask it with some braking in the turn: braking 0.3 g.', 'braking');
    const signed = ((turn === 'left' ? 1 : -1) * lateral) / g;
    const found = cornerBraking(model, signed, share, near ?? (last?.state.lateral === signed ? last : undefined));
    if (!isRefusal(found)) last = found;
    return found;
  },
  source: inCorner,
});
export const brakeLimitInTurn = figure({
  path: 'brake.limitInTurn',
  scope: 'car',
  name: 'hardest braking before a wheel locks, in the turn',
  label: 'brakes hold, turning',
  symbol: 'a_b',
  words: ['braking limit in the turn', 'trail braking limit', 'hardest braking in the turn'],
  dimension: 'acceleration',
  needs: { turning: brakingInTurn },
  compute: ({ turning }) => turning.braking * g,
  source: inCorner,
  caution: care,
  nonlinear: 'Of front and rear the first, and nothing where the corner takes all: a doubt that gets there counts by its two ends.',
});
export const lockOrderInTurn = figure({
  path: 'brake.orderInTurn',
  scope: 'car',
  name: 'use of grip of the front less that of the rear at the braking limit in the turn, below 0 where the rear goes first',
  label: 'front first by, turn',
  symbol: 'd_U',
  words: ['locks first in the turn', 'lock order in the turn'],
  dimension: 'ratio',
  needs: { turning: brakingInTurn },
  compute: ({ turning }) => turning.use[0] - turning.use[1],
  source: inCorner,
  caution: `${rearFirst} ${care}`,
  nonlinear: 'The end that is first used up stands at 1 and the other moves: near the change-over a doubt counts by its two ends.',
});
