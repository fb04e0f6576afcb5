/** The values of one car while they are worked out: numbers in a typed array, everything else and the reasons beside it. */

import type { Fact, Facts } from '../car.js';
import { type Curve, isRefusal, type Refusal, refuse, type Value } from '../catalog.js';
import type { Catalog, Node } from './compile.js';
import { parse } from './parse.js';

/** The facts of a car and of the question; `then` are the facts of the moment at which ride heights and scale readings were taken. */
export interface Situation {
  readonly facts: Facts;
  /** Left out: the car has not changed since. */
  readonly then?: Facts;
}

export interface State {
  readonly nodes: readonly Node[];
  /** Nodes that have been worked out: each is when something first asks for it, and those it reads before it. */
  readonly settled: Uint8Array;
  /** By node; NaN where the node has no number. */
  readonly number: Float64Array;
  /** By node: a word, a curve, a parsed designation, a structure; undefined where there is none. */
  readonly other: (string | object | undefined)[];
  /** By node: what its own compute or parse refused. A node that only lacks a need has none. */
  readonly refusal: (Refusal | undefined)[];
  readonly fact: (Fact | undefined)[];
  /** The nodes that have one. */
  readonly toldNodes: number[];
  /** Told numbers, by node. */
  readonly told: Float64Array;
  /** What was told otherwise, read: the option, the curve, what the designation stands for. */
  readonly toldOther: (string | object | undefined)[];
  /** `then` nodes whose facts have not changed since: they follow their node of now. */
  readonly same: Uint8Array;
  /** For each need of each node the node that gives it, or -1. */
  readonly pick: Int32Array;
}
export const absent = -1;

export const isCurve = (value: Value): value is Curve => typeof value === 'object';

function tell(state: State, node: Node, fact: Fact): void {
  const { value } = fact;
  const { entry, index } = node;
  state.fact[index] = fact;
  state.toldNodes.push(index);
  if (entry.kind === 'quantity' && typeof value === 'number' && Number.isFinite(value)) {
    state.told[index] = value;
  } else if (entry.kind === 'curve' && isCurve(value)) {
    state.toldOther[index] = value;
  } else if (entry.kind === 'choice' && typeof value === 'string' && entry.options?.includes(value)) {
    state.toldOther[index] = value;
  } else if (entry.kind === 'designation' && typeof value === 'string') {
    const read = parse(node, value);
    if (isRefusal(read)) state.refusal[index] = read;
    else state.toldOther[index] = read;
  } else {
    throw new Error(`${node.path} is a ${entry.kind} and cannot be ${JSON.stringify(value)}`);
  }
}

function tellAll(catalog: Catalog, state: State, facts: Facts, prefix: '' | 'then.'): void {
  for (const [path, fact] of facts) {
    const node = catalog.byPath.get(prefix + path);
    if (node?.input) tell(state, node, fact);
    else if (!catalog.byPath.get(path)?.input) throw new Error(`no input is called ${path}`);
  }
}

const sameFact = (a: Fact | undefined, b: Fact | undefined): boolean =>
  a === b || (a !== undefined && b !== undefined && a.value === b.value && a.within === b.within && a.source === b.source);

function markUnchanged(catalog: Catalog, state: State, situation: Situation): void {
  const { same } = state;
  if (situation.then === undefined) {
    for (const index of catalog.past) same[index] = 1;
    return;
  }
  for (const index of catalog.past) {
    const node = catalog.nodes[index]!;
    const unchanged =
      sameFact(state.fact[index], state.fact[node.now]) &&
      node.from.every((sources, k) => sourcesAreSame(catalog, state, node, sources, k));
    same[index] = unchanged ? 1 : 0;
  }
}
/** A need of a `then` node reads `then` nodes only; it is unchanged when each of them is, or when now reads them too. */
function sourcesAreSame(catalog: Catalog, state: State, node: Node, sources: readonly number[], need: number): boolean {
  const now = catalog.nodes[node.now]!.from[need]!;
  return sources.every((source, o) => source === now[o] || (state.same[source] === 1 && catalog.nodes[source]!.now === now[o]));
}

/** A state with the facts filled in and nothing computed. Throws for a fact that no input can hold. */
export function load(catalog: Catalog, situation: Situation): State {
  const size = catalog.nodes.length;
  const state: State = {
    nodes: catalog.nodes,
    settled: new Uint8Array(size),
    number: new Float64Array(size).fill(Number.NaN),
    other: new Array(size).fill(undefined),
    refusal: new Array(size).fill(undefined),
    fact: new Array(size).fill(undefined),
    toldNodes: [],
    told: new Float64Array(size).fill(Number.NaN),
    toldOther: new Array(size).fill(undefined),
    same: new Uint8Array(size),
    pick: new Int32Array(catalog.picks).fill(absent),
  };
  tellAll(catalog, state, situation.facts, '');
  // Without facts of its own, all of then follows now.
  if (situation.then) tellAll(catalog, state, situation.then, 'then.');
  markUnchanged(catalog, state, situation);
  return state;
}

/** Whether a node has a value; works it out, when nobody has asked for it yet. */
export function isKnown(state: State, index: number): boolean {
  if (state.settled[index] === 0) settle(state, state.nodes[index]!);
  return !Number.isNaN(state.number[index]!) || state.other[index] !== undefined;
}
/** The node that a value is of: a `then` node that has not changed since is the one of now. */
export const sourceOf = (state: State, index: number): number => (state.same[index] === 1 ? state.nodes[index]!.now : index);

/** Chooses, for each need, the first source that has a value; false when one that is needed has none. */
function choose(state: State, node: Node): boolean {
  const { from, spare, firstPick } = node;
  for (let k = 0; k < from.length; k++) {
    const sources = from[k]!;
    let picked = absent;
    for (let o = 0; o < sources.length; o++) {
      if (isKnown(state, sources[o]!)) {
        picked = sources[o]!;
        break;
      }
    }
    state.pick[firstPick + k] = picked;
    if (picked === absent && !spare[k]) return false;
  }
  return true;
}

const place = (node: Node): string => {
  if (node.entry.path === 'axle') return node.place;
  return node.place.startsWith('l') ? 'left' : 'right';
};

/** Works a node out from the sources that are picked for it. Returns a refusal of its own. */
function work(state: State, node: Node): Refusal | undefined {
  const { index, keys, firstPick } = node;
  const { number, other, pick } = state;
  number[index] = Number.NaN;
  other[index] = undefined;
  if (!node.compute) {
    if (node.kind === 'place') other[index] = place(node);
    return undefined;
  }
  const given = node.given ?? {};
  for (let k = 0; k < keys.length; k++) {
    const source = pick[firstPick + k]!;
    if (source === absent) given[keys[k]!] = undefined;
    else {
      const value = number[source]!;
      given[keys[k]!] = Number.isNaN(value) ? other[source] : value;
    }
  }
  const result = node.compute(given);
  if (typeof result === 'number') {
    if (!Number.isFinite(result)) return refuse(`The ${node.entry.name} has no finite value for this car.`, ...keys);
    number[index] = result;
  } else {
    if (isRefusal(result)) return result;
    other[index] = thing(node, result);
  }
  return undefined;
}
/** What a compute may give that is no number: a word or a structure. */
export function thing(node: Node, result: unknown): string | object {
  if (typeof result === 'string' || (typeof result === 'object' && result !== null)) return result;
  throw new Error(`${node.path} computed ${String(result)}`);
}

/** A told curve, off by an error: a fraction of it, which scales it whole. */
export const scaled = (curve: Curve, by: number): Curve => ({ ...curve, y: curve.y.map((y) => y * (1 + by)) });

/** Gives a node its value as the facts stand, choosing its sources anew; what it reads is worked out before it, as far as it is not. */
export function settle(state: State, node: Node): void {
  const { index, now } = node;
  if (state.same[index]) {
    isKnown(state, now);
    state.number[index] = state.number[now]!;
    state.other[index] = state.other[now];
    state.refusal[index] = state.refusal[now];
  } else if (state.fact[index]) {
    state.number[index] = state.told[index]!;
    state.other[index] = state.toldOther[index];
  } else if (choose(state, node)) {
    state.refusal[index] = work(state, node);
  } else {
    state.number[index] = Number.NaN;
    state.other[index] = undefined;
    state.refusal[index] = undefined;
  }
  state.settled[index] = 1;
}
