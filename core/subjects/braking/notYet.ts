/** What members ask about brakes and is not built yet. */
import type { NotYet } from '../../catalog/notYet.js';

export const notYet: readonly NotYet[] = [
  {
    name: 'brake heat and ABS',
    words: ['abs', 'brake fade', 'fade', 'brake cooling', 'rotor temperature', 'brake temperature', 'brake fluid'],
    sentence:
      "Heat, fade and ABS I can't do. Nearest: which end locks first, and at how much braking. For the parts themselves ask the maker and a licensed shop.",
    line: 'show brake share',
  },
];
