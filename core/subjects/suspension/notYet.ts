/** What members ask about suspension geometry and is not built yet. */
import type { NotYet } from '../../catalog/notYet.js';

export const notYet: readonly NotYet[] = [
  {
    name: 'bump steer',
    words: ['bump steer', 'bumpsteer', 'tie rod', 'roll steer', 'steering rack', 'rack height', 'steer arm'],
    sentence: "Bump steer I can't do, neither from the tie rod nor from a table. Nearest: how far each wheel travels in the turn.",
    line: 'show travel in the turn',
  },
  {
    name: 'dive, squat and torque steer',
    words: ['dive', 'squat', 'pitch', 'pitch center', 'torque steer'],
    sentence: "How far the nose dives or the tail squats, and torque steer, I can't do. Nearest: anti-dive and anti-squat.",
    line: 'show front anti dive',
  },
];
