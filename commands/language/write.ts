/** Readings as canonical lines: what they say reads back as the same. */

import type { Entry } from '../../core/catalog.js';
import { placesOf } from '../../core/engine.js';
import type { Clause, Item, Reading, Subject } from '../reading.js';
import { scan } from '../scan.js';
import { meaningsOf, toSI } from '../units.js';
import { isGrammar } from '../words.js';
import { writeExactly } from './quantities.js';
import type { Setting } from './setting.js';
import { valueText } from './values.js';
import { stemsOf, vocabularyOf } from './vocabulary.js';

const ordinals = ['', '1st', '2nd', '3rd', '4th', '5th', '6th', '7th', '8th'];
const groups: Readonly<Record<string, readonly string[]>> = {
  front: ['lf', 'rf'],
  rear: ['lr', 'rr'],
  left: ['lf', 'lr'],
  right: ['rf', 'rr'],
  'all four': ['lf', 'rf', 'lr', 'rr'],
};
/** Words for places, one for each group that the places fall into. */
function wordsForPlaces(entry: Entry, item: Pick<Item, 'places' | 'placed'>): readonly string[] {
  if (!item.placed || placesOf(entry.scope).length === 1) return [''];
  if (entry.scope === 'gear') return item.places.map((place) => ordinals[Number(place)] ?? '');
  if (entry.scope === 'axle') return item.places.length === 2 ? ['front and rear'] : item.places;
  const whole = Object.entries(groups).find(
    ([, corners]) => corners.length === item.places.length && corners.every((corner) => item.places.includes(corner)),
  );
  return whole ? [whole[0]] : item.places;
}
function saidText(item: Item, setting: Setting): string {
  const { said, entry } = item;
  if (!said) return '';
  const { preferences } = setting;
  const { value } = said;
  if (entry.kind === 'choice' && typeof value === 'string') return optionText(entry, value);
  const how = { percent: entry.percent === true };
  if (typeof value === 'number' && said.change === 'times')
    return `${Number((Math.abs(value - 1) * 100).toPrecision(12))}% ${value >= 1 ? 'more' : 'less'}`;
  if (typeof value === 'number' && said.change === 'plus' && entry.dimension && asTyped(said.text, Math.abs(value), entry, setting))
    return `${said.text} ${value >= 0 ? 'more' : 'less'}`;
  if (typeof value === 'number' && said.change === 'plus' && entry.dimension)
    return `${writeExactly(Math.abs(value), entry.dimension, preferences, { ...how, difference: true })} ${value >= 0 ? 'more' : 'less'}`;
  if (typeof value === 'number' && said.to === undefined && asTyped(said.text, value, entry, setting))
    return said.text + withinText(item, setting);
  const second = said.to === undefined ? '' : ` to ${valueText(said.to, entry, preferences)}`;
  return `${valueText(value, entry, preferences)}${second}${withinText(item, setting)}`;
}
/** A word for an option that a line can hold: `in` alone is a preposition. */
function optionText(entry: Entry, value: string): string {
  return [value, ...(entry.optionWords?.[value] ?? [])].find((word) => stemsOf(word).every((one) => !isGrammar(one))) ?? value;
}
function withinText({ said, entry }: Item, { preferences }: Setting): string {
  if (said?.within === undefined || !entry.dimension) return '';
  return ` ± ${writeExactly(said.within, entry.dimension, preferences, { percent: entry.percent === true, difference: true })}`;
}
/** Whether what was typed says the value by itself, its unit included. */
function asTyped(text: string, value: number, entry: Entry, { preferences }: Setting): boolean {
  const [token, another] = scan(text);
  if (token?.is !== 'amount' || another || token.unit === undefined || token.other !== undefined || token.sign === '+') return false;
  const meaning = meaningsOf(token.unit).find((one) => one.dimension === entry.dimension);
  return meaning !== undefined && Math.abs(toSI(token.value, meaning.unit, preferences) - value) <= 1e-12 * Math.abs(value);
}
/** An item as a line has it: `front spring rate 450 lb/in`, `2nd gear ratio 1.89`. Several groups of places make several. */
export function writeItem(item: Item, setting: Setting): string {
  const { entry } = item;
  const name = vocabularyOf(setting.catalog).nameOf(entry);
  const value = saidText(item, setting);
  return wordsForPlaces(entry, item)
    .map((where) => [where, name, value].filter((part) => part !== '').join(' '))
    .join(', ');
}
export const writeItems = (items: readonly Item[], setting: Setting): string => items.map((item) => writeItem(item, setting)).join(', ');

const quoted = (name: string): string => (/^[\p{L}][\p{L}\p{N}]*$/u.test(name) ? name : `'${name}'`);
export function writeSubject(subject: Subject, setting: Setting): string {
  switch (subject.is) {
    case 'now':
      return 'now';
    case 'setup':
      return quoted(subject.name);
    case 'car':
      return quoted(
        (setting.cars.find(({ id }) => id === subject.id) ?? setting.others.find(({ id }) => id === subject.id))?.name ?? 'now',
      );
    case 'member': {
      const { id } = subject;
      return id.startsWith('@') ? id : `@${id}`;
    }
  }
}
function writeClause(clause: Clause, setting: Setting): string {
  const subjects = clause.subjects.map((subject) => writeSubject(subject, setting));
  const items = writeItems(clause.items, setting);
  if (items === '') return subjects.join(' ');
  return subjects.length === 0 ? items : `${items} on ${subjects.join(' ')}`;
}
const evidence = { measured: 'measured', spec: 'from the spec sheet', estimated: 'estimated' } as const;

/** A whole reading as a line that reads back as the same. */
export function writeReading(reading: Omit<Reading, 'rest' | 'echoes' | 'mended'>, setting: Setting): string {
  if (reading.verb === 'find' && reading.goal && !reading.goal.said) {
    const subjects = reading.sides.flatMap((side) => side.subjects.map((subject) => writeSubject(subject, setting)));
    const sought = reading.sides.flatMap((side) => side.items);
    const what = sought.length > 0 ? `what ${writeItems(sought, setting)} would mine need` : 'what would mine need';
    return `${what} to have ${writeItem(reading.goal, setting)}${subjects.length > 0 ? ` on ${subjects.join(' ')}` : ''}`;
  }
  const sides = reading.sides.map((side) => writeClause(side, setting)).filter((side, _, all) => side !== '' || all.length > 1);
  const parts = [
    reading.verb ?? '',
    ...(reading.verb === 'save' ? reading.names.map(quoted) : []),
    reading.everything ? `everything ${reading.everything.places.join(' and ')}` : '',
    sides.join(' vs '),
    reading.goal ? `for ${writeItem(reading.goal, setting)}` : '',
    reading.against ? `against ${writeItem(reading.against, setting)}` : '',
    reading.tried.length > 0 ? `with ${writeItems(reading.tried, setting)}` : '',
    reading.evidence ? evidence[reading.evidence] : '',
    reading.wantedUnit ? `in ${reading.wantedUnit}` : '',
  ];
  return parts
    .filter((part) => part.trim() !== '')
    .join(' ')
    .trim();
}
