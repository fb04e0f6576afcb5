/** What members ask about weights and where they sit and is not built yet. */
import type { NotYet } from '../../catalog/notYet.js';

export const notYet: readonly NotYet[] = [
  {
    name: 'corner weight adjustment',
    words: ['corner balance', 'corner balancing', 'cornerbalance', 'corner weighting', 'wedge bolt', 'corner jacking'],
    sentence: "All four perches at once I can't plan. Nearest: the turns of one perch that bring the cross weight where you want it.",
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
      'CG height from such a weighing I can, told piece by piece: how high the axle was raised, and what the scales then read. Rated stands, wheels chocked, nobody under it.',
    line: 'set tilt lift 18 in, front weight raised 1450 lb',
  },
];
