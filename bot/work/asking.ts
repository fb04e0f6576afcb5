/** What a heard line comes to, before anything is stored: the reply, and what is said of an edit beside it. */
import { type Answer, answer } from '../../commands/answer.js';
import type { Reply } from '../../commands/command.js';
import type { Sight } from '../../commands/context.js';
import { typed } from '../../commands/show/typed.js';
import type { Line } from './addressed.js';
import type { Situation, World } from './world.js';

/** `seen`: the clubmates' cars that it tells anything of. */
export const plain = (a: Answer, seen: readonly Sight[]): Reply => ({ answers: [a], changes: [], read: [], seen });
/** The line's reply, as far as it says anything of its own. */
export async function asking(world: World, line: Line, situation: Situation): Promise<Reply> {
  if (line.unsaid) return { answers: [], changes: [], read: [], seen: [] };
  // A number says again what an answer offered, and so rests on all that the answer rested on.
  const offered = line.number === undefined ? [] : (situation.conversation.seen ?? []);
  if (line.instead !== undefined) return plain(answer('refused', line.instead), offered);
  const reply = await world.dispatch(line.text, situation);
  const seen = [...reply.seen, ...offered];
  if (!line.stale || reply.changes.length === 0) return { ...reply, seen };
  const again = typed(line.text, situation.room);
  return plain(answer('refused', `Your car has changed since that was offered. To do it all the same, type: ${again}`), seen);
}
/** What an edited line no longer says is taken back, and its reply says so. */
export function tellGivenBack(reply: Reply, names: readonly string[], unsaid: boolean): Reply {
  if (names.length === 0) return reply;
  const what = `${names.slice(0, 4).join(', ')}${names.length > 4 ? ` and ${names.length - 4} more` : ''}`;
  const sentence = `${unsaid ? 'Taken back, as your edited line is not for me' : 'Taken back, as your edited line no longer says it'}: ${what}.`;
  const last = reply.answers.at(-1);
  if (last === undefined) return { ...reply, answers: [answer('changed', sentence)] };
  return { ...reply, answers: [...reply.answers.slice(0, -1), { ...last, notes: [...last.notes, sentence] }] };
}
