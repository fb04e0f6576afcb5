/** A part as a line that records it again, and in the few words of a list. */
import type { Entry, Value } from '../../core/catalog.js';
import { pathAt } from '../../core/engine.js';
import { placeWords } from '../canonical.js';
import type { Context, Preferences } from '../context.js';
import { writeExactly } from '../language/quantities.js';
import { vocabularyOf } from '../language/vocabulary.js';
import { catalog, entryAt } from '../looked.js';
import { valueToType, writing } from '../show/amount.js';
import { everydayUnits, fromSI, toSI } from '../units.js';
import { minutesText, priceText } from './effort.js';
import type { NewPart, PartFact } from './part.js';

export const entryOf = ({ entry, places }: PartFact) => entryAt(pathAt(places[0] ?? '', { path: entry }));

/** In the member's unit, or in the other everyday one where it is a round number there alone: a 22 mm bar stays one. */
export function valueToTell(entry: Entry, value: Value, preferences: Preferences): string {
  if (typeof value !== 'number' || !entry.dimension) return valueToType(entry, value, preferences) ?? '';
  const round = everydayUnits(entry.dimension, preferences).find((unit) => {
    const short = Number(fromSI(value, unit).toPrecision(5));
    return Math.abs(toSI(short, unit, preferences) - value) <= 1e-9 * Math.abs(value);
  });
  return writeExactly(value, entry.dimension, preferences, {
    ...writing(entry),
    ...(round && round.shown !== '' ? { unit: round.shown } : {}),
  });
}
function factText(fact: PartFact, preferences: Preferences): string {
  const entry = entryOf(fact);
  const where = placeWords(entry, fact.places);
  const name = vocabularyOf(catalog).nameOf(entry);
  const write = (value: Value): string => valueToTell(entry, value, preferences);
  const { can } = fact;
  const values = can.is === 'range' ? `${write(can.from)} to ${write(can.to)} by ${write(can.step)}` : can.values.map(write).join(' and ');
  return [where, name, values].filter((part) => part !== '').join(' ');
}
/** What it is, without work and price: `rear bar 22 mm and 25 mm`. */
export const thingText = (part: NewPart, preferences: Preferences): string =>
  part.note ?? part.facts.map((fact) => factText(fact, preferences)).join(' with ');

export const costText = ({ minutes, price }: Pick<NewPart, 'minutes' | 'price'>): string =>
  [minutes === undefined ? '' : minutesText(minutes), price === undefined ? '' : priceText(price)].filter((one) => one !== '').join(', ');

/** The line that puts it into the box, read back as the same. */
export function partLine(part: NewPart, { asker }: Pick<Context, 'asker'>): string {
  const cost = costText(part);
  return `box add ${thingText(part, asker.preferences)}${cost === '' ? '' : `, ${cost}`}`;
}
