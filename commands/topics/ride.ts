/** Ride: frequencies, rates with the tire, heights and travel. */

import * as heights from '../../core/subjects/ride/heights.js';
import * as axles from '../../core/subjects/ride/rideTravel.js';
import { bumpTravel } from '../../core/subjects/ride/travel.js';
import * as rates from '../../core/subjects/springs/wheelRates.js';
import { firstCarLine } from '../house/own.js';
import { type Topic, topicCommand } from './topic.js';

export const rideTopic: Topic = {
  word: 'ride',
  also: [],
  summary: 'Ride frequencies, rates with the tire, heights and travel.',
  examples: [
    { line: 'ride', does: 'of your car, both ends' },
    { line: 'ride with front spring 500', does: 'supposing a spring' },
  ],
  alone: firstCarLine,
  figures: [
    rates.rideFrequency,
    axles.frequencyRatio,
    rates.rideRate,
    rates.wheelRate,
    rates.springFrequency,
    axles.staticDeflection,
    heights.heightChange,
    heights.axleRideHeight,
    bumpTravel,
    axles.droopTravel,
  ],
};
export const ride = topicCommand(rideTopic);
