/** A line as it was typed on some phone, made plain: one kind of quote, minus and space, and no marks that don't show. */

const replacements: readonly (readonly [RegExp, string])[] = [
  // Fractions stand apart, so that 9½ does not become 91/2.
  [/½/g, ' 1/2'],
  [/¼/g, ' 1/4'],
  [/¾/g, ' 3/4'],
  [/⅛/g, ' 1/8'],
  [/⅜/g, ' 3/8'],
  [/⅝/g, ' 5/8'],
  [/⅞/g, ' 7/8'],
  [/⅓/g, ' 1/3'],
  [/⅔/g, ' 2/3'],
  [/[“”„‟″〃＂]/g, '"'],
  [/[‘’‚‛′＇`´]/g, "'"],
  [/''/g, '"'],
  [/[−–—‐‑‒―﹣－]/g, '-'],
  [/[º˚]/g, '°'],
  [/[×✕✖]/g, 'x'],
  [/[•∙⋅]/g, '·'],
  [/⁄/g, '/'],
  [/…/g, ' '],
  [/≈/g, '~'],
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
  text = text.replace(/\s+/g, ' ').replace(unseen, '').normalize('NFKC').replace(/\s+/g, ' ').trim();
  return text.length > longestLine ? undefined : text;
}
