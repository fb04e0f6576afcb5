/** Gearing, power, thrust, speedometer and the offset of wheels against values from outside. */
import { describe, expect, it } from 'vitest';
import { ask, inch, mile, mph, relative, rpm } from '../core/tires/ask.js';

describe('gearing', () => {
  const speeds = [
    { id: 'E1', input: { gear: 1, ratio: 3.136 }, expected: 39.83598 },
    { id: 'E1', input: { gear: 2, ratio: 1.888 }, expected: 66.16824 },
    { id: 'E1', input: { gear: 3, ratio: 1.33 }, expected: 93.92906 },
    { id: 'E1', input: { gear: 4, ratio: 1.0 }, expected: 124.92564 },
    { id: 'E1', input: { gear: 5, ratio: 0.814 }, expected: 153.4713 },
  ].map((row) => ({ ...row, source: 'exact kinematics', tolerance: 1e-6, why: '7000 rpm, 820 turns a mile, final 4.10' }));
  const told = (gear: number, ratio: number) => ({
    'rear.tire.statedTurns': 820 / mile,
    driven: 'rear',
    final: 4.1,
    [`${gear}.gear.ratio`]: ratio,
  });
  it('has every row', () => expect(speeds.length).toBe(5));
  it.each(speeds)('$id gear $input.gear: $expected mph, and back', ({ input: { gear, ratio }, expected, tolerance }) => {
    const speed = ask({ ...told(gear, ratio), engineSpeed: 7000 * rpm }, `${gear}.gearSpeed`) / mph;
    expect(relative(speed, expected)).toBeLessThan(tolerance);
    expect(relative(ask({ ...told(gear, ratio), redline: 7000 * rpm }, `${gear}.topSpeed`) / mph, expected)).toBeLessThan(tolerance);
    expect(relative(ask({ ...told(gear, ratio), roadSpeed: expected * mph }, `${gear}.gearRevs`) / rpm, 7000)).toBeLessThan(tolerance);
  });
  it('U14: mph = rpm·D/(z·ratio) with z = 336.1352398, for a wheel that rolls its own circumference', () => {
    const speed = ask(
      {
        'rear.tire.measuredCircumference': Math.PI * 24 * inch,
        driven: 'rear',
        final: 4.1,
        '2.gear.ratio': 1.888,
        engineSpeed: 7000 * rpm,
      },
      '2.gearSpeed',
    );
    expect(relative(speed / mph, (7000 * 24) / (336.1352398 * 1.888 * 4.1))).toBeLessThan(1e-9);
  });
  it('E2: 200 N·m at 6000 rpm are 125.6637 kW, 168.5178 hp; 150 lbf·ft at 5252.113 rpm are 150 hp', () => {
    const watts = ask({ engineTorque: 200, engineSpeed: 6000 * rpm }, 'enginePower');
    expect(relative(watts / 1000, 125.6637)).toBeLessThan(1e-6);
    expect(relative(watts / 745.6998715822702, 168.5178)).toBeLessThan(1e-6);
    const horsepower = ask({ engineTorque: 150 * 1.3558179483314003, engineSpeed: 5252.113122 * rpm }, 'enginePower') / 745.6998715822702;
    expect(relative(horsepower, 150)).toBeLessThan(1e-6);
  });
  it('E3: 180 N·m, 3.136 × 4.10, efficiency 0.9, radius 0.29 m, 1100 kg: 7182.521 N, 6.52956 m/s²', () => {
    const told = {
      'front.tire.measuredCircumference': 2 * Math.PI * 0.29,
      driven: 'front',
      final: 4.1,
      '1.gear.ratio': 3.136,
      driveEfficiency: 0.9,
      engineTorque: 180,
      mass: 1100,
      wheelbase: 2.5,
    };
    expect(relative(ask(told, '1.thrust'), 7182.521)).toBeLessThan(1e-6);
    // The published number leaves out what turns: 1.04 + 0.0025 (3.136 x 4.1)^2 of the weight in first.
    const turning = 1.04 + 0.0025 * (3.136 * 4.1) ** 2;
    expect(relative(ask(told, '1.gearAcceleration'), 6.52956 / turning)).toBeLessThan(1e-6);
  });
});

describe('speedometer', () => {
  it.each([
    [80, 12],
    [100, 14],
  ])('Q2, UN R39 5.3: at %d km/h it may show at most %d too much', (speed, most) => {
    // SEEN at colliseum.eu wiki ECE-R 39.
    expect(ask({ roadSpeed: speed / 3.6 }, 'speedometer.most') * 3.6 - speed).toBeCloseTo(most, 9);
  });
});

describe('offset', () => {
  it("moves the load: MR' = MR·e/(e + dET): 0.65, 1.5 m, 10 mm: 0.645695 (front-view geometry, exact)", () => {
    const then = { 'front.wheel.size': '17x8 ET45', 'front.wheel.lever': 1.5 };
    const now = { ...then, 'front.wheel.size': '17x8 ET35' };
    expect(relative(0.65 * ask(now, 'front.wheel.leverRatio', then), 0.645695)).toBeLessThan(1e-6);
    expect(ask(then, 'front.wheel.leverRatio')).toBe(1);
  });
});
