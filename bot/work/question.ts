/**
 * Which answer of the bot's a line goes on from, and which question of the bot's a bare number answers: only one that the asker was asked, and only by
 * a reply to it, or as the asker's next line with nobody between, in the room, in the thread, or in a thread that was opened on it.
 */
import { notSharedAnyMore } from '../../commands/house/more.js';
import type { Choice } from '../../commands/reading.js';
import { headOf } from '../records/cars.js';
import { openFor_ms, type Spot, type Talk, talkBefore, talkOf, wasSaidBetween } from '../records/conversation.js';
import { findSent } from '../records/outbox.js';
import { revisionsMadeBy } from '../records/revisions.js';
import type { World } from './world.js';

/** What a line replies to. Of a line whose content is gone it is not known. */
export type RepliesTo = 'nothing' | 'somebody else' | 'not known' | { readonly command: string };
/** Where a line was said, and how. Of an edit, the line that it belongs to. */
export interface Said extends Spot {
  readonly repliesTo: RepliesTo;
  /** When it was sent: milliseconds since 1970. */
  readonly at: number;
  /** Of an edit: the line and its earlier edits, whose changes are taken back first. */
  readonly takesBack: readonly string[];
}

const own = (talk: Talk | undefined, { asker, room }: Said): Talk | undefined =>
  talk !== undefined && talk.asker === asker && talk.room === room ? talk : undefined;
/** Of a thread that was opened on an answer to the asker, or on the asker's own line. */
const openedOn = (world: World, said: Said): Talk | undefined =>
  said.thread === '' ? undefined : own(talkOf(world.store, findSent(world.store, said.thread)?.command ?? said.thread), said);

/** What a line goes on from: the answer that it replies to, else the asker's newest there. Never somebody else's. */
export function goesOnFrom(world: World, said: Said): Talk | undefined {
  const { repliesTo } = said;
  if (typeof repliesTo === 'object') return own(talkOf(world.store, repliesTo.command), said);
  return talkBefore(world.store, said) ?? openedOn(world, said);
}
/**
 * The answer that a line follows at once. `called`: the line calls the bot, so that only what the asker has said stands between.
 * A number or a `more` that follows none is not for the bot.
 */
export function follows(world: World, said: Said, called: boolean): Talk | undefined {
  const { repliesTo } = said;
  if (typeof repliesTo === 'object') return own(talkOf(world.store, repliesTo.command), said);
  if (repliesTo !== 'nothing') return undefined;
  const newest = talkBefore(world.store, said);
  if (newest !== undefined && said.at - newest.at > openFor_ms) return undefined;
  const talk = newest ?? openedOn(world, said);
  if (talk === undefined || wasSaidBetween(world.store, talk.place, said, called ? said.asker : undefined)) return undefined;
  return talk;
}

/** A number alone, in any digits' width. */
export function bareNumber(text: string): number | undefined {
  const digits = /^\s*(\d{1,2})\s*[.)]?\s*$/.exec(text.normalize('NFKC'))?.[1];
  return digits === undefined ? undefined : Number(digits);
}
export interface Chosen {
  /** Which number was typed. */
  readonly number: number;
  readonly text: string;
  readonly instead?: string;
  readonly stale?: true;
}
/** The line that a number stands for. */
export function chosen(world: World, talk: Talk, number: number, said: Said, prefix: string): Chosen {
  const typed = { number, text: String(number) };
  if (talk.closed) return { ...typed, instead: notSharedAnyMore };
  const choice: Choice | undefined = talk.choices[number - 1];
  if (choice === undefined) {
    const last = talk.choices.length;
    const only = `${prefix}${talk.choices[0]?.line}`;
    return { ...typed, instead: last === 1 ? `There is only 1 to choose: ${only}` : `There is no ${number}: choose 1 to ${last}.` };
  }
  const stale = talk.heads.some(({ car, head }) => headWithout(world, car, said.takesBack) !== head);
  return { number, text: choice.line, ...(stale ? { stale } : {}) };
}
/**
 * A line that goes on from an answer, as things stand now: what the answer told of may have been lost from sight since the line was heard.
 * What was offered is then not said again either.
 */
export function asItStands<L extends Partial<Chosen> & { readonly after?: Talk | undefined }>({ store }: World, line: L): L {
  if (line.after === undefined) return line;
  const after = talkOf(store, line.after.command);
  const lost = line.number !== undefined && after?.closed ? { text: String(line.number), instead: notSharedAnyMore } : {};
  return { ...line, ...lost, after };
}
/** Where a car stood before an edited line moved it. */
function headWithout(world: World, car: number, events: readonly string[]): number | undefined {
  const made = new Map(events.flatMap((event) => revisionsMadeBy(world.store, event)).map(({ id, parent }) => [id, parent]));
  let head = headOf(world.store, car);
  while (head !== undefined && made.has(head)) head = made.get(head);
  return head;
}
