/** Whether two recorded values are one. */
import type { Value } from '../core/catalog.js';

export function isSame(a: Value, b: Value): boolean {
  if (typeof a !== 'object' || typeof b !== 'object') return a === b;
  const alike = (p: readonly number[], q: readonly number[]) => p.length === q.length && p.every((n, i) => n === q[i]);
  return a.between === b.between && alike(a.x, b.x) && alike(a.y, b.y);
}
