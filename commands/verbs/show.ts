/** Show a fact, a figure, everything at an end, a car or a setup. */
import { type Entry, isInput, isRefusal } from '../../core/catalog.js';
import { type Evaluation, pathAt, placesOf } from '../../core/engine.js';
import { loadInTurn } from '../../core/subjects/cornering/transfer.js';
import { type Answer, answer, type Row } from '../answer.js';
import { oneByOne } from '../breathing.js';
import type { Command, Outcome } from '../command.js';
import type { Context, Preferences } from '../context.js';
import { noCar, refused } from '../house/own.js';
import { catalog, type Looked, numbersOf } from '../looked.js';
import { basisLine, fuller, plainSum } from '../plain.js';
import type { Item, Reading } from '../reading.js';
import { amount, cellOf, sentence, textOf, writing } from '../show/amount.js';
import { headlineOf, showOne, whoseText } from '../show/figure.js';
import { labelAt, labelOf } from '../show/label.js';
import { fewer, isAskable, isTelling, type Line } from '../show/lines.js';
import { disagreements, restsOn } from '../show/rests.js';
import { basisOfCar, sayingAt, turnAt } from '../show/saying.js';
import { turnNotes } from '../show/turn.js';
import { loadsPicture } from '../show/wheels.js';
import { placesFor } from '../topics/places.js';
import { type Asked, askedAlone, pathsOf, supposing } from './asked.js';
import { tryFacts } from './try.js';

export function rowAt(numbers: Evaluation, path: string, preferences: Preferences, label?: string, wantedUnit?: string): Row | undefined {
  const { entry, place } = numbers.catalog.node(path);
  const cell = cellOf(numbers, path, preferences, wantedUnit === undefined ? {} : { wantedUnit });
  return cell === undefined ? undefined : { label: label ?? labelAt(entry, place), cells: [cell] };
}

/** The loads of all four wheels are seen at a glance as they stand. */
function fourWheels(numbers: Evaluation, paths: readonly string[], preferences: Preferences): readonly string[] {
  const loads = paths.length === 4 && paths.every((path) => numbers.catalog.node(path).entry === loadInTurn);
  const picture = loads ? loadsPicture(numbers, preferences) : undefined;
  return picture === undefined ? [] : [picture];
}

/** Several places or several entries: a row each, what is alike said once. */
function showSeveral(looked: Looked, items: readonly Item[], context: Context, wantedUnit?: string): Answer {
  const { preferences } = context.asker;
  const numbers = numbersOf(looked.situation);
  const paths = items.flatMap(pathsOf);
  const known = paths.filter((path) => !isRefusal(numbers.get(path)));
  const [first] = known;
  if (first === undefined) return showOne(looked, paths[0] ?? '', context, wantedUnit);
  const rows = known.flatMap((path) => rowAt(numbers, path, preferences, undefined, wantedUnit) ?? []);
  const [top, ...others] = rows;
  const whose = whoseText(looked);
  const [item] = items;
  // One entry at several places that all read the same is one answer.
  const alike =
    items.length === 1 &&
    known.length > 1 &&
    rows.every((row) => row.cells[0] && top?.cells[0] && textOf(row.cells[0]) === textOf(top.cells[0]));
  if (item && alike && top) {
    const single = showOne(looked, first, context, wantedUnit);
    const name = sayingAt(numbers, first).replace(placeWord, '');
    // Both ends are in it already.
    return {
      ...single,
      notes: single.notes.slice(item.entry.scope === 'axle' ? 1 : 0),
      headline: headlineOf(looked, first, context, { wantedUnit, name }),
    };
  }
  if (known.length === 1) return showOne(looked, first, context, wantedUnit);
  const picture = fourWheels(numbers, known, preferences);
  const both = items.length === 1 && item?.entry.scope === 'axle' && known.length === 2;
  const line = both ? bothEnds(numbers, known, preferences, wantedUnit) : picture.length > 0 ? heaviest(numbers, known, preferences) : '';
  return answer(
    'told',
    line === '' ? headlineOf(looked, first, context, { wantedUnit }) : whose === '' ? sentence(line) : `${whose}${line}`,
    {
      rows: both || picture.length > 0 ? [] : others,
      notes: [...turnNotes(numbers, first, preferences), ...picture],
      assumptions: [
        ...disagreements(numbers, ({ figure }) => known.some((path) => catalog.dependsOn(path, figure))),
        ...restsOn(numbers, first, context),
      ],
    },
  );
}

const placeWord = /^(?:front|rear|left front|right front|left rear|right rear) /;
/** `Ride frequency 1.56 Hz ± 0.07 front, 1.83 ± 0.09 rear, tire in it`. */
function bothEnds(numbers: Evaluation, paths: readonly string[], preferences: Preferences, wantedUnit?: string): string {
  const [front = '', rear = ''] = paths;
  const name = sayingAt(numbers, front);
  const basis = numbers.situation.assume === undefined ? basisOfCar(numbers, front) : undefined;
  const texts = [front, rear].map((path) => {
    const cell = cellOf(numbers, path, preferences, wantedUnit === undefined ? {} : { wantedUnit });
    return cell === undefined ? 'not known' : textOf(cell);
  });
  const at = turnAt(numbers, front, preferences);
  const ends = `${at}${basis === undefined ? '' : `, ${basis}`}.`;
  // `The front holds 0.98 g, the rear 0.99`.
  if (!name.startsWith('front ')) return `${name} ${texts[0]}, ${sayingAt(numbers, rear)} ${texts[1]}${ends}`;
  return `${name.replace(placeWord, '')} ${texts[0]} front, ${texts[1]} rear${ends}`;
}
/** `The right front carries most: 1,134 lb ± 80 at 0.9 g`. */
function heaviest(numbers: Evaluation, paths: readonly string[], preferences: Preferences): string {
  const load = (path: string): number => {
    const value = numbers.number(path);
    return isRefusal(value) ? 0 : value;
  };
  const most = paths.reduce((best, path) => (load(path) > load(best) ? path : best));
  const cell = cellOf(numbers, most, preferences);
  return `${sayingAt(numbers, most)} most: ${cell === undefined ? '' : textOf(cell)}${turnAt(numbers, most, preferences)}.`;
}
/** `250-300 lb/in`: the figure at both ends. */
function showRange({ base, items }: Asked, reading: Reading, context: Context): Answer | Outcome | undefined {
  const told = [...(reading.sides[0]?.items ?? []), ...reading.tried];
  const ranged = told.find((item) => item.said?.to !== undefined);
  const [item] = items;
  if (ranged?.said?.to === undefined || !item) return undefined;
  const { to, ...said } = ranged.said;
  const others = told.filter((one) => one !== ranged);
  const from = supposing(base, [...others, { ...ranged, said }]);
  const until = supposing(base, [...others, { ...ranged, said: { ...said, value: to } }]);
  if ('answer' in from) return from;
  if ('answer' in until) return until;
  const { preferences } = context.asker;
  const path = pathsOf(item).find((one) => !isRefusal(numbersOf(from.situation).get(one))) ?? pathsOf(item)[0] ?? '';
  const [a, b] = [numbersOf(from.situation), numbersOf(until.situation)];
  const [low, high] = [a.number(path), b.number(path)];
  if (isRefusal(low) || isRefusal(high)) return showOne(isRefusal(low) ? from : until, path, context, reading.wantedUnit);
  const { dimension = 'ratio' } = item.entry;
  const how = writing(item.entry, reading.wantedUnit);
  const { place } = catalog.node(path);
  const ends = [amount(low, dimension, preferences, a.within(path), how), amount(high, dimension, preferences, b.within(path), how)];
  const name = place === '' || item.placed ? sayingAt(a, path) : sayingAt(a, path).replace(placeWord, '');
  return answer('told', `${sentence(name)} ${ends.map(textOf).join(' to ')}.`, {
    ...(ends[0] ? { amount: ends[0] } : {}),
    assumptions: restsOn(a, path, context),
  });
}

/** What is known of a car, or of one end or corner of it: facts first, then figures; all of them, or those that cars are judged by. */
async function showEverything(looked: Looked, places: readonly string[], whole: boolean, { asker, breathe }: Context): Promise<Outcome> {
  const { preferences } = asker;
  const numbers = numbersOf(looked.situation);
  const here = new Set(places);
  const inPlace = (entry: Entry) => placesOf(entry.scope).filter((place) => here.size === 0 || here.has(place));
  const rows = async (wanted: (entry: Entry, path: string) => boolean): Promise<readonly Line[]> => {
    const lines = await oneByOne(catalog.entries, breathe, (entry) =>
      inPlace(entry).flatMap((place): Line[] => {
        const path = pathAt(place, entry);
        const row = wanted(entry, path) ? rowAt(numbers, path, preferences, places.length === 1 ? labelOf(entry) : undefined) : undefined;
        return row ? [{ path, row }] : [];
      }),
    );
    return lines.flat();
  };
  const facts = await rows((entry, path) => isInput(entry) && looked.situation.facts.has(path));
  const figures = await rows(
    (entry, path) => entry.kind === 'figure' && isAskable(entry) && (whole || isTelling(path)) && numbers.status(path) === 'computed',
  );
  const where = places.length === 0 ? '' : places.length === 1 ? `, ${places[0]}` : `, ${places.join(' and ')}`;
  if (facts.length + figures.length === 0) return refused(`I know nothing of ${looked.label}${where} yet.`, 'help set');
  const count = whole ? `${facts.length} facts, ${figures.length} figures` : `${facts.length} facts`;
  const headline = `${looked.label}${where}: ${count}.`;
  return {
    answer: answer('told', headline, {
      rows: [...fewer(facts), ...fewer(figures)].map(({ row }) => row),
      assumptions: disagreements(numbers, () => true),
      next: [
        ...(whole || !looked.current ? [] : [{ label: 'show everything', line: 'show everything' }]),
        { label: 'doubt', line: 'doubt' },
        { label: 'history', line: 'history' },
      ],
    }),
  };
}

/** What was told and moves nothing that was asked for is said, not passed over. */
function idle(reading: Reading, shown: readonly string[]): readonly string[] {
  const told = [...(reading.sides[0]?.items ?? []), ...reading.tried].filter((item) => item.said !== undefined);
  const moves = (item: Item) => pathsOf(item).some((path) => shown.some((one) => one === path || catalog.dependsOn(one, path)));
  const still = told.filter((item) => !moves(item)).map(({ entry, said }) => `${labelOf(entry)} ${said?.text ?? ''}`);
  return still.length === 0 ? [] : [`Makes no difference to it: ${still.join(', ')}.`];
}
/** A line that brings all of its own numbers: the plain sum of them first, and what the car or usual parts would make of it as a row. */
function showPlain(reading: Reading, context: Context): Answer | undefined {
  const [clause] = reading.sides;
  if (clause && clause.subjects.length > 0) return undefined;
  const asking = askedAlone(reading, context);
  if ('answer' in asking) return undefined;
  const { looked, items } = asking;
  const told = [...(clause?.items ?? []), ...reading.tried].filter((item) => item.said !== undefined);
  const named = items.flatMap((item) => placesFor(item.entry, told).map((place) => pathAt(place, item.entry)));
  const asked = named.filter((path) =>
    items.some(({ entry, places, placed }) => !placed || places.some((place) => pathAt(place, entry) === path)),
  );
  const plain = plainSum(told, asked);
  const [path] = asked;
  if (!plain || path === undefined) return undefined;
  const shown = showSeveral(plain, narrowed(items, asked), context, reading.wantedUnit);
  return {
    ...shown,
    notes: [...basisLine(plain, path), ...shown.notes],
    further: [...(shown.further ?? []), ...fuller(plain, looked, path, context)],
  };
}
/** The same items at the places that are looked at. */
const narrowed = (items: readonly Item[], paths: readonly string[]): readonly Item[] =>
  items.map((item) => ({ ...item, places: item.places.filter((place) => paths.includes(pathAt(place, item.entry))) }));

export async function showAnswer(reading: Reading, context: Context): Promise<Outcome> {
  const plain = showPlain(reading, context);
  if (plain) return { answer: plain };
  const done = await showAsked(reading, context);
  const shown = (reading.sides[0]?.items ?? []).filter((item) => item.said === undefined).flatMap(pathsOf);
  const still = shown.length === 0 || done.answer.kind !== 'told' ? [] : idle(reading, shown);
  return still.length === 0 ? done : { ...done, answer: { ...done.answer, echoes: [...still, ...done.answer.echoes] } };
}
function showAsked(reading: Reading, context: Context): Outcome | Promise<Outcome> {
  const asked = askedAlone(reading, context);
  if ('answer' in asked) return asked;
  const { looked, items } = asked;
  if (items.length === 0) {
    // Facts and no number: what they would do is all that can be meant.
    const told = [...(reading.sides[0]?.items ?? []), ...reading.tried].some((item) => item.said !== undefined);
    if (told) return tryFacts(reading, context);
    if (!looked.car) return noCar();
    return showEverything(looked, reading.everything?.places ?? [], reading.everything !== undefined, context);
  }
  const ranged = showRange(asked, reading, context);
  if (ranged) return 'answer' in ranged ? ranged : { answer: ranged };
  const [item] = items;
  const [path] = item ? pathsOf(item) : [];
  if (items.length === 1 && item?.places.length === 1 && path !== undefined)
    return { answer: showOne(looked, path, context, reading.wantedUnit) };
  return { answer: showSeveral(looked, items, context, reading.wantedUnit) };
}

export const show: Command = {
  word: 'show',
  also: ['what is', "what's", 'whats', 'how much', 'how much is', 'tell me', 'list'],
  group: 'verb',
  summary: 'A fact, a figure, a car or a setup. A bare name does it too.',
  examples: [
    { line: 'show rear ride frequency', does: 'the number, what it rests on' },
    { line: 'show everything front', does: 'all known of the front' },
    { line: 'show wheelbase in mm', does: 'a fact, in another unit' },
  ],
  takes: 'items',
  changes: false,
  run: showAnswer,
};
