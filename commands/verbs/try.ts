/** What if: a change that is only tried. What moved is told, largest first against its doubt; nothing is saved. */
import { canBeTold } from '../../core/catalog.js';
import { pathAt } from '../../core/engine.js';
import { lockOrder } from '../../core/subjects/braking/locking.js';
import { balanceIndex } from '../../core/subjects/cornering/balance.js';
import { axleKind } from '../../core/subjects/layout/told.js';
import { rollAngle } from '../../core/subjects/roll/leaning.js';
import { answer, type Section } from '../answer.js';
import { oneByOne } from '../breathing.js';
import { itemsText, phrase } from '../canonical.js';
import type { Command, Outcome } from '../command.js';
import type { Context, Preferences } from '../context.js';
import { isNotLaid, type Laid, lay } from '../facts.js';
import { refused } from '../house/own.js';
import { askPlace } from '../house/record.js';
import { catalog, type Looked, lookAtFirst, nothing, numbersOf } from '../looked.js';
import type { Choice, Item, Reading } from '../reading.js';
import { alteredTexts, sideEffects } from '../show/altered.js';
import { sentence } from '../show/amount.js';
import { isChange } from '../show/change.js';
import { sameWords } from '../show/lines.js';
import { partSaid } from '../show/partName.js';
import { namesOfPaths, restsOn } from '../show/rests.js';
import { moveSaid } from '../show/sayings.js';
import { moveOf, surenessOf } from '../show/spoken.js';
import { typed } from '../show/typed.js';
import { supposing } from './asked.js';
import { type Move, type Moved, moveRows, moves } from './moves.js';
import { purposePaths } from './purposes.js';
import { causeNotes } from './split.js';

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
/** So many sentences say what a trial does; the rest is for whoever asks for more. */
const mostSaid = 4;
const otherEnds: Readonly<Record<string, string>> = { front: 'rear', rear: 'front', lf: 'lr', rf: 'rr', lr: 'lf', rr: 'rf' };

/** What moves in sentences: what was asked for, then what the changed parts are for, then what moved most against its doubt. */
function sentences(before: Looked, after: Looked, paths: readonly string[], unit: string | undefined, { asker }: Context): readonly Said[] {
  const said: Said[] = [];
  const gears = new Set<string>();
  for (const path of paths) {
    if (said.length === mostSaid) break;
    const { entry, place } = catalog.node(path);
    if (said.some((one) => one.path === path) || (entry.scope === 'gear' && gears.has(entry.path))) continue;
    const text = moveSaid(before, after, path, asker.preferences, unit);
    if (text === undefined) continue;
    if (entry.scope === 'gear') gears.add(entry.path);
    const twin = said.find((one) => one.path === pathAt(otherEnds[place] ?? '', entry));
    // Both ends alike are said once.
    if (twin && withoutEnd(twin.text) === withoutEnd(text)) twin.text = sentence(withoutEnd(text));
    else said.push({ path, text });
  }
  return said;
}
interface Said {
  readonly path: string;
  text: string;
}
const withoutEnd = (text: string): string => text.replace(/^(?:Front|Rear) (?!sits)/, '').replace(/^(?:Front|Rear) sits/, 'The car sits');

/** The same at the other end too, where both ends are alike now. */
function mirrored(saved: readonly Item[], { situation }: Looked, context: Context): Choice | undefined {
  const [item, another] = saved;
  if (!item?.said || another || !['axle', 'corner'].includes(item.entry.scope)) return undefined;
  const ends = new Set(item.places.map((place) => (place === 'front' || place.endsWith('f') ? 'front' : 'rear')));
  const [end] = ends;
  const places = item.places.map((place) => otherEnds[place] ?? '');
  const there = places.map((place) => situation.facts.get(pathAt(place, item.entry))?.value);
  const here = item.places.map((place) => situation.facts.get(pathAt(place, item.entry))?.value);
  if (ends.size !== 1 || item.said.change !== undefined || there.some((value, n) => value === undefined || value !== here[n]))
    return undefined;
  const line = `try ${itemsText([item, { ...item, places }], context)}`;
  return { label: `same at the ${end === 'front' ? 'rear' : 'front'} too`, line };
}
/** A first sentence of a car that is not the one in use says whose it is. */
const named = (text: string, base: Looked, own: boolean, tried: string): string =>
  own || base.label === '' ? text : `${base.label} with ${tried}: ${text.charAt(0).toLowerCase()}${text.slice(1)}`;

/** The moves that no sentence tells, for whoever asks for more. */
function othersOf(moved: Moved, said: readonly Said[], tried: string, { asker, room }: Context): readonly Section[] {
  const told = new Set(said.map(({ path }) => path));
  const rows = moveRows(moved.rows, asker.preferences, told);
  const notes =
    moved.unseen > 0
      ? [
          `${moved.unseen} more ${moved.unseen === 1 ? 'number moves' : 'numbers move'}: name one, as in: ${typed(`try ${tried}, ride rate`, room)}`,
        ]
      : [];
  return rows.length + notes.length === 0 ? [] : [{ name: 'what else moves', columns: ['was', 'with it'], rows, notes }];
}

export async function tryFacts(reading: Reading, context: Context): Promise<Outcome> {
  const { preferences } = context.asker;
  const [clause] = reading.sides;
  const whole = clause?.items ?? [];
  const isFact = (item: Item) => item.said !== undefined && canBeTold(item.entry);
  const facts = [...whole, ...reading.tried].filter(isFact);
  const saved = facts.filter(({ entry }) => entry.scope !== 'question');
  if (saved.length === 0) return refused('Try what? Name a part and how much of it.', 'try rear spring 650 lb/in');
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
  const moved = await moves(conditions, after, wanted, context.breathe);
  const purposes = saved.flatMap(({ entry, places }) => purposePaths(entry, places));
  const sure = moved.rows.filter(isSure).map(({ path }) => path);
  const asIntended = sentences(conditions, after, [...wanted, ...purposes], reading.wantedUnit, context);
  const said =
    asIntended.length > 1 ? asIntended : sentences(conditions, after, [...wanted, ...purposes, ...sure], reading.wantedUnit, context);
  const [first, ...further] = said;
  const tried = itemsText(saved, context);
  const own = base !== nothing && base.current && base.car !== undefined;
  const inUse = own && base.car?.id === context.garage.chosen?.id;
  const open = first !== undefined && !isSettled(conditions, after, first.path);
  const headline = first
    ? `${named(first.text, base, inUse, tried)}.`
    : `Nothing that I work out for ${base.label || 'that'} moves with ${tried}.`;
  const other = mirrored(saved, conditions, context);
  const balance = said.some(({ path }) => path === balanceIndex.path);
  const follows = other ?? (balance && inUse ? { label: 'why', line: `split ${phrase(balanceIndex)} with ${tried}` } : undefined);
  const causes = await conversionNotes(laid, conditions, after, context);
  const conversion: readonly Section[] = causes.length === 0 ? [] : [{ name: 'by cause', notes: causes }];
  const done = answer('told', headline, {
    notes: [
      ...further.map(({ text }) => `${text}.`),
      `On trial, not saved: ${saved.map((item) => (item.said?.change === undefined ? partSaid(item) : itemsText([item], context))).join(', ')}.`,
      ...sideEffects(laid, preferences),
    ],
    further: [...conversion, ...othersOf(moved, said, tried, context), ...before(laid, preferences)],
    assumptions: [
      ...unread(
        base,
        after,
        laid.told.map(({ path }) => path),
      ),
      ...(open && first ? restsOn(numbersOf(after.situation), first.path, context) : []),
    ].slice(0, 2),
    cautions: dangerOf(conditions, after),
    choices: [...(own ? [{ label: 'keep it', line: 'keep it' }] : []), ...(follows ? [follows] : [])],
  });
  if (!own || !base.car) return { answer: done };
  const keep = new Map(laid.told.flatMap(({ path, after: fact }) => (fact ? [[path, fact] as const] : [])));
  return { answer: done, trial: { car: base.car.id, head: base.car.head.id, line: `set ${tried}`, facts: keep } };
}
/** What was there, for whoever asks for more. */
const before = (laid: Laid, preferences: Preferences): readonly Section[] => {
  const told = alteredTexts(
    laid.told.filter((one) => one.before !== undefined),
    preferences,
  );
  return told.length === 0 ? [] : [{ name: 'what was there', notes: [`${sentence(told.join('; '))}.`] }];
};
const isSure = ({ difference: { change, within } }: Move): boolean => Math.abs(change) > within;
/** Whether a change can be told at all: else what would help is said. */
function isSettled(before: Looked, after: Looked, path: string): boolean {
  const moved = moveOf(numbersOf(before.situation), numbersOf(after.situation), path);
  return moved === undefined || surenessOf(moved, path) !== 'open';
}
/** A car that comes to spin when it brakes is dangerous to try; all else is only a number. */
function dangerOf(before: Looked, after: Looked): readonly string[] {
  const moved = moveOf(numbersOf(before.situation), numbersOf(after.situation), lockOrder.path);
  return moved && isChange(moved.from, moved.to) && moved.change < 0 && moved.to < -numbersOf(after.situation).within(lockOrder.path)
    ? ['Rears that lock first spin the car: try it straight and slow, on an empty lot.']
    : [];
}

export const tryOut: Command = {
  word: 'try',
  also: ['what if', 'what happens if', 'what would happen with'],
  group: 'verb',
  summary: 'What you would notice if something changed. Nothing is saved until you say keep it.',
  examples: [
    { line: 'try rear spring 650', does: 'what a spring is for, first' },
    { line: 'try front spring 10% stiffer', does: 'a change of what is there' },
    { line: 'try rear spring +50 lb/in and 0.25" spacer rear', does: 'several at once' },
  ],
  takes: 'items',
  changes: false,
  run: tryFacts,
};
