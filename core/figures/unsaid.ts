/** The driver, where nobody said whether the car was weighed with him in it: it drives with him. */
import { asMeasured, given, quantity, thisAxle, thisSide, way } from '../catalog.js';
import * as told from '../inputs/mass.js';

const said = 'whether the driver was in it is told';
const plain = 'a text-book sum takes a weight as it is told';
const wasHe = asMeasured(given(told.driver));

export const unsaidPart = quantity({
  path: 'driver.unsaid',
  scope: 'car',
  name: 'whether the driver was in the car as it was weighed',
  label: 'driver as weighed',
  symbol: 'p_d',
  dimension: 'ratio',
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
export const unsaidDriver = quantity({
  path: 'unsaid.weight',
  scope: 'axle',
  name: 'weight of the driver on the axle that the scales may have missed',
  label: 'driver, if missed',
  symbol: 'm_d',
  dimension: 'mass',
  ways: [
    way({ needs: { driver: wasHe }, compute: () => 0, source: said }),
    way({
      needs: { part: unsaidPart, weight: told.driverWeight, behind: told.driverBehind, wheelbase: told.wheelbase, axle: thisAxle },
      compute: ({ part, weight, behind, wheelbase, axle }) =>
        part * weight * (axle === 'rear' ? behind / wheelbase : 1 - behind / wheelbase),
      source: 'statics: a weight is shared between the axles by its distance from each',
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
    way({ needs: { driver: wasHe }, compute: () => 0, source: said }),
    way({
      needs: { axle: unsaidDriver, right: told.driverRight, track: asMeasured(told.track), side: thisSide },
      compute: ({ axle, right, track, side }) => axle * (side === 'left' ? 0.5 - right / track : 0.5 + right / track),
      source: 'statics: a weight is shared between the wheels of an axle by its distance from each',
    }),
    way({ needs: {}, compute: () => 0, source: plain }),
  ],
});
