/**
 * Members who share, stop sharing, come, go, put each other out, rename, undo, edit, forget and say anything that the registry knows. Each has a car whose
 * numbers are nobody else's. What the bot has said is held against who may see what (`whoSees.ts`), after each burst of lines.
 */
import { type BotOptions, SimulatedBot } from './bot.js';
import { type Owner, owners, clubRooms as rooms } from './canary.js';
import { goingOn, type Line, mayShare, pointedLine, registryLine, type Talk } from './canaryLines.js';
import { type Said, Watch } from './canaryWatch.js';
import { FakeHomeserver, me } from './homeserver.js';
import { randomNumbers } from './random.js';
import { realSpeech } from './speech.js';
import { WhoSees } from './whoSees.js';

export interface Sequence {
  readonly seed: number;
  readonly bursts: number;
  /** A bot that is wrong on purpose. */
  readonly services?: BotOptions['services'];
}
export interface Outcome {
  /** Who was told what they may not see, with the last things that happened. */
  readonly violations: readonly string[];
  /** How often what happened; how often a clubmate's canary was told rightly (`seen`), and where nothing is held against the bot (`perhaps seen`). */
  readonly counts: ReadonlyMap<string, number>;
}
export async function canaries({ seed, bursts, services = realSpeech }: Sequence): Promise<Outcome> {
  const random = randomNumbers(seed);
  const server = new FakeHomeserver(random);
  const bot = new SimulatedBot({ server, random: () => 0.5, services });
  try {
    const run = new Run(server, bot, random);
    await run.begin();
    for (let k = 0; k < bursts && run.outcome.violations.length === 0; k++) await run.burst();
    return run.outcome;
  } finally {
    bot.close();
  }
}

class Run {
  readonly #server: FakeHomeserver;
  readonly #random: () => number;
  readonly #who = new WhoSees();
  readonly #said: Said[] = [];
  readonly #watch: Watch;
  /** Lines of this burst that take a sharing back, if the bot does what they say. */
  #unsharing: Said[] = [];
  /** What is to be done next, a burst each. */
  #plan: (() => void)[] = [];

  constructor(server: FakeHomeserver, bot: SimulatedBot, random: () => number) {
    this.#server = server;
    this.#random = random;
    this.#watch = new Watch(server, bot, this.#who);
  }
  get outcome(): Outcome {
    return this.#watch;
  }
  async begin(): Promise<void> {
    await this.#watch.settle();
    for (const room of rooms) this.#server.makeRoom(room, ...owners.map(({ id }) => id));
    for (const { chat, id } of owners) this.#server.makeRoom(chat, id);
    for (const room of this.#server.rooms.keys()) this.#server.invite(room, this.#server.events(room)[0]?.sender ?? '');
    await this.#watch.settle();
    for (const room of this.#server.rooms.keys())
      for (const { sender, type, content } of this.#server.events(room))
        if (type === 'm.room.member' && content.membership === 'join') this.#who.enters(room, sender);
    for (const one of owners) this.#plant(one);
    await this.#watch.settle();
    for (const one of owners) if (this.#chance(0.7)) this.#share(one, this.#pick(rooms));
    await this.#watch.settle();
    this.#watch.botsPlace();
    this.#watch.remember();
    this.#watch.check();
  }
  async burst(): Promise<void> {
    this.#watch.begins();
    this.#unsharing = [];
    const room = this.#chance(0.85) ? this.#pick(rooms) : this.#pick(owners).chat;
    const planned = this.#plan.shift();
    const steps = planned ? 1 : this.#chance(0.3) ? 2 + Math.floor(this.#random() * 2) : 1;
    const before = new Map(owners.map((one) => [one, this.#who.sharedBy(one.id)]));
    for (let k = 0; k < steps; k++) {
      if (planned) planned();
      else this.#step(room, k === steps - 1);
      this.#watch.remember();
    }
    await this.#watch.settle();
    this.#watch.confirm(this.#unsharing, before, steps === 1);
    this.#watch.check();
    this.#watch.botsPlace();
  }

  /** One thing that somebody does in the room. `last`: what would make later lines of the burst hard to judge may come. */
  #step(room: string, last: boolean): void {
    const one = this.#any(owners.filter(({ id }) => this.#who.isIn(room, id)));
    const isMissing = owners.some(({ id }) => !room.includes('-and-bot') && !this.#who.isIn(room, id));
    if (one === undefined || this.#chance(isMissing ? 0.3 : 0.04)) this.#moves(room, one);
    else if (!this.#who.isIn(room, me)) this.#invitesBot(room, one);
    else if (last && this.#watch.cars(one).length !== 1) this.#tidies(one);
    else if (last && this.#chance(0.12)) this.#lies(one, room);
    else this.#anything(one, room, last);
  }
  #anything(one: Owner, room: string, last: boolean): void {
    const does: readonly (readonly [number, () => unknown])[] = [
      [12, () => this.#share(one, room)],
      [4, () => this.#unshare(one, room)],
      [15, () => this.#says(one, room, pointedLine(this.#talk, one, this.#visible(one, room)))],
      [15, () => this.#says(one, room, goingOn(this.#talk))],
      [7, () => this.#edits(one, room)],
      [3, () => this.#redacts(one, room)],
      // What may alter names and cars comes last: the lines after it would be hard to judge.
      [last ? 3 : 0, () => this.#renames(one)],
      [last ? 3 : 0, () => this.#says(one, room, { text: 'undo', sort: 'undo' })],
      [
        last ? 2 : 0,
        () => this.#says(one, room, { text: this.#pick(['erase me', `erase car ${this.#watch.nameOf(one)}`]), sort: 'erasing' }),
      ],
      [last ? 2 : 0, () => this.#says(one, one.chat, { text: 'export my data', sort: 'export' })],
      [last ? 24 : 0, () => this.#says(one, this.#chance(0.1) ? one.chat : room, registryLine(this.#talk))],
    ];
    let roll = this.#random() * does.reduce((sum, [weight]) => sum + weight, 0);
    for (const [weight, act] of does) {
      roll -= weight;
      if (roll >= 0) continue;
      act();
      return;
    }
  }
  /** Asks of a car while it may be seen, then it is lost from sight, then goes on from the answer: each a burst of its own. */
  #lies(asker: Owner, room: string): void {
    const whom = this.#visible(asker, room);
    const says = (line: Line) => (): void => void this.#says(asker, room, line);
    if (whom === undefined) return;
    const loss = this.#pick([
      ...[
        () => this.#unshare(whom, room),
        () => this.#unshare(whom, room),
        () => this.#goes(room, whom, whom),
        () => this.#goes(room, asker, whom),
      ],
      ...[
        () => this.#goes(room, asker, asker),
        () => this.#says(whom, room, { text: 'undo', sort: 'undo' }),
        () => this.#edits(whom, room),
      ],
      () => this.#says(whom, whom.chat, { text: this.#pick(['erase me', `erase car ${this.#watch.nameOf(whom)}`]), sort: 'erasing' }),
      () => this.#sharesAnew(whom, room),
    ]);
    this.#plan = [
      ...(this.#chance(0.4) ? [says(goingOn(this.#talk))] : []),
      loss,
      ...[
        says(this.#chance(0.5) ? { text: 'more', sort: 'going on' } : goingOn(this.#talk)),
        says(goingOn(this.#talk)),
        () => this.#edits(asker, room),
        says(pointedLine(this.#talk, asker, whom)),
      ],
      ...[() => this.#says(asker, asker.chat, { text: 'export my data', sort: 'export' })],
    ];
    says(pointedLine(this.#talk, asker, whom))();
    this.#watch.did('after a loss', 'a plan begins');
  }
  #sharesAnew(one: Owner, room: string): void {
    this.#unshare(one, room);
    this.#share(one, room);
  }
  #visible(asker: Owner, room: string): Owner | undefined {
    return this.#any(owners.filter((one) => one !== asker && this.#who.maySee(asker.id, one.id, room) !== 'no'));
  }
  #moves(room: string, one: Owner | undefined): void {
    const whom = this.#pick(owners);
    if (room.includes('-and-bot') && this.#chance(0.7)) return;
    if (!this.#who.isIn(room, whom.id)) {
      this.#server.join(room, whom.id);
      this.#who.enters(room, whom.id);
      this.#watch.did('join', `${whom.name} joins ${room}`);
      return;
    }
    if (one === undefined) return;
    if (this.#chance(0.15) && this.#who.isIn(room, me)) {
      this.#server.leave(room, me, one.id);
      this.#who.isOut(room, me);
      this.#watch.did('bot out', `${one.name} puts the bot out of ${room}`);
      return;
    }
    this.#goes(room, one, whom);
  }
  /** Somebody is out of the room: by themselves or by another, for good or with an invitation. */
  #goes(room: string, one: Owner, whom: Owner): void {
    if (![one, whom].every(({ id }) => this.#who.isIn(room, id))) return;
    const how = one === whom ? 'leave' : this.#pick(['kick', 'ban', 'invite'] as const);
    this.#server.member(room, one.id, whom.id, { membership: how === 'ban' ? 'ban' : 'leave' });
    if (how === 'invite') this.#server.member(room, one.id, whom.id, { membership: 'invite' });
    this.#who.isOut(room, whom.id);
    this.#watch.did(how, `${one.name}: ${how} ${whom.name}, ${room}`);
  }
  #invitesBot(room: string, one: Owner): void {
    this.#server.invite(room, one.id);
    this.#watch.did('bot invited', `${one.name} invites the bot into ${room}`);
  }
  #share(one: Owner, room: string): void {
    if (!this.#who.isIn(room, one.id)) return;
    this.#says(one, room, { text: `share ${this.#watch.nameOf(one)}`, sort: 'sharing' });
    if (this.#watch.cars(one).length === 1) this.#who.shares(room, one.id, 'yes');
  }
  #unshare(one: Owner, room: string): void {
    if (this.#watch.cars(one).length !== 1) return;
    const event = this.#says(one, room, { text: `unshare ${this.#watch.nameOf(one)}`, sort: 'unsharing' });
    this.#who.shares(room, one.id, 'no');
    if (event !== undefined) this.#unsharing.push({ event, room, sender: one });
  }
  #renames(one: Owner): void {
    const now = this.#watch.nameOf(one);
    this.#says(one, this.#home(one), { text: `rename ${now} to ${now === one.car ? `${one.car}two` : one.car}`, sort: 'renaming' });
  }
  /** A car that is gone is told anew, and no others are kept: which of them is shared would be hard to say. */
  #tidies(one: Owner): void {
    const [, other] = this.#watch.cars(one).toSorted((a, b) => Number(b.startsWith(one.car)) - Number(a.startsWith(one.car)));
    if (other === undefined) this.#plant(one);
    else this.#says(one, this.#home(one), { text: `erase car ${other}`, sort: 'tidying' });
  }
  #plant(one: Owner): void {
    const lines = [`save ${one.car} ${one.facts}`, `box add ${one.part} front spring`];
    for (const text of lines) this.#says(one, this.#home(one), { text, sort: 'planting' });
  }
  #edits(one: Owner, room: string): void {
    const own = this.#any(this.#said.filter((line) => line.sender === one && line.room === room));
    if (own === undefined) return;
    const { text } = this.#pick([pointedLine(this.#talk, one), goingOn(this.#talk), { text: 'hello', sort: '' }, registryLine(this.#talk)]);
    this.#server.edit(room, one.id, own.event, this.#watch.prefixed(room, text));
    this.#watch.types(one, text);
    this.#who.perhapsShares(one.id);
    this.#watch.did('edit', `${one.name} edits in ${room}: ${text}`);
  }
  #redacts(one: Owner, room: string): void {
    const own = this.#any(this.#said.filter((line) => line.sender === one && line.room === room));
    if (own === undefined) return;
    this.#server.redact(room, one.id, own.event);
    this.#watch.did('redaction', `${one.name} takes back a line in ${room}`);
  }
  #says(one: Owner, room: string, line: Line): string | undefined {
    if (!this.#who.isIn(room, one.id)) return undefined;
    const body = line.sort === 'going on' && this.#chance(0.3) ? line.text : this.#watch.prefixed(room, line.text);
    const event = this.#server.say(room, one.id, body, this.#chance(0.2) ? this.#beside(one, room) : {});
    this.#said.push({ event, room, sender: one });
    this.#watch.types(one, line.text);
    if (mayShare(line)) this.#who.perhapsShares(one.id);
    this.#watch.did(line.sort, `${one.name} in ${room}: ${body}`);
    return event;
  }

  get #talk(): Talk {
    return { pick: (from) => this.#pick(from), chance: (of) => this.#chance(of), nameOf: (one) => this.#watch.nameOf(one), all: owners };
  }
  #any = <T>(from: readonly T[]): T | undefined => from[Math.floor(this.#random() * from.length)];
  #pick = <T>(from: readonly T[]): T => {
    const one = this.#any(from);
    if (one === undefined) throw new Error('there is nothing to pick from');
    return one;
  };
  #chance = (of: number): boolean => this.#random() < of;
  #home(one: Owner): string {
    return [one.chat, ...rooms].find((room) => this.#who.isIn(room, one.id) && this.#who.isIn(room, me)) ?? one.chat;
  }
  /** In a thread, or as a reply to one of the bot's. */
  #beside(one: Owner, room: string): Record<string, unknown> {
    const mine = this.#said.filter((line) => line.sender === one && line.room === room).slice(-6);
    const line = this.#any(mine);
    const reply = line && this.#server.repliesTo(room, line.event)[0];
    if (line === undefined || reply === undefined) return {};
    if (this.#chance(0.5)) return { 'm.relates_to': { 'm.in_reply_to': { event_id: reply.event_id } } };
    return { 'm.relates_to': { rel_type: 'm.thread', event_id: this.#chance(0.5) ? reply.event_id : line.event } };
  }
}
