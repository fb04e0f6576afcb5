/** Gearing and the speedometer: round trips, directions, final drives that are found, and what is refused. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { isRefusal } from '../../core/catalog.js';
import { seek } from '../../core/seek.js';
import { catalog } from '../../core/stubaxle.js';
import { ask, car, factsOf, mile, mph, refusalOf, rpm, type Told } from './tires/ask.js';

const box: Told = {
  'front.tire.size': '245/40R17',
  'rear.tire.size': '245/40R17',
  final: 3.73,
  '1.gear.ratio': 3.2,
  '2.gear.ratio': 1.93,
  '3.gear.ratio': 1.4,
};
const ratios = fc.double({ min: 0.6, max: 5, noNaN: true });
const finals = fc.double({ min: 2.5, max: 6, noNaN: true });
const speeds = fc.double({ min: 1000, max: 9000, noNaN: true }).map((n) => n * rpm);

describe('road speed', () => {
  it('6500 rpm, 2nd 1.93, final 3.73, 245/40R17: the rolling circumference 3.05 × 627.8 mm, as printed, over the ratios', () => {
    const speed = ask({ ...box, engineSpeed: 6500 * rpm }, '2.gearSpeed');
    expect(speed).toBeCloseTo(((6500 / 60) * 3.05 * 0.6278) / (1.93 * 3.73), 9);
  });
  it('goes to engine speed and back, in any gear', () => {
    fc.assert(
      fc.property(ratios, finals, speeds, (ratio, final, engineSpeed) => {
        const told = { ...box, final, '2.gear.ratio': ratio };
        const roadSpeed = ask({ ...told, engineSpeed }, '2.gearSpeed');
        expect(ask({ ...told, roadSpeed }, '2.gearRevs') / engineSpeed).toBeCloseTo(1, 9);
      }),
    );
  });
  it('falls with ratio and final drive, rises with engine speed and tire', () => {
    fc.assert(
      fc.property(ratios, finals, speeds, (ratio, final, engineSpeed) => {
        const told: Told = { ...box, final, '2.gear.ratio': ratio, engineSpeed };
        const speed = ask(told, '2.gearSpeed');
        expect(ask({ ...told, final: final * 1.05 }, '2.gearSpeed')).toBeLessThan(speed);
        expect(ask({ ...told, '2.gear.ratio': ratio * 1.05 }, '2.gearSpeed')).toBeLessThan(speed);
        expect(ask({ ...told, engineSpeed: engineSpeed * 1.05 }, '2.gearSpeed')).toBeGreaterThan(speed);
        const taller = { 'front.tire.size': '255/40R17', 'rear.tire.size': '255/40R17' };
        expect(ask({ ...told, ...taller }, '2.gearSpeed')).toBeGreaterThan(speed);
        expect(ask({ ...told, transfer: 1.1 }, '2.gearSpeed')).toBeCloseTo(speed / 1.1, 9);
      }),
    );
  });
  it('depends on final, ratio, tire and engine speed, so that each can be found', () => {
    for (const input of ['final', '2.gear.ratio', 'rear.tire.size', 'front.tire.size', 'engineSpeed', 'rear.tire.rollingFactor']) {
      expect(catalog.dependsOn('2.gearSpeed', input), input).toBe(true);
    }
    expect(catalog.dependsOn('2.gearSpeed', '3.gear.ratio')).toBe(false);
  });
  it('the final drive for 62 mph at 6500 rpm in 2nd is found, and gives it', () => {
    const situation = { facts: factsOf({ ...box, engineSpeed: 6500 * rpm }) };
    const found = seek(catalog, situation, { inputs: ['final'], figure: '2.gearSpeed', target: 62 * mph });
    if (isRefusal(found)) throw new Error(found.refused);
    expect(found.roots.length).toBe(1);
    expect(ask({ ...box, engineSpeed: 6500 * rpm, final: found.roots[0]! }, '2.gearSpeed') / mph).toBeCloseTo(62, 6);
  });
  it('takes the driven axle when the tires differ, and asks for it when it is not told', () => {
    const staggered = { ...box, 'rear.tire.size': '275/40R17', engineSpeed: 6500 * rpm };
    expect(refusalOf(staggered, 'drivenCircumference')).toContain('which axle drives');
    const [front, rear, both] = ['front', 'rear', 'both'].map((driven) => ask({ ...staggered, driven }, '2.gearSpeed'));
    expect(rear!).toBeGreaterThan(front!);
    expect(both!).toBeCloseTo(2 / (1 / front! + 1 / rear!), 9);
  });
  it('does with one tire size, and without one names what it lacks', () => {
    const { 'front.tire.size': _, ...oneEnd } = box;
    expect(ask({ ...oneEnd, engineSpeed: 6500 * rpm }, '2.gearSpeed')).toBeGreaterThan(20);
    expect(refusalOf({ final: 4.1, '2.gear.ratio': 2, engineSpeed: 700 }, 'drivenCircumference')).toContain('tire size');
    expect(refusalOf({ ...oneEnd, driven: 'front' }, 'drivenCircumference')).toContain('front tire size');
  });
});

describe('redline and shifts', () => {
  const told = { ...box, redline: 7200 * rpm };
  it('top speed is that of the redline, or of the engine speed that is asked', () => {
    expect(ask(told, '2.topSpeed')).toBeCloseTo(ask({ ...box, engineSpeed: 7200 * rpm }, '2.gearSpeed'), 9);
    expect(ask({ ...told, engineSpeed: 6000 * rpm }, '2.topSpeed')).toBeCloseTo(ask({ ...box, engineSpeed: 6000 * rpm }, '2.gearSpeed'), 9);
  });
  it('the road speed is the same before and after a shift', () => {
    const after = ask(told, '2.shiftTo');
    expect(ask({ ...box, engineSpeed: after }, '3.gearSpeed')).toBeCloseTo(ask(told, '2.topSpeed'), 9);
    expect(ask(told, '2.shiftDrop')).toBeCloseTo(7200 * rpm - after, 9);
    expect(ask(told, '2.gearStep')).toBeCloseTo(1.93 / 1.4, 12);
  });
  it('there is no drop from the last gear that is known, and none from the top', () => {
    expect(refusalOf(told, '3.shiftDrop')).toMatch(/4th/);
    expect(refusalOf({ ...told, '8.gear.ratio': 0.5 }, '8.shiftDrop').length).toBeGreaterThan(10);
  });
});

describe('thrust', () => {
  it('changes as the final drive does: 4.10 for 3.73 pulls 9.9 % more in every gear', () => {
    for (const gear of [1, 2, 3]) {
      const [long, short] = [3.73, 4.1].map((final) => ask({ ...box, final }, `${gear}.thrustPerTorque`));
      expect(short! / long!).toBeCloseTo(4.1 / 3.73, 12);
    }
  });
  it('work in is work out: thrust times speed is power times efficiency', () => {
    fc.assert(
      fc.property(ratios, finals, speeds, (ratio, final, engineSpeed) => {
        const told = { ...box, final, '2.gear.ratio': ratio, engineSpeed, engineTorque: 200, driveEfficiency: 0.9 };
        expect((ask(told, '2.thrust') * ask(told, '2.gearSpeed')) / (ask(told, 'enginePower') * 0.9)).toBeCloseTo(1, 9);
      }),
    );
  });
});

describe('the speedometer', () => {
  const sizes = (size: string): Told => ({ 'front.tire.size': size, 'rear.tire.size': size });
  it('made for 225/45R16, on 205/50R15: the ratio is that of the printed diameters, 586 to 608.9', () => {
    const told = { ...sizes('205/50R15'), 'speedometer.size': '225/45R16', roadSpeed: 60 * mph };
    expect(ask(told, 'speedometer.ratio')).toBeCloseTo(586 / 608.9, 9);
    expect(ask(told, 'speedometer') / mph).toBeCloseTo((60 * 608.9) / 586, 6);
    // What both sizes share is no doubt of their ratio.
    expect(car(told).within('speedometer.ratio')).toBeLessThan(1e-9);
  });
  it('shown and true speed undo each other', () => {
    fc.assert(
      fc.property(fc.double({ min: 3, max: 80, noNaN: true }), (speed) => {
        const told = { ...sizes('255/40R17'), 'speedometer.size': '245/40R17' };
        const shown = ask({ ...told, roadSpeed: speed }, 'speedometer');
        expect(ask({ ...told, shownSpeed: shown }, 'speedometer.trueSpeed') / speed).toBeCloseTo(1, 9);
        expect(shown).toBeLessThan(speed);
      }),
    );
  });
  it('knows that flotation labels run large, on either side of the ratio', () => {
    const ratio = ask({ ...sizes('265/75R15'), 'speedometer.size': '31x10.50R15LT' }, 'speedometer.ratio');
    expect(ratio).toBeCloseTo(778.5 / (787.4 * 0.985), 6);
    const back = ask({ ...sizes('31x10.50R15LT'), 'speedometer.size': '265/75R15' }, 'speedometer.ratio');
    expect(ratio * back).toBeCloseTo(1, 9);
  });
  it('can be told the turns that it was set to', () => {
    const told = { ...sizes('245/40R17'), 'rear.tire.statedTurns': 840 / mile, driven: 'rear', 'speedometer.turns': 820 / mile };
    expect(ask(told, 'speedometer.ratio')).toBeCloseTo(820 / 840, 12);
  });
});
