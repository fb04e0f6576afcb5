/** Ranking of changes: order, doubt of the difference, what is held, what is equal. */
import { describe, expect, test } from 'vitest';
import { type Candidate, type Goal, isEqual, pairsOf, perMinute, rank } from '../../core/advice/rank.js';
import type { Fact } from '../../core/car.js';
import { isRefusal } from '../../core/catalog.js';
import { evaluate } from '../../core/engine.js';
import { catalog } from '../../core/stubaxle.js';

const told = (value: Fact['value'], within = 0, source = 'told'): Fact => ({ value, within, evidence: 'measured', source });
/** A plain car: equal tracks, springs and bars at both ends, the weight a little forward. */
const car = new Map<string, Fact>([
  ['mass', told(1200, 5, 'scale')],
  ['frontShare', told(0.53, 0.005, 'share')],
  ['wheelbase', told(2.5)],
  ['front.track', told(1.45)],
  ['rear.track', told(1.45)],
  ['cg.height', told(0.5, 0.02, 'cg')],
  ...(['front', 'rear'] as const).flatMap((end): [string, Fact][] => [
    [`${end}.spring.rate`, told(60_000, 1200, `${end} spring`)],
    [`${end}.spring.ratio`, told(0.7, 0.01, `${end} ratio`)],
    [`${end}.bar.diameter`, told(0.022, 0.0001, `${end} bar`)],
    [`${end}.bar.ratio`, told(0.6, 0.01, `${end} bar ratio`)],
    [`${end}.bar.length`, told(0.9)],
  ]),
  ...(['lf', 'rf', 'lr', 'rr'] as const).map((at): [string, Fact] => [`${at}.bar.lever`, told(0.22)]),
]);
const base = { facts: car };
const changed = (what: string, to: Readonly<Record<string, number>>, minutes?: number, group?: string): Candidate<string> => ({
  what,
  situation: { facts: new Map([...car, ...Object.entries(to).map(([path, value]): [string, Fact] => [path, told(value, 0, 'tried')])]) },
  minutes,
  ...(group === undefined ? {} : { group }),
});
const rotation: Goal = { aims: [{ path: 'balance', towards: -1 }] };
const ranked = (candidates: readonly Candidate<string>[], goal = rotation, closely?: number) => {
  const found = rank(catalog, base, candidates, goal, closely);
  if (isRefusal(found)) throw new Error(found.refused);
  return found;
};
const sameSource = (path: string, value: number): Candidate<string> => ({
  what: path,
  situation: { facts: new Map([...car, [path, { ...car.get(path)!, value }]]) },
  minutes: 10,
});

describe('a ranking', () => {
  const stiff = changed('rear bar 26', { 'rear.bar.diameter': 0.026 }, 40);
  const hole = changed('rear hole', { 'lr.bar.lever': 0.19, 'rr.bar.lever': 0.19 }, 5);
  const front = changed('front bar 26', { 'front.bar.diameter': 0.026 }, 40);
  const unknown = changed('rear bar 28', { 'rear.bar.diameter': 0.028 });
  test('puts first what helps most for the work, then what helps with work unknown, then the other way', () => {
    const { ranked: order } = ranked([front, unknown, stiff, hole]);
    expect(order.map(({ what, verdict }) => [what, verdict])).toEqual([
      ['rear hole', 'helps'],
      ['rear bar 26', 'helps'],
      ['rear bar 28', 'helps'],
      ['front bar 26', 'away'],
    ]);
    expect(perMinute(order[0]!)!).toBeGreaterThan(perMinute(order[1]!)!);
    expect(perMinute(order[2]!)).toBeUndefined();
  });
  // Common practice, no source: a stiffer rear bar adds rotation, a stiffer front bar takes it away.
  test('has the directions of the trade, and the gain is the change of the figure', () => {
    const [first] = ranked([stiff]).ranked;
    const [a, b] = [evaluate(catalog, base).number('balance'), evaluate(catalog, stiff.situation).number('balance')];
    if (isRefusal(a) || isRefusal(b)) throw new Error('no balance');
    expect(first!.gain).toBeCloseTo(a - b, 12);
    expect(first!.gain).toBeGreaterThan(0);
    expect(ranked([front], { aims: [{ path: 'balance', towards: 1 }] }).ranked[0]!.verdict).toBe('helps');
  });
  test('weighs by the doubt of the difference: less than half of that of the figure itself', () => {
    const found = ranked([hole]);
    expect(found.ranked[0]!.within!).toBeGreaterThan(0);
    expect(found.ranked[0]!.within!).toBeLessThan(found.before.within('balance') / 2);
  });
  test('an adjuster read with the same gauge keeps its error: a trifle is still sure', () => {
    const trifle = ranked([sameSource('rear.bar.diameter', 0.0221)]).ranked[0]!;
    const other = ranked([changed('another bar', { 'rear.bar.diameter': 0.0221 }, 10)]).ranked[0]!;
    expect(trifle.gain).toBeCloseTo(other.gain, 12);
    expect(trifle.within!).toBeLessThan(other.within!);
  });
  test('calls what is smaller than its doubt unsure, and what moves nothing away', () => {
    const found = ranked([
      changed('a hair', { 'rear.bar.diameter': 0.02201 }, 1),
      changed('nothing', { 'lr.toe': 0.001, 'rr.toe': 0.001 }, 1),
    ]);
    expect(found.ranked.map(({ verdict }) => verdict)).toEqual(['unsure', 'away']);
    expect(found.ranked[1]!.gain).toBeCloseTo(0, 12);
  });
  test('keeps the best setting of an adjuster', () => {
    const levers = [0.18, 0.2, 0.24].map((lever) =>
      changed(`hole ${lever}`, { 'lr.bar.lever': lever, 'rr.bar.lever': lever }, 5, 'rear holes'),
    );
    expect(ranked(levers).ranked.map(({ what }) => what)).toEqual(['hole 0.18']);
  });
  test('weighs no more than it is told to', () => {
    const verdicts = ranked([stiff, hole, unknown], rotation, 1).ranked.map(({ verdict }) => verdict);
    expect(verdicts.filter((one) => one === 'unweighed')).toHaveLength(2);
  });
  test('says what upsets a figure that shall stay', () => {
    const softer: Goal = {
      aims: [
        { path: 'front.rideFrequency', towards: -1 },
        { path: 'rear.rideFrequency', towards: -1 },
      ],
      hold: { path: 'balance', slack: 0.003 },
    };
    const { ranked: order } = ranked(
      [
        changed('rear soft', { 'rear.spring.rate': 45_000 }, 60),
        changed('both soft', { 'front.spring.rate': 48_000, 'rear.spring.rate': 48_000 }, 120),
      ],
      softer,
    );
    expect(order.map(({ what, verdict }) => [what, verdict])).toEqual([
      ['both soft', 'helps'],
      ['rear soft', 'upsets'],
    ]);
  });
  test('refuses where the car has no such figure, and sets aside a change that leaves none', () => {
    expect(isRefusal(rank(catalog, { facts: new Map() }, [], rotation))).toBe(true);
    const broken = changed('bore too large', { 'rear.bar.bore': 0.04 }, 5);
    const found = ranked([broken, hole]);
    expect(found.impossible.map(({ what }) => what)).toEqual(['bore too large']);
    expect(found.ranked).toHaveLength(1);
  });
  test('two changes are equal when they differ by less than the doubt between them', () => {
    const piece = (what: string, value: number): Candidate<string> => ({
      what,
      situation: { facts: new Map([...car, ['rear.bar.diameter', told(value, 0.0002, what)]]) },
      minutes: 40,
    });
    const found = ranked([piece('one', 0.026), piece('alike', 0.02605), piece('thick', 0.029)]).ranked;
    const of = (what: string) => found.find((one) => one.what === what)!;
    expect(isEqual(of('one'), of('alike'), rotation)).toBe(true);
    expect(isEqual(of('one'), of('thick'), rotation)).toBe(false);
  });
});
test('pairs leave out what collides', () => {
  expect(pairsOf(['a1', 'a2', 'b1'], (p, q) => p[0] === q[0])).toEqual([
    ['a1', 'b1'],
    ['a2', 'b1'],
  ]);
});
