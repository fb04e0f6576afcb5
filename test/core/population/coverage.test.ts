/**
 * Whether the truth lies inside what is said of realistic cars that are told in part: a small, seeded part of `npm run coverage`, which asks of 4,000
 * cars of each layout for 93 to 99 in 100. Of so few cars a figure may be off by chance, so 90 in 100 is asked of each, and 94 of all together.
 */
import { describe, expect, it } from 'vitest';
import { coverage } from './coverage.js';
import { layouts } from './layouts.js';

/** Of each layout, each with draws of its own; a figure counts with all six. */
const cars = 24;
const fewest = 90;

describe('realistic cars of six layouts, told in part', () => {
  it('lie inside the half-widths, figure by figure', { timeout: 240_000 }, () => {
    const counted = new Map<string, { cars: number; inside: number }>();
    for (const [n, layout] of layouts.entries()) {
      for (const { figure, cars: some, held } of coverage(
        layout,
        cars,
        ({ entry }) => entry.main === true && !entry.path.startsWith('traction') && !entry.path.startsWith('brake'),
        11 + n,
      )) {
        const so = counted.get(figure) ?? { cars: 0, inside: 0 };
        counted.set(figure, { cars: so.cars + some, inside: so.inside + held * some });
      }
    }
    const figures = [...counted].filter(([, { cars: n }]) => n >= fewest);
    expect(layouts.length).toBe(6);
    expect(figures.length).toBeGreaterThan(25);
    expect(figures.map(([figure]) => figure)).toEqual(
      expect.arrayContaining(['roll.angle', 'roll.suspension', 'balance', 'limit.car', 'loadTransfer']),
    );
    expect(
      figures.flatMap(([figure, { cars: n, inside }]) =>
        inside < 0.9 * n ? [`${figure}: ${((100 * inside) / n).toFixed(1)} of ${n}`] : [],
      ),
    ).toEqual([]);
    const sum = (of: (one: { cars: number; inside: number }) => number): number => figures.reduce((so, [, one]) => so + of(one), 0);
    expect(sum(({ inside }) => inside) / sum(({ cars: n }) => n)).toBeGreaterThan(0.94);
  });
});
