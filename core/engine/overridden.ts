/** Facts that say the same thing twice: the first that is known is used, the others are overridden, and may disagree with it. */
import type { Catalog, Node } from './compile.js';
import type { Share } from './evaluate.js';
import { isKnown, type State } from './state.js';
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
/** The told facts that a node rests on by the sources it used, or undefined when it rests on an estimate anywhere. */
function toldLeaves(catalog: Catalog, state: State, node: Node, found: Map<number, Leaves>): Leaves {
  if (found.has(node.index)) return found.get(node.index);
  found.set(node.index, workOut());
  return found.get(node.index);

  function workOut(): Leaves {
    if (!isKnown(state, node.index)) return undefined;
    if (state.fact[node.index]) return new Set([node.index]);
    if (node.input) return undefined;
    const leaves = new Set<number>();
    for (let k = 0; k < node.keys.length; k++) {
      const source = catalog.nodes[state.pick[node.firstPick + k]!];
      if (!source) continue;
      const theirs = toldLeaves(catalog, state, source, found);
      if (!theirs) return undefined;
      for (const leaf of theirs) leaves.add(leaf);
    }
    return leaves;
  }
}
/** Adds a node, and everything that it rests on by the sources it used. */
function addUsed(catalog: Catalog, state: State, node: Node, into: Set<number>): void {
  if (into.has(node.index)) return;
  into.add(node.index);
  if (state.fact[node.index]) return;
  for (let k = 0; k < node.keys.length; k++) {
    const source = catalog.nodes[state.pick[node.firstPick + k]!];
    if (source) addUsed(catalog, state, source, into);
  }
}

/** What the figures that can be asked for rest on. */
function inUse(catalog: Catalog, state: State): ReadonlySet<number> {
  const used = new Set<number>();
  for (const node of catalog.nodes)
    if (node.kind === 'figure' && node.entry.words && isKnown(state, node.index)) addUsed(catalog, state, node, used);
  return used;
}

/**
 * Facts that were not used because another source came first: of each need the sources after the one that was used, as far as they rest on told facts
 * alone. The same entry at another place says something else, and so does a condition of the question that stands in for a fact of the car.
 */
export function overridden(catalog: Catalog, state: State, sharesOf: (path: string) => readonly Share[]): Overridden[] {
  const told = new Map<number, Leaves>();
  const used = inUse(catalog, state);
  const seen = new Set<string>();
  const out: Overridden[] = [];
  for (const node of catalog.nodes) {
    if (node.then || state.fact[node.index] || !isKnown(state, node.index)) continue;
    node.from.forEach((sources, k) => {
      const first = catalog.nodes[state.pick[node.firstPick + k]!];
      if (!first || sources.length < 2 || first.entry.scope === 'question') return;
      for (const source of sources.slice(sources.indexOf(first.index) + 1)) {
        const other = catalog.nodes[source]!;
        const pair = `${first.path} ${other.path}`;
        const leaves = toldLeaves(catalog, state, other, told);
        if (!leaves || other.entry === first.entry || seen.has(pair)) continue;
        const facts = [...leaves].filter((leaf) => !used.has(leaf)).map((leaf) => catalog.nodes[leaf]!.path);
        if (facts.length === 0) continue;
        seen.add(pair);
        out.push({ figure: node.path, used: first.path, unused: other.path, facts, ...verdict(state, first, other, sharesOf) });
      }
    });
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
