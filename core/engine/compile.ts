/** Compiles the entries once into a catalog that can be evaluated for any car. */
import { type Entry, isInput } from '../catalog.js';
import { Compiler, type Rule } from './compiler.js';
import { type Node, sourcesOf } from './node.js';
import { type Parse, remembering } from './parse.js';
import { pathAt, placesOf } from './places.js';

export type { Node, NodeWay } from './node.js';
export interface Catalog {
  readonly entries: readonly Entry[];
  /** In topological order: a node comes after all that it needs. */
  readonly nodes: readonly Node[];
  readonly byPath: ReadonlyMap<string, Node>;
  /** For each node the set of nodes that depend on it, itself included, one bit a node. */
  readonly below: readonly Uint32Array[];
  /** For each node those that may read it. */
  readonly readers: readonly (readonly number[])[];
  /** By its error: each rule that has one, and the nodes that may be worked out by it. */
  readonly rules: ReadonlyMap<number, Rule>;
  /** For each node that of what was told of the same entry, place and moment, or -1. */
  readonly givenOf: Int32Array;
  /** The `then` nodes. */
  readonly past: readonly number[];
  /** How many needs all nodes have together. */
  readonly picks: number;
  /** How many the node has that needs most. */
  readonly mostNeeds: number;
  readonly parse: Parse;
  /** The node of that path; throws when there is none. */
  node(path: string): Node;
  /** Whether a change of the input can reach the figure by any way. */
  dependsOn(figurePath: string, inputPath: string): boolean;
  /** Everything that a change of this can reach, itself first. */
  descendants(path: string): readonly Node[];
  /** The same catalog for a car that tells these results; entries that are no results change nothing. The last few are kept. */
  telling(told: Iterable<Entry>): Catalog;
}

export const hasBit = (set: Uint32Array, index: number): boolean => (set[index >> 5]! & (1 << (index & 31))) !== 0;
const addBit = (set: Uint32Array, index: number): void => {
  set[index >> 5]! |= 1 << (index & 31);
};
const addAll = (into: Uint32Array, from: Uint32Array): void => {
  for (let word = 0; word < into.length; word++) into[word]! |= from[word]!;
};

function descendantSets(nodes: readonly Node[], givenOf: Int32Array): Uint32Array[] {
  const words = Math.ceil(nodes.length / 32);
  const below = nodes.map(() => new Uint32Array(words));
  // From the last on, so that a node's own set is complete before what it needs reads it.
  for (let index = nodes.length - 1; index >= 0; index--) {
    const node = nodes[index]!;
    const mine = below[index]!;
    addBit(mine, index);
    for (const sources of sourcesOf(node)) for (const source of sources) addAll(below[source]!, mine);
    if (node.now !== index) addAll(below[node.now]!, mine);
  }
  // What is told of an entry is told to both of its nodes.
  for (const { index } of nodes) if (givenOf[index]! >= 0) addAll(below[index]!, below[givenOf[index]!]!);
  return below;
}

function readersOf(nodes: readonly Node[]): number[][] {
  const readers = nodes.map((): number[] => []);
  for (const node of nodes) {
    for (const sources of sourcesOf(node)) {
      for (const source of sources) if (readers[source]!.at(-1) !== node.index) readers[source]!.push(node.index);
    }
  }
  return readers;
}

function givenNodes(nodes: readonly Node[], byPath: ReadonlyMap<string, Node>): Int32Array {
  const givenOf = new Int32Array(nodes.length).fill(-1);
  for (const { layer, then, place, entry, index } of nodes) {
    const best = layer === 'given' ? byPath.get((then ? 'then.' : '') + pathAt(place, entry)) : undefined;
    if (best) givenOf[best.index] = index;
  }
  return givenOf;
}

/** Catalogs for other told results that are kept beside the first: each costs a few milliseconds to compile, and a megabyte. */
const kept = 12;

/**
 * Compiles entries into a catalog that can be evaluated for any car.
 * Every entry stands at every place of its scope; `then` nodes exist only where something needs them.
 * Throws when two entries have one path, or an entry needs itself.
 * @param told results that a car tells: what only serves others is left out. Inputs always may be told.
 */
export function compile(entries: Iterable<Entry>, told: Iterable<Entry> = []): Catalog {
  const listed = [...entries];
  const results = new Set([...told].filter((entry) => !isInput(entry)));
  const shared = { listed, parse: remembering(), find };
  const first = compiled(shared, results);
  const others = new Map<string, Catalog>();
  const keyOf = (of: ReadonlySet<Entry>): string =>
    [...of]
      .map(({ path }) => path)
      .sort()
      .join(' ');
  const own = keyOf(results);
  function find(wanted: ReadonlySet<Entry>): Catalog {
    const key = keyOf(wanted);
    if (key === own) return first;
    const found = others.get(key) ?? compiled(shared, wanted);
    // The one that was used last stands last, and stays longest.
    others.delete(key);
    others.set(key, found);
    for (const oldest of others.keys()) {
      if (others.size <= kept) break;
      others.delete(oldest);
    }
    return found;
  }
  return first;
}

/** What a catalog has in common with those that are compiled for other told results. */
interface Shared {
  readonly listed: readonly Entry[];
  readonly parse: Parse;
  readonly find: (told: ReadonlySet<Entry>) => Catalog;
}
function compiled({ listed, parse, find }: Shared, told: ReadonlySet<Entry>): Catalog {
  const compiler = new Compiler(told);
  for (const entry of listed) for (const place of placesOf(entry.scope)) compiler.visit(entry, place, false);
  const { nodes, byPath, rules, picks } = compiler;
  const givenOf = givenNodes(nodes, byPath);
  const below = descendantSets(nodes, givenOf);
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
    givenOf,
    past: nodes.filter(({ then }) => then).map(({ index }) => index),
    picks,
    mostNeeds: Math.max(0, ...nodes.flatMap(({ ways }) => ways.map(({ keys }) => keys.length))),
    parse,
    node,
    dependsOn: (figurePath, inputPath) => hasBit(below[node(inputPath).index]!, node(figurePath).index),
    descendants: (path) => {
      const set = below[node(path).index]!;
      return nodes.filter((one) => hasBit(set, one.index));
    },
    telling: (more) => {
      const wanted = new Set(told);
      for (const entry of more) if (!isInput(entry)) wanted.add(entry);
      return wanted.size === told.size ? find(told) : find(wanted);
    },
  };
}
