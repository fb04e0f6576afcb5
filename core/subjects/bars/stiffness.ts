/** The anti-roll bars: how stiff at their ends, at the wheel and in roll; what they weigh; what unequal links do. Each can be told as well. */

import { addWay } from '../../catalog/ways.js';
import {
  asMeasured,
  figure,
  firstOf,
  given,
  inPractice,
  inverse,
  left,
  maybe,
  quantity,
  type Refusal,
  refine,
  refuse,
  right,
  structure,
  way,
} from '../../catalog.js';
import type { BarModel } from '../cornering/model.js';
import { track } from '../mass/told.js';
import { beamAxle, independentAxle } from '../suspension/told.js';
import { type BarEnd, barMass as massOfBar, barStiffness as stiffnessOfBar } from './bar.js';
import { twistRatio } from './ratio.js';
import * as told from './told.js';

const beamTheory = 'beam theory: twist of the bar, bending of its arms, links in series; corner bends left out';
const virtualWork = 'virtual work';
/** kg/m^3, of steel. */
const steel = 7850;
const levers = { left: left(told.leverHere), right: right(told.leverHere) };
/** N/m at the ends or a wheel; 0: no bar. */
const saneRate = [0, 1e6] as const;
const toldRate = { usually: 'spec', measured: { relative: 0.05 }, spec: { relative: 0.15 } } as const;
const linksLeftOut = 'links left out';
const byRoll = 'from the roll stiffness of the bar told';

/** m: a bar thinner than this is none. */
const leastDiameter = 0.001;
export const barSpan = quantity({
  path: 'bar.span',
  scope: 'axle',
  name: 'distance at which the bar resists roll',
  label: 'bar span in roll',
  symbol: 't_b',
  dimension: 'length',
  ways: [
    way({
      needs: { beam: beamAxle, spacing: told.barLinkSpacing },
      compute: ({ spacing }) => spacing,
      source: 'on a beam axle the distance between the links',
    }),
    way({ needs: { alone: independentAxle, track }, compute: ({ track }) => track, source: 'the track where each wheel moves alone' }),
  ],
});
/** The bore is missing only where the wall is too thick for one. Read by each way that needs a section, so that no plainer way hides what is wrong. */
const section = { outer: told.barDiameter, bore: maybe(told.barBore) };
const isSection = (outer: number, bore: number | undefined): bore is number =>
  bore !== undefined && (bore < outer || outer < leastDiameter);
const noSection = (bore: number | undefined): Refusal =>
  bore === undefined
    ? refuse('The wall of the bar is more than half its diameter.', 'bar.wall', 'bar.diameter')
    : refuse('The bore of the bar is not smaller than its diameter.', 'bar.bore', 'bar.diameter');
/** An arm of no length is one that does not bend. */
const endOf = (lever: number, arm: number): BarEnd => ({ lever, arm: arm > 0 ? Math.max(arm, lever) : 0 });
const arms = 'arms that bend';
const links = 'links that give';
const ofRoll = (is: { stiffness: number; left: number; right: number; ratio: number; span: number }): number =>
  is.stiffness / (((is.ratio / is.left + is.ratio / is.right) * is.span) / 2) ** 2;
const ofRollFormula = 'stiffness / ((ratio / left + ratio / right) * span / 2)^2';
/** Torque per turn of one end, however the bar was told. */
export const barTwist = quantity({
  path: 'bar.twist',
  scope: 'axle',
  name: 'torque of the bar per turn of one end against the other',
  label: 'bar twist',
  symbol: 'K_t',
  dimension: 'rollStiffness',
  ways: [
    way({
      needs: { rate: told.barRateTold, ...levers, link: refine(told.barLinkRate, Number.POSITIVE_INFINITY, links) },
      compute: ({ rate, left, right, link }) => 1 / (1 / (rate * left * right) + (1 / (left * left) + 1 / (right * right)) / link),
      formula: '1 / (1 / (rate * left * right) + (1 / left^2 + 1 / right^2) / link)',
      source: `${virtualWork}; links in series`,
      basis: 'from its rate told',
    }),
    way({
      needs: {
        ...section,
        length: told.barLength,
        ...levers,
        leftArm: refine(firstOf(left(told.barArm), right(told.barArm)), 0, arms),
        rightArm: refine(firstOf(right(told.barArm), left(told.barArm)), 0, arms),
        shear: told.barShearModulus,
        young: told.barYoungsModulus,
        link: refine(told.barLinkRate, Number.POSITIVE_INFINITY, links),
      },
      compute: ({ outer, bore, length, left, right, leftArm, rightArm, shear, young, link }) =>
        isSection(outer, bore)
          ? stiffnessOfBar({
              ...{ outer, bore, length, shearModulus: shear, youngsModulus: young, link },
              ends: [endOf(left, leftArm), endOf(right, rightArm)],
            })
          : noSection(bore),
      source: beamTheory,
      basis: 'twist of the bar',
    }),
    way({
      needs: { stiffness: told.barUsual, ...levers, ratio: told.barRatio, span: barSpan },
      compute: ofRoll,
      formula: ofRollFormula,
      source: `${virtualWork}, of a bar that was not told of`,
      basis: 'a bar of the usual size',
    }),
  ],
});
export const barRate = quantity({
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
  sane: saneRate,
  told: toldRate,
  typical: { range: [10_000, 150_000], of: 'road cars to autocross; common practice, no source' },
  ways: [
    way({
      needs: { twist: barTwist, ...levers },
      compute: ({ twist, left, right }) => twist / (left * right),
      formula: 'twist / (left * right)',
      source: `force at one end per movement against the other, ${beamTheory}; unlike holes: the mean of both levers in geometry`,
    }),
    way({
      needs: { rate: given(told.barRateTold) },
      compute: ({ rate }) => rate,
      formula: 'rate',
      source: 'as told, links rigid',
      basis: linksLeftOut,
    }),
  ],
});
export const barWheelRate = quantity({
  path: 'bar.wheelRate',
  typical: [inPractice('road cars to autocross', 2000, 60_000)],
  scope: 'axle',
  name: 'what the bar adds to the wheel rate, one wheel moving',
  label: 'bar at one wheel',
  symbol: 'k_b',
  words: ['bar wheel rate', 'sway bar wheel rate', 'bar rate at the wheel'],
  dimension: 'rate',
  sane: saneRate,
  told: toldRate,
  ways: [
    way({
      needs: { rate: barRate, ratio: told.barRatio },
      compute: ({ rate, ratio }) => rate * ratio ** 2,
      formula: 'rate * ratio^2',
      source: 'motion ratio squared; in pure roll both ends move, and each wheel feels twice as much; in pure bump nothing',
      basis: 'one wheel moving',
    }),
  ],
});
export const barRollWheelRate = quantity({
  path: 'bar.rollWheelRate',
  typical: [inPractice('road cars to autocross', 4000, 120_000)],
  scope: 'axle',
  name: 'what the bar adds to the wheel rate in roll, both wheels moving',
  label: 'bar at wheels in roll',
  symbol: 'k_br',
  words: ['bar wheel rate in roll', 'sway bar wheel rate in roll', 'bar roll wheel rate'],
  dimension: 'rate',
  sane: [0, 2e6],
  told: toldRate,
  ways: [
    way({
      needs: { one: barWheelRate },
      compute: ({ one }) => 2 * one,
      formula: '2 * one',
      source: `both ends move, one up and one down; ${virtualWork}`,
      basis: 'both wheels moving',
    }),
  ],
});
export const barRollStiffness = quantity({
  path: 'roll.bar',
  typical: [inPractice('front bars of road cars', 5000, 40_000), inPractice('rear bars of road cars', 1000, 20_000)],
  scope: 'axle',
  name: 'roll stiffness of the anti-roll bar',
  label: 'bar roll stiffness',
  symbol: 'K_bar',
  instead: 'bar',
  words: ['bar roll stiffness', 'sway bar roll stiffness', 'roll stiffness of the bar'],
  dimension: 'rollStiffness',
  sane: [0, 2e5],
  told: toldRate,
  measure: 'What the bar adds to the roll stiffness of its axle, as the maker of the car or the bar gives it.',
  ways: [
    way({
      needs: { twist: barTwist, ...levers, ratio: told.barRatio, span: barSpan },
      compute: ({ twist, left, right, ratio, span }) => twist * (((ratio / left + ratio / right) * span) / 2) ** 2,
      formula: 'twist * ((ratio / left + ratio / right) * span / 2)^2',
      source: `both ends move: rate times (ratio times track) squared, on a beam link spacing instead of track; ${virtualWork}`,
    }),
    way({
      needs: { rate: barRate, ratio: told.barRatio, span: barSpan },
      compute: ({ rate, ratio, span }) => rate * (ratio * span) ** 2,
      formula: 'rate * (ratio * span)^2',
      source: `both ends move: rate times (ratio times track) squared, holes alike; ${virtualWork}`,
    }),
  ],
});
inverse(barTwist, {
  needs: { stiffness: given(barRollStiffness), ...levers, ratio: told.barRatio, span: barSpan },
  compute: ofRoll,
  formula: ofRollFormula,
  source: virtualWork,
  basis: byRoll,
});
inverse(barTwist, {
  needs: { rate: given(barRate), ...levers },
  compute: ({ rate, left, right }) => rate * left * right,
  formula: 'rate * left * right',
  source: virtualWork,
  basis: 'from its rate told',
});
inverse(barRate, {
  needs: { stiffness: given(barRollStiffness), ...levers, ratio: told.barRatio, span: barSpan },
  compute: (is) => ofRoll(is) / (is.left * is.right),
  formula: `${ofRollFormula} / (left * right)`,
  source: virtualWork,
  basis: byRoll,
});
inverse(barRate, {
  needs: { stiffness: given(barRollStiffness), ratio: told.barRatio, span: barSpan },
  compute: ({ stiffness, ratio, span }) => stiffness / (ratio * span) ** 2,
  formula: 'stiffness / (ratio * span)^2',
  source: `${virtualWork}, holes alike`,
  basis: byRoll,
});
inverse(barRate, {
  needs: { wheel: given(barWheelRate), ratio: told.barRatio },
  compute: ({ wheel, ratio }) => wheel / ratio ** 2,
  formula: 'wheel / ratio^2',
  source: 'motion ratio squared',
  basis: 'from its rate at the wheel told',
});
inverse(barWheelRate, {
  needs: { both: given(barRollWheelRate) },
  compute: ({ both }) => both / 2,
  formula: 'both / 2',
  source: virtualWork,
  basis: 'from its rate at the wheels in roll told',
});

/** Made after what reads it, so that a refusal says what is wrong with a bar before it says that there is one. */
export const noBar = quantity({
  path: 'bar.none',
  scope: 'axle',
  name: 'stiffness of an axle without a bar',
  label: 'no bar',
  symbol: '0',
  dimension: 'ratio',
  ways: [
    way({
      needs: { outer: told.barDiameter },
      compute: ({ outer }) => (outer < leastDiameter ? 0 : refuse('There is a bar.', 'bar.diameter')),
      source: 'told as 0: nothing more is asked of it',
    }),
  ],
});
const none = way({ needs: { none: noBar }, compute: ({ none }) => none, source: 'told as 0', basis: 'no bar' });
for (const one of [barTwist, barRate, barWheelRate, barRollStiffness]) addWay(one, none);

const holes = { ...levers, leftBefore: asMeasured(left(told.leverHere)), rightBefore: asMeasured(right(told.leverHere)) };
const anyHoles = {
  left: refine(levers.left, 1),
  right: refine(levers.right, 1),
  leftBefore: refine(holes.leftBefore, 1),
  rightBefore: refine(holes.rightBefore, 1),
};
const noneBefore = refuse('There was no bar before, so that no part of it says how much stiffer it is.', 'bar.diameter');
/** In geometry the mean of both levers is what a bar with unlike holes acts with. */
const meanLever = (left: number, right: number): number => Math.sqrt(left * right);
const twistAlone = 'twist of the bar alone';
const fourthPower = 'stiffness goes with outside to the fourth less bore to the fourth, over the lever squared';
export const barStiffening = quantity({
  path: 'bar.stiffening',
  untypical: 'A comparison of two bars.',
  scope: 'axle',
  name: 'how much stiffer the anti-roll bar is than before',
  label: 'bar stiffer by',
  symbol: 'dK/K',
  words: ['bar stiffening', 'stiffer bar', 'change of bar stiffness', 'how much stiffer is the bar'],
  dimension: 'ratio',
  sane: [-1, 20],
  ways: [
    way({
      needs: { now: barRate, before: asMeasured(barRate) },
      compute: ({ now, before }) => (before > 0 ? now / before - 1 : noneBefore),
      formula: 'now / before - 1',
      source: 'rates at the ends of the bar, now and before',
    }),
    way({
      needs: { ...section, outerBefore: asMeasured(section.outer), boreBefore: asMeasured(section.bore), ...anyHoles },
      compute: ({ outer, bore, outerBefore, boreBefore, left, right, leftBefore, rightBefore }) => {
        if (!isSection(outer, bore)) return noSection(bore);
        if (!isSection(outerBefore, boreBefore)) return noSection(boreBefore);
        if (outerBefore < leastDiameter) return noneBefore;
        const before = { outer: outerBefore, bore: boreBefore, lever: meanLever(leftBefore, rightBefore) };
        return twistRatio(before, { outer, bore, lever: meanLever(left, right) }) - 1;
      },
      source: fourthPower,
      basis: twistAlone,
    }),
    way({
      needs: holes,
      compute: ({ left, right, leftBefore, rightBefore }) => (leftBefore * rightBefore) / (left * right) - 1,
      formula: 'leftBefore * rightBefore / (left * right) - 1',
      source: fourthPower,
      basis: twistAlone,
    }),
  ],
});

const steelBar = 'volume of a round bar of steel, 7850 kg/m^3';
export const barWeight = quantity({
  path: 'bar.mass',
  scope: 'axle',
  name: 'weight of the anti-roll bar',
  label: 'bar weight',
  symbol: 'm_b',
  words: ['bar weight', 'sway bar weight', 'bar mass'],
  dimension: 'mass',
  sane: [0, 40],
  told: { usually: 'measured', measured: { relative: 0.02 }, spec: { relative: 0.05 } },
  ways: [
    way({
      needs: {
        ...section,
        length: told.barLength,
        leftArm: firstOf(left(told.barArm), right(told.barArm)),
        rightArm: firstOf(right(told.barArm), left(told.barArm)),
      },
      compute: ({ outer, bore, length, leftArm, rightArm }) =>
        isSection(outer, bore) ? massOfBar(outer, Math.min(bore, outer), length + leftArm + rightArm, steel) : noSection(bore),
      source: `${steelBar}, a U with arms of the same section`,
      basis: 'arms of the same section',
    }),
    way({
      needs: { ...section, length: told.barLength },
      compute: ({ outer, bore, length }) =>
        isSection(outer, bore) ? massOfBar(outer, Math.min(bore, outer), length, steel) : noSection(bore),
      source: `${steelBar}, the length that twists`,
      basis: 'arms left out',
    }),
  ],
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
const withoutBar: BarModel = { stiffness: 0, arms: [0, 0], mismatch: 0, linkSpacing: 1 };
export const barModel = structure({
  path: 'bar.model',
  scope: 'axle',
  name: 'the anti-roll bar as the cornering model has it',
  needs: { twist: barTwist, ...levers, ratio: told.barRatio, mismatch, spacing: barSpan },
  compute: ({ twist, left, right, ratio, mismatch, spacing }): BarModel =>
    twist === 0
      ? withoutBar
      : {
          stiffness: twist,
          arms: [ratio / left, ratio / right],
          // The mismatch is that of the left end.
          mismatch: mismatch / left,
          linkSpacing: spacing,
        },
  source: virtualWork,
});
