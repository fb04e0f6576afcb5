/** Words that are not known: what they may have been is offered, never guessed. */
import type { Stop } from '../reading.js';
import { nearestLine } from './asking.js';
import type { Spoken } from './spoken.js';

/** The stop for words that nothing explains: near words to choose from, or a line that works. */
export function unknownWords(spoken: Spoken, unknown: readonly string[]): Stop {
  const [typed, more] = unknown;
  const near = typed === undefined || more !== undefined ? undefined : spoken.atoms.near.get(typed);
  if (typed !== undefined && near !== undefined && near.length <= 4) {
    // It could be either: offered, never guessed.
    const choices = near.map((word) => {
      const line = `${spoken.asked.verb ?? ''} ${spoken.asked.text.replace(typed, word)}`.trim();
      return { label: line, line };
    });
    return { stop: 'asked', sentence: `I don't know "${typed}". Did you mean:`, choices };
  }
  const named = [...new Set(unknown)].slice(0, 4).map((word) => `"${word}"`);
  const list = named.length > 1 ? `${named.slice(0, -1).join(', ')} or ${named.at(-1)}` : named[0];
  return { stop: 'refused', sentence: `I don't know ${list}.`, line: nearestLine(spoken.atoms, spoken.vocabulary) };
}
