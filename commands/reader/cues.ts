/** Which requests the words of a line speak for, and how plainly: at its beginning more than further in. */
import { type Act, cues } from './lexicon.js';
import type { ReadToken } from './tokens.js';

export interface Cues {
  /** 0 where nothing speaks for it, 1 where the line begins with its words. */
  readonly for: Readonly<Record<Act, number>>;
  /** A question mark, at the end or before more. */
  readonly question: boolean;
}
const byFirst = new Map<string, { readonly act: Act; readonly words: readonly string[] }[]>();
for (const [act, phrases] of cues)
  for (const phrase of phrases) {
    const words = phrase.split(' ');
    byFirst.set(words[0]!, [...(byFirst.get(words[0]!) ?? []), { act, words }]);
  }
const furtherIn = 0.6;
const beginning: ReadonlySet<string> = new Set([
  'hey',
  'hi',
  'hello',
  'ok',
  'okay',
  'so',
  'and',
  'also',
  'but',
  'um',
  'well',
  'right',
  'please',
  'quick',
  'question',
  'one',
  'yo',
  'stubaxle',
  ',',
  ':',
  'then',
  'now',
  'just',
]);

export function cuesOf(tokens: readonly ReadToken[]): Cues {
  const found: Record<Act, number> = { ask: 0, try: 0, set: 0, find: 0, compare: 0, why: 0, draw: 0, doubt: 0 };
  const start = tokens.findIndex(({ text }) => !beginning.has(text));
  for (const [at, { text, kind }] of tokens.entries()) {
    if (kind !== 'word') continue;
    for (const { act, words } of byFirst.get(text) ?? [])
      if (words.every((word, k) => tokens[at + k]?.text === word)) found[act] = Math.max(found[act], at <= start ? 1 : furtherIn);
  }
  return { for: found, question: tokens.some(({ text }) => text === '?') };
}
