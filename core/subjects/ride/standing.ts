/** How the car stands on its springs and tires now, against how it stood when it was measured: loads, heights and wheel travels. */
import {
  asMeasured,
  figure,
  front,
  left,
  quantity,
  rear,
  refine,
  refuse,
  right,
  structure,
  thisAxle,
  thisSide,
  way,
} from '../../catalog.js';
import { addedMoment, addedWeight } from '../mass/aboard.js';
import * as massTold from '../mass/told.js';
import { unsprungCorner, weighedSprung } from '../mass/weighed.js';
import { motionRatio, seatedStack, springLaw } from '../springs/forces.js';
import { springLever } from '../springs/springLever.js';
import * as springTold from '../springs/told.js';
import { freeRadius } from '../tires/dimensions.js';
import type { Support } from './axle.js';
import { staticState } from './equilibrium.js';
import { chassisStiffness, tireRate } from './told.js';

const g = 9.80665;
const sum = 'sum';
export const equilibrium = 'static equilibrium of the body on four sprung wheels (core/subjects/ride/equilibrium.ts)';

export const shims = quantity({
  path: 'spring.shims',
  scope: 'corner',
  name: 'height of spacer and perch in line with the spring',
  label: 'spacer and perch',
  symbol: 'c_s',
  dimension: 'length',
  ways: [
    way({
      needs: { spacer: springTold.spacer, turns: springTold.perchTurns, pitch: springTold.perchPitch },
      compute: ({ spacer, turns, pitch }) => spacer + turns * pitch,
      formula: 'spacer + turns * pitch',
      source: sum,
    }),
    // Of a perch that was not turned nobody needs the pitch.
    way({
      needs: { spacer: springTold.spacer, turns: springTold.perchTurns },
      compute: ({ spacer, turns }) =>
        turns === 0 ? spacer : refuse('The perch is turned, and how high one turn lifts it is not known.', 'perch.pitch'),
      source: sum,
    }),
  ],
});
export const isolators = figure({
  path: 'isolators.height',
  scope: 'axle',
  name: 'height of the isolators in line with the spring',
  label: 'isolators, height',
  symbol: 'c_i',
  dimension: 'length',
  needs: { isolator: springTold.isolatorThickness, perchIsolator: springTold.perchIsolatorThickness },
  compute: ({ isolator, perchIsolator }) => isolator + perchIsolator,
  formula: 'isolator + perchIsolator',
  source: sum,
});
const difference = 'difference';
export const longer = quantity({
  path: 'spring.longer',
  scope: 'corner',
  name: 'growth of the free spring since the car was measured',
  label: 'spring grown by',
  symbol: 'dL_0',
  dimension: 'length',
  ways: [
    way({
      needs: { now: springTold.springFreeLength, before: asMeasured(springTold.springFreeLength) },
      compute: ({ now, before }) => now - before,
      formula: 'now - before',
      source: 'difference of the free lengths',
    }),
    way({
      needs: { law: springLaw, lawBefore: asMeasured(springLaw), by: springTold.springLongerBy },
      // A spring that has not changed has the same law, and a length that was only told since is not a change.
      compute: ({ law, lawBefore, by }) => (law === lawBefore ? 0 : by),
      source: 'of a new spring, how much longer it is than the one it replaces',
    }),
  ],
});
export const shimmed = figure({
  path: 'spring.shimmed',
  scope: 'corner',
  name: 'growth of spacer and perch since the car was measured',
  label: 'shims higher by',
  symbol: 'dc_s',
  dimension: 'length',
  needs: { now: shims, before: asMeasured(shims) },
  compute: ({ now, before }) => now - before,
  formula: 'now - before',
  source: difference,
});
export const padded = figure({
  path: 'isolators.grown',
  scope: 'axle',
  name: 'growth of the isolators since the car was measured',
  label: 'isolators higher by',
  symbol: 'dc_i',
  dimension: 'length',
  needs: { now: isolators, before: asMeasured(isolators) },
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
    stack: seatedStack,
    ratio: motionRatio,
    longer,
    shimmed,
    padded,
    lowered,
    raised,
    taller: refine(taller, 0),
    tireRate,
    track: massTold.track,
    base: springLever,
    unsprung: unsprungCorner,
    sprung: weighedSprung,
  },
  compute: (is): Support => ({
    law: is.law,
    stack: is.stack,
    ratio: is.ratio,
    longer: is.longer,
    packed: is.shimmed + is.padded,
    lowered: is.lowered,
    raised: is.raised,
    taller: is.taller,
    tireRate: is.tireRate,
    halfTrack: is.track / 2,
    halfBase: is.base / 2,
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
    torsion: refine(chassisStiffness, Number.POSITIVE_INFINITY, 'a body that twists'),
  },
  compute: ({ lf, rf, lr, rr, lfThen, rfThen, lrThen, rrThen, addedFront, addedRear, frontMoment, rearMoment, torsion }) => {
    const weight = { front: addedFront * g, rear: addedRear * g, frontMoment, rearMoment };
    return staticState([lfThen, rfThen, lrThen, rrThen], [lf, rf, lr, rr], weight, torsion);
  },
  source: equilibrium,
});
/** The place of a wheel in the fours of the static state. */
export const wheel = (axle: 'front' | 'rear', side: 'left' | 'right'): 0 | 1 | 2 | 3 =>
  axle === 'front' ? (side === 'left' ? 0 : 1) : side === 'left' ? 2 : 3;

const pressing = 'How far a weight presses a spring together goes with one over its rate; a doubt is taken from both its ends.';
export const travelSince = figure({
  path: 'travelSince',
  nonlinear: pressing,
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
  nonlinear: pressing,
  needs: { standing, axle: thisAxle, side: thisSide },
  compute: ({ standing, axle, side }) => standing.rise[wheel(axle, side)],
  source: equilibrium,
});
