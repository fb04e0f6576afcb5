/** What handling a line needs beside the store, put together once: the commands with their calculator, the renderer with its pictures. */
import { createCalculator } from './expressions/calculator.js';
import { createDraughtsman } from './render/picture.js';
import { createRenderer } from './render/renderer.js';
import type { Dispatch, Log, Render } from './work/world.js';

/** The commands and the catalogs take a while to load: whoever starts the bot lets the homeserver be asked first. */
let loaded: Promise<typeof import('../commands/dispatch.js')> | undefined;
async function load(): Promise<typeof import('../commands/dispatch.js')> {
  const [dispatch, { registryProblems }] = await Promise.all([import('../commands/dispatch.js'), import('../commands/registry.js')]);
  const problems = registryProblems();
  if (problems.length > 0) throw new Error(`the commands are not sound: ${problems.join('; ')}`);
  return dispatch;
}
const commands = (): Promise<typeof import('../commands/dispatch.js')> => {
  loaded ??= load();
  return loaded;
};

export interface Services {
  readonly dispatch: Dispatch;
  readonly render: Render;
  /** Loads the commands, so that the first line need not wait for them. */
  warm(): Promise<void>;
  /** Ends the threads for sums and pictures. */
  close(): Promise<void>;
}

export function createServices(log: Log): Services {
  const calculator = createCalculator();
  const draughtsman = createDraughtsman();
  return {
    dispatch: async (text, situation) => (await commands()).dispatch(text, { ...situation, calculator }),
    render: createRenderer(draughtsman, log),
    warm: async () => {
      await commands();
    },
    close: async () => {
      await Promise.all([calculator.close(), draughtsman.close()]);
    },
  };
}
