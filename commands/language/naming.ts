/** Lines that end in names: `keep as wet`, `rename turnip to 'old blue'`, `save brisk 2400 lb`. */

import { nameOf } from '../names.js';
import { type Clause, isStop, type Reading, type Stop } from '../reading.js';
import type { Token } from '../scan.js';
import { fillers, placeWords, stem } from '../words.js';
import { readItems } from './items.js';
import { type Named, Names } from './names.js';
import type { Setting } from './setting.js';
import type { Vocabulary } from './vocabulary.js';

const leading: ReadonlySet<string> = new Set([
  'as',
  'to',
  'it',
  'my',
  'the',
  'car',
  'setup',
  'on',
  'of',
  'this',
  'called',
  'named',
  'how',
  'was',
  'were',
  'a',
  'an',
  'new',
  'with',
  'for',
]);
const parting: ReadonlySet<string> = new Set(['to', 'as', 'into', 'called', 'named', 'is', 'for']);

const wordAt = (tokens: readonly Token[], n: number): string => {
  const token = tokens[n];
  return token?.is === 'word' ? token.text : '';
};
const piece = (tokens: readonly Token[], from: number, to: number, rest: string, base: number): string => {
  const [first, last] = [tokens[from], tokens[to - 1]];
  if (!first || !last) return '';
  if (to - from === 1 && first.is === 'quoted') return first.text;
  const end = tokens[to]?.at;
  return rest
    .slice(first.at - base, end === undefined ? undefined : end - base)
    .trim()
    .replace(/^['"]|['"]$/g, '');
};

export function readNames(
  bare: Omit<Reading, 'names'>,
  tokens: readonly Token[],
  rest: string,
  setting: Setting,
  vocabulary: Vocabulary,
): Reading | Stop {
  const names = new Names(setting, vocabulary);
  return bare.verb === 'save' ? saving(bare, tokens, rest, setting, vocabulary) : naming(bare, tokens, rest, names);
}
function naming(bare: Omit<Reading, 'names'>, tokens: readonly Token[], rest: string, names: Names): Reading {
  const base = tokens[0]?.at ?? 0;
  let from = 0;
  while (from < tokens.length - 1 && leading.has(wordAt(tokens, from))) from++;
  const said: string[] = [];
  const subjects: Clause['subjects'][number][] = [];
  const take = (named: Named) => {
    said.push(named.name);
    subjects.push(named.subject);
  };
  const first = names.at(tokens, from, true);
  if (first) {
    take(first);
    from += first.length;
    while (from < tokens.length && parting.has(wordAt(tokens, from))) from++;
  } else {
    const parted = tokens.findIndex((_, n) => n > from && n < tokens.length - 1 && parting.has(wordAt(tokens, n)));
    if (parted > from) {
      said.push(piece(tokens, from, parted, rest, base));
      from = parted + 1;
    }
  }
  const known = from < tokens.length ? names.at(tokens, from, true) : undefined;
  if (known && from + known.length === tokens.length) take(known);
  else if (from < tokens.length) {
    const text = piece(tokens, from, tokens.length, rest, base);
    if (text !== '' && !(from === tokens.length - 1 && said.length === 0 && leading.has(text.toLowerCase()))) said.push(text);
  }
  return { ...bare, names: said, sides: subjects.length > 0 ? [{ items: [], subjects }] : [] };
}
/** The name of a car and its facts: the name ends where the first amount, or the first word of the catalogs, begins. */
function saving(
  bare: Omit<Reading, 'names'>,
  tokens: readonly Token[],
  rest: string,
  setting: Setting,
  vocabulary: Vocabulary,
): Reading | Stop {
  const base = tokens[0]?.at ?? 0;
  let from = 0;
  while (
    from < tokens.length - 1 &&
    (wordAt(tokens, from) === 'as' ||
      wordAt(tokens, from) === 'my' ||
      wordAt(tokens, from) === 'car' ||
      wordAt(tokens, from) === 'the' ||
      wordAt(tokens, from) === 'a' ||
      wordAt(tokens, from) === 'new' ||
      wordAt(tokens, from) === 'called' ||
      wordAt(tokens, from) === 'named')
  )
    from++;
  const first = tokens[from];
  if (!first) return { ...bare, names: [] };
  const spaced = (token: Token) => token.at === base || rest[token.at - base - 1] === ' ';
  const marked = first.is === 'mark';
  const starts = (token: Token, n: number): boolean => {
    if (n === from && first.is !== 'amount') return false;
    if (token.is === 'amount' || token.is === 'size' || token.is === 'rim' || token.is === 'gear') return spaced(token);
    if (token.is !== 'word' || marked) return false;
    return (
      vocabulary.words.has(stem(token.text)) ||
      placeWords.has(token.text) ||
      token.text === 'with' ||
      (fillers.has(token.text) && n > from && /^(?:is|weighs|has|at)$/.test(token.text))
    );
  };
  const end = first.is === 'quoted' ? from + 1 : tokens.findIndex((token, n) => n >= from && starts(token, n));
  const stop = end < 0 ? tokens.length : end;
  const name = piece(tokens, from, stop, rest, base).replace(/[,:]$/, '').trim();
  if (name === '') return { stop: 'refused', sentence: 'Save it under which name?', line: 'save turnip 2640 lb 52.5% front' };
  const facts = tokens.slice(stop);
  if (facts.length === 0) return { ...bare, names: [name] };
  const checked = nameOf(name, 'car');
  if ('refused' in checked) return { stop: 'refused', sentence: checked.refused, line: 'save turnip 2640 lb 52.5% front' };
  const reading = readItems({ verb: 'save', changes: true, topic: false, text: rest, tokens: facts, names: [checked.name] }, setting);
  return isStop(reading) ? reading : { ...reading, names: [checked.name] };
}
