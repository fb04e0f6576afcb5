/** The height of the center of gravity from a weighing with one axle raised. */
import { asMeasured, front, given, inverse, quantity, rear, refuse } from '../../catalog.js';
import { loadedRadius } from '../ride/travel.js';
import { cgHeight, wheelbase } from './told.js';
import { axleRead, totalRead } from './weighed.js';

const caution = 'A raised axle needs a rated lift or stands, chocks at the other one, and nobody under it.';
const statics =
  'moments about the axle that stays down: h = r + L dW/(W tan theta), sin theta = lift/L (Milliken, Race Car Vehicle Dynamics, ch. 18, from memory)';

export const tiltLift = quantity({
  path: 'tilt.lift',
  scope: 'car',
  name: 'how high one axle was raised to weigh the other',
  label: 'axle raised by',
  symbol: 'z_t',
  words: ['tilt lift', 'axle raised by', 'raised axle', 'axle lift', 'tilt height'],
  dimension: 'length',
  sane: [0.1, 3],
  told: { usually: 'measured', measured: { absolute: 0.003 }, spec: { absolute: 0.005 } },
  measure: 'From the ground up to where the raised tires stand, suspension blocked; at least 0.4 m (16 in).',
  caution,
});
export const tiltFront = quantity({
  path: 'tilt.frontWeight',
  scope: 'car',
  name: 'front axle weight with the rear raised',
  label: 'front, rear raised',
  symbol: 'W_tf',
  instead: 'tilted weight',
  words: ['front weight with rear raised', 'front weight raised', 'tilted front weight'],
  dimension: 'mass',
  sane: [120, 2000],
  told: { usually: 'measured', measured: { relative: 0.003 }, spec: { relative: 0.01 } },
  measure: 'The scales under the front wheels while the rear is raised, brakes off, suspension blocked at its height.',
  caution,
});
export const tiltRear = quantity({
  path: 'tilt.rearWeight',
  scope: 'car',
  name: 'rear axle weight with the front raised',
  label: 'rear, front raised',
  symbol: 'W_tr',
  instead: 'tilted weight',
  words: ['rear weight with front raised', 'rear weight raised', 'tilted rear weight'],
  dimension: 'mass',
  sane: [120, 2000],
  told: { usually: 'measured', measured: { relative: 0.003 }, spec: { relative: 0.01 } },
  measure: 'The scales under the rear wheels while the front is raised, brakes off, suspension blocked at its height.',
  caution,
});

interface Weighing {
  readonly tilted: number;
  readonly level: number;
  readonly whole: number;
  readonly lift: number;
  readonly wheelbase: number;
  readonly front: number;
  readonly rear: number;
}
/** Both axles' wheels turn about hubs that stand a loaded radius above what they stand on. */
function heightOf({ tilted, level, whole, lift, wheelbase, front, rear }: Weighing) {
  if (lift >= wheelbase) return refuse('An axle cannot be raised by more than the wheelbase.', 'lift', 'wheelbase');
  if (tilted <= level) return refuse('The axle that stays down has to weigh more with the other one raised.', 'tilted');
  const slope = lift / Math.sqrt(wheelbase ** 2 - lift ** 2);
  return (front + rear) / 2 + (wheelbase * (tilted - level)) / (whole * slope);
}
const formula = '(front + rear) / 2 + wheelbase * (tilted - level) * sqrt(wheelbase^2 - lift^2) / (whole * lift)';
const weighing = { whole: totalRead, wheelbase, front: asMeasured(front(loadedRadius)), rear: asMeasured(rear(loadedRadius)) };
inverse(cgHeight, {
  needs: { ...weighing, tilted: given(tiltFront), level: front(axleRead), lift: given(tiltLift) },
  compute: heightOf,
  formula,
  source: statics,
  basis: 'from a weighing with the rear raised',
});
inverse(cgHeight, {
  needs: { ...weighing, tilted: given(tiltRear), level: rear(axleRead), lift: given(tiltLift) },
  compute: heightOf,
  formula,
  source: statics,
  basis: 'from a weighing with the front raised',
});
