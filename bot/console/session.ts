/** One who types: as whom, where, and what comes of a line. The console's own words are few; all else goes the way that a room's lines go. */
import { type Answer, answer } from '../../commands/answer.js';
import { recordMembership } from '../records/memberships.js';
import { enterRoom } from '../records/rooms.js';
import { withoutPrefix } from '../work/addressed.js';
import type { World } from '../work/world.js';
import type { Work } from '../work.js';
import { writeFile } from './files.js';

/** The console's rooms: the club's, where all members are, and one for each member alone with the bot. */
export const clubRoom = 'club';
const directRoom = (member: string): string => `direct:${member}`;

export interface Said {
  readonly as: string;
  readonly room: 'club' | 'direct';
  readonly answers: readonly Answer[];
  /** One page of plain text. Empty: silence. */
  readonly text: string;
  readonly rest: readonly string[];
  /** Paths that were written. */
  readonly files: readonly string[];
  readonly ended?: true;
}
const nameShape = /^[\p{L}\p{N}][\p{L}\p{N}_.-]{0,23}$/u;

/** Both rooms, with this member in them. */
export function enter({ store }: Pick<World, 'store'>, member: string): void {
  store.transaction(() => {
    enterRoom(store, clubRoom, false);
    recordMembership(store, clubRoom, member, 'join', member);
    enterRoom(store, directRoom(member), true);
    recordMembership(store, directRoom(member), member, 'join', member);
  });
}

export class Session {
  readonly #world: World;
  readonly #work: Pick<Work, 'ask'>;
  readonly #folder: string;
  #as: string;
  #room: 'club' | 'direct' = 'club';

  /** `folder`: where charts and exports are written. */
  constructor(world: World, work: Pick<Work, 'ask'>, folder: string, as: string) {
    this.#world = world;
    this.#work = work;
    this.#folder = folder;
    this.#as = as;
    enter(world, as);
  }
  get as(): string {
    return this.#as;
  }
  get room(): 'club' | 'direct' {
    return this.#room;
  }
  /** One line: a word of the console's own, or a message. */
  async say(line: string): Promise<Said> {
    const own = this.#own(line.trim());
    if (own === undefined) return this.#ask(line);
    const { ended, ...rest } = own;
    return this.#said([answer(rest.kind, rest.headline)], rest.headline, [], [], ended);
  }

  #said(answers: readonly Answer[], text: string, rest: readonly string[], files: readonly string[], ended?: true): Said {
    return { as: this.#as, room: this.#room, answers, text, rest, files, ...(ended ? { ended } : {}) };
  }
  #own(line: string): { readonly kind: 'told' | 'refused'; readonly headline: string; readonly ended?: true } | undefined {
    const [, word, name] = /^(as|room)\s+(\S+)$/i.exec(line) ?? [];
    const where = (): string => (this.#room === 'club' ? "in the club's room" : 'alone with the bot');
    if (/^(quit|exit)$/i.test(line)) return { kind: 'told', headline: 'Goodbye.', ended: true };
    if (word?.toLowerCase() === 'as' && name !== undefined) {
      const member = name.replace(/^@/, '').toLowerCase().normalize('NFC');
      if (!nameShape.test(member)) return { kind: 'refused', headline: 'A name has 1 to 24 letters, digits, - . or _; try: as robin' };
      this.#as = member;
      enter(this.#world, member);
      return { kind: 'told', headline: `You speak as ${member} now, ${where()}.` };
    }
    if (word?.toLowerCase() === 'room' && name !== undefined) {
      const room = (['club', 'direct'] as const).find((r) => r === name.toLowerCase());
      if (room === undefined) return { kind: 'refused', headline: 'The console has two rooms; try: room club, or room direct' };
      this.#room = room;
      return { kind: 'told', headline: `You are ${where()} now, as ${this.#as}.` };
    }
    return undefined;
  }

  async #ask(line: string): Promise<Said> {
    const { prefix } = this.#world;
    const room = this.#room === 'club' ? clubRoom : directRoom(this.#as);
    // In the console every line is for the bot: what a prefix says in a room goes without saying.
    const text = this.#room === 'direct' || withoutPrefix(line, prefix) !== undefined ? line : `${prefix}${line}`;
    const { reply, rendered, exported } = await this.#work.ask({ member: this.#as, room, text });
    const files: string[] = [];
    if (rendered?.chart !== undefined) files.push(writeFile(this.#folder, 'chart', 'png', rendered.chart.png));
    if (exported !== undefined)
      files.push(writeFile(this.#folder, `data-of-${this.#as}`, 'json', `${JSON.stringify(exported, null, 2)}\n`));
    return this.#said(reply?.answers ?? [], rendered?.body ?? '', rendered?.rest ?? [], files);
  }
}
