/** Pressure against temperature at a fixed volume: always in absolute pressure and absolute temperature. */
import { figure, firstOf, refuse } from '../catalog.js';
import { airPressure, coldTemperature, hotAirPressure, hotPressure, hotTemperature, tirePressure } from '../inputs/pressure.js';

const law = 'gas law at fixed volume, absolute pressure over absolute temperature; dry air, no leak, the tire does not grow';

export const hotFromCold = figure({
  path: 'tire.hotFromCold',
  scope: 'corner',
  name: 'hot pressure',
  main: true,
  symbol: 'P_h',
  words: ['hot pressure', 'hot tire pressure', 'hot'],
  dimension: 'pressure',
  needs: { cold: tirePressure, air: airPressure, hotAir: hotAirPressure, coldTemperature, hotTemperature },
  compute: ({ cold, air, hotAir, coldTemperature, hotTemperature }) => ((cold + air) * hotTemperature) / coldTemperature - hotAir,
  formula: '(cold + air) * hotTemperature / coldTemperature - hotAir',
  source: law,
  caution: "Hot pressure must stay under the sidewall's maximum unless the tire maker allows more.",
});
export const coldFromHot = figure({
  path: 'tire.coldFromHot',
  scope: 'corner',
  name: 'cold pressure for the hot one',
  label: 'cold for that hot',
  main: true,
  symbol: 'P_c',
  words: ['cold pressure', 'cold from hot', 'cold tire pressure', 'cold'],
  dimension: 'pressure',
  needs: { hot: hotPressure, air: airPressure, hotAir: hotAirPressure, coldTemperature, hotTemperature },
  compute: ({ hot, air, hotAir, coldTemperature, hotTemperature }) => {
    const cold = ((hot + hotAir) * coldTemperature) / hotTemperature - air;
    return cold > 0 ? cold : refuse('Such a tire would be flat when cold.', 'tire.hotPressure', 'hotTemperature');
  },
  formula: '(hot + hotAir) * coldTemperature / hotTemperature - air',
  source: law,
  caution: 'Not below what the tire maker allows for the load: check the cold pressure against it.',
});
export const pressureRise = figure({
  path: 'tire.pressureRise',
  scope: 'corner',
  name: 'pressure rise',
  symbol: 'dP',
  words: ['pressure rise', 'pressure gain'],
  dimension: 'pressure',
  typical: { range: [14_000, 55_000], of: 'autocross runs, by common practice, no source' },
  needs: { hot: firstOf(hotPressure, hotFromCold), cold: firstOf(tirePressure, coldFromHot) },
  compute: ({ hot, cold }) => hot - cold,
  formula: 'hot - cold',
  source: law,
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
