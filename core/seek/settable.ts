/** What could bring a number to a wanted value: everything that can be told and leads to it, at the places that are moved alike. */
import { canBeTold, type Entry, isNumeric, isWorkedOut, type Scope } from '../catalog.js';
import { type Catalog, pathAt, placesOf } from '../engine.js';

export interface Settable {
  readonly entry: Entry;
  /** Moved together: the two wheels of an end, both ends, all four wheels. */
  readonly paths: readonly [string, ...string[]];
}

/** Groups of places that people move alike, smallest first: each place alone, the wheels of an end, all. */
const groups: Readonly<Record<Scope, readonly (readonly [string, ...string[]])[]>> = {
  question: [['']],
  car: [['']],
  axle: [['front'], ['rear'], ['front', 'rear']],
  corner: [['lf'], ['rf'], ['lr'], ['rr'], ['lf', 'rf'], ['lr', 'rr'], ['lf', 'rf', 'lr', 'rr']],
  gear: placesOf('gear').map((gear) => [gear]),
};

/**
 * Everything that could move a figure, by what the catalog says; whether it does for a car, `seek` tells. In the order of the catalog, smallest group
 * first; a group of several only where each of them leads there.
 * @param what inputs that are set on a car, or results too
 */
export function settable(catalog: Catalog, figure: string, what: 'inputs' | 'all' = 'all'): readonly Settable[] {
  const results = catalog.entries.filter((entry) => isWorkedOut(entry) && canBeTold(entry));
  // Compiled with every result told, so that what is read of told results only counts as well.
  const whole = what === 'all' ? catalog.telling(results) : catalog;
  return catalog.entries.flatMap((entry): Settable[] => {
    if (!isNumeric(entry) || !canBeTold(entry) || (what === 'inputs' && isWorkedOut(entry))) return [];
    return groups[entry.scope].flatMap(([first, ...others]): Settable[] => {
      const paths = [pathAt(first, entry), ...others.map((place) => pathAt(place, entry))] as const;
      return paths.every((path) => path !== figure && whole.dependsOn(figure, path)) ? [{ entry, paths }] : [];
    });
  });
}
