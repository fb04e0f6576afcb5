/** Numbers in a sum, as people type them: `1,000`, `1 000`, `0,65`, `.5`, `2e-3`, `9 1/2`, `3/8`. */
import type { Preferences } from '../context.js';

export interface NumberRead {
  readonly value: number;
  readonly end: number;
  /** `1,500` where commas part numbers: one, or two. */
  readonly unclear?: true;
}
export interface NumberManner {
  readonly decimalMark: Preferences['decimalMark'];
  /** In the brackets of a function a comma parts what it is given. */
  readonly commaParts: boolean;
}

/** A whole number and less than one, with a space between; with a hyphen only what a ruler has. */
const mixed = /(\d{1,4})(?: (\d{1,2})\/(\d{1,2})|-(\d{1,2})\/(2|4|8|16|32|64))(?![\d.]|[,/]\d)/y;
const fraction = /(\d+(?:\.\d+)?)\/(\d+(?:\.\d+)?)/y;
const exponent = String.raw`(?:e[+-]?\d{1,4}(?!\w))?`;
const spaced = /(\d{1,3}(?: \d{3})+)(?!\d)((?:\.\d+)?)/y;
const grouped = { '.': /([1-9]\d{0,2}(?:,\d{3})+)(?!\d)((?:\.\d+)?)/y, ',': /([1-9]\d{0,2}(?:\.\d{3}){2,})(?!\d)((?:,\d+)?)/y };
const pointed = new RegExp(String.raw`(?:\d+\.?\d*|\.\d+)${exponent}`, 'iy');
const withComma = new RegExp(String.raw`(?:\d+,\d+|,\d+)(?![\d,])${exponent}`, 'iy');

const at = (rule: RegExp, text: string, from: number): RegExpExecArray | null => {
  rule.lastIndex = from;
  return rule.exec(text);
};
const digits = (text: string): string => text.replace(/[^\d]/g, '');

/** The number that begins at a place, or undefined. */
export function numberAt(text: string, from: number, { decimalMark, commaParts }: NumberManner): NumberRead | undefined {
  const whole = (read: RegExpExecArray): NumberRead => {
    const [all, group = '', rest = ''] = read;
    return { value: Number(digits(group) + rest.replace(',', '.')), end: from + all.length };
  };
  const decimal = (read: RegExpExecArray): NumberRead => ({
    value: Number(read[0].replace(',', '.')),
    end: from + read[0].length,
  });
  const bySpace = at(spaced, text, from);
  if (bySpace) return whole(bySpace);
  if (!commaParts) {
    const byMark = at(grouped[decimalMark], text, from);
    if (byMark) return whole(byMark);
    const comma = at(withComma, text, from);
    if (comma) return decimal(comma);
  }
  const point = at(pointed, text, from);
  if (!point) return undefined;
  return commaParts && at(grouped[decimalMark], text, from) ? { ...decimal(point), unclear: true } : decimal(point);
}
/**
 * The fraction that begins at a place: `9 1/2` is one number anywhere; `9-1/2` and `100/2` are only before a unit, where `9 - 1/2 in` or `100/(2 in)` can't
 * be meant.
 */
export function fractionAt(text: string, from: number): (NumberRead & { readonly onlyBeforeUnit: boolean }) | undefined {
  const tape = at(mixed, text, from);
  if (tape) {
    const [all, whole, spacedTop, spacedBottom, top = spacedTop, bottom = spacedBottom] = tape;
    if (Number(top) < Number(bottom))
      return {
        value: Number(whole) + Number(top) / Number(bottom),
        end: from + all.length,
        onlyBeforeUnit: all.includes('-'),
      };
  }
  const parts = at(fraction, text, from);
  const [all = '', top, bottom] = parts ?? [];
  if (!parts || Number(bottom) === 0) return undefined;
  return { value: Number(top) / Number(bottom), end: from + all.length, onlyBeforeUnit: true };
}
