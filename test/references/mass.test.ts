/** Weights: what follows from scale readings and from what comes aboard. */
import { describe, expect, it } from 'vitest';
import { ask, bothEnds, inch, pound, poundPerInch, straight, type Told } from '../core/ride/ask.js';
import { off, type Row } from './row.js';

const exact = 'EXACT by definition';
const scales: Told = { 'lf.scale': 742 * pound, 'rf.scale': 699 * pound, 'lr.scale': 571 * pound, 'rr.scale': 598 * pound };
const l2: Told = {
  mass: 2600 * pound,
  frontShare: 0.52,
  wheelbase: 95 * inch,
  'front.unsprung.axle': 180 * pound,
  'rear.unsprung.axle': 160 * pound,
};
const springs = bothEnds({ ...straight, 'spring.rate': 300 * poundPerInch });
/** REFERENCES L5: 1500 kg, 1.5 m wheelbase, 0.8 m behind the front axle: 8338.5 N on the front under 0.3 g, less 1500 g (0.3) 0.5/1.5 of transfer. */
const l5Front = (8338.5 - (1500 * 9.81 * 0.3 * 0.5) / 1.5) / 9.81;

const rows: readonly Row[] = [
  {
    id: 'cross',
    source: 'REFERENCES section 12 and CORNERING: (RF + LR)/W',
    input: '742 699 571 598 lb',
    got: () => ask(scales, 'cross'),
    expected: 1270 / 2610,
    tolerance: 1e-12,
    why: 'the diagonal from the right front',
  },
  {
    id: 'total',
    source: exact,
    input: 'the same',
    got: () => ask(scales, 'totalMass') / pound,
    expected: 2610,
    tolerance: 1e-12,
    why: 'sum',
  },
  {
    id: 'front',
    source: exact,
    input: 'the same',
    got: () => ask(scales, 'frontShareNow'),
    expected: 1441 / 2610,
    tolerance: 1e-12,
    why: 'front share',
  },
  {
    id: 'left',
    source: exact,
    input: 'the same',
    got: () => ask(scales, 'leftShareNow'),
    expected: 1313 / 2610,
    tolerance: 1e-12,
    why: 'left share',
  },
  {
    id: 'L2',
    source: 'REFERENCES L2: EXACT',
    input: '2600 lbf, unsprung 180/160',
    got: () => (ask(l2, 'front.axle.sprungMass') + ask(l2, 'rear.axle.sprungMass')) / pound,
    expected: 2260,
    tolerance: 1e-12,
    why: 'sprung weight',
  },
  {
    id: 'L2',
    source: 'REFERENCES L2: EXACT',
    input: '52 % front',
    got: () => ask(l2, 'front.axleMass') / pound,
    expected: 1352,
    tolerance: 1e-12,
    why: 'front axle',
  },
  {
    id: 'L5',
    source: 'REFERENCES L5, seen; its transfer taken out',
    input: '1500 kg as a load 0.8 m behind the front axle of a 1.5 m car',
    got: () =>
      ask({ mass: 1e-9, frontShare: 0.5, wheelbase: 1.5, 'ballast.weight': 1500, 'ballast.behind': 0.8 }, 'front.axleMass', {
        mass: 1e-9,
        frontShare: 0.5,
        wheelbase: 1.5,
      }),
    expected: l5Front,
    tolerance: 1e-5,
    why: 'statics of a load between two axles',
  },
  {
    id: 'passenger',
    source: exact,
    input: '180 lb 14 in right of center on 2640 lb',
    got: () =>
      ask({ mass: 2640 * pound, 'passenger.weight': 180 * pound, 'passenger.right': 14 * inch, ...springs }, 'cg.rightNow', {
        mass: 2640 * pound,
        ...springs,
      }) / inch,
    expected: (180 * 14) / 2820,
    tolerance: 1e-9,
    why: 'moments about the center line',
  },
  {
    id: 'fuel',
    source: 'gasoline of 745 kg/m^3 (EN 228: 720 to 775, from memory)',
    input: 'half of 50 l',
    got: () => ask({ 'fuel.share': 0.5, 'tank.size': 0.05 }, 'fuel.weight'),
    expected: 18.6,
    tolerance: 0.04,
    why: 'within what the standard allows',
  },
];

describe('weights', () => {
  it('has all rows', () => expect(rows.length).toBe(9));
  for (const row of rows)
    it(`${row.id} ${row.input}: ${row.why}`, () => expect(off(row), `${row.got()} for ${row.expected}`).toBeLessThanOrEqual(1));
});
