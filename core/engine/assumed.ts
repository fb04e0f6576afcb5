/** What was assumed for a number: the estimates that it rests on, by entry. */
import type { AnyWay, Entry } from '../catalog.js';
import type { Catalog } from './compile.js';
import { pathAt } from './places.js';
import { isKnown, sourceOf } from './settle.js';
import type { State } from './state.js';
import { sourcesUsed } from './tracer.js';

/**
 * A `guess` is left out of a plain sum. A `usual` value and a text-book `constant` are counted there as well, and have a doubt; a `convention`
 * (no spacer, a left turn) has none.
 */
export type AssumedKind = 'guess' | 'usual' | 'constant' | 'convention';
export interface Assumed {
  readonly entry: Entry;
  readonly kind: AssumedKind;
  /** Where it was assumed. */
  readonly paths: readonly string[];
}

const kindOf = (guess: boolean, { constant, usual }: AnyWay): AssumedKind =>
  guess ? 'guess' : usual ? 'usual' : constant ? 'constant' : 'convention';

export function assumedFor(catalog: Catalog, state: State, index: number): readonly Assumed[] {
  const found = new Map<Entry, { kind: AssumedKind; paths: Set<string> }>();
  const seen = new Set<number>();
  const visit = (asked: number): void => {
    if (!isKnown(state, asked)) return;
    const at = sourceOf(state, asked);
    const way = state.way[at];
    if (seen.has(at) || !way) return;
    seen.add(at);
    const node = catalog.nodes[at]!;
    if (way.of.sort === 'estimate') {
      const one = found.get(node.entry) ?? { kind: kindOf(way.guess, way.of), paths: new Set() };
      found.set(node.entry, one);
      one.paths.add(pathAt(node.place, node.entry));
    }
    for (const source of sourcesUsed(state, node)) visit(source);
  };
  visit(index);
  return [...found].map(([entry, { kind, paths }]) => ({ entry, kind, paths: [...paths] }));
}
