/** What members ask about runs and times and is not built yet. */
import type { NotYet } from '../../catalog/notYet.js';

export const notYet: readonly NotYet[] = [
  {
    name: 'statistics of runs',
    words: ['run time', 'log run', 'my run', 'average run', 'best run', 'consistency', 'standard deviation', 'statistic', 'cone penalty'],
    sentence: "I can't compare runs by their times yet; what a change of the car moves I can.",
    line: 'compare now with dry',
  },
  {
    name: 'times and distances',
    words: [
      'lap time',
      'quarter mile',
      '0 60',
      'zero to sixty',
      'acceleration time',
      'et slip',
      'trap speed',
      'slalom',
      'elapsed time',
      'lap',
      'time',
    ],
    sentence: "I can't work out times yet, of a lap, a slalom or a sprint; road speed in each gear I can.",
    line: 'how fast in 2nd at 6500',
  },
];
