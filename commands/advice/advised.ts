/** Advice as an answer: the changes that help, best first for their work, each with what it shifts, what else moves and what it costs. */
import type { Goal, Ranked, Ranking } from '../../core/advice/rank.js';
import { isRefusal } from '../../core/catalog.js';
import { difference } from '../../core/difference.js';
import type { Situation } from '../../core/engine.js';
import { balanceIndex } from '../../core/subjects/cornering/balance.js';
import { type Answer, answer } from '../answer.js';
import { lineOf } from '../canonical.js';
import type { Outcome } from '../command.js';
import type { CarView, Context, Preferences } from '../context.js';
import { exampleLine } from '../parts/read.js';
import type { Choice, Item } from '../reading.js';
import { bare, sentence, writing } from '../show/amount.js';
import { balanceText, tenth } from '../show/balance.js';
import { endsWithin, isChange } from '../show/change.js';
import { labelAt } from '../show/label.js';
import { known } from '../show/spoken.js';
import { typed } from '../show/typed.js';
import { alongside, figureAt, wishText } from './aims.js';
import type { Wanted } from './goal.js';
import { collide, type Option } from './options.js';
import { damperPractice } from './practice.js';
import { columnsOf, gripNotes, headOf, liftNotes, nounOf, rangeSaid, tableOf, valueSaid, worthIt } from './shown.js';
import { conditionsText, list, nowText, phaseAssumed, practice, restingOn, unmoved } from './told.js';

export interface Advised {
  readonly wanted: Wanted;
  readonly car: CarView;
  readonly from: Situation;
  readonly conditions: readonly Item[];
  readonly goal: Goal;
  readonly figure: string | undefined;
  readonly paired: boolean;
  /** No change in the box that a figure could read. */
  readonly empty: boolean;
  readonly notes: readonly string[];
  readonly ranking: Ranking<Option>;
  /** Changes that are not in the box, where it holds none that helps. */
  readonly general: Ranking<Option> | undefined;
  readonly equal: (a: Ranked<Option>, b: Ranked<Option>) => boolean;
}
const mostShown = 4;
const mostChosen = 3;
const mostExplained = 2;
const limits = 'Not in it: transients, dampers, tire heat and wear, and the driver.';

const costOf = ({ what }: Ranked<Option>): string => (what.cost === '' ? 'not told' : what.cost);
/** `try rear bar 25 mm, balance with braking 0.3 g`: nothing saved until `save that`. */
function tryLine(items: readonly Item[], { car, conditions, figure }: Advised, context: Context): string {
  const looksAt: Item[] = figure === undefined ? [] : [{ entry: figureAt(figure).entry, places: [figureAt(figure).place], placed: true }];
  const other = context.garage.chosen?.id !== car.id;
  return lineOf(
    {
      verb: 'try',
      sides: [{ items: [...items, ...looksAt], subjects: other ? [{ is: 'car', id: car.id }] : [] }],
      ...{ tried: conditions, names: [], rest: '', echoes: [], mended: false },
    },
    context,
  );
}
/** What else moves: roll, ride, the other end; of what moves by more than its doubt. */
function besides(one: Ranked<Option>, advised: Advised, preferences: Preferences): string {
  const { before } = advised.ranking;
  const aimed = new Set(advised.goal.aims.map(({ path }) => path));
  const moved = alongside.flatMap((path) => {
    if (aimed.has(path)) return [];
    const [a, b] = [before.number(path), one.numbers.number(path)];
    if (isRefusal(a) || isRefusal(b) || !isChange(a, b)) return [];
    const shift = difference(before, one.numbers, path, { sameCar: true });
    if (isRefusal(shift) || Math.abs(shift.change) <= shift.within) return [];
    const { entry, place } = figureAt(path);
    const write = (si: number) => bare(si, entry.dimension ?? 'ratio', preferences, endsWithin(shift), writing(entry)).text;
    return [`${labelAt(entry, place)} ${write(a)} to ${write(b)}`];
  });
  return moved.length === 0 ? 'nothing else for sure' : moved.join(', ');
}
/** Of several figures that were aimed at the one that moved most. */
function mostMoved(one: Ranked<Option>, { goal, ranking }: Advised): string {
  const moved = (path: string): number => {
    const [from, to] = [known(ranking.before, path), known(one.numbers, path)];
    return from === undefined || to === undefined || from === 0 ? 0 : Math.abs(to / from - 1);
  };
  return goal.aims.map(({ path }) => path).toSorted((a, b) => moved(b) - moved(a))[0] ?? balanceIndex.path;
}
/** `rear bar 19 mm takes push from 2.1 % to 1.6 %, in 40 min.`; or that several do alike. */
function headlineOf(shown: readonly Ranked<Option>[], advised: Advised, preferences: Preferences): string {
  const { wanted, car, empty, paired, general, figure, goal, ranking, equal } = advised;
  const [best, ...others] = shown;
  if (best) {
    const path = figure ?? mostMoved(best, advised);
    const what = nounOf(path);
    const down = (goal.aims[0]?.towards ?? 1) < 0;
    const group = [best, ...others.filter((one) => equal(best, one))];
    const values = group.map(({ numbers }) => known(numbers, path) ?? 0);
    if (group.length > 1 && path === balanceIndex.path && values.some((value) => value < 0))
      return `${group.length} do alike, too close to rank: ${values.map((value) => balanceText(value, preferences, tenth)).join(', ')}.`;
    if (group.length > 1)
      return `${sentence(what)} ${down ? 'comes down' : 'goes up'} to ${rangeSaid(group, path, preferences)}, whichever you pick: too close to rank.`;
    const [now, then] = [ranking.before, best.numbers].map((numbers) => valueSaid(known(numbers, path) ?? 0, path, preferences));
    const work = best.what.cost === '' ? '' : `, in ${best.what.cost}`;
    return now === then
      ? `The most that the box gives is next to nothing: ${what} stays ${now}.`
      : `${sentence(best.what.label)} takes ${what} from ${now} to ${then}${work}.`;
  }
  const wish = wishText(wanted);
  if (empty && !paired) return `The box of ${car.name} is empty: tell me what you could change.`;
  if (paired) return `No two things in the box of ${car.name} surely give ${wish}.`;
  return `Nothing in the box of ${car.name} surely gives ${wish}${general ? '; this is which way to go' : ''}.`;
}

/** Of a box that is empty, or holds nothing that helps. */
function generalPart(advised: Advised, context: Context): Pick<Answer, 'rows' | 'notes' | 'choices' | 'columns'> {
  const { preferences } = context.asker;
  const helping = (advised.general?.ranked ?? []).filter(({ verdict }) => verdict === 'helps').sort((a, b) => b.gain - a.gain);
  const unsure = (advised.general?.ranked ?? []).filter(({ verdict }) => verdict === 'unsure');
  const shown = helping.slice(0, mostChosen);
  const figures = columnsOf(advised.goal.aims.map(({ path }) => path));
  return {
    ...(shown.length > 0 ? { columns: [...figures.map((path) => headOf(path, preferences)), ''] } : {}),
    rows: shown.length > 0 ? tableOf(shown, advised.ranking.before, figures, () => 'not in the box', preferences) : [],
    notes: [
      ...(shown.length > 0 ? [`Not from the box: what a small step of what ${advised.car.name} has would do.`] : []),
      ...(unsure.length > 0 ? [`Too small to tell: ${list(unsure)}.`] : []),
      ...practice(shown, advised),
    ],
    choices: shown.map((one) => tryOf(one, advised, context)),
  };
}
const isStill = ({ gain }: Ranked<Option>): boolean => Math.abs(gain) < 1e-9;
const tryOf = (one: Ranked<Option>, advised: Advised, context: Context): Choice => ({
  label: `try ${one.what.label}`,
  line: tryLine(one.what.items, advised, context),
});
/** The first two that can be done together. */
function bothOf(shown: readonly Ranked<Option>[], advised: Advised, context: Context): readonly Choice[] {
  const [a, b] = shown;
  if (!a || !b || advised.paired || collide(a, b)) return [];
  return [{ label: 'try both', line: tryLine([...a.what.items, ...b.what.items], advised, context) }];
}

export function advised(given: Advised, context: Context): Outcome {
  const { preferences } = context.asker;
  const { ranking, wanted, paired, empty, notes } = given;
  const of = (...verdicts: readonly string[]) => ranking.ranked.filter(({ verdict }) => verdicts.includes(verdict));
  const helps = of('helps');
  const [worthwhile, little] = worthIt(helps);
  const shown = worthwhile.slice(0, mostShown);
  const general = generalPart(given, context);
  const [upsets, unsure, unweighed, away] = [of('upsets'), of('unsure'), of('unweighed'), of('away')];
  const unknown = shown.filter(({ minutes }) => minutes === undefined);
  const helped = new Set([...helps, ...upsets, ...unsure, ...unweighed].map(({ what }) => what.name));
  const other = away.filter((one) => !isStill(one) && !helped.has(one.what.name));
  const again = wishText(wanted);
  const first: readonly string[] = [...gripNotes(shown, ranking.before, preferences), ...liftNotes(ranking.before, preferences)];
  const told: readonly string[] = [
    ...shown.slice(0, mostExplained).map((one) => `${sentence(one.what.label)} also moves: ${besides(one, given, preferences)}.`),
    ...(worthwhile.length > shown.length ? [`${worthwhile.length - shown.length} more would help less for the work.`] : []),
    ...(little.length > 0 ? [`Helps, but little: ${list(little)}.`] : []),
    ...(unknown.length > 0 && unknown.length < shown.length ? [`Work not told, so put last: ${list(unknown)}.`] : []),
    ...(upsets.length > 0 ? [`Helps, but upsets the balance: ${list(upsets)}.`] : []),
    ...(unsure.length > 0 ? [`Too small to tell, less than its doubt: ${list(unsure)}.`] : []),
    ...(unweighed.length > 0 ? [`The right way, but less for the work, and not looked at closely: ${list(unweighed)}.`] : []),
    ...(other.length > 0 && !paired ? [`The other way: ${[...new Set(other.map(({ what }) => what.name))].join('; ')}.`] : []),
    ...(paired ? [] : unmoved(away.filter(isStill), given)),
    ...(ranking.impossible.length > 0
      ? [
          `Could not be worked out: ${ranking.impossible
            .slice(0, 2)
            .map(({ what, why }) => `${what.label} (${why.refused})`)
            .join('; ')}.`,
        ]
      : []),
    ...practice(shown, given),
    ...notes.slice(0, 2).map((note) => `Not in the model: ${note}; ${damperPractice}.`),
    ...phaseAssumed(given),
    nowText(given, preferences),
    limits,
  ];
  const works = `A line that works:\n  ${typed(exampleLine, context.room)}`;
  const figures = columnsOf(given.goal.aims.map(({ path }) => path));
  const done = answer('told', headlineOf(shown, given, preferences), {
    ...(shown.length > 1
      ? { columns: [...figures.map((path) => headOf(path, preferences)), 'work'] }
      : general.columns
        ? { columns: general.columns }
        : {}),
    rows: shown.length === 1 ? [] : shown.length > 1 ? tableOf(shown, ranking.before, figures, costOf, preferences) : general.rows,
    notes: [...(empty && !paired ? [works] : []), ...(shown.length > 0 ? [] : general.notes), ...first],
    further: [{ name: 'what else they move, and the rest', notes: told }],
    echoes: conditionsText(given),
    assumptions: shown.length > 0 ? [] : restingOn(unsure[0], given, context),
    choices:
      shown.length > 0
        ? [...shown.slice(0, mostChosen - 1).map((one) => tryOf(one, given, context)), ...bothOf(shown, given, context)]
        : general.choices,
    next: [
      ...(empty ? [{ label: exampleLine, line: exampleLine }] : []),
      ...(paired ? [{ label: again, line: again }] : empty ? [] : [{ label: 'pairs', line: `pairs ${again}` }]),
    ],
  });
  return { answer: done };
}
