/** Text-book sums on their own data alone, no car: each is answered, by the plainest sound way, and says which. */
import { describe, expect, it } from 'vitest';
import { subjects } from './plain-sums/all.js';
import { notYet } from './plain-sums/notYet.js';
import { type Outcome, resultOf } from './plain-sums/plainSum.js';

const all = Object.values(subjects).flat();
const listed = new Set(Object.values(notYet).flat());

describe('plain sums', () => {
  it('has every row, each with a name of its own', () => {
    expect(Object.fromEntries(Object.entries(subjects).map(([subject, rows]) => [subject, rows.length]))).toEqual({
      springs: 29,
      ride: 45,
      damping: 10,
      bars: 26,
      roll: 28,
      loads: 38,
      tires: 28,
      gearing: 16,
      power: 16,
      traction: 18,
      braking: 29,
      corners: 29,
      pressures: 11,
      alignment: 10,
    });
    expect(new Set(all.map(({ name }) => name)).size).toBe(all.length);
  });
  // Each row that cannot be met yet stands on the list under what is in its way: one that is met has to be taken off, and none can fail unseen.
  it('the list of what cannot be met yet is true, and complete', () => {
    const found: Partial<Record<Outcome, string[]>> = {};
    for (const row of all) {
      const { outcome } = resultOf(row);
      if (outcome !== 'right') found[outcome] = [...(found[outcome] ?? []), row.name];
    }
    expect(found).toEqual(notYet);
  });
});
describe('plain sums that are met', () => {
  it.each(all.filter(({ name }) => !listed.has(name)))('$name', (row) => {
    expect(resultOf(row)).toEqual({ outcome: 'right', got: expect.any(String) });
  });
});
