/** What is worth telling of a tire and of a wheel, in the order in which it is of use. */
import type { Entry } from '../../core/catalog.js';
import { speedometer, speedometerRatio, topSpeed } from '../../core/subjects/gearing/speeds.js';
import { heightChange } from '../../core/subjects/ride/heights.js';
import { loadedRadius } from '../../core/subjects/ride/travel.js';
import * as tires from '../../core/subjects/tires/dimensions.js';
import { loadAtThisPressure, loadRating, speedRating } from '../../core/subjects/tires/tireLoads.js';
import * as wheels from '../../core/subjects/wheels/fit.js';
import { leastClearance } from '../../core/subjects/wheels/fit.js';

export const tireFigures: readonly Entry[] = [
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
];

export const wheelFigures: readonly Entry[] = [
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
];
