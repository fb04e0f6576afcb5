/** What handling needs of the world, in a console. */
import type { Store } from '../records/database.js';
import type { Log, World } from '../work/world.js';

/** The world of a console: replies are handed over to whoever asked. */
export const consoleWorld = (store: Store, { dispatch, render }: Pick<World, 'dispatch' | 'render'>, log: Log, prefix: string): World => ({
  ...{ store, dispatch, render, log, prefix },
  now: Date.now,
  me: { id: 'stubaxle', name: 'stubaxle' },
  mayInvite: () => false,
  delivery: 'hand over',
  whyNotEncrypted: 'The console has no encrypted rooms.',
});
