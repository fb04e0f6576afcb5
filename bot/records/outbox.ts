/** What the bot sends, as final wire JSON, each row once. The transaction id is derived, so a repeated or restored row is the same event. */
import { createHash } from 'node:crypto';
import { z } from 'zod';
import type { Holder } from './holder.js';
import { type Rights, readRights, writeRights } from './rights.js';
import { seenStill } from './shares.js';
import { prepared, type Store } from './store.js';

export type Action = 'send' | 'edit' | 'redact' | 'join' | 'leave';
export interface Outgoing {
  /** The event that it answers, or a name for what has none (a welcome). */
  readonly command: string;
  readonly part: number;
  readonly version: number;
  readonly action: Action;
  readonly room: string;
  /** The member whose question it answers: erased with them. */
  readonly to?: string;
  readonly content?: string;
  /** Sent instead, once, when the homeserver refuses the content as it is. */
  readonly fallback?: string;
  /** A picture or a file that is uploaded first; its address goes into the content. Kept until sent. */
  readonly file?: Uint8Array;
  /** May go into an encrypted room unencrypted: the sentence that says so. */
  readonly clear?: true;
  /** Its text is erased as soon as it is sent: the last answer to somebody who is forgotten. */
  readonly brief?: true;
  /** What must still be so when it is sent, and what is said in its place when it is not. */
  readonly rights?: Rights;
  readonly instead?: string;
  readonly at: number;
}
export interface OutboxRow {
  readonly seq: number;
  readonly command: string;
  readonly part: number;
  readonly version: number;
  readonly action: Action;
  readonly room: string;
  readonly content: string | null;
  readonly fallback: string | null;
  readonly file: Buffer | null;
  readonly clear: number;
  readonly rights: string | null;
  readonly instead: string | null;
  readonly txn: string;
  readonly state: 'ready' | 'trying' | 'sent' | 'refused' | 'withdrawn';
  readonly device: string | null;
  readonly first_try: number | null;
  readonly not_before: number;
  readonly tries: number;
  readonly event: string | null;
  readonly error: string | null;
}
/** One that may be sent next, and to whom it is. */
export type OutgoingHead = OutboxRow & { readonly to: string | null };
/** The same command, part, version and action always has the same transaction id, in every copy of the database. */
export const transactionId = (command: string, part: number, version: number, action: Action | 'fallback' | 'instead'): string =>
  createHash('sha256')
    .update(JSON.stringify([command, part, version, action]))
    .digest('hex')
    .slice(0, 32);

const columns =
  'seq, command, part, version, action, room, content, fallback, file, clear, rights, instead, txn, state, device, first_try, not_before, tries, event, error';
/** All that is said in a row. */
const nothing = 'content = NULL, fallback = NULL, file = NULL, rights = NULL, instead = NULL';
const open = "state IN ('ready', 'trying')";
const on = prepared((db) => ({
  queue: db.prepare<
    [
      ...[string, number, number, string, string, string | null, string | null, string | null, Uint8Array | null, number, number],
      ...[string | null, string | null, string, number],
    ]
  >(
    `INSERT INTO outbox (command, part, version, action, room, "to", content, fallback, file, clear, brief, rights, instead, txn, at)
     VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?) ON CONFLICT (command, part, version, action) DO NOTHING`,
  ),
  heads: db.prepare<[], OutgoingHead>(
    `WITH open AS MATERIALIZED (SELECT seq, room, "to" FROM outbox WHERE state IN ('ready', 'trying')),
       nobodys AS (SELECT room, min(seq) AS seq FROM open WHERE "to" IS NULL GROUP BY room)
     SELECT ${columns}, "to" FROM outbox WHERE seq IN (
       SELECT min(open.seq) FROM open LEFT JOIN nobodys USING (room)
       WHERE "to" IS NOT NULL AND (nobodys.seq IS NULL OR open.seq < nobodys.seq) GROUP BY room, "to"
       UNION ALL SELECT min(seq) AS first FROM open GROUP BY room HAVING first IN (SELECT seq FROM nobodys)
     ) ORDER BY seq`,
  ),
  find: db.prepare<[number], OutboxRow>(`SELECT ${columns} FROM outbox WHERE seq = ?`),
  trying: db.prepare<[{ device: string; now: number; content: string | null; seq: number }]>(
    `UPDATE outbox SET state = 'trying', first_try = CASE WHEN device = @device THEN coalesce(first_try, @now) ELSE @now END,
     device = @device, content = @content WHERE seq = @seq AND state IN ('ready', 'trying')`,
  ),
  again: db.prepare<[number]>("UPDATE outbox SET state = 'ready', device = NULL, first_try = NULL WHERE seq = ? AND state = 'trying'"),
  uploaded: db.prepare<[string, number]>('UPDATE outbox SET content = ?, file = NULL WHERE seq = ?'),
  wait: db.prepare<[number, string, number]>('UPDATE outbox SET not_before = ?, error = ?, tries = tries + 1 WHERE seq = ?'),
  hurry: db.prepare<[]>("UPDATE outbox SET not_before = 0 WHERE not_before > 0 AND state IN ('ready', 'trying')"),
  sent: db.prepare<[string, string]>(
    "UPDATE outbox SET state = 'sent', event = ?, file = NULL, fallback = NULL, instead = NULL, error = NULL, content = CASE WHEN brief = 0 THEN content END, rights = CASE WHEN brief = 0 THEN rights END WHERE txn = ? AND state IN ('ready', 'trying')",
  ),
  refused: db.prepare<[string, string, number]>(
    `UPDATE outbox SET state = ?, error = ?, ${nothing} WHERE seq = ? AND state IN ('ready', 'trying')`,
  ),
  instead: db.prepare<[string, string, number]>(
    "UPDATE outbox SET state = 'ready', content = instead, instead = NULL, rights = NULL, fallback = NULL, file = NULL, txn = ?, device = NULL, first_try = NULL, error = ? WHERE seq = ? AND instead IS NOT NULL",
  ),
  fallBack: db.prepare<[string, string, number]>(
    "UPDATE outbox SET state = 'ready', content = fallback, fallback = NULL, file = NULL, txn = ?, device = NULL, first_try = NULL, error = ? WHERE seq = ?",
  ),
  ofCommand: db.prepare<[string], OutboxRow>(`SELECT ${columns} FROM outbox WHERE command = ? ORDER BY seq`),
  byEvent: db.prepare<[string], OutboxRow>(`SELECT ${columns} FROM outbox WHERE event = ?`),
  withdraw: db.prepare<[string]>(
    `UPDATE outbox SET state = 'withdrawn', ${nothing} WHERE command = ? AND state = 'ready' AND action IN ('send', 'edit')`,
  ),
  erase: db.prepare<[string]>(
    `UPDATE outbox SET content = CASE WHEN ${open} THEN content END, fallback = NULL, brief = 1, rights = CASE WHEN ${open} THEN rights END,
     instead = CASE WHEN ${open} THEN instead END, file = CASE WHEN ${open} THEN file END WHERE command = ?`,
  ),
  eraseOne: db.prepare<[string]>(`UPDATE outbox SET ${nothing} WHERE event = ?`),
  old: db.prepare<[number]>(`UPDATE outbox SET ${nothing} WHERE at < ? AND NOT (${open})`),
  forget: db.prepare<[string]>(
    `UPDATE outbox SET content = CASE WHEN ${open} THEN content END, fallback = NULL, brief = 1, "to" = NULL,
     rights = CASE WHEN ${open} THEN rights END, instead = CASE WHEN ${open} THEN instead END WHERE "to" = ?`,
  ),
  close: db.prepare<[string, string, string]>(
    `UPDATE outbox SET state = ?, error = ?, ${nothing} WHERE room = ? AND state IN ('ready', 'trying') AND action <> 'join'`,
  ),
  silence: db.prepare<[string]>(
    `UPDATE outbox SET state = 'refused', error = 'the room is encrypted', ${nothing} WHERE room = ? AND state = 'ready' AND clear = 0 AND action IN ('send', 'edit')`,
  ),
  texts: db.prepare<[string], { room: string; at: number; content: string; rights: string | null }>(
    'SELECT room, at, content, rights FROM outbox WHERE "to" = ? AND content IS NOT NULL ORDER BY seq',
  ),
  open: db.prepare<[], { n: number }>("SELECT count(*) AS n FROM outbox WHERE state IN ('ready', 'trying')"),
  refusals: db.prepare<[], { n: number }>("SELECT count(*) AS n FROM outbox WHERE state = 'refused'"),
}));
/** Undefined when it stands there already: the same thing is never queued twice. */
export function queue(store: Store, it: Outgoing): string | undefined {
  const txn = transactionId(it.command, it.part, it.version, it.action);
  const values = [
    it.room,
    it.to ?? null,
    it.content ?? null,
    it.fallback ?? null,
    it.file ?? null,
    it.clear ? 1 : 0,
    it.brief ? 1 : 0,
    it.rights === undefined ? null : writeRights(it.rights),
    it.instead ?? null,
    txn,
    it.at,
  ] as const;
  return on(store).queue.run(it.command, it.part, it.version, it.action, ...values).changes === 1 ? txn : undefined;
}
/**
 * Of each room the oldest open row to each member: one member's replies keep their order, and need not wait for another's. What is to nobody (leaving,
 * a redaction, a welcome) passes nothing and is passed by nothing.
 */
export const outgoingHeads = (store: Store): readonly OutgoingHead[] => on(store).heads.all();
export const findOutgoing = (store: Store, seq: number): OutboxRow | undefined => on(store).find.get(seq);
/** From here on the homeserver may have it. The moment of the first try is kept while the device is the same. */
export const markTrying = (store: Store, seq: number, device: string, now: number, content: string | null): boolean =>
  on(store).trying.run({ device, now, content, seq }).changes === 1;
/** It was looked for, and is not there: it may be sent as if for the first time. */
export const markNotThere = (store: Store, seq: number): void => void on(store).again.run(seq);
export const markUploaded = (store: Store, seq: number, content: string): void => void on(store).uploaded.run(content, seq);
export const postpone = (store: Store, seq: number, until: number, error: string): void => void on(store).wait.run(until, error, seq);
/** The homeserver is there again: nothing waits any longer. */
export const hurry = (store: Store): void => void on(store).hurry.run();
/** By transaction id, so that the homeserver's answer and the event's own arrival in the timeline are one and the same. False when it was so already, or is not ours. */
export const markSent = (store: Store, txn: string, event: string): boolean => on(store).sent.run(event, txn).changes === 1;
export const markRefused = (store: Store, seq: number, error: string): void => void on(store).refused.run('refused', error, seq);
export const markWithdrawn = (store: Store, seq: number, error: string): void => void on(store).refused.run('withdrawn', error, seq);
/** Puts the short form in its place; false when there is none, or it was that already. */
export function fallBack(store: Store, row: OutboxRow, error: string): boolean {
  if (row.fallback === null) return false;
  return on(store).fallBack.run(transactionId(row.command, row.part, row.version, 'fallback'), error, row.seq).changes === 1;
}
/** It may not be said any more: puts in its place what is said instead; false when there is nothing. */
export const withhold = (store: Store, row: OutboxRow, error: string): boolean =>
  on(store).instead.run(transactionId(row.command, row.part, row.version, 'instead'), error, row.seq).changes === 1;
export const outgoingOf = (store: Store, command: string): readonly OutboxRow[] => on(store).ofCommand.all(command);
export const findSent = (store: Store, event: string): OutboxRow | undefined => on(store).byEvent.get(event);
/** What is certainly not in the room is not sent any more. */
export const withdrawUnsent = (store: Store, command: string): void => void on(store).withdraw.run(command);
/** Texts and files; what may be on its way is erased once that is known. */
export const eraseOutgoing = (store: Store, command: string): void => void on(store).erase.run(command);
export const eraseSent = (store: Store, event: string): void => void on(store).eraseOne.run(event);
export const eraseOutgoingBefore = (store: Store, before: number): void => void on(store).old.run(before);
export const closeRoomOutbox = (store: Store, room: string, error: string): void => void on(store).close.run('refused', error, room);
/** What was written for the room before it was encrypted is not sent. What is being tried is looked at by the sender. */
export const silenceRoom = (store: Store, room: string): void => void on(store).silence.run(room);
export const countOutgoing = (store: Store): number => on(store).open.get()?.n ?? 0;
export const countRefused = (store: Store): number => on(store).refusals.get()?.n ?? 0;
/** What can be read in a message's wire JSON. */
export const readableText = (content: string): string =>
  z.looseObject({ body: z.string() }).safeParse(JSON.parse(content)).data?.body ?? content;
const notSharedAnyMore = "(Left out: it was worked out from a clubmate's car that is not shared with you there any more.)";
export const holder: Holder = {
  texts: (store, member) =>
    on(store)
      .texts.all(member)
      .map(({ room, at, content, rights }) => {
        const mayBeGiven = seenStill(store, member, room, readRights(rights)?.seen ?? []);
        return { what: 'reply', room, at, text: mayBeGiven ? readableText(content) : notSharedAnyMore };
      }),
  // What is still on its way to them is sent, and erased then.
  erase: (store, member) => void on(store).forget.run(member),
};
