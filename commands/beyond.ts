/** Subjects that members ask about and that are not built: one honest sentence each, so that none is misread as something that is. */
import type { NotYet } from '../core/catalog/notYet.js';
import { notYet } from '../core/notYet.js';
import { keyOf, stemsOf, type Vocabulary } from './language/vocabulary.js';
import type { Stop } from './reading.js';

export type Subject = NotYet;
/** No subject of a car, and what its words say last of all. */
const verdicts: Subject = {
  name: 'verdicts',
  words: ['too', 'enough', 'good', 'best', 'better', 'worth', 'recommend', 'ideal', 'should i', 'right spring', 'wrong'],
  sentence: "That's your call; I can say what it does, what is usual, and where your car lies. Name the part or the number.",
  line: 'show front ride frequency',
};
export const beyond: readonly Subject[] = [...notYet, verdicts];

interface Found {
  readonly subject: Subject;
  readonly words: string;
}
interface Index {
  readonly keys: ReadonlyMap<string, Subject>;
  readonly longest: number;
  readonly words: ReadonlySet<string>;
}
const indexes = new WeakMap<Vocabulary, Index>();
function indexOf(vocabulary: Vocabulary): Index {
  const known = indexes.get(vocabulary);
  if (known) return known;
  const keys = new Map<string, Subject>();
  const words = new Set<string>();
  let longest = 1;
  for (const subject of beyond)
    for (const phrase of subject.words) {
      const stems = stemsOf(phrase);
      // What the catalogs name is theirs.
      if (vocabulary.phrases.has(keyOf(stems))) continue;
      keys.set(stems.join(' '), subject);
      for (const stem of stems) words.add(stem);
      longest = Math.max(longest, stems.length);
    }
  const index = { keys, longest, words };
  indexes.set(vocabulary, index);
  return index;
}
/** Words of those subjects: known, so never mended into something else. */
export const beyondWords = (vocabulary: Vocabulary): ReadonlySet<string> => indexOf(vocabulary).words;

/** The subject that a line's words speak of: the longest phrase first, then in the order of the list, in which verdicts come last. */
export function findBeyond(stems: readonly string[], vocabulary: Vocabulary): Found | undefined {
  const { keys, longest } = indexOf(vocabulary);
  for (let length = Math.min(longest, stems.length); length > 0; length--) {
    let found: Found | undefined;
    for (let from = 0; from + length <= stems.length; from++) {
      const words = stems.slice(from, from + length).join(' ');
      const subject = keys.get(words);
      // What is part of a longer phrase of the catalogs, right here, is theirs too.
      if (!subject || inCatalog(stems, from, length, vocabulary)) continue;
      if (!found || beyond.indexOf(subject) < beyond.indexOf(found.subject)) found = { subject, words };
    }
    if (found) return found;
  }
  return undefined;
}
function inCatalog(stems: readonly string[], at: number, size: number, vocabulary: Vocabulary): boolean {
  for (let length = size + 3; length > size; length--)
    for (let from = Math.max(0, at + size - length); from <= at && from + length <= stems.length; from++)
      if (vocabulary.phrases.has(keyOf(stems.slice(from, from + length)))) return true;
  return false;
}
export const beyondStop = (subject: Subject): Stop => ({ stop: 'beyond', sentence: subject.sentence, line: subject.line });
