/**
 * The calculation graph as a check of typing: what is told should be read by what is asked, and what is asked should have a value from it. It prices
 * readings with asked and told things, and thinks of what facts alone may ask for.
 */
import { type Entry, isInput } from '../../core/catalog.js';
import { pathAt, placesOf } from '../../core/engine.js';
import type { Setting } from '../language/setting.js';
import { plainSum } from '../plain.js';
import type { Item, Reading } from '../reading.js';
import { prices } from './prices.js';
import type { Candidate } from './requests.js';

type Graph = Setting['catalog'];
const { graph } = prices;
const near: Readonly<Record<string, readonly string[]>> = {
  front: ['lf', 'rf'],
  rear: ['lr', 'rr'],
  lf: ['front'],
  rf: ['front'],
  lr: ['rear'],
  rr: ['rear'],
};

/** Where a thing that is asked is looked at: where the words say, else where something is told, else its first place. */
export function placesAsked(item: Item, told: readonly Item[]): readonly string[] {
  const all = placesOf(item.entry.scope);
  if (item.placed || all.length === 1) return item.places;
  const said = new Set(told.filter((one) => one.placed).flatMap(({ places }) => places));
  const at = all.filter((place) => said.has(place) || near[place]?.some((other) => said.has(other)));
  const [first = ''] = all;
  return at.length > 0 ? at.slice(0, 2) : [item.entry.scope === 'gear' ? '2' : first];
}
export const pathsAsked = (item: Item, told: readonly Item[]): readonly string[] =>
  placesAsked(item, told).map((place) => pathAt(place, item.entry));
const pathsTold = (item: Item): readonly string[] => item.places.map((place) => pathAt(place, item.entry));
const reads = (catalog: Graph, asked: readonly string[], told: Item): boolean =>
  pathsTold(told).some((path) => asked.some((figure) => figure !== path && catalog.dependsOn(figure, path)));

/** What a reading costs by the graph alone. */
export function graphPrice(reading: Reading, setting: Setting): number {
  const { catalog } = setting;
  const items = reading.sides.flatMap((side) => side.items);
  const asked = items.filter((item) => item.said === undefined);
  const told = [...items.filter((item) => item.said !== undefined), ...reading.tried];
  if (reading.verb === 'set') return 0;
  if (reading.goal) return goalPrice(reading.goal, asked, reading.tried, catalog);
  if (asked.length === 0 || told.length === 0) return 0;
  const paths = asked.flatMap((item) => pathsAsked(item, told));
  const unread = told.filter((item) => !reads(catalog, paths, item)).length;
  const idle = asked.filter((item) => !told.some((one) => reads(catalog, pathsAsked(item, told), one))).length;
  const unreadPrice = unread * graph.unread + (asked.length > 1 ? idle * 0.4 : 0);
  if (unread > 0 || reading.sides.length > 1 || reading.sides.some(({ subjects }) => subjects.length > 0)) return unreadPrice;
  const firstSide = told;
  if (plainSum(firstSide, paths)) return 0;
  return setting.chosen === undefined ? graph.noValue * 0.5 : graph.needsCar;
}
function goalPrice(goal: Item, sought: readonly Item[], tried: readonly Item[], catalog: Graph): number {
  const path = pathsAsked({ ...goal }, sought);
  const apart = sought.filter((item) => !reads(catalog, path, item)).length * graph.sought;
  return apart + tried.filter((item) => !reads(catalog, path, item) && isInput(item.entry)).length * graph.unread;
}
const named = new WeakMap<Graph, readonly Entry[]>();
function figuresOf(catalog: Graph): readonly Entry[] {
  const known = named.get(catalog);
  if (known) return known;
  const made = catalog.entries.filter((entry) => entry.kind === 'figure' && (entry.words?.length ?? 0) > 0);
  named.set(catalog, made);
  return made;
}
/** At most so many quantities are worked out to see whether they answer. */
const mostTried = 8;
/**
 * What can be worked out from the told alone and reads all of it, the nearest first: those that are not made of another of them.
 * Nothing where a change is told: it needs to know what is there.
 */
export function quantitiesFrom(told: readonly Item[], catalog: Graph): readonly Item[] {
  if (told.length === 0 || told.some(({ said }) => said?.change !== undefined || said?.to !== undefined)) return [];
  const reading = figuresOf(catalog).flatMap((entry): { readonly item: Item; readonly path: string }[] => {
    const open: Item = { entry, places: placesOf(entry.scope), placed: placesOf(entry.scope).length === 1 };
    const [place = ''] = placesAsked(open, told);
    const path = pathAt(place, entry);
    if (told.some((item) => item.entry === entry) || !told.every((item) => reads(catalog, [path], item))) return [];
    return [{ item: open.placed ? open : { ...open, places: [place], placed: told.some((one) => one.placed) }, path }];
  });
  const depth = new Map(
    reading.map(({ path }) => [path, reading.filter((other) => other.path !== path && catalog.dependsOn(path, other.path)).length]),
  );
  const nearest = [...reading].sort(
    (a, b) => depth.get(a.path)! - depth.get(b.path)! || Number(b.item.entry.main ?? false) - Number(a.item.entry.main ?? false),
  );
  return nearest.slice(0, mostTried).flatMap(({ item, path }) => (plainSum(told, [path]) ? [item] : []));
}
/** Facts alone as a question: conditions are never saved, and data without a car of theirs are there to be worked with. */
export function implied(candidate: Candidate, setting: Setting): readonly Candidate[] {
  const { reading, gathered, price } = candidate;
  const told = [...reading.sides.flatMap(({ items }) => items), ...reading.tried];
  return quantitiesFrom(told, setting.catalog)
    .slice(0, 3)
    .map((item, n) => ({
      ...candidate,
      kind: 'implied',
      reading: { ...reading, verb: 'show', sides: [{ items: [item], subjects: reading.sides[0]?.subjects ?? [] }], tried: told },
      price: price + prices.request.guessedAsk * (n === 0 ? 0.5 : 1) + n * 0.3 - (gathered.told.length > 1 ? 0.3 : 0),
    }));
}
