/** Words and signs between the numbers of a sum. */

const signs: ReadonlyMap<string, string> = new Map([
  ...['+', '-', '*', '/', '^'].map((sign): [string, string] => [sign, sign]),
  ['·', '*'],
  ['∗', '*'],
  ['×', '*'],
  ['÷', '/'],
  ['∕', '/'],
]);
const words: readonly (readonly [string, string])[] = [
  ['plus', '+'],
  ['minus', '-'],
  ['times', '*'],
  ['multiplied by', '*'],
  ['of', '*'],
  ['over', '/'],
  ['divided by', '/'],
];
const powers: readonly (readonly [string, string])[] = [
  ['squared', '2'],
  ['cubed', '3'],
];
const inWord = /[\p{L}\p{N}_]/u;

/** The operator at a place after an operand, as a sign or a word; `2 x 3` and `2x3`, as many type it, too. */
export function operatorAt(lower: string, at: number): { readonly sign: string; readonly end: number } | undefined {
  const sign = signs.get(lower[at] ?? '');
  if (sign !== undefined) return { sign, end: at + 1 };
  if (lower[at] === 'x' && !/[\p{L}_]/u.test(lower[at + 1] ?? '')) return { sign: '*', end: at + 1 };
  for (const [word, stands] of words)
    if (lower.startsWith(word, at) && !inWord.test(lower[at + word.length] ?? '')) return { sign: stands, end: at + word.length };
  return undefined;
}
/** `squared`, `cubed`. */
export function powerAt(lower: string, at: number): { readonly power: string; readonly end: number } | undefined {
  for (const [word, power] of powers)
    if (lower.startsWith(word, at) && !inWord.test(lower[at + word.length] ?? '')) return { power, end: at + word.length };
  return undefined;
}
/** Whether an operand begins at a place, after spaces: then `%` before it parts with a remainder. */
export function startsOperand(lower: string, from: number): boolean {
  const at = from + (/^ */.exec(lower.slice(from))?.[0].length ?? 0);
  return /[\d.(√\p{L}_]/u.test(lower[at] ?? '') && operatorAt(lower, at) === undefined;
}

const run = /[\p{L}_][\p{L}\p{N}_']*(?: (?:[1-8](?:st|nd|rd|th)|[\p{L}_][\p{L}\p{N}_']*)(?![\p{L}\p{N}_]))*/uy;
const ordinals = /[1-8](?:st|nd|rd|th)(?: [\p{L}_][\p{L}\p{N}_']*)+/iuy;
const matched = (rule: RegExp, text: string, at: number): string | undefined => {
  rule.lastIndex = at;
  return rule.exec(text)?.[0];
};
/** Words in a row from a place on: `rear spring`, `sqrt`. */
export const wordRun = (text: string, at: number): string | undefined => matched(run, text, at);
/** `1st gear ratio`. */
export const ordinalRun = (text: string, at: number): string | undefined => matched(ordinals, text, at);

/** More words than any figure's name has. */
const mostWords = 12;
/** The beginnings of a row of words, the longest first. */
export function wordsOf(row: string): readonly string[] {
  const all = row.split(' ').slice(0, mostWords);
  return all.map((_, at) => all.slice(0, all.length - at).join(' '));
}
