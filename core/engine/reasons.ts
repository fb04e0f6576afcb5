/** Why a node has no value, in words: the inputs that are missing at the bottom of the chain, or what a calculation refused. */
import { type Refusal, refuse } from '../catalog.js';
import type { Catalog, Node } from './compile.js';
import { nameAt, nameAtAll, pathAt } from './places.js';
import { isKnown, type State } from './state.js';

/** What would have to be told, and what was refused, for a node to have a value. */
interface Lack {
  readonly missing: ReadonlySet<number>;
  readonly sayings: ReadonlyMap<string, readonly string[]>;
}
const nothing: Lack = { missing: new Set(), sayings: new Map() };
const both = (a: Lack, b: Lack): Lack => ({
  missing: new Set([...a.missing, ...b.missing]),
  sayings: new Map([...a.sayings, ...b.sayings]),
});
const size = (lack: Lack): number => lack.missing.size + 2 * lack.sayings.size;

/** What is called a need or an entry in a refusal, as paths that can be told: the inputs that need rests on, or the entry's own path. */
function because(catalog: Catalog, state: State, node: Node, names: readonly string[]): string[] {
  const paths = names.flatMap((name) => {
    const k = node.keys.indexOf(name);
    if (k < 0) return [catalog.byPath.has(pathAt(node.place, { path: name })) ? pathAt(node.place, { path: name }) : name];
    const picked = state.pick[node.firstPick + k]!;
    const sources = picked >= 0 ? [picked] : node.from[k]!.slice(0, 1);
    return sources.map((source) => catalog.nodes[catalog.nodes[source]!.now]!.path);
  });
  return [...new Set(paths)];
}

function lackOf(catalog: Catalog, state: State, index: number, found: Map<number, Lack>): Lack {
  if (isKnown(state, index)) return nothing;
  const done = found.get(index);
  if (done) return done;
  const node = catalog.nodes[index]!;
  const lack = state.same[index] ? lackOf(catalog, state, node.now, found) : ownLack(catalog, state, node, found);
  found.set(index, lack);
  return lack;
}
function ownLack(catalog: Catalog, state: State, node: Node, found: Map<number, Lack>): Lack {
  const itself: Lack = { missing: new Set([node.index]), sayings: new Map() };
  const own = state.refusal[node.index];
  if (own) return { missing: new Set(), sayings: new Map([[own.refused, because(catalog, state, node, own.because ?? [])]]) };
  if (!node.entry.compute) return itself;
  let lack = nothing;
  for (let k = 0; k < node.from.length; k++) {
    if (node.spare[k]) continue;
    const ways = node.from[k]!.map((source) => lackOf(catalog, state, source, found));
    if (ways.length === 0) {
      const top = `There is no gear above the top one for the ${nameAt(node.entry, node.place)}.`;
      lack = both(lack, { missing: new Set(), sayings: new Map([[top, []]]) });
    } else {
      // Of several ways, the one that asks least of the member; the most direct of those that ask the same.
      lack = both(
        lack,
        ways.reduce((best, way) => (size(way) < size(best) ? way : best)),
      );
    }
  }
  // An input that could be estimated from several others is sooner told itself.
  return node.input && size(lack) > 1 ? itself : lack;
}

const sentence = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1);
function list(names: readonly string[]): string {
  const shown = names.length > 5 ? [...names.slice(0, 4), `${names.length - 4} more`] : names;
  return shown.length < 2 ? shown.join('') : `${shown.slice(0, -1).join(', ')} and ${shown.at(-1)}`;
}

function namesOf(catalog: Catalog, missing: ReadonlySet<number>): string[] {
  const byEntry = new Map<Node['entry'], { now: string[]; past: string[] }>();
  for (const index of [...missing].sort((a, b) => a - b)) {
    const node = catalog.nodes[index]!;
    const places = byEntry.get(node.entry) ?? { now: [], past: [] };
    byEntry.set(node.entry, places);
    (node.then ? places.past : places.now).push(node.place);
  }
  return [...byEntry].flatMap(([entry, { now, past }]) => [
    ...(now.length > 0 ? nameAtAll(entry, now) : []),
    ...(past.length > 0 ? nameAtAll(entry, past).map((name) => `${name} as it was when the car was measured`) : []),
  ]);
}

/** The refusal of a node that has no value. */
export function reasonOf(catalog: Catalog, state: State, index: number): Refusal {
  if (state.same[index]) return reasonOf(catalog, state, catalog.nodes[index]!.now);
  const node = catalog.nodes[index]!;
  const { missing, sayings } = lackOf(catalog, state, index, new Map());
  const name = nameAt(node.entry, node.place);
  const parts = [...sayings.keys()];
  if (missing.size === 1 && missing.has(index)) parts.unshift(`The ${name} is not known.`);
  else if (missing.size > 0) parts.unshift(`${sentence(name)} needs ${list(namesOf(catalog, missing).map((one) => `the ${one}`))}.`);
  const paths = [...missing].sort((a, b) => a - b).map((one) => catalog.nodes[one]!.path);
  return refuse(parts.join(' '), ...new Set([...paths, ...[...sayings.values()].flat()]));
}
