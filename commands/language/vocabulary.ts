/** What the catalogs' words say: made once for a catalog, asked for every line. */
import { type Entry, isInput } from '../../core/catalog.js';
import type { Dimension } from '../../core/dimensions.js';
import { isGrammar, placeWords, stem } from '../words.js';
import type { Setting } from './setting.js';

export interface Phrase {
  readonly entry: Entry;
  /** The option that the words say, of a choice. */
  readonly option?: string;
  /** How many words it has. */
  readonly size: number;
}
export interface Vocabulary {
  /** Phrases by their words, in alphabetical order: `frequency ride`. */
  readonly phrases: ReadonlyMap<string, readonly Phrase[]>;
  /** Names that hold a `with`: the words before it, and those after it. */
  readonly withIn: readonly { readonly before: readonly string[]; readonly after: readonly string[] }[];
  /** Every word of them, stemmed. */
  readonly words: ReadonlySet<string>;
  /** The keys of the phrases that hold a word. */
  readonly holding: ReadonlyMap<string, readonly string[]>;
  readonly inputs: readonly Entry[];
  readonly byDimension: ReadonlyMap<Dimension, readonly Entry[]>;
  /** The words by which a line of ours names an entry: they lead to it and, at its own places, to no other. */
  nameOf(entry: Entry): string;
}
/** Words that a phrase may hold and that lines leave out or in. */
export const links: ReadonlySet<string> = new Set('of the a an and in to at on over that which its from for is how what'.split(' '));

export const keyOf = (words: readonly string[]): string => (words.length < 2 ? (words[0] ?? '') : [...words].sort().join(' '));
/** The stems of a phrase that count, each once. */
export function stemsOf(phrase: string): string[] {
  const all = phrase
    .toLowerCase()
    .split(/[^\p{L}\p{N}.]+/u)
    .filter((word) => word !== '')
    .map(stem);
  const kept = all.filter((word) => !links.has(word));
  return [...new Set(kept.length > 0 ? kept : all)];
}

function compile(entries: readonly Entry[]): Vocabulary {
  const phrases = new Map<string, Phrase[]>();
  const words = new Set<string>();
  const holding = new Map<string, string[]>();
  const byDimension = new Map<Dimension, Entry[]>();
  const put = (stems: readonly string[], phrase: Phrase) => {
    const key = keyOf(stems);
    const known = phrases.get(key);
    if (known?.some((one) => one.entry === phrase.entry && one.option === phrase.option)) return;
    if (known) known.push(phrase);
    else {
      phrases.set(key, [phrase]);
      for (const word of new Set(stems)) {
        words.add(word);
        const keys = holding.get(word) ?? [];
        keys.push(key);
        holding.set(word, keys);
      }
    }
  };
  const later: (readonly [readonly string[], Phrase])[] = [];
  const add = (stems: readonly string[], phrase: Phrase) => {
    // `roll stiffness with tire` is not the tire's: the word tells names apart.
    const kept = stems.filter((word) => !isGrammar(word) || word === 'with' || word === 'without');
    if (kept.length === stems.length) put(stems, phrase);
    else if (kept.length > 0) later.push([kept, phrase]);
  };
  const withIn: { before: string[]; after: string[] }[] = [];
  for (const { kind, words: own = [] } of entries)
    for (const phrase of kind === 'structure' ? [] : own) {
      const parts = phrase
        .toLowerCase()
        .split(/[^\p{L}\p{N}.]+/u)
        .map(stem);
      const at = parts.findIndex((word) => word === 'with' || word === 'without');
      const kept = (some: readonly string[]) => some.filter((word) => !isGrammar(word) && !links.has(word));
      if (at > 0) withIn.push({ before: kept(parts.slice(0, at)), after: kept(parts.slice(at + 1)) });
    }
  for (const entry of entries) {
    if (entry.kind === 'structure' || entry.kind === 'place') continue;
    const own = (entry.words ?? []).map(stemsOf);
    for (const stems of own) add(stems, { entry, size: stems.length });
    for (const option of entry.options ?? [])
      for (const word of [option, ...(entry.optionWords?.[option] ?? [])]) {
        const said = stemsOf(word);
        for (const stems of own) add([...stems, ...said], { entry, option, size: stems.length + said.length });
        if (entry.alone?.includes(word)) add(said, { entry, option, size: said.length });
      }
    if (entry.dimension && (isInput(entry) || entry.words)) {
      const alike = byDimension.get(entry.dimension) ?? [];
      alike.push(entry);
      byDimension.set(entry.dimension, alike);
    }
  }
  // Without its little words a phrase may be another entry's own: then it stays that one's.
  for (const [stems, phrase] of later) {
    const taken = phrases
      .get(keyOf(stems))
      ?.some((one) => one.entry !== phrase.entry && one.entry.scope === phrase.entry.scope && isInput(one.entry) === isInput(phrase.entry));
    if (!taken) put(stems, phrase);
  }
  const names = new Map<Entry, string>();
  const inputs = entries.filter(isInput);
  return {
    phrases,
    withIn,
    words,
    holding,
    inputs,
    byDimension,
    nameOf(entry) {
      const known = names.get(entry);
      if (known !== undefined) return known;
      // Its own word that no other entry of its kind has which the same places could name, else the plainest one.
      const wide = ({ scope }: Entry) => (scope === 'question' ? 'car' : scope);
      const near = (other: Entry) =>
        wide(other) === wide(entry) || (entry.scope === 'corner' && other.scope === 'axle' && !entry.extensive);
      const rivals = (word: string) =>
        (phrases.get(keyOf(stemsOf(word).filter((one) => !isGrammar(one) || one === 'with' || one === 'without'))) ?? []).filter(
          (one) =>
            one.entry !== entry &&
            isInput(one.entry) === isInput(entry) &&
            (one.entry.kind === 'curve') === (entry.kind === 'curve') &&
            near(one.entry),
        ).length;
      // A number or an end inside a name would be read as one.
      const sayable = (word: string) =>
        !/\d/.test(word) && (entry.scope === 'car' || entry.scope === 'question' || !stemsOf(word).some((one) => placeWords.has(one)));
      const candidates = [...(entry.words ?? [entry.name])].sort((a, b) => Number(sayable(b)) - Number(sayable(a)));
      const name = candidates.find((word) => rivals(word) === 0) ?? candidates[0] ?? entry.name;
      names.set(entry, name);
      return name;
    },
  };
}
const made = new WeakMap<object, Vocabulary>();
export function vocabularyOf(catalog: Setting['catalog']): Vocabulary {
  const known = made.get(catalog);
  if (known) return known;
  const vocabulary = compile(catalog.entries);
  made.set(catalog, vocabulary);
  return vocabulary;
}

export interface VerbPhrase {
  readonly words: readonly string[];
  readonly command: Setting['commands'][number];
}
export interface Verbs {
  /** By first word, longest first. */
  readonly starting: ReadonlyMap<string, readonly VerbPhrase[]>;
  readonly named: ReadonlyMap<string, Setting['commands'][number]>;
}
const madeVerbs = new WeakMap<object, Verbs>();
export function verbsOf(commands: Setting['commands']): Verbs {
  const known = madeVerbs.get(commands);
  if (known) return known;
  const starting = new Map<string, VerbPhrase[]>();
  for (const command of commands)
    for (const phrase of [command.word, ...command.also]) {
      const words = phrase.toLowerCase().replaceAll("'", '').split(/\s+/);
      const first = words[0] ?? '';
      const alike = starting.get(first) ?? [];
      alike.push({ words, command });
      alike.sort((a, b) => b.words.length - a.words.length);
      starting.set(first, alike);
    }
  const verbs = { starting, named: new Map(commands.map((command) => [command.word, command])) };
  madeVerbs.set(commands, verbs);
  return verbs;
}
