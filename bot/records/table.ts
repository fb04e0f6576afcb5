/** The SQL of one kind of record. */
import type { Held, Id, Of } from '../../commands/records/held.js';
import type { Store } from './store.js';

export interface Table<D, I extends Id> {
  find(store: Store, id: I): Held<D, I> | undefined;
  /** At least those that are of all that is named, in the order of telling. */
  list(store: Store, of: Of): readonly Held<D, I>[];
  add(store: Store, held: Held<D, I>): void;
  replace(store: Store, held: Held<D, I>): void;
  remove(store: Store, id: I): void;
}
/** Where records are numbered. */
export interface NumberedTable<D> extends Table<D, number> {
  /** Newest first, before that one. */
  newest(store: Store, of: Of, limit: number, before?: number): readonly Held<D, number>[];
  /** Never a number that was used before. */
  next(store: Store): number;
}
