/** The chart: leaves and productions, bottom-up, gaps at a price, the cheapest few edges of each span. Then the line as rows of tiles, the cheapest first. */
import { prices } from './prices.js';
import { type Ground, type Production, productions } from './productions.js';
import type { Category, Edge } from './sems.js';
import type { ReadToken } from './tokens.js';

/** How many edges of one category over one span are kept. */
const kept: Readonly<Record<Category, number>> = {
  amount: 4,
  list: 2,
  where: 3,
  name: 3,
  option: 4,
  relation: 4,
  subject: 2,
  unit: 1,
  evidence: 1,
  everything: 1,
  change: 2,
  none: 1,
  negative: 1,
  plusMinus: 1,
  joint: 1,
  value: 5,
  placed: 5,
  placeds: 5,
  namedAt: 8,
  fact: 8,
  asked: 8,
};
/** No line makes more edges than this. */
export const mostEdges = 6000;
/** How many rows of tiles are looked at. */
const mostRows = 28;
/** These are never left inside another thing: what has them in its middle is no phrase. */
const solid: ReadonlySet<string> = new Set(['amount', 'size', 'gear', 'name']);
const tileCategories: ReadonlySet<Category> = new Set<Category>([
  'fact',
  'asked',
  'relation',
  'subject',
  'unit',
  'evidence',
  'everything',
  'where',
]);

const starting = new Map<Category, Production[]>();
for (const one of productions) {
  const [first] = one.takes;
  if (first) starting.set(first, [...(starting.get(first) ?? []), one]);
}
interface Waiting {
  readonly production: Production;
  readonly parts: readonly Edge[];
  readonly gaps: readonly number[];
  readonly from: number;
}
export interface Row {
  readonly tiles: readonly Edge[];
  /** Tokens that nothing explains. */
  readonly left: readonly number[];
  readonly price: number;
}
export interface Chart {
  readonly rows: readonly Row[];
  readonly edges: number;
}
export const leftPrice = (token: ReadToken): number => prices.left[token.className];

export function parse(tokens: readonly ReadToken[], leaves: readonly Edge[], ground: Ground): Chart {
  const count = tokens.length;
  const ending: Edge[][] = Array.from({ length: count + 1 }, () => []);
  const beginning: Edge[][] = Array.from({ length: count + 1 }, () => []);
  const waiting: Waiting[][] = Array.from({ length: count + 1 }, () => []);
  const spans = new Map<string, Edge[]>();
  const dead = new Set<Edge>();
  const skip = tokens.map(leftPrice);
  let edges = 0;

  const add = (edge: Edge): void => {
    if (edges >= mostEdges) return;
    const key = `${edge.category} ${edge.from} ${edge.to}`;
    const alike = spans.get(key) ?? [];
    spans.set(key, alike);
    if (alike.length >= kept[edge.category]) {
      const dearest = alike.reduce((a, b) => (b.price > a.price ? b : a));
      if (dearest.price <= edge.price) return;
      dead.add(dearest);
      alike.splice(alike.indexOf(dearest), 1);
    }
    alike.push(edge);
    ending[edge.to]!.push(edge);
    beginning[edge.from]!.push(edge);
    edges++;
  };
  const finish = ({ production, from }: Waiting, parts: readonly Edge[], gaps: readonly number[], to: number): void => {
    const base = parts.reduce((sum, part) => sum + part.price, 0) + gaps.reduce((sum, gap) => sum + skip[gap]! + prices.gap, 0);
    for (const { sem, price } of production.make(
      ground,
      parts.map((part) => part.sem),
    ))
      add({ category: production.makes, from, to, sem, price: base + price, made: production.name, parts, gaps });
  };
  for (const leaf of leaves) add(leaf);
  for (let to = 1; to <= count; to++) {
    const here = ending[to]!;
    here.sort((a, b) => b.from - a.from);
    // What is made on the way ends here too, and is worked off in the same loop.
    for (let n = 0; n < here.length; n++) {
      const edge = here[n]!;
      if (dead.has(edge)) continue;
      for (const production of starting.get(edge.category) ?? []) {
        const start: Waiting = { production, parts: [edge], gaps: [], from: edge.from };
        if (production.takes.length === 1) finish(start, start.parts, [], to);
        else waiting[to]!.push(start);
      }
      const gaps: number[] = [];
      for (let at = edge.from; at >= 0 && gaps.length <= 3; at--) {
        if (at < edge.from) {
          if (solid.has(tokens[at]!.className)) break;
          gaps.unshift(at);
        }
        for (const one of waiting[at]!) {
          const { production, parts } = one;
          if (production.takes[parts.length] !== edge.category || gaps.length > production.apart) continue;
          const all = [...parts, edge];
          const left = gaps.length > 0 ? [...one.gaps, ...gaps] : one.gaps;
          if (all.length === production.takes.length) finish(one, all, left, to);
          else waiting[to]!.push({ production, parts: all, gaps: left, from: one.from });
        }
      }
    }
  }
  const tiles = beginning.map((some) => some.filter((edge) => tileCategories.has(edge.category) && !dead.has(edge)));
  return { rows: rowsOf(count, tiles, skip), edges };
}
interface Step {
  readonly price: number;
  readonly tile?: Edge;
  readonly left?: number;
  readonly before?: Step;
}
/** The line as rows of tiles with unexplained tokens between: the cheapest, by a beam. */
function rowsOf(count: number, tiles: readonly (readonly Edge[])[], skip: readonly number[]): readonly Row[] {
  const beams: Step[][] = Array.from({ length: count + 1 }, () => []);
  beams[0]!.push({ price: 0 });
  for (let at = 0; at < count; at++) {
    const beam = beams[at]!.sort((a, b) => a.price - b.price).slice(0, mostRows);
    for (const before of beam) {
      beams[at + 1]!.push({ price: before.price + skip[at]!, left: at, before });
      for (const tile of tiles[at]!) beams[tile.to]!.push({ price: before.price + tile.price, tile, before });
    }
  }
  return beams[count]!.sort((a, b) => a.price - b.price)
    .slice(0, mostRows)
    .map(rowOf);
}
function rowOf(last: Step): Row {
  const tiles: Edge[] = [];
  const left: number[] = [];
  for (let step: Step | undefined = last; step; step = step.before) {
    if (step.tile) tiles.unshift(step.tile);
    if (step.left !== undefined) left.unshift(step.left);
  }
  return { tiles, left, price: last.price };
}
