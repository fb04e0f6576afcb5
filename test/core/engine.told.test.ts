/** Cars that tell results, and plain sums: the engine against the plain evaluation, and its plus-or-minus against Monte Carlo (JCGM 101). */
import { describe, expect, it } from 'vitest';
import { isWorkedOut } from '../../core/catalog.js';
import { catalogFor, evaluate, type Situation } from '../../core/engine.js';
import { catalog } from '../../core/stubaxle.js';
import { named, normal, type Random, randomCar } from './cars.js';
import { drawing, type Sources, workOut } from './naive.js';

const tellsResult = ({ facts }: Situation): boolean => [...facts.keys()].some((path) => isWorkedOut(catalog.node(path).entry));
/** Random cars that tell at least one result, from a seed on; in half of them something has changed since. */
function carsThatTell(from: number, count: number): Situation[] {
  const cars: Situation[] = [];
  for (let seed = from; cars.length < count; seed++) {
    const car = randomCar(catalog, seed, true);
    if (tellsResult(car)) cars.push(car);
  }
  return cars;
}
const near = (a: unknown, b: unknown): boolean =>
  typeof a === 'number' && typeof b === 'number'
    ? Math.abs(a - b) <= 1e-7 * Math.max(Math.abs(a), Math.abs(b)) + 1e-9
    : (a === undefined) === (b === undefined);
/** What rests on the four-wheel equilibrium is searched for, and costs three times all the rest. */
const dear = new Set(catalog.descendants('cornering.model').map(({ entry }) => entry.path));

/** Paths at which the engine and the plain evaluation differ. */
function differing(car: Situation): string[] {
  const own = catalogFor(catalog, car);
  const plainly = workOut(own, car, () => 0);
  const it_ = evaluate(catalog, car);
  return own.nodes.flatMap(({ path, index, kind, entry }) => {
    if (kind === 'structure' || kind === 'place' || dear.has(entry.path)) return [];
    const value = it_.status(path) === 'unknown' ? undefined : it_.get(path);
    return near(value, plainly[index]) ? [] : [`${path}: ${String(value)} and ${String(plainly[index])}`];
  });
}

describe('the engine and the plain evaluation', () => {
  const cars = carsThatTell(0, 24);
  it('agree on cars that tell results, whether they have changed since or not', () => {
    expect(cars.filter(({ then }) => then).length).toBeGreaterThan(5);
    expect(cars.flatMap(differing)).toEqual([]);
  });
  it('agree on plain sums, and on those that assume one thing', () => {
    for (const assume of [new Set<string>(), new Set(['tire.rate', 'frontShare'])]) {
      expect(cars.slice(0, 10).flatMap((car) => differing({ ...car, assume }))).toEqual([]);
    }
  });
  it('know fewer numbers in a plain sum, and none that a guess moves', () => {
    for (const car of cars.slice(0, 10)) {
      const [whole, plain] = [evaluate(catalog, car), evaluate(catalog, { ...car, assume: new Set() })];
      const known = (of: typeof whole) =>
        of.catalog.nodes.filter(({ path, entry }) => !dear.has(entry.path) && of.status(path) !== 'unknown');
      expect(known(plain).length).toBeLessThan(known(whole).length);
      const guesses = new Set(
        plain.catalog.entries.flatMap(({ path, ways }) =>
          ways.some(({ sort, constant, usual }) => sort === 'estimate' && !constant && !usual) ? [path] : [],
        ),
      );
      const guessed = plain.errors().filter(({ error }) => guesses.has(error.replace(/^rule ((front|rear|lf|rf|lr|rr|[1-8])\.)?/, '')));
      expect(guessed).toEqual([]);
    }
  });
  it('say of each error what it does when all is worked out anew, told results among them', () => {
    let compared = 0;
    for (const car of cars.slice(0, 6)) {
      const it_ = evaluate(catalog, car);
      const sources: Sources = [];
      const base = workOut(it_.catalog, car, () => 0, undefined, sources);
      const results = it_.errors().filter(({ error }) => error.endsWith(', told'));
      for (const { error } of results.slice(0, 4)) {
        const [up, down] = [1, -1].map((part) => workOut(it_.catalog, car, (name) => (name === error ? part : 0), sources));
        for (const { index, path, entry, kind } of it_.catalog.nodes) {
          const [a, b, c] = [up![index], down![index], base[index]];
          if (kind !== 'figure' || dear.has(entry.path) || typeof a !== 'number' || typeof b !== 'number' || typeof c !== 'number')
            continue;
          const [amount, bend] = [(a - b) / 2, (a + b) / 2 - c];
          if (Math.abs(bend) > 0.12 * Math.abs(amount)) continue;
          compared++;
          const share = it_.shares(path).find((one) => one.error === error);
          const scale = Math.max(Math.abs(amount), 1e-6 * it_.within(path), 1e-9 * Math.abs(c) + 1e-9);
          expect(Math.abs((share?.amount ?? 0) - amount) / scale, `${path} by ${error}`).toBeLessThan(1e-2);
        }
      }
    }
    expect(compared).toBeGreaterThan(1000);
  });
});

describe('plus-or-minus of what rests on told results, against Monte Carlo', () => {
  const draws = 300;
  /** A half-width that holds 19 in 20 of a normal error, in standard deviations. */
  const coverage = 1.96;
  interface Watched {
    readonly path: string;
    readonly figure: string;
    readonly index: number;
    readonly base: number;
    readonly within: number;
    inside: number;
    total: number;
  }
  function tryOut(car: Situation, seed: number): Watched[] {
    const it_ = evaluate(catalog, car);
    const watched = it_.catalog.nodes.flatMap((node): Watched[] => {
      const { path, entry, index, then, kind, layer } = node;
      if (kind !== 'figure' || then || layer !== 'best' || dear.has(entry.path)) return [];
      const base = it_.number(path);
      const isTold = it_.shares(path).some(({ error }) => error.endsWith(', told'));
      const within = it_.within(path);
      if (typeof base !== 'number' || !isTold || !(within > 1e-6 * Math.abs(base)) || !Number.isFinite(within)) return [];
      return [{ path, figure: entry.path, index, base, within, inside: 0, total: 0 }];
    });
    const draw = drawing(it_.catalog, car, ({ entry }) => !dear.has(entry.path));
    for (let n = 0; n < draws; n++) {
      const drawn = new Map<string, number>();
      const values = draw((error) => {
        let value = drawn.get(error);
        if (value === undefined) {
          const random: Random = named(`${error} ${n}`, seed);
          value = normal(random) / coverage;
          drawn.set(error, value);
        }
        return value;
      });
      for (const one of watched) {
        const value = values[one.index];
        if (typeof value !== 'number') continue;
        one.total++;
        if (Math.abs(value - one.base) <= one.within) one.inside++;
      }
    }
    return watched.filter(({ total }) => total > 0.9 * draws);
  }
  const all = carsThatTell(500, 30).flatMap(tryOut);
  it('has cars and draws enough', () => {
    expect(all.length).toBeGreaterThan(300);
    expect(new Set(all.map(({ figure }) => figure)).size).toBeGreaterThan(6);
  });
  it('holds 93 to 97 draws in 100 over all, and at least 88 for each number of each car', () => {
    const [inside, total] = [all.reduce((sum, one) => sum + one.inside, 0), all.reduce((sum, one) => sum + one.total, 0)];
    expect(inside / total).toBeGreaterThan(0.93);
    expect(inside / total).toBeLessThan(0.97);
    const nonlinear = new Set(catalog.entries.filter((entry) => entry.nonlinear).map((entry) => entry.path));
    const bad = all.filter((one) => one.inside / one.total < (nonlinear.has(one.figure) ? 0.75 : 0.88));
    expect(bad.map(({ path, inside: held, total: of }) => `${path} ${held} of ${of}`)).toEqual([]);
  });
});
