/** What the catalog is compiled into: every entry at every place, with its ways. */
import type { AnyWay, Entry, Within } from '../catalog.js';

/** A way to work out an entry, at a place. */
export interface NodeWay {
  readonly of: AnyWay;
  readonly compute: AnyWay['compute'];
  readonly within: Within | undefined;
  /** Names of the needs. */
  readonly keys: readonly string[];
  /** For each need the nodes that may give it, most direct first; whether it may be missing, and what is given then; what a refinement is called when it is counted. */
  readonly from: readonly (readonly number[])[];
  readonly spare: readonly boolean[];
  readonly absent: readonly unknown[];
  readonly refines: readonly (string | undefined)[];
  /** For each need nodes of which one has to be known, or the need is not given; none, where that is so of no need. */
  readonly gates: readonly (readonly number[])[] | undefined;
  /** A guess that a plain sum does not make. */
  readonly guess: boolean;
  /** Its own error: a number, rising in the order of the catalog; the same at all places when the way says so, and for now and then. `none` where it has none. */
  readonly error: number;
  /** Takes a told value to the car as it stands now. */
  readonly carries: boolean;
  /** Of a `then` node, the same way of the car as it is now. */
  readonly now: NodeWay | undefined;
  /** One argument object for all computes of the way: only its values change, and numbers stay in it unboxed. Structures may keep theirs, so they get new ones. */
  readonly given: Record<string, unknown> | undefined;
}
/** No error. */
export const none = -1;

/**
 * What a node stands for: `best` is the best that is known; `given` only what was told of it, or of things above it; `model` only what its ways make of
 * what is below. Results have the other two only where something told needs them, inputs `given` where something reads it.
 */
export type Layer = 'best' | 'given' | 'model';

/** An entry at a place. */
export interface Node {
  readonly index: number;
  /** `front.spring.rate`; `then.front.spring.rate` of the car as it was when it was last measured; `given.front.spring.rate` only as it was told. */
  readonly path: string;
  /** `front`, `lf`, `2`, or '' for the car and the question. */
  readonly place: string;
  readonly entry: Entry;
  readonly layer: Layer;
  readonly then: boolean;
  /** The same entry and place of the car as it is now (a node that is now: itself). */
  readonly now: number;
  /** Whether a member who lacks a value may be asked for this: an input as it is best known. */
  readonly input: boolean;
  /** Of the entry, kept here because all nodes have one shape and entries have many: reading an entry in the sweep costs a fifth of it. */
  readonly kind: Entry['kind'];
  /** In order: the first whose needs are known is taken. */
  readonly ways: readonly NodeWay[];
  /** Whether a value that was told of it is true of the car as it was told, and is carried on when the car changes. */
  readonly moves: boolean;
  /** The error of what is told of it, where its source is told of nothing before it. */
  readonly error: number;
  /** Whether any way has an error of its own. */
  readonly doubtful: boolean;
  /** Where this node's choices of source begin in a state's `pick`. */
  readonly firstPick: number;
}

/** All that a node may read, need by need. */
export function* sourcesOf({ ways }: Pick<Node, 'ways'>): Generator<readonly number[]> {
  for (const { from, gates } of ways) {
    yield* from;
    if (gates) yield* gates;
  }
}
