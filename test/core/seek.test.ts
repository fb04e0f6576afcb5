import { describe, expect, it } from 'vitest';
import { figure, isRefusal, quantity, type Refusal } from '../../core/catalog.js';
import { compile, evaluate, probe } from '../../core/engine.js';
import { settable } from '../../core/seek/settable.js';
import { type Sought, seek } from '../../core/seek.js';
import { catalog as whole } from '../../core/stubaxle.js';
import { randomCar } from './cars.js';
import * as small from './small.js';
import { catalog, fact, facts } from './small.js';

const found = (value: Sought | Refusal): Sought => {
  if (isRefusal(value)) throw new Error(value.refused);
  return value;
};
/** A catalog of one input x from 0 to 10 and one figure of it. */
function one(compute: (x: number) => number, sane: readonly [number, number] = [0, 10]) {
  const x = quantity({ path: 'x', scope: 'car', name: 'x', words: ['x'], dimension: 'ratio', sane, measure: 'x', told: small.told });
  const f = figure({
    path: 'f',
    scope: 'car',
    name: 'f',
    symbol: 'f',
    dimension: 'ratio',
    source: 'x',
    needs: { x },
    compute: ({ x }) => compute(x),
  });
  const made = compile([x, f]);
  return (target: number, range?: readonly [number, number]) =>
    seek(made, { facts: facts({ x: 1 }) }, { inputs: ['x'], figure: 'f', target, ...(range ? { range } : {}) });
}

describe('seek', () => {
  it('finds the one root of a figure that only rises, and how far it reaches', () => {
    const it = found(one((x) => x ** 2)(9));
    expect(it.roots).toHaveLength(1);
    expect(it.roots[0]).toBeCloseTo(3, 9);
    expect(it).toMatchObject({ reach: [0, 100], monotone: true, known: [[0, 10]], jumps: [] });
  });
  it('finds none beyond the reach, and says what the reach is', () => {
    expect(found(one((x) => x ** 2)(101))).toMatchObject({ roots: [], reach: [0, 100] });
  });
  it('keeps to a range that is given', () => {
    expect(found(one((x) => x ** 2)(9, [4, 5]))).toMatchObject({ roots: [], reach: [16, 25] });
  });
  it('finds all of several', () => {
    const { roots, monotone } = found(one((x) => Math.cos(x))(0));
    expect(roots.map((root) => root / (Math.PI / 2))).toEqual([1, 3, 5].map((n) => expect.closeTo(n, 9)));
    expect(monotone).toBe(false);
  });
  it('finds two roots that lie between two samples, on either side of a turn', () => {
    // The vertex is between samples, and both roots are within a hundredth of it; a step is 10/64.
    const { roots, reach } = found(one((x) => (x - 5.07) ** 2)(1e-4));
    expect(roots).toEqual([expect.closeTo(5.06, 6), expect.closeTo(5.08, 6)]);
    expect(reach[0]).toBeCloseTo(0, 12);
  });
  it('finds a root that is only touched', () => {
    const { roots } = found(one((x) => (x - 5.07) ** 2)(0));
    expect(roots).toHaveLength(1);
    expect(roots[0]).toBeCloseTo(5.07, 3);
  });
  it('finds a root at an end of the range, once', () => {
    expect(found(one((x) => x)(0)).roots).toEqual([0]);
    expect(found(one((x) => x)(10)).roots).toEqual([10]);
  });
  it('goes up to the edge where a figure loses its value', () => {
    const it = found(one((x) => Math.sqrt(3.21 - x))(0.01));
    expect(it.roots[0]).toBeCloseTo(3.21 - 1e-4, 9);
    expect(it.known[0]![1]).toBeCloseTo(3.21, 9);
  });
  it('finds roots on both sides of a gap', () => {
    const it = found(one((x) => (Math.abs(x - 5) < 1 ? Number.NaN : Math.abs(x - 5)))(2));
    expect(it.roots).toEqual([expect.closeTo(3, 9), expect.closeTo(7, 9)]);
    expect(it.known).toEqual([
      [0, expect.closeTo(4, 9)],
      [expect.closeTo(6, 9), 10],
    ]);
  });
  it('does not take a jump for a root', () => {
    const it = found(one((x) => (x < 4.2 ? 1 : 3))(2));
    expect(it.roots).toEqual([]);
    expect(it.jumps).toEqual([expect.closeTo(4.2, 9)]);
    expect(found(one((x) => 1 / (x - 4.21))(0))).toMatchObject({ roots: [] });
  });
  it('takes no point beside a pole for a root, wherever the samples fall', () => {
    // 4.21875 is a sample; so near a pole it is huge, and against it everything else was small.
    for (const pole of [4.21875 + 1e-11, 4.21875 - 1e-13, 4.2]) {
      const it_ = found(one((x) => 1 / (x - pole))(0.0001));
      expect(it_.roots, String(pole)).toEqual([]);
      expect(it_.jumps, String(pole)).toEqual([expect.closeTo(pole, 6)]);
    }
    // A pole and a root: the root alone.
    expect(found(one((x) => 1 / (x - 4.2187500001) + 0.5)(0)).roots).toEqual([expect.closeTo(4.2187500001 - 2, 9)]);
    // A pole that does not change sign crosses twice.
    expect(found(one((x) => 1 / (x - 4.21) ** 2)(4)).roots).toEqual([expect.closeTo(3.71, 9), expect.closeTo(4.71, 9)]);
  });
  it('takes a jump on a slope for a jump, and a steep root or an edge for a root', () => {
    expect(found(one((x) => x + (x < 5.01 ? 0 : 0.001))(5.0105))).toMatchObject({ roots: [], jumps: [expect.closeTo(5.01, 9)] });
    expect(found(one((x) => Math.atan(1e4 * (x - 3.3)))(0.1)).roots).toEqual([expect.closeTo(3.3 + Math.tan(0.1) / 1e4, 9)]);
    expect(found(one((x) => Math.sign(x - 2.5) * Math.sqrt(Math.abs(x - 2.5)))(0)).roots).toEqual([expect.closeTo(2.5, 9)]);
    expect(found(one((x) => Math.cbrt(x - 6.6))(0)).roots).toEqual([expect.closeTo(6.6, 9)]);
  });
  it('walks wide ranges in equal ratios', () => {
    const { roots } = found(one((x) => Math.sin(Math.log(x)), [1e-3, 1e3])(0));
    expect(roots.map((root) => Math.log(root) / Math.PI)).toEqual([-2, -1, 0, 1, 2].map((n) => expect.closeTo(n, 6)));
  });
  it('does not alter the facts', () => {
    const before = facts({ mass: 1000, 'front.spring.rate': 50_000 });
    const copy = new Map(before);
    found(seek(catalog, { facts: before }, { inputs: ['front.spring.rate'], figure: 'front.frequency', target: 1.5 }));
    expect(before).toEqual(copy);
  });
  it('gives a value that gives the target', () => {
    const given = facts({ mass: 1000 });
    const { roots } = found(seek(catalog, { facts: given }, { inputs: ['front.spring.rate'], figure: 'front.frequency', target: 1.5 }));
    const check = evaluate(catalog, { facts: new Map(given).set('front.spring.rate', fact(roots[0]!)) });
    expect(check.number('front.frequency')).toBeCloseTo(1.5, 9);
  });
  it('moves several inputs together', () => {
    const given = facts({ 'lf.scale': 250, 'rf.scale': 250 });
    const { roots } = found(seek(catalog, { facts: given }, { inputs: ['lr.scale', 'rr.scale'], figure: 'totalMass', target: 1100 }));
    expect(roots).toEqual([expect.closeTo(300, 9)]);
  });
  it('tries the car against what it was measured as', () => {
    const given = facts({ mass: 1000, 'front.spring.rate': 50_000, 'front.height': 0.3 });
    const { roots } = found(seek(catalog, { facts: given }, { inputs: ['front.spring.rate'], figure: 'front.rideHeight', target: 0.31 }));
    const then = evaluate(catalog, { facts: new Map(given).set('front.spring.rate', fact(roots[0]!)), then: given });
    expect(then.number('front.rideHeight')).toBeCloseTo(0.31, 9);
  });
});

describe('several places at once', () => {
  it('are moved by as much, each from where it is', () => {
    const given = facts({ 'lf.scale': 250, 'rf.scale': 240, 'lr.scale': 200, 'rr.scale': 210 });
    const goal = { inputs: ['lr.scale', 'rr.scale'], figure: 'totalMass', target: 960, moved: 'by' } as const;
    const { roots, reach } = found(seek(catalog, { facts: given }, goal));
    expect(roots).toEqual([expect.closeTo(30, 9)]);
    // Neither leaves its sane range, of 50 to 900 kg.
    expect(reach).toEqual([expect.closeTo(600, 9), expect.closeTo(490 + 890 + 900, 9)]);
  });
  it('are refused where it is not known where they are', () => {
    const goal = { inputs: ['lr.scale', 'rr.scale'], figure: 'totalMass', target: 960, moved: 'by' } as const;
    expect(seek(catalog, { facts: facts({ 'lr.scale': 200 }) }, goal)).toEqual({
      refused: 'By how much is not known, since it is not known where it is. The right rear scale reading is not known.',
      because: ['rr.scale'],
    });
  });
});

describe('what could be set', () => {
  it('is everything that leads to a number, at the places that are moved alike', () => {
    const paths = (figure: string) => settable(catalog, figure).map((one) => one.paths.join(' '));
    expect(paths('front.frequency')).toEqual(expect.arrayContaining(['mass', 'front.spring.rate', 'lf.scale rf.scale lr.scale rr.scale']));
    expect(paths('front.frequency').filter((one) => one.includes('rear.spring'))).toEqual([]);
    expect(paths('frequencyRatio')).toEqual(
      expect.arrayContaining(['front.spring.rate', 'rear.spring.rate', 'front.spring.rate rear.spring.rate']),
    );
  });
  it('is of inputs alone, or of results too', () => {
    const of = (what: 'inputs' | 'all') => new Set(settable(whole, 'front.rideFrequency', what).map(({ entry }) => entry.path));
    expect([
      of('inputs').has('wheelRate'),
      of('all').has('wheelRate'),
      of('all').has('corner.wheelRate'),
      of('all').has('tire.rate'),
    ]).toEqual([false, true, true, true]);
  });
});

describe('seek in a plain sum', () => {
  const plainly = (of: Readonly<Record<string, number>>) => ({ facts: facts(of), assume: new Set<string>() });
  const lb = 0.45359237;
  const lbPerInch = 175.126835;
  it('finds a result from what is told, without a car: the wheel rate for 1.8 Hz under 600 lb', () => {
    const goal = { inputs: ['lf.corner.wheelRate'], figure: 'lf.corner.rideFrequency', target: 1.8 } as const;
    const { roots } = found(seek(whole, plainly({ 'lf.sprung': 600 * lb }), goal));
    // By hand: (2 pi f)^2 m.
    expect(roots.map((root) => root / lbPerInch)).toEqual([expect.closeTo(198.77833, 4)]);
  });
  it('finds what is under a result, and what is beside it', () => {
    const rate = { inputs: ['front.spring.rate'], figure: 'front.wheelRate', target: 190.125 * lbPerInch } as const;
    expect(found(seek(whole, plainly({ 'front.spring.ratio': 0.65 }), rate)).roots[0]! / lbPerInch).toBeCloseTo(450, 6);
    const ratio = { inputs: ['front.spring.ratio'], figure: 'front.wheelRate', target: 190.125 * lbPerInch } as const;
    expect(found(seek(whole, plainly({ 'front.spring.rate': 450 * lbPerInch }), ratio)).roots[0]).toBeCloseTo(0.65, 9);
    const tire = { inputs: ['front.tire.rate'], figure: 'front.rideRate', target: 164.02878 * lbPerInch } as const;
    expect(found(seek(whole, plainly({ 'front.wheelRate': 190 * lbPerInch }), tire)).roots[0]! / lbPerInch).toBeCloseTo(1200, 2);
  });
  it('says what is missing, and guesses nothing', () => {
    const goal = { inputs: ['front.spring.rate'], figure: 'front.wheelRate', target: 30_000 } as const;
    expect(seek(whole, plainly({}), goal)).toMatchObject({ refused: 'Front wheel rate needs the front motion ratio, spring over wheel.' });
    expect(isRefusal(seek(whole, { facts: facts({}) }, goal))).toBe(false);
  });
  it('finds the way back from every number that something can be told for: what gave it gives it again', () => {
    let [sought, missed] = [0, 0];
    for (let seed = 0; seed < 2; seed++) {
      const car = { ...randomCar(whole, 60 + seed), ...(seed % 2 === 0 ? {} : { assume: new Set<string>() }) };
      for (const figure of ['front.wheelRate', 'lr.corner.rideRate', 'rear.rideFrequency', 'frequencyRatio', 'totalMass', '2.gear.speed']) {
        if (!whole.byPath.has(figure)) continue;
        for (const { paths } of settable(whole, figure)) {
          const [low, high] = whole.node(paths[0]).entry.sane!;
          const value = low + 0.37 * (high - low);
          const ask = probe(whole, car, paths, [figure]);
          const [target] = ask(value);
          const others = [0.2, 0.5, 0.8].map((part) => ask(low + part * (high - low))[0]);
          // Only to what the number can be: a ride rate near that of its tire would want a wheel rate without end.
          const [least, most] = whole.node(figure).entry.sane ?? [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY];
          if (target === undefined || target < least || target > most) continue;
          // Only where it moves the number at all, and not by rounding.
          if (!others.some((one) => one !== undefined && Math.abs(one - target) > 1e-6 * Math.abs(target))) continue;
          const it_ = seek(whole, car, { inputs: paths, figure, target });
          sought++;
          const gives = isRefusal(it_) ? [] : it_.roots.map((root) => ask(root)[0] ?? Number.NaN);
          if (!gives.some((one) => Math.abs(one - target) <= 1e-9 * Math.abs(target))) missed++;
        }
      }
    }
    expect(sought).toBeGreaterThan(100);
    expect(missed).toBe(0);
  });
});

describe('seek refuses', () => {
  const given = facts({ mass: 1000, 'front.spring.rate': 50_000 });
  it('an input that does not lead to the figure', () => {
    expect(seek(catalog, { facts: given }, { inputs: ['rear.spring.rate'], figure: 'front.frequency', target: 1 })).toMatchObject({
      refused: 'The rear spring rate does not change the front ride frequency of this car.',
    });
  });
  it('an input that is overridden, and names what is used instead', () => {
    const scales = facts({ mass: 1000, 'lf.scale': 250, 'rf.scale': 250, 'lr.scale': 250, 'rr.scale': 250 });
    expect(seek(catalog, { facts: scales }, { inputs: ['mass'], figure: 'totalMass', target: 900 })).toEqual({
      refused: 'The mass does not change the total mass of this car: the mass from the scales is used instead.',
      because: ['massFromScales'],
    });
  });
  it('a target that the number cannot be, with what it can be', () => {
    const goal = { inputs: ['front.wheelRate'], figure: 'front.rideFrequency' } as const;
    const { sane } = whole.node('front.rideFrequency').entry;
    const told = { facts: facts({ mass: 1000 }) };
    for (const target of [40, 0.01, -1]) {
      expect(seek(whole, told, { ...goal, target })).toEqual({
        refused: 'No car has such a front ride frequency.',
        because: ['front.rideFrequency'],
        range: sane,
      });
    }
    expect(isRefusal(seek(whole, told, { ...goal, target: 2 }))).toBe(false);
  });
  it('a figure that lacks something else, with what it lacks', () => {
    expect(seek(catalog, { facts: facts({}) }, { inputs: ['front.spring.rate'], figure: 'front.frequency', target: 1 })).toMatchObject({
      because: ['mass'],
    });
  });
  it('throws for what is not an amount', () => {
    expect(() => seek(catalog, { facts: given }, { inputs: ['front.kind'], figure: 'front.rollRate', target: 1 })).toThrow(
      'cannot be tried as an amount',
    );
  });
});

describe('probe', () => {
  it('gives what a full evaluation gives, along the whole way and back', () => {
    const given = facts({ mass: 1000, 'front.spring.rate': 50_000, 'rear.spring.rate': 40_000, 'front.height': 0.3 });
    const figures = ['front.frequency', 'frequencyRatio', 'front.rideHeight', 'rear.frequency'];
    const ask = probe(catalog, { facts: given }, ['front.spring.rate'], figures);
    for (const rate of [20_000, 90_000, 50_000]) {
      const whole = evaluate(catalog, { facts: new Map(given).set('front.spring.rate', fact(rate)), then: given });
      expect(ask(rate)).toEqual(figures.map((path) => whole.number(path)));
    }
  });
  it('has nothing where the figure has no value, and has one again after', () => {
    const ask = probe(catalog, { facts: facts({}) }, ['lf.camber'], ['lf.inverse', 'rf.inverse']);
    expect(ask(0)).toEqual([undefined, undefined]);
    expect(ask(0.5)).toEqual([2, undefined]);
  });
});
