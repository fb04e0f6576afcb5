/** What the tires grip with: a coefficient at a load, how it falls with load and with lean, and their stiffness sideways. */
import { inPractice, left, quantity, right, way } from '../../catalog.js';
import { cgHeight, wheelbase } from '../mass/told.js';
import { weighedCorner, weighedShare } from '../mass/weighed.js';

const degree = Math.PI / 180;
const g = 9.80665;

export const gripCoefficient = quantity({
  path: 'grip.mu',
  typical: [
    inPractice('street tires, dry', 0.8, 1.1),
    inPractice('autocross street tires, dry', 1, 1.3),
    inPractice('slicks, dry', 1.2, 1.6),
    inPractice('street tires, wet', 0.5, 0.8),
  ],
  scope: 'axle',
  name: 'grip coefficient at the reference load',
  label: 'grip coefficient',
  symbol: 'mu_0',
  alike: true,
  words: ['mu', 'grip', 'grip coefficient', 'tire grip', 'friction coefficient', 'friction', 'coefficient of friction'],
  dimension: 'ratio',
  sane: [0.2, 2.2],
  told: { usually: 'measured', measured: { absolute: 0.04 }, spec: { absolute: 0.1 } },
  measure: 'From a steady lap of a skidpad: the lateral g there is a little under it. Depends on surface, heat and pressure.',
  caution: 'A closed course only; tires near their limit let go without notice.',
  estimate: {
    needs: {},
    compute: () => 1,
    within: { absolute: 0.15 },
    error: 'common',
    source: 'street tires on dry asphalt; common practice, no source',
  },
});
export const gripLoad = quantity({
  path: 'grip.load',
  scope: 'axle',
  name: 'load at which the grip coefficient is told',
  label: 'load of grip mu',
  symbol: 'N_0',
  alike: true,
  words: ['grip load', 'grip reference load', 'mu load'],
  dimension: 'force',
  sane: [500, 15_000],
  told: { usually: 'measured', measured: { relative: 0.02 }, spec: { relative: 0.02 } },
  measure: 'The load on one tire where its coefficient was read; a quarter of the car for a skidpad.',
  estimate: {
    needs: {},
    compute: () => 3000,
    within: { absolute: 0 },
    error: 'common',
    source: 'a quarter of a car of 1220 kg, by definition',
  },
});
export const gripExponent = quantity({
  path: 'grip.exponent',
  typical: [inPractice('car tires', 0.05, 0.25)],
  scope: 'axle',
  name: 'fall of grip with load, exponent',
  label: 'fall of grip',
  symbol: 'n',
  alike: true,
  words: ['grip exponent', 'load sensitivity', 'grip fall'],
  dimension: 'ratio',
  sane: [0, 0.6],
  told: { usually: 'spec', measured: { absolute: 0.03 }, spec: { absolute: 0.05 } },
  measure: 'mu = mu_0 (N/N_0)^-n: at twice the load the coefficient is 2^-n of itself, 0.90 for n = 0.15.',
  estimate: { needs: {}, compute: () => 0.15, within: { absolute: 0.08 }, error: 'common', source: 'common practice, no source' },
});
export const gripBestLean = quantity({
  path: 'grip.bestLean',
  typical: [inPractice('car tires', 0.01745, 0.06981)],
  scope: 'axle',
  name: 'lean toward the turn at which the tire grips most',
  label: 'best lean of tire',
  symbol: 'gamma_b',
  alike: true,
  words: ['best lean', 'best camber of the tire', 'best lean of the tire'],
  dimension: 'angle',
  sane: [0, 6 * degree],
  told: { usually: 'spec', measured: { absolute: 0.5 * degree }, spec: { absolute: degree } },
  measure: 'From tire data or temperatures across the tread: the lean against the road of the outer tire, top toward the turn.',
  estimate: { needs: {}, compute: () => 2 * degree, within: { absolute: degree }, error: 'common', source: 'common practice, no source' },
});
export const gripLeanLoss = quantity({
  path: 'grip.leanLoss',
  typical: [inPractice('car tires', 0.01, 0.08)],
  scope: 'axle',
  name: 'grip lost 3 degrees away from the best lean',
  label: 'grip lost by lean',
  symbol: 'l_3',
  alike: true,
  words: ['lean loss', 'camber loss', 'grip lost by camber'],
  dimension: 'ratio',
  sane: [0, 0.3],
  told: { usually: 'spec', measured: { absolute: 0.01 }, spec: { absolute: 0.02 } },
  measure: 'From tire data; 0 leaves the effect of camber out. Radials lose a few per cent.',
  estimate: { needs: {}, compute: () => 0.035, within: { absolute: 0.025 }, error: 'common', source: 'common practice, no source' },
});
/** One error for both ends: a car wears four tires of one kind. */
export const corneringPerLoad = quantity({
  path: 'tire.corneringPerLoad',
  typical: [inPractice('car tires, N per N and rad', 10, 25)],
  scope: 'car',
  name: 'cornering stiffness of the tires over their load, per radian',
  label: 'stiffness per load',
  symbol: 'C_alpha/N',
  words: ['cornering stiffness per load', 'tire stiffness per load'],
  dimension: 'ratio',
  sane: [4, 40],
  measure: 'From tire data: side force per radian of slip, over the load it was taken at.',
  ways: [way({ needs: {}, compute: () => 12, ...{ sort: 'estimate', within: { relative: 0.3 }, source: 'common practice, no source' } })],
});
export const corneringStiffness = quantity({
  path: 'tire.cornering',
  scope: 'axle',
  name: 'cornering stiffness of one tire, per radian of slip',
  label: 'cornering stiffness',
  symbol: 'C_alpha',
  words: ['cornering stiffness', 'tire cornering stiffness'],
  dimension: 'force',
  sane: [8000, 300_000],
  told: { usually: 'spec', measured: { relative: 0.1 }, spec: { relative: 0.15 } },
  measure: 'From tire data at its load: side force per radian of slip angle (57.3 times that of a degree), where it is still straight.',
  ways: [
    way({
      needs: { left: left(weighedCorner), right: right(weighedCorner), perLoad: corneringPerLoad },
      compute: ({ left, right, perLoad }) => (perLoad * (left + right) * g) / 2,
      ...{ sort: 'estimate', within: { relative: 0.14 }, source: 'in proportion to its load; common practice, no source' },
    }),
    way({ needs: {}, compute: () => 40_000, ...{ sort: 'estimate', within: { relative: 0.5 }, source: 'common practice, no source' } }),
  ],
});
export const brakeShare = quantity({
  path: 'brake.frontShare',
  percent: true,
  typical: [inPractice('road cars', 0.6, 0.75)],
  scope: 'car',
  name: 'front share of the brake force',
  label: 'front brake share',
  symbol: 'b_f',
  words: ['brake share', 'front brake share', 'brake bias', 'brake balance', 'brake distribution'],
  dimension: 'ratio',
  sane: [0.3, 0.95],
  told: { usually: 'spec', measured: { absolute: 0.02 }, spec: { absolute: 0.03 } },
  measure: 'Front brake force over the whole, from torque over tire radius at one line pressure.',
  caution: 'Brakes are life: parts and changes as the maker and your rules have them, checked by somebody licensed.',
  ways: [
    way({
      needs: { share: weighedShare, height: cgHeight, wheelbase },
      compute: ({ share, height, wheelbase }) => Math.min(0.9, share + (0.85 * height) / wheelbase),
      ...{ sort: 'estimate', within: { absolute: 0.05 } },
      source: 'so that the front locks first from 0.15 to 0.8 g, as UN R13-H asks, from memory',
    }),
    way({ needs: {}, compute: () => 0.7, ...{ sort: 'estimate', within: { absolute: 0.15 }, source: 'common practice, no source' } }),
  ],
});
