/** Facts that say the same thing twice: the first that is known is used, the others are overridden, and may disagree with it. */
import type { Evaluation, Share } from './evaluate.js';
import type { Node, NodeWay } from './node.js';
import { pathAt } from './places.js';
import { isKnown } from './settle.js';
import type { State } from './state.js';
import { sourcesUsed, Tracer } from './tracer.js';
import { widthOf } from './width.js';

export interface Overridden {
  /** The entry that could have read either, or have been worked out in either way. */
  readonly figure: string;
  /** What was read, and what was not; where a way reads several things, the figure itself. */
  readonly used: string;
  readonly unused: string;
  /** The told facts that `unused` rests on, and that nothing else of this car makes use of. */
  readonly facts: readonly string[];
  /** Both in SI, where they are numbers. */
  readonly values?: readonly [used: number, unused: number];
  /** Whether they differ by more than the doubt of their difference. */
  readonly disagree: boolean;
}
/** The evaluation, and how the same car would be without some of its facts. */
export interface Compared {
  readonly it: Evaluation;
  readonly without: (paths: readonly string[]) => Evaluation;
}

class Search {
  readonly #it: Evaluation;
  readonly #without: Compared['without'];
  readonly #state: State;
  readonly #tracer: Tracer;
  readonly #among: readonly string[] | undefined;
  readonly #seen = new Set<string>();
  readonly found: Overridden[] = [];

  constructor({ it, without }: Compared, state: State, among: readonly string[] | undefined) {
    this.#it = it;
    this.#without = without;
    this.#state = state;
    this.#tracer = new Tracer(it.catalog, state);
    this.#among = among;
  }

  node(node: Node): void {
    for (const way of node.ways) for (const sources of way.from) if (sources.length > 1) this.#needs(node, way, sources);
    for (const way of node.ways.slice(1)) this.#way(node, way);
  }
  #pathOf(index: number): string {
    const { place, entry } = this.#it.catalog.nodes[index]!;
    return pathAt(place, entry);
  }
  #concerns(leaves: ReadonlySet<number>): boolean {
    return !this.#among || [...leaves].some((leaf) => this.#among!.includes(this.#pathOf(leaf)));
  }
  /** Facts that nothing else makes use of. */
  #idle(leaves: ReadonlySet<number>): string[] {
    return [...new Set([...leaves].filter((leaf) => !this.#tracer.serves(leaf)).map((leaf) => this.#pathOf(leaf)))];
  }

  /** The sources of a need after the one that was used. */
  #needs(node: Node, way: NodeWay, sources: readonly number[]): void {
    const { nodes } = this.#it.catalog;
    for (const source of sources.slice(1)) {
      const other = nodes[source]!;
      const leaves = this.#tracer.leaves(source);
      if (!leaves || !this.#concerns(leaves)) continue;
      const first = nodes[sources.find((one) => isKnown(this.#state, one))!]!;
      const pair = `${first.path} ${other.path}`;
      // The same entry at another place says something else, and so does a condition of the question that stands in for a fact of the car.
      if (first === other || first.entry.scope === 'question' || other.entry === first.entry || this.#seen.has(pair)) continue;
      const facts = this.#idle(leaves);
      if (facts.length === 0 || !isKnown(this.#state, node.index) || this.#state.way[node.index] !== way) continue;
      this.#seen.add(pair);
      this.found.push({ figure: node.path, used: first.path, unused: other.path, facts, ...this.#verdict(first, other) });
    }
  }
  #verdict(used: Node, unused: Node): Pick<Overridden, 'values' | 'disagree'> {
    const { number, other } = this.#state;
    const [a, b] = [number[used.index]!, number[unused.index]!];
    if (Number.isNaN(a) || Number.isNaN(b)) return { disagree: JSON.stringify(other[used.index]) !== JSON.stringify(other[unused.index]) };
    return { values: [a, b], disagree: differ(a, this.#it.shares(used.path), b, this.#it.shares(unused.path)) };
  }

  /** A way after the one that was taken, from other facts. */
  #way(node: Node, way: NodeWay): void {
    if (way.carries || way.of.twin) return;
    const leaves = this.#tracer.leavesOfWay(way);
    if (!leaves || leaves.size === 0 || !this.#concerns(leaves)) return;
    const facts = this.#idle(leaves);
    if (facts.length === 0 || !isKnown(this.#state, node.index)) return;
    const taken = this.#state.way[node.index];
    if (!taken || node.ways.indexOf(taken) >= node.ways.indexOf(way)) return;
    const drop = [...this.#tracer.factsUnder(node.index)].filter((leaf) => !leaves.has(leaf)).map((leaf) => this.#pathOf(leaf));
    if (drop.length === 0) return;
    const without = this.#without(drop);
    if (without.way(node.path) !== way.of) return;
    const sources = way.from.flatMap((some) => some.find((one) => isKnown(this.#state, one)) ?? []);
    const nameOf = (read: readonly number[]): string => (read.length === 1 ? this.#pathOf(read[0]!) : node.path);
    const [a, b] = [this.#it.get(node.path), without.get(node.path)];
    const isNumbers = typeof a === 'number' && typeof b === 'number';
    this.found.push({
      figure: node.path,
      used: nameOf(sourcesUsed(this.#state, node)),
      unused: nameOf(sources),
      facts,
      ...(isNumbers ? { values: [a, b] as const } : {}),
      disagree: isNumbers ? differ(a, this.#it.shares(node.path), b, without.shares(node.path)) : JSON.stringify(a) !== JSON.stringify(b),
    });
  }
}
/** Whether two numbers differ by more than the doubt of their difference. */
function differ(a: number, from: readonly Share[], b: number, to: readonly Share[]): boolean {
  const difference = new Map<string, { amount: number; bend: number }>();
  for (const share of from) difference.set(share.error, { amount: share.amount, bend: share.bend });
  for (const share of to) {
    const before = difference.get(share.error);
    difference.set(share.error, { amount: (before?.amount ?? 0) - share.amount, bend: (before?.bend ?? 0) - share.bend });
  }
  return Math.abs(a - b) > widthOf([...difference.values()]);
}

/**
 * Facts that were not used because another source, or another way, came first: of each need the sources after the one that was used, and of each entry
 * the ways after the one that was taken, as far as they rest on told facts alone; only those that rest on some of `among`, where that is given.
 */
export function overridden(compared: Compared, state: State, among?: readonly string[]): readonly Overridden[] {
  const search = new Search(compared, state, among);
  for (const node of compared.it.catalog.nodes) if (!node.then && node.layer === 'best' && !state.fact[node.index]) search.node(node);
  return search.found;
}
