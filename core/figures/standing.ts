/** How the car stands on its springs and tires now, against how it stood when it was measured: loads, heights and wheel travels. */
import { asMeasured, figure, firstOf, front, left, maybe, rear, refuse, right, structure, thisAxle, thisSide } from '../catalog.js';
import { rideHeight } from '../inputs/alignment.js';
import * as massTold from '../inputs/mass.js';
import { chassisStiffness, tireRate } from '../inputs/ride.js';
import * as springTold from '../inputs/springs.js';
import { type Support, staticState } from '../ride/equilibrium.js';
import { added } from './aboard.js';
import { unsprungCorner, weighedCorner, weighedSprung } from './mass.js';
import { motionRatio, springLaw, springStack } from './springs.js';
import { freeRadius } from './tires.js';

const g = 9.80665;
const equilibrium = 'static equilibrium of the body on four sprung wheels (core/ride/equilibrium.ts)';
const statics = 'statics';

export const seat = figure({
  path: 'spring.seat',
  scope: 'corner',
  name: 'height of what stands in line with the spring',
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
export const support = structure({
  path: 'support',
  scope: 'corner',
  name: 'what carries the body at the wheel',
  needs: {
    law: springLaw,
    stack: springStack,
    ratio: motionRatio,
    length: springTold.springFreeLength,
    seat,
    drop: springTold.springDrop,
    raise: springTold.isolatorRaise,
    tireRate,
    tireRadius: maybe(freeRadius),
    track: massTold.track,
    unsprung: unsprungCorner,
    sprung: weighedSprung,
  },
  compute: (is): Support => ({
    law: is.law,
    stack: is.stack,
    ratio: is.ratio,
    length: is.length,
    seat: is.seat,
    drop: is.drop,
    raise: is.raise,
    tireRate: is.tireRate,
    tireRadius: is.tireRadius,
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
    added,
    torsion: maybe(chassisStiffness),
  },
  compute: ({ lf, rf, lr, rr, lfThen, rfThen, lrThen, rrThen, added, torsion }) => {
    const weight = { front: added.front * g, rear: added.rear * g, frontMoment: added.frontMoment * g, rearMoment: added.rearMoment * g };
    return staticState([lfThen, rfThen, lrThen, rrThen], [lf, rf, lr, rr], weight, torsion ?? Number.POSITIVE_INFINITY);
  },
  source: equilibrium,
});
/** The place of a wheel in the fours of the static state. */
const wheel = (axle: 'front' | 'rear', side: 'left' | 'right'): 0 | 1 | 2 | 3 =>
  axle === 'front' ? (side === 'left' ? 0 : 1) : side === 'left' ? 2 : 3;

export const travelSince = figure({
  path: 'travelSince',
  scope: 'corner',
  name: 'bump travel since the car was measured',
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
  symbol: 'b',
  dimension: 'length',
  needs: {
    drop: springTold.springDrop,
    raise: springTold.isolatorRaise,
    dropThen: asMeasured(springTold.springDrop),
    raiseThen: asMeasured(springTold.isolatorRaise),
  },
  compute: ({ drop, raise, dropThen, raiseThen }) =>
    drop === dropThen && raise === raiseThen
      ? refuse('How high the car stands on its springs is not known.', 'spring.rate', 'spring.drop')
      : raise - raiseThen - (drop - dropThen),
  source: "the makers' words",
});
export const cornerHeightChange = figure({
  path: 'corner.heightChange',
  scope: 'corner',
  name: 'change of height since the car was measured',
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
  symbol: 'dz_r',
  words: ['rake change', 'change of rake'],
  dimension: 'length',
  needs: { front: front(heightChange), rear: rear(heightChange) },
  compute: ({ front, rear }) => rear - front,
  formula: 'rear - front',
  source: 'difference',
});

export const loadOnSprings = figure({
  path: 'loadOnSprings',
  scope: 'corner',
  name: 'weight on the wheel, on springs and tires',
  symbol: 'W_i',
  dimension: 'mass',
  needs: { weighed: asMeasured(weighedCorner), standing, axle: thisAxle, side: thisSide },
  compute: ({ weighed, standing, axle, side }) => weighed + standing.gain[wheel(axle, side)] / g,
  source: equilibrium,
});
export const loadOfSprung = figure({
  path: 'loadOfSprung',
  scope: 'corner',
  name: 'weight on the wheel, sprung and unsprung',
  symbol: 'W_i',
  dimension: 'mass',
  needs: { standing, axle: thisAxle, side: thisSide },
  compute: ({ standing, axle, side }) => standing.load[wheel(axle, side)] / g,
  source: equilibrium,
});
export const loadShared = figure({
  path: 'loadShared',
  scope: 'corner',
  name: 'weight on the wheel, with what came aboard shared by distance alone',
  symbol: 'N',
  dimension: 'mass',
  needs: { weighed: weighedCorner, added, track: massTold.track, axle: thisAxle, side: thisSide },
  compute: ({ weighed, added, track, axle, side }) => {
    const [weight, moment] = axle === 'front' ? [added.front, added.frontMoment] : [added.rear, added.rearMoment];
    return weighed + weight / 2 + (side === 'left' ? moment : -moment) / track;
  },
  source: 'statics without the springs, where those are not known; common practice, no source',
});
export const cornerMass = figure({
  path: 'cornerMass',
  scope: 'corner',
  name: 'corner weight as it stands',
  symbol: 'W_i',
  words: ['weight', 'corner weight', 'wheel weight', 'wheel load', 'scale'],
  dimension: 'mass',
  needs: { load: firstOf(loadOnSprings, loadOfSprung, loadShared) },
  compute: ({ load }) => load,
  formula: 'load',
  source: equilibrium,
  carriesOn: massTold.scaleReading,
});
export const sprungOnSprings = figure({
  path: 'sprungOnSprings',
  scope: 'corner',
  name: 'sprung weight of the wheel on springs and tires',
  symbol: 'W_s',
  dimension: 'mass',
  needs: { standing, axle: thisAxle, side: thisSide },
  compute: ({ standing, axle, side }) => standing.sprung[wheel(axle, side)] / g,
  source: equilibrium,
});
export const sprungShared = figure({
  path: 'sprungShared',
  scope: 'corner',
  name: 'sprung weight of the wheel as weighed, with what came aboard',
  symbol: 'W_s',
  dimension: 'mass',
  needs: { sprung: weighedSprung, weighed: maybe(weighedCorner), load: maybe(loadShared) },
  compute: ({ sprung, weighed, load }) => (weighed === undefined || load === undefined ? sprung : sprung + load - weighed),
  source: statics,
});
export const sprungMass = figure({
  path: 'sprungMass',
  scope: 'corner',
  name: 'sprung weight as it stands',
  symbol: 'W_s',
  words: ['sprung weight', 'sprung mass', 'corner sprung weight'],
  dimension: 'mass',
  needs: { sprung: firstOf(sprungOnSprings, sprungShared) },
  compute: ({ sprung }) => sprung,
  formula: 'sprung',
  source: equilibrium,
  carriesOn: massTold.sprungTold,
});
export const axleSprungMass = figure({
  path: 'axle.sprungMass',
  scope: 'axle',
  name: 'sprung weight of both wheels',
  symbol: 'W_sj',
  words: ['sprung weight', 'sprung mass', 'axle sprung weight'],
  dimension: 'mass',
  needs: { left: left(sprungMass), right: right(sprungMass) },
  compute: ({ left, right }) => left + right,
  formula: 'left + right',
  source: 'sum',
});

const fourLoads = { lf: front(left(cornerMass)), rf: front(right(cornerMass)), lr: rear(left(cornerMass)), rr: rear(right(cornerMass)) };
export const cross = figure({
  path: 'cross',
  scope: 'car',
  name: 'cross weight, right front and left rear',
  symbol: 'X',
  words: ['cross', 'cross weight', 'cross percent', 'wedge', 'diagonal weight'],
  dimension: 'ratio',
  typical: { range: [0.49, 0.51], of: 'cars that turn both ways; common practice, no source' },
  needs: fourLoads,
  compute: ({ lf, rf, lr, rr }) => (rf + lr) / (lf + rf + lr + rr),
  formula: '(rf + lr) / (lf + rf + lr + rr)',
  source: 'by definition',
});
export const leftShareNow = figure({
  path: 'leftShareNow',
  scope: 'car',
  name: 'left share of the weight as it stands',
  symbol: 'w_l',
  words: ['left share', 'left percent', 'percent left'],
  dimension: 'ratio',
  needs: fourLoads,
  compute: ({ lf, rf, lr, rr }) => (lf + lr) / (lf + rf + lr + rr),
  formula: '(lf + lr) / (lf + rf + lr + rr)',
  source: 'by definition',
  carriesOn: massTold.leftShare,
});
export const cgRightNow = figure({
  path: 'cg.rightNow',
  scope: 'car',
  name: 'center of gravity, right of center, as it stands',
  symbol: 'y',
  words: ['cg right of center', 'cg sideways', 'cg offset'],
  dimension: 'length',
  needs: { ...fourLoads, front: front(massTold.track), rear: rear(massTold.track) },
  compute: ({ lf, rf, lr, rr, front, rear }) => ((rf - lf) * front + (rr - lr) * rear) / (2 * (lf + rf + lr + rr)),
  formula: '((rf - lf) * front + (rr - lr) * rear) / (2 * (lf + rf + lr + rr))',
  source: 'moments about the center line',
  carriesOn: massTold.cgRight,
});
