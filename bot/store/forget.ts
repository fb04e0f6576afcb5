/** Forgetting a member: everything that the store holds of them goes, in all tables, but the ids of events that were handled. */
import { eraseCars } from './cars.js';
import { holders } from './holders.js';
import { eraseMember } from './members.js';
import { eraseMemberships } from './memberships.js';
import type { Store } from './store.js';

/**
 * Cars with their revisions, setups and shares, memberships, messages and replies, and the member. Inside a transaction; checkpoint the store after it.
 * Copies that were made before (backups) still hold them: the operator's to delete.
 */
export function forgetMember(store: Store, member: string): void {
  for (const holder of holders) holder.erase(store, member);
  eraseCars(store, member);
  eraseMemberships(store, member);
  eraseMember(store, member);
}
