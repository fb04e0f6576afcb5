/** Toe as a length and as an angle, camber in roll, and what the links hold of squat and dive. */
import type { PlainSum } from './plainSum.js';
import { tenDigits } from './plainSum.js';
import { degree, inch, mm } from './units.js';

const toe = 'derived: each wheel turns by asin(total / 2 / diameter)';
const camber = 'derived: outer = at rest + roll + gain x travel, gain = -1 / swing arm, travel = roll x track / 2, rigid tires';
const squat =
  'Gillespie, Fundamentals of Vehicle Dynamics, ch. 7, tan(beta) L / h, from memory; from the wheel center where the body holds the torque, from the ground where the links do';

export const alignment: readonly PlainSum[] = [
  {
    name: '1/8 in out in total on 24 in plates, of one wheel',
    source: toe,
    told: [
      ['front.toe.length', -0.125 * inch],
      ['toe.diameter', 24 * inch],
    ],
    asked: 'lf.toe',
    expected: -0.1492079278 * degree,
    tolerance: tenDigits,
    why: '0.15 degrees out; path proposed: total toe of an axle as a length',
  },
  {
    name: '1 mm in total on a 15 in rim, of one wheel',
    source: toe,
    told: [
      ['rear.toe.length', 1 * mm],
      ['toe.diameter', 381 * mm],
    ],
    asked: 'rr.toe',
    expected: 0.001312336335,
    tolerance: tenDigits,
    why: 'path proposed',
  },
  {
    name: '0.10 degrees a wheel at a rim of 16 in, in total',
    source: toe,
    told: [
      ['lf.toe', 0.1 * degree],
      ['rf.toe', 0.1 * degree],
      ['toe.diameter', 406.4 * mm],
    ],
    asked: 'front.toe.length',
    expected: 0.001418602896,
    tolerance: tenDigits,
    why: '1.42 mm; path proposed',
  },
  {
    name: 'toe as a length without a diameter',
    source: toe,
    told: [['front.toe.length', -0.125 * inch]],
    asked: 'lf.toe',
    refuses: /diameter|plate/i,
    why: 'a length says nothing without it; path proposed',
  },
  {
    name: 'change of camber of a swing arm of 2 m',
    source: 'derived: -1 / e',
    told: [['front.wheel.lever', 2]],
    asked: 'front.camber.gainOfArm',
    expected: -0.5,
    tolerance: tenDigits,
    why: 'radians a metre of bump',
  },
  {
    name: 'camber of the outer wheel at three degrees of roll',
    source: camber,
    told: [
      ['rf.camber', -1.5 * degree],
      ['front.wheel.lever', 2],
      ['front.track', 1.45],
      ['roll.angle', 3 * degree],
    ],
    asked: 'rf.cornering.camber',
    expected: 0.4125 * degree,
    tolerance: 1e-3,
    basis: ['rigid tires'],
    why: 'a left turn unless told; +0.41 degrees',
  },
  {
    name: 'camber of the inner wheel at three degrees of roll',
    source: camber,
    told: [
      ['lf.camber', -1.5 * degree],
      ['front.wheel.lever', 2],
      ['front.track', 1.45],
      ['roll.angle', 3 * degree],
    ],
    asked: 'lf.cornering.camber',
    expected: -3.4125 * degree,
    tolerance: 1e-3,
  },
  {
    name: 'anti-squat, differential on the body',
    source: squat,
    told: [
      ['rear.axle.kind', 'independent'],
      ['rear.links.inward', 1],
      ['rear.links.height', 0.4],
      ['rear.tire.loadedRadius', 0.3],
      ['wheelbase', 2.5],
      ['cg.height', 0.55],
    ],
    asked: 'rear.links.antiSquat',
    expected: 0.4545454545,
    tolerance: 1e-6,
    why: '45 per cent',
  },
  {
    name: 'anti-squat of a beam axle',
    source: squat,
    told: [
      ['rear.axle.kind', 'beam'],
      ['rear.links.inward', 1],
      ['rear.links.height', 0.4],
      ['wheelbase', 2.5],
      ['cg.height', 0.55],
    ],
    asked: 'rear.links.antiSquat',
    expected: 1.818181818,
    tolerance: 1e-6,
    why: '182 per cent; the radius of the tire is not needed',
  },
  {
    name: 'anti-dive of a front axle, outboard brakes',
    source: squat,
    told: [
      ['front.axle.kind', 'independent'],
      ['front.brake.place', 'outboard'],
      ['front.links.inward', 3],
      ['front.links.height', 0.15],
      ['brake.frontShare', 0.65],
      ['wheelbase', 2.5],
      ['cg.height', 0.55],
    ],
    asked: 'front.links.antiDive',
    expected: 0.1477272727,
    tolerance: 1e-6,
    why: '15 per cent: its share of the brake force',
  },
];
