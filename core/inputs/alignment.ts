/** How the wheels stand: facts to record; what follows from the angles is worked out elsewhere. */
import { asMeasured, carry, given, maybe, quantity, refine, refuse, type Told } from '../catalog.js';
import { travelSince } from '../figures/standing.js';
import { axleKind, camberGain } from './axles.js';
import { frontViewLever } from './wheels.js';

const degree = Math.PI / 180;
const gauged: Told = { usually: 'measured', measured: { absolute: 0.1 * degree }, spec: { absolute: 0.25 * degree } };

export const camber = quantity({
  path: 'camber',
  scope: 'corner',
  name: 'camber',
  symbol: 'gamma',
  words: ['camber', 'camber angle'],
  dimension: 'angle',
  sane: [-8 * degree, 5 * degree],
  step: { inch: 0.1 * degree, metric: 0.1 * degree },
  told: gauged,
  measure: 'Gauge against the rim on level ground, wheels straight ahead; top leaning in is negative.',
  caution: 'Check clearance to body and strut, and torque the bolts as the maker says.',
});
/** Of a car that is lowered it follows the travel; the wheels of a beam stand as they stood. */
carry(camber, {
  needs: {
    measured: asMeasured(given(camber)),
    travel: refine(travelSince, 0),
    kind: axleKind,
    gain: maybe(camberGain),
    arm: maybe(frontViewLever),
  },
  compute: ({ measured, travel, kind, gain, arm }) => {
    if (travel === 0 || kind === 'beam') return measured;
    const rate = arm === undefined ? gain : -1 / arm;
    return rate === undefined
      ? refuse('How much the camber changes with the travel is not known.', 'camber.gain')
      : measured + rate * travel;
  },
  source: 'as told, and the change of camber in bump times how far the wheel has come up since',
});
export const toe = quantity({
  path: 'toe',
  scope: 'corner',
  name: 'toe',
  symbol: 'delta',
  words: ['toe', 'toe in', 'toe angle', 'wheel toe'],
  dimension: 'angle',
  sane: [-2 * degree, 2 * degree],
  step: { inch: 0.02 * degree, metric: 0.02 * degree },
  told: { usually: 'measured', measured: { absolute: 0.04 * degree }, spec: { absolute: 0.1 * degree } },
  measure:
    'Of one wheel, from the centerline, with strings or plates; in is positive. A length of toe means nothing without the diameter that it was read at.',
  caution: 'Torque the lock nuts, then check the steering before you drive.',
});
export const toeDiameter = quantity({
  path: 'toe.diameter',
  scope: 'car',
  name: 'diameter at which toe is read',
  label: 'toe diameter',
  symbol: 'D_t',
  words: ['toe diameter', 'toe plate', 'plate length', 'toe plate length', 'plate'],
  dimension: 'length',
  sane: [0.25, 1],
  told: { usually: 'measured', measured: { absolute: 0.002 }, spec: { absolute: 0.005 } },
  measure: 'The length of the plates, or the rim or tread diameter at which the tape was held.',
});
export const caster = quantity({
  path: 'caster',
  scope: 'corner',
  name: 'caster',
  symbol: 'tau',
  words: ['caster', 'castor', 'caster angle'],
  dimension: 'angle',
  sane: [-5 * degree, 16 * degree],
  step: { inch: 0.1 * degree, metric: 0.1 * degree },
  told: { usually: 'measured', measured: { absolute: 0.3 * degree }, spec: { absolute: 0.5 * degree } },
  measure: 'From two camber readings at equal and opposite steer; top leaning back is positive.',
});
