/** The errors that a car's numbers rest on, and which node has which. */
import { type Evidence, halfWidth } from '../catalog.js';
import type { Catalog, Node } from './compile.js';
import { isKnown, type State } from './state.js';

/**
 * One thing that may be wrong: a piece of evidence (facts of one source are wrong together), or an estimating rule
 * (of one place, or of all places when the rule says so).
 */
export interface Doubt {
  /** `fact SOURCE` or `rule PATH`; the same error has the same key in every evaluation of a car. */
  readonly error: string;
  /** The inputs that it moves. */
  readonly paths: readonly string[];
  readonly evidence: Evidence | 'rule';
}
/** No error. */
export const none = -1;

/** The errors of one car, as numbers that rise in the order of the catalog: twice the first node of the source, or of the rule and one more. */
export class Errors {
  readonly #catalog: Catalog;
  readonly #state: State;
  /** By error of told facts: the nodes that have it. */
  readonly #told = new Map<number, readonly number[]>();
  /** By node. */
  readonly #ofFact: Int32Array;

  constructor(catalog: Catalog, state: State) {
    this.#catalog = catalog;
    this.#state = state;
    this.#ofFact = new Int32Array(catalog.nodes.length).fill(none);
    const bySource = new Map<string, number[]>();
    for (const index of state.toldNodes.sort((a, b) => a - b)) {
      const { kind } = catalog.nodes[index]!;
      const fact = state.fact[index];
      if (!fact || !(fact.within > 0) || state.same[index] || (kind !== 'quantity' && kind !== 'curve')) continue;
      const members = bySource.get(fact.source);
      if (members) members.push(index);
      else bySource.set(fact.source, [index]);
    }
    for (const members of bySource.values()) {
      const error = 2 * members[0]!;
      this.#told.set(error, members);
      for (const member of members) this.#ofFact[member] = error;
    }
  }

  /** The error that a node itself has in this car, or none. Nodes that follow another have none of their own. */
  of(node: Node): number {
    const state = this.#state;
    const { index, within } = node;
    if (state.fact[index]) return this.#ofFact[index]!;
    if (!node.input || within === undefined || state.same[index] || !isKnown(state, index)) return none;
    const number = state.number[index]!;
    return !Number.isNaN(number) && halfWidth(number, within) > 0 ? 2 * node.firstOfRule + 1 : none;
  }

  doubt(error: number): Doubt {
    const { nodes, rules } = this.#catalog;
    const pathsOf = (members: readonly number[]): string[] => [...new Set(members.map((member) => nodes[nodes[member]!.now]!.path))];
    const told = this.#told.get(error);
    if (told) {
      const fact = this.#state.fact[told[0]!]!;
      return { error: `fact ${fact.source}`, paths: pathsOf(told), evidence: fact.evidence };
    }
    const { rule } = nodes[error >> 1]!;
    const members = rules.get(rule)!.filter((member) => this.of(nodes[member]!) === error);
    return { error: `rule ${rule}`, paths: pathsOf(members), evidence: 'rule' };
  }

  /** All errors of the car, ascending. */
  all(): readonly number[] {
    const found = new Set(this.#catalog.nodes.map((node) => this.of(node)));
    found.delete(none);
    return [...found].sort((a, b) => a - b);
  }
}
