/** What members ask about tires and is not built yet. */
import type { NotYet } from '../../catalog/notYet.js';

export const notYet: readonly NotYet[] = [
  {
    name: 'tire temperatures',
    words: ['pyrometer', 'pyro', 'temps', 'tire temp', 'tire temps', 'inside temp', 'outside temp', 'tread temperature', 'wear'],
    sentence: "Tread temperatures and wear I can't read. Nearest: hot and cold pressures.",
    line: 'pressure 30 psi at 65 f, hot 120 f',
  },
];
