/** Where an entry can be read, how one place is reached from another, and what a place is called. */
import type { Entry, Scope, Turn } from '../catalog.js';

/** A place is where it lies on each axis, and whether it is the car as it was when it was last measured. */
export interface Place {
  readonly axle?: 'front' | 'rear';
  readonly side?: 'left' | 'right';
  readonly gear?: number;
  readonly past?: true;
}
const topGear = 8;
const gears = Array.from({ length: topGear }, (_, n) => n + 1);

const places: Readonly<Record<Scope, ReadonlyMap<string, Place>>> = {
  question: new Map([['', {}]]),
  car: new Map([['', {}]]),
  axle: new Map<string, Place>([
    ['front', { axle: 'front' }],
    ['rear', { axle: 'rear' }],
  ]),
  corner: new Map<string, Place>([
    ['lf', { axle: 'front', side: 'left' }],
    ['rf', { axle: 'front', side: 'right' }],
    ['lr', { axle: 'rear', side: 'left' }],
    ['rr', { axle: 'rear', side: 'right' }],
  ]),
  gear: new Map(gears.map((gear) => [String(gear), { gear }])),
};
/** The places of a scope, in the order in which they are shown: `['front', 'rear']`, `['lf', 'rf', 'lr', 'rr']`, `['1', ... '8']`, `['']`. */
export const placesOf = (scope: Scope): readonly string[] => [...places[scope].keys()];

/** The place of that name; throws for a name that the scope does not have. */
export function placeNamed(scope: Scope, name: string): Place {
  const place = places[scope].get(name);
  if (!place) throw new Error(`${scope} has no place called ${name}`);
  return place;
}
/** `front` and `spring.rate` make `front.spring.rate`; the car's own entries have no place in front. */
export const pathAt = (place: string, entry: Pick<Entry, 'path'>): string => (place === '' ? entry.path : `${place}.${entry.path}`);

function turned(place: Place, turn: Turn): Place | undefined {
  switch (turn) {
    case 'front':
    case 'rear':
      return { ...place, axle: turn };
    case 'left':
    case 'right':
      return { ...place, side: turn };
    case 'then':
      return { ...place, past: true };
    case 'higher':
      if (place.gear === undefined) throw new Error('only a gear has a higher gear');
      return place.gear < topGear ? { ...place, gear: place.gear + 1 } : undefined;
  }
}
/** The place reached by these turns, or undefined above the top gear. */
export const afterTurns = (from: Place, turns: readonly Turn[]): Place | undefined =>
  turns.reduce<Place | undefined>((place, turn) => place && turned(place, turn), from);

/** The name of the place of this scope that lies around `here`; throws where `here` does not say which. */
export function placeAround(scope: Scope, here: Place): string {
  switch (scope) {
    case 'question':
    case 'car':
      return '';
    case 'axle':
      if (here.axle) return here.axle;
      break;
    case 'corner':
      if (here.axle && here.side) return (here.side === 'left' ? 'l' : 'r') + (here.axle === 'front' ? 'f' : 'r');
      break;
    case 'gear':
      if (here.gear) return String(here.gear);
  }
  throw new Error(`a place ${JSON.stringify(here)} does not say which ${scope}`);
}

const cornerWords: Readonly<Record<string, string>> = { lf: 'left front', rf: 'right front', lr: 'left rear', rr: 'right rear' };
const ordinal = (n: string): string => n + (n === '1' ? 'st' : n === '2' ? 'nd' : n === '3' ? 'rd' : 'th');

/** What an entry is called at a place: `rear spring rate`, `left front camber`, `gear ratio in 2nd`. */
export function nameAt(entry: Pick<Entry, 'name' | 'scope'>, place: string): string {
  switch (entry.scope) {
    case 'question':
    case 'car':
      return entry.name;
    case 'axle':
      return `${place} ${entry.name}`;
    case 'corner':
      return `${cornerWords[place] ?? place} ${entry.name}`;
    case 'gear':
      return `${entry.name} in ${ordinal(place)}`;
  }
}
/** The same of several places in as few words: `front and rear spring rate`, `camber at each wheel`. */
export function nameAtAll(entry: Pick<Entry, 'name' | 'scope'>, at: readonly string[]): string[] {
  if (entry.scope === 'axle' && at.length === 2) return [`front and rear ${entry.name}`];
  if (entry.scope === 'corner' && at.length === 4) return [`${entry.name} at each wheel`];
  if (entry.scope === 'corner' && at.length === 2) {
    const [first, second] = [cornerWords[at[0] ?? ''], cornerWords[at[1] ?? '']];
    for (const end of ['front', 'rear']) if (first?.endsWith(end) && second?.endsWith(end)) return [`${entry.name} at both ${end} wheels`];
  }
  return at.map((place) => nameAt(entry, place));
}
