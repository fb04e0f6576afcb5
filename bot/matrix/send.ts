/** Sends the outbox: each row once, to each member in order, members of a room by turns, rooms side by side. `ready -> trying (device, time) -> PUT -> sent`. */
import { z } from 'zod';
import { accessOf } from '../records/access.js';
import type { Store } from '../records/database.js';
import {
  fallBack,
  findOutgoing,
  markNotThere,
  markRefused,
  markSent,
  markTrying,
  markUploaded,
  markWithdrawn,
  type OutboxRow,
  type OutgoingHead,
  outgoingHeads,
  outgoingOf,
  postpone,
  withhold,
} from '../records/outbox.js';
import { readRights } from '../records/rights.js';
import { findRoom } from '../records/rooms.js';
import { seenStill } from '../records/shares.js';
import { findTimeline, markClear } from '../records/timelines.js';
import { markerKey } from '../work/content.js';
import { Lanes, type Task } from '../work/lanes.js';
import { isPrivateNow } from '../work/privacy.js';
import type { Log } from '../work/world.js';
import type { Homeserver } from './homeserver.js';
import { backOff, Pace } from './pace.js';
import { isOwnJoin, statesOf } from './timeline.js';
import { WireFailure } from './wire.js';

/** Homeservers forget transaction ids after about a day: from half of that on, a send whose end is not known is looked up first. */
const trusted_ms = 12 * 3_600_000;
const longestWait_ms = 30_000;
const roomsAtOnce = 4;
const json = z.record(z.string(), z.unknown());
const marker = z.looseObject({ key: z.string() });
const described = z.looseObject({ filename: z.string(), info: z.looseObject({ mimetype: z.string() }) });

export interface SenderOptions {
  readonly store: Store;
  readonly homeserver: Homeserver;
  readonly me: string;
  /** Transaction ids belong to a device. */
  readonly device: string;
  readonly log: Log;
  readonly now: () => number;
  /** The homeserver says that a room is encrypted, and the store did not know. */
  readonly encrypted: (room: string) => void;
  /** The access token is not accepted: nothing more is sent. */
  readonly unauthorized: (failure: WireFailure) => void;
}
export class Sender {
  readonly #it: SenderOptions;
  readonly #pace = new Pace();
  readonly #lanes: Lanes;
  /** When each member was last sent something, counted in rows. */
  readonly #last = new Map<string, number>();
  #begun = 0;

  constructor(options: SenderOptions) {
    this.#it = options;
    this.#lanes = new Lanes({ next: (busy) => this.#next(busy), atOnce: roomsAtOnce });
  }
  /** Sends what may be sent now; rejects when the store fails. */
  run(): Promise<void> {
    return this.#lanes.run();
  }
  /** Starts nothing more, and resolves when what is under way has ended. */
  stop(): Promise<void> {
    return this.#lanes.stop();
  }
  /** When something that waits may be tried again; undefined when nothing waits. */
  nextDue(): number | undefined {
    const heads = this.#lanes.stopped ? [] : outgoingHeads(this.#it.store);
    return heads.length === 0 ? undefined : Math.max(this.#pace.until, Math.min(...heads.map(({ not_before }) => not_before)));
  }

  #next(busy: ReadonlySet<string>): readonly Task[] {
    const now = this.#it.now();
    if (now < this.#pace.until) return [];
    const heads = outgoingHeads(this.#it.store);
    if (heads.length === 0) this.#last.clear();
    const turn = ({ to }: OutgoingHead): number => (to === null ? 0 : (this.#last.get(to) ?? 0));
    const due = heads.filter((row) => !busy.has(row.room) && row.not_before <= now).toSorted((a, b) => turn(a) - turn(b) || a.seq - b.seq);
    // Of each room the one whose turn it is.
    return due
      .filter(({ room }, at) => due.findIndex((one) => one.room === room) === at)
      .map((row) => ({ lane: row.room, run: () => this.#begin(row) }));
  }
  #begin(row: OutgoingHead): Promise<void> {
    if (row.to !== null) this.#last.set(row.to, ++this.#begun);
    return this.#send(row);
  }

  async #send(row: OutboxRow): Promise<void> {
    try {
      await this.#attempt(row);
      this.#pace.passed();
    } catch (problem) {
      if (!(problem instanceof WireFailure)) throw problem;
      this.#failed(row, problem);
    }
  }
  #failed(row: OutboxRow, failure: WireFailure): void {
    const { store, log, now } = this.#it;
    const error = failure.message;
    if (failure.unauthorized) {
      this.#lanes.halt();
      this.#it.unauthorized(failure);
    } else if (failure.status === 429) this.#pace.limited(now(), failure.retryAfter_ms);
    else if (failure.passing)
      postpone(store, row.seq, now() + Math.max(backOff(row.tries, longestWait_ms), failure.retryAfter_ms ?? 0), error);
    else {
      const takesShort = failure.status === 413 || failure.status === 400 || row.file !== null;
      const short = takesShort && fallBack(store, row, error);
      log.warn(
        { room: row.room, action: row.action, status: failure.status, code: failure.code, short },
        'the homeserver refused a message',
      );
      // Refused is refused: the rows after it are not held up.
      if (!short) markRefused(store, row.seq, error);
    }
  }

  async #attempt(row: OutboxRow): Promise<void> {
    const { store, device, now } = this.#it;
    const isUncertain = row.state === 'trying' && (row.device !== device || now() - (row.first_try ?? 0) > trusted_ms);
    if (row.action === 'join' || row.action === 'leave') return this.#move(row);
    if (row.action === 'redact') return this.#redact(row, isUncertain);
    const isSecret = !row.clear && (await this.#isEncrypted(row.room));
    const mayBeSaid = await this.#mayBeSaid(row);
    if (isUncertain || ((isSecret || !mayBeSaid) && row.state === 'trying')) {
      const event = await this.#lookUp(row);
      if (event !== undefined) return void markSent(store, row.txn, event);
      markNotThere(store, row.seq);
    }
    if (isSecret) return markRefused(store, row.seq, 'the room is encrypted');
    if (!mayBeSaid) return this.#withhold(row);
    const content = await this.#complete(row);
    if (content === undefined) return;
    // Sending a file takes a while.
    if (row.file !== null && !(await this.#mayBeSaid(row))) return this.#withhold(row);
    if (!markTrying(store, row.seq, device, now(), JSON.stringify(content))) return;
    const event = await this.#it.homeserver.send(row.room, row.txn, content);
    markSent(store, row.txn, event);
  }
  /** Whether what it needs to be said is so now: as the homeserver says of the room, and the store of the cars. */
  async #mayBeSaid(row: OutboxRow): Promise<boolean> {
    const { store, homeserver, me } = this.#it;
    const rights = readRights(row.rights);
    if (rights === undefined) return true;
    const { member, alone, seen } = rights;
    if (alone && !isPrivateNow(store, row.room, member, accessOf(statesOf(await homeserver.state(row.room)), me))) return false;
    return seenStill(store, member, row.room, seen);
  }
  #withhold(row: OutboxRow): void {
    const { store, log } = this.#it;
    log.info({ room: row.room }, 'a message was not sent: it may not be said there any more');
    if (!withhold(store, row, 'it may not be said any more')) markRefused(store, row.seq, 'it may not be said any more');
  }
  /** Joining and leaving are the same when they are done twice. */
  async #move(row: OutboxRow): Promise<void> {
    const { store, homeserver, device, now } = this.#it;
    if (!markTrying(store, row.seq, device, now(), row.content)) return;
    if (row.action === 'join') await homeserver.join(row.room);
    else
      await homeserver.leave(
        row.room,
        z.object({ reason: z.string() }).safeParse(row.content === null ? undefined : JSON.parse(row.content)).data?.reason,
      );
    markSent(store, row.txn, `${row.action}:${row.txn}`);
  }
  /** Takes back the event of the same command, part and version. */
  async #redact(row: OutboxRow, isUncertain: boolean): Promise<void> {
    const { store, homeserver, device, now } = this.#it;
    const target = outgoingOf(store, row.command).find(
      ({ part, version, action }) => part === row.part && version === row.version && (action === 'send' || action === 'edit'),
    )?.event;
    if (target === null || target === undefined) return markWithdrawn(store, row.seq, 'there is nothing to take back');
    if (isUncertain) {
      const because = (await homeserver.event(row.room, target)).unsigned?.redacted_because;
      if (because !== undefined)
        return void markSent(
          store,
          row.txn,
          z.looseObject({ event_id: z.string() }).safeParse(because).data?.event_id ?? `redacted:${row.txn}`,
        );
      markNotThere(store, row.seq);
    }
    if (!markTrying(store, row.seq, device, now(), null)) return;
    markSent(store, row.txn, await homeserver.redact(row.room, target, row.txn));
  }

  /** The wire content with what was not known when it was written: the address of its file, the reply that it edits. Undefined: it is not to be sent. */
  async #complete(row: OutboxRow): Promise<Readonly<Record<string, unknown>> | undefined> {
    const { store, homeserver } = this.#it;
    let content = json.parse(row.content === null ? undefined : JSON.parse(row.content));
    if (row.file !== null) {
      const inner = content['m.new_content'];
      const { filename, info } = described.parse(content);
      const url = await homeserver.upload(row.file, info.mimetype, filename);
      content = { ...content, url, ...(inner === undefined ? {} : { 'm.new_content': { ...json.parse(inner), url } }) };
      // Withdrawn while it was under way: the row is as it was left.
      if (findOutgoing(store, row.seq)?.content === null) return undefined;
      markUploaded(store, row.seq, JSON.stringify(content));
    }
    if (row.action !== 'edit') return content;
    const earlier = outgoingOf(store, row.command).filter(
      ({ part, action, version, state }) => part === row.part && action === 'send' && version < row.version && state === 'sent',
    );
    const target = earlier.at(-1)?.event;
    if (target === undefined || target === null) {
      markRefused(store, row.seq, 'there is no reply to edit');
      return undefined;
    }
    return { ...content, 'm.relates_to': { ...json.parse(content['m.relates_to']), event_id: target } };
  }
  /** @throws when the homeserver does not say: then nothing is sent. */
  async #isEncrypted(room: string): Promise<boolean> {
    const { store, homeserver } = this.#it;
    if (findRoom(store, room)?.encrypted) return true;
    if (findTimeline(store, room)?.clear) return false;
    if (await homeserver.isEncrypted(room)) {
      this.#it.encrypted(room);
      return true;
    }
    // It may have become so while this was asked.
    if (findRoom(store, room)?.encrypted) return true;
    markClear(store, room);
    return false;
  }
  /** The event that carries this row's marker, looked for backwards to the line that it answers, or to where the bot came in. */
  async #lookUp(row: OutboxRow): Promise<string | undefined> {
    const { homeserver, me } = this.#it;
    for await (const events of homeserver.pages(row.room, undefined))
      for (const event of events) {
        if (event.sender === me && marker.safeParse(event.content[markerKey]).data?.key === row.txn) return event.event_id;
        if (event.event_id === row.command || isOwnJoin(event, me)) return undefined;
      }
    return undefined;
  }
}
