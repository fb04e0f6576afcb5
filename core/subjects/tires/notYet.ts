/** What members ask about tires and is not built yet. */
import type { NotYet } from '../../catalog/notYet.js';

export const notYet: readonly NotYet[] = [
  {
    name: 'tire temperatures',
    words: ['pyrometer', 'pyro', 'temps', 'tire temp', 'tire temps', 'inside temp', 'outside temp', 'tread temperature', 'wear'],
    sentence: "I can't read tread temperatures or wear yet; hot and cold pressures I can.",
    line: 'pressure 30 psi at 65 f, hot 120 f',
  },
];
