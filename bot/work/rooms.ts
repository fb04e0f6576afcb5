/** What happens to rooms: invitations, who is in them, who may change them, and the bot's own coming and going. */
import { z } from 'zod';
import { isDirect, readState } from '../records/access.js';
import type { Store } from '../records/database.js';
import { eraseIncoming, finishIncoming, type InboxRow } from '../records/inbox.js';
import { emptyRoom, forgetStrangers, peopleOf, recordMembership, recordPower, wasThere } from '../records/memberships.js';
import { closeRoomOutbox, queue, silenceRoom } from '../records/outbox.js';
import {
  enterRoom,
  findRoom,
  leaveRoom,
  markDirect,
  markEncrypted,
  markLost,
  markUnreadable,
  type StoredRoom,
  tell,
  tellAnew,
} from '../records/rooms.js';
import { type Rulers, recallRulers, rememberRulers } from '../records/timelines.js';
import { referenceOf } from './reference.js';
import { sayOnce } from './replies.js';
import type { World } from './world.js';

const stateEvent = z.object({
  type: z.string(),
  state_key: z.string(),
  sender: z.string(),
  content: z.record(z.string(), z.unknown()),
  event: z.string().optional(),
  before: z.string().optional(),
});
/** The content of a `state` row: states of the room, in order, as they came. */
export const stateContent = z.object({
  /** The bot has come in: `new` when it was not here before it started. */
  came: z.enum(['new', 'known']).optional(),
  /** The events are the room's whole state. */
  whole: z.literal(true).optional(),
  /** What happened for a while could not be read. */
  lost: z.literal(true).optional(),
  events: z.array(stateEvent),
});
export type StateContent = z.infer<typeof stateContent>;

const levels = z.looseObject({
  users: z.record(z.string(), z.number()).optional(),
  users_default: z.number().optional(),
  state_default: z.number().optional(),
});
const creation = z.looseObject({ room_version: z.string().optional(), additional_creators: z.array(z.string()).optional() });

/** By the room's levels, and (from room version 12 on, above all levels) those who made it. */
function rulersIn(events: StateContent['events'], before: Rulers): Rulers {
  const ofRoom = (wanted: string) => events.findLast(({ type, state_key }) => type === wanted && state_key === '');
  const created = ofRoom('m.room.create');
  const made = creation.safeParse(created?.content).data;
  const above = created !== undefined && Number(made?.room_version ?? '1') >= 12;
  const creators = above ? [created.sender, ...(made?.additional_creators ?? [])] : before.creators;
  const read = levels.safeParse(ofRoom('m.room.power_levels')?.content).data;
  if (read === undefined) return { creators, users: before.users };
  const needed = read.state_default ?? 50;
  if ((read.users_default ?? 0) >= needed) return { creators, users: 'everybody' };
  return { creators, users: Object.entries(read.users ?? {}).flatMap(([user, level]) => (level >= needed ? [user] : [])) };
}
function applyPower(store: Store, room: string, events: StateContent['events']): void {
  const rulers = rulersIn(events, recallRulers(store, room) ?? { creators: [], users: [] });
  rememberRulers(store, room, rulers);
  // Also without a new level: somebody may have come in who had the power already.
  const joined = [...peopleOf(store, room)].flatMap(([id, state]) => (state === 'join' ? [id] : []));
  recordPower(store, room, rulers.users === 'everybody' ? joined : [...rulers.creators, ...rulers.users]);
}
/** What the states say of who is in the room and who may read there. */
function applyAccess(store: Store, room: string, events: StateContent['events'], me: string): void {
  for (const event of events)
    for (const told of readState(event)) {
      if (told.told === 'unreadable') markUnreadable(store, room);
      else if (told.told === 'word') tell(store, room, told.of, told.word);
      else if (told.id === me) continue;
      else if (told.told === 'maker') wasThere(store, room, told.id);
      else recordMembership(store, room, told.id, told.state, told.name, event);
    }
  const people = peopleOf(store, room);
  const { kind, unreadable, told } = roomOf(store, room);
  // A room from before the bot looked at what rooms are for is as it was until it is looked at.
  markDirect(store, room, isDirect({ kind: told ? kind : (kind ?? ''), unreadable, people }));
}
function roomOf(store: Store, id: string): StoredRoom {
  const room = findRoom(store, id);
  if (room === undefined) throw new Error('A room that the bot is in is not in the store.');
  return room;
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
  const { came, whole, lost, events } = read.data;
  const room = row.room;
  if (came !== undefined) enterRoom(store, room, false);
  else if (findRoom(store, room) === undefined) return;
  if (lost) markLost(store, room);
  if (whole) {
    tellAnew(store, room);
    forgetStrangers(store, room);
  }
  applyAccess(store, room, events, world.me.id);
  if (events.some(({ type, state_key }) => type === 'm.room.encryption' && state_key === '')) markEncrypted(store, room);
  applyPower(store, room, events);
  const { direct, encrypted } = roomOf(store, room);
  if (encrypted) {
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
