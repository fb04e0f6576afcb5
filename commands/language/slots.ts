/** What the reading of one span comes to: the candidates that it may name, or what is wrong with it. */
import type { Entry } from '../../core/catalog.js';
import type { Preferences } from '../context.js';
import type { Item, Said } from '../reading.js';
import type { AmountAtom } from './values.js';
import type { Vocabulary } from './vocabulary.js';

/** What a section is for: it decides between an input and a figure of one name, and where a bare amount looks first. */
export type Mode = 'record' | 'ask' | 'goal' | 'condition';
/** What is wrong with a span, and what would be right. */
export interface Trouble {
  readonly kind: 'dimension' | 'range' | 'negative' | 'kind' | 'unit' | 'place' | 'word' | 'alone';
  readonly why: () => string;
  readonly entry?: Entry;
  readonly places?: readonly string[];
  readonly units?: readonly string[];
  readonly amount?: AmountAtom;
}
/** An entry that a span may name, with what it is told. */
export interface Candidate {
  readonly item: Item;
  /** A list, one for each place in their order. */
  readonly each?: readonly Said[];
  readonly note?: string;
  readonly unlikely: boolean;
}
/** One span, read: one candidate, several, or what is wrong with it. */
export interface Slot {
  readonly candidates: readonly Candidate[];
  readonly trouble?: Trouble;
  readonly text: () => string;
  /** The words that named it. */
  readonly words?: readonly string[];
  readonly gear?: string;
}
/** What spans are read against. */
export interface Ground {
  readonly vocabulary: Vocabulary;
  readonly preferences: Preferences;
  /** The topic of the line, whose word the others may leave out: `bar 22 mm, length 900 mm`. */
  readonly topic?: string;
}
/** How much of the car an entry is of, the most first. */
export const rank: Readonly<Record<Entry['scope'], number>> = { question: 0, car: 0, gear: 1, axle: 1, corner: 2 };
