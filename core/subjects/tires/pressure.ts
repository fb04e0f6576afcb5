/** Pressure against temperature at a fixed volume: always in absolute pressure and absolute temperature. */
import { figure, firstOf, inPractice, quantity, refuse, way } from '../../catalog.js';
import { airPressure, coldTemperature, hotAirPressure, hotPressure, hotTemperature, hotWanted, tirePressure } from './pressureTold.js';

const law = 'gas law at fixed volume, absolute pressure over absolute temperature; dry air, no leak, the tire does not grow';

/** Pa. */
const gauge = [50_000, 700_000] as const;
const alike = 'if they heat up the same';
export const hotFromCold = quantity({
  path: 'tire.hotFromCold',
  typical: [inPractice('street cars', 206_800, 303_400), inPractice('autocross cars on street tires', 193_100, 303_400)],
  scope: 'corner',
  name: 'hot pressure',
  main: true,
  symbol: 'P_h',
  words: ['hot pressure', 'hot tire pressure', 'hot'],
  dimension: 'pressure',
  sane: gauge,
  ways: [
    way({
      needs: { cold: tirePressure, air: airPressure, hotAir: hotAirPressure, coldTemperature, hotTemperature },
      compute: ({ cold, air, hotAir, coldTemperature, hotTemperature }) => ((cold + air) * hotTemperature) / coldTemperature - hotAir,
      formula: '(cold + air) * hotTemperature / coldTemperature - hotAir',
      source: law,
    }),
  ],
  caution: "Hot pressure must stay under the sidewall's maximum unless the tire maker allows more.",
});
const flat = refuse('Such a tire would be flat when cold.', 'tire.hotPressure', 'hotTemperature');
export const coldFromHot = quantity({
  path: 'tire.coldFromHot',
  typical: [inPractice('street cars', 193_100, 275_800), inPractice('autocross cars on street tires', 165_500, 262_000)],
  scope: 'corner',
  name: 'cold pressure for the hot one',
  label: 'cold for that hot',
  main: true,
  symbol: 'P_c',
  words: ['cold pressure', 'cold from hot', 'cold tire pressure', 'cold'],
  dimension: 'pressure',
  sane: gauge,
  ways: [
    way({
      needs: { wanted: hotWanted, cold: tirePressure, hot: hotPressure, air: airPressure, hotAir: hotAirPressure },
      compute: ({ wanted, cold, hot, air, hotAir }) => {
        const setting = ((cold + air) * (wanted + hotAir)) / (hot + hotAir) - air;
        return setting > 0 ? setting : flat;
      },
      formula: '(cold + air) * (wanted + hotAir) / (hot + hotAir) - air',
      source: law,
      basis: alike,
    }),
    way({
      needs: { hot: firstOf(hotWanted, hotPressure), air: airPressure, hotAir: hotAirPressure, coldTemperature, hotTemperature },
      compute: ({ hot, air, hotAir, coldTemperature, hotTemperature }) => {
        const cold = ((hot + hotAir) * coldTemperature) / hotTemperature - air;
        return cold > 0 ? cold : flat;
      },
      formula: '(hot + hotAir) * coldTemperature / hotTemperature - air',
      source: law,
    }),
  ],
  caution: 'Not below what the tire maker allows for the load: check the cold pressure against it.',
});
export const tireAirTemperature = quantity({
  path: 'tire.hotAirTemperature',
  scope: 'corner',
  name: 'temperature of the air in the tire by its pressures',
  label: 'air in the tire',
  symbol: 'T_i',
  words: ['temperature in the tire', 'air temperature in the tire', 'temperature by the pressure'],
  dimension: 'temperature',
  sane: [230, 480],
  ways: [
    way({
      needs: { cold: tirePressure, hot: hotPressure, air: airPressure, hotAir: hotAirPressure, coldTemperature },
      compute: ({ cold, hot, air, hotAir, coldTemperature }) => (coldTemperature * (hot + hotAir)) / (cold + air),
      formula: 'coldTemperature * (hot + hotAir) / (cold + air)',
      source: law,
    }),
  ],
});
export const pressureRise = quantity({
  path: 'tire.pressureRise',
  scope: 'corner',
  name: 'pressure rise',
  symbol: 'dP',
  words: ['pressure rise', 'pressure gain'],
  dimension: 'pressure',
  sane: [-100_000, 300_000],
  typical: { range: [14_000, 55_000], of: 'autocross runs, by common practice, no source' },
  ways: [
    way({
      needs: { hot: hotPressure, cold: tirePressure },
      compute: ({ hot, cold }) => hot - cold,
      formula: 'hot - cold',
      source: 'difference of the readings',
    }),
    way({ needs: { hot: hotFromCold, cold: tirePressure }, compute: ({ hot, cold }) => hot - cold, formula: 'hot - cold', source: law }),
    way({ needs: { hot: hotPressure, cold: coldFromHot }, compute: ({ hot, cold }) => hot - cold, formula: 'hot - cold', source: law }),
  ],
});
export const pressurePerTenDegrees = figure({
  path: 'tire.pressurePerTenDegrees',
  scope: 'corner',
  name: 'pressure change for each 10 °F',
  label: 'change per 10 °F',
  symbol: 'dP/dT',
  words: ['pressure per 10 degrees', 'pressure per ten degrees', 'pressure per degree', 'psi per 10 degrees', 'pressure change'],
  dimension: 'pressure',
  typical: { range: [5000, 8000], of: 'car tires; "1 psi per 10 °F" is right near 38 psi' },
  needs: { cold: tirePressure, air: airPressure, coldTemperature },
  // 10 °F are 50/9 K.
  compute: ({ cold, air, coldTemperature }) => ((cold + air) / coldTemperature) * (50 / 9),
  source: law,
});
