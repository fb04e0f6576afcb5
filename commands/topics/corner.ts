/** The car in a steady turn: which end gives up first and at what g; then roll, shares and the four loads at the g that is asked. */
import { isRefusal } from '../../core/catalog.js';
import { type Evaluation, pathAt } from '../../core/engine.js';
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
import { amount, bare, cellOf, textOf } from '../show/amount.js';
import { lineToTell } from '../show/figure.js';
import { firstToGo, limitAt, pushText } from '../show/firstToGo.js';
import { labelAt } from '../show/label.js';
import { restsMost, restsOn } from '../show/rests.js';
import { loadsPicture } from '../show/wheels.js';
import { askedOf } from '../verbs/asked.js';
import { compareSides } from '../verbs/compare.js';
import { showAnswer } from '../verbs/show.js';

/** What the model is, once an answer. */
const limitsOfModel = 'A steady turn on a level road: no wings, no dampers, no quick steering, under 6° of lean.';

const known = (numbers: Evaluation, path: string): number | undefined => {
  const value = numbers.number(path);
  return isRefusal(value) ? undefined : value;
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
    first: row(rollAngle.path, 'lean'),
    others: [
      ...row(limitAt(other), `the ${other} would hold`),
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
/** The one measurement that does most, where it is a toss-up. */
function uncertain(numbers: Evaluation, context: Context): readonly string[] {
  const index = known(numbers, balance.balanceIndex.path) ?? 0;
  return numbers.within(balance.balanceIndex.path) > Math.abs(index) ? restsOn(numbers, balance.balanceIndex.path, context) : [];
}
/** Beyond what the tires hold there is no steady state: the rows are then of tires that would hold. */
function beyondNote(numbers: Evaluation): readonly string[] {
  const margin = known(numbers, turning.gripMargin.path);
  if (margin === undefined || margin >= 0) return [];
  return ['Lean and loads are of tires that would hold.'];
}

function cornerAnswer(looked: Looked, context: Context): Outcome {
  const { preferences } = context.asker;
  const numbers = numbersOf(looked.situation);
  const index = numbers.number(balance.balanceIndex.path);
  const whose = looked.label === '' || looked.current ? '' : `${looked.label}: `;
  if (isRefusal(index)) {
    if (looked === nothing) return refused('Which car? For a corner I need its weight, springs, tracks and more.', firstCarLine);
    return refused(`${whose}${index.refused}`, lineToTell(numbers, index.because ?? []) ?? 'help corner');
  }
  const picture = loadsPicture(numbers, preferences);
  const { first: rows, others } = rowsOf(numbers, preferences);
  return {
    answer: answer('told', firstToGo(numbers, whose, preferences), {
      amount: amount(index, 'ratio', preferences, numbers.within(balance.balanceIndex.path), { percent: true }),
      notes: [
        pushText(numbers, preferences),
        ...beyondNote(numbers),
        ...rows.map(({ cells }) => `Lean ${cells.map(textOf).join(' ')} ${turnText(numbers, preferences)}.`),
      ],
      assumptions: uncertain(numbers, context),
      further: [
        ...(picture === undefined ? [] : [{ name: 'the four loads', notes: [picture] }]),
        { name: 'the other numbers', rows: others },
        { name: 'what it rests on', notes: [...restsMost(numbers, balance.balanceIndex.path, context), limitsOfModel] },
      ],
      next: looked.current
        ? [
            { label: 'why', line: `why ${phrase(balance.balanceIndex)}` },
            { label: 'draw the loads', line: 'draw loads against g' },
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
