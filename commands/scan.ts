/** One tidied line into tokens: amounts, sizes, gears, words, names, marks. Every rule is tried at one place and is bounded, so time is linear in the line. */
import { spellingAt } from './language/spelled.js';

export interface AmountToken {
  readonly is: 'amount';
  readonly at: number;
  readonly text: string;
  readonly value: number;
  /** What it would be if the comma or point were the other kind of mark: `1.300` in metric hands. */
  readonly other?: number;
  /** The other end of `300-800`. */
  readonly to?: number;
  /** The rest of `500/600` or `742/699/571/598`. */
  readonly slashed?: readonly number[];
  /** The unit's spelling. */
  readonly unit?: string;
  /** Written before the number: a plus may be a change, a minus may be one where nothing is below zero. */
  readonly sign?: '+' | '-';
  /** The minus stands alone, with spaces: `spring - 50`. */
  readonly apart?: true;
  /** `350s`, `4.10s`: the parts that are called by that number. */
  readonly plural?: true;
  /** A letter for an end stuck to it: `450f`. */
  readonly end?: 'front' | 'rear';
  /** A comma was read as the decimal mark. */
  readonly comma?: true;
  /** `" in"` with a space: inches, or the little word. */
  readonly soft?: true;
}
export type Token =
  | AmountToken
  | { readonly is: 'size' | 'rim' | 'who' | 'quoted' | 'unit' | 'mark'; readonly at: number; readonly text: string }
  | { readonly is: 'gear'; readonly at: number; readonly text: string; readonly gear: string }
  | { readonly is: 'word'; readonly at: number; readonly text: string; readonly typed: string };

/** A number too long to mean anything; the reader refuses it by name. */
export const mostDigits = 15;

const number = String.raw`(?:[1-9]\d{0,2}(?:,\d{3})+(?!\d)(?:\.\d{1,15})?|\d{1,40}(?:[.,]\d{1,40})?|[.,]\d{1,40})`;
/** Fractions as rulers have them: 3/8, 15/16. 34/32 and 30/32 are two numbers: a fraction of inches is small, and in lowest terms. */
const fractions = [2, 3, 4, 8, 16, 32, 64].map((bottom) => {
  const tops = Array.from({ length: Math.max(9, bottom - 1) }, (_, n) => n + 1).filter((top) => bottom === 3 || top % 2 === 1);
  return `(?:${tops.reverse().join('|')})\\/${bottom}`;
});
const fraction = String.raw`(?:${fractions.join('|')})(?!\d|\/|[.,]\d)`;
const mixed = String.raw`\d{1,4}[ -]${fraction}`;
const amount = new RegExp(`([-+]?)(${mixed}|${fraction}|${number})`, 'y');
const plain = new RegExp(number, 'y');
const rest = new RegExp(`(?:${mixed}|${fraction}|${number})`, 'y');
const gear = /([1-8])(?:st|nd|rd|th)(?![\p{L}\p{N}])/iuy;
const word = /[\p{L}_][\p{L}\p{M}\p{N}_]*(?:'[\p{L}]+)?'?/uy;
const who = /@[\p{L}\p{N}._=:/-]+/uy;
const quoted = /'(\p{L}[^'"]{0,40})'(?![\p{L}\p{N}])|"(\p{L}[^"]{0,40})"/uy;
const size = new RegExp(
  [
    // 245/40R17 91W, P205/50-15, 9999/1R17
    String.raw`(?:p|lt|st|t)?\d{2,4} ?\/ ?\d{1,3}(?: ?[a-z]?(?:rf|r|d|b) ?-?|-) ?\d{2,3}(?:\.5)?(?:lt|c)?(?: ?\d{2,3}(?:\/\d{2,3})?[a-z](?![a-z]))?(?: xl)?(?![\w/])`,
    // 31x10.50R15LT, 23.0x8.0-13
    String.raw`\d{2}(?:\.\d{1,2})? ?x ?\d{1,2}(?:\.\d{1,2})? ?(?:r|b|d|-) ?\d{2}(?:\.5)?(?:lt)?(?: ?\d{2,3}[a-z](?![a-z]))?(?![\w/])`,
    // 175R13, 185R14C
    String.raw`\d{3} ?(?:[shvz]?r) ?1\d(?:c|lt)?(?: ?\d{2,3}[a-z](?![a-z]))?(?![\w/])`,
  ].join('|'),
  'iy',
);
/** Three numbers that can only be a tire: 225 45 16, 245-40-17, 205/50 15. */
const spelledSize = /(?:p|lt)?([1-3]\d5)[ /-]([2-9][05])[ /-](1[0-9]|2[0-4])(?!\d|[.,/]\d|\w)/iy;
const rim = /\d{1,2}(?:\.5)? ?x ?\d{1,2}(?:\.\d{1,2})?(?: ?jj?)?(?: ?(?:et ?[-+]?|[-+])\d{1,3}(?:\.\d)?)?(?![\w./])/iy;
const beforeUnit = new Set(['in', 'to', 'into', 'as', 'and']);
const notUnits = new Set(['n', 'w', 'v']);
/** After these, `in` was not inches. */
const notInches = /^ (?:[1-8](?:st|nd|rd|th)(?!\w)|gear\b|the\b|my\b|metric\b|us\b|imperial\b|one\b|a\b)/;

/** The number of a text that the rules above accept, and its other meaning. */
export function numberOf(text: string): { readonly value: number; readonly other?: number; readonly comma?: true } {
  const parts = /^([-+]?)(?:(\d+)[ -])?(\d+)\/(\d+)$/.exec(text);
  if (parts) {
    const [, sign, whole = '0', top = '0', bottom = '1'] = parts;
    return { value: (sign === '-' ? -1 : 1) * (Number(whole) + Number(top) / Number(bottom)) };
  }
  if (/^[-+]?[1-9]\d{0,2}(?:,\d{3})+(?:\.\d+)?$/.test(text)) {
    const value = Number(text.replaceAll(',', ''));
    return /^[-+]?[1-9]\d{0,2},\d{3}$/.test(text) ? { value, other: Number(text.replace(',', '.')) } : { value };
  }
  if (text.includes(',')) return { value: Number(text.replace(',', '.')), comma: true };
  if (/^[-+]?[1-9]\d{0,2}\.\d{3}$/.test(text)) return { value: Number(text), other: Number(text.replace('.', '')) };
  return { value: Number(text) };
}
const at = (rule: RegExp, text: string, from: number): RegExpExecArray | null => {
  rule.lastIndex = from;
  return rule.exec(text);
};
const isDigit = (c: string | undefined): boolean => c !== undefined && c >= '0' && c <= '9';
const startsNumber = (text: string, at: number): boolean => isDigit(text[at]) || (text[at] === '.' && isDigit(text[at + 1]));

/** The unit behind a number that ends at `from`, and where it ends. */
function unitBehind(
  text: string,
  lower: string,
  from: number,
): { readonly spelling: string; readonly end: number; readonly soft: boolean } | undefined {
  const spaced = lower[from] === ' ';
  const start = spaced ? from + 1 : from;
  const spelling = spellingAt(lower, start);
  if (spelling === undefined) return undefined;
  const end = start + spelling.length;
  // `2640 lb in kg`: a weight, and the unit that it is wanted in.
  if (spelling.endsWith(' in') && lower[end] === ' ') {
    const wanted = spellingAt(lower, end + 1);
    const beyond = wanted === undefined ? undefined : lower.slice(end + 1 + wanted.length).trim();
    if (beyond === '' || beyond === '?') return { spelling: spelling.slice(0, -3), end: end - 3, soft: false };
  }
  if (!spaced) return { spelling, end, soft: false };
  // `375 n .71` joins, `375 N` is a force.
  if (notUnits.has(spelling) && text[start] === spelling) return undefined;
  if (spelling !== 'in') return { spelling, end, soft: false };
  const after = lower.slice(end, end + 12);
  if (notInches.test(after)) return undefined;
  // "3/8 in mm": the number is bare; "3/8 in in mm": it is in inches.
  if (after.startsWith(' ') && !after.startsWith(' in ')) {
    const next = spellingAt(lower, end + 1);
    const last = next === undefined ? undefined : lower.slice(end + 1 + next.length).trim();
    if (next !== undefined && (last === '' || last === '?') && !/^(?:"|')/.test(next)) return undefined;
  }
  // At the end of the line, or before a sign, it is inches and nothing else.
  return { spelling, end, soft: /^ \p{L}/u.test(after) };
}

function amountAt(text: string, lower: string, from: number): { readonly token: AmountToken; readonly end: number } | undefined {
  const found = at(amount, text, from);
  if (!found) return undefined;
  const [whole, sign = '', digits = ''] = found;
  const before = text[from - 1];
  if (sign !== '' && before !== undefined && !/[\s(:,=]/.test(before)) return undefined;
  const read = numberOf(digits);
  let value = sign === '-' ? -read.value : read.value;
  let end = from + whole.length;
  let to: number | undefined;
  const slashed: number[] = [];

  // 300-800 and 300 - 800, but not 450 -50.
  const dash = / - (?=[\d.,])|-(?=[\d.,])|\.\.(?=\d)/y;
  const joined = at(dash, text, end);
  if (joined && !digits.includes('/')) {
    const second = at(rest, text, end + joined[0].length);
    if (second) {
      to = numberOf(second[0]).value;
      end = end + joined[0].length + second[0].length;
    }
  }
  while (to === undefined && text[end] === '/' && startsNumber(text, end + 1) && slashed.length < 8) {
    const next = at(plain, text, end + 1);
    if (!next) break;
    slashed.push(numberOf(next[0]).value);
    end += 1 + next[0].length;
  }

  let unit: string | undefined;
  let plural = false;
  let soft = false;
  let side: 'front' | 'rear' | undefined;
  const behind = unitBehind(text, lower, end);
  if (behind) {
    const attachedTo = lower[end] !== ' ';
    if (behind.spelling === 's' && attachedTo) plural = true;
    if (behind.spelling === 'f') side = 'front';
    unit = behind.spelling;
    soft = behind.soft;
    end = behind.end;
    const second = compound(text, lower, unit, end);
    if (second && to === undefined) {
      value = Math.abs(value) * second.times + second.plus;
      if (sign === '-') value = -value;
      unit = second.unit;
      end = second.end;
      soft = false;
    }
    // 450lbs and 245s are taken by the units; 4.10's is not.
  } else if (/^'s(?!\w)/.test(lower.slice(end, end + 3))) {
    plural = true;
    end += 2;
  } else if (lower[end] === 'r' && !/[\p{L}\p{N}]/u.test(lower[end + 1] ?? '')) {
    side = 'rear';
    end += 1;
  }
  const token: AmountToken = {
    is: 'amount',
    at: from,
    text: text.slice(from, end),
    value,
    ...(read.other === undefined ? {} : { other: sign === '-' ? -read.other : read.other }),
    ...(to === undefined ? {} : { to }),
    ...(slashed.length > 0 ? { slashed } : {}),
    ...(unit === undefined || (plural && unit === 's') ? {} : { unit }),
    ...(sign === '+' || sign === '-' ? { sign } : {}),
    ...(plural ? { plural: true as const } : {}),
    ...(side ? { end: side } : {}),
    ...(read.comma ? { comma: true as const } : {}),
    ...(soft ? { soft: true as const } : {}),
  };
  return { token, end };
}
/** The inches of 5ft 8in, the minutes of 2° 30': what to multiply the first number by, what to add, and the unit of the sum. */
function compound(text: string, lower: string, unit: string, from: number) {
  const feet = unit === 'ft' || unit === "'" || unit === 'foot' || unit === 'feet';
  if (!feet && unit !== '°' && unit !== 'deg') return undefined;
  const second = at(rest, text, text[from] === ' ' ? from + 1 : from);
  const behind = second && unitBehind(text, lower, second.index + second[0].length);
  const wanted = feet ? ['in', '"', 'inch', 'inches'] : ["'", 'min', 'minutes'];
  if (!behind || !wanted.includes(behind.spelling)) return undefined;
  const { value } = numberOf(second[0]);
  return feet ? { times: 12, plus: value, unit: 'in', end: behind.end } : { times: 1, plus: value / 60, unit: '°', end: behind.end };
}

/** The tokens of a tidied line, in order. */
export function scan(text: string): Token[] {
  const lower = text.toLowerCase();
  const tokens: Token[] = [];
  let from = 0;
  let last: Token | undefined;
  const push = (token: Token, end: number) => {
    tokens.push(token);
    last = token;
    from = end;
  };
  while (from < text.length) {
    const c = text[from] ?? '';
    if (c === ' ') {
      from++;
      continue;
    }
    const digit = isDigit(c) || ((c === '-' || c === '+') && (isDigit(text[from + 1]) || /[.,]/.test(text[from + 1] ?? '')));
    const pointed = (c === '.' || c === ',') && isDigit(text[from + 1]) && !isDigit(text[from - 1]);
    const letter = /[\p{L}_]/u.test(c);
    if (isDigit(c) || letter) {
      const found = at(size, text, from) ?? at(spelledSize, text, from);
      if (found) {
        push({ is: 'size', at: from, text: found[0] }, from + found[0].length);
        continue;
      }
    }
    if (isDigit(c)) {
      const wheel = at(rim, text, from);
      if (wheel) {
        push({ is: 'rim', at: from, text: wheel[0] }, from + wheel[0].length);
        continue;
      }
      const ordinal = at(gear, text, from);
      if (ordinal) {
        push({ is: 'gear', at: from, text: ordinal[0], gear: ordinal[1] ?? '1' }, from + ordinal[0].length);
        continue;
      }
    }
    if (digit || pointed) {
      const found = amountAt(text, lower, from);
      if (found) {
        push(found.token, found.end);
        continue;
      }
    }
    // "in mm", "to lb/in", "same in %": a unit that stands alone.
    if (last?.is === 'word' && beforeUnit.has(last.text)) {
      const spelling = spellingAt(lower, from);
      if (spelling !== undefined && !(spelling === 'in' && spellingAt(lower, from + 3) !== undefined && lower[from + 2] === ' ')) {
        push({ is: 'unit', at: from, text: spelling }, from + spelling.length);
        continue;
      }
    }
    const mention = c === '@' ? at(who, text, from) : null;
    if (mention) {
      push({ is: 'who', at: from, text: mention[0] }, from + mention[0].length);
      continue;
    }
    const said = (c === "'" || c === '"') && (from === 0 || /[\s(]/.test(text[from - 1] ?? '')) ? at(quoted, text, from) : null;
    if (said) {
      push({ is: 'quoted', at: from, text: (said[1] ?? said[2] ?? '').trim() }, from + said[0].length);
      continue;
    }
    const letters = letter ? at(word, text, from) : null;
    if (letters) {
      const typed = letters[0];
      const short = typed.toLowerCase() === 'w' && text[from + 1] === '/';
      push(
        { is: 'word', at: from, text: short ? 'with' : typed.toLowerCase().replaceAll("'", ''), typed },
        from + typed.length + (short ? 1 : 0),
      );
      continue;
    }
    const code = text.codePointAt(from) ?? 0;
    const mark = String.fromCodePoint(code);
    push({ is: 'mark', at: from, text: mark }, from + mark.length);
  }
  return tokens;
}
