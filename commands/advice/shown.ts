/** Changes side by side: what each makes of the figure that was wanted, what the car then holds, and the work; and what of it is sure. */
import type { Ranked, Ranking } from '../../core/advice/rank.js';
import { pathAt } from '../../core/engine.js';
import { axleLift, balanceIndex, carLimit } from '../../core/subjects/cornering/balance.js';
import type { Row } from '../answer.js';
import type { Preferences } from '../context.js';
import { unitFor } from '../language/quantities.js';
import { balanceText, percent, tenth } from '../show/balance.js';
import { known, listed, moveOf, said, sayingOf, spoken } from '../show/spoken.js';
import { figureAt } from './aims.js';
import type { Option } from './options.js';

type One = Ranked<Option>;
/** In g, to a thousandth: what tells changes of one car apart. */
const gee = { dimension: 'acceleration' } as const;
const finestGee = 0.02;
const isBalance = (path: string): boolean => path === balanceIndex.path;

/** What the column of a figure is headed with, and what a clubmate calls it in a sentence. */
const heads: Readonly<Record<string, readonly [head: string, spoken: string]>> = {
  balance: ['push', 'push'],
  'limit.car': ['holds', 'grip'],
  limit: ['holds', 'grip'],
  'roll.angle': ['lean', 'lean'],
  rideFrequency: ['ride', 'ride frequency'],
  'traction.cornerAcceleration': ['thrust', 'thrust in the turn'],
};
const placed = (place: string, words: string): string => (place === '' ? words : `${place} ${words}`);
export function nounOf(path: string): string {
  const { entry, place } = figureAt(path);
  return placed(place, heads[entry.path]?.[1] ?? entry.label ?? entry.name);
}
const sayingAt = (path: string) => (isBalance(path) ? percent : sayingOf(path));
/** `push, %`: numbers in a column have their unit over them. */
export function headOf(path: string, preferences: Preferences): string {
  const { entry, place } = figureAt(path);
  const how = sayingAt(path);
  const unit = unitFor(how.dimension, preferences, how).shown;
  return `${placed(place, heads[entry.path]?.[0] ?? entry.label ?? entry.name)}${unit === '' ? '' : `, ${unit}`}`;
}
const doubtOf = (path: string): number => (isBalance(path) ? tenth : path === carLimit.path ? finestGee : 0);
/** A figure as it is, or comes to be: `1.6 %`, `loose 0.3 %`, `1.038 g`. */
export function valueSaid(si: number, path: string, preferences: Preferences): string {
  if (isBalance(path) && si < 0) return balanceText(si, preferences, tenth);
  return spoken(si, sayingAt(path), preferences, doubtOf(path));
}
/** The same under its heading: without its unit. */
const cellSaid = (si: number, path: string, preferences: Preferences): string =>
  isBalance(path) && si < 0
    ? balanceText(si, preferences, tenth).replace(/ ?%$/, '')
    : said(si, sayingAt(path), preferences, doubtOf(path));
/** The figures of the columns: what was aimed at, then the balance or the grip beside it. */
export const columnsOf = (aims: readonly string[]): readonly string[] => {
  const [first] = aims;
  if (aims.length > 1 || first === undefined) return aims;
  return [first, isBalance(first) ? carLimit.path : balanceIndex.path];
};
/** One row a change, the car as it is above them. */
export function tableOf(
  shown: readonly One[],
  before: Ranking<Option>['before'],
  figures: readonly string[],
  cost: (one: One) => string,
  preferences: Preferences,
): readonly Row[] {
  const cells = (numbers: One['numbers']): string[] =>
    figures.map((path) => {
      const value = known(numbers, path);
      return value === undefined ? 'not known' : cellSaid(value, path, preferences);
    });
  return [
    { label: 'now', cells: [...cells(before), ''] },
    ...shown.map((one): Row => ({ label: one.what.label, cells: [...cells(one.numbers), cost(one)] })),
  ];
}
/** `Only the rear bar surely adds grip (0.005 g).` */
export function gripNotes(shown: readonly One[], before: Ranking<Option>['before'], preferences: Preferences): readonly string[] {
  const moves = shown.map((one) => ({ one, moved: moveOf(before, one.numbers, carLimit.path) }));
  const sure = moves.filter(({ moved }) => moved && Math.abs(moved.change) > moved.within && Math.abs(moved.change) > 5e-3);
  const adds = sure.filter(({ moved }) => (moved?.change ?? 0) > 0);
  const takes = sure.filter(({ moved }) => (moved?.change ?? 0) < 0);
  const named = (some: typeof moves): string =>
    listed(some.map(({ one, moved }) => `${one.what.label} (${spoken(Math.abs(moved?.change ?? 0), gee, preferences, finestGee)})`));
  const all = shown.length > 1 && adds.length === shown.length;
  return [
    ...(shown.length === 0
      ? []
      : adds.length === 0
        ? [
            shown.length === 1
              ? 'No grip for sure: it moves it from one end to the other.'
              : 'None surely adds grip: they move it from one end to the other.',
          ]
        : [all ? `All surely add grip: ${named(adds)}.` : `Only ${named(adds)} surely ${adds.length === 1 ? 'adds' : 'add'} grip.`]),
    ...(takes.length > 0 ? [`Less grip with ${named(takes)}.`] : []),
  ];
}
/** Past the lift of a wheel the usual steps at that end do nothing: no more load can go across than all of it. */
export function liftNotes(before: Ranking<Option>['before'], preferences: Preferences): readonly string[] {
  const limit = known(before, carLimit.path);
  return (['front', 'rear'] as const).flatMap((end) => {
    const lift = known(before, pathAt(end, axleLift));
    if (lift === undefined || limit === undefined || lift >= limit) return [];
    return [
      `The inside ${end} wheel is off the ground from ${spoken(lift, gee, preferences, 0.2)}: past that no stiffer ${end} bar or spring moves more load there.`,
    ];
  });
}
/** `1.6 to 1.9 %`: from the least to the most of some. */
export function rangeSaid(shown: readonly One[], path: string, preferences: Preferences): string {
  const values = shown.flatMap(({ numbers }) => known(numbers, path) ?? []);
  const [low, high] = [Math.min(...values), Math.max(...values)];
  const [a, b] = [valueSaid(low, path, preferences), valueSaid(high, path, preferences)];
  return a === b ? a : `${cellSaid(low, path, preferences)} to ${b}`;
}
/** Of what helps the part that is worth the work: what gives a fifth of the best, or more. */
const worth = 0.2;
export function worthIt(helps: readonly One[]): readonly [worth: readonly One[], little: readonly One[]] {
  const most = Math.max(0, ...helps.map(({ gain }) => gain));
  return [helps.filter(({ gain }) => gain >= worth * most), helps.filter(({ gain }) => gain < worth * most)];
}
