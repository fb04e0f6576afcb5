/** Damping of one wheel against what would just keep it from swinging: linear, bump and rebound taken together. */
import { given, inPractice, inverse, quantity, way } from '../../catalog.js';
import { axleSprungMass } from '../mass/loads.js';
import { damperRatio } from '../ride/travel.js';
import { rideRate, wheelRate } from '../springs/wheelRates.js';

const caution = 'A damper holds gas under pressure: do not open, drill or heat it; rebuild it as its maker says.';
const critical = 'den Hartog, Mechanical Vibrations, ch. 2, c_c = 2 sqrt(k m), from memory';
const virtualWork = 'virtual work: force and speed both go through the motion ratio';
const proportional = 'force over speed, if the one goes with the other';
/** N s/m. */
const saneDamping = [0, 60_000] as const;

export const damperForce = quantity({
  path: 'damper.force',
  scope: 'axle',
  name: 'force of one damper at a speed',
  label: 'damper force',
  symbol: 'F_d',
  words: ['damper force', 'shock force', 'damping force'],
  dimension: 'force',
  sane: [0, 20_000],
  told: { usually: 'spec', measured: { absolute: 30 }, spec: { absolute: 80 } },
  measure: 'From its dyno sheet, at the speed that is told with it: the mean of bump and rebound.',
  caution,
});
export const damperSpeed = quantity({
  path: 'damper.speed',
  scope: 'axle',
  name: 'speed at which the force of the damper was read',
  label: 'damper speed',
  symbol: 'v_d',
  words: ['damper speed', 'shaft speed', 'piston speed', 'damper shaft speed'],
  dimension: 'speed',
  sane: [0.005, 3],
  told: { usually: 'spec', measured: { relative: 0.02 }, spec: { relative: 0.03 } },
  measure: 'Of the same dyno sheet: 0.13 m/s (5 in/s) is usual for how a car takes a set.',
});
export const damperRate = quantity({
  path: 'damper.rate',
  typical: [inPractice('road cars to track cars', 1000, 12_000)],
  scope: 'axle',
  name: 'damping rate of one damper',
  label: 'damper rate',
  symbol: 'c_d',
  words: ['damper rate', 'damping rate', 'damping coefficient', 'shock rate', 'damper coefficient'],
  dimension: 'dampingRate',
  sane: saneDamping,
  measure: 'Force over speed on its dyno sheet, mean of bump and rebound; of a digressive damper it holds at that speed only.',
  caution,
  ways: [
    way({
      needs: { force: damperForce, speed: damperSpeed },
      compute: ({ force, speed }) => force / speed,
      formula: 'force / speed',
      source: proportional,
      basis: 'force over speed, at that speed',
    }),
  ],
});
export const wheelDamping = quantity({
  path: 'wheelDamping',
  typical: [inPractice('road cars to track cars', 800, 8000)],
  scope: 'axle',
  name: 'damping at the wheel',
  symbol: 'c_w',
  words: ['wheel damping', 'damping at the wheel'],
  dimension: 'dampingRate',
  sane: saneDamping,
  ways: [
    way({
      needs: { damper: damperRate, ratio: damperRatio },
      compute: ({ damper, ratio }) => damper * ratio ** 2,
      formula: 'damper * ratio^2',
      source: virtualWork,
      basis: 'damper rate times its motion ratio squared',
    }),
  ],
});
export const criticalDamping = quantity({
  path: 'criticalDamping',
  scope: 'axle',
  name: 'critical damping of a wheel',
  label: 'critical damping',
  symbol: 'c_c',
  words: ['critical damping', 'crit damping', 'critical damping rate'],
  dimension: 'dampingRate',
  sane: [100, 60_000],
  typical: { range: [2500, 12_000], of: 'road cars to track cars; common practice, no source' },
  ways: [
    way({
      needs: { rate: rideRate, sprung: axleSprungMass },
      compute: ({ rate, sprung }) => 2 * Math.sqrt((rate * sprung) / 2),
      formula: '2 * sqrt(rate * sprung / 2)',
      source: critical,
      basis: 'on springs and tires',
    }),
    way({
      needs: { rate: wheelRate, sprung: axleSprungMass },
      compute: ({ rate, sprung }) => 2 * Math.sqrt((rate * sprung) / 2),
      formula: '2 * sqrt(rate * sprung / 2)',
      source: critical,
      basis: 'no tire in it',
    }),
  ],
});
export const dampingRatio = quantity({
  path: 'dampingRatio',
  scope: 'axle',
  name: 'damping ratio, of critical',
  label: 'damping ratio',
  main: true,
  symbol: 'zeta',
  words: ['damping ratio', 'damping', 'zeta', 'damping factor'],
  dimension: 'ratio',
  sane: [0, 3],
  typical: [inPractice('road cars', 0.2, 0.4), inPractice('track cars', 0.5, 0.8)],
  caution,
  ways: [
    way({
      needs: { damping: wheelDamping, critical: criticalDamping },
      compute: ({ damping, critical }) => damping / critical,
      formula: 'damping / critical',
      source: 'by definition; a heave of this end alone, and linear dampers',
    }),
  ],
});
inverse(wheelDamping, {
  needs: { ratio: given(dampingRatio), critical: criticalDamping },
  compute: ({ ratio, critical }) => ratio * critical,
  formula: 'ratio * critical',
  source: 'by definition',
  basis: 'from the damping ratio told',
});
inverse(damperRate, {
  needs: { wheel: given(wheelDamping), ratio: damperRatio },
  compute: ({ wheel, ratio }) => wheel / ratio ** 2,
  formula: 'wheel / ratio^2',
  source: virtualWork,
  basis: 'damping at the wheel over the motion ratio squared',
});
