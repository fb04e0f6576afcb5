/** Minutes of work and money in a line: read, and taken out of it, so that what is left names the thing. */
import type { Price } from './part.js';

export interface Effort {
  readonly minutes: number | undefined;
  readonly price: Price | undefined;
  /** The line without them. */
  readonly rest: string;
}
const number = String.raw`(\d{1,4}(?:[.,]\d{1,2})?|\d{1,2} \d\/\d|\d\/\d)`;
const hour = `(?:h|hr|hrs|hour|hours)`;
const minute = `(?:min|mins|minute|minutes)`;
const before = `(?:(?:it )?takes? (?:me )?|in |about |around |roughly |~ ?|for )*`;
const after = `(?: (?:of work|work|per side|a side|each side|to (?:swap|change|fit|set|do|switch|move|adjust|put (?:in|on))(?: (?:it|them|over))?|each|job))*`;
const amountOf = (text: string): number => {
  const whole = /^(?:(\d+) )?(\d)\/(\d)$/.exec(text);
  return whole ? Number(whole[1] ?? 0) + Number(whole[2]) / Number(whole[3]) : Number(text.replace(',', '.'));
};
type Rule = readonly [RegExp, (found: RegExpExecArray) => number];
const rule = (pattern: string, minutes: Rule[1]): Rule => [
  new RegExp(String.raw`[,;.]? ?(?<![\w.])${before}${pattern}(?![\w/])\.?${after}`, 'i'),
  minutes,
];
const times: readonly Rule[] = [
  rule(`${number} ?${hour}(?:,? (?:and )?|)(\\d{1,2}) ?(?:${minute})?`, ([, h = '0', m = '0']) => 60 * amountOf(h) + Number(m)),
  rule(`${number} ?${hour}(?: and a half)`, ([, h = '0']) => 60 * amountOf(h) + 30),
  rule('an? hour and a half', () => 90),
  rule('(?:a )?half an? hour', () => 30),
  rule('(?:a )?quarter of an hour', () => 15),
  rule('(?:an|one) hour', () => 60),
  rule('(?:a|one) minute', () => 1),
  rule(`${number} ?${hour}`, ([, h = '0']) => 60 * amountOf(h)),
  rule(`${number} ?${minute}`, ([, m = '0']) => amountOf(m)),
];
const money = String.raw`(\d{1,5}(?:[.,]\d{1,2})?)`;
const words: Readonly<Record<string, Price['currency']>> = {
  $: '$',
  dollar: '$',
  dollars: '$',
  buck: '$',
  bucks: '$',
  usd: '$',
  '€': '€',
  euro: '€',
  euros: '€',
  eur: '€',
  '£': '£',
  quid: '£',
  gbp: '£',
};
const named = Object.keys(words)
  .map((word) => word.replace('$', String.raw`\$`))
  .join('|');
const each = `(?: (?:each|a pair|for both|for the pair|for the set|all in))?`;
const prices: readonly RegExp[] = [
  new RegExp(String.raw`[,;]? ?(?:for |at |costs? (?:me )?)?(?<sign>[$€£]) ?${money}${each}(?![\w])`, 'i'),
  new RegExp(String.raw`[,;]? ?(?:for |at |costs? (?:me )?)?(?<![\w.])${money} ?(?<sign>${named})(?![\w])${each}`, 'i'),
];
const freely = /[,;]? ?\b(?:for )?(?:free|for nothing)\b/i;

/** Whether a line may tell an effort at all: asked of every line, so it is cheap. */
export const tellsEffort = (line: string): boolean =>
  /[$€£]|\d ?(?:min|hr|hour|h\b|bucks|dollar|euro|quid)|\b(?:an|half an|one) hour\b/i.test(line);

/** @param line as tidied; both are undefined where they were not told. */
export function effortOf(line: string): Effort {
  let rest = line;
  let minutes: number | undefined;
  for (const [pattern, worth] of times) {
    const found = pattern.exec(rest);
    if (!found) continue;
    minutes = (/per side|a side|each side/i.test(found[0]) ? 2 : 1) * worth(found);
    rest = `${rest.slice(0, found.index)} ${rest.slice(found.index + found[0].length)}`;
    break;
  }
  let price: Price | undefined;
  for (const pattern of prices) {
    const found = pattern.exec(rest);
    if (!found) continue;
    const amount = Number((found[1] === found.groups?.sign ? found[2] : found[1])?.replace(',', '.'));
    price = { amount, currency: words[found.groups?.sign?.toLowerCase() ?? ''] ?? '$' };
    rest = `${rest.slice(0, found.index)} ${rest.slice(found.index + found[0].length)}`;
    break;
  }
  rest = rest.replace(freely, ' ');
  return { minutes, price, rest: rest.replace(/\s+/g, ' ').replace(/^[\s,;.:]+|[\s,;.]+$/g, '') };
}
/** `1 h 30 min`, `5 min`. */
export function minutesText(minutes: number): string {
  const [h, m] = [Math.floor(minutes / 60), Math.round(minutes % 60)];
  return [h > 0 ? `${h} h` : '', m > 0 || h === 0 ? `${m} min` : ''].filter((part) => part !== '').join(' ');
}
export const priceText = ({ amount, currency }: Price): string => `${currency}${Number(amount.toFixed(2))}`;
