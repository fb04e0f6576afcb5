/** Tokens against everything that is known: each becomes an atom, or an unknown word. */
import type { Evidence } from '../../core/catalog.js';
import { beyondWords } from '../beyond.js';
import type { Subject } from '../reading.js';
import type { AmountToken, Token } from '../scan.js';
import { nearest } from '../spelling.js';
import { meaningsOf } from '../units.js';
import {
  allRound,
  between,
  changeWords,
  everywhere,
  evidenceWords,
  fillers,
  forWords,
  isGrammar,
  joints,
  littleWords,
  placeWords,
  shortForms,
  stem,
  withWords,
} from '../words.js';
import type { Names } from './names.js';
import type { AmountAtom, TextAtom } from './values.js';
import { links, type Vocabulary } from './vocabulary.js';

export type Atom =
  | AmountAtom
  | TextAtom
  | { readonly is: 'word'; readonly word: string; readonly typed: string }
  | { readonly is: 'place'; readonly word: string; readonly places: readonly string[]; readonly plural: boolean; readonly all: boolean }
  | { readonly is: 'gear'; readonly gear: string }
  | { readonly is: 'break'; readonly joint: 'and' | ',' | '+' }
  | { readonly is: 'subject'; readonly subject: Subject; readonly name: string; readonly on: boolean; readonly possessive: boolean }
  | { readonly is: 'between'; readonly word: string }
  | { readonly is: 'with'; readonly without: boolean }
  | { readonly is: 'at' }
  | { readonly is: 'for'; readonly word: string }
  | { readonly is: 'from' }
  | { readonly is: 'to'; readonly colon: boolean }
  | { readonly is: 'over' }
  | { readonly is: 'everything' };

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
/** Little words with a part to play, for mending. */
const playing: readonly string[] = [
  'front',
  'rear',
  'left',
  'right',
  'fronts',
  'rears',
  ...changeWords.keys(),
  ...[...fillers].filter((word) => word.length > 2),
  ...[...withWords].filter((word) => word.length > 2),
  'versus',
  'against',
  'instead',
  'everything',
  'measured',
  'about',
  'over',
  'from',
  'and',
  'for',
  'without',
];
/** A question begins: what stood before is told. */
const questionWords: ReadonlySet<string> = new Set(['what', 'whats', 'which', 'how']);
const numberAtom = (value: number, text: string, at: number): AmountAtom => ({ is: 'amount', token: { is: 'amount', at, text, value } });

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
  /** Whether a `from` with an amount stands before a token: `from the 9 in hole to the 8 in hole`. */
  #moves(n: number): boolean {
    const from = this.#tokens.findIndex((token) => token.is === 'word' && token.text === 'from');
    return from >= 0 && from < n && n - from <= 5 && this.#tokens.slice(from, n).some((token) => token.is === 'amount');
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
    if (this.#marker(text, n)) return this.#marker(text, n, true) ?? 1;
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
  /** `roll stiffness with tire`: the word is part of a name, and no amount follows that it could bring. */
  #withinName(n: number): boolean {
    const stems = (tokens: readonly Token[]) =>
      tokens.flatMap((token) => (token.is === 'word' && !isGrammar(token.text) ? [stem(token.text)] : []));
    const before = stems(this.#tokens.slice(0, n));
    const rest = this.#tokens.slice(n + 1);
    return this.#vocabulary.withIn.some((name) => {
      const size = name.before.length;
      if (before.length < size || !name.before.every((word, k) => before[before.length - size + k] === word)) return false;
      const length = name.after.length;
      const next = rest[length];
      return (
        stems(rest.slice(0, length)).join(' ') === name.after.join(' ') &&
        !(next?.is === 'amount' || next?.is === 'size' || next?.is === 'rim')
      );
    });
  }
  /** A word that parts the line. Asked first without, then with `push`. */
  #marker(text: string, n: number, push = false): number | undefined {
    const put = (atom: Atom, length = 1): number => {
      if (push) this.atoms.push(atom);
      return length;
    };
    const next = this.#word(n + 1);
    const nextToken = this.#tokens[n + 1];
    const previous = this.#tokens[n - 1];
    if ((text === 'with' || text === 'without') && this.#withinName(n)) return put({ is: 'word', word: text, typed: text });
    if (text === 'without') return put({ is: 'with', without: true });
    if (text === 'if') return next === 'i' || next === 'we' ? put({ is: 'with', without: false }, 2) : put({ is: 'with', without: false });
    if (withWords.has(text)) return put({ is: 'with', without: false });
    if (between.has(text)) {
      const two =
        (text === 'instead' && next === 'of') ||
        (text === 'compared' && (next === 'to' || next === 'with')) ||
        (text === 'rather' && next === 'than');
      return put({ is: 'between', word: text }, two ? 2 : 1);
    }
    if (text === 'at') return put({ is: 'at' });
    if (text === 'over' && nextToken?.is === 'amount') return put({ is: 'over' });
    if (text === 'after' && nextToken?.is === 'amount') return put({ is: 'over' });
    if (text === 'rising' && next === 'to') return put({ is: 'to', colon: false }, 2);
    if (text === 'from') return put({ is: 'from' });
    const soon = nextToken?.is === 'amount' || this.#tokens[n + 2]?.is === 'amount';
    if (text === 'to' && ((nextToken?.is === 'amount' && previous?.is === 'amount') || (soon && this.#moves(n))))
      return put({ is: 'to', colon: false });
    if (this.#manner.find && forWords.has(text)) return put({ is: 'for', word: text });
    if (joints.has(text)) return put({ is: 'break', joint: 'and' });
    return undefined;
  }
  #unknownWord(text: string, stemmed: string, typed: string): number {
    if (littleWords.has(text)) return 1;
    const candidates = nearest(stemmed.length >= 4 ? stemmed : text, this.#candidates());
    const [found, another] = candidates;
    if (found !== undefined && another === undefined) {
      this.mended = true;
      if (!fillers.has(found)) this.echoes.push(`"${typed}" read as ${found}`);
      else this.mended = this.mended && this.echoes.length > 0;
      if (placeWords.has(found))
        this.atoms.push({ is: 'place', word: stem(found), places: placeWords.get(found) ?? [], plural: false, all: false });
      else if (changeWords.has(found)) this.#plain(found, typed);
      else if (!fillers.has(found)) {
        const marker = this.#vocabulary.words.has(found) ? undefined : this.#marker(found, -5, true);
        if (marker === undefined) this.#plain(found, typed);
      }
      return 1;
    }
    this.unknown.push(typed);
    if (another !== undefined) this.near.set(typed, candidates);
    return 1;
  }
  *#candidates(): Iterable<string> {
    yield* this.#vocabulary.words;
    for (const word of playing) if (!this.#vocabulary.words.has(word)) yield word;
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

/** Atoms that belong together made one: ranges, curves, lists, changes, places side by side. */
function gathered(atoms: readonly Atom[]): Atom[] {
  let out = [...atoms];
  for (const pass of [joinCurves, joinRanges, joinChanges, joinPlaces, joinLists]) out = pass(out);
  return out;
}
const isAmount = (atom: Atom | undefined): atom is AmountAtom => atom?.is === 'amount';

/** `500-700 over 4in`, `500 then 700 after 4in`, `0: 500, 4: 700`. */
function joinCurves(atoms: readonly Atom[]): Atom[] {
  const out: Atom[] = [];
  const zero = (at: number): AmountToken => ({ is: 'amount', at, text: '0', value: 0 });
  for (let n = 0; n < atoms.length; n++) {
    const [a, b, c, d, e] = atoms.slice(n, n + 5);
    const pairs = pairsFrom(atoms, n);
    if (pairs && isAmount(a)) {
      const steps = atoms[pairs.end];
      const between = steps?.is === 'word' && steps.word === 'step' ? 'step' : 'line';
      out.push({ ...a, curve: { points: pairs.points, between, sure: true } });
      n = pairs.end - 1 + (between === 'step' ? 1 : 0);
    } else if (isAmount(a) && a.token.to !== undefined && b?.is === 'over' && isAmount(c)) {
      const { to, ...token } = a.token;
      out.push({
        ...a,
        curve: {
          points: [
            [zero(token.at), token],
            [c.token, { ...token, value: to }],
          ],
          between: 'line',
          sure: false,
        },
      });
      n += 2;
    } else if (
      isAmount(a) &&
      ((b?.is === 'to' && !b.colon) || (b?.is === 'break' && b.joint === 'and')) &&
      isAmount(c) &&
      d?.is === 'over' &&
      isAmount(e)
    ) {
      const between = b.is === 'to' ? 'line' : 'step';
      out.push({
        ...a,
        curve: {
          points: [
            [zero(a.token.at), a.token],
            [e.token, c.token],
          ],
          between,
          sure: true,
        },
      });
      n += 4;
    } else out.push(a!);
  }
  return out;
}
/** Pairs `at: value`, two or more. */
function pairsFrom(atoms: readonly Atom[], from: number) {
  const points: [AmountToken, AmountToken][] = [];
  let n = from;
  for (;;) {
    const [a, b, c] = atoms.slice(n, n + 3);
    if (!isAmount(a) || b?.is !== 'to' || !b.colon || !isAmount(c)) break;
    points.push([a.token, c.token]);
    n += 3;
    const comma = atoms[n];
    if (comma?.is === 'break' && isAmount(atoms[n + 1])) n++;
  }
  return points.length >= 2 ? { points, end: n } : undefined;
}
function joinRanges(atoms: readonly Atom[]): Atom[] {
  const out: Atom[] = [];
  for (let n = 0; n < atoms.length; n++) {
    const [a, b, c] = atoms.slice(n, n + 3);
    // `from 350s to 450s` is two sides, not a range.
    const before = out.at(-1);
    if (isAmount(a) && b?.is === 'to' && !b.colon && isAmount(c) && before?.is !== 'from' && !a.curve) {
      out.push({ ...a, to: c.token });
      n += 2;
    } else out.push(a!);
  }
  return out;
}
function joinChanges(atoms: readonly Atom[]): Atom[] {
  const out: Atom[] = [];
  for (let n = 0; n < atoms.length; n++) {
    const [a, b] = [atoms[n]!, atoms[n + 1]];
    const way = (atom: Atom | undefined) => (atom?.is === 'word' ? changeWords.get(atom.word) : undefined);
    const after = way(b);
    const first = way(a);
    if (isAmount(a) && after !== undefined) {
      out.push({ ...a, change: after });
      n++;
    } else if (first !== undefined && isAmount(b) && a.is === 'word') {
      out.push({ ...b, change: first });
      n++;
    } else out.push(a);
  }
  return out;
}
const union = (a: readonly string[], b: readonly string[]): string[] => [...new Set([...a, ...b])];
function joinPlaces(atoms: readonly Atom[]): Atom[] {
  const out: Atom[] = [];
  for (let n = 0; n < atoms.length; n++) {
    const a = atoms[n]!;
    const last = out.at(-1);
    if (a.is === 'place' && last?.is === 'place') {
      const shared = a.places.filter((place) => last.places.includes(place));
      if (shared.length > 0) {
        out[out.length - 1] = {
          ...a,
          word: a.all ? last.word : a.word,
          places: shared,
          plural: a.plural || last.plural,
          all: a.all && last.all,
        };
        continue;
      }
    }
    const [, b, c] = atoms.slice(n, n + 3);
    if (a.is === 'place' && b?.is === 'break' && b.joint === 'and' && c?.is === 'place' && !isAmount(atoms[n - 1])) {
      out.push({ ...a, word: 'both', places: union(a.places, c.places) });
      n += 2;
    } else out.push(a);
  }
  return out;
}
/** Four or more amounts in a row, nothing between them but commas: one for each wheel, or for each gear. */
function joinLists(atoms: readonly Atom[]): Atom[] {
  const out: Atom[] = [];
  for (let n = 0; n < atoms.length; n++) {
    const a = atoms[n]!;
    if (isAmount(a) && a.token.slashed) {
      const rest = a.token.slashed.map((value): AmountToken => ({ ...a.token, value, text: String(value) }));
      const { slashed: _, ...first } = a.token;
      out.push({ ...a, token: { ...first, text: String(first.value) }, list: [{ ...first, text: String(first.value) }, ...rest] });
      continue;
    }
    const row: AmountAtom[] = [];
    let at = n;
    for (let next = atoms[at]; isAmount(next) && !next.curve && !next.to; next = atoms[at]) {
      row.push(next);
      at++;
      if (atoms[at]?.is === 'break' && isAmount(atoms[at + 1])) at++;
    }
    // Four are wheels; four and more may be gears.
    if (row.length >= 4 && isAmount(a)) {
      const unit = row.find((one) => one.token.unit !== undefined)?.token.unit;
      const tokens = row.map(({ token }): AmountToken => (token.unit === undefined && unit !== undefined ? { ...token, unit } : token));
      out.push({ ...a, token: tokens[0]!, list: tokens });
      n = at - 1;
    } else out.push(a);
  }
  return out;
}
