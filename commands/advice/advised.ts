/** Advice as an answer: the changes that help, best first for their work, each with what it shifts, what else moves and what it costs. */
import type { Goal, Ranked, Ranking } from '../../core/advice/rank.js';
import { isRefusal } from '../../core/catalog.js';
import { difference } from '../../core/difference.js';
import { nameAt, type Situation } from '../../core/engine.js';
import { balanceIndex } from '../../core/figures/balance.js';
import { type Answer, answer } from '../answer.js';
import { lineOf } from '../canonical.js';
import type { Outcome } from '../command.js';
import type { CarView, Context, Preferences } from '../context.js';
import { exampleLine } from '../parts/read.js';
import type { Choice, Item } from '../reading.js';
import { amount, bare, sentence, writing } from '../show/amount.js';
import { balanceText, tenth } from '../show/balance.js';
import { endsWithin, isChange } from '../show/change.js';
import { labelAt } from '../show/label.js';
import { measureLine, shareText } from '../show/rests.js';
import { known } from '../show/spoken.js';
import { typed } from '../show/typed.js';
import { alongside, figureAt, phaseText, wishText } from './aims.js';
import type { Wanted } from './goal.js';
import { changeOfOption, collide, type Option } from './options.js';
import { damperPractice, practiceOf } from './practice.js';
import { columnsOf, gripNotes, headOf, liftNotes, nounOf, rangeSaid, tableOf, valueSaid, worthIt } from './shown.js';

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
/** Whether what was computed goes where the trade says. */
function practice(shown: readonly Ranked<Option>[], { wanted, from }: Advised): readonly string[] {
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
function unmoved(nowhere: readonly Ranked<Option>[], { wanted, from }: Advised): readonly string[] {
  const said = new Set(
    nowhere.map(({ what }) => {
      const change = changeOfOption(what, from);
      const up = change && practiceOf(wanted.wish, change.entry, change.end, 1);
      return `${what.name}${up === undefined ? '' : ` (common practice, no source: ${up === wanted.towards ? 'more' : 'less'} of it)`}`;
    }),
  );
  return said.size === 0 ? [] : [`The model moves nothing here with: ${[...said].join('; ')}.`];
}
const list = (all: readonly Ranked<Option>[], most = 4): string => {
  const names = [...new Set(all.map(({ what }) => what.label))];
  return `${names.slice(0, most).join('; ')}${names.length > most ? ` and ${names.length - most} more` : ''}`;
};

/** What the doubt of the best rests on, and how to lessen it. */
function restingOn(one: Ranked<Option> | undefined, { ranking, goal }: Advised, context: Context): readonly string[] {
  const [aim] = goal.aims;
  if (!one || !aim) return [];
  const shift = difference(ranking.before, one.numbers, aim.path, { sameCar: true });
  if (isRefusal(shift) || !(shift.within > 0)) return [];
  const [first] = shift.shares;
  if (!first || Math.abs(first.amount) < 0.3 * shift.within) return [];
  const line = typed(measureLine(ranking.before, first.paths), context.room);
  return [`Its doubt rests most on: ${shareText(ranking.before, first, context.asker.preferences)}. Measure it: ${line}`];
}
function nowText({ ranking, figure, goal, wanted }: Advised, preferences: Preferences): string {
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

function assumed({ wanted, conditions }: Advised): readonly string[] {
  if (wanted.wish === 'softer' || wanted.wish === 'stiffer' || wanted.wish === 'traction') return [];
  const phase = wanted.phased || wanted.wish === 'roll' ? '' : 'Taken as mid corner; say going in or coming out for the others.';
  const told = wanted.hardness === undefined && wanted.phase !== 'mid' ? `Taken with ${asText(conditions)}.` : '';
  return [phase, told].filter((text) => text !== '');
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
  const told: readonly string[] = [
    ...gripNotes(shown, ranking.before, preferences),
    ...liftNotes(ranking.before, preferences),
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
    nowText(given, preferences),
    limits,
  ];
  const works = `A line that works:\n  ${typed(exampleLine, context.room)}`;
  const figures = columnsOf(given.goal.aims.map(({ path }) => path));
  const done = answer('told', headlineOf(shown, given, preferences), {
    ...(shown.length > 0
      ? { columns: [...figures.map((path) => headOf(path, preferences)), 'work'] }
      : general.columns
        ? { columns: general.columns }
        : {}),
    rows: shown.length > 0 ? tableOf(shown, ranking.before, figures, costOf, preferences) : general.rows,
    notes: [...(empty && !paired ? [works] : []), ...(shown.length > 0 ? [] : general.notes), ...told],
    echoes: assumed(given),
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
