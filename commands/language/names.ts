/** Names in a line: cars, setups, clubmates; as members say them, with or without their possessive. */
import type { Subject } from '../reading.js';
import type { Token } from '../scan.js';
import { fillers, joints, placeWords, stem, withWords } from '../words.js';
import type { Setting } from './setting.js';
import type { Vocabulary } from './vocabulary.js';

export interface Named {
  readonly subject: Subject;
  readonly name: string;
  /** How many tokens it took. */
  readonly length: number;
  /** `turnips cg`: what follows belongs to it. */
  readonly possessive: boolean;
}
interface Known {
  readonly words: readonly string[];
  readonly name: string;
  readonly subject: Subject;
}
const wordsOf = (name: string): string[] =>
  name
    .toLowerCase()
    .replaceAll("'", '')
    .split(/[\s_-]+/)
    .filter((word) => word !== '');

/** Every name that the asker may mean, by its first word. */
export class Names {
  readonly #byFirst = new Map<string, Known[]>();
  readonly #me: Subject;
  readonly #setting: Setting;
  readonly #vocabulary: Vocabulary;
  /** Words of names: not to be mended into others. */
  readonly words = new Set<string>();

  constructor(setting: Setting, vocabulary: Vocabulary) {
    this.#setting = setting;
    this.#vocabulary = vocabulary;
    this.#me = setting.chosen === undefined ? { is: 'now' } : { is: 'car', id: setting.chosen };
    // A name that two bear goes to the asker's own car, then a setup, a clubmate's car, a clubmate.
    for (const car of setting.cars) this.#add(car.name, { is: 'car', id: car.id });
    for (const setup of setting.setups) this.#add(setup, { is: 'setup', name: setup });
    for (const car of setting.others) this.#add(car.name, { is: 'car', id: car.id });
    for (const member of setting.members) this.#add(member.name, { is: 'member', id: member.id });
  }
  #add(name: string, subject: Subject): void {
    const words = wordsOf(name);
    const first = words[0];
    if (first === undefined) return;
    const alike = this.#byFirst.get(first) ?? [];
    alike.push({ words, name, subject });
    alike.sort((a, b) => b.words.length - a.words.length);
    this.#byFirst.set(first, alike);
    for (const word of words) this.words.add(word);
  }
  get me(): Subject {
    return this.#me;
  }
  /** The clubmate of an `@name` or a chat id. */
  mention(text: string): Named | undefined {
    const bare = text.replace(/^@/, '').toLowerCase();
    const member = this.#setting.members.find(
      (one) => one.id.toLowerCase() === text.toLowerCase() || one.id.toLowerCase() === bare || one.name.toLowerCase() === bare,
    );
    const local = member ?? this.#setting.members.find((one) => one.id.toLowerCase().replace(/^@/, '').split(':')[0] === bare);
    return local && { subject: { is: 'member', id: local.id }, name: local.name, length: 1, possessive: false };
  }
  exactly(text: string): Named | undefined {
    const words = wordsOf(text);
    const known = this.#byFirst
      .get(words[0] ?? '')
      ?.find((one) => one.words.length === words.length && one.words.every((word, n) => word === words[n]));
    return known && { subject: known.subject, name: known.name, length: 1, possessive: false };
  }
  /** The longest name that starts at a token; `sure` when the line says that a name comes (`on`, a quote), so that it may be a common word too. */
  at(tokens: readonly Token[], from: number, sure: boolean): Named | undefined {
    const first = tokens[from];
    if (!first) return undefined;
    if (first.is === 'who') return this.mention(first.text);
    if (first.is === 'quoted') return this.exactly(first.text);
    if (first.is !== 'word') return undefined;
    for (const form of [first.text, first.text.endsWith('s') ? first.text.slice(0, -1) : ''])
      for (const known of this.#byFirst.get(form) ?? []) {
        const possessive = this.#matches(tokens, from, known.words);
        if (possessive === undefined) continue;
        if (!sure && known.words.length === 1 && this.#common(known.words[0] ?? '')) continue;
        return { subject: known.subject, name: known.name, length: known.words.length, possessive };
      }
    return undefined;
  }
  #matches(tokens: readonly Token[], from: number, words: readonly string[]): boolean | undefined {
    let possessive = false;
    for (const [n, word] of words.entries()) {
      const token = tokens[from + n];
      if (token?.is !== 'word') return undefined;
      if (token.text === word) continue;
      if (n !== words.length - 1 || token.text !== `${word}s`) return undefined;
      possessive = true;
    }
    return possessive;
  }
  #common(word: string): boolean {
    return this.#vocabulary.words.has(stem(word)) || fillers.has(word) || placeWords.has(word) || withWords.has(word) || joints.has(word);
  }
}
