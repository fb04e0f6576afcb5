/** What members ask about alignment and is not built yet. */
import type { NotYet } from '../../catalog/notYet.js';

export const notYet: readonly NotYet[] = [
  {
    name: 'toe conversion',
    words: ['toe out', 'total toe', 'out total', 'toe plate', 'toe change', 'ackermann', 'toe curve'],
    sentence: "Toe by the plates alone I can't turn into degrees. Nearest: on your car, told with the diameter that it was read at.",
    line: 'set front total toe 0.125 in, toe diameter 24 in',
  },
  {
    name: 'alignment adjustment',
    words: [
      'eccentric',
      'cam bolt',
      'camber plate',
      'camber bolt',
      'camber curve',
      'camber gain',
      'align',
      'alignment',
      'kingpin',
      'king pin',
      'kpi',
      'scrub radius',
      'scrub',
      'steering axis',
      'crash bolt',
    ],
    sentence: "Alignment by eccentrics, plates or arms I can't do. Nearest: what camber you set does to grip and balance.",
    line: 'try front camber -2 deg',
  },
  {
    name: 'caster from a sweep',
    words: ['sweep', 'caster sweep', 'camber swing', 'caster swing'],
    sentence: "Caster from a camber sweep I can't do. Nearest: caster that you know I keep.",
    line: 'set front caster 5 deg',
  },
];
