/** Of all subjects what is not built yet; of two that share words the first is meant. */
import type { NotYet } from './catalog/notYet.js';
import { notYet as aero } from './subjects/aero/notYet.js';
import { notYet as alignment } from './subjects/alignment/notYet.js';
import { notYet as braking } from './subjects/braking/notYet.js';
import { notYet as damping } from './subjects/damping/notYet.js';
import { notYet as mass } from './subjects/mass/notYet.js';
import { notYet as suspension } from './subjects/suspension/notYet.js';
import { notYet as timing } from './subjects/timing/notYet.js';
import { notYet as tires } from './subjects/tires/notYet.js';

export const notYet: readonly NotYet[] = [...mass, ...alignment, ...suspension, ...damping, ...braking, ...timing, ...aero, ...tires];
