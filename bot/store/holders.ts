/** Tables that hold text of members beside their cars: each says how it is exported and how it is erased. */
import { holder as conversations } from './conversation.js';
import { holder as inbox } from './inbox.js';
import { holder as outbox } from './outbox.js';
import type { Store } from './store.js';
import { holder as timelines } from './timelines.js';

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
/** One line a table. */
export const holders: readonly Holder[] = [inbox, outbox, conversations, timelines];
