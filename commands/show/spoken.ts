/** Numbers as a clubmate says them: as many digits as the plus-or-minus allows, changes as more and less, what is small in words. */
import { isRefusal } from '../../core/catalog.js';
import { type Difference, difference, type NoDifference } from '../../core/difference.js';
import type { Dimension } from '../../core/dimensions.js';
import type { Evaluation } from '../../core/engine.js';
import type { Preferences } from '../context.js';
import { unitFor, type Written, writeNumber } from '../language/quantities.js';
import { catalog } from '../looked.js';
import { fromSI } from '../units.js';
import { writing } from './amount.js';

/** How a number is said: its dimension, and what `Written` says of it. */
export interface Saying extends Pick<Written, 'unit' | 'percent' | 'difference'> {
  readonly dimension: Dimension;
}
/** The saying of a figure or a fact: in the unit that its trade uses, else in the member's own. */
export function sayingOf(path: string, wantedUnit?: string): Saying {
  const { entry } = catalog.node(path);
  const { dimension = 'ratio', trade } = entry;
  const asked = writing(entry, wantedUnit);
  return { dimension, ...(asked.unit === undefined && trade !== undefined ? { unit: trade } : {}), ...asked };
}

/** Decimal places for a plus-or-minus: its first digit, or its second where the first is 1. Below 0 left of the point. */
function placesFor(doubt: number): number {
  const [shown = '', power = '0'] = doubt.toExponential(1).split('e');
  return -Number(power) + (shown.startsWith('1') ? 1 : 0);
}
/** Of a number without a plus-or-minus: three digits tell it apart from its neighbours on a phone. */
const digits = 3;
const plainPlaces = (value: number): number => (value === 0 ? 0 : Math.max(0, digits - 1 - Math.floor(Math.log10(Math.abs(value)))));
function rounded(value: number, places: number): number {
  const step = 10 ** -places;
  return places >= 0 ? Number(value.toFixed(Math.min(places, 15))) : Math.round(value / step) * step;
}
const attached = (number: string, shown: string): string => {
  if (shown === '') return number;
  return /^['/]|^°$/.test(shown) ? `${number}${shown}` : `${number} ${shown}`;
};
const valueIn = (si: number, how: Saying, preferences: Preferences): number =>
  fromSI(si, unitFor(how.dimension, preferences, how), how.difference);
const doubtIn = (within: number, how: Saying, preferences: Preferences): number =>
  Math.abs(within / unitFor(how.dimension, preferences, how).factor);

/** A number without its unit, to the place that its doubt allows. */
export function said(si: number, how: Saying, preferences: Preferences, within = 0): string {
  const value = valueIn(si, how, preferences);
  const doubt = doubtIn(within, how, preferences);
  const places = doubt > 0 && Number.isFinite(doubt) ? placesFor(doubt) : plainPlaces(value);
  const text = writeNumber(rounded(value, places), places, preferences);
  const mark = preferences.decimalMark;
  // Digits that nobody doubts are not padded: 8 in, not 8.00.
  return doubt > 0 || !text.includes(mark) ? text : text.replace(mark === '.' ? /\.?0+$/ : /,?0+$/, '');
}
/** The same with its unit: `1.74 Hz`, `2.1 %`, `337 lb/in`. */
export const spoken = (si: number, how: Saying, preferences: Preferences, within = 0): string =>
  attached(said(si, how, preferences, within), unitFor(how.dimension, preferences, how).shown);
/** Both ends of a change, to the place that it can be told to, at most three digits where those tell them apart: `1.74 Hz` and `1.66`. */
export function endsSaid(
  { from, to, change, within }: Pick<Difference, 'from' | 'to' | 'change' | 'within'>,
  how: Saying,
  preferences: Preferences,
) {
  const largest = Math.max(...[from, to].map((si) => Math.abs(valueIn(si, how, preferences))));
  const unit = Math.abs(unitFor(how.dimension, preferences, how).factor);
  const coarse = largest > 0 ? 2 * 10 ** (Math.floor(Math.log10(largest)) + 1 - digits) * unit : 0;
  const write = (doubt: number) =>
    [spoken(to, how, preferences, doubt), spoken(from, how, preferences, doubt), said(from, how, preferences, doubt)] as const;
  const fine = Math.abs(change) > within ? coarse : Math.abs(change) / 3;
  const [now, was, bare] = write(Math.max(fine, coarse));
  if (now !== was) return { now, was: bare };
  const closer = write(Math.abs(change) / 3);
  return { now: closer[0], was: closer[2] };
}
/** The plus-or-minus alone: `0.18`, `2`. */
export function plusMinus(within: number, how: Saying, preferences: Preferences): string {
  const doubt = doubtIn(within, how, preferences);
  const places = placesFor(doubt);
  return writeNumber(rounded(doubt, places), places, preferences);
}
/** `0.41 ± 0.18`: without a unit, which stands beside it; the number alone where nothing is in doubt. */
export const spokenWithin = (si: number, how: Saying, preferences: Preferences, within: number): string =>
  within > 0 ? `${said(si, how, preferences, within)} ± ${plusMinus(within, how, preferences)}` : said(si, how, preferences);

/** How sure a change is: told in numbers, told as likely, too small to matter, or not to be told at all. */
export type Sureness = 'sure' | 'likely' | 'next to nothing' | 'open';
/** A change that nobody would feel, as a part of the number; of what stands about zero, itself. */
const trifle = 0.05;
const unfelt: Readonly<Record<string, number>> = { balance: 0.01, 'balance.otherWay': 0.01, 'brake.order': 0.02 };
export function surenessOf({ from, change, within }: Pick<Difference, 'from' | 'change' | 'within'>, path: string): Sureness {
  if (Math.abs(change) > within) return 'sure';
  const small = unfelt[catalog.node(path).entry.path] ?? trifle * Math.abs(from);
  if (Math.abs(change) + within <= small) return 'next to nothing';
  return Math.abs(change) > within / 2 ? 'likely' : Math.abs(change) <= small / 2 && within <= 2 * small ? 'next to nothing' : 'open';
}
/** The number of a figure, or undefined. */
export const known = (numbers: Evaluation, path: string): number | undefined => {
  const value = numbers.number(path);
  return isRefusal(value) ? undefined : value;
};
/** A change of one figure between two states or cars; undefined where one of them has none. */
export function moveOf(a: Evaluation, b: Evaluation, path: string, sameCar = true): Difference | undefined {
  const moved: Difference | NoDifference = difference(a, b, path, { sameCar });
  return isRefusal(moved) ? undefined : moved;
}
/** `the bar, the hole and the spring`. */
export const listed = (words: readonly string[], last = 'and'): string =>
  words.length < 2 ? words.join('') : `${words.slice(0, -1).join(', ')} ${last} ${words.at(-1)}`;
