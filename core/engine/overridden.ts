/** Facts that say the same thing twice: the first that is known is used, the others are overridden, and may disagree with it. */
import type { Catalog, Node } from './compile.js';
import type { Share } from './evaluate.js';
import { absent, isKnown, type State } from './state.js';
import { widthOf } from './width.js';

export interface Overridden {
  /** The entry that could have read either. */
  readonly figure: string;
  readonly used: string;
  readonly unused: string;
  /** The told facts that `unused` rests on, and that nothing else of this car makes use of. */
  readonly facts: readonly string[];
  /** Both in SI, where they are numbers. */
  readonly values?: readonly [used: number, unused: number];
  /** Whether they differ by more than the doubt of their difference. */
  readonly disagree: boolean;
}

type Leaves = ReadonlySet<number> | undefined;

/** Follows sources and readers in one car. What can be told without working out a node is: much of a catalog is dear, and rests on estimates anyway. */
class Tracer {
  readonly #catalog: Catalog;
  readonly #state: State;
  readonly #may = new Map<number, boolean>();
  readonly #leaves = new Map<number, Leaves>();
  readonly #serves = new Map<number, boolean>();
  constructor(catalog: Catalog, state: State) {
    this.#catalog = catalog;
    this.#state = state;
  }

  /** The told facts that a node rests on by the sources it used, or undefined when it has no value, or rests on an estimate anywhere. */
  leaves(index: number): Leaves {
    if (!this.#mayBeTold(index)) return undefined;
    if (!this.#leaves.has(index)) this.#leaves.set(index, this.#leavesOf(index));
    return this.#leaves.get(index);
  }
  #leavesOf(index: number): Leaves {
    if (!isKnown(this.#state, index)) return undefined;
    if (this.#state.fact[index]) return new Set([index]);
    const leaves = new Set<number>();
    for (const source of sourcesUsed(this.#state, this.#catalog.nodes[index]!)) {
      const theirs = this.leaves(source);
      if (!theirs) return undefined;
      for (const leaf of theirs) leaves.add(leaf);
    }
    return leaves;
  }
  /** Whether told facts alone could give it: every need that has to be given has a source of which that is true. */
  #mayBeTold(index: number): boolean {
    let may = this.#may.get(index);
    if (may === undefined) {
      const { input, from, spare } = this.#catalog.nodes[index]!;
      // A figure of what has not changed since the car was measured is only what others are compared with, and cancels.
      may = this.#state.fact[index] !== undefined || (!input && this.#state.same[index] === 1);
      if (!may && !input) may = from.every((sources, k) => spare[k] || sources.some((source) => this.#mayBeTold(source)));
      this.#may.set(index, may);
    }
    return may;
  }

  /** Whether a figure that can be asked for, and has a value, rests on this fact. Nearer readers are worked out first, and no more than it takes. */
  serves(leaf: number): boolean {
    let serves = this.#serves.get(leaf);
    if (serves === undefined) {
      serves = this.#reaches(leaf);
      this.#serves.set(leaf, serves);
    }
    return serves;
  }
  #reaches(leaf: number): boolean {
    const { nodes, readers } = this.#catalog;
    const reached = new Set([leaf]);
    // A node comes after all that it reads, so that ascending order meets each once, after those that lead to it.
    const waiting = new Set(readers[leaf]);
    while (waiting.size > 0) {
      const index = Math.min(...waiting);
      waiting.delete(index);
      const node = nodes[index]!;
      if (!this.#reads(node, reached)) continue;
      if (node.kind === 'figure' && node.entry.words && !node.then) return true;
      reached.add(index);
      for (const reader of readers[index]!) waiting.add(reader);
    }
    return false;
  }
  #reads(node: Node, reached: ReadonlySet<number>): boolean {
    if (this.#state.fact[node.index] || !isKnown(this.#state, node.index)) return false;
    return sourcesUsed(this.#state, node).some((source) => reached.has(source));
  }
}
/** The nodes that gave a node its needs, once it has been worked out. */
function sourcesUsed(state: State, node: Node): readonly number[] {
  return node.keys.flatMap((_, k) => {
    const source = state.pick[node.firstPick + k]!;
    return source === absent ? [] : [source];
  });
}

/**
 * Facts that were not used because another source came first: of each need the sources after the one that was used, as far as they rest on told facts
 * alone; only those that rest on some of `among`, where that is given. The same entry at another place says something else, and so does a condition of the question that stands in for a fact of the car.
 */
export function overridden(
  catalog: Catalog,
  state: State,
  sharesOf: (path: string) => readonly Share[],
  among?: readonly string[],
): Overridden[] {
  const tracer = new Tracer(catalog, state);
  const seen = new Set<string>();
  const out: Overridden[] = [];
  for (const node of catalog.nodes) {
    if (node.then || state.fact[node.index]) continue;
    for (const sources of node.from) {
      if (sources.length < 2) continue;
      for (const source of sources.slice(1)) {
        const other = catalog.nodes[source]!;
        const leaves = tracer.leaves(source);
        if (!leaves || (among && ![...leaves].some((leaf) => among.includes(catalog.nodes[leaf]!.path)))) continue;
        const first = catalog.nodes[sources.find((one) => isKnown(state, one))!]!;
        const pair = `${first.path} ${other.path}`;
        if (first === other || first.entry.scope === 'question' || other.entry === first.entry || seen.has(pair)) continue;
        const facts = [...leaves].filter((leaf) => !tracer.serves(leaf)).map((leaf) => catalog.nodes[leaf]!.path);
        if (facts.length === 0 || !isKnown(state, node.index)) continue;
        seen.add(pair);
        out.push({ figure: node.path, used: first.path, unused: other.path, facts, ...verdict(state, first, other, sharesOf) });
      }
    }
  }
  return out;
}

function verdict(
  state: State,
  used: Node,
  unused: Node,
  sharesOf: (path: string) => readonly Share[],
): Pick<Overridden, 'values' | 'disagree'> {
  const a = state.number[used.index]!;
  const b = state.number[unused.index]!;
  if (Number.isNaN(a) || Number.isNaN(b))
    return { disagree: JSON.stringify(state.other[used.index]) !== JSON.stringify(state.other[unused.index]) };
  const difference = new Map<string, { amount: number; bend: number }>();
  for (const share of sharesOf(used.path)) difference.set(share.error, { amount: share.amount, bend: share.bend });
  for (const share of sharesOf(unused.path)) {
    const before = difference.get(share.error);
    difference.set(share.error, { amount: (before?.amount ?? 0) - share.amount, bend: (before?.bend ?? 0) - share.bend });
  }
  return { values: [a, b], disagree: Math.abs(a - b) > widthOf([...difference.values()]) };
}
