/** Pressure: cold to hot and back in absolute terms. */
import * as pressures from '../../core/subjects/tires/pressure.js';
import { loadAtThisPressure } from '../../core/subjects/tires/tireLoads.js';
import { type Topic, topicCommand } from './topic.js';

export const pressureTopic: Topic = {
  word: 'pressure',
  also: [],
  summary: 'Cold to hot and back, in absolute terms; what the tire may carry at it.',
  examples: [
    { line: 'pressure 30 psi cold 70 f hot 120 f', does: 'what it will be hot' },
    { line: 'pressure', does: 'of your car' },
  ],
  figures: [pressures.hotFromCold, pressures.coldFromHot, pressures.pressureRise, pressures.pressurePerTenDegrees, loadAtThisPressure],
};
export const pressure = topicCommand(pressureTopic);
