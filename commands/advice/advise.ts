/** What to change, from the box of the car: ranked by what it does for the work it takes, against the doubt of the difference. */
import { type Goal, isEqual, pairsOf, type Ranked, type Ranking } from '../../core/advice/rank.js';
import { isRefusal } from '../../core/catalog.js';
import type { Situation } from '../../core/engine.js';
import { type Breathe, oneByOne } from '../breathing.js';
import type { Command, Outcome } from '../command.js';
import type { CarView, Context } from '../context.js';
import { carInUse, carNamed, isOutcome, refused } from '../house/own.js';
import { lookAtCar, numbersOf } from '../looked.js';
import { partsOf } from '../records/kinds/part.js';
import { lineToTell } from '../show/figure.js';
import { advised } from './advised.js';
import { aimsOf, conditionsOf, under } from './aims.js';
import { type Wanted, wantedOf } from './goal.js';
import { type Choice, collide, generalOptions, notesOf, type Option, optionsOf, together } from './options.js';
import { rankInPieces } from './ranking.js';

const example = 'more rotation mid corner';
/** So many of the best are made pairs of. */
const pairedOf = 8;

function carOf(wanted: Wanted, context: Context): CarView | Outcome {
  if (wanted.car === undefined) return carInUse(context);
  const named = carNamed(context, wanted.car);
  if (named) return named;
  const theirs = context.garage.others.some(({ name }) => name.toLowerCase() === wanted.car?.toLowerCase());
  return theirs
    ? refused(`Only its owner can be advised on ${wanted.car}: its box is seen by nobody else.`, example)
    : refused(`You have no car called ${wanted.car}.`, 'car');
}
/** Of a pair, what each gains alone and whether it upsets what should stay. */
type Alone = ReadonlyMap<Option, readonly [Ranked<Option>, Ranked<Option>]>;
/** Pairs of the singles that gain most, whatever else they upset: two may mend what one upsets. */
async function pairsFrom(
  ranking: Ranking<Option>,
  from: Situation,
  breathe: Breathe,
): Promise<{ readonly choices: readonly Choice[]; readonly alone: Alone }> {
  const gaining = ranking.ranked.filter(({ gain, verdict }) => gain > 0 && verdict !== 'away').slice(0, pairedOf);
  const mending = ranking.ranked.filter(({ held, verdict }) => held !== undefined && verdict === 'away').slice(0, pairedOf / 2);
  const alone = new Map<Option, readonly [Ranked<Option>, Ranked<Option>]>();
  const pairs = await oneByOne(pairsOf<Ranked<Option>>([...gaining, ...mending], collide), breathe, ([a, b]) => {
    const both = together(from, a, b);
    if (both) alone.set(both.what, [a, b]);
    return both;
  });
  return { choices: pairs.filter((both) => both !== undefined), alone };
}
/** A pair that does no more than one of its two is no advice. */
const least = 1.05;
function isWorthTwo({ what, gain }: Ranked<Option>, alone: Alone): boolean {
  const [a, b] = alone.get(what) ?? [];
  const best = Math.max(...[a, b].flatMap((one) => (one && one.verdict !== 'upsets' ? [one.gain] : [])), 0);
  return gain > least * best;
}
async function rankPairs(singles: Ranking<Option>, from: Situation, goal: Goal, breathe: Breathe): Promise<Ranking<Option>> {
  const { choices, alone } = await pairsFrom(singles, from, breathe);
  const ranking = await rankInPieces(from, choices, goal, breathe);
  if (isRefusal(ranking)) throw new Error('a car has a figure for single changes and none for pairs');
  return { ...ranking, ranked: ranking.ranked.filter((one) => isWorthTwo(one, alone)) };
}

export async function advice(wanted: Wanted, paired: boolean, context: Context): Promise<Outcome> {
  const car = carOf(wanted, context);
  if (isOutcome(car)) return car;
  const looked = lookAtCar(car, context);
  const conditions = conditionsOf(wanted);
  const from = under(looked.situation, conditions);
  if ('refused' in from) return refused(from.refused, example);
  const { goal, figure } = aimsOf(wanted);
  const { breathe } = context;
  const { preferences } = context.asker;
  const parts = partsOf(context.garage, car.id);
  const own = (await oneByOne(parts, breathe, (part) => optionsOf([part], from, preferences))).flat();
  const singles = await rankInPieces(from, own, goal, breathe);
  if (isRefusal(singles)) {
    const line = lineToTell(numbersOf(looked.situation), singles.because ?? []) ?? 'help set';
    return refused(`That can't be worked out for ${car.name} yet: ${singles.refused}`, line);
  }
  const ranking = paired ? await rankPairs(singles, from, goal, breathe) : singles;
  // A box that holds nothing for it: what is on the car shows at least which way to go.
  const helps = ranking.ranked.some(({ verdict }) => verdict === 'helps');
  const general = helps || paired ? undefined : await rankInPieces(from, generalOptions(from, preferences), goal, breathe);
  await breathe();
  return advised(
    {
      ...{ wanted, car, from, conditions, goal, figure, paired, empty: own.length === 0, notes: notesOf(parts), ranking },
      general: general === undefined || isRefusal(general) ? undefined : general,
      equal: (a, b) => isEqual(a, b, goal),
    },
    context,
  );
}
/** What was asked last, for a bare `pairs`. */
function lastWish(context: Context): Wanted | undefined {
  for (const { line } of context.conversation.choices) {
    const wish = /^pairs (.+)$/.exec(line)?.[1];
    if (wish !== undefined) return wantedOf(wish);
  }
  return undefined;
}
const unread = (text: string): Outcome =>
  text === ''
    ? refused('What shall it do better? Say it as to a clubmate.', example)
    : refused(`I can't tell what is wanted by "${text}": rotation, grip, roll or softness, and when.`, example);

export const advise: Command = {
  word: 'advise',
  also: ['advice', 'suggest', 'what should i change for', 'what can i change for'],
  group: 'verb',
  summary: 'What to change for what you want or complain of, from your box. The words alone do it.',
  examples: [
    { line: example, does: 'ranked by shift for the work' },
    { line: 'pushes going in', does: 'a complaint, when braking' },
    { line: 'loose coming out', does: 'when on the throttle' },
    { line: 'less roll', does: 'of the body' },
    { line: 'more grip rear', does: 'at one end' },
    { line: 'keep balance but softer', does: 'what may not move, too' },
  ],
  takes: 'text',
  hears: (line) => wantedOf(line) !== undefined,
  changes: false,
  async run(reading, context) {
    const wanted = wantedOf(reading.rest);
    if (!wanted) return unread(reading.rest);
    const outcome = await advice(wanted, false, context);
    return { ...outcome, answer: { ...outcome.answer, echoes: [...wanted.echoes, ...outcome.answer.echoes] } };
  },
};
export const pairs: Command = {
  word: 'pairs',
  also: ['pairs for', 'pair', 'two changes for'],
  group: 'verb',
  summary: 'The same for two changes together; alone, for what was asked last.',
  examples: [
    { line: `pairs ${example}`, does: 'two changes at once' },
    { line: 'pairs keep balance but softer', does: 'one mends what the other upsets' },
  ],
  takes: 'text',
  changes: false,
  run(reading, context) {
    const wanted = reading.rest.trim() === '' ? lastWish(context) : wantedOf(reading.rest);
    if (!wanted) return reading.rest.trim() === '' ? refused('Pairs for what?', `pairs ${example}`) : unread(reading.rest);
    return advice(wanted, true, context);
  },
};
