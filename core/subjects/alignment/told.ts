/** How the wheels stand: facts to record; what follows from the angles is worked out elsewhere. */
import {
  asMeasured,
  carry,
  given,
  inPractice,
  inverse,
  left,
  maybe,
  quantity,
  refine,
  refuse,
  right,
  type Told,
  way,
} from '../../catalog.js';
import { travelSince } from '../ride/standing.js';
import { axleKind, camberGain } from '../suspension/told.js';
import { frontViewLever } from '../wheels/told.js';

const degree = Math.PI / 180;
const gauged: Told = { usually: 'measured', measured: { absolute: 0.1 * degree }, spec: { absolute: 0.25 * degree } };

export const camber = quantity({
  path: 'camber',
  typical: [
    inPractice('street cars', -0.02618, 0),
    inPractice('autocross cars, front', -0.06109, -0.03491),
    inPractice('autocross cars, rear', -0.04363, -0.01745),
  ],
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
  typical: [
    inPractice('street cars', 0, 0.002618),
    inPractice('autocross cars, front', -0.002618, 0),
    inPractice('autocross cars, rear', 0, 0.002793),
  ],
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
  typical: [inPractice('road cars', 0.05236, 0.1222), inPractice('autocross and track cars', 0.06981, 0.1396)],
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

export const toeLength = quantity({
  path: 'toe.length',
  scope: 'axle',
  name: 'total toe of the axle, as a length',
  label: 'total toe, length',
  symbol: 'L_t',
  words: ['total toe', 'toe length', 'total toe in', 'toe total'],
  dimension: 'length',
  sane: [-0.05, 0.05],
  step: { inch: 0.0254 / 32, metric: 0.001 },
  told: { usually: 'measured', measured: { absolute: 0.0008 }, spec: { absolute: 0.0015 } },
  measure: 'Distance of the wheels behind less in front, both at the toe diameter; in is positive.',
  ways: [
    way({
      needs: { left: left(toe), right: right(toe), diameter: toeDiameter },
      compute: ({ left, right, diameter }) => diameter * (Math.sin(left) + Math.sin(right)),
      formula: 'diameter * (sin(left) + sin(right))',
      source: 'each wheel turns about its middle',
    }),
  ],
});
inverse(toe, {
  needs: { total: given(toeLength), diameter: toeDiameter },
  compute: ({ total, diameter }) =>
    Math.abs(total) < 2 * diameter
      ? Math.asin(total / 2 / diameter)
      : refuse('A toe of that length does not fit that diameter.', 'toe.length'),
  source: 'both wheels alike: half of the total each, at the diameter of the plates',
  basis: 'shared by both wheels',
});
