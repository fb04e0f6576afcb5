/**
 * A second way to work out a car, as plainly as can be: one pass, every need looked up anew, with any errors in play at once.
 * For comparing the engine with, and for drawing errors at random (JCGM 101).
 */

import type { Fact } from '../../core/car.js';
import { type Curve, halfWidth, isRefusal } from '../../core/catalog.js';
import { type Catalog, type Node, type NodeWay, pathAt, type Situation } from '../../core/engine.js';

/** How far each error is off, in its half-widths: `fact SOURCE` or `rule PATH`. */
export type Errors = (error: string) => number;
/** How a node came to its value: by which way, and which node gave each need; `follows` when it is that of now. */
interface Taken {
  readonly way?: NodeWay;
  readonly sources: readonly (number | undefined)[];
  readonly follows?: true;
}
/** By the node's index. */
export type Sources = Taken[];

const isCurve = (value: unknown): value is Curve => typeof value === 'object' && value !== null && 'between' in value;
const sameContent = (a: unknown, b: unknown): boolean => JSON.stringify(a) === JSON.stringify(b);
const sameFact = (a: Fact | undefined, b: Fact | undefined): boolean =>
  a === b || (a !== undefined && b !== undefined && a.within === b.within && a.source === b.source && sameContent(a.value, b.value));

class Naive {
  readonly #catalog: Catalog;
  readonly #situation: Situation;
  readonly #errors: Errors;
  readonly #fixed: Sources | undefined;
  readonly #refused: boolean[] = [];
  readonly #unchanged: boolean[] = [];
  readonly values: unknown[] = [];
  readonly taken: Sources = [];
  constructor(catalog: Catalog, situation: Situation, errors: Errors, fixed: Sources | undefined) {
    this.#catalog = catalog;
    this.#situation = situation;
    this.#errors = errors;
    this.#fixed = fixed;
  }
  all(): this {
    for (const node of this.#catalog.nodes) this.one(node);
    return this;
  }
  one(node: Node): void {
    const { index } = node;
    const fact = this.factOf(node);
    if (!this.#fixed) this.#unchanged[index] = node.then && this.#isUnchanged(node);
    const follows = this.#fixed ? this.#fixed[index]?.follows : this.#unchanged[index];
    if (follows) {
      this.#follow(node);
    } else if (fact) {
      this.values[index] = this.#ofFact(node, fact);
      this.taken[index] = { sources: [] };
    } else if (node.entry.kind === 'place') {
      this.values[index] = node.entry.path === 'axle' ? node.place : node.place.startsWith('l') ? 'left' : 'right';
      this.taken[index] = { sources: [] };
    } else if (this.#fixed) {
      const how = this.#fixed[index]!;
      this.taken[index] = how;
      this.values[index] = how.way && this.#run(node, how.way, how.sources);
    } else this.#search(node);
  }
  #follow({ index, now }: Node): void {
    this.values[index] = this.values[now];
    this.taken[index] = { sources: [], follows: true };
  }

  /** What a node is told. A result that was told of the car as it was is not told again of the car as it is. */
  factOf({ entry, place, layer, then, moves }: Node): Fact | undefined {
    if (layer === 'model') return undefined;
    const path = pathAt(place, entry);
    const { facts, then: past } = this.#situation;
    if (then) return past === undefined || (moves && !facts.has(path)) ? undefined : past.get(path);
    const fact = facts.get(path);
    return moves && past && sameFact(past.get(path), fact) ? undefined : fact;
  }
  #ofFact({ entry }: Node, { value, within, source }: Fact): unknown {
    const off = within > 0 ? this.#errors(`fact ${source}`) * within : 0;
    if (typeof value === 'number') return value + off;
    if (isCurve(value)) return within > 0 ? { ...value, y: value.y.map((y) => y * (1 + off)) } : value;
    if (!entry.parse) return value;
    const parsed = entry.parse(value);
    return isRefusal(parsed) ? undefined : parsed;
  }

  /** Whether a `then` node rests on facts that have not changed since: it is the very thing of now, which a compute may tell by identity. */
  #isUnchanged(node: Node): boolean {
    if (this.#situation.then === undefined) return true;
    const [then, now] = [node, this.#catalog.nodes[node.now]!];
    const carry = now.ways.find(({ carries }) => carries);
    const unmoved = carry !== undefined && node.moves && !this.factOf(now) && this.#unchanged[carry.from[2]![0]!] === true;
    if (this.factOf(then)) return unmoved || sameFact(this.factOf(then), this.factOf(now));
    if (this.factOf(now)) return false;
    return node.ways.every((way) => {
      const other = now.ways.find(({ of }) => of === way.of);
      const alike = (some: readonly number[], others: readonly number[]): boolean =>
        some.every(
          (source, o) => source === others[o] || (this.#unchanged[source] === true && this.#catalog.nodes[source]!.now === others[o]),
        );
      return (
        other !== undefined &&
        way.from.every((some, k) => alike(some, other.from[k]!)) &&
        (way.gates ?? []).every((some, k) => alike(some, other.gates![k]!))
      );
    });
  }
  /** The node whose value it is. */
  #origin = (index: number | undefined): number | undefined =>
    index !== undefined && this.taken[index]?.follows ? this.#catalog.nodes[index]!.now : index;
  #isUnmoved(index: number): boolean {
    const { way, sources } = this.taken[index]!;
    if (!way?.carries) return false;
    return sources[1] === undefined || sources[2] === undefined || this.#origin(sources[2]) === sources[1];
  }
  #followsNow(node: Node, way: NodeWay, sources: readonly (number | undefined)[]): boolean {
    const now = this.#catalog.nodes[node.now]!;
    if (this.factOf(now) || this.values[now.index] === undefined) return false;
    const { way: wayNow, sources: sourcesNow } = this.taken[now.index]!;
    if (way.of.inverse && this.#isUnmoved(now.index)) return true;
    return wayNow?.of === way.of && sources.every((source, k) => this.#origin(source) === this.#origin(sourcesNow[k]));
  }

  /** The first way whose needs are known; where it refuses, that is all. */
  #search(node: Node): void {
    const { assume = 'all' } = this.#situation;
    const { index, entry, place } = node;
    this.taken[index] = { sources: [] };
    for (const way of node.ways) {
      if (way.guess && assume !== 'all' && !assume.has(entry.path) && !assume.has(pathAt(place, entry))) continue;
      if (way.carries && this.#refused[way.from[0]![0]!]) {
        this.#refused[index] = true;
        return;
      }
      const sources = this.#choose(node, way);
      if (!sources) continue;
      if (node.then && this.#followsNow(node, way, sources)) {
        this.#follow(node);
        return;
      }
      this.taken[index] = { way, sources };
      this.values[index] = this.#run(node, way, sources);
      if (this.values[index] === undefined) this.#refused[index] = true;
      return;
    }
  }
  #choose(node: Node, { from, gates, spare, carries }: NodeWay): (number | undefined)[] | undefined {
    const known = (one: number): boolean => this.values[one] !== undefined;
    const sources = from.map((some, k) => {
      const open = !gates || gates[k]!.length === 0 || gates[k]!.some(known);
      return open ? some.find(known) : undefined;
    });
    if (sources.some((source, k) => source === undefined && !spare[k])) return undefined;
    if (!carries) return sources;
    const [told, model, before] = sources;
    const isPart = !node.moves && this.factOf(this.#catalog.nodes[told!]!) !== undefined;
    return isPart || (model !== undefined && before === undefined) ? undefined : sources;
  }
  #run({ entry, place }: Node, way: NodeWay, sources: readonly (number | undefined)[]): unknown {
    const given: Record<string, unknown> = {};
    for (const [k, key] of way.keys.entries()) {
      const source = sources[k];
      const value = source === undefined ? way.absent[k] : this.values[source];
      if (source !== undefined && value === undefined) return undefined;
      given[key] = value;
    }
    const out = way.compute(given);
    if (isRefusal(out) || (typeof out === 'number' && !Number.isFinite(out))) return undefined;
    if (typeof out !== 'number' || !way.within) return out;
    const width = halfWidth(out, way.within);
    if (!(width > 0)) return out;
    const rough = entry.ways.filter(({ within }) => within).indexOf(way.of);
    const name = way.of.error === 'common' ? entry.path : pathAt(place, entry);
    return out + this.#errors(`rule ${name}${rough > 0 ? `, way ${rough + 1}` : ''}`) * width;
  }
}

/**
 * Values by node; undefined where there is none.
 * @param fixed sources of an earlier run: a figure does not change its ways within a doubt; left out, each is worked out by the first way that can run
 * @param found filled with the ways and sources that were used
 */
export function workOut(catalog: Catalog, situation: Situation, errors: Errors, fixed?: Sources, found?: Sources): unknown[] {
  const { values, taken } = new Naive(catalog, situation, errors, fixed).all();
  found?.push(...taken);
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
  let errors: Errors = () => 0;
  const naive = new Naive(catalog, situation, (error) => errors(error), sources);
  const moves: boolean[] = [];
  const steps: Node[] = [];
  for (const node of catalog.nodes) {
    const { way, sources: by, follows } = sources[node.index]!;
    const fact = follows ? undefined : naive.factOf(node);
    const own = fact ? fact.within > 0 : way?.within !== undefined;
    const read = follows ? [node.now] : by;
    moves[node.index] = own || read.some((source) => source !== undefined && moves[source]);
    if (moves[node.index] && base[node.index] !== undefined && wanted(node)) steps.push(node);
  }
  naive.values.push(...base);
  return (drawn) => {
    errors = drawn;
    for (const node of steps) naive.one(node);
    return naive.values;
  };
}
