/** Follows sources and readers in one car: which told facts a number rests on, and what makes use of a fact. */
import type { Catalog } from './compile.js';
import type { Node, NodeWay } from './node.js';
import { isKnown } from './settle.js';
import { absent, changed, type State } from './state.js';

/** The told facts that something rests on, by node; undefined when it has no value, or rests on an estimate anywhere. */
export type Leaves = ReadonlySet<number> | undefined;

/** What can be told without working out a node is: much of a catalog is dear, and rests on estimates anyway. */
export class Tracer {
  readonly #catalog: Catalog;
  readonly #state: State;
  readonly #may = new Map<number, boolean>();
  readonly #leaves = new Map<number, Leaves>();
  readonly #serves = new Map<number, boolean>();
  constructor(catalog: Catalog, state: State) {
    this.#catalog = catalog;
    this.#state = state;
  }

  leaves(index: number): Leaves {
    if (!this.#mayBeTold(index)) return undefined;
    if (!this.#leaves.has(index)) this.#leaves.set(index, this.#leavesOf(index));
    return this.#leaves.get(index);
  }
  #leavesOf(index: number): Leaves {
    if (!isKnown(this.#state, index)) return undefined;
    if (this.#state.fact[index]) return new Set([index]);
    if (this.#state.way[index]?.of.sort === 'estimate') return undefined;
    return this.#union(sourcesUsed(this.#state, this.#catalog.nodes[index]!));
  }
  #union(sources: readonly number[]): Leaves {
    const leaves = new Set<number>();
    for (const source of sources) {
      const theirs = this.leaves(source);
      if (!theirs) return undefined;
      for (const leaf of theirs) leaves.add(leaf);
    }
    return leaves;
  }
  /** The same of a way that was not taken, if it could have been. */
  leavesOfWay(way: NodeWay): Leaves {
    if (!this.#mayRun(way)) return undefined;
    const sources: number[] = [];
    for (const [k, some] of way.from.entries()) {
      const source = some.find((one) => isKnown(this.#state, one));
      if (source !== undefined) sources.push(source);
      else if (!way.spare[k]) return undefined;
    }
    return this.#union(sources);
  }
  /** Whether told facts alone could give it: some way has for every need that has to be given a source of which that is true. */
  #mayBeTold(index: number): boolean {
    let may = this.#may.get(index);
    if (may === undefined) {
      const { input, ways } = this.#catalog.nodes[index]!;
      const { fact, same } = this.#state;
      // A figure of what has not changed since the car was measured is only what others are compared with, and cancels.
      may = fact[index] !== undefined || (!input && same[index] !== changed) || ways.some((way) => this.#mayRun(way));
      this.#may.set(index, may);
    }
    return may;
  }
  #mayRun({ of, from, spare }: NodeWay): boolean {
    return of.sort !== 'estimate' && from.every((sources, k) => spare[k] || sources.some((source) => this.#mayBeTold(source)));
  }

  /** The told facts that it rests on, whatever else it rests on. */
  factsUnder(index: number, found = new Set<number>(), seen = new Set<number>()): ReadonlySet<number> {
    if (seen.has(index) || !isKnown(this.#state, index)) return found;
    seen.add(index);
    if (this.#state.fact[index]) found.add(index);
    else for (const source of sourcesUsed(this.#state, this.#catalog.nodes[index]!)) this.factsUnder(source, found, seen);
    return found;
  }

  /** Whether a result that can be asked for, and has a value, rests on this fact. Nearer readers are worked out first, and no more than it takes. */
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
      if (node.kind === 'figure' && node.layer === 'best' && node.entry.words && !node.then) return true;
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
export function sourcesUsed(state: State, node: Node): readonly number[] {
  return (state.way[node.index]?.keys ?? []).flatMap((_, k) => {
    const source = state.pick[node.firstPick + k]!;
    return source === absent ? [] : [source];
  });
}
