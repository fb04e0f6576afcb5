/** What is known of the tires: their size, and what was measured of them. Both tires of an axle are alike. */
import { designation, quantity } from '../catalog.js';
import { usualOf } from '../tires/design.js';
import { readTireSize } from '../tires/readSize.js';
import { writeTireSize } from '../tires/size.js';

export const tireSize = designation({
  path: 'tire.size',
  scope: 'axle',
  name: 'tire size',
  alike: true,
  words: ['tire', 'tire size', 'size', 'rubber'],
  measure: 'On the sidewall: 245/40R17 91W, 31x10.50R15LT or 23.0x8.0-13.',
  caution: 'Load index and speed symbol at or above what the car maker asks; local rules decide which sizes are allowed on the road.',
  parse: readTireSize,
  write: writeTireSize,
});
export const measuredDiameter = quantity({
  path: 'tire.measuredDiameter',
  scope: 'axle',
  name: 'measured tire diameter',
  symbol: 'D_m',
  alike: true,
  words: ['measured tire diameter', 'measured diameter', 'tire diameter', 'outside diameter'],
  dimension: 'length',
  sane: [0.4, 1.15],
  told: { usually: 'measured', measured: { absolute: 0.003 }, spec: { relative: 0.005 } },
  measure: 'Mounted, at running pressure, off the ground: across the tread, or the length round it over 3.1416.',
});
export const diameterRatio = quantity({
  path: 'tire.diameterRatio',
  scope: 'axle',
  name: 'real over design tire diameter',
  symbol: 'D/D_0',
  alike: true,
  words: ['tire diameter ratio', 'real over design diameter'],
  dimension: 'ratio',
  sane: [0.95, 1.04],
  told: { usually: 'measured', measured: { absolute: 0.004 }, spec: { absolute: 0.006 } },
  measure: 'Measure the diameter of one tire, mounted and at pressure, and divide by the design diameter of its size.',
  estimate: {
    needs: { size: tireSize },
    compute: ({ size }) => usualOf(size).diameterRatio,
    within: { absolute: 0.011 },
    error: 'common',
    source: 'limits of new tires in UN R30 (section height -3 to +4 %), from memory; flotation sizes from memory of TRA',
  },
});
export const measuredCircumference = quantity({
  path: 'tire.measuredCircumference',
  scope: 'axle',
  name: 'measured rolling circumference',
  symbol: 'C_m',
  alike: true,
  instead: 'rolling circumference',
  words: ['measured rolling circumference', 'rolling circumference', 'rollout', 'roll out', 'measured circumference'],
  dimension: 'length',
  sane: [1.2, 3.6],
  told: { usually: 'measured', measured: { relative: 0.004 }, spec: { relative: 0.01 } },
  measure: 'Chalk the tread, roll the loaded car straight for some whole turns, measure the way and divide by the turns.',
});
export const statedTurns = quantity({
  path: 'tire.statedTurns',
  scope: 'axle',
  name: 'stated turns of the tire',
  symbol: 'N_m',
  alike: true,
  instead: 'rolling circumference',
  words: [
    'stated turns per mile',
    'turns per mile',
    'rev per mile',
    'revolution per mile',
    'turns per km',
    'rev per km',
    'revolution per km',
  ],
  dimension: 'turnsPerLength',
  sane: [0.27, 0.85],
  told: { usually: 'spec', measured: { relative: 0.005 }, spec: { relative: 0.01 } },
  measure: "In the tire maker's data sheet, or a thousand over the measured rolling circumference.",
});
export const rollingFactor = quantity({
  path: 'tire.rollingFactor',
  scope: 'axle',
  name: 'rolling factor',
  symbol: 'f',
  alike: true,
  words: ['rolling factor'],
  dimension: 'ratio',
  sane: [2.8, 3.15],
  told: { usually: 'measured', measured: { absolute: 0.015 }, spec: { absolute: 0.03 } },
  measure: 'Rolling circumference over the diameter of the tire off the ground.',
  estimate: {
    needs: { size: tireSize },
    compute: ({ size }) => usualOf(size).rollingFactor,
    within: { absolute: 0.045 },
    error: 'common',
    source: 'ETRTO, from memory: 3.05 for radial tires at 60 km/h, 2.99 for others; the maker and the load move it',
  },
});
export const measuredSection = quantity({
  path: 'tire.measuredWidth',
  scope: 'axle',
  name: 'measured section width',
  symbol: 'S_m',
  alike: true,
  words: ['measured section width', 'section width', 'tire section width', 'measured tire width'],
  dimension: 'length',
  sane: [0.1, 0.45],
  told: { usually: 'measured', measured: { absolute: 0.003 }, spec: { relative: 0.02 } },
  measure: 'From sidewall to sidewall at the widest, on this wheel and at pressure, ribs and lettering left out.',
});
export const widthRatio = quantity({
  path: 'tire.widthRatio',
  scope: 'axle',
  name: 'real over design section width',
  symbol: 'S/S_0',
  alike: true,
  words: ['section width ratio', 'real over design width'],
  dimension: 'ratio',
  sane: [0.92, 1.08],
  told: { usually: 'measured', measured: { absolute: 0.01 }, spec: { absolute: 0.02 } },
  measure: 'Measure the section width of one tire on its wheel and divide by the design width on that rim.',
  estimate: {
    needs: {},
    compute: () => 1,
    within: { absolute: 0.035 },
    error: 'common',
    source: 'UN R30 allows new radial tires up to 4 % over their design width, from memory',
  },
});
export const standardPressure = quantity({
  path: 'tire.standardPressure',
  scope: 'axle',
  name: "pressure of the tire's load rating",
  symbol: 'P_r',
  alike: true,
  words: ['standard pressure', 'rating pressure', 'load rating pressure'],
  dimension: 'pressure',
  sane: [150_000, 600_000],
  step: { inch: 6894.757293168361, metric: 10_000 },
  told: { usually: 'spec', measured: { relative: 0.01 }, spec: { relative: 0.01 } },
  measure: 'In the load tables of the tire maker; the maximum pressure on the sidewall is not it.',
  estimate: {
    needs: { size: tireSize },
    compute: ({ size }) => {
      if (size.form === 'metric' && size.series === 'P') return 240_000;
      return size.suffixes.includes('XL') ? 290_000 : 250_000;
    },
    within: { relative: 0.04 },
    error: 'common',
    source: 'standard load 250 kPa, extra load 290 kPa, P-metric 240 kPa, from memory of ETRTO and TRA; not for light-truck tires',
  },
});
export const loadExponent = quantity({
  path: 'tire.loadExponent',
  scope: 'axle',
  name: 'exponent of load over pressure',
  symbol: 'n',
  alike: true,
  words: ['load exponent', 'pressure exponent'],
  dimension: 'ratio',
  sane: [0.4, 1],
  told: { usually: 'spec', measured: { absolute: 0.05 }, spec: { absolute: 0.05 } },
  measure: 'From the load tables: the logarithm of two loads over that of their pressures.',
  estimate: {
    needs: {},
    compute: () => 0.65,
    within: { absolute: 0.15 },
    error: 'common',
    source: 'from memory, unverified: 0.5 in P-metric tables, 0.65 and 0.8 in European ones',
  },
});
