/** Whose doing it is: the difference of a figure between two cars, two setups, or with and without a change, split over the inputs that differ. */

import { canBeTold, isRefusal, type Refusal } from '../../core/catalog.js';
import { type Causes, causesInPieces } from '../../core/causes.js';
import { type Difference, difference } from '../../core/difference.js';
import { nameAt, nameAtAll } from '../../core/engine.js';
import { balanceIndex } from '../../core/subjects/cornering/balance.js';
import { answer, type Row } from '../answer.js';
import { type Breathe, inPieces } from '../breathing.js';
import { itemsText, phrase } from '../canonical.js';
import type { Command, Outcome } from '../command.js';
import type { Context, Preferences } from '../context.js';
import { settled } from '../facts.js';
import { refused } from '../house/own.js';
import { catalog, type Looked, lookAt, lookAtFirst, numbersOf } from '../looked.js';
import type { Item, Reading, Subject } from '../reading.js';
import { bare, changeOf, sentence, valueText, writing } from '../show/amount.js';
import { lineToTell } from '../show/figure.js';
import { labelAt, labelAtAll } from '../show/label.js';
import { pathsOf, supposing } from './asked.js';

/** What people say of a car whose figure is higher, and lower. */
const says: Readonly<Record<string, readonly [string, string]>> = {
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
    return refused('Both are the same car as it stands.', 'split balance between dry and wet');
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
function causesBetween(from: Looked, to: Looked, path: string, breathe: Breathe): Promise<Causes | Refusal> {
  const [a, b] = comparable({ from, to });
  return inPieces(causesInPieces(catalog, a.situation, b.situation, path), breathe);
}

const most = 8;
/** A part of the change smaller than this is not worth a word in the headline. */
const notable = 0.05;
const percentOf = (part: number, change: number): string => `${Math.round((100 * part) / change)}%`;
/** What a group of inputs is called: `rear bar hole`, `front spring rate`. */
function nameOf(paths: readonly string[], label: boolean): string {
  const [first = ''] = paths;
  const { entry } = catalog.node(first);
  const places = paths.filter((path) => catalog.node(path).entry === entry).map((path) => catalog.node(path).place);
  return label ? labelAtAll(entry, places) : nameAtAll(entry, places).join(' and ');
}
/** `rear bar hole 9.5 in, was 8 in`: what differs, in the asker's units. */
function valuesOf(paths: readonly string[], from: Looked, to: Looked, preferences: Preferences): string {
  const [first = ''] = paths;
  const { entry } = catalog.node(first);
  const told = (one: Looked): string => {
    const path = paths.find((other) => one.situation.facts.has(other));
    const fact = path === undefined ? undefined : one.situation.facts.get(path);
    if (path !== undefined && fact) return valueText(catalog.node(path).entry, fact.value, preferences);
    const value = numbersOf(one.situation).get(first);
    return typeof value === 'number' || typeof value === 'string' ? `${valueText(entry, value, preferences)}, assumed` : 'not told';
  };
  return `${nameOf(paths, false)}: ${told(from)}, then ${told(to)}`;
}
/** Parts that mostly cancel: the change is small beside them, and so percentages of it say nothing. */
const cancels = ({ causes, from, to }: Pick<Causes, 'causes' | 'from' | 'to'>): boolean =>
  causes.some(({ part }) => Math.abs(part) > 1.2 * Math.abs(to - from));
const partAmount = (si: number, all: Pick<Causes, 'causes' | 'from' | 'to'>, path: string, preferences: Preferences, error = 0) => {
  const { entry } = catalog.node(path);
  const largest = Math.max(Math.abs(all.to - all.from), ...all.causes.map(({ part }) => Math.abs(part)));
  const how = { ...writing(entry), difference: true, signed: true };
  return bare(si, entry.dimension ?? 'ratio', preferences, Math.max(error * 2, largest / 20), how);
};
/** `60% rear bar hole, 25% rear tire size`: the largest. */
function shareText(all: Causes, path: string, preferences: Preferences): string {
  const { causes, from, to } = all;
  const change = to - from;
  const telling = causes.filter(({ part }) => Math.abs(part) >= notable * Math.abs(change)).slice(0, 3);
  const much = (part: number) => (cancels(all) ? partAmount(part, all, path, preferences).text : percentOf(part, change));
  return telling.map(({ paths, part }) => `${much(part)} ${nameOf(paths, true)}`).join(', ');
}
/** The parts as rows: what each adds, and how much of the change that is. */
function causeRows(split: Causes, path: string, preferences: Preferences): readonly Row[] {
  const change = split.to - split.from;
  const withShare = !cancels(split);
  return split.causes
    .filter(({ part }) => Math.abs(part) > 1e-2 * Math.abs(change))
    .slice(0, most)
    .map(({ paths, part, error }): Row => {
      const cell = partAmount(part, split, path, preferences, error);
      return { label: nameOf(paths, true), cells: withShare ? [cell, percentOf(part, change)] : [cell] };
    });
}
function headlineOf(split: Causes, moved: Difference, path: string, pair: Pair, preferences: Preferences): string {
  const { entry, place } = catalog.node(path);
  const how = writing(entry);
  const change = changeOf(moved.change, entry.dimension ?? 'ratio', preferences, moved.within, how).text;
  const [higher, lower] = says[entry.path] ?? [`has a higher ${nameAt(entry, place)}`, `has a lower ${nameAt(entry, place)}`];
  const who = pair.supposed !== '' ? `with ${pair.supposed} it` : pair.to.label === 'now' ? 'now it' : pair.to.label;
  const does = `${sentence(who)} ${moved.change > 0 ? higher : lower}`;
  return `${does}: ${shareText(split, path, preferences)} (${labelAt(entry, place)} ${change})`;
}

/** `Balance at the limit +3.2%, by cause:` and the causes, one a line; nothing where nothing moves it. */
export async function causeNotes(from: Looked, to: Looked, path: string, { asker, breathe }: Context): Promise<readonly string[]> {
  const { preferences } = asker;
  const split = await causesBetween(from, to, path, breathe);
  if (isRefusal(split)) return [];
  const change = split.to - split.from;
  const { entry, place } = catalog.node(path);
  const largest = Math.max(Math.abs(change), ...split.causes.map(({ part }) => Math.abs(part)));
  if (!(largest > 1e-9)) return [];
  const parts = split.causes
    .filter(({ part }) => Math.abs(part) >= notable * largest)
    .slice(0, 6)
    .map(({ paths, part }) => `  ${partAmount(part, split, path, preferences).text} ${nameOf(paths, true)}`);
  return [[`${sentence(nameAt(entry, place))} ${partAmount(change, split, path, preferences).text}, by cause:`, ...parts].join('\n')];
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
  await context.breathe();
  const split = await causesBetween(pair.from, pair.to, path, context.breathe);
  await context.breathe();
  if (isRefusal(split)) return refused(split.refused, `compare ${pair.from.label} with ${pair.to.label}`);
  const change = split.to - split.from;
  if (split.causes.length === 0 || Math.abs(change) < 1e-9 * (1 + Math.abs(split.from)))
    return {
      answer: answer(
        'told',
        `The ${nameAt(entry, place)} is the same: ${bare(split.to, entry.dimension ?? 'ratio', preferences, b.within(path), writing(entry)).text}.`,
      ),
    };
  const sampled = split.causes.some(({ error }) => error > 0);
  const uncertain = Math.abs(moved.change) < moved.within;
  return {
    answer: answer('told', headlineOf(split, moved, path, pair, preferences), {
      amount: changeOf(moved.change, entry.dimension ?? 'ratio', preferences, moved.within, writing(entry)),
      ...(cancels(split) ? {} : { columns: ['part', 'of it'] }),
      rows: causeRows(split, path, preferences),
      notes: [
        split.causes
          .filter(({ part }) => Math.abs(part) >= notable * Math.abs(change))
          .slice(0, 4)
          .map(({ paths: group }) => valuesOf(group, pair.from, pair.to, preferences))
          .join('\n'),
        sampled
          ? 'Parts are means over random orders of changing one thing after another, so within a few per cent.'
          : 'Parts are means over every order of changing one thing after another; below 0 it works the other way.',
      ],
      assumptions: uncertain ? ['The whole difference is less than its doubt: it may be none.'] : [],
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
