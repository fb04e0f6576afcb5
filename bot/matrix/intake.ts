/** One sync: fetched, its gaps filled, then events and token stored in one transaction. The token never moves when anything of that fails. */
import { z } from 'zod';
import type { Store } from '../records/database.js';
import { type Incoming, receive } from '../records/inbox.js';
import { recall, remember } from '../records/meta.js';
import { markSent } from '../records/outbox.js';
import { findRoom, markEncrypted } from '../records/rooms.js';
import { advanceTimeline, findTimeline, followedRooms, stopTimeline } from '../records/timelines.js';
import { markerKey } from '../work/content.js';
import type { StateContent } from '../work/rooms.js';
import type { Log } from '../work/world.js';
import { type Homeserver, type RoomEvent, readEvents, type Sync, stateTypes } from './homeserver.js';
import { type News, newsOf, newsSinceJoining, statesOf } from './timeline.js';
import { WireFailure } from './wire.js';

const relation = z.looseObject({ rel_type: z.string(), event_id: z.string() });
const marker = z.looseObject({ key: z.string() });

/** What one room's news comes to. */
interface Taken {
  readonly room: string;
  readonly rows: readonly Incoming[];
  /** The bot's own replies, as they arrive in the timeline: transaction id and event id. */
  readonly own: readonly { readonly key: string; readonly event: string }[];
  readonly encrypted: boolean;
  readonly last: string | undefined;
}
export interface IntakeOptions {
  readonly store: Store;
  readonly homeserver: Homeserver;
  readonly me: string;
  readonly log: Log;
  readonly now: () => number;
}
export class Intake {
  readonly #it: IntakeOptions;
  #closed = false;
  constructor(options: IntakeOptions) {
    this.#it = options;
  }
  /**
   * @param wait_ms - how long the homeserver may wait for something to happen.
   * @returns how many rows are new in the inbox.
   * @throws WireFailure: nothing was stored, and the next call asks for the same again.
   */
  async once(wait_ms: number): Promise<number> {
    const { store, homeserver } = this.#it;
    const since = recall(store, 'sync');
    const { sync, jumped } = await this.#sync(since, wait_ms);
    const taken: Taken[] = [];
    for (const [room, it] of Object.entries(sync.rooms?.join ?? {})) {
      const known = findTimeline(store, room);
      const news = await this.#readable(room, async (): Promise<Taken> => {
        if (known !== undefined) {
          const whole = jumped ? { whole: true as const } : {};
          return this.#take(room, await newsOf(homeserver, room, it, known, jumped), whole, `state:${room}:${sync.next_batch}`);
        }
        if (since === undefined) return this.#first(room, readEvents(it.state?.events), readEvents(it.timeline?.events), sync.next_batch);
        const since_ = await newsSinceJoining(homeserver, room, it, this.#it.me);
        return this.#take(room, since_, { came: 'new', whole: true }, `came:${room}:${since_.join ?? sync.next_batch}`);
      });
      if (news !== undefined) taken.push(news);
      else if (known !== undefined) taken.push(this.#lost(room, sync.next_batch));
    }
    // A sync from the start tells of no room that the bot was put out of meanwhile; and who is invited again was put out.
    const { join = {}, invite = {}, leave = {} } = sync.rooms ?? {};
    const gone = jumped ? followedRooms(store).filter((room) => join[room] === undefined) : [];
    const left = new Set([...Object.keys(leave), ...Object.keys(invite), ...gone]);
    for (const room of followedRooms(store))
      if (!left.has(room) && findRoom(store, room)?.told === false) taken.push(...(await this.#whole(room, sync.next_batch)));
    return this.#closed ? 0 : store.transaction(() => this.#store(sync, taken, left));
  }
  /** Stores nothing more: a sync that is under way is asked again by the next process. */
  close(): void {
    this.#closed = true;
  }

  /** A token that the homeserver no longer knows is not an end: the rooms are taken up where each was left. */
  async #sync(since: string | undefined, wait_ms: number): Promise<{ sync: Sync; jumped: boolean }> {
    try {
      return { sync: await this.#it.homeserver.sync(since, wait_ms), jumped: false };
    } catch (problem) {
      if (since === undefined || !(problem instanceof WireFailure) || problem.status !== 400) throw problem;
      this.#it.log.warn({ code: problem.code }, 'the homeserver does not know the place any more where the last sync ended');
      return { sync: await this.#it.homeserver.sync(undefined, 0), jumped: true };
    }
  }
  /** Undefined where the bot was put out of the room while it looked: the next sync says so. */
  async #readable<T>(room: string, read: () => Promise<T>): Promise<T | undefined> {
    try {
      return await read();
    } catch (problem) {
      if (!(problem instanceof WireFailure) || (problem.status !== 403 && problem.status !== 404)) throw problem;
      this.#it.log.warn({ room, status: problem.status }, 'the room can no longer be read');
      return undefined;
    }
  }
  /** Who came and went meanwhile is not known. */
  #lost(room: string, batch: string): Taken {
    return { room, own: [], ...this.#states(room, [], `lost:${room}:${batch}`, { lost: true }), last: undefined };
  }
  /** A room of which the store does not know all that it must: its state is read as a whole. */
  async #whole(room: string, batch: string): Promise<readonly Taken[]> {
    const events = await this.#readable(room, () => this.#it.homeserver.state(room));
    if (events === undefined) return [];
    return [{ room, own: [], ...this.#states(room, events, `whole:${room}:${batch}`, { whole: true }), last: undefined }];
  }
  #store(sync: Sync, taken: readonly Taken[], left: ReadonlySet<string>): number {
    const { store, now } = this.#it;
    let added = 0;
    const add = (row: Incoming): void => {
      if (receive(store, row)) added++;
    };
    for (const room of left) {
      if (findTimeline(store, room) === undefined) continue;
      add({ event: `left:${room}:${sync.next_batch}`, room, sender: '', kind: 'left', at: now() });
      stopTimeline(store, room);
    }
    for (const { room, rows, own, encrypted, last } of taken) {
      // At once, before any row is handled: from here on nothing goes into the room in clear.
      if (encrypted) markEncrypted(store, room);
      for (const row of rows) add(row);
      for (const { key, event } of own) markSent(store, key, event);
      advanceTimeline(store, room, last);
    }
    for (const [room, { invite_state }] of Object.entries(sync.rooms?.invite ?? {}))
      add(this.#invite(room, invite_state?.events, sync.next_batch));
    remember(store, 'sync', sync.next_batch);
    return added;
  }
  #invite(room: string, events: readonly unknown[] | undefined, batch: string): Incoming {
    const stripped = z.looseObject({ type: z.literal('m.room.member'), state_key: z.literal(this.#it.me), sender: z.string() });
    // Without an inviter there is nobody who might be allowed to.
    const sender = (events ?? []).flatMap((one) => stripped.safeParse(one).data ?? []).at(-1)?.sender ?? '';
    return { event: `invite:${room}:${batch}`, room, sender, kind: 'invite', at: this.#it.now() };
  }

  /** A room that the bot was in before it first started: who is there, and nothing of what was said. */
  #first(room: string, state: readonly RoomEvent[], timeline: readonly RoomEvent[], batch: string): Taken {
    const states = [...state, ...timeline.filter(({ state_key }) => state_key !== undefined)];
    return {
      room,
      own: [],
      ...this.#states(room, states, `first:${room}:${batch}`, { came: 'known', whole: true }),
      last: timeline.at(-1)?.event_id,
    };
  }
  /** `event`: the id of the row that its state becomes. */
  #take(room: string, { filled, state, timeline }: News, how: How, event: string): Taken {
    const all = [...filled, ...timeline];
    const { me } = this.#it;
    const own = all.flatMap(({ sender, event_id, content }) => {
      const key = sender === me ? marker.safeParse(content[markerKey]).data?.key : undefined;
      return key === undefined ? [] : [{ key, event: event_id }];
    });
    // Newly in the room, the state is what everything starts from, what was filled in included.
    const states = this.#states(room, state, event, how);
    const newly = how.came !== undefined;
    const filledRows = filled.flatMap((one) => this.#row(room, one, newly));
    const rows = newly ? [...states.rows, ...filledRows] : [...filledRows, ...states.rows];
    const encrypted = states.encrypted || all.some(({ type, state_key }) => type === 'm.room.encryption' && state_key === '');
    return {
      room,
      own,
      encrypted,
      rows: [...rows, ...timeline.flatMap((one) => this.#row(room, one, false))],
      last: all.at(-1)?.event_id,
    };
  }
  #states(room: string, events: readonly RoomEvent[], event: string, how: How): Pick<Taken, 'rows' | 'encrypted'> {
    const relevant = events.filter(({ type, state_key }) => state_key !== undefined && stateTypes.includes(type));
    const encrypted = relevant.some(({ type, state_key }) => type === 'm.room.encryption' && state_key === '');
    if (relevant.length === 0 && Object.keys(how).length === 0) return { rows: [], encrypted };
    return { rows: [{ event, room, sender: '', kind: 'state', at: this.#it.now(), content: stateJson(relevant, how) }], encrypted };
  }
  #row(room: string, event: RoomEvent, withoutStates: boolean): Incoming[] {
    const { event_id, type, sender, content, state_key } = event;
    const base = { event: event_id, room, sender, at: Math.min(event.origin_server_ts ?? Number.POSITIVE_INFINITY, this.#it.now()) };
    if (state_key !== undefined) {
      const relevant = stateTypes.includes(type) && !(type === 'm.room.member' && state_key === this.#it.me);
      return relevant && !withoutStates ? [{ ...base, sender: '', kind: 'state', content: stateJson([event], {}) }] : [];
    }
    if (sender === this.#it.me) return [];
    if (type === 'm.room.encrypted') return [{ ...base, kind: 'message', state: 'unreadable' }];
    if (type === 'm.room.redaction') {
      const target = event.redacts ?? content.redacts;
      return typeof target === 'string' ? [{ ...base, kind: 'redaction', target }] : [];
    }
    if (type !== 'm.room.message') return [];
    const relates = relation.safeParse(content['m.relates_to']).data;
    const body = JSON.stringify(content);
    if (relates?.rel_type === 'm.replace') return [{ ...base, kind: 'edit', target: relates.event_id, content: body }];
    return [{ ...base, kind: 'message', content: body, ...(relates?.rel_type === 'm.thread' ? { thread: relates.event_id } : {}) }];
  }
}
/** What is known of a row of states beside the events. */
type How = Omit<StateContent, 'events'>;
const stateJson = (events: readonly RoomEvent[], how: How): string =>
  JSON.stringify({ ...how, events: [...statesOf(events)] } satisfies StateContent);
