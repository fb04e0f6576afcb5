/** What a told value says: an entry's own group of `instead`, and of a designation those of the parts that its text gives. */
import type { Entry } from './entry.js';
import { isRefusal, type Value } from './values.js';

/** The groups of `instead` that an entry with this value speaks for. What another entry of one of them was told before no longer holds. */
export function groupsSaid(entry: Entry, value: Value): readonly string[] {
  const own = entry.instead === undefined ? [] : [entry.instead];
  if (typeof value !== 'string' || !entry.alsoSays || !entry.parse) return own;
  const parsed = entry.parse(value);
  return isRefusal(parsed) ? own : [...own, ...entry.alsoSays(parsed)];
}
