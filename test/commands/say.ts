/** Text in, reply out, its changes made: as the bot does it. */
import type { Answer } from '../../commands/answer.js';
import type { Reply } from '../../commands/command.js';
import { dispatch } from '../../commands/dispatch.js';
import type { Club } from './garage.js';

/** A bare number is the choice that it stands for. */
export async function say(club: Club, name: string, text: string, room = 'paddock'): Promise<Reply> {
  club.now += 60_000;
  const picked = /^\d$/.test(text) ? club.choice(name, Number(text))?.line : undefined;
  const reply = await dispatch(picked ?? text, club.context(name, room));
  club.commit(name, reply);
  return reply;
}
/** The answer to one line. */
export async function ask(club: Club, name: string, line: string, room = 'paddock'): Promise<Answer> {
  const { answers } = await say(club, name, line, room);
  const [first] = answers;
  if (!first || answers.length > 1) throw new Error(`${answers.length} answers to ${JSON.stringify(line)}`);
  return first;
}
export { everything } from './everything.js';
