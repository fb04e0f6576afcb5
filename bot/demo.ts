/**
 * The invented club that a new console starts with: members, cars and names are made up. It is told to the bot in members' own words, line by line,
 * through the same inbox as everything else; so it is seeded once, also when the process dies on the way, and every line of it works.
 */
import { findIncoming, receive } from './store/inbox.js';
import { allRooms } from './store/rooms.js';
import type { World } from './work/world.js';
import type { Work } from './work.js';

export const clubName = 'Gravel Lane Motor Club';
export const demoMembers = ['robin', 'sam', 'jo', 'lee'] as const;
type DemoMember = (typeof demoMembers)[number];

export interface DemoMessage {
  readonly member: DemoMember;
  readonly lines: readonly string[];
}
/** In order. What a member says in one message is one change. Everyday cars of no make: a small hatchback, a small sedan, a light rear-drive car with another car's rear axle. */
export const demoMessages: readonly DemoMessage[] = [
  { member: 'robin', lines: ['save my car turnip 2640 lb, 52.5% front, wheelbase 99 in'] },
];

const eventOf = (at: number): string => `demo:${at}`;
/**
 * Seeds a database that nothing was ever said in; goes on where an earlier seeding was cut off. `enter` puts a member into the console's rooms.
 * @returns whether this database has the invented club.
 */
export async function seedDemo(world: World, work: Pick<Work, 'run'>, enter: (member: string) => void): Promise<boolean> {
  const { store } = world;
  const begun = findIncoming(store, eventOf(0)) !== undefined;
  if (!begun && allRooms(store).length > 0) return false;
  if (!begun)
    store.transaction(() => {
      for (const member of demoMembers) enter(member);
      demoMessages.forEach(({ member, lines }, at) => {
        const content = JSON.stringify({ msgtype: 'm.text', body: `${world.prefix}${lines.join('\n')}` });
        receive(store, { event: eventOf(at), room: 'club', sender: member, kind: 'message', content, at: world.now() });
      });
    });
  await work.run();
  return true;
}
