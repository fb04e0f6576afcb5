/**
 * A second way to work out a car, as plainly as can be: one pass, every need looked up anew, with any errors in play at once.
 * For comparing the engine with, and for drawing errors at random (JCGM 101).
 */

import type { Fact } from '../../core/car.js';
import { type Curve, halfWidth, isRefusal } from '../../core/catalog.js';
import type { Catalog, Node, Situation } from '../../core/engine.js';

/** How far each error is off, in its half-widths: `fact SOURCE` or `rule PATH`. */
export type Errors = (error: string) => number;
/** Which node gave each need of each node, by the node's index and the need's place. */
export type Sources = (number | undefined)[][];

const isCurve = (value: unknown): value is Curve => typeof value === 'object' && value !== null && 'between' in value;
const asNow = (path: string): string => (path.startsWith('then.') ? path.slice('then.'.length) : path);

function ofFact({ entry }: Node, { value, within, source }: Fact, errors: Errors): unknown {
  if (typeof value === 'number') return within > 0 ? value + errors(`fact ${source}`) * within : value;
  if (isCurve(value)) return within > 0 ? { ...value, y: value.y.map((y) => y * (1 + errors(`fact ${source}`) * within)) } : value;
  if (!entry.parse) return value;
  const parsed = entry.parse(value);
  return isRefusal(parsed) ? undefined : parsed;
}
function ofPlace({ entry, place }: Node): string {
  if (entry.path === 'axle') return place;
  return place === 'lf' || place === 'lr' ? 'left' : 'right';
}
function ofNeeds(node: Node, values: readonly unknown[], errors: Errors, fixed: Sources | undefined, found?: Sources): unknown {
  const { entry, index, keys, from, spare } = node;
  if (!entry.compute) return undefined;
  const given: Record<string, unknown> = {};
  const used: (number | undefined)[] | undefined = found && [];
  if (found && used) found[index] = used;
  for (let k = 0; k < keys.length; k++) {
    const source = fixed ? fixed[index]?.[k] : from[k]!.find((one) => values[one] !== undefined);
    if (used) used[k] = source;
    const value = source === undefined ? undefined : values[source];
    if (value === undefined && (source !== undefined || !spare[k])) return undefined;
    given[keys[k]!] = value;
  }
  const out = entry.compute(given);
  if (isRefusal(out) || (typeof out === 'number' && !Number.isFinite(out))) return undefined;
  if (typeof out !== 'number' || !node.input || !entry.within) return out;
  const width = halfWidth(out, entry.within);
  return width > 0 ? out + errors(`rule ${entry.error === 'common' ? entry.path : asNow(node.path)}`) * width : out;
}

/** Which `then` nodes rest on facts that have not changed since: they are the very things of now, which a compute may tell by identity. */
function unchanged(catalog: Catalog, { facts, then = facts }: Situation): boolean[] {
  const same: boolean[] = [];
  for (const { index, path, now, from, then: past } of catalog.nodes) {
    const [a, b] = [facts.get(asNow(path)), then.get(asNow(path))];
    const told = a === b || (a !== undefined && b !== undefined && a.value === b.value && a.within === b.within && a.source === b.source);
    const needs = from.every((sources, k) => sources.every((source, o) => same[source] || source === catalog.nodes[now]!.from[k]![o]));
    same[index] = past && told && needs;
  }
  return same;
}

/**
 * Values by node; undefined where there is none.
 * @param fixed sources of an earlier run: a figure does not change its ways within a doubt; left out, each need is given by the first that has a value
 * @param found filled with the sources that were used
 */
export function workOut(catalog: Catalog, situation: Situation, errors: Errors, fixed?: Sources, found: Sources = []): unknown[] {
  const values: unknown[] = [];
  const then = situation.then ?? situation.facts;
  const same = unchanged(catalog, situation);
  for (const node of catalog.nodes) {
    const fact = node.input ? (node.then ? then : situation.facts).get(asNow(node.path)) : undefined;
    if (same[node.index]) values.push(values[node.now]);
    else if (fact) values.push(ofFact(node, fact, errors));
    else if (node.entry.kind === 'place') values.push(ofPlace(node));
    else values.push(ofNeeds(node, values, errors, fixed, found));
  }
  return values;
}

/** A car whose errors can be drawn many times: values by node, undefined where there is none, in one array that the next draw fills anew. */
export type Drawn = (errors: Errors) => readonly unknown[];
/**
 * The same as `workOut` with the sources of the car as it is, for many draws: what no error reaches keeps the value that it has.
 * @param wanted which nodes are worked out; what they need has to be among them; the others keep the values of the car as it is
 */
export function drawing(catalog: Catalog, situation: Situation, wanted: (node: Node) => boolean): Drawn {
  const sources: Sources = [];
  const base = workOut(catalog, situation, () => 0, undefined, sources);
  const same = unchanged(catalog, situation);
  const then = situation.then ?? situation.facts;
  const factOf = (node: Node): Fact | undefined => (node.input ? (node.then ? then : situation.facts).get(asNow(node.path)) : undefined);
  const moves: boolean[] = [];
  const steps: { readonly node: Node; readonly fact: Fact | undefined }[] = [];
  for (const node of catalog.nodes) {
    const fact = factOf(node);
    const ofItsOwn = fact ? fact.within > 0 : node.input && node.entry.within !== undefined;
    const by = same[node.index] ? [node.now] : fact ? [] : (sources[node.index] ?? []);
    moves[node.index] = ofItsOwn || by.some((source) => source !== undefined && moves[source]);
    if (moves[node.index] && base[node.index] !== undefined && wanted(node)) steps.push({ node, fact });
  }
  const values = [...base];
  return (errors) => {
    for (const { node, fact } of steps) {
      if (same[node.index]) values[node.index] = values[node.now];
      else values[node.index] = fact ? ofFact(node, fact, errors) : ofNeeds(node, values, errors, sources);
    }
    return values;
  };
}
