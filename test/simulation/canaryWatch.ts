/** What the bot of the canaries' club says, held against who may see what (`whoSees.ts`). */
import type { SimulatedBot } from './bot.js';
import { clubRooms, type Owner, owners } from './canary.js';
import { type FakeEvent, type FakeHomeserver, inReplyTo, me, relatesTo } from './homeserver.js';
import type { Shared, WhoSees } from './whoSees.js';

export interface Said {
  readonly event: string;
  readonly room: string;
  readonly sender: Owner;
}
/** How things stood from this place in the timeline on. `room` undefined: in any. */
interface Moment {
  readonly at: number;
  readonly maySee: (asker: string, owner: string, room: string | undefined) => Shared;
}
export class Watch {
  /** Who was told what they may not see, with the last things that happened. */
  readonly violations: string[] = [];
  readonly counts = new Map<string, number>();
  readonly #server: FakeHomeserver;
  readonly #bot: SimulatedBot;
  readonly #who: WhoSees;
  readonly #log: string[] = [];
  readonly #typed = new Map<Owner, string>();
  #moments: Moment[] = [];
  #checked = 0;

  constructor(server: FakeHomeserver, bot: SimulatedBot, who: WhoSees) {
    this.#server = server;
    this.#bot = bot;
    this.#who = who;
  }
  did(what: string, sentence: string): void {
    this.counts.set(what, (this.counts.get(what) ?? 0) + 1);
    this.#log.push(sentence);
  }
  types(one: Owner, text: string): void {
    this.#typed.set(one, `${this.#typed.get(one) ?? ''}\n${text}`);
  }
  /** What a member's cars are called, the oldest first. */
  cars(one: Owner): readonly string[] {
    return this.#bot.store.database
      .prepare<[string], string>('SELECT name FROM cars WHERE owner = ? ORDER BY id')
      .pluck()
      .all(one.id) as string[];
  }
  nameOf(one: Owner): string {
    return this.cars(one)[0] ?? one.car;
  }
  prefixed(room: string, text: string): string {
    const prefix = this.#bot.store.database.prepare<[string], string | null>('SELECT prefix FROM rooms WHERE id = ?').pluck().get(room);
    return `${prefix ?? '!'}${text}`;
  }
  async settle(): Promise<void> {
    for (let k = 0; k < 4; k++) {
      this.#server.clock = Math.max(this.#server.clock + 1000, this.#bot.sender.nextDue() ?? 0);
      await this.#bot.round();
    }
  }
  botsPlace(): void {
    for (const room of this.#server.rooms.keys()) {
      const isThere = this.#server.state(room, 'm.room.member', me)?.content.membership === 'join';
      if (isThere === this.#who.isIn(room, me)) continue;
      if (isThere) this.#who.enters(room, me);
      else this.#who.isOut(room, me);
    }
  }
  /** A burst of lines begins. */
  begins(): void {
    this.#moments = [];
    this.remember();
  }
  /** How things stand now, for what is said from here on. */
  remember(): void {
    const all = [...clubRooms, ...owners.map(({ chat }) => chat)];
    const stands = new Map<string, Shared>();
    for (const asker of owners)
      for (const whose of owners) {
        for (const room of all) stands.set(`${asker.id} ${whose.id} ${room}`, this.#who.maySee(asker.id, whose.id, room));
        stands.set(`${asker.id} ${whose.id} undefined`, this.#who.maySeeAnywhere(asker.id, whose.id));
      }
    const at = Math.max(...[...this.#server.rooms.values()].map((events) => events.at(-1)?.at ?? 0));
    this.#moments.push({ at, maySee: (asker, whose, room) => stands.get(`${asker} ${whose} ${room}`) ?? 'no' });
  }
  /** By what the bot has said to it: a line that was refused shares nothing, and takes nothing back. */
  confirm(unsharing: readonly Said[], before: ReadonlyMap<Owner, ReadonlyMap<string, Shared>>, alone: boolean): void {
    const told = (one: Owner): string =>
      this.#news()
        .filter(({ event }) => this.#askerOf(event) === one)
        .map(({ event }) => this.#textOf(event))
        .join('\n');
    for (const { event, room, sender } of unsharing) {
      const reply = this.#server.repliesTo(room, event).map((one) => this.#textOf(one));
      if (reply.some((text) => /private again|is not shared here/.test(text))) continue;
      this.#who.shares(room, sender.id, 'perhaps');
      this.#moments.push({
        at: Number.POSITIVE_INFINITY,
        maySee: (_, whose, where) => (whose === sender.id && (where ?? room) === room ? 'perhaps' : 'no'),
      });
    }
    for (const [one, rooms_] of before)
      if (alone && !/can be seen here|shared here|taken back/i.test(told(one)))
        for (const [room, was] of rooms_) if (this.#who.sharedBy(one.id).get(room) === 'perhaps') this.#who.shares(room, one.id, was);
  }
  /** What the bot has said since it was last looked at. */
  #news(): readonly { readonly room: string; readonly event: FakeEvent }[] {
    return [...this.#server.rooms].flatMap(([room, events]) =>
      events.filter((e) => e.at > this.#checked && e.sender === me && e.type === 'm.room.message').map((event) => ({ room, event })),
    );
  }
  check(): void {
    for (const { room, event } of this.#news()) {
      const asker = this.#askerOf(event);
      const text = this.#textOf(event);
      const isFile = event.content.msgtype === 'm.file';
      if (isFile) this.did('file', `${asker?.name} gets a file in ${room}`);
      if (isFile && (asker === undefined || !this.#who.isAlone(room, asker.id))) this.#violate(`a file in ${room}`, text);
      for (const whose of owners) if (whose !== asker) this.#judge(asker, whose, room, text, isFile, this.#placeOf(room, event));
      this.counts.set('told', (this.counts.get('told') ?? 0) + 1);
    }
    this.#checked = Math.max(...[...this.#server.rooms.values()].map((events) => events.at(-1)?.at ?? 0));
  }
  #judge(asker: Owner | undefined, whose: Owner, room: string, text: string, isFile: boolean, from: number): void {
    if (whose.secret.test(text) && !this.#tells(whose, whose.part))
      this.#violate(`${asker?.name} is told of ${whose.name}'s box in ${room}`, text);
    const named =
      text.includes(whose.car) &&
      !isFile &&
      asker !== undefined &&
      !(this.#typed.get(asker) ?? '').includes(whose.car) &&
      !this.#isCalled(whose);
    if (!whose.canary.test(text) && !named) return;
    const since = this.#moments.findLastIndex(({ at }) => at < from);
    const stands = this.#moments
      .slice(Math.max(0, since))
      .map(({ maySee }) => (asker ? maySee(asker.id, whose.id, isFile ? undefined : room) : 'no'));
    if (stands.includes('yes')) this.did('seen', `${asker?.name} sees ${whose.name}'s in ${room}`);
    else if (stands.includes('perhaps')) this.did('perhaps seen', `${asker?.name} perhaps sees ${whose.name}'s in ${room}`);
    else this.#violate(`${asker?.name} is told of ${whose.name}'s car in ${room}`, text);
  }
  #violate(what: string, text: string): void {
    this.violations.push(`${what}:\n${text}\nafter:\n${this.#log.slice(-25).join('\n')}`);
  }
  /** Whom it answers. */
  #askerOf({ content }: FakeEvent): Owner | undefined {
    const json = JSON.stringify([content['m.mentions'], content['m.new_content']]);
    return owners.find(({ id }) => json.includes(`"user_ids":["${id}"]`));
  }
  #textOf({ content }: FakeEvent): string {
    const { body, formatted_body, url, 'm.new_content': newer } = content;
    const file = typeof url === 'string' ? Buffer.from(this.#server.files.get(url) ?? []).toString() : '';
    return JSON.stringify([body, formatted_body, newer]) + file;
  }
  /** Where the line stands that it answers, or the first edit of it in this burst. */
  #placeOf(room: string, event: FakeEvent): number {
    const of = relatesTo(event.content);
    const reply = of?.rel_type === 'm.replace' ? this.#server.find(room, String(of.event_id)) : event;
    const line = String(reply && inReplyTo(reply.content));
    const burst = this.#moments[0]?.at ?? 0;
    const asked = this.#server
      .events(room)
      .find((e) => e.at > burst && (e.event_id === line || relatesTo(e.content)?.event_id === line) && e.sender !== me);
    return asked?.at ?? 0;
  }
  /** Whether the member's own car is told to have the number now: then it is a car's like any other. */
  #tells(one: Owner, number: string): boolean {
    const si = Number(number) * 175.126835;
    const facts = this.#bot.store.database
      .prepare<[string], string>('SELECT facts FROM cars JOIN revisions ON revisions.id = cars.head WHERE owner = ?')
      .pluck()
      .all(one.id);
    return String(facts).includes(String(Math.floor(si)));
  }
  /** Whether somebody else's car is called as this member's was. */
  #isCalled(whose: Owner): boolean {
    return owners.some((one) => one !== whose && this.cars(one).some((name) => name.includes(whose.car)));
  }
}
