/** The end of a sum that says in which unit it is wanted: `... in Nm`, `... to lb/in`. */
import { spellingAt } from '../language/spelled.js';
import { meaningsOf } from '../units.js';

export interface Wanted {
  /** What comes before it. */
  readonly expression: string;
  readonly unit: string;
  /** A unit that our table has; else one put together of such: `in^2`, `lb/in^3`. */
  readonly known: boolean;
}
/** Whether a text is units with * / ^ between them, and nothing else. */
export function isUnits(text: string): boolean {
  const lower = text.toLowerCase();
  let at = 0;
  for (;;) {
    const unit = spellingAt(lower, at, (spelling, end) => /^\p{L}+$/u.test(spelling) || lower[end] !== '^');
    if (unit === undefined || !/^\p{L}/u.test(unit)) return false;
    at += unit.length;
    const [between = ''] = /^(?:\^-?\d{1,2}(?!\d))?(?: ?[*·/] ?| )?/.exec(lower.slice(at)) ?? [];
    at += between.length;
    if (at >= lower.length) return !/[*·/ ]$/.test(lower);
    if (!/[*·/ ]$/.test(between)) return false;
  }
}

/** Where the sum ends and the unit begins, or undefined where none is wanted. `in` is inches too: `12 in`, `100 in lb` want nothing. */
export function wantedIn(text: string): Wanted | undefined {
  const lower = text.toLowerCase();
  const ends = [...lower.matchAll(/ (?=(in|to|into|as) (?=\S))/g)].map(({ index, 1: word = '' }) => {
    const keyword = index + 1;
    const swallowed = /[\d.]$/.test(text.slice(0, index)) ? spellingAt(lower, keyword) : undefined;
    return { expression: text.slice(0, index), unit: text.slice(keyword + word.length + 1), keyword, word, swallowed };
  });
  // After a number, `in lb` is a unit.
  const known = ends.find(
    ({ unit, swallowed, keyword }) => meaningsOf(unit).length > 0 && keyword + (swallowed?.length ?? 0) !== lower.length,
  );
  if (known) return { expression: known.expression, unit: known.unit, known: true };
  const made = ends.findLast(({ unit, swallowed, word }) => isUnits(unit) && (swallowed?.length ?? 0) <= word.length);
  return made && { expression: made.expression, unit: made.unit, known: false };
}
