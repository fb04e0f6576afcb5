/** Tire pressures, all of them by gauge, and what they depend on. */
import { inPractice, maybe, quantity } from '../../catalog.js';

const psi = 6894.757293168361;
const gauge = { usually: 'measured', measured: { absolute: 0.5 * psi }, spec: { absolute: 0.25 * psi } } as const;
const step = { inch: 0.5 * psi, metric: 5000 };

export const tirePressure = quantity({
  path: 'tire.pressure',
  typical: [inPractice('street cars', 193_100, 275_800), inPractice('autocross cars on street tires', 179_300, 275_800)],
  scope: 'corner',
  name: 'cold tire pressure',
  symbol: 'P',
  alike: true,
  words: ['tire pressure', 'pressure', 'cold pressure', 'cold tire pressure', 'cold', 'psi'],
  dimension: 'pressure',
  sane: [50_000, 600_000],
  step,
  told: gauge,
  measure: 'With one good gauge, before the car has moved, in the shade.',
  caution: "Not below what the tire maker allows for the load and speed, nor above the sidewall's maximum.",
});
export const hotPressure = quantity({
  path: 'tire.hotPressure',
  typical: [inPractice('street cars', 206_800, 303_400), inPractice('autocross cars on street tires', 193_100, 303_400)],
  scope: 'corner',
  name: 'hot tire pressure',
  symbol: 'P_h',
  alike: true,
  words: ['hot pressure', 'hot tire pressure', 'hot'],
  dimension: 'pressure',
  sane: [50_000, 700_000],
  step,
  told: gauge,
  measure: 'With the same gauge, at once when the car comes in; or the hot pressure that you want.',
});
export const hotWanted = quantity({
  path: 'tire.hotWanted',
  typical: [inPractice('autocross and track cars on street tires', 193_100, 289_600)],
  scope: 'corner',
  name: 'hot pressure that is wanted',
  label: 'hot, wanted',
  symbol: 'P_w',
  alike: true,
  words: ['hot pressure wanted', 'wanted hot pressure', 'target hot pressure', 'hot target'],
  dimension: 'pressure',
  sane: [50_000, 700_000],
  step,
  told: gauge,
  measure: 'What you want to read when the car comes in.',
});
export const coldTemperature = quantity({
  path: 'coldTemperature',
  scope: 'question',
  name: 'temperature at which the tires are set',
  label: 'cold temperature',
  symbol: 'T_c',
  words: ['cold temperature', 'cold', 'air temperature', 'ambient', 'ambient temperature', 'temperature'],
  dimension: 'temperature',
  sane: [230, 330],
  told: { usually: 'measured', measured: { absolute: 1.5 }, spec: { absolute: 3 } },
  measure: 'Of the air where the car has stood for an hour, out of the sun.',
  estimate: { needs: {}, compute: () => 293.15, within: { absolute: 10 }, error: 'common', source: '20 °C, common practice, no source' },
});
export const hotTemperature = quantity({
  path: 'hotTemperature',
  scope: 'question',
  name: 'temperature of the air in the hot tires',
  label: 'hot temperature',
  symbol: 'T_h',
  words: ['hot temperature', 'hot tire temperature', 'tire temperature', 'hot'],
  dimension: 'temperature',
  sane: [250, 420],
  told: { usually: 'measured', measured: { absolute: 4 }, spec: { absolute: 8 } },
  measure: 'A probe pushed into the tread at once reads near it; the air inside is a little cooler than the tread.',
  estimate: {
    needs: { cold: coldTemperature },
    compute: ({ cold }) => cold + 25,
    within: { absolute: 15 },
    error: 'common',
    source: '25 °C over cold after some runs: common practice, no source',
  },
});
export const altitude = quantity({
  path: 'altitude',
  nature: 'car',
  scope: 'question',
  name: 'height above the sea',
  label: 'altitude',
  symbol: 'h',
  words: ['altitude', 'elevation', 'height above sea'],
  dimension: 'length',
  sane: [-430, 5000],
  told: { usually: 'spec', measured: { absolute: 20 }, spec: { absolute: 30 } },
  measure: 'From a map.',
});
/** Of the international standard atmosphere (ISO 2533): sea-level pressure, Pa; lapse over temperature, 1/m; exponent g·M/(R·lapse). */
const standardAir = { seaLevel: 101_325, lapse: 0.0065 / 288.15, exponent: 5.25588 } as const;
export const airPressure = quantity({
  path: 'airPressure',
  scope: 'question',
  name: 'pressure of the air outside',
  label: 'air pressure',
  symbol: 'p_a',
  words: ['air pressure', 'atmospheric pressure', 'barometer', 'barometric pressure', 'atmosphere'],
  dimension: 'pressure',
  sane: [50_000, 110_000],
  told: { usually: 'measured', measured: { absolute: 300 }, spec: { absolute: 1000 } },
  measure: 'A barometer at the place, not the figure of a forecast, which is reduced to sea level.',
  estimate: {
    needs: { altitude: maybe(altitude) },
    compute: ({ altitude = 0 }) => standardAir.seaLevel * (1 - standardAir.lapse * altitude) ** standardAir.exponent,
    within: { relative: 0.025 },
    error: 'common',
    usual: true,
    source: 'international standard atmosphere, ISO 2533, at the altitude (sea level unless told); weather moves it by about 2 %',
  },
});
export const hotAirPressure = quantity({
  path: 'hotAirPressure',
  scope: 'question',
  name: 'pressure of the air where the hot pressure is read',
  label: 'air pressure, hot',
  symbol: 'p_ah',
  words: ['hot air pressure', 'air pressure there', 'barometer there'],
  dimension: 'pressure',
  sane: [50_000, 110_000],
  told: { usually: 'measured', measured: { absolute: 300 }, spec: { absolute: 1000 } },
  measure: 'Only where the tires are set in one place and read at another height or on another day.',
  estimate: {
    needs: { air: airPressure },
    compute: ({ air }) => air,
    within: { absolute: 0 },
    error: 'common',
    source: 'the same air, unless told',
  },
});
