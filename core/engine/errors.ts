/** The errors that a car's numbers rest on, and which node has which. */
import { type Evidence, halfWidth } from '../catalog.js';
import type { Catalog } from './compile.js';
import { type Node, none } from './node.js';
import { pathAt } from './places.js';
import { isKnown } from './settle.js';
import { changed, type State } from './state.js';

/**
 * One thing that may be wrong: a piece of evidence (facts of one source are wrong together), or a rule that guesses or simplifies
 * (of one place, or of all places when the rule says so).
 */
export interface Doubt {
  /** `fact SOURCE` or `rule PATH`; the same error has the same key in every evaluation of a car. */
  readonly error: string;
  /** The entries that it moves. */
  readonly paths: readonly string[];
  readonly evidence: Evidence | 'rule';
}

/** The errors of one car, as numbers that rise in the order of the catalog: that of the first node of a source, or that of a rule. */
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
      if (!fact || !(fact.within > 0) || state.same[index] !== changed || kind === 'choice' || kind === 'designation') continue;
      const members = bySource.get(fact.source);
      if (members) members.push(index);
      else bySource.set(fact.source, [index]);
    }
    for (const members of bySource.values()) {
      const { error } = catalog.nodes[members[0]!]!;
      this.#told.set(error, members);
      for (const member of members) this.#ofFact[member] = error;
    }
  }

  /** The error that a node itself has in this car, or none. Nodes that follow another have none of their own. */
  of(node: Node): number {
    const state = this.#state;
    const { index } = node;
    if (state.fact[index]) return this.#ofFact[index]!;
    if (!node.doubtful || !isKnown(state, index) || state.same[index] !== changed) return none;
    const way = state.way[index];
    if (way?.within === undefined) return none;
    const number = state.number[index]!;
    return !Number.isNaN(number) && halfWidth(number, way.within) > 0 ? way.error : none;
  }

  doubt(error: number): Doubt {
    const { nodes, rules } = this.#catalog;
    const pathsOf = (members: readonly number[]): string[] => [
      ...new Set(members.map((member) => pathAt(nodes[member]!.place, nodes[member]!.entry))),
    ];
    const told = this.#told.get(error);
    if (told) {
      const fact = this.#state.fact[told[0]!]!;
      return { error: `fact ${fact.source}`, paths: pathsOf(told), evidence: fact.evidence };
    }
    const { name, members } = rules.get(error)!;
    const doubted = members.filter((member) => this.of(nodes[member]!) === error);
    return { error: `rule ${name}`, paths: pathsOf(doubted), evidence: 'rule' };
  }

  /** All errors of the car, ascending. */
  all(): readonly number[] {
    const found = new Set(this.#catalog.nodes.map((node) => this.of(node)));
    found.delete(none);
    return [...found].sort((a, b) => a - b);
  }
}
