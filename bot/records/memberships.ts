/**
 * Who is in which room, and who ever was, as the bot's intake last heard. What a member may see hangs on this table. Somebody whom the bot has no id
 * for (forgotten, or invited by an address elsewhere) has a row too, so that nobody is overlooked: its `member` begins with a question mark.
 */
import { randomBytes } from 'node:crypto';
import { type JoinState, nameless } from './access.js';
import { nextGeneration } from './generations.js';
import { prepared, type Store } from './store.js';

export type { JoinState } from './access.js';

interface Standing {
  readonly state: JoinState;
  readonly since: number;
  readonly event: string | null;
}
/** What is known of a membership event beside what it says. */
export interface MemberEvent {
  readonly event?: string | undefined;
  /** What the membership was before it, where the homeserver tells: it may have changed more often than the bot has heard. */
  readonly before?: string | undefined;
}
const somebody = nameless('somebody ');
const on = prepared((db) => ({
  stands: db.prepare<[string, string], Standing>('SELECT state, since, event FROM memberships WHERE room = ? AND member = ?'),
  record: db.prepare<[string, string, string, string | null, number, string | null]>(
    `INSERT INTO memberships (room, member, state, name, since, event) VALUES (?, ?, ?, ?, ?, ?)
     ON CONFLICT (room, member) DO UPDATE SET state = excluded.state, name = excluded.name, since = excluded.since, event = excluded.event`,
  ),
  powerless: db.prepare<[string, string]>('UPDATE memberships SET may_change_room = 0 WHERE room = ? AND member = ?'),
  unshare: db.prepare<[string, string]>('DELETE FROM shares WHERE room = ? AND car IN (SELECT id FROM cars WHERE owner = ?)'),
  once: db.prepare<[string, string]>("INSERT INTO memberships (room, member, state) VALUES (?, ?, 'leave') ON CONFLICT DO NOTHING"),
  // Who is in the room and has no row is one of those who were forgotten there: which one makes no difference.
  back: db.prepare<[{ room: string; member: string }]>(
    `UPDATE memberships SET member = @member WHERE room = @room AND member =
       (SELECT min(member) FROM memberships WHERE room = @room AND state = 'join' AND substr(member, 1, ${somebody.length}) = '${somebody}')`,
  ),
  joined: db.prepare<[string, string], { n: number }>(
    "SELECT count(*) AS n FROM memberships JOIN rooms ON rooms.id = room AND rooms.left = 0 WHERE room = ? AND member = ? AND state = 'join'",
  ),
  everybody: db.prepare<[string], { member: string; state: JoinState }>(
    'SELECT member, state FROM memberships WHERE room = ? ORDER BY member',
  ),
  one: db.prepare<[string, string], { name: string | null }>('SELECT name FROM memberships WHERE room = ? AND member = ?'),
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
     JOIN memberships AS there ON there.room = me.room AND there.state = 'join' AND there.member NOT GLOB '[?]*'
     LEFT JOIN members ON members.id = there.member
     WHERE me.room = @room AND me.member = @asker AND me.state = 'join' ORDER BY name, id`,
  ),
  emptyShares: db.prepare<[string]>('DELETE FROM shares WHERE room = ?'),
  empty: db.prepare<[string]>('DELETE FROM memberships WHERE room = ?'),
  of: db.prepare<[string], { room: string; state: JoinState; name: string | null; rules: number }>(
    'SELECT room, state, name, may_change_room AS rules FROM memberships WHERE member = ? ORDER BY room',
  ),
  strangers: db.prepare<[string]>(`DELETE FROM memberships WHERE room = ? AND substr(member, 1, ${somebody.length}) = '${somebody}'`),
  forget: db.prepare<[string, string, string]>(
    'UPDATE memberships SET member = ?, name = NULL, may_change_room = 0, since = 0, event = NULL WHERE room = ? AND member = ?',
  ),
}));

/**
 * A membership event, in the order of the room's timeline. The room must have been entered. Who is no longer in the room shares nothing
 * there any more (also not after coming back, until they share again), and their name there is forgotten.
 */
export function recordMembership(
  store: Store,
  room: string,
  member: string,
  state: JoinState,
  name?: string,
  told: MemberEvent = {},
): void {
  const { event, before } = told;
  if (before === 'join') restore(store, room, member);
  const was = on(store).stands.get(room, member);
  // Told again, as a part of the room's state.
  if (event !== undefined && was?.event === event) return;
  const stayed = was?.state === 'join' && (before === undefined || before === 'join' || was.event === null);
  if (state !== 'join' || !stayed) on(store).unshare.run(room, member);
  const since = state === 'join' && !stayed ? nextGeneration(store) : (was?.since ?? 0);
  const isThere = state === 'join' || state === 'invite' || state === 'knock';
  on(store).record.run(room, member, state, (isThere ? name : undefined) ?? null, since, event ?? null);
  if (!isThere) on(store).powerless.run(room, member);
}
/** Was in the room once: for somebody of whom nothing else is told. */
export const wasThere = (store: Store, room: string, member: string): void => void on(store).once.run(room, member);
/** Puts back a member who is in the room and whom the bot has forgotten; whether it knows of such a one. */
function restore(store: Store, room: string, member: string): boolean {
  return on(store).stands.get(room, member) === undefined && on(store).back.run({ room, member }).changes === 1;
}
/** Who speaks to the bot (not: who says anything in its room) is in the room: puts back a member whom the bot has forgotten, and never one whom it knows to have left. */
export function speaks(store: Store, room: string, member: string, name?: string): void {
  if (on(store).stands.get(room, member) !== undefined) return;
  restore(store, room, member);
  on(store).record.run(room, member, 'join', name ?? null, nextGeneration(store), null);
}
/** The whole state of the room is told anew: everybody is named in it, also who was forgotten. */
export const forgetStrangers = (store: Store, room: string): void => void on(store).strangers.run(room);
export const isJoined = (store: Store, room: string, member: string): boolean => on(store).joined.get(room, member)?.n === 1;
/** Everybody who is or ever was in the room, invited or knocking, beside the bot. */
export const peopleOf = (store: Store, room: string): ReadonlyMap<string, JoinState> =>
  new Map(
    on(store)
      .everybody.all(room)
      .map(({ member, state }) => [member, state]),
  );
/** Whether a row stands for somebody whom the bot has forgotten. */
export const isForgotten = (member: string): boolean => member.startsWith(somebody);
/** Who is in the room, for a member: with a name for everybody, and nobody unless the asker is in the room too. */
export const membersHere = (store: Store, asker: string, room: string): readonly { readonly id: string; readonly name: string }[] =>
  on(store).here.all({ asker, room });
/** What the member is called in the room; undefined when the room does not say. */
export const nameIn = (store: Store, room: string, member: string): string | undefined =>
  on(store).one.get(room, member)?.name ?? undefined;
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
/** That somebody is in the room stays known, and not who. */
export function eraseMemberships(store: Store, member: string): void {
  for (const { room } of membershipsOf(store, member)) on(store).forget.run(`${somebody}${randomBytes(8).toString('hex')}`, room, member);
}
