/** Small made catalogs for the tests of the engine. Nothing here is a car anyone has. */

import type { Fact } from '../../core/car.js';
import {
  asMeasured,
  choice,
  curve,
  designation,
  type Evidence,
  figure,
  firstOf,
  front,
  higher,
  left,
  maybe,
  quantity,
  rear,
  refuse,
  right,
  structure,
  thisAxle,
  thisSide,
} from '../../core/catalog.js';
import { compile } from '../../core/engine.js';

export const told = { usually: 'measured', measured: { relative: 0.01 }, spec: { relative: 0.03 } } as const;
const made = { measure: 'A made input.', told } as const;
const source = 'made for this test';

export const mass = quantity({ ...made, path: 'mass', scope: 'car', name: 'mass', words: ['mass'], dimension: 'mass', sane: [300, 3000] });
export const frontShare = quantity({
  ...made,
  path: 'frontShare',
  scope: 'car',
  name: 'front share',
  words: ['front share'],
  dimension: 'ratio',
  sane: [0.3, 0.7],
  estimate: { needs: {}, compute: () => 0.5, within: { absolute: 0.05 }, source },
});
export const scale = quantity({
  ...made,
  path: 'scale',
  scope: 'corner',
  name: 'scale reading',
  words: ['scale'],
  dimension: 'mass',
  sane: [50, 900],
  extensive: true,
  state: true,
});
export const spring = quantity({
  ...made,
  path: 'spring.rate',
  scope: 'axle',
  name: 'spring rate',
  words: ['spring'],
  dimension: 'rate',
  sane: [5e3, 4e5],
});
export const ratio = quantity({
  ...made,
  path: 'spring.ratio',
  scope: 'axle',
  name: 'motion ratio',
  words: ['motion ratio'],
  dimension: 'ratio',
  sane: [0.3, 1.2],
  estimate: { needs: {}, compute: () => 0.8, within: { relative: 0.1 }, source },
});
export const tireRate = quantity({
  ...made,
  path: 'tire.rate',
  scope: 'axle',
  name: 'tire rate',
  words: ['tire rate'],
  dimension: 'rate',
  sane: [1e5, 5e5],
  estimate: { needs: {}, compute: () => 2e5, within: { relative: 0.2 }, error: 'common', source },
});
export const camber = quantity({
  ...made,
  path: 'camber',
  scope: 'corner',
  name: 'camber',
  words: ['camber'],
  dimension: 'angle',
  sane: [-0.1, 0.1],
});
export const height = quantity({
  ...made,
  path: 'height',
  scope: 'axle',
  name: 'ride height as read',
  words: ['height'],
  dimension: 'length',
  sane: [0.05, 1],
  state: true,
});
export const kind = choice({
  path: 'kind',
  scope: 'axle',
  name: 'kind of axle',
  words: ['axle'],
  measure: 'Look.',
  options: ['independent', 'beam'],
  estimate: { needs: {}, compute: () => 'independent' as const, source },
});
export const base = quantity({
  ...made,
  path: 'base',
  scope: 'axle',
  name: 'spring base',
  words: ['spring base'],
  dimension: 'length',
  sane: [0.3, 1.6],
});
export const table = curve({
  ...made,
  path: 'spring.table',
  scope: 'axle',
  name: 'spring table',
  words: ['table'],
  dimension: 'force',
  along: 'length',
  sane: [0, 5e4],
  saneAlong: [0, 0.5],
});
export const size = designation({
  path: 'tire.size',
  scope: 'axle',
  name: 'tire size',
  words: ['tire size'],
  measure: 'Read it.',
  parse: (text) =>
    /^\d+x\d+$/.test(text) ? { width: Number(text.split('x')[0]), rim: Number(text.split('x')[1]) } : refuse(`${text} is no size.`),
  write: ({ width, rim }) => `${width}x${rim}`,
});
export const gear = quantity({
  ...made,
  path: 'gear.ratio',
  scope: 'gear',
  name: 'gear ratio',
  words: ['gear'],
  dimension: 'ratio',
  sane: [0.4, 5],
});
export const roadSpeed = quantity({
  ...made,
  path: 'road.speed',
  scope: 'question',
  name: 'road speed',
  words: ['speed'],
  dimension: 'speed',
  sane: [0, 100],
});

export const massFromScales = figure({
  path: 'massFromScales',
  scope: 'car',
  name: 'mass from the scales',
  symbol: 'm',
  dimension: 'mass',
  source,
  needs: { lf: front(left(scale)), rf: front(right(scale)), lr: rear(left(scale)), rr: rear(right(scale)) },
  compute: ({ lf, rf, lr, rr }) => lf + rf + lr + rr,
});
export const totalMass = figure({
  path: 'totalMass',
  scope: 'car',
  name: 'total mass',
  words: ['total mass'],
  symbol: 'm',
  dimension: 'mass',
  source,
  needs: { mass: firstOf(massFromScales, mass) },
  compute: ({ mass }) => mass,
});
export const axleMass = figure({
  path: 'axleMass',
  scope: 'axle',
  name: 'axle mass',
  symbol: 'm',
  dimension: 'mass',
  source,
  needs: { total: totalMass, share: frontShare, axle: thisAxle },
  compute: ({ total, share, axle }) => total * (axle === 'front' ? share : 1 - share),
});
export const wheelRate = figure({
  path: 'wheelRate',
  scope: 'axle',
  name: 'wheel rate',
  symbol: 'k',
  dimension: 'rate',
  source,
  needs: { spring, ratio },
  compute: ({ spring, ratio }) => spring * ratio ** 2,
});
export const rideRate = figure({
  path: 'rideRate',
  scope: 'axle',
  name: 'ride rate',
  symbol: 'k',
  dimension: 'rate',
  source,
  needs: { wheel: wheelRate, tire: tireRate },
  compute: ({ wheel, tire }) => (wheel * tire) / (wheel + tire),
});
export const frequency = figure({
  path: 'frequency',
  scope: 'axle',
  name: 'ride frequency',
  symbol: 'f',
  words: ['frequency'],
  dimension: 'frequency',
  source,
  needs: { rate: rideRate, mass: axleMass },
  compute: ({ rate, mass }) => Math.sqrt((2 * rate) / mass) / (2 * Math.PI),
});
export const frequencyRatio = figure({
  path: 'frequencyRatio',
  scope: 'car',
  name: 'frequency ratio',
  symbol: 'r',
  dimension: 'ratio',
  source,
  needs: { front: front(frequency), rear: rear(frequency) },
  compute: ({ front, rear }) => rear / front,
});
export const sag = figure({
  path: 'sag',
  scope: 'axle',
  name: 'sag',
  symbol: 'z',
  dimension: 'length',
  source,
  needs: { rate: wheelRate, mass: axleMass },
  compute: ({ rate, mass }) => (mass * 9.80665) / 2 / rate,
});
export const rideHeight = figure({
  path: 'rideHeight',
  scope: 'axle',
  name: 'ride height',
  symbol: 'h',
  dimension: 'length',
  source,
  needs: { read: height, sag, sagThen: asMeasured(sag) },
  compute: ({ read, sag, sagThen }) => read - sag + sagThen,
  carriesOn: height,
});
export const rollRate = figure({
  path: 'rollRate',
  scope: 'axle',
  name: 'roll rate',
  symbol: 'K',
  dimension: 'rollStiffness',
  source,
  needs: { kind, wheel: wheelRate, base: maybe(base) },
  compute: ({ kind, wheel, base }) =>
    kind === 'independent'
      ? wheel
      : base === undefined
        ? refuse('A beam axle rolls on its spring base, which is not known.', 'base')
        : wheel * base ** 2,
});
export const forceLaw = structure({
  path: 'forceLaw',
  scope: 'axle',
  name: 'force law',
  source,
  needs: { table },
  compute: (given) => ({ atFull: () => given.table.y.at(-1) ?? 0 }),
});
export const fullForce = figure({
  path: 'fullForce',
  scope: 'axle',
  name: 'force at full travel',
  symbol: 'F',
  dimension: 'force',
  source,
  needs: { law: forceLaw },
  compute: ({ law }) => law.atFull(),
});
export const rim = figure({
  path: 'rim',
  scope: 'axle',
  name: 'rim',
  symbol: 'd',
  dimension: 'length',
  source,
  needs: { size },
  compute: ({ size }) => size.rim,
});
export const gearDrop = figure({
  path: 'gear.drop',
  scope: 'gear',
  name: 'drop to the next gear',
  symbol: 'd',
  dimension: 'ratio',
  source,
  needs: { mine: gear, next: higher(gear) },
  compute: ({ mine, next }) => next / mine,
});
export const sideways = figure({
  path: 'sideways',
  scope: 'corner',
  name: 'camber toward the left',
  symbol: 'c',
  dimension: 'angle',
  source,
  needs: { camber, side: thisSide, axle: thisAxle },
  compute: ({ camber, side, axle }) => (side === 'left' ? 1 : -1) * (axle === 'front' ? 1 : 10) * camber,
});
export const inverse = figure({
  path: 'inverse',
  scope: 'corner',
  name: 'inverse of camber',
  symbol: 'i',
  dimension: 'ratio',
  source,
  needs: { camber },
  compute: ({ camber }) => 1 / camber,
});
export const energy = figure({
  path: 'energy',
  scope: 'car',
  name: 'energy of motion',
  symbol: 'E',
  dimension: 'torque',
  source,
  needs: { mass: totalMass, speed: roadSpeed },
  compute: ({ mass, speed }) => 0.5 * mass * speed ** 2,
});

export const all = [
  ...[mass, frontShare, scale, spring, ratio, tireRate, camber, height, kind, base, table, size, gear, roadSpeed],
  ...[massFromScales, totalMass, axleMass, wheelRate, rideRate, frequency, frequencyRatio, sag, rideHeight, rollRate],
  ...[forceLaw, fullForce, rim, gearDrop, sideways, inverse, energy],
];
export const catalog = compile(all);

let counted = 0;
/** A fact; its own source unless one is named. */
export const fact = (value: Fact['value'], within = 0, of = `fact ${++counted}`, evidence: Evidence = 'measured'): Fact => ({
  value,
  within,
  evidence,
  source: of,
});
export const facts = (told: Readonly<Record<string, Fact | number>>): ReadonlyMap<string, Fact> =>
  new Map(Object.entries(told).map(([path, one]) => [path, typeof one === 'number' ? fact(one) : one]));
