/** What nobody told is a doubt where it is likely to be there, and nothing where a member adds it himself; a line's own facts need no others. */
import { describe, expect, it } from 'vitest';
import { isRefusal } from '../../../core/catalog.js';
import { type Evaluation, evaluate } from '../../../core/engine.js';
import { catalog } from '../../../core/stubaxle.js';
import { ask, bothEnds, car, factsOf, refusalOf, type Told } from './ask.js';

const corners = ['lf', 'rf', 'lr', 'rr'];
const everywhere = (path: string, value: number): Told => Object.fromEntries(corners.map((at) => [`${at}.${path}`, value]));
const weights: Told = { mass: 1200, frontShare: 0.54, wheelbase: 2.5 };
const springs = bothEnds({ 'spring.rate': 60000, 'spring.ratio': 0.8, 'spring.ratioRise': 0 });
const base: Told = { ...weights, ...springs, driver: 'in' };
const plain = (told: Told, then?: Told): Evaluation =>
  evaluate(catalog, { facts: factsOf(told), ...(then ? { then: factsOf(then) } : {}), assume: new Set() });
const number = (it: Evaluation, path: string): number => {
  const value = it.number(path);
  if (isRefusal(value)) throw new Error(value.refused);
  return value;
};
const restsOn = (it: Evaluation, path: string): string[] => it.shares(path).flatMap(({ paths }) => paths);

describe('corners that were never set', () => {
  it('leave cross a doubt of 1.5 points, and the left share none', () => {
    const it = car({ ...base, leftShare: 0.51 });
    expect(it.number('cross')).toBeCloseTo(0.54 * 0.49 + 0.46 * 0.51, 12);
    expect(it.within('cross')).toBeGreaterThan(0.013);
    expect(it.within('cross')).toBeLessThan(0.017);
    expect(it.number('leftShareNow')).toBeCloseTo(0.51, 12);
    expect(it.within('leftShareNow')).toBeLessThan(1e-9);
  });
  it('are known from four scales', () => {
    const it = car({ ...springs, wheelbase: 2.5, driver: 'in', 'lf.scale': 330, 'rf.scale': 318, 'lr.scale': 270, 'rr.scale': 282 });
    expect(it.within('cross')).toBe(0);
  });
  it('are known from cross with both shares', () => {
    const it = car({ ...base, leftShare: 0.51, cross: 0.515 });
    const pair = (a: string, b: string): number => (number(it, `${a}.cornerMass`) + number(it, `${b}.cornerMass`)) / 1200;
    expect(pair('rf', 'lr')).toBeCloseTo(0.515, 12);
    expect(pair('lf', 'lr')).toBeCloseTo(0.51, 12);
    expect(pair('lf', 'rf')).toBeCloseTo(0.54, 12);
  });
});

describe('rubber at the spring that nobody told of', () => {
  it('is a doubt of the rates, and of no height', () => {
    const it = evaluate(catalog, {
      facts: factsOf({ ...base, ...everywhere('spacer', 0.01) }),
      then: factsOf(base),
    });
    expect(it.number('front.wheelRate')).toBeCloseTo(60000 * 0.64, 6);
    expect(restsOn(it, 'front.wheelRate').join()).toContain('isolator.untold');
    // 0.8 mm under 1000 N beside a spring of 60 N/mm: a twentieth.
    expect(it.within('front.wheelRate') / (60000 * 0.64)).toBeGreaterThan(0.04);
    expect(restsOn(it, 'front.heightChange').join()).not.toContain('isolator');
  });
  it('is none where an isolator was told, be it of no thickness', () => {
    expect(restsOn(car({ ...base, 'front.isolator.thickness': 0 }), 'front.wheelRate').join()).not.toContain('isolator');
  });
  it('does not soften a text-book sum', () => {
    expect(number(plain(springs), 'front.wheelRate')).toBeCloseTo(60000 * 0.64, 6);
    expect(plain(springs).within('front.wheelRate')).toBe(0);
  });
  it('is there where its stiffness was told', () => {
    expect(ask({ ...base, 'front.isolator.rate': 600000 }, 'lf.corner.stackRate')).toBeCloseTo(1 / (1 / 60000 + 1 / 600000), 6);
  });
});

describe('the driver', () => {
  const { driver: _, ...unsaid } = base;
  it('may have been missing as the car was weighed, where nobody said', () => {
    const it = car(unsaid);
    expect(it.number('totalMass')).toBe(1200);
    expect(restsOn(it, 'totalMass')).toContain('driver.unsaid');
    expect(it.within('totalMass')).toBeGreaterThan(70);
    expect(it.within('front.rideFrequency')).toBeGreaterThan(car(base).within('front.rideFrequency'));
  });
  it('is no doubt where it was said, in a text-book sum, or of a height', () => {
    expect(car(base).within('totalMass')).toBe(0);
    expect(car({ ...unsaid, driver: 'out' }).within('totalMass')).toBe(0);
    expect(plain(weights).within('totalMass')).toBe(0);
    const higher = evaluate(catalog, { facts: factsOf({ ...unsaid, ...everywhere('spacer', 0.01) }), then: factsOf(unsaid) });
    expect(higher.within('front.heightChange')).toBeLessThan(2e-3);
  });
  it('sits on one side or the other, where nobody said', () => {
    expect(car({}).within('driver.right')).toBeGreaterThan(0.7);
    expect(car({ 'driver.seat': 'right' }).number('driver.right')).toBe(0.36);
    expect(car({ 'driver.seat': 'right' }).within('driver.right')).toBeLessThan(0.1);
  });
});

describe('what a member adds himself', () => {
  it('is none, without a doubt, unless told', () => {
    const nothing = car({});
    for (const path of ['passenger.weight', 'ballast.weight', 'lf.spacer', 'lf.perch.turns', 'front.inner.rate', 'front.spring.drop']) {
      expect(nothing.number(path), path).toBe(0);
      expect(nothing.within(path), path).toBe(0);
    }
    expect(refusalOf({}, 'front.helper.rate')).toContain('not known');
  });
});

describe('numbers that are typed', () => {
  it('are of a sheet, where that is where such numbers come from', () => {
    for (const path of ['mass', 'frontShare', 'cg.height', 'front.rollCenter.height', 'front.unsprung.axle', 'wheelbase']) {
      expect(catalog.node(path).entry.told?.usually, path).toBe('spec');
    }
    for (const path of ['lf.scale', 'lf.rideHeight', 'lf.camber']) expect(catalog.node(path).entry.told?.usually, path).toBe('measured');
  });
});

describe('lowering', () => {
  const high: Told = {
    ...base,
    ...everywhere('camber', -0.02),
    'front.suspension': 'strut',
    'rear.suspension': 'live axle',
    'rear.axle.kind': 'beam',
    'cg.height': 0.5,
    'front.rollCenter.height': 0.08,
    'rear.rollCenter.height': 0.25,
  };
  const low: Told = { ...high, ...everywhere('spacer', -0.024) };
  it('lets the roll center of a strut fall further than the body: the arm grows', () => {
    const travel = ask(low, 'lf.travelSince', high);
    expect(travel).toBeGreaterThan(0.028);
    const fallen = 0.08 - ask(low, 'front.rollCenter.height', high);
    expect(fallen / travel).toBeGreaterThan(2.4);
    expect(fallen / travel).toBeLessThan(2.7);
    const arm = (told: Told): number => ask(told, 'cg.heightNow', high) - ask(told, 'front.rollCenter.height', high);
    expect(arm(low)).toBeGreaterThan(arm(high) + 0.02);
    expect(ask(low, 'rear.rollCenter.height', high)).toBeGreaterThan(0.24);
    expect(car(low, high).within('front.rollCenter.height')).toBeGreaterThan(0.01);
  });
  it('moves a roll center that was guessed as well, and none that is told again', () => {
    const { 'front.rollCenter.height': __, ...guessed } = high;
    const after: Told = { ...guessed, ...everywhere('spacer', -0.024) };
    expect(ask(after, 'front.rollCenter.height', guessed)).toBeLessThan(ask(guessed, 'front.rollCenter.height') - 0.06);
    expect(ask({ ...low, 'front.rollCenter.height': 0.03 }, 'front.rollCenter.height', high)).toBe(0.03);
  });
  it('takes the camber with it by its gain, but not that of a beam', () => {
    const told: Told = { 'front.camber.gain': -0.4 };
    const travel = ask(low, 'lf.travelSince', high);
    expect(ask({ ...low, ...told }, 'lf.camber', { ...high, ...told })).toBeCloseTo(-0.02 - 0.4 * travel, 12);
    expect(ask(low, 'lr.camber', high)).toBe(-0.02);
    expect(ask({ ...low, 'lf.camber': -0.03 }, 'lf.camber', high)).toBe(-0.03);
    expect(ask({ ...low, ...told, 'front.wheel.lever': 2 }, 'lf.camber', { ...high, ...told, 'front.wheel.lever': 2 })).toBeCloseTo(
      -0.02 - travel / 2,
      12,
    );
  });
});

describe('wheels and wheel spacers', () => {
  const tracks = bothEnds({ track: 1.48 });
  it('move the track: twice the change of offset or spacer', () => {
    const before: Told = { ...tracks, 'front.wheel.offset': 0.04 };
    expect(ask({ ...before, 'front.wheel.offset': 0.025 }, 'front.track', before)).toBeCloseTo(1.51, 12);
    expect(ask({ ...before, 'front.wheel.spacer': 0.01 }, 'front.track', before)).toBeCloseTo(1.5, 12);
    expect(ask({ ...tracks, 'rear.wheel.spacer': 0.015 }, 'rear.track', tracks)).toBeCloseTo(1.51, 12);
    expect(ask({ ...before, 'front.wheel.spacer': 0.01, 'front.track': 1.52 }, 'front.track', before)).toBe(1.52);
  });
});

describe('what has not changed', () => {
  it('need not be known: ballast asks for no driver, no fuel and no place to the side', () => {
    const before: Told = { ...weights, 'ballast.weight': 0 };
    const after: Told = { ...weights, 'ballast.weight': 60, 'ballast.behind': 2 };
    expect(number(plain(after, before), 'frontShareNow')).toBeCloseTo((1200 * 0.54 + 12) / 1260, 12);
    const wheel = plain({ ...after, leftShare: 0.5 }, { ...before, leftShare: 0.5 }).number('lf.cornerMass');
    expect(isRefusal(wheel) && wheel.refused).toMatch(/ballast.*right of the middle/);
    expect(isRefusal(wheel) && wheel.because).toEqual(['ballast.right']);
  });
  it('needs no pitch for a perch that was not turned', () => {
    const told: Told = { 'front.spring.ratio': 0.8, 'front.spring.ratioRise': 0 };
    const spaced = plain({ ...told, 'lf.spacer': 0.008 }, { ...told, 'lf.spacer': 0 });
    expect(number(spaced, 'lf.corner.heightChange')).toBeCloseTo(0.01, 12);
    const turned = plain({ ...told, 'lf.perch.turns': 3 }, { ...told, 'lf.perch.turns': 0 }).number('lf.corner.heightChange');
    expect(isRefusal(turned) && turned.refused).toMatch(/how high one turn/);
    expect(isRefusal(turned) && turned.because).toEqual(['perch.pitch']);
  });
  it('says what a height change needs, and never that it is none', () => {
    const ratio: Told = { 'front.spring.ratio': 0.8 };
    const of = (told: Told, then: Told): string => {
      const value = plain(told, then).number('lf.corner.heightChange');
      return isRefusal(value) ? value.refused : `no refusal but ${value}`;
    };
    expect(of({ ...everywhere('spacer', 0.01) }, { ...everywhere('spacer', 0) })).toContain('motion ratio');
    expect(of({ ...ratio, 'front.spring.rate': 60000 }, { ...ratio, 'front.spring.rate': 50000 })).toContain('tell the weight of the car');
    expect(of({ ...ratio, 'front.spring.rate': 60000 }, ratio)).toContain('spring rate as it was when the car was measured');
    expect(of({ ...weights, 'ballast.weight': 50, 'ballast.behind': 1 }, { ...weights, 'ballast.weight': 0 })).toContain(
      'tell the spring rate',
    );
  });
  it('adds up what changes at one wheel, and lets a load down on its ride rate', () => {
    const before: Told = { 'front.spring.ratio': 0.8, 'front.spring.ratioRise': 0, 'front.isolator.thickness': 0.01, 'lf.spacer': 0 };
    const after: Told = { ...before, 'front.isolator.thickness': 0.006, 'lf.spacer': 0.012 };
    expect(number(plain(after, before), 'lf.corner.heightChange')).toBeCloseTo(0.01, 12);
    const loaded: Told = { ...weights, 'front.rideRate': 30000, 'ballast.behind': 0 };
    const down = plain({ ...loaded, 'ballast.weight': 60 }, { ...loaded, 'ballast.weight': 0 });
    expect(number(down, 'front.heightChange')).toBeCloseTo((-60 * 9.80665) / 60000, 12);
  });
});

describe('a weighing with one axle raised', () => {
  // A car of 1200 kg, 0.5 m high, on hubs 0.3 m high, 2.5 m apart: what stays down gains W (h - r) tan(theta)/L.
  const tilted = (level: number): number => level + (1200 * (0.5 - 0.3) * Math.tan(Math.asin(0.6 / 2.5))) / 2.5;
  const told: Told = { ...weights, ...bothEnds({ 'tire.loadedRadius': 0.3 }), 'tilt.lift': 0.6 };
  it('gives the height of the center of gravity, whichever axle is raised', () => {
    expect(number(plain({ ...told, 'tilt.frontWeight': tilted(1200 * 0.54) }), 'cg.height')).toBeCloseTo(0.5, 9);
    expect(number(plain({ ...told, 'tilt.rearWeight': tilted(1200 * 0.46) }), 'cg.height')).toBeCloseTo(0.5, 9);
  });
  it('refuses an axle that lost weight', () => {
    const value = plain({ ...told, 'tilt.frontWeight': 640 }).number('cg.height');
    expect(isRefusal(value) && value.refused).toContain('has to weigh more');
  });
});

describe('shares and places of the center of gravity', () => {
  it('say the same, and one that cannot be is refused', () => {
    expect(number(plain({ rearShareNow: 0.42 }), 'frontShareNow')).toBeCloseTo(0.58, 12);
    expect(number(plain({ wheelbase: 2.5, 'cg.behind': 1.1 }), 'rearShareNow')).toBeCloseTo(0.44, 12);
    const behind = plain({ wheelbase: 2, 'cg.behind': 2.1 }).number('frontShareNow');
    expect(isRefusal(behind) && behind.refused).toContain('wheelbase');
  });
});

describe('a spring known by its wheel', () => {
  it('is known with its isolators, and where the motion ratio changes', () => {
    const padded: Told = { 'front.wheelRate': 30000, 'front.spring.ratio': 0.8, 'front.isolator.rate': 1e6 };
    const rate = number(plain(padded), 'front.spring.rate');
    expect(1 / (1 / rate + 1 / 1e6)).toBeCloseTo(30000 / 0.64, 6);
    const changing: Told = {
      'front.wheelRate': 30000,
      'front.spring.ratio': 0.8,
      'front.spring.ratioRise': 1,
      ...everywhere('sprung', 280),
    };
    const { 'front.wheelRate': _, ...rest } = changing;
    const again = plain({ ...rest, 'front.spring.rate': number(plain(changing), 'front.spring.rate') });
    expect(number(again, 'front.wheelRate')).toBeCloseTo(30000, 6);
  });
  it('moves with what is changed: a told wheel rate is that of the springs that were on', () => {
    const before: Told = { ...weights, driver: 'in', ...bothEnds({ wheelRate: 30000, 'spring.ratio': 0.8, 'spring.ratioRise': 0 }) };
    expect(ask({ ...before, 'front.spring.rate': 60000 }, 'front.wheelRate', before)).toBeCloseTo(60000 * 0.64, 6);
  });
});
