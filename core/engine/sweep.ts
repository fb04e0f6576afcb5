/**
 * Works errors through a car, node by node: for each node that is asked for, and those it reads, what each error makes of it at both ends of the
 * error's half-width. What nobody asks for is not worked out, and what has been worked out for one number serves the next.
 *
 * A worked example. A wheel rate is w = s r^2: a spring of s = 50,000 N/m, told ± 1,000 (error 3), through a motion ratio of r = 0.8, guessed ± 0.04
 * (error 7). Half of a weight of 600 kg rides on it, told ± 10 (error 5): m = 300, f = sqrt(w / m) / (2 pi).
 *
 *   node   entries, each an error and what the node is at both of its ends     from
 *   s      3: 51,000 and 49,000                                                the fact itself
 *   r      7: 0.84 and 0.76                                                    its own rule
 *   w      3: 32,640 and 31,360    7: 35,280 and 28,880                        s and r, error by error: what the error at hand does not move stays
 *   m      5: 305 and 295                                                      the fact itself, halved
 *   f      3: 1.6601 and 1.6272    5: 1.6302 and 1.6576    7: 1.7259 and 1.5616      w and m side by side, ascending
 *
 * f is 1.6437. Of error 3 it has the amount (1.6601 - 1.6272) / 2 = 0.0164 and next to no bend, of 5 -0.0137, of 7 0.0822; the half-width is the root of
 * the sum of their squares, 0.0849. Had w cancelled in some number, both of its entries would be that number, and nothing would be kept for what reads it.
 * Where an end differs from the other by more than a quarter (a stop is met, a wheel lifts), both are looked at halfway as well: `#halve`.
 */
import { halfWidth, isCurve, isRefusal } from '../catalog.js';
import type { Catalog } from './compile.js';
import type { Errors } from './errors.js';
import { type Node, type NodeWay, none } from './node.js';
import { isKnown, sourceOf, thing } from './settle.js';
import { absent, type State, scaled } from './state.js';
import { amountOf, bendOf, farther, isCrooked, square } from './width.js';

/** A change this small against the number is rounding in what cancels. */
const rounding = 1e-13;
/** In any SI unit of the catalog a change this small is rounding, however small the number: a difference that should be 0. */
const least = 1e-12;
/** What one error does to one number. */
export interface Contribution {
  readonly error: number;
  /** Change of the number over the error's half-width, signed: half of the way from one end to the other. */
  readonly amount: number;
  /** How far the middle of both ends lies from the number: 0 where it is linear. */
  readonly bend: number;
}

type Given = Record<string, unknown>;
const unswept = -1;
const last = Number.MAX_SAFE_INTEGER;
const firstSize = 2048;
/** The place of what has no value among things. */
const NO_VALUE = 0;

export class Sweep {
  readonly #nodes: readonly Node[];
  readonly #state: State;
  readonly #errors: Errors;
  /** Node n's entries are those from `#start[n]` up to `#end[n]`, its errors ascending. */
  readonly #start: Int32Array;
  readonly #end: Int32Array;
  #count = 0;
  #error = new Int32Array(firstSize);
  /** What the node is at both ends, and halfway where that was asked for: its number, NaN where it has none; of a node that is no number, a place in `#things`. */
  #up = new Float64Array(firstSize);
  #down = new Float64Array(firstSize);
  #halfUp = new Float64Array(0);
  #halfDown = new Float64Array(0);
  #halved = new Uint8Array(0);
  readonly #things: (string | object | undefined)[] = [undefined];
  /** Where a node that is no number has its own thing. */
  readonly #own: Int32Array;
  /** Of the node at hand, for each need that any error moves: which it is, the source, where its entries are read, and where they end. */
  readonly #key: Int32Array;
  readonly #source: Int32Array;
  readonly #at: Int32Array;
  readonly #stop: Int32Array;
  /** Which of them the error at hand moves. */
  readonly #hit: Int32Array;

  constructor(catalog: Catalog, state: State, errors: Errors) {
    const size = catalog.nodes.length;
    this.#nodes = catalog.nodes;
    this.#state = state;
    this.#errors = errors;
    this.#start = new Int32Array(size).fill(unswept);
    this.#end = new Int32Array(size);
    this.#own = new Int32Array(size);
    const most = catalog.mostNeeds;
    this.#key = new Int32Array(most);
    this.#hit = new Int32Array(most);
    this.#source = new Int32Array(most);
    this.#at = new Int32Array(most);
    this.#stop = new Int32Array(most);
  }

  /** What every error contributes to a number, errors ascending; none for what has no number. */
  contributions(asked: number): Contribution[] {
    const found: Contribution[] = [];
    this.#each(asked, (error, amount, bend) => found.push({ error, amount, bend }));
    return found;
  }
  /** The half-width of a number; 0 for what has none. */
  width(asked: number): number {
    let sum = 0;
    this.#each(asked, (_, amount, bend) => {
      sum += square(amount, bend);
    });
    return Math.sqrt(sum);
  }
  #each(asked: number, visit: (error: number, amount: number, bend: number) => void): void {
    const known = isKnown(this.#state, asked);
    const index = sourceOf(this.#state, asked);
    const base = known ? this.#state.number[index]! : Number.NaN;
    if (Number.isNaN(base)) return;
    this.#sweep(index);
    for (let entry = this.#start[index]!; entry < this.#end[index]!; entry++) {
      let up = this.#up[entry]! - base;
      let down = this.#down[entry]! - base;
      if (isCrooked(up, down)) {
        this.#halve(index, entry);
        up = farther(up, this.#halfUp[entry]! - base);
        down = farther(down, this.#halfDown[entry]! - base);
      }
      visit(this.#error[entry]!, amountOf(up, down), bendOf(up, down));
    }
  }

  /** Works out a node's entries, once; those of what it reads come before. */
  #sweep(index: number): void {
    if (this.#start[index] !== unswept) return;
    const node = this.#nodes[index]!;
    const fact = this.#state.fact[index];
    const known = isKnown(this.#state, index);
    const way = this.#state.way[index];
    // What the car has no value for, it has none for within a doubt either.
    if (!known || fact || !way) {
      this.#room(1);
      this.#begin(index);
      const error = known && fact ? this.#errors.of(node) : none;
      if (error !== none) this.#add(index, error, this.#told(index, 1), this.#told(index, -1));
      this.#end[index] = this.#count;
      return;
    }
    const { firstPick } = node;
    const { keys } = way;
    let most = 1;
    for (let k = 0; k < keys.length; k++) {
      const picked = this.#state.pick[firstPick + k]!;
      if (picked === absent) continue;
      const source = sourceOf(this.#state, picked);
      this.#sweep(source);
      most += this.#end[source]! - this.#start[source]!;
    }
    this.#room(most);
    this.#begin(index);
    this.#merge(node, way, this.#errors.of(node));
    this.#end[index] = this.#count;
  }
  #begin(index: number): void {
    const { number, other } = this.#state;
    this.#start[index] = this.#count;
    if (Number.isNaN(number[index]!)) this.#own[index] = this.#keep(other[index]);
  }

  /** Walks the entries of all that a node reads side by side, error by error. */
  #merge(node: Node, way: NodeWay, own: number): void {
    const { index, firstPick } = node;
    const { keys } = way;
    const key = this.#key;
    const source = this.#source;
    const at = this.#at;
    const stop = this.#stop;
    const errors = this.#error;
    const given = this.#base(node, way);
    let live = 0;
    for (let k = 0; k < keys.length; k++) {
      const picked = this.#state.pick[firstPick + k]!;
      if (picked === absent) continue;
      const from = sourceOf(this.#state, picked);
      if (this.#start[from]! === this.#end[from]!) continue;
      key[live] = k;
      source[live] = from;
      at[live] = this.#start[from]!;
      stop[live++] = this.#end[from]!;
    }
    for (let waiting = own === none ? last : own; ; ) {
      let error = waiting;
      for (let n = 0; n < live; n++) {
        if (at[n] === stop[n]) continue;
        const next = errors[at[n]!]!;
        if (next < error) error = next;
      }
      if (error === last) return;
      let hits = 0;
      for (let n = 0; n < live; n++) if (at[n]! < stop[n]! && errors[at[n]!] === error) this.#hit[hits++] = n;
      const part = error === own ? 1 : 0;
      if (part === 1) waiting = last;
      const up = this.#side(node, way, given, hits, this.#up, part);
      const down = this.#side(node, way, given, hits, this.#down, -part);
      for (let h = 0; h < hits; h++) {
        const n = this.#hit[h]!;
        given[keys[key[n]!]!] = this.#value(source[n]!);
        at[n]!++;
      }
      this.#add(index, error, up, down);
    }
  }
  /** The node at one end of an error: its needs that move are given as they are there. */
  #side(node: Node, way: NodeWay, given: Given, hits: number, values: Float64Array, part: number): number {
    let moves = part !== 0;
    for (let h = 0; h < hits; h++) {
      const n = this.#hit[h]!;
      const from = this.#source[n]!;
      const value = values[this.#at[n]!]!;
      const number = this.#state.number[from]!;
      const name = way.keys[this.#key[n]!]!;
      if (Number.isNaN(number)) {
        if (value === NO_VALUE) return this.#nothing(node.index);
        if (value !== this.#own[from]) moves = true;
        given[name] = this.#things[value];
      } else {
        if (Number.isNaN(value)) return this.#nothing(node.index);
        if (value !== number) moves = true;
        given[name] = value;
      }
    }
    return moves ? this.#compute(node, way, given, part) : this.#still(node.index);
  }

  /** Halfway values of an entry, through those that the ends move. */
  #halve(index: number, entry: number): void {
    if (this.#halved.length <= entry) this.#roomToHalve();
    if (this.#halved[entry] === 1) return;
    this.#halved[entry] = 1;
    const node = this.#nodes[index]!;
    if (this.#state.fact[index]) {
      this.#halfUp[entry] = this.#told(index, 0.5);
      this.#halfDown[entry] = this.#told(index, -0.5);
      return;
    }
    const error = this.#error[entry]!;
    const way = this.#state.way[index]!;
    const entries = way.keys.map((_, k): number => {
      const picked = this.#state.pick[node.firstPick + k]!;
      if (picked === absent) return absent;
      const source = sourceOf(this.#state, picked);
      const found = this.#find(source, error);
      if (found !== absent) this.#halve(source, found);
      return found;
    });
    const own = this.#errors.of(node) === error ? 0.5 : 0;
    this.#halfUp[entry] = this.#half(node, way, entries, this.#halfUp, own);
    this.#halfDown[entry] = this.#half(node, way, entries, this.#halfDown, -own);
  }
  #half(node: Node, way: NodeWay, entries: readonly number[], values: Float64Array, part: number): number {
    const given = this.#base(node, way);
    for (let k = 0; k < entries.length; k++) {
      const entry = entries[k]!;
      if (entry === absent) continue;
      const from = sourceOf(this.#state, this.#state.pick[node.firstPick + k]!);
      const value = values[entry]!;
      const isThing = Number.isNaN(this.#state.number[from]!);
      if (isThing ? value === NO_VALUE : Number.isNaN(value)) return this.#nothing(node.index);
      given[way.keys[k]!] = isThing ? this.#things[value] : value;
    }
    return this.#compute(node, way, given, part);
  }
  /** The entry of an error at a node, or absent. */
  #find(index: number, error: number): number {
    let low = this.#start[index]!;
    let high = this.#end[index]! - 1;
    while (low <= high) {
      const middle = (low + high) >> 1;
      const at = this.#error[middle]!;
      if (at === error) return middle;
      if (at < error) low = middle + 1;
      else high = middle - 1;
    }
    return absent;
  }

  /** What a node is given when nothing is off. */
  #base(node: Node, { keys, given = {}, absent: without }: NodeWay): Given {
    for (let k = 0; k < keys.length; k++) {
      const picked = this.#state.pick[node.firstPick + k]!;
      given[keys[k]!] = picked === absent ? without[k] : this.#value(picked);
    }
    return given;
  }
  #value(index: number): unknown {
    const number = this.#state.number[index]!;
    return Number.isNaN(number) ? this.#state.other[index] : number;
  }
  /** A node with what it is given, off by a part of its own half-width: a number, or the place of a thing. */
  #compute(node: Node, way: NodeWay, given: Given, part: number): number {
    const { index } = node;
    const { within } = way;
    // A structure may keep what it is given; where it is searched for, it is found near where it is without the error.
    const result = way.given ? way.compute(given) : way.compute({ ...given }, this.#state.other[index]);
    if (typeof result === 'number') {
      if (!Number.isFinite(result) || Number.isNaN(this.#state.number[index]!)) return this.#nothing(index);
      return this.#settled(index, part !== 0 && within ? result + part * halfWidth(result, within) : result);
    }
    if (isRefusal(result) || !Number.isNaN(this.#state.number[index]!)) return this.#nothing(index);
    const made = thing(node, result);
    // The very same thing carries nothing further: what isn't there (a bar) is one object for all cars.
    return made === this.#state.other[index] ? this.#own[index]! : this.#keep(made);
  }
  #told(index: number, part: number): number {
    const { fact, told } = this.#state;
    const { value, within } = fact[index]!;
    if (typeof value === 'number') return this.#settled(index, told[index]! + part * within);
    return isCurve(value) ? this.#keep(scaled(value, part * within)) : this.#own[index]!;
  }
  /** What comes back the same carries nothing further: much of a car cancels. */
  #settled(index: number, value: number): number {
    const base = this.#state.number[index]!;
    return Math.abs(value - base) <= rounding * Math.abs(base) + least ? base : value;
  }
  #still(index: number): number {
    const number = this.#state.number[index]!;
    return Number.isNaN(number) ? this.#own[index]! : number;
  }
  #nothing(index: number): number {
    return Number.isNaN(this.#state.number[index]!) ? NO_VALUE : Number.NaN;
  }
  #keep(made: string | object | undefined): number {
    return made === undefined ? NO_VALUE : this.#things.push(made) - 1;
  }

  #add(index: number, error: number, up: number, down: number): void {
    const still = this.#still(index);
    if (up === still && down === still) return;
    this.#error[this.#count] = error;
    this.#up[this.#count] = up;
    this.#down[this.#count++] = down;
  }
  /** Makes room for so many entries more. */
  #room(more: number): void {
    if (this.#count + more <= this.#error.length) return;
    const size = Math.max(2 * this.#error.length, this.#count + more);
    this.#error = grown(this.#error, new Int32Array(size));
    this.#up = grown(this.#up, new Float64Array(size));
    this.#down = grown(this.#down, new Float64Array(size));
  }
  #roomToHalve(): void {
    const size = this.#error.length;
    this.#halfUp = grown(this.#halfUp, new Float64Array(size));
    this.#halfDown = grown(this.#halfDown, new Float64Array(size));
    this.#halved = grown(this.#halved, new Uint8Array(size));
  }
}
function grown<A extends Int32Array | Float64Array | Uint8Array>(from: A, to: A): A {
  to.set(from);
  return to;
}
