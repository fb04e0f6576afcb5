/** Where on the car an entry can be meant, by the place words and the gear of its span. */
import type { Entry } from '../../core/catalog.js';
import { placesOf } from '../../core/engine.js';
import type { Atom } from './atom.js';

/** Where an entry can be, given the places that the words left open; undefined when nowhere. */
export function placing(
  entry: Entry,
  reach: readonly string[] | undefined,
  gear: string | undefined,
): { places: readonly string[]; placed: boolean } | undefined {
  const all = placesOf(entry.scope);
  if (entry.scope === 'gear') {
    if (reach) return undefined;
    return gear === undefined ? { places: all, placed: false } : all.includes(gear) ? { places: [gear], placed: true } : undefined;
  }
  if (gear !== undefined && entry.scope !== 'question') return undefined;
  if (all.length === 1) return reach ? undefined : { places: all, placed: true };
  if (!reach) return { places: all, placed: false };
  const places = all.filter((place) => reach.includes(place));
  return places.length > 0 ? { places, placed: true } : undefined;
}
/** A place word. */
export type End = Extract<Atom, { is: 'place' }>;
/** The ways in which place words can be part of an entry's own name, the most of them first, and the places that the others leave. */
export function withinNames(
  ends: readonly End[],
): readonly { readonly taken: readonly string[]; readonly left: readonly string[] | undefined }[] {
  const ways = Array.from({ length: 2 ** Math.min(ends.length, 3) }, (_, mask) => {
    const rest = ends.filter((_end, n) => (mask & (1 << n)) === 0);
    const left = rest.reduce<readonly string[] | undefined>(
      (places, end) => (places ? places.filter((place) => end.places.includes(place)) : end.places),
      undefined,
    );
    return { taken: ends.filter((_end, n) => (mask & (1 << n)) !== 0).map(({ word }) => word), left };
  });
  return ways.filter(({ left }) => left === undefined || left.length > 0).sort((a, b) => b.taken.length - a.taken.length);
}
/** Why an entry can't be where the words say. */
export function placeWhy(entry: Entry, reach: readonly string[] | undefined, gear: string | undefined): string {
  if (gear !== undefined && entry.scope !== 'gear') return `${entry.name} is not told for a gear`;
  if (reach && entry.scope === 'axle') return `${entry.name} is told for an axle, front or rear`;
  if (entry.scope === 'gear') return `${entry.name} is told for a gear`;
  return `${entry.name} is told for the whole car`;
}
