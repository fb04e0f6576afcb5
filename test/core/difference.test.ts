import { describe, expect, it } from 'vitest';
import { isRefusal } from '../../core/catalog.js';
import { type Difference, difference, type NoDifference } from '../../core/difference.js';
import { measureNext } from '../../core/doubt.js';
import { evaluate } from '../../core/engine.js';
import { catalog, fact, facts } from './small.js';

const change = (value: Difference | NoDifference): Difference => {
  if (isRefusal(value)) throw new Error(value.refused);
  return value;
};
const before = facts({
  mass: fact(1000, 20, 'scales'),
  'front.spring.rate': fact(50_000, 1000, 'front rater'),
  'rear.spring.rate': fact(40_000, 800, 'rear rater'),
});
const after = new Map(before).set('rear.spring.rate', fact(44_000, 880, 'rear rater, new'));

describe('a change of one car', () => {
  const a = evaluate(catalog, { facts: before });
  const b = evaluate(catalog, { facts: after });
  it('is the difference of two full values', () => {
    const { from, to, change: by } = change(difference(a, b, 'rear.frequency', { sameCar: true }));
    expect([from, to]).toEqual([a.number('rear.frequency'), b.number('rear.frequency')]);
    expect(by).toBe(to - from);
  });
  it('is surer than either value: what both share cancels', () => {
    const { within, shares } = change(difference(a, b, 'rear.frequency', { sameCar: true }));
    expect(within).toBeLessThan(a.within('rear.frequency') / 3);
    // Half a square root of two doubts of 2 %, each acting on one side only.
    expect(shares.map(({ error, side }) => [error, side])).toContainEqual(['fact rear rater', 'from']);
    expect(shares.map(({ error, side }) => [error, side])).toContainEqual(['fact rear rater, new', 'to']);
    const ratio = shares.find(({ error }) => error === 'rule rear.spring.ratio')!;
    expect(ratio.side).toBe('both');
    expect(Math.abs(ratio.amount)).toBeLessThan(0.2 * Math.abs(a.shares('rear.frequency')[0]!.amount));
  });
  it('is nothing, and without doubt, where nothing changed', () => {
    expect(change(difference(a, b, 'front.frequency', { sameCar: true }))).toMatchObject({ change: 0, within: 0, shares: [] });
  });
  it('adds what does not cancel as squares, signed', () => {
    const { within, shares } = change(difference(a, b, 'rear.wheelRate', { sameCar: true }));
    const [old, now, ratio] = ['fact rear rater', 'fact rear rater, new', 'rule rear.spring.ratio'].map(
      (error) => shares.find((share) => share.error === error)!.amount,
    );
    expect(old).toBeCloseTo(-800 * 0.64, 6);
    expect(now).toBeCloseTo(880 * 0.64, 6);
    expect(ratio).toBeCloseTo(4000 * 0.64 * 0.2, 6);
    // The ratio's square bends a little: 3 in 100 of its share.
    expect(within / Math.hypot(old!, now!, ratio!)).toBeCloseTo(1, 2);
  });
  it('compares one end with the other, too', () => {
    const { change: by, shares } = change(difference(a, a, 'front.frequency', { sameCar: true, toPath: 'rear.frequency' }));
    expect(by).toBeLessThan(0);
    // Front and rear take the same tires, so the tire rule is one error.
    expect(shares.find(({ error }) => error === 'rule tire.rate')).toMatchObject({ side: 'both' });
  });
});

describe('two cars', () => {
  const a = evaluate(catalog, { facts: before });
  it('do not share their estimates', () => {
    const { within, change: by } = change(
      difference(
        a,
        evaluate(catalog, {
          facts: facts({
            ...Object.fromEntries(before),
            mass: fact(1000, 20, 'other scales'),
            'front.spring.rate': fact(50_000, 1000, 'other rater'),
          }),
        }),
        'front.frequency',
        { sameCar: false },
      ),
    );
    expect(by).toBe(0);
    expect(within).toBeCloseTo(Math.SQRT2 * a.within('front.frequency'), 9);
  });
  it('share the facts that were copied from one to the other', () => {
    const { shares } = change(difference(a, evaluate(catalog, { facts: before }), 'front.frequency', { sameCar: false }));
    expect(shares.every(({ evidence, side }) => evidence === 'rule' && side !== 'both')).toBe(true);
  });
});

describe('a side without a value', () => {
  const whole = evaluate(catalog, { facts: before });
  const bare = evaluate(catalog, { facts: facts({ mass: 1000 }) });
  const both = { sameCar: false } as const;
  it('is named, with what it needs', () => {
    expect(difference(whole, bare, 'front.frequency', both)).toMatchObject({ missing: 'to', because: ['front.spring.rate'] });
    expect(difference(bare, whole, 'front.frequency', both)).toMatchObject({ missing: 'from', because: ['front.spring.rate'] });
    expect(difference(bare, bare, 'front.frequency', both)).toMatchObject({ missing: 'both' });
  });
});

describe('what to measure next', () => {
  const it_ = evaluate(catalog, { facts: before });
  it('says what the plus-or-minus becomes, best first', () => {
    const next = measureNext(it_, 'front.frequency');
    expect(next.map(({ paths }) => paths[0])).toEqual(['front.spring.ratio', 'frontShare', 'front.tire.rate', 'mass', 'front.spring.rate']);
    expect(next[2]!.paths).toEqual(['front.tire.rate', 'rear.tire.rate']);
    // By hand: the same car with the ratio told as exactly as it is usually measured, 1 % of 0.8.
    const measured = evaluate(catalog, { facts: new Map(before).set('front.spring.ratio', fact(0.8, 0.008)) });
    expect(next[0]!.after).toBeCloseTo(measured.within('front.frequency'), 9);
    expect(next[0]!.now).toBe(it_.within('front.frequency'));
  });
  it('measures then what has not changed since', () => {
    const then = new Map(before).set('rear.height', fact(0.3, 0.002, 'h'));
    const now = new Map(then).set('rear.spring.rate', fact(80_000, 0, 'new'));
    const next = measureNext(evaluate(catalog, { facts: now, then }), 'rear.rideHeight');
    const both = evaluate(catalog, {
      facts: new Map(now).set('rear.spring.ratio', fact(0.8, 0.008, 'r')),
      then: new Map(then).set('rear.spring.ratio', fact(0.8, 0.008, 'r')),
    });
    expect(next.find(({ paths }) => paths[0] === 'rear.spring.ratio')?.after).toBeCloseTo(both.within('rear.rideHeight'), 12);
  });
  it('has nothing to say where everything is measured as well as it can be', () => {
    const sure = evaluate(catalog, { facts: facts({ 'front.spring.rate': fact(50_000, 500), 'front.spring.ratio': fact(0.8, 0.008) }) });
    expect(measureNext(sure, 'front.wheelRate')).toEqual([]);
  });
});
