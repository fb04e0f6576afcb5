/** Handles the inbox by turns: one row of a member at a time, dear ones beside others. The same for a homeserver, for the console and for a simulation. */
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
  uncountTry,
} from './records/inbox.js';
import { findRoom, type StoredRoom } from './records/rooms.js';
import { hear } from './work/addressed.js';
import { type Asked, answerLine, Behind, giveUp, type Handled } from './work/answering.js';
import { Lanes, type Task } from './work/lanes.js';
import { redact } from './work/redacting.js';
import { applyInvite, applyLeft, applyState } from './work/rooms.js';
import { Turns, type UnderWay } from './work/turns.js';
import { type Pass, Stopped, Turnstile, type TurnstileOptions } from './work/turnstile.js';
import type { World } from './work/world.js';

/** A row that has ended the process this often is not worked out again, but answered that it is given up. */
const mostTries = 5;
/** And one that has ended it this often is dropped: even that answer ends it. */
const allTries = 10;
const nothing = (state: Handled['state']): Handled => ({ state, reply: undefined, rendered: undefined });

export class Work {
  readonly #world: World;
  /** Called after each row that may have put something into the outbox. */
  readonly #outgoing: () => void;
  readonly #waiting = new Map<string, (handled: Handled) => void>();
  readonly #lanes: Lanes;
  readonly #turns = new Turns();
  readonly #turnstile: Turnstile;
  readonly #underWay = new Map<number, UnderWay & { readonly pass: Pass }>();

  constructor(world: World, outgoing: () => void = () => undefined, turnstile: TurnstileOptions = {}) {
    this.#world = world;
    this.#outgoing = outgoing;
    this.#turnstile = new Turnstile(turnstile);
    // How many are handled side by side is a matter of turns.
    this.#lanes = new Lanes({ next: () => this.#next(), atOnce: Number.POSITIVE_INFINITY });
  }

  /** Handles all that is open. Resolves when nothing is; rejects when the store fails, after what was under way has ended. */
  run(): Promise<void> {
    return this.#lanes.run();
  }
  /** Starts nothing more, and resolves when what is under way has ended: dear work at its next breath, to be handled after the next start. */
  stop(): Promise<void> {
    this.#turnstile.stop();
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

  #next(): readonly Task[] {
    const rows = this.#turns.next(incomingHeads(this.#world.store), [...this.#underWay.values()]);
    return rows.map((row) => ({ lane: String(row.seq), run: () => this.#begin(row) }));
  }
  async #begin(row: InboxRow): Promise<void> {
    this.#turns.begin(row);
    const pass = this.#turnstile.enter(() => this.#lanes.look());
    this.#underWay.set(row.seq, {
      ...{ row, pass },
      get dear() {
        return pass.dear;
      },
    });
    try {
      await this.#handle(row, pass);
    } finally {
      this.#underWay.delete(row.seq);
    }
  }
  async #handle(row: InboxRow, pass: Pass): Promise<void> {
    const { store } = this.#world;
    await this.#world.warm?.();
    try {
      // What else waits for the event loop has its turn first: a process that ends in it says nothing against the row.
      await pass.breathe();
    } catch (problem) {
      if (problem instanceof Stopped) return;
      throw problem;
    }
    countTry(store, row.seq);
    try {
      const handled = await this.#handled({ ...row, tries: row.tries + 1 }, pass);
      this.#outgoing();
      this.#waiting.get(row.event)?.(handled);
      this.#waiting.delete(row.event);
    } catch (problem) {
      if (!(problem instanceof Stopped || problem instanceof Behind)) throw problem;
      uncountTry(store, row.seq);
      if (problem instanceof Behind) this.#turns.putBehind(row, problem.member);
    }
  }
  async #handled(row: InboxRow, pass: Pass): Promise<Handled> {
    const { store } = this.#world;
    if (row.tries > allTries) {
      finishIncoming(store, row.seq, 'failed', 'given up');
      return nothing('failed');
    }
    switch (row.kind) {
      case 'message':
        return this.#message(row, pass);
      case 'edit':
        return this.#edit(row, pass);
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

  async #message(row: InboxRow, pass: Pass): Promise<Handled> {
    const { store } = this.#world;
    if (isRedacted(store, row.event)) return this.#drop(row, 'withdrawn');
    const room = this.#room(row);
    if (room === undefined) return this.#drop(row, 'silent');
    const line = hear(this.#world, row, room);
    if (line === undefined) return this.#drop(row, 'silent');
    return this.#answer({ row, room, line, thread: row.thread ?? undefined, command: row.event, takesBack: [] }, pass);
  }

  /** Only of the sender's own line, in the same room. A line that was not for the bot may become a question; of one that no longer is, what it changed is taken back. */
  async #edit(row: InboxRow, pass: Pass): Promise<Handled> {
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
    const handled = await this.#answer({ row, room, line, thread, command: edited.event, takesBack }, pass);
    if (edited.state === 'silent' && handled.state === 'answered') becomeIncoming(store, edited.event, 'answered');
    return handled;
  }

  #answer(it: Omit<Asked, 'breathe' | 'isAfter'>, { breathe }: Pass): Handled | Promise<Handled> {
    const isAfter = (member: string): boolean => this.#turns.isAfter(it.row, member, incomingHeads(this.#world.store));
    const asked: Asked = { ...it, breathe, isAfter };
    return it.row.tries > mostTries ? giveUp(this.#world, asked) : answerLine(this.#world, asked);
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
