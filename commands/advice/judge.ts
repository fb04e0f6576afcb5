/** Should I, is it too stiff, is it worth it: the numbers that decide, what is usual, and whose call it is. Never a verdict of ours. */
import { canBeTold, isNumeric } from '../../core/catalog.js';
import { balanceIndex, carLimit } from '../../core/subjects/cornering/balance.js';
import { answer } from '../answer.js';
import { phrase } from '../canonical.js';
import type { Command, Outcome } from '../command.js';
import type { Context } from '../context.js';
import { noCar, refused } from '../house/own.js';
import { catalog, type Looked, lookAtCar, lookAtFirst, numbersOf } from '../looked.js';
import { type Item, isStop, type Reading } from '../reading.js';
import { read } from '../resolve.js';
import { settingOf } from '../setting.js';
import { sentence } from '../show/amount.js';
import { balanceText, tenth } from '../show/balance.js';
import { moveSaid, spokenName } from '../show/sayings.js';
import { known, moveOf, said, sayingOf, spoken } from '../show/spoken.js';
import { pathsOf } from '../verbs/asked.js';
import { purposePaths } from '../verbs/purposes.js';
import { tryFacts } from '../verbs/try.js';

/** What a question for a verdict is made of; what is left names the thing. */
const verdict =
  /\b(?:should i|shall i|would you|do you recommend|is (?:it|that|this) worth(?: it)?|worth (?:it|doing|the money)|(?:is|are|am|isn'?t|aren'?t) (?=.*\b(?:too|good|ok|okay|enough|right|wrong|ideal|best|any good|normal|alright|all right)\b))/i;
const manner =
  /\b(?:too (?:stiff|soft|hard|high|low|much|little|heavy|light|big|small|wide|narrow|short|tall|long|fast|slow)|(?:stiff|soft|high|low|good|big|hard) enough|enough|any good|good|okay|ok|right|wrong|ideal|normal|alright|all right|best|worth it|worth)\b/gi;
const small =
  /^(?:and |so |but |then )?(?:is|are|am|isn'?t|aren'?t|should i|shall i|would you|do you recommend)\b|\b(?:my|the|a|an|it|that|this|these|those|one|get|buy|do|keep|go with|run|use|really|just|now|then|for me|on my car)\b|[?!.]/gi;

/** A question that asks what, which or how wants a number, and a comparison has its own answer. */
const other = /^(?:what|which|who|how|when|where)\b|\b(?:vs|versus|compare|than)\b/i;
export const asksForVerdict = (line: string): boolean => verdict.test(line) && !other.test(line);
const thingOf = (line: string): string => line.replace(manner, ' ').replace(small, ' ').replace(/\s+/g, ' ').trim();

const showOnly = [{ word: 'show', also: [], takes: 'items', changes: false, group: 'verb' }] as const;
/** What the rest of the line names, if anything: a figure, or a part of which the first figure that it is for is meant. */
function namedIn(text: string, context: Context): { readonly items: readonly Item[]; readonly reading: Reading } | undefined {
  if (text === '') return undefined;
  const reading = read(`show ${text}`, settingOf(context, showOnly));
  if (isStop(reading)) return undefined;
  return { items: [...reading.sides.flatMap(({ items }) => items), ...reading.tried], reading };
}
/** The figures that an item is judged by. */
function figuresOf(item: Item, looked: Looked): readonly string[] {
  const numbers = numbersOf(looked.situation);
  const hasNorm = (path: string): boolean => catalog.node(path).entry.typicals.length > 0 && known(numbers, path) !== undefined;
  // A part is judged by what it is for: a spring by the ride frequency that it makes, on this car.
  const purpose = purposePaths(item.entry, item.places).filter(hasNorm).slice(0, 2);
  return purpose.length > 0 ? purpose : pathsOf(item).filter(hasNorm);
}
/** `Road cars run 1.0 to 1.5, club cars 1.5 to 2.2 (common practice).` */
function usualText(path: string, { asker: { preferences } }: Context): string {
  const { entry } = catalog.node(path);
  const how = sayingOf(path);
  const kinds = entry.typicals.map(({ for: who, range: [low, high] }) => {
    const doubt = Math.min((high - low) / 2.5, low > 0 ? low / 5 : Number.POSITIVE_INFINITY);
    return `${who} ${said(low, how, preferences, doubt)} to ${spoken(high, how, preferences, doubt)}`;
  });
  const source = entry.typicals[0]?.source ?? 'common practice, no source';
  return `${sentence(kinds.join(', '))} (${source}).`;
}
function valueText(looked: Looked, path: string, { asker: { preferences } }: Context): string {
  const numbers = numbersOf(looked.situation);
  const value = known(numbers, path);
  if (value === undefined) return '';
  if (path === balanceIndex.path) return balanceText(value, preferences, tenth);
  return spoken(value, sayingOf(path), preferences, numbers.within(path));
}
/** Where the car lies among what is usual. */
function standingText(looked: Looked, path: string): string {
  const value = known(numbersOf(looked.situation), path);
  const { typicals } = catalog.node(path).entry;
  if (value === undefined) return '';
  const among = typicals.filter(({ range: [low, high] }) => value >= low && value <= high).map(({ for: who }) => who);
  if (among.length > 0) return `That's among ${among.join(' and ')}.`;
  const [lowest, highest] = [Math.min(...typicals.map(({ range }) => range[0])), Math.max(...typicals.map(({ range }) => range[1]))];
  return value < lowest ? 'That is below all of them.' : value > highest ? 'That is above all of them.' : 'That is between them.';
}
function judged(item: Item, looked: Looked, context: Context): Outcome | undefined {
  const [path, another] = figuresOf(item, looked);
  if (path === undefined) return undefined;
  const other = another !== undefined && catalog.node(another).entry === catalog.node(path).entry ? another : undefined;
  const ends = other === undefined ? '' : `; ${catalog.node(other).place} ${valueText(looked, other, context)}`;
  const { entry, place } = catalog.node(path);
  return {
    answer: answer('told', `${sentence(spokenName(path))} ${valueText(looked, path, context)}${ends}.`, {
      notes: [usualText(path, context), `${standingText(looked, path)} Your call.`],
      next: [{ label: 'why', line: `why ${phrase(entry, place)}` }],
    }),
  };
}

const mph40 = 40 * 0.44704;
/** What the trial in the air does, as something felt: corner speed goes with the square root of grip. */
function ofTrial(context: Context): Outcome | undefined {
  const { trial } = context.conversation;
  const car = trial && context.garage.mine.find(({ id }) => id === trial.car);
  if (!trial || !car || car.head.id !== trial.head) return undefined;
  const { preferences } = context.asker;
  const before = lookAtCar(car, context);
  const facts = new Map([...before.situation.facts, ...trial.facts]);
  const after: Looked = { ...before, situation: { ...before.situation, facts } };
  const [a, b] = [numbersOf(before.situation), numbersOf(after.situation)];
  const moved = moveOf(a, b, carLimit.path);
  const balance = moveSaid(before, after, balanceIndex.path, preferences);
  const notes = balance === undefined ? [] : [`${balance}.`];
  const choices = [{ label: 'keep it', line: 'keep it' }];
  if (!moved || Math.abs(moved.change) <= moved.within)
    return { answer: answer('told', 'Your call. It adds no grip that I can be sure of.', { notes, choices }) };
  const share = Math.sqrt(moved.to / moved.from) - 1;
  const how = { dimension: 'speed' } as const;
  const much = `${Number(Math.abs(share * 100).toPrecision(1))} % of corner speed, ${spoken(Math.abs(share) * mph40, how, preferences)} at ${spoken(mph40, how, preferences)}`;
  return { answer: answer('told', `Your call. It's ${much} ${share > 0 ? 'more' : 'less'}.`, { notes, choices }) };
}

/** `should i get the 22 bar`: what it would do, and whose call it is. */
async function triedFirst(reading: Reading, context: Context): Promise<Outcome> {
  const outcome = await tryFacts(reading, context);
  return outcome.answer.kind === 'told'
    ? {
        ...outcome,
        answer: { ...outcome.answer, notes: [...outcome.answer.notes.slice(0, 2), 'Your call.', ...outcome.answer.notes.slice(2)] },
      }
    : outcome;
}

export const judge: Command = {
  word: 'judge',
  also: [],
  group: 'verb',
  summary: 'Should I, is it too stiff: what is usual, where your car lies, whose call it is.',
  examples: [
    { line: 'is my rear spring too stiff', does: 'against what is usual' },
    { line: 'try rear bar 25 mm\nshould i', does: 'what the trial is worth' },
  ],
  takes: 'text',
  changes: false,
  hears: asksForVerdict,
  run(reading, context) {
    const text = thingOf(reading.rest);
    const named = namedIn(text, context);
    const base = lookAtFirst(named?.reading.sides[0]?.subjects ?? [], context);
    if ('answer' in base) return base;
    for (const item of named?.items ?? []) {
      if (!isNumeric(item.entry) || (item.said !== undefined && canBeTold(item.entry))) continue;
      const done = judged(item, base, context);
      if (done) return done;
    }
    if (named?.items.some(({ said }) => said !== undefined)) return triedFirst(named.reading, context);
    // `should i` is of what is on trial; `is that too stiff` of the number that was shown, if one was.
    const shown = context.conversation.choices.map(({ line }) => /^why (.+)$/.exec(line)?.[1]).find((words) => words !== undefined);
    const last = shown === undefined ? undefined : namedIn(shown, context);
    const ofShown = last?.items.map((item) => judged(item, base, context)).find((done) => done !== undefined);
    const done = ofShown ?? ofTrial(context);
    if (done) return done;
    if (!base.car) return noCar();
    return refused(
      "That's your call; I can say what it does, and what is usual. Name the part or the number.",
      'is my rear spring too stiff',
    );
  },
};
