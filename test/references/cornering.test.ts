/** Cornering against REFERENCES sections 4 (D7 to D10), 5, 9 and 11, and the check rows and statements of CORNERING, through the whole catalog. */
import { describe, expect, it } from 'vitest';
import { isRefusal } from '../../core/catalog.js';
import { equilibrium } from '../../core/subjects/cornering/equilibrium.js';
import { camberAt, capacity } from '../../core/subjects/cornering/grip.js';
import { type CornerModel, steadyTurn } from '../../core/subjects/cornering/model.js';
import { axleCapacity } from '../../core/subjects/cornering/residual.js';
import { at } from '../../core/subjects/cornering/unknowns.js';
import { carL2, fallingGrip, linear } from '../core/cornering/cars.js';
import { ask, bothEnds, degree, foot, inch, pound, poundForce, poundPerInch, rigidTire, straight, type Told } from '../core/ride/ask.js';
import { off, type Row } from './row.js';

const g = 9.80665;
const exact = 'EXACT by derivation';
const mph = 0.44704;
const poundFootPerDegree = 1.3558179483314003 * (180 / Math.PI);
const slug = 14.593902937206362;

/** Springs that alone give a roll stiffness, N m/rad, on independent wheels. */
const springOf = (stiffness: number, track: number): number => (2 * stiffness) / track ** 2;
/** The car of row L2, its roll stiffness all by springs, tires rigid. */
const l2: Told = {
  ...bothEnds({ ...straight, 'tire.rate': rigidTire, 'unsprung.height': 12 * inch }),
  mass: 2600 * pound,
  frontShare: 0.52,
  wheelbase: 95 * inch,
  'cg.height': 19 * inch,
  'front.unsprung.axle': 180 * pound,
  'rear.unsprung.axle': 160 * pound,
  'front.rollCenter.height': 2 * inch,
  'rear.rollCenter.height': 8 * inch,
  'front.track': 58 * inch,
  'rear.track': 57 * inch,
  'front.spring.rate': springOf(620 * poundFootPerDegree, 58 * inch),
  'rear.spring.rate': springOf(400 * poundFootPerDegree, 57 * inch),
};
const at1g = { lateral: g };
/** The car of row M8. */
const m8: Told = {
  ...bothEnds({ ...straight, 'tire.rate': 200_000, 'unsprung.height': 0.3 }),
  'front.axleWeight': 6300 / g,
  'rear.axleWeight': 6100 / g,
  'front.unsprung.axle': 700 / g,
  'rear.unsprung.axle': 1300 / g,
  'cg.height': (10_400 * 0.55 + 2000 * 0.3) / 12_400,
  wheelbase: 2.5,
  'front.track': 1.45,
  'rear.track': 1.42,
  'front.rollCenter.height': 0.05,
  'rear.rollCenter.height': 0.28,
  'front.spring.rate': 22_000,
  'rear.spring.rate': 25_000,
  'rear.axle.kind': 'beam',
  'rear.spring.base': 1,
  'front.roll.bar': 12_000,
  lateral: 0.8 * g,
};
/** The car of row M9: the same with both axles independent, and only the bar of REFERENCES A5 in front. */
const { 'front.roll.bar': _none, ...withoutBar } = m8;
const m9: Told = {
  ...withoutBar,
  'rear.axleWeight': 5500 / g,
  'rear.unsprung.axle': 700 / g,
  'cg.height': (10_400 * 0.55 + 1400 * 0.3) / 11_800,
  'rear.rollCenter.height': 0.12,
  'front.spring.rate': 25_000,
  'rear.spring.rate': 22_000,
  'rear.axle.kind': 'independent',
  'front.bar.diameter': 0.022,
  'front.bar.length': 0.9,
  'lf.bar.lever': 0.2,
  'rf.bar.lever': 0.2,
  'front.bar.shearModulus': 79.3e9,
  'front.bar.youngsModulus': 206.8e9,
  'front.bar.linkRate': 1e15,
  'front.bar.ratio': 0.6,
  'front.bar.linkLonger': 0.005,
};
/** Car V1 of the open data set: 84 slug, 75 of them sprung, roll axis on the ground. */
const v1: Told = {
  ...bothEnds({
    ...straight,
    'spring.rate': (1500 * poundForce) / foot,
    'tire.rate': (13_000 * poundForce) / foot,
    'rollCenter.height': 0,
    'unsprung.axle': 4.5 * slug,
    'unsprung.height': ((84 * 1.83 - 75 * 1.95) / 9) * foot,
  }),
  mass: 84 * slug,
  frontShare: 4.95 / 7.85,
  wheelbase: 7.85 * foot,
  'cg.height': 1.83 * foot,
  'front.track': 4.56 * foot,
  'rear.track': 4.67 * foot,
  'front.roll.bar': 9500 * poundForce * foot,
};
const v1Rigid: Told = { ...v1, 'front.tire.rate': rigidTire, 'rear.tire.rate': rigidTire };
const allen = 'inputs dawsonc/commonroad-vehicle-models parameters_vehicle1.py, after Allen et al. 1992';
const check = 'CORNERING, check rows: an independent solver and closed form agree';
/** Car of row L13 or L11: tires that steer. */
const l13: Told = {
  'front.axleWeight': 1901 * pound,
  'rear.axleWeight': 1552 * pound,
  wheelbase: 100.6 * inch,
  'front.tire.cornering': (172 * poundForce) / degree,
  'rear.tire.cornering': (156 * poundForce) / degree,
};
const l11: Told = { mass: 1500, frontShare: 1.6 / 2.7, wheelbase: 2.7, 'front.tire.cornering': 55_000, 'rear.tire.cornering': 60_000 };
/** Row L4: 11 kN, braking at 0.4 g with all wheels locked. */
const l4: Told = { ...l2, mass: 11_000 / g, frontShare: 2.4 / 4.2, wheelbase: 4.2, 'cg.height': 0.75, lateral: 0, braking: 0.4 * g };
const l4Axle = (axle: 'f' | 'r'): number => ((ask(l4, `l${axle}.cornering.load`) + ask(l4, `r${axle}.cornering.load`)) * g) / 1000;
/** Row L6: a car that only tips, on springs that hardly give, nearly all of it sprung. */
const l6: Told = {
  ...l2,
  ...bothEnds({ 'spring.rate': 1e9, 'unsprung.axle': 0.01, track: 1.5, 'rollCenter.height': 0, 'unsprung.height': 0.3 }),
  'cg.height': 0.437426,
};

/** Row L1: a banked oval; weight and lateral force are those that the bank leaves. */
function oval(): { roll: number; loads: readonly number[] } {
  const [weight, pressed, lateral] = [3400, 4006.01, -0.923347];
  const made = (j: 0 | 1): CornerModel['axles'][0] => {
    const stands = ((j === 0 ? 0.6 : 0.4) * pressed * poundForce) / 2;
    const track = 5 * foot;
    const law = linear(stands, springOf((j === 0 ? 1222 : 873) * poundFootPerDegree, track));
    return {
      ...carL2().axles[j],
      track,
      law: [law, law],
      rollCentreHeight: (j === 0 ? 0.25 : 0.625) * foot,
      unsprung: [0, 0],
      reference: [stands, stands],
    };
  };
  const model: CornerModel = {
    ...carL2(),
    axles: [made(0), made(1)],
    toFront: 3.8 * foot,
    toRear: 5.7 * foot,
    cgHeight: 1.5 * foot,
    sprungCgHeight: 1.5 * foot,
  };
  const found = equilibrium(model, steadyTurn((lateral * weight) / pressed));
  if (isRefusal(found)) throw new Error(found.refused);
  return { roll: found.x[at.roll(0)]! / degree / lateral, loads: [0, 1, 2, 3].map((i) => found.x[at.load + i]! / poundForce) };
}
const ovalSource =
  'inputs and formulas of a public script that matches the ride-and-roll-rates example of Milliken, from memory; outputs computed';

/** mu = 1.35 - 0.0005 N/lbf of rows L10: what an axle gives, lbf. */
function pairOf(left: number, right: number): number {
  const model = carL2({ grip: fallingGrip(1.35, 0.0005 / poundForce) });
  const x = new Float64Array(13);
  x[at.load] = left * poundForce;
  x[at.load + 1] = right * poundForce;
  return axleCapacity(model, steadyTurn(0), x, 0, [capacity(), capacity()]) / poundForce;
}
/** Row M10: the camber of a wheel of an axle whose body has rolled by 3 degrees and not risen. */
function rolled(i: 0 | 1): number {
  const axle = { ...carL2().axles[0], track: 1.45 };
  const x = new Float64Array(13);
  x[at.roll(0)] = 3 * degree;
  return camberAt(axle, 0, i, x, -1.5 * degree, -1 / 2) / degree;
}
const circle = (told: Told): Told => ({ wheelbase: 2.5, ...told });

const row = (id: string, source: string, input: string, got: () => number, expected: number, tolerance: number, why: string): Row => ({
  id,
  source,
  input,
  got,
  expected,
  tolerance,
  why,
});
const rows: readonly Row[] = [
  row('D7', allen, 'V1', () => ask(v1, 'front.roll.suspension'), 34_024.5, 1e-5, 'front roll stiffness, spring and bar, N m/rad'),
  row('D7', allen, 'V1', () => ask(v1, 'rear.roll.suspension'), 22_176.7, 1e-5, 'rear'),
  row('D8', allen, 'V1', () => ask(v1, 'front.roll.axle'), 28_696.4, 1e-5, 'front, tires in series'),
  row('D8', allen, 'V1', () => ask(v1, 'rear.roll.axle'), 19_882.5, 1e-5, 'rear, tires in series'),
  row('D9', allen, 'V1', () => ask(v1, 'roll.frontShare'), 0.605406, 1e-5, 'front share of the suspension'),
  row('D9', allen, 'V1', () => ask(v1, 'roll.frontShareWithTires'), 0.590717, 1e-5, 'front share with tires'),
  row(
    'D10',
    allen,
    'V1, rigid tires',
    () => ask(v1Rigid, 'roll.perGAtRest') / degree,
    7.33684,
    1e-5,
    'roll per g with the weight that leans out',
  ),
  row('L1', ovalSource, 'banked oval', () => oval().roll, -1.785203 * -1, 1e-5, 'degrees of roll per g, without gravity'),
  row('L1', ovalSource, 'banked oval', () => oval().loads[0]!, 1698.84, 1e-5, 'front outer load, lbf, in a turn to the right'),
  row('L1', ovalSource, 'banked oval', () => oval().loads[1]!, 704.76, 1e-5, 'front inner'),
  row('L1', ovalSource, 'banked oval', () => oval().loads[2]!, 1245.97, 1e-5, 'rear outer'),
  row('L1', ovalSource, 'banked oval', () => oval().loads[3]!, 356.43, 2e-5, 'rear inner'),
  row('L2, M1', exact, '1.0 g', () => ask({ ...l2, ...at1g }, 'roll.angle') / degree, 2.943864, 1e-6, 'roll, with gravity'),
  row('L2, M1', exact, '1.0 g', () => ask({ ...l2, ...at1g }, 'front.loadTransfer') / pound, 455.2819, 1e-6, 'front transfer, lbf'),
  row('L2, M1', exact, '1.0 g', () => ask({ ...l2, ...at1g }, 'rear.loadTransfer') / pound, 434.2903, 1e-6, 'rear transfer, lbf'),
  row(
    'L2',
    exact,
    '1.0 g',
    () => ask({ ...l2, ...at1g }, 'roll.perG') / ask(l2, 'roll.perGAtRest'),
    1,
    1e-9,
    'a linear car: secant and tangent agree',
  ),
  row(
    'L3',
    exact,
    '0.5 g of braking',
    () => (ask({ ...l2, lateral: 0, braking: 0.5 * g }, 'lf.cornering.load') - ask(l2, 'lf.cornerMass')) / pound,
    130,
    1e-9,
    'a front wheel gains half of 260 lbf',
  ),
  row(
    'L4',
    'problem of Halliday, Resnick, Walker, 8th ed.; answers from memory, recomputed',
    '11 kN, 4.2 m, 1.8 m, 0.75 m',
    () => l4Axle('f'),
    3.5357 * 2,
    1e-4,
    'both front wheels, kN',
  ),
  row('L4', 'the same', 'the same', () => l4Axle('r'), 1.9643 * 2, 1e-4, 'both rear wheels, kN'),
  row('L4', 'the same', 'mu 0.40', () => (0.4 * l4Axle('f')) / 2, 1.4143, 1e-4, 'friction of a front wheel, kN'),
  row(
    'L6',
    'jiskha.com/questions/1383582, recomputed',
    '29 m/s, 50 m, 1.5 m',
    () => ask(l6, 'rollover') / g,
    29 ** 2 / 50 / 9.81,
    2e-5,
    'tips where h is 0.437426 m',
  ),
  row(
    'L6',
    'the same',
    'mu 0.65',
    () => ask(circle({ lateral: 0.65 * 9.81, radius: 50 }), 'cornerSpeed'),
    17.8557,
    1e-5,
    'slides at this speed',
  ),
  ...(
    [
      [400, 400, 920],
      [800, 800, 1520],
      [400, 1200, 1360],
    ] as const
  ).map(([a, b, expected]) =>
    row(
      'L10',
      '760 and 680 lb: Gillespie ch. 6, from memory; law fitted to them',
      `${a} and ${b} lbf`,
      () => pairOf(a, b),
      expected,
      1e-12,
      'what a pair of tires gives',
    ),
  ),
  row(
    'L11',
    'inputs yuya-onozuka/automotive_vehicle_dynamics chapter3/E3_7.m, after Abe',
    '1500 kg',
    () => ask(l11, 'understeer') / degree,
    1.67902,
    1e-5,
    'understeer, degrees per g',
  ),
  row('L11', 'the same', '1500 kg', () => ask(l11, 'understeer') / (g * 2.7), 1.1067465e-3, 1e-6, 'stability factor, s^2/m^2'),
  row('L11', 'the same', '1500 kg', () => ask(l11, 'understeer.characteristicSpeed'), 30.0591, 1e-5, 'characteristic speed, m/s'),
  row('L11', 'the same', '1500 kg', () => ask(l11, 'understeer.staticMargin'), 0.114332, 1e-5, 'static margin'),
  ...(
    [
      [500, 0.9607],
      [200, 2.4016],
      [100, 4.8033],
      [50, 9.6066],
    ] as const
  ).map(([radius, expected]) =>
    row(
      'L13',
      'Gillespie ch. 6, inputs from memory',
      `${radius} ft`,
      () => ask({ ...l13, radius: radius * foot }, 'steer') / degree,
      expected,
      1e-4,
      'steer at a crawl, degrees',
    ),
  ),
  row(
    'L13',
    'Gillespie ch. 6, inputs from memory',
    '172 and 156 lbf/deg',
    () => ask(l13, 'understeer') / degree,
    0.5518,
    1e-4,
    'understeer, degrees per g',
  ),
  row('L13', 'the same', 'the same', () => ask(l13, 'understeer.characteristicSpeed') / mph, 114.1, 1e-4, 'characteristic speed, mph'),
  row(
    'L15',
    exact,
    '2.5 m, 1.45 m, 10 m',
    () => ask(circle({ 'front.track': 1.45, radius: 10 }), 'steer.inner') / degree,
    15.0851,
    1e-6,
    'inner wheel',
  ),
  row(
    'L15',
    exact,
    '2.5 m, 1.45 m, 10 m',
    () => ask(circle({ 'front.track': 1.45, radius: 10 }), 'steer.outer') / degree,
    13.12136,
    1e-6,
    'outer wheel',
  ),
  row(
    'C1',
    'FOSSEE 3845/CH6/EX6.4, OpenStax College Physics ex. 6.4',
    '25 m/s, 500 m',
    () => 900 * ask(circle({ roadSpeed: 25, radius: 500 }), 'lateralNeeded'),
    1125,
    1e-12,
    'N for 900 kg',
  ),
  row(
    'C1',
    'the same, g 9.80',
    '25 m/s, 500 m',
    () => ask(circle({ roadSpeed: 25, radius: 500 }), 'lateralNeeded') / 9.8,
    0.127551,
    1e-5,
    'mu',
  ),
  row('C2', exact, '1 g, 50 ft', () => ask(circle({ ...at1g, radius: 50 * foot }), 'cornerSpeed') / mph, 27.3468, 2e-6, 'mph'),
  row('C2', exact, '1 g, 100 ft', () => ask(circle({ ...at1g, radius: 100 * foot }), 'cornerSpeed') / mph, 38.6742, 2e-6, 'mph'),
  row('C3', exact, '9.125 m, 5.0 s', () => ask(circle({ circleTime: 5, radius: 9.125 }), 'lateralOfCircle') / g, 1.469373, 1e-6, 'g'),
  row(
    'C4',
    exact,
    'bank 10 degrees, mu 1, 60 m',
    () => ask(circle({ ...at1g, radius: 60, bank: 10 * degree }), 'cornerSpeed'),
    28.98829,
    1e-6,
    'm/s',
  ),
  row(
    'C5',
    exact,
    '60 ft, 1.2 m, 1 g',
    () => ask(circle({ ...at1g, coneSpacing: 60 * foot, slalomSwing: 1.2 }), 'slalomSpeed'),
    16.64125,
    1e-6,
    'm/s',
  ),
  row(
    'C5',
    exact,
    '60 ft, 1.2 m, 1 g',
    () => ask(circle({ ...at1g, coneSpacing: 60 * foot, slalomSwing: 1.2 }), 'slalomTime'),
    1.098956,
    1e-6,
    's a cone',
  ),
  row('C5', exact, '60 ft, 1.2 m', () => ask(circle({ coneSpacing: 60 * foot, slalomSwing: 1.2 }), 'slalomRadius'), 28.23914, 1e-6, 'm'),
  row(
    'C7',
    exact,
    '0.8 of 1.0',
    () => ask({ lateral: 0.8 * g, 'front.grip.mu': 1, 'rear.grip.mu': 1 }, 'alongLeft') / g,
    0.6,
    1e-12,
    'friction circle',
  ),
  row('M8', check, '0.8 g, gravity on', () => ask(m8, 'roll.angle') / degree, 5.20902, 3e-6, 'roll with a beam behind'),
  row(
    'M8',
    check,
    '0.8 g, gravity on',
    () => ask(m8, 'roll.angle') / degree - ask(m8, 'rear.roll.onSprings') / degree,
    0.67646,
    1e-5,
    'roll of the beam on its tires',
  ),
  row('M8', check, '0.8 g, gravity on', () => ask(m8, 'front.loadTransfer') * g, 2118.82, 3e-6, 'front transfer, N'),
  row('M8', check, '0.8 g, gravity on', () => ask(m8, 'rear.loadTransfer') * g, 1676.52, 3e-6, 'rear transfer, N'),
  row('M9', check, 'left front link 5 mm longer, gravity on', () => ask(m9, 'lf.preload') * g, 25.6794, 3e-6, 'N on the left front'),
  row('M9', check, 'left front link 5 mm longer, gravity on', () => ask(m9, 'rf.preload') * g, -25.6794, 3e-6, 'right front'),
  row('M9', check, 'left front link 5 mm longer, gravity on', () => ask(m9, 'lr.preload') * g, -34.7432, 3e-6, 'left rear'),
  row('M9', check, 'left front link 5 mm longer, gravity on', () => ask(m9, 'rr.preload') * g, 34.7432, 3e-6, 'right rear'),
  row('M10', check, 'roll 3, e 2 m, t 1.45 m, -1.5', () => rolled(1), 0.4125, 1e-9, 'outer camber'),
  row('M10', check, 'roll 3, e 2 m, t 1.45 m, -1.5', () => rolled(0), -3.4125, 1e-9, 'inner camber'),
];

describe('cornering', () => {
  it('has every row', () => expect(rows.length).toBe(57));
  it.each(rows)('$id: $input: $why', (one) => {
    expect(off(one)).toBeLessThan(1);
  });
  it('L2, trap 11: load transfer over the tracks is the whole overturning moment, however the stiffness is split', () => {
    for (const share of [0.2, 0.5, 0.8]) {
      const whole = 1020 * poundFootPerDegree;
      const told = {
        ...l2,
        ...at1g,
        'front.spring.rate': springOf(share * whole, 58 * inch),
        'rear.spring.rate': springOf((1 - share) * whole, 57 * inch),
      };
      const held = ask(told, 'front.loadTransfer') * 58 + ask(told, 'rear.loadTransfer') * 57;
      expect(held / pound / (49_400 + 2260 * 15.1646 * ask(told, 'roll.angle'))).toBeCloseTo(1, 5);
    }
  });
  it("M9: the link's load, and the cross weight, both without gravity in the table: with it they lie near", () => {
    expect(Math.abs(ask(m9, 'front.preload.link') / 128.27 - 1)).toBeLessThan(0.1);
    expect(ask(m9, 'preload.cross') - 0.5).toBeCloseTo((-2 * (25.6794 + 34.7432)) / 2 / 11_800, 7);
  });
  it('a longer left link raises the left load with the end of the bar above the arm, lowers it below', () => {
    expect(ask(m9, 'lf.preload')).toBeGreaterThan(0);
    expect(ask({ ...m9, 'front.bar.end': 'below' }, 'lf.preload') / ask(m9, 'lf.preload')).toBeCloseTo(-1, 9);
    expect(ask({ ...m9, 'front.bar.linkAngle': 60 * degree }, 'lf.preload') / ask(m9, 'lf.preload')).toBeCloseTo(0.5, 9);
    expect(ask({ ...m9, 'front.bar.linkLonger': 0.005 - ask(m9, 'front.preload.shorten') }, 'lf.preload')).toBeCloseTo(0, 9);
  });
  it('progressive springs in roll: the tangent is t^2 kL kR/(kL + kR), never t^2 (kL + kR)/4', () => {
    const uneven = { ...v1Rigid, 'lf.cornerSpring.rate': 15_000, 'rf.cornerSpring.rate': 45_000, 'front.bar.diameter': 0 };
    const t = 4.56 * foot;
    expect(ask({ ...uneven, 'front.roll.bar': 1e-9 }, 'front.roll.springs')).toBeCloseTo((t * t * 15_000 * 45_000) / 60_000, 4);
    // The equilibrium itself agrees: roll per g is the moment over what is left of the stiffness.
    const told = { ...uneven, 'front.roll.bar': 1e-9 };
    const stiffness = ask(told, 'roll.car');
    const lever = 75 * slug * g * 1.95 * foot;
    expect(ask(told, 'roll.perGAtRest') / (lever / (stiffness - lever))).toBeCloseTo(1, 8);
  });
  it('turns the wheel rate of the springs into a rate at the tire: 150 lbf/in stays itself (units)', () => {
    expect(ask({ ...l2, 'front.spring.rate': 150 * poundPerInch }, 'front.wheelRate') / poundPerInch).toBeCloseTo(150, 9);
  });
});
