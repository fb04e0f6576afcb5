/** The driver, where nobody said whether the car was weighed with him in it: it drives with him. */
import { type Asks, asMeasured, figure, given, quantity, thisAxle, thisSide, way } from '../../catalog.js';
import * as told from './told.js';

const said = 'whether the driver was in it is told';
const plain = 'a text-book sum takes a weight as it is told';
const asksDriver: Asks = { words: 'whether you were in it when it was weighed', tell: told.driver, as: 'in' };
const wasHe = asMeasured(given(told.driver));

export const unsaidPart = quantity({
  path: 'driver.unsaid',
  scope: 'car',
  name: 'whether the driver was in the car as it was weighed',
  label: 'driver as weighed',
  symbol: 'p_d',
  dimension: 'ratio',
  asks: asksDriver,
  ways: [
    way({ needs: { driver: wasHe }, compute: () => 0, source: said }),
    way({
      needs: {},
      compute: () => 0,
      sort: 'estimate',
      within: { absolute: 1 },
      source: 'taken as weighed with the driver; he may be missing: common practice, no source',
    }),
  ],
});
/** By itself, and not times the part: both may be nothing, and the doubt of a product of two such would not be seen. */
export const unsaidSide = quantity({
  path: 'driver.unsaidSide',
  scope: 'car',
  name: 'how far to one side the driver sat who may have been missing as the car was weighed',
  label: 'driver side, weighed',
  symbol: 'y_u',
  dimension: 'length',
  asks: asksDriver,
  ways: [
    way({ needs: { driver: wasHe }, compute: () => 0, source: said }),
    way({
      needs: {},
      compute: () => 0,
      sort: 'estimate',
      within: { absolute: 0.36 },
      source: 'either side, or in the car already: common practice, no source',
    }),
  ],
});
const shared = 'statics: a weight is shared by its distance from each';
/** Where nobody told it, where drivers sit: by itself the doubt of a place would count only times the part. */
export const driverBack = quantity({
  path: 'driver.back',
  percent: true,
  scope: 'car',
  name: 'share of the driver on the rear axle',
  label: 'driver on the rear',
  symbol: 'p_r',
  dimension: 'ratio',
  ways: [
    way({
      needs: { behind: given(told.driverBehind), wheelbase: told.wheelbase },
      compute: ({ behind, wheelbase }) => behind / wheelbase,
      formula: 'behind / wheelbase',
      source: shared,
    }),
    way({ needs: {}, compute: () => 0.53, source: 'where drivers sit; common practice, no source' }),
  ],
});
export const driverOnAxle = figure({
  path: 'driver.onAxle',
  scope: 'axle',
  name: 'weight of the driver on the axle',
  label: 'driver on axle',
  symbol: 'm_dj',
  dimension: 'mass',
  needs: { weight: told.driverWeight, back: driverBack, axle: thisAxle },
  compute: ({ weight, back, axle }) => weight * (axle === 'rear' ? back : 1 - back),
  source: shared,
});
export const unsaidDriver = quantity({
  path: 'unsaid.weight',
  scope: 'axle',
  name: 'weight of the driver on the axle that the scales may have missed',
  label: 'driver, if missed',
  symbol: 'm_d',
  dimension: 'mass',
  ways: [
    way({
      needs: { part: unsaidPart, driver: driverOnAxle },
      compute: ({ part, driver }) => part * driver,
      formula: 'part * driver',
      source: said,
    }),
    way({ needs: {}, compute: () => 0, source: plain }),
  ],
});
export const unsaidOnWheel = quantity({
  path: 'unsaid.onWheel',
  scope: 'corner',
  name: 'weight of the driver on the wheel that the scales may have missed',
  label: 'driver, if missed',
  symbol: 'm_di',
  dimension: 'mass',
  ways: [
    way({
      needs: { missed: unsaidDriver, driver: driverOnAxle, right: unsaidSide, track: asMeasured(told.track), side: thisSide },
      compute: ({ missed, driver, right, track, side }) => missed / 2 + ((side === 'left' ? -right : right) * driver) / track,
      source: shared,
    }),
    way({ needs: {}, compute: () => 0, source: plain }),
  ],
});
