/** What the bot asks of a homeserver, in the words of the Matrix client-server API (v1.11), each answer checked as it comes in. */
import { createHash } from 'node:crypto';
import { z } from 'zod';
import { accessTypes, unreadableType } from '../records/access.js';
import { type Wire, WireFailure } from './wire.js';

/** What must be there to know what an event is. All else may be missing or malformed without hiding it. */
export const eventSchema = z.looseObject({
  event_id: z.string().min(1).max(255),
  type: z.string(),
  sender: z.string(),
  content: z.record(z.string(), z.unknown()).catch({}),
  state_key: z.string().optional(),
  redacts: z.string().optional().catch(undefined),
  origin_server_ts: z.number().optional().catch(undefined),
  unsigned: z.looseObject({ redacted_because: z.unknown().optional(), prev_content: z.unknown().optional() }).optional().catch(undefined),
});
export type RoomEvent = z.infer<typeof eventSchema>;
const events = z.array(z.unknown()).optional();
const joinedRoom = z.looseObject({
  state: z.looseObject({ events }).optional(),
  timeline: z.looseObject({ events, limited: z.boolean().optional(), prev_batch: z.string().optional() }).optional(),
});
const syncSchema = z.looseObject({
  next_batch: z.string().min(1),
  rooms: z
    .looseObject({
      join: z.record(z.string(), joinedRoom).optional(),
      invite: z.record(z.string(), z.looseObject({ invite_state: z.looseObject({ events }).optional() })).optional(),
      leave: z.record(z.string(), z.looseObject({})).optional(),
    })
    .optional(),
});
export type Sync = z.infer<typeof syncSchema>;
export type JoinedRoom = z.infer<typeof joinedRoom>;
const pageSchema = z.looseObject({ chunk: z.array(z.unknown()), end: z.string().optional() });
export interface Page {
  /** Newest first. */
  readonly events: readonly RoomEvent[];
  /** Undefined at the room's beginning, or where the bot may not look. */
  readonly end: string | undefined;
}
const sentSchema = z.looseObject({ event_id: z.string().min(1) });

/** What was plainly said in a room, and not a state of it. */
const saying = z.looseObject({ type: z.string(), state_key: z.undefined().optional() });
const withContent = z.looseObject({ content: z.record(z.string(), z.unknown()) });
/**
 * The events that can be read; one that is malformed must not hold up the others. One that may be a state of the room is not left out, but kept as one
 * that cannot be read.
 */
export const readEvents = (list: readonly unknown[] | undefined): RoomEvent[] =>
  (list ?? []).flatMap((one): RoomEvent[] => {
    const isSaid = saying.safeParse(one).success;
    const read = eventSchema.safeParse(one);
    if (read.success && (isSaid || withContent.safeParse(one).success)) return [read.data];
    if (isSaid) return [];
    const hash = createHash('sha256')
      .update(JSON.stringify(one) ?? '')
      .digest('hex');
    return [{ event_id: `unreadable:${hash}`, type: unreadableType, sender: '', content: {}, state_key: '' }];
  });

/** States of a room that the bot keeps something of. */
export const stateTypes: readonly string[] = [...accessTypes, 'm.room.encryption', 'm.room.power_levels', unreadableType];
const types = ['m.room.message', 'm.room.encrypted', 'm.room.redaction', ...stateTypes.filter((type) => type !== unreadableType)];
export const timelineLimit = 100;
const none = { not_types: ['*'] };
const roomFilter = { types, lazy_load_members: false };
const syncFilter = JSON.stringify({
  presence: none,
  account_data: none,
  room: {
    account_data: none,
    ephemeral: none,
    state: roomFilter,
    timeline: { ...roomFilter, limit: timelineLimit },
  },
});
const pageFilter = JSON.stringify(roomFilter);
/** One after another; a homeserver that has no more is expected to say so. */
const mostEmptyPages = 50;
const client = '/_matrix/client/v3';
const name = encodeURIComponent;

export class Homeserver {
  readonly #wire: Wire;
  constructor(wire: Wire) {
    this.#wire = wire;
  }
  async whoAmI(): Promise<{ readonly user: string; readonly device: string }> {
    const it = parse(
      z.looseObject({ user_id: z.string(), device_id: z.string().optional() }),
      await this.#wire.request('GET', `${client}/account/whoami`),
    );
    return { user: it.user_id, device: it.device_id ?? '' };
  }
  /** Undefined when the account has none. */
  async displayName(user: string): Promise<string | undefined> {
    try {
      const it = await this.#wire.request('GET', `${client}/profile/${name(user)}/displayname`);
      return parse(z.looseObject({ displayname: z.string().nullish() }), it).displayname ?? undefined;
    } catch (problem) {
      if (problem instanceof WireFailure && problem.status === 404) return undefined;
      throw problem;
    }
  }
  async sync(since: string | undefined, wait_ms: number): Promise<Sync> {
    const query = { filter: syncFilter, timeout: since === undefined ? 0 : wait_ms, ...(since === undefined ? {} : { since }) };
    const timeout_ms = since === undefined ? 600_000 : wait_ms + 15_000;
    return parse(syncSchema, await this.#wire.request('GET', `${client}/sync`, { query, timeout_ms }));
  }
  /** Backwards from `from`, or from now. */
  async messages(room: string, from: string | undefined): Promise<Page> {
    const query = { dir: 'b', limit: timelineLimit, filter: pageFilter, ...(from === undefined ? {} : { from }) };
    const page = parse(pageSchema, await this.#wire.request('GET', `${client}/rooms/${name(room)}/messages`, { query }));
    return { events: readEvents(page.chunk), end: page.end };
  }
  /** Backwards page by page, to the room's beginning. A page may be empty and not the last: the homeserver leaves out what was not asked for. */
  async *pages(room: string, from: string | undefined): AsyncGenerator<readonly RoomEvent[]> {
    let at = from;
    for (let empty = 0; empty < mostEmptyPages; ) {
      const { events, end } = await this.messages(room, at);
      empty = events.length === 0 ? empty + 1 : 0;
      yield events;
      if (end === undefined || end === at) return;
      at = end;
    }
  }
  async event(room: string, event: string): Promise<RoomEvent> {
    return parse(eventSchema, await this.#wire.request('GET', `${client}/rooms/${name(room)}/event/${name(event)}`));
  }
  /** All of the room's state, as it stands now. */
  async state(room: string): Promise<readonly RoomEvent[]> {
    return readEvents(parse(z.array(z.unknown()), await this.#wire.request('GET', `${client}/rooms/${name(room)}/state`)));
  }
  /** @throws WireFailure also when the homeserver does not say: not knowing is not "no". */
  async isEncrypted(room: string): Promise<boolean> {
    try {
      await this.#wire.request('GET', `${client}/rooms/${name(room)}/state/m.room.encryption/`);
      return true;
    } catch (problem) {
      if (problem instanceof WireFailure && problem.status === 404 && problem.code === 'M_NOT_FOUND') return false;
      throw problem;
    }
  }
  /** @returns the event's id; the same for the same transaction id, for about a day and on the same device. */
  async send(room: string, txn: string, content: unknown): Promise<string> {
    const path = `${client}/rooms/${name(room)}/send/m.room.message/${name(txn)}`;
    return parse(sentSchema, await this.#wire.request('PUT', path, { body: content })).event_id;
  }
  async redact(room: string, event: string, txn: string): Promise<string> {
    const path = `${client}/rooms/${name(room)}/redact/${name(event)}/${name(txn)}`;
    return parse(sentSchema, await this.#wire.request('PUT', path, { body: {} })).event_id;
  }
  /** @returns the address (`mxc:`) of the file. */
  async upload(bytes: Uint8Array, type: string, filename: string): Promise<string> {
    const answer = await this.#wire.request('POST', '/_matrix/media/v3/upload', { query: { filename }, file: { bytes, type } });
    return parse(z.looseObject({ content_uri: z.string().startsWith('mxc://') }), answer).content_uri;
  }
  async join(room: string): Promise<void> {
    await this.#wire.request('POST', `${client}/rooms/${name(room)}/join`, { body: {} });
  }
  /** Leaves, or turns an invitation down. */
  async leave(room: string, reason: string | undefined): Promise<void> {
    await this.#wire.request('POST', `${client}/rooms/${name(room)}/leave`, { body: reason === undefined ? {} : { reason } });
  }
}
/** An answer that is not what the API promises is a failure of the homeserver's (or of something between), and may pass. */
function parse<T>(schema: z.ZodType<T>, answer: unknown): T {
  const read = schema.safeParse(answer);
  if (read.success) return read.data;
  throw new WireFailure(
    undefined,
    undefined,
    undefined,
    `the homeserver's answer is not what its API promises: ${read.error.issues[0]?.message ?? ''}`,
  );
}
