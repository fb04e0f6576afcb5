/** Tire pressures cold and hot, and with the air outside. */
import type { PlainSum } from './plainSum.js';
import { tenDigits } from './plainSum.js';
import { bar, celsius, fahrenheit, psi } from './units.js';

const gas = 'gas law with absolute pressures: (p + p_air) / T is kept, volume constant';
const atmosphere = 101_325;
const standard = `${gas}; air at sea level, ISO 2533: 101325 Pa`;

export const pressures: readonly PlainSum[] = [
  {
    name: '30 psi at 32 F, at 122 F',
    source: `${gas}; stemez thermodynamics prints 38.2`,
    told: [
      ['lf.tire.pressure', 30 * psi],
      ['coldTemperature', fahrenheit(32)],
      ['hotTemperature', fahrenheit(122)],
      ['airPressure', atmosphere],
    ],
    asked: 'lf.tire.hotFromCold',
    expected: 38.18157583 * psi,
    tolerance: tenDigits,
  },
  {
    name: '2.2 bar at 12 C, at 45 C',
    source: standard,
    told: [
      ['rr.tire.pressure', 2.2 * bar],
      ['coldTemperature', celsius(12)],
      ['hotTemperature', celsius(45)],
    ],
    asked: 'rr.tire.hotFromCold',
    expected: 257186.4808,
    tolerance: tenDigits,
    why: '2.57 bar; the air is usual',
  },
  {
    name: 'the same temperature keeps the pressure',
    source: standard,
    told: [
      ['lf.tire.pressure', 2.2 * bar],
      ['coldTemperature', celsius(20)],
      ['hotTemperature', celsius(20)],
    ],
    asked: 'lf.tire.hotFromCold',
    expected: 220000,
    tolerance: tenDigits,
    why: 'edge: equal temperatures',
  },
  {
    name: 'rise of a pressure from 18 to 60 C',
    source: standard,
    told: [
      ['rf.tire.pressure', 1.9 * bar],
      ['coldTemperature', celsius(18)],
      ['hotTemperature', celsius(60)],
    ],
    asked: 'rf.tire.pressureRise',
    expected: 42025.24472,
    tolerance: tenDigits,
  },
  {
    name: 'cold pressure for 36 psi hot',
    source: gas,
    told: [
      ['lr.tire.hotPressure', 36 * psi],
      ['hotTemperature', fahrenheit(160)],
      ['coldTemperature', fahrenheit(65)],
      ['airPressure', atmosphere],
    ],
    asked: 'lr.tire.coldFromHot',
    expected: 28.22793562 * psi,
    tolerance: tenDigits,
    why: '28.2; the ratio of gauge pressures would give 30.5',
  },
  {
    name: 'pressure for each 10 F at 32 psi and 70 F',
    source: standard,
    told: [
      ['lf.tire.pressure', 32 * psi],
      ['coldTemperature', fahrenheit(70)],
    ],
    asked: 'lf.tire.pressurePerTenDegrees',
    expected: 0.8816045609 * psi,
    tolerance: tenDigits,
    why: '0.88: a pound for 10 degrees is right only near 38 psi',
  },
  {
    name: 'the same tire up a mountain',
    source: `${gas}; the gauge reads against the air outside`,
    told: [
      ['lf.tire.pressure', 30 * psi],
      ['coldTemperature', fahrenheit(70)],
      ['hotTemperature', fahrenheit(70)],
      ['airPressure', 14.696 * psi],
      ['hotAirPressure', 12.23 * psi],
    ],
    asked: 'lf.tire.hotFromCold',
    expected: 32.466 * psi,
    tolerance: tenDigits,
    why: 'edge: no change of temperature',
  },
  {
    name: '30 cold came in 37.5, want 34',
    source: `${gas}; heated alike: (cold + air) / (hot + air) is kept`,
    told: [
      ['lf.tire.pressure', 30 * psi],
      ['lf.tire.hotPressure', 37.5 * psi],
      ['lf.tire.hotWanted', 34 * psi],
    ],
    asked: 'lf.tire.coldFromHot',
    expected: 27.00291259 * psi,
    tolerance: tenDigits,
    basis: ['heat up'],
    why: '27 psi; no temperature is asked for; path proposed',
  },
  {
    name: '1.8 bar cold came in 2.3, want 2.2',
    source: `${gas}; heated alike`,
    told: [
      ['rr.tire.pressure', 1.8 * bar],
      ['rr.tire.hotPressure', 2.3 * bar],
      ['rr.tire.hotWanted', 2.2 * bar],
      ['airPressure', 0.98 * bar],
    ],
    asked: 'rr.tire.coldFromHot',
    expected: 171524.3902,
    tolerance: tenDigits,
    why: 'path proposed',
  },
  {
    name: 'temperature of the air in a tire that came in 37.5 from 30 at 68 F',
    source: `${gas}; solved for the temperature`,
    told: [
      ['lf.tire.pressure', 30 * psi],
      ['lf.tire.hotPressure', 37.5 * psi],
      ['coldTemperature', fahrenheit(68)],
      ['airPressure', atmosphere],
    ],
    asked: 'lf.tire.hotAirTemperature',
    expected: 342.3406998,
    tolerance: tenDigits,
    why: 'each tire has its own',
  },
  {
    name: 'a temperature below the absolute zero',
    source: 'derived: nothing is colder',
    told: [
      ['lf.tire.pressure', 30 * psi],
      ['coldTemperature', fahrenheit(70)],
      ['hotTemperature', celsius(-300)],
    ],
    asked: 'lf.tire.hotFromCold',
    outside: 'hotTemperature',
  },
];
