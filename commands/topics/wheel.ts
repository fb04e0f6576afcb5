/** Wheel sizes and offsets: edges in and out, backspacing, what they do to the track; whether a tire fits them. */
import { wheelFigures } from './figures.js';
import { type Topic, topicCommand } from './topic.js';

export const wheelTopic: Topic = {
  word: 'wheel',
  also: [],
  summary: 'A wheel, or two side by side: edges in and out, backspacing, track.',
  examples: [
    { line: 'wheel 17x8 et35 vs 15x7 +38', does: 'which sticks out more' },
    { line: 'wheel 17x8 et35', does: 'one wheel' },
  ],
  figures: wheelFigures,
};
export const wheel = topicCommand(wheelTopic);
