/** Everything that each span of a line may be. Leaves over-generate on purpose; nothing is decided here. */

import type { Setting } from '../language/setting.js';
import { spellingAt } from '../language/spelled.js';
import type { AmountToken } from '../scan.js';
import { meaningsOf } from '../units.js';
import { allRound, everywhere, placeWords, stem } from '../words.js';
import { changes, digits, everything, evidence, mine, negatives, nones, ordinals, parts, relations } from './lexicon.js';
import { nameIndexOf, namesAt } from './names.js';
import { prices } from './prices.js';
import type { Category, Edge, Sems } from './sems.js';
import { isName, knownOf, type ReadToken } from './tokens.js';

const gearMost = 6;
const phraseTable = <K extends string>(
  rows: readonly (readonly [K, readonly string[]])[],
): ReadonlyMap<string, readonly { readonly key: K; readonly words: readonly string[] }[]> => {
  const made = new Map<string, { key: K; words: readonly string[] }[]>();
  for (const [key, phrases] of rows)
    for (const phrase of phrases) {
      const words = phrase.split(' ');
      const alike = made.get(words[0]!) ?? [];
      alike.push({ key, words });
      made.set(words[0]!, alike);
    }
  return made;
};
const relationTable = phraseTable(relations);
const evidenceTable = phraseTable(evidence);
const sides: Readonly<Record<string, readonly string[]>> = {
  nose: ['front', 'lf', 'rf'],
  tail: ['rear', 'lr', 'rr'],
  inside: ['lf', 'lr'],
  outside: ['rf', 'rr'],
};

export function leavesOf(tokens: readonly ReadToken[], text: string, setting: Setting): readonly Edge[] {
  const found: Edge[] = [];
  const index = nameIndexOf(setting.catalog);
  const put = <C extends Category>(category: C, from: number, to: number, sem: Sems[C], price = 0): void => {
    found.push({ category, from, to, sem, price, made: 'word', parts: [], gaps: [] });
  };
  const wordAt = (at: number): string | undefined => {
    const token = tokens[at];
    return token && (token.kind === 'word' || token.kind === 'mark') ? token.text : undefined;
  };
  const said = (at: number, words: readonly string[]): boolean => words.every((word, k) => wordAt(at + k) === word);
  for (const [at, read] of tokens.entries()) {
    numbers(at, read);
    if (read.kind === 'word') words(at, read);
    if (read.kind === 'mark') marks(at, read.text);
    if (read.kind === 'word' || read.text === '%')
      for (const leaf of namesAt(tokens, at, index)) {
        if (leaf.named.length > 0) put('name', at, leaf.to, { leaf }, Math.min(...leaf.named.map(({ price }) => price)) * 0);
        for (const option of leaf.options) put('option', at, leaf.to, option, option.price);
      }
    for (const { key, words: phrase } of relationTable.get(read.text) ?? [])
      if (said(at, phrase)) put('relation', at, at + phrase.length, { relation: key, word: read.text }, 0.05);
    for (const { key, words: phrase } of evidenceTable.get(read.text) ?? [])
      if (said(at, phrase)) put('evidence', at, at + phrase.length, { evidence: key });
    subjects(at, read);
  }
  return found;

  function numbers(at: number, { token, kind }: ReadToken): void {
    if (token.is === 'amount') {
      put('amount', at, at + 1, { token });
      if (token.slashed)
        put('list', at, at + 1, {
          tokens: [withoutList(token), ...token.slashed.map((value) => ({ ...withoutList(token), value, text: String(value) }))],
          slashed: true,
        });
      const gear = Number.isInteger(token.value) && token.value >= 1 && token.value <= gearMost && token.unit === undefined;
      if (gear && tokens[at - 1]?.stems.includes('gear')) put('where', at - 1, at + 1, { places: [String(token.value)], gear: true });
      if (token.end) put('where', at, at + 1, { places: token.end === 'front' ? ['front', 'lf', 'rf'] : ['rear', 'lr', 'rr'] }, 0.3);
    }
    if (token.is === 'size' || token.is === 'rim') put('amount', at, at + 1, { token: { is: token.is, text: token.text } });
    if (token.is === 'gear') {
      put('where', at, at + 1, { places: [token.gear], gear: true });
      if (tokens[at + 1]?.stems.includes('gear')) put('where', at, at + 2, { places: [token.gear], gear: true });
    }
    if (kind === 'unit') put('unit', at, at + 1, { unit: token.text });
  }
  function marks(at: number, mark: string): void {
    if (mark === '&' || mark === ',' || mark === '+' || mark === '/' || mark === ';') put('joint', at, at + 1, { mark });
    if (mark === '~') put('evidence', at, at + 1, { evidence: 'estimated' });
    if (mark === '±') put('plusMinus', at, at + 1, {});
    if (mark === '+' && wordAt(at + 1) === '/') put('plusMinus', at, Math.min(tokens.length, at + 3), {});
    if (mark === '+' || mark === '-') put('change', at, at + 1, { sign: mark === '+' ? 1 : -1, word: mark }, 0.2);
  }
  function words(at: number, read: ReadToken): void {
    const { text: word, near } = read;
    const places = placeWords.get(word) ?? sides[word] ?? near.map((one) => placeWords.get(one)).find((one) => one !== undefined);
    if (places) put('where', at, at + 1, { places }, word.length < 2 ? 0.3 : placeWords.has(word) ? 0 : prices.name.mended);
    for (const row of allRound)
      if (row.every((one, k) => tokens[at + k]?.text === one || tokens[at + k]?.stems[0] === stem(one)))
        put('where', at, at + row.length, { places: everywhere, all: true });
    if (word === 'both' || word === 'each') put('where', at, at + 1, { places: everywhere, all: true });
    const gear = ordinals.get(word);
    if (gear !== undefined) {
      put('where', at, at + 1, { places: [gear], gear: true }, 0.1);
      if (tokens[at + 1]?.stems.includes('gear')) put('where', at, at + 2, { places: [gear], gear: true });
    }
    if (word === 'top' && tokens[at + 1]?.stems.includes('gear')) put('where', at, at + 2, { places: ['5'], gear: true }, 0.3);
    const sign = changes.get(word);
    if (sign !== undefined) put('change', at, at + 1, { sign, word });
    if (nones.has(word)) put('none', at, at + 1, {}, word === 'off' || word === 'minus' ? 0.2 : 0);
    if (negatives.has(word)) put('negative', at, at + 1, {});
    if (word === 'and' || word === 'n' || word === 'plus') put('joint', at, at + 1, { mark: 'and' });
    if (everything.has(word)) put('everything', at, at + 1, {}, 0.1);
    if (word === 'give' && said(at, ['give', 'or', 'take'])) put('plusMinus', at, at + 3, {});
    if (word === 'plus' && said(at, ['plus', 'or', 'minus'])) put('plusMinus', at, at + 3, {});
    unitWords(at, word, read);
    spokenNumbers(at, word);
  }
  function unitWords(at: number, word: string, { token }: ReadToken): void {
    const spelling = spellingAt(text.toLowerCase(), token.at);
    if (spelling === undefined || word === 'in' || word === 'a') return;
    let to = at + 1;
    while (to < tokens.length && tokens[to]!.token.at < token.at + spelling.length) to++;
    if (meaningsOf(spelling).length > 0 && tokens[to - 1]!.end <= token.at + spelling.length) put('unit', at, to, { unit: spelling }, 0.25);
  }
  function spokenNumbers(at: number, word: string): void {
    const part = parts.get(word);
    if (part !== undefined) {
      const article = wordAt(at + 1) === 'a' || wordAt(at + 1) === 'an' ? 1 : 0;
      put('amount', at, at + 1 + article, { token: amountOf(part, tokens[at]!.token.at, word), wordy: true });
    }
    const run = spoken(tokens, at);
    if (!run) return;
    const wordy = run.to === at + 1;
    const start = tokens[at]!.token.at;
    const base = amountOf(run.value, start, String(run.value));
    put('amount', at, run.to, { token: base, ...(wordy ? { wordy: true as const } : {}) }, wordy ? 0.3 : 0);
    const behind = tokens[run.to];
    const unit = behind?.kind === 'word' ? spellingAt(text.toLowerCase(), behind.token.at) : undefined;
    if (unit === undefined || !behind) return;
    let to = run.to;
    while (to < tokens.length && tokens[to]!.token.at < behind.token.at + unit.length) to++;
    put('amount', at, to, { token: { ...base, unit } });
  }
  function subjects(at: number, { token, kind, text: word }: ReadToken): void {
    if (kind === 'who') {
      const member = setting.members.find((one) => `@${one.name.toLowerCase()}` === word.toLowerCase() || one.id === word);
      if (member) put('subject', at, at + 1, { subject: { is: 'member', id: member.id }, self: false });
    }
    if (kind !== 'word' && kind !== 'quoted') return;
    const plain = word.toLowerCase();
    const is = (name: string): boolean => plain === name.toLowerCase() || plain === `${name.toLowerCase()}s`;
    for (const car of [...setting.cars, ...setting.others])
      if (is(car.name)) put('subject', at, at + 1, { subject: { is: 'car', id: car.id }, self: false });
    for (const member of setting.members)
      if (is(member.name)) {
        put('subject', at, at + 1, { subject: { is: 'member', id: member.id }, self: false });
        if (wordAt(at + 1) === 'car') put('subject', at, at + 2, { subject: { is: 'member', id: member.id }, self: false });
      }
    for (const setup of setting.setups) if (is(setup)) put('subject', at, at + 1, { subject: { is: 'setup', name: setup }, self: false });
    if (mine.has(plain) && setting.chosen !== undefined && !isName(plain, knownOf(setting)) && token.is === 'word')
      put('subject', at, at + 1, { subject: { is: 'car', id: setting.chosen }, self: true }, 0.02);
  }
}
const withoutList = ({ slashed: _, ...token }: AmountToken): AmountToken => token;
const amountOf = (value: number, at: number, text: string): AmountToken => ({ is: 'amount', at, text, value });
/** A number in words: `two hundred fifty`, `point seven`, `one point five`. */
function spoken(tokens: readonly ReadToken[], from: number): { readonly value: number; readonly to: number } | undefined {
  let total = 0;
  let current = 0;
  let point: string | undefined;
  let to = from;
  for (; to < tokens.length; to++) {
    const token = tokens[to]!;
    if (token.kind !== 'word') break;
    const digit = digits.get(token.text);
    if (token.text === 'point' && point === undefined && digits.has(tokens[to + 1]?.text ?? '')) point = '';
    else if (digit !== undefined && point !== undefined) point += digit;
    else if (digit !== undefined) current += digit;
    else if (token.text === 'hundred' && to > from && point === undefined) current = (current || 1) * 100;
    else if (token.text === 'thousand' && to > from && point === undefined) {
      total += (current || 1) * 1000;
      current = 0;
    } else break;
  }
  return to === from ? undefined : { value: Number(`${total + current}${point ? `.${point}` : ''}`), to };
}
