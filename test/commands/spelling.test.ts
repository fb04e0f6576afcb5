import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { distance, nearest, slipsAllowed } from '../../commands/spelling.js';

describe('distance', () => {
  // Known pairs of the restricted Damerau-Levenshtein measure: a swap of neighbours is one slip, and CA to ABC is three, not two.
  test.each([
    ['', '', 0],
    ['spring', 'spring', 0],
    ['sprnig', 'spring', 1],
    ['kitten', 'sitting', 3],
    ['ca', 'abc', 3],
    ['freqency', 'frequency', 1],
    ['', 'abc', 3],
  ])('%s to %s is %i', (a, b, slips) => expect(distance(a, b)).toBe(slips));

  test('is symmetric, and zero only for equals', () => {
    fc.assert(
      fc.property(fc.string({ maxLength: 9 }), fc.string({ maxLength: 9 }), (a, b) => {
        expect(distance(a, b)).toBe(distance(b, a));
        expect(distance(a, b) === 0).toBe(a === b);
      }),
    );
  });
  test('gives up only above the limit', () => {
    fc.assert(
      fc.property(fc.string({ maxLength: 9 }), fc.string({ maxLength: 9 }), fc.integer({ min: 0, max: 4 }), (a, b, most) => {
        const full = distance(a, b);
        expect(distance(a, b, most)).toBe(full <= most ? full : most + 1);
      }),
    );
  });
});
describe('nearest', () => {
  const known = ['spring', 'sprung', 'rate', 'front', 'frequency', 'wheelbase', 'the'];
  test.each([
    ['sprig', ['spring']],
    ['spreng', ['spring', 'sprung']],
    ['springg', ['spring']],
    ['freqency', ['frequency']],
    ['fornt', ['front']],
    ['teh', ['the']],
    ['hat', []],
    ['zebra', []],
    ['toe', []],
  ])('%s', (word, found) => expect(nearest(word, known)).toEqual(found));

  test('nothing is mended by more slips than its length allows', () => {
    fc.assert(
      fc.property(fc.string({ minLength: 4, maxLength: 12 }), (word) => {
        for (const one of nearest(word, known)) expect(distance(word, one)).toBeLessThanOrEqual(slipsAllowed(word.length));
      }),
    );
  });
});
