/** A redaction: the words go, in the store and in the room, and what they changed stays. */
import { eraseTalk } from '../records/conversation.js';
import { editsOf, eraseIncoming, findIncoming, finishIncoming, type InboxRow } from '../records/inbox.js';
import { eraseOutgoing, eraseSent, findSent, outgoingOf, queue, withdrawUnsent } from '../records/outbox.js';
import { eraseTexts } from '../records/redact.js';
import type { World } from './world.js';

/** Inside a transaction. Only a homeserver says that something was redacted, and it has made sure that whoever did it may. */
export function redact(world: World, row: InboxRow): void {
  const { store } = world;
  const target = row.target ?? '';
  finishIncoming(store, row.seq, 'silent');
  // A moderator took the bot's own words away: nobody answers a question that is gone.
  const own = findSent(store, target);
  if (own?.room === row.room) {
    eraseSent(store, target);
    eraseTalk(store, own.command);
  }
  const redacted = findIncoming(store, target);
  if (redacted === undefined || redacted.room !== row.room) return;
  // An edit's reply stands in the place of the first one: it goes with it.
  const command = redacted.kind === 'edit' ? (redacted.target ?? target) : target;
  const edits = editsOf(store, command).map(({ event }) => event);
  for (const event of [command, ...edits]) {
    eraseIncoming(store, event);
    eraseTexts(store, event);
  }
  eraseTalk(store, command);
  withdrawUnsent(store, command);
  for (const { part, version, action, state, room } of outgoingOf(store, command))
    if ((action === 'send' || action === 'edit') && (state === 'sent' || state === 'trying'))
      queue(store, { command, part, version, action: 'redact', room, at: world.now() });
  eraseOutgoing(store, command);
}
