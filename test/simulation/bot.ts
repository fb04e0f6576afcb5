/** The bot as a process that can die between any two steps: its own store on disk, everything else gone with it. */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Homeserver } from '../../bot/matrix/homeserver.js';
import { Intake } from '../../bot/matrix/intake.js';
import { Sender } from '../../bot/matrix/send.js';
import { type Wire, WireFailure } from '../../bot/matrix/wire.js';
import { openDatabase, type Store } from '../../bot/records/database.js';
import { silenceRoom } from '../../bot/records/outbox.js';
import { markEncrypted } from '../../bot/records/rooms.js';
import { sayOnce } from '../../bot/work/replies.js';
import type { Dispatch, Log, Render, World } from '../../bot/work/world.js';
import { Work } from '../../bot/work.js';
import { answer } from '../../commands/answer.js';
import type { Reply } from '../../commands/command.js';
import { type FakeHomeserver, me } from './homeserver.js';

export class Crash extends Error {}
export const quiet: Log = { info: () => undefined, warn: () => undefined, error: () => undefined };
export const encryptedSentence = 'This room is encrypted.';

/** A little language over the real store: enough to read, change, ask, be slow, be refused and be fatal. */
export const littleDispatch =
  (step: () => void): Dispatch =>
  async (text, { garage, conversation }): Promise<Reply> => {
    step();
    const [word = '', argument = ''] = text.split(' ');
    const plain = (headline: string): Reply => ({ answers: [answer('told', headline)], changes: [], read: [], seen: [] });
    if (word === 'poison') throw new Crash('poison');
    if (word === 'break') throw new Error('broken on purpose');
    if (word === 'big') return plain(`big ${argument}\ntoo large for this homeserver`);
    if (word === 'ask')
      return {
        ...plain(`which, for ${argument}?`),
        answers: [
          answer('asked', `which, for ${argument}?`, {
            choices: [
              { label: 'first', line: `show picked-${argument}` },
              { label: 'second', line: `set ${argument}` },
            ],
          }),
        ],
      };
    if (word === 'members') return plain(`members: ${garage.members.map(({ name }) => name).join(', ')}`);
    if (word === 'rest') return plain(`rest: ${conversation.rest.join('|')}`);
    if (word === 'draw') return { answers: [answer('told', `drawn ${argument}`, { notes: ['picture'] })], changes: [], read: [], seen: [] };
    if (word === 'forget-me') return { answers: [answer('changed', 'forgotten')], changes: [{ change: 'forget me' }], read: [], seen: [] };
    if (word === 'export') return { answers: [answer('told', 'on its way')], changes: [{ change: 'export me' }], read: [], seen: [] };
    if (word === 'leave')
      return { answers: [answer('changed', 'going')], changes: [{ change: 'leave room', room: argument }], read: [], seen: [] };
    if (word !== 'set') return word === 'hush' ? { answers: [], changes: [], read: [], seen: [] } : plain(`ok ${text}`);
    const fact = { value: 2 + Number(argument) / 1e5, within: 0.001, evidence: 'measured', source: `said ${argument}` } as const;
    const car = garage.chosen ?? garage.mine[0];
    if (car === undefined) {
      const changes = [
        { change: 'make car', car: -1, name: 'turnip', facts: new Map([['wheelbase', fact]]), measured: false, why: text },
      ] as const;
      return { answers: [answer('changed', `ok ${text}`)], changes, read: [], seen: [] };
    }
    const head = car.head;
    // Long enough for another room of the same member to move the car.
    for (let k = 0; k < 6; k++) await Promise.resolve();
    step();
    const facts = new Map(head.facts).set('wheelbase', fact);
    return {
      answers: [answer('changed', `ok ${text}`)],
      changes: [{ change: 'record', car: car.id, head: head.id, facts, why: text, measuredIn: head.measuredIn }],
      // A head below 0 is this message's own: of an edit, what it leaves of the car.
      read: head.id < 0 ? [] : [{ car: car.id, head: head.id }],
      seen: [],
    };
  };
export const littleRender: Render = ({ answers }) => {
  const body = answers.map(({ headline }) => headline).join('\n');
  const picture = { png: Uint8Array.of(137, 80, 78, 71), width: 1080, height: 810 };
  return {
    ...{
      body,
      html: body === '' ? '' : `<p>${body}</p>`,
      rest: [`rest of ${body}`],
      choices: answers.flatMap((a) => [...a.choices, ...a.next]),
    },
    ...(answers.some(({ notes }) => notes.includes('picture')) ? { chart: picture } : {}),
  };
};

export interface BotOptions {
  readonly server: FakeHomeserver;
  readonly random: () => number;
  /** Chance of dying at each step. */
  readonly deadly?: number;
  /** The bot's own commands and renderer, in place of the little language. */
  readonly services?: Pick<World, 'dispatch' | 'render'>;
  /** What is between the bot and the homeserver: for bots that are wrong on purpose. */
  readonly between?: (wire: Wire) => Wire;
}
export class SimulatedBot {
  readonly #options: BotOptions;
  readonly #dir = mkdtempSync(join(tmpdir(), 'stubaxle-simulation-'));
  deaths = 0;
  device = 'D1';
  deadly: number;
  /** Whether what is to be sent waits. */
  holds = false;
  /** Whether it gets as far as to handle lines, or ends while it loads what they need. */
  loads = true;
  store: Store;
  work: Work;
  sender: Sender;
  #intake: Intake;
  #dead = false;

  constructor(options: BotOptions) {
    this.#options = options;
    this.deadly = options.deadly ?? 0;
    ({ store: this.store, work: this.work, sender: this.sender, intake: this.#intake } = this.#start());
  }
  /** One round of everything; false when the process died in it. */
  async round(): Promise<boolean> {
    try {
      await this.#intake.once(0).catch((problem: unknown) => {
        if (this.#dead || !(problem instanceof WireFailure)) throw problem;
      });
      this.#step();
      await this.work.run();
      this.#step();
      if (!this.holds) await this.sender.run();
      return true;
    } catch (problem) {
      if (!this.#dead) throw problem;
      this.deaths++;
      // Nothing of the dead process goes on: its database is closed, and its wire with it.
      await new Promise((resolve) => setImmediate(resolve));
      this.restart();
      return false;
    }
  }
  restart(): void {
    if (this.store.database.open) this.store.database.close();
    this.#dead = false;
    ({ store: this.store, work: this.work, sender: this.sender, intake: this.#intake } = this.#start());
  }
  close(): void {
    this.store.close();
    rmSync(this.#dir, { recursive: true, force: true });
  }
  #step = (): void => {
    if (this.#dead) throw new Crash('dead already');
    if (this.#options.random() < this.deadly) this.#die();
  };
  #die(): never {
    this.#dead = true;
    const { database } = this.store;
    queueMicrotask(() => {
      if (database.open) database.close();
    });
    throw new Crash('the process ended');
  }
  #start(): { store: Store; work: Work; sender: Sender; intake: Intake } {
    const { server, services, between = (wire) => wire } = this.#options;
    const real = openDatabase(join(this.#dir, 'stubaxle.db'));
    // A process that ends loses nothing that was written; only a machine that does would.
    real.database.pragma('synchronous = OFF');
    const step = this.#step;
    const store: Store = {
      ...real,
      transaction: (work) => {
        step();
        const result = real.transaction(() => {
          const inside = work();
          step();
          return inside;
        });
        step();
        return result;
      },
    };
    const wire = between(server.wire(this.device, step, step));
    const homeserver = new Homeserver(wire);
    const now = (): number => server.clock;
    const die = (): void => {
      if (!this.#dead) this.#die();
    };
    const dispatch: Dispatch = async (text, situation) => {
      if (text.startsWith('poison')) die();
      return (services?.dispatch ?? littleDispatch(step))(text, situation);
    };
    const warm = async (): Promise<void> => {
      if (!this.loads) die();
    };
    const world: World = {
      ...{
        store,
        dispatch,
        warm,
        render: services?.render ?? littleRender,
        log: quiet,
        now,
        prefix: '!',
        delivery: 'queue',
        whyNotEncrypted: encryptedSentence,
      },
      me: { id: me, name: server.displayName },
      mayInvite: (member) => member.endsWith(':lane.test'),
    };
    const work = new Work(world);
    const intake = new Intake({ store, homeserver, me, log: quiet, now });
    const encrypted = (room: string): void => {
      markEncrypted(store, room);
      silenceRoom(store, room);
      sayOnce(world, 'encrypted', room, encryptedSentence, true);
    };
    const sender = new Sender({ store, homeserver, me, device: this.device, log: quiet, now, encrypted, unauthorized: () => undefined });
    return { store, work, sender, intake };
  }
}
