/**
 * A homeserver in memory, behind the same thin wire as a real one. It does what Matrix permits and what homeservers are known to do: repeats events,
 * cuts timelines short, forgets transaction ids after a day, loses answers, is overloaded, refuses.
 */
import { type Call, type Method, type Wire, WireFailure } from '../../bot/matrix/wire.js';

export interface FakeEvent {
  readonly event_id: string;
  readonly type: string;
  readonly sender: string;
  content: Record<string, unknown>;
  readonly state_key?: string;
  readonly redacts?: string;
  readonly origin_server_ts: number;
  unsigned?: { readonly prev_content?: Record<string, unknown>; readonly redacted_because?: { readonly event_id: string } };
  /** Place in the order of all rooms. */
  readonly at: number;
}
export interface Faults {
  /** Chance that a request is refused before anything is done: with 429, with 502, or not reached. */
  readonly before: number;
  /** Chance that it is done, and the answer lost. */
  readonly after: number;
  /** Chance that a sync repeats earlier events. */
  readonly repeat: number;
  /** Chance that a timeline is cut short although it need not be. */
  readonly cut: number;
}
export const noFaults: Faults = { before: 0, after: 0, repeat: 0, cut: 0 };
interface Transaction {
  readonly event: string;
  readonly at: number;
}
const dayMs = 86_400_000;
export const me = '@stubaxle:lane.test';
const path = (template: string): RegExp => new RegExp(`^/_matrix/client/v3/${template.replaceAll('*', '([^/]+)')}$`);
const paths = {
  whoAmI: path('account/whoami'),
  name: path('profile/*/displayname'),
  sync: path('sync'),
  messages: path('rooms/*/messages'),
  event: path('rooms/*/event/*'),
  state: path('rooms/*/state'),
  encryption: /^\/_matrix\/client\/v3\/rooms\/([^/]+)\/state\/m\.room\.encryption\/$/,
  send: path('rooms/*/send/m.room.message/*'),
  redact: path('rooms/*/redact/*/*'),
  join: path('rooms/*/join'),
  leave: path('rooms/*/leave'),
};
const membership = (event: FakeEvent | undefined): unknown => event?.content?.membership;

export class FakeHomeserver {
  readonly rooms = new Map<string, FakeEvent[]>();
  /** Milliseconds since 1970; the whole world's clock. */
  clock = Date.UTC(2026, 3, 1);
  faults: Faults = noFaults;
  /** Rooms in which the bot may not send. */
  readonly forbidden = new Set<string>();
  tokenIsGood = true;
  displayName: string | undefined = 'Stubaxle';
  uploads = 0;
  /** By their addresses. */
  readonly files = new Map<string, Uint8Array>();
  refusesUploads = false;
  /** Places in the timeline from before this are not known any more. */
  forgotBefore = 0;
  readonly counts = {
    requests: 0,
    faults: 0,
    lost: 0,
    limited: 0,
    repeated: 0,
    pages: 0,
    backwards: 0,
    refused: 0,
    remembered: 0,
    forgotten: 0,
  };
  readonly #transactions = new Map<string, Transaction>();
  readonly #random: () => number;
  #next = 0;
  constructor(random: () => number = () => 0.5) {
    this.#random = random;
  }

  // What members do.
  makeRoom(room: string, ...members: readonly string[]): void {
    const maker = members[0] ?? me;
    this.rooms.set(room, []);
    this.add(room, maker, 'm.room.create', { room_version: '10' }, '');
    this.add(room, maker, 'm.room.power_levels', { users: { [maker]: 100 }, state_default: 50 }, '');
    // As homeservers make a chat for two (the preset `trusted_private_chat`).
    this.add(room, maker, 'm.room.join_rules', { join_rule: 'invite' }, '');
    this.add(room, maker, 'm.room.history_visibility', { history_visibility: 'shared' }, '');
    this.add(room, maker, 'm.room.guest_access', { guest_access: 'can_join' }, '');
    for (const member of members) this.join(room, member);
  }
  join(room: string, member: string): void {
    const name = member.slice(1, member.indexOf(':'));
    this.member(room, member, member, { membership: 'join', displayname: member === me ? this.displayName : name });
  }
  leave(room: string, member: string, by = member): void {
    this.member(room, by, member, { membership: 'leave' });
  }
  invite(room: string, by: string, direct = false): void {
    this.member(room, by, me, { membership: 'invite', ...(direct ? { is_direct: true } : {}) });
  }
  encrypt(room: string, by: string): void {
    this.add(room, by, 'm.room.encryption', { algorithm: 'm.megolm.v1.aes-sha2' }, '');
  }
  say(room: string, sender: string, body: string, more: Record<string, unknown> = {}): string {
    return this.add(room, sender, 'm.room.message', { msgtype: 'm.text', body, ...more }).event_id;
  }
  edit(room: string, sender: string, target: string, body: string): string {
    return this.say(room, sender, `* ${body}`, {
      'm.new_content': { msgtype: 'm.text', body },
      'm.relates_to': { rel_type: 'm.replace', event_id: target },
    });
  }
  redact(room: string, sender: string, target: string): string {
    const redaction = this.add(room, sender, 'm.room.redaction', { redacts: target }, undefined, target);
    const event = this.find(room, target);
    if (event) {
      event.content = {};
      event.unsigned = { ...event.unsigned, redacted_because: { event_id: redaction.event_id } };
    }
    return redaction.event_id;
  }
  add(room: string, sender: string, type: string, content: Record<string, unknown>, stateKey?: string, redacts?: string): FakeEvent {
    const before = stateKey === undefined ? undefined : this.state(room, type, stateKey);
    const event: FakeEvent = {
      ...{ event_id: `$${++this.#next}`, type, sender, content, origin_server_ts: this.clock, at: this.#next },
      ...(stateKey === undefined ? {} : { state_key: stateKey }),
      ...(redacts === undefined ? {} : { redacts }),
      ...(before === undefined ? {} : { unsigned: { prev_content: before.content } }),
    };
    this.events(room).push(event);
    return event;
  }
  /** An event as it comes over the wire, which may be malformed in any way. */
  addRaw(room: string, raw: Readonly<Record<string, unknown>>): void {
    Object.assign(this.add(room, '', '', {}), raw);
  }
  member(room: string, by: string, member: string, content: Record<string, unknown>): void {
    this.add(room, by, 'm.room.member', content, member);
  }

  // What can be seen.
  events(room: string): FakeEvent[] {
    const events = this.rooms.get(room);
    if (!events) throw new Error(`no room ${room}`);
    return events;
  }
  find(room: string, event: string): FakeEvent | undefined {
    return this.events(room).find(({ event_id }) => event_id === event);
  }
  /** What the bot has said in the room, redacted or not; edits apart. */
  said(room: string): FakeEvent[] {
    return this.events(room).filter((e) => e.sender === me && e.type === 'm.room.message' && !('m.new_content' in e.content));
  }
  repliesTo(room: string, event: string): FakeEvent[] {
    return this.said(room).filter(({ content }) => inReplyTo(content) === event);
  }
  /** As a client shows it: the newest edit in its place. */
  shown(room: string, reply: FakeEvent): string {
    const edits = this.events(room).filter(
      (e) => e.sender === me && relatesTo(e.content)?.rel_type === 'm.replace' && relatesTo(e.content)?.event_id === reply.event_id,
    );
    const newest = edits.at(-1)?.content['m.new_content'] ?? reply.content;
    return typeof newest === 'object' && newest !== null && 'body' in newest ? String(newest.body) : '';
  }
  state(room: string, type: string, key: string, until = Number.POSITIVE_INFINITY): FakeEvent | undefined {
    return this.events(room).findLast((e) => e.type === type && e.state_key === key && e.at <= until);
  }

  /** For one device of the bot's account. */
  wire(device: string, aboutTo: (method: Method, path: string) => void = () => undefined, done: () => void = () => undefined): Wire {
    return {
      request: async (method, path, call = {}) => {
        aboutTo(method, path);
        // Other rooms go on meanwhile.
        await Promise.resolve();
        this.counts.requests++;
        this.#mayFail();
        const answer = this.#answer(device, method, path, call);
        await Promise.resolve();
        done();
        if (this.#random() < this.faults.after) {
          this.counts.lost++;
          throw this.#random() < 0.5
            ? new WireFailure(502, undefined, undefined, '502')
            : new WireFailure(undefined, undefined, undefined, 'socket hang up');
        }
        return structuredClone(answer);
      },
      close: () => undefined,
    };
  }
  #mayFail(): void {
    if (!this.tokenIsGood) throw new WireFailure(401, 'M_UNKNOWN_TOKEN', undefined, '401 M_UNKNOWN_TOKEN');
    if (this.#random() >= this.faults.before) return;
    this.counts.faults++;
    const which = this.#random();
    if (which < 0.4) throw new WireFailure(429, 'M_LIMIT_EXCEEDED', 2000, '429 M_LIMIT_EXCEEDED');
    if (which < 0.7) throw new WireFailure(502, undefined, undefined, '502');
    throw new WireFailure(undefined, undefined, undefined, 'connect ECONNREFUSED');
  }
  #refuse(status: number, code: string): WireFailure {
    this.counts.refused++;
    return new WireFailure(status, code, undefined, `${status} ${code}`);
  }
  #answer(device: string, method: Method, path: string, call: Call): unknown {
    const at = (name: keyof typeof paths, wanted: Method): string[] | undefined =>
      method === wanted ? paths[name].exec(path)?.slice(1).map(decodeURIComponent) : undefined;
    if (at('whoAmI', 'GET')) return { user_id: me, device_id: device };
    if (at('name', 'GET')) return { displayname: this.displayName };
    if (at('sync', 'GET')) return this.#sync(call.query?.since);
    if (method === 'POST' && path === '/_matrix/media/v3/upload') {
      if (this.refusesUploads) throw this.#refuse(413, 'M_TOO_LARGE');
      const address = `mxc://lane.test/${++this.uploads}`;
      if (call.file !== undefined) this.files.set(address, call.file.bytes);
      return { content_uri: address };
    }
    const [room = '', second = '', third = ''] =
      at('messages', 'GET') ??
      at('event', 'GET') ??
      at('state', 'GET') ??
      at('encryption', 'GET') ??
      at('send', 'PUT') ??
      at('redact', 'PUT') ??
      at('join', 'POST') ??
      at('leave', 'POST') ??
      [];
    if (!this.rooms.has(room)) throw this.#refuse(404, 'M_NOT_FOUND');
    if (at('join', 'POST')) {
      if (membership(this.state(room, 'm.room.member', me)) === 'leave') throw this.#refuse(403, 'M_FORBIDDEN');
      if (membership(this.state(room, 'm.room.member', me)) !== 'join') this.join(room, me);
      return { room_id: room };
    }
    if (at('leave', 'POST')) {
      if (membership(this.state(room, 'm.room.member', me)) !== 'leave') this.leave(room, me);
      return {};
    }
    if (membership(this.state(room, 'm.room.member', me)) !== 'join') throw this.#refuse(403, 'M_FORBIDDEN');
    if (at('messages', 'GET')) return this.#messages(room, call.query?.from);
    if (at('event', 'GET')) {
      const event = this.find(room, second);
      if (!event) throw this.#refuse(404, 'M_NOT_FOUND');
      return event;
    }
    if (at('state', 'GET')) return [...stateIn(this.events(room)).values()];
    if (at('encryption', 'GET')) {
      const state = this.state(room, 'm.room.encryption', '');
      if (!state) throw new WireFailure(404, 'M_NOT_FOUND', undefined, '404 M_NOT_FOUND');
      return state.content;
    }
    if (this.forbidden.has(room)) throw this.#refuse(403, 'M_FORBIDDEN');
    if (at('send', 'PUT')) return this.#once(device, room, second, () => this.#send(room, call.body));
    if (at('redact', 'PUT')) return this.#once(device, room, third, () => this.redact(room, me, second));
    throw this.#refuse(404, 'M_UNRECOGNIZED');
  }
  #send(room: string, body: unknown): string {
    if (JSON.stringify(body).includes('too large for this homeserver')) throw this.#refuse(413, 'M_TOO_LARGE');
    const content = typeof body === 'object' && body !== null ? Object.fromEntries(Object.entries(body)) : {};
    return this.add(room, me, 'm.room.message', content).event_id;
  }
  /** The same event for the same transaction id on the same device, for a day. */
  #once(device: string, room: string, txn: string, act: () => string): { event_id: string } {
    const key = JSON.stringify([device, room, txn]);
    const known = this.#transactions.get(key);
    if (known && this.clock - known.at < dayMs) {
      this.counts.remembered++;
      return { event_id: known.event };
    }
    if (known) this.counts.forgotten++;
    const event = act();
    this.#transactions.set(key, { event, at: this.clock });
    return { event_id: event };
  }

  #messages(room: string, from: unknown): unknown {
    this.counts.pages++;
    if (from === undefined) this.counts.backwards++;
    const events = this.events(room);
    const before = typeof from === 'string' ? Number(from.slice(1)) : events.length;
    const size = this.#random() < this.faults.cut ? 3 : 100;
    const start = Math.max(0, before - size);
    return { chunk: events.slice(start, before).reverse(), ...(start > 0 ? { end: `p${start}` } : {}) };
  }
  #sync(since: unknown): unknown {
    const from = typeof since === 'string' ? Number(since.slice(1)) : 0;
    if (since !== undefined && from < this.forgotBefore) throw new WireFailure(400, 'M_UNKNOWN_POS', undefined, '400 M_UNKNOWN_POS');
    const sections: Record<'join' | 'invite' | 'leave', Record<string, unknown>> = { join: {}, invite: {}, leave: {} };
    // The order of rooms means nothing.
    const rooms = [...this.rooms].sort(() => this.#random() - 0.5);
    for (const [room, events] of rooms) {
      const own = this.state(room, 'm.room.member', me);
      const state = membership(own);
      const isNew = own !== undefined && own.at > from;
      if (state === 'join') {
        const part = this.#joined(events, from, since === undefined || (isNew && own.unsigned?.prev_content?.membership !== 'join'));
        if (part) sections.join[room] = part;
      } else if (state === 'invite' && isNew)
        sections.invite[room] = { invite_state: { events: [{ type: own.type, sender: own.sender, state_key: me, content: own.content }] } };
      else if (state === 'leave' && isNew && since !== undefined) sections.leave[room] = { timeline: { events: [own] } };
    }
    return { next_batch: `s${this.#next}`, rooms: sections };
  }
  #joined(events: readonly FakeEvent[], from: number, isNew: boolean): unknown {
    const first = isNew ? 0 : events.findIndex(({ at }) => at > from);
    if (first < 0) return undefined;
    const repeats = !isNew && this.#random() < this.faults.repeat ? 3 : 0;
    if (repeats > 0) this.counts.repeated++;
    const limit = this.#random() < this.faults.cut ? 2 : 100;
    const start = Math.max(0, first - repeats, events.length - limit);
    const limited = start > first || (isNew && start > 0);
    if (limited) this.counts.limited++;
    const state = stateIn(events.slice(isNew ? 0 : first, Math.max(start, first)));
    return {
      state: { events: start > first || isNew ? [...state.values()] : [] },
      timeline: { events: events.slice(start), limited, prev_batch: `p${start}` },
    };
  }
}
function stateIn(events: readonly FakeEvent[]): ReadonlyMap<string, FakeEvent> {
  const state = new Map<string, FakeEvent>();
  for (const event of events) if (event.state_key !== undefined) state.set(`${event.type} ${event.state_key}`, event);
  return state;
}
type Relation = { readonly rel_type?: unknown; readonly event_id?: unknown; readonly 'm.in_reply_to'?: unknown };
export const relatesTo = (content: Record<string, unknown>): Relation | undefined => {
  const it = content['m.relates_to'];
  return typeof it === 'object' && it !== null ? it : undefined;
};
export function inReplyTo(content: Record<string, unknown>): unknown {
  const it = relatesTo(content)?.['m.in_reply_to'];
  return typeof it === 'object' && it !== null && 'event_id' in it ? it.event_id : undefined;
}
