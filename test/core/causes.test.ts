import { describe, expect, it } from 'vitest';
import type { Refusal } from '../../core/catalog.js';
import { isRefusal } from '../../core/catalog.js';
import { type Causes, causesOf } from '../../core/causes.js';
import { catalog, fact, facts } from './small.js';

const known = (found: Causes | Refusal): Causes => {
  if (isRefusal(found)) throw new Error(found.refused);
  return found;
};
const before = facts({
  mass: fact(1000, 20, 'scales'),
  'front.spring.rate': fact(50_000, 1000, 'front rater'),
  'rear.spring.rate': fact(40_000, 800, 'rear rater'),
});

describe('causes of a difference', () => {
  it('one input is the whole of it', () => {
    const after = new Map(before).set('rear.spring.rate', fact(44_000, 880, 'new'));
    const { from, to, causes } = known(causesOf(catalog, { facts: before }, { facts: after }, 'rear.wheelRate'));
    expect(causes).toEqual([{ paths: ['rear.spring.rate'], part: to - from, error: 0 }]);
  });
  it('leaves out what the figure does not depend on', () => {
    const after = new Map(before).set('front.spring.rate', fact(60_000, 1000, 'new'));
    expect(known(causesOf(catalog, { facts: before }, { facts: after }, 'rear.wheelRate')).causes).toEqual([]);
  });
  it('two that act together share what only both do: of a product k r^2, the mean over both orders', () => {
    const [a, b] = [
      new Map(before).set('rear.spring.ratio', fact(0.8, 0, 'a')),
      new Map(before).set('rear.spring.ratio', fact(1, 0, 'b')).set('rear.spring.rate', fact(60_000, 0, 'b')),
    ];
    const { from, to, causes } = known(causesOf(catalog, { facts: a }, { facts: b }, 'rear.wheelRate'));
    // By hand: the rate first gives 20000*0.64 = 12800, last 20000 * 1 = 20000, mean 16400; the ratio 40000*0.36 = 14400, 60000*0.36 = 21600, mean 18000.
    expect(causes.map(({ paths: [path], part }) => [path, Math.round(part)])).toEqual([
      ['rear.spring.ratio', 18000],
      ['rear.spring.rate', 16400],
    ]);
    expect(causes.reduce((sum, { part }) => sum + part, 0)).toBeCloseTo(to - from, 6);
  });
  it('a fact that one of them was never told counts as what is assumed of it', () => {
    const told = new Map(before).set('rear.spring.ratio', fact(1, 0, 'told'));
    const { from, to, causes } = known(causesOf(catalog, { facts: before }, { facts: told }, 'rear.wheelRate'));
    expect(causes).toEqual([{ paths: ['rear.spring.ratio'], part: to - from, error: 0 }]);
    expect(to).not.toBe(from);
  });
  it('refuses with the reason of the one that has no such figure', () => {
    expect(causesOf(catalog, { facts: before }, { facts: new Map() }, 'rear.wheelRate')).toHaveProperty('refused');
  });
});
