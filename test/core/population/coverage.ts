/** How often the truth lies inside what is said, figure by figure. */
import { evaluate, type Node } from '../../../core/engine.js';
import { catalog } from '../../../core/stubaxle.js';
import { seeded } from '../cars.js';
import { exactly, toldOf, trueCar } from './cars.js';
import type { Layout } from './layouts.js';

export interface Held {
  readonly figure: string;
  readonly cars: number;
  /** Parts of one. */
  readonly held: number;
  /** The half-width in the middle of the cars, and the typical error of the number: how much of the doubt is needed. */
  readonly width: number;
  readonly off: number;
}
const median = (values: readonly number[]): number => [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)] ?? Number.NaN;

/**
 * @param cars how many of the layout
 * @param wanted which nodes are looked at
 */
export function coverage(layout: Layout, cars: number, wanted: (node: Node) => boolean, seed = 1): readonly Held[] {
  const found = new Map<string, { inside: number; widths: number[]; offs: number[] }>();
  const nodes = catalog.nodes.filter(
    (node) => !node.then && node.entry.words !== undefined && node.entry.kind === 'figure' && wanted(node),
  );
  for (let n = 0; n < cars; n++) {
    const random = seeded(seed * 1_000_003 + n);
    const car = trueCar(layout, random);
    const truth = evaluate(catalog, { facts: exactly(car) });
    const said = evaluate(catalog, { facts: toldOf(car, random) });
    for (const { path, entry } of nodes) {
      const [is, told] = [truth.number(path), said.number(path)];
      if (typeof is !== 'number' || typeof told !== 'number') continue;
      const within = said.within(path);
      const of = found.get(entry.path) ?? { inside: 0, widths: [], offs: [] };
      found.set(entry.path, of);
      // Rounding is no error.
      const off = Math.abs(told - is);
      if (off <= within + 1e-9 * Math.max(1, Math.abs(is))) of.inside++;
      of.widths.push(within);
      of.offs.push(off);
    }
  }
  return [...found].map(([figure, { inside, widths, offs }]) => ({
    ...{ figure, cars: widths.length, held: inside / widths.length },
    ...{ width: median(widths), off: median(offs) },
  }));
}
