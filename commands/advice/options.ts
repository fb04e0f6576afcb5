/** The single changes that a parts box allows, and general ones for a car without a box, each laid over the car. */
import type { Candidate } from '../../core/advice/rank.js';
import type { Fact } from '../../core/car.js';
import { canBeTold, type Entry, type Value } from '../../core/catalog.js';
import { pathAt, type Situation } from '../../core/engine.js';
import { placeWords } from '../canonical.js';
import type { Preferences } from '../context.js';
import { isNotLaid, lay } from '../facts.js';
import { entryAt } from '../looked.js';
import type { Part, PartFact } from '../parts/part.js';
import { costText, entryOf, valueToTell } from '../parts/write.js';
import type { Item } from '../reading.js';
import { isSame } from '../same.js';
import { fromSI, homeUnit, toSI } from '../units.js';

export interface Option {
  readonly items: readonly Item[];
  /** `rear bar 25 mm`. */
  readonly label: string;
  /** The same without its amount. */
  readonly name: string;
  /** `40 min, $15`; empty where nothing was told. */
  readonly cost: string;
  readonly cautions: readonly string[];
  /** What it speaks of: two options that share one can't be done together. */
  readonly about: readonly string[];
}
export type Choice = Candidate<Option>;

const endOf = (place: string): string =>
  place === 'front' || place === 'lf' || place === 'rf' ? 'front' : place === 'rear' || place === 'lr' || place === 'rr' ? 'rear' : '';
/** The places of each end, and both together for pieces that may be put on all round. */
function placesToTry({ places, can }: PartFact, entry: Entry): readonly (readonly string[])[] {
  const front = places.filter((place) => endOf(place) === 'front');
  const rear = places.filter((place) => endOf(place) === 'rear');
  if (front.length === 0 || rear.length === 0 || entry.kind === 'designation') return [places];
  return can.is === 'range' ? [front, rear] : [front, rear, places];
}
const most = 41;
function valuesOf({ can }: PartFact): readonly Value[] {
  if (can.is === 'values') return can.values;
  const count = Math.min(most, Math.floor((can.to - can.from) / can.step + 1 + 1e-9));
  const values = Array.from({ length: count }, (_, n) => can.from + n * can.step);
  const last = values.at(-1) ?? can.from;
  return can.to - last > 1e-9 * Math.abs(can.to) ? [...values, can.to] : values;
}
const itemOf = (entry: Entry, places: readonly string[], value: Value, preferences: Preferences): Item => ({
  ...{ entry, places, placed: true },
  said: { value, text: valueToTell(entry, value, preferences) },
});
/** `rear bar hole`, in the plainest word of the entry. */
const nameOf = (entry: Entry, places: readonly string[]): string =>
  [placeWords(entry, places), entry.words?.[0] ?? entry.name].filter((part) => part !== '').join(' ');
/** `bar hole lr 8 in, rr 9 in` where one entry is told several values. */
function labelOf(items: readonly Item[]): string {
  const [first, second] = items;
  const text = ({ said }: Item): string => said?.text ?? '';
  if (first && second && items.every(({ entry }) => entry === first.entry))
    return `${first.entry.words?.[0] ?? first.entry.name} ${items.map((item) => `${item.places.join(' ')} ${text(item)}`).join(', ')}`;
  return items.map((item) => `${nameOf(item.entry, item.places)} ${text(item)}`).join(', ');
}
const aboutOf = (items: readonly Item[]): readonly string[] =>
  items.flatMap(({ entry, places }) => places.map((place) => `${place}.${entry.instead ?? entry.path}`));

/** Whether the car has it so already. */
const isThere = (items: readonly Item[], { facts }: Situation): boolean =>
  items.every(({ entry, places, said }) =>
    places.every((place) => {
      const fact = facts.get(pathAt(place, entry));
      return fact !== undefined && said !== undefined && near(fact.value, said.value);
    }),
  );
const near = (a: Value, b: Value): boolean =>
  typeof a === 'number' && typeof b === 'number' ? Math.abs(a - b) <= 1e-9 * (Math.abs(a) + Math.abs(b)) : isSame(a, b);

/** A spare bar is solid unless it was told otherwise, also on a car with a hollow one. */
function withBore(items: readonly Item[], { facts }: Situation, preferences: Preferences): readonly Item[] {
  if (items.some(({ entry }) => entry.path === 'bar.bore')) return items;
  return items.flatMap((item) => {
    const places = item.entry.path === 'bar.diameter' ? item.places.filter((place) => facts.has(`${place}.bar.bore`)) : [];
    return places.length === 0 ? [item] : [item, itemOf(entryAt(`${places[0]}.bar.bore`), places, 0, preferences)];
  });
}
/** A spacer moves both wheels out: the track that was told grows by two of it. */
function withTrack(items: readonly Item[], { facts }: Situation, preferences: Preferences): readonly Item[] {
  return items.flatMap((item) => {
    const { entry, places, said } = item;
    if (entry.path !== 'wheel.spacer' || typeof said?.value !== 'number') return [item];
    const thickness = said.value;
    const tracks = places.flatMap((place) => {
      const track = facts.get(`${place}.track`)?.value;
      const was = facts.get(`${place}.wheel.spacer`)?.value ?? 0;
      if (typeof track !== 'number' || typeof was !== 'number') return [];
      return [itemOf(entryAt(`${place}.track`), [place], track + 2 * (thickness - was), preferences)];
    });
    return [item, ...tracks];
  });
}
/**
 * What an adjuster is set to is read with the gauge with which it was read before: the error is one. Another piece has an error of its own.
 */
function laidOver(from: Situation, items: readonly Item[], piece: string | undefined): Situation | undefined {
  const laid = lay(from, items, piece === undefined ? { is: 'tried' } : { is: 'told', evidence: 'spec', source: piece });
  if (isNotLaid(laid)) return undefined;
  if (piece !== undefined) return laid.situation;
  const facts = new Map(laid.situation.facts);
  for (const { path, before, after } of laid.told) {
    if (!before || !after || typeof after.value !== 'number') continue;
    const same: Fact = { ...before, value: after.value };
    facts.set(path, same);
  }
  return { ...laid.situation, facts };
}
function choiceOf(
  from: Situation,
  told: readonly Item[],
  how: { readonly piece: string | undefined; readonly minutes: number | undefined; readonly cost: string; readonly group?: string },
  preferences: Preferences,
  label?: string,
): Choice | undefined {
  if (isThere(told, from)) return undefined;
  const items = withTrack(withBore(told, from, preferences), from, preferences);
  const situation = laidOver(from, items, how.piece);
  if (!situation) return undefined;
  const [first] = told;
  const alike = first !== undefined && told.every(({ entry }) => entry === first.entry);
  const name = alike
    ? nameOf(
        first.entry,
        told.flatMap(({ places }) => places),
      )
    : told.map(({ entry, places }) => nameOf(entry, places)).join(', ');
  const what: Option = {
    ...{ items, label: label ?? labelOf(told), name: label ?? name, cost: how.cost, about: aboutOf(items) },
    cautions: [...new Set(told.flatMap(({ entry }) => entry.caution ?? []))],
  };
  return { what, situation, minutes: how.minutes, ...(how.group === undefined ? {} : { group: how.group }) };
}

/** All single changes of a box, on the car as it stands. */
export function optionsOf(parts: readonly Part[], from: Situation, preferences: Preferences): readonly Choice[] {
  return parts.flatMap((part) => {
    const how = { minutes: part.minutes, cost: costText(part) };
    const [only, another] = part.facts;
    if (!only) return [];
    if (another) {
      const items = part.facts.flatMap((fact) =>
        valuesOf(fact)
          .slice(0, 1)
          .map((value) => itemOf(entryOf(fact), fact.places, value, preferences)),
      );
      return choiceOf(from, items, { ...how, piece: `box ${part.id}` }, preferences) ?? [];
    }
    const entry = entryOf(only);
    const range = only.can.is === 'range';
    return placesToTry(only, entry).flatMap((places) => {
      const group = range ? { group: `${part.id} ${places.join()}` } : {};
      const values = valuesOf(only);
      const alike = values.flatMap((value) => {
        const piece = range || entry.path === 'bar.lever' ? undefined : `box ${part.id} ${String(value)}`;
        return choiceOf(from, [itemOf(entry, places, value, preferences)], { ...how, ...group, piece }, preferences) ?? [];
      });
      return [...alike, ...mixedHoles(entry, places, values, from, how, preferences)];
    });
  });
}
/** One hole left, the next one right: half a step. */
function mixedHoles(
  entry: Entry,
  places: readonly string[],
  values: readonly Value[],
  from: Situation,
  how: { readonly minutes: number | undefined; readonly cost: string },
  preferences: Preferences,
): readonly Choice[] {
  const [left, right, more] = places;
  if (entry.path !== 'bar.lever' || left === undefined || right === undefined || more !== undefined) return [];
  return values.slice(1).flatMap((value, n) => {
    const items = [itemOf(entry, [left], values[n] ?? value, preferences), itemOf(entry, [right], value, preferences)];
    return choiceOf(from, items, { ...how, piece: undefined }, preferences) ?? [];
  });
}

/** Two choices done together; undefined where they can't be laid over the car. */
export function together(from: Situation, a: Choice, b: Choice): Choice | undefined {
  const items = [...a.what.items, ...b.what.items];
  const laid = lay(from, items, { is: 'tried' });
  if (isNotLaid(laid)) return undefined;
  const facts = new Map(laid.situation.facts);
  // Each keeps the errors that it has alone.
  for (const { path } of laid.told) {
    const fact = b.situation.facts.get(path) !== from.facts.get(path) ? b.situation.facts.get(path) : a.situation.facts.get(path);
    if (fact) facts.set(path, fact);
  }
  const minutes = a.minutes === undefined || b.minutes === undefined ? undefined : a.minutes + b.minutes;
  return {
    what: {
      items,
      label: `${a.what.label} + ${b.what.label}`,
      name: `${a.what.name} + ${b.what.name}`,
      cost: [a.what.cost, b.what.cost].map((one) => (one === '' ? 'not told' : one)).join(' + '),
      about: [...a.what.about, ...b.what.about],
      cautions: [...new Set([...a.what.cautions, ...b.what.cautions])],
    },
    situation: { ...laid.situation, facts },
    minutes,
  };
}
export const collide = (a: Choice, b: Choice): boolean => a.what.about.some((one) => b.what.about.includes(one));

interface General {
  readonly entry: string;
  readonly places: readonly string[];
  /** The value that stands for a usual step, up or down. */
  readonly step: (value: number, way: 1 | -1, preferences: Preferences) => number;
  readonly says: (way: 1 | -1, preferences: Preferences) => string;
}
const degree = Math.PI / 180;
const psi = 6894.757293168361;
const stiffer = (way: 1 | -1): string => (way === 1 ? '10 % stiffer' : '10 % softer');
const tenth = (way: 1 | -1): number => (way === 1 ? 1.1 : 0.9);
const generals: readonly General[] = (['front', 'rear'] as const).flatMap((end): readonly General[] => {
  const wheels = end === 'front' ? ['lf', 'rf'] : ['lr', 'rr'];
  return [
    // Twist goes with the fourth power of the diameter.
    { entry: 'bar.diameter', places: [end], step: (value, way) => value * tenth(way) ** 0.25, says: (way) => `${end} bar ${stiffer(way)}` },
    { entry: 'bar.rate', places: [end], step: (value, way) => value * tenth(way), says: (way) => `${end} bar ${stiffer(way)}` },
    { entry: 'roll.bar', places: [end], step: (value, way) => value * tenth(way), says: (way) => `${end} bar ${stiffer(way)}` },
    { entry: 'spring.rate', places: [end], step: (value, way) => value * tenth(way), says: (way) => `${end} spring ${stiffer(way)}` },
    {
      ...{ entry: 'camber', places: wheels, step: (value, way) => value + (way * degree) / 2 },
      says: (way) => `${end} camber ${way === 1 ? '+' : '-'}0.5°`,
    },
    {
      ...{ entry: 'tire.pressure', places: wheels },
      step: (value, way, { units }) => value + way * (units === 'us' ? 2 * psi : 15_000),
      says: (way, { units }) => `${end} pressure ${way === 1 ? '+' : '-'}${units === 'us' ? '2 psi' : '0.15 bar'}`,
    },
  ];
});
/** Four digits in the member's unit: a line that somebody may want to type. */
function typable(si: number, { dimension = 'ratio' }: Entry, preferences: Preferences): number {
  const unit = homeUnit(dimension, preferences);
  return toSI(Number(fromSI(si, unit).toPrecision(4)), unit, preferences);
}
/** What a tenth more or less of what the car has would do: not from any box. Only of what was told. */
export function generalOptions(from: Situation, preferences: Preferences): readonly Choice[] {
  return generals.flatMap(({ entry: path, places, step, says }) => {
    const entry = entryAt(`${places[0]}.${path}`);
    if (!canBeTold(entry)) throw new Error(`${path} cannot be told`);
    const values = places.map((place) => from.facts.get(pathAt(place, entry))?.value);
    return ([1, -1] as const).flatMap((way) => {
      const items = values.flatMap((value, n) => {
        const place = places[n];
        return typeof value === 'number' && value !== 0 && place !== undefined
          ? [itemOf(entry, [place], typable(step(value, way, preferences), entry, preferences), preferences)]
          : [];
      });
      if (items.length < places.length) return [];
      const joined = items.every(({ said }) => said?.text === items[0]?.said?.text) && items[0] ? [{ ...items[0], places }] : items;
      const how = { piece: undefined, minutes: undefined, cost: '', group: `general ${path} ${places.join()}` };
      return choiceOf(from, joined, how, preferences, says(way, preferences)) ?? [];
    });
  });
}
/** Notes of the box: what no figure reads. */
export const notesOf = (parts: readonly Part[]): readonly string[] => parts.flatMap(({ note }) => (note === undefined ? [] : [note]));
/** The one input that an option changes, at which end, and which way. */
export function changeOfOption(
  { items }: Option,
  from: Situation,
): { readonly entry: string; readonly end: 'front' | 'rear' | undefined; readonly way: 1 | -1 } | undefined {
  const [first] = items;
  if (
    !first ||
    items.some(({ entry }) => entry !== first.entry && !['bar.bore', 'bar.wall', 'track'].includes(entry.path)) ||
    typeof first.said?.value !== 'number'
  )
    return undefined;
  const own = items.filter(({ entry }) => entry === first.entry);
  const ends = new Set(own.flatMap(({ places }) => places.map(endOf)));
  const [end] = ends;
  const present = from.facts.get(pathAt(first.places[0] ?? '', first.entry))?.value;
  const was = typeof present === 'number' ? present : first.entry.untold;
  const value = own.reduce((sum, { said, places }) => sum + (typeof said?.value === 'number' ? said.value * places.length : 0), 0);
  const count = own.reduce((sum, { places }) => sum + places.length, 0);
  if (was === undefined || value / count === was) return undefined;
  return {
    entry: first.entry.path,
    end: ends.size === 1 && (end === 'front' || end === 'rear') ? end : undefined,
    way: value / count > was ? 1 : -1,
  };
}
