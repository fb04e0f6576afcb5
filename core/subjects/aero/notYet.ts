/** What members ask about aerodynamics and is not built yet. */
import type { NotYet } from '../../catalog/notYet.js';

export const notYet: readonly NotYet[] = [
  {
    name: 'aerodynamics',
    words: ['downforce', 'wing', 'splitter', 'drag', 'aero', 'diffuser', 'cda'],
    sentence: "I can't work out aerodynamics yet.",
    line: 'help',
  },
];
