/** Numbers and quantities as they are written: the digits shown follow the plus-or-minus. */
import type { Dimension } from '../../core/dimensions.js';
import type { Preferences } from '../context.js';
import { fromSI, homeUnit, meaningsOf, unitShown } from '../units.js';

const mostDecimals = 15;
const significant = 5;

/** The number with that many decimals, the member's decimal mark, and commas between thousands where the mark is a point. */
export function writeNumber(value: number, decimals: number, preferences: Preferences): string {
  const fixed = Math.abs(value).toFixed(Math.max(0, Math.min(mostDecimals, decimals)));
  const [whole = '0', part] = fixed.split('.');
  const grouped = preferences.decimalMark === '.' ? whole.replace(/\B(?=(\d{3})+$)/g, ',') : whole;
  // -0.00 is 0.00.
  const sign = value < 0 && /[1-9]/.test(fixed) ? '-' : '';
  return sign + grouped + (part === undefined ? '' : preferences.decimalMark + part);
}
/** The decimal place of a number's n-th significant digit; below zero left of the point. */
const placeOf = (value: number, digits: number): number => (value === 0 ? 0 : digits - 1 - Math.floor(Math.log10(Math.abs(value))));

/** Rounded to a decimal place, which may be left of the point. */
function roundTo(value: number, place: number): number {
  if (place >= 0) return value;
  const step = 10 ** -place;
  return Math.round(value / step) * step;
}
/** The place of the last digit of a plus-or-minus: its first, or its second where the first is 1, after rounding: 0.096 is written 0.10. */
function placeOfDoubt(doubt: number): number {
  const [shown = '', power = '0'] = doubt.toExponential(0).split('e');
  return -Number(power) + (shown.startsWith('1') ? 1 : 0);
}
/** As many decimals as the number needs, at most so many significant digits. */
function plainNumber(value: number, digits: number, preferences: Preferences): string {
  if (value === 0) return '0';
  const place = placeOf(value, digits);
  // What stands left of the point is never rounded away.
  const text = writeNumber(value, Math.max(0, place), preferences);
  const mark = preferences.decimalMark;
  return text.includes(mark) ? text.replace(mark === '.' ? /\.?0+$/ : /,?0+$/, '') : text;
}

export interface Written {
  /** A unit as typed or shown, instead of the member's own. */
  readonly unit?: string | undefined;
  /** A ratio as a percentage. */
  readonly percent?: boolean;
  /** A change: temperatures and absolute pressures without their offset. */
  readonly difference?: boolean;
  /** `+0.11` where it is above zero. */
  readonly signed?: boolean;
  /** How many digits count where there is no plus-or-minus; what stands left of the point is always shown. Left out: five, as things are told. */
  readonly digits?: number;
}
/** The unit in which a quantity is written. Throws for a unit of another dimension: the reader has refused it before. */
export function unitFor(dimension: Dimension, preferences: Preferences, how: Written = {}) {
  if (how.unit !== undefined) {
    const found = unitShown(dimension, how.unit) ?? meaningsOf(how.unit).find((one) => one.dimension === dimension)?.unit;
    if (found && !Number.isNaN(found.factor)) return found;
    if (!found) throw new Error(`${how.unit} is no unit of ${dimension}`);
  }
  const percent = how.percent && dimension === 'ratio' ? unitShown('ratio', '%') : undefined;
  return percent ?? homeUnit(dimension, preferences);
}
const attached = (number: string, shown: string): string =>
  shown === '' ? number : /^['/]|^°$/.test(shown) ? `${number}${shown}` : `${number} ${shown}`;
/** As a line is typed. */
const typed = (number: string, shown: string): string => (shown === '%' ? `${number}%` : attached(number, shown));

/**
 * A quantity in the member's units: `1,300 lb/in`, `1.93 Hz`. With a plus-or-minus (SI half-width) it is written to the place of that one's last digit,
 * without one to as many digits as `digits` says.
 */
export function writeQuantity(si: number, dimension: Dimension, preferences: Preferences, within?: number, how: Written = {}): string {
  const one = unitFor(dimension, preferences, how);
  const value = fromSI(si, one, how.difference);
  const doubt = within === undefined ? 0 : Math.abs(within / one.factor);
  const place = doubt > 0 ? placeOfDoubt(doubt) : 0;
  const number =
    doubt > 0 ? writeNumber(roundTo(value, place), place, preferences) : plainNumber(value, how.digits ?? significant, preferences);
  return (how.signed && value > 0 ? '+' : '') + attached(number, one.shown);
}
/** The plus-or-minus alone, one digit of it, two if the first is 1: `± 0.07`, `± 0.11`; empty where there is none. */
export function writePlusMinus(within: number, dimension: Dimension, preferences: Preferences, how: Written = {}): string {
  const doubt = Math.abs(within / unitFor(dimension, preferences, how).factor);
  if (!(doubt > 0)) return '';
  const place = placeOfDoubt(doubt);
  return `± ${writeNumber(roundTo(doubt, place), place, preferences)}`;
}
/** A quantity with all its digits, to be read again: what `read` makes of it is the same number to a part in a million million. */
export function writeExactly(si: number, dimension: Dimension, preferences: Preferences, how: Written = {}): string {
  const one = unitFor(dimension, preferences, how);
  const value = Number(fromSI(si, one, how.difference).toPrecision(13));
  const plain = plainNumber(value, 13, { ...preferences, decimalMark: '.' }).replaceAll(',', '');
  const number = preferences.decimalMark === ',' ? plain.replace('.', ',') : plain;
  return (how.signed && value > 0 ? '+' : '') + typed(number, one.shown);
}
