/** Gear ratios, engine speeds, and the conditions of a question about them. */
import { choice, designation, inPractice, quantity } from '../../catalog.js';
import { readTireSize } from '../tires/readSize.js';
import { writeTireSize } from '../tires/size.js';

const rpm = Math.PI / 30;
const mph = 0.44704;
/** Teeth are counted: a ratio is exact as far as it is written. */
const counted = { usually: 'spec', measured: { relative: 0.0005 }, spec: { relative: 0.0005 } } as const;

export const gearRatio = quantity({
  path: 'gear.ratio',
  typical: [inPractice('road gearboxes, top gear to first', 0.6, 4)],
  scope: 'gear',
  name: 'gear ratio',
  symbol: 'i',
  words: ['gear ratio', 'gear', 'gear box ratio', 'ratio'],
  dimension: 'ratio',
  sane: [0.4, 6],
  told: counted,
  measure: 'From the gearbox data; or count turns of the input for one of the output.',
});
export const finalDrive = quantity({
  path: 'final',
  typical: [inPractice('road cars', 2.9, 5)],
  scope: 'car',
  name: 'final drive ratio',
  symbol: 'i_f',
  words: ['final drive', 'final', 'final drive ratio', 'final ratio', 'axle ratio', 'ring and pinion', 'rear end ratio', 'diff ratio'],
  dimension: 'ratio',
  sane: [1.8, 8],
  told: counted,
  measure: 'Teeth of the ring gear over teeth of the pinion.',
});
export const transferRatio = quantity({
  path: 'transfer',
  typical: [inPractice('high range', 0.9, 1.1)],
  scope: 'car',
  name: 'transfer ratio',
  symbol: 'i_t',
  words: ['transfer ratio', 'transfer case ratio', 'drop gear ratio'],
  dimension: 'ratio',
  sane: [0.5, 4],
  told: counted,
  measure: 'Any further pair of gears between gearbox and final drive, turns in for one turn out.',
  estimate: { needs: {}, compute: () => 1, within: { absolute: 0 }, source: 'none unless told' },
});
export const drivenAxle = choice({
  path: 'driven',
  scope: 'car',
  name: 'driven axle',
  words: ['driven axle', 'driven wheel', 'drive', 'drivetrain', 'driven'],
  options: ['front', 'rear', 'both'],
  optionWords: {
    front: ['fwd', 'front wheel drive', 'front drive'],
    rear: ['rwd', 'rear wheel drive', 'rear drive'],
    both: ['awd', '4wd', 'all wheel drive', 'four wheel drive'],
  },
  measure: 'Which wheels the engine turns.',
});
export const redline = quantity({
  path: 'redline',
  scope: 'car',
  name: 'redline',
  symbol: 'n_max',
  words: ['redline', 'red line', 'rev limit', 'limiter', 'max rpm', 'shift point'],
  dimension: 'angularSpeed',
  sane: [1500 * rpm, 20_000 * rpm],
  step: { inch: 100 * rpm, metric: 100 * rpm },
  told: { usually: 'spec', measured: { absolute: 50 * rpm }, spec: { absolute: 50 * rpm } },
  measure: 'The highest engine speed that you use, from the maker or the limiter.',
});
export const engineSpeed = quantity({
  path: 'engineSpeed',
  scope: 'question',
  name: 'engine speed',
  symbol: 'n',
  words: ['engine speed', 'rpm', 'revs', 'engine rpm'],
  dimension: 'angularSpeed',
  sane: [300 * rpm, 20_000 * rpm],
  told: { usually: 'spec', measured: { absolute: 50 * rpm }, spec: { absolute: 0 } },
  measure: 'Asked with the question: at 6500 rpm.',
});
export const roadSpeed = quantity({
  path: 'roadSpeed',
  scope: 'question',
  name: 'road speed',
  symbol: 'v',
  words: ['road speed', 'speed', 'true speed', 'real speed', 'mph'],
  dimension: 'speed',
  sane: [2 * mph, 250 * mph],
  told: { usually: 'spec', measured: { relative: 0.01 }, spec: { absolute: 0 } },
  measure: 'Asked with the question: at 60 mph.',
});
export const shownSpeed = quantity({
  path: 'shownSpeed',
  scope: 'question',
  name: 'shown speed',
  symbol: 'v_s',
  words: ['speedometer reading', 'shown speed', 'indicated speed', 'indicated', 'speedo reading'],
  dimension: 'speed',
  sane: [2 * mph, 250 * mph],
  told: { usually: 'spec', measured: { relative: 0.01 }, spec: { absolute: 0 } },
  measure: 'Asked with the question: when the speedometer shows 60 mph.',
});
export const engineTorque = quantity({
  path: 'engineTorque',
  scope: 'question',
  name: 'engine torque',
  symbol: 'T',
  words: ['engine torque', 'torque'],
  dimension: 'torque',
  sane: [10, 3000],
  told: { usually: 'spec', measured: { relative: 0.03 }, spec: { relative: 0.05 } },
  measure: 'At the crankshaft, from the maker or an engine dynamometer, at the engine speed that is asked.',
});
export const driveEfficiency = quantity({
  path: 'driveEfficiency',
  typical: [inPractice('two driven wheels', 0.83, 0.92), inPractice('four driven wheels', 0.76, 0.88)],
  scope: 'car',
  name: 'efficiency from engine to wheels',
  label: 'drive efficiency',
  symbol: 'eta',
  words: ['drivetrain efficiency', 'drive efficiency', 'efficiency'],
  dimension: 'ratio',
  sane: [0.6, 1],
  told: { usually: 'spec', measured: { absolute: 0.03 }, spec: { absolute: 0.04 } },
  measure: 'Torque at the wheels over torque at the engine and the gears between them.',
  estimate: { needs: {}, compute: () => 0.87, within: { absolute: 0.06 }, source: 'common practice, no source' },
});
const calibration = { instead: 'speedometer calibration' } as const;
export const speedometerTire = designation({
  path: 'speedometer.size',
  scope: 'car',
  name: 'tire size of the speedometer',
  label: 'speedometer tire',
  ...calibration,
  words: ['speedometer tire', 'speedometer size', 'speedometer tire size', 'factory tire', 'original tire', 'stock tire', 'stock size'],
  measure: "The size on the car maker's placard.",
  parse: readTireSize,
  write: writeTireSize,
});
export const speedometerTurns = quantity({
  path: 'speedometer.turns',
  scope: 'car',
  name: 'turns of the speedometer',
  label: 'speedometer turns',
  symbol: 'N_s',
  ...calibration,
  words: ['speedometer turns per mile', 'speedometer calibration', 'speedometer turns per km'],
  dimension: 'turnsPerLength',
  sane: [0.27, 0.85],
  told: { usually: 'spec', measured: { relative: 0.005 }, spec: { relative: 0.01 } },
  measure: 'In the settings of a speedometer that can be set; turns of a driven wheel per mile.',
});
