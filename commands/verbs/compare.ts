/** Two or more cars, setups, sizes or figures, side by side. */
import { canBeTold, isRefusal } from '../../core/catalog.js';
import { nameAt } from '../../core/engine.js';
import { type Answer, answer } from '../answer.js';
import type { Command, Outcome } from '../command.js';
import type { Context } from '../context.js';
import { refused } from '../house/own.js';
import { catalog, lookAt, lookAtFirst, numbersOf } from '../looked.js';
import type { Clause, Item, Reading } from '../reading.js';
import { sentence, textOf } from '../show/amount.js';
import { restsOn } from '../show/rests.js';
import { type Side, sideBySide, sideLine } from '../show/sides.js';
import { sizesSideBySide } from '../topics/sizes.js';
import { pathsOf, supposing } from './asked.js';

const isFact = (item: Item): boolean => item.said !== undefined && canBeTold(item.entry);

/** A side of the line: its car, with what it tells laid over it. */
function sideOf(clause: Clause, reading: Reading, context: Context): Side | Outcome {
  const base = lookAtFirst(clause.subjects, context);
  if ('answer' in base) return base;
  const facts = clause.items.filter(isFact);
  const looked = supposing(base, [...facts, ...reading.tried]);
  if ('answer' in looked) return looked;
  const told = facts.map((item) => item.said?.text ?? '').join(', ');
  return { label: told === '' ? base.label || 'now' : told, looked, items: clause.items.filter((item) => !isFact(item)) };
}
/** The sides of a line; one alone stands against the car as it is now. */
export function sidesOf(reading: Reading, context: Context): readonly Side[] | Outcome {
  const sides: Side[] = [];
  for (const clause of reading.sides) {
    const side = sideOf(clause, reading, context);
    if ('answer' in side) return side;
    sides.push(side);
  }
  if (sides.length > 1) return sides;
  const [only] = sides;
  const clause = reading.sides[0];
  const says = clause !== undefined && (clause.subjects.length > 0 || clause.items.some(isFact) || reading.tried.some(isFact));
  if (!only?.looked.car || !says) return refused('Compare what with what?', 'compare 245/40R17 vs 255/40R17');
  const now = lookAt({ is: 'now' }, context);
  if ('answer' in now) return now;
  const there: Side = { label: 'now', looked: now, items: only.items };
  // `compare now with front bar 24 mm`: what is supposed stands beside what is there, and after it.
  const supposed = reading.tried.filter(isFact).map((item) => item.said?.text ?? '');
  const same = only.looked.car.id === now.car?.id && only.looked.situation.facts !== now.situation.facts && only.label === now.label;
  if (supposed.length > 0 && (same || only.label === 'now')) return [there, { ...only, label: supposed.join(', ') }];
  return [only, there];
}

/** `rear ride frequency vs front ride frequency`: two numbers of one kind. */
function twoFigures(sides: readonly Side[], context: Context, wantedUnit?: string): Answer | undefined {
  const [a, b] = sides;
  if (!a || !b || sides.length !== 2 || a.looked.situation.facts !== b.looked.situation.facts) return undefined;
  const [from, to, another] = [...new Set([...a.items, ...b.items].flatMap(pathsOf))];
  if (from === undefined || to === undefined || another !== undefined) return undefined;
  const [one, two] = [catalog.node(from), catalog.node(to)];
  if (one.entry.dimension !== two.entry.dimension) return undefined;
  const line = sideLine(from, sides, context.asker.preferences, wantedUnit, to);
  if (!line) return undefined;
  const [left = '', right = '', change = ''] = line.row.cells.map(textOf);
  return answer('told', `${sentence(nameAt(one.entry, one.place))} ${left}, ${nameAt(two.entry, two.place)} ${right}`, {
    rows: [{ label: 'difference', cells: [change] }],
    assumptions: restsOn(numbersOf(b.looked.situation), to, context),
  });
}

export async function compareSides(reading: Reading, context: Context): Promise<Outcome> {
  const sides = sidesOf(reading, context);
  if ('answer' in sides) return sides;
  const facts = reading.sides.flatMap((side) => side.items).filter(isFact);
  if (facts.length > 0 && facts.every(({ entry }) => entry.kind === 'designation')) return sizesSideBySide(sides, facts, reading, context);
  const two = twoFigures(sides, context, reading.wantedUnit);
  if (two) return { answer: two };
  const asked = [...new Set(sides.flatMap((side) => side.items.flatMap(pathsOf)))];
  const known = asked.filter((path) => sides.every(({ looked }) => !isRefusal(numbersOf(looked.situation).number(path))));
  return sideBySide(sides, { paths: known.length > 0 ? known : asked, wantedUnit: reading.wantedUnit }, context);
}

export const compare: Command = {
  word: 'compare',
  also: ['vs', 'versus', 'difference between'],
  group: 'verb',
  summary: 'Cars, setups, sizes or figures side by side; what differs for sure comes first.',
  examples: [
    { line: 'compare turnip with moth', does: 'two cars' },
    { line: 'keep as dry\ncompare now with dry', does: 'the car and a setup' },
    { line: '245/40R17 vs 255/40R17', does: 'two sizes, no verb needed' },
    { line: 'turnip vs moth rear ride frequency', does: 'one figure of both' },
  ],
  takes: 'items',
  changes: false,
  run: compareSides,
};
