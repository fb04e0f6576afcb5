/** Values as an answer shows them: in the asker's units, the digits following the plus-or-minus. */

import type { Fact } from '../../core/car.js';
import { type Curve, type Entry, type Evidence, isRefusal, type Value } from '../../core/catalog.js';
import type { Dimension } from '../../core/dimensions.js';
import type { Evaluation } from '../../core/engine.js';
import type { Amount, Cell } from '../answer.js';
import type { Preferences } from '../context.js';
import { type Written, writeExactly, writePlusMinus, writeQuantity } from '../language/quantities.js';
import { meaningsOf } from '../units.js';

/** How an entry's numbers are written: shares as percentages, in a unit that was asked for where it is one of theirs, else in that of the trade. */
export function writing(entry: Pick<Entry, 'percent' | 'dimension' | 'trade'>, wantedUnit?: string): Written {
  const percent = entry.percent === true;
  const fits = wantedUnit !== undefined && meaningsOf(wantedUnit).some(({ dimension }) => dimension === entry.dimension);
  const unit = fits ? wantedUnit : entry.trade;
  return { percent, ...(unit === undefined ? {} : { unit }) };
}

/** A number and its plus-or-minus. A half-width of 0 is not shown: nothing in it can be wrong, or it is only tried. */
export function amount(si: number, dimension: Dimension, preferences: Preferences, within = 0, how: Written = {}): Amount {
  if (!(within > 0)) return { si, dimension, text: writeQuantity(si, dimension, preferences, undefined, how) };
  if (!Number.isFinite(within))
    return { si, dimension, text: `${writeQuantity(si, dimension, preferences, undefined, how)}, which is little better than a guess` };
  const text = writeQuantity(si, dimension, preferences, within, how);
  return { si, dimension, within, text: `${text} ${writePlusMinus(within, dimension, preferences, how)}` };
}
/** The number alone, to the place that its plus-or-minus allows: for rows. */
export function bare(si: number, dimension: Dimension, preferences: Preferences, within = 0, how: Written = {}): Amount {
  const doubt = within > 0 && Number.isFinite(within) ? within : undefined;
  const text = writeQuantity(si, dimension, preferences, doubt, how);
  return { si, dimension, text, ...(doubt === undefined ? {} : { within: doubt }) };
}
/** A change, with its sign. */
export const changeOf = (si: number, dimension: Dimension, preferences: Preferences, within: number, how: Written = {}): Amount =>
  amount(si, dimension, preferences, within, { ...how, difference: true, signed: true });

/** `300 to 500 lb/in over 4 in`, or how many points a table has. */
export function curveText(curve: Curve, entry: Pick<Entry, 'dimension' | 'along'>, preferences: Preferences): string {
  const { dimension = 'ratio', along = 'ratio' } = entry;
  const [from, to] = [curve.y[0] ?? 0, curve.y.at(-1) ?? 0];
  const [start, end] = [curve.x[0] ?? 0, curve.x.at(-1) ?? 0];
  const stretch = writeQuantity(end - start, along, preferences, undefined, { difference: true });
  const how = curve.between === 'step' ? ' in steps' : curve.x.length > 2 ? `, ${curve.x.length} points` : '';
  return `${writeQuantity(from, dimension, preferences)} to ${writeQuantity(to, dimension, preferences)} over ${stretch}${how}`;
}

/** A recorded value. */
export function factCell(entry: Entry, fact: Fact, preferences: Preferences, wantedUnit?: string): Cell {
  const { value, within } = fact;
  if (typeof value === 'string') return value;
  if (typeof value === 'object') {
    const doubt = within > 0 ? ` ± ${Number((within * 100).toPrecision(2))}%` : '';
    return curveText(value, entry, preferences) + doubt;
  }
  const { dimension = 'ratio' } = entry;
  const how = writing(entry, wantedUnit);
  // The digits that were told, whatever the plus-or-minus: 52.5 % is said again as 52.5 %.
  const text = writeQuantity(value, dimension, preferences, undefined, how);
  if (!(within > 0)) return { si: value, dimension, text };
  return { si: value, dimension, within, text: `${text} ${writePlusMinus(within, dimension, preferences, how)}` };
}
/** The same without its plus-or-minus, every digit as it was told, in the unit that it was told in where that is known. */
export function valueText(entry: Entry, value: Value, preferences: Preferences, unit?: string, digits?: number): string {
  if (typeof value === 'string') return value;
  if (typeof value === 'object') return curveText(value, entry, preferences);
  return writeQuantity(value, entry.dimension ?? 'ratio', preferences, undefined, {
    ...writing(entry, unit),
    ...(digits === undefined ? {} : { digits }),
  });
}
/** A value as a line would tell it, to be read again. Undefined for a table. */
export function valueToType(entry: Entry, value: Value, preferences: Preferences): string | undefined {
  if (typeof value === 'string') return value;
  if (typeof value === 'object') return undefined;
  return writeExactly(value, entry.dimension ?? 'ratio', preferences, writing(entry));
}

/** Digits of what is worked out, where nothing says how sure it is: no more than what is told usually carries. */
export const ofResults = 3;
/** A doubt that is less of the number than this stands behind those digits. */
const fine = 0.005;
/** What an entry is for a car, as a cell: a number with its plus-or-minus, an option, a size. Undefined where it is not known. */
export function cellOf(
  numbers: Evaluation,
  path: string,
  preferences: Preferences,
  how: { readonly doubt?: boolean; readonly wantedUnit?: string } = {},
): Cell | undefined {
  const { entry } = numbers.catalog.node(path);
  const value = numbers.get(path);
  if (isRefusal(value)) return undefined;
  const told = numbers.status(path) === 'told' ? numbers.situation.facts.get(path) : undefined;
  if (told && how.doubt !== false) return factCell(entry, told, preferences, how.wantedUnit);
  if (typeof value === 'number') {
    // A text-book sum is as exact as what it was given: its doubt only says which digits mean nothing.
    const plain = numbers.situation.assume !== undefined;
    const write = how.doubt === false || plain ? bare : amount;
    const within = numbers.within(path);
    const doubt = plain && within < fine * Math.abs(value) ? 0 : within;
    return write(value, entry.dimension ?? 'ratio', preferences, doubt, { ...writing(entry, how.wantedUnit), digits: ofResults });
  }
  const fact = numbers.situation.facts.get(path);
  if (fact) return factCell(entry, fact, preferences);
  if (typeof value === 'string') return value;
  return entry.kind === 'designation' && entry.write ? entry.write(value) : undefined;
}
export const textOf = (cell: Cell): string => (typeof cell === 'string' ? cell : cell.text);

const evidences: Readonly<Record<Evidence, string>> = { measured: 'measured', spec: 'from the book', estimated: 'your guess' };
export const evidenceText = (evidence: Evidence | 'rule'): string => (evidence === 'rule' ? 'my guess' : evidences[evidence]);
/** The first letter as a sentence has it. */
export const sentence = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1);
