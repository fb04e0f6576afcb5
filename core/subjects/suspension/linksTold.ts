/** Where the links of each axle point, seen from the side: what drive and brakes do to the body's height. */
import { choice, quantity } from '../../catalog.js';

export const instantCentreAhead = quantity({
  path: 'links.inward',
  scope: 'axle',
  name: 'side view instant center distance',
  label: 'side IC inward',
  symbol: 'x_IC',
  words: ['instant center distance', 'side view swing arm', 'side view swing arm length', 'svsa', 'ic distance'],
  dimension: 'length',
  sane: [0.15, 30],
  told: { usually: 'measured', measured: { relative: 0.06 }, spec: { relative: 0.03 } },
  measure:
    'In the side view, where the lines of the upper and lower links meet: along the ground, ahead of a rear axle, behind a front one.',
});
export const instantCentreHeight = quantity({
  path: 'links.height',
  scope: 'axle',
  name: 'side view instant center height',
  label: 'side IC height',
  symbol: 'z_IC',
  words: ['instant center height', 'ic height', 'side view instant center height'],
  dimension: 'length',
  sane: [-2, 8],
  told: { usually: 'measured', measured: { absolute: 0.02 }, spec: { absolute: 0.01 } },
  measure: 'In the side view, where the lines of the upper and lower links meet: above the ground.',
});
export const brakePlace = choice({
  path: 'brake.place',
  scope: 'axle',
  name: 'brake location',
  alike: true,
  words: ['brake place', 'brake location'],
  options: ['outboard', 'inboard'],
  optionWords: { outboard: ['outboard brake', 'at the wheel'], inboard: ['inboard brake', 'at the differential'] },
  measure: 'Outboard: the caliper or drum stands on the upright or axle. Inboard: on the body, through a shaft.',
  estimate: { needs: {}, compute: () => 'outboard', source: 'as nearly all cars have them; common practice, no source' },
});
