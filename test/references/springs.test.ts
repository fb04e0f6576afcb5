/** Coil springs against print (REFERENCES section 2), progressive springs and tenders (trap 8, CORNERING), and what the trade knows. */
import { describe, expect, it } from 'vitest';
import { isRefusal } from '../../core/catalog.js';
import {
  activeMass,
  bergstraesserFactor,
  coilRate,
  coilStress,
  springIndex,
  surgeFrequency,
  wahlFactor,
} from '../../core/subjects/springs/coil.js';
import {
  compressionAt,
  type ForceLaw,
  forceAt,
  lawOfForces,
  lawOfRates,
  linearLaw,
  rateAt,
  withBeside,
  withSeries,
} from '../../core/subjects/springs/law.js';
import { ask, bothEnds, inch, pound, poundForce, poundPerInch, rigidTire, straight } from '../core/ride/ask.js';
import { inParallelRate } from '../core/springs/rates.js';
import { off, type Row } from './row.js';

const bhandari = 'FOSSEE/Scilab-TBC-Uploads, companion 764 (Bhandari, Design of Machine Elements), chapter 10';
const mm = 1e-3;
const MPa = 1e6;
const law = (made: ReturnType<typeof lawOfRates>): ForceLaw => {
  if (isRefusal(made)) throw new Error(made.refused);
  return made;
};

const wahl: readonly Row[] = (
  [
    [5, 1.3105],
    [6, 1.2525],
    [7, 1.2129],
    [7.1, 1.2096],
    [7.2, 1.2064],
    [7.3, 1.2033],
    [8, 1.184],
  ] as const
).map(([index, expected]) => ({
  id: 'S1',
  source: `${bhandari}, EX10.3.a/data10_3.sci`,
  input: `C = ${index}`,
  got: () => wahlFactor(index),
  expected,
  tolerance: 5e-4,
  why: 'curvature and direct shear raise the stress',
}));

const s2 = { modulus: 81370 * MPa, wire: 7 * mm, diameter: 42 * mm, turns: 8 };
const s2Rate = coilRate(s2.modulus, s2.wire, s2.diameter, s2.turns);
const s5Outer = coilRate(81370 * MPa, 10 * mm, 80 * mm, 8);
const s5Inner = coilRate(81370 * MPa, 8 * mm, 64 * mm, 12);
const s5Squeeze = 2000 / inParallelRate(s5Outer, s5Inner);
// d from stress = K 8 P C/(pi d^2), half of the ultimate strength allowed.
const s2Wire = Math.sqrt((wahlFactor(6) * 8 * 1250 * 6) / (Math.PI * 545 * MPa));
const coils: readonly Row[] = [
  {
    id: 'S2',
    source: `${bhandari}, EX10.1.b`,
    input: 'P 1250 N, C 6, 545 MPa allowed',
    got: () => s2Wire / mm,
    expected: 6.625083,
    tolerance: 1e-6,
    why: 'wire diameter before it is rounded up',
  },
  {
    id: 'S2',
    source: `${bhandari}, EX10.1.b`,
    input: 'd 7, C 6, 30 mm at 1250 N',
    got: () => coilRate(s2.modulus, s2.wire, s2.diameter, 1) / (1250 / (30 * mm)),
    expected: 7.911,
    tolerance: 1e-4,
    why: 'active coils before they are rounded up',
  },
  {
    id: 'S2',
    source: `${bhandari}, EX10.1.b`,
    input: 'd 7, D 42, N 8',
    got: () => s2Rate / 1000,
    expected: 41.203,
    tolerance: 1e-6,
    why: 'rate in N/mm',
  },
  {
    id: 'S2',
    source: `${bhandari}, EX10.1.b`,
    input: '1250 N',
    got: () => 1250 / s2Rate / mm,
    expected: 30.3376,
    tolerance: 2e-6,
    why: 'deflection in mm',
  },
  {
    id: 'S2',
    source: `${bhandari}, EX10.1.b, through the catalog`,
    input: 'd 7, D 42, N 8',
    got: () =>
      ask(
        { 'front.coil.wire': s2.wire, 'front.coil.diameter': s2.diameter, 'front.coil.turns': 8, 'front.coil.modulus': s2.modulus },
        'front.coil.rate',
      ) / 1000,
    expected: 41.203,
    tolerance: 1e-6,
    why: 'the figure is the function',
  },
  {
    id: 'S5',
    source: `${bhandari}, EX10.18.b`,
    input: 'd 10, D 80, N 8',
    got: () => s5Outer / 1000,
    expected: 24.83215,
    tolerance: 1e-6,
    why: 'outer spring',
  },
  {
    id: 'S5',
    source: `${bhandari}, EX10.18.b`,
    input: 'd 8, D 64, N 12',
    got: () => s5Inner / 1000,
    expected: 13.24382,
    tolerance: 1e-6,
    why: 'inner spring',
  },
  {
    id: 'S5',
    source: `${bhandari}, EX10.18.b`,
    input: '2000 N on both',
    got: () => s5Squeeze / mm,
    expected: 52.526569,
    tolerance: 1e-6,
    why: 'nested springs share one travel',
  },
  {
    id: 'S5',
    source: `${bhandari}, EX10.18.b`,
    input: '2000 N on both',
    got: () => s5Squeeze * s5Outer,
    expected: 1304.3478,
    tolerance: 1e-6,
    why: 'what the outer carries',
  },
  {
    id: 'S5',
    source: `${bhandari}, EX10.18.b`,
    input: '2000 N on both',
    got: () => s5Squeeze * s5Inner,
    expected: 695.6522,
    tolerance: 1e-6,
    why: 'what the inner carries',
  },
  {
    id: 'S5',
    source: `${bhandari}, EX10.18.b`,
    input: '2000 N on both',
    got: () => coilStress(wahlFactor(8), s5Squeeze * s5Outer, 10 * mm, 80 * mm) / MPa,
    expected: 314.6167,
    tolerance: 1e-6,
    why: 'stress of the outer',
  },
  {
    id: 'S5',
    source: `${bhandari}, EX10.18.b`,
    input: '2000 N on both',
    got: () => coilStress(wahlFactor(8), s5Squeeze * s5Inner, 8 * mm, 64 * mm) / MPa,
    expected: 262.1806,
    tolerance: 1e-6,
    why: 'stress of the inner',
  },
  {
    id: 'S5',
    source: `${bhandari}, EX10.18.b, through the catalog`,
    input: '2000 N on a straight wheel, rigid tire',
    got: () => ask(s5Car(), 'front.springCompression') / mm,
    expected: 52.526569,
    tolerance: 1e-6,
    why: 'a spring beside the main one',
  },
  {
    id: 'S5',
    source: `${bhandari}, EX10.18.b, through the catalog`,
    input: 'd 10, D 80 under 1304.3478 N',
    got: () => ask({ 'rear.coil.wire': 0.01, 'rear.coil.diameter': 0.08, springLoad: 1304.3478 }, 'rear.coil.stress') / MPa,
    expected: 314.6167,
    tolerance: 1e-6,
    why: 'stress by the factor of Wahl',
  },
];
function s5Car(): Record<string, number> {
  return {
    'lf.sprung': 2000 / 9.80665,
    'rf.sprung': 2000 / 9.80665,
    'front.spring.rate': s5Outer,
    'front.inner.rate': s5Inner,
    'front.spring.ratio': 1,
    'front.spring.ratioRise': 0,
    'front.tire.rate': rigidTire,
  };
}

// Shigley's example 10-1: inches and pounds-force; D rounded to 0.400 as there.
const shigley = 'Shigley 8e, example 10-1, from memory';
const s7Wire = 0.037 * inch;
const s7Mean = 0.4 * inch;
const s7Rate = coilRate(11.85e6 * 6894.757293168361, s7Wire, s7Mean, 10.5);
const s7Yield =
  (Math.PI * s7Wire ** 3 * 0.45 * (201 / 0.037 ** 0.145) * 1000 * 6894.757293168361) / (8 * bergstraesserFactor(10.8) * s7Mean);
const s7: readonly Row[] = [
  {
    id: 'S7',
    source: shigley,
    input: 'd 0.037, OD 7/16 in',
    got: () => springIndex(s7Wire, (7 / 16) * inch - s7Wire),
    expected: 10.8,
    tolerance: 5e-3,
    why: 'spring index',
  },
  {
    id: 'S7',
    source: shigley,
    input: 'C 10.8',
    got: () => bergstraesserFactor(10.8),
    expected: 1.124,
    tolerance: 5e-3,
    why: 'curvature factor',
  },
  {
    id: 'S7',
    source: shigley,
    input: 'Ssy 0.45 Sut, A 201 kpsi in^m, m 0.145',
    got: () => s7Yield / poundForce,
    expected: 6.46,
    tolerance: 5e-3,
    why: 'force at yield',
  },
  {
    id: 'S7',
    source: shigley,
    input: 'G 11.85 Mpsi, 10.5 active coils',
    got: () => s7Rate / poundPerInch,
    expected: 4.13,
    tolerance: 5e-3,
    why: 'rate',
  },
  {
    id: 'S7',
    source: shigley,
    input: 'yield over rate',
    got: () => s7Yield / s7Rate / inch,
    expected: 1.56,
    tolerance: 5e-3,
    why: 'deflection at yield',
  },
  {
    id: 'S7',
    source: shigley,
    input: 'solid length of 12.5 coils, squared, plus that',
    got: () => (s7Yield / s7Rate + 0.037 * inch * (12.5 + 1)) / inch,
    expected: 2.06,
    tolerance: 5e-3,
    why: 'free length',
  },
];

const s8 = { wire: 12 * mm, diameter: 76 * mm, turns: 6, modulus: 81500 * MPa };
const s8Rate = coilRate(s8.modulus, s8.wire, s8.diameter, s8.turns);
const s8Mass = activeMass(s8.wire, s8.diameter, s8.turns, 7850);
const s8Facts = {
  'rear.coil.wire': s8.wire,
  'rear.coil.diameter': s8.diameter,
  'rear.coil.turns': s8.turns,
  'rear.coil.modulus': s8.modulus,
};
const exact = 'EXACT by derivation';
const scaled = (wire: number, diameter: number, turns: number): number =>
  coilRate(s8.modulus, s8.wire * wire, s8.diameter * diameter, turns) / s8Rate;
const s8to10: readonly Row[] = [
  {
    id: 'S8',
    source: exact,
    input: 'd 12, D 76, n 6, G 81500',
    got: () => s8Rate / 1000,
    expected: 80.2048,
    tolerance: 1e-4,
    why: 'rate, N/mm',
  },
  { id: 'S8', source: exact, input: 'the same', got: () => s8Rate / poundPerInch, expected: 457.98, tolerance: 1e-4, why: 'rate, lbf/in' },
  { id: 'S8', source: exact, input: '7850 kg/m^3', got: () => s8Mass, expected: 1.27185, tolerance: 1e-4, why: 'active mass, kg' },
  {
    id: 'S8',
    source: exact,
    input: 'both ends held',
    got: () => surgeFrequency(s8Rate, s8Mass),
    expected: 125.56,
    tolerance: 1e-4,
    why: 'surge, Hz',
  },
  {
    id: 'S8',
    source: `${exact}, through the catalog`,
    input: 'both ends held',
    got: () => ask(s8Facts, 'rear.coil.surge'),
    expected: 125.56,
    tolerance: 1e-4,
    why: 'the figure',
  },
  { id: 'S9', source: exact, input: 'wire +1 %', got: () => scaled(1.01, 1, 6), expected: 1.040604, tolerance: 1e-6, why: 'fourth power' },
  { id: 'S9', source: exact, input: 'coil -1 %', got: () => scaled(1, 0.99, 6), expected: 1.03061, tolerance: 1e-6, why: 'third power' },
  { id: 'S9', source: exact, input: '6 to 5 coils', got: () => scaled(1, 1, 5), expected: 1.2, tolerance: 1e-6, why: 'inverse' },
  {
    id: 'S10',
    source: exact,
    input: '100 and 300 in series',
    got: () => rateAt(withSeries(linearLaw(100), 300), 0.05),
    expected: 75,
    tolerance: 1e-12,
    why: 'compliances add',
  },
  {
    id: 'S10',
    source: exact,
    input: '100 and 300 in parallel',
    got: () => rateAt(withBeside(linearLaw(100), 300, 0), 0.05),
    expected: 400,
    tolerance: 1e-12,
    why: 'rates add',
  },
];

/** S11: force that grows e times every 0.25 m, as a table of forces from the free spring on: chords of 0.05 mm about the three loads. */
const s11Source = 'Barton & Fieldhouse, Automotive Chassis Engineering, p. 177, eq. 3.28 (formula seen)';
const s11 = (() => {
  const step = 0.00005;
  // The law has no free length: a straight start of 1000 N, 0.25 m long, stands in for it, far below the loads asked about.
  const x = [0, 0.25];
  const y = [0, 1000];
  for (let n = 1; n <= 10000; n++) {
    x.push(0.25 + n * step);
    y.push(1000 * Math.exp((n * step) / 0.25));
  }
  return law(lawOfForces({ x, y, between: 'line' }));
})();
const s11At = (shift: number): number => 0.25 + 0.25 * Math.log(3) + shift;
const risingRows: readonly Row[] = (
  [
    [-0.05, 2456.192, 9824.77],
    [0, 3000, 12000],
    [0.05, 3664.208, 14656.83],
  ] as const
).flatMap(([shift, force, rate]) => {
  const input = `x - xs = ${shift} m`;
  const here = compressionAt(s11, force);
  // The tangent at a point of a table is that of its chord: two chords, half a step to each side.
  const tangent = (): number => (rateAt(s11, here - 0.000025) + rateAt(s11, here + 0.000025)) / 2;
  return [
    { id: 'S11', source: s11Source, input, got: () => forceAt(s11, s11At(shift)), expected: force, tolerance: 1e-6, why: 'force' },
    { id: 'S11', source: s11Source, input, got: tangent, expected: rate, tolerance: 5e-5, why: 'tangent rate, by chords of the table' },
    {
      id: 'S11',
      source: s11Source,
      input,
      got: () => Math.sqrt((tangent() * 9.80665) / force) / (2 * Math.PI),
      expected: 0.996806,
      tolerance: 5e-5,
      why: 'one frequency for every load',
    },
  ];
});

const cornering = 'CORNERING, springs, height, geometry: EXACT';
const evenly = law(lawOfRates({ x: [0, 0.08], y: [25000, 45000], between: 'line' }));
// Trap 8: tender 100 that blocks at 300 lbf, on a main of 300 lbf/in, 500 lbf.
const tender = withSeries(law(lawOfRates({ x: [0], y: [300 * poundPerInch], between: 'line' })), 100 * poundPerInch, 300 * poundForce);
const trap8 = 'REFERENCES trap 8: EXACT';
const tenderCar = {
  'lr.sprung': 500 * pound,
  'rr.sprung': 500 * pound,
  'rear.spring.rate': 300 * poundPerInch,
  'rear.helper.rate': 100 * poundPerInch,
  'rear.helper.force': 300 * poundForce,
  'rear.spring.ratio': 1,
  'rear.spring.ratioRise': 0,
};
const laws: readonly Row[] = [
  {
    id: 'progressive',
    source: cornering,
    input: '25 to 45 N/mm evenly over 80 mm, 2000 N',
    got: () => compressionAt(evenly, 2000) / mm,
    expected: 61.24515,
    tolerance: 1e-7,
    why: 'compression is the inverse of F = 25 x + 0.125 x^2',
  },
  {
    id: 'progressive',
    source: cornering,
    input: 'the same',
    got: () => rateAt(evenly, compressionAt(evenly, 2000)) / 1000,
    expected: 40.31129,
    tolerance: 1e-7,
    why: 'tangent rate there',
  },
  {
    id: 'progressive',
    source: `${cornering}, through the catalog`,
    input: 'the same on a straight wheel',
    got: () =>
      ask(
        {
          'lf.sprung': 2000 / 9.80665,
          'rf.sprung': 2000 / 9.80665,
          'front.spring.rates': { x: [0, 0.08], y: [25000, 45000], between: 'line' },
          'front.spring.ratio': 1,
          'front.spring.ratioRise': 0,
        },
        'front.springRateHere',
      ) / 1000,
    expected: 40.31129,
    tolerance: 1e-7,
    why: 'the rate at this height',
  },
  {
    id: 'trap 8',
    source: trap8,
    input: 'tender 100 on main 300 lbf/in, 500 lbf',
    got: () => compressionAt(tender, 500 * poundForce) / inch,
    expected: 4.666667,
    tolerance: 1e-6,
    why: 'the tender has closed',
  },
  {
    id: 'trap 8',
    source: trap8,
    input: 'the same',
    got: () => rateAt(tender, compressionAt(tender, 500 * poundForce)) / poundPerInch,
    expected: 300,
    tolerance: 1e-9,
    why: 'only the main works',
  },
  {
    id: 'trap 8',
    source: trap8,
    input: 'below 300 lbf',
    got: () => rateAt(tender, compressionAt(tender, 200 * poundForce)) / poundPerInch,
    expected: 75,
    tolerance: 1e-9,
    why: 'in series',
  },
  {
    id: 'trap 8',
    source: `${trap8}, through the catalog`,
    input: '500 lb sprung',
    got: () => ask(tenderCar, 'rear.springFrequency'),
    expected: 2.422363,
    tolerance: 1e-6,
    why: 'frequency by the tangent',
  },
  {
    id: 'trap 8',
    source: `${trap8}, through the catalog`,
    input: '500 lb sprung',
    got: () => Math.sqrt(9.80665 / ask(tenderCar, 'rear.springCompression')) / (2 * Math.PI),
    expected: 1.447639,
    tolerance: 1e-6,
    why: 'what the secant would have said',
  },
  {
    id: 'progressive',
    source: 'EXACT: rate^2 = 280^2 + 2 F 150/4',
    input: '280 to 430 lb/in evenly over 4 in, under 900 lb',
    got: () =>
      ask(
        {
          'front.spring.rates': { x: [0, 4 * inch], y: [280 * poundPerInch, 430 * poundPerInch], between: 'line' },
          springLoad: 900 * poundForce,
        },
        'front.springRateHere',
      ) / poundPerInch,
    expected: Math.sqrt(280 ** 2 + 2 * 900 * (150 / 4)),
    tolerance: 1e-12,
    why: 'the rate under a load that is asked about',
  },
];

describe('springs in print', () => {
  const rows = [...wahl, ...coils, ...s7, ...s8to10, ...risingRows, ...laws];
  it('has all rows', () => expect(rows.length).toBe(55));
  for (const row of rows)
    it(`${row.id} ${row.input}: ${row.why}`, () => expect(off(row), `${row.got()} for ${row.expected}`).toBeLessThanOrEqual(1));
});

describe('known in the trade (common practice, no source)', () => {
  const weighed = { mass: 1300, frontShare: 0.55, ...bothEnds({ 'spring.rate': 30000, ...straight }) };
  it('springs said to lower a car 1.4 in, with isolators that raise it 0.25 in, leave it just over 1 in lower', () => {
    const sold = bothEnds({ 'spring.drop': 1.4 * inch, 'isolator.raise': 0.25 * inch });
    for (const facts of [{ ...weighed, ...sold }, sold]) {
      const before = facts === sold ? {} : weighed;
      for (const axle of ['front', 'rear']) {
        const lower = -ask(facts, `${axle}.heightChange`, before) / inch;
        expect(lower).toBeGreaterThan(1);
        expect(lower).toBeLessThan(1.25);
        expect(lower).toBeCloseTo(1.15, 9);
      }
    }
  });
  it('a rear spring that runs from 650 to 821 lb/in is not called by its average', () => {
    const of = (load: number): number =>
      ask(
        {
          'lr.sprung': load * pound,
          'rr.sprung': load * pound,
          'rear.spring.ratio': 1,
          'rear.spring.ratioRise': 0,
          'rear.spring.rates': { x: [0, 4 * inch], y: [650 * poundPerInch, 821 * poundPerInch], between: 'line' },
        },
        'rear.springRateHere',
      ) / poundPerInch;
    // rate^2 = 650^2 + 2 (171/4) F along an even rise.
    for (const load of [400, 700, 1200]) expect(of(load)).toBeCloseTo(Math.sqrt(650 ** 2 + 2 * (171 / 4) * load), 6);
    expect(of(700)).toBeLessThan((650 + 821) / 2 - 20);
    expect(of(5000)).toBeCloseTo(821, 9);
  });
});
