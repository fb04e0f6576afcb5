/** Facts with something told: what says the same thing in another way is forgotten. */
import type { Fact, Facts } from '../car.js';
import { groupsSaid } from '../catalog.js';
import type { Catalog } from './compile.js';

/** The facts, with this one told. Facts that it stands instead of (`instead`, at the same place) are gone. Throws when no input has that path. */
export function telling(catalog: Catalog, facts: Facts, path: string, fact: Fact): Facts {
  const { entry, place } = catalog.node(path);
  const told = new Map(facts);
  const groups = groupsSaid(entry, fact.value);
  for (const other of groups.length > 0 ? [...told.keys()] : []) {
    const node = catalog.node(other);
    if (node.place === place && node.entry.instead !== undefined && groups.includes(node.entry.instead)) told.delete(other);
  }
  return told.set(path, fact);
}
