/** Misspelled words: which known words one may have been. */
import { nearest } from '../spelling.js';
import { changeWords, fillers, withWords } from '../words.js';
import { everyday } from './everyday.js';
import type { Vocabulary } from './vocabulary.js';

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
/** The known words that are nearest to an unknown one: none, the one that was meant, or several as near. */
export const nearKnown = (text: string, stemmed: string, { words }: Vocabulary): readonly string[] =>
  everyday.has(text) ? [] : nearest(stemmed.length >= 4 ? stemmed : text, knownWords(words));
function* knownWords(words: ReadonlySet<string>): Iterable<string> {
  yield* words;
  for (const word of playing) if (!words.has(word)) yield word;
}
