/** A turn of phrase, and what the patterns of all of them are made of. */

export interface Turn {
  readonly said: RegExp;
  readonly means: string | ((...parts: readonly (string | undefined)[]) => string);
  readonly echo?: string;
  /** A line that has it, and what that becomes: the tests hold both to it. */
  readonly line: string;
  readonly becomes: string;
}
/** A length as people write it: `22`, `22mm`, `9 1/2 in`. */
export const amount = String.raw`\d{0,9}[.,]?\d{1,9}(?: \d{1,2}/\d{1,2}|/\d{1,2})? ?(?:mm|cm|inch(?:es)?|in|")?`;
export const bar = '(?:anti-?roll ?bar|sway ?bar|roll bar|arb|bar)s?';
export const link = '(?:end ?|drop ?|bar ?)?links?';
export const rule = (text: string): RegExp => new RegExp(text, 'i');
export const joined = (...parts: readonly (string | undefined)[]): string =>
  parts.filter((part) => part !== undefined && part !== '').join(' ');
export const minus = (value: string): string => `-${value.trim()}`;
