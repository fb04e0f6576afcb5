/** What the car weighed when it was weighed: whole, by axle and by corner, sprung and unsprung, each from the most direct reading. */
import { figure, firstOf, front, left, maybe, quantity, rear, refuse, right, thisAxle, thisSide, way } from '../catalog.js';
import * as told from '../inputs/mass.js';

const sum = 'sum';
const definition = 'definition';

export const axleOfReadings = figure({
  path: 'weighed.axleOfReadings',
  scope: 'axle',
  name: 'axle weight from the scales',
  label: 'axle, from scales',
  symbol: 'W_j',
  dimension: 'mass',
  needs: { left: left(told.scaleReading), right: right(told.scaleReading) },
  compute: ({ left, right }) => left + right,
  formula: 'left + right',
  source: sum,
});
const ofAxle = firstOf(axleOfReadings, told.axleWeight);
export const totalOfAxles = figure({
  path: 'weighed.totalOfAxles',
  scope: 'car',
  name: 'weight of both axles',
  symbol: 'W',
  dimension: 'mass',
  needs: { front: front(ofAxle), rear: rear(ofAxle) },
  compute: ({ front, rear }) => front + rear,
  formula: 'front + rear',
  source: sum,
});
export const weighedTotal = figure({
  path: 'weighed.total',
  scope: 'car',
  name: 'weight as weighed',
  symbol: 'W',
  dimension: 'mass',
  needs: { weight: firstOf(totalOfAxles, told.mass) },
  compute: ({ weight }) => weight,
  formula: 'weight',
  source: definition,
});
export const shareOfFront = figure({
  path: 'weighed.shareOfFront',
  scope: 'car',
  name: 'front share, front axle over the whole',
  label: 'front share weighed',
  symbol: 'w_f',
  dimension: 'ratio',
  needs: { front: front(ofAxle), whole: weighedTotal },
  compute: ({ front, whole }) => front / whole,
  formula: 'front / whole',
  source: definition,
});
export const shareOfRear = figure({
  path: 'weighed.shareOfRear',
  scope: 'car',
  name: 'front share, what the rear axle leaves',
  label: 'front share by rear',
  symbol: 'w_f',
  dimension: 'ratio',
  needs: { rear: rear(ofAxle), whole: weighedTotal },
  compute: ({ rear, whole }) => 1 - rear / whole,
  formula: '1 - rear / whole',
  source: definition,
});
export const weighedShare = figure({
  path: 'weighed.frontShare',
  scope: 'car',
  name: 'front share as weighed',
  label: 'front share weighed',
  symbol: 'w_f',
  dimension: 'ratio',
  needs: { share: firstOf(shareOfFront, shareOfRear, told.frontShare) },
  compute: ({ share }) =>
    share > 0 && share < 1 ? share : refuse('An axle weighs more than the whole car.', 'mass', 'axleWeight', 'frontShare'),
  formula: 'share',
  source: definition,
});
export const axleOfTotal = figure({
  path: 'weighed.axleOfTotal',
  scope: 'axle',
  name: 'axle weight from the whole and its front share',
  label: 'axle by share',
  symbol: 'W_j',
  dimension: 'mass',
  needs: { whole: weighedTotal, share: weighedShare, axle: thisAxle },
  compute: ({ whole, share, axle }) => whole * (axle === 'front' ? share : 1 - share),
  source: definition,
});
export const weighedAxle = figure({
  path: 'weighed.axle',
  scope: 'axle',
  name: 'axle weight as weighed',
  label: 'axle as weighed',
  symbol: 'W_j',
  dimension: 'mass',
  needs: { weight: firstOf(ofAxle, axleOfTotal) },
  compute: ({ weight }) => weight,
  formula: 'weight',
  source: definition,
});
export const shareOfSideways = figure({
  path: 'weighed.shareOfSideways',
  scope: 'car',
  name: 'left share from how far the center of gravity lies to the right',
  label: 'left share by CG',
  symbol: 'w_l',
  dimension: 'ratio',
  needs: { right: told.cgRight, front: front(told.track), rear: rear(told.track) },
  compute: ({ right, front, rear }) => 0.5 - (2 * right) / (front + rear),
  formula: '0.5 - 2 * right / (front + rear)',
  source: 'moments about the center line, on the mean track',
});
export const cornerOfOther = figure({
  path: 'weighed.cornerOfOther',
  scope: 'corner',
  name: 'corner weight, what the other side leaves of the axle',
  label: 'corner by other side',
  symbol: 'W_i',
  dimension: 'mass',
  needs: { axle: weighedAxle, left: maybe(left(told.scaleReading)), right: maybe(right(told.scaleReading)), side: thisSide },
  compute: ({ axle, left, right, side }) => {
    const other = side === 'left' ? right : left;
    if (other === undefined) return refuse('No scale reading of the other side of this axle is known.');
    return axle - other;
  },
  source: 'difference',
});
/** Nobody sets a car's corners by guess: each axle leans on its left wheel a little more or less than the other. */
export const leftOfAxle = quantity({
  path: 'weighed.leftOfAxle',
  scope: 'axle',
  name: 'left share of the axle weight',
  label: 'left share of axle',
  symbol: 'w_lj',
  dimension: 'ratio',
  ways: [
    way({
      needs: { share: firstOf(shareOfSideways, told.leftShare) },
      compute: ({ share }) => share,
      formula: 'share',
      within: { absolute: 0.021 },
      source: 'both axles alike, so that cross stands at 50 % within 1.5: common practice, no source',
    }),
  ],
});
export const cornerOfShare = figure({
  path: 'weighed.cornerOfShare',
  scope: 'corner',
  name: 'corner weight from the side share of its axle',
  label: 'corner by share',
  symbol: 'W_i',
  dimension: 'mass',
  needs: { axle: weighedAxle, share: leftOfAxle, side: thisSide },
  compute: ({ axle, share, side }) => axle * (side === 'left' ? share : 1 - share),
  source: definition,
});
export const weighedCorner = figure({
  path: 'weighed.corner',
  scope: 'corner',
  name: 'corner weight as weighed',
  label: 'corner as weighed',
  symbol: 'W_i',
  dimension: 'mass',
  needs: { weight: firstOf(told.scaleReading, cornerOfOther, cornerOfShare) },
  compute: ({ weight }) => (weight > 0 ? weight : refuse('The other wheel weighs more than the whole axle.', 'scale', 'axleWeight')),
  formula: 'weight',
  source: definition,
});

export const halfUnsprung = figure({
  path: 'unsprung.half',
  scope: 'axle',
  name: 'half of the axle unsprung weight',
  label: 'half of unsprung',
  symbol: 'W_ui',
  dimension: 'mass',
  needs: { axle: told.unsprungAxle },
  compute: ({ axle }) => axle / 2,
  formula: 'axle / 2',
  source: 'left and right alike',
});
export const unsprungOfShare = figure({
  path: 'unsprung.ofShare',
  scope: 'axle',
  name: 'unsprung weight of a wheel from its share',
  label: 'unsprung by share',
  symbol: 'W_ui',
  dimension: 'mass',
  needs: { axle: weighedAxle, share: told.unsprungShare },
  compute: ({ axle, share }) => (axle * share) / 2,
  formula: 'axle * share / 2',
  source: definition,
});
export const unsprungOfSprung = figure({
  path: 'unsprung.ofSprung',
  scope: 'corner',
  name: 'unsprung weight of a wheel from what it carries',
  label: 'unsprung by sprung',
  symbol: 'W_ui',
  dimension: 'mass',
  needs: { sprung: told.sprungTold, share: told.unsprungShare },
  compute: ({ sprung, share }) => (sprung * share) / (1 - share),
  formula: 'sprung * share / (1 - share)',
  source: definition,
});
export const unsprungCorner = figure({
  path: 'unsprung.corner',
  scope: 'corner',
  name: 'unsprung weight of the wheel',
  label: 'unsprung weight',
  symbol: 'W_ui',
  dimension: 'mass',
  typical: { range: [20, 60], of: 'road cars; common practice, no source' },
  needs: { weight: firstOf(told.unsprungCorner, halfUnsprung, unsprungOfShare, unsprungOfSprung) },
  compute: ({ weight }) => weight,
  formula: 'weight',
  source: definition,
});
export const sprungOfScales = figure({
  path: 'weighed.sprungOfScales',
  scope: 'corner',
  name: 'sprung weight from the scales',
  label: 'sprung, from scales',
  symbol: 'W_s',
  dimension: 'mass',
  needs: { corner: weighedCorner, unsprung: unsprungCorner },
  compute: ({ corner, unsprung }) => corner - unsprung,
  formula: 'corner - unsprung',
  source: definition,
});
export const weighedSprung = figure({
  path: 'weighed.sprung',
  scope: 'corner',
  name: 'sprung weight as weighed',
  label: 'sprung as weighed',
  symbol: 'W_s',
  dimension: 'mass',
  needs: { weight: firstOf(told.sprungTold, sprungOfScales) },
  compute: ({ weight }) => (weight > 0 ? weight : refuse('The unsprung weight is more than the wheel weighs.', 'scale', 'unsprung')),
  formula: 'weight',
  source: definition,
});
