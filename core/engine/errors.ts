/** The errors that a car's numbers rest on, and what each contributes to every number. */
import { type Evidence, halfWidth } from '../catalog.js';
import type { Catalog, Node } from './compile.js';
import { isKnown, type State } from './state.js';
import { type Moved, movedBuffer, Sweep } from './sweep.js';

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
  /** Change of the number over the error's half-width, signed: half of the way from one end to the other. */
  readonly amounts: Float64Array;
  /** How far the middle of both ends lies from the number: 0 where it is linear. */
  readonly bends: Float64Array;
}

/** Whether a node has an error of its own in this state, and which: the told fact's source, or the rule's name. */
function errorOf(state: State, node: Node): { readonly told: boolean; readonly name: string } | undefined {
  const { index, kind, within } = node;
  if (!node.input || state.same[index] || !isKnown(state, index)) return undefined;
  const fact = state.fact[index];
  if (fact) return fact.within > 0 && (kind === 'quantity' || kind === 'curve') ? { told: true, name: fact.source } : undefined;
  const number = state.number[index]!;
  return within && !Number.isNaN(number) && halfWidth(number, within) > 0 ? { told: false, name: node.rule } : undefined;
}

function groups(catalog: Catalog, state: State): Group[] {
  const facts = new Map<string, Group>();
  const rules = new Map<string, Group>();
  const all: Group[] = [];
  for (const node of catalog.nodes) {
    const error = errorOf(state, node);
    if (error === undefined) continue;
    const path = catalog.nodes[node.now]!.path;
    const same = error.told ? facts : rules;
    const group = same.get(error.name);
    if (group) {
      group.members.push(node.index);
      if (!group.paths.includes(path)) group.paths.push(path);
    } else {
      const evidence = state.fact[node.index]?.evidence ?? 'rule';
      const made: Group = { error: `${error.told ? 'fact' : 'rule'} ${error.name}`, paths: [path], evidence, members: [node.index] };
      same.set(error.name, made);
      all.push(made);
    }
  }
  return all;
}

/** A number whose changes up and down differ by more than this part of their mean is looked at more closely. */
const crooked = 0.25;

/** How far each number goes on either side of where it is, over an error's whole half-width. */
class Reach {
  readonly up: Float64Array;
  readonly down: Float64Array;
  /** The nodes that moved on any side, one bit each. */
  readonly #touched: Uint32Array;
  readonly #sweep: Sweep;
  readonly #moved: Moved;

  constructor(catalog: Catalog, state: State) {
    const size = catalog.nodes.length;
    this.up = new Float64Array(size);
    this.down = new Float64Array(size);
    this.#touched = new Uint32Array((size >> 5) + 1);
    this.#sweep = new Sweep(catalog, state);
    this.#moved = movedBuffer(size);
  }

  /** Goes to the end of the half-width on both sides. */
  full(members: readonly number[]): void {
    for (const [part, side] of [[1, this.up] as const, [-1, this.down] as const]) {
      const { count, nodes, by } = this.#go(members, part);
      for (let n = 0; n < count; n++) side[nodes[n]!] = by[n]!;
    }
  }
  /** Goes half of the way: a number may turn in between, or have no value at the end. */
  half(members: readonly number[]): void {
    for (const [part, side] of [[0.5, this.up] as const, [-0.5, this.down] as const]) {
      const { count, nodes, by } = this.#go(members, part);
      for (let n = 0; n < count; n++) {
        const index = nodes[n]!;
        const end = side[index]!;
        if (Number.isNaN(end)) side[index] = 2 * by[n]!;
        else if (Math.abs(by[n]!) > Math.abs(end)) side[index] = by[n]!;
      }
    }
  }
  #go(members: readonly number[], part: number): Moved {
    const moved = this.#moved;
    this.#sweep.move(members, part, moved);
    for (let n = 0; n < moved.count; n++) this.#touched[moved.nodes[n]! >> 5]! |= 1 << (moved.nodes[n]! & 31);
    return moved;
  }

  /** The nodes that moved, ascending. */
  each(visit: (index: number) => void): void {
    const touched = this.#touched;
    for (let word = 0; word < touched.length; word++) {
      for (let bits = touched[word]!; bits !== 0; bits &= bits - 1) visit((word << 5) + 31 - Math.clz32(bits & -bits));
    }
  }
  clear(): void {
    this.each((index) => {
      this.up[index] = 0;
      this.down[index] = 0;
    });
    this.#touched.fill(0);
  }
}

/** Half of the whole change from one end to the other; where one side has no value, what the other is alone. */
function amountOf(up: number, down: number): number {
  if (Number.isNaN(up)) return Number.isNaN(down) ? Number.POSITIVE_INFINITY : -down;
  return Number.isNaN(down) ? up : (up - down) / 2;
}
const bendOf = (up: number, down: number): number => (Number.isNaN(up + down) ? 0 : (up + down) / 2);
const isCrooked = (up: number, down: number): boolean => !(Math.abs(up + down) <= crooked * Math.abs(up - down));

/**
 * Moves every error to both ends of its half-width and works out anew what it reaches; halfway, too, where something bends.
 * The state comes back as it was. How a width is made of this is said in CONVENTIONS.md.
 */
export function contributions(catalog: Catalog, state: State): Contributions {
  const doubts = groups(catalog, state);
  const reach = new Reach(catalog, state);
  const { up, down } = reach;
  const starts = [0];
  const nodes: number[] = [];
  const amounts: number[] = [];
  const bends: number[] = [];
  for (const { members } of doubts) {
    for (const member of members) state.moved[member] = 1;
    reach.full(members);
    let bent = false;
    reach.each((index) => {
      bent ||= isCrooked(up[index]!, down[index]!) && !Number.isNaN(state.number[index]!);
    });
    if (bent) reach.half(members);
    for (const member of members) state.moved[member] = 0;
    reach.each((index) => {
      if (Number.isNaN(state.number[index]!)) return;
      nodes.push(index);
      amounts.push(amountOf(up[index]!, down[index]!));
      bends.push(bendOf(up[index]!, down[index]!));
    });
    reach.clear();
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
