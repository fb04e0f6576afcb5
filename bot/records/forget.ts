/** Forgetting a member: everything that the store holds of them goes, in all tables, but the ids of events that were handled. */
import { withoutMember } from '../../commands/records/machine.js';
import { eraseCars } from './cars.js';
import { holders } from './holders.js';
import { forgetEntries, scrubJournal } from './journal.js';
import { eraseMember } from './members.js';
import { eraseMemberships } from './memberships.js';
import { forgetRecords } from './records.js';
import type { Store } from './store.js';

/**
 * What belongs to them: cars with all that is of them, records, what the journal says, memberships, messages and replies, and the member.
 * What is a room's or the club's has been rid of them by the state machine. Inside a transaction; checkpoint the store after it.
 * Copies that were made before (backups) still hold them: the operator's to delete.
 */
export function forgetMember(store: Store, member: string): void {
  for (const holder of holders) holder.erase(store, member);
  eraseCars(store, member);
  forgetRecords(store, member);
  forgetEntries(store, member);
  // Others have changed what they told: the journal holds it as it was before.
  for (const kind of store.kinds.all)
    if (kind.owner === 'room' || kind.owner === 'club') scrubJournal(store, kind, (held) => withoutMember(kind, held, member));
  eraseMemberships(store, member);
  eraseMember(store, member);
}
