/** One sync: fetched, its gaps filled, then events and token stored in one transaction. The token never moves when anything of that fails. */
import { z } from 'zod';
import type { Store } from '../store/database.js';
import { type Incoming, receive } from '../store/inbox.js';
import { recall, remember } from '../store/meta.js';
import { markSent } from '../store/outbox.js';
import { markEncrypted } from '../store/rooms.js';
import { advanceTimeline, findTimeline, followedRooms, stopTimeline } from '../store/timelines.js';
import { markerKey } from '../work/content.js';
import type { StateContent } from '../work/rooms.js';
import type { Log } from '../work/world.js';
import { type Homeserver, type RoomEvent, readEvents, type Sync } from './homeserver.js';
import { type News, newsOf, newsSinceJoining } from './timeline.js';
import { WireFailure } from './wire.js';

const relation = z.looseObject({ rel_type: z.string(), event_id: z.string() });
const marker = z.looseObject({ key: z.string() });
const stateTypes = ['m.room.member', 'm.room.encryption', 'm.room.power_levels', 'm.room.create'];

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
      try {
        if (known !== undefined)
          taken.push(this.#take(room, await newsOf(homeserver, room, it, known, jumped), undefined, sync.next_batch));
        else if (since === undefined)
          taken.push(this.#first(room, readEvents(it.state?.events), readEvents(it.timeline?.events), sync.next_batch));
        else {
          const news = await newsSinceJoining(homeserver, room, it, this.#it.me);
          taken.push(this.#take(room, news, `came:${room}:${news.join ?? sync.next_batch}`, sync.next_batch));
        }
      } catch (problem) {
        // The bot was put out of the room while it looked: the next sync says so.
        if (!(problem instanceof WireFailure) || (problem.status !== 403 && problem.status !== 404)) throw problem;
        this.#it.log.warn({ room, status: problem.status }, 'the room can no longer be read');
      }
    }
    // A sync from the start tells of no room that the bot was put out of meanwhile.
    const joined = sync.rooms?.join ?? {};
    const gone = jumped ? followedRooms(store).filter((room) => joined[room] === undefined) : [];
    const left = [...Object.keys(sync.rooms?.leave ?? {}), ...gone];
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
  #store(sync: Sync, taken: readonly Taken[], left: readonly string[]): number {
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
      ...this.#take(room, { filled: [], state: [], timeline: [] }, undefined, batch),
      ...this.#states(room, states, `first:${room}:${batch}`, 'known'),
      last: timeline.at(-1)?.event_id,
    };
  }
  #take(room: string, { filled, state, timeline }: News, came: string | undefined, batch: string): Taken {
    const all = [...filled, ...timeline];
    const { me } = this.#it;
    const own = all.flatMap(({ sender, event_id, content }) => {
      const key = sender === me ? marker.safeParse(content[markerKey]).data?.key : undefined;
      return key === undefined ? [] : [{ key, event: event_id }];
    });
    // Newly in the room, the state is what everything starts from, what was filled in included.
    const states = this.#states(room, state, came ?? `state:${room}:${batch}`, came === undefined ? undefined : 'new');
    const filledRows = filled.flatMap((event) => this.#row(room, event, came !== undefined));
    const rows = came === undefined ? [...filledRows, ...states.rows] : [...states.rows, ...filledRows];
    const encrypted = states.encrypted || all.some(({ type, state_key }) => type === 'm.room.encryption' && state_key === '');
    return {
      room,
      own,
      encrypted,
      rows: [...rows, ...timeline.flatMap((event) => this.#row(room, event, false))],
      last: all.at(-1)?.event_id,
    };
  }
  #states(room: string, events: readonly RoomEvent[], event: string, came: StateContent['came']): Pick<Taken, 'rows' | 'encrypted'> {
    const relevant = events.filter(({ type, state_key }) => state_key !== undefined && stateTypes.includes(type));
    const encrypted = relevant.some(({ type, state_key }) => type === 'm.room.encryption' && state_key === '');
    if (relevant.length === 0 && came === undefined) return { rows: [], encrypted };
    return { rows: [{ event, room, sender: '', kind: 'state', at: this.#it.now(), content: stateJson(relevant, came) }], encrypted };
  }
  #row(room: string, event: RoomEvent, withoutStates: boolean): Incoming[] {
    const { event_id, type, sender, content, state_key } = event;
    const base = { event: event_id, room, sender, at: Math.min(event.origin_server_ts ?? Number.POSITIVE_INFINITY, this.#it.now()) };
    if (state_key !== undefined) {
      const relevant = stateTypes.includes(type) && !(type === 'm.room.member' && state_key === this.#it.me);
      return relevant && !withoutStates ? [{ ...base, sender: '', kind: 'state', content: stateJson([event], undefined) }] : [];
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
function stateJson(events: readonly RoomEvent[], came: StateContent['came']): string {
  const kept = events.map(({ type, state_key, sender, content }) => ({ type, state_key: state_key ?? '', sender, content }));
  return JSON.stringify({ ...(came === undefined ? {} : { came }), events: kept } satisfies StateContent);
}
