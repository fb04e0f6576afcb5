/** Works an error through a car: only what changes is worked out again. */
import type { Catalog, Node } from './compile.js';
import { follow, isKnown, type State } from './state.js';

/** A change this small against the number is rounding in what cancels. */
const rounding = 1e-13;
/** In any SI unit of the catalog a change this small is rounding, however small the number: a difference that should be 0. */
const least = 1e-12;

/** What reads each node in this car, by the sources that were used: node n's readers are `readers[starts[n]]` up to `starts[n + 1]`. */
interface Readers {
  readonly starts: Int32Array;
  readonly readers: Int32Array;
}
function readersOf({ nodes }: Catalog, state: State): Readers {
  const starts = new Int32Array(nodes.length + 2);
  const sources: number[] = [];
  const readers: number[] = [];
  const add = (source: number, reader: number): void => {
    sources.push(source);
    readers.push(reader);
    starts[source + 2]!++;
  };
  for (const node of nodes) {
    const { index } = node;
    // What the car has no value for, it has none for within a doubt either.
    if (!isKnown(state, index)) continue;
    if (state.same[index] === 1) {
      add(node.now, index);
    } else {
      for (let k = 0; k < node.keys.length; k++) {
        const source = state.pick[node.firstPick + k]!;
        if (source >= 0) add(source, index);
      }
    }
  }
  for (let n = 2; n < starts.length; n++) starts[n]! += starts[n - 1]!;
  const sorted = new Int32Array(readers.length);
  // Filling moves each start to its end, which is the next one's start.
  sources.forEach((source, n) => {
    sorted[starts[source + 1]!++] = readers[n]!;
  });
  return { starts, readers: sorted };
}

/** What one move has changed: the nodes, ascending, and by how much each number went; NaN where it lost its value or never was a number. */
export interface Moved {
  count: number;
  readonly nodes: Int32Array;
  readonly by: Float64Array;
}
export const movedBuffer = (size: number): Moved => ({ count: 0, nodes: new Int32Array(size), by: new Float64Array(size) });

export class Sweep {
  readonly #nodes: readonly Node[];
  readonly #state: State;
  readonly #number: Float64Array;
  readonly #other: State['other'];
  readonly #readers: Readers;
  /** Nodes that wait to be worked out, one bit each: a node comes after all that it reads, so the lowest is always ready. */
  readonly #waiting: Uint32Array;

  constructor(catalog: Catalog, state: State) {
    this.#nodes = catalog.nodes;
    this.#state = state;
    this.#number = state.number.slice();
    this.#other = state.other.slice();
    this.#readers = readersOf(catalog, state);
    this.#waiting = new Uint32Array((catalog.nodes.length >> 5) + 1);
  }

  /** Moves the members by this part of their own half-widths and writes down what changes. The state comes back as it was. */
  move(members: readonly number[], part: number, into: Moved): void {
    const state = this.#state;
    const { number, other } = state;
    const { starts, readers } = this.#readers;
    const waiting = this.#waiting;
    const bases = this.#number;
    let count = 0;
    for (const member of members) waiting[member >> 5]! |= 1 << (member & 31);
    for (let word = 0; word < waiting.length; word++) {
      for (let bits = waiting[word]!; bits !== 0; bits = waiting[word]!) {
        const index = (word << 5) + 31 - Math.clz32(bits & -bits);
        waiting[word] = bits & (bits - 1);
        follow(state, this.#nodes[index]!, part);
        const base = bases[index]!;
        const by = number[index]! - base;
        // What comes back the same carries nothing further: much of a car cancels.
        if (Math.abs(by) <= rounding * Math.abs(base) + least) {
          number[index] = base;
          continue;
        }
        // Nor does the very same thing: what isn't there (a bar) is one object for all cars.
        if (other[index] !== undefined && other[index] === this.#other[index]) continue;
        into.nodes[count] = index;
        into.by[count++] = by;
        for (let r = starts[index]!; r < starts[index + 1]!; r++) {
          const reader = readers[r]!;
          waiting[reader >> 5]! |= 1 << (reader & 31);
        }
      }
    }
    into.count = count;
    for (let n = 0; n < count; n++) {
      const index = into.nodes[n]!;
      const base = bases[index]!;
      number[index] = base;
      if (Number.isNaN(base)) other[index] = this.#other[index];
    }
  }
}
