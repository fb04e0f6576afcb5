/** Tables that hold text of members beside their records: one line a table. */
import { holder as conversations } from './conversation.js';
import type { Holder } from './holder.js';
import { holder as inbox } from './inbox.js';
import { holder as outbox } from './outbox.js';
import { holder as timelines } from './timelines.js';

export const holders: readonly Holder[] = [inbox, outbox, conversations, timelines];
