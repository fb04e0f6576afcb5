/** Records of every kind that has no table of its own. */
import type { Held, Of } from '../../commands/records/held.js';
import { dataOf, type Kind, plainOf } from '../../commands/records/kind.js';
import { prepared, type Store } from './store.js';
import type { NumberedTable } from './table.js';

interface Row {
  readonly id: number;
  readonly kind: string;
  readonly member: string | null;
  readonly car: number | null;
  readonly room: string | null;
  readonly data: string;
  readonly at: number | null;
  readonly by: string | null;
  readonly cause: string | null;
  readonly text: string;
}
const columns = 'id, kind, member, car, room, data, at, by, cause, text';
const on = prepared((db) => ({
  next: db.prepare<[], { id: number }>("SELECT coalesce(max(seq), 0) + 1 AS id FROM sqlite_sequence WHERE name = 'records'"),
  find: db.prepare<[number, string], Row>(`SELECT ${columns} FROM records WHERE id = ? AND kind = ?`),
  ofCar: db.prepare<[number, string], Row>(`SELECT ${columns} FROM records WHERE car = ? AND kind = ? ORDER BY id`),
  ofMember: db.prepare<[string, string], Row>(`SELECT ${columns} FROM records WHERE member = ? AND kind = ? ORDER BY id`),
  ofRoom: db.prepare<[string, string], Row>(`SELECT ${columns} FROM records WHERE room = ? AND kind = ? ORDER BY id`),
  all: db.prepare<[string], Row>(`SELECT ${columns} FROM records WHERE kind = ? ORDER BY id`),
  byCause: db.prepare<[string], Row>(`SELECT ${columns} FROM records WHERE cause = ? ORDER BY id`),
  newest: db.prepare<
    [{ kind: string; member: string | null; car: number | null; room: string | null; before: number; limit: number }],
    Row
  >(
    `SELECT ${columns} FROM records WHERE kind = @kind AND id < @before AND (@member IS NULL OR member = @member)
     AND (@car IS NULL OR car = @car) AND (@room IS NULL OR room = @room) ORDER BY id DESC LIMIT @limit`,
  ),
  add: db.prepare<[Row]>(`INSERT INTO records (${columns}) VALUES (@id, @kind, @member, @car, @room, @data, @at, @by, @cause, @text)`),
  replace: db.prepare<[Row]>(
    'UPDATE records SET member = @member, car = @car, room = @room, data = @data, at = @at, by = @by, cause = @cause, text = @text WHERE id = @id AND kind = @kind',
  ),
  remove: db.prepare<[number, string]>('DELETE FROM records WHERE id = ? AND kind = ?'),
  forget: db.prepare<[string]>('DELETE FROM records WHERE member = ?'),
}));

const rowOf = <D>(kind: Kind<D, number>, { id, of, data, told, text }: Held<D, number>): Row => ({
  ...{ id, kind: kind.name, member: of.member ?? null, car: of.car ?? null, room: of.room ?? null },
  data: JSON.stringify(plainOf(kind, data)),
  ...{ at: told?.at ?? null, by: told?.by ?? null, cause: told?.cause ?? null, text },
});
/** @throws for data that the kind does not know: never dropped silently. */
const heldOf = <D>(kind: Kind<D, number>, row: Row): Held<D, number> => ({
  id: row.id,
  of: {
    ...(row.member === null ? {} : { member: row.member }),
    ...(row.car === null ? {} : { car: row.car }),
    ...(row.room === null ? {} : { room: row.room }),
  },
  data: dataOf(kind, JSON.parse(row.data)),
  told: row.at === null || row.by === null || row.cause === null ? undefined : { at: row.at, by: row.by, cause: row.cause },
  text: row.text,
});
function rowsOf(store: Store, kind: string, { car, member, room }: Of): readonly Row[] {
  const { ofCar, ofMember, ofRoom, all } = on(store);
  if (car !== undefined) return ofCar.all(car, kind);
  if (member !== undefined) return ofMember.all(member, kind);
  return room === undefined ? all.all(kind) : ofRoom.all(room, kind);
}
export const recordTable = <D>(kind: Kind<D, number>): NumberedTable<D> => ({
  find(store, id) {
    const row = on(store).find.get(id, kind.name);
    return row && heldOf(kind, row);
  },
  list: (store, of) => rowsOf(store, kind.name, of).map((row) => heldOf(kind, row)),
  newest: (store, { member, car, room }, limit, before) =>
    on(store)
      .newest.all({
        ...{ kind: kind.name, member: member ?? null, car: car ?? null, room: room ?? null, limit: Math.max(0, Math.trunc(limit)) },
        before: before ?? Number.MAX_SAFE_INTEGER,
      })
      .map((row) => heldOf(kind, row)),
  next: (store) => on(store).next.get()?.id ?? 1,
  add: (store, held) => void on(store).add.run(rowOf(kind, held)),
  replace: (store, held) => void on(store).replace.run(rowOf(kind, held)),
  remove: (store, id) => void on(store).remove.run(id, kind.name),
});
/** What an event told, with the kinds' names. */
export const toldBy = (store: Store, cause: string): readonly { readonly kind: string; readonly id: number }[] =>
  on(store)
    .byCause.all(cause)
    .map(({ kind, id }) => ({ kind, id }));
export const forgetRecords = (store: Store, member: string): void => void on(store).forget.run(member);
