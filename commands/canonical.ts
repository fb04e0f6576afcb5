/** Lines that read back as what is meant: for choices, offers and suggestions. */
import { type Entry, isInput } from '../core/catalog.js';
import { catalog } from '../core/stubaxle.js';
import type { Context } from './context.js';
import type { Setting } from './language/setting.js';
import { vocabularyOf } from './language/vocabulary.js';
import { writeItems, writeReading } from './language/write.js';
import { type Item, isStop, type Reading } from './reading.js';
import { read } from './resolve.js';
import { settingOf } from './setting.js';

const ordinals = ['', '1st', '2nd', '3rd', '4th', '5th', '6th', '7th', '8th'];
const ends: Readonly<Record<string, readonly string[]>> = {
  front: ['lf', 'rf'],
  rear: ['lr', 'rr'],
  left: ['lf', 'lr'],
  right: ['rf', 'rr'],
};

/** Words for places, as a line has them before an entry's word; empty where nothing needs to be said. */
export function placeWords(entry: Pick<Entry, 'scope'>, places: readonly string[]): string {
  if (entry.scope === 'car' || entry.scope === 'question') return '';
  if (entry.scope === 'gear') return places.map((place) => ordinals[Number(place)] ?? '').join(' and ');
  if (entry.scope === 'axle') return places.join(' and ');
  if (places.length === 4) return 'all four';
  const end = Object.entries(ends).find(([, corners]) => corners.length === places.length && corners.every((c) => places.includes(c)));
  return end?.[0] ?? places.join(' and ');
}
/** The plainest word that leads to an entry and to no other. */
export const wordOf = (entry: Entry): string => vocabularyOf(catalog).nameOf(entry);

/** The words for an entry at some places: of a figure, the plainest that read back to it. */
function wordAt(entry: Entry, where: string): string {
  const key = `${entry.path} ${where}`;
  const known = chosen.get(key);
  if (known !== undefined) return known;
  const words = [wordOf(entry), ...(entry.words ?? [])].filter((word) => where === '' || !word.startsWith(`${where} `));
  const leads = (word: string): boolean => {
    const reading = read(`show ${where} ${word}`, nobody);
    return !isStop(reading) && reading.sides[0]?.items[0]?.entry === entry;
  };
  const word = (isInput(entry) ? undefined : words.find(leads)) ?? words[0] ?? wordOf(entry);
  chosen.set(key, word);
  return word;
}
const chosen = new Map<string, string>();
/** A reader that knows the catalogs and nobody's cars. */
const nobody: Setting = {
  catalog,
  commands: [{ word: 'show', also: [], takes: 'items', changes: false, group: 'verb' }],
  preferences: { units: 'us', decimalMark: '.' },
  cars: [],
  chosen: undefined,
  setups: [],
  others: [],
  members: [],
};

/** An entry at some places as a line names it: `front spring`, `2nd gear ratio`, `wheelbase`. */
export function phrase(entry: Entry, ...places: readonly string[]): string {
  const where = placeWords(entry, places);
  const word = wordAt(entry, where);
  return where === '' ? word : `${where} ${word}`;
}

const noVerbs: Setting['commands'] = [];
/** Items with their amounts, as a line tells them. */
export const itemsText = (items: readonly Item[], context: Context): string => writeItems(items, settingOf(context, noVerbs));
/** A whole reading as a line. */
export const lineOf = (reading: Reading, context: Context): string => writeReading(reading, settingOf(context, noVerbs));
