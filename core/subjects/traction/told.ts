/** How the thrust is shared between the wheels of an axle, and between the axles. */
import { choice, inPractice, quantity } from '../../catalog.js';

export const differential = choice({
  path: 'differential',
  scope: 'axle',
  name: 'differential',
  alike: true,
  words: ['differential', 'diff'],
  options: ['open', 'biasing', 'locked'],
  optionWords: {
    open: ['open diff', 'open differential'],
    biasing: ['lsd', 'limited slip', 'limited slip diff', 'limited slip differential', 'torque biasing', 'clutch diff', 'helical diff'],
    locked: ['locked diff', 'welded', 'welded diff', 'spool', 'locker', 'solid', 'locked differential'],
  },
  alone: ['lsd', 'limited slip', 'spool', 'locker', 'welded diff', 'torque biasing'],
  measure:
    'Both driven wheels off the ground, in gear: turn one. Open: the other turns backward easily. Biasing: hard. Locked: it turns along.',
  estimate: { needs: {}, compute: () => 'open', source: 'as most road cars leave the factory; common practice, no source' },
});
export const biasRatio = quantity({
  path: 'differential.bias',
  typical: [inPractice('viscous and plate differentials', 1.3, 2.5), inPractice('torque-sensing differentials', 2, 4)],
  scope: 'axle',
  name: 'differential bias ratio',
  label: 'diff bias ratio',
  symbol: 'tau',
  alike: true,
  words: ['bias ratio', 'torque bias ratio', 'torque bias', 'tbr', 'diff bias', 'differential bias'],
  dimension: 'ratio',
  sane: [1, 8],
  told: { usually: 'spec', measured: { relative: 0.1 }, spec: { relative: 0.15 } },
  measure: "From the maker's data: torque at the wheel that grips over torque at the one that slips. Preload is left out.",
  estimate: { needs: {}, compute: () => 2.2, within: { absolute: 0.8 }, source: 'common practice, no source' },
});
export const frontDriveShare = quantity({
  path: 'drive.frontShare',
  percent: true,
  typical: [inPractice('four driven wheels', 0.3, 0.6)],
  scope: 'car',
  name: 'front share of the drive torque, both axles driven',
  label: 'front torque split',
  symbol: 'd_f',
  words: ['torque split', 'front torque share', 'drive split', 'front drive share', 'center differential split'],
  dimension: 'ratio',
  sane: [0.05, 0.95],
  told: { usually: 'spec', measured: { absolute: 0.03 }, spec: { absolute: 0.03 } },
  measure: "From the maker's data of the center differential or coupling.",
  estimate: { needs: {}, compute: () => 0.5, within: { absolute: 0.2 }, source: 'common practice, no source' },
});
export const shaftReactionTold = quantity({
  path: 'shaft.reaction',
  percent: true,
  untypical: 'All of it on a live axle with its differential, nothing on any other: a fact, not a matter of more or less.',
  scope: 'axle',
  name: 'part of the shaft torque on a beam that the other axle holds, told',
  label: 'shaft torque share',
  symbol: 'K_o/K',
  words: ['shaft torque share', 'propeller torque share'],
  dimension: 'ratio',
  sane: [0.05, 0.95],
  told: { usually: 'spec', measured: { absolute: 0.05 }, spec: { absolute: 0.05 } },
  measure: "The other axle's share of the roll stiffness; known springs and bars make it needless.",
  estimate: { needs: {}, compute: () => 0.6, within: { absolute: 0.15 }, source: 'common practice, no source' },
});
