/** What is told under an advice: what the trade says, what was taken for granted, where the car stands now. */
import type { Ranked } from '../../core/advice/rank.js';
import { isRefusal } from '../../core/catalog.js';
import { difference } from '../../core/difference.js';
import { nameAt } from '../../core/engine.js';
import type { Context, Preferences } from '../context.js';
import type { Item } from '../reading.js';
import { amount, writing } from '../show/amount.js';
import { measureLine, shareText } from '../show/rests.js';
import { typed } from '../show/typed.js';
import type { Advised } from './advised.js';
import { figureAt, phaseText } from './aims.js';
import { changeOfOption, type Option } from './options.js';
import { practiceOf } from './practice.js';
/** Whether what was computed goes where the trade says. */
export function practice(shown: readonly Ranked<Option>[], { wanted, from }: Advised): readonly string[] {
  const [agree, differ]: [number[], number[]] = [[], []];
  shown.forEach((one, n) => {
    const change = changeOfOption(one.what, from);
    const way = change && practiceOf(wanted.wish, change.entry, change.end, change.way);
    if (way !== undefined) (way === wanted.towards ? agree : differ).push(n + 1);
  });
  return [
    ...(agree.length > 0 ? [`Common practice, no source, says so too: ${numbered(agree)}.`] : []),
    ...(differ.length > 0 ? [`Common practice, no source, says the opposite of: ${numbered(differ)}.`] : []),
  ];
}
const numbered = (numbers: readonly number[]): string =>
  numbers.length < 2 ? numbers.join() : `${numbers.slice(0, -1).join(', ')} and ${numbers.at(-1)}`;
/** Changes that no figure of the wish reads; what the trade says of them is all there is. */
export function unmoved(nowhere: readonly Ranked<Option>[], { wanted, from }: Advised): readonly string[] {
  const said = new Set(
    nowhere.map(({ what }) => {
      const change = changeOfOption(what, from);
      const up = change && practiceOf(wanted.wish, change.entry, change.end, 1);
      return `${what.name}${up === undefined ? '' : ` (common practice, no source: ${up === wanted.towards ? 'more' : 'less'} of it)`}`;
    }),
  );
  return said.size === 0 ? [] : [`The model moves nothing here with: ${[...said].join('; ')}.`];
}
export const list = (all: readonly Ranked<Option>[], most = 4): string => {
  const names = [...new Set(all.map(({ what }) => what.label))];
  return `${names.slice(0, most).join('; ')}${names.length > most ? ` and ${names.length - most} more` : ''}`;
};

/** What the doubt of the best rests on, and how to lessen it. */
export function restingOn(one: Ranked<Option> | undefined, { ranking, goal }: Advised, context: Context): readonly string[] {
  const [aim] = goal.aims;
  if (!one || !aim) return [];
  const shift = difference(ranking.before, one.numbers, aim.path, { sameCar: true });
  if (isRefusal(shift) || !(shift.within > 0)) return [];
  const [first] = shift.shares;
  if (!first || Math.abs(first.amount) < 0.3 * shift.within) return [];
  const line = typed(measureLine(ranking.before, first.paths), context.room);
  return [`Its doubt rests most on: ${shareText(ranking.before, first, context.asker.preferences)}. Measure it: ${line}`];
}
export function nowText({ ranking, figure, goal, wanted }: Advised, preferences: Preferences): string {
  const now = (path: string): string => {
    const { entry, place } = figureAt(path);
    const value = ranking.before.number(path);
    return isRefusal(value)
      ? ''
      : `${nameAt(entry, place)} ${amount(value, entry.dimension ?? 'ratio', preferences, ranking.before.within(path), writing(entry)).text}`;
  };
  const steady = wanted.wish === 'softer' || wanted.wish === 'stiffer';
  const [first] = goal.aims;
  if (figure === undefined) return `Now: ${goal.aims.map(({ path }) => now(path)).join(', ')}; the balance may move by 1 %.`;
  return `Now: ${now(figure)}${steady ? '' : `, ${phaseText[wanted.phase]}`}; ${first?.towards === -1 ? 'less' : 'more'} of it is wanted.`;
}
const asText = (conditions: readonly Item[]): string => conditions.map(({ entry, said }) => `${entry.name} ${said?.text ?? ''}`).join(', ');

const steady = ({ wish }: Advised['wanted']): boolean => wish === 'softer' || wish === 'stiffer' || wish === 'traction';
/** When, where the words did not say it. */
export const phaseAssumed = ({ wanted }: Advised): readonly string[] =>
  steady(wanted) || wanted.phased || wanted.wish === 'roll' ? [] : ['Taken as mid corner; say going in or coming out for the others.'];
/** How hard it brakes or speeds up, where the words did not say it. */
export const conditionsText = ({ wanted, conditions }: Advised): readonly string[] =>
  steady(wanted) || wanted.hardness !== undefined || wanted.phase === 'mid' ? [] : [`Taken with ${asText(conditions)}.`];
