/** What handling a line needs beside the store, put together once: the commands with their calculator, the renderer with its pictures. */
import { dispatch } from '../commands/dispatch.js';
import { createCalculator } from './expressions/calculator.js';
import { createDraughtsman } from './render/picture.js';
import { createRenderer } from './render/renderer.js';
import type { Dispatch, Log, Render } from './work/world.js';

export interface Services {
  readonly dispatch: Dispatch;
  readonly render: Render;
  /** Ends the threads for sums and pictures. */
  close(): Promise<void>;
}

export function createServices(log: Log): Services {
  const calculator = createCalculator();
  const draughtsman = createDraughtsman();
  return {
    dispatch: (text, situation) => dispatch(text, { ...situation, calculator }),
    render: createRenderer(draughtsman, log),
    close: async () => {
      await Promise.all([calculator.close(), draughtsman.close()]);
    },
  };
}
