/** How much of what its tires may carry the car's weight uses. */
import { figure, maybe } from '../../catalog.js';
import { cornerMass } from '../mass/loads.js';
import { loadAtThisPressure, loadRating } from './tireLoads.js';

export const loadUse = figure({
  path: 'tire.loadUse',
  percent: true,
  scope: 'corner',
  name: 'share of the tire load in use, standing',
  label: 'tire load in use',
  symbol: 'u_L',
  words: ['load use', 'tire load use', 'tire load share', 'load margin'],
  dimension: 'ratio',
  typical: { range: [0.35, 0.75], of: 'cars on their own tires; common practice, no source' },
  needs: { weight: cornerMass, atPressure: maybe(loadAtThisPressure), rating: loadRating },
  compute: ({ weight, atPressure, rating }) => weight / (atPressure ?? rating),
  source: 'weight on the wheel over the load at this pressure, or over the load index where the pressure is not known',
  caution:
    'Standing still, level. Braking and cornering load the outer tires far more; ratings are limits for the road, by the maker and local rules.',
});
