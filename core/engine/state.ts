/** The values of one car while they are worked out: numbers in a typed array, everything else and the reasons beside it. */

import type { Fact, Facts } from '../car.js';
import { type Curve, canBeTold, isCurve, isNumeric, isRefusal, type Refusal, type Value } from '../catalog.js';
import type { Catalog, Node, NodeWay } from './compile.js';

/** The facts of a car and of the question; `then` are the facts of the moment at which ride heights and scale readings were taken. */
export interface Situation {
  readonly facts: Facts;
  /** Left out: the car has not changed since. */
  readonly then?: Facts;
  /**
   * Which guesses may be made about what was not told: all of them (a car; left out), or only those of these entries, by path, with or without
   * their place (a plain sum: none). Conventions, constants and usual values are no guesses.
   */
  readonly assume?: 'all' | ReadonlySet<string>;
}

export interface State {
  readonly nodes: readonly Node[];
  readonly assume: 'all' | ReadonlySet<string>;
  /** Nodes that have been worked out: each is when something first asks for it, and those it reads before it. */
  readonly settled: Uint8Array;
  /** By node; NaN where the node has no number. */
  readonly number: Float64Array;
  /** By node: a word, a curve, a parsed designation, a structure; undefined where there is none. */
  readonly other: (string | object | undefined)[];
  /** By node: what its own compute or parse refused. A node that only lacks a need has none. */
  readonly refusal: (Refusal | undefined)[];
  /** By node: the way that was taken, or refused; undefined for what was told, and where no way could run. */
  readonly way: (NodeWay | undefined)[];
  readonly fact: (Fact | undefined)[];
  /** The nodes that have one. */
  readonly toldNodes: number[];
  /** Told numbers, by node. */
  readonly told: Float64Array;
  /** What was told otherwise, read: the option, the curve, what the designation stands for. */
  readonly toldOther: (string | object | undefined)[];
  /** By `then` node: whether it follows its node of now, since nothing it rests on has changed; see `followsNow`. */
  readonly same: Uint8Array;
  /** For each need of the way of each node the node that gives it, or `absent`. */
  readonly pick: Int32Array;
}
export const absent = -1;
/** Why a `then` node follows now: its facts say so, or it was found to take the same way from the same sources. */
export const changed = 0;
export const sameFacts = 1;
export const sameSources = 2;

function tell({ parse }: Catalog, state: State, node: Node, fact: Fact): void {
  const { value } = fact;
  const { entry, index } = node;
  state.fact[index] = fact;
  state.toldNodes.push(index);
  if (isNumeric(entry) && typeof value === 'number' && Number.isFinite(value)) {
    state.told[index] = value;
  } else if (entry.kind === 'curve' && isCurve(value)) {
    state.toldOther[index] = value;
  } else if (entry.kind === 'choice' && typeof value === 'string' && entry.options?.includes(value)) {
    state.toldOther[index] = value;
  } else if (entry.kind === 'designation' && typeof value === 'string') {
    const read = parse(entry, value);
    if (isRefusal(read)) state.refusal[index] = read;
    else state.toldOther[index] = read;
  } else {
    throw new Error(`${node.path} is a ${entry.kind} and cannot be ${JSON.stringify(value)}`);
  }
}
/** What is told of an entry is told to both of its nodes: as it is best known, and as it was given. */
function tellNodes(catalog: Catalog, state: State, prefix: '' | 'then.', path: string, fact: Fact): void {
  const best = catalog.byPath.get(prefix + path);
  const given = best ? catalog.nodes[catalog.givenOf[best.index]!] : catalog.byPath.get(`${prefix}given.${path}`);
  if (best) tell(catalog, state, best, fact);
  if (given) tell(catalog, state, given, fact);
}
function tellAll(catalog: Catalog, state: State, { facts, then }: Situation): void {
  for (const [path, fact] of facts) {
    const node = catalog.byPath.get(path);
    if (node?.layer !== 'best' || node.then || !canBeTold(node.entry)) throw new Error(`nothing that can be told is called ${path}`);
    // It was told of the car as it was then: how it is now follows from that.
    if (!(node.moves && then && sameFact(then.get(path), fact))) tellNodes(catalog, state, '', path, fact);
  }
  // Without facts of its own, all of then follows now.
  for (const [path, fact] of then ?? []) {
    // What has been forgotten since is not carried on.
    if (facts.has(path) || !catalog.byPath.get(path)?.moves) tellNodes(catalog, state, 'then.', path, fact);
  }
}

const sameList = (a: readonly number[], b: readonly number[]): boolean => a.length === b.length && a.every((x, n) => x === b[n]);
const sameCurve = (a: Curve, b: Curve): boolean => a === b || (a.between === b.between && sameList(a.x, b.x) && sameList(a.y, b.y));
const sameValue = (a: Value, b: Value): boolean => a === b || (isCurve(a) && isCurve(b) && sameCurve(a, b));
/** By what they say: the same fact may have been read twice from where it is kept. */
const sameFact = (a: Fact | undefined, b: Fact | undefined): boolean =>
  a === b || (a !== undefined && b !== undefined && a.within === b.within && a.source === b.source && sameValue(a.value, b.value));

function markUnchanged(catalog: Catalog, state: State, situation: Situation): void {
  const { same } = state;
  for (const index of catalog.past) {
    const node = catalog.nodes[index]!;
    if (situation.then === undefined || isSame(state, node)) same[index] = sameFacts;
  }
}
function isSame(state: State, node: Node): boolean {
  const [then, now] = [state.fact[node.index], state.fact[node.now]];
  // What was told rests on nothing else.
  if (!then) return !now && node.ways.every((way) => sourcesAreSame(state, way));
  if (sameFact(then, now)) return true;
  // A told result that has not been told again is what it was, where nothing that it is worked out from has changed.
  const carry = state.nodes[node.now]!.ways.find(({ carries }) => carries);
  return now === undefined && node.moves && carry !== undefined && state.same[carry.from[2]![0]!] === sameFacts;
}
/** A need of a `then` node reads `then` nodes only; it is unchanged when each of them is, or when now reads them too. */
function sourcesAreSame({ nodes, same }: State, way: NodeWay): boolean {
  const { from, gates = [], now } = way;
  if (!now) return false;
  const alike = (then: readonly number[], at: readonly number[]): boolean =>
    then.every((source, o) => source === at[o] || (same[source] === sameFacts && nodes[source]!.now === at[o]));
  return from.every((sources, k) => alike(sources, now.from[k]!)) && gates.every((some, k) => alike(some, now.gates![k]!));
}

/** A state with the facts filled in and nothing computed. Throws for a fact that nothing in the catalog can hold. */
export function load(catalog: Catalog, situation: Situation): State {
  const size = catalog.nodes.length;
  const state: State = {
    nodes: catalog.nodes,
    assume: situation.assume ?? 'all',
    settled: new Uint8Array(size),
    number: new Float64Array(size).fill(Number.NaN),
    other: new Array(size).fill(undefined),
    refusal: new Array(size).fill(undefined),
    way: new Array(size).fill(undefined),
    fact: new Array(size).fill(undefined),
    toldNodes: [],
    told: new Float64Array(size).fill(Number.NaN),
    toldOther: new Array(size).fill(undefined),
    same: new Uint8Array(size),
    pick: new Int32Array(catalog.picks).fill(absent),
  };
  tellAll(catalog, state, situation);
  markUnchanged(catalog, state, situation);
  return state;
}

/** A told curve, off by an error: a fraction of it, which scales it whole. */
export const scaled = (curve: Curve, by: number): Curve => ({ ...curve, y: curve.y.map((y) => y * (1 + by)) });
