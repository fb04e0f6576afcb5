/** What happens to rooms: invitations, who is in them, who may change them, and the bot's own coming and going. */
import { z } from 'zod';
import type { Store } from '../store/database.js';
import { eraseIncoming, finishIncoming, type InboxRow } from '../store/inbox.js';
import { countPeople, emptyRoom, joinedMembers, recordMembership, recordPower } from '../store/memberships.js';
import { closeRoomOutbox, queue, silenceRoom } from '../store/outbox.js';
import { enterRoom, findRoom, leaveRoom, markDirect, markEncrypted } from '../store/rooms.js';
import { type Rulers, recallRulers, rememberRulers } from '../store/timelines.js';
import { referenceOf } from './answering.js';
import { sayOnce } from './replies.js';
import type { World } from './world.js';

const stateEvent = z.looseObject({
  type: z.string(),
  state_key: z.string(),
  sender: z.string(),
  content: z.record(z.string(), z.unknown()),
});
/** The content of a `state` row: states of the room, in order, as they came. */
export const stateContent = z.object({
  /** The bot has come in: `new` when it was not here before it started. */
  came: z.enum(['new', 'known']).optional(),
  events: z.array(stateEvent),
});
export type StateContent = z.infer<typeof stateContent>;

const membership = z.object({ membership: z.enum(['join', 'invite', 'leave', 'ban', 'knock']), displayname: z.string().nullish() });
const levels = z.looseObject({
  users: z.record(z.string(), z.number()).optional(),
  users_default: z.number().optional(),
  state_default: z.number().optional(),
});
const creation = z.looseObject({ room_version: z.string().optional(), additional_creators: z.array(z.string()).optional() });

/** By the room's levels, and (from room version 12 on, above all levels) those who made it. */
function rulersIn(events: StateContent['events'], before: Rulers): Rulers {
  const created = events.findLast(({ type }) => type === 'm.room.create');
  const made = creation.safeParse(created?.content).data;
  const above = created !== undefined && Number(made?.room_version ?? '1') >= 12;
  const creators = above ? [created.sender, ...(made?.additional_creators ?? [])] : before.creators;
  const read = levels.safeParse(events.findLast(({ type }) => type === 'm.room.power_levels')?.content).data;
  if (read === undefined) return { creators, users: before.users };
  const needed = read.state_default ?? 50;
  if ((read.users_default ?? 0) >= needed) return { creators, users: 'everybody' };
  return { creators, users: Object.entries(read.users ?? {}).flatMap(([user, level]) => (level >= needed ? [user] : [])) };
}
function applyPower(store: Store, room: string, events: StateContent['events']): void {
  const rulers = rulersIn(events, recallRulers(store, room) ?? { creators: [], users: [] });
  rememberRulers(store, room, rulers);
  // Also without a new level: somebody may have come in who had the power already.
  recordPower(
    store,
    room,
    rulers.users === 'everybody' ? joinedMembers(store, room).map(({ id }) => id) : [...rulers.creators, ...rulers.users],
  );
}

/** Inside a transaction. */
export function applyState(world: World, row: InboxRow): void {
  const { store } = world;
  finishIncoming(store, row.seq, 'silent');
  // What it said stands in the tables from here on; kept here too, it would outlast a member who is forgotten.
  eraseIncoming(store, row.event);
  const read = stateContent.safeParse(row.content === null ? undefined : JSON.parse(row.content));
  if (!read.success) {
    world.log.error({ reference: referenceOf(row.event), room: row.room }, 'a state of a room cannot be read any more');
    return;
  }
  const { came, events } = read.data;
  const room = row.room;
  if (came !== undefined) enterRoom(store, room, false);
  else if (findRoom(store, room) === undefined) return;
  for (const { type, state_key, content } of events) {
    if (type === 'm.room.member' && state_key !== world.me.id) {
      const it = membership.safeParse(content);
      if (it.success) recordMembership(store, room, state_key, it.data.membership, it.data.displayname ?? undefined);
    }
    if (type === 'm.room.encryption') markEncrypted(store, room);
  }
  applyPower(store, room, events);
  const direct = countPeople(store, room) === 1;
  markDirect(store, room, direct);
  if (findRoom(store, room)?.encrypted) {
    silenceRoom(store, room);
    sayOnce(world, 'encrypted', room, world.whyNotEncrypted, true);
  } else if (came === 'new') sayOnce(world, 'welcome', room, welcome(world.prefix, direct), false);
}
const welcome = (prefix: string, direct: boolean): string => {
  const first = direct ? 'tire 245/40R17 vs 255/40R17' : `${prefix}tire 245/40R17 vs 255/40R17`;
  const help = direct ? 'help' : `${prefix}help`;
  const how = direct
    ? 'Just type your question.'
    : `Begin a line with ${prefix} or with my name, and I answer; I keep silent on all others.`;
  return `Hello. I work out springs, tires, gearing and ride height for autocross cars, and keep your car's set-up.\n${how}\nTry: ${first}\nOr: ${help}`;
};

/** Inside a transaction. Joining and turning down are sent like replies: each once, however often the process ends. */
export function applyInvite(world: World, row: InboxRow): void {
  const allowed = world.mayInvite(row.sender);
  world.log.info({ room: row.room, allowed }, 'the bot was invited');
  queue(world.store, {
    ...{ command: row.event, part: 0, version: 0, action: allowed ? 'join' : 'leave', room: row.room, at: world.now() },
    ...(allowed ? {} : { content: JSON.stringify({ reason: 'Thank you, but this bot comes only into rooms of its own club.' }) }),
  });
  finishIncoming(world.store, row.seq, 'silent');
}

/** Inside a transaction. The bot is out: who was there and what was shared there is forgotten, and what was still to be said is not. */
export function applyLeft(world: World, row: InboxRow): void {
  const { store } = world;
  finishIncoming(store, row.seq, 'silent');
  if (findRoom(store, row.room) !== undefined) leaveRoom(store, row.room);
  emptyRoom(store, row.room);
  closeRoomOutbox(store, row.room, 'the bot is not in the room any more');
}
