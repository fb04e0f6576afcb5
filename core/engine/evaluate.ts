/** Every value of one car, each with its plus-or-minus, what it rests on and where it came from. All of it is worked out when first asked for. */
import type { Facts } from '../car.js';
import { type AnyWay, type Entry, isWorkedOut, type Refusal, refuse, type Value } from '../catalog.js';
import { type Assumed, assumedFor } from './assumed.js';
import { basisOf } from './basis.js';
import type { Catalog, Node } from './compile.js';
import { type Doubt, Errors } from './errors.js';
import { type Overridden, overridden } from './overridden.js';
import { nameAt, pathAt } from './places.js';
import { reasonOf } from './reasons.js';
import { isKnown, isUnmoved, sourceOf } from './settle.js';
import { load, type Situation, type State } from './state.js';
import { Sweep } from './sweep.js';
import { Tracer } from './tracer.js';
import { largestFirst } from './width.js';

/** What one error contributes to a number. */
export interface Share extends Doubt {
  /** Signed change of the number over the error's half-width: half of the way from one end to the other. */
  readonly amount: number;
  /** How far the middle of both ends lies from the number; 0 where it is linear in this error. */
  readonly bend: number;
}
export type Status = 'told' | 'estimated' | 'computed' | 'unknown';
/** A told result, and what it would be if it had not been told. */
export interface Contradicted {
  readonly path: string;
  /** Both in SI. */
  readonly told: number;
  readonly worked: number;
  /** Half-width of their difference, both taken as independent. */
  readonly within: number;
  /** Whether guesses are among what it is worked out from. */
  readonly guessed: boolean;
  readonly disagree: boolean;
}

export interface Evaluation {
  /** Compiled for the results that this car tells. */
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
  /** For each need of the way that was taken the path that gave it; a need that may be missing, and is, has none. */
  used(path: string): readonly { readonly need: string; readonly path: string | undefined }[];
  /** The way that was taken; undefined for what was told or has no value. */
  way(path: string): AnyWay | undefined;
  /** How it was worked out, in a few words for each step where two text books would differ: the own way first, then those of what it rests on. */
  basis(path: string): readonly string[];
  /** The estimates that a number rests on, in no order. */
  assumed(path: string): readonly Assumed[];
  /** Facts that say again what others say, and were not used for it; of these facts only, where they are given. */
  overridden(among?: readonly string[]): readonly Overridden[];
  /**
   * Told numbers that are also known otherwise, results and parts: both, and whether they differ by more than both doubts together.
   * @param under only those that this number rests on
   */
  contradicted(under?: string): readonly Contradicted[];
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
    this.catalog = catalogFor(catalog, situation);
    this.situation = situation;
    this.#state = load(this.catalog, situation);
    this.#errors = new Errors(this.catalog, this.#state);
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
    const node = this.#chosen(path);
    const { fact, way, pick } = this.#state;
    if (!isKnown(this.#state, node.index)) return 'unknown';
    if (fact[node.index]) return 'told';
    // What was told of the car as it was holds still, where nothing has moved it.
    if (isUnmoved(this.#state, node) && fact[pick[node.firstPick]!]) return 'told';
    return way[node.index]?.of.sort === 'estimate' ? 'estimated' : 'computed';
  }

  used(path: string): readonly { readonly need: string; readonly path: string | undefined }[] {
    const node = this.#chosen(path);
    if (this.#state.fact[node.index] || !isKnown(this.#state, node.index)) return [];
    const keys = this.#state.way[node.index]?.keys ?? [];
    return keys.map((need, k) => ({ need, path: this.catalog.nodes[this.#state.pick[node.firstPick + k]!]?.path }));
  }
  /** The node of a path, worked out; one that follows now was chosen for there. */
  #chosen(path: string): Node {
    const { index } = this.catalog.node(path);
    isKnown(this.#state, index);
    return this.catalog.nodes[sourceOf(this.#state, index)]!;
  }

  way(path: string): AnyWay | undefined {
    const { index } = this.#chosen(path);
    return isKnown(this.#state, index) ? this.#state.way[index]?.of : undefined;
  }
  basis(path: string): readonly string[] {
    return basisOf(this.catalog, this.#state, this.#chosen(path).index);
  }

  assumed(path: string): readonly Assumed[] {
    return assumedFor(this.catalog, this.#state, this.#chosen(path).index);
  }

  overridden(among?: readonly string[]): readonly Overridden[] {
    const without = (paths: readonly string[]): Evaluation => evaluate(this.catalog, withoutFacts(this.situation, paths));
    return overridden({ it: this, without }, this.#state, among);
  }

  contradicted(under?: string): readonly Contradicted[] {
    const beneath = under === undefined ? undefined : this.#factsUnder(under);
    return [...this.situation.facts.keys()].flatMap((path) => {
      const { entry } = this.catalog.node(path);
      const told = this.number(path);
      const otherwise = isWorkedOut(entry) || entry.ways.some(({ sort, twin }) => sort !== 'estimate' && !twin);
      if (!otherwise || typeof told !== 'number' || (beneath && !beneath.has(path))) return [];
      const without = new Evaluated(this.catalog, withoutFacts(this.situation, [path]));
      const worked = without.number(path);
      if (typeof worked !== 'number' || without.status(path) === 'estimated') return [];
      // A part that follows back from a told result is said of the result.
      const isResult = (one: string): boolean => isWorkedOut(this.catalog.node(one).entry);
      if (!isResult(path) && [...without.#factsUnder(path)].some(isResult)) return [];
      const within = Math.hypot(this.within(path), without.within(path));
      // What cannot be told contradicts nothing.
      if (!Number.isFinite(within)) return [];
      const guessed = without.shares(path).some(({ evidence }) => evidence === 'rule');
      return [{ path, told, worked, within, guessed, disagree: Math.abs(told - worked) > within }];
    });
  }
  /** Paths of the told facts that a number rests on. */
  #factsUnder(path: string): ReadonlySet<string> {
    const { nodes } = this.catalog;
    const under = new Tracer(this.catalog, this.#state).factsUnder(this.catalog.node(path).index);
    return new Set([...under].map((at) => pathAt(nodes[at]!.place, nodes[at]!.entry)));
  }

  errors(): readonly Doubt[] {
    return this.#errors.all().map((error) => this.#errors.doubt(error));
  }
}

/** The car as it would be if these facts had never been told. */
export function withoutFacts(situation: Situation, paths: readonly string[]): Situation {
  const less = (from: Facts): Facts => new Map([...from].filter(([path]) => !paths.includes(path)));
  return { ...situation, facts: less(situation.facts), ...(situation.then ? { then: less(situation.then) } : {}) };
}

/** The catalog compiled for the results that a situation tells. */
export function catalogFor(catalog: Catalog, { facts }: Situation): Catalog {
  const told: Entry[] = [];
  for (const path of facts.keys()) {
    const entry = catalog.byPath.get(path)?.entry;
    if (entry && isWorkedOut(entry)) told.push(entry);
  }
  return told.length > 0 ? catalog.telling(told) : catalog;
}

/**
 * A car: every value or the reason for having none, and every plus-or-minus. What a question asks for is worked out, with what it rests on, and kept;
 * asking for many numbers one after another costs no more than asking for them at once.
 * @param situation facts by full path, SI; throws for a fact that nothing in the catalog can hold (the boundary's schema keeps those out)
 */
export const evaluate = (catalog: Catalog, situation: Situation): Evaluation => new Evaluated(catalog, situation);
