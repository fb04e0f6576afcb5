/** Anti-squat, anti-dive and anti-lift from where the links of an axle point. */
import { figure, maybe, quantity, type Refusal, refuse, thisAxle, way } from '../../catalog.js';
import { brakeShareNow } from '../braking/brakes.js';
import { cgHeight, wheelbase } from '../mass/told.js';
import { loadedRadius } from '../ride/travel.js';
import * as told from './linksTold.js';
import { axleKind } from './told.js';

const source =
  'forces act from the wheel center where their torque is held by the body (independent axle, inboard brake), from the ground where it is held by the links (beam axle, outboard brake)';

/** Tangent of the line to the instant center from the wheel center, or from the ground; upward to the middle of the car. */
function tangent(inward: number, height: number, fromCenter: boolean, radius: number | undefined): number | Refusal {
  if (!fromCenter) return height / inward;
  return radius === undefined ? refuse('The loaded radius of the tire is not known.', 'tire.size') : (height - radius) / inward;
}
const signed = (axle: 'front' | 'rear', value: number | Refusal): number | Refusal =>
  // Links that meet inward and above lift a pushing rear, and draw a pulling front down.
  typeof value === 'number' && axle === 'front' ? -value : value;

export const driveLift = figure({
  path: 'links.driveLift',
  scope: 'axle',
  name: 'lift of the body per thrust',
  label: 'lift per thrust',
  symbol: 'tan_b',
  dimension: 'ratio',
  needs: { inward: told.instantCentreAhead, height: told.instantCentreHeight, kind: axleKind, radius: maybe(loadedRadius), axle: thisAxle },
  compute: ({ inward, height, kind, radius, axle }) => signed(axle, tangent(inward, height, kind !== 'beam', radius)),
  source,
});
export const brakeLift = figure({
  path: 'links.brakeLift',
  scope: 'axle',
  name: 'lift of the body per brake force',
  label: 'lift per brake force',
  symbol: 'tan_b',
  dimension: 'ratio',
  needs: {
    inward: told.instantCentreAhead,
    height: told.instantCentreHeight,
    place: told.brakePlace,
    kind: axleKind,
    radius: maybe(loadedRadius),
    axle: thisAxle,
  },
  compute: ({ inward, height, place, kind, radius, axle }) =>
    signed(axle, tangent(inward, height, place === 'inboard' && kind !== 'beam', radius)),
  source,
});
export const antiSquat = quantity({
  path: 'links.antiSquat',
  scope: 'axle',
  name: 'anti-squat, driven alone',
  label: 'anti-squat, anti-lift',
  main: true,
  symbol: 'AS',
  words: ['anti squat', 'antisquat', 'anti-squat', 'anti lift'],
  dimension: 'ratio',
  typical: { range: [0, 1], of: 'road cars; common practice, no source' },
  sane: [-5, 10],
  ways: [
    way({
      needs: { lift: driveLift, wheelbase, height: cgHeight, axle: thisAxle },
      compute: ({ lift, wheelbase, height, axle }) => ((axle === 'rear' ? lift : -lift) * wheelbase) / height,
      source:
        'of a front axle anti-lift; share of the load transfer that the links hold instead of the springs, this axle alone driven: tan(beta) L/h',
    }),
  ],
});
export const antiDive = quantity({
  path: 'links.antiDive',
  scope: 'axle',
  name: 'anti-dive, braking',
  label: 'anti-dive, brake lift',
  main: true,
  symbol: 'AD',
  words: ['anti dive', 'antidive', 'anti-dive', 'brake anti lift'],
  dimension: 'ratio',
  typical: { range: [0, 0.6], of: 'road cars; common practice, no source' },
  sane: [-5, 10],
  ways: [
    way({
      needs: { lift: brakeLift, share: brakeShareNow, wheelbase, height: cgHeight, axle: thisAxle },
      compute: ({ lift, share, wheelbase, height, axle }) => ((axle === 'front' ? -lift * share : lift * (1 - share)) * wheelbase) / height,
      source: "of a rear axle anti-lift; tan(beta) L/h times the axle's share of the brake force",
    }),
  ],
});
