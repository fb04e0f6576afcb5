/** The anti-roll bars: how stiff at their ends, at the wheel and in roll; what they weigh; what unequal links do. */

import { barMass as massOfBar, barStiffness as stiffnessOfBar } from '../bars/bar.js';
import { figure, ifTold, left, quantity, refuse, right, structure, way } from '../catalog.js';
import type { BarModel } from '../cornering/model.js';
import { axleKind } from '../inputs/axles.js';
import * as told from '../inputs/bars.js';
import { track } from '../inputs/mass.js';

const beamTheory = 'beam theory: twist of the bar, bending of its arms, links in series; corner bends left out';
const virtualWork = 'virtual work';
/** kg/m^3, of steel. */
const steel = 7850;
const levers = { left: left(told.barLever), right: right(told.barLever) };

export const barSpan = figure({
  path: 'bar.span',
  scope: 'axle',
  name: 'distance at which the bar resists roll',
  label: 'bar span in roll',
  symbol: 't_b',
  dimension: 'length',
  needs: { kind: axleKind, track, spacing: told.barLinkSpacing },
  compute: ({ kind, track, spacing }) => (kind === 'beam' ? spacing : track),
  source: 'the track where each wheel moves alone; on a beam axle the distance between the links',
});
export const barTwistOfShape = figure({
  path: 'bar.twistOfShape',
  scope: 'axle',
  name: 'torque of the bar per turn of one end, from its dimensions',
  label: 'bar twist, by size',
  symbol: 'K_t',
  dimension: 'rollStiffness',
  needs: {
    outer: told.barDiameter,
    bore: told.barBore,
    length: told.barLength,
    ...levers,
    leftArm: left(told.barArm),
    rightArm: right(told.barArm),
    shear: told.barShearModulus,
    young: told.barYoungsModulus,
    link: told.barLinkRate,
  },
  compute: ({ outer, bore, length, left, right, leftArm, rightArm, shear, young, link }) => {
    if (outer === 0) return 0;
    if (bore >= outer) return refuse('The bore of the bar is not smaller than its diameter.', 'bar.bore', 'bar.diameter');
    const ends = [
      { lever: left, arm: Math.max(leftArm, left) },
      { lever: right, arm: Math.max(rightArm, right) },
    ] as const;
    return stiffnessOfBar({ outer, bore, length, ends, youngsModulus: young, shearModulus: shear, link });
  },
  source: beamTheory,
});
const ofRoll = ({
  stiffness,
  left,
  right,
  ratio,
  span,
}: {
  stiffness: number;
  left: number;
  right: number;
  ratio: number;
  span: number;
}): number => stiffness / (((ratio / left + ratio / right) * span) / 2) ** 2;
const ofRollFormula = 'stiffness / ((ratio / left + ratio / right) * span / 2)^2';
export const barTwist = quantity({
  path: 'bar.twist',
  scope: 'axle',
  name: 'torque of the bar per turn of one end against the other',
  label: 'bar twist',
  symbol: 'K_t',
  dimension: 'rollStiffness',
  ways: [
    way({
      needs: { stiffness: ifTold(told.barRollStiffnessTold), ...levers, ratio: told.barRatio, span: barSpan },
      compute: ofRoll,
      formula: ofRollFormula,
      source: virtualWork,
      basis: 'from its roll stiffness told',
    }),
    way({
      needs: { rate: told.barRateTold, ...levers, link: told.barLinkRate },
      compute: ({ rate, left, right, link }) => 1 / (1 / (rate * left * right) + (1 / (left * left) + 1 / (right * right)) / link),
      formula: '1 / (1 / (rate * left * right) + (1 / left^2 + 1 / right^2) / link)',
      source: `${virtualWork}; links in series`,
      basis: 'from its rate told',
    }),
    way({
      needs: { twist: barTwistOfShape },
      compute: ({ twist }) => twist,
      formula: 'twist',
      source: beamTheory,
      basis: 'twist of the bar',
    }),
    way({
      needs: { stiffness: told.barRollStiffnessTold, ...levers, ratio: told.barRatio, span: barSpan },
      compute: ofRoll,
      formula: ofRollFormula,
      source: `${virtualWork}, of a bar that was not told of`,
      basis: 'a bar of the usual size',
    }),
  ],
});
export const barRate = figure({
  path: 'bar.rateAtEnds',
  scope: 'axle',
  name: 'rate of the anti-roll bar at its ends, with links',
  label: 'bar rate',
  main: true,
  symbol: 'K_b',
  words: [
    'bar rate',
    'sway bar rate',
    'bar',
    'sway bar',
    'anti-roll bar',
    'arb',
    'bar stiffness',
    'sway bar stiffness',
    'arb stiffness',
    'stiff bar',
  ],
  dimension: 'rate',
  typical: { range: [10_000, 150_000], of: 'road cars to autocross; common practice, no source' },
  needs: { twist: barTwist, ...levers },
  compute: ({ twist, left, right }) => twist / (left * right),
  formula: 'twist / (left * right)',
  source: `force at one end per movement against the other, ${beamTheory}; unlike holes: the mean of both levers in geometry`,
});
export const barWheelRate = figure({
  path: 'bar.wheelRate',
  scope: 'axle',
  name: 'what the bar adds to the wheel rate, one wheel moving',
  label: 'bar at one wheel',
  symbol: 'k_b',
  words: ['bar wheel rate', 'sway bar wheel rate', 'bar rate at the wheel'],
  dimension: 'rate',
  needs: { rate: barRate, ratio: told.barRatio },
  compute: ({ rate, ratio }) => rate * ratio ** 2,
  formula: 'rate * ratio^2',
  source: 'motion ratio squared; in pure roll both ends move, and each wheel feels twice as much; in pure bump nothing',
});
export const barWeight = figure({
  path: 'bar.mass',
  scope: 'axle',
  name: 'weight of the anti-roll bar',
  label: 'bar weight',
  symbol: 'm_b',
  words: ['bar weight', 'sway bar weight', 'bar mass'],
  dimension: 'mass',
  needs: {
    outer: told.barDiameter,
    bore: told.barBore,
    length: told.barLength,
    leftArm: left(told.barArm),
    rightArm: right(told.barArm),
  },
  compute: ({ outer, bore, length, leftArm, rightArm }) =>
    bore < outer || outer === 0
      ? massOfBar(outer, Math.min(bore, outer), length + leftArm + rightArm, steel)
      : refuse('The bore of the bar is not smaller than its diameter.', 'bar.bore', 'bar.diameter'),
  source: 'volume of a U of steel, 7850 kg/m^3, arms of the same section',
});
export const barRollStiffness = figure({
  path: 'roll.bar',
  scope: 'axle',
  name: 'roll stiffness of the anti-roll bar',
  label: 'bar roll stiffness',
  symbol: 'K_bar',
  words: ['bar roll stiffness', 'sway bar roll stiffness', 'roll stiffness of the bar'],
  dimension: 'rollStiffness',
  needs: { twist: barTwist, ...levers, ratio: told.barRatio, span: barSpan },
  compute: ({ twist, left, right, ratio, span }) => twist * (((ratio / left + ratio / right) * span) / 2) ** 2,
  formula: 'twist * ((ratio / left + ratio / right) * span / 2)^2',
  source: `both ends move: rate times (ratio times track) squared, on a beam link spacing instead of track; ${virtualWork}`,
});
export const mismatch = figure({
  path: 'bar.mismatch',
  scope: 'axle',
  name: 'free mismatch of the ends of the bar',
  label: 'mismatch of bar ends',
  symbol: 'e',
  dimension: 'length',
  needs: { longer: told.linkLonger, angle: told.linkAngle, end: told.barEnd },
  compute: ({ longer, angle, end }) => (end === 'above' ? longer : -longer) * Math.cos(angle),
  source:
    'difference of the links times the cosine of their angle; a longer left link pushes the left wheel down when the end of the bar is above the arm',
});

/** No bar, always the same one, so that what depends on it sees no change. */
const noBar: BarModel = { stiffness: 0, arms: [0, 0], mismatch: 0, linkSpacing: 1 };
export const barModel = structure({
  path: 'bar.model',
  scope: 'axle',
  name: 'the anti-roll bar as the cornering model has it',
  needs: { twist: barTwist, ...levers, ratio: told.barRatio, mismatch, spacing: barSpan },
  compute: ({ twist, left, right, ratio, mismatch, spacing }): BarModel =>
    twist === 0
      ? noBar
      : {
          stiffness: twist,
          arms: [ratio / left, ratio / right],
          // The mismatch is that of the left end.
          mismatch: mismatch / left,
          linkSpacing: spacing,
        },
  source: virtualWork,
});
