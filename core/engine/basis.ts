/** How a number was worked out, in words: the ways that were taken down to what was told, and what they counted or left out. */
import type { Catalog } from './compile.js';
import type { Node, NodeWay } from './node.js';
import { isKnown, isUnmoved, sourceOf } from './settle.js';
import { absent, type State } from './state.js';

/** The words of a way: what it is, `alone` where it could be refined and is not, and the refinements that it counts. */
function wordsOf(state: State, { firstPick }: Node, { of, refines }: NodeWay): readonly string[] {
  const possible = refines.filter((words) => words !== undefined);
  const counted = [...new Set(refines.filter((words, k) => words !== undefined && state.pick[firstPick + k] !== absent))];
  if (of.basis === undefined) return counted as string[];
  const alone = possible.length > 0 && counted.length === 0 ? ' alone' : '';
  return [[`${of.basis}${alone}`, ...counted].join(', ')];
}

export function basisOf(catalog: Catalog, state: State, index: number): readonly string[] {
  const said = new Set<string>();
  const seen = new Set<number>();
  const visit = (asked: number): void => {
    if (!isKnown(state, asked)) return;
    const at = sourceOf(state, asked);
    const way = state.way[at];
    if (seen.has(at) || !way) return;
    seen.add(at);
    const node = catalog.nodes[at]!;
    if (way.carries && isUnmoved(state, node)) {
      visit(state.pick[node.firstPick]!);
      return;
    }
    for (const words of wordsOf(state, node, way)) said.add(words);
    for (let k = 0; k < way.keys.length; k++) {
      const source = state.pick[node.firstPick + k]!;
      if (source !== absent) visit(source);
    }
  };
  visit(index);
  return [...said];
}
