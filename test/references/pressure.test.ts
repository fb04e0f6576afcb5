/** Cold and hot pressures against values from outside, with the numbers that the usual mistakes would give. */
import { describe, expect, it } from 'vitest';
import { ask, fahrenheit, psi } from '../core/tires/ask.js';

const celsius = (degrees: number): number => degrees + 273.15;
const atmosphere = 101_325;

describe('pressure and temperature (trap 5: absolute, never gauge)', () => {
  const rows = [
    {
      id: 'Q3',
      source: 'OpenStax College Physics ch. 13 problem 22, SEEN at collegephysicsanswers.com',
      input: { hot: 2.5e5, from: celsius(35), to: celsius(-40), air: 1.013e5 },
      expected: 1.64498e5,
      tolerance: 1,
      mistaken: 1.8915e5,
      why: 'a cooled tire; the gauge ratio would give 1.89e5',
    },
    {
      id: 'Q5',
      source: 'MMLU item 12062 after stemez thermodynamics, SEEN: 38.2',
      input: { cold: 30 * psi, from: fahrenheit(32), to: fahrenheit(122), air: atmosphere },
      expected: 38.18 * psi,
      tolerance: 0.005 * psi,
      why: 'a warmed tire in psi and Fahrenheit',
    },
    {
      id: 'Q6',
      source: 'assignmentexpert.com question-1507, SEEN, with its rounded temperatures 293 and 333 K',
      input: { cold: 658_000, from: 293, to: 333, air: 101_300 },
      expected: 761_660,
      tolerance: 7.6,
      why: 'a truck tire in kilopascals',
    },
    {
      id: 'Q9',
      source: 'exact arithmetic of the gas law',
      input: { hot: 36 * psi, from: fahrenheit(160), to: fahrenheit(65), air: atmosphere },
      expected: 28.22794 * psi,
      tolerance: 2.8e-4 * psi,
      mistaken: 30.48 * psi,
      why: 'hot to cold; the gauge ratio would give 30.48, the Fahrenheit ratio 5.90',
    },
  ] as const;
  it('has every row', () => expect(rows.length).toBe(4));
  it.each(rows)('$id: $why', (row) => {
    const { input, expected, tolerance } = row;
    const told =
      'hot' in input
        ? { 'lf.tire.hotPressure': input.hot, hotTemperature: input.from, coldTemperature: input.to, airPressure: input.air }
        : { 'lf.tire.pressure': input.cold, coldTemperature: input.from, hotTemperature: input.to, airPressure: input.air };
    const value = ask(told, 'hot' in input ? 'lf.tire.coldFromHot' : 'lf.tire.hotFromCold');
    expect(Math.abs(value - expected)).toBeLessThanOrEqual(tolerance);
    if ('mistaken' in row) expect(Math.abs(value - row.mistaken)).toBeGreaterThan(100 * tolerance);
  });
  const slopes = [
    [26, 0.768326],
    [32, 0.881603],
    [40, 1.032641],
  ] as const;
  it.each(slopes)('Q8: %d psi at 70 °F changes by %d psi for 10 °F (exact)', (pressure, expected) => {
    const told = { 'lf.tire.pressure': pressure * psi, coldTemperature: fahrenheit(70), airPressure: atmosphere };
    expect(Math.abs(ask(told, 'lf.tire.pressurePerTenDegrees') / psi / expected - 1)).toBeLessThan(1e-5);
    // The same from the whole law, ten degrees apart.
    const hot = ask({ ...told, hotTemperature: fahrenheit(80) }, 'lf.tire.hotFromCold');
    expect((hot / psi - pressure) / expected).toBeCloseTo(1, 5);
  });
  it('Q8: "1 psi for 10 °F" is right near 38.3 psi only', () => {
    const told = { 'lf.tire.pressure': 38.3 * psi, coldTemperature: fahrenheit(70), airPressure: atmosphere };
    expect(ask(told, 'lf.tire.pressurePerTenDegrees') / psi).toBeCloseTo(1, 2);
  });
  it('Q10: the same tire where the air is thinner: 30 psi at 14.696 reads 32.466 at 12.23 psi', () => {
    // Exact: a gauge reads the difference to the air around it.
    const told = { coldTemperature: 300, hotTemperature: 300, airPressure: 14.696 * psi, hotAirPressure: 12.23 * psi };
    expect(ask({ ...told, 'lf.tire.pressure': 30 * psi }, 'lf.tire.hotFromCold') / psi).toBeCloseTo(32.466, 5);
    expect(ask({ ...told, 'lf.tire.hotPressure': 32.466 * psi }, 'lf.tire.coldFromHot') / psi).toBeCloseTo(30, 5);
  });
  it('air at 1500 m is 84556 Pa in the standard atmosphere', () => {
    // ISO 2533 table, from memory: 84.556 kPa at 1500 m, 89.875 kPa at 1000 m.
    expect(ask({ altitude: 1500 }, 'airPressure')).toBeCloseTo(84556, -1);
    expect(ask({ altitude: 1000 }, 'airPressure')).toBeCloseTo(89875, -1);
    expect(ask({}, 'airPressure')).toBe(101_325);
  });
});
