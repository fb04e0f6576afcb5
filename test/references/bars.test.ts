/** Anti-roll bars against REFERENCES section 3 (A1 to A6), its traps 3, 4, 7 and 13, and what CORNERING says of bars. */
import { describe, expect, it } from 'vitest';
import { barMass, secondMomentOfArea } from '../../core/subjects/bars/bar.js';
import { pickle } from '../core/cornering/pickle.js';
import { ask, inch, poundPerInch, straight, type Told } from '../core/ride/ask.js';
import { off, type Row } from './row.js';

const mm = 1e-3;
const exact = 'EXACT by derivation';
const poundFootPerDegree = 1.3558179483314003 * (180 / Math.PI);
/** A link that does not give, as nearly as matters. */
const rigidLink = 1e15;
const polar = (outer: number, bore: number): number => 2 * secondMomentOfArea(outer * mm, bore * mm) * 1e12;
const twist = (torque: number, length: number, outer: number, modulus: number): number =>
  (torque * length) / (modulus * 2 * secondMomentOfArea(outer, 0));

/** The bar of row A5: D 22, B 900, A 200 mm, G 79.3, E 206.8 GPa. */
const a5: Told = {
  'front.bar.diameter': 22 * mm,
  'front.bar.length': 0.9,
  'lf.bar.lever': 0.2,
  'rf.bar.lever': 0.2,
  'front.bar.shearModulus': 79.3e9,
  'front.bar.youngsModulus': 206.8e9,
  'front.bar.linkRate': rigidLink,
};
const a6 = (modulus: number): Told => ({
  'front.bar.diameter': 0.875 * inch,
  'front.bar.length': 36 * inch,
  'lf.bar.lever': 8 * inch,
  'rf.bar.lever': 8 * inch,
  'front.bar.shearModulus': modulus * 6894.757293168361,
  'front.bar.youngsModulus': 30e6 * 6894.757293168361,
  'front.bar.linkRate': rigidLink,
});
const straightFront: Told = Object.fromEntries(Object.entries(straight).map(([path, value]) => [`front.${path}`, value]));
const rate = (told: Told): number => ask(told, 'front.bar.rateAtEnds');
const rows: readonly Row[] = [
  {
    id: 'A1',
    source: 'AppliedMechanicsLab/ENGN0310, CourseNotes/Torsion/SP1.md',
    input: 'solid 30 mm, L 0.4 m, G 77 GPa, T 250 N m',
    got: () => twist(250, 0.4, 30 * mm, 77e9),
    expected: 0.0163314,
    tolerance: 1e-5,
    why: 'twist of a round shaft',
  },
  {
    id: 'A2',
    source: 'inputs FOSSEE/Scilab-TBC-Uploads 2267/CH12/EX4.17',
    input: 'wire 0.5 mm, L 25 m, ten turns, G 82 GPa',
    got: () => (20 * Math.PI) / twist(1, 25, 0.5 * mm, 82e9),
    expected: 1.264543e-3,
    tolerance: 1e-6,
    why: 'the same, backward',
  },
  ...(
    [
      [25.4, 0, 40863.42],
      [25.4, 19.05, 27933.98],
      [22, 0, 22998.03],
      [28, 20, 44635.75],
    ] as const
  ).map(([outer, bore, expected]) => ({
    id: 'A3',
    source: exact,
    input: `${outer} mm, bore ${bore} mm`,
    got: () => polar(outer, bore),
    expected,
    tolerance: 1e-6,
    why: 'polar second moment of area, mm^4',
  })),
  {
    id: 'A4',
    source: exact,
    input: 'bore three quarters of the diameter',
    got: () => rate({ ...a5, 'front.bar.bore': 16.5 * mm }) / rate(a5),
    expected: 0.68359375,
    tolerance: 1e-9,
    why: 'stiffness of a hollow bar over a solid one',
  },
  {
    id: 'A4',
    source: exact,
    input: 'bore three quarters of the diameter',
    got: () => ask({ ...a5, 'front.bar.bore': 16.5 * mm }, 'front.bar.mass') / ask(a5, 'front.bar.mass'),
    expected: 0.4375,
    tolerance: 1e-12,
    why: 'its weight over that of a solid one',
  },
  {
    id: 'A5',
    source: `${exact}: beam theory, corner bends and bushings left out`,
    input: '22 mm, 900 and 200 mm',
    got: () => rate(a5) / 1000,
    expected: 45.4909,
    tolerance: 1e-5,
    why: 'per RELATIVE displacement of its ends, N/mm',
  },
  {
    id: 'A5',
    source: exact,
    input: 'arms that do not bend',
    got: () => rate({ ...a5, 'front.bar.youngsModulus': 1e25 }) / 1000,
    expected: 50.6595,
    tolerance: 1e-5,
    why: 'torsion alone',
  },
  {
    id: 'A5',
    source: exact,
    input: 'a bar that does not twist',
    got: () => rate({ ...a5, 'front.bar.shearModulus': 1e25 }) / 1000,
    expected: 445.874,
    tolerance: 1e-5,
    why: 'bending of the arms alone',
  },
  {
    id: 'A6',
    source: 'form from memory of Puhn; REFERENCES shows it to be beam theory',
    input: '0.875 in, 36 and 8 in, G 12.0, E 30 Mpsi',
    got: () => rate(a6(12e6)) / poundPerInch,
    expected: 267.971,
    tolerance: 1e-5,
    why: 'beam theory in lbf/in; the form of the trade gives 267.973',
  },
  {
    id: 'A6',
    source: 'form from memory of Puhn',
    input: '500000 D^4/(0.4244 A^2 B + 0.2264 C^3)',
    got: () => rate(a6(12e6)) / poundPerInch,
    expected: (500_000 * 0.875 ** 4) / (0.4244 * 64 * 36 + 0.2264 * 512),
    tolerance: 1e-4,
    why: 'the form of the trade itself',
  },
  {
    id: 'A6',
    source: exact,
    input: 'the same with G 11.5 Mpsi',
    got: () => rate(a6(11.5e6)) / poundPerInch,
    expected: 257.944,
    tolerance: 1e-5,
    why: 'what another modulus makes of it',
  },
  {
    id: 'links',
    source: 'CORNERING, bars and preload',
    input: 'links of 1 kN/mm',
    got: () => 1 / rate({ ...a5, 'front.bar.linkRate': 1e6 }) - 1 / rate(a5),
    expected: 2e-6,
    tolerance: 1e-6,
    why: 'bushings in series add 2/k_link of compliance',
  },
  {
    id: 'wheel rate',
    source: 'CORNERING, bars and preload',
    input: 'A5, ratio 0.6',
    got: () => ask({ ...a5, 'front.bar.ratio': 0.6 }, 'front.bar.wheelRate'),
    expected: 45490.9 * 0.36,
    tolerance: 1e-5,
    why: 'trap 7: the ratio squared, one wheel moving',
  },
  {
    id: 'roll stiffness',
    source: 'CORNERING, bars and preload',
    input: 'A5, ratio 0.6, track 1.45 m',
    got: () => ask({ ...a5, 'front.bar.ratio': 0.6, 'front.track': 1.45 }, 'front.roll.bar'),
    expected: 45490.9 * (0.6 * 1.45) ** 2,
    tolerance: 1e-5,
    why: 'trap 7: both ends move in roll: neither half nor twice of it',
  },
  {
    id: 'roll stiffness',
    source: 'CORNERING, bars and preload',
    input: 'A5 on a beam, links 0.9 m apart',
    got: () => ask({ ...a5, 'front.bar.ratio': 1, 'front.axle.kind': 'beam', 'front.bar.linkSpacing': 0.9 }, 'front.roll.bar'),
    expected: 45490.9 * 0.81,
    tolerance: 1e-5,
    why: 'link spacing instead of the track',
  },
  {
    id: 'trap 3',
    source: exact,
    input: '200 lbf/in on a base of 40 in, track 58 in',
    got: () =>
      ask(
        {
          ...pickle,
          ...straightFront,
          'front.spring.rate': 200 * poundPerInch,
          'front.axle.kind': 'beam',
          'front.spring.base': 40 * inch,
          'front.track': 58 * inch,
        },
        'front.roll.springs',
      ) / poundFootPerDegree,
    expected: 232.711,
    tolerance: 2e-6,
    why: 'a beam rolls on its spring base; the track would give 489.274',
  },
  {
    id: 'trap 3',
    source: exact,
    input: 'the same on independent wheels',
    got: () =>
      ask({ ...pickle, ...straightFront, 'front.spring.rate': 200 * poundPerInch, 'front.track': 58 * inch }, 'front.roll.springs') /
      poundFootPerDegree,
    expected: 489.274,
    tolerance: 2e-6,
    why: 'which roll on the track',
  },
  ...(
    [
      ['front.roll.springs', 366.955, 'springs'],
      ['front.roll.tires', 2935.644, 'tires'],
      ['front.roll.axle', 543.481, 'tires in series with springs and bar together; ride-rate springs and bar would make 626.183'],
    ] as const
  ).map(([path, expected, why]) => ({
    id: 'trap 4',
    source: exact,
    input: '150 lbf/in, tire 1200, track 58 in, bar 300 lbf ft/deg',
    got: () =>
      ask(
        {
          ...pickle,
          ...straightFront,
          'front.spring.rate': 150 * poundPerInch,
          'front.tire.rate': 1200 * poundPerInch,
          'front.track': 58 * inch,
          'front.roll.bar': 300 * poundFootPerDegree,
        },
        path,
      ) / poundFootPerDegree,
    expected,
    tolerance: 2e-6,
    why,
  })),
];

describe('anti-roll bars', () => {
  it('has every row', () => expect(rows.length).toBe(23));
  it.each(rows)('$id: $input: $why', (row) => {
    expect(off(row)).toBeLessThan(1);
  });
  it('weigh what their volume does: 1 m of 20 mm steel 2.466 kg (exact, 7850 kg/m^3)', () => {
    expect(barMass(0.02, 0, 1, 7850)).toBeCloseTo(Math.PI * 1e-4 * 7850, 12);
  });
  it('do nothing in heave: neither wheel rate nor frequency nor the dive of braking moves (trap 4)', () => {
    const stiff = { ...pickle, 'front.bar.diameter': 0.035, braking: 0.4 * 9.80665, lateral: 0 };
    const soft = { ...stiff, 'front.bar.diameter': 0 };
    for (const path of ['front.wheelRate', 'front.rideFrequency', 'lf.cornering.travel', 'lf.cornering.load'])
      expect(ask(stiff, path) / ask(soft, path)).toBeCloseTo(1, 9);
  });
  it("turning a perch or preloading the bar does not change a linear spring's rate, frequency or roll stiffness (trap 13)", () => {
    const even = { ...pickle, ...straightFront };
    const turned = { ...even, 'lf.perch.turns': 4, 'rf.perch.turns': 4, 'front.bar.linkLonger': 0.006 };
    for (const path of ['front.wheelRate', 'front.rideFrequency', 'front.roll.suspension'])
      expect(ask(turned, path, even) / ask(even, path)).toBeCloseTo(1, 9);
    expect(ask(turned, 'front.heightChange', even)).toBeGreaterThan(0.004);
  });
  it('a shorter lever is stiffer, by nearly its square; unlike holes stand between both', () => {
    const hole = (left: number, right: number): number =>
      ask({ ...a5, 'lf.bar.lever': left, 'rf.bar.lever': right, 'front.bar.ratio': 0.6 }, 'front.roll.bar');
    expect(hole(0.18, 0.18) / hole(0.2, 0.2)).toBeGreaterThan(1 / 0.9 ** 2);
    expect(hole(0.18, 0.18) / hole(0.2, 0.2)).toBeLessThan(1 / 0.9 ** 3);
    expect(hole(0.18, 0.2)).toBeGreaterThan(hole(0.2, 0.2));
    expect(hole(0.18, 0.2)).toBeLessThan(hole(0.18, 0.18));
  });
  it('is as stiff as it was told: a rate at its ends, or a roll stiffness', () => {
    const told = { 'lf.bar.lever': 0.2, 'rf.bar.lever': 0.2, 'front.bar.linkRate': rigidLink, 'front.bar.rate': 40_000 };
    expect(ask(told, 'front.bar.rateAtEnds')).toBeCloseTo(40_000, 4);
    expect(ask({ 'front.roll.bar': 12_000 }, 'front.roll.bar')).toBeCloseTo(12_000, 8);
    expect(ask({ 'front.bar.diameter': 0, 'front.bar.ratio': 0.6, 'front.track': 1.5 }, 'front.roll.bar')).toBe(0);
  });
});
