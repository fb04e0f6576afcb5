/** Lines made of what was read, which read back as the same: for choices, offers and suggestions. */
import type { Entry } from '../core/catalog.js';
import { catalog } from '../core/stubaxle.js';
import { vocabularyOf } from './language/vocabulary.js';
import type { Item, Reading } from './reading.js';

const all: Readonly<Record<string, readonly string[]>> = {
  front: ['lf', 'rf'],
  rear: ['lr', 'rr'],
  left: ['lf', 'lr'],
  right: ['rf', 'rr'],
};
const ordinals = ['', '1st', '2nd', '3rd', '4th', '5th', '6th', '7th', '8th'];

/** Words for places, as a line has them before an entry's word; empty where nothing needs to be said. */
export function placeWords(entry: Pick<Entry, 'scope'>, places: readonly string[]): string {
  if (entry.scope === 'car' || entry.scope === 'question') return '';
  if (entry.scope === 'gear') return places.length === 1 ? (ordinals[Number(places[0])] ?? '') : '';
  if (entry.scope === 'axle') return places.join(' and ');
  if (places.length === 4) return 'all four';
  const end = Object.entries(all).find(([, corners]) => corners.length === places.length && corners.every((c) => places.includes(c)));
  return end?.[0] ?? places.join(' and ');
}
/** The plainest word that leads to an entry and to no other. */
export const wordOf = (entry: Entry): string => vocabularyOf(catalog).nameOf(entry);

/** An entry at some places as a line names it: `front spring`, `2nd gear ratio`, `wheelbase`. */
export function phrase(entry: Entry, ...places: readonly string[]): string {
  const where = placeWords(entry, places);
  return where === '' ? wordOf(entry) : `${where} ${wordOf(entry)}`;
}
/** An item as it would be typed. */
export function itemText(item: Item): string {
  const words = item.placed || item.places.length > 1 ? phrase(item.entry, ...(item.placed ? item.places : [])) : phrase(item.entry);
  return item.said === undefined ? words : `${words} ${item.said.text}`;
}
export const itemsText = (items: readonly Item[]): string => items.map(itemText).join(', ');

/** The whole reading of a change as a line. Names are quoted where they have several words. */
export function lineOf(reading: Reading, subject?: string): string {
  const names = reading.names.map((name) => (/\s/.test(name) ? `'${name}'` : name));
  const parts = [
    reading.verb ?? '',
    ...(reading.verb === 'save' ? names : []),
    itemsText(reading.sides.flatMap((side) => side.items)),
    ...(reading.verb === 'save' ? [] : names),
    ...(subject === undefined || names.length > 0 ? [] : [`on ${subject}`]),
    ...(reading.tried.length > 0 ? [`with ${itemsText(reading.tried)}`] : []),
  ];
  return parts.filter((part) => part !== '').join(' ');
}
