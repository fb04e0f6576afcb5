/** What came in, in one order: lines, edits, redactions, states of rooms, invitations. An event's id is kept for ever, its content is not. */

import type { Holder } from './holder.js';
import { readableText } from './outbox.js';
import { prepared, type Store } from './store.js';

export type InboxKind = 'message' | 'edit' | 'redaction' | 'state' | 'invite' | 'left';
/**
 * `answered`: a reply stands in the outbox. `silent`: not for the bot, or nothing to say. `failed`: given up, with a reply. `withdrawn`: redacted
 * before it was answered. `unreadable`: encrypted.
 */
export type InboxState = 'new' | 'answered' | 'silent' | 'failed' | 'withdrawn' | 'unreadable';
export interface Incoming {
  readonly event: string;
  readonly room: string;
  readonly sender: string;
  readonly kind: InboxKind;
  /** The event that an edit or a redaction is about. */
  readonly target?: string;
  /** The root of the thread that it stands in. */
  readonly thread?: string | undefined;
  /** JSON as it came; undefined for what cannot be read. */
  readonly content?: string;
  /** When it was sent, by the homeserver's clock; milliseconds since 1970. For ageing alone: order is the timeline's. */
  readonly at: number;
  readonly state?: 'new' | 'unreadable';
}
export interface InboxRow {
  readonly seq: number;
  readonly event: string;
  readonly room: string;
  readonly sender: string;
  readonly kind: InboxKind;
  readonly target: string | null;
  readonly thread: string | null;
  /** Null once it was erased. */
  readonly content: string | null;
  readonly at: number;
  readonly state: InboxState;
  readonly tries: number;
  readonly reason: string | null;
}
const columns = 'seq, event, room, sender, kind, target, thread, content, at, state, tries, reason';
const on = prepared((db) => ({
  add: db.prepare<[string, string, string, string, string | null, string | null, string | null, number, string]>(
    'INSERT INTO inbox (event, room, sender, kind, target, thread, content, at, state) VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?) ON CONFLICT (event) DO NOTHING',
  ),
  find: db.prepare<[string], InboxRow>(`SELECT ${columns} FROM inbox WHERE event = ?`),
  heads: db.prepare<[], InboxRow>(
    `SELECT ${columns} FROM inbox WHERE seq IN (
       SELECT min(seq) FROM inbox WHERE state = 'new' AND kind IN ('message', 'edit') GROUP BY room, sender
       UNION ALL SELECT seq FROM inbox WHERE state = 'new' AND kind NOT IN ('message', 'edit')
     ) ORDER BY seq`,
  ),
  tried: db.prepare<[number]>('UPDATE inbox SET tries = tries + 1 WHERE seq = ?'),
  untried: db.prepare<[number]>('UPDATE inbox SET tries = tries - 1 WHERE seq = ? AND tries > 0'),
  finish: db.prepare<[string, string | null, number]>("UPDATE inbox SET state = ?, reason = ? WHERE seq = ? AND state = 'new'"),
  become: db.prepare<[string, string]>('UPDATE inbox SET state = ? WHERE event = ?'),
  erase: db.prepare<[string]>('UPDATE inbox SET content = NULL WHERE event = ?'),
  redacted: db.prepare<[string], { n: number }>("SELECT count(*) AS n FROM inbox WHERE target = ? AND kind = 'redaction'"),
  edits: db.prepare<[string], InboxRow>(`SELECT ${columns} FROM inbox WHERE target = ? AND kind = 'edit' ORDER BY seq`),
  old: db.prepare<[number]>("UPDATE inbox SET content = NULL WHERE at < ? AND content IS NOT NULL AND state <> 'new'"),
  forget: db.prepare<[string]>("UPDATE inbox SET sender = '', content = NULL WHERE sender = ?"),
  texts: db.prepare<[string], { room: string; at: number; content: string }>(
    "SELECT room, at, content FROM inbox WHERE sender = ? AND kind IN ('message', 'edit') AND content IS NOT NULL ORDER BY seq",
  ),
  open: db.prepare<[], { n: number }>("SELECT count(*) AS n FROM inbox WHERE state = 'new'"),
}));
/** False when the event is known already. */
export const receive = (store: Store, it: Incoming): boolean =>
  on(store).add.run(
    it.event,
    it.room,
    it.sender,
    it.kind,
    it.target ?? null,
    it.thread ?? null,
    it.content ?? null,
    it.at,
    it.state ?? 'new',
  ).changes === 1;
export const findIncoming = (store: Store, event: string): InboxRow | undefined => on(store).find.get(event);
/** What is to do, in order: of each member in each room the oldest message or edit, and every row of another kind. */
export const incomingHeads = (store: Store): readonly InboxRow[] => on(store).heads.all();
/** Before the work, so that a row that kills the process is counted too. */
export const countTry = (store: Store, seq: number): void => void on(store).tried.run(seq);
/** It was put off without having been tried to its end, and nothing speaks against it. */
export const uncountTry = (store: Store, seq: number): void => void on(store).untried.run(seq);
/** Only a row that is still new; false when it is not. */
export const finishIncoming = (store: Store, seq: number, state: InboxState, reason?: string): boolean =>
  on(store).finish.run(state, reason ?? null, seq).changes === 1;
/** A line that was silent and was edited into a question, or was answered and is now redacted. */
export const becomeIncoming = (store: Store, event: string, state: InboxState): void => void on(store).become.run(state, event);
export const eraseIncoming = (store: Store, event: string): void => void on(store).erase.run(event);
/** Whether a redaction of the event has come in, handled or not. */
export const isRedacted = (store: Store, event: string): boolean => on(store).redacted.get(event)?.n !== 0;
export const editsOf = (store: Store, event: string): readonly InboxRow[] => on(store).edits.all(event);
/** Erases what was said before this moment; what still waits is kept. */
export const eraseIncomingBefore = (store: Store, before: number): void => void on(store).old.run(before);
export const countIncoming = (store: Store): number => on(store).open.get()?.n ?? 0;
export const holder: Holder = {
  texts: (store, member) =>
    on(store)
      .texts.all(member)
      .map(({ room, at, content }) => ({ what: 'message', room, at, text: readableText(content) })),
  erase: (store, member) => void on(store).forget.run(member),
};
