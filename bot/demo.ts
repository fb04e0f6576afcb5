/**
 * The invented club that a new console starts with: members, cars and names are made up. It is told to the bot in members' own words, line by line,
 * through the same inbox as everything else; so it is seeded once, also when the process dies on the way, and every line of it works.
 */
import { findIncoming, receive } from './records/inbox.js';
import { allRooms } from './records/rooms.js';
import type { World } from './work/world.js';
import type { Work } from './work.js';

export const clubName = 'Gravel Lane Motor Club';
export const demoMembers = ['robin', 'sam', 'jo', 'lee'] as const;
type DemoMember = (typeof demoMembers)[number];

export interface DemoMessage {
  readonly member: DemoMember;
  readonly lines: readonly string[];
}
/**
 * In order; what a member says in one message is one change. A light rear-drive coupe with progressive rear springs and a dry and a wet setup; a small
 * front-drive hatchback; a rear-drive wagon that was given another car's live rear axle. Invented, each number of an everyday size.
 */
export const demoMessages: readonly DemoMessage[] = [
  {
    member: 'robin',
    lines: [
      'save my car turnip 2640 lb, 52.5% front with driver, half tank',
      'set driver weight 165 lb, driver seat left, tank size 12.5 gal',
      'set wheelbase 99 in, front track 57.5 in, rear track 57 in, cg height 19 in',
      'set front unsprung weight 75 lb, rear unsprung weight 70 lb',
      'set front spring 375 lb/in, front motion ratio 0.71',
      'set rear spring 500-700 over 4in, rear motion ratio 0.65',
      'set tire 205/50R15, wheel 15x7, offset 25 mm',
      'set front pressure 30 psi, rear pressure 28 psi',
      'set lf height 13.1 in rf 13.1 in lr 13.4 in rr 13.4 in',
      'set front bump stop gap 1.4 in, rear bump stop gap 1.6 in',
      'set camber lf -2.2 rf -2.2 lr -1.6 rr -1.6',
      'set front bar 22 mm, front bar hole 9 in, front bar motion ratio 0.6, front bar length 36 in',
      'set rear bar 16 mm, rear bar hole 9.5 in, rear bar motion ratio 0.55',
      'set grip 1.05, whp 118, peak power rpm 6800',
      'set 1st 3.14, 2nd 1.89, 3rd 1.33, 4th 1.00, 5th 0.81, final 4.10, redline 7200 rpm, rear drive',
    ],
  },
  {
    member: 'robin',
    lines: [
      'keep as dry',
      'set front pressure 26 psi, rear pressure 25 psi, front spring 325 lb/in, rear bar hole 11 in',
      'keep as wet',
      'back to dry',
    ],
  },
  {
    member: 'robin',
    lines: [
      'i have 19 and 22 mm rear bars, 40 min to swap',
      'rear bar holes 7.5, 8.5 and 9.5 in, 5 min',
      'i have 325 and 425 front springs, 60 min',
      'i have 1/4 in wheel spacers rear, 20 min, $15',
      'i can set rear pressure 24 to 34 psi, 2 min',
      'i can set rear camber -0.5 to -2.5 deg, 25 min',
      'i have 12 clicks of rear rebound, 1 min',
    ],
  },
  { member: 'robin', lines: ['share'] },
  {
    member: 'sam',
    lines: [
      'save my car moth 2150 lb, 62% front',
      'set wheelbase 93 in, front track 56 in, rear track 55.5 in, cg height 20 in',
      'set front unsprung weight 72 lb, rear unsprung weight 55 lb',
      'set front spring 280 lb/in, front motion ratio 0.95',
      'set rear spring 340 lb/in, rear motion ratio 0.68',
      'set tire 195/50R15, wheel 15x6.5, offset 40 mm, pressure 32 psi',
      'set front camber -1.8, rear camber -1.2',
      'set rear bar 25 mm, rear bar hole 7.5 in, rear bar motion ratio 0.8',
      'set grip 1.05',
      'set 1st 3.25, 2nd 1.90, 3rd 1.31, 4th 1.03, 5th 0.82, final 4.25, redline 6800 rpm, front drive',
    ],
  },
  { member: 'sam', lines: ['share'] },
  {
    member: 'jo',
    lines: [
      'units metric',
      'save my car pickle 1290 kg, 51% front',
      'set wheelbase 2570 mm, front track 1460 mm, rear track 1455 mm, cg height 520 mm',
      'set front unsprung weight 36 kg, rear unsprung weight 34 kg',
      'set front spring 60 N/mm, front motion ratio 0.94, rear spring 52 N/mm, rear motion ratio 0.75',
      'set front tire 225/45R17, rear tire 225/45R17, wheel 17x8, offset 35 mm, pressure 2.2 bar',
      'set 1st 3.32, 2nd 1.90, 3rd 1.31, 4th 1.00, 5th 0.76, final 3.46, redline 6500 rpm, rear drive',
      'set front bar 24 mm, front bar hole 220 mm, rear bar 18 mm, rear bar hole 230 mm, grip 1.05',
      'set peak power 118 kW, peak power rpm 6000',
      'keep as old axle',
    ],
  },
  {
    member: 'jo',
    lines: [
      'set final 3.91, rear track 1480 mm, rear unsprung weight 59 kg, rear spring 38 N/mm, rear motion ratio 0.92, rear tire 245/40R17',
      'set rear axle beam, rear spring base 1000 mm, rear roll center 250 mm, rear bar 0',
      'keep as swapped axle',
    ],
  },
  { member: 'jo', lines: ['share'] },
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
  const tell = (at: number, { member, lines }: DemoMessage): void => {
    const content = JSON.stringify({ msgtype: 'm.text', body: `${world.prefix}${lines.join('\n')}` });
    receive(store, { event: eventOf(at), room: 'club', sender: member, kind: 'message', content, at: world.now() });
  };
  // One after another: at once, members would take turns.
  for (const [at, message] of demoMessages.entries()) {
    store.transaction(() => {
      if (at === 0) for (const one of demoMembers) enter(one);
      tell(at, message);
    });
    await work.run();
  }
  return true;
}
