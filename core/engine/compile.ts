/** Compiles the entries once into nodes: every entry at every place, each after what it needs. */
import { type Entry, isInput, type Need, type Scope, type Within } from '../catalog.js';
import { afterTurns, type Place, pathAt, placeAround, placeNamed, placesOf } from './places.js';

/** An entry at a place. */
export interface Node {
  readonly index: number;
  /** `front.spring.rate`; `then.front.spring.rate` of the car as it was when it was last measured. */
  readonly path: string;
  /** `front`, `lf`, `2`, or '' for the car and the question. */
  readonly place: string;
  readonly entry: Entry;
  readonly then: boolean;
  /** The same entry and place of the car as it is now (a node that is now: itself). */
  readonly now: number;
  readonly input: boolean;
  /** Of the entry, kept here because all nodes have one shape and entries have many: reading an entry in the sweep costs a fifth of it. */
  readonly kind: Entry['kind'];
  readonly compute: Entry['compute'];
  readonly within: Within | undefined;
  /** Names of the needs, and for each the nodes that may give it, most direct first, and whether it may be missing. */
  readonly keys: readonly string[];
  readonly from: readonly (readonly number[])[];
  readonly spare: readonly boolean[];
  /** Where this node's choices of source begin in a state's `pick`. */
  readonly firstPick: number;
  /** The error of the estimating rule: the same for all places when the rule says so, and for now and then. */
  readonly rule: string;
  /** The first node of that rule. */
  readonly firstOfRule: number;
  /** One argument object for all computes of the node: only its values change, and numbers stay in it unboxed. Structures may keep theirs, so they get new ones. */
  readonly given: Record<string, unknown> | undefined;
}
export interface Catalog {
  readonly entries: readonly Entry[];
  /** In topological order: a node comes after all that it needs. */
  readonly nodes: readonly Node[];
  readonly byPath: ReadonlyMap<string, Node>;
  /** For each node the set of nodes that depend on it, itself included, one bit a node. */
  readonly below: readonly Uint32Array[];
  /** For each node those that may read it. */
  readonly readers: readonly (readonly number[])[];
  /** The nodes of each estimating rule, by its name. */
  readonly rules: ReadonlyMap<string, readonly number[]>;
  /** The `then` nodes. */
  readonly past: readonly number[];
  /** How many needs all nodes have together. */
  readonly picks: number;
  /** How many the node has that needs most. */
  readonly mostNeeds: number;
  /** The node of that path; throws when there is none. */
  node(path: string): Node;
  /** Whether a change of the input can reach the figure by any way. */
  dependsOn(figurePath: string, inputPath: string): boolean;
  /** Everything that a change of this can reach, itself first. */
  descendants(path: string): readonly Node[];
}

export const hasBit = (set: Uint32Array, index: number): boolean => (set[index >> 5]! & (1 << (index & 31))) !== 0;
const addBit = (set: Uint32Array, index: number): void => {
  set[index >> 5]! |= 1 << (index & 31);
};
export const addAll = (into: Uint32Array, from: Uint32Array): void => {
  for (let word = 0; word < into.length; word++) into[word]! |= from[word]!;
};

const numeric = (entry: Entry): boolean => entry.kind === 'quantity' || entry.kind === 'figure';

class Compiler {
  readonly nodes: Node[] = [];
  readonly byPath = new Map<string, Node>();
  readonly rules = new Map<string, readonly number[]>();
  picks = 0;
  readonly #open = new Set<string>();

  visit(entry: Entry, place: string, then: boolean): number {
    const path = (then ? 'then.' : '') + pathAt(place, entry);
    const done = this.byPath.get(path);
    if (done) {
      if (done.entry !== entry) throw new Error(`two entries are called ${path}`);
      return done.index;
    }
    if (this.#open.has(path)) throw new Error(`${path} needs itself: ${[...this.#open].join(', ')}`);
    this.#open.add(path);
    // What has not changed since is copied from now, so now comes first.
    const now = then ? this.visit(entry, place, false) : undefined;
    const here: Place = { ...placeNamed(entry.scope, place), ...(then ? { past: true } : {}) };
    const needs: [string, Need<Scope, unknown>][] = Object.entries(entry.needs ?? {});
    const from = needs.map(([key, need]) => this.#sources(entry, key, need, here));
    const spare = needs.map(([, need]) => 'absent' in need);
    const keys = needs.map(([key]) => key);
    const index = this.nodes.length;
    const numbers = from.map((sources, k) => !spare[k] && sources.every((source) => numeric(this.nodes[source]!.entry)));
    const rule = entry.error === 'common' ? entry.path : pathAt(place, entry);
    const ofRule = this.rules.get(rule) ?? [];
    this.rules.set(rule, [...ofRule, index]);
    this.nodes.push({
      index,
      path,
      place,
      entry,
      then,
      now: now ?? index,
      input: isInput(entry),
      kind: entry.kind,
      compute: entry.compute,
      within: entry.within,
      keys,
      from,
      spare,
      firstPick: this.picks,
      rule,
      firstOfRule: ofRule[0] ?? index,
      given: entry.kind === 'structure' ? undefined : Object.fromEntries(keys.map((key, k) => [key, numbers[k] ? 0.5 : undefined])),
    });
    this.picks += keys.length;
    this.byPath.set(path, this.nodes[index]!);
    this.#open.delete(path);
    return index;
  }

  #sources(entry: Entry, key: string, need: Need<Scope, unknown> | undefined, here: Place): number[] {
    if (!need) throw new Error(`${entry.path} needs ${key}, which was not made yet: do two files import each other?`);
    return need.terms.flatMap((term) => {
      const there = afterTurns(here, term.at);
      return there ? [this.visit(term.entry, placeAround(term.entry.scope, there), there.past === true)] : [];
    });
  }
}

function descendantSets(nodes: readonly Node[]): Uint32Array[] {
  const below = nodes.map(() => new Uint32Array(Math.ceil(nodes.length / 32)));
  // From the last on, so that a node's own set is complete before what it needs reads it.
  for (let index = nodes.length - 1; index >= 0; index--) {
    const node = nodes[index]!;
    const mine = below[index]!;
    addBit(mine, index);
    for (const sources of node.from) for (const source of sources) addAll(below[source]!, mine);
    if (node.now !== index) addAll(below[node.now]!, mine);
  }
  return below;
}

function readersOf(nodes: readonly Node[]): number[][] {
  const readers = nodes.map((): number[] => []);
  for (const { index, from } of nodes) for (const source of new Set(from.flat())) readers[source]!.push(index);
  return readers;
}

/**
 * Compiles entries into a catalog that can be evaluated for any car.
 * Every entry stands at every place of its scope; `then` nodes exist only where something needs them.
 * Throws when two entries have one path, or an entry needs itself.
 */
export function compile(entries: Iterable<Entry>): Catalog {
  const listed = [...entries];
  const compiler = new Compiler();
  for (const entry of listed) for (const place of placesOf(entry.scope)) compiler.visit(entry, place, false);
  const { nodes, byPath, rules, picks } = compiler;
  const below = descendantSets(nodes);
  const node = (path: string): Node => {
    const found = byPath.get(path);
    if (!found) throw new Error(`nothing in the catalog is called ${path}`);
    return found;
  };
  return {
    entries: listed,
    nodes,
    byPath,
    below,
    readers: readersOf(nodes),
    rules,
    past: nodes.filter(({ then }) => then).map(({ index }) => index),
    picks,
    mostNeeds: Math.max(0, ...nodes.map(({ keys }) => keys.length)),
    node,
    dependsOn: (figurePath, inputPath) => hasBit(below[node(inputPath).index]!, node(figurePath).index),
    descendants: (path) => {
      const set = below[node(path).index]!;
      return nodes.filter((one) => hasBit(set, one.index));
    },
  };
}
