/** What members ask about alignment and is not built yet. */
import type { NotYet } from '../../catalog/notYet.js';

export const notYet: readonly NotYet[] = [
  {
    name: 'toe conversion',
    words: ['toe out', 'total toe', 'out total', 'toe plate', 'toe change', 'ackermann', 'toe curve'],
    sentence: "I can't turn a toe measured as a length into an angle yet; toe in degrees of one wheel can be recorded.",
    line: 'set front toe 0.1 deg',
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
    sentence:
      "I can't work out alignment adjustments yet, such as what an eccentric or a plate does; camber, toe and caster can be recorded.",
    line: 'set front camber -2 deg',
  },
  {
    name: 'caster from a sweep',
    words: ['sweep', 'caster sweep', 'camber swing', 'caster swing'],
    sentence: "I can't work out caster from a camber sweep yet; caster itself can be recorded.",
    line: 'set front caster 5 deg',
  },
];
