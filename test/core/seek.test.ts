import { describe, expect, it } from 'vitest';
import { figure, isRefusal, quantity, type Refusal } from '../../core/catalog.js';
import { compile, evaluate, probe } from '../../core/engine.js';
import { type Sought, seek } from '../../core/seek.js';
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
