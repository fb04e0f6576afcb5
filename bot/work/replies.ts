/** Puts what is said into the outbox, in the transaction that says it. */

import type { Sight } from '../../commands/context.js';
import { exportElsewhere } from '../../commands/house/me.js';
import { ChangeRefused } from '../records/apply.js';
import type { MemberExport } from '../records/export.js';
import type { InboxRow } from '../records/inbox.js';
import { type Action, markSent, outgoingOf, queue, transactionId } from '../records/outbox.js';
import type { Rights } from '../records/rights.js';
import { editContent, fileContent, markerKey, messageContent, shortForm } from './content.js';
import { isPrivate } from './privacy.js';
import type { Rendered, World } from './world.js';

export interface To {
  readonly row: InboxRow;
  readonly room: string;
  readonly command: string;
  readonly thread: string | undefined;
  /** Its text is erased once it is sent. */
  readonly brief: boolean;
  readonly at: number;
}
/** Under the version of the reply: the first is 0, each edit of the line makes the next. */
export const nextVersion = (world: World, command: string): number =>
  1 + Math.max(-1, ...outgoingOf(world.store, command).map(({ version }) => version));

interface Part {
  readonly part: number;
  readonly version: number;
  readonly action: Action;
  readonly content: Readonly<Record<string, unknown>>;
  readonly fallback?: Readonly<Record<string, unknown>>;
  readonly file?: Uint8Array;
  /** With what is said in its place when they are gone by the time it is sent. */
  readonly rights?: Rights & { readonly instead: Readonly<Record<string, unknown>> };
}
function put(world: World, to: To, { part, version, action, content, fallback, file, rights }: Part): void {
  const marked = (it: Readonly<Record<string, unknown>>, kind: Action | 'fallback' | 'instead'): string =>
    JSON.stringify({ ...it, [markerKey]: { command: to.command, key: transactionId(to.command, part, version, kind) } });
  const txn = queue(world.store, {
    ...{ command: to.command, part, version, action, room: to.room, at: to.at },
    content: marked(content, action),
    ...(rights === undefined ? {} : { rights, instead: marked(rights.instead, 'instead') }),
    ...(fallback === undefined ? {} : { fallback: marked(fallback, 'fallback') }),
    ...(file === undefined ? {} : { file }),
    ...(to.brief ? { brief: true } : { to: to.row.sender }),
  });
  if (txn !== undefined && world.delivery === 'hand over') markSent(world.store, txn, `handed-over:${txn}`);
}
const notShared = { body: 'What this was worked out from is not shared here any more.', html: '' };
/**
 * A first reply, or one that takes the place of the reply that stands (or is on its way).
 * @param seen - clubmates' cars that it was worked out from.
 */
export function queueReply(world: World, to: To, rendered: Rendered, seen: readonly Sight[]): void {
  const earlier = outgoingOf(world.store, to.command);
  const version = nextVersion(world, to.command);
  const stands = earlier.some(({ part, action, state }) => part === 0 && action === 'send' && ['ready', 'trying', 'sent'].includes(state));
  const make = stands ? editContent : messageContent;
  const addressee = { asker: to.row.sender, thread: to.thread, command: to.command };
  put(world, to, {
    ...{ part: 0, version, action: stands ? 'edit' : 'send' },
    content: make(rendered, addressee),
    // A picture that is not taken leaves its words; words that are not taken leave their headline.
    fallback: make(rendered.chart === undefined ? shortForm(rendered) : { body: rendered.body, html: rendered.html }, addressee),
    ...(rendered.chart === undefined ? {} : { file: rendered.chart.png }),
    ...(seen.length === 0 ? {} : { rights: { member: to.row.sender, alone: false, seen, instead: make(notShared, addressee) } }),
  });
}
/**
 * As a file, where it was asked, and only where nobody else reads it: now, and again when it is sent.
 * @throws ChangeRefused elsewhere.
 */
export function queueExport(world: World, to: To, data: MemberExport): void {
  const member = to.row.sender;
  if (!isPrivate(world.store, to.room, member)) throw new ChangeRefused(exportElsewhere);
  const file = Buffer.from(`${JSON.stringify(data, null, 2)}\n`);
  const addressee = { asker: member, thread: to.thread, command: to.command };
  const said = (body: string): Readonly<Record<string, unknown>> => messageContent({ body, html: '' }, addressee);
  put(
    world,
    { ...to, brief: true },
    {
      ...{ part: 1, version: nextVersion(world, to.command), action: 'send', file },
      content: fileContent('my-data.json', file.byteLength, 'application/json', addressee),
      fallback: said('This homeserver does not take the file with your data. Whoever runs me can give it to you.'),
      rights: {
        member,
        alone: true,
        seen: [],
        instead: said(`Your data was not sent, since others could read it here by now. ${exportElsewhere}`),
      },
    },
  );
}
/** After the reply, when it is the same room. */
export function queueLeave(world: World, command: string, room: string, at: number): void {
  const txn = queue(world.store, { command, part: 2, version: 0, action: 'leave', room, at });
  if (txn !== undefined && world.delivery === 'hand over') markSent(world.store, txn, `handed-over:${txn}`);
}
/** Said once to a room, ever: a name of its own takes the place of the command. */
export function sayOnce(world: Pick<World, 'store' | 'now'>, name: string, room: string, sentence: string, clear: boolean): void {
  const command = `${name}:${room}`;
  const content = messageContent({ body: sentence, html: '' }, { asker: undefined, thread: undefined, command: undefined });
  queue(world.store, {
    ...{ command, part: 0, version: 0, action: 'send', room, at: world.now() },
    content: JSON.stringify({ ...content, [markerKey]: { command, key: transactionId(command, 0, 0, 'send') } }),
    ...(clear ? { clear } : {}),
  });
}
