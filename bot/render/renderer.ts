/** Replies as messages with their picture: what the handling of a line is given. */
import { answer } from '../../commands/answer.js';
import type { Reply } from '../../commands/command.js';
import { ApartError } from '../apart.js';
import type { Log, Render } from '../work/world.js';
import type { Draughtsman } from './picture.js';
import { renderReply } from './reply.js';

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
  return async (reply, { room }) => {
    const options = { prefix: room.prefix };
    const { chart, ...bodies } = renderReply(reply, options);
    if (chart === undefined) return bodies;
    try {
      const { png, width, height } = await draughtsman.draw(chart);
      return { ...bodies, chart: { png, width, height } };
    } catch (problem) {
      if (!(problem instanceof ApartError)) throw problem;
      log.error({ err: problem }, 'a chart could not be drawn');
      const { chart: _, ...said } = renderReply(withoutPicture(reply), options);
      return said;
    }
  };
}
