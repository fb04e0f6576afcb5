/** Speeds, radii and limits of a corner, slaloms, steering, and what is left for the brakes. */
import type { PlainSum } from './plainSum.js';
import { ends, tenDigits } from './plainSum.js';
import { degree, foot, g, inch, lb, lbf, mph } from './units.js';

const circle = 'derived: a = v^2 / R';
const grip = 'derived: every wheel uses all its grip, mu g';
const tip = 'derived: moments about the outer contact patches, g t / (2 h), rigid springs and tires (static stability factor)';
const sine = 'derived: path y = A sin(pi x / s), peak curvature A (pi / s)^2; a model of the path, no fact about cars';
const ackermann =
  'derived: all wheels about one point on the line of the rear axle; L / R (Gillespie, Fundamentals of Vehicle Dynamics, ch. 6)';
const bicycle = 'Gillespie, Fundamentals of Vehicle Dynamics, ch. 6, K = W_f/C_f - W_r/C_r, V = sqrt(57.3 g L / K), from memory';
/** Pounds a degree of one tire. */
const lbfPerDegree = lbf / degree;
const linear: PlainSum['told'] = [
  ['front.axleWeight', 1901 * lb],
  ['rear.axleWeight', 1552 * lb],
  ['front.tire.cornering', 172 * lbfPerDegree],
  ['rear.tire.cornering', 156 * lbfPerDegree],
];
const turn: PlainSum['told'] = [
  ['wheelbase', 2.5],
  ['front.track', 1.45],
  ['radius', 10],
];
const slalom: PlainSum['told'] = [
  ['coneSpacing', 60 * foot],
  ['slalomSwing', 1.2],
  ['lateral', g],
];
const perG: PlainSum['told'] = [
  ['front.axleWeight', 600],
  ['front.loadTransfer.perG', 200],
  ['front.grip.mu', 1.1],
  ['front.grip.load', 3000],
];

export const corners: readonly PlainSum[] = [
  {
    name: 'speed at 1 g on 100 ft',
    source: circle,
    told: [
      ['radius', 100 * foot],
      ['lateral', g],
    ],
    asked: 'cornerSpeed',
    expected: 38.67420854 * mph,
    tolerance: tenDigits,
    why: '38.7 mph',
  },
  {
    name: 'lateral acceleration at 25 m/s on 500 m',
    source: 'OpenStax College Physics, example 6.4: 1125 N on 900 kg',
    told: [
      ['roadSpeed', 25],
      ['radius', 500],
    ],
    asked: 'lateralNeeded',
    expected: 1.25,
    tolerance: tenDigits,
  },
  {
    name: 'radius at 60 mph and 0.9 g',
    source: circle,
    told: [
      ['roadSpeed', 60 * mph],
      ['lateral', 0.9 * g],
    ],
    asked: 'radius',
    expected: 81.51397739,
    tolerance: tenDigits,
    why: 'the inverse way',
  },
  {
    name: 'a circle of 9.125 m in 5 s',
    source: 'derived: 4 pi^2 R / T^2',
    told: [
      ['radius', 9.125],
      ['circleTime', 5],
    ],
    asked: 'lateralOfCircle',
    expected: 14.40962243,
    tolerance: tenDigits,
    why: '1.47 g',
  },
  {
    name: 'lateral limit of a grip alone',
    source: grip,
    told: ends('grip.mu', 0.95),
    asked: 'limit.car',
    expected: 0.95 * g,
    tolerance: tenDigits,
    basis: ['grip'],
    why: 'no weight and no height is asked for',
  },
  {
    name: 'lateral limit of one axle whose grip does not fall with load',
    source: grip,
    told: [...perG, ['front.grip.exponent', 0]],
    asked: 'front.limit',
    expected: 1.1 * g,
    tolerance: 1e-6,
    why: 'edge: whatever goes across',
  },
  {
    name: 'lateral limit of an axle from its load transfer per g',
    source: 'derived: W a = sum of mu_0 (N/N_0)^-n N over both wheels, N = W/2 -/+ a dN; bisection',
    told: [...perG, ['front.grip.exponent', 0.15]],
    asked: 'front.limit',
    expected: 1.063098938 * g,
    tolerance: 1e-6,
    basis: ['per g as told'],
    why: 'path proposed',
  },
  {
    name: 'lateral limit of a car of two axle limits',
    source: 'derived: the lesser',
    told: [
      ['front.limit', 0.95 * g],
      ['rear.limit', 0.98 * g],
    ],
    asked: 'limit.car',
    expected: 0.95 * g,
    tolerance: tenDigits,
  },
  {
    name: 'balance of two axle limits',
    source: 'derived: difference over the lesser',
    told: [
      ['front.limit', 0.95 * g],
      ['rear.limit', 0.98 * g],
    ],
    asked: 'balance',
    expected: 0.03157894737,
    tolerance: tenDigits,
    why: 'above zero: the front gives up first',
  },
  {
    name: 'balance of equal limits',
    source: 'derived',
    told: ends('limit', 0.95 * g),
    asked: 'balance',
    expected: 0,
    tolerance: 1e-12,
    absolute: true,
    why: 'edge: equal sizes',
  },
  {
    name: 'speed at the limit of a grip on 200 ft',
    source: `${grip}; ${circle}`,
    told: [...ends('grip.mu', 0.9), ['radius', 200 * foot]],
    asked: 'cornerSpeed.limit',
    expected: 51.88689556 * mph,
    tolerance: tenDigits,
  },
  {
    name: 'speed at the limit on a bank of 10 degrees',
    source: 'derived: v^2 = g R (tan b + mu) / (1 - mu tan b)',
    told: [...ends('grip.mu', 1), ['radius', 60], ['bank', 10 * degree]],
    asked: 'cornerSpeed.limit',
    expected: 28.98828831,
    tolerance: 1e-6,
    why: '29.0 m/s',
  },
  {
    name: 'rollover of a track of 58 and a height of 19',
    source: tip,
    told: [...ends('track', 58 * inch), ['cg.height', 19 * inch]],
    asked: 'rollover',
    expected: 1.526315789 * g,
    tolerance: tenDigits,
    basis: ['rigid'],
    why: '1.53 g',
  },
  {
    name: 'rollover of a car that was measured for a federal study',
    source: `${tip}; tracks 4.56 and 4.67 ft, height 1.83 ft (Allen and others, 1992, US DOT): 1.2609`,
    told: [
      ['front.track', 4.56 * foot],
      ['rear.track', 4.67 * foot],
      ['cg.height', 1.83 * foot],
    ],
    asked: 'rollover',
    expected: 1.260928962 * g,
    tolerance: 1e-6,
    why: 'mean of both tracks',
  },
  {
    name: 'where the inner front wheel lifts, from load transfer per g',
    source: 'derived: half of the axle over the load transfer per g',
    told: [
      ['front.axleWeight', 1352 * lb],
      ['front.loadTransfer.perG', 480 * lb],
    ],
    asked: 'front.lift',
    expected: 1.408333333 * g,
    tolerance: tenDigits,
    why: 'paths proposed: of an axle',
  },
  {
    name: 'braking left at 0.8 of 1 g',
    source: 'friction circle, sqrt(mu^2 - a^2)',
    told: [
      ['limit.car', g],
      ['lateral', 0.8 * g],
    ],
    asked: 'alongLeft',
    expected: 0.6 * g,
    tolerance: tenDigits,
    basis: ['circle'],
    why: 'in a plain sum the circle is all there is, and it is said',
  },
  {
    name: 'braking left at no lateral g',
    source: 'friction circle',
    told: [
      ['limit.car', 0.9 * g],
      ['lateral', 0],
    ],
    asked: 'alongLeft',
    expected: 0.9 * g,
    tolerance: tenDigits,
    why: 'edge: all of it',
  },
  {
    name: 'braking left beyond the limit',
    source: 'friction circle',
    told: [
      ['limit.car', 0.9 * g],
      ['lateral', 1.1 * g],
    ],
    asked: 'alongLeft',
    refuses: /limit|grip/i,
    why: 'there is no such turn',
  },
  {
    name: 'speed through a slalom of 60 ft at 1 g',
    source: sine,
    told: slalom,
    asked: 'slalomSpeed',
    expected: 37.22542551 * mph,
    tolerance: tenDigits,
  },
  {
    name: 'time from cone to cone',
    source: sine,
    told: slalom,
    asked: 'slalomTime',
    expected: 1.098955629,
    tolerance: tenDigits,
    why: 'whatever the spacing',
  },
  {
    name: 'tightest radius of a slalom',
    source: sine,
    told: slalom,
    asked: 'slalomRadius',
    expected: 28.23913793,
    tolerance: tenDigits,
  },
  {
    name: 'steer angle for 200 ft on a wheelbase of 100.6 in',
    source: ackermann,
    told: [
      ['wheelbase', 100.6 * inch],
      ['radius', 200 * foot],
    ],
    asked: 'steer',
    expected: 2.401648091 * degree,
    tolerance: tenDigits,
    why: '2.40 degrees',
  },
  {
    name: 'steer angle of the inner wheel on 10 m',
    source: ackermann,
    told: turn,
    asked: 'steer.inner',
    expected: 0.2632846988,
    tolerance: tenDigits,
  },
  {
    name: 'steer angle of the outer wheel on 10 m',
    source: ackermann,
    told: turn,
    asked: 'steer.outer',
    expected: 0.2290108574,
    tolerance: tenDigits,
  },
  {
    name: 'understeer gradient from axle weights and cornering stiffnesses',
    source: bicycle,
    told: linear,
    asked: 'understeer',
    expected: 0.5518038163 * degree,
    tolerance: 1e-6,
    why: '0.552 degrees a g',
  },
  {
    name: 'characteristic speed from axle weights and cornering stiffnesses',
    source: bicycle,
    told: [...linear, ['wheelbase', 100.6 * inch]],
    asked: 'understeer.characteristicSpeed',
    expected: 114.103448 * mph,
    tolerance: 1e-6,
    why: '114 mph',
  },
  {
    name: 'characteristic speed of an understeer gradient that is told',
    source: bicycle,
    told: [
      ['understeer', 2 * degree],
      ['wheelbase', 2.6],
    ],
    asked: 'understeer.characteristicSpeed',
    expected: 27.02671924,
    tolerance: 1e-6,
  },
  {
    name: 'slip angle of an axle per g',
    source: bicycle,
    told: [
      ['front.axleWeight', 620],
      ['front.tire.cornering', 60000],
    ],
    asked: 'front.slipPerG',
    expected: 0.05066769167,
    tolerance: tenDigits,
  },
  {
    name: 'lift of the body by the links in a turn',
    source: 'derived: the outer tire carries more side force, the difference acts at the slope 2 h / t',
    told: [
      ['rf.sideForce', 4000],
      ['lf.sideForce', 1500],
      ['front.rollCenter.height', 0.1],
      ['front.track', 1.5],
    ],
    asked: 'front.cornering.jackingOfForces',
    expected: 333.3333333,
    tolerance: 1e-6,
    why: 'paths proposed',
  },
];
