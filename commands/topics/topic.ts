/**
 * A topic: a list of figures that belong together. It needs no saved car: what the line tells is laid over the saved one, or over nothing.
 * One side is listed, several are put side by side.
 */
import { canBeTold, type Entry, isRefusal } from '../../core/catalog.js';
import { type Evaluation, pathAt } from '../../core/engine.js';
import { type Answer, answer, type Row } from '../answer.js';
import type { Command, Example, Outcome } from '../command.js';
import type { Context, Preferences } from '../context.js';
import { refused } from '../house/own.js';
import { catalog, type Looked, numbersOf } from '../looked.js';
import { basisLine, plainSum } from '../plain.js';
import type { Item, Reading } from '../reading.js';
import { cellOf, textOf } from '../show/amount.js';
import { headlineOf, lineToTell } from '../show/figure.js';
import { labelAt, labelOf } from '../show/label.js';
import { disagreements, restsOn } from '../show/rests.js';
import { sayingAt } from '../show/saying.js';
import { askedOf, pathsOf } from '../verbs/asked.js';
import { sidesOf } from '../verbs/compare.js';
import { placesFor } from './places.js';
import { sidesOfFigures, sizesSideBySide } from './sizes.js';

export interface Topic {
  readonly word: string;
  readonly also: readonly string[];
  readonly summary: string;
  readonly examples: readonly [Example, ...Example[]];
  /** A line that works with no saved car, where the first example does not. */
  readonly alone?: string;
  /** The headline's figure first, then in the order in which they are of use. */
  readonly figures: readonly Entry[];
}
const isFact = (item: Item): boolean => item.said !== undefined && canBeTold(item.entry);

export interface Shown {
  readonly path: string;
  readonly row: Row;
  /** What it is called in a sentence. */
  readonly name: string;
}
/** Rows of the figures that are known; one row where all places read the same. */
export function topicRows(
  numbers: Evaluation,
  figures: readonly Entry[],
  told: readonly Item[],
  preferences: Preferences,
  wantedUnit?: string,
): readonly Shown[] {
  const toldPaths = told.flatMap(pathsOf);
  return figures.flatMap((entry): Shown[] => {
    const found = placesFor(entry, told).flatMap((place): Shown[] => {
      const path = pathAt(place, entry);
      if (toldPaths.length > 0 && !toldPaths.some((one) => catalog.dependsOn(path, one))) return [];
      const cell = cellOf(numbers, path, preferences, wantedUnit === undefined ? {} : { wantedUnit });
      return cell === undefined ? [] : [{ path, name: sayingAt(numbers, path), row: { label: labelAt(entry, place), cells: [cell] } }];
    });
    const [first, ...others] = found;
    if (!first || others.length === 0) return found;
    const text = ({ row }: Shown) => row.cells.map(textOf).join();
    return others.every((one) => text(one) === text(first))
      ? [{ path: first.path, name: nameOfAny(numbers, first.path), row: { ...first.row, label: labelOf(entry) } }]
      : found;
  });
}

/** Why the first of some figures has no value, as a refusal. */
function whyNot(looked: Looked, figures: readonly Entry[], told: readonly Item[], example: string): Outcome {
  const numbers = numbersOf(looked.situation);
  for (const entry of figures)
    for (const place of placesFor(entry, told)) {
      const value = numbers.number(pathAt(place, entry));
      if (!isRefusal(value)) continue;
      const line = lineToTell(numbers, value.because ?? []);
      return refused(value.refused, told.length === 0 ? example : (line ?? example));
    }
  return refused("That's not enough to work anything out.", example);
}

function oneSide(topic: Topic, reading: Reading, context: Context): Outcome {
  const asked = askedOf(reading.sides[0], reading, context);
  if ('answer' in asked) return asked;
  const { preferences } = context.asker;
  const { looked } = asked;
  const numbers = numbersOf(looked.situation);
  const told = [...(reading.sides[0]?.items ?? []), ...reading.tried].filter(isFact);
  const example = looked.car ? topic.examples[0].line : (topic.alone ?? topic.examples[0].line);
  const wanted = asked.items.map(({ entry }) => entry).filter(({ kind }) => kind === 'figure');
  const plain = plainly(topic, told, wanted, context);
  if (plain) return { answer: plain };
  const figures = [...new Set([...wanted, ...topic.figures])];
  // A figure that was asked for and has no value is the answer, whatever else is known.
  const [shown, ...others] = topicRows(numbers, figures, told, preferences, reading.wantedUnit);
  const [first] = wanted;
  if (!shown || (first && !topicRows(numbers, [first], told, preferences).length))
    return whyNot(looked, first ? [first] : figures, told, example);
  const cell = shown.row.cells[0];
  // What is beside the headline's figure is looked at when it is asked for; of a car there is more to see at once.
  const rows = others.map(({ row }) => row);
  const seen = looked.car ? rows.slice(0, mostRows) : [];
  const rest = rows.slice(seen.length);
  return {
    answer: answer('told', headlineOf(looked, shown.path, context, { wantedUnit: reading.wantedUnit, name: shown.name }), {
      ...(typeof cell === 'object' ? { amount: cell } : {}),
      rows: seen,
      notes: basisLine(looked, shown.path),
      assumptions: [
        ...disagreements(numbers, ({ figure }) => catalog.dependsOn(shown.path, figure)),
        ...restsOn(numbers, shown.path, context),
      ],
      ...(rest.length === 0 ? {} : { further: [{ name: 'the other rows', rows: rest }] }),
    }),
  };
}
const mostRows = 5;
/** The figure that the line's own data give by a text-book sum, the first that they do; undefined where they need a car. */
function plainly(topic: Topic, told: readonly Item[], wanted: readonly Entry[], context: Context): Answer | undefined {
  for (const entry of wanted.length > 0 ? wanted : topic.figures)
    for (const place of placesFor(entry, told)) {
      const path = pathAt(place, entry);
      const plain = plainSum(told, [path]);
      if (!plain) continue;
      const numbers = numbersOf(plain.situation);
      const placed = told.some((item) => item.placed && item.places.includes(place));
      const name = placed ? sayingAt(numbers, path) : nameOfAny(numbers, path);
      const cell = cellOf(numbers, path, context.asker.preferences);
      return answer('told', headlineOf(plain, path, context, { name }), {
        ...(typeof cell === 'object' ? { amount: cell } : {}),
        notes: basisLine(plain, path),
      });
    }
  return undefined;
}
/** Of an end that nobody named. */
const nameOfAny = (numbers: Evaluation, path: string): string =>
  sayingAt(numbers, path).replace(/^(?:front|rear|left front|right front|left rear|right rear) /, '');

export async function topicAnswer(topic: Topic, reading: Reading, context: Context): Promise<Outcome> {
  if (reading.sides.length < 2) return oneSide(topic, reading, context);
  const sides = sidesOf(reading, context);
  if ('answer' in sides) return sides;
  const told = reading.sides.flatMap((side) => side.items).filter(isFact);
  if (told.length > 0 && told.every(({ entry }) => entry.kind === 'designation')) return sizesSideBySide(sides, told, reading, context);
  const asked = [...new Set(sides.flatMap(({ items }) => items.flatMap(pathsOf)))];
  return sidesOfFigures(topic.figures, sides, told, asked, context, { wantedUnit: reading.wantedUnit });
}

export const topicCommand = (topic: Topic): Command => ({
  word: topic.word,
  also: topic.also,
  group: 'topic',
  summary: topic.summary,
  examples: topic.examples,
  takes: 'items',
  changes: false,
  run: (reading, context) => topicAnswer(topic, reading, context),
});
