/** How far apart the springs of an axle act as it rolls. */
import { quantity, way } from '../../catalog.js';
import { track } from '../mass/told.js';
import { beamAxle, independentAxle, springBase } from '../suspension/beam.js';

export const springLever = quantity({
  path: 'roll.springBase',
  scope: 'axle',
  name: 'distance at which the springs resist roll',
  label: 'spring span in roll',
  symbol: 't_s',
  dimension: 'length',
  ways: [
    way({
      needs: { beam: beamAxle, base: springBase },
      compute: ({ base }) => base,
      source: 'on a beam axle the distance between the springs themselves',
    }),
    way({ needs: { alone: independentAxle, track }, compute: ({ track }) => track, source: 'the track where each wheel moves alone' }),
  ],
});
