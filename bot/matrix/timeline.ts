/** The part of a room's timeline that is new to the bot: gaps filled, and what was said before it came in left out. */
import { accessOf, isDirect, type StateEvent } from '../records/access.js';
import type { Homeserver, JoinedRoom, RoomEvent } from './homeserver.js';
import { readEvents } from './homeserver.js';

export interface News {
  /** Filled in from before this sync's own part of the timeline, oldest first. */
  readonly filled: readonly RoomEvent[];
  /** State at the beginning of the sync's own part. */
  readonly state: readonly RoomEvent[];
  /** The sync's own part, oldest first. */
  readonly timeline: readonly RoomEvent[];
}
/** How far a room was read. */
export type Known = { readonly last: string | undefined };

const membershipOf = (content: unknown): unknown =>
  typeof content === 'object' && content !== null && 'membership' in content ? content.membership : undefined;
/** An event that is a state of the room, as it is looked at and kept. */
function stateOf({ event_id, type, state_key, sender, content, unsigned }: RoomEvent): StateEvent | undefined {
  if (state_key === undefined) return undefined;
  const before = membershipOf(unsigned?.prev_content);
  return { type, state_key, sender, content, event: event_id, ...(typeof before === 'string' ? { before } : {}) };
}
export const statesOf = (events: readonly RoomEvent[]): readonly StateEvent[] => events.flatMap((event) => stateOf(event) ?? []);
const isOwnMember = (event: RoomEvent, me: string): boolean => event.type === 'm.room.member' && event.state_key === me;
/** The bot came in; not a change of its name while it was there. */
export const isOwnJoin = (event: RoomEvent, me: string): boolean =>
  isOwnMember(event, me) && membershipOf(event.content) === 'join' && membershipOf(event.unsigned?.prev_content) !== 'join';
const isOwnInvite = (event: RoomEvent, me: string): boolean => isOwnMember(event, me) && membershipOf(event.content) === 'invite';

/** Further back, page by page, until `enough`, the room's beginning, or `pages` pages. Oldest first. */
async function backwards(
  homeserver: Homeserver,
  room: string,
  from: string | undefined,
  enough: (older: readonly RoomEvent[]) => boolean,
  pages = Number.POSITIVE_INFINITY,
): Promise<RoomEvent[]> {
  const older: RoomEvent[] = [];
  if (enough(older)) return older;
  let read = 0;
  for await (const events of homeserver.pages(room, from)) {
    older.unshift(...[...events].reverse());
    if (enough(older) || ++read >= pages) break;
  }
  return older;
}
const after = (events: readonly RoomEvent[], isStop: (event: RoomEvent) => boolean): readonly RoomEvent[] =>
  events.slice(events.findLastIndex(isStop) + 1);

/** In a room that the bot was in. `jumped`: the sync does not continue where the last one ended. */
export async function newsOf(homeserver: Homeserver, room: string, it: JoinedRoom, known: Known, jumped: boolean): Promise<News> {
  const timeline = readEvents(it.timeline?.events);
  const state = readEvents(it.state?.events);
  // A sync that continues the last one has nothing but news; what is repeated all the same is known by its id.
  if (!jumped && !it.timeline?.limited) return { filled: [], state, timeline };
  const isLast = (event: RoomEvent): boolean => event.event_id === known.last;
  if (known.last === undefined) return { filled: [], state, timeline: jumped ? [] : timeline };
  if (timeline.some(isLast)) return { filled: [], state, timeline: after(timeline, isLast) };
  const older = await backwards(homeserver, room, it.timeline?.prev_batch, (events) => events.some(isLast));
  return { filled: after(older, isLast), state, timeline };
}

/**
 * In a room that the bot has just come into: what was said since, by position, whatever the clocks say; in a direct chat since it was invited,
 * so that the line which somebody typed while the bot was coming is not lost. States before that are given as state.
 */
export async function newsSinceJoining(
  homeserver: Homeserver,
  room: string,
  it: JoinedRoom,
  me: string,
): Promise<News & { readonly join: string | undefined }> {
  const timeline = readEvents(it.timeline?.events);
  const state = readEvents(it.state?.events);
  const direct = isDirect(accessOf(statesOf([...state, ...timeline]), me));
  const start = (events: readonly RoomEvent[]): number => {
    const joined = events.findLastIndex((event) => isOwnJoin(event, me));
    if (joined < 0 || !direct) return joined;
    const invited = events.slice(0, joined).findLastIndex((event) => isOwnMember(event, me));
    return invited >= 0 && isOwnInvite(events[invited]!, me) ? invited : joined;
  };
  const isThere = (events: readonly RoomEvent[]): boolean => events.some((event) => isOwnJoin(event, me));
  const from = it.timeline?.prev_batch;
  let older: RoomEvent[] = [];
  if (!isThere(timeline) && it.timeline?.limited) older = await backwards(homeserver, room, from, isThere);
  const invites = (events: readonly RoomEvent[]): boolean => [...events, ...timeline].some((event) => isOwnInvite(event, me));
  // How the bot came in is close before; a room may also have been joined without an invitation.
  if (direct && it.timeline?.limited && !invites(older))
    older = await backwards(homeserver, room, from, (events) => isThere([...events, ...timeline]) && invites(events), 5);
  const all = [...older, ...timeline];
  // The bot's own coming can always be seen; where it cannot, nothing is known to have been said after it.
  const at = isThere(all) ? start(all) : all.length - 1;
  const join = all.findLast((event) => isOwnJoin(event, me))?.event_id;
  const cut = Math.max(0, at + 1 - older.length);
  const passed = timeline.slice(0, cut).filter((event) => event.state_key !== undefined);
  return { filled: older.slice(at + 1), state: [...state, ...passed], timeline: timeline.slice(cut), join };
}
