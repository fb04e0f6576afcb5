/** Sentences and lines for what the reader could not finish alone. */
import { isInput } from '../../core/catalog.js';
import type { Choice, Stop } from '../reading.js';
import type { Atoms } from './atoms.js';
import type { Slot } from './slots.js';
import { keyOf, type Vocabulary } from './vocabulary.js';

export const sentence = (text: string): string => (text === '' ? '' : text.charAt(0).toUpperCase() + text.slice(1));

/** At most four candidates are offered; of more, the question alone is asked. */
export function askOne(slot: Slot, count: number, choices: readonly Choice[]): Stop {
  if (count > 4)
    return {
      stop: 'asked',
      sentence: `${sentence(slot.text())} of what? ${count} things could be meant; say which with a word.`,
      choices: [],
    };
  return { stop: 'asked', sentence: `"${slot.text()}" could be:`, choices };
}
/** A line that works and is about what the line's known words are about. */
export function nearestLine(atoms: Atoms, vocabulary: Vocabulary): string {
  const words = atoms.atoms.flatMap((atom) => (atom.is === 'word' ? [atom.word] : []));
  for (const word of words)
    for (const key of [keyOf([word]), ...(vocabulary.holding.get(word) ?? [])])
      for (const { entry } of vocabulary.phrases.get(key) ?? []) {
        if (entry.scope === 'question' || (!entry.words && !isInput(entry))) continue;
        const where = entry.scope === 'axle' ? 'front ' : entry.scope === 'corner' ? 'lf ' : entry.scope === 'gear' ? '2nd ' : '';
        return `show ${where}${vocabulary.nameOf(entry)}`;
      }
  return 'help';
}
