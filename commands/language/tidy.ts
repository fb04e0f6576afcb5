/** A line as it was typed on some phone, made plain: one kind of quote, minus and space, and no marks that don't show. */

const replacements: readonly (readonly [RegExp, string])[] = [
  [/[“”„‟″〃＂]/g, '"'],
  [/[‘’‚‛′＇`´]/g, "'"],
  [/''/g, '"'],
  [/[−–—‐‑‒―﹣－]/g, '-'],
  [/[º˚]/g, '°'],
  [/[×✕✖]/g, 'x'],
  [/[•∙⋅]/g, '·'],
  [/…/g, ' '],
  [/≈/g, '~'],
];
/** Signs that stand for several plain ones. A fraction stands apart, so that 9½ does not become 91/2; a power keeps its sign, so that 3² does not become 32. */
const composed: readonly (readonly [RegExp, (sign: string) => string])[] = [
  [/[¼-¾⅐-⅞↉]/g, (sign) => ` ${sign.normalize('NFKC').replace('⁄', '/')}`],
  [/⁻?[⁰¹²³⁴-⁹]+/g, (sign) => `^${sign.normalize('NFKC').replace('−', '-')}`],
  [/⁄/g, () => '/'],
];
/** Direction and width marks, controls, variation selectors, lone surrogates: nothing that a member meant to say. */
const unseen = /[\p{Cc}\p{Cf}\p{Co}\p{Cs}\u115f\u1160\u3164\uffa0]|\p{Variation_Selector}|\u034f/gu;

/** Longer lines are refused before anything else looks at them. */
export const longestLine = 400;
const longestRaw = 2000;

/** The tidied line, or undefined when it is too long to be one. */
export function tidy(line: string): string | undefined {
  if (line.length > longestRaw) return undefined;
  let text = line;
  for (const [from, to] of replacements) text = text.replace(from, to);
  for (const [from, to] of composed) text = text.replace(from, to);
  text = text.replace(/\s+/g, ' ').replace(unseen, '').normalize('NFKC').replace(/\s+/g, ' ').trim();
  return text.length > longestLine ? undefined : text;
}
