import { describe, expect, it } from 'vitest';
import { attribute as inPieces } from '../../core/attribution.js';
import { whole } from '../../core/pieces.js';

const attribute = (...asked: Parameters<typeof inPieces>) => whole(inPieces(...asked));

const bits = (mask: bigint, count: number): number[] => Array.from({ length: count }, (_, k) => Number((mask >> BigInt(k)) & 1n));
const never = (): number => {
  throw new Error('no order is drawn where all are worked out');
};

describe('attribution', () => {
  it('gives each its own in a sum', () => {
    const worth = [3, -1, 0.5];
    const found = attribute(3, (mask) => bits(mask, 3).reduce((sum, b, k) => sum + b * worth[k]!, 7), 2, never);
    found?.parts.forEach((part, k) => {
      expect(part).toBeCloseTo(worth[k]!, 12);
    });
    expect(found?.errors).toEqual([0, 0, 0]);
  });
  it('is the glove game of the literature: one left glove against two right, 2/3, 1/6, 1/6 (after Shapley)', () => {
    const found = attribute(
      3,
      (mask) => {
        const [left, r1, r2] = bits(mask, 3);
        return left! * Math.max(r1!, r2!);
      },
      2,
      never,
    );
    [2 / 3, 1 / 6, 1 / 6].forEach((part, k) => {
      expect(found?.parts[k]).toBeCloseTo(part, 12);
    });
  });
  it('halves a product between its factors, whichever is named first', () => {
    const found = attribute(2, (mask) => bits(mask, 2).reduce((p, b) => p * (1 + b), 1), 2, never);
    expect(found?.parts).toEqual([1.5, 1.5]);
  });
  it('draws orders beyond a dozen groups, adds up all the same, and says how far off the parts may be', () => {
    let state = 7;
    const random = () => {
      state = (state * 48271) % 2147483647;
      return state / 2147483647;
    };
    const value = (mask: bigint) => bits(mask, 14).reduce((sum, b, k) => sum + b * (k + 1), 0) ** 1.5;
    const found = attribute(14, value, 400, random);
    expect(found?.parts.reduce((a, b) => a + b, 0)).toBeCloseTo(value((1n << 14n) - 1n), 6);
    expect(found?.errors.every((e) => e > 0)).toBe(true);
    const again = attribute(14, value, 400, random);
    found?.parts.forEach((part, k) => {
      expect(Math.abs(part - again!.parts[k]!)).toBeLessThan(5 * Math.hypot(found.errors[k]!, again!.errors[k]!));
    });
  });
  it('says so where a mixture of both cars has no such figure', () => {
    expect(attribute(2, (mask) => (mask === 1n ? undefined : 1), 2, never)).toBeUndefined();
  });
});
