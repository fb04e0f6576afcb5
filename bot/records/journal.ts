/** The journal: what each event changed, with what was before and after it. */
import { z } from 'zod';
import type { Held, Id } from '../../commands/records/held.js';
import { dataOf, type Kind, plainOf } from '../../commands/records/kind.js';
import type { Entry, Journal } from '../../commands/records/tables.js';
import { prepared, type Store } from './store.js';

interface Row {
  readonly id: number;
  readonly line: string;
  readonly cause: string;
  readonly member: string;
  readonly at: number;
  readonly kind: string;
  readonly record: string;
  readonly car: number | null;
  readonly before: string | null;
  readonly after: string | null;
  readonly back: number;
  readonly undone: string | null;
}
const columns = 'id, line, cause, member, at, kind, record, car, before, after, back, undone';
const on = prepared((db) => ({
  ofLine: db.prepare<[string], Row>(`SELECT ${columns} FROM journal WHERE line = ? ORDER BY id`),
  undoneBy: db.prepare<[string], Row>(`SELECT ${columns} FROM journal WHERE undone = ? ORDER BY id`),
  newest: db.prepare<[string, number, number], Row>(`SELECT ${columns} FROM journal WHERE member = ? AND id < ? ORDER BY id DESC LIMIT ?`),
  ofRecord: db.prepare<[string, string], Row>(`SELECT ${columns} FROM journal WHERE kind = ? AND record = ? ORDER BY id`),
  ofKind: db.prepare<[string], Row>(`SELECT ${columns} FROM journal WHERE kind = ? ORDER BY id`),
  byCause: db.prepare<[string], Row>(`SELECT ${columns} FROM journal WHERE cause = ? ORDER BY id`),
  add: db.prepare<[Omit<Row, 'id'>]>(
    `INSERT INTO journal (line, cause, member, at, kind, record, car, before, after, back, undone)
     VALUES (@line, @cause, @member, @at, @kind, @record, @car, @before, @after, @back, @undone)`,
  ),
  replace: db.prepare<[Row]>('UPDATE journal SET before = @before, after = @after, undone = @undone WHERE id = @id'),
  remove: db.prepare<[number]>('DELETE FROM journal WHERE id = ?'),
  forget: db.prepare<[string]>('DELETE FROM journal WHERE member = ?'),
}));

const id = z.union([z.int(), z.string()]);
const image = z.strictObject({
  id: id.optional(),
  of: z.strictObject({ member: z.string().optional(), car: z.int().optional(), room: z.string().optional() }),
  data: z.unknown(),
  told: z.strictObject({ at: z.int(), by: z.string(), cause: z.string() }).optional(),
  text: z.string(),
});
function imageOf(store: Store, { kind, record }: Pick<Row, 'kind' | 'record'>, text: string | null): Held | undefined {
  if (text === null) return undefined;
  const { of, data, told, text: typed } = image.parse(JSON.parse(text));
  const { member, car, room } = of;
  return {
    id: id.parse(JSON.parse(record)),
    of: { ...(member === undefined ? {} : { member }), ...(car === undefined ? {} : { car }), ...(room === undefined ? {} : { room }) },
    ...{ data: dataOf(store.kinds.named(kind), data), told, text: typed },
  };
}
/** The images are read when they are asked for: most entries are only counted. */
function entryOf(store: Store, row: Row): Entry {
  return {
    ...{ id: row.id, line: row.line, cause: row.cause, member: row.member, at: row.at, kind: row.kind },
    ...{ record: id.parse(JSON.parse(row.record)), car: row.car ?? undefined, back: row.back === 1, undone: row.undone ?? undefined },
    get before() {
      return imageOf(store, row, row.before);
    },
    get after() {
      return imageOf(store, row, row.after);
    },
  };
}
function rowOf(store: Store, entry: Omit<Entry, 'id'>): Omit<Row, 'id'> {
  const { line, cause, member, at, kind, record, car, before, after, back, undone } = entry;
  const written = (held: Held | undefined): string | null =>
    held === undefined
      ? null
      : JSON.stringify({ of: held.of, data: plainOf(store.kinds.named(kind), held.data), told: held.told, text: held.text });
  return {
    ...{ line, cause, member, at, kind, record: JSON.stringify(record), car: car ?? null },
    ...{ before: written(before), after: written(after), back: back ? 1 : 0, undone: undone ?? null },
  };
}
export const journalOf = (store: Store): Journal => {
  const entries = (rows: readonly Row[]): readonly Entry[] => rows.map((row) => entryOf(store, row));
  return {
    ofLine: (line) => entries(on(store).ofLine.all(line)),
    undoneBy: (line) => entries(on(store).undoneBy.all(line)),
    newest: (member, limit, before) =>
      entries(on(store).newest.all(member, before === undefined || before < 0 ? Number.MAX_SAFE_INTEGER : before, limit)),
    add: (entry) => void on(store).add.run(rowOf(store, entry)),
    replace: (entry) => void on(store).replace.run({ id: entry.id, ...rowOf(store, entry) }),
    remove: (entry) => void on(store).remove.run(entry.id),
  };
};
/** For the bot's own use: not limited to what a member may see. */
export const entriesBy = (store: Store, cause: string): readonly Entry[] =>
  on(store)
    .byCause.all(cause)
    .map((row) => entryOf(store, row));
export const entriesOf = (store: Store, kind: string, record: Id): readonly Entry[] =>
  on(store)
    .ofRecord.all(kind, JSON.stringify(record))
    .map((row) => entryOf(store, row));
/** Of all entries of a kind, what was before and after. */
export function scrubJournal(store: Store, kind: Kind, clean: (held: Held) => Held | undefined): void {
  const journal = journalOf(store);
  for (const row of on(store).ofKind.all(kind.name)) {
    const entry = entryOf(store, row);
    const { before, after } = entry;
    journal.replace({ ...entry, before: before && clean(before), after: after && clean(after) });
  }
}
export const forgetEntries = (store: Store, member: string): void => void on(store).forget.run(member);
