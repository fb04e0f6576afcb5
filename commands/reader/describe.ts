/** An edge of the chart as text: what it was made by, over which words, at what price. */
import type { Edge } from './sems.js';
import type { ReadToken } from './tokens.js';

export function describeEdge(edge: Edge, tokens: readonly ReadToken[], depth: number): string {
  const words = tokens
    .slice(edge.from, edge.to)
    .map(({ text }) => text)
    .join(' ');
  const own = `${'  '.repeat(depth)}${edge.category} ${edge.price.toFixed(2)} "${words}" (${edge.made})`;
  return [own, ...edge.parts.map((part) => describeEdge(part, tokens, depth + 1))].join('\n');
}
