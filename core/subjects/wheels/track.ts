/** How the wheels that are on move the track. */
import { asMeasured, quantity, way } from '../../catalog.js';
import { offsetShift } from './fit.js';
import { wheelSpacer } from './told.js';

const geometry = 'two wheels, each further out by the change of offset and spacer';
export const trackShift = quantity({
  path: 'wheel.trackShift',
  scope: 'axle',
  name: 'growth of the track since the car was measured',
  label: 'track grown by',
  symbol: 'dt',
  dimension: 'length',
  ways: [
    way({ needs: { shift: offsetShift }, compute: ({ shift }) => 2 * shift, formula: '2 * shift', source: geometry }),
    // The same wheels, of an offset that nobody told.
    way({
      needs: { now: wheelSpacer, before: asMeasured(wheelSpacer) },
      compute: ({ now, before }) => 2 * (now - before),
      formula: '2 * (now - before)',
      source: geometry,
    }),
  ],
});
