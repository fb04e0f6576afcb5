/** Engine, thrust against grip, anti-squat and the skidpad against values from outside. */
import { describe, expect, it } from 'vitest';
import type { Curve } from '../../core/catalog.js';
import { lapAcceleration } from '../../core/subjects/grip/fit.js';
import { thrustLimit } from '../../core/subjects/traction/limit.js';
import { ask, g, inch, L2, mph, rpm, type Told } from '../core/traction/ask.js';
import { off, type Row } from './row.js';

const flat = (torque: number): Curve => ({ x: [1000 * rpm, 8000 * rpm], y: [torque, torque], between: 'line' });
/** The beam axle of CORNERING's row: r 11.8 in, final drive 4.1, springs at the ends of the axle so that the roll stiffnesses are those of L2. */
const beam: Told = {
  ...L2,
  driven: 'rear',
  final: 4.1,
  'rear.axle.kind': 'beam',
  'rear.spring.base': 57 * inch,
  'rear.tire.measuredCircumference': 2 * Math.PI * 11.8 * inch,
};
const limit = (told: Told): number => ask(told, 'traction.straightAcceleration') / g;
const links: Told = {
  wheelbase: 2.5,
  'cg.height': 0.55,
  'rear.links.inward': 1,
  'rear.links.height': 0.4,
  'rear.tire.loadedRadius': 0.3,
};
const E3: Told = {
  'engine.curve': flat(180),
  engineSpeed: 4000 * rpm,
  driveEfficiency: 0.9,
  final: 4.1,
  '1.gear.ratio': 3.136,
  driven: 'front',
  'front.tire.measuredCircumference': 2 * Math.PI * 0.29,
  mass: 1100,
  frontShare: 0.6,
  wheelbase: 2.5,
};
const grip = [1000, 3000] as const;
const exactThrust = 'exact: friction ellipse of each wheel, CORNERING';

const rows: readonly Row[] = [
  {
    id: 'L16',
    source: 'exact statics',
    input: 'L2, rear driven, mu 1',
    got: () => limit({ ...L2, driven: 'rear' }),
    expected: 0.6,
    tolerance: 1e-9,
    why: 'acceleration loads the driven axle: a = mu w_r/(1 - mu h/L)',
  },
  {
    id: 'L16',
    source: 'exact statics',
    input: 'L2, front driven, mu 1',
    got: () => limit({ ...L2, driven: 'front' }),
    expected: 0.433333333333,
    tolerance: 1e-9,
    why: 'acceleration unloads the driven axle: a = mu w_f/(1 + mu h/L)',
  },
  {
    id: 'beam, open',
    source: 'Gillespie, rederived in CORNERING',
    input: 'L2, rear beam axle, open differential, r 11.8 in, final 4.1',
    got: () => limit(beam),
    expected: 0.557244,
    tolerance: 1e-6,
    why: "the propeller shaft's torque unloads one wheel",
  },
  {
    id: 'beam, locked',
    source: 'Gillespie, rederived in CORNERING',
    input: 'the same, locked',
    got: () => limit({ ...beam, 'rear.differential': 'locked' }),
    expected: 0.6,
    tolerance: 1e-9,
    why: 'a locked axle uses what the shaft moves to the other wheel',
  },
  {
    id: 'thrust, open',
    source: exactThrust,
    input: 'N 1000/3000, mu 1, F_y 2000',
    got: () => thrustLimit(grip, 2000, { kind: 'open' }),
    expected: 2000,
    tolerance: 1e-9,
    why: 'both wheels push alike: the inner one ends it',
  },
  {
    id: 'thrust, biasing',
    source: exactThrust,
    input: 'the same, bias ratio 2',
    got: () => thrustLimit(grip, 2000, { kind: 'biasing', bias: 2 }),
    expected: 3000,
    tolerance: 1e-9,
    why: 'the outer wheel up to twice the inner',
  },
  {
    id: 'thrust, locked',
    source: exactThrust,
    input: 'the same, locked',
    got: () => thrustLimit(grip, 2000, { kind: 'locked' }),
    expected: 3464.10161514,
    tolerance: 1e-9,
    why: 'each what it can',
  },
  {
    id: 'C7',
    source: 'exact: friction circle',
    input: 'lateral 0.8 of 1.0',
    got: () => thrustLimit([0.5, 0.5], 0.8, { kind: 'locked' }),
    expected: 0.6,
    tolerance: 1e-12,
    why: 'what is left along when most goes across',
  },
  {
    id: 'C3',
    source: 'exact kinematics',
    input: 'skidpad, radius 9.125 m in 5.0 s',
    got: () => lapAcceleration(9.125, 5) / g,
    expected: 1.469373,
    tolerance: 1e-6,
    why: 'what a lap measures',
  },
  {
    id: 'E2',
    source: 'exact: power is torque times engine speed',
    input: '200 N m at 6000 rpm, by a curve',
    got: () => ask({ 'engine.curve': flat(200), engineSpeed: 6000 * rpm }, 'enginePower'),
    expected: 125663.7,
    tolerance: 1e-6,
    why: 'a told curve is read at the engine speed asked',
  },
  {
    id: 'E3',
    source: 'exact: no rotating masses',
    input: '180 N m by a curve, 3.136 x 4.10, efficiency 0.9, radius 0.29 m',
    got: () => ask(E3, '1.thrust'),
    expected: 7182.521,
    tolerance: 1e-6,
    why: 'thrust in a gear',
  },
  {
    id: 'E3',
    source: 'exact: no rotating masses',
    input: 'the same, 1100 kg',
    got: () => ask(E3, '1.gearAcceleration') * ask(E3, '1.massFactor'),
    expected: 6.52956,
    tolerance: 1e-6,
    why: 'acceleration in a gear',
  },
  {
    id: 'anti-squat',
    source: 'exact side view geometry, CORNERING',
    input: 'instant center 1.0 m ahead, 0.4 m high, r 0.3, h/L 0.22, independent',
    got: () => ask(links, 'rear.links.antiSquat'),
    expected: 0.454545454545,
    tolerance: 1e-9,
    why: 'with the differential on the body, from the wheel center',
  },
  {
    id: 'anti-squat',
    source: 'exact side view geometry, CORNERING',
    input: 'the same, beam axle',
    got: () => ask({ ...links, 'rear.axle.kind': 'beam' }, 'rear.links.antiSquat'),
    expected: 1.81818181818,
    tolerance: 1e-9,
    why: 'with the differential on the axle, from the ground',
  },
];

describe('thrust and grip', () => {
  it('has every row', () => expect(rows.length).toBe(14));
  it.each(rows)('$id: $input', (row) => expect(off(row)).toBeLessThanOrEqual(1));
});

describe('facts of the trade (common practice, no source)', () => {
  /** A rear-driven car told as a member would, with a given power at the wheels. */
  const told = (power: number, rearBar: number): Told => ({
    mass: 1050,
    frontShare: 0.52,
    wheelbase: 2.3,
    'front.spring.rate': 55_000,
    'rear.spring.rate': 45_000,
    'front.bar.rate': 30_000,
    'rear.bar.rate': rearBar,
    'front.tire.size': '225/45R15',
    'rear.tire.size': '225/45R15',
    driven: 'rear',
    'rear.differential': 'biasing',
    final: 4.1,
    '2.gear.ratio': 1.89,
    redline: 7200 * rpm,
    lateral: 0.7 * g,
    roadSpeed: 40 * mph,
    'engine.wheelPower': power,
  });
  const horsepower = 745.6998715822702;
  const [weak, strong] = [70 * horsepower, 250 * horsepower];
  const [soft, stiff] = [8000, 30_000];
  const rotation = (power: number, bar: number): number => ask(told(power, bar), '2.traction.rotation');

  it('a car that cannot spin its tires has no rotation on the throttle; one that can, has', () => {
    expect(ask(told(weak, soft), '2.traction.spinInCorner')).toBeLessThan(1);
    expect(rotation(weak, soft)).toBe(0);
    expect(rotation(weak, stiff)).toBe(0);
    expect(ask(told(strong, soft), '2.traction.spinInCorner')).toBeGreaterThan(1);
    expect(rotation(strong, soft)).toBeGreaterThan(0.1);
  });
  it('a stiffer rear bar adds rotation, and most to a car that cannot spin its tires', () => {
    // What the bar takes from the rear is the same for both cars; only the weak one has nothing else to turn with.
    const margin = (power: number, bar: number): number => ask(told(power, bar), 'balance');
    for (const power of [weak, strong]) expect(margin(power, stiff)).toBeLessThan(margin(power, soft));
    const bar = (margin(weak, soft) - margin(weak, stiff)) / 100;
    const part = (power: number): number => bar / (bar + rotation(power, soft));
    expect(part(weak)).toBe(1);
    expect(part(strong)).toBeLessThan(0.5);
  });
  it('a stiffer rear bar costs thrust out of the turn on an open differential', () => {
    const limitOf = (bar: number): number => ask({ ...told(weak, bar), 'rear.differential': 'open' }, 'traction.inCorner');
    expect(limitOf(stiff)).toBeLessThan(limitOf(soft));
  });
});
