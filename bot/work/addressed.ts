/** Which lines are for the bot, and what is asked in them. In a room it keeps silent on all others. */
import { z } from 'zod';
import type { Choice } from '../../commands/reading.js';
import { headOf } from '../store/cars.js';
import { newestTalk, openFor_ms, type Talk, talkOf } from '../store/conversation.js';
import type { InboxRow } from '../store/inbox.js';
import { findSent } from '../store/outbox.js';
import type { StoredRoom } from '../store/rooms.js';
import type { World } from './world.js';

const relation = z.looseObject({
  rel_type: z.string().optional(),
  event_id: z.string().optional(),
  is_falling_back: z.boolean().optional(),
  'm.in_reply_to': z.looseObject({ event_id: z.string() }).optional(),
});
const message = z.looseObject({
  msgtype: z.string(),
  body: z.string(),
  'm.mentions': z.looseObject({ user_ids: z.array(z.string()).optional() }).optional(),
  'm.relates_to': relation.optional(),
});
const edit = z.looseObject({ 'm.new_content': message });

export interface Line {
  /** What was asked, without prefix or name; the canonical line when a number stood for one. */
  readonly text: string;
  /** A number that stands for no choice: the sentence that says so. */
  readonly instead?: string;
  /** Offered when a car stood where it no longer does: a change would not be what was offered. */
  readonly stale?: true;
}
const literally = (text: string): string => text.replace(/[.*+?^${}()|[\]\\]/g, '\\$&');

/** The quoted lines that older clients put before a reply. */
const withoutQuote = (body: string): string => (body.startsWith('> ') ? body.replace(/^(?:>.*\n)+\n?/, '') : body);

/** Without the prefix, on its first line and on any other that has it; undefined where the first has none, or nothing follows it. */
export function withoutPrefix(body: string, prefix: string): string | undefined {
  const lines = body.split('\n').map((line) => line.trim());
  if (!lines[0]?.startsWith(prefix)) return undefined;
  const text = lines.map((line) => (line.startsWith(prefix) ? line.slice(prefix.length).trim() : line)).join('\n');
  // "!!!" and "!" are said to the room.
  return text === '' || text.startsWith(prefix) ? undefined : text;
}
/** Without the bot's name or id, when the line begins with it; `anywhere` when the client says that the bot is meant. */
export function withoutName(body: string, me: World['me'], anywhere: boolean): string | undefined {
  const local = /^@([^:]+):/.exec(me.id)?.[1];
  const names = [me.id.replace(/^@/, ''), me.name, local]
    .filter((name) => name !== undefined && name !== '')
    .map((name) => literally(name ?? ''));
  const name = `@?(?:${names.join('|')})`;
  const starting = new RegExp(`^\\s*${name}(?:\\s*[:,]\\s*|\\s+|$)`, 'iu').exec(body);
  if (starting) return body.slice(starting[0].length).trim();
  if (!anywhere) return undefined;
  return body.replace(new RegExp(`(?:^|\\s)${name}(?=[\\s:,.?!]|$)[:,]?`, 'iu'), ' ').trim();
}

const openTalk = (talk: Talk | undefined, row: InboxRow): Talk | undefined =>
  talk?.open && talk.offered > 0 && row.at - talk.at <= openFor_ms ? talk : undefined;

/** A bare number: which of the asker's own questions it answers. By reply: the one replied to; else the newest of the room and thread, for ten minutes. */
function question(world: World, row: InboxRow, repliedTo: string | undefined): Talk | undefined {
  const answered = repliedTo === undefined ? undefined : findSent(world.store, repliedTo)?.command;
  if (answered !== undefined) {
    const talk = talkOf(world.store, answered);
    return talk !== undefined && talk.asker === row.sender && talk.room === row.room && talk.offered > 0 ? talk : undefined;
  }
  return openTalk(newestTalk(world.store, row.sender, row.room, row.thread ?? ''), row);
}
const bareNumber = (text: string): number | undefined => {
  const digits = /^\s*(\d{1,2})\s*[.)]?\s*$/.exec(text)?.[1];
  return digits === undefined ? undefined : Number(digits);
};
function chosen(world: World, talk: Talk, number: number): Line {
  if (talk.closed) return { text: String(number), instead: 'What that was worked out from is not shared here any more; ask again.' };
  const choice: Choice | undefined = talk.choices[number - 1];
  if (choice === undefined) {
    const last = talk.choices.length;
    const instead = last === 1 ? `There is only 1 to choose: ${talk.choices[0]?.line}` : `There is no ${number}: choose 1 to ${last}.`;
    return { text: String(number), instead };
  }
  const stale = talk.heads.some(({ car, head }) => headOf(world.store, car) !== head);
  return { text: choice.line, ...(stale ? { stale } : {}) };
}

/** Reads a message, or the new content of an edit; undefined when it is not for the bot. */
export function hear(world: World, row: InboxRow, room: StoredRoom): Line | undefined {
  const content: unknown = row.content === null ? undefined : JSON.parse(row.content);
  const read = row.kind === 'edit' ? edit.safeParse(content).data?.['m.new_content'] : message.safeParse(content).data;
  if (read === undefined || read.msgtype !== 'm.text') return undefined;
  // An edit's relation is the edit itself.
  const relates = row.kind === 'edit' ? undefined : read['m.relates_to'];
  const repliedTo = row.thread !== null && relates?.is_falling_back ? undefined : relates?.['m.in_reply_to']?.event_id;
  const body = withoutQuote(read.body).trim();
  const mentioned = read['m.mentions']?.user_ids?.includes(world.me.id) ?? false;
  const prefixed = withoutPrefix(body, room.prefix ?? world.prefix);
  const named = prefixed === undefined ? withoutName(body, world.me, mentioned) : undefined;
  const text = prefixed ?? named ?? body;
  const number = bareNumber(text);
  const talk = number === undefined ? undefined : question(world, row, repliedTo);
  if (number !== undefined && talk !== undefined) return chosen(world, talk, number);
  const toTheBot = repliedTo !== undefined && number === undefined && findSent(world.store, repliedTo) !== undefined;
  const meant = prefixed !== undefined || named !== undefined || mentioned || room.direct || toTheBot;
  return meant && text !== '' ? { text } : undefined;
}
