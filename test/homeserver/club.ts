/** A homeserver, two members, a room and the bot in it: what most of the suite starts from. */
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { BotProcess } from './bot.js';
import { type Heard, Member } from './member.js';
import { Synapse } from './synapse.js';

export class Club {
  readonly dir: string;
  readonly server: Synapse;
  readonly robin: Member;
  readonly sam: Member;
  readonly bot: BotProcess;

  private constructor(dir: string, server: Synapse, robin: Member, sam: Member, bot: BotProcess) {
    this.dir = dir;
    this.server = server;
    this.robin = robin;
    this.sam = sam;
    this.bot = bot;
  }

  static async open(
    options: { readonly defaultLimits?: boolean; readonly settings?: Readonly<Record<string, unknown>> } = {},
  ): Promise<Club> {
    const dir = await mkdtemp(join(tmpdir(), 'stubaxle-homeserver-'));
    const server = await Synapse.start({ dir: join(dir, 'homeserver'), defaultLimits: options.defaultLimits ?? false });
    const robin = await Member.join(server, await server.register('robin'));
    const sam = await Member.join(server, await server.register('sam'));
    const bot = await BotProcess.prepare(server, await server.register('stubaxle'), join(dir, 'bot'), options.settings);
    await bot.start();
    return new Club(dir, server, robin, sam, bot);
  }

  /** A room of both members into which the bot was invited, joined, with its welcome heard. */
  async room(name: string, maker = this.robin, other = this.sam): Promise<string> {
    const room = await maker.makeRoom({ name });
    await other.client.joinRoom(room);
    await maker.client.invite(room, this.bot.id);
    await maker.hear((h) => h.room === room && h.sender === this.bot.id && h.type === 'm.room.message', 'the welcome');
    return room;
  }

  /** Asks, and gives the plain body of the reply. */
  async ask(who: Member, room: string, line: string): Promise<string> {
    return bodyOf(await who.ask(room, line, this.bot.id));
  }

  async close(): Promise<void> {
    this.robin.stop();
    this.sam.stop();
    await this.bot.end();
    await this.server.down();
    await rm(this.dir, { recursive: true, force: true });
  }
}
export const bodyOf = (h: Heard): string => {
  const { body } = h.content;
  if (typeof body !== 'string') throw new Error('a message without a body');
  return body;
};
