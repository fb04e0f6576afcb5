/** How far apart two spellings are, and the nearest of many. */

/**
 * Optimal string alignment distance: slips, drops, doubles and neighbours swapped, each once.
 * Gives up above `most` (answers `most + 1`), so that comparing with a whole vocabulary stays cheap.
 */
export function distance(a: string, b: string, most = Number.POSITIVE_INFINITY): number {
  if (Math.abs(a.length - b.length) > most) return most + 1;
  let before: number[] = [];
  let leastBefore = 0;
  let last = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const row = [i];
    let least = i;
    for (let j = 1; j <= b.length; j++) {
      const same = a[i - 1] === b[j - 1];
      let cost = Math.min(last[j]! + 1, row[j - 1]! + 1, last[j - 1]! + (same ? 0 : 1));
      if (i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1]) cost = Math.min(cost, before[j - 2]! + 1);
      row.push(cost);
      if (cost < least) least = cost;
    }
    // A swap reaches back two rows.
    if (least > most && leastBefore + 1 > most) return most + 1;
    leastBefore = least;
    before = last;
    last = row;
  }
  return Math.min(last[b.length]!, most + 1);
}
/** How many slips a word of that length may hold and still be mended. */
export const slipsAllowed = (length: number): number => (length < 4 ? 0 : length < 7 ? 1 : 2);

const sorted = (word: string): string => [...word].sort().join('');
/** A word of three letters may only have two of them swapped: teh, but not hte for any three-letter word. */
const swapped = (a: string, b: string): boolean =>
  a.length === 3 && a.length === b.length && sorted(a) === sorted(b) && distance(a, b, 1) === 1;

/** The known words nearest to one that is not known: none, one, or several that are equally near. */
export function nearest(word: string, known: Iterable<string>): readonly string[] {
  const allowed = slipsAllowed(word.length);
  let best = allowed + 1;
  let found: string[] = [];
  for (const one of known) {
    if (one.length < 3) continue;
    if (word.length === 3) {
      if (swapped(word, one)) found.push(one);
      continue;
    }
    // Two slips in a short word make another word.
    const most = Math.min(best, slipsAllowed(Math.min(word.length, one.length + 1)));
    if (most < 1) continue;
    const slips = distance(word, one, most);
    if (slips > most) continue;
    // Two slips, one of them in the first letter, make another word: constructor, instructor.
    if (slips > 1 && word[0] !== one[0]) continue;
    if (slips < best) {
      best = slips;
      found = [one];
    } else if (slips === best) found.push(one);
  }
  if (found.length < 2) return found;
  // Fingers rarely miss the first letter.
  const first = found.filter((one) => one[0] === word[0]);
  return first.length > 0 ? first : found;
}
