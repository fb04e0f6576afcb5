/** Tokens against everything that is known: each becomes an atom, or an unknown word. */
import type { Evidence } from '../../core/catalog.js';
import { beyondWords } from '../beyond.js';
import type { Subject } from '../reading.js';
import type { AmountToken, Token } from '../scan.js';
import { meaningsOf } from '../units.js';
import { allRound, changeWords, everywhere, evidenceWords, fillers, littleWords, placeWords, shortForms, stem } from '../words.js';
import type { Atom } from './atom.js';
import { gathered } from './gathering.js';
import { type Marker, markerAt } from './markers.js';
import { nearKnown } from './mending.js';
import type { Names } from './names.js';
import type { AmountAtom } from './values.js';
import { links, type Vocabulary } from './vocabulary.js';

export interface Atoms {
  readonly atoms: readonly Atom[];
  readonly unknown: readonly string[];
  /** Of unknown words that are as near to one known word as to another: those words. */
  readonly near: ReadonlyMap<string, readonly string[]>;
  readonly echoes: readonly string[];
  readonly mended: boolean;
  readonly evidence?: Evidence;
  readonly wantedUnit?: string;
  readonly question: boolean;
  /** Stems of all words in order, but for articles and prepositions: for subjects that are not built yet. */
  readonly stems: readonly string[];
}
const fractionWords: ReadonlyMap<string, number> = new Map([
  ['half', 0.5],
  ['quarter', 0.25],
]);
const signs: ReadonlySet<string> = new Set([',', ';', '&', '+', '±', '~', '?', '-', ':', '/']);
/** A question begins: what stood before is told. */
const questionWords: ReadonlySet<string> = new Set(['what', 'whats', 'which', 'how']);
const numberAtom = (value: number, text: string, at: number): AmountAtom => ({ is: 'amount', token: { is: 'amount', at, text, value } });

/** Where a mended word is taken to stand: its neighbours don't count. */
const beforeLine = -5;

export interface Manner {
  readonly find: boolean;
  readonly compare: boolean;
}
/** All words in their order, stemmed, but for articles and prepositions. */
export const stemsIn = (tokens: readonly Token[]): string[] =>
  tokens.flatMap((token) => (token.is === 'word' && !links.has(token.text) ? [stem(token.text)] : []));

class Reader {
  readonly atoms: Atom[] = [];
  readonly unknown: string[] = [];
  readonly near = new Map<string, readonly string[]>();
  readonly echoes: string[] = [];
  readonly stems: string[] = [];
  mended = false;
  evidence: Evidence | undefined;
  wantedUnit: string | undefined;
  question = false;
  readonly #tokens: readonly Token[];
  readonly #vocabulary: Vocabulary;
  readonly #names: Names;
  readonly #manner: Manner;
  readonly #beyond: ReadonlySet<string>;

  constructor(tokens: readonly Token[], vocabulary: Vocabulary, names: Names, manner: Manner) {
    this.#tokens = tokens;
    this.#vocabulary = vocabulary;
    this.#names = names;
    this.#manner = manner;
    this.#beyond = beyondWords(vocabulary);
  }
  #word(n: number): string | undefined {
    const token = this.#tokens[n];
    return token?.is === 'word' ? token.text : undefined;
  }
  run(): void {
    const tokens = this.#tokens;
    this.stems.push(...stemsIn(tokens));
    for (let n = 0; n < tokens.length; ) {
      const token = tokens[n]!;
      n += this.#take(token, n);
    }
  }
  /** Reads what starts at a token; says how many tokens it was. */
  #take(token: Token, n: number): number {
    switch (token.is) {
      case 'amount': {
        const { end, ...rest } = token;
        if (end === undefined || !this.#isEnd(token)) this.atoms.push({ is: 'amount', token: rest });
        else {
          const { unit: _, ...bare } = rest;
          this.atoms.push({ is: 'amount', token: bare });
          this.atoms.push({ is: 'place', word: end, places: placeWords.get(end) ?? [], plural: false, all: false });
        }
        return 1;
      }
      case 'size':
      case 'rim':
        this.atoms.push({ is: 'text', text: token.text, kind: token.is });
        return 1;
      case 'gear':
        this.atoms.push({ is: 'gear', gear: token.gear });
        return 1;
      case 'unit':
        this.wantedUnit = token.text;
        return 1;
      case 'mark':
        return this.#mark(token, n);
      case 'who':
      case 'quoted': {
        const before = this.#tokens[n - 1];
        const named = this.#names.at(this.#tokens, n, true);
        if (named) this.#name(named.subject, named.name, before?.is === 'word' && before.text === 'on', false);
        else this.unknown.push(token.text);
        return 1;
      }
      case 'word':
        return this.#takeWord(token.text, token.typed, n);
    }
  }
  /** `450f 350r`: the f is the front where an r stands beside it, or where it can't be a temperature. */
  #isEnd(token: AmountToken): boolean {
    return (
      token.end === 'rear' ||
      this.#tokens.some((one) => (one.is === 'amount' && one.end === 'rear') || (one.is === 'word' && one.text === 'r'))
    );
  }
  #name(subject: Subject, name: string, on: boolean, possessive: boolean): void {
    this.atoms.push({ is: 'subject', subject, name, on, possessive });
  }
  #mark(token: Token, n: number): number {
    const { text } = token;
    const next = this.#tokens[n + 1];
    if (text === '?') this.question = true;
    if (text === ',' || text === ';') this.atoms.push({ is: 'break', joint: ',' });
    if (text === '&') this.atoms.push({ is: 'break', joint: 'and' });
    if (text === '+') {
      const dash = this.#tokens[n + 1];
      const after = this.#tokens[n + 2];
      // +/- 10 lb
      if (dash?.is === 'mark' && dash.text === '/') {
        if (after?.is === 'amount') return this.#tolerance({ ...after, value: Math.abs(after.value) }, 3);
        const minus = this.#tokens[n + 3];
        if (after?.is === 'mark' && after.text === '-' && minus?.is === 'amount') return this.#tolerance(minus, 4);
      }
      this.atoms.push({ is: 'break', joint: '+' });
    }
    if (text === '±' && next?.is === 'amount') return this.#tolerance(next, 2);
    if (text === '~') this.evidence = 'estimated';
    // spring - 50: fifty less.
    if (text === '-' && next?.is === 'amount') {
      this.atoms.push({ is: 'amount', token: { ...next, apart: true, text: `- ${next.text}` } });
      return 2;
    }
    if (text === ':') this.atoms.push({ is: 'to', colon: true });
    if (!signs.has(text) && /[\p{L}\p{N}\p{S}]/u.test(text) && !'=<>^$`|°%"\''.includes(text)) this.unknown.push(text);
    return 1;
  }
  #tolerance(token: AmountToken, length: number): number {
    const last = this.atoms.at(-1);
    if (last?.is === 'amount') this.atoms[this.atoms.length - 1] = { ...last, within: token };
    return length;
  }
  #phraseHere(n: number, words: readonly string[]): boolean {
    return words.every((word, k) => this.#word(n + k) === word || stem(this.#word(n + k) ?? '') === word);
  }
  #takeWord(text: string, typed: string, n: number): number {
    const before = this.#tokens[n - 1];
    const next = this.#tokens[n + 1];
    const stemmed = stem(text);
    const known = this.#vocabulary.words;
    const afterOn = before?.is === 'word' && (before.text === 'on' || before.text === 'of');

    const named = this.#names.at(this.#tokens, n, afterOn);
    if (named) {
      this.#name(named.subject, named.name, afterOn, named.possessive);
      return named.length;
    }
    const everywhereWords = allRound.find((words) => this.#phraseHere(n, words));
    if (everywhereWords || (text === 'all' && next?.is === 'amount' && next.value === 4)) {
      this.atoms.push({ is: 'place', word: 'all', places: everywhere, plural: false, all: true });
      return everywhereWords?.length ?? 2;
    }
    for (const { words, evidence } of evidenceWords)
      if (this.#phraseHere(n, words) && !(words.length === 1 && known.has(stemmed) && next?.is === 'word' && known.has(stem(next.text)))) {
        this.evidence = evidence;
        return words.length;
      }
    if (text === 'give' && this.#word(n + 1) === 'or' && this.#word(n + 2) === 'take') {
      const tolerance = this.#tokens[n + 3];
      if (tolerance?.is === 'amount') return this.#tolerance(tolerance, 4);
    }
    if (text === 'plus' && this.#word(n + 1) === 'or' && this.#word(n + 2) === 'minus') {
      const tolerance = this.#tokens[n + 3];
      if (tolerance?.is === 'amount') return this.#tolerance(tolerance, 4);
    }
    if (text === 'everything' || (text === 'all' && (next === undefined || (next.is === 'word' && placeWords.has(next.text))))) {
      this.atoms.push({ is: 'everything' });
      return 1;
    }
    if (text === 'gear' && next?.is === 'amount' && /^[1-8]$/.test(next.text)) {
      this.atoms.push({ is: 'gear', gear: next.text });
      return 2;
    }
    if (fractionWords.has(text) && !(text === 'quarter' && before?.is === 'word' && before.text === 'three')) {
      const skipped = this.#word(n + 1) === 'a' ? 2 : 1;
      this.atoms.push(numberAtom(fractionWords.get(text) ?? 0, text, this.#tokens[n]?.at ?? 0));
      return skipped;
    }
    if (text === 'three' && stem(this.#word(n + 1) ?? '') === 'quarter') {
      this.atoms.push(numberAtom(0.75, 'three quarters', this.#tokens[n]?.at ?? 0));
      return 2;
    }
    if ((text === 'full' || text === 'empty') && stem(this.#word(n + 1) ?? '') === 'tank') {
      this.atoms.push(numberAtom(text === 'full' ? 1 : 0, text, this.#tokens[n]?.at ?? 0));
      return 1;
    }
    const marker = this.#markerAt(text, n);
    if (marker) {
      this.atoms.push(marker.atom);
      return marker.length;
    }
    if (placeWords.has(text)) {
      const stuck = text === 'f' || text === 'r';
      if (!stuck || before?.is === 'amount' || next?.is === 'amount') {
        this.atoms.push({
          is: 'place',
          word: stem(text),
          places: placeWords.get(text) ?? [],
          plural: text === 'fronts' || text === 'rears',
          all: false,
        });
        return 1;
      }
    }
    if (text === 'both') {
      this.atoms.push({ is: 'place', word: 'both', places: everywhere, plural: false, all: true });
      return 1;
    }
    if (changeWords.has(text) && this.#word(n + 1) === 'than') return 1;
    if (known.has(stemmed) && !(fillers.has(text) && stemmed !== text)) return this.#plain(stemmed, typed);
    if (changeWords.has(text)) return this.#word(n + 1) === 'than' ? 1 : this.#plain(text, typed);
    if (this.#beyond.has(stemmed) && !fillers.has(text)) return this.#plain(stemmed, typed);
    // how many psi is 2.1 bar
    if (text === 'many' && next?.is === 'word' && meaningsOf(next.text).length > 0) {
      this.wantedUnit = next.text;
      return 2;
    }
    if (questionWords.has(text)) {
      this.atoms.push({ is: 'break', joint: ',' });
      return 1;
    }
    if (fillers.has(text)) return 1;
    const short = shortForms.get(text) ?? shortForms.get(stemmed);
    if (short?.every((word) => known.has(word))) {
      for (const word of short) this.#plain(word, typed);
      return 1;
    }
    return this.#unknownWord(text, stemmed, typed);
  }
  #plain(word: string, typed: string): 1 {
    const last = this.atoms.at(-1);
    if (last?.is === 'word' && last.word === word) return 1;
    this.atoms.push({ is: 'word', word, typed });
    return 1;
  }
  #markerAt(text: string, n: number): Marker | undefined {
    return markerAt(text, n, { tokens: this.#tokens, vocabulary: this.#vocabulary, find: this.#manner.find });
  }
  #unknownWord(text: string, stemmed: string, typed: string): number {
    if (littleWords.has(text)) return 1;
    const candidates = nearKnown(text, stemmed, this.#vocabulary);
    const [found, another] = candidates;
    if (found !== undefined && another === undefined) {
      this.mended = true;
      if (!fillers.has(found)) this.echoes.push(`"${typed}" read as ${found}`);
      else this.mended = this.mended && this.echoes.length > 0;
      if (placeWords.has(found))
        this.atoms.push({ is: 'place', word: stem(found), places: placeWords.get(found) ?? [], plural: false, all: false });
      else if (changeWords.has(found)) this.#plain(found, typed);
      else if (!fillers.has(found)) {
        const marker = this.#vocabulary.words.has(found) ? undefined : this.#markerAt(found, beforeLine);
        if (marker) this.atoms.push(marker.atom);
        else this.#plain(found, typed);
      }
      return 1;
    }
    this.unknown.push(typed);
    if (another !== undefined) this.near.set(typed, candidates);
    return 1;
  }
}
export function atomsOf(tokens: readonly Token[], vocabulary: Vocabulary, names: Names, manner: Manner): Atoms {
  const reader = new Reader(tokens, vocabulary, names, manner);
  reader.run();
  return {
    atoms: gathered(reader.atoms),
    unknown: reader.unknown,
    near: reader.near,
    echoes: reader.echoes,
    mended: reader.mended,
    question: reader.question,
    stems: reader.stems,
    ...(reader.evidence ? { evidence: reader.evidence } : {}),
    ...(reader.wantedUnit ? { wantedUnit: reader.wantedUnit } : {}),
  };
}
