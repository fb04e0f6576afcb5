/** Conditions of a question about cornering: how hard, which way, on what; never saved with a car. */
import { choice, given, inverse, quantity, refuse, type Told } from '../../catalog.js';
import { roadSpeed } from '../gearing/told.js';

const g = 9.80665;
const degree = Math.PI / 180;
const asked: Told = { usually: 'spec', measured: { relative: 0.01 }, spec: { absolute: 0 } };

export const lateral = quantity({
  path: 'lateral',
  scope: 'question',
  name: 'lateral acceleration',
  symbol: 'a_y',
  words: ['lateral acceleration', 'lateral', 'lateral g', 'cornering', 'cornering g'],
  dimension: 'acceleration',
  sane: [0, 2.5 * g],
  told: { usually: 'spec', measured: { absolute: 0.01 * g }, spec: { absolute: 0 } },
  measure: 'Asked with the question: at 0.9 g.',
  estimate: { needs: {}, compute: () => 0.8 * g, within: { absolute: 0 }, source: '0.8 g unless asked otherwise' },
});
export const braking = quantity({
  path: 'braking',
  scope: 'question',
  name: 'braking',
  symbol: 'a_b',
  words: ['braking', 'braking g', 'trail braking', 'deceleration'],
  dimension: 'acceleration',
  sane: [0, 1.5 * g],
  told: { usually: 'spec', measured: { absolute: 0.01 * g }, spec: { absolute: 0 } },
  measure: 'Asked with the question: braking 0.3 g.',
  estimate: { needs: {}, compute: () => 0, within: { absolute: 0 }, source: 'none unless asked' },
});
export const driving = quantity({
  path: 'driving',
  scope: 'question',
  name: 'forward acceleration',
  symbol: 'a_d',
  words: ['accelerating', 'forward acceleration', 'driving', 'on throttle', 'on power'],
  dimension: 'acceleration',
  sane: [0, 1.2 * g],
  told: { usually: 'spec', measured: { absolute: 0.01 * g }, spec: { absolute: 0 } },
  measure: 'Asked with the question: accelerating 0.2 g.',
  estimate: { needs: {}, compute: () => 0, within: { absolute: 0 }, source: 'none unless asked' },
});
export const turn = choice({
  path: 'turn',
  scope: 'question',
  name: 'which way the car turns',
  label: 'turn',
  words: ['turn', 'turning', 'corner direction'],
  options: ['left', 'right'],
  optionWords: { left: ['left turn', 'left hander', 'left hand'], right: ['right turn', 'right hander', 'right hand'] },
  measure: 'Asked with the question: turning right.',
  estimate: { needs: {}, compute: () => 'left' as const, source: 'a left turn unless asked otherwise' },
});
export const radius = quantity({
  path: 'radius',
  scope: 'question',
  name: 'radius of the corner',
  symbol: 'R',
  words: ['radius', 'corner radius', 'turn radius', 'skidpad radius'],
  dimension: 'length',
  sane: [3, 2000],
  told: { usually: 'spec', measured: { relative: 0.02 }, spec: { absolute: 0 } },
  measure: 'Of the path of the middle of the car. Asked with the question: at 50 ft radius.',
});
// Only of what is told: the lateral acceleration that is taken where none is asked says nothing of a corner.
inverse(radius, {
  needs: { speed: given(roadSpeed), lateral: given(lateral) },
  compute: ({ speed, lateral }) =>
    lateral > 0 ? speed ** 2 / lateral : refuse('At no lateral acceleration the car drives straight on.', 'lateral'),
  formula: 'speed^2 / lateral',
  source: 'steady motion on a circle',
  basis: 'from the speed and the lateral acceleration told',
});
export const bank = quantity({
  path: 'bank',
  scope: 'question',
  name: 'bank of the road, toward the inside of the corner',
  label: 'bank',
  symbol: 'theta',
  words: ['bank', 'banking', 'bank angle'],
  dimension: 'angle',
  sane: [-20 * degree, 40 * degree],
  told: { usually: 'spec', measured: { absolute: degree }, spec: { absolute: 0 } },
  measure: 'Asked with the question; off-camber is negative.',
  estimate: { needs: {}, compute: () => 0, within: { absolute: 0 }, source: 'level unless asked' },
});
export const circleTime = quantity({
  path: 'circleTime',
  scope: 'question',
  name: 'time of one lap of the circle',
  label: 'lap of the circle',
  symbol: 'T',
  words: ['skidpad time', 'circle time', 'skidpad lap', 'lap of the circle'],
  dimension: 'time',
  sane: [1, 120],
  told: { usually: 'measured', measured: { absolute: 0.1 }, spec: { absolute: 0 } },
  measure: 'A steady lap, timed over a whole circle.',
  caution: 'A closed course only.',
});
export const coneSpacing = quantity({
  path: 'coneSpacing',
  scope: 'question',
  name: 'distance from cone to cone of a slalom',
  label: 'cone spacing',
  symbol: 's',
  words: ['cone spacing', 'slalom spacing', 'cone distance', 'slalom'],
  dimension: 'length',
  sane: [4, 60],
  told: asked,
  measure: 'Asked with the question: along the line of the cones.',
});
export const slalomSwing = quantity({
  path: 'slalomSwing',
  scope: 'question',
  name: 'how far the middle of the car swings from the line of cones',
  label: 'slalom swing',
  symbol: 'A',
  words: ['slalom swing', 'slalom amplitude', 'swing'],
  dimension: 'length',
  sane: [0.5, 5],
  told: asked,
  measure: 'Half of the width of the path of its middle: half a car and a little.',
  estimate: { needs: {}, compute: () => 1.2, within: { absolute: 0.2 }, source: 'common practice, no source' },
});

export const slope = quantity({
  path: 'slope',
  scope: 'question',
  name: 'slope of the road, rise over run',
  label: 'slope',
  symbol: 'tan s',
  words: ['slope', 'hill', 'grade', 'gradient of the road'],
  dimension: 'ratio',
  sane: [0, 1.5],
  measure: 'How much it rises over a length on the level.',
});
