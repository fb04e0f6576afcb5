/** What a sum came to, as it is written. */
import type { Dimension } from '../../core/dimensions.js';
import type { Amount } from '../answer.js';
import type { Preferences } from '../context.js';
import { unitFor, type Written, writeQuantity } from '../language/quantities.js';
import { atmosphere, fromSI } from '../units.js';
import { meaningsIn, type Told } from './amounts.js';
import { type Base, baseOf, dimensionsOf, sameBase, unitOf, withoutAngle } from './base.js';
import type { SumRead } from './read.js';
import type { Worked } from './sum.js';

export interface Result {
  readonly text: string;
  /** Where it has a dimension of ours. */
  readonly amount?: Amount;
  readonly notes: readonly string[];
}
const assumed: Readonly<Record<Worked['assumed'][number], string>> = {
  'percent of': 'A percentage that is added is of what it is added to.',
  radians: 'An angle without a unit is in radians.',
};
/** What has too many digits, or too many zeros after the point, to be written out. */
const isExtreme = (number: number): boolean => number !== 0 && (Math.abs(number) < 1e-9 || Math.abs(number) >= 1e15);
/** A quantity with at most five significant digits after the point: `1.2346e-20 m` where it is very small or very large. */
export function writeResult(si: number, dimension: Dimension, preferences: Preferences, how: Written = {}): string {
  const unit = unitFor(dimension, preferences, how);
  const number = fromSI(si, unit, how.difference);
  if (!isExtreme(number)) return writeQuantity(si, dimension, preferences, undefined, how);
  const [digits = '', exponent = ''] = number.toExponential(4).split('e');
  const short = digits.replace(/\.?0+$/, '').replace('.', preferences.decimalMark);
  return `${short}e${exponent.replace('+', '')} ${unit.shown}`.trim();
}
export const notesOn = (way: Worked): readonly string[] => way.assumed.map((one) => assumed[one]);
const meantIn = ({ meaning }: Worked, { names }: SumRead): readonly Told[] =>
  [...meaning].flatMap(([name, at]) => names.get(name)?.meant[at] ?? []);

/** In a unit of our table, in the first way that comes out in it. A length over an angle is a length there: the SI counts no radians. */
export function inUnit(ways: readonly Worked[], sum: SumRead, unit: string, preferences: Preferences): Result | undefined {
  const overAngle = (a: Base, b: Base): boolean => a[4] < 0 && dimensionsOf(a).length === 0 && sameBase(withoutAngle(a), b);
  for (const fits of [sameBase, overAngle])
    for (const way of ways)
      for (const { dimension } of meaningsIn(unit))
        if (fits(way.base, baseOf(dimension))) return write(way, dimension, { unit }, sum, preferences);
  return undefined;
}
/** In the first way that has a dimension of ours: that of what was typed, and in its unit where all agree. */
export function asTyped(ways: readonly [Worked, ...Worked[]], sum: SumRead, preferences: Preferences): Result {
  const way = ways.find(({ base }) => dimensionsOf(base).length > 0) ?? ways[0];
  const all = dimensionsOf(way.base);
  const told = meantIn(way, sum);
  const dimension = all.find((one) => told.some((some) => some.dimension === one)) ?? all[0];
  if (dimension === undefined) return { text: `${writeResult(way.value, 'ratio', preferences)} ${unitOf(way.base)}`, notes: notesOn(way) };
  const units = new Set(told.flatMap((one) => (one.dimension === dimension ? [one.shown] : [])));
  // The difference of two absolute pressures is no absolute one.
  const [unit = ''] = [...units].map((one) => (way.points === 0 ? one.replace(/ absolute$/, '') : one));
  return write(way, dimension, way.percent ? { percent: true } : units.size === 1 && unit !== '' ? { unit } : {}, sum, preferences);
}

function write(way: Worked, dimension: Dimension, how: Written, sum: SumRead, preferences: Preferences): Result {
  const notes = [...notesOn(way)];
  const difference = dimension === 'temperature' && way.points === 0;
  if (difference) notes.push('A difference of temperatures.');
  // Turns and radians are both so many a second.
  if (dimension === 'frequency' && how.unit === undefined && !meantIn(way, sum).some((one) => one.dimension === dimension)) {
    const text = `${writeResult(way.value, 'ratio', preferences)} 1/s`;
    notes.push('In Hz if it counts turns; in rad/s if it is the root of a rate over a mass.');
    return { text, amount: { si: way.value, dimension, text }, notes };
  }
  // Pressures are kept as gauges read them, and absolute ones are summed from a vacuum.
  const absolute = dimension === 'pressure' && way.points !== 0;
  const si = absolute ? way.value - atmosphere : way.value;
  const shown = absolute && how.unit === undefined ? { unit: preferences.units === 'us' ? 'psi absolute' : 'bar absolute' } : how;
  const text = writeResult(si, dimension, preferences, { ...shown, difference });
  return { text, amount: { si, dimension, text }, notes };
}
