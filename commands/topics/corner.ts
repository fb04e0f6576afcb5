/** The car in a steady turn: which end gives up first and at what g; then roll, shares and the four loads at the g that is asked. */
import { isRefusal } from '../../core/catalog.js';
import { type Evaluation, nameAt, pathAt } from '../../core/engine.js';
import { braking, driving, lateral, turn } from '../../core/subjects/cornering/asked.js';
import * as balance from '../../core/subjects/cornering/balance.js';
import { transferShare } from '../../core/subjects/cornering/transfer.js';
import * as turning from '../../core/subjects/cornering/turning.js';
import { rollAngle } from '../../core/subjects/roll/leaning.js';
import { rollStiffnessShare } from '../../core/subjects/roll/stiffness.js';
import { answer, type Row } from '../answer.js';
import { phrase } from '../canonical.js';
import type { Command, Outcome } from '../command.js';
import type { Context, Preferences } from '../context.js';
import { firstCarLine, refused } from '../house/own.js';
import { type Looked, nothing, numbersOf } from '../looked.js';
import type { Reading } from '../reading.js';
import { amount, bare, cellOf, sentence, textOf, writing } from '../show/amount.js';
import { lineToTell } from '../show/figure.js';
import { labelAt, labelOf } from '../show/label.js';
import { restsOn } from '../show/rests.js';
import { loadsPicture } from '../show/wheels.js';
import { askedOf } from '../verbs/asked.js';
import { compareSides } from '../verbs/compare.js';
import { showAnswer } from '../verbs/show.js';

/** What the model is, once an answer. */
const limitsOfModel =
  'Steady state on a level road; no wings, dampers or quick steering, roll under 6 degrees, radius over ten wheelbases. Grip is as told or assumed.';

const known = (numbers: Evaluation, path: string): number | undefined => {
  const value = numbers.number(path);
  return isRefusal(value) ? undefined : value;
};
const write = (numbers: Evaluation, path: string, preferences: Preferences): string => {
  const { entry } = numbers.catalog.node(path);
  const value = known(numbers, path);
  return value === undefined
    ? 'not known'
    : amount(value, entry.dimension ?? 'ratio', preferences, numbers.within(path), writing(entry)).text;
};
/** `at 0.9 g braking 0.3 g, turning left`: the turn that was asked, or the usual one. */
export function turnText(numbers: Evaluation, preferences: Preferences): string {
  const parts = [`at ${bare(known(numbers, lateral.path) ?? 0, 'acceleration', preferences).text}`];
  for (const entry of [braking, driving]) {
    const value = known(numbers, entry.path) ?? 0;
    if (value > 0) parts.push(`${entry === braking ? 'braking' : 'accelerating'} ${bare(value, 'acceleration', preferences).text}`);
  }
  const way = numbers.get(turn.path);
  return `${parts.join(', ')}, turning ${typeof way === 'string' ? way : 'left'}`;
}

const limitAt = (end: 'front' | 'rear') => pathAt(end, balance.axleLimitThisWay);
/** Which end, at what g, by how much: or that it can't be told apart. */
function headlineOf(numbers: Evaluation, whose: string, preferences: Preferences): string {
  const index = known(numbers, balance.balanceIndex.path) ?? 0;
  const first = index >= 0 ? 'front' : 'rear';
  const doubt = numbers.within(balance.balanceIndex.path);
  const margin = amount(Math.abs(index), 'ratio', preferences, doubt, { percent: true }).text;
  const at = write(numbers, limitAt(first), preferences);
  // Beyond what the tires hold there is nothing steady to tell of.
  if ((known(numbers, turning.gripMargin.path) ?? 0) < 0) {
    const asked = bare(known(numbers, lateral.path) ?? 0, 'acceleration', preferences).text;
    return `${whose}No steady state at ${asked}: the ${first} gives up at ${at}`;
  }
  if (Math.abs(index) < doubt) return `${whose}Too close to call: ${first} first at ${at}, by ${margin}`;
  return `${whose}The ${first} gives up first, at ${at}, by ${margin}`;
}
/** What is seen at once, and what is told after the picture of the wheels. */
function rowsOf(numbers: Evaluation, preferences: Preferences): { readonly first: readonly Row[]; readonly others: readonly Row[] } {
  const index = known(numbers, balance.balanceIndex.path) ?? 0;
  const other = index >= 0 ? 'rear' : 'front';
  const row = (path: string, label?: string): Row[] => {
    const { entry, place } = numbers.catalog.node(path);
    const cell = cellOf(numbers, path, preferences, { doubt: false });
    return cell === undefined ? [] : [{ label: label ?? labelAt(entry, place), cells: [cell] }];
  };
  return {
    first: [...row(limitAt(other), `${other}, hypothetical`), ...row(rollAngle.path)],
    others: [
      ...row(transferShare.path),
      ...row(rollStiffnessShare.path),
      ...row(pathAt('front', turning.useInTurn)),
      ...row(pathAt('rear', turning.useInTurn)),
      ...row(balance.otherWayBalance.path),
      ...row(balance.firstLift.path),
      ...row(balance.firstContact.path),
    ],
  };
}
/** Rows as lines that are kept as they are. */
const asNote = (rows: readonly Row[]): readonly string[] =>
  rows.length === 0 ? [] : [rows.map(({ label, cells }) => `  ${label} ${cells.map(textOf).join(' ')}`).join('\n')];
/** Beyond what the tires hold there is no steady state: the rows are then of tires that would hold. */
function beyondNote(numbers: Evaluation): readonly string[] {
  const margin = known(numbers, turning.gripMargin.path);
  if (margin === undefined || margin >= 0) return [];
  return ['Roll, loads and use are of tires that would hold.'];
}

function cornerAnswer(looked: Looked, context: Context): Outcome {
  const { preferences } = context.asker;
  const numbers = numbersOf(looked.situation);
  const index = numbers.number(balance.balanceIndex.path);
  const whose = looked.label === '' || looked.current ? '' : `${looked.label}: `;
  if (isRefusal(index)) {
    if (looked === nothing) return refused('Which car? A corner needs its weight, springs, tracks and more.', firstCarLine);
    return refused(`${whose}${index.refused}`, lineToTell(numbers, index.because ?? []) ?? 'help corner');
  }
  const picture = loadsPicture(numbers, preferences);
  const { first: rows, others } = rowsOf(numbers, preferences);
  const first = numbers.catalog.node(limitAt(index >= 0 ? 'front' : 'rear'));
  return {
    answer: answer('told', headlineOf(numbers, whose, preferences), {
      amount: amount(index, 'ratio', preferences, numbers.within(balance.balanceIndex.path), { percent: true }),
      rows,
      notes: [
        ...beyondNote(numbers),
        ...(picture === undefined ? [] : [picture]),
        ...asNote(others),
        `${sentence(labelOf(rollAngle))}, loads and use are ${turnText(numbers, preferences)}. The other end's limit is hypothetical: it never gets there.`,
        limitsOfModel,
      ],
      assumptions: restsOn(numbers, balance.balanceIndex.path, context),
      cautions: balance.carLimit.caution === undefined ? [] : [balance.carLimit.caution],
      next: looked.current
        ? [
            { label: 'why', line: `why ${phrase(balance.balanceIndex)}` },
            { label: 'draw loads', line: 'draw loads against g' },
            { label: `why ${nameAt(first.entry, first.place)}`, line: `why ${phrase(first.entry, first.place)}` },
          ]
        : [],
    }),
  };
}
function run(reading: Reading, context: Context): Outcome | Promise<Outcome> {
  if (reading.sides.length > 1) return compareSides(reading, context);
  const asked = askedOf(reading.sides[0], reading, context);
  if ('answer' in asked) return asked;
  // A figure that is named is what is asked for.
  if (asked.items.length > 0) return showAnswer(reading, context);
  return cornerAnswer(asked.looked, context);
}
export const corner: Command = {
  word: 'corner',
  also: [],
  group: 'topic',
  summary: 'A steady turn: which end gives up first, at what g, by how much; roll, shares, loads.',
  examples: [
    { line: 'corner', does: 'which end lets go first' },
    { line: 'corner at 0.9 g', does: 'with roll and loads there' },
    { line: 'corner at 0.7 g right braking 0.2 g', does: 'braking into a right turn' },
    { line: 'corner with rear bar 22 mm', does: 'supposing a bar' },
  ],
  takes: 'items',
  changes: false,
  run,
};
