/** Torque, power, thrust and what they do to the weight of the car. */
import type { PlainSum } from './plainSum.js';
import { ends, tenDigits } from './plainSum.js';
import { g, hp, inch, kmh, lb, lbFt, lbf, mph, rpm } from './units.js';

const torque = 'derived: P = T w';
const thrust = 'Gillespie, Fundamentals of Vehicle Dynamics, ch. 2, F = T N eta / r, from memory';
const masses = 'Gillespie, Fundamentals of Vehicle Dynamics, ch. 2, mass factor 1 + 0.04 + 0.0025 N^2 (also Wong), from memory';

export const power: readonly PlainSum[] = [
  {
    name: '200 N m at 6000 rpm',
    source: torque,
    told: [
      ['engineTorque', 200],
      ['engineSpeed', 6000 * rpm],
    ],
    asked: 'enginePower',
    expected: 125663.7061,
    tolerance: tenDigits,
    why: '125.7 kW',
  },
  {
    name: '150 lb-ft at 5252 rpm',
    source: 'hp = lb-ft x rpm / 5252.113, exact',
    told: [
      ['engineTorque', 150 * lbFt],
      ['engineSpeed', 5252 * rpm],
    ],
    asked: 'enginePower',
    expected: 149.9967692 * hp,
    tolerance: tenDigits,
  },
  {
    name: 'torque of 150 kW at 6500 rpm',
    source: torque,
    told: [
      ['enginePower', 150e3],
      ['engineSpeed', 6500 * rpm],
    ],
    asked: 'engine.torque',
    expected: 220.3683827,
    tolerance: tenDigits,
    why: 'the inverse way',
  },
  {
    name: 'power at the wheels of 200 hp at 85 per cent',
    source: 'derived: product',
    told: [
      ['engine.peakPower', 200 * hp],
      ['driveEfficiency', 0.85],
    ],
    asked: 'engine.greatestWheelPower',
    expected: 170 * hp,
    tolerance: tenDigits,
  },
  {
    name: 'engine power of 170 hp at the wheels',
    source: 'derived: quotient',
    told: [
      ['engine.wheelPower', 170 * hp],
      ['driveEfficiency', 0.85],
    ],
    asked: 'engine.greatestPower',
    expected: 200 * hp,
    tolerance: tenDigits,
  },
  {
    name: 'power at the wheels with nothing lost',
    source: 'derived: product',
    told: [
      ['engine.peakPower', 90e3],
      ['driveEfficiency', 1],
    ],
    asked: 'engine.greatestWheelPower',
    expected: 90e3,
    tolerance: tenDigits,
    why: 'edge',
  },
  {
    name: 'thrust in 1st of 180 N m',
    source: thrust,
    told: [
      ...ends('tire.measuredCircumference', 2 * Math.PI * 0.29),
      ['1.gear.ratio', 3.136],
      ['final', 4.1],
      ['driveEfficiency', 0.9],
      ['engineTorque', 180],
    ],
    asked: '1.thrust',
    expected: 7182.521379,
    tolerance: tenDigits,
    why: 'which axle is driven is not asked where all four are alike',
  },
  {
    name: 'thrust of an overall ratio and a rolling radius, both told',
    source: thrust,
    told: [...ends('tire.rollingRadius', 11.6 * inch), ['2.overallRatio', 8], ['driveEfficiency', 0.88], ['engineTorque', 160 * lbFt]],
    asked: '2.thrust',
    expected: 1165.241379 * lbf,
    tolerance: tenDigits,
    why: 'inches and pounds',
  },
  {
    name: 'thrust of 100 kW at the wheels at 72 km/h',
    source: 'derived: F = P / v',
    told: [
      ['engine.wheelPower', 100e3],
      ['roadSpeed', 72 * kmh],
    ],
    asked: 'thrust.byPower',
    expected: 5000,
    tolerance: tenDigits,
    why: 'path proposed',
  },
  {
    name: 'thrust of 150 hp at the wheels at 60 mph',
    source: 'derived: F = P / v, 375 lbf for each horsepower at 1 mph',
    told: [
      ['engine.wheelPower', 150 * hp],
      ['roadSpeed', 60 * mph],
    ],
    asked: 'thrust.byPower',
    expected: 937.5 * lbf,
    tolerance: tenDigits,
    why: 'path proposed',
  },
  {
    name: 'mass factor of an overall ratio of 12.9',
    source: masses,
    told: [['1.overallRatio', 12.9]],
    asked: '1.massFactor',
    expected: 1.456025,
    tolerance: 1e-6,
    why: 'path proposed',
  },
  {
    name: 'acceleration by a thrust, overall ratio told',
    source: `${masses}; Newton`,
    told: [
      ['1.thrust', 7000],
      ['1.overallRatio', 12.9],
      ['mass', 1100],
    ],
    asked: '1.gearAcceleration',
    expected: 4.370554327,
    tolerance: 1e-6,
    basis: ['rotating masses'],
    why: 'what turns with the wheels wants its part of the thrust',
  },
  {
    name: 'acceleration by a thrust alone',
    source: 'Newton',
    told: [
      ['3.thrust', 900 * lbf],
      ['mass', 2500 * lb],
    ],
    asked: '3.gearAcceleration',
    expected: 0.36 * g,
    tolerance: tenDigits,
    basis: ['no rotating masses'],
    why: 'no ratio is told: left out, and said',
  },
  {
    name: 'power for each weight',
    source: 'derived: quotient',
    told: [
      ['engine.peakPower', 150e3],
      ['mass', 1200],
    ],
    asked: 'powerToWeight',
    expected: 125,
    tolerance: tenDigits,
    why: 'watts a kilogram; path proposed',
  },
  {
    name: 'power for each weight, horsepower and pounds',
    source: 'derived: quotient',
    told: [
      ['engine.peakPower', 180 * hp],
      ['mass', 2400 * lb],
    ],
    asked: 'powerToWeight',
    expected: 0.075 * (hp / lb),
    tolerance: tenDigits,
    why: 'path proposed',
  },
  {
    name: 'an efficiency over one',
    source: 'derived: no drive gives more than it takes',
    told: [
      ['engine.peakPower', 90e3],
      ['driveEfficiency', 1.1],
    ],
    asked: 'engine.greatestWheelPower',
    outside: 'driveEfficiency',
  },
];
