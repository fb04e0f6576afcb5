/** What an answer leaves for the asker's next line in the same room and thread: lines not shown, a trial, and the open question. */
import { z } from 'zod';
import type { Conversation, Sight } from '../../commands/context.js';
import type { Choice } from '../../commands/reading.js';
import type { Holder } from './holders.js';
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
  /** Whether the asker's next line may still answer it. */
  readonly open: boolean;
  /** How many choices it had, also when they may not be given again. */
  readonly offered: number;
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
  readonly open: number;
  readonly at: number;
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
  ...{ car: z.number(), head: z.number(), line: z.string(), facts: z.array(z.tuple([z.string(), fact])) },
  // What was tried before this was kept was tried on the asker's own car.
  seen: sights.default([]),
});

const columns = 'command, asker, room, thread, rest, trial, choices, heads, seen, open, at';
const on = prepared((db) => ({
  leave: db.prepare<[Omit<Row, 'open'>]>(
    `INSERT INTO conversations (command, asker, room, thread, rest, trial, choices, heads, seen, open, at)
     VALUES (@command, @asker, @room, @thread, @rest, @trial, @choices, @heads, @seen, 1, @at)
     ON CONFLICT (command) DO UPDATE SET rest = excluded.rest, trial = excluded.trial, choices = excluded.choices, heads = excluded.heads,
       seen = excluded.seen, open = 1, at = excluded.at`,
  ),
  newest: db.prepare<[string, string, string], Row>(
    `SELECT ${columns} FROM conversations WHERE asker = ? AND room = ? AND thread = ? ORDER BY seq DESC LIMIT 1`,
  ),
  of: db.prepare<[string], Row>(`SELECT ${columns} FROM conversations WHERE command = ?`),
  close: db.prepare<[string, string, string]>('UPDATE conversations SET open = 0 WHERE asker = ? AND room = ? AND thread = ? AND open = 1'),
  all: db.prepare<[string], Row>(`SELECT ${columns} FROM conversations WHERE asker = ? ORDER BY seq`),
  erase: db.prepare<[string]>('DELETE FROM conversations WHERE command = ?'),
  old: db.prepare<[number]>('DELETE FROM conversations WHERE at < ?'),
  forget: db.prepare<[string]>('DELETE FROM conversations WHERE asker = ?'),
}));
/** The one way to what was left: whatever the right to see is gone of is left out, whoever asks for it and however. */
function talk(store: Store, row: Row): Talk {
  const stillSeen = (seen: readonly Sight[]): boolean => seenStill(store, row.asker, row.room, seen);
  const stored = row.trial === null ? undefined : trial.parse(JSON.parse(row.trial));
  const tried = stored && stillSeen(stored.seen) ? { ...stored, facts: new Map(stored.facts) } : undefined;
  const seen = sights.parse(JSON.parse(row.seen));
  const mayBeGiven = stillSeen(seen);
  const rest = lines.parse(JSON.parse(row.rest));
  const offered = choices.parse(JSON.parse(row.choices));
  return {
    ...{ command: row.command, asker: row.asker, room: row.room, thread: row.thread, open: row.open === 1, at: row.at },
    ...{ rest: mayBeGiven ? rest : [], choices: mayBeGiven ? offered : [], offered: offered.length },
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
export const newestTalk = (store: Store, asker: string, room: string, thread: string): Talk | undefined => {
  const row = on(store).newest.get(asker, room, thread);
  return row && talk(store, row);
};
export const talkOf = (store: Store, command: string): Talk | undefined => {
  const row = on(store).of.get(command);
  return row && talk(store, row);
};
/** The asker said something else. */
export const closeTalk = (store: Store, asker: string, room: string, thread: string): void => void on(store).close.run(asker, room, thread);
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
