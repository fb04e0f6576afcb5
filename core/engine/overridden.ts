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
  /** The told facts that `unused` rests on and `used` does not. */
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
/** Everything that a node rests on by the sources it used. */
function allLeaves(catalog: Catalog, state: State, node: Node, into = new Set<number>()): Set<number> {
  if (into.has(node.index)) return into;
  into.add(node.index);
  if (state.fact[node.index]) return into;
  for (let k = 0; k < node.keys.length; k++) {
    const source = catalog.nodes[state.pick[node.firstPick + k]!];
    if (source) allLeaves(catalog, state, source, into);
  }
  return into;
}

export function overridden(catalog: Catalog, state: State, sharesOf: (path: string) => readonly Share[]): Overridden[] {
  const told = new Map<number, Leaves>();
  const seen = new Set<string>();
  const out: Overridden[] = [];
  for (const node of catalog.nodes) {
    if (node.then || state.fact[node.index] || !isKnown(state, node.index)) continue;
    node.from.forEach((sources, k) => {
      const used = catalog.nodes[state.pick[node.firstPick + k]!];
      if (!used || sources.length < 2) return;
      for (const source of sources.slice(sources.indexOf(used.index) + 1)) {
        const unused = catalog.nodes[source]!;
        const pair = `${used.path} ${unused.path}`;
        const leaves = toldLeaves(catalog, state, unused, told);
        if (!leaves || seen.has(pair)) continue;
        const kept = allLeaves(catalog, state, used);
        const facts = [...leaves].filter((leaf) => !kept.has(leaf)).map((leaf) => catalog.nodes[leaf]!.path);
        if (facts.length === 0) continue;
        seen.add(pair);
        out.push({ figure: node.path, used: used.path, unused: unused.path, facts, ...verdict(state, used, unused, sharesOf) });
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
