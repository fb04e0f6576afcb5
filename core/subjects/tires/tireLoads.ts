/** What a tire may carry and how fast, by its markings and its pressure. */
import { isRefusal, quantity, refuse, way } from '../../catalog.js';
import { indexNearest, loadOfIndex } from './loadIndex.js';
import { loadAtPressure, pMetricLoad, pMetricOnTruck, pMetricPressure } from './loads.js';
import { tirePressure } from './pressureTold.js';
import { speedOfSymbol_kmh } from './speedSymbol.js';
import { loadExponent, standardPressure, tireSize } from './told.js';

const loadCaution =
  "Load ratings are limits, not targets, and camber and speed lower them: stay with the tire maker's tables and the car maker's placard. P-metric and metric sizes of the same numbers differ.";
const twins = 'the first number of a pair: single fitment';

export const loadRating = quantity({
  path: 'tire.loadRating',
  scope: 'axle',
  name: 'load of the load index, each tire',
  label: 'load rating',
  main: true,
  symbol: 'L',
  words: ['load rating', 'load index', 'tire load rating', 'load capacity', 'tire carry'],
  dimension: 'mass',
  sane: [60, 4000],
  caution: loadCaution,
  ways: [
    way({
      needs: { size: tireSize },
      compute: ({ size }) =>
        size.service.loadIndex === undefined
          ? refuse(
              `${size.label} is written without a load index: add it as it stands on the sidewall, as in ${size.label} 91W.`,
              'tire.size',
            )
          : loadOfIndex(size.service.loadIndex),
      source: `load index table of ISO 4000-1 and UN R30 Annex 4; ${twins}`,
    }),
  ],
});
export const speedRating = quantity({
  path: 'tire.speedRating',
  scope: 'axle',
  name: 'speed of the speed symbol',
  label: 'speed rating',
  symbol: 'v_t',
  words: ['speed rating', 'speed symbol', 'tire speed rating', 'tire speed'],
  dimension: 'speed',
  sane: [1, 112],
  caution: 'A symbol counts for a sound tire at its proper pressure and load.',
  ways: [
    way({
      needs: { size: tireSize },
      compute: ({ size }) => {
        const symbol = size.service.speed ?? size.sizeSpeed;
        if (symbol === undefined)
          return refuse(`${size.label} is written without a speed symbol: add it, as in ${size.label} 91W.`, 'tire.size');
        if (symbol === 'Z') return refuse('ZR alone means above 240 km/h, by how much only the tire maker says.', 'tire.size');
        return speedOfSymbol_kmh[symbol] / 3.6;
      },
      source: 'speed symbols of ISO 4000-1 and UN R30; H stands between U and V; in brackets: made for more, which the maker names',
    }),
  ],
});
export const axleLoadRating = quantity({
  path: 'tire.loadRatings',
  scope: 'axle',
  name: 'load of the load index, both tires of the axle',
  label: 'axle load rating',
  symbol: 'L_a',
  words: ['axle load rating', 'load rating of the axle'],
  dimension: 'mass',
  sane: [120, 8000],
  ways: [
    way({ needs: { rating: loadRating }, compute: ({ rating }) => 2 * rating, formula: '2 * rating', source: 'two tires, single fitment' }),
  ],
  caution: loadCaution,
});
export const loadAtThisPressure = quantity({
  path: 'tire.loadAtPressure',
  scope: 'corner',
  name: 'load of the tire at this pressure',
  label: 'load at pressure',
  symbol: 'L_P',
  words: ['load at pressure', 'load at this pressure', 'load capacity at pressure'],
  dimension: 'mass',
  sane: [40, 4000],
  ways: [
    way({
      needs: { rating: loadRating, pressure: tirePressure, standard: standardPressure, exponent: loadExponent },
      compute: ({ rating, pressure, standard, exponent }) => loadAtPressure(rating, pressure, standard, exponent),
      formula: 'rating * min(1, pressure / standard) ^ exponent',
      source: 'power law of the load tables; the exponent is an input, from memory and unverified',
    }),
    way({
      needs: { rating: loadRating, pressure: tirePressure, standard: standardPressure },
      compute: ({ rating, pressure, standard }) =>
        pressure >= standard
          ? rating
          : refuse('Below the pressure of its rating the load goes with a power of it: tell that exponent.', 'tire.loadExponent'),
      source: 'at the pressure of the rating or above it',
    }),
  ],
  caution: loadCaution,
  nonlinear: 'Above the standard pressure the load stays at the rating: more air carries no more.',
});
export const pMetricRating = quantity({
  path: 'tire.pMetricLoad',
  scope: 'axle',
  name: 'load of a P-metric size at 240 kPa (35 psi)',
  label: 'P-metric load',
  symbol: 'L_p',
  words: ['p metric load', 'p-metric load'],
  dimension: 'mass',
  sane: [60, 4000],
  caution: loadCaution,
  ways: [
    way({
      needs: { size: tireSize },
      compute: ({ size }) => pMetricLoad(size, pMetricPressure),
      source:
        'at 240 kPa (35 psi): TRA formula for aspect ratios 50 to 80, by a public summary (eng-tips.com/faqs.cfm?fid=1148); on a truck or trailer divide by 1.10 (FMVSS 120)',
    }),
  ],
});
export const pMetricIndex = quantity({
  path: 'tire.pMetricIndex',
  untypical: 'It follows from the size.',
  scope: 'axle',
  name: 'load index of the P-metric load',
  label: 'P-metric load index',
  symbol: 'LI_p',
  words: ['p metric load index', 'p-metric load index'],
  dimension: 'ratio',
  sane: [0, 200],
  caution: loadCaution,
  ways: [
    way({
      needs: { load: pMetricRating },
      compute: ({ load }) => indexNearest(load),
      source: 'the index whose load is nearest, as the tables of the series round theirs (TRA, by a public summary)',
    }),
  ],
});
export const pMetricTruckLoad = quantity({
  path: 'tire.pMetricOnTruck',
  scope: 'axle',
  name: 'load of a P-metric size on a truck or trailer',
  label: 'P-metric on a truck',
  symbol: 'L_t',
  words: ['p metric load on a truck', 'p metric load on a trailer', 'p metric truck load'],
  dimension: 'mass',
  sane: [60, 4000],
  caution: loadCaution,
  ways: [
    way({
      needs: { load: pMetricRating },
      compute: ({ load }) => pMetricOnTruck(load),
      formula: 'load / 1.1',
      source: 'FMVSS 120 S5.1.2 (nhtsa.gov, nht76-1.47)',
    }),
  ],
});
export const metricOverPMetric = quantity({
  path: 'tire.overPMetric',
  scope: 'axle',
  name: 'load over the P-metric load',
  label: 'over P-metric load',
  symbol: 'dL',
  words: ['metric over p metric', 'difference from p metric'],
  dimension: 'mass',
  sane: [-300, 300],
  caution: loadCaution,
  ways: [
    way({
      needs: { size: tireSize, rating: loadRating },
      compute: ({ size, rating }) => {
        // A metric size is compared with the P-metric tire of the same numbers.
        const same = size.form === 'metric' ? pMetricLoad({ ...size, series: 'P' }, pMetricPressure) : pMetricLoad(size, pMetricPressure);
        return isRefusal(same) ? same : rating - same;
      },
      source: 'the two standards rate the same dimensions differently: P215/65R15 is 95, 215/65R15 is 96 in owners’ manuals',
    }),
  ],
});
