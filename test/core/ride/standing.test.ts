/** The car as it stands, asked through the catalog: what came aboard, what was changed, and what is only known in part. */
import { describe, expect, it } from 'vitest';
import { isRefusal } from '../../../core/catalog.js';
import { evaluate } from '../../../core/engine.js';
import { catalog } from '../../../core/stubaxle.js';
import { ask, bothEnds, car, factsOf, refusalOf, type Told } from './ask.js';

const springs = bothEnds({ 'spring.rate': 60000, 'spring.ratio': 0.75 });
const base: Told = {
  mass: 1200,
  frontShare: 0.54,
  wheelbase: 2.5,
  'lf.rideHeight': 0.6,
  'rf.rideHeight': 0.6,
  'lr.rideHeight': 0.61,
  'rr.rideHeight': 0.61,
  ...springs,
};
const scales: Told = { 'lf.scale': 330, 'rf.scale': 318, 'lr.scale': 270, 'rr.scale': 282, ...springs };
const corners = ['lf', 'rf', 'lr', 'rr'];
const sumOf = (told: Told, path: string, then?: Told): number => corners.reduce((sum, at) => sum + ask(told, `${at}.${path}`, then), 0);

describe('nothing changed', () => {
  it('is no change, exactly and without doubt', () => {
    const it = evaluate(catalog, { facts: factsOf(base, 0.001), then: factsOf(base, 0.001) });
    for (const at of corners) {
      expect(it.number(`${at}.corner.heightChange`)).toBe(0);
      expect(it.within(`${at}.corner.heightChange`)).toBe(0);
    }
    expect(it.number('lf.rideHeight')).toBe(0.6);
  });
  it('gives back the scale readings as they were read', () => {
    for (const at of corners) expect(ask(scales, `${at}.cornerMass`, scales)).toBe(scales[`${at}.scale`]);
  });
  it('but for what the springs have nothing to do with', () => {
    expect(ask({ ...base, 'lf.tire.pressure': 2e5 }, 'lf.corner.heightChange', base)).toBe(0);
  });
});

describe('what comes aboard', () => {
  const loaded: Told = { ...base, 'passenger.weight': 80 };
  it('is carried: the wheels gain it, the car sits lower, on the side of the passenger', () => {
    expect(sumOf(loaded, 'cornerMass', base)).toBeCloseTo(1280, 9);
    expect(ask(loaded, 'totalMass', base)).toBeCloseTo(1280, 9);
    expect(ask(loaded, 'rf.corner.heightChange', base)).toBeLessThan(ask(loaded, 'lf.corner.heightChange', base));
    expect(ask(loaded, 'rf.corner.heightChange', base)).toBeLessThan(0);
    expect(ask(loaded, 'front.rideFrequency', base)).toBeLessThan(ask(base, 'front.rideFrequency'));
  });
  it('is shared by distance where the springs are not known', () => {
    const { 'front.spring.rate': _, ...partly } = base;
    const shared: Told = { ...partly, 'passenger.weight': 80, 'passenger.right': 0.3, 'passenger.behind': 1.25 };
    expect(sumOf(shared, 'cornerMass', partly)).toBeCloseTo(1280, 9);
    expect(ask(shared, 'lf.cornerMass', partly) + ask(shared, 'rf.cornerMass', partly)).toBeCloseTo(1200 * 0.54 + 40, 9);
    expect(ask(shared, 'rf.cornerMass', partly)).toBeGreaterThan(ask(shared, 'lf.cornerMass', partly));
    expect(refusalOf(shared, 'front.heightChange', partly)).toContain('tell the spring rate');
  });
  it('keeps the sum of weights times their distance from the middle, whatever the tracks and springs', () => {
    const uneven: Told = {
      ...base,
      'front.track': 1.5,
      'rear.track': 1.42,
      'passenger.weight': 80,
      'passenger.right': 0.35,
      'rear.spring.rate': 30000,
      'lf.spacer': 0.004,
    };
    const before: Told = { ...base, 'front.track': 1.5, 'rear.track': 1.42 };
    const moment = (told: Told, then?: Told): number =>
      0.75 * (ask(told, 'rf.cornerMass', then) - ask(told, 'lf.cornerMass', then)) +
      0.71 * (ask(told, 'rr.cornerMass', then) - ask(told, 'lr.cornerMass', then));
    expect(moment(uneven, before) - moment(before)).toBeCloseTo(80 * 0.35, 6);
    expect(sumOf(uneven, 'cornerMass', before)).toBeCloseTo(1280, 6);
  });
  it('leaves when it gets out', () => {
    const out: Told = { ...base, driver: 'out', 'driver.weight': 75 };
    const before: Told = { ...base, driver: 'in', 'driver.weight': 75 };
    expect(ask(out, 'totalMass', before)).toBeCloseTo(1125, 9);
    expect(ask(out, 'lf.corner.heightChange', before)).toBeGreaterThan(ask(out, 'rf.corner.heightChange', before));
  });
  it('burns: less fuel, less on the rear', () => {
    const before: Told = { ...base, 'fuel.share': 1, 'tank.size': 0.05 };
    const after: Told = { ...base, 'fuel.share': 0.25, 'tank.size': 0.05 };
    expect(ask(before, 'totalMass') - ask(after, 'totalMass', before)).toBeCloseTo(0.75 * 0.05 * 745, 9);
    expect(ask(after, 'rear.heightChange', before)).toBeGreaterThan(ask(after, 'front.heightChange', before));
  });
});

describe('a change of parts', () => {
  it('at one corner moves all four', () => {
    const up: Told = { ...base, 'rf.perch.turns': 3, 'perch.pitch': 0.002 };
    const moved = corners.map((at) => ask(up, `${at}.corner.heightChange`, base));
    expect(moved[1]!).toBeGreaterThan(0);
    for (const one of moved) expect(Math.abs(one)).toBeGreaterThan(1e-4);
    expect(ask(up, 'rf.cornerMass', base)).toBeGreaterThan(ask(base, 'rf.cornerMass'));
    expect(ask(up, 'cross', base)).toBeGreaterThan(0.5);
    expect(sumOf(up, 'cornerMass', base)).toBeCloseTo(1200, 6);
  });
  it('stiffer springs of the same length raise, softer ones lower, more the softer they are', () => {
    const height = (rate: number): number => ask({ ...base, 'front.spring.rate': rate }, 'front.heightChange', base);
    const rates = [40000, 50000, 60000, 70000, 80000, 100000];
    const heights = rates.map(height);
    for (let n = 1; n < heights.length; n++) expect(heights[n]!).toBeGreaterThan(heights[n - 1]!);
    expect(heights[2]).toBe(0);
  });
  it('of springs whose lengths are not told is in doubt by them, and says so', () => {
    const it = evaluate(catalog, { facts: factsOf({ ...base, 'front.spring.rate': 80000 }, 1e-9), then: factsOf(base, 1e-9) });
    const [first] = it.shares('front.heightChange');
    expect(first?.paths).toEqual(['front.spring.longerBy']);
    expect(it.within('front.heightChange')).toBeGreaterThan(0.015);
    const told = { 'front.spring.length': 0.25 };
    expect(ask({ ...base, ...told, 'front.spring.rate': 80000 }, 'front.heightChange', { ...base, ...told })).toBeGreaterThan(0);
    // A length that is first told later is no change of it.
    expect(ask({ ...base, ...told }, 'front.heightChange', base)).toBe(0);
  });
  it('of springs that were not known has no answer, but the rest has', () => {
    const before: Told = { mass: 1200, frontShare: 0.54 };
    expect(refusalOf(base, 'front.heightChange', before)).toContain('spring rate as it was when the car was measured');
    expect(ask(base, 'front.rideFrequency', before)).toBeCloseTo(ask(base, 'front.rideFrequency'), 9);
  });
  it('takes the motion ratio at the new height', () => {
    const rising: Told = { ...base, 'front.spring.ratioRise': 1 };
    const lower = ask({ ...rising, 'lf.spacer': -0.015, 'rf.spacer': -0.015 }, 'front.motionRatio', rising);
    const travel = ask({ ...rising, 'lf.spacer': -0.015, 'rf.spacer': -0.015 }, 'lf.travelSince', rising);
    expect(travel).toBeGreaterThan(0.015);
    expect(lower).toBeCloseTo(0.75 + travel, 12);
  });
  it('eats the gap to the bump stop, damper travel for damper travel', () => {
    const before: Told = { ...base, 'front.bumpStop.gap': 0.04, 'front.damper.ratio': 0.9, 'front.spring.ratioRise': 0 };
    const after: Told = { ...before, 'lf.spacer': -0.012, 'rf.spacer': -0.012 };
    const travel = ask(after, 'lf.travelSince', before);
    expect(ask(after, 'front.bumpStop.gap', before)).toBeCloseTo(0.04 - 0.9 * travel, 12);
    expect(ask(after, 'front.bumpTravel', before)).toBeCloseTo(0.04 / 0.9 - travel, 12);
  });
});

describe('facts that say the same thing twice', () => {
  it('are read most direct first', () => {
    expect(ask({ ...base, ...scales }, 'totalMass')).toBe(1200);
    expect(ask({ ...base, ...scales, mass: 1300 }, 'totalMass')).toBe(1200);
    expect(ask({ mass: 1300, 'front.axleWeight': 700 }, 'frontShareNow')).toBeCloseTo(700 / 1300, 12);
    expect(ask({ mass: 1300, 'rear.axleWeight': 520 }, 'front.axleMass')).toBeCloseTo(780, 9);
    expect(ask({ mass: 1300, frontShare: 0.6, 'lf.scale': 400 }, 'rf.cornerMass')).toBeCloseTo(380, 9);
    expect(ask({ ...scales, 'lf.sprung': 260 }, 'lf.sprungMass')).toBe(260);
    expect(ask({ ...scales, 'lf.sprung': 260 }, 'lf.cornerMass')).toBe(330);
  });
  it('are refused where they cannot be', () => {
    expect(refusalOf({ mass: 600, 'front.axleWeight': 700 }, 'weighed.frontShare')).toContain('more than the whole car');
    expect(refusalOf({ ...scales, 'front.unsprung.axle': 700 }, 'lf.weighed.sprung')).toContain('more than the wheel weighs');
    expect(refusalOf({ 'front.axleWeight': 300, 'lf.scale': 320 }, 'rf.weighed.corner')).toContain('more than the whole axle');
  });
});

describe('a spring on its own', () => {
  it('needs only its law, its load and its ratio: under another load it answers anew', () => {
    const spring: Told = {
      'rear.spring.rates': { x: [0, 0.08], y: [25000, 45000], between: 'line' },
      'rear.spring.ratio': 0.9,
      'rear.spring.ratioRise': 0,
    };
    const under = (kg: number): number => ask({ ...spring, 'lr.sprung': kg, 'rr.sprung': kg }, 'rear.springRateHere');
    for (const kg of [120, 180, 240]) expect(under(kg)).toBeCloseTo(Math.sqrt(25000 ** 2 + (2 * 250000 * kg * 9.80665) / 0.9), 6);
  });
  it('left and right may differ', () => {
    const odd: Told = { ...base, 'lf.cornerSpring.rate': 70000, 'front.spring.ratioRise': 0 };
    expect(ask(odd, 'lf.corner.springRate')).toBe(70000);
    expect(ask(odd, 'rf.corner.springRate')).toBe(60000);
    expect(ask(odd, 'front.wheelRate')).toBeCloseTo(65000 * 0.75 ** 2, 9);
  });
  it('helper that is not known to close is refused with what to tell', () => {
    const it = car({ ...base, 'front.helper.rate': 10000 });
    const refusal = it.number('front.wheelRate');
    expect(isRefusal(refusal) && refusal.refused).toContain('where it closes');
  });
  it('that is bound at ride height says so', () => {
    expect(refusalOf({ ...base, 'front.spring.travel': 0.03 }, 'front.bumpTravel')).toContain('bound');
  });
});

describe('mirror', () => {
  it('left for right gives right for left', () => {
    const swap = (told: Told): Told =>
      Object.fromEntries(
        Object.entries(told).map(([path, value]) => [
          path.replace(/^([lr])([fr])\./, (_, side, end) => `${side === 'l' ? 'r' : 'l'}${end}.`),
          value,
        ]),
      );
    const then: Told = { ...scales, driver: 'out' };
    const now: Told = { ...then, 'lf.spacer': 0.006, 'rr.perch.turns': 2, 'lr.cornerSpring.rate': 80000 };
    for (const [left, right] of [
      ['lf', 'rf'],
      ['lr', 'rr'],
    ] as const) {
      expect(ask(now, `${left}.corner.heightChange`, then)).toBeCloseTo(ask(swap(now), `${right}.corner.heightChange`, swap(then)), 12);
      expect(ask(now, `${right}.cornerMass`, then)).toBeCloseTo(ask(swap(now), `${left}.cornerMass`, swap(then)), 9);
    }
  });
});
