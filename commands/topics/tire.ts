/** Tire sizes: how tall, how wide, how often they turn, what they do to height, speedometer and gearing. */
import { tireFigures } from './figures.js';
import { type Topic, topicCommand } from './topic.js';

export const tireTopic: Topic = {
  word: 'tire',
  also: ['tyre'],
  summary: 'A tire size, or two side by side: diameter, turns per mile, width, rims.',
  examples: [
    { line: 'tire 245/40R17 vs 255/40R17', does: 'two sizes' },
    { line: 'tire 205/50R15', does: 'one size' },
  ],
  figures: tireFigures,
};
export const tire = topicCommand(tireTopic);
