/** Every value of one car, each with its plus-or-minus, what it rests on and where it came from. All of it is worked out when first asked for. */
import { type Refusal, refuse, type Value } from '../catalog.js';
import type { Catalog, Node } from './compile.js';
import { type Doubt, Errors } from './errors.js';
import { type Overridden, overridden } from './overridden.js';
import { nameAt } from './places.js';
import { reasonOf } from './reasons.js';
import { isKnown, load, type Situation, type State } from './state.js';
import { Sweep } from './sweep.js';
import { largestFirst } from './width.js';

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
  /** Facts that say again what others say, and were not used for it; of these facts only, where they are given. */
  overridden(among?: readonly string[]): readonly Overridden[];
  /** All errors of this car. */
  errors(): readonly Doubt[];
}

/** A refusal whose reason is worked out when somebody reads it: it takes as long as a hundred numbers, and most are only looked at for being one. */
function lazily(reason: () => Refusal): Refusal {
  let known: Refusal | undefined;
  const own = (): Refusal => {
    known ??= reason();
    return known;
  };
  return {
    get refused() {
      return own().refused;
    },
    get because() {
      return own().because ?? [];
    },
  };
}

class Evaluated implements Evaluation {
  readonly catalog: Catalog;
  readonly situation: Situation;
  readonly #state: State;
  readonly #errors: Errors;
  #swept: Sweep | undefined;

  constructor(catalog: Catalog, situation: Situation) {
    this.catalog = catalog;
    this.situation = situation;
    this.#state = load(catalog, situation);
    this.#errors = new Errors(catalog, this.#state);
  }

  get #sweep(): Sweep {
    this.#swept ??= new Sweep(this.catalog, this.#state, this.#errors);
    return this.#swept;
  }

  get(path: string): Value | object | Refusal {
    const { index } = this.catalog.node(path);
    if (!isKnown(this.#state, index)) return lazily(() => reasonOf(this.catalog, this.#state, index));
    const number = this.#state.number[index]!;
    return Number.isNaN(number) ? this.#state.other[index]! : number;
  }

  number(path: string): number | Refusal {
    const node = this.catalog.node(path);
    if (!isKnown(this.#state, node.index)) return lazily(() => reasonOf(this.catalog, this.#state, node.index));
    const number = this.#state.number[node.index]!;
    return Number.isNaN(number) ? refuse(`The ${nameAt(node.entry, node.place)} is not a number.`, path) : number;
  }

  within(path: string): number {
    return this.#sweep.width(this.catalog.node(path).index);
  }

  shares(path: string): readonly Share[] {
    const contributions = this.#sweep.contributions(this.catalog.node(path).index);
    const shares = contributions.map(({ error, amount, bend }) => ({ ...this.#errors.doubt(error), amount, bend }));
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

  overridden(among?: readonly string[]): readonly Overridden[] {
    return overridden(this.catalog, this.#state, (path) => this.shares(path), among);
  }

  errors(): readonly Doubt[] {
    return this.#errors.all().map((error) => this.#errors.doubt(error));
  }
}

/**
 * A car: every value or the reason for having none, and every plus-or-minus. What a question asks for is worked out, with what it rests on, and kept;
 * asking for many numbers one after another costs no more than asking for them at once.
 * @param situation facts by full path, SI; throws for a fact that no input can hold (the boundary's schema keeps those out)
 */
export const evaluate = (catalog: Catalog, situation: Situation): Evaluation => new Evaluated(catalog, situation);
