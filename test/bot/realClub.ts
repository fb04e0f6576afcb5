/** The club in memory, in which the bot has its own commands and its own way of showing them. */
import { createRenderer } from '../../bot/render/renderer.js';
import type { Calculator } from '../../commands/context.js';
import { dispatch } from '../../commands/dispatch.js';
import { quiet } from '../simulation/bot.js';
import type { FakeEvent } from '../simulation/homeserver.js';
import { type Club, chat, club, robin } from './club.js';

const calculator: Calculator = {
  calculate: () => {
    throw new Error('these tests work out no free expressions');
  },
};
const draw = () => Promise.resolve({ png: Buffer.of(1), width: 4, height: 3, words: '' });
export const realClub = (): Promise<Club> =>
  club(undefined, { dispatch: (text, situation) => dispatch(text, { ...situation, calculator }), render: createRenderer({ draw }, quiet) });

/** Of robin's only car, by path, in SI, rounded; what is not told is missing. */
export function facts({ bot }: Pick<Club, 'bot'>): Readonly<Record<string, unknown>> {
  const row = bot.store.database
    .prepare<[string], { facts: string }>('SELECT facts FROM cars JOIN revisions ON revisions.id = cars.head WHERE cars.owner = ?')
    .get(robin);
  return row === undefined ? {} : JSON.parse(row.facts);
}
/** The front spring in lb/in. */
export function frontSpring(it: Pick<Club, 'bot'>): number | undefined {
  const fact = facts(it)['front.spring.rate'];
  // 1 lb/in = 4.4482216152605 N / 0.0254 m, both exact (NIST SP 811, appendix B.8).
  return Array.isArray(fact) ? Math.round((Number(fact[0]) * 0.0254) / 4.4482216152605) : undefined;
}
export const frontRate = 'set front spring';
/** Robin's car, told in the direct chat. */
export async function withCar(): Promise<Club> {
  const it = await realClub();
  await it.ask(chat, robin, 'save my car turnip 2640 lb, front spring 400 lb/in, rear spring 300 lb/in');
  return it;
}
/** Says it and settles; the event of the line. */
export async function said(it: Club, room: string, sender: string, body: string, more?: Record<string, unknown>): Promise<string> {
  const event = it.server.say(room, sender, body, more);
  await it.settle();
  return event;
}
/** What the bot shows in answer to a line, as it stands now. */
export const shown = (it: Club, room: string, event: string): readonly string[] =>
  it.replies(room, event).map((reply: FakeEvent) => it.server.shown(room, reply));
export const inReplyTo = (event: string | undefined, mentions: readonly string[] = []): Record<string, unknown> => ({
  'm.relates_to': { 'm.in_reply_to': { event_id: event } },
  'm.mentions': { user_ids: mentions },
});
/** As clients write it: each line of a thread falls back to a reply to the last one. */
export const inThread = (root: string | undefined, last = root): Record<string, unknown> => ({
  'm.relates_to': { rel_type: 'm.thread', event_id: root, is_falling_back: true, 'm.in_reply_to': { event_id: last } },
});
