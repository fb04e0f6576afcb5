/** The amounts and sizes of a line about a part, apart from its words: `22 and 25 mm rear bars` is two amounts and `rear bars`. */
import type { Dimension } from '../../core/dimensions.js';
import type { Preferences } from '../context.js';
import { type AmountToken, scan, type Token } from '../scan.js';
import { amountsOf, homeUnit, toSI } from '../units.js';

export interface Split {
  /** The line before its values, and after them. */
  readonly words: readonly [string, string];
  /** Each as a line would tell it, with its unit. */
  readonly values: readonly string[];
  /** `24 to 34 psi`: the two values are the ends of a range. */
  readonly range: boolean;
}
type ValueToken = AmountToken | Extract<Token, { is: 'size' | 'rim' }>;
const isValue = (token: Token | undefined): token is ValueToken =>
  token !== undefined && (token.is === 'amount' || token.is === 'size' || token.is === 'rim');
const lists: ReadonlySet<string> = new Set([',', '/', '&', ';', 'and', 'or', 'n', 'plus', 'x', '+']);
const spans: ReadonlySet<string> = new Set(['to', 'through', 'thru', 'until', '-', 'till']);
const isListing = (token: Token): boolean => (token.is === 'word' || token.is === 'mark') && lists.has(token.text);
const isSpan = (token: Token | undefined): boolean =>
  token !== undefined && (token.is === 'word' || token.is === 'mark' || token.is === 'unit') && spans.has(token.text);

/** Numbers that one token stands for, written out. */
function numbersOf(token: AmountToken): readonly string[] {
  const unit = token.unit === undefined ? '' : ` ${token.unit}`;
  if (token.to === undefined && token.slashed === undefined) return [token.text];
  return [token.value, ...(token.to === undefined ? [] : [token.to]), ...(token.slashed ?? [])].map((one) => `${one}${unit}`);
}

/**
 * One run of values with words on either side. Undefined where there is none, or where words stand between the values: then several things
 * are told, or one thing of several facts.
 */
export function splitValues(text: string): Split | undefined {
  const tokens = scan(text);
  const first = tokens.findIndex(isValue);
  if (first < 0) return undefined;
  let last = first;
  let range = false;
  for (let n = first; n < tokens.length; n++) {
    const token = tokens[n]!;
    if (isValue(token)) last = n;
    else if (isSpan(token) && isValue(tokens[n + 1])) range = true;
    else if (!isListing(token)) break;
  }
  const run = tokens.slice(first, last + 1).filter(isValue);
  if (tokens.slice(last + 1).some(isValue)) return undefined;
  if (run.some((token) => token.is === 'amount' && token.to !== undefined)) range = true;
  // The unit is said once for all, mostly with the last.
  const unitOf = (n: number): string | undefined => {
    const amounts = run.filter((token) => token.is === 'amount');
    return run
      .slice(n)
      .concat(amounts.toReversed())
      .flatMap((token) => (token.is === 'amount' && token.unit !== undefined ? [token.unit] : []))[0];
  };
  const values = run.flatMap((token, n) => {
    if (token.is !== 'amount') return [token.text];
    const unit = token.unit === undefined && !token.plural ? unitOf(n) : undefined;
    return numbersOf(token).map((one) => (unit === undefined ? one : `${one} ${unit}`));
  });
  const start = tokens[first]!.at;
  const end = tokens[last]!.at + tokens[last]!.text.length;
  // `from` and `between` belong to the range.
  const before = text.slice(0, start).replace(/\b(?:from|between|anywhere)\s*$/i, '');
  return { words: [before.trim(), text.slice(end).trim()], values, range: range && values.length === 2 };
}

const stepRules: readonly RegExp[] = [
  /,?\s*\b(?:in\s+)?(?:steps?\s+of|increments?\s+of|by|every)\s+(\d[\d.,/ ]*\s*[^\s\d,.;]*)\s*$/i,
  /,?\s*\bin\s+(\d[\d.,/]*\s*[^\s\d,.;]*)\s+(?:steps?|increments?)\b/i,
  /,?\s*\b(\d[\d.,/]*\s*[^\s\d,.;]*)\s+(?:steps|increments)\b/i,
];
/** The step that is told, and the line without it. */
export function stepOf(text: string): { readonly step: AmountToken | undefined; readonly rest: string } {
  for (const pattern of stepRules) {
    const found = pattern.exec(text);
    if (!found) continue;
    const [token, another] = scan(found[1]?.trim() ?? '');
    if (token?.is !== 'amount' || another) continue;
    return { step: token, rest: `${text.slice(0, found.index)} ${text.slice(found.index + found[0].length)}`.replace(/\s+/g, ' ').trim() };
  }
  return { step: undefined, rest: text };
}
/** A step as a difference, SI; bare in the unit of a value that it steps, else in the member's own. Undefined for another dimension. */
export function stepWorth(step: AmountToken, dimension: Dimension, like: string, preferences: Preferences): number | undefined {
  const [sample] = scan(like);
  const unit = step.unit ?? (sample?.is === 'amount' ? sample.unit : undefined);
  if (unit === undefined) return toSI(step.value, homeUnit(dimension, preferences), preferences, true);
  const at = (value: number) => amountsOf(value, unit, preferences).find((one) => one.dimension === dimension)?.si;
  const [some, none] = [at(step.value), at(0)];
  return some === undefined || none === undefined ? undefined : some - none;
}
