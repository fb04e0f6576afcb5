/** What a part is called between clubmates: `rear bar`, `front spring`, `final drive`. */
import type { Entry, Value } from '../../core/catalog.js';
import { pathAt, placesOf } from '../../core/engine.js';
import { placeWords } from '../canonical.js';
import type { Preferences } from '../context.js';
import { writeExactly } from '../language/quantities.js';
import type { Item } from '../reading.js';
import { valueToType } from './amount.js';
import { sayingOf, spoken } from './spoken.js';

export const partName = (entry: Entry, places: readonly string[]): string =>
  [places.length === 0 ? '' : placeWords(entry, places), entry.words?.[0] ?? entry.name].filter((part) => part !== '').join(' ');
/** The same with what was typed for it: `rear bar 25 mm`. */
export const partSaid = ({ entry, places, said }: Item): string => `${partName(entry, places)} ${said?.text ?? ''}`.trim();
/** A value as a line tells it, in the unit of its trade where it has one: `25 mm`. Undefined for a table. */
export function valueTyped(entry: Entry, value: Value, preferences: Preferences): string | undefined {
  if (typeof value !== 'number' || entry.trade === undefined) return valueToType(entry, value, preferences);
  return writeExactly(value, entry.dimension ?? 'ratio', preferences, { unit: entry.trade });
}
/** A value of a part as it is said: `25 mm`, `425 lb/in`; what is turned in parts of a turn in eighths, up or down. */
export function pieceSaid(entry: Entry, si: number, preferences: Preferences): string {
  const turned = entry.dimension === 'ratio' && entry.step !== undefined && entry.step.inch < 1;
  if (!turned) return spoken(si, sayingOf(pathOf(entry)), preferences);
  const eighths = Math.round(Math.abs(si) * 8);
  const [whole, part] = [Math.floor(eighths / 8), eighths % 8];
  const text = [whole > 0 || part === 0 ? String(whole) : '', fractions[part] ?? ''].filter((one) => one !== '').join(' ');
  return `${text} ${eighths <= 8 ? 'turn' : 'turns'} ${si < 0 ? 'down' : 'up'}`;
}
const fractions = ['', '1/8', '1/4', '3/8', '1/2', '5/8', '3/4', '7/8'];
const pathOf = (entry: Entry): string => pathAt(placesOf(entry.scope)[0] ?? '', entry);
