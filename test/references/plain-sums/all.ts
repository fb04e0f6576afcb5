/** All plain sums, by subject. */
import { alignment } from './alignment.js';
import { bars } from './bars.js';
import { braking } from './braking.js';
import { corners } from './corners.js';
import { damping } from './damping.js';
import { gearing } from './gearing.js';
import { loads } from './loads.js';
import type { PlainSum } from './plainSum.js';
import { power } from './power.js';
import { pressures } from './pressures.js';
import { ride } from './ride.js';
import { roll } from './roll.js';
import { springs } from './springs.js';
import { tires } from './tires.js';
import { traction } from './traction.js';

export const subjects: Readonly<Record<string, readonly PlainSum[]>> = {
  springs,
  ride,
  damping,
  bars,
  roll,
  loads,
  tires,
  gearing,
  power,
  traction,
  braking,
  corners,
  pressures,
  alignment,
};
