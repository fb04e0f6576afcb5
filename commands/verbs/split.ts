/** Whose doing it is: the difference of a figure between two cars, two setups, or with and without a change, split over the inputs that differ. */

import { canBeTold, isRefusal, type Refusal } from '../../core/catalog.js';
import { type Causes, causesInPieces } from '../../core/causes.js';
import { type Difference, difference } from '../../core/difference.js';
import { nameAt } from '../../core/engine.js';
import { balanceIndex, otherWayBalance } from '../../core/subjects/cornering/balance.js';
import { type Amount, answer, type Row } from '../answer.js';
import { type Breathe, inPieces } from '../breathing.js';
import { itemsText, phrase } from '../canonical.js';
import type { Command, Outcome } from '../command.js';
import type { Context, Preferences } from '../context.js';
import { settled } from '../facts.js';
import { refused } from '../house/own.js';
import { unitFor } from '../language/quantities.js';
import { catalog, type Looked, lookAt, lookAtFirst, numbersOf } from '../looked.js';
import type { Item, Reading, Subject } from '../reading.js';
import { bare, changeOf, sentence, writing } from '../show/amount.js';
import { percent } from '../show/balance.js';
import { lineToTell } from '../show/figure.js';
import { labelAt, labelAtAll } from '../show/label.js';
import { moveSaid } from '../show/sayings.js';
import { said, sayingOf, spoken } from '../show/spoken.js';
import { shortName, versusText } from '../show/versus.js';
import { pathsOf, supposing } from './asked.js';

/** What people say of a car whose figure is higher, and lower. */
const verbs: Readonly<Record<string, readonly [string, string]>> = {
  balance: ['rotates less', 'rotates more'],
  'roll.angle': ['leans more', 'leans less'],
};
const isFact = (item: Item): boolean => item.said !== undefined && canBeTold(item.entry);
const isCondition = ({ entry }: Item): boolean => entry.scope === 'question';

interface Pair {
  readonly from: Looked;
  readonly to: Looked;
  /** Another car, or another state of one. */
  readonly sameCar: boolean;
  /** What the line supposes, in its words. */
  readonly supposed: string;
}
/** From what to what: two subjects, the asker's car and a subject, or the car without and with what is supposed. */
function pairOf(reading: Reading, context: Context): Pair | Outcome {
  const subjects = reading.sides.flatMap((side) => side.subjects);
  const supposed = [...reading.sides.flatMap((side) => side.items), ...reading.tried].filter((item) => isFact(item) && !isCondition(item));
  const [first, second] = subjects;
  const now: Subject = { is: 'now' };
  const [a, b] = second ? [first, second] : first && supposed.length === 0 ? [now, first] : [first, first];
  const from = a ? lookAt(a, context) : lookAtFirst([], context);
  if ('answer' in from) return from;
  const to = b ? lookAt(b, context) : from;
  if ('answer' in to) return to;
  if (!from.car) return refused('Split the difference of which two?', 'split balance between turnip and moth');
  const conditions = reading.tried.filter(isCondition);
  const [without, base] = [supposing(from, conditions), supposing(to, conditions)];
  if ('answer' in without) return without;
  if ('answer' in base) return base;
  const changed = supposing(base, supposed);
  if ('answer' in changed) return changed;
  if (without.situation.facts === changed.situation.facts)
    return refused('Those two are the same car, as it is now.', 'split balance between dry and wet');
  return {
    from: without,
    to: changed,
    sameCar: from.car?.id === to.car?.id,
    supposed: supposed.length > 0 ? itemsText(supposed, context) : '',
  };
}
const stateFacts = ({ situation }: Looked): string =>
  [...situation.facts]
    .flatMap(([path, { value }]) => (catalog.node(path).entry.state ? [`${path}=${String(value)}`] : []))
    .sort()
    .join();
/** Ride heights and readings that differ are brought to now, so that a mixture of both has one set of them. */
function comparable({ from, to }: Pick<Pair, 'from' | 'to'>): readonly [Looked, Looked] {
  if (stateFacts(from) === stateFacts(to)) return [from, to];
  const brought = (one: Looked): Looked => ({ ...one, situation: { facts: settled(one.situation).facts } });
  return [brought(from), brought(to)];
}
/** The change by its causes. */
export function causesBetween(from: Looked, to: Looked, path: string, breathe: Breathe): Promise<Causes | Refusal> {
  const [a, b] = comparable({ from, to });
  return inPieces(causesInPieces(catalog, a.situation, b.situation, path), breathe);
}

const most = 6;
/** A part of the change smaller than this is not worth a word. */
const notable = 0.05;
/** What a group of inputs is called: `rear bar hole`, `front spring rate`. */
function nameOf(paths: readonly string[]): string {
  const [first = ''] = paths;
  const { entry } = catalog.node(first);
  return labelAtAll(
    entry,
    paths.filter((path) => catalog.node(path).entry === entry).map((path) => catalog.node(path).place),
  );
}
/** What one side has of a group: `25 mm`, `none`. */
function valueHere(paths: readonly string[], one: Looked, preferences: Preferences): string {
  const [first = ''] = paths;
  const path = paths.find((other) => one.situation.facts.has(other)) ?? first;
  const value = one.situation.facts.get(path)?.value ?? numbersOf(one.situation).get(path);
  if (typeof value === 'number') return spoken(value, sayingOf(path), preferences);
  return typeof value === 'string' ? value : typeof value === 'object' && !isRefusal(value) && 'x' in value ? 'progressive' : 'none';
}
const isBalance = (path: string): boolean => path === balanceIndex.path || path === otherWayBalance.path;
/** `2.4 less`, of a number that stands in the heading. */
function partCell(part: number, largest: number, path: string, preferences: Preferences): Amount {
  const how = { ...sayingOf(path), difference: true, ...(isBalance(path) ? percent : {}) };
  const { dimension } = how;
  return { si: part, dimension, text: `${said(Math.abs(part), how, preferences, largest / 20)} ${part >= 0 ? 'more' : 'less'}` };
}
const largestOf = ({ causes, from, to }: Pick<Causes, 'causes' | 'from' | 'to'>): number =>
  Math.max(Math.abs(to - from), ...causes.map(({ part }) => Math.abs(part)));
/** The parts as rows: what each side has, and what that makes of the figure. */
export function causeRows(split: Causes, path: string, from: Looked, to: Looked, preferences: Preferences, rows = most): readonly Row[] {
  const largest = largestOf(split);
  return split.causes
    .filter(({ part }) => Math.abs(part) > notable * largest)
    .slice(0, rows)
    .map(
      ({ paths, part }): Row => ({
        label: nameOf(paths),
        cells: [valueHere(paths, from, preferences), valueHere(paths, to, preferences), partCell(part, largest, path, preferences)],
      }),
    );
}
/** What the last column of those rows counts. */
export const countedIn = (path: string, preferences: Preferences): string => {
  if (isBalance(path)) return 'push, %';
  const how = sayingOf(path);
  return unitFor(how.dimension, preferences, how).shown || labelAt(catalog.node(path).entry, '');
};

/** `Balance at the limit, by cause:` and the causes, one a line; nothing where nothing moves it. */
export async function causeNotes(from: Looked, to: Looked, path: string, { asker, breathe }: Context): Promise<readonly string[]> {
  const { preferences } = asker;
  const split = await causesBetween(from, to, path, breathe);
  if (isRefusal(split)) return [];
  const { entry, place } = catalog.node(path);
  const largest = largestOf(split);
  if (!(largest > 1e-9)) return [];
  const parts = split.causes
    .filter(({ part }) => Math.abs(part) >= notable * largest)
    .slice(0, most)
    .map(({ paths, part }) => `  ${nameOf(paths)} ${partCell(part, largest, path, preferences).text}`);
  return [[`${sentence(nameAt(entry, place))} by cause, in ${countedIn(path, preferences)}:`, ...parts].join('\n')];
}
/** Their names over the columns: what the line supposes stands against what is there. */
const labelsOf = ({ from, to, supposed, sameCar }: Pair): readonly [string, string] =>
  supposed !== '' && sameCar ? ['now', 'then'] : [shortName(from.label), shortName(to.label)];
/** `With rear bar 25 mm it leans less: 2.3°, was 2.5.`, `moth pushes 0.3 %, turnip 2.1.` */
function headlineOf(moved: Difference, path: string, pair: Pair, preferences: Preferences): string {
  const [a, b] = labelsOf(pair);
  if (pair.supposed !== '' && pair.sameCar) {
    const text = moveSaid(pair.from, pair.to, path, preferences);
    const says = verbs[catalog.node(path).entry.path]?.[moved.change > 0 ? 0 : 1];
    const does = says === undefined ? '' : ` it ${says}`;
    return `With ${pair.supposed}${does}: ${text === undefined ? 'nothing moves' : text.charAt(0).toLowerCase() + text.slice(1)}.`;
  }
  return versusText([b, a], { ...moved, from: moved.to, to: moved.from, change: -moved.change }, path, preferences);
}

export async function splitFigure(reading: Reading, context: Context): Promise<Outcome> {
  const { preferences } = context.asker;
  const pair = pairOf(reading, context);
  if ('answer' in pair) return pair;
  const asked = reading.sides.flatMap(({ items }) => items).find(({ entry, said }) => entry.kind === 'figure' && said === undefined);
  const paths = asked ? pathsOf(asked) : [balanceIndex.path];
  const [a, b] = [numbersOf(pair.from.situation), numbersOf(pair.to.situation)];
  const known = paths.filter((one) => !isRefusal(a.number(one)) && !isRefusal(b.number(one)));
  const path = known.find((one) => a.number(one) !== b.number(one)) ?? known[0] ?? paths[0] ?? balanceIndex.path;
  const { entry, place } = catalog.node(path);
  const moved = difference(a, b, path, { sameCar: pair.sameCar });
  if (isRefusal(moved)) {
    const label = moved.missing === 'to' ? pair.to.label : pair.from.label;
    return refused(`${label}: ${moved.refused}`, lineToTell(moved.missing === 'to' ? b : a, moved.because ?? []) ?? 'help split');
  }
  const split = await causesBetween(pair.from, pair.to, path, context.breathe);
  if (isRefusal(split)) return refused(split.refused, `compare ${pair.from.label} with ${pair.to.label}`);
  const change = split.to - split.from;
  if (split.causes.length === 0 || Math.abs(change) < 1e-9 * (1 + Math.abs(split.from)))
    return {
      answer: answer(
        'told',
        `The ${nameAt(entry, place)} is the same: ${bare(split.to, entry.dimension ?? 'ratio', preferences, b.within(path), writing(entry)).text}.`,
      ),
    };
  const labels = labelsOf(pair);
  const sampled = split.causes.some(({ error }) => error > 0);
  return {
    answer: answer('told', headlineOf(moved, path, pair, preferences), {
      amount: changeOf(moved.change, entry.dimension ?? 'ratio', preferences, moved.within, writing(entry)),
      columns: [...labels, countedIn(path, preferences)],
      rows: causeRows(split, path, pair.from, pair.to, preferences),
      notes: [
        sampled
          ? 'Each part is a mean over random orders of changing one thing after another: right within a few per cent.'
          : 'Each part is a mean over every order of changing one thing after another.',
      ],
      next: paths
        .filter((other) => other !== path)
        .slice(0, 2)
        .map((other) => {
          const node = catalog.node(other);
          const what = phrase(node.entry, node.place);
          return { label: what, line: `split ${what} between ${pair.from.label} and ${pair.to.label}` };
        }),
    }),
  };
}

export const split: Command = {
  word: 'split',
  also: ['what makes the difference in'],
  group: 'verb',
  summary: 'Why a figure differs between two cars or setups: the parts of what differs.',
  examples: [
    { line: 'split balance between turnip and moth', does: 'of two cars' },
    { line: 'why does moth rotate more', does: 'than your car in use' },
    { line: 'split roll angle with rear bar 25 mm', does: 'of a change' },
  ],
  takes: 'items',
  changes: false,
  run: splitFigure,
};
