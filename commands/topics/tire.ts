/** Tire sizes: how tall, how wide, how often they turn, what they do to height, speedometer and gearing. */
import { speedometer, speedometerRatio, topSpeed } from '../../core/figures/gearing.js';
import { loadedRadius } from '../../core/figures/rideAxles.js';
import { heightChange } from '../../core/figures/standing.js';
import { loadAtThisPressure, loadRating, speedRating } from '../../core/figures/tireLoads.js';
import * as tires from '../../core/figures/tires.js';
import { leastClearance } from '../../core/figures/wheels.js';
import { type Topic, topicCommand } from './topic.js';

export const tireTopic: Topic = {
  word: 'tire',
  also: ['tyre'],
  summary: 'A tire size, or two side by side: diameter, turns per mile, width, rims.',
  examples: [
    { line: 'tire 245/40R17 vs 255/40R17', does: 'two sizes' },
    { line: 'tire 205/50R15', does: 'one size' },
  ],
  figures: [
    tires.tireDiameter,
    tires.tireTurns,
    loadedRadius,
    heightChange,
    speedometerRatio,
    speedometer,
    topSpeed,
    tires.sectionHeight,
    tires.sectionWidth,
    tires.leastRim,
    tires.mostRim,
    tires.rimMargin,
    loadRating,
    loadAtThisPressure,
    speedRating,
    tires.rollingRadius,
    tires.rollingCircumference,
    leastClearance,
  ],
};
export const tire = topicCommand(tireTopic);
