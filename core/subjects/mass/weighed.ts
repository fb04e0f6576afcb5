/** What the car weighed when it was weighed: whole, by axle and by corner, sprung and unsprung, each from the most direct reading. */
import {
  asMeasured,
  figure,
  front,
  given,
  left,
  maybe,
  quantity,
  rear,
  refine,
  refuse,
  right,
  thisAxle,
  thisSide,
  way,
} from '../../catalog.js';
import * as told from './told.js';
import { unsaidDriver, unsaidOnWheel } from './unsaid.js';

const sum = 'sum';
const definition = 'definition';

export const ofAxle = quantity({
  path: 'weighed.axleOfReadings',
  scope: 'axle',
  name: 'axle weight as it was read',
  label: 'axle, as read',
  symbol: 'W_j',
  dimension: 'mass',
  ways: [
    way({
      needs: { left: left(told.scaleReading), right: right(told.scaleReading) },
      compute: ({ left, right }) => left + right,
      formula: 'left + right',
      source: sum,
    }),
    way({ needs: { weight: told.axleWeight }, compute: ({ weight }) => weight, formula: 'weight', source: 'the reading' }),
  ],
});
const byShare = 'one axle over its share of the whole';
export const totalRead = quantity({
  path: 'weighed.totalRead',
  scope: 'car',
  name: 'weight as it was read',
  symbol: 'W',
  dimension: 'mass',
  ways: [
    way({
      needs: { front: front(ofAxle), rear: rear(ofAxle) },
      compute: ({ front, rear }) => front + rear,
      formula: 'front + rear',
      source: sum,
    }),
    way({ needs: { weight: told.mass }, compute: ({ weight }) => weight, formula: 'weight', source: 'the reading' }),
    way({
      needs: { front: front(ofAxle), share: given(told.frontShare) },
      compute: ({ front, share }) => front / share,
      formula: 'front / share',
      source: byShare,
    }),
    way({
      needs: { rear: rear(ofAxle), share: given(told.frontShare) },
      compute: ({ rear, share }) => rear / (1 - share),
      formula: 'rear / (1 - share)',
      source: byShare,
    }),
  ],
});
const proper = (share: number) =>
  share > 0 && share < 1 ? share : refuse('An axle weighs more than the whole car.', 'mass', 'axleWeight', 'frontShare');
export const shareRead = quantity({
  path: 'weighed.shareRead',
  percent: true,
  scope: 'car',
  name: 'front share as it was read',
  label: 'front share read',
  symbol: 'w_f',
  dimension: 'ratio',
  ways: [
    way({
      needs: { front: front(ofAxle), whole: totalRead },
      compute: ({ front, whole }) => proper(front / whole),
      formula: 'front / whole',
      source: definition,
    }),
    way({
      needs: { rear: rear(ofAxle), whole: totalRead },
      compute: ({ rear, whole }) => proper(1 - rear / whole),
      formula: '1 - rear / whole',
      source: definition,
    }),
    way({ needs: { share: told.frontShare }, compute: ({ share }) => proper(share), formula: 'share', source: 'the reading' }),
  ],
});
const driverToo = 'the readings, and what of the driver was not in them';
export const weighedTotal = figure({
  path: 'weighed.total',
  scope: 'car',
  name: 'weight as weighed',
  symbol: 'W',
  dimension: 'mass',
  needs: { read: totalRead, front: front(unsaidDriver), rear: rear(unsaidDriver) },
  compute: ({ read, front, rear }) => read + front + rear,
  formula: 'read + front + rear',
  source: driverToo,
});
export const weighedShare = figure({
  path: 'weighed.frontShare',
  percent: true,
  scope: 'car',
  name: 'front share as weighed',
  label: 'front share weighed',
  symbol: 'w_f',
  dimension: 'ratio',
  needs: { share: shareRead, read: maybe(totalRead), front: front(unsaidDriver), rear: rear(unsaidDriver) },
  compute: ({ share, read, front, rear }) => {
    if (front === 0 && rear === 0) return share;
    return read === undefined ? share : (share * read + front) / (read + front + rear);
  },
  source: driverToo,
});
export const axleRead = quantity({
  path: 'weighed.axleRead',
  scope: 'axle',
  name: 'axle weight as it was read, or by the share of the axle',
  label: 'axle, read or shared',
  symbol: 'W_j',
  dimension: 'mass',
  ways: [
    way({ needs: { read: ofAxle }, compute: ({ read }) => read, formula: 'read', source: 'the reading' }),
    way({
      needs: { whole: totalRead, share: shareRead, axle: thisAxle },
      compute: ({ whole, share, axle }) => whole * (axle === 'front' ? share : 1 - share),
      source: definition,
    }),
  ],
});
export const weighedAxle = figure({
  path: 'weighed.axle',
  scope: 'axle',
  name: 'axle weight as weighed',
  label: 'axle as weighed',
  symbol: 'W_j',
  dimension: 'mass',
  needs: { read: axleRead, driver: unsaidDriver },
  compute: ({ read, driver }) => read + driver,
  formula: 'read + driver',
  source: driverToo,
});
export const leftRead = quantity({
  path: 'weighed.leftRead',
  percent: true,
  scope: 'car',
  name: 'left share as it was read',
  label: 'left share read',
  symbol: 'w_l',
  dimension: 'ratio',
  ways: [
    way({
      needs: { right: told.cgRight, front: asMeasured(front(told.track)), rear: asMeasured(rear(told.track)) },
      compute: ({ right, front, rear }) => 0.5 - (2 * right) / (front + rear),
      formula: '0.5 - 2 * right / (front + rear)',
      source: 'moments about the center line, on the mean track',
    }),
    way({ needs: { share: told.leftShare }, compute: ({ share }) => share, formula: 'share', source: 'the reading' }),
  ],
});
/** Nobody sets a car's corners by guess: each axle leans on its left wheel a little more or less than the other. */
export const twist = quantity({
  path: 'weighed.twist',
  percent: true,
  scope: 'car',
  name: 'left share of the front axle less that of the rear',
  label: 'front less rear, left',
  symbol: 'dw_l',
  dimension: 'ratio',
  asks: { words: 'how the weight stands on its four corners', tell: told.scaleReading },
  ways: [
    way({
      needs: {
        lf: front(left(told.scaleReading)),
        rf: front(right(told.scaleReading)),
        lr: rear(left(told.scaleReading)),
        rr: rear(right(told.scaleReading)),
      },
      compute: ({ lf, rf, lr, rr }) => lf / (lf + rf) - lr / (lr + rr),
      formula: 'lf / (lf + rf) - lr / (lr + rr)',
      source: 'the readings',
    }),
    way({
      needs: {},
      compute: () => 0,
      sort: 'estimate',
      within: { absolute: 0.03 },
      source: 'cross stands at 50 % within 1.5 on a car whose corners were never set: common practice, no source',
    }),
  ],
});
export const leftOfAxle = quantity({
  path: 'weighed.leftOfAxle',
  percent: true,
  scope: 'axle',
  name: 'left share of the axle weight',
  label: 'left share of axle',
  symbol: 'w_lj',
  dimension: 'ratio',
  ways: [
    way({
      needs: { share: leftRead, twist: refine(twist, 0, 'corners that were never set'), front: refine(shareRead, 0.5), axle: thisAxle },
      // Both axles together have the left share that was told.
      compute: ({ share, twist, front, axle }) => share + (axle === 'front' ? twist * (1 - front) : -twist * front),
      source: 'what one axle has more, the other has less, by their weights',
    }),
  ],
});
export const cornerOfOther = figure({
  path: 'weighed.cornerOfOther',
  scope: 'corner',
  name: 'corner weight, what the other side leaves of the axle',
  label: 'corner by other side',
  symbol: 'W_i',
  dimension: 'mass',
  needs: { axle: axleRead, left: maybe(left(told.scaleReading)), right: maybe(right(told.scaleReading)), side: thisSide },
  compute: ({ axle, left, right, side }) => {
    const other = side === 'left' ? right : left;
    if (other === undefined) return refuse('No scale reading of the other side of this axle is known.', 'scale');
    return axle - other;
  },
  source: 'difference',
});
export const cornerRead = quantity({
  path: 'weighed.cornerRead',
  scope: 'corner',
  name: 'corner weight as it was read, or by shares',
  label: 'corner, as read',
  symbol: 'W_i',
  dimension: 'mass',
  ways: [
    way({ needs: { weight: told.scaleReading }, compute: ({ weight }) => weight, formula: 'weight', source: 'the reading' }),
    way({
      needs: { weight: cornerOfOther },
      compute: ({ weight }) => (weight > 0 ? weight : refuse('The other wheel weighs more than the whole axle.', 'scale', 'axleWeight')),
      formula: 'weight',
      source: 'what the other side leaves',
    }),
    way({
      needs: { axle: axleRead, share: leftOfAxle, side: thisSide },
      compute: ({ axle, share, side }) => axle * (side === 'left' ? share : 1 - share),
      source: definition,
    }),
  ],
});
export const weighedCorner = figure({
  path: 'weighed.corner',
  scope: 'corner',
  name: 'corner weight as weighed',
  label: 'corner as weighed',
  symbol: 'W_i',
  dimension: 'mass',
  needs: { read: cornerRead, driver: unsaidOnWheel },
  compute: ({ read, driver }) => read + driver,
  formula: 'read + driver',
  source: driverToo,
});

export const unsprungBoth = quantity({
  path: 'unsprung.both',
  scope: 'axle',
  name: 'unsprung weight of both wheels',
  label: 'unsprung weight, both',
  symbol: 'W_uj',
  dimension: 'mass',
  ways: [
    way({
      needs: { left: left(told.unsprungCorner), right: right(told.unsprungCorner) },
      compute: ({ left, right }) => left + right,
      formula: 'left + right',
      source: sum,
    }),
    way({ needs: { weight: told.unsprungAxle }, compute: ({ weight }) => weight, formula: 'weight', source: 'as told' }),
    way({
      needs: { axle: axleRead, share: told.unsprungShare },
      compute: ({ axle, share }) => axle * share,
      formula: 'axle * share',
      source: definition,
    }),
  ],
});
export const unsprungCorner = quantity({
  path: 'unsprung.corner',
  scope: 'corner',
  name: 'unsprung weight of the wheel',
  label: 'unsprung weight',
  symbol: 'W_ui',
  dimension: 'mass',
  typical: { range: [20, 60], of: 'road cars; common practice, no source' },
  ways: [
    way({ needs: { weight: told.unsprungCorner }, compute: ({ weight }) => weight, formula: 'weight', source: 'as told' }),
    way({ needs: { both: unsprungBoth }, compute: ({ both }) => both / 2, formula: 'both / 2', source: 'left and right alike' }),
    way({
      needs: { sprung: told.sprungTold, share: told.unsprungShare },
      compute: ({ sprung, share }) => (sprung * share) / (1 - share),
      formula: 'sprung * share / (1 - share)',
      source: definition,
    }),
  ],
});
export const weighedSprung = quantity({
  path: 'weighed.sprung',
  scope: 'corner',
  name: 'sprung weight as weighed',
  label: 'sprung as weighed',
  symbol: 'W_s',
  dimension: 'mass',
  ways: [
    way({
      needs: { weight: told.sprungTold, driver: unsaidOnWheel },
      compute: ({ weight, driver }) => weight + driver,
      formula: 'weight + driver',
      source: driverToo,
    }),
    way({
      needs: { corner: weighedCorner, unsprung: unsprungCorner },
      compute: ({ corner, unsprung }) =>
        corner > unsprung ? corner - unsprung : refuse('The unsprung weight is more than the wheel weighs.', 'scale', 'unsprung'),
      formula: 'corner - unsprung',
      source: definition,
    }),
  ],
});
