/** Gives nodes their values: as told, or by the first of their ways that can run. */
import { isRefusal, type Refusal, refuse } from '../catalog.js';
import type { Node, NodeWay } from './node.js';
import { absent, changed, type State, sameFacts, sameSources } from './state.js';

/** Whether a node has a value; works it out, when nobody has asked for it yet. */
export function isKnown(state: State, index: number): boolean {
  if (state.settled[index] === 0) settle(state, state.nodes[index]!);
  return !Number.isNaN(state.number[index]!) || state.other[index] !== undefined;
}
/** The node that a value is of: a `then` node that has not changed since is the one of now. Only of what has been worked out. */
export const sourceOf = (state: State, index: number): number => (state.same[index] === changed ? index : state.nodes[index]!.now);

/** Gives a node its value as the facts stand, choosing its sources anew; what it reads is worked out before it, as far as it is not. */
function settle(state: State, node: Node): void {
  const { index } = node;
  if (state.same[index] === sameFacts) {
    isKnown(state, node.now);
    copyNow(state, node);
  } else if (state.fact[index]) {
    state.number[index] = state.told[index]!;
    state.other[index] = state.toldOther[index];
  } else {
    state.same[index] = changed;
    state.number[index] = Number.NaN;
    state.other[index] = undefined;
    state.refusal[index] = undefined;
    state.way[index] = undefined;
    if (node.kind === 'place') state.other[index] = placeOf(node);
    else takeWay(state, node);
  }
  state.settled[index] = 1;
}
function copyNow(state: State, { index, now }: Node): void {
  state.number[index] = state.number[now]!;
  state.other[index] = state.other[now];
  state.refusal[index] = state.refusal[now];
  state.way[index] = state.way[now];
}
function placeOf({ entry, place }: Node): string {
  if (entry.path === 'axle') return place;
  return place.startsWith('l') ? 'left' : 'right';
}

/** Takes the first way whose needs are known. Where it refuses, that is the answer: a plainer way would hide what is wrong with what was told. */
function takeWay(state: State, node: Node): void {
  const { index, ways } = node;
  for (let w = 0; w < ways.length; w++) {
    const way = ways[w]!;
    if (way.guess && !assumes(state, node)) continue;
    if (way.carries && isRefusedThen(state, way)) {
      state.refusal[index] = state.refusal[way.from[0]![0]!];
      return;
    }
    if (!choose(state, node, way)) continue;
    if (node.then && followsNow(state, node, way)) {
      state.same[index] = sameSources;
      copyNow(state, node);
      return;
    }
    state.way[index] = way;
    state.refusal[index] = run(state, node, way);
    return;
  }
}
/** Whether guesses about an entry may be made. */
export const assumes = ({ assume }: State, { entry, place }: Node): boolean =>
  assume === 'all' || assume.has(entry.path) || assume.has(`${place}.${entry.path}`);
/** What was told of the car as it was then, and cannot be true. */
function isRefusedThen(state: State, way: NodeWay): boolean {
  const told = way.from[0]![0]!;
  return !isKnown(state, told) && state.refusal[told] !== undefined;
}

/** Chooses, for each need of a way, the first source that has a value; false when one that is needed has none. */
function choose(state: State, node: Node, way: NodeWay): boolean {
  const { from, spare, gates } = way;
  for (let k = 0; k < from.length; k++) {
    let picked = absent;
    if (!gates || isOpen(state, gates[k]!)) {
      const sources = from[k]!;
      for (let o = 0; o < sources.length; o++) {
        if (isKnown(state, sources[o]!)) {
          picked = sources[o]!;
          break;
        }
      }
    }
    state.pick[node.firstPick + k] = picked;
    if (picked === absent && !spare[k]) return false;
  }
  return !way.carries || canCarry(state, node);
}
const isOpen = (state: State, gates: readonly number[]): boolean => gates.length === 0 || gates.some((gate) => isKnown(state, gate));
/** A part that was told then and is not now has been taken off. A result of which nothing was known then, and all is now, is what it is worked out to be. */
function canCarry({ pick, fact }: State, { firstPick, moves }: Node): boolean {
  const [told, model, before] = [pick[firstPick]!, pick[firstPick + 1]!, pick[firstPick + 2]!];
  return (moves || fact[told] === undefined) && (model === absent || before !== absent);
}
/** Whether what was told is still so, as far as can be seen: nothing that it is worked out from has changed. */
export function isUnmoved(state: State, { index, firstPick }: Node): boolean {
  if (!state.way[index]?.carries) return false;
  const [model, before] = [state.pick[firstPick + 1]!, state.pick[firstPick + 2]!];
  return model === absent || before === absent || sourceOf(state, before) === model;
}

/**
 * Whether a `then` node takes the way that its node of now takes, from the very same sources: what other ways would have read may have changed.
 * It is then the same thing, which computes may tell by identity.
 */
function followsNow(state: State, node: Node, way: NodeWay): boolean {
  const now = state.nodes[node.now]!;
  if (!way.now || !isKnown(state, now.index) || state.fact[now.index]) return false;
  // What follows from a told result follows still, where nothing has moved it.
  if (way.of.inverse && isUnmoved(state, now)) return true;
  if (state.way[now.index] !== way.now) return false;
  for (let k = 0; k < way.keys.length; k++) {
    const [then, at] = [state.pick[node.firstPick + k]!, state.pick[now.firstPick + k]!];
    if (then !== at && (then === absent || at === absent || sourceOf(state, then) !== sourceOf(state, at))) return false;
  }
  return true;
}

/** Works a node out from the sources that are picked for a way. Returns a refusal of its own. */
function run(state: State, node: Node, way: NodeWay): Refusal | undefined {
  const { index, firstPick } = node;
  const { keys } = way;
  const { number, other, pick } = state;
  const given = way.given ?? {};
  for (let k = 0; k < keys.length; k++) {
    const source = pick[firstPick + k]!;
    if (source === absent) given[keys[k]!] = way.absent[k];
    else {
      const value = number[source]!;
      given[keys[k]!] = Number.isNaN(value) ? other[source] : value;
    }
  }
  const result = way.compute(given);
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
