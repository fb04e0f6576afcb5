/** What members ask about suspension geometry and is not built yet. */
import type { NotYet } from '../../catalog/notYet.js';

export const notYet: readonly NotYet[] = [
  {
    name: 'bump steer',
    words: ['bump steer', 'bumpsteer', 'tie rod', 'roll steer', 'steering rack', 'rack height', 'steer arm'],
    sentence: "I can't work out bump steer yet, neither from a table of toe nor from the tie rod.",
    line: 'show ride height',
  },
  {
    name: 'dive, squat and torque steer',
    words: ['dive', 'squat', 'pitch', 'pitch center', 'torque steer'],
    sentence: "I can't work out how far the nose dives, the tail squats or the wheel tugs yet; anti-dive and anti-squat I can.",
    line: 'show front anti dive',
  },
];
