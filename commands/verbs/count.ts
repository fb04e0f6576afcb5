/** How many: `3`, `the last three changes`, `twice`; and what is no number of anything. */

const words: ReadonlyMap<string, number> = new Map(
  [
    ['one', 'once'],
    ['two', 'twice', 'couple'],
    ['three', 'thrice'],
    ...['four', 'five', 'six', 'seven', 'eight', 'nine', 'ten'].map((word) => [word]),
  ].flatMap((some, at) => some.map((word): [string, number] => [word, at + 1])),
);
/** Said beside a number of changes, or instead of one. */
const beside: ReadonlySet<string> = new Set(
  'a again back change changes edit edits it last latest line lines my newest now of one please pls previous recent step steps that the these this those times'.split(
    ' ',
  ),
);

/** Whether it is meant as a number, sane or not. */
export const isNumber = (text: string): boolean => /^[-+]?[\d.,]*\d[\d.,]*(?:e[-+]?\d+)?$/iu.test(text);

/**
 * How many are meant: 1 where no number is said.
 * @returns undefined for what is no whole number from 1 to `most`, and for words that say nothing of how many
 */
export function countOf(text: string, most: number): number | undefined {
  const said = text
    .toLowerCase()
    .split(/[\s,;!?]+/)
    .map((word) => word.replace(/\.$/, ''))
    .filter((word) => word !== '');
  const numbers = said.filter((word) => !beside.has(word));
  const [only, another] = numbers;
  if (only === undefined) return 1;
  if (another !== undefined) return undefined;
  const count = /^\d{1,9}$/.test(only) ? Number(only) : words.get(only);
  return count !== undefined && count >= 1 && count <= most ? count : undefined;
}
/** As a refusal quotes it. */
export const shortened = (text: string): string => ([...text].length > 40 ? `${[...text].slice(0, 39).join('')}…` : text);
