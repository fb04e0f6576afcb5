/** What is worth telling of a tire and of a wheel, in the order in which it is of use. */
import type { Entry } from '../../core/catalog.js';
import { speedometer, speedometerRatio, topSpeed } from '../../core/figures/gearing.js';
import { heightChange } from '../../core/figures/heights.js';
import { loadAtThisPressure, loadRating, speedRating } from '../../core/figures/tireLoads.js';
import * as tires from '../../core/figures/tires.js';
import { loadedRadius } from '../../core/figures/travel.js';
import * as wheels from '../../core/figures/wheels.js';
import { leastClearance } from '../../core/figures/wheels.js';

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
