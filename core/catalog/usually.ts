/** How far off a told amount usually is, by its dimension: for quantities that do not say it themselves. */
import type { Dimension } from '../dimensions.js';
import type { Scope, Told } from './values.js';

interface Usual {
  /** Of the value: measured, from a spec sheet. */
  readonly relative: readonly [number, number];
  /** SI, where the value may be near zero: measured, from a spec sheet. */
  readonly absolute: readonly [number, number];
}
/** Common practice, no source: what home tools and spec sheets come to, 19 in 20. */
const usual: Readonly<Record<Dimension, Usual>> = {
  ratio: { relative: [0.02, 0.05], absolute: [0.01, 0.02] },
  mass: { relative: [0.01, 0.03], absolute: [2, 10] },
  force: { relative: [0.03, 0.06], absolute: [20, 60] },
  length: { relative: [0.01, 0.02], absolute: [0.002, 0.005] },
  rate: { relative: [0.03, 0.06], absolute: [1000, 2000] },
  angle: { relative: [0.05, 0.1], absolute: [0.002, 0.004] },
  pressure: { relative: [0.02, 0.04], absolute: [4000, 8000] },
  stress: { relative: [0.05, 0.1], absolute: [1e7, 2e7] },
  frequency: { relative: [0.03, 0.05], absolute: [0.05, 0.1] },
  time: { relative: [0.02, 0.05], absolute: [0.1, 0.2] },
  speed: { relative: [0.02, 0.03], absolute: [0.5, 1] },
  acceleration: { relative: [0.05, 0.1], absolute: [0.3, 0.6] },
  angularSpeed: { relative: [0.01, 0.02], absolute: [5, 10] },
  turnsPerLength: { relative: [0.01, 0.02], absolute: [0.5, 1] },
  ratioPerLength: { relative: [0.1, 0.2], absolute: [0.2, 0.5] },
  torque: { relative: [0.03, 0.06], absolute: [5, 10] },
  rollStiffness: { relative: [0.05, 0.1], absolute: [500, 1000] },
  power: { relative: [0.05, 0.1], absolute: [2000, 5000] },
  powerPerMass: { relative: [0.05, 0.1], absolute: [5, 10] },
  energy: { relative: [0.05, 0.1], absolute: [1000, 5000] },
  dampingRate: { relative: [0.1, 0.2], absolute: [100, 200] },
  volume: { relative: [0.02, 0.05], absolute: [1e-4, 3e-4] },
  temperature: { relative: [0.01, 0.02], absolute: [2, 5] },
};
const exactly: Told = { usually: 'spec', measured: { absolute: 0 }, spec: { absolute: 0 } };

/** A condition of a question is meant exactly. What cannot be measured at home comes from a sheet. */
export function usuallyTold(dimension: Dimension, scope: Scope, [low, high]: readonly [number, number], measurable: boolean): Told {
  if (scope === 'question') return exactly;
  const usually = measurable ? 'measured' : 'spec';
  const { relative, absolute } = usual[dimension];
  // Temperatures have no natural zero in a garage.
  if ((low > 0 || high < 0) && dimension !== 'temperature') {
    return { usually, measured: { relative: relative[0] }, spec: { relative: relative[1] } };
  }
  return { usually, measured: { absolute: absolute[0] }, spec: { absolute: absolute[1] } };
}
