/** What an answer rests on, and what to measure next, in a line. */

import { type Asks, canBeNamed, type Entry, isRefusal } from '../../core/catalog.js';
import { measureNext } from '../../core/doubt.js';
import type { Evaluation, Overridden, Share } from '../../core/engine.js';
import { nameAtAll } from '../../core/engine.js';
import { wordOf } from '../canonical.js';
import type { Context, Preferences } from '../context.js';
import { amount, cellOf, evidenceText, textOf, writing } from './amount.js';
import { labelAtAll } from './label.js';
import { typed } from './typed.js';

/** Shares smaller than this part of the whole plus-or-minus are not worth a word. */
const notable = 0.3;

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
  return `${labelsOfPaths(numbers, share.paths)}, ${evidenceText(share.evidence)}${cell === undefined ? '' : ` ${textOf(cell)}`}`;
}

/** A line that teaches how to measure the first of some inputs. */
export function measureLine(numbers: Evaluation, paths: readonly string[]): string {
  const [path] = paths;
  if (path === undefined) throw new Error('an error without inputs');
  const { entry } = numbers.catalog.node(path);
  return `help measure ${wordOf(entry.asks?.tell ?? entry)}`;
}

/** Sentences under a number: what it rests on most, and what measuring that would do. None for a number without doubt. */
export function restsOn(
  numbers: Evaluation,
  path: string,
  { asker: { preferences }, room }: Pick<Context, 'asker' | 'room'>,
): readonly string[] {
  const [first] = namedShares(numbers, numbers.shares(path));
  const within = numbers.within(path);
  const value = numbers.number(path);
  if (!first || isRefusal(value) || !(within > 0)) return [];
  if (!Number.isFinite(within))
    return [
      `A slight doubt about ${asksOf(numbers, first.paths)?.words ?? `the ${namesOfPaths(numbers, first.paths)}`} takes the answer away.`,
    ];
  if (Math.abs(first.amount) < notable * within) return ['Rests on many things, none much more than the others.'];
  const says = `Rests most on: ${shareText(numbers, first, preferences)}.`;
  const next = measureNext(numbers, path, 1)[0];
  if (!next || next.after > 0.9 * within) return [says];
  const { entry } = numbers.catalog.node(path);
  const left = next.after / within;
  const does =
    left > 0.42 && left < 0.58
      ? 'halves the ±'
      : `leaves ${plusMinus(value, next.after, entry.dimension ?? 'ratio', preferences, writing(entry))}`;
  const doing = asksOf(numbers, next.paths) ? 'Telling it' : 'Measuring it';
  return [`${says} ${doing} ${does}: ${typed(measureLine(numbers, next.paths), room)}`];
}
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
    said.push(`Not the ${labelsOfPaths(numbers, [one.unused])} told but the ${labelsOfPaths(numbers, [one.used])} is used: they disagree.`);
  }
  return [...new Set(said)].slice(0, 2);
}
