/** What an entry is called in a row of a phone's screen. */
import type { Entry } from '../../core/catalog.js';

type Labelled = Pick<Entry, 'name' | 'label' | 'scope'>;
const ordinals = ['', '1st', '2nd', '3rd', '4th', '5th', '6th', '7th', '8th'];
const ends: Readonly<Record<string, readonly string[]>> = { front: ['lf', 'rf'], rear: ['lr', 'rr'] };

export const labelOf = (entry: Labelled): string => entry.label ?? entry.name;

/** `rear wheel rate`, `lf camber`, `2nd top speed`. */
export function labelAt(entry: Labelled, place: string): string {
  if (entry.scope === 'gear') return `${ordinals[Number(place)] ?? place} ${labelOf(entry)}`;
  return place === '' ? labelOf(entry) : `${place} ${labelOf(entry)}`;
}
/** The same of several places that read alike: `camber, fronts`, `tire size`. */
export function labelAtAll(entry: Labelled, places: readonly string[]): string {
  const [first = '', second] = places;
  if (second === undefined) return labelAt(entry, first);
  if (entry.scope === 'gear') return `${places.map((place) => ordinals[Number(place)] ?? place).join(', ')} ${labelOf(entry)}`;
  if (entry.scope === 'axle' && places.length === 2) return labelOf(entry);
  if (entry.scope === 'corner' && places.length === 4) return `${labelOf(entry)}, each`;
  const end = Object.entries(ends).find(
    ([, corners]) => corners.length === places.length && corners.every((corner) => places.includes(corner)),
  );
  if (entry.scope === 'corner' && end) return `${labelOf(entry)}, ${end[0]}s`;
  return `${places.join(' ')} ${labelOf(entry)}`;
}
