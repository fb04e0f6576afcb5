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
    return { si, dimension, text: `${writeQuantity(si, dimension, preferences, undefined, how)}, barely known` };
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
  return amount(value, entry.dimension ?? 'ratio', preferences, within, writing(entry, wantedUnit));
}
/** The same without its plus-or-minus, every digit as it was told. */
export function valueText(entry: Entry, value: Value, preferences: Preferences): string {
  if (typeof value === 'string') return value;
  if (typeof value === 'object') return curveText(value, entry, preferences);
  return writeQuantity(value, entry.dimension ?? 'ratio', preferences, undefined, writing(entry));
}
/** A value as a line would tell it, to be read again. Undefined for a table. */
export function valueToType(entry: Entry, value: Value, preferences: Preferences): string | undefined {
  if (typeof value === 'string') return value;
  if (typeof value === 'object') return undefined;
  return writeExactly(value, entry.dimension ?? 'ratio', preferences, writing(entry));
}

/** Digits of what is worked out, where nothing says how sure it is: no more than what is told usually carries. */
export const ofResults = 3;
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
  if (typeof value === 'number') {
    const write = how.doubt === false ? bare : amount;
    const digits = numbers.status(path) === 'told' ? {} : { digits: ofResults };
    return write(value, entry.dimension ?? 'ratio', preferences, numbers.within(path), { ...writing(entry, how.wantedUnit), ...digits });
  }
  const fact = numbers.situation.facts.get(path);
  if (fact) return factCell(entry, fact, preferences);
  if (typeof value === 'string') return value;
  return entry.kind === 'designation' && entry.write ? entry.write(value) : undefined;
}
export const textOf = (cell: Cell): string => (typeof cell === 'string' ? cell : cell.text);

const evidences: Readonly<Record<Evidence, string>> = { measured: 'measured', spec: 'from the spec', estimated: 'your estimate' };
export const evidenceText = (evidence: Evidence | 'rule'): string => (evidence === 'rule' ? 'assumed' : evidences[evidence]);
/** The first letter as a sentence has it. */
export const sentence = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1);
