/** Handles the inbox, one row at a time in a room, rooms side by side. The same for a homeserver, for the console and for a simulation. */
import { randomUUID } from 'node:crypto';
import {
  becomeIncoming,
  countTry,
  editsOf,
  eraseIncoming,
  findIncoming,
  finishIncoming,
  type InboxRow,
  incomingHeads,
  isRedacted,
  receive,
} from './store/inbox.js';
import { findRoom, type StoredRoom } from './store/rooms.js';
import { hear } from './work/addressed.js';
import { type Asked, answerLine, giveUp, type Handled } from './work/answering.js';
import { Lanes, type Task } from './work/lanes.js';
import { redact } from './work/redacting.js';
import { applyInvite, applyLeft, applyState } from './work/rooms.js';
import type { World } from './work/world.js';

/** A row that has ended the process this often is not worked out again, but answered that it is given up. */
const mostTries = 5;
/** And one that has ended it this often is dropped: even that answer ends it. */
const allTries = 10;
const roomsAtOnce = 8;
const nothing = (state: Handled['state']): Handled => ({ state, reply: undefined, rendered: undefined });

export class Work {
  readonly #world: World;
  /** Called after each row that may have put something into the outbox. */
  readonly #outgoing: () => void;
  readonly #waiting = new Map<string, (handled: Handled) => void>();
  readonly #lanes: Lanes;
  /** The room whose row is handled with nothing beside it. */
  #alone: string | undefined;

  constructor(world: World, outgoing: () => void = () => undefined) {
    this.#world = world;
    this.#outgoing = outgoing;
    this.#lanes = new Lanes({ next: (busy) => this.#next(busy), atOnce: roomsAtOnce });
  }

  /** Handles all that is open. Resolves when nothing is; rejects when the store fails, after what was under way has ended. */
  run(): Promise<void> {
    return this.#lanes.run();
  }
  /** Starts nothing more, and resolves when what is under way has ended. */
  stop(): Promise<void> {
    return this.#lanes.stop();
  }
  /**
   * What a member says in a room, through the same inbox as what comes from a homeserver.
   * @returns what came of it, once it is committed.
   */
  async ask({ member, room, text }: { readonly member: string; readonly room: string; readonly text: string }): Promise<Handled> {
    const event = `said:${randomUUID()}`;
    const content = JSON.stringify({ msgtype: 'm.text', body: text });
    receive(this.#world.store, { event, room, sender: member, kind: 'message', content, at: this.#world.now() });
    const handled = new Promise<Handled>((resolve) => this.#waiting.set(event, resolve));
    const [it] = await Promise.all([handled, this.run()]);
    return it;
  }

  #next(busy: ReadonlySet<string>): readonly Task[] {
    if (this.#alone !== undefined && busy.has(this.#alone)) return [];
    const heads = incomingHeads(this.#world.store).filter(({ room }) => !busy.has(room));
    // What was under way when a process ended is handled alone, so that only the row that ends it is counted up.
    const suspect = heads.find(({ tries }) => tries > 0);
    if (suspect !== undefined && busy.size > 0) return [];
    this.#alone = suspect?.room;
    const begun = suspect === undefined ? heads : [suspect];
    return begun.map((row) => ({ room: row.room, run: () => this.#handle(row) }));
  }
  async #handle(row: InboxRow): Promise<void> {
    await this.#world.warm?.();
    countTry(this.#world.store, row.seq);
    const handled = await this.#handled({ ...row, tries: row.tries + 1 });
    this.#outgoing();
    this.#waiting.get(row.event)?.(handled);
    this.#waiting.delete(row.event);
  }
  async #handled(row: InboxRow): Promise<Handled> {
    const { store } = this.#world;
    if (row.tries > allTries) {
      finishIncoming(store, row.seq, 'failed', 'given up');
      return nothing('failed');
    }
    switch (row.kind) {
      case 'message':
        return this.#message(row);
      case 'edit':
        return this.#edit(row);
      case 'redaction':
        store.transaction(() => redact(this.#world, row));
        return nothing('silent');
      case 'state':
        store.transaction(() => applyState(this.#world, row));
        return nothing('silent');
      case 'invite':
        store.transaction(() => applyInvite(this.#world, row));
        return nothing('silent');
      case 'left':
        store.transaction(() => applyLeft(this.#world, row));
        return nothing('silent');
    }
  }

  async #message(row: InboxRow): Promise<Handled> {
    const { store } = this.#world;
    if (isRedacted(store, row.event)) return this.#drop(row, 'withdrawn');
    const room = this.#room(row);
    if (room === undefined) return this.#drop(row, 'silent');
    const line = hear(this.#world, row, room);
    if (line === undefined) return this.#drop(row, 'silent');
    return this.#answer({ row, room, line, thread: row.thread ?? undefined, command: row.event, takesBack: [] });
  }

  /** Only of the sender's own line, in the same room. A line that was not for the bot may become a question; of one that no longer is, what it changed is taken back. */
  async #edit(row: InboxRow): Promise<Handled> {
    const { store } = this.#world;
    const edited = row.target === null ? undefined : findIncoming(store, row.target);
    const room = this.#room(row);
    const own = edited?.kind === 'message' && edited.sender === row.sender && edited.room === row.room && row.sender !== '';
    if (!own || room === undefined || isRedacted(store, edited.event)) return this.#drop(row, 'silent');
    const line = hear(this.#world, row, room, edited);
    if (line === undefined) return this.#drop(row, 'silent');
    const earlier = editsOf(store, edited.event).filter(({ seq }) => seq < row.seq);
    const thread = edited.thread ?? undefined;
    const takesBack = [edited.event, ...earlier.map(({ event }) => event)];
    const handled = await this.#answer({ row, room, line, thread, command: edited.event, takesBack });
    if (edited.state === 'silent' && handled.state === 'answered') becomeIncoming(store, edited.event, 'answered');
    return handled;
  }

  #answer(asked: Asked): Handled | Promise<Handled> {
    return asked.row.tries > mostTries ? giveUp(this.#world, asked) : answerLine(this.#world, asked);
  }
  #room({ room }: InboxRow): StoredRoom | undefined {
    const found = findRoom(this.#world.store, room);
    return found === undefined || found.left || found.encrypted ? undefined : found;
  }
  #drop(row: InboxRow, state: 'silent' | 'withdrawn'): Handled {
    const { store } = this.#world;
    store.transaction(() => {
      finishIncoming(store, row.seq, state);
      eraseIncoming(store, row.event);
    });
    return nothing(state);
  }
}
