/** Roll stiffness, tangent at ride height: of springs, bar and tires, of an axle and of the car; and the share of it in front. */
import { figure, front, left, rear, right } from '../catalog.js';
import { axleKind, springBase } from '../inputs/axles.js';
import { track } from '../inputs/mass.js';
import { tireRate } from '../inputs/ride.js';
import { barRollStiffness } from './bars.js';
import { cornerWheelRate } from './wheelRates.js';

export const springLever = figure({
  path: 'roll.springBase',
  scope: 'axle',
  name: 'distance at which the springs resist roll',
  label: 'spring span in roll',
  symbol: 't_s',
  dimension: 'length',
  needs: { kind: axleKind, track, base: springBase },
  compute: ({ kind, track, base }) => (kind === 'beam' ? base : track),
  source: 'the track where each wheel moves alone; on a beam axle the distance between the springs themselves',
});
export const springRollStiffness = figure({
  path: 'roll.springs',
  scope: 'axle',
  name: 'roll stiffness of the springs',
  label: 'spring roll stiffness',
  symbol: 'K_s',
  words: ['spring roll stiffness', 'roll stiffness of the spring'],
  dimension: 'rollStiffness',
  needs: { left: left(cornerWheelRate), right: right(cornerWheelRate), base: springLever },
  compute: ({ left, right, base }) => (base ** 2 * left * right) / (left + right),
  formula: 'base^2 * left * right / (left + right)',
  source: 'both sides solved with their sum fixed; with like rates k t^2/2',
});
export const suspensionRollStiffness = figure({
  path: 'roll.suspension',
  scope: 'axle',
  name: 'roll stiffness, springs and bar',
  label: 'roll stiffness',
  main: true,
  symbol: 'K_phi',
  words: ['roll stiffness', 'suspension roll stiffness', 'roll rate', 'axle roll stiffness'],
  dimension: 'rollStiffness',
  typical: { range: [10_000, 100_000], of: 'road cars; common practice, no source' },
  needs: { springs: springRollStiffness, bar: barRollStiffness },
  compute: ({ springs, bar }) => springs + bar,
  formula: 'springs + bar',
  source: 'side by side; the tires come in series with the whole',
});
export const tireRollStiffness = figure({
  path: 'roll.tires',
  scope: 'axle',
  name: 'roll stiffness of the tires',
  label: 'tire roll stiffness',
  symbol: 'K_t',
  words: ['tire roll stiffness'],
  dimension: 'rollStiffness',
  needs: { rate: tireRate, track },
  compute: ({ rate, track }) => (rate * track ** 2) / 2,
  formula: 'rate * track^2 / 2',
  source: 'two springs on the track',
});
export const axleRollStiffness = figure({
  path: 'roll.axle',
  scope: 'axle',
  name: 'roll stiffness with tires',
  label: 'roll, with tires',
  symbol: 'K_j',
  words: ['roll stiffness with tire', 'total axle roll stiffness'],
  dimension: 'rollStiffness',
  needs: { suspension: suspensionRollStiffness, tires: tireRollStiffness },
  compute: ({ suspension, tires }) => (suspension * tires) / (suspension + tires),
  formula: 'suspension * tires / (suspension + tires)',
  source: 'tires in series with springs and bar together, never wheel by wheel; exact with roll center and unsprung weight on the ground',
});
export const carRollStiffness = figure({
  path: 'roll.car',
  scope: 'car',
  name: 'roll stiffness of the car, springs and bars',
  label: 'roll stiffness',
  symbol: 'K',
  words: ['roll stiffness', 'car roll stiffness', 'total roll stiffness'],
  dimension: 'rollStiffness',
  needs: { front: front(suspensionRollStiffness), rear: rear(suspensionRollStiffness) },
  compute: ({ front, rear }) => front + rear,
  formula: 'front + rear',
  source: 'both axles under one body',
});
export const carRollStiffnessWithTires = figure({
  path: 'roll.carWithTires',
  scope: 'car',
  name: 'roll stiffness of the car with tires',
  label: 'roll, with tires',
  symbol: 'K',
  words: ['car roll stiffness with tire', 'roll stiffness with tire'],
  dimension: 'rollStiffness',
  needs: { front: front(axleRollStiffness), rear: rear(axleRollStiffness) },
  compute: ({ front, rear }) => front + rear,
  formula: 'front + rear',
  source: 'both axles under one body',
});
export const rollStiffnessShare = figure({
  path: 'roll.frontShare',
  scope: 'car',
  name: 'front share of the roll stiffness, springs and bars',
  label: 'front roll share',
  main: true,
  symbol: 'lambda_K',
  words: [
    'front share of roll stiffness',
    'front roll stiffness share',
    'roll stiffness share',
    'front roll share',
    'roll stiffness distribution',
  ],
  dimension: 'ratio',
  typical: { range: [0.45, 0.75], of: 'road cars; common practice, no source' },
  needs: { front: front(suspensionRollStiffness), rear: rear(suspensionRollStiffness) },
  compute: ({ front, rear }) => front / (front + rear),
  formula: 'front / (front + rear)',
  source: 'by definition; not the share of load transfer, which roll centers and unsprung weight change',
});
export const rollStiffnessShareWithTires = figure({
  path: 'roll.frontShareWithTires',
  scope: 'car',
  name: 'front share of the roll stiffness with tires',
  label: 'front share, tires in',
  symbol: 'lambda_K',
  words: ['front share of roll stiffness with tire', 'roll stiffness share with tire'],
  dimension: 'ratio',
  needs: { front: front(axleRollStiffness), rear: rear(axleRollStiffness) },
  compute: ({ front, rear }) => front / (front + rear),
  formula: 'front / (front + rear)',
  source: 'by definition',
});
export const barShare = figure({
  path: 'roll.barShare',
  scope: 'axle',
  name: "the bar's part of the axle's roll stiffness",
  label: "bar's part of roll",
  symbol: 'K_bar/K_phi',
  words: ['bar share', 'sway bar share', 'bar part of roll stiffness'],
  dimension: 'ratio',
  needs: { bar: barRollStiffness, suspension: suspensionRollStiffness },
  compute: ({ bar, suspension }) => bar / suspension,
  formula: 'bar / suspension',
  source: 'by definition',
});
