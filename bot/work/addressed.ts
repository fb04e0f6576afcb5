/** Which lines are for the bot, and what is asked in them. In a room it keeps silent on all others. */
import { z } from 'zod';
import { hello } from '../../commands/house/manners.js';
import { more } from '../../commands/house/more.js';
import { asks, type Naming, namingIn } from '../../commands/language/calling.js';
import type { Talk } from '../records/conversation.js';
import { editsOf, type InboxRow } from '../records/inbox.js';
import { findSent } from '../records/outbox.js';
import type { StoredRoom } from '../records/rooms.js';
import { bareNumber, chosen, follows, goesOnFrom, type RepliesTo, type Said } from './question.js';
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
type Message = z.infer<typeof message>;
const edit = z.looseObject({ 'm.new_content': message });

export interface Line {
  /** What was asked, without prefix or name; the canonical line when a number stood for one. */
  readonly text: string;
  /** The number that was typed, where one stands for a choice. */
  readonly number?: number;
  /** A number that stands for no choice: the sentence that says so. */
  readonly instead?: string;
  /** Offered when a car stood where it no longer does: a change would not be what was offered. */
  readonly stale?: true;
  /** It may speak of the bot, not to it: nothing is changed. */
  readonly remark?: true;
  /** The answer that it goes on from. */
  readonly after?: Talk | undefined;
  /** An edit that is no longer for the bot: what the line changed is taken back, what it asked is closed, and nothing else is done. */
  readonly unsaid?: true;
}
const literally = (text: string): string => text.replace(/[.*+?^${}()|[\]\\]/g, '\\$&');

/** The quoted lines that older clients put before a reply. */
const withoutQuote = (body: string): string => (body.startsWith('> ') ? body.replace(/^(?:>.*\n)+\n?/, '') : body);

/** How long the prefix is as it was typed: `！` is `!`. Undefined where the line does not begin with it. */
function typedLength(line: string, prefix: string): number | undefined {
  let length = 0;
  for (const character of line) {
    length += character.length;
    const begun = line.slice(0, length).normalize('NFKC');
    if (begun === prefix) return length;
    if (begun.length >= prefix.length) return undefined;
  }
  return undefined;
}
/** Without the prefix, on its first line and on any other that has it; undefined where the first has none, or nothing follows it. */
export function withoutPrefix(body: string, prefix: string): string | undefined {
  const mark = prefix.normalize('NFKC');
  const lines = body.split('\n').map((line) => line.trim());
  if (typedLength(lines[0] ?? '', mark) === undefined) return undefined;
  const text = lines.map((line) => line.slice(typedLength(line, mark) ?? 0).trim()).join('\n');
  // "!!!" and "!" are said to the room.
  return text === '' || typedLength(text, mark) !== undefined ? undefined : text;
}

/** How the bot is named in a line, by its name or its id, where it is. */
export function namedIn(body: string, me: World['me']): Naming | undefined {
  const local = /^@([^:]+):/.exec(me.id)?.[1];
  const names = [me.id.replace(/^@/, ''), me.name, local].filter((name) => name !== undefined && name !== '');
  const name = `@?(?:${names.map((one) => literally(one ?? '')).join('|')})(?:['’]s)?`;
  const found = new RegExp(`(?<![\\p{L}\\p{N}_@-])${name}(?![\\p{L}\\p{N}_]|[.-]\\p{L})`, 'iu').exec(body);
  return found ? namingIn(body.slice(0, found.index), found[0], body.slice(found.index + found[0].length)) : undefined;
}

/** Of an edit, the relation is the line's: clients leave it out of what they edit. */
function repliesTo(world: World, line: InboxRow, read: Message | undefined): RepliesTo {
  if (read === undefined) return 'not known';
  const relates = read['m.relates_to'];
  const event = line.thread !== null && relates?.is_falling_back ? undefined : relates?.['m.in_reply_to']?.event_id;
  if (event === undefined) return 'nothing';
  const command = findSent(world.store, event)?.command;
  return command === undefined ? 'somebody else' : { command };
}
const contentOf = (row: InboxRow): unknown => (row.content === null ? undefined : JSON.parse(row.content));

/** Reads a message, or the new content of an edit of a message; undefined when it is not for the bot. */
export function hear(world: World, row: InboxRow, room: StoredRoom, edited?: InboxRow): Line | undefined {
  const content = contentOf(row);
  const read = edited === undefined ? message.safeParse(content).data : edit.safeParse(content).data?.['m.new_content'];
  if (read === undefined) return undefined;
  const line = edited ?? row;
  const first = edited === undefined ? read : message.safeParse(contentOf(edited)).data;
  const earlier = edited === undefined ? [] : editsOf(world.store, edited.event).filter(({ seq }) => seq < row.seq);
  const said: Said = {
    ...{ asker: line.sender, room: line.room, thread: line.thread ?? '', place: line.seq, at: line.at },
    repliesTo: repliesTo(world, line, first),
    takesBack: edited === undefined ? [] : [edited.event, ...earlier.map(({ event }) => event)],
  };
  const heard = read.msgtype === 'm.text' ? lineIn(world, read, said, room) : undefined;
  // A line whose content is gone may have been for the bot as a reply to it; one that was silent at first was none.
  const known = first !== undefined || earlier.some(({ state, content }) => state === 'answered' && content !== null);
  if (heard !== undefined || edited === undefined || edited.state === 'silent' || !known) return heard;
  return { text: '', unsaid: true };
}

function lineIn(world: World, read: Message, said: Said, room: StoredRoom): Line | undefined {
  const prefix = room.prefix ?? world.prefix;
  const unquoted = withoutQuote(read.body);
  const body = unquoted.trim();
  const prefixed = withoutPrefix(body, prefix);
  const found = namedIn(prefixed ?? body, world.me);
  // After the prefix, a name that does not lead is part of what is asked.
  const named = prefixed === undefined || found?.leads ? found : undefined;
  const toTheBot = typeof said.repliesTo === 'object';
  // A reply to somebody mentions whom they mentioned: by itself that calls nobody.
  const mentioned =
    (read['m.mentions']?.user_ids?.includes(world.me.id) ?? false) && (named !== undefined || said.repliesTo === 'nothing' || toTheBot);
  const remark = named?.spokenOf === true;
  const called = prefixed !== undefined || (named?.leads === true && !remark);
  const meant = called || room.direct || toTheBot || (mentioned && !remark) || (remark && (named.leads || mentioned) && asks(body));
  // Called by name, and nothing said: greeted, which says what to type.
  const text = named === undefined ? (prefixed ?? body) : named.text === '' ? hello.word : named.text;

  const number = unquoted === read.body || said.repliesTo !== 'nothing' ? bareNumber(text) : undefined;
  if (number !== undefined && !remark) {
    const talk = follows(world, said, called || mentioned);
    if (talk !== undefined && talk.offered > 0) return { ...chosen(world, talk, number, said, room.direct ? '' : prefix), after: talk };
    // It answers nothing: read as it stands, which changes nothing, where it is plainly said to the bot.
    return called || room.direct ? { text, after: goesOnFrom(world, said) } : undefined;
  }
  if (!meant) {
    const talk = isMore(text) ? follows(world, said, false) : undefined;
    return talk !== undefined && talk.unshown > 0 ? { text, after: talk } : undefined;
  }
  if (text === '') return undefined;
  return { text, ...(remark ? { remark } : {}), after: goesOnFrom(world, said) };
}
/** The one line that needs no call: it asks for the rest of what was just said. */
const isMore = (text: string): boolean => [more.word, ...more.also].includes(text.toLowerCase().replace(/\s*[.!?]*$/, ''));
