/** Revisions: a car's facts, one immutable moment after another. */
import type { CarView, Revision } from '../../commands/context.js';
import { format } from '../../commands/records/facts.js';
import { momentOf } from '../../commands/records/garage.js';
import type { HeldRevision, RevisionData } from '../../commands/records/kinds/revision.js';
import type { Facts } from '../../core/car.js';
import { prepared, type Store } from './store.js';
import type { NumberedTable } from './table.js';

interface Row {
  readonly id: number;
  readonly car: number;
  readonly parent: number | null;
  readonly at: number;
  readonly by: string;
  readonly why: string;
  readonly facts: string;
  readonly measured_in: number | null;
  readonly undoes: number | null;
  readonly cause: string;
}
interface HeadRow extends Row {
  readonly owner: string;
  readonly owner_name: string;
  readonly name: string;
  readonly sharing: number;
}
interface Sight {
  readonly asker: string;
  readonly room: string;
}
const columns = 'r.id, r.car, r.parent, r.at, r.by, r.why, r.facts, r.measured_in, r.undoes, r.cause';
const on = prepared((db) => ({
  // Numbered here, because a revision that was measured in itself must name itself and can't be altered afterwards.
  next: db.prepare<[], { id: number }>("SELECT coalesce(max(seq), 0) + 1 AS id FROM sqlite_sequence WHERE name = 'revisions'"),
  add: db.prepare<[Row]>(
    `INSERT INTO revisions (id, car, parent, at, by, why, facts, measured_in, undoes, cause, step)
     VALUES (@id, @car, @parent, @at, @by, @why, @facts, @measured_in, @undoes, @cause,
       (SELECT coalesce(max(step), 0) + 1 FROM revisions WHERE car = @car AND cause = @cause))`,
  ),
  by: db.prepare<[string], { id: number; parent: number | null }>('SELECT id, parent FROM revisions WHERE cause = ? ORDER BY id'),
  remove: db.prepare<[number]>('DELETE FROM revisions WHERE id = ?'),
  find: db.prepare<[number], Row>(`SELECT ${columns} FROM revisions AS r WHERE r.id = ?`),
  seen: db.prepare<[Sight & { id: number }], Row>(
    `SELECT ${columns} FROM revisions AS r JOIN cars ON cars.id = r.car
     WHERE r.id = @id AND r.id IN (cars.head, (SELECT measured_in FROM revisions WHERE id = cars.head))
       AND EXISTS (SELECT 1 FROM seen WHERE seen.asker = @asker AND seen.room = @room AND seen.car = cars.id)`,
  ),
  history: db.prepare<[number, number, number], Row>(
    `SELECT ${columns} FROM revisions AS r WHERE r.car = ? AND r.id < ? ORDER BY r.id DESC LIMIT ?`,
  ),
  shared: db.prepare<[Sight], HeadRow>(
    `SELECT ${columns}, cars.owner, cars.name, coalesce(seen.owner_name, members.name) AS owner_name, seen.sharing
     FROM seen JOIN cars ON cars.id = seen.car JOIN members ON members.id = cars.owner JOIN revisions AS r ON r.id = cars.head
     WHERE seen.asker = @asker AND seen.room = @room ORDER BY cars.owner, cars.id`,
  ),
  // Up to version 0.1.1 an undo repeated the words of what it took back.
  eraseText: db.prepare<[{ cause: string }]>(
    `UPDATE revisions SET why = '' WHERE why <> '' AND (cause = @cause OR undoes IN (SELECT id FROM revisions WHERE cause = @cause))`,
  ),
}));

/** The facts are read when they are asked for: a history of a hundred revisions is mostly not. */
function heldOf(row: Row): HeldRevision {
  let facts: Facts | undefined;
  const data: RevisionData = {
    parent: row.parent ?? undefined,
    get facts() {
      facts ??= format.read(row.facts);
      return facts;
    },
    measuredIn: row.measured_in ?? undefined,
    undoes: row.undoes ?? undefined,
  };
  return { id: row.id, of: { car: row.car }, data, told: { at: row.at, by: row.by, cause: row.cause }, text: row.why };
}
/** What a clubmate sees: the facts, not the words that were typed nor where they lead back to. */
const forOthers = (row: Row): HeldRevision => heldOf({ ...row, why: '', parent: null, undoes: null });
const add = (store: Store, { id, of, data, told, text }: HeldRevision): void => {
  if (of.car === undefined || told === undefined) throw new Error('a revision is of a car, and somebody told it');
  const { parent, facts, measuredIn, undoes } = data;
  on(store).add.run({
    ...{ id, car: of.car, parent: parent ?? null, at: told.at, by: told.by, why: text, facts: format.write(facts) },
    ...{ measured_in: measuredIn ?? null, undoes: undoes ?? null, cause: told.cause },
  });
};
const newest: NumberedTable<RevisionData>['newest'] = (store, { car }, limit, before) =>
  car === undefined
    ? []
    : on(store)
        .history.all(car, before ?? Number.MAX_SAFE_INTEGER, Math.max(0, Math.trunc(limit)))
        .map(heldOf);
/** @throws FactsRefused for facts that the catalog does not know */
export const revisionTable: NumberedTable<RevisionData> = {
  find(store, id) {
    const row = on(store).find.get(id);
    return row && heldOf(row);
  },
  list: (store, of) => [...newest(store, of, Number.MAX_SAFE_INTEGER)].reverse(),
  newest,
  next: (store) => on(store).next.get()?.id ?? 1,
  add,
  // Never altered, but for the one that a message has open: it is taken out and put in again.
  replace(store, held) {
    on(store).remove.run(held.id);
    add(store, held);
  },
  remove: (store, id) => void on(store).remove.run(id),
};
/** Of another member's car that is seen here: its head, and what that was measured in. */
export function revisionSeen(store: Store, id: number, asker: string, room: string): Revision | undefined {
  const row = on(store).seen.get({ id, asker, room });
  return row && momentOf(forOthers(row));
}
export const carsSeen = (store: Store, asker: string, room: string): readonly CarView[] =>
  on(store)
    .shared.all({ asker, room })
    .map((row) => ({
      ...{ id: row.car, owner: row.owner, ownerName: row.owner_name, name: row.name, shared: true, sharing: row.sharing },
      head: momentOf(forOthers(row)),
    }));
/** Oldest first. For the bot's own use: not limited to what a member may see. */
export const revisionsMadeBy = (store: Store, cause: string): readonly { readonly id: number; readonly parent: number | undefined }[] =>
  on(store)
    .by.all(cause)
    .map(({ id, parent }) => ({ id, parent: parent ?? undefined }));
/** Redaction: the words that made these changes go, the changes stay. */
export const eraseText = (store: Store, ...causes: readonly string[]): void => {
  for (const cause of causes) on(store).eraseText.run({ cause });
};
