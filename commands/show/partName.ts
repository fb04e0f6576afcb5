/** What a part is called between clubmates: `rear bar`, `front spring`, `final drive`. */
import type { Entry, Value } from '../../core/catalog.js';
import { placeWords } from '../canonical.js';
import type { Preferences } from '../context.js';
import type { Item } from '../reading.js';
import { writeExactly } from '../units.js';
import { valueToType } from './amount.js';

export const partName = (entry: Entry, places: readonly string[]): string =>
  [places.length === 0 ? '' : placeWords(entry, places), entry.words?.[0] ?? entry.name].filter((part) => part !== '').join(' ');
/** The same with what was typed for it: `rear bar 25 mm`. */
export const partSaid = ({ entry, places, said }: Item): string => `${partName(entry, places)} ${said?.text ?? ''}`.trim();
/** A value as a line tells it, in the unit of its trade where it has one: `25 mm`. Undefined for a table. */
export function valueTyped(entry: Entry, value: Value, preferences: Preferences): string | undefined {
  if (typeof value !== 'number' || entry.trade === undefined) return valueToType(entry, value, preferences);
  return writeExactly(value, entry.dimension ?? 'ratio', preferences, { unit: entry.trade });
}
