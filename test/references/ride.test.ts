/** Ride rates, frequencies and heights against REFERENCES section 4 (R1 to R4, D2 to D5), its traps 1, 2, 6, 8, 10 and 13, and CORNERING's rows. */
import { describe, expect, it } from 'vitest';
import {
  ask,
  bothEnds,
  car,
  degree,
  foot,
  inch,
  pound,
  poundForce,
  poundPerInch,
  rigidTire,
  straight,
  type Told,
} from '../core/ride/ask.js';
import { off, type Row } from './row.js';

const g = 9.80665;
const exact = 'EXACT by derivation';
const mm = 1e-3;
const slugs = (14.593902937206362 * pound) / pound;
/** One axle, each wheel carrying `sprung` kg, which is all that its figures need. */
const axle = (sprung: number, told: Told): Told => ({
  'lf.sprung': sprung,
  'rf.sprung': sprung,
  'front.spring.ratioRise': 0,
  ...Object.fromEntries(Object.entries(told).map(([path, value]) => [`front.${path}`, value])),
});
const r3 = axle(700 * pound, { ...straight, 'spring.rate': 200 * poundPerInch, 'tire.rate': 1200 * poundPerInch });

const rates: readonly Row[] = [
  {
    id: 'R1',
    source: 'Barton & Fieldhouse, p. 179, eq. 3.33',
    input: 'k 400, MR 0.65',
    got: () => ask(axle(300, { 'spring.rate': 400, 'spring.ratio': 0.65 }), 'front.wheelRate'),
    expected: 169,
    tolerance: 1e-12,
    why: 'and trap 1: the ratio squared, not 260',
  },
  {
    id: 'R2',
    source: `${exact}; Gillespie ch. 5, from memory`,
    input: '200 and 1200 lbf/in',
    got: () => ask(r3, 'front.rideRate') / poundPerInch,
    expected: 171.428571,
    tolerance: 3e-9,
    why: 'tire in series',
  },
  {
    id: 'R3',
    source: exact,
    input: '700 lbf sprung',
    got: () => ask(r3, 'front.rideFrequency'),
    expected: 1.547591,
    tolerance: 1e-6,
    why: 'with the tire',
  },
  {
    id: 'R3',
    source: exact,
    input: '700 lbf sprung',
    got: () => ask(r3, 'front.springFrequency'),
    expected: 1.671589,
    tolerance: 1e-6,
    why: 'without it, and named so',
  },
  {
    id: 'trap 10',
    source: exact,
    input: '300/40 kg, 30/200 kN/m',
    got: () =>
      ask(
        { ...axle(300, { ...straight, 'spring.rate': 30000, 'tire.rate': 200000 }), 'lf.unsprung': 40, 'rf.unsprung': 40 },
        'front.rideFrequency',
      ),
    expected: 1.484127,
    tolerance: 1e-6,
    why: 'on the sprung mass',
  },
  {
    id: 'trap 10',
    source: exact,
    input: 'the same from scales',
    got: () =>
      ask(
        {
          'lf.scale': 340,
          'rf.scale': 340,
          'lf.unsprung': 40,
          'rf.unsprung': 40,
          ...Object.fromEntries(
            Object.entries(axle(0, { ...straight, 'spring.rate': 30000, 'tire.rate': 200000 })).filter(
              ([path]) => !path.endsWith('sprung'),
            ),
          ),
        },
        'front.rideFrequency',
      ),
    expected: 1.484127,
    tolerance: 1e-6,
    why: 'not 1.394095, which takes all 340 kg',
  },
];

const deflections: readonly Row[] = (
  [
    [1, 9.77974],
    [1.2, 6.79148],
    [1.5, 4.34655],
    [2, 2.44493],
    [2.5, 1.56476],
    [3, 1.08664],
  ] as const
).flatMap(([hertz, expected]) => {
  const facts = axle(300, { ...straight, 'spring.rate': 300 * (2 * Math.PI * hertz) ** 2, 'tire.rate': rigidTire });
  // The same frequency with a tire in it: the deflection of both together does not change.
  const k = 300 * (2 * Math.PI * hertz) ** 2;
  const soft = axle(300, { ...straight, 'spring.rate': 1 / (1 / k - 1 / 200000), 'tire.rate': 200000 });
  return [
    {
      id: 'R4',
      source: exact,
      input: `${hertz} Hz`,
      got: () => ask(facts, 'front.staticDeflection') / inch,
      expected,
      tolerance: 1e-5,
      why: 'static deflection, in',
    },
    {
      id: 'R4',
      source: exact,
      input: `${hertz} Hz`,
      got: () => 187.635 / Math.sqrt(ask(facts, 'front.staticDeflection') / inch) / 60,
      expected: hertz,
      tolerance: 1e-5,
      why: 'cycles a minute are 187.635 over the root of inches',
    },
    {
      id: 'R4',
      source: exact,
      input: `${hertz} Hz, tire of 200 N/mm`,
      got: () => ask(soft, 'front.staticDeflection') / inch,
      expected,
      tolerance: 1e-5,
      why: 'weight over ride rate',
    },
  ];
});

// An open data set: mass and rates of a measured car (Allen et al. 1992, US DOT, by way of dawsonc/commonroad-vehicle-models).
const allen = 'inputs: commonroad vehicle 1, after Allen et al. 1992; EXACT from there';
const [a, b] = [2.9 * foot, 4.95 * foot];
const sprung = 75 * slugs;
const poundPerFoot = poundForce / foot;
const v1: Told = {
  'lf.sprung': (sprung * b) / (a + b) / 2,
  'rf.sprung': (sprung * b) / (a + b) / 2,
  'lr.sprung': (sprung * a) / (a + b) / 2,
  'rr.sprung': (sprung * a) / (a + b) / 2,
  ...bothEnds({ ...straight, 'spring.rate': 1500 * poundPerFoot, 'tire.rate': 13000 * poundPerFoot }),
};
const measuredCar: readonly Row[] = [
  { id: 'D1', source: allen, input: 'V1', got: () => sprung, expected: 1094.543, tolerance: 1e-6, why: 'sprung mass, kg' },
  { id: 'D2', source: allen, input: 'V1', got: () => ask(v1, 'front.wheelRate'), expected: 21890.85, tolerance: 1e-6, why: 'wheel rate' },
  { id: 'D3', source: allen, input: 'V1', got: () => ask(v1, 'rear.rideRate'), expected: 19626.28, tolerance: 1e-6, why: 'ride rate' },
  {
    id: 'D4',
    source: allen,
    input: 'V1',
    got: () => ask(v1, 'lf.sprungMass'),
    expected: 345.095,
    tolerance: 2e-6,
    why: 'sprung corner, front',
  },
  {
    id: 'D4',
    source: allen,
    input: 'V1',
    got: () => ask(v1, 'rr.sprungMass'),
    expected: 202.177,
    tolerance: 2e-6,
    why: 'sprung corner, rear',
  },
  { id: 'D5', source: allen, input: 'V1', got: () => ask(v1, 'front.rideFrequency'), expected: 1.200245, tolerance: 1e-5, why: 'front' },
  { id: 'D5', source: allen, input: 'V1', got: () => ask(v1, 'rear.rideFrequency'), expected: 1.568099, tolerance: 1e-5, why: 'rear' },
];

/** Trap 2 by its full geometry: arm 0.36 m, spring on it at 0.24 m, its top at (0.18, 0.30) m. */
const arm = (bump: number): { length: number; ratio: number } => {
  const angle = Math.asin(bump / 0.36);
  const [y, z] = [0.24 * Math.cos(angle), 0.24 * Math.sin(angle)];
  const length = Math.hypot(y - 0.18, z - 0.3);
  // -dL/d(angle) over d(bump)/d(angle).
  const perAngle = ((y - 0.18) * -0.24 * Math.sin(angle) + (z - 0.3) * 0.24 * Math.cos(angle)) / length;
  return { length, ratio: -perAngle / (0.36 * Math.cos(angle)) };
};
const bumps = Array.from({ length: 401 }, (_, n) => (n - 200) / 2000);
const tabled = { x: bumps, y: bumps.map((bump) => arm(bump).ratio), between: 'line' as const };
const byTable = {
  'lf.sprung': (2500 * arm(0).ratio) / g,
  'rf.sprung': (2500 * arm(0).ratio) / g,
  'front.spring.rate': 60000,
  'front.spring.ratios': tabled,
};
const bySlope = {
  'lf.sprung': (2500 * 0.6537205) / g,
  'rf.sprung': (2500 * 0.6537205) / g,
  'front.spring.rate': 60000,
  'front.spring.ratio': 0.6537205,
  'front.spring.ratioRise': 0.3073045,
};
const trap2 = 'REFERENCES trap 2: EXACT, confirmed there by finite differences';
const moving: readonly Row[] = [
  {
    id: 'trap 2',
    source: trap2,
    input: 'level',
    got: () => ask(byTable, 'front.motionRatio'),
    expected: 0.6537205,
    tolerance: 1e-6,
    why: 'motion ratio',
  },
  {
    id: 'trap 2',
    source: trap2,
    input: '-50 mm',
    got: () => arm(-0.05).ratio,
    expected: 0.6409659,
    tolerance: 1e-6,
    why: 'the geometry of this test',
  },
  {
    id: 'trap 2',
    source: trap2,
    input: '+50 mm',
    got: () => arm(0.05).ratio,
    expected: 0.6713659,
    tolerance: 1e-6,
    why: 'the geometry of this test',
  },
  {
    id: 'trap 2',
    source: trap2,
    input: 'ratio and its rise',
    got: () => 60000 * ask(bySlope, 'front.motionRatio') ** 2,
    expected: 25641.03,
    tolerance: 1e-6,
    why: 'rate times ratio squared',
  },
  {
    id: 'trap 2',
    source: trap2,
    input: 'ratio and its rise',
    got: () => ask(bySlope, 'front.wheelRate'),
    expected: 26409.29,
    tolerance: 1e-6,
    why: 'with the force times the rise',
  },
  {
    id: 'trap 2',
    source: trap2,
    input: 'table of ratios',
    got: () => ask(byTable, 'front.wheelRate'),
    expected: 26409.29,
    tolerance: 2e-5,
    why: 'the slope is that of the table, point to point',
  },
  {
    id: 'trap 2',
    source: trap2,
    input: 'ratios at -50, 0 and +50 mm only',
    got: () =>
      ask(
        { ...byTable, 'front.spring.ratios': { x: [-0.05, 0, 0.05], y: [0.6409659, 0.6537205, 0.6713659], between: 'line' } },
        'front.wheelRate',
      ),
    expected: 26409.29,
    tolerance: 4e-4,
    why: 'three readings are enough for the slope',
  },
  ...(
    [
      [-0.05, 0.6409659],
      [0.05, 0.6713659],
    ] as const
  ).map(
    ([bump, expected]): Row => ({
      id: 'trap 2',
      source: trap2,
      input: `table of ratios, ${bump} m of bump`,
      got: () => ask({ ...byTable, bump }, 'front.motionRatio'),
      expected,
      tolerance: 1e-6,
      why: 'the ratio at a bump that is asked about',
    }),
  ),
  ...([-0.05, 0.05] as const).map(
    (bump): Row => ({
      id: 'trap 2',
      source: `${exact}: spring length by the geometry of this test`,
      input: `the same, ${bump} m`,
      got: () => ask({ ...byTable, bump }, 'front.springForce'),
      expected: 2500 + 60000 * (arm(0).length - arm(bump).length),
      tolerance: 1e-6,
      why: 'force after that travel',
    }),
  ),
];

const tire = { 'front.tire.measuredDiameter': 0.632, 'front.tire.rate': 200000, 'front.spring.rate': 40000 };
const cornering = 'CORNERING, springs, height, geometry: EXACT';
/** Four alike corners: what happens at one happens at all, so that nothing tilts. */
const level = (sprungWeight: number, told: Told): Told => ({
  ...Object.fromEntries(['lf', 'rf', 'lr', 'rr'].map((at) => [`${at}.sprung`, sprungWeight / g])),
  ...bothEnds({ 'spring.ratioRise': 0, ...told }),
});
const corner = { 'spring.rate': 60000, 'spring.ratio': 0.65 };
const padded = { ...corner, 'isolator.thickness': 0.012, 'isolator.rate': 900000 };
const everywhere = (path: string, value: number): Told =>
  Object.fromEntries(['lf', 'rf', 'lr', 'rr'].map((at) => [`${at}.${path}`, value]));
const heights: readonly Row[] = [
  {
    id: 'trap 6',
    source: 'REFERENCES trap 6: EXACT',
    input: '316 mm free, 3500 N, 200 N/mm',
    got: () => ask({ ...tire, 'lf.scale': 3500 / g, 'rf.scale': 3500 / g }, 'front.tire.loadedRadiusNow') / mm,
    expected: 298.5,
    tolerance: 1e-9,
    why: 'static loaded radius',
  },
  {
    id: 'isolator',
    source: cornering,
    input: '2800 N sprung, MR 0.65, 12 mm of 900 N/mm',
    got: () => ask(level(2800, padded), 'front.heightChange', level(2800, corner)) / mm,
    expected: 11.098,
    tolerance: 5e-6,
    why: 'thickness less squeeze, over the ratio',
  },
  {
    id: 'isolator',
    source: cornering,
    input: 'the same at the perch',
    got: () =>
      ask(
        level(2800, { ...corner, 'perchIsolator.thickness': 0.012, 'perchIsolator.rate': 900000 }),
        'rear.heightChange',
        level(2800, corner),
      ) / mm,
    expected: 11.098,
    tolerance: 5e-6,
    why: 'the same force through it',
  },
  {
    id: 'isolator',
    source: cornering,
    input: 'the same',
    got: () => ask(level(2800, padded), 'front.wheelRate'),
    expected: 0.65 ** 2 / (1 / 60000 + 1 / 900000),
    tolerance: 1e-9,
    why: 'rates in series',
  },
  {
    id: 'spacer',
    source: cornering,
    input: '10 mm at each, MR 0.65',
    got: () => ask({ ...level(2800, corner), ...everywhere('spacer', 0.01) }, 'front.heightChange', level(2800, corner)) / mm,
    expected: 10 / 0.65,
    tolerance: 1e-9,
    why: 'divided by the ratio, not multiplied',
  },
  {
    id: 'perch',
    source: cornering,
    input: '4 turns of 1.5 mm, MR 0.65',
    got: () =>
      ask({ ...level(2800, corner), ...everywhere('perch.turns', 4), 'perch.pitch': 0.0015 }, 'rear.heightChange', {
        ...level(2800, corner),
        'perch.pitch': 0.0015,
      }) / mm,
    expected: 6 / 0.65,
    tolerance: 1e-9,
    why: 'turns times pitch over the ratio',
  },
  {
    id: 'length',
    source: cornering,
    input: '20 mm shorter, as stiff, MR 0.65',
    got: () =>
      ask(level(2800, { ...corner, 'spring.length': 0.23 }), 'front.heightChange', level(2800, { ...corner, 'spring.length': 0.25 })) / mm,
    expected: -20 / 0.65,
    tolerance: 1e-9,
    why: 'free length',
  },
  {
    id: 'rate',
    source: cornering,
    input: '60 to 80 N/mm, as long, 2800 N, MR 0.65',
    got: () => ask(level(2800, { ...corner, 'spring.rate': 80000 }), 'front.heightChange', level(2800, corner)),
    expected: (2800 / 0.65 / 0.65) * (1 / 60000 - 1 / 80000),
    tolerance: 1e-9,
    why: 'less compression of the stiffer spring',
  },
  {
    id: 'tire',
    source: cornering,
    input: 'diameter +20 mm, rate 180 to 240 N/mm, 2800 + 400 N',
    got: () =>
      ask(
        { ...level(2800, { ...corner, 'tire.measuredDiameter': 0.62, 'tire.rate': 240000 }), ...everywhere('unsprung', 400 / g) },
        'rear.heightChange',
        { ...level(2800, { ...corner, 'tire.measuredDiameter': 0.6, 'tire.rate': 180000 }), ...everywhere('unsprung', 400 / g) },
      ),
    expected: 0.01 + 3200 / 180000 - 3200 / 240000,
    tolerance: 1e-9,
    why: 'change of loaded radius, unsprung weight included',
  },
  {
    id: 'offset',
    source: cornering,
    input: 'MR 0.65, lever 1.5 m, wheel 10 mm further out',
    got: () =>
      ask({ ...axle(300, corner), 'front.wheel.lever': 1.5, 'front.wheel.offset': 0.025 }, 'front.motionRatio', {
        ...axle(300, corner),
        'front.wheel.lever': 1.5,
        'front.wheel.offset': 0.035,
      }),
    expected: 0.645695,
    tolerance: 1e-6,
    why: 'the load moves on its lever',
  },
];

/** REFERENCES L8: wheel rates 150/150/130/130 lbf/in on rigid tires, LF raised 0.5 in of wheel travel. */
const l8: Told = {
  mass: 2600 * pound,
  frontShare: 0.52,
  ...bothEnds({ ...straight, track: 58 * inch, 'tire.rate': rigidTire }),
  'front.spring.rate': 150 * poundPerInch,
  'rear.spring.rate': 130 * poundPerInch,
};
const raised: Told = { ...l8, 'lf.perch.turns': 0.5 * 12, 'perch.pitch': inch / 12 };
const gain = (at: string, told: Told = raised, then: Told = l8): number =>
  (ask(told, `${at}.cornerMass`, then) - ask(then, `${at}.cornerMass`)) / pound;
const twisted = { 'chassis.stiffness': (4000 * poundForce * foot) / degree };
const bend = 17.410714;
const perches: readonly Row[] = [
  ...(
    [
      ['lf', bend],
      ['rr', bend],
      ['rf', -bend],
      ['lr', -bend],
    ] as const
  ).map(
    ([at, expected]): Row => ({
      id: 'L8',
      source: exact,
      input: 'LF up 0.5 in of wheel travel',
      got: () => gain(at),
      expected,
      tolerance: 3e-8,
      why: at,
    }),
  ),
  {
    id: 'trap 9',
    source: exact,
    input: 'L8 of 2600 lb',
    got: () => 100 * (ask(l8, 'cross') - ask(raised, 'cross', l8)),
    expected: 1.3393,
    tolerance: 3e-5,
    why: 'cross weight, per cent: twice the gain over the whole',
  },
  {
    id: 'P',
    source: cornering,
    input: 'L8, t 58 in, body 4000 lbf ft/deg',
    got: () => gain('lf', { ...raised, ...twisted }, { ...l8, ...twisted }),
    expected: 16.69943,
    tolerance: 1e-6,
    why: 'a body that twists gives way',
  },
];

describe('ride in print', () => {
  const rows = [...rates, ...deflections, ...measuredCar, ...moving, ...heights, ...perches];
  it('has all rows', () => expect(rows.length).toBe(58));
  for (const row of rows)
    it(`${row.id} ${row.input}: ${row.why}`, () => expect(off(row), `${row.got()} for ${row.expected}`).toBeLessThanOrEqual(1));
});

describe('trap 13 (EXACT): preload of a linear spring', () => {
  const before = level(2800, { ...corner, 'tire.rate': 200000 });
  const after = { ...before, ...everywhere('perch.turns', 5), 'perch.pitch': 0.0018 };
  for (const path of ['front.springRateHere', 'front.wheelRate', 'front.rideFrequency', 'rear.springForce', 'rear.springCompression']) {
    it(`does not change the ${path}`, () => expect(ask(after, path, before) / ask(before, path) - 1).toBeCloseTo(0, 12));
  }
  it('changes the height only, and the droop that is left not at all', () => {
    expect(ask(after, 'front.heightChange', before)).toBeCloseTo(0.009 / 0.65, 12);
    expect(ask(after, 'front.droopTravel', before)).toBeCloseTo(ask(before, 'front.droopTravel'), 12);
  });
});

describe('holding heights (CORNERING)', () => {
  it('perches turned by P over the ride rate, with the signs of the diagonal, move load and no height', () => {
    const load = 60;
    const [front, rear] = [ask(l8, 'front.rideRate'), ask(l8, 'rear.rideRate')];
    const turns = { 'lf.spacer': load / front, 'rr.spacer': load / rear, 'rf.spacer': -load / front, 'lr.spacer': -load / rear };
    const it = car({ ...l8, ...turns }, l8);
    for (const [at, sign] of [
      ['lf', 1],
      ['rr', 1],
      ['rf', -1],
      ['lr', -1],
    ] as const) {
      expect(Math.abs(Number(it.number(`${at}.corner.heightChange`)))).toBeLessThan(1e-9);
      expect((Number(it.number(`${at}.cornerMass`)) - ask(l8, `${at}.cornerMass`)) * g).toBeCloseTo(sign * load, 6);
    }
  });
});
