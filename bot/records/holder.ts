/** A table that holds text of members beside their records: how it is exported, and how it is erased. */
import type { Store } from './store.js';

/** Something that a member wrote, or that was written to them. */
export interface HeldText {
  /** What it is: `message`, `reply`, `open question`. */
  readonly what: string;
  readonly room: string | undefined;
  /** Milliseconds since 1970, when it is known. */
  readonly at: number | undefined;
  readonly text: string;
}
export interface Holder {
  /** Everything the table holds of the member that is not a mere event id. */
  texts(store: Store, member: string): readonly HeldText[];
  /** Erases the member's id, names and texts; event ids stay, so that an old event is still known as handled. Inside the caller's transaction. */
  erase(store: Store, member: string): void;
}
