/** How the car stands on its springs and tires now, against how it stood when it was measured: loads, heights and wheel travels. */
import { asMeasured, figure, firstOf, front, left, maybe, rear, refuse, right, structure, thisAxle, thisSide } from '../catalog.js';
import { rideHeight } from '../inputs/alignment.js';
import * as massTold from '../inputs/mass.js';
import { chassisStiffness, tireRate } from '../inputs/ride.js';
import * as springTold from '../inputs/springs.js';
import { type Support, staticState } from '../ride/equilibrium.js';
import { addedMoment, addedWeight } from './aboard.js';
import { unsprungCorner, weighedSprung } from './mass.js';
import { motionRatio, springLaw, springStack } from './springs.js';
import { freeRadius } from './tires.js';

const g = 9.80665;
export const equilibrium = 'static equilibrium of the body on four sprung wheels (core/ride/equilibrium.ts)';

export const seat = figure({
  path: 'spring.seat',
  scope: 'corner',
  name: 'height of what stands in line with the spring',
  label: 'stack height',
  symbol: 'c',
  dimension: 'length',
  needs: {
    spacer: springTold.spacer,
    turns: springTold.perchTurns,
    pitch: springTold.perchPitch,
    isolator: springTold.isolatorThickness,
    perchIsolator: springTold.perchIsolatorThickness,
  },
  compute: ({ spacer, turns, pitch, isolator, perchIsolator }) => spacer + turns * pitch + isolator + perchIsolator,
  formula: 'spacer + turns * pitch + isolator + perchIsolator',
  source: 'sum',
});
const difference = 'difference';
export const longer = figure({
  path: 'spring.longer',
  scope: 'corner',
  name: 'growth of the free spring since the car was measured',
  label: 'spring grown by',
  symbol: 'dL_0',
  dimension: 'length',
  needs: {
    law: springLaw,
    lawBefore: asMeasured(springLaw),
    by: springTold.springLongerBy,
    now: maybe(springTold.springFreeLength),
    before: maybe(asMeasured(springTold.springFreeLength)),
  },
  compute: ({ law, lawBefore, by, now, before }) => {
    if (now !== undefined && before !== undefined) return now - before;
    // A spring that has not changed has the same law, and a length that was only told since is not a change.
    return law === lawBefore ? 0 : by;
  },
  source: 'difference of the free lengths; of a new spring, how much longer it is than the one it replaces',
});
export const packed = figure({
  path: 'spring.packed',
  scope: 'corner',
  name: 'growth of what stands in line with the spring since the car was measured',
  label: 'stack is higher by',
  symbol: 'dc',
  dimension: 'length',
  needs: { now: seat, before: asMeasured(seat) },
  compute: ({ now, before }) => now - before,
  formula: 'now - before',
  source: difference,
});
export const lowered = figure({
  path: 'spring.lowered',
  scope: 'axle',
  name: 'drop that the springs are sold with, since the car was measured',
  label: 'sold drop, since',
  symbol: 'd',
  dimension: 'length',
  needs: { now: springTold.springDrop, before: asMeasured(springTold.springDrop) },
  compute: ({ now, before }) => now - before,
  formula: 'now - before',
  source: difference,
});
export const raised = figure({
  path: 'isolator.raised',
  scope: 'axle',
  name: 'raise that the isolators are sold with, since the car was measured',
  label: 'sold raise, since',
  symbol: 'r',
  dimension: 'length',
  needs: { now: springTold.isolatorRaise, before: asMeasured(springTold.isolatorRaise) },
  compute: ({ now, before }) => now - before,
  formula: 'now - before',
  source: difference,
});
export const taller = figure({
  path: 'tire.taller',
  scope: 'axle',
  name: 'growth of the free radius of the tire since the car was measured',
  label: 'tire is taller by',
  symbol: 'dr_0',
  dimension: 'length',
  needs: { now: freeRadius, before: asMeasured(freeRadius) },
  compute: ({ now, before }) => now - before,
  formula: 'now - before',
  source: difference,
});
export const support = structure({
  path: 'support',
  scope: 'corner',
  name: 'what carries the body at the wheel',
  needs: {
    law: springLaw,
    stack: springStack,
    ratio: motionRatio,
    longer,
    packed,
    lowered,
    raised,
    taller: maybe(taller),
    tireRate,
    track: massTold.track,
    unsprung: unsprungCorner,
    sprung: weighedSprung,
  },
  compute: (is): Support => ({
    law: is.law,
    stack: is.stack,
    ratio: is.ratio,
    longer: is.longer,
    packed: is.packed,
    lowered: is.lowered,
    raised: is.raised,
    taller: is.taller ?? 0,
    tireRate: is.tireRate,
    halfTrack: is.track / 2,
    unsprung: is.unsprung * g,
    sprung: is.sprung * g,
  }),
  source: equilibrium,
});
export const standing = structure({
  path: 'staticState',
  scope: 'car',
  name: 'how the car stands',
  needs: {
    lf: front(left(support)),
    rf: front(right(support)),
    lr: rear(left(support)),
    rr: rear(right(support)),
    lfThen: asMeasured(front(left(support))),
    rfThen: asMeasured(front(right(support))),
    lrThen: asMeasured(rear(left(support))),
    rrThen: asMeasured(rear(right(support))),
    addedFront: front(addedWeight),
    addedRear: rear(addedWeight),
    frontMoment: front(addedMoment),
    rearMoment: rear(addedMoment),
    torsion: maybe(chassisStiffness),
  },
  compute: ({ lf, rf, lr, rr, lfThen, rfThen, lrThen, rrThen, addedFront, addedRear, frontMoment, rearMoment, torsion }) => {
    const weight = { front: addedFront * g, rear: addedRear * g, frontMoment, rearMoment };
    return staticState([lfThen, rfThen, lrThen, rrThen], [lf, rf, lr, rr], weight, torsion ?? Number.POSITIVE_INFINITY);
  },
  source: equilibrium,
});
/** The place of a wheel in the fours of the static state. */
export const wheel = (axle: 'front' | 'rear', side: 'left' | 'right'): 0 | 1 | 2 | 3 =>
  axle === 'front' ? (side === 'left' ? 0 : 1) : side === 'left' ? 2 : 3;

export const travelSince = figure({
  path: 'travelSince',
  scope: 'corner',
  name: 'bump travel since the car was measured',
  label: 'bump since measured',
  symbol: 'u',
  words: ['travel since measured'],
  dimension: 'length',
  needs: { standing, axle: thisAxle, side: thisSide },
  compute: ({ standing, axle, side }) => standing.travel[wheel(axle, side)],
  source: equilibrium,
});
export const riseSince = figure({
  path: 'riseSince',
  scope: 'corner',
  name: 'rise of the body on its springs and tires',
  label: 'rise since measured',
  symbol: 'b',
  dimension: 'length',
  needs: { standing, axle: thisAxle, side: thisSide },
  compute: ({ standing, axle, side }) => standing.rise[wheel(axle, side)],
  source: equilibrium,
});
export const soldRise = figure({
  path: 'soldRise',
  scope: 'axle',
  name: 'rise that springs and isolators are sold with',
  label: 'rise as sold',
  symbol: 'b',
  dimension: 'length',
  needs: { lowered, raised },
  compute: ({ lowered, raised }) =>
    lowered === 0 && raised === 0
      ? refuse('How high the car stands on its springs is not known.', 'spring.rate', 'spring.drop')
      : raised - lowered,
  source: "the makers' words",
});
export const cornerHeightChange = figure({
  path: 'corner.heightChange',
  scope: 'corner',
  name: 'change of height since the car was measured',
  label: 'height change',
  symbol: 'dz',
  words: ['height change', 'corner height change'],
  dimension: 'length',
  needs: { rise: firstOf(riseSince, soldRise) },
  compute: ({ rise }) => rise,
  formula: 'rise',
  source: equilibrium,
});
export const heightChange = figure({
  path: 'heightChange',
  scope: 'axle',
  name: 'change of height since the car was measured',
  label: 'height change',
  main: true,
  symbol: 'dz',
  words: ['height change', 'change of height', 'change in height', 'change in ride height', 'lower', 'higher'],
  dimension: 'length',
  needs: { left: left(cornerHeightChange), right: right(cornerHeightChange) },
  compute: ({ left, right }) => (left + right) / 2,
  formula: '(left + right) / 2',
  source: 'mean of both sides',
  caution: springTold.springRate.caution ?? '',
});
export const cornerRideHeight = figure({
  path: 'corner.rideHeight',
  scope: 'corner',
  name: 'ride height as it stands',
  label: 'ride height',
  symbol: 'z',
  words: ['ride height', 'corner ride height', 'height'],
  dimension: 'length',
  needs: { measured: rideHeight, change: cornerHeightChange },
  compute: ({ measured, change }) => measured + change,
  formula: 'measured + change',
  source: equilibrium,
  carriesOn: rideHeight,
});
export const axleRideHeight = figure({
  path: 'axle.rideHeight',
  scope: 'axle',
  name: 'ride height as it stands',
  label: 'ride height',
  main: true,
  symbol: 'z',
  words: ['ride height', 'axle ride height', 'height'],
  dimension: 'length',
  needs: { left: left(cornerRideHeight), right: right(cornerRideHeight) },
  compute: ({ left, right }) => (left + right) / 2,
  formula: '(left + right) / 2',
  source: 'mean of both sides',
});
export const rake = figure({
  path: 'rake',
  scope: 'car',
  name: 'rise of the rear less that of the front since the car was measured',
  label: 'rake change',
  symbol: 'dz_r',
  words: ['rake change', 'change of rake'],
  dimension: 'length',
  needs: { front: front(heightChange), rear: rear(heightChange) },
  compute: ({ front, rear }) => rear - front,
  formula: 'rear - front',
  source: 'difference',
});
