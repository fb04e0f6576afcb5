import { describe, expect, it } from 'vitest';
import { type Curve, isRefusal } from '../../../core/catalog.js';
import { ask, car, g, horsepower, L2, light, mph, refusalOf, rpm, type Told } from './ask.js';

describe('can it spin', () => {
  it('says how much thrust a gear has over grip, and nothing spins beyond the speed that all the power allows', () => {
    for (const power of [80, 118, 200, 400]) {
      const told = { ...light, 'engine.wheelPower': power * horsepower };
      const fastest = ask(told, 'traction.fastestSpin');
      expect(fastest * ask(told, 'traction.straight')).toBeCloseTo(power * horsepower, 3);
      for (const gear of [1, 2, 3]) {
        const spins = ask(told, `${gear}.traction.spin`) > 1;
        const upTo = car(told).number(`${gear}.traction.spinSpeed`);
        expect(isRefusal(upTo)).toBe(!spins);
        if (!isRefusal(upTo)) expect(upTo).toBeLessThanOrEqual(fastest * (1 + 1e-9));
      }
    }
  });
  it('answers the question of the phone lines: 118 whp, 225s, 2nd, 40 mph: no, by a third', () => {
    const margin = ask({ ...light, roadSpeed: 40 * mph }, '2.traction.spin');
    expect(margin).toBeGreaterThan(0.5);
    expect(margin).toBeLessThan(0.8);
  });
  it('a told curve stands before its estimate, and a told torque before both', () => {
    const curve: Curve = { x: [1000 * rpm, 7000 * rpm], y: [100, 100], between: 'line' };
    const told: Told = { ...light, 'engine.curve': curve, engineSpeed: 4000 * rpm };
    const perTorque = ask(told, '2.thrustPerTorque');
    expect(ask(told, '2.thrust')).toBeCloseTo(100 * perTorque, 6);
    expect(ask({ ...told, engineTorque: 50 }, '2.thrust')).toBeCloseTo(50 * perTorque, 6);
    expect(refusalOf({ ...told, engineSpeed: 7500 * rpm }, '2.gearTorque')).toContain('highest engine speed');
  });
  it('all four driven, the split decides which end spins first', () => {
    const both = (share: number): number => ask({ ...L2, driven: 'both', 'drive.frontShare': share }, 'traction.straight');
    // At 1 g of thrust the loads of L2 are 0.32 and 0.68 of its weight: the split that uses all of it.
    expect(both(0.32) / (ask(L2, 'totalMass') * g)).toBeCloseTo(1, 9);
    expect(both(0.5)).toBeLessThan(both(0.32));
    expect(both(0.2)).toBeLessThan(both(0.32));
  });
  it('says what it lacks', () => {
    const { driven, ...undriven } = light;
    expect(driven).toBe('rear');
    expect(refusalOf(undriven, 'traction.straight')).toContain('driven axle');
    expect(refusalOf({ ...light, 'rear.axle.kind': 'beam', final: 4.1 }, 'traction.straight')).toContain('no refusal');
    const { final, ...endless } = light;
    expect(final).toBe(4.1);
    expect(refusalOf({ ...endless, 'rear.axle.kind': 'beam' }, 'traction.straight')).toContain('final drive');
  });
  it('throttle rotation turns its sign with the driven end', () => {
    const strong: Told = {
      ...light,
      'engine.wheelPower': 300 * horsepower,
      'front.differential': 'locked',
      'rear.differential': 'locked',
      lateral: 0.6 * g,
    };
    expect(ask(strong, '1.traction.rotation')).toBeGreaterThan(0.5);
    expect(ask({ ...strong, driven: 'front' }, '1.traction.rotation')).toBeLessThan(-0.5);
  });
});

describe('links', () => {
  const links: Told = { ...L2, driven: 'rear', 'rear.links.inward': 1.2, 'rear.links.height': 0.3, 'rear.axle.kind': 'beam' };
  const lift = (told: Told): unknown => {
    const model = car(told).get('cornering.model');
    return typeof model === 'object' && 'axles' in model && Array.isArray(model.axles)
      ? (model.axles[1] as { driveLift: number }).driveLift
      : model;
  };
  it('lift the body where they are told, and nowhere else', () => {
    expect(lift(L2)).toBe(0);
    expect(lift(links)).toBeCloseTo(0.25, 12);
    // Under brakes the pull is backward: the same links draw the rear down.
    expect(lift({ ...links, braking: 0.3 * g })).toBeCloseTo(0.25, 12);
  });
});
