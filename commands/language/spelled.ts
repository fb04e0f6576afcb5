/** Finds the longest unit spelling at a place in a line, in one walk. */
import { spellings } from '../units.js';

interface Branch {
  readonly next: Map<string, Branch>;
  spelling?: string;
}
const root: Branch = { next: new Map() };
for (const spelling of spellings) {
  let at = root;
  for (const letter of spelling) {
    const next = at.next.get(letter) ?? { next: new Map() };
    at.next.set(letter, next);
    at = next;
  }
  at.spelling = spelling;
}
const inWord = /[\p{L}\p{N}_]/u;

/**
 * The longest spelling that starts at `from` and is not the beginning of a longer word; `lower` is the line in lower case.
 * @param fits - whether a spelling that ends at `end` is one here
 */
export function spellingAt(lower: string, from: number, fits?: (spelling: string, end: number) => boolean): string | undefined {
  let at = root;
  let found: string | undefined;
  for (let k = from; k < lower.length; k++) {
    const next = at.next.get(lower[k] ?? '');
    if (!next) break;
    at = next;
    if (at.spelling === undefined) continue;
    const last = lower[k] ?? '';
    const after = lower[k + 1] ?? '';
    // A sign (°, ", %, #) ends itself; a word must not go on.
    if ((!inWord.test(last) || !inWord.test(after)) && (fits?.(at.spelling, k + 1) ?? true)) found = at.spelling;
  }
  return found;
}
