/** Wheel sizes and offsets: edges in and out, backspacing, what they do to the track; whether a tire fits them. */
import * as tires from '../../core/figures/tires.js';
import * as wheels from '../../core/figures/wheels.js';
import { type Topic, topicCommand } from './topic.js';

export const wheelTopic: Topic = {
  word: 'wheel',
  also: [],
  summary: 'A wheel, or two side by side: edges in and out, backspacing, track.',
  examples: [
    { line: 'wheel 17x8 et35 vs 15x7 +38', does: 'which sticks out more' },
    { line: 'wheel 17x8 et35', does: 'one wheel' },
  ],
  figures: [
    wheels.outerRimEdge,
    wheels.innerRimEdge,
    wheels.outerTireEdge,
    wheels.innerTireEdge,
    wheels.leastClearance,
    wheels.clearOutside,
    wheels.clearInside,
    wheels.clearAround,
    wheels.backspacingNow,
    wheels.effectiveOffset,
    wheels.trackPart,
    wheels.leverRatio,
    tires.rimMargin,
    wheels.rimWidth,
    wheels.overallWidth,
  ],
};
export const wheel = topicCommand(wheelTopic);
