/** What handling a line needs beside the store, put together once: the commands with their calculator, the renderer with its pictures. */
import { answer } from '../commands/answer.js';
import type { Reply } from '../commands/command.js';
import { dispatch } from '../commands/dispatch.js';
import { ApartError } from './apart.js';
import { createCalculator } from './expressions/calculator.js';
import { createDraughtsman, type Draughtsman } from './render/picture.js';
import { renderReply } from './render/reply.js';
import type { Dispatch, Log, Render } from './work/world.js';

export interface Services {
  readonly dispatch: Dispatch;
  readonly render: Render;
  /** Ends the threads for sums and pictures. */
  close(): Promise<void>;
}

/** Renders replies, with a picture where there is a chart. When it can't be drawn, the reply says so, and has the values in words. */
export function createRenderer(draughtsman: Pick<Draughtsman, 'draw'>, log: Log): Render {
  const withoutPicture = (reply: Reply): Reply => ({
    ...reply,
    answers: reply.answers.map(({ chart, ...rest }) =>
      chart === undefined
        ? rest
        : answer(rest.kind, rest.headline, { ...rest, notes: [...rest.notes, `The picture could not be drawn. ${chart.words}`] }),
    ),
  });
  return async (reply) => {
    const { chart, ...bodies } = renderReply(reply);
    if (chart === undefined) return bodies;
    try {
      const { png, width, height } = await draughtsman.draw(chart);
      return { ...bodies, chart: { png, width, height } };
    } catch (problem) {
      if (!(problem instanceof ApartError)) throw problem;
      log.error({ err: problem }, 'a chart could not be drawn');
      const { chart: _, ...said } = renderReply(withoutPicture(reply));
      return said;
    }
  };
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
