/** How do you know: where a number comes from, step by step, and where the formula stands in print. */
import { isInput, isRefusal } from '../../core/catalog.js';
import { type Evaluation, nameAt } from '../../core/engine.js';
import { balanceIndex } from '../../core/subjects/cornering/balance.js';
import { whyBalance } from '../advice/causes.js';
import { type Answer, answer, type Row } from '../answer.js';
import { phrase } from '../canonical.js';
import type { Command } from '../command.js';
import type { Context, Preferences } from '../context.js';
import { refused } from '../house/own.js';
import { type Looked, numbersOf } from '../looked.js';
import { amount, bare, cellOf, evidenceText, factCell, sentence, textOf, writing } from '../show/amount.js';
import { lineToTell, onceEach, stepsTo } from '../show/figure.js';
import { labelAt } from '../show/label.js';
import { restsOn } from '../show/rests.js';
import { askedAlone, pathsOf } from './asked.js';

const mostSteps = 12;

/** How an input is known. */
function known(numbers: Evaluation, path: string): string {
  const fact = numbers.situation.facts.get(path);
  const { entry } = numbers.catalog.node(path);
  if (fact) return fact.source === 'tried' ? 'tried' : evidenceText(fact.evidence);
  return `assumed: ${entry.source ?? 'common practice, no source'}`;
}
/** The inputs that a number rests on by the ways it was worked out. */
function inputsOf(numbers: Evaluation, path: string, found = new Set<string>()): Set<string> {
  for (const { path: need } of numbers.used(path)) {
    if (need === undefined || found.has(need)) continue;
    const { entry, then } = numbers.catalog.node(need);
    if (entry.kind === 'place') continue;
    if (isInput(entry) && !then) {
      found.add(need);
      if (numbers.status(need) === 'told') continue;
    }
    inputsOf(numbers, need, found);
  }
  return found;
}
/** Shares of the plus-or-minus below this part of it are not worth a row. */
const smallest = 0.03;
/** The inputs that the plus-or-minus is made of. */
const weighty = (numbers: Evaluation, path: string): ReadonlySet<string> => {
  const within = numbers.within(path);
  return new Set(numbers.shares(path).flatMap(({ amount: part, paths }) => (Math.abs(part) > smallest * within ? paths : [])));
};
const symbolOf = (numbers: Evaluation, path: string): string => {
  const { entry, place, then } = numbers.catalog.node(path);
  return `${entry.symbol ?? entry.name}${place === '' ? '' : ` ${place}`}${then ? ' then' : ''}`;
};
/** One step: what it is, its formula in words of what it needs, and the numbers. */
function stepNote(numbers: Evaluation, path: string, preferences: Preferences): string {
  const { entry, place } = numbers.catalog.node(path);
  const value = numbers.number(path);
  if (isRefusal(value)) return '';
  const result = bare(value, entry.dimension ?? 'ratio', preferences, numbers.within(path), writing(entry)).text;
  const needs = numbers.used(path).flatMap(({ need, path: from }) => {
    if (from === undefined) return [];
    const cell = cellOf(numbers, from, preferences, { doubt: false });
    return cell === undefined ? [] : [`  ${need} = ${symbolOf(numbers, from)} = ${textOf(cell)}`];
  });
  const formula = entry.formula === undefined ? [] : [`  ${entry.symbol ?? entry.name} = ${entry.formula}`];
  return [`${sentence(nameAt(entry, place))} ${result}`, ...formula, ...needs].join('\n');
}

/** The last step is the headline's number: its own line would say it twice. */
const untitled = (note: string): string => note.split('\n').slice(1).join('\n');

export function explain(looked: Looked, path: string, context: Context, wantedUnit?: string): Answer {
  const { preferences } = context.asker;
  const numbers = numbersOf(looked.situation);
  const { entry, place } = numbers.catalog.node(path);
  const name = sentence(nameAt(entry, place));
  const value = numbers.get(path);
  if (isRefusal(value)) {
    const line = lineToTell(numbers, value.because ?? [path]);
    return answer('refused', value.refused, { next: line === undefined ? [] : [{ label: line, line }] });
  }
  const fact = looked.situation.facts.get(path);
  if (fact) {
    const rows: Row[] = fact.within > 0 ? [{ label: 'usual tolerance of that', cells: [known(numbers, path)] }] : [];
    const notes = entry.measure === undefined ? [] : [`Measured like this: ${entry.measure}`];
    return answer('told', `${name} ${textOf(factCell(entry, fact, preferences, wantedUnit))}: told, ${known(numbers, path)}`, {
      rows,
      notes,
    });
  }
  const causes = path === balanceIndex.path ? whyBalance(looked, preferences) : undefined;
  const steps = [...onceEach(numbers, stepsTo(numbers, path, mostSteps)), path]
    .map((one) => (one === path ? untitled(stepNote(numbers, one, preferences)) : stepNote(numbers, one, preferences)))
    .filter((note) => note !== '');
  const matters = weighty(numbers, path);
  const inputs = [...inputsOf(numbers, path)];
  const told = inputs.filter((input) => numbers.status(input) === 'told' || matters.has(input));
  const others = inputs.length - told.length;
  const inputLines = told.flatMap((input): string[] => {
    const cell = cellOf(numbers, input, preferences);
    const at = numbers.catalog.node(input);
    return cell === undefined ? [] : [`  ${labelAt(at.entry, at.place)} ${textOf(cell)}, ${known(numbers, input)}`];
  });
  const shown =
    typeof value === 'number'
      ? amount(value, entry.dimension ?? 'ratio', preferences, numbers.within(path), writing(entry, wantedUnit))
      : cellOf(numbers, path, preferences);
  const printed = entry.source === undefined ? [] : [`In print: ${entry.source}.`];
  const bends = entry.nonlinear === undefined ? [] : [entry.nonlinear];
  const [main, ...further] = causes ?? [];
  const derivation = [
    ...(numbers.status(path) === 'estimated' ? [] : steps.reverse()),
    ...printed,
    ...(inputLines.length > 0 ? [['It rests on', ...inputLines].join('\n')] : []),
    ...(others > 0 ? [`${others} more are taken as usual and hardly matter here.`] : []),
    ...bends,
  ];
  return answer('told', main ?? `${name} ${shown === undefined ? 'known' : textOf(shown)}`, {
    ...(typeof shown === 'object' ? { amount: shown } : {}),
    // Of the balance its causes are the answer; how each number was worked out is for whoever asks.
    ...(causes === undefined ? { notes: derivation } : { notes: further, further: [{ name: 'steps', notes: derivation }] }),
    assumptions: causes === undefined ? restsOn(numbers, path, context) : [],
    choices:
      causes === undefined
        ? []
        : [{ label: 'what can I change', line: typeof value === 'number' && value < 0 ? 'less oversteer' : 'less push' }],
    next: [{ label: 'doubt', line: `doubt ${phrase(entry, place)}` }],
  });
}

export const why: Command = {
  word: 'why',
  also: ['explain', 'how come', 'how do you know', 'how do you get'],
  group: 'verb',
  summary: 'The inputs and where they come from, the formula, the steps, the printed source.',
  examples: [
    { line: 'why rear ride frequency', does: 'from the spring to the number' },
    { line: 'why front wheel rate with front spring 500', does: 'the same of something supposed' },
  ],
  takes: 'items',
  changes: false,
  run(reading, context) {
    const asked = askedAlone(reading, context);
    if ('answer' in asked) return asked;
    const paths = asked.items.flatMap(pathsOf);
    const numbers = numbersOf(asked.looked.situation);
    const path = paths.find((one) => !isRefusal(numbers.get(one))) ?? paths[0];
    if (path === undefined) return refused('Why what?', 'why rear ride frequency');
    const [item] = asked.items;
    const several = item !== undefined && paths.length > 1;
    const { entry } = numbers.catalog.node(path);
    const next = several ? paths.slice(0, 3).map((one) => numbers.catalog.node(one).place) : [];
    const explained = explain(asked.looked, path, context, reading.wantedUnit);
    const others = next.map((place) => ({ label: `why ${phrase(entry, place)}`, line: `why ${phrase(entry, place)}` }));
    return { answer: several ? { ...explained, next: others } : explained };
  },
};
