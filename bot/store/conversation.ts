/** What an answer leaves for the asker's next line in the same room and thread: lines not shown, a trial, and the open question. */
import { z } from 'zod';
import type { Conversation } from '../../commands/context.js';
import type { Choice } from '../../commands/reading.js';
import type { Holder } from './holder.js';
import { prepared, type Store } from './store.js';

/** How long a bare number still answers a question. */
export const openFor_ms = 10 * 60_000;

export interface Head {
  readonly car: number;
  readonly head: number;
}
export interface Talk extends Conversation {
  /** The event that was answered. */
  readonly command: string;
  readonly asker: string;
  readonly room: string;
  /** Empty: not in a thread. */
  readonly thread: string;
  /** Where the cars stood when the choices were offered. */
  readonly heads: readonly Head[];
  /** Whether the asker's next line may still answer it. */
  readonly open: boolean;
  readonly at: number;
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
const trial = z.strictObject({ car: z.number(), head: z.number(), line: z.string(), facts: z.array(z.tuple([z.string(), fact])) });

const columns = 'command, asker, room, thread, rest, trial, choices, heads, open, at';
const on = prepared((db) => ({
  leave: db.prepare<[Omit<Row, 'open'>]>(
    `INSERT INTO conversations (command, asker, room, thread, rest, trial, choices, heads, open, at)
     VALUES (@command, @asker, @room, @thread, @rest, @trial, @choices, @heads, 1, @at)
     ON CONFLICT (command) DO UPDATE SET rest = excluded.rest, trial = excluded.trial, choices = excluded.choices, heads = excluded.heads, open = 1, at = excluded.at`,
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
const talk = (row: Row): Talk => {
  const tried = row.trial === null ? undefined : trial.parse(JSON.parse(row.trial));
  return {
    ...{ command: row.command, asker: row.asker, room: row.room, thread: row.thread, open: row.open === 1, at: row.at },
    rest: lines.parse(JSON.parse(row.rest)),
    ...(tried ? { trial: { ...tried, facts: new Map(tried.facts) } } : {}),
    choices: choices.parse(JSON.parse(row.choices)),
    heads: heads.parse(JSON.parse(row.heads)),
  };
};
/** Takes the place of what the same command left before, when it was edited. */
export function leaveTalk(store: Store, it: Omit<Talk, 'open'>): void {
  on(store).leave.run({
    ...{ command: it.command, asker: it.asker, room: it.room, thread: it.thread, at: it.at },
    rest: JSON.stringify(it.rest),
    trial: it.trial ? JSON.stringify({ ...it.trial, facts: [...it.trial.facts] }) : null,
    choices: JSON.stringify(it.choices.map(({ label, line }) => ({ label, line }))),
    heads: JSON.stringify(it.heads.map(({ car, head }) => ({ car, head }))),
  });
}
export const newestTalk = (store: Store, asker: string, room: string, thread: string): Talk | undefined => {
  const row = on(store).newest.get(asker, room, thread);
  return row && talk(row);
};
export const talkOf = (store: Store, command: string): Talk | undefined => {
  const row = on(store).of.get(command);
  return row && talk(row);
};
/** The asker said something else. */
export const closeTalk = (store: Store, asker: string, room: string, thread: string): void => void on(store).close.run(asker, room, thread);
export const eraseTalk = (store: Store, command: string): void => void on(store).erase.run(command);
export const eraseTalksBefore = (store: Store, before: number): void => void on(store).old.run(before);
export const holder: Holder = {
  texts: (store, member) =>
    on(store)
      .all.all(member)
      .map(talk)
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
