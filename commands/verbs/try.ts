/** What if: a change that is only tried. What moved is told, largest first against its doubt; nothing is saved. */
import { canBeTold, isRefusal } from '../../core/catalog.js';
import { type Difference, difference } from '../../core/difference.js';
import { nameAt, pathAt, placesOf } from '../../core/engine.js';
import { balanceIndex } from '../../core/subjects/cornering/balance.js';
import { rollAngle } from '../../core/subjects/roll/leaning.js';
import { axleKind } from '../../core/subjects/suspension/told.js';
import { answer, type Row } from '../answer.js';
import { type Breathe, oneByOne } from '../breathing.js';
import { itemsText } from '../canonical.js';
import type { Command, Outcome } from '../command.js';
import type { Context, Preferences } from '../context.js';
import { isNotLaid, type Laid, lay } from '../facts.js';
import { refused } from '../house/own.js';
import { askPlace } from '../house/record.js';
import { catalog, type Looked, lookAtFirst, nothing, numbersOf } from '../looked.js';
import type { Item, Reading } from '../reading.js';
import { alteredTexts, sideEffects } from '../show/altered.js';
import { bare, sentence, writing } from '../show/amount.js';
import { changeText, endsWithin, isChange } from '../show/change.js';
import { labelAt } from '../show/label.js';
import { fewer, isAskable, isTelling, sameWords } from '../show/lines.js';
import { namesOfPaths, restsOn } from '../show/rests.js';
import { typed } from '../show/typed.js';
import { supposing } from './asked.js';
import { causeNotes } from './split.js';

export interface Move {
  readonly path: string;
  readonly difference: Difference;
}
/** Below this part of a number even a sure change is not much to look at: it keeps exact trifles from the top. */
const trifle = 0.005;

const weight = ({ difference: { change, within, from } }: Move): number => Math.abs(change) / Math.hypot(within, trifle * Math.abs(from));

/** What moved, for its rows, and how many figures moved beside them. */
export interface Moved {
  readonly rows: readonly Move[];
  readonly unseen: number;
}
/** At most so many rows: the rest is counted, and shown when it is named. */
const mostRows = 24;
/**
 * Figures with words of their own that moved from one state of a car to another: what was asked for by name, then what members talk of; where
 * they talk of nothing that moved, whatever did. Each largest first against the doubt of the move, which is dear, so it is worked out only of
 * these. A figure that only repeats what was told is left out.
 */
export async function moves(before: Looked, after: Looked, wanted: readonly string[], breathe: Breathe): Promise<Moved> {
  const [a, b] = [numbersOf(before.situation), numbersOf(after.situation)];
  const told = [...after.situation.facts].filter(([path, fact]) => before.situation.facts.get(path) !== fact);
  const repeats = (from: number, to: number) => told.some(([path, { value }]) => value === to && a.get(path) === from);
  const changed: string[] = [];
  for (const entry of catalog.entries) {
    if (entry.kind !== 'figure' || !isAskable(entry)) continue;
    for (const place of placesOf(entry.scope)) {
      await breathe();
      const path = pathAt(place, entry);
      const [from, to] = [a.number(path), b.number(path)];
      if (isRefusal(from) || isRefusal(to) || !isChange(from, to) || repeats(from, to)) continue;
      changed.push(path);
    }
  }
  const asked = changed.filter((path) => wanted.includes(path) || isTelling(path));
  const found: Move[] = [];
  for (const path of asked.length > 0 ? asked : changed) {
    await breathe();
    const moved = difference(a, b, path, { sameCar: true });
    if (!isRefusal(moved)) found.push({ path, difference: moved });
  }
  const named = wanted.flatMap((path) => found.find((one) => one.path === path) ?? []);
  const others = onlyOnce(found.filter(({ path }) => !wanted.includes(path))).sort((p, q) => weight(q) - weight(p));
  const rows = [...named, ...others].slice(0, mostRows);
  return { rows, unseen: changed.length - found.length + named.length + others.length - rows.length };
}
/** Two figures of one place that move by the same tell one thing (a height, and its change): the one that is nothing but the change goes. */
function onlyOnce(found: readonly Move[]): Move[] {
  const same = (a: Move, b: Move): boolean => {
    const [one, two] = [catalog.node(a.path), catalog.node(b.path)];
    const close = Math.abs(a.difference.change - b.difference.change) <= 1e-6 * Math.abs(a.difference.change);
    return one.place === two.place && one.entry.dimension === two.entry.dimension && close;
  };
  return found.filter((move) => move.difference.from !== 0 || !found.some((other) => other.difference.from !== 0 && same(other, move)));
}
/** The moves as rows, what is alike said once; without that of one figure, which the headline tells. */
export const moveRows = (all: readonly Move[], preferences: Preferences, except?: string): readonly Row[] =>
  fewer(all.map((move) => ({ path: move.path, row: moveRow(move, preferences) })))
    .filter(({ path }) => path !== except)
    .map(({ row }) => row);

/** `1.93 Hz`, `2.21 Hz`: both ends to the place that the change can be told to. */
function moveRow({ path, difference: moved }: Move, preferences: Preferences): Row {
  const { entry, place } = catalog.node(path);
  const { dimension = 'ratio' } = entry;
  const how = writing(entry);
  const doubt = endsWithin(moved);
  return {
    label: labelAt(entry, place),
    cells: [bare(moved.from, dimension, preferences, doubt, how), bare(moved.to, dimension, preferences, doubt, how)],
  };
}
export function moveText(move: Move, preferences: Preferences): string {
  const { entry, place } = catalog.node(move.path);
  const { dimension = 'ratio' } = entry;
  const how = writing(entry);
  const now = bare(move.difference.to, dimension, preferences, endsWithin(move.difference), how).text;
  return `${sentence(nameAt(entry, place))} ${now}, ${changeText(move.difference, dimension, preferences, how)}`;
}

/** Tried facts that no figure reads, because another fact that says the same is read first. */
function unread(before: Looked, after: Looked, paths: readonly string[]): readonly string[] {
  const numbers = numbersOf(after.situation);
  return numbers
    .overridden()
    .filter(({ facts }) => facts.some((path) => paths.includes(path)))
    .map(({ used, facts }) => {
      const names = namesOfPaths(
        numbers,
        facts.filter((path) => paths.includes(path)),
      );
      return `The ${names} changes nothing while the ${namesOfPaths(numbers, [used])} is told (${before.label}).`;
    });
}

/** Another kind of axle changes many things at once: what each does is told apart. */
async function conversionNotes(laid: Laid, before: Looked, after: Looked, context: Context): Promise<readonly string[]> {
  const kind = (looked: Looked, path: string) => numbersOf(looked.situation).get(path);
  if (!laid.told.some(({ path, entry }) => entry === axleKind && kind(before, path) !== kind(after, path))) return [];
  const notes = await oneByOne([balanceIndex.path, rollAngle.path], context.breathe, (path) => causeNotes(before, after, path, context));
  return notes.flat();
}

/** What was asked for, as paths that may move: a reading that was told stays as it was told, and the figure that carries it on moves; its axle's first. */
function wantedPaths({ entry, places }: Item): readonly string[] {
  const figure = entry.carries.length > 0 ? entry : catalog.entries.find((one) => one.carriesOn === entry);
  if (figure === undefined) return places.map((place) => pathAt(place, entry));
  const axle = catalog.entries.find((one) => one.kind === 'figure' && one.scope === 'axle' && sameWords(one, figure));
  const ends = (['front', 'rear'] as const).filter((end) => places.filter((place) => place.endsWith(end.charAt(0))).length === 2);
  return [...(axle === undefined ? [] : ends.map((end) => pathAt(end, axle))), ...places.map((place) => pathAt(place, figure))];
}
export async function tryFacts(reading: Reading, context: Context): Promise<Outcome> {
  const { preferences } = context.asker;
  const [clause] = reading.sides;
  const whole = clause?.items ?? [];
  const isFact = (item: Item) => item.said !== undefined && canBeTold(item.entry);
  const facts = [...whole, ...reading.tried].filter(isFact);
  const saved = facts.filter(({ entry }) => entry.scope !== 'question');
  if (saved.length === 0) return refused('Nothing to try was told.', 'try rear spring 650 lb/in');
  const asked = askPlace(saved, 'try');
  if (asked) return { answer: asked };
  const base = lookAtFirst(clause?.subjects ?? [], context);
  if ('answer' in base) return base;
  const conditions = supposing(
    base,
    facts.filter(({ entry }) => entry.scope === 'question'),
  );
  if ('answer' in conditions) return conditions;
  const laid = lay(conditions.situation, saved, { is: 'tried' });
  if (isNotLaid(laid)) return refused(laid.refused, laid.line);
  const after: Looked = { ...conditions, situation: laid.situation };

  const wanted = whole.filter((item) => !isFact(item)).flatMap(wantedPaths);
  const { rows: ordered, unseen } = await moves(conditions, after, wanted, context.breathe);
  const [first, ...others] = ordered;
  const paths = laid.told.map(({ path }) => path);
  const tried = itemsText(saved, context);
  const told = alteredTexts(laid.told, preferences);
  const own = base !== nothing && base.current && base.car !== undefined;
  const headline = first ? moveText(first, preferences) : `No figure of ${base.label || 'what was told'} moves with ${tried}.`;
  const done = answer('told', headline, {
    ...(others.length > 0 ? { columns: ['was', 'with it'], rows: moveRows(ordered, preferences, first?.path) } : {}),
    notes: [
      `Tried, not saved: ${told.join('; ')}.`,
      ...sideEffects(laid, preferences),
      ...(await conversionNotes(laid, conditions, after, context)),
      ...(unseen > 0
        ? [
            `${unseen} more ${unseen === 1 ? 'figure moves' : 'figures move'}: name one to see it, as in: ${typed(`try ${tried}, ride rate`, context.room)}`,
          ]
        : []),
    ],
    assumptions: [...unread(base, after, paths), ...(first ? restsOn(numbersOf(after.situation), first.path, context) : [])].slice(0, 2),
    cautions: [...new Set(laid.told.flatMap(({ entry }) => entry.caution ?? []))].slice(0, 1),
    next: own ? [{ label: 'save that', line: 'save that' }] : [],
  });
  if (!own || !base.car) return { answer: done };
  const keep = new Map(laid.told.flatMap(({ path, after: fact }) => (fact ? [[path, fact] as const] : [])));
  return { answer: done, trial: { car: base.car.id, head: base.car.head.id, line: `set ${tried}`, facts: keep } };
}

export const tryOut: Command = {
  word: 'try',
  also: ['what if', 'what happens if', 'what would happen with'],
  group: 'verb',
  summary: 'What moves if something changes. Nothing is saved; save that keeps it.',
  examples: [
    { line: 'try rear spring 650', does: 'what moved, largest first' },
    { line: 'try front spring 10% stiffer', does: 'a change of what is there' },
    { line: 'try rear spring +50 lb/in and 0.25" spacer rear', does: 'several at once' },
  ],
  takes: 'items',
  changes: false,
  run: tryFacts,
};
