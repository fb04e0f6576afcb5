/** Save a car with what is known of it, or keep what was just tried. */
import type { Command, Outcome } from '../command.js';
import type { Context } from '../context.js';
import { newName } from '../house/cars.js';
import { carNamed, firstCarLine, refused } from '../house/own.js';
import { askPlace, recordOn, recordOnNew, toRecord } from '../house/record.js';
import { catalog, entryAt } from '../looked.js';
import { nameOf } from '../names.js';
import type { Item, Reading } from '../reading.js';
import { valueText } from '../show/amount.js';
import { valueTyped } from '../show/partName.js';

/** The last `try`, recorded as if it had been told: with the usual tolerance of what is told. */
export function saveTrial(reading: Reading, context: Context): Outcome {
  const { trial } = context.conversation;
  if (!trial) return refused("There's no trial to keep: you tried nothing just now.", 'try rear spring 650 lb/in');
  const car = context.garage.mine.find((one) => one.id === trial.car);
  if (!car) return refused('The car that was tried on is not yours any more.', 'car');
  if (car.head.id !== trial.head)
    return refused(`${car.name} has changed since that was tried; try it again.`, trial.line.replace(/^set /, 'try '));
  const { preferences } = context.asker;
  const items = [...trial.facts].map(([path, { value }]): Item => {
    const { place } = catalog.node(path);
    const entry = entryAt(path);
    const text = valueTyped(entry, value, preferences) ?? valueText(entry, value, preferences);
    return { entry, places: [place], placed: true, said: { value, text } };
  });
  return recordOn(car, items, { ...reading, verb: 'set', sides: [], tried: [] }, context);
}

export const save: Command = {
  word: 'save',
  also: ['save my car', 'save car', 'save as'],
  group: 'verb',
  summary: 'save NAME and facts: a new car, or more facts for it. save that: what was just tried.',
  examples: [
    { line: 'save my car parsnip 2640 lb 52.5% front wb 99', does: 'makes it and uses it' },
    { line: 'try rear spring 650\nsave that', does: 'tries, then keeps it' },
  ],
  takes: 'items',
  changes: true,
  run(reading, context) {
    const items = toRecord(reading);
    const [first] = reading.names;
    if (first === undefined || (/^(that|it|this)$/i.test(first) && items.length === 0)) {
      if (items.length === 0) return saveTrial(reading, context);
      return refused('Save it as which car?', firstCarLine);
    }
    const asked = askPlace(items, `save ${first}`);
    if (asked) return { answer: asked };
    const checked = nameOf(reading.names.join(' '), 'car');
    if ('refused' in checked) return refused(checked.refused, firstCarLine);
    const known = carNamed(context, checked.name);
    if (known)
      return items.length === 0
        ? refused(`You already have a car called ${known.name}.`, `car ${known.name}`)
        : recordOn(known, items, reading, context);
    const name = newName(checked.name, context);
    return typeof name === 'string' ? recordOnNew(name, items, reading, context) : name;
  },
};
