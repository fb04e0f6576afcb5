/** What members ask about aerodynamics and is not built yet. */
import type { NotYet } from '../../catalog/notYet.js';

export const notYet: readonly NotYet[] = [
  {
    name: 'aerodynamics',
    words: ['downforce', 'wing', 'splitter', 'drag', 'aero', 'diffuser', 'cda'],
    sentence: "Wings, splitters and drag I can't do. Nearest: the same car with the grip that you find at speed.",
    line: 'try grip 1.1',
  },
];
