/** A line as the reader sees it: tokens with the classes that decide what it costs to leave them unexplained. */
import { everyday } from '../language/everyday.js';
import type { Setting } from '../language/setting.js';
import { type AmountToken, scan, type Token } from '../scan.js';
import { nearest } from '../spelling.js';
import { meaningsOf } from '../units.js';
import { fillers, littleWords, placeWords, stem } from '../words.js';
import { changes, digits, mine, nones, ordinals, parts, quiet, relations, synonyms } from './lexicon.js';
import { type NameIndex, nameIndexOf } from './names.js';
import type { prices } from './prices.js';

export type TokenClass = keyof typeof prices.left;
export interface ReadToken {
  readonly token: Token;
  readonly kind: Token['is'];
  /** Lower case, without apostrophes; of a mark, the mark. */
  readonly text: string;
  /** The word in the singular, and the words of the catalogs that it stands for. */
  readonly stems: readonly string[];
  /** Words of the catalogs that it may be a slip for. */
  readonly near: readonly string[];
  readonly className: TokenClass;
  /** Where it ends in the tidied line. */
  readonly end: number;
}
const relationWords = new Set(relations.flatMap(([, phrases]) => phrases.flatMap((phrase) => phrase.split(' '))));
/** Shorter words are not mended: `wing` is no slip for `ring`. */
const shortestMended = 4;

/** Glued forms that people type: `et35`, `mr.68`, `lf650`: a word and the number behind it. */
const glued = /^([a-z]{1,6}?)(\d+(?:\.\d+)?)$/;
const gluedWords: ReadonlySet<string> = new Set([
  'et',
  'mr',
  'mu',
  'lf',
  'rf',
  'lr',
  'rr',
  'fl',
  'fr',
  'rl',
  'wb',
  'cg',
  'fd',
  'f',
  'r',
  'front',
  'rear',
  'id',
  'od',
]);
function unglued(token: Token): readonly Token[] {
  if (token.is !== 'word') return [token];
  const found = glued.exec(token.text);
  const [, word, number] = found ?? [];
  if (word === undefined || number === undefined || !gluedWords.has(word)) return [token];
  const at = token.at + word.length;
  const amount: AmountToken = { is: 'amount', at, text: number, value: Number(number) };
  return [{ is: 'word', at: token.at, text: word, typed: word }, amount];
}
export interface Known {
  /** Names of cars, members and setups, lower case. */
  readonly names: ReadonlySet<string>;
  readonly index: NameIndex;
  readonly commandWords: ReadonlySet<string>;
}
export function knownOf(setting: Setting): Known {
  const names = new Set(
    [
      ...setting.cars.map(({ name }) => name),
      ...setting.others.map(({ name }) => name),
      ...setting.members.map(({ name }) => name),
      ...setting.setups,
    ].map((name) => name.toLowerCase()),
  );
  return { names, index: nameIndexOf(setting.catalog), commandWords: commandWordsOf(setting.commands) };
}
const commandWordSets = new WeakMap<object, ReadonlySet<string>>();
function commandWordsOf(commands: Setting['commands']): ReadonlySet<string> {
  const known = commandWordSets.get(commands);
  if (known) return known;
  const made = new Set(commands.flatMap(({ word, also }) => [word, ...also].flatMap((phrase) => phrase.replaceAll("'", '').split(/\s+/))));
  commandWordSets.set(commands, made);
  return made;
}
export const isName = (word: string, { names }: Known): boolean => names.has(word) || (word.endsWith('s') && names.has(word.slice(0, -1)));

export function tokensOf(text: string, setting: Setting): readonly ReadToken[] {
  const known = knownOf(setting);
  return scan(text)
    .flatMap(unglued)
    .map((token) => asRead(token, known));
}
function asRead(token: Token, known: Known): ReadToken {
  const typed = token.is === 'word' ? token.typed : token.text;
  const base = { token, kind: token.is, text: token.text, near: [], end: token.at + typed.length };
  if (token.is === 'mark')
    return token.text === '%' ? { ...base, stems: ['percent'], className: 'mark' } : { ...base, stems: [], className: 'mark' };
  if (token.is !== 'word') {
    const className =
      token.is === 'amount'
        ? 'amount'
        : token.is === 'size' || token.is === 'rim'
          ? 'size'
          : token.is === 'gear'
            ? 'gear'
            : token.is === 'unit'
              ? 'unit'
              : 'name';
    return { ...base, stems: [], className };
  }
  const { text } = token;
  const singular = stem(text);
  const stems = [singular, ...(synonyms.get(text) ?? synonyms.get(singular) ?? [])];
  const className = classOf(text, singular, known);
  const near = className === 'unknown' ? slipsFor(text, singular, known) : [];
  return { ...base, stems, near, className };
}
function classOf(text: string, singular: string, known: Known): TokenClass {
  if (isName(text, known)) return 'name';
  if (placeWords.has(text)) return 'place';
  if (fillers.has(text) || quiet.has(text))
    return known.index.words.has(singular) && !quiet.has(text) && !fillers.has(text) ? 'catalog' : 'filler';
  if (known.index.words.has(singular) || synonyms.has(text) || synonyms.has(singular)) return 'catalog';
  if (littleWords.has(text)) return 'little';
  if (changes.has(text) || nones.has(text)) return 'change';
  if (relationWords.has(text) || mine.has(text)) return 'relation';
  if (digits.has(text) || parts.has(text) || ordinals.has(text)) return 'everyday';
  if (everyday.has(text) || known.commandWords.has(text)) return 'everyday';
  if (meaningsOf(text).length > 0) return 'unit';
  return 'unknown';
}
const slips = new WeakMap<NameIndex, Map<string, readonly string[]>>();
const rememberedSlips = 4000;
/** What a word that nobody knows may be a slip for; remembered, since people repeat their slips. */
function slipsFor(text: string, singular: string, { index }: Known): readonly string[] {
  const memory = slips.get(index) ?? new Map<string, readonly string[]>();
  slips.set(index, memory);
  const found = memory.get(text);
  if (found) return found;
  const made = text.length < shortestMended ? [] : mended(text, singular, index);
  if (memory.size < rememberedSlips) memory.set(text, made);
  return made;
}
function mended(text: string, singular: string, index: NameIndex): readonly string[] {
  const near = nearest(text, index.mendable);
  const found = near.length > 0 || singular === text ? near : nearest(singular, index.mendable);
  return (found.length > 0 ? found : inflectedFrom(text, index)).slice(0, 3);
}
const endings = ['ring', 'ning', 'ting', 'red', 'ned', 'ted', 'ing', 'ed', 'er', 'es', 'ly', 'd', 'n'];
/** `transferred`, `lowering`, `rises`: the word of the catalogs that it is a form of. */
function inflectedFrom(text: string, index: NameIndex): readonly string[] {
  for (const ending of endings) {
    const root = text.slice(0, -ending.length);
    if (!text.endsWith(ending) || root.length < shortestMended) continue;
    const word = [root, `${root}e`].find((one) => index.words.has(one));
    if (word !== undefined) return [word];
  }
  return [];
}
