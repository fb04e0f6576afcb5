import { describe, expect, it } from 'vitest';
import { type About, about, type Sum } from '../../core/about.js';
import { isRefusal, type Refusal } from '../../core/catalog.js';
import { evaluate, type Situation } from '../../core/engine.js';
import { catalog } from '../../core/stubaxle.js';
import { fact, facts } from './small.js';

const sum = (of: Sum | Refusal): Sum => {
  if (isRefusal(of)) throw new Error(of.refused);
  return of;
};
const aboutOf = (situation: Situation, path: string): About => about(evaluate(catalog, situation), path);
/** A wheel rate of 200 lb/in under 600 lb, by hand: sqrt(k/m) over 2 pi. */
const rates = { 'lf.corner.wheelRate': 200 * 175.126835, 'lf.sprung': 600 * 0.45359237 };
const path = 'lf.corner.rideFrequency';

describe('what can be said of a number', () => {
  it('is the plain sum, the whole with what is usual, and what made the difference', () => {
    const it_ = aboutOf({ facts: facts(rates), assume: new Set() }, path);
    const [plain, whole] = [sum(it_.plain), sum(it_.whole)];
    expect(plain.value).toBeCloseTo(1.80552, 5);
    expect([plain.within, plain.basis]).toEqual([0, ['no tire in it']]);
    // In series with the tire that is guessed: k_w k_t/(k_w + k_t).
    const guessed = evaluate(catalog, { facts: facts(rates) }).number('front.tire.rate');
    if (isRefusal(guessed)) throw new Error(guessed.refused);
    expect(whole.value).toBeCloseTo(1.80552 * Math.sqrt(guessed / (guessed + 200 * 175.126835)), 5);
    expect(whole.within).toBeGreaterThan(0.02);
    const tire = it_.assumed.find(({ entry }) => entry.path === 'tire.rate')!;
    expect(tire).toMatchObject({ kind: 'guess', paths: ['front.tire.rate'] });
    expect(tire.moved).toBeCloseTo(whole.value - plain.value, 9);
    // The rest is rubber at the spring that nobody told of.
    expect(tire.share).toBeGreaterThan(0.01);
    expect(tire.share).toBeLessThan(whole.within);
  });
  it('is the same from either side', () => {
    const [bare, full] = [aboutOf({ facts: facts(rates), assume: new Set() }, path), aboutOf({ facts: facts(rates) }, path)];
    expect([sum(full.plain), sum(full.whole)]).toEqual([sum(bare.plain), sum(bare.whole)]);
  });
  it('where nothing is known without a guess: what each guess moves when it is not made', () => {
    const car = facts({ mass: 1100, 'front.spring.rate': 60_000, 'front.spring.ratio': 0.9 });
    const it_ = aboutOf({ facts: car }, 'front.rideFrequency');
    expect(isRefusal(it_.plain)).toBe(true);
    const [front, tire] = ['frontShare', 'tire.rate'].map((one) => it_.assumed.find(({ entry }) => entry.path === one));
    expect(front).toMatchObject({ kind: 'guess' });
    expect(front?.moved).toBeUndefined();
    // Without the tire it is on the springs alone, and higher.
    expect(tire?.moved).toBeLessThan(-0.05);
    const shares = it_.assumed.map(({ share }) => share);
    expect(shares).toEqual([...shares].sort((a, b) => b - a));
    expect(it_.assumed.some(({ kind }) => kind === 'convention')).toBe(true);
  });
  it('says what contradicts it, and nothing of what does not concern it', () => {
    const told = { 'front.spring.rate': 60_000, 'front.spring.ratio': fact(0.9, 0.001), 'front.wheelRate': fact(30_000, 300) };
    expect(aboutOf({ facts: facts({ ...told, mass: 1100 }) }, 'front.rideFrequency').contradicted).toMatchObject([
      { path: 'front.wheelRate', told: 30_000, disagree: true },
    ]);
    expect(aboutOf({ facts: facts({ ...told, 'rear.wheelRate': 30_000, 'rear.tire.rate': 2e5 }) }, 'rear.rideRate').contradicted).toEqual(
      [],
    );
    // With the weight it rests on both ends through the way the car stands, and what it lists it can tell.
    const weighed = aboutOf({ facts: facts({ ...told, mass: 1100, 'rear.wheelRate': 30_000 }) }, 'rear.rideFrequency').contradicted;
    expect(weighed.every(({ within }) => Number.isFinite(within))).toBe(true);
  });
  it('says what contradicts a part that can be worked out as well', () => {
    const coil = { 'front.coil.wire': 0.012, 'front.coil.diameter': 0.1, 'front.coil.turns': 6 };
    // G d^4/(8 D^3 n) of a steel wire of 12 mm: 33.9 N/mm.
    const of = (rate: number) =>
      aboutOf({ facts: facts({ ...coil, 'front.spring.rate': fact(rate, 500) }) }, 'front.spring.rate').contradicted;
    expect(of(60_000)).toMatchObject([{ path: 'front.spring.rate', told: 60_000, disagree: true }]);
    expect(of(60_000)[0]!.worked).toBeCloseTo((79.3e9 * 0.012 ** 4) / (8 * 0.1 ** 3 * 6), -3);
    expect(of(34_000)).toMatchObject([{ disagree: false }]);
    expect(aboutOf({ facts: facts({ 'front.spring.rate': 60_000 }) }, 'front.spring.rate').contradicted).toEqual([]);
  });
  it('has a wheel rate with an end to its doubt, whatever the car weighs', () => {
    const it_ = evaluate(catalog, { facts: facts({ 'front.spring.rate': 60_000, 'front.spring.ratio': fact(0.9, 0.001) }) });
    expect(it_.number('front.wheelRate')).toBeCloseTo(48_600, 6);
    expect(it_.within('front.wheelRate')).toBeLessThan(5000);
  });
  it('asks for what is lacking of something that was told in other words', () => {
    const toe = evaluate(catalog, { facts: facts({ 'front.toe.length': -0.003 }), assume: new Set() }).number('lf.toe');
    expect(toe).toMatchObject({ refused: 'Left front toe needs the diameter at which toe is read.', because: ['toe.diameter'] });
    const length = evaluate(catalog, { facts: facts({ 'lf.toe': 0.002, 'rf.toe': 0.002 }) }).number('front.toe.length');
    expect(length).toMatchObject({ because: ['toe.diameter'] });
    // Nothing told of it: the toe itself is asked for.
    expect(evaluate(catalog, { facts: facts({}) }).number('lf.toe')).toMatchObject({ because: ['lf.toe'] });
  });
  it('says where it stands against what is typical', () => {
    const stands = (rate: number) => aboutOf({ facts: facts({ 'front.wheelRate': rate }) }, 'front.wheelRate').typical;
    expect(stands(40_000)).toMatchObject([
      { for: 'street cars', range: [12_000, 30_000], stands: 'above', source: 'common practice, no source' },
      { for: 'autocross and track cars', range: [25_000, 80_000], stands: 'within', source: 'common practice, no source' },
    ]);
    expect(stands(90_000).map((one) => one.stands)).toEqual(['above', 'above']);
  });
});
