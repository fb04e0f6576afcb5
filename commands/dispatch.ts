/**
 * One message of a member: its lines read, run in order, and answered. Each line is all or nothing; one that is refused does not stop the others.
 * Past the work that one message may ask for it ends: what is answered stands with its changes, the rest is named as not done.
 */
import { type Answer, answer } from './answer.js';
import { OutOfTime } from './breathing.js';
import type { Command, Outcome, Reply } from './command.js';
import type { Context, Garage } from './context.js';
import { Earlier } from './earlier.js';
import { offer } from './house/offer.js';
import { isStop, type Reading, type Stop } from './reading.js';
import { Draft } from './records/draft.js';
import { ChangeRefused } from './records/refused.js';
import { commandOf, commands } from './registry.js';
import { read } from './resolve.js';
import { settingOf } from './setting.js';
import { textOf } from './show/amount.js';
import { withoutVerb } from './verbs/without.js';

/** More than this in one message is a file, not a question. */
const mostLines = 40;

/**
 * What a message leads to: its answers, and its changes as data. Nothing is saved here.
 * @throws what a mistake of ours throws: nothing is caught, so the caller can answer with a reference and save nothing.
 */
export async function dispatch(text: string, context: Context): Promise<Reply> {
  const lines = text
    .split(/\r\n|[\n\r\u2028\u2029]/)
    .map((line) => line.trim())
    .filter((line) => line !== '');
  if (lines.length === 0) return { answers: context.room.direct ? [greeting(context)] : [], changes: [], read: [], seen: [] };
  if (lines.length > mostLines) {
    const sentence = `That is ${lines.length} lines; a message can hold ${mostLines}.`;
    return { answers: [answer('refused', sentence)], changes: [], read: [], seen: [] };
  }

  const draft = new Draft(context);
  const earlier = new Earlier(context.conversation);
  const answers: Answer[] = [];
  let trial = context.conversation.trial;
  let tried: Reply['trial'];
  for (const [nth, line] of lines.entries()) {
    const now: Context = {
      ...context,
      event: { ...context.event, nth },
      asker: draft.asker,
      garage: draft.garage,
      conversation: earlier.as(trial),
    };
    const run = await withinTime(() => runLine(line, now, draft, context.garage.others), context);
    if (run === undefined) {
      answers.push(cutOff(lines, nth));
      break;
    }
    const outcome = done(draft, run);
    answers.push(outcome.answer);
    if (outcome.trial) tried = trial = outcome.trial;
    else if (outcome.changes?.length) tried = trial = undefined;
  }
  const seen = [...draft.seen, ...earlier.seen];
  return { answers, changes: draft.changes, ...(tried ? { trial: tried } : {}), read: draft.read, seen };
}

/** Undefined where the message's work was used up before the line had ended. */
async function withinTime(run: () => Promise<Outcome>, { breathe }: Context): Promise<Outcome | undefined> {
  try {
    await breathe();
    return await run();
  } catch (problem) {
    if (problem instanceof OutOfTime) return undefined;
    throw problem;
  }
}
/** Says what was answered and what was not. `at`: the line in which it ended. */
function cutOff(lines: readonly string[], at: number): Answer {
  const line = lines[at] ?? '';
  const [done, all] = [at, lines.length];
  if (done === 0) {
    const whole = all === 1 ? 'That is' : `The first of these ${all} lines is`;
    const sentence = `${whole} more work than one message may ask for, so it was stopped and nothing was done; ask for less at once, such as one figure.`;
    return answer('refused', sentence, { next: [{ label: 'show ride frequency', line: 'show ride frequency' }] });
  }
  const named = (from: number, to: number): string => (from === to ? `line ${from}` : `lines ${from} to ${to}`);
  const sentence = `That is all the work that one message may ask for: ${named(1, done)} of ${all} ${done === 1 ? 'is' : 'are'} answered, and nothing of ${named(done + 1, all)} was done; send the rest again, from: ${line}`;
  return answer('refused', sentence, { next: [{ label: line, line }] });
}

/** What can't be done as things stand is refused, and the line changes nothing. */
function done(draft: Draft, outcome: Outcome): Outcome {
  if (outcome.changes === undefined || outcome.changes.length === 0) return outcome;
  try {
    draft.apply(...outcome.changes);
    return outcome;
  } catch (problem) {
    if (!(problem instanceof ChangeRefused)) throw problem;
    return { answer: answer('refused', problem.message) };
  }
}
async function runLine(line: string, context: Context, draft: Draft, others: Garage['others']): Promise<Outcome> {
  const setting = settingOf(context, commands, others);
  let reading = read(line, setting);
  // The reader knows the names of all cars that can be seen; what it makes of the line tells of those that are named.
  draft.hear(isStop(reading) ? `${line} ${JSON.stringify(reading)}` : line);
  const suggested = isStop(reading) ? undefined : suggestion(reading, context);
  if (suggested !== undefined) reading = read(suggested, setting);
  if (isStop(reading)) return { answer: stopped(reading) };
  const ran = await run(reading, line, context);
  const outcome = context.remark && ran.changes?.length ? offer(reading, context) : ran;
  return { ...outcome, answer: { ...outcome.answer, echoes: [...unsaid(reading.echoes, outcome.answer), ...outcome.answer.echoes] } };
}
/** How something was read is not said again where the answer shows it: `450 lb/in` of `450 read as 450 lb/in`. */
function unsaid(echoes: readonly string[], { headline, rows, notes }: Answer): readonly string[] {
  const shown = [headline, ...rows.flatMap(({ label, cells }) => [label, ...cells.map(textOf)]), ...notes].join(' ');
  return echoes.filter((echo) => {
    const [typed = '', read] = echo.split(' read as ');
    return read === undefined || !read.startsWith(typed) || !shown.includes(read);
  });
}
/** `why` alone, after a number: of that number, as the answer itself suggested. */
function suggestion({ verb, sides, tried, names, everything }: Reading, { conversation }: Context): string | undefined {
  if (verb === undefined || !ofTheLast.has(verb) || tried.length > 0 || names.length > 0 || everything) return undefined;
  if (sides.some(({ items, subjects }) => items.length + subjects.length > 0)) return undefined;
  return conversation.choices.find((choice) => choice.line.startsWith(`${verb} `))?.line;
}
const ofTheLast: ReadonlySet<string> = new Set(['why', 'draw', 'compare']);
function run(reading: Reading, line: string, context: Context): Outcome | Promise<Outcome> {
  if (reading.verb === undefined) return withoutVerb(reading, line, context);
  const command: Command | undefined = commandOf(reading.verb);
  if (!command) throw new Error(`the reader made up a verb: ${reading.verb}`);
  if (command.changes && reading.mended) return offer(reading, context);
  return command.run(reading, context);
}

const stopped = (stop: Stop): Answer =>
  answer(stop.stop, stop.sentence, {
    ...(stop.stop === 'asked' ? { choices: stop.choices } : {}),
    ...(stop.stop !== 'asked' && stop.line !== undefined ? { next: [{ label: stop.line, line: stop.line }] } : {}),
  });

const greeting = (context: Context): Answer =>
  context.garage.chosen
    ? answer('told', 'Ask about your car: show ride frequency', { next: [{ label: 'help', line: 'help' }] })
    : answer('told', 'Ask, or save your car: tire 245/40R17 vs 255/40R17', { next: [{ label: 'help', line: 'help' }] });
