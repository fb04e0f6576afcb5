/** The errors that a car's numbers rest on, and what each contributes to every number. */
import { type Evidence, halfWidth } from '../catalog.js';
import type { Catalog, Node } from './compile.js';
import { isKnown, type State } from './state.js';
import { movedBuffer, Sweep } from './sweep.js';

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

/** The sum of the changes up and down, whichever of them there are: the contribution over the whole half-width. */
function amountOf(up: number, down: number): number {
  if (Number.isNaN(up)) return Number.isNaN(down) ? Number.POSITIVE_INFINITY : -2 * down;
  return Number.isNaN(down) ? 2 * up : up - down;
}

/**
 * Moves every error up and down by half of its half-width, about one standard uncertainty (JCGM 100, 5.1.3 note 2), and works out anew what it reaches.
 * The state comes back as it was. A number that exists on one side only is taken as linear on it; one that exists on neither gets an infinite amount:
 * the slightest doubt takes it away, and no width can be told.
 */
export function contributions(catalog: Catalog, state: State): Contributions {
  const doubts = groups(catalog, state);
  const sweep = new Sweep(catalog, state);
  const [up, down] = [movedBuffer(catalog.nodes.length), movedBuffer(catalog.nodes.length)];
  const starts = [0];
  const nodes: number[] = [];
  const amounts: number[] = [];
  const bends: number[] = [];
  const add = (index: number, above: number, below: number): void => {
    if (Number.isNaN(state.number[index]!)) return;
    nodes.push(index);
    amounts.push(amountOf(above, below));
    const bend = above + below;
    bends.push(Number.isNaN(bend) ? 0 : bend);
  };
  for (const { members } of doubts) {
    for (const member of members) state.moved[member] = 1;
    sweep.move(members, 0.5, up);
    sweep.move(members, -0.5, down);
    for (const member of members) state.moved[member] = 0;
    // Both lists ascend; mostly they are the same.
    for (let u = 0, d = 0; u < up.count || d < down.count; ) {
      const above = u < up.count ? up.nodes[u]! : Number.POSITIVE_INFINITY;
      const below = d < down.count ? down.nodes[d]! : Number.POSITIVE_INFINITY;
      add(Math.min(above, below), above <= below ? up.by[u]! : 0, below <= above ? down.by[d]! : 0);
      if (above <= below) u++;
      if (below <= above) d++;
    }
    starts.push(nodes.length);
  }
  return { doubts, starts, nodes: Int32Array.from(nodes), amounts: Float64Array.from(amounts), bends: Float64Array.from(bends) };
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
