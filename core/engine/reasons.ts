/** Why a node has no value, in words: the inputs that are missing at the bottom of the chain, or what a calculation refused. */
import { type Refusal, refuse } from '../catalog.js';
import { type Catalog, hasBit, type Node, type NodeWay } from './compile.js';
import { nameAt, nameAtAll, pathAt } from './places.js';
import { assumes, isKnown } from './settle.js';
import { changed, type State } from './state.js';

/** What stands between a node and a value: inputs that are not known, and nodes whose own calculation refused. */
interface Lack {
  readonly missing: readonly Node[];
  readonly stopped: readonly Node[];
}

/** What is called a need or an entry in a refusal, as paths that can be told: the inputs that need rests on, or the entry's own path. */
function because(catalog: Catalog, state: State, node: Node, names: readonly string[]): string[] {
  const way = state.way[node.index];
  const paths = names.flatMap((name) => {
    const k = way?.keys.indexOf(name) ?? -1;
    if (!way || k < 0) return [catalog.byPath.has(pathAt(node.place, { path: name })) ? pathAt(node.place, { path: name }) : name];
    const picked = state.pick[node.firstPick + k]!;
    const sources = picked >= 0 ? [picked] : way.from[k]!.slice(0, 1);
    return sources.map((source) => pathAt(catalog.nodes[source]!.place, catalog.nodes[source]!.entry));
  });
  return [...new Set(paths)];
}

/** Whether the node can never be worked out, since each of its ways has a need that can't be given: the next gear of the top one. */
const isBeyond = ({ ways }: Node): boolean =>
  ways.length > 0 && ways.every(({ from, spare }) => from.some((sources, k) => sources.length === 0 && !spare[k]));

/**
 * What a member is asked for last comes first: what refused; what is asked for one answer only; what stands further down in the catalogs. A part that
 * could be worked out is asked for itself, rather than all that it could be worked out from, and sizes are always at hand.
 */
function lessLikely(a: Node, b: Node): number {
  return likeliness(a) - likeliness(b) || b.entry.order - a.entry.order || b.index - a.index;
}
function likeliness({ input, entry, ways }: Node): number {
  if (!input) return 0;
  if (entry.scope === 'question') return 1;
  if (entry.kind === 'designation') return 4;
  return ways.some(({ of }) => of.sort !== 'estimate' && !of.inverse) ? 3 : 2;
}

/** Told in other words but for one thing (a toe as a length, without its diameter): that is asked for, not the whole again. */
const lacksOne = (state: State, { ways }: Node): boolean =>
  ways.some(({ of, from, spare }) => {
    if (!of.inverse || of.twin) return false;
    const known = from.map((sources) => sources.find((source) => isKnown(state, source)));
    const lacking = known.filter((source, k) => source === undefined && !spare[k]).length;
    return lacking === 1 && known.some((source) => source !== undefined && state.fact[source] !== undefined);
  });

/**
 * The least that would give the node a value: all that is lacking is taken as told, and taken back one by one, the least likely first,
 * as long as the node still has a value without it. One total weight is asked for rather than four scale readings.
 */
function lackOf(catalog: Catalog, state: State, target: number): Lack {
  const above = catalog.nodes.filter(({ index }) => index <= target && hasBit(catalog.below[index]!, target));
  const isStopped = (node: Node): boolean => !isKnown(state, node.index) && (state.refusal[node.index] !== undefined || isBeyond(node));
  const isLacking = (node: Node): boolean =>
    !isKnown(state, node.index) && state.same[node.index] === changed && (node.input || isStopped(node));
  const mayRun = (node: Node, { guess, from, spare }: NodeWay, has: ReadonlySet<number>): boolean =>
    (!guess || assumes(state, node)) && from.every((sources, k) => spare[k] || sources.some((source) => has.has(source)));
  const all = above.filter(isLacking).sort(lessLikely);
  const given = new Set(all.map(({ index }) => index));
  const reached = (): boolean => {
    const has = new Set<number>();
    for (const node of above) {
      const { index, now, ways } = node;
      const comes = (): boolean => !isStopped(node) && ways.some((way) => mayRun(node, way, has));
      if (isKnown(state, index) || given.has(index) || (state.same[index] === changed ? comes() : has.has(now))) has.add(index);
    }
    return has.has(target);
  };
  // Not to be told again as a whole, unless nothing else would do.
  const whole = all.filter((node) => node.input && lacksOne(state, node));
  for (const { index } of whole) given.delete(index);
  if (!reached()) for (const { index } of whole) given.add(index);
  for (const node of all) {
    if (!given.has(node.index)) continue;
    given.delete(node.index);
    if (!reached()) given.add(node.index);
  }
  const left = above.filter(({ index }) => given.has(index));
  return { missing: left.filter((node) => !isStopped(node)), stopped: left.filter(isStopped) };
}

const sentence = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1);
function list(names: readonly string[]): string {
  const shown = names.length > 5 ? [...names.slice(0, 4), `${names.length - 4} more`] : names;
  return shown.length < 2 ? shown.join('') : `${shown.slice(0, -1).join(', ')} and ${shown.at(-1)}`;
}

function namesOf(missing: readonly Node[]): string[] {
  const byEntry = new Map<Node['entry'], { now: string[]; past: string[] }>();
  for (const node of missing) {
    const places = byEntry.get(node.entry) ?? { now: [], past: [] };
    byEntry.set(node.entry, places);
    (node.then ? places.past : places.now).push(node.place);
  }
  return [...byEntry].flatMap(([entry, { now, past }]) => [
    ...(now.length > 0 ? nameAtAll(entry, now) : []),
    ...(past.length > 0 ? nameAtAll(entry, past).map((name) => `${name} as it was when the car was measured`) : []),
  ]);
}

/** What a node's own calculation refused, and what would put it right. */
function sayingOf(catalog: Catalog, state: State, node: Node): Refusal {
  const own = state.refusal[node.index];
  if (own) return refuse(own.refused, ...because(catalog, state, node, own.because ?? []));
  return refuse(`There is no gear above the top one for the ${nameAt(node.entry, node.place)}.`);
}

/** The refusal of a node that has no value. */
export function reasonOf(catalog: Catalog, state: State, index: number): Refusal {
  if (state.same[index] !== changed) return reasonOf(catalog, state, catalog.nodes[index]!.now);
  const node = catalog.nodes[index]!;
  const { missing, stopped } = lackOf(catalog, state, index);
  const name = nameAt(node.entry, node.place);
  const sayings = stopped.map((one) => sayingOf(catalog, state, one));
  const sentences = [...new Set(sayings.map(({ refused }) => refused))];
  if (missing.length === 1 && missing[0] === node) sentences.unshift(`The ${name} is not known.`);
  else if (missing.length > 0) sentences.unshift(`${sentence(name)} needs ${list(namesOf(missing).map((one) => `the ${one}`))}.`);
  const paths = [...missing.map(({ path }) => path), ...sayings.flatMap((saying) => saying.because ?? [])];
  return refuse(sentences.join(' '), ...new Set(paths));
}
