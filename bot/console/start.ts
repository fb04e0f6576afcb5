/** The console put together: its world, the invented club when it is new, and the loop that reads lines. */
import { runConsole } from '../console.js';
import { clubName, demoMembers, seedDemo } from '../demo.js';
import { createLog } from '../log.js';
import type { Store } from '../records/database.js';
import { createServices } from '../services.js';
import type { Settings } from '../settings.js';
import { Work } from '../work.js';
import { enter } from './session.js';
import { consoleWorld } from './world.js';

export interface ConsoleStart {
  readonly settings: Pick<Settings, 'prefix' | 'logLevel' | 'files' | 'demo'>;
  readonly store: Store;
  readonly json: boolean;
  readonly as?: string;
  readonly signal: AbortSignal;
}

/** @throws what a mistake of ours throws; a line that breaks is answered with a reference instead. */
export async function startConsole({ settings, store, json, as, signal }: ConsoleStart): Promise<void> {
  const log = createLog({ level: settings.logLevel });
  const services = createServices(log);
  try {
    const world = consoleWorld(store, services, log, settings.prefix);
    const work = new Work(world);
    const seeded = settings.demo && (await seedDemo(world, work, (member) => enter(world, member)));
    // What an earlier console left unanswered when it was killed.
    await work.run();
    const [first] = demoMembers;
    await runConsole({
      ...{ world, work, json, signal, as: as ?? first, folder: settings.files },
      input: process.stdin,
      output: process.stdout,
      environment: process.env,
      welcome: [
        ...(seeded ? [`${clubName}: an invented club to try things on.`] : []),
        'Try: show rear ride frequency',
        'or: compare me @sam, help, quit',
        'as NAME changes who speaks;',
        'room direct leaves the club’s room.',
      ],
    });
  } finally {
    await services.close();
  }
}
