/** Road speed against engine speed, what a gear does to torque, and what the speedometer makes of the tires. */
import { asMeasured, figure, firstOf, front, higher, inPractice, isRefusal, maybe, quantity, rear, refuse, way } from '../../catalog.js';
import { designOf, usualOf } from '../tires/design.js';
import { rollingCircumference } from '../tires/dimensions.js';
import { diameterRatio, rollingFactor, tireSize } from '../tires/told.js';
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
} from './told.js';

const exact = 'kinematics, exact: one turn of the wheel is one rolling circumference';
/** m/s. */
const saneSpeed = [2, 150] as const;
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
export const overallRatio = quantity({
  path: 'overallRatio',
  typical: [inPractice('road cars, top gear to first', 2, 16)],
  scope: 'gear',
  name: 'overall ratio',
  symbol: 'i_o',
  words: ['overall ratio', 'total ratio', 'overall gearing'],
  dimension: 'ratio',
  sane: [0.5, 60],
  ways: [
    way({
      needs: { gear: gearRatio, final: finalDrive, transfer: transferRatio },
      compute: ({ gear, final, transfer }) => gear * final * transfer,
      formula: 'gear * final * transfer',
      source: 'exact: ratios in a row multiply',
    }),
  ],
});
export const gearSpeed = quantity({
  path: 'gearSpeed',
  scope: 'gear',
  name: 'road speed',
  main: true,
  symbol: 'v',
  words: ['gear speed', 'road speed', 'speed', 'how fast', 'speed in gear'],
  dimension: 'speed',
  sane: saneSpeed,
  caution: speedCaution,
  ways: [
    way({
      needs: { engineSpeed, circumference: drivenCircumference, overall: overallRatio },
      compute: ({ engineSpeed, circumference, overall }) => (engineSpeed / (2 * Math.PI)) * (circumference / overall),
      formula: 'engineSpeed / (2 * pi) * circumference / overall',
      source: exact,
    }),
  ],
});
export const topSpeed = quantity({
  path: 'topSpeed',
  scope: 'gear',
  name: 'top speed by gearing',
  label: 'top speed by gear',
  main: true,
  symbol: 'v_max',
  words: ['top speed', 'max speed', 'maximum speed', 'redline speed', 'speed at redline', 'speed at the redline'],
  dimension: 'speed',
  sane: saneSpeed,
  caution: speedCaution,
  ways: [
    way({
      needs: { top: firstOf(engineSpeed, redline), circumference: drivenCircumference, overall: overallRatio },
      compute: ({ top, circumference, overall }) => (top / (2 * Math.PI)) * (circumference / overall),
      formula: 'top / (2 * pi) * circumference / overall',
      source: `${exact}; at the engine speed asked, else the redline; by gearing only: drag and power may end it sooner`,
    }),
  ],
});
export const gearEngineSpeed = quantity({
  path: 'gearRevs',
  scope: 'gear',
  name: 'engine speed',
  symbol: 'n',
  words: ['engine speed', 'rpm', 'revs', 'engine rpm'],
  dimension: 'angularSpeed',
  sane: [20, 3000],
  caution: 'Above the redline an engine can break: mind a downshift.',
  ways: [
    way({
      needs: { roadSpeed, circumference: drivenCircumference, overall: overallRatio },
      compute: ({ roadSpeed, circumference, overall }) => ((2 * Math.PI * roadSpeed) / circumference) * overall,
      formula: '2 * pi * roadSpeed / circumference * overall',
      source: exact,
    }),
  ],
});
export const speedPerTurn = quantity({
  path: 'wayPerTurn',
  scope: 'gear',
  name: 'way for each turn of the engine',
  label: 'way per engine turn',
  symbol: 'C/i_o',
  words: ['way per turn', 'distance per engine turn'],
  dimension: 'length',
  sane: [0.01, 4],
  ways: [
    way({
      needs: { circumference: drivenCircumference, overall: overallRatio },
      compute: ({ circumference, overall }) => circumference / overall,
      formula: 'circumference / overall',
      source: `${exact}; the speed for each rpm`,
    }),
  ],
});
export const shiftSpeed = quantity({
  path: 'shiftTo',
  scope: 'gear',
  name: 'engine speed after shifting up',
  label: 'after the shift',
  symbol: 'n_2',
  words: ['engine speed after the shift', 'rpm after shift', 'after upshift', 'shift to'],
  dimension: 'angularSpeed',
  sane: [20, 2500],
  ways: [
    way({
      needs: { from: firstOf(engineSpeed, redline), ratio: gearRatio, next: higher(gearRatio) },
      compute: ({ from, ratio, next }) => (from * next) / ratio,
      formula: 'from * next / ratio',
      source: 'exact: the road speed does not change in the shift',
    }),
  ],
});
export const shiftDrop = quantity({
  path: 'shiftDrop',
  scope: 'gear',
  name: 'drop of engine speed to the next gear',
  label: 'drop at the shift',
  symbol: 'dn',
  words: ['rpm drop', 'drop', 'shift drop', 'rev drop', 'drop to the next gear'],
  dimension: 'angularSpeed',
  sane: [-500, 1500],
  ways: [
    way({
      needs: { from: firstOf(engineSpeed, redline), ratio: gearRatio, next: higher(gearRatio) },
      compute: ({ from, ratio, next }) => from * (1 - next / ratio),
      formula: 'from * (1 - next / ratio)',
      source: 'exact: the road speed does not change in the shift; from the engine speed asked, else the redline',
    }),
  ],
});
export const gearStep = quantity({
  path: 'gearStep',
  scope: 'gear',
  name: 'step to the next gear',
  symbol: 'phi',
  words: ['gear step', 'ratio step', 'step to the next gear'],
  dimension: 'ratio',
  sane: [1, 4],
  typical: { range: [1.15, 1.8], of: 'road gearboxes; common practice, no source' },
  ways: [
    way({
      needs: { ratio: gearRatio, next: higher(gearRatio) },
      compute: ({ ratio, next }) => ratio / next,
      formula: 'ratio / next',
      source: 'Naunheimer, Automotive Transmissions, ch. 4, from memory: the lower gear over the higher',
    }),
  ],
});
export const gearingChange = quantity({
  path: 'gearing.change',
  untypical: 'A comparison of two tires.',
  scope: 'car',
  name: 'how much shorter the gearing is since the car was measured',
  label: 'shorter gearing',
  symbol: 'di/i',
  words: ['change of gearing', 'shorter gearing', 'taller gearing'],
  dimension: 'ratio',
  sane: [-0.8, 4],
  ways: [
    way({
      needs: {
        now: finalDrive,
        before: asMeasured(finalDrive),
        transfer: transferRatio,
        transferBefore: asMeasured(transferRatio),
      },
      compute: ({ now, before, transfer, transferBefore }) => (now * transfer) / (before * transferBefore) - 1,
      formula: 'now * transfer / (before * transferBefore) - 1',
      source: 'exact, in every gear; the tires left out',
    }),
  ],
});
export const thrustPerTorque = quantity({
  path: 'thrustPerTorque',
  scope: 'gear',
  name: 'thrust for each engine torque',
  label: 'thrust per torque',
  symbol: 'F/T',
  words: ['thrust per torque', 'gearing advantage', 'pull per torque'],
  dimension: 'ratioPerLength',
  sane: [0.5, 200],
  ways: [
    way({
      needs: { overall: overallRatio, efficiency: driveEfficiency, circumference: drivenCircumference },
      compute: ({ overall, efficiency, circumference }) => (overall * efficiency * 2 * Math.PI) / circumference,
      formula: 'overall * efficiency * 2 * pi / circumference',
      source: 'exact: work in is work out, so the rolling radius counts; no rotating masses',
    }),
  ],
});
const calibration = 'the speedometer counts turns: it shows the way that the tires it was made for would have rolled';
export const speedometerCircumference = quantity({
  path: 'speedometer.circumference',
  scope: 'car',
  name: 'circumference that the speedometer was made for',
  label: 'made for a rollout of',
  symbol: 'C_s',
  dimension: 'length',
  ways: [
    way({ needs: { turns: speedometerTurns }, compute: ({ turns }) => 1 / turns, formula: '1 / turns', source: calibration }),
    way({
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
        return (
          (design.nominalDiameter * ratio * factor * its.diameterRatio * its.rollingFactor) / (here.diameterRatio * here.rollingFactor)
        );
      },
      source: calibration,
      basis: 'sizes as printed',
    }),
    way({
      needs: { size: speedometerTire, factor: firstOf(front(rollingFactor), rear(rollingFactor)) },
      compute: ({ size, factor }) => {
        const design = designOf(size);
        return isRefusal(design) ? design : design.nominalDiameter * factor;
      },
      source: calibration,
      basis: 'sizes as printed',
    }),
  ],
});
export const speedometerRatio = quantity({
  path: 'speedometer.ratio',
  scope: 'car',
  name: 'true speed over shown speed',
  label: 'true over shown',
  symbol: 'v/v_s',
  words: ['speedometer ratio', 'speedometer error', 'speedo error', 'true over shown speed'],
  dimension: 'ratio',
  sane: [0.5, 2],
  typical: { range: [0.9, 1], of: 'cars as they are sold: a speedometer must never show too little; common practice, no source' },
  ways: [
    way({
      needs: { now: drivenCircumference, made: speedometerCircumference },
      compute: ({ now, made }) => now / made,
      formula: 'now / made',
      source: `${calibration}; what the car maker added on purpose is not known here`,
    }),
  ],
});
export const trueSpeed = quantity({
  path: 'speedometer.trueSpeed',
  scope: 'car',
  name: 'true speed',
  main: true,
  symbol: 'v',
  words: ['true speed', 'real speed', 'actual speed'],
  dimension: 'speed',
  sane: saneSpeed,
  caution: 'A larger tire makes a speedometer read low.',
  ways: [
    way({
      needs: { shown: shownSpeed, ratio: speedometerRatio },
      compute: ({ shown, ratio }) => shown * ratio,
      formula: 'shown * ratio',
      source: calibration,
    }),
  ],
});
export const speedometer = quantity({
  path: 'speedometer',
  scope: 'car',
  name: 'speedometer reading',
  label: 'speedometer',
  main: true,
  symbol: 'v_s',
  words: ['speedometer', 'speedo', 'speedometer reading', 'speedo reading', 'shown speed', 'indicated speed'],
  dimension: 'speed',
  sane: saneSpeed,
  caution: 'A larger tire makes a speedometer read low.',
  ways: [
    way({
      needs: { speed: roadSpeed, ratio: speedometerRatio },
      compute: ({ speed, ratio }) => speed / ratio,
      formula: 'speed / ratio',
      source: calibration,
    }),
  ],
});
export const mostShown = quantity({
  path: 'speedometer.most',
  scope: 'question',
  name: 'most that a speedometer may show',
  label: 'most it may show',
  symbol: 'v_1',
  words: ['speedometer limit', 'most shown speed'],
  dimension: 'speed',
  sane: saneSpeed,
  ways: [
    way({
      needs: { speed: roadSpeed },
      // 4 km/h
      compute: ({ speed }) => 1.1 * speed + 4 / 3.6,
      source: 'UN R39 5.3: 0 ≤ V1 - V2 ≤ V2/10 + 4 km/h; never less than the true speed',
    }),
  ],
});
