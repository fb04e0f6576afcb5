/** The demo club of these tests: robin's turnip and pickle, sam's moth, which sam shares in the paddock. Told in members' own lines. */
import { work } from '../../bot/expressions/work.js';
import type { Calculator } from '../../commands/context.js';
import { Club } from './garage.js';
import { say } from './say.js';

const lines: readonly (readonly [member: string, ...lines: string[]])[] = [
  ['robin', 'save my car pickle 3120 lb, 54% front, wheelbase 101.3 in', 'set tires 245/40R17'],
  [
    'robin',
    'save my car turnip 2640 lb, 52.5% front, wheelbase 99 in',
    'set front spring rate 450 lb/in, rear spring rate 350 lb/in',
    'set front motion ratio .71, rear motion ratio .65',
    'set tires 205/50R15',
    'set wheels 15x7 et38',
    'set 1st gear ratio 3.136, 2nd gear ratio 1.888, 3rd gear ratio 1.33, 4th gear ratio 1, 5th gear ratio 0.814',
    'set final drive 4.10',
    'set tire pressure 30 psi',
    'set front track 57.5 in, rear track 57 in, cg height 19 in, rear drive',
    'set front bar 22 mm, front bar hole 9 in, front bar motion ratio 0.6, rear bar 16 mm, rear bar hole 9.5 in, rear bar motion ratio 0.55',
    'set grip 1.05',
  ],
  ['robin', 'set redline 7200 rpm'],
  [
    'robin',
    'i have 19 and 22 mm rear bars, 40 min',
    'rear bar holes 7.5, 8.5 and 9.5 in 5 min',
    'i have 400 and 500 front springs 60 min, $120',
    'i can set rear pressure 26 to 34 psi 2 min',
  ],
  [
    'sam',
    'save my car moth 2400 lb, 50% front, wheelbase 95 in',
    'set front spring rate 300 lb/in, rear spring rate 250 lb/in',
    'set front motion ratio .9, rear motion ratio .95',
    'set tires 195/50R15',
    'set front track 56 in, rear track 55.5 in, cg height 20 in, front drive, grip 1.05',
    'set rear bar 22 mm, rear bar hole 8 in, rear bar motion ratio 0.7',
    'share',
  ],
];

/** In this thread, what the bot has done in one of its own. */
export const calculator: Calculator = { calculate: async (sum) => work(sum) };

export async function demoClub(): Promise<Club> {
  const club = new Club();
  for (const name of ['robin', 'sam', 'lee']) club.join(name);
  club.calculator = calculator;
  for (const [member, ...told] of lines) {
    const { answers } = await say(club, member, told.join('\n'));
    const wrong = answers.find(({ kind }) => kind !== 'changed');
    if (wrong) throw new Error(`${member}'s demo car was not saved: ${wrong.headline}`);
  }
  return club;
}
