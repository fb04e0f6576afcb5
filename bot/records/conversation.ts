/** What an answer leaves for the asker's next line in the same room and thread: lines not shown, a trial, and the open question. */

import { z } from 'zod';
import type { Conversation, Sight } from '../../commands/context.js';
import type { Choice } from '../../commands/reading.js';
import { pathNow } from '../../commands/records/renamed.js';
import type { Holder } from './holder.js';
import { sights } from './rights.js';
import { seenStill } from './shares.js';
import { prepared, type Store } from './store.js';

/** How long a bare number still answers a question. */
export const openFor_ms = 10 * 60_000;

export interface Head {
  readonly car: number;
  readonly head: number;
}
/** As it was left. */
export interface LeftTalk extends Omit<Conversation, 'closed'> {
  /** The event that was answered. */
  readonly command: string;
  readonly asker: string;
  readonly room: string;
  /** Empty: not in a thread. */
  readonly thread: string;
  /** Where the cars stood when the choices were offered. */
  readonly heads: readonly Head[];
  /** Clubmates' cars that its lines and choices tell anything of. */
  readonly seen: readonly Sight[];
  readonly at: number;
}
/** As it may be given again now: without what the asker may not see any more. */
export interface Talk extends LeftTalk, Pick<Conversation, 'closed'> {
  /** How many lines were not shown, and how many choices it had, also when they may not be given again. */
  readonly unshown: number;
  readonly offered: number;
  /** Where it stands among what was said: the place in the inbox of the line that was answered, or of the edit that made it a line for the bot. */
  readonly place: number;
}
/** A line, or the line that an edit belongs to. */
export interface Spot {
  readonly asker: string;
  readonly room: string;
  /** Empty: not in a thread. */
  readonly thread: string;
  readonly place: number;
}
interface Row {
  readonly command: string;
  readonly asker: string;
  readonly room: string;
  readonly thread: string;
  readonly rest: string;
  readonly trial: string | null;
  readonly choices: string;
  readonly heads: string;
  readonly seen: string;
  readonly at: number;
  readonly place: number;
}
const lines = z.array(z.string());
const choices = z.array(z.strictObject({ label: z.string(), line: z.string() })) satisfies z.ZodType<readonly Choice[]>;
const heads = z.array(z.strictObject({ car: z.number(), head: z.number() }));
const curve = z.strictObject({ x: z.array(z.number()), y: z.array(z.number()), between: z.enum(['line', 'step']) });
const fact = z.strictObject({
  value: z.union([z.number(), z.string(), curve]),
  within: z.number(),
  evidence: z.enum(['measured', 'spec', 'estimated']),
  source: z.string(),
});
const trial = z.strictObject({
  ...{ car: z.number(), head: z.number(), line: z.string(), facts: z.array(z.tuple([z.string().transform(pathNow), fact])) },
  // What was tried before this was kept was tried on the asker's own car.
  seen: sights.default([]),
});

/** What was silent at first has lost its content: it was answered where it was first edited into a line for the bot. */
const answered = `SELECT told.*, CASE WHEN line.content IS NOT NULL THEN line.seq ELSE
    (SELECT min(edit.seq) FROM inbox AS edit WHERE edit.target = told.command AND edit.kind = 'edit' AND edit.state IN ('answered', 'failed'))
  END AS place FROM conversations AS told JOIN inbox AS line ON line.event = told.command`;
const on = prepared((db) => ({
  leave: db.prepare<[Omit<Row, 'place'>]>(
    `INSERT INTO conversations (command, asker, room, thread, rest, trial, choices, heads, seen, open, at)
     VALUES (@command, @asker, @room, @thread, @rest, @trial, @choices, @heads, @seen, 1, @at)
     ON CONFLICT (command) DO UPDATE SET rest = excluded.rest, trial = excluded.trial, choices = excluded.choices, heads = excluded.heads,
       seen = excluded.seen, at = excluded.at`,
  ),
  before: db.prepare<[Spot], Row>(
    `SELECT * FROM (${answered} WHERE told.asker = @asker AND told.room = @room AND told.thread = @thread)
     WHERE place < @place ORDER BY seq DESC LIMIT 1`,
  ),
  of: db.prepare<[string], Row>(`SELECT * FROM (${answered} WHERE told.command = ?) WHERE place IS NOT NULL`),
  said: db.prepare<[Spot & { after: number; by: string | null }], { n: number }>(
    `SELECT EXISTS (SELECT 1 FROM inbox WHERE room = @room AND kind = 'message' AND coalesce(thread, '') = @thread
       AND seq > @after AND seq < @place AND (@by IS NULL OR sender = @by)) AS n`,
  ),
  all: db.prepare<[string], Omit<Row, 'place'>>('SELECT * FROM conversations WHERE asker = ? ORDER BY seq'),
  erase: db.prepare<[string]>('DELETE FROM conversations WHERE command = ?'),
  old: db.prepare<[number]>('DELETE FROM conversations WHERE at < ?'),
  forget: db.prepare<[string]>('DELETE FROM conversations WHERE asker = ?'),
}));
/** The one way to what was left: whatever the right to see is gone of is left out, whoever asks for it and however. */
function talk(store: Store, row: Omit<Row, 'place'>): Omit<Talk, 'place'> {
  const stillSeen = (seen: readonly Sight[]): boolean => seenStill(store, row.asker, row.room, seen);
  const stored = row.trial === null ? undefined : trial.parse(JSON.parse(row.trial));
  const tried = stored && stillSeen(stored.seen) ? { ...stored, facts: new Map(stored.facts) } : undefined;
  const seen = sights.parse(JSON.parse(row.seen));
  const mayBeGiven = stillSeen(seen);
  const rest = lines.parse(JSON.parse(row.rest));
  const offered = choices.parse(JSON.parse(row.choices));
  return {
    ...{ command: row.command, asker: row.asker, room: row.room, thread: row.thread, at: row.at },
    ...{ rest: mayBeGiven ? rest : [], unshown: rest.length, choices: mayBeGiven ? offered : [], offered: offered.length },
    ...(mayBeGiven || rest.length + offered.length === 0 ? {} : { closed: true }),
    ...(tried ? { trial: tried } : {}),
    seen: [...(mayBeGiven ? seen : []), ...(tried?.seen ?? [])],
    heads: heads.parse(JSON.parse(row.heads)),
  };
}
/** Takes the place of what the same command left before, when it was edited. */
export function leaveTalk(store: Store, it: LeftTalk): void {
  on(store).leave.run({
    ...{ command: it.command, asker: it.asker, room: it.room, thread: it.thread, at: it.at },
    rest: JSON.stringify(it.rest),
    trial: it.trial ? JSON.stringify({ ...it.trial, facts: [...it.trial.facts] }) : null,
    choices: JSON.stringify(it.choices.map(({ label, line }) => ({ label, line }))),
    heads: JSON.stringify(it.heads.map(({ car, head }) => ({ car, head }))),
    seen: JSON.stringify(it.seen),
  });
}
const placed = (store: Store, row: Row | undefined): Talk | undefined => row && { ...talk(store, row), place: row.place };
/** The asker's newest before a line, in its room and thread. */
export const talkBefore = (store: Store, spot: Spot): Talk | undefined => placed(store, on(store).before.get(spot));
export const talkOf = (store: Store, command: string): Talk | undefined => placed(store, on(store).of.get(command));
/** Whether anything was said between a place and the line, in its room and thread: by anybody but the bot, or by one member. */
export const wasSaidBetween = (store: Store, after: number, spot: Spot, by?: string): boolean =>
  on(store).said.get({ ...spot, after, by: by ?? null })?.n === 1;
export const eraseTalk = (store: Store, command: string): void => void on(store).erase.run(command);
export const eraseTalksBefore = (store: Store, before: number): void => void on(store).old.run(before);
export const holder: Holder = {
  texts: (store, member) =>
    on(store)
      .all.all(member)
      .map((row) => talk(store, row))
      .flatMap(({ room, at, rest, trial: tried, choices: offered }) =>
        [...rest, ...(tried ? [tried.line] : []), ...offered.map(({ line }) => line)].map((text) => ({
          what: 'open question',
          room,
          at,
          text,
        })),
      ),
  erase: (store, member) => void on(store).forget.run(member),
};
