/** Road speed against engine speed, what a gear does to torque, and what the speedometer makes of the tires. */
import { figure, firstOf, front, higher, isRefusal, maybe, rear, refuse } from '../catalog.js';
import {
  driveEfficiency,
  drivenAxle,
  engineSpeed,
  finalDrive,
  gearRatio,
  redline,
  roadSpeed,
  shownSpeed,
  speedometerTire,
  speedometerTurns,
  transferRatio,
} from '../inputs/gearing.js';
import { diameterRatio, rollingFactor, tireSize } from '../inputs/tires.js';
import { designOf, usualOf } from '../tires/design.js';
import { rollingCircumference } from './tires.js';

const exact = 'kinematics, exact: one turn of the wheel is one rolling circumference';
const speedCaution = 'Speeds are for closed courses and for choosing ratios; public roads have their limits, and tires their speed symbol.';

export const drivenCircumference = figure({
  path: 'drivenCircumference',
  scope: 'car',
  name: 'rolling circumference of the driven wheels',
  label: 'driven rollout',
  symbol: 'C_d',
  dimension: 'length',
  needs: { driven: maybe(drivenAxle), front: maybe(front(rollingCircumference)), rear: maybe(rear(rollingCircumference)) },
  compute: ({ driven, front, rear }) => {
    const wanted = driven === 'front' ? front : driven === 'rear' ? rear : undefined;
    if (wanted !== undefined) return wanted;
    if (driven === 'front' || driven === 'rear') return refuse(`The ${driven} tire size is not known.`, `${driven}.tire.size`);
    const one = front ?? rear;
    const other = rear ?? front;
    if (one === undefined || other === undefined) return refuse('No tire size is known.', 'front.tire.size', 'rear.tire.size');
    if (driven === undefined && Math.abs(one - other) > 1e-9)
      return refuse('Front and rear tires differ: say which axle drives.', 'driven');
    // With both axles driven a center differential averages their turns, so it is the turns per distance that average.
    return 2 / (1 / one + 1 / other);
  },
  source: 'the driven axle; with both driven, the mean of their turns per distance',
});
export const overallRatio = figure({
  path: 'overallRatio',
  scope: 'gear',
  name: 'overall ratio',
  symbol: 'i_o',
  words: ['overall ratio', 'total ratio', 'overall gearing'],
  dimension: 'ratio',
  needs: { gear: gearRatio, final: finalDrive, transfer: transferRatio },
  compute: ({ gear, final, transfer }) => gear * final * transfer,
  formula: 'gear * final * transfer',
  source: 'exact: ratios in a row multiply',
});
export const gearSpeed = figure({
  path: 'gearSpeed',
  scope: 'gear',
  name: 'road speed',
  main: true,
  symbol: 'v',
  words: ['gear speed', 'road speed', 'speed', 'how fast', 'speed in gear'],
  dimension: 'speed',
  needs: { engineSpeed, circumference: drivenCircumference, overall: overallRatio },
  compute: ({ engineSpeed, circumference, overall }) => (engineSpeed / (2 * Math.PI)) * (circumference / overall),
  formula: 'engineSpeed / (2 * pi) * circumference / overall',
  source: exact,
  caution: speedCaution,
});
export const topSpeed = figure({
  path: 'topSpeed',
  scope: 'gear',
  name: 'top speed by gearing',
  label: 'top speed by gear',
  main: true,
  symbol: 'v_max',
  words: ['top speed', 'max speed', 'maximum speed', 'redline speed', 'speed at redline', 'speed at the redline'],
  dimension: 'speed',
  needs: { top: firstOf(engineSpeed, redline), circumference: drivenCircumference, overall: overallRatio },
  compute: ({ top, circumference, overall }) => (top / (2 * Math.PI)) * (circumference / overall),
  formula: 'top / (2 * pi) * circumference / overall',
  source: `${exact}; at the engine speed asked, else the redline; by gearing only: drag and power may end it sooner`,
  caution: speedCaution,
});
export const gearEngineSpeed = figure({
  path: 'gearRevs',
  scope: 'gear',
  name: 'engine speed',
  symbol: 'n',
  words: ['engine speed', 'rpm', 'revs', 'engine rpm'],
  dimension: 'angularSpeed',
  needs: { roadSpeed, circumference: drivenCircumference, overall: overallRatio },
  compute: ({ roadSpeed, circumference, overall }) => ((2 * Math.PI * roadSpeed) / circumference) * overall,
  formula: '2 * pi * roadSpeed / circumference * overall',
  source: exact,
  caution: 'Above the redline an engine can break: mind a downshift.',
});
export const speedPerTurn = figure({
  path: 'wayPerTurn',
  scope: 'gear',
  name: 'way for each turn of the engine',
  label: 'way per engine turn',
  symbol: 'C/i_o',
  words: ['way per turn', 'distance per engine turn'],
  dimension: 'length',
  needs: { circumference: drivenCircumference, overall: overallRatio },
  compute: ({ circumference, overall }) => circumference / overall,
  formula: 'circumference / overall',
  source: `${exact}; the speed for each rpm`,
});
export const shiftSpeed = figure({
  path: 'shiftTo',
  scope: 'gear',
  name: 'engine speed after shifting up',
  label: 'after the shift',
  symbol: 'n_2',
  words: ['engine speed after the shift', 'rpm after shift', 'after upshift', 'shift to'],
  dimension: 'angularSpeed',
  needs: { from: firstOf(engineSpeed, redline), ratio: gearRatio, next: higher(gearRatio) },
  compute: ({ from, ratio, next }) => (from * next) / ratio,
  formula: 'from * next / ratio',
  source: 'exact: the road speed does not change in the shift',
});
export const shiftDrop = figure({
  path: 'shiftDrop',
  scope: 'gear',
  name: 'drop of engine speed to the next gear',
  label: 'drop at the shift',
  symbol: 'dn',
  words: ['rpm drop', 'drop', 'shift drop', 'rev drop', 'drop to the next gear'],
  dimension: 'angularSpeed',
  needs: { from: firstOf(engineSpeed, redline), ratio: gearRatio, next: higher(gearRatio) },
  compute: ({ from, ratio, next }) => from * (1 - next / ratio),
  formula: 'from * (1 - next / ratio)',
  source: 'exact: the road speed does not change in the shift; from the engine speed asked, else the redline',
});
export const gearStep = figure({
  path: 'gearStep',
  scope: 'gear',
  name: 'step to the next gear',
  label: 'step to next gear',
  symbol: 'phi',
  words: ['gear step', 'ratio step', 'step to the next gear'],
  dimension: 'ratio',
  typical: { range: [0.6, 0.85], of: 'road gearboxes; common practice, no source' },
  needs: { ratio: gearRatio, next: higher(gearRatio) },
  compute: ({ ratio, next }) => next / ratio,
  formula: 'next / ratio',
  source: 'definition',
});
export const thrustPerTorque = figure({
  path: 'thrustPerTorque',
  scope: 'gear',
  name: 'thrust for each engine torque',
  label: 'thrust per torque',
  symbol: 'F/T',
  words: ['thrust per torque', 'gearing advantage', 'pull per torque'],
  dimension: 'ratioPerLength',
  needs: { overall: overallRatio, efficiency: driveEfficiency, circumference: drivenCircumference },
  compute: ({ overall, efficiency, circumference }) => (overall * efficiency * 2 * Math.PI) / circumference,
  formula: 'overall * efficiency * 2 * pi / circumference',
  source: 'exact: work in is work out, so the rolling radius counts; no rotating masses',
});
const calibration = 'the speedometer counts turns: it shows the way that the tires it was made for would have rolled';
export const calibratedBySize = figure({
  path: 'speedometer.circumferenceBySize',
  scope: 'car',
  name: 'circumference by the speedometer tire',
  label: 'rollout, by its tire',
  symbol: 'C_c',
  dimension: 'length',
  // As far from what is usual as the tires on the car are assumed to be: their errors are common, so that only the sizes differ.
  needs: {
    size: speedometerTire,
    fitted: firstOf(front(tireSize), rear(tireSize)),
    ratio: firstOf(front(diameterRatio), rear(diameterRatio)),
    factor: firstOf(front(rollingFactor), rear(rollingFactor)),
  },
  compute: ({ size, fitted, ratio, factor }) => {
    const design = designOf(size);
    if (isRefusal(design)) return design;
    const [its, here] = [usualOf(size), usualOf(fitted)];
    return (design.diameter * ratio * factor * its.diameterRatio * its.rollingFactor) / (here.diameterRatio * here.rollingFactor);
  },
  source: calibration,
});
export const calibratedByTurns = figure({
  path: 'speedometer.circumferenceByTurns',
  scope: 'car',
  name: 'circumference by the speedometer turns',
  label: 'rollout, by its turns',
  symbol: 'C_t',
  dimension: 'length',
  needs: { turns: speedometerTurns },
  compute: ({ turns }) => 1 / turns,
  formula: '1 / turns',
  source: calibration,
});
export const speedometerRatio = figure({
  path: 'speedometer.ratio',
  scope: 'car',
  name: 'true speed over shown speed',
  label: 'true over shown',
  symbol: 'v/v_s',
  words: ['speedometer ratio', 'speedometer error', 'speedo error', 'true over shown speed'],
  dimension: 'ratio',
  typical: { range: [0.9, 1], of: 'cars as they are sold: a speedometer must never show too little; common practice, no source' },
  needs: { now: drivenCircumference, made: firstOf(calibratedByTurns, calibratedBySize) },
  compute: ({ now, made }) => now / made,
  formula: 'now / made',
  source: `${calibration}; what the car maker added on purpose is not known here`,
});
export const trueSpeed = figure({
  path: 'speedometer.trueSpeed',
  scope: 'car',
  name: 'true speed',
  main: true,
  symbol: 'v',
  words: ['true speed', 'real speed', 'actual speed'],
  dimension: 'speed',
  needs: { shown: shownSpeed, ratio: speedometerRatio },
  compute: ({ shown, ratio }) => shown * ratio,
  formula: 'shown * ratio',
  source: calibration,
  caution: 'A larger tire makes a speedometer read low.',
});
export const speedometer = figure({
  path: 'speedometer',
  scope: 'car',
  name: 'speedometer reading',
  label: 'speedometer',
  main: true,
  symbol: 'v_s',
  words: ['speedometer', 'speedo', 'speedometer reading', 'speedo reading', 'shown speed', 'indicated speed'],
  dimension: 'speed',
  needs: { speed: roadSpeed, ratio: speedometerRatio },
  compute: ({ speed, ratio }) => speed / ratio,
  formula: 'speed / ratio',
  source: calibration,
  caution: 'A larger tire makes a speedometer read low.',
});
export const mostShown = figure({
  path: 'speedometer.most',
  scope: 'question',
  name: 'most that a speedometer may show',
  label: 'most it may show',
  symbol: 'v_1',
  words: ['speedometer limit', 'most shown speed'],
  dimension: 'speed',
  needs: { speed: roadSpeed },
  // 4 km/h
  compute: ({ speed }) => 1.1 * speed + 4 / 3.6,
  source: 'UN R39 5.3: 0 ≤ V1 - V2 ≤ V2/10 + 4 km/h; never less than the true speed',
});
