/** Braking against values from outside. */
import { describe, expect, it } from 'vitest';
import { ask, g, L2, poundForce, type Told } from '../core/traction/ask.js';
import { off, type Row } from './row.js';

/** Some rows stand on 9.8 or 9.81 m/s^2: their cars are told so that their forces are the row's. */
const school = 9.8;
const european = 9.81;
const byLock = (share: number, path: string): number => ask({ ...L2, 'brake.frontShare': share }, path) / g;
const pedal: Told = {
  pedalForce: 1500 / 4,
  'brake.pedalRatio': 4,
  'brake.boost': 2500 / 1500,
  'brake.master': Math.sqrt((4 * 500e-6) / Math.PI),
};
const calipers: Told = {
  'front.brake.piston': 0.038,
  'front.brake.pistons': 2,
  'front.brake.radius': 0.115,
  'rear.brake.piston': 0.034,
  'rear.brake.pistons': 1,
  'rear.brake.radius': 0.105,
};
const grips = (mu: number): Told => ({ 'front.grip.mu': mu, 'rear.grip.mu': mu, 'front.grip.exponent': 0, 'rear.grip.exponent': 0 });
const L4: Told = { mass: 11_000 / g, frontShare: 2.4 / 4.2, wheelbase: 4.2, 'cg.height': 0.75, ...grips(0.4) };
const L4locked: Told = { ...L4, braking: 0.4 * g };
const L5: Told = { mass: (1500 * european) / g, frontShare: 0.7 / 1.5, wheelbase: 1.5, 'cg.height': 0.5, ...grips(0.3), braking: 0.3 * g };
const B6: Told = { mass: 20_000 / european, frontShare: 2.4 / 3.2, wheelbase: 3.2, 'cg.height': 1, braking: 2 };
const L4source = 'Halliday, Resnick, Walker 8e, the problem; answers from memory and by calculation';
const L5source = 'a published problem, calculated';
const B6source = 'a published examination, calculated';
const exact = 'exact statics';

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
  row('L3', exact, 'L2 at 0.5 g', () => ask({ ...L2, braking: 0.5 * g }, 'brake.transfer') / poundForce, 260, 1e-12, 'W z h/L'),
  ...[0, 0.5, 1].map((z) =>
    row(
      'B1',
      exact,
      `L2 at ${z} g`,
      () => ask({ ...L2, braking: z * g }, 'brake.idealShare'),
      0.52 + 0.2 * z,
      1e-12,
      '0.52, 0.62, 0.72: w_f + z h/L',
    ),
  ),
  row('B2', exact, 'share 0.65, mu 1', () => byLock(0.65, 'rear.brake.lock'), 0.872727, 1e-6, 'the rear locks first'),
  row('B2', exact, 'share 0.65, mu 1', () => byLock(0.65, 'brake.limit'), 0.872727, 1e-6, 'and ends it'),
  row('B2', exact, 'share 0.80, mu 1', () => byLock(0.8, 'front.brake.lock'), 0.866667, 1e-6, 'the front locks first'),
  row('B2', exact, 'share 0.72, mu 1', () => byLock(0.72, 'front.brake.lock'), 1, 1e-6, 'both at once'),
  row('B2', exact, 'share 0.72, mu 1', () => byLock(0.72, 'rear.brake.lock'), 1, 1e-6, 'both at once'),
  row(
    'B2',
    exact,
    'share 0.65 at 0.65 g',
    () => {
      const told = { ...L2, 'brake.frontShare': 0.65, braking: 0.65 * g };
      return ask(told, 'front.brake.use') / ask(told, 'rear.brake.use');
    },
    1,
    1e-9,
    'balanced there',
  ),
  row(
    'B4',
    exact,
    '2 x 38 mm at r 115, 1 x 34 mm at r 105',
    () => ask(calipers, 'brake.torqueShare'),
    0.732348,
    1e-6,
    'area times radius; count one side',
  ),
  row(
    'B4',
    'exact: a share of force is the share of torque over radius',
    'the same, loaded radius 0.30/0.33 m',
    () => ask({ ...calipers, 'front.tire.loadedRadius': 0.3, 'rear.tire.loadedRadius': 0.33 }, 'brake.share'),
    0.732348 / 0.3 / (0.732348 / 0.3 + (1 - 0.732348) / 0.33),
    1e-6,
    'unlike tires',
  ),
  row('B5', 'a published examination', 'rod 2500 N on 500 mm2', () => ask(pedal, 'brake.linePressure'), 5e6, 1e-12, 'force over area'),
  row(
    'B5',
    'a published examination',
    'rod 2500 N, pedal 1500 N there',
    () => ask(pedal, 'brake.boosterForce'),
    1000,
    1e-12,
    'what the booster adds',
  ),
  row(
    'B6',
    B6source,
    '20 kN, CG 2.4 m ahead of the rear axle of 3.2',
    () => (ask({ ...B6, braking: 0 }, 'front.brake.axleLoad') * european) / g,
    15_000,
    1e-9,
    'static',
  ),
  row('B6', B6source, 'deceleration 2 m/s2', () => ask(B6, 'brake.force'), 4077.47, 1e-5, 'Newton'),
  row('B6', B6source, 'deceleration 2 m/s2, h 1.0', () => ask(B6, 'brake.transfer'), 1274.21, 1e-5, 'to the front'),
  row('L4', L4source, 'mu 0.40, all lock, g 9.8', () => (ask(L4, 'brake.best') / g) * school, 3.92, 5e-3, 'mu g whatever the loads'),
  row('L4', L4source, 'the same, each rear wheel', () => ask(L4locked, 'rear.brake.axleLoad') / 2000, 1.9643, 5e-3, '2 digits'),
  row('L4', L4source, 'the same, each front wheel', () => ask(L4locked, 'front.brake.axleLoad') / 2000, 3.5357, 5e-3, '2 digits'),
  row('L4', L4source, 'friction of each rear wheel', () => (0.4 * ask(L4locked, 'rear.brake.axleLoad')) / 2000, 0.7857, 5e-3, '2 digits'),
  row('L4', L4source, 'friction of each front wheel', () => (0.4 * ask(L4locked, 'front.brake.axleLoad')) / 2000, 1.4143, 5e-3, '2 digits'),
  row('L5', L5source, '1500 kg, mu 0.3, g 9.81', () => ask(L5, 'front.brake.axleLoad'), 8338.5, 1e-5, 'front load'),
  row('L5', L5source, '1500 kg, mu 0.3, g 9.81', () => ask(L5, 'rear.brake.axleLoad'), 6376.5, 1e-5, 'rear load'),
  row(
    'L5',
    L5source,
    'from 50 km/h',
    () => ask({ ...L5, roadSpeed: 50 / 3.6, braking: 0.3 * european }, 'brake.stopTime'),
    4.7193,
    1e-5,
    'v/(mu g)',
  ),
  row(
    'M11',
    'CORNERING: independent solver and closed form',
    'L2 at 0.5 g, share 0.65',
    () => ask({ ...L2, 'brake.frontShare': 0.65, braking: 0.5 * g }, 'front.brake.use'),
    0.524194,
    1e-6,
    'use of grip, front',
  ),
  row(
    'M11',
    'CORNERING: independent solver and closed form',
    'L2 at 0.5 g, share 0.65',
    () => ask({ ...L2, 'brake.frontShare': 0.65, braking: 0.5 * g }, 'rear.brake.use'),
    0.460526,
    1e-6,
    'use of grip, rear',
  ),
  row(
    'M11',
    'CORNERING: independent solver and closed form',
    'the same from the four-wheel equilibrium',
    () => ask({ ...L2, 'brake.frontShare': 0.65, braking: 0.5 * g, lateral: 0 }, 'front.brake.useInTurn'),
    0.524194,
    1e-6,
    'two ways, one answer',
  ),
];

describe('braking', () => {
  it('has every row', () => expect(rows.length).toBe(28));
  it.each(rows)('$id: $input', (one) => expect(off(one)).toBeLessThanOrEqual(1));
});

describe('braking in a turn', () => {
  const at = (lateral: number, share: number): Told => ({ ...L2, lateral: lateral * g, braking: 0.3 * g, 'brake.frontShare': share });
  it('leaves less the harder the turn, by no more than the ellipse allows', () => {
    const straight = ask({ ...L2, 'brake.frontShare': 0.7 }, 'brake.limit') / g;
    let before = straight + 1e-9;
    for (const lateral of [0, 0.2, 0.4, 0.6, 0.8]) {
      const limit = ask(at(lateral, 0.7), 'brake.limitInTurn') / g;
      expect(limit).toBeLessThanOrEqual(before);
      expect(Math.hypot(limit, lateral)).toBeLessThanOrEqual(1 + 1e-6);
      before = limit;
    }
    expect(ask(at(0, 0.7), 'brake.limitInTurn') / g).toBeCloseTo(straight, 6);
  });
  it('goes out by the end that brakes too much', () => {
    expect(ask(at(0.4, 0.9), 'brake.orderInTurn')).toBeGreaterThan(0);
    expect(ask(at(0.4, 0.5), 'brake.orderInTurn')).toBeLessThan(0);
  });
});
