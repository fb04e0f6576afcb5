/** What help shows first, by job, and what the words of the trade that are no entries mean. */
import type { Answer } from './answer.js';

/** A job that a newcomer has, and a line for it that works as it stands. */
interface Job {
  readonly does: string;
  readonly line: string;
}
const plainSums: readonly Job[] = [
  { does: 'Plain sums, any car', line: 'wheel rate spring 450 ratio .68' },
  { does: 'Tires', line: '205/60R15 vs 185/60R15' },
];
export const withoutCar: readonly Job[] = [{ does: 'Tell me your car', line: 'save my car parsnip 2640 lb 52.5% front' }, ...plainSums];
export const withCar: readonly Job[] = [
  { does: 'Tell me more of your car', line: 'set front spring 450' },
  ...plainSums,
  { does: 'What if', line: 'try rear spring 650' },
  { does: 'Which end lets go first', line: 'which end goes first' },
  { does: 'What to change', line: 'it pushes mid corner' },
  { does: 'Hit a number', line: 'what front spring for 2.0 Hz' },
  { does: 'Is it usual', line: 'is my rear spring too stiff' },
];

/** What members say that is neither a command nor the name of an entry alone. */
export const meant: Readonly<Record<string, { readonly headline: string; readonly notes: readonly string[]; readonly line: string }>> = {
  push: {
    headline: 'Push 2 %: at the limit the rear would hold 2 % more than the front.',
    notes: ['So the front lets go first. Loose is the other way round.'],
    line: 'which end goes first',
  },
  loose: {
    headline: 'Loose 2 %: at the limit the front would hold 2 % more than the rear.',
    notes: ['So the rear lets go first, and the car comes round. Push is the other way.'],
    line: 'which end goes first',
  },
};

/** What can be typed of a help text: lines that stand together are one message, each suggestion is one. */
export const messagesIn = (shown: Pick<Answer, 'notes' | 'next'>): readonly string[] => {
  const messages: string[] = [];
  for (const note of shown.notes) {
    let open = false;
    for (const line of note.split('\n')) {
      if (!line.startsWith('  ')) open = false;
      else if (open) messages.push(`${messages.pop()}\n${line.slice(2)}`);
      else messages.push(line.slice(2));
      open = line.startsWith('  ');
    }
  }
  return [...messages, ...shown.next.map(({ line }) => line)];
};
