/** A club member on a client library of their own (not the bot's), as far as the suite needs one. */
import { EventEmitter, once } from 'node:events';
import { setTimeout as pause } from 'node:timers/promises';
import {
  ClientEvent,
  createClient,
  type IContent,
  type MatrixClient,
  type MatrixEvent,
  Preset,
  type Room,
  RoomEvent,
  type Visibility,
} from 'matrix-js-sdk';
import { logger } from 'matrix-js-sdk/lib/logger.js';
import type { Account, Synapse } from './synapse.js';

logger.disableAll();

/** A message event as the suite looks at it: kept as it came, newest last. */
export interface Heard {
  readonly id: string;
  readonly room: string;
  readonly sender: string;
  readonly type: string;
  readonly content: IContent;
}

export class Member {
  readonly client: MatrixClient;
  readonly id: string;
  readonly heard: Heard[] = [];
  private readonly news = new EventEmitter();

  private constructor(client: MatrixClient, id: string) {
    this.client = client;
    this.id = id;
    this.news.setMaxListeners(0);
    client.on(RoomEvent.Timeline, (event: MatrixEvent, _room: Room | undefined, toStart: boolean | undefined) => {
      if (toStart) return;
      const [id_, room, sender] = [event.getId(), event.getRoomId(), event.getSender()];
      // Local echoes carry an id of the client's own until the server has answered.
      if (!id_ || id_.startsWith('~') || !room || !sender || this.heard.some((h) => h.id === id_)) return;
      this.heard.push({ id: id_, room, sender, type: event.getType(), content: event.getOriginalContent() });
      this.news.emit('event');
    });
  }

  static async join(server: Synapse, account: Account): Promise<Member> {
    const { accessToken, deviceId } = await server.login(account);
    const client = createClient({ baseUrl: server.url, accessToken, deviceId, userId: account.userId });
    const member = new Member(client, account.userId);
    const ready = new Promise<void>((resolve) => client.on(ClientEvent.Sync, (state) => state === 'PREPARED' && resolve()));
    await client.startClient({ initialSyncLimit: 20, pollTimeout: 5000, threadSupport: false });
    await ready;
    return member;
  }

  stop(): void {
    this.client.stopClient();
  }

  async makeRoom(
    options: { readonly name?: string; readonly invite?: string[]; readonly direct?: boolean; readonly encrypted?: boolean } = {},
  ): Promise<string> {
    const { room_id } = await this.client.createRoom({
      ...(options.name ? { name: options.name } : {}),
      invite: options.invite ?? [],
      is_direct: options.direct ?? false,
      preset: options.direct ? Preset.TrustedPrivateChat : Preset.PublicChat,
      visibility: 'private' as Visibility,
      initial_state: options.encrypted
        ? [{ type: 'm.room.encryption', state_key: '', content: { algorithm: 'm.megolm.v1.aes-sha2' } }]
        : [],
    });
    return room_id;
  }

  /** Sends a text and gives its event id. Sent again, under the same transaction, until the server has it. */
  async say(room: string, body: string, more: IContent = {}): Promise<string> {
    return this.send(room, 'm.room.message', { msgtype: 'm.text', body, ...more });
  }

  async send(room: string, type: string, content: IContent): Promise<string> {
    const transaction = this.client.makeTxnId();
    const path = `/rooms/${encodeURIComponent(room)}/send/${type}/${transaction}`;
    for (let tries = 0; ; tries++) {
      try {
        const { event_id } = await this.client.http.authedRequest<{ event_id: string }>('PUT' as never, path, undefined, content);
        return event_id;
      } catch (error) {
        if (tries > 200) throw error;
        await pause(100);
      }
    }
  }

  edit(room: string, event: string, body: string): Promise<string> {
    return this.say(room, `* ${body}`, {
      'm.new_content': { msgtype: 'm.text', body },
      'm.relates_to': { rel_type: 'm.replace', event_id: event },
    });
  }

  inThread(room: string, root: string, body: string): Promise<string> {
    return this.say(room, body, {
      'm.relates_to': { rel_type: 'm.thread', event_id: root, is_falling_back: true, 'm.in_reply_to': { event_id: root } },
    });
  }

  async redact(room: string, event: string): Promise<void> {
    await this.client.redactEvent(room, event);
  }

  /** The first event, heard already or within the time given, for which `wanted` holds. */
  async hear(wanted: (h: Heard) => boolean, what: string, milliseconds = 20_000): Promise<Heard> {
    const until = Date.now() + milliseconds;
    for (;;) {
      const found = this.heard.find(wanted);
      if (found) return found;
      const left = until - Date.now();
      if (left <= 0)
        throw new Error(
          `${this.id} did not hear ${what}; heard last: ${JSON.stringify(this.heard.slice(-5).map((h) => [h.sender, h.content.body]))}`,
        );
      await once(this.news, 'event', { signal: AbortSignal.timeout(left) }).catch(() => undefined);
    }
  }

  /** All that the homeserver has of a room, oldest first: a client that was cut off may have been shown only the end of it. */
  async everything(room: string): Promise<Heard[]> {
    const all: Heard[] = [];
    for (let from: string | undefined; ; ) {
      const path = `/rooms/${encodeURIComponent(room)}/messages`;
      const query = { dir: 'b', limit: '500', ...(from === undefined ? {} : { from }) };
      const page = await this.client.http.authedRequest<{
        chunk: { event_id: string; sender: string; type: string; content: IContent }[];
        end?: string;
      }>('GET' as never, path, query);
      for (const { event_id, sender, type, content } of page.chunk) all.push({ id: event_id, room, sender, type, content });
      if (page.end === undefined || page.chunk.length === 0) return all.reverse();
      from = page.end;
    }
  }

  /** The bot's reply to an event: in its thread or by a rich reply. */
  reply(event: string, bot: string, milliseconds?: number): Promise<Heard> {
    return this.hear((h) => isReplyTo(h, event, bot), `a reply to ${event}`, milliseconds);
  }

  /** Asks in a room and waits for the reply. */
  async ask(room: string, body: string, bot: string): Promise<Heard> {
    return this.reply(await this.say(room, body), bot);
  }
}

export function isReplyTo(h: Heard, event: string, bot: string): boolean {
  if (h.sender !== bot || h.type !== 'm.room.message') return false;
  const relation = h.content['m.relates_to'];
  return relation?.['m.in_reply_to']?.event_id === event && relation?.rel_type !== 'm.replace';
}
