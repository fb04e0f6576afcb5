/**
 * The plus-or-minus against Monte Carlo (JCGM 101:2008). Every error of a random car is drawn as a normal number whose half-width is 1.96 standard
 * deviations and worked through a second, plainer evaluation; counted is how often a number comes out within its half-width. It should be 95 times in 100.
 * Counted beside it is how often plain linear propagation (JCGM 100: half-steps, root of squares) would have held.
 */
import { describe, expect, it } from 'vitest';
import { type Evaluation, evaluate } from '../../core/engine.js';
import { catalog } from '../../core/stubaxle.js';
import { named, normal, type Random, randomCar } from './cars.js';
import { type Sources, workOut } from './naive.js';

const cars = 90;
const draws = 250;
/** Cars whose linear half-widths are worked out without the engine. */
const whollyLinear = 8;
/** A half-width that holds 19 in 20 of a normal error, in standard deviations. */
const coverage = 1.96;
/** A car of which fewer than this part of the draws have a value stands at an edge: nothing can be said there. */
const leastKnown = 0.9;

interface Watched {
  readonly path: string;
  readonly figure: string;
  readonly dimension: string;
  readonly index: number;
  readonly base: number;
  readonly within: number;
  /** Squares of the half-steps added up: linear propagation. */
  linear: number;
  inside: number;
  insideLinear: number;
  total: number;
}

function watch(it: Evaluation): Watched[] {
  return catalog.nodes.flatMap(({ entry, path, index, then }) => {
    const base = it.get(path);
    const within = it.within(path);
    if (entry.kind !== 'figure' || then || typeof base !== 'number' || within === 0 || !Number.isFinite(within)) return [];
    return [
      { path, figure: entry.path, dimension: entry.dimension ?? '', index, base, within, linear: 0, inside: 0, insideLinear: 0, total: 0 },
    ];
  });
}

/**
 * Adds up the squares of half-steps, error by error. Where the engine sees nothing bend, its own amount is the half-steps' sum;
 * in the first few cars that is not taken on trust.
 */
function addLinear(it: Evaluation, watched: readonly Watched[], fixed: Sources, wholly: boolean): void {
  const shares = watched.map((one) => new Map(it.shares(one.path).map((share) => [share.error, share])));
  for (const { error } of it.errors()) {
    const bent = shares.some((of) => Math.abs(of.get(error)?.bend ?? 0) > 0.02 * Math.abs(of.get(error)?.amount ?? 0));
    const [up, down] =
      wholly || bent ? [0.5, -0.5].map((step) => workOut(catalog, it.situation, (name) => (name === error ? step : 0), fixed)) : [];
    watched.forEach((one, n) => {
      const [above, below] = [up?.[one.index] ?? one.base, down?.[one.index] ?? one.base];
      const amount = up && typeof above === 'number' && typeof below === 'number' ? above - below : (shares[n]!.get(error)?.amount ?? 0);
      one.linear += amount ** 2;
    });
  }
}

/** One car: the share of draws within each half-width. */
function tryOut(seed: number): Watched[] {
  const situation = randomCar(catalog, 1000 + seed);
  const it = evaluate(catalog, situation);
  const watched = watch(it);
  const fixed: Sources = [];
  workOut(catalog, situation, () => 0, undefined, fixed);
  addLinear(it, watched, fixed, seed < whollyLinear);
  const streams = new Map<string, Random>();
  const streamOf = (error: string): Random => {
    const stream = streams.get(error) ?? named(error, seed);
    streams.set(error, stream);
    return stream;
  };
  for (let n = 0; n < draws; n++) {
    const drawn = new Map<string, number>();
    const values = workOut(
      catalog,
      situation,
      (error) => {
        const value = drawn.get(error) ?? normal(streamOf(error)) / coverage;
        drawn.set(error, value);
        return value;
      },
      fixed,
    );
    for (const one of watched) {
      const value = values[one.index];
      if (typeof value !== 'number') continue;
      one.total++;
      if (Math.abs(value - one.base) <= one.within) one.inside++;
      if (Math.abs(value - one.base) <= Math.sqrt(one.linear)) one.insideLinear++;
    }
  }
  return watched.filter((one) => one.total >= leastKnown * draws);
}

interface Verdict {
  readonly figure: string;
  readonly cars: number;
  /** Of all draws of all cars. */
  readonly held: number;
  readonly heldLinear: number;
  /** Of the worst car. */
  readonly worst: number;
  readonly worstLinear: number;
  readonly most: number;
}
function verdictOf(figure: string, all: readonly Watched[]): Verdict {
  const sum = (of: (one: Watched) => number): number => all.reduce((so, one) => so + of(one), 0);
  return {
    figure,
    cars: all.length,
    held: sum((one) => one.inside) / sum((one) => one.total),
    heldLinear: sum((one) => one.insideLinear) / sum((one) => one.total),
    worst: Math.min(...all.map((one) => one.inside / one.total)),
    worstLinear: Math.min(...all.map((one) => one.insideLinear / one.total)),
    most: Math.max(...all.map((one) => one.inside / one.total)),
  };
}

/** A half-width far below what the figures of its dimension are like is rounding and the like: a micrometre of ride height. */
function matters(all: readonly Watched[]): Watched[] {
  const greatest = new Map<string, number>();
  for (const { dimension, base } of all) greatest.set(dimension, Math.max(greatest.get(dimension) ?? 0, Math.abs(base)));
  return all.filter((one) => one.within > 1e-5 * greatest.get(one.dimension)!);
}

const all = matters(Array.from({ length: cars }, (_, seed) => tryOut(seed)).flat());
const byFigure = new Map<string, Watched[]>();
for (const one of all) byFigure.set(one.figure, [...(byFigure.get(one.figure) ?? []), one]);
const verdicts = [...byFigure].map(([figure, of]) => verdictOf(figure, of));
/** Steps on the way that no member asks for may be worse, if they say so. */
const asked = new Set(catalog.entries.filter((entry) => entry.words).map((entry) => entry.path));
const nonlinear = new Set(catalog.entries.filter((entry) => entry.nonlinear).map((entry) => entry.path));

const held = verdicts.filter(({ figure }) => asked.has(figure) || !nonlinear.has(figure));

const few = 0.93;
const many = 0.97;
/** In the worst car of a figure, linear propagation that holds less often than this misleads. */
const misleads = 0.8;
const percent = (part: number): string => `${(100 * part).toFixed(1)} in 100`;

describe('plus-or-minus against Monte Carlo', () => {
  it('has figures, cars and draws enough', () => {
    expect(verdicts.length).toBeGreaterThan(100);
    expect(all.reduce((sum, one) => sum + one.total, 0)).toBeGreaterThan(1e6);
  });
  it('holds 93 to 97 draws in 100 of every figure', () => {
    const off = held.filter((one) => one.held < few || one.held > many);
    expect(off.map(({ figure, held }) => `${figure} ${percent(held)}`)).toEqual([]);
  });
  it('holds in every single car, too: at least 84 in 100, or 75 at a knee that several errors reach together', () => {
    const bad = held.filter(({ figure, worst }) => worst < (nonlinear.has(figure) ? 0.75 : 0.84));
    expect(bad.map(({ figure, worst }) => `${figure} ${percent(worst)}`)).toEqual([]);
  });
  it('is what linear propagation gives, where that does not mislead', () => {
    const off = all.filter(
      (one) => !nonlinear.has(one.figure) && one.insideLinear / one.total > few && one.insideLinear / one.total < many,
    );
    const apart = off.filter((one) => Math.abs(one.within / Math.sqrt(one.linear) - 1) > 0.1);
    expect(off.length).toBeGreaterThan(2000);
    expect(apart.length / off.length).toBeLessThan(0.02);
  });
  it('finds the figures that linear propagation misleads, and each of them says how it is treated', () => {
    const misled = verdicts.filter((one) => one.heldLinear < few || one.heldLinear > many || one.worstLinear < misleads);
    expect(misled.length).toBeGreaterThan(3);
    const silent = misled.filter(({ figure }) => !nonlinear.has(figure));
    expect(
      silent.map(({ figure, heldLinear, worstLinear }) => `${figure}: ${percent(heldLinear)}, in one car ${percent(worstLinear)}`),
    ).toEqual([]);
  });
});
