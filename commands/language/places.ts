/** Places that one part of a line says and another leaves open. */
import type { Item } from '../reading.js';
import type { Draft, Spoken } from './spoken.js';

/** Places that one part of the line says and another leaves open: the gear, the axle of the figure or of what is tried. */
export function carriedPlaces(
  spoken: Spoken,
  draft: Pick<Draft, 'sides' | 'tried' | 'goal' | 'against'>,
): Pick<Draft, 'sides' | 'tried' | 'goal' | 'against'> {
  const { verb } = spoken.asked;
  const items = [...draft.sides.flatMap((side) => side.items), ...draft.tried, ...(draft.goal ? [draft.goal] : [])];
  const gears = new Set(spoken.atoms.atoms.flatMap((atom) => (atom.is === 'gear' ? [atom.gear] : [])));
  const [gear] = gears.size === 1 ? [...gears] : [];
  const ends = (item: Item): string | undefined => {
    if (!item.placed || (item.entry.scope !== 'axle' && item.entry.scope !== 'corner')) return undefined;
    const axles = new Set(item.places.map((place) => (place === 'front' || place === 'lf' || place === 'rf' ? 'front' : 'rear')));
    return axles.size === 1 ? [...axles][0] : 'both';
  };
  const said = new Set(items.map(ends).filter((end) => end !== undefined));
  const [end] = said.size === 1 && !said.has('both') ? [...said] : [];
  const question =
    verb !== 'set' &&
    verb !== 'save' &&
    verb !== 'try' &&
    verb !== 'forget' &&
    (verb !== undefined || items.some((item) => item.said === undefined)) &&
    !spoken.asked.topic;
  const kinds = items.filter(
    (item) => item.placed && item.entry.scope === 'axle' && item.entry.kind === 'choice' && item.said !== undefined,
  );
  const [kindAt] = kinds.length === 1 && kinds[0]?.places.length === 1 ? kinds[0].places : [];
  const place = (item: Item): Item => {
    if (item.placed) return item;
    if (item.entry.scope === 'gear' && gear !== undefined) return { ...item, places: [gear], placed: true };
    // `rear axle beam, spring base 40 in`: what is said of an axle's kind is of that axle.
    if (kindAt !== undefined && item.entry.scope === 'axle' && item.said !== undefined) return { ...item, places: [kindAt], placed: true };
    if (!question || end === undefined || item.entry.alike) return item;
    if (item.entry.scope === 'axle') return { ...item, places: [end], placed: true };
    if (item.entry.scope === 'corner') return { ...item, places: end === 'front' ? ['lf', 'rf'] : ['lr', 'rr'], placed: true };
    return item;
  };
  return {
    sides: draft.sides.map((side) => ({ ...side, items: side.items.map(place) })),
    tried: draft.tried.map(place),
    ...(draft.goal ? { goal: place(draft.goal) } : {}),
    ...(draft.against ? { against: place(draft.against) } : {}),
  };
}
