/** The errors that a car's numbers rest on, and what each contributes to every number. */
import { type Evidence, halfWidth } from '../catalog.js';
import { addAll, type Catalog, type Node } from './compile.js';
import { follow, isKnown, type State } from './state.js';

/**
 * One thing that may be wrong: a piece of evidence (facts of one source are wrong together), or an estimating rule
 * (of one place, or of all places when the rule says so).
 */
export interface Doubt {
  /** `fact SOURCE` or `rule PATH`; the same error has the same key in every evaluation of a car. */
  readonly error: string;
  /** The inputs that it moves. */
  readonly paths: readonly string[];
  readonly evidence: Evidence | 'rule';
}
interface Group extends Doubt {
  readonly paths: string[];
  readonly members: number[];
}
/** What the errors do to the numbers: for each error the nodes that it moves, ascending, and by how much. */
export interface Contributions {
  readonly doubts: readonly Doubt[];
  /** Error e's entries are those from `starts[e]` up to `starts[e + 1]`. */
  readonly starts: readonly number[];
  readonly nodes: Int32Array;
  /** Change of the number over the error's half-width, signed: its linear part. */
  readonly amounts: Float64Array;
  /** How far the number bends: the sum of both half-steps, which is 0 where it is linear. */
  readonly bends: Float64Array;
}

const rounding = 1e-13;

/** Whether a node has an error of its own in this state, and which. */
function errorOf(state: State, node: Node): string | undefined {
  const { index, entry } = node;
  if (!node.input || state.same[index] || !isKnown(state, index)) return undefined;
  const fact = state.fact[index];
  if (fact) return fact.within > 0 && (entry.kind === 'quantity' || entry.kind === 'curve') ? `fact ${fact.source}` : undefined;
  const number = state.number[index]!;
  return !Number.isNaN(number) && entry.within && halfWidth(number, entry.within) > 0 ? node.rule : undefined;
}

function groups(catalog: Catalog, state: State): Group[] {
  const byError = new Map<string, Group>();
  for (const node of catalog.nodes) {
    const error = errorOf(state, node);
    if (error === undefined) continue;
    const path = catalog.nodes[node.now]!.path;
    const group = byError.get(error);
    if (!group) {
      byError.set(error, { error, paths: [path], evidence: state.fact[node.index]?.evidence ?? 'rule', members: [node.index] });
    } else {
      group.members.push(node.index);
      if (!group.paths.includes(path)) group.paths.push(path);
    }
  }
  return [...byError.values()];
}

/** The known nodes that these can reach, ascending; their count. */
function reached(catalog: Catalog, state: State, members: readonly number[], set: Uint32Array, into: Int32Array): number {
  set.fill(0);
  for (const member of members) addAll(set, catalog.below[member]!);
  let count = 0;
  for (let word = 0; word < set.length; word++) {
    let bits = set[word]!;
    while (bits !== 0) {
      const lowest = bits & -bits;
      const index = word * 32 + 31 - Math.clz32(lowest);
      // What the car has no value for, it has none for within a doubt either.
      if (isKnown(state, index)) into[count++] = index;
      bits ^= lowest;
    }
  }
  return count;
}

/**
 * Moves every error up and down by half of its half-width, about one standard uncertainty (JCGM 100, 5.1.3 note 2), and works out anew what it reaches.
 * The state comes back as it was. A number that exists on one side only is taken as linear on it; one that exists on neither gets an infinite amount:
 * the slightest doubt takes it away, and no width can be told.
 */
export function contributions(catalog: Catalog, state: State): Contributions {
  const { number, other, moved } = state;
  const size = catalog.nodes.length;
  const list = groups(catalog, state);
  const baseNumber = number.slice();
  const baseOther = other.slice();
  const up = new Float64Array(size);
  const set = new Uint32Array(catalog.below[0]?.length ?? 0);
  const affected = new Int32Array(size);
  const starts = [0];
  const nodes: number[] = [];
  const amounts: number[] = [];
  const bends: number[] = [];
  for (const { members } of list) {
    for (const member of members) moved[member] = 1;
    const count = reached(catalog, state, members, set, affected);
    for (let a = 0; a < count; a++) {
      const index = affected[a]!;
      follow(state, catalog.nodes[index]!, 0.5);
      up[index] = number[index]!;
    }
    for (let a = 0; a < count; a++) follow(state, catalog.nodes[affected[a]!]!, -0.5);
    for (let a = 0; a < count; a++) {
      const index = affected[a]!;
      const base = baseNumber[index]!;
      const down = number[index]!;
      number[index] = base;
      other[index] = baseOther[index];
      if (Number.isNaN(base)) continue;
      const above = up[index]! - base;
      const below = base - down;
      // Rounding in what cancels is no contribution.
      if (Math.abs(above) <= rounding * Math.abs(base) && Math.abs(below) <= rounding * Math.abs(base)) continue;
      const hasAbove = !Number.isNaN(above);
      const hasBelow = !Number.isNaN(below);
      nodes.push(index);
      amounts.push(hasAbove ? (hasBelow ? above + below : 2 * above) : hasBelow ? 2 * below : Number.POSITIVE_INFINITY);
      bends.push(hasAbove && hasBelow ? above - below : 0);
    }
    for (const member of members) moved[member] = 0;
    starts.push(nodes.length);
  }
  return { doubts: list, starts, nodes: Int32Array.from(nodes), amounts: Float64Array.from(amounts), bends: Float64Array.from(bends) };
}

/** Where the node stands among an error's entries, or -1. */
export function entryOf(all: Contributions, error: number, index: number): number {
  let low = all.starts[error]!;
  let high = all.starts[error + 1]! - 1;
  while (low <= high) {
    const middle = (low + high) >> 1;
    const at = all.nodes[middle]!;
    if (at === index) return middle;
    if (at < index) low = middle + 1;
    else high = middle - 1;
  }
  return -1;
}
