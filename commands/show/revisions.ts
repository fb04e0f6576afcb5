/** What differs between two revisions of a car. */
import type { Row } from '../answer.js';
import type { Preferences, Revision } from '../context.js';
import type { Altered } from '../facts.js';
import { catalog } from '../looked.js';
import { isSame } from '../same.js';
import { alteredNames, alteredRows } from './altered.js';

/** Facts that differ, in the order of the catalog. */
export function alteredBetween(from: Pick<Revision, 'facts'>, to: Pick<Revision, 'facts'>): readonly Altered[] {
  const paths = [...new Set([...from.facts.keys(), ...to.facts.keys()])].filter((path) => catalog.byPath.has(path));
  const altered = paths.flatMap((path): Altered[] => {
    const [before, after] = [from.facts.get(path), to.facts.get(path)];
    const same = before && after && isSame(before.value, after.value) && before.within === after.within;
    const { entry, place } = catalog.node(path);
    return same ? [] : [{ path, place, entry, before, after }];
  });
  return altered.sort((a, b) => a.entry.order - b.entry.order);
}
export const revisionRows = (from: Pick<Revision, 'facts'>, to: Pick<Revision, 'facts'>, preferences: Preferences): readonly Row[] =>
  alteredRows(alteredBetween(from, to), preferences);
export const revisionNames = (from: Pick<Revision, 'facts'>, to: Pick<Revision, 'facts'>, preferences: Preferences): readonly string[] =>
  alteredNames(alteredBetween(from, to), preferences);
export const isNothing = (rows: readonly Row[]): boolean => rows.length === 0;
