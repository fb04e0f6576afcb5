/** What members ask about dampers and is not built yet. */
import type { NotYet } from '../../catalog/notYet.js';

export const notYet: readonly NotYet[] = [
  {
    name: 'dampers',
    words: ['damper', 'shock', 'shock absorber', 'rebound', 'click', 'valving', 'shim stack', 'shock dyno'],
    sentence: "I can't work out what clicks or valving do yet; a damping ratio from a damper's rate I can.",
    line: 'show damping ratio',
  },
];
