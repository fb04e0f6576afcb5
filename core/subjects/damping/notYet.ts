/** What members ask about dampers and is not built yet. */
import type { NotYet } from '../../catalog/notYet.js';

export const notYet: readonly NotYet[] = [
  {
    name: 'dampers',
    words: ['damper', 'shock', 'shock absorber', 'rebound', 'click', 'valving', 'shim stack', 'shock dyno'],
    sentence: "What clicks or valving do I can't work out. Nearest: the damping ratio, from a damper's rate.",
    line: 'show damping ratio',
  },
];
