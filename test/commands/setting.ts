/** The invented club that the corpora suppose: turnip in use, pickle beside it, moth of robin shared here; setups dry, wet and sunday. */

import { commands } from '../../commands/registry.js';
import type { Setting } from '../../commands/resolve.js';
import { catalog } from '../../core/stubaxle.js';

export const setting: Setting = {
  catalog,
  commands,
  preferences: { units: 'us', decimalMark: '.' },
  cars: [
    { id: 1, name: 'turnip' },
    { id: 2, name: 'pickle' },
  ],
  chosen: 1,
  setups: ['dry', 'wet', 'sunday'],
  others: [{ id: 3, name: 'moth', owner: '@robin:example.org', ownerName: 'robin' }],
  members: [
    { id: '@robin:example.org', name: 'robin' },
    { id: '@sam:example.org', name: 'sam' },
  ],
};
