/** Springs: a coil from its measures, and what a spring is at the wheel. */

import * as axles from '../../core/subjects/ride/corner.js';
import { heightChange } from '../../core/subjects/ride/heights.js';
import * as springs from '../../core/subjects/springs/coilFigures.js';
import * as rates from '../../core/subjects/springs/wheelRates.js';
import { type Topic, topicCommand } from './topic.js';

export const springTopic: Topic = {
  word: 'spring',
  also: [],
  summary: 'A coil from its wire, or a spring on the car: rate, stress, wheel rate, travel.',
  examples: [
    { line: 'spring 12.5mm wire 100mm mean diameter 6 turns', does: 'a coil from its measures' },
    { line: 'spring 450 lb/in motion ratio .71', does: 'the rate at the wheel' },
  ],
  figures: [
    springs.coilRate,
    rates.wheelRate,
    axles.axleSpringRate,
    rates.rideRate,
    rates.rideFrequency,
    rates.springFrequency,
    axles.axleSpringForce,
    axles.axleSpringCompression,
    springs.travelToBind,
    springs.coilIndex,
    springs.wahl,
    springs.coilSolid,
    springs.surge,
    springs.coilMass,
    heightChange,
  ],
};
export const spring = topicCommand(springTopic);
