/** Whether a member is alone with the bot in a room, now and later: what may go nowhere else goes there. */
import { type Access, isPrivateTo } from '../records/access.js';
import type { Store } from '../records/database.js';
import { isForgotten, peopleOf } from '../records/memberships.js';
import { findRoom } from '../records/rooms.js';

/** As far as the store knows: whether nobody but this member and the bot can read what is said in the room, now or later. */
export function isPrivate(store: Store, id: string, member: string): boolean {
  const room = findRoom(store, id);
  if (room === undefined || room.left || room.encrypted || !room.told) return false;
  return isPrivateTo({ ...room, people: peopleOf(store, id) }, member);
}
/** The same by what the homeserver says now; nor may the store know of anybody else. Somebody forgotten may be the member: `now` names everybody. */
export function isPrivateNow(store: Store, id: string, member: string, now: Access): boolean {
  const room = findRoom(store, id);
  const known = [...peopleOf(store, id).keys()].every((other) => other === member || isForgotten(other));
  return room !== undefined && !room.left && !room.encrypted && known && isPrivateTo(now, member);
}
