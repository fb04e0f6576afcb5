/** Places said elsewhere in a line: `front bar 24, spring 450` speaks of the front all along; `... out back` stands alone. */
import { placesOf } from '../../core/engine.js';
import type { Item, Reading } from '../reading.js';
import { prices } from './prices.js';
import type { Candidate } from './requests.js';
import type { Where } from './sems.js';

const ends: Readonly<Record<'front' | 'rear', readonly string[]>> = { front: ['front', 'lf', 'rf'], rear: ['rear', 'lr', 'rr'] };
const endOf = (places: readonly string[]): 'front' | 'rear' | undefined => {
  for (const end of ['front', 'rear'] as const) if (places.every((place) => ends[end].includes(place))) return end;
  return undefined;
};
const allItems = ({ sides, tried, goal, against }: Reading): readonly Item[] => [
  ...sides.flatMap(({ items }) => items),
  ...tried,
  ...(goal ? [goal] : []),
  ...(against ? [against] : []),
];
const mapped = (reading: Reading, change: (item: Item) => Item): Reading => ({
  ...reading,
  sides: reading.sides.map((side) => ({ ...side, items: side.items.map(change) })),
  tried: reading.tried.map(change),
  ...(reading.goal ? { goal: change(reading.goal) } : {}),
  ...(reading.against ? { against: change(reading.against) } : {}),
});
/** The candidate with places of elsewhere given to what has none; and what it costs to leave a place that stands alone unused. */
export function withPlaces(candidate: Candidate): readonly Candidate[] {
  const { reading, gathered, price } = candidate;
  const items = allItems(reading);
  const open = items.filter((item) => !item.placed);
  const [floating] = gathered.floating;
  const wasted = gathered.floating.length * prices.place.unused;
  if (reading.everything) return [candidate];
  if (open.length === 0) return [{ ...candidate, price: price + wasted }];
  const made: Candidate[] = [{ ...candidate, price: price + wasted }];
  if (floating && gathered.floating.length === 1) {
    const placed = mapped(reading, (item) => given(item, floating));
    if (allItems(placed).some((item, n) => item !== items[n])) made.push({ ...candidate, reading: placed, price: price + 0.1 });
  }
  const said = new Set(
    items
      .filter((item) => item.placed && placesOf(item.entry.scope).length > 1 && item.entry.scope !== 'gear')
      .map((item) => endOf(item.places)),
  );
  const [end] = said;
  if (!floating && said.size === 1 && end !== undefined) {
    const where: Where = { places: ends[end] };
    const carried = mapped(reading, (item) => (item.entry.alike ? item : given(item, where)));
    const count = allItems(carried).filter((item, n) => item !== items[n]).length;
    if (count > 0)
      made.push({ ...candidate, reading: carried, price: price + wasted + prices.place.carried - count * prices.place.unsaid });
  }
  return made;
}
function given(item: Item, where: Where): Item {
  if (item.placed || (item.entry.scope === 'gear') !== (where.gear === true)) return item;
  const places = item.places.filter((place) => where.places.includes(place));
  return places.length === 0 ? item : { ...item, places, placed: true };
}
