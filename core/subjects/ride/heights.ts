/** How much higher or lower the car stands since it was measured: by the equilibrium of all four wheels, or what one wheel's own changes make. */
import {
  asMeasured,
  carry,
  figure,
  front,
  given,
  left,
  maybe,
  quantity,
  type Refusal,
  rear,
  refine,
  refuse,
  right,
  way,
  wheels,
} from '../../catalog.js';
import { addedWeight } from '../mass/aboard.js';
import { wheelbase } from '../mass/told.js';
import { weighedSprung } from '../mass/weighed.js';
import { motionRatio, springLaw } from '../springs/forces.js';
import { compressionAt } from '../springs/law.js';
import { type MotionRatio, wheelTravel } from '../springs/motionRatio.js';
import * as springTold from '../springs/told.js';
import { rideRate } from '../springs/wheelRates.js';
import { nominalDiameter } from '../tires/dimensions.js';
import { measuredDiameter } from '../tires/told.js';
import { equilibrium, lowered, padded, raised, riseSince, shimmed } from './standing.js';

const g = 9.80665;
const same = 'Nothing of it has changed since the car was measured.';
const needsRatio = 'What a change at the spring does to the height depends on the motion ratio: tell it.';
const needsRate = 'How far the load that came aboard lets the car down depends on its springs: tell the spring rate.';
const needsOld = 'The height change needs the spring rate as it was when the car was measured.';
const needsWeight = 'What another spring rate does to the height depends on what the spring carries: tell the weight of the car.';

/** What has not changed stands aside, so that nothing is said of it. */
const unlessNone = (grown: number): number | Refusal => (grown === 0 ? refuse(same) : grown);

export const lengthGrowth = quantity({
  path: 'spring.lengthGrown',
  scope: 'axle',
  name: 'growth of the free length of the springs, as told',
  label: 'springs longer by',
  symbol: 'dL',
  dimension: 'length',
  ways: [
    way({
      needs: { now: springTold.springFreeLength, before: asMeasured(springTold.springFreeLength) },
      compute: ({ now, before }) => unlessNone(now - before),
      source: 'difference of the free lengths',
    }),
    way({
      needs: { now: given(springTold.springLongerBy), before: refine(asMeasured(given(springTold.springLongerBy)), 0) },
      compute: ({ now, before }) => unlessNone(now - before),
      source: 'as told',
    }),
    way({ needs: {}, compute: (): number | Refusal => refuse(same, 'spring.length'), source: 'no lengths are told' }),
  ],
});
/** Under what the car weighed, the new spring is pressed together less or more than the old one. */
export const pressGrowth = figure({
  path: 'spring.pressedLess',
  scope: 'corner',
  name: 'how much less the weight presses the new spring together than the old one',
  label: 'pressed less by',
  symbol: 'dx',
  dimension: 'length',
  needs: { law: springLaw, before: asMeasured(springLaw), sprung: weighedSprung, motion: motionRatio },
  compute: ({ law, before, sprung, motion }) => {
    if (law === before) return refuse(same);
    const force = (sprung * g) / motion.ratio;
    return compressionAt(before, force) - compressionAt(law, force);
  },
  source: 'each spring under the same weight, W g / r (1/k1 - 1/k2) where both have one rate',
});
export const shimGrowth = figure({
  path: 'spring.shimGrown',
  scope: 'corner',
  name: 'growth of spacer and perch where it is not nothing',
  label: 'shims grown by',
  symbol: 'dc_s',
  dimension: 'length',
  needs: { shimmed },
  compute: ({ shimmed }) => unlessNone(shimmed),
  source: 'difference',
});
export const isolatorGrowth = figure({
  path: 'isolators.changed',
  scope: 'axle',
  name: 'growth of the isolators where it is not nothing',
  label: 'isolators grown by',
  symbol: 'dc_i',
  dimension: 'length',
  needs: { padded },
  compute: ({ padded }) => unlessNone(padded),
  source: 'difference',
});
export const tireRise = quantity({
  path: 'rise.byTire',
  scope: 'axle',
  name: 'rise by the size of the tires',
  label: 'rise by tires',
  symbol: 'b_t',
  dimension: 'length',
  ways: [
    way({
      needs: { now: given(measuredDiameter), before: asMeasured(given(measuredDiameter)) },
      compute: ({ now, before }) => unlessNone((now - before) / 2),
      source: 'half of the difference of the diameters that were measured',
      basis: 'tires not squashed',
    }),
    way({
      needs: { now: nominalDiameter, before: asMeasured(nominalDiameter) },
      compute: ({ now, before }) => unlessNone((now - before) / 2),
      source: 'half of the difference of the diameters that the sizes print',
      basis: 'by the printed sizes, tires not squashed',
    }),
  ],
});

/** How much the body rises where the spring and what stands in line with it grow by so much. */
function risen(grown: number, motion: MotionRatio | undefined): number | Refusal {
  if (grown === 0) return 0;
  if (motion === undefined) return refuse(needsRatio, 'spring.ratio');
  const travel = wheelTravel(motion, 0, -grown);
  return typeof travel === 'number' ? -travel : travel;
}
const alone = 'at the spring, this wheel alone, tire left out';
export const { axle: heightChange, corner: cornerHeightChange } = wheels({
  path: 'heightChange',
  over: 'mean',
  corner: { words: ['height change', 'corner height change'] },
  name: 'change of height since the car was measured',
  label: 'height change',
  main: true,
  symbol: 'dz',
  words: ['height change', 'change of height', 'change in height', 'change in ride height', 'lower', 'higher'],
  dimension: 'length',
  sane: [-0.3, 0.3],
  caution: springTold.springRate.caution ?? '',
  nonlinear: 'How far a weight presses a spring together goes with one over its rate; a doubt is taken from both its ends.',
  ways: [
    way({ needs: { rise: riseSince }, compute: ({ rise }) => rise, formula: 'rise', source: equilibrium }),
    way({
      needs: {
        shimmed,
        padded,
        lowered,
        raised,
        added: addedWeight,
        motion: maybe(motionRatio),
        law: maybe(springLaw),
        lawBefore: maybe(asMeasured(springLaw)),
        sprung: maybe(weighedSprung),
        rideRate: maybe(rideRate),
        length: refine(lengthGrowth, 0, alone),
        pressed: refine(pressGrowth, 0, 'new springs as long as the old ones unless told, this wheel alone'),
        tire: refine(tireRise, 0),
        // These two only say that they are counted.
        shims: refine(shimGrowth, 0, alone),
        isolators: refine(isolatorGrowth, 0, `${alone}, isolator not squashed`),
      },
      compute: (is) => {
        let grown = is.shimmed + is.padded;
        // What springs are sold to do stands for their length and their rate.
        if (is.lowered === 0) {
          if (is.law !== undefined && is.lawBefore === undefined) return refuse(needsOld, 'spring.rate');
          if (is.law !== is.lawBefore && is.sprung === undefined) return refuse(needsWeight, 'mass');
          grown += is.length + is.pressed;
        }
        if (is.added !== 0 && is.rideRate === undefined) return refuse(needsRate, 'spring.rate');
        const loaded = is.added === 0 || is.rideRate === undefined ? 0 : (is.added * g) / (2 * is.rideRate);
        const atSpring = risen(grown, is.motion);
        return typeof atSpring === 'number' ? atSpring + is.tire - loaded + is.raised - is.lowered : atSpring;
      },
      source: 'the spring keeps its force, so the body rises by what its line grows over the motion ratio; each wheel by itself',
    }),
  ],
});

/** What it was found to be, and what it has become. */
export const rideHeight = quantity({
  path: 'rideHeight',
  scope: 'corner',
  name: 'ride height',
  symbol: 'z',
  state: true,
  words: ['ride height', 'height', 'fender height', 'body height', 'measured ride height'],
  dimension: 'length',
  sane: [0.03, 1],
  step: { inch: 0.0254 / 8, metric: 0.002 },
  told: { usually: 'measured', measured: { absolute: 0.002 }, spec: { absolute: 0.01 } },
  measure: 'From level ground up to a mark on the body over the wheel centre, car rolled and settled, load as it runs.',
  caution: 'Measure from beside the car, never from under it.',
});
carry(rideHeight, {
  needs: { measured: asMeasured(given(rideHeight)), change: cornerHeightChange },
  compute: ({ measured, change }) => measured + change,
  formula: 'measured + change',
  source: equilibrium,
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
  needs: { left: left(rideHeight), right: right(rideHeight) },
  compute: ({ left, right }) => (left + right) / 2,
  formula: '(left + right) / 2',
  source: 'mean of both sides',
});
export const rake = quantity({
  path: 'rake',
  scope: 'car',
  name: 'rise of the rear less that of the front since the car was measured',
  label: 'rake change',
  symbol: 'dz_r',
  words: ['rake', 'rake change', 'change of rake'],
  dimension: 'length',
  sane: [-0.3, 0.3],
  ways: [
    way({
      needs: { front: front(heightChange), rear: rear(heightChange) },
      compute: ({ front, rear }) => rear - front,
      formula: 'rear - front',
      source: 'difference',
    }),
  ],
});
export const rakeAngle = quantity({
  path: 'rake.angle',
  untypical: 'A change of what was measured.',
  scope: 'car',
  name: 'nose-down angle since the car was measured',
  label: 'rake change, angle',
  symbol: 'd theta',
  words: ['rake angle', 'rake angle change', 'pitch angle'],
  dimension: 'angle',
  sane: [-0.15, 0.15],
  ways: [
    way({
      needs: { rake, wheelbase },
      compute: ({ rake, wheelbase }) => Math.atan(rake / wheelbase),
      formula: 'atan(rake / wheelbase)',
      source: 'geometry; the nose down is positive, and takes as much off the caster',
    }),
  ],
});
