/** Forget a fact, or a whole car. */
import { isInput } from '../../core/catalog.js';
import { pathAt } from '../../core/engine.js';
import { answer } from '../answer.js';
import { phrase } from '../canonical.js';
import type { Command, Outcome } from '../command.js';
import type { CarView, Context } from '../context.js';
import type { Altered } from '../facts.js';
import { catalog } from '../looked.js';
import type { Reading } from '../reading.js';
import { alteredNames, alteredRows } from '../show/altered.js';
import { textOf } from '../show/amount.js';
import { partName } from '../show/partName.js';
import { isOutcome, ownCar, refused } from './own.js';

function askCar(car: CarView): Outcome {
  return {
    answer: answer('asked', `Erase ${car.name}, its history and its setups? It can't be undone.`, {
      choices: [
        { label: `erase ${car.name}`, line: `erase car ${car.name}` },
        { label: 'keep it', line: `show ${car.name}` },
      ],
    }),
  };
}
function forgetFacts(car: CarView, reading: Reading): Outcome | { readonly gone: readonly Altered[] } {
  const items = reading.sides.flatMap((side) => side.items);
  const figure = items.find(({ entry }) => !isInput(entry));
  if (figure)
    return refused(
      `Nobody told me the ${figure.entry.name}: I work it out, so there's nothing to forget.`,
      `why ${phrase(figure.entry, ...figure.places.slice(0, 1))}`,
    );
  const gone = items.flatMap((item) =>
    item.places.flatMap((place): Altered[] => {
      const path = pathAt(place, item.entry);
      const before = car.head.facts.get(path);
      return before ? [{ path, place, entry: item.entry, before, after: undefined }] : [];
    }),
  );
  const [first] = items;
  if (gone.length > 0 || !first) return { gone };
  // A spring may be told as a rate, a table or a coil: the word means whichever was told.
  const twin = catalog.entries.find(
    (entry) =>
      entry.instead !== undefined &&
      entry.instead === first.entry.instead &&
      first.places.some((place) => car.head.facts.has(pathAt(place, entry))),
  );
  if (twin) return forgetFacts(car, { ...reading, sides: [{ items: [{ ...first, entry: twin }], subjects: [] }] });
  return refused(`Nobody told me the ${partName(first.entry, first.places.slice(0, 1))} of ${car.name}.`, 'show everything');
}

export const forget: Command = {
  word: 'forget',
  also: ['delete', 'remove'],
  group: 'house',
  summary: 'Forgets one fact of your car; undo brings it back. With a car: erases it, after asking.',
  examples: [
    { line: 'forget front spring', does: 'as if it had never been told' },
    { line: 'forget pickle', does: 'asks, then erases the car' },
  ],
  takes: 'items',
  changes: true,
  run(reading, context: Context) {
    const items = reading.sides.flatMap((side) => side.items);
    const car = ownCar(items.length > 0 ? { ...reading, names: [] } : reading, context);
    if (isOutcome(car)) return car;
    if (items.length === 0) {
      const named = reading.names.length > 0 || reading.sides.some((side) => side.subjects.length > 0);
      return named ? askCar(car) : refused('Forget what?', 'forget front spring');
    }
    const found = forgetFacts(car, reading);
    if ('answer' in found) return found;
    const facts = new Map(car.head.facts);
    for (const { path } of found.gone) facts.delete(path);
    const rows = alteredRows(found.gone, context.asker.preferences);
    const names = alteredNames(found.gone, context.asker.preferences).join(', ');
    return {
      answer: answer('changed', `${car.name}: ${names} forgotten.`, {
        rows: rows.map(({ label, cells }) => ({ label, cells: [`was ${textOf(cells[0] ?? '')}`] })),
        next: [{ label: 'undo', line: 'undo' }],
      }),
      changes: [
        { ...{ change: 'record', car: car.id, head: car.head.id, facts, why: `forget ${names}` }, measuredIn: car.head.measuredIn },
      ],
    };
  },
};

export const eraseCar: Command = {
  word: 'erase car',
  also: [],
  group: 'house',
  summary: 'Erases a car with its history and setups, at once.',
  examples: [{ line: 'erase car pickle', does: 'without asking again' }],
  takes: 'names',
  changes: true,
  run(reading, context) {
    if (reading.names.length === 0 && reading.sides.every((side) => side.subjects.length === 0)) return refused('Erase which car?', 'car');
    const car = ownCar(reading, context);
    if (isOutcome(car)) return car;
    return { answer: answer('changed', `${car.name} is erased.`), changes: [{ change: 'forget car', car: car.id }] };
  },
};
