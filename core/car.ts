/** What is recorded of a car: facts, each with where it came from and how far it may be off. */
import type { Evidence, Value } from './catalog.js';

/** Who told something, when, and in which event; never in which words. */
export interface Told {
  /** Milliseconds since 1970. */
  readonly at: number;
  readonly by: string;
  /** Id of the event. */
  readonly cause: string;
}
export interface Fact {
  readonly value: Value;
  /** Half-width that holds 19 in 20, in SI units (for a curve: a fraction of it); 0 for what is exact, chosen or only tried. */
  readonly within: number;
  readonly evidence: Evidence;
  /** One piece of evidence is one error everywhere that it is used: facts that share this name are wrong together. */
  readonly source: string;
  /** Undefined for what is only supposed. */
  readonly told?: Told;
}
/** By full path: `front.spring.rate`. */
export type Facts = ReadonlyMap<string, Fact>;
