/** Where a topic shows an entry: at the places that the line told something about, where it did. */
import type { Entry } from '../../core/catalog.js';
import { placesOf } from '../../core/engine.js';
import type { Item } from '../reading.js';

export function placesFor(entry: Entry, told: readonly Item[]): readonly string[] {
  const own = told.filter((item) => item.entry.scope === entry.scope && item.entry.scope !== 'car' && item.entry.scope !== 'question');
  const said = new Set(own.flatMap((item) => item.places));
  return said.size > 0 ? [...said] : placesOf(entry.scope);
}
