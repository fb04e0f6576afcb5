/** Two or more cars, setups, sizes or figures, side by side. */
import { canBeTold, isRefusal } from '../../core/catalog.js';
import type { Cause } from '../../core/causes.js';
import { difference } from '../../core/difference.js';
import { balanceIndex, carLimit } from '../../core/subjects/cornering/balance.js';
import { rollStiffnessShare } from '../../core/subjects/roll/stiffness.js';
import { type Answer, answer, type Section } from '../answer.js';
import { itemsText } from '../canonical.js';
import type { Command, Outcome } from '../command.js';
import type { Context } from '../context.js';
import { refused } from '../house/own.js';
import { catalog, lookAt, lookAtFirst, numbersOf } from '../looked.js';
import type { Choice, Clause, Item, Reading } from '../reading.js';
import { textOf } from '../show/amount.js';
import { isChange } from '../show/change.js';
import { partName, valueTyped } from '../show/partName.js';
import { restsOn } from '../show/rests.js';
import { spokenName } from '../show/sayings.js';
import { type Side, sideBySide } from '../show/sides.js';
import { moveOf, surenessOf } from '../show/spoken.js';
import { shortName, versusText } from '../show/versus.js';
import { sizesSideBySide } from '../topics/sizes.js';
import { pathsOf, supposing } from './asked.js';
import { causeRows, causesBetween, countedIn } from './split.js';

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
  const numbers = numbersOf(a.looked.situation);
  const moved = difference(numbers, numbers, from, { sameCar: true, toPath: to });
  if (isRefusal(moved)) return undefined;
  const { preferences } = context.asker;
  const name = one.entry === two.entry ? one.entry.name : spokenName(from);
  const text =
    one.entry === two.entry
      ? versusText([one.place, two.place], moved, from, preferences, wantedUnit).replace(`'s ${spokenName(from)}`, ` ${name}`)
      : versusText([spokenName(from), spokenName(to)], moved, from, preferences, wantedUnit).replace(`'s ${spokenName(from)}`, '');
  return answer('told', text, { assumptions: surenessOf(moved, from) === 'open' ? restsOn(numbers, to, context) : [] });
}

const longestTable = 3;
/** Both ends of what is between two cars at the limit: which causes make it, and the share of roll stiffness, which is surer. */
async function atTheLimit(a: Side, b: Side, context: Context): Promise<Pick<Answer, 'columns' | 'rows' | 'notes' | 'choices'>> {
  const { preferences } = context.asker;
  const causes = await causesBetween(a.looked, b.looked, balanceIndex.path, context.breathe);
  const labels = [a, b].map(({ label }) => shortName(label)) as [string, string];
  const sameCar = a.looked.car?.id === b.looked.car?.id;
  const also = [rollStiffnessShare.path, carLimit.path].flatMap((path) => {
    const moved = moveOf(numbersOf(a.looked.situation), numbersOf(b.looked.situation), path, sameCar);
    return moved && isChange(moved.from, moved.to) ? [versusText(labels, moved, path, preferences)] : [];
  });
  if (isRefusal(causes)) return { rows: [], notes: also, choices: [] };
  return {
    columns: [...labels, countedIn(balanceIndex.path, preferences)],
    rows: causeRows(causes, balanceIndex.path, a.looked, b.looked, preferences, longestTable),
    notes: also,
    choices: theirPart(a, b, causes.causes, context),
  };
}
/** Of what differs the part that moves most and can be put on the asker's own car: `moth's rear bar on mine`. */
function theirPart(a: Side, b: Side, causes: readonly Cause[], context: Context): readonly Choice[] {
  const own = [a, b].find(({ looked }) => looked.current && looked.car?.id === context.garage.chosen?.id);
  const other = own === a ? b : a;
  if (!own || other.looked.car?.id === own.looked.car?.id) return [];
  for (const { paths } of causes) {
    const items = paths.flatMap((path): Item[] => {
      const { entry, place } = catalog.node(path);
      const value = other.looked.situation.facts.get(path)?.value;
      const text = typeof value === 'number' && entry.step !== undefined ? valueTyped(entry, value, context.asker.preferences) : undefined;
      return value === undefined || text === undefined ? [] : [{ entry, places: [place], placed: true, said: { value, text } }];
    });
    const [item] = items;
    if (!item || items.length < paths.length) continue;
    const places = items.map(({ places: [place = ''] }) => place);
    const whole = items.every(({ said }) => said?.text === item.said?.text) && places.length > 1 ? [{ ...item, places }] : items;
    return [{ label: `${shortName(other.label)}'s ${partName(item.entry, places)} on mine`, line: `try ${itemsText(whole, context)}` }];
  }
  return [];
}
/** `+202 lb/in ± 38` is `202 lb/in ± 38 more`. */
const inWords = (text: string): string => (/^[+-].*±/.test(text) ? `${text.slice(1)} ${text.startsWith('+') ? 'more' : 'less'}` : text);
/** What was asked of both, or the balance, where nothing was: that first, then what else differs. */
async function twoSides(sides: readonly [Side, Side], asked: readonly string[], reading: Reading, context: Context): Promise<Outcome> {
  const { preferences } = context.asker;
  const [a, b] = sides;
  const numbers = [numbersOf(a.looked.situation), numbersOf(b.looked.situation)] as const;
  const known = (path: string) => numbers.every((one) => !isRefusal(one.number(path)));
  const first = asked.find(known) ?? (asked.length === 0 ? [balanceIndex.path, carLimit.path].find(known) : undefined);
  const rest = await sideBySide(sides, { paths: asked.length === 0 ? [] : asked.filter(known), wantedUnit: reading.wantedUnit }, context);
  if (first === undefined || rest.answer.kind !== 'told') return rest;
  const moved = moveOf(...numbers, first, a.looked.car?.id === b.looked.car?.id);
  if (!moved) return rest;
  const headline = versusText([shortName(a.label), shortName(b.label)], moved, first, preferences, reading.wantedUnit);
  if (asked.length > 0) {
    const open = surenessOf(moved, first) === 'open' && asked.length === 1;
    return { answer: { ...rest.answer, headline, assumptions: open ? restsOn(numbers[1], first, context) : [] } };
  }
  const limit = await atTheLimit(a, b, context);
  const all = rest.answer.rows.map(({ label, cells }) => ({ label, cells: cells.map((cell) => inWords(textOf(cell))) }));
  const differs: readonly Section[] =
    all.length === 0 ? [] : [{ name: 'all that differs', columns: rest.answer.columns ?? [], rows: all, notes: rest.answer.notes }];
  return {
    answer: answer('told', headline, {
      ...(limit.columns && limit.rows.length > 0 ? { columns: limit.columns } : {}),
      rows: limit.rows,
      notes: limit.notes,
      further: differs,
      choices: limit.choices,
    }),
  };
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
  const paths = known.length > 0 ? known : asked;
  const [a, b, another] = sides;
  if (a && b && !another) return twoSides([a, b], paths, reading, context);
  return sideBySide(sides, { paths, wantedUnit: reading.wantedUnit }, context);
}

export const compare: Command = {
  word: 'compare',
  also: ['vs', 'versus', 'difference between'],
  group: 'verb',
  summary: 'Cars, setups, sizes or figures side by side: which has more of it, and what makes that.',
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
