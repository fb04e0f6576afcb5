/** A club in memory for tests of the bot on a homeserver: two members, a room and a direct chat, the bot in both. */
import { afterEach } from 'vitest';
import type { Wire } from '../../bot/matrix/wire.js';
import { type BotOptions, SimulatedBot } from '../simulation/bot.js';
import { type FakeEvent, FakeHomeserver, me } from '../simulation/homeserver.js';

export const robin = '@robin:lane.test';
export const sam = '@sam:lane.test';
export const paddock = '!paddock:lane.test';
export const chat = '!robin-and-bot:lane.test';

const open = new Set<SimulatedBot>();
afterEach(() => {
  for (const bot of open) bot.close();
  open.clear();
});
export interface Club {
  readonly server: FakeHomeserver;
  readonly bot: SimulatedBot;
  /** Rounds until nothing is left to do. */
  settle(): Promise<void>;
  /** Says it, settles, and gives the replies as a client shows them. */
  ask(room: string, sender: string, body: string, more?: Record<string, unknown>): Promise<readonly string[]>;
  replies(room: string, event: string): readonly FakeEvent[];
}
export function empty(between?: (wire: Wire) => Wire, speech?: BotOptions['speech']): Club {
  const server = new FakeHomeserver();
  const bot = new SimulatedBot({ server, random: () => 0.5, ...(between ? { between } : {}), ...(speech ? { speech } : {}) });
  open.add(bot);
  const settle = async (): Promise<void> => {
    for (let k = 0; k < 6; k++) {
      server.clock = Math.max(server.clock + 1000, bot.sender.nextDue() ?? 0);
      await bot.round();
    }
  };
  return {
    ...{ server, bot, settle },
    replies: (room, event) => server.repliesTo(room, event),
    async ask(room, sender, body, more) {
      const event = server.say(room, sender, body, more);
      await settle();
      return server.repliesTo(room, event).map((reply) => server.shown(room, reply));
    },
  };
}
/** With the rooms made after the bot's first start, so that it is invited, and comes in. */
export async function club(between?: (wire: Wire) => Wire, speech?: BotOptions['speech']): Promise<Club> {
  const it = empty(between, speech);
  await it.settle();
  it.server.makeRoom(paddock, robin, sam);
  it.server.makeRoom(chat, robin);
  it.server.invite(paddock, robin);
  it.server.invite(chat, robin, true);
  await it.settle();
  return it;
}
export const isBot = ({ sender }: FakeEvent): boolean => sender === me;
