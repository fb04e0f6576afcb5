/** Every value of one car, each with its plus-or-minus, what it rests on and where it came from. */
import { type Refusal, refuse, type Value } from '../catalog.js';
import type { Catalog, Node } from './compile.js';
import { type Contributions, contributions, type Doubt, entryOf } from './errors.js';
import { type Overridden, overridden } from './overridden.js';
import { nameAt } from './places.js';
import { reasonOf } from './reasons.js';
import { isKnown, load, type Situation, type State, settle } from './state.js';
import { largestFirst, widthsOf } from './width.js';

/** What one error contributes to a number. */
export interface Share extends Doubt {
  /** Signed change of the number over the error's half-width: half of the way from one end to the other. */
  readonly amount: number;
  /** How far the middle of both ends lies from the number; 0 where it is linear in this error. */
  readonly bend: number;
}
export type Status = 'told' | 'estimated' | 'computed' | 'unknown';

export interface Evaluation {
  readonly catalog: Catalog;
  readonly situation: Situation;
  /** The value: a number in SI, an option, a curve, what a designation stands for, or a structure; or why there is none. Throws for a path that is not in the catalog. */
  get(path: string): Value | object | Refusal;
  /** The number, in SI, or why there is none. */
  number(path: string): number | Refusal;
  /** Half-width that holds 19 in 20, SI; 0 for what has no number or no doubt; infinite where the slightest doubt takes the value away. */
  within(path: string): number;
  /** What the plus-or-minus is made of, largest first. */
  shares(path: string): readonly Share[];
  status(path: string): Status;
  /** For each need of the entry the path that gave it; a need that may be missing, and is, has none. */
  used(path: string): readonly { readonly need: string; readonly path: string | undefined }[];
  /** Facts that say again what others say, and were not used for it. */
  overridden(): readonly Overridden[];
  /** All errors of this car. */
  errors(): readonly Doubt[];
}

class Evaluated implements Evaluation {
  readonly catalog: Catalog;
  readonly situation: Situation;
  readonly #state: State;
  #contributions: Contributions | undefined;
  #widths: Float64Array | undefined;

  constructor(catalog: Catalog, situation: Situation) {
    this.catalog = catalog;
    this.situation = situation;
    this.#state = load(catalog, situation);
    for (const node of catalog.nodes) settle(this.#state, node);
  }

  /** Worked out when first asked for: looking at values alone costs a hundredth of it. */
  #all(): Contributions {
    this.#contributions ??= contributions(this.catalog, this.#state);
    return this.#contributions;
  }

  get(path: string): Value | object | Refusal {
    const { index } = this.catalog.node(path);
    const number = this.#state.number[index]!;
    if (!Number.isNaN(number)) return number;
    return this.#state.other[index] ?? reasonOf(this.catalog, this.#state, index);
  }

  number(path: string): number | Refusal {
    const node = this.catalog.node(path);
    const number = this.#state.number[node.index]!;
    if (!Number.isNaN(number)) return number;
    if (this.#state.other[node.index] !== undefined) return refuse(`The ${nameAt(node.entry, node.place)} is not a number.`, path);
    return reasonOf(this.catalog, this.#state, node.index);
  }

  within(path: string): number {
    this.#widths ??= widthsOf(this.#all(), this.catalog.nodes.length);
    return this.#widths[this.catalog.node(path).index]!;
  }

  shares(path: string): readonly Share[] {
    const { index } = this.catalog.node(path);
    const all = this.#all();
    const shares: Share[] = [];
    all.doubts.forEach(({ error, paths, evidence }, e) => {
      const at = entryOf(all, e, index);
      if (at >= 0) shares.push({ error, paths, evidence, amount: all.amounts[at]!, bend: all.bends[at]! });
    });
    return shares.sort(largestFirst);
  }

  status(path: string): Status {
    const node = this.catalog.node(path);
    if (!isKnown(this.#state, node.index)) return 'unknown';
    if (!node.input) return 'computed';
    const source = this.#state.same[node.index] ? node.now : node.index;
    return this.#state.fact[source] ? 'told' : 'estimated';
  }

  used(path: string): readonly { readonly need: string; readonly path: string | undefined }[] {
    const node = this.#chosen(this.catalog.node(path));
    if (this.#state.fact[node.index] || !isKnown(this.#state, node.index)) return [];
    return node.keys.map((need, k) => ({ need, path: this.catalog.nodes[this.#state.pick[node.firstPick + k]!]?.path }));
  }
  /** A node that follows now was chosen for there. */
  #chosen(node: Node): Node {
    return this.#state.same[node.index] ? this.catalog.nodes[node.now]! : node;
  }

  overridden(): readonly Overridden[] {
    return overridden(this.catalog, this.#state, (path) => this.shares(path));
  }

  errors(): readonly Doubt[] {
    return this.#all().doubts.map(({ error, paths, evidence }) => ({ error, paths, evidence }));
  }
}

/**
 * Works out a car: every value or the reason for having none, and when asked every plus-or-minus.
 * @param situation facts by full path, SI; throws for a fact that no input can hold (the boundary's schema keeps those out)
 */
export const evaluate = (catalog: Catalog, situation: Situation): Evaluation => new Evaluated(catalog, situation);
