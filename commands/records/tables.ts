/** What the state machine works on: kept in memory over a snapshot (the draft of a message), or SQLite's tables. */
import type { Held, Id, Of } from './held.js';
import type { Kind } from './kind.js';

/** One change that an event made, with what was before it and after it. */
export interface Entry {
  readonly id: number;
  /** The event of the line that asked for it: its edits' changes stand under it too. */
  readonly line: string;
  /** The event that made it: the line, or an edit of it. */
  readonly cause: string;
  readonly member: string;
  readonly at: number;
  /** A kind of record; or `order`, for what is done and can't be taken back. */
  readonly kind: string;
  readonly record: Id;
  readonly car: number | undefined;
  /** Undefined: the record was not there. */
  readonly before: Held | undefined;
  readonly after: Held | undefined;
  /** Made by taking something back. */
  readonly back: boolean;
  /** The line that took it back; the same line, where an edit of it did. */
  readonly undone: string | undefined;
}
/** Numbers below 0 are of this message: the newest of all, -2 newer than -1. Sorts the newest first. */
export const newer = (a: number, b: number): number => (a < 0 || b < 0 ? a - b : b - a);

export interface JournalReads {
  /** Oldest first. */
  ofLine(line: string): readonly Entry[];
  /** Newest first, before that entry. */
  newest(member: string, limit: number, before?: number): readonly Entry[];
  /** What the line took back. */
  undoneBy(line: string): readonly Entry[];
}
export interface Journal extends JournalReads {
  add(entry: Omit<Entry, 'id'>): void;
  /** The same entry, altered. */
  replace(entry: Entry): void;
  remove(entry: Entry): void;
}
/** What may be read: by a command what its asker may see here and now, by the state machine at the store everything. */
export interface Reads {
  find<D, I extends Id>(kind: Kind<D, I>, id: I): Held<D, I> | undefined;
  /** In the order of telling. */
  list<D, I extends Id>(kind: Kind<D, I>, of: Of): readonly Held<D, I>[];
  /** Newest first, before that one. */
  newest<D>(kind: Kind<D, number>, of: Of, limit: number, before?: number): readonly Held<D, number>[];
  /** The number that the next one made of this kind will have. */
  next(kind: Pick<Kind, 'name'>): number;
  readonly journal: JournalReads;
}
export interface Tables extends Reads {
  readonly journal: Journal;
  /** A new record; or one that was there before, put back. */
  add<D, I extends Id>(kind: Kind<D, I>, held: Held<D, I>): void;
  replace<D, I extends Id>(kind: Kind<D, I>, held: Held<D, I>): void;
  /** A car goes with all that is of it, and with what the journal says of it. */
  remove<D, I extends Id>(kind: Kind<D, I>, id: I): void;
  /** All that belongs to a member goes, and what the journal says of it. */
  forget(member: string): void;
}
