/** What members ask about weights and where they sit and is not built yet. */
import type { NotYet } from '../../catalog/notYet.js';

export const notYet: readonly NotYet[] = [
  {
    name: 'corner weight adjustment',
    words: ['corner balance', 'corner balancing', 'cornerbalance', 'corner weighting', 'wedge bolt', 'corner jacking'],
    sentence:
      "I can't plan all four perches at once yet; the turns of one that bring the cross weight where you want it, and what a turn does, I can.",
    line: 'find lf perch turns for cross weight 50%',
  },
  {
    name: 'CG height from lifted axles',
    words: [
      'rear up',
      'front up',
      'nose up',
      'tail up',
      'lifted rear',
      'lifted front',
      'rear lifted',
      'front lifted',
      'rear raised',
      'front raised',
      'raise rear',
      'raise front',
    ],
    sentence:
      "I can't work out CG height from weighing with one end raised yet; a CG height that you have can be recorded. Lift only on rated stands, wheels chocked, nobody under it.",
    line: 'set cg height 19 in',
  },
];
