/** What members ask about brakes and is not built yet. */
import type { NotYet } from '../../catalog/notYet.js';

export const notYet: readonly NotYet[] = [
  {
    name: 'brake heat and ABS',
    words: ['abs', 'brake fade', 'fade', 'brake cooling', 'rotor temperature', 'brake temperature', 'brake fluid'],
    sentence:
      "I can't work out heat, fade or ABS; brake forces, their share and where a wheel locks I can. The maker's data and a licensed workshop go first.",
    line: 'show brake share',
  },
];
