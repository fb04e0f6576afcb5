/** An expression as people type it, brought to what mathjs reads; and the limits that hold before anything else looks at it. */

export const longestExpression = 500;
export const deepestBrackets = 30;

/** Names that stand for figures are replaced by identifiers of our own, so that they may have spaces and can't be mistaken for functions. */
export interface Prepared {
  readonly text: string;
  /** From our identifier to the name as it was given. */
  readonly names: ReadonlyMap<string, string>;
}
type Refused = { readonly refused: string };

const fractions: Readonly<Record<string, string>> = {
  '½': '1/2',
  '⅓': '1/3',
  '⅔': '2/3',
  '¼': '1/4',
  '¾': '3/4',
  '⅕': '1/5',
  '⅖': '2/5',
  '⅗': '3/5',
  '⅘': '4/5',
  '⅙': '1/6',
  '⅚': '5/6',
  '⅐': '1/7',
  '⅛': '1/8',
  '⅜': '3/8',
  '⅝': '5/8',
  '⅞': '7/8',
  '⅑': '1/9',
  '⅒': '1/10',
};
const signs: readonly (readonly [RegExp, string])[] = [
  [/[\u00a0\u2000-\u200a\u202f\u205f\u3000]/gu, ' '],
  [/[−‐‑‒–—﹣-]/gu, '-'],
  [/[×·⋅∙✕✖]|\*\s*\*(?!\*)/gu, '*'],
  [/[÷∕⁄]/gu, '/'],
  [/π/gu, ' pi '],
  [/²/gu, '^2'],
  [/³/gu, '^3'],
  [/√\s*(\d+(?:\.\d+)?)/gu, 'sqrt($1)'],
  [/√\s*(?=\()/gu, 'sqrt'],
];

/** How deep the brackets are nested at most; what they hold is not looked at. */
export function depthOf(text: string): number {
  let depth = 0;
  let deepest = 0;
  for (const character of text) {
    if ('([{'.includes(character)) deepest = Math.max(deepest, ++depth);
    else if (')]}'.includes(character)) depth--;
  }
  return deepest;
}

/**
 * `1 000` and `1,000` are a thousand; `0,65` is a decimal. In the brackets of a function a comma parts what it is given, as in `max(1,5)`, unless
 * semicolons do: `max(0,65; 0,7)`.
 */
function plainNumbers(text: string): string {
  const joined = text.replace(/(?<![\d.,])\d{1,3}(?: \d{3})+(?![\d])/gu, (n) => n.replaceAll(' ', ''));
  const inCalls: boolean[] = [];
  let out = '';
  for (let at = 0; at < joined.length; at++) {
    const character = joined[at] ?? '';
    if (character === '(') inCalls.push(/[a-z]\w*\s*$/iu.test(out));
    else if (character === ')') inCalls.pop();
    const inCall = inCalls.at(-1) === true;
    if (character === ';' && inCall) out += ',';
    else if (character === ',' && !(inCall && !joined.includes(';')) && /\d$/u.test(out) && /^\d/u.test(joined.slice(at + 1))) {
      const grouped = /^\d{3}(?!\d)/u.test(joined.slice(at + 1)) && /(?<![\d.])[1-9]\d{0,2}$/u.test(out);
      out += grouped ? '' : '.';
    } else out += character;
  }
  return out;
}

/**
 * Identifiers of ours for names, the longest first, as whole words, before anything else is made of the text: a name may be a quantity as it was typed,
 * `9½ in`. One that begins with a sign is a summand: after another quantity it would otherwise be multiplied with it.
 */
function withIdentifiers(
  expression: string,
  names: Iterable<string>,
): { readonly text: string; readonly own: ReadonlyMap<string, string> } {
  const given = [...names].filter((n) => n.trim() !== '').sort((a, b) => b.length - a.length);
  const own = new Map(given.map((name, at) => [`name_${at}_`, name]));
  if (given.length === 0) return { text: expression, own };
  const identifiers = new Map(given.map((name, at) => [name.normalize('NFC'), `name_${at}_`]));
  const any = [...identifiers.keys()]
    .map((n) => `${/^[\p{L}\p{N}_.]/u.test(n) ? '(?<![\\p{L}\\p{N}_.])' : ''}${n.replace(/[.*+?^${}()|[\]\\/-]/gu, '\\$&')}`)
    .join('|');
  const text = expression.replace(new RegExp(`(?:${any})(?![\\p{L}\\p{N}_])`, 'gu'), (name) => {
    const identifier = identifiers.get(name) ?? name;
    return /^[-−+]/u.test(name) ? ` + ${identifier}` : identifier;
  });
  return { text, own };
}

/** The expression for mathjs, or why it is not looked at. */
export function prepare(expression: string, names: Iterable<string>): Prepared | Refused {
  if (expression.length > longestExpression)
    return { refused: `That sum is ${expression.length} characters long; at most ${longestExpression} can be worked out.` };
  if (depthOf(expression) > deepestBrackets) return { refused: `Those brackets are nested more than ${deepestBrackets} deep.` };
  const { text: named, own } = withIdentifiers(expression.normalize('NFC'), names);
  const text = signs
    .reduce((t, [from, to]) => t.replace(from, to), named.replaceAll('**', '^'))
    .replace(/(\d+)\s*([½⅓⅔¼¾⅕⅖⅗⅘⅙⅚⅐⅛⅜⅝⅞⅑⅒])/gu, (_, whole: string, part: string) => `(${whole}+${fractions[part]})`)
    .replace(/[½⅓⅔¼¾⅕⅖⅗⅘⅙⅚⅐⅛⅜⅝⅞⅑⅒]/gu, (part) => `(${fractions[part]})`)
    // `2 x 3`, as many type it.
    .replace(/(?<=[\d)_])\s*[xX]\s*(?=[\d(.]|name_)/gu, '*');
  return { text: plainNumbers(text), names: own };
}
