/** Who is in which room, as the bot's intake last heard. What a member may see hangs on this table. */
import { prepared, type Store } from './store.js';

export type JoinState = 'join' | 'invite' | 'leave' | 'ban' | 'knock';
const on = prepared((db) => ({
  record: db.prepare<[string, string, string, string | null]>(
    `INSERT INTO memberships (room, member, state, name) VALUES (?, ?, ?, ?)
     ON CONFLICT (room, member) DO UPDATE SET state = excluded.state, name = excluded.name`,
  ),
  gone: db.prepare<[string, string, string]>(
    'UPDATE memberships SET state = ?, name = NULL, may_change_room = 0 WHERE room = ? AND member = ?',
  ),
  unshare: db.prepare<[string, string]>('DELETE FROM shares WHERE room = ? AND car IN (SELECT id FROM cars WHERE owner = ?)'),
  speaks: db.prepare<[string, string, string | null]>(
    "INSERT INTO memberships (room, member, state, name) VALUES (?, ?, 'join', ?) ON CONFLICT DO NOTHING",
  ),
  joined: db.prepare<[string, string], { n: number }>(
    "SELECT count(*) AS n FROM memberships JOIN rooms ON rooms.id = room AND rooms.left = 0 WHERE room = ? AND member = ? AND state = 'join'",
  ),
  everybody: db.prepare<[string], { member: string; name: string | null }>(
    "SELECT member, name FROM memberships WHERE room = ? AND state = 'join' ORDER BY member",
  ),
  one: db.prepare<[string, string], { name: string | null }>('SELECT name FROM memberships WHERE room = ? AND member = ?'),
  people: db.prepare<[string], { n: number }>("SELECT count(*) AS n FROM memberships WHERE room = ? AND state IN ('join', 'invite')"),
  rule: db.prepare<[string, string]>(
    'UPDATE memberships SET may_change_room = (member IN (SELECT value FROM json_each(?))) WHERE room = ?',
  ),
  rules: db.prepare<[string, string], { n: number }>(
    "SELECT count(*) AS n FROM memberships WHERE room = ? AND member = ? AND state = 'join' AND may_change_room = 1",
  ),
  // Nobody learns who is in a room that they are not in.
  here: db.prepare<[{ asker: string; room: string }], { id: string; name: string }>(
    `SELECT there.member AS id, coalesce(there.name, members.name, there.member) AS name
     FROM memberships AS me JOIN rooms ON rooms.id = me.room AND rooms.left = 0
     JOIN memberships AS there ON there.room = me.room AND there.state = 'join'
     LEFT JOIN members ON members.id = there.member
     WHERE me.room = @room AND me.member = @asker AND me.state = 'join' ORDER BY name, id`,
  ),
  emptyShares: db.prepare<[string]>('DELETE FROM shares WHERE room = ?'),
  empty: db.prepare<[string]>('DELETE FROM memberships WHERE room = ?'),
  of: db.prepare<[string], { room: string; state: JoinState; name: string | null; rules: number }>(
    'SELECT room, state, name, may_change_room AS rules FROM memberships WHERE member = ? ORDER BY room',
  ),
  erase: db.prepare<[string]>('DELETE FROM memberships WHERE member = ?'),
}));

/**
 * A membership event, in the order of the room's timeline. The room must have been entered. Who is no longer in the room shares nothing
 * there any more (also not after coming back, until they share again), and their name there is forgotten.
 */
export function recordMembership(store: Store, room: string, member: string, state: JoinState, name?: string): void {
  if (state === 'join' || state === 'invite' || state === 'knock') {
    on(store).record.run(room, member, state, name ?? null);
    return;
  }
  on(store).gone.run(state, room, member);
  on(store).unshare.run(room, member);
}
/** Who speaks to the bot (not: who says anything in its room) is in the room: puts back a member whom the bot has forgotten, and never one whom it knows to have left. */
export const speaks = (store: Store, room: string, member: string, name?: string): void =>
  void on(store).speaks.run(room, member, name ?? null);
export const isJoined = (store: Store, room: string, member: string): boolean => on(store).joined.get(room, member)?.n === 1;
export const joinedMembers = (store: Store, room: string): readonly { readonly id: string; readonly name: string | undefined }[] =>
  on(store)
    .everybody.all(room)
    .map((row) => ({ id: row.member, name: row.name ?? undefined }));
/** The same, for a member: with a name for everybody, and nobody unless the asker is in the room too. */
export const membersHere = (store: Store, asker: string, room: string): readonly { readonly id: string; readonly name: string }[] =>
  on(store).here.all({ asker, room });
/** What the member is called in the room; undefined when the room does not say. */
export const nameIn = (store: Store, room: string, member: string): string | undefined =>
  on(store).one.get(room, member)?.name ?? undefined;
/** How many are in the room or invited, beside the bot. */
export const countPeople = (store: Store, room: string): number => on(store).people.get(room)?.n ?? 0;
/** All members with the power to change the room's state; the others of the room have it no longer. */
export const recordPower = (store: Store, room: string, members: readonly string[]): void =>
  void on(store).rule.run(JSON.stringify(members), room);
export const mayChangeRoom = (store: Store, room: string, member: string): boolean => on(store).rules.get(room, member)?.n === 1;
/** The bot has left the room, and no longer hears who is in it. */
export function emptyRoom(store: Store, room: string): void {
  on(store).emptyShares.run(room);
  on(store).empty.run(room);
}
export const membershipsOf = (
  store: Store,
  member: string,
): readonly { readonly room: string; readonly state: JoinState; readonly mayChangeRoom: boolean; readonly name?: string }[] =>
  on(store)
    .of.all(member)
    .map(({ room, state, name, rules }) => ({ room, state, mayChangeRoom: rules === 1, ...(name === null ? {} : { name }) }));
export const eraseMemberships = (store: Store, member: string): void => void on(store).erase.run(member);
