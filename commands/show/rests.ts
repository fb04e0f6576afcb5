/** What an answer rests on, and what to measure next, in a line. */

import { type Asks, canBeNamed, type Entry, isRefusal } from '../../core/catalog.js';
import { measureNext } from '../../core/doubt.js';
import type { Evaluation, Overridden, Share } from '../../core/engine.js';
import { nameAtAll } from '../../core/engine.js';
import { wordOf } from '../canonical.js';
import type { Context, Preferences } from '../context.js';
import { amount, cellOf, evidenceText, sentence, textOf, writing } from './amount.js';
import { labelAtAll } from './label.js';

/** A doubt that is a smaller part of the number than this takes no measurement to make it of use. */
const doubtful = 0.2;
/** A measurement that leaves more of the plus-or-minus than this does little. */
const little = 0.9;

/** What the inputs of one error are called together: `front and rear spring rate`. */
export const namesOfPaths = (numbers: Evaluation, paths: readonly string[]): string =>
  called(numbers, paths, (entry, places) => nameAtAll(entry, places).join(' and '));
/** The same in the short form of a row: `tire rate`. */
export const labelsOfPaths = (numbers: Evaluation, paths: readonly string[]): string => called(numbers, paths, labelAtAll);
function called(numbers: Evaluation, paths: readonly string[], name: (entry: Entry, places: readonly string[]) => string): string {
  const byEntry = new Map<string, string[]>();
  for (const path of paths) {
    const { entry, place } = numbers.catalog.node(path);
    byEntry.set(entry.path, [...(byEntry.get(entry.path) ?? []), place]);
  }
  return [...byEntry].map(([entry, places]) => name(numbers.catalog.node(pathIn(places[0] ?? '', entry)).entry, places)).join(' and ');
}
const pathIn = (place: string, entry: string): string => (place === '' ? entry : `${place}.${entry}`);

/** What a guess that cannot be told itself asks for, where these inputs are one. */
const asksOf = (numbers: Evaluation, [path]: readonly string[]): Asks | undefined =>
  path === undefined ? undefined : numbers.catalog.node(path).entry.asks;
/** The errors of a number that may be named, largest first. */
export const namedShares = (numbers: Evaluation, shares: readonly Share[]): readonly Share[] =>
  shares.filter(({ paths }) => paths.some((path) => canBeNamed(numbers.catalog.node(path).entry)));
/** What to do about an error: `Measure the tire rate`, `Tell whether rubber sits at the spring`. */
export function toSettle(numbers: Evaluation, paths: readonly string[]): string {
  const asks = asksOf(numbers, paths);
  return asks ? `Tell ${asks.words}` : `Measure the ${labelsOfPaths(numbers, paths)}`;
}

/** `rear tire rate, assumed 1,300 lb/in ± 250` */
export function shareText(numbers: Evaluation, share: Pick<Share, 'paths' | 'evidence'>, preferences: Preferences): string {
  const asks = asksOf(numbers, share.paths);
  if (asks) return `${asks.words}, which is not told`;
  const [path] = share.paths;
  const cell = path === undefined ? undefined : cellOf(numbers, path, preferences);
  const value = cell === undefined ? '' : ` ${textOf(cell)}`;
  return share.evidence === 'rule'
    ? `my guess of the ${labelsOfPaths(numbers, share.paths)}${value}`
    : `${labelsOfPaths(numbers, share.paths)}${value}, ${evidenceText(share.evidence)}`;
}

/** A line that teaches how to measure the first of some inputs. */
export function measureLine(numbers: Evaluation, paths: readonly string[]): string {
  const [path] = paths;
  if (path === undefined) throw new Error('an error without inputs');
  const { entry } = numbers.catalog.node(path);
  return `help measure ${wordOf(entry.asks?.tell ?? entry)}`;
}

/** Whether the plus-or-minus is as large as the number itself: then it is not an answer yet. Of what stands about zero that says nothing. */
export function isUnknowable(numbers: Evaluation, path: string): boolean {
  const value = numbers.number(path);
  const { entry } = numbers.catalog.node(path);
  return !isRefusal(value) && numbers.within(path) >= Math.abs(value) && value !== 0 && (entry.sane?.[0] ?? 0) >= 0;
}
/** The one measurement that does most for a number, as a sentence and a line; none where the number is of use without. */
export interface Measuring {
  readonly sentence: string;
  readonly line: string;
}
export function measuring(numbers: Evaluation, path: string, { asker: { preferences } }: Pick<Context, 'asker'>): Measuring | undefined {
  const within = numbers.within(path);
  const value = numbers.number(path);
  if (isRefusal(value) || !(within > doubtful * Math.abs(value))) return undefined;
  const next = measureNext(numbers, path, 1)[0];
  if (!next) return undefined;
  const { entry } = numbers.catalog.node(path);
  const line = measureLine(numbers, next.paths);
  const does = asksOf(numbers, next.paths)
    ? `${toSettle(numbers, next.paths)}.`
    : `One measurement does most: ${labelsOfPaths(numbers, next.paths)}.`;
  if (!Number.isFinite(within)) return { sentence: does, line };
  if (next.after > little * within) return undefined;
  const leaves = plusMinus(value, next.after, entry.dimension ?? 'ratio', preferences, writing(entry));
  return { sentence: `${does} It leaves ${leaves}.`, line };
}
/** Sentences under a number: the measurement that does most, where the number needs it. */
export const restsOn = (numbers: Evaluation, path: string, context: Pick<Context, 'asker' | 'room'>): readonly string[] =>
  [measuring(numbers, path, context)].flatMap((one) => one?.sentence ?? []);
/** What the number rests on most, whether it needs measuring or not: for whoever asks for more. */
export function restsMost(numbers: Evaluation, path: string, { asker: { preferences } }: Pick<Context, 'asker'>): readonly string[] {
  const within = numbers.within(path);
  if (!(within > 0) || !Number.isFinite(within)) return [];
  return namedShares(numbers, numbers.shares(path))
    .slice(0, mostShares)
    .filter(({ amount: part }) => Math.abs(part) > 0.1 * within)
    .map((share) => `${sentence(shareText(numbers, share, preferences))}.`);
}
const mostShares = 3;
const plusMinus = (
  value: number,
  within: number,
  ...[dimension, preferences, how]: [Parameters<typeof amount>[1], Preferences, ReturnType<typeof writing>]
) => amount(value, dimension, preferences, within, how).text.replace(/^.*(?=±)/, '');

/**
 * Told facts that are not used, because others that say the same are read first; those that `among` picks. Where both say the same within their
 * doubt there is nothing to tell.
 */
export function disagreements(numbers: Evaluation, among: (one: Overridden) => boolean): readonly string[] {
  const said: string[] = [];
  for (const one of numbers.overridden()) {
    // What only follows from other facts was not told by anybody.
    if (!one.disagree || numbers.status(one.unused) !== 'told' || !among(one)) continue;
    said.push(
      `Your ${labelsOfPaths(numbers, [one.unused])} and ${labelsOfPaths(numbers, [one.used])} disagree; I go by the ${labelsOfPaths(numbers, [one.used])}.`,
    );
  }
  return [...new Set(said)].slice(0, 2);
}
