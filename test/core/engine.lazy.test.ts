/** What is worked out when: a question pays for what its answer rests on, and the order of questions changes nothing. */
import { describe, expect, it } from 'vitest';
import { type Entry, figure, isRefusal, quantity, structure } from '../../core/catalog.js';
import { measureNext } from '../../core/doubt.js';
import { type Catalog, compile, type Evaluation, evaluate, type Node, probe } from '../../core/engine.js';
import { entries } from '../../core/entries.js';
import { seek } from '../../core/seek.js';
import { catalog } from '../../core/stubaxle.js';
import { randomCar, seeded } from './cars.js';
import { type Sources, workOut } from './naive.js';
import * as small from './small.js';
import { fact, facts } from './small.js';

/** How often each entry of a catalog has been computed. */
function counting(listed: readonly Entry[]): { readonly counted: Catalog; readonly computes: Map<string, number> } {
  const computes = new Map<string, number>();
  const made = compile(listed);
  const nodes = made.nodes.map((node): Node => {
    const { path, ways } = node;
    return {
      ...node,
      ways: ways.map((way) => ({
        ...way,
        compute: (given, near) => {
          computes.set(path, (computes.get(path) ?? 0) + 1);
          return way.compute(given, near);
        },
      })),
    };
  });
  return {
    counted: { ...made, nodes, byPath: new Map(nodes.map((node) => [node.path, node])), node: (path) => nodes[made.node(path).index]! },
    computes,
  };
}
const sum = (computes: ReadonlyMap<string, number>, paths: Iterable<string>): number =>
  [...paths].reduce((so, path) => so + (computes.get(path) ?? 0), 0);

describe('what a question pays for', () => {
  const { counted, computes } = counting(entries);
  /** All that rests on the car as the cornering model has it: equilibria, limits, thrust. */
  const dear = catalog.descendants('cornering.model').map(({ path }) => path);
  const cheap = ['rear.rideFrequency', '2.gear.speed', 'front.wheelRate', 'totalMass'].filter((path) => catalog.byPath.has(path));
  const cars = Array.from({ length: 14 }, (_, seed) => randomCar(counted, seed));

  it('has something dear to leave out, and cars that have it', () => {
    expect(dear).toContain('cornering.held');
    computes.clear();
    for (const car of cars) evaluate(counted, car).within('roll.angle');
    expect(sum(computes, ['cornering.held'])).toBeGreaterThan(100);
  });
  it('is what its number rests on: no cornering for a figure that does not corner', () => {
    const others = catalog.nodes.filter(
      ({ index, kind, then }) => kind === 'figure' && !then && !dear.includes(catalog.nodes[index]!.path),
    );
    computes.clear();
    for (const car of cars) {
      const it = evaluate(counted, car);
      for (const { path } of others) {
        it.status(path);
        it.within(path);
        it.shares(path);
      }
      it.errors();
    }
    expect(sum(computes, dear)).toBe(0);
    expect(sum(computes, computes.keys())).toBeGreaterThan(10_000);
  });
  it('is for one number a small part of what all cost', () => {
    computes.clear();
    for (const car of cars) for (const path of cheap) evaluate(counted, car).within(path);
    const one = sum(computes, computes.keys()) / cheap.length;
    computes.clear();
    for (const car of cars.slice(0, 8)) {
      const it = evaluate(counted, car);
      for (const { path, then, kind } of counted.nodes) if (kind === 'figure' && !then) it.within(path);
    }
    expect(cheap.length).toBeGreaterThan(1);
    expect(one / cars.length).toBeLessThan((0.1 * sum(computes, computes.keys())) / 8);
  });
  it('is paid once, whatever is asked for after it', () => {
    const paths = counted.nodes.filter(({ kind, then }) => kind === 'figure' && !then).map(({ path }) => path);
    const count = (ask: (it: Evaluation) => void): number => {
      computes.clear();
      for (const car of cars.slice(0, 6)) ask(evaluate(counted, car));
      return sum(computes, computes.keys());
    };
    const once = count((it) => {
      for (const path of paths) it.within(path);
    });
    const again = count((it) => {
      for (const path of [...paths].reverse()) {
        it.shares(path);
        it.within(path);
        it.shares(path);
      }
    });
    // What is next to nothing is rounding of a search that started elsewhere: whether it is looked at halfway is chance, so several cars are counted.
    expect(Math.abs(again / once - 1)).toBeLessThan(0.01);
  });
  it('holds for finding and for what to measure next', () => {
    computes.clear();
    for (const car of cars) {
      measureNext(evaluate(counted, car), cheap[0]!);
      seek(counted, car, { inputs: ['rear.spring.rate'], figure: cheap[0]!, target: 2 });
      probe(counted, car, ['front.spring.rate'], cheap)(50_000);
    }
    expect(sum(computes, computes.keys())).toBeGreaterThan(1000);
    expect(sum(computes, dear)).toBe(0);
  });
  it('holds for facts that say the same thing twice, as long as something near makes use of them', () => {
    computes.clear();
    for (const car of cars) evaluate(counted, car).overridden();
    const settling = sum(computes, dear);
    computes.clear();
    for (const car of cars) {
      const it = evaluate(counted, car);
      for (const { path } of counted.nodes) it.status(path);
    }
    expect(settling).toBeLessThan(0.15 * sum(computes, dear));
  });
});

describe('the order of questions', () => {
  it('changes no value, half-width, share or reason', () => {
    for (let seed = 0; seed < 4; seed++) {
      const car = randomCar(catalog, 500 + seed);
      const [all, one] = [evaluate(catalog, car), evaluate(catalog, car)];
      const random = seeded(seed);
      const paths = catalog.nodes.map(({ path }) => path);
      const eager = new Map(paths.map((path) => [path, { value: all.get(path), within: all.within(path), shares: all.shares(path) }]));
      const drawn = paths.map((path) => ({ path, key: random() })).sort((a, b) => a.key - b.key);
      for (const { path } of drawn.slice(0, 250)) {
        const { value, within, shares } = eager.get(path)!;
        const apart = (a: number, b: number): boolean => !(a === b || Math.abs(a - b) <= 1e-7 * Math.abs(b) + 1e-9);
        expect(apart(one.within(path), within), `${path}: ${one.within(path)}, ${within}`).toBe(false);
        const mine = new Map(one.shares(path).map((share) => [share.error, share]));
        for (const share of shares) {
          if (Math.abs(share.amount) < 1e-4 * within) continue;
          expect(mine.get(share.error)?.paths).toEqual(share.paths);
          // Small beside the whole, it is a difference of two searches, each as exact as the whole asks for.
          expect(Math.abs(mine.get(share.error)!.amount - share.amount), `${path} by ${share.error}`).toBeLessThan(1e-7 * within);
        }
        const got = one.get(path);
        if (typeof value === 'number') expect(typeof got === 'number' && !apart(got, value)).toBe(true);
        else if (isRefusal(value)) expect(got).toEqual(value);
      }
    }
  });
  it('leaves each error what it does when all is worked out anew, one error at a time', () => {
    let compared = 0;
    for (let seed = 0; seed < 4; seed++) {
      const car = randomCar(catalog, 700 + seed);
      const it = evaluate(catalog, car);
      const numbers = catalog.nodes.filter(({ path }) => typeof it.get(path) === 'number' && it.within(path) > 0);
      const shares = new Map(numbers.map(({ path }) => [path, new Map(it.shares(path).map((share) => [share.error, share]))]));
      const fixed: Sources = [];
      const base = workOut(catalog, car, () => 0, undefined, fixed);
      for (const { error } of it.errors().filter((_, n) => n % 8 === seed)) {
        const [up, down] = [1, -1].map((part) => workOut(catalog, car, (name) => (name === error ? part : 0), fixed));
        for (const { index, path } of numbers) {
          const [a, b, c] = [up![index], down![index], base[index]];
          const share = shares.get(path)!.get(error);
          if (typeof a !== 'number' || typeof b !== 'number' || typeof c !== 'number') continue;
          const [amount, bend] = [(a - b) / 2, (a + b) / 2 - c];
          // Where it is crooked the engine looks halfway, too.
          if (Math.abs(bend) > 0.12 * Math.abs(amount)) continue;
          compared++;
          const scale = Math.max(Math.abs(amount), 1e-6 * it.within(path), 1e-9 * Math.abs(c) + 1e-9);
          expect(Math.abs((share?.amount ?? 0) - amount) / scale, `${path} by ${error}`).toBeLessThan(1e-2);
        }
      }
    }
    expect(compared).toBeGreaterThan(5000);
  });
});

describe('a catalog made for this test', () => {
  const spec = { scope: 'car', name: 'made', symbol: 'x', source: 'made for this test' } as const;
  const told = { scope: 'car', sane: [0, 1e9], measure: 'x', told: small.told, dimension: 'mass' } as const;
  const weight = quantity({ ...told, path: 'weight', name: 'weight', words: ['weight'] });
  const other = quantity({ ...told, path: 'other', name: 'other', words: ['other'] });
  let solved = 0;
  const solution = structure({
    ...spec,
    path: 'solution',
    needs: { weight, other },
    compute: ({ weight, other }) => {
      solved++;
      return { twice: 2 * weight, other };
    },
  });
  const plain = figure({ ...spec, path: 'plain', dimension: 'mass', needs: { weight }, compute: ({ weight }) => weight * 3 });
  const twice = figure({ ...spec, path: 'twice', dimension: 'mass', needs: { solution }, compute: ({ solution }) => solution.twice });
  const made = compile([weight, other, solution, plain, twice]);
  const situation = { facts: facts({ weight: fact(1000, 10), other: fact(5, 1) }) };

  it('solves for the number that is asked, and for each error that moves what the solution reads', () => {
    solved = 0;
    const it = evaluate(made, situation);
    expect([it.get('plain'), it.within('plain')]).toEqual([3000, 30]);
    expect(solved).toBe(0);
    expect([it.get('twice'), it.within('twice')]).toEqual([2000, 20]);
    // Once as it is, and both ends of both errors.
    expect(solved).toBe(5);
    expect(it.shares('twice').map(({ error }) => error)).toHaveLength(1);
    expect(it.within('plain')).toBe(30);
    expect(solved).toBe(5);
  });
});
