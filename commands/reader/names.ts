/** Names of the catalogs, found in a line by their words: all of them, in any order, with little words between; or some of them, at a price. */
import type { Entry } from '../../core/catalog.js';
import type { Setting } from '../language/setting.js';
import { links } from '../language/vocabulary.js';
import { placeWords, stem } from '../words.js';
import { furtherNames } from './lexicon.js';
import { prices } from './prices.js';
import type { ReadToken } from './tokens.js';

interface Phrase {
  readonly stems: readonly string[];
  readonly entry: Entry;
  /** Its place in the entry's own list. */
  readonly rank: number;
  readonly option?: string;
  /** An option that says what it is of by itself: `strut`, not `front`. */
  readonly alone?: boolean;
}
export interface NameIndex {
  readonly byWord: ReadonlyMap<string, readonly Phrase[]>;
  readonly words: ReadonlySet<string>;
  readonly byPath: ReadonlyMap<string, Entry>;
  /** What a slip may be mended to. */
  readonly mendable: readonly string[];
}
/** An entry that a run of words may name, and what it costs to say so. */
export interface Named {
  readonly entry: Entry;
  readonly price: number;
  readonly mended: number;
  readonly missing: number;
}
export interface NamedOption {
  readonly entry: Entry;
  readonly option: string;
  readonly alone: boolean;
  readonly price: number;
}
export interface NameLeaf {
  readonly from: number;
  readonly to: number;
  readonly named: readonly Named[];
  readonly options: readonly NamedOption[];
}
const wordsOf = (phrase: string): readonly string[] => {
  const all = phrase
    .toLowerCase()
    .split(/[^\p{L}\p{N}.]+/u)
    .filter((word) => word !== '')
    .map(stem);
  const kept = all.filter((word) => !links.has(word));
  return [...new Set(kept.length > 0 ? kept : all)];
};
const indices = new WeakMap<object, NameIndex>();
export function nameIndexOf(catalog: Setting['catalog']): NameIndex {
  const known = indices.get(catalog);
  if (known) return known;
  const made = compile(catalog.entries);
  indices.set(catalog, made);
  return made;
}
function compile(entries: readonly Entry[]): NameIndex {
  const byWord = new Map<string, Phrase[]>();
  const byPath = new Map<string, Entry>();
  const add = (text: string, phrase: Omit<Phrase, 'stems'>): void => {
    const stems = wordsOf(text);
    for (const word of stems) {
      const alike = byWord.get(word) ?? [];
      alike.push({ ...phrase, stems });
      byWord.set(word, alike);
    }
  };
  for (const entry of entries) {
    if (entry.kind === 'structure' || entry.kind === 'place') continue;
    byPath.set(entry.path, entry);
    for (const [rank, words] of (entry.words ?? []).entries()) add(words, { entry, rank });
    for (const words of furtherNames.get(entry.path) ?? []) add(words, { entry, rank: 2 });
    for (const option of entry.options ?? [])
      for (const word of [option, ...(entry.optionWords?.[option] ?? [])])
        add(word, { entry, rank: 0, option, alone: entry.alone?.includes(word) === true || word.includes(' ') });
  }
  const words = new Set(byWord.keys());
  const mendable = [...words, ...placeWords.keys(), 'compare', 'with'].filter((word) => word.length > 3);
  return { byWord, words, byPath, mendable };
}

const widest = 7;
const mostBetween = 2;
const mostMissing = 2;
const mostNamed = 12;
/** The names that begin at a token, by where they end. */
export function namesAt(tokens: readonly ReadToken[], from: number, index: NameIndex): readonly NameLeaf[] {
  const first = tokens[from];
  if (!first || (first.kind !== 'word' && first.text !== '%')) return [];
  const phrases = new Set([...first.stems, ...first.near].flatMap((word) => index.byWord.get(word) ?? []));
  const byEnd = new Map<number, Match[]>();
  for (const phrase of phrases) {
    const match = matchAt(tokens, from, phrase);
    if (!match) continue;
    const alike = byEnd.get(match.to) ?? [];
    alike.push(match);
    byEnd.set(match.to, alike);
  }
  return [...byEnd].map(([to, matches]) => leafOf(from, to, matches));
}
interface Match {
  readonly phrase: Phrase;
  readonly to: number;
  readonly missing: number;
  readonly mended: number;
}
function matchAt(tokens: readonly ReadToken[], from: number, phrase: Phrase): Match | undefined {
  const left = new Set(phrase.stems);
  let to = from;
  let mended = 0;
  let between = 0;
  for (let at = from; at < tokens.length && at < from + widest && left.size > 0; at++) {
    const token = tokens[at]!;
    const word = token.kind === 'word' || token.text === '%';
    const said = word ? token.stems.filter((one) => left.has(one)) : [];
    const slip = said.length === 0 ? token.near.find((one) => left.has(one)) : undefined;
    if (said.length > 0 || slip !== undefined) {
      for (const one of slip === undefined ? said : [slip]) left.delete(one);
      if (slip !== undefined) mended++;
      between = 0;
      to = at + 1;
      continue;
    }
    if (at === from) return undefined;
    const skipped = token.className === 'filler' || token.className === 'little' || links.has(token.text);
    if (!skipped || ++between > mostBetween) break;
  }
  const missing = left.size;
  const taken = phrase.stems.length - missing;
  if (taken === 0 || missing > mostMissing || (phrase.option !== undefined && missing > 0)) return undefined;
  return missing > taken ? undefined : { phrase, to, missing, mended };
}
function leafOf(from: number, to: number, matches: readonly Match[]): NameLeaf {
  const named = new Map<Entry, Named>();
  const options: NamedOption[] = [];
  for (const { phrase, missing, mended } of matches) {
    const perMissing = phrase.stems.length > 2 ? prices.name.missingOfLong : prices.name.missing;
    const price = missing * perMissing + mended * prices.name.mended + Math.min(4, phrase.rank) * prices.name.rank;
    if (phrase.option !== undefined) {
      options.push({ entry: phrase.entry, option: phrase.option, alone: phrase.alone === true, price });
      continue;
    }
    const known = named.get(phrase.entry);
    if (!known || price < known.price) named.set(phrase.entry, { entry: phrase.entry, price, mended, missing });
  }
  const cheapest = [...named.values()].sort((a, b) => a.price - b.price).slice(0, mostNamed);
  return { from, to, named: cheapest, options };
}
