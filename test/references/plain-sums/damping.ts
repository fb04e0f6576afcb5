/** Damping of one wheel. The paths are proposed: the catalog has none of them yet. */
import type { PlainSum } from './plainSum.js';
import { tenDigits, wheels } from './plainSum.js';
import { inch, lb, lbf, lbPerIn, nPerMm } from './units.js';

const critical = 'den Hartog, Mechanical Vibrations, ch. 2, c_c = 2 sqrt(k m), from memory';
const atWheel = 'derived: virtual work; the force goes with the ratio and so does the speed, c r^2';
/** One lbf for each inch a second. */
const lbfSecondPerInch = lbPerIn;

export const damping: readonly PlainSum[] = [
  {
    name: 'critical damping of 300 kg on 25 N/mm',
    source: critical,
    told: [['front.wheelRate', 25 * nPerMm], ...wheels('front', 'sprung', 300)],
    asked: 'front.criticalDamping',
    expected: 5477.225575,
    tolerance: tenDigits,
    basis: ['no tire'],
  },
  {
    name: 'critical damping on a ride rate, pounds and inches',
    source: critical,
    told: [['rear.rideRate', 150 * lbPerIn], ...wheels('rear', 'sprung', 650 * lb)],
    asked: 'rear.criticalDamping',
    expected: 31.78255623 * lbfSecondPerInch,
    tolerance: tenDigits,
    basis: ['springs and tires'],
    why: '31.8 lb s/in',
  },
  {
    name: 'critical damping from a spring frequency',
    source: `${critical}; with k = (2 pi f)^2 m it is 4 pi f m`,
    told: [['front.springFrequency', 1.5], ...wheels('front', 'sprung', 300)],
    asked: 'front.criticalDamping',
    expected: 5654.866776,
    tolerance: tenDigits,
  },
  {
    name: 'damping of a damper at the wheel',
    source: atWheel,
    told: [
      ['front.damper.rate', 3000],
      ['front.damper.ratio', 0.7],
    ],
    asked: 'front.wheelDamping',
    expected: 1470,
    tolerance: tenDigits,
  },
  {
    name: 'damping from a force at a speed',
    source: 'derived: c = F / v, if the force goes with the speed',
    told: [
      ['rear.damper.force', 250 * lbf],
      ['rear.damper.speed', 5 * inch],
    ],
    asked: 'rear.damper.rate',
    expected: 50 * lbfSecondPerInch,
    tolerance: tenDigits,
    why: 'pounds at 5 in/s',
  },
  {
    name: 'wheel damping for a damping ratio of 0.65',
    source: critical,
    told: [['front.dampingRatio', 0.65], ['front.wheelRate', 25 * nPerMm], ...wheels('front', 'sprung', 300)],
    asked: 'front.wheelDamping',
    expected: 3560.196624,
    tolerance: tenDigits,
    why: 'the inverse way',
  },
  {
    name: 'damper for a damping ratio of 0.65 at a ratio of 0.7',
    source: `${critical}; ${atWheel}`,
    told: [['front.dampingRatio', 0.65], ['front.damper.ratio', 0.7], ['front.wheelRate', 25 * nPerMm], ...wheels('front', 'sprung', 300)],
    asked: 'front.damper.rate',
    expected: 7265.707395,
    tolerance: tenDigits,
    why: 'divided by the square: over the ratio alone would be 5086',
  },
  {
    name: 'damping ratio from spring, damper, their ratios and the weight',
    source: `${critical}; ${atWheel}`,
    told: [
      ['rear.spring.rate', 60 * nPerMm],
      ['rear.spring.ratio', 0.9],
      ['rear.damper.rate', 4500],
      ['rear.damper.ratio', 0.85],
      ...wheels('rear', 'sprung', 270),
    ],
    asked: 'rear.dampingRatio',
    expected: 0.4487664205,
    tolerance: tenDigits,
    basis: ['no tire'],
    why: 'spring and damper each by its own ratio',
  },
  {
    name: 'damping ratio of wheel damping over critical damping, both told',
    source: 'by definition',
    told: [
      ['front.wheelDamping', 1800],
      ['front.criticalDamping', 6000],
    ],
    asked: 'front.dampingRatio',
    expected: 0.3,
    tolerance: tenDigits,
  },
  {
    name: 'a damper of no force',
    source: atWheel,
    told: [
      ['front.damper.rate', 0],
      ['front.damper.ratio', 0.7],
    ],
    asked: 'front.wheelDamping',
    expected: 0,
    tolerance: 1e-12,
    absolute: true,
    why: 'edge',
  },
];
