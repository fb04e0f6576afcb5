/** What members ask about runs and times and is not built yet. */
import type { NotYet } from '../../catalog/notYet.js';

export const notYet: readonly NotYet[] = [
  {
    name: 'statistics of runs',
    words: ['run time', 'log run', 'my run', 'average run', 'best run', 'consistency', 'standard deviation', 'statistic', 'cone penalty'],
    sentence: "Run times I can't compare. Nearest: what a change does to the car.",
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
    sentence: "Lap times, sprints and distances I can't do. Nearest: your speed round a steady corner, and in each gear.",
    line: 'how fast in 2nd at 6500',
  },
];
