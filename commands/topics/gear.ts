/** Gearing: road speed at engine speed and back, drops, top speeds, thrust. */
import * as engine from '../../core/subjects/engine/power.js';
import * as gearing from '../../core/subjects/gearing/speeds.js';
import { type Topic, topicCommand } from './topic.js';

export const gearTopic: Topic = {
  word: 'gear',
  also: [],
  summary: 'Road speed in a gear, top speeds, drops between gears, thrust.',
  examples: [
    { line: 'gear 6500rpm 2nd 1.93 final 3.73 245/40R17', does: 'without a saved car' },
    { line: 'gear at 6500 rpm', does: 'all gears of your car' },
  ],
  figures: [
    gearing.gearSpeed,
    gearing.gearEngineSpeed,
    gearing.topSpeed,
    gearing.shiftSpeed,
    gearing.shiftDrop,
    gearing.gearStep,
    gearing.overallRatio,
    engine.thrust,
    engine.peakThrust,
    gearing.thrustPerTorque,
  ],
};
export const gear = topicCommand(gearTopic);
