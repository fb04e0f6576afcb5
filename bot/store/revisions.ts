/** Revisions: a car's facts, one immutable moment after another. */
import type { CarView, Revision } from '../../commands/context.js';
import type { Facts } from '../../core/car.js';
import { format } from './facts.js';
import { prepared, type Store } from './store.js';

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
}
interface HeadRow extends Row {
  readonly owner: string;
  readonly owner_name: string;
  readonly name: string;
  readonly shared: number;
  readonly sharing: number | null;
}
export interface NewRevision {
  readonly car: number;
  readonly parent: number | undefined;
  readonly at: number;
  readonly by: string;
  readonly why: string;
  readonly facts: Facts;
  /** `now`: in this one. */
  readonly measuredIn: number | 'now' | undefined;
  readonly undoes: number | undefined;
  readonly cause: string;
  readonly step: number;
}
interface Sight {
  readonly asker: string;
  readonly room: string;
}
const columns = 'r.id, r.car, r.parent, r.at, r.by, r.why, r.facts, r.measured_in, r.undoes';
const on = prepared((db) => ({
  // Numbered here, because a revision that was measured in itself must name itself and can't be altered afterwards.
  next: db.prepare<[], { id: number }>("SELECT coalesce(max(seq), 0) + 1 AS id FROM sqlite_sequence WHERE name = 'revisions'"),
  add: db.prepare<[Row & { cause: string; step: number }]>(
    `INSERT INTO revisions (id, car, parent, at, by, why, facts, measured_in, undoes, cause, step)
     VALUES (@id, @car, @parent, @at, @by, @why, @facts, @measured_in, @undoes, @cause, @step)`,
  ),
  belongs: db.prepare<[number, number], { n: number }>('SELECT count(*) AS n FROM revisions WHERE id = ? AND car = ?'),
  steps: db.prepare<[number, string], { n: number }>('SELECT count(*) AS n FROM revisions WHERE car = ? AND cause = ?'),
  by: db.prepare<[string], Row>(`SELECT ${columns} FROM revisions AS r WHERE r.cause = ? ORDER BY r.id`),
  find: db.prepare<[number], Row>(`SELECT ${columns} FROM revisions AS r WHERE r.id = ?`),
  visible: db.prepare<[Sight & { id: number }], Row & { own: number }>(
    `SELECT ${columns}, cars.owner = @asker AS own FROM revisions AS r JOIN cars ON cars.id = r.car
     WHERE r.id = @id AND (cars.owner = @asker OR (
       r.id IN (cars.head, (SELECT measured_in FROM revisions WHERE id = cars.head))
       AND EXISTS (SELECT 1 FROM seen WHERE seen.asker = @asker AND seen.room = @room AND seen.car = cars.id)))`,
  ),
  history: db.prepare<[{ car: number; owner: string; before: number; limit: number }], Row>(
    `SELECT ${columns} FROM revisions AS r JOIN cars ON cars.id = r.car
     WHERE cars.id = @car AND cars.owner = @owner AND r.car = @car AND r.id < @before ORDER BY r.id DESC LIMIT @limit`,
  ),
  own: db.prepare<[Sight], HeadRow>(
    `SELECT ${columns}, cars.owner, cars.name, members.name AS owner_name,
       EXISTS (SELECT 1 FROM shares WHERE shares.room = @room AND shares.car = cars.id) AS shared, NULL AS sharing
     FROM cars JOIN members ON members.id = cars.owner JOIN revisions AS r ON r.id = cars.head
     WHERE cars.owner = @asker ORDER BY cars.id`,
  ),
  shared: db.prepare<[Sight], HeadRow>(
    `SELECT ${columns}, cars.owner, cars.name, coalesce(seen.owner_name, members.name) AS owner_name, 1 AS shared, seen.sharing
     FROM seen JOIN cars ON cars.id = seen.car JOIN members ON members.id = cars.owner JOIN revisions AS r ON r.id = cars.head
     WHERE seen.asker = @asker AND seen.room = @room ORDER BY cars.owner, cars.id`,
  ),
  eraseText: db.prepare<[string]>("UPDATE revisions SET why = '' WHERE cause = ? AND why <> ''"),
}));

/** The facts are read when they are asked for: a history of a hundred revisions is mostly not. */
function revision(row: Row): Revision {
  let facts: Facts | undefined;
  return {
    id: row.id,
    car: row.car,
    parent: row.parent ?? undefined,
    at: row.at,
    by: row.by,
    why: row.why,
    get facts() {
      facts ??= format.read(row.facts);
      return facts;
    },
    measuredIn: row.measured_in ?? undefined,
    undoes: row.undoes ?? undefined,
  };
}
/** What a clubmate sees: the facts, not the words that were typed nor where they lead back to. */
const forOthers = (row: Row): Revision => revision({ ...row, why: '', parent: null, undoes: null });
const view = (row: HeadRow, head: Revision): CarView => ({
  id: row.car,
  owner: row.owner,
  ownerName: row.owner_name,
  name: row.name,
  head,
  shared: row.shared === 1,
  ...(row.sharing === null ? {} : { sharing: row.sharing }),
});

/**
 * Adds a revision and gives its number; the caller moves the car's head. Inside a transaction only.
 * @throws FactsRefused for facts that the catalog does not know; SQLite's error when the event has made this step of the car before.
 */
export function addRevision(store: Store, made: NewRevision): number {
  const id = on(store).next.get()?.id ?? 1;
  on(store).add.run({
    ...{ id, car: made.car, parent: made.parent ?? null, at: made.at, by: made.by, why: made.why, facts: format.write(made.facts) },
    measured_in: made.measuredIn === 'now' ? id : (made.measuredIn ?? null),
    ...{ undoes: made.undoes ?? null, cause: made.cause, step: made.step },
  });
  return id;
}
export const isRevisionOf = (store: Store, id: number, car: number): boolean => on(store).belongs.get(id, car)?.n === 1;
/** How many revisions of the car the event has made so far. */
export const stepsOf = (store: Store, car: number, cause: string): number => on(store).steps.get(car, cause)?.n ?? 0;
/** Of all cars, oldest first. For the bot's own use: not limited to what a member may see. */
export const revisionsMadeBy = (store: Store, cause: string): readonly Revision[] => on(store).by.all(cause).map(revision);
/** For the bot's own use: not limited to what a member may see. */
export const anyRevision = (store: Store, id: number): Revision | undefined => {
  const row = on(store).find.get(id);
  return row && revision(row);
};
/** Own: all. Others': the head of a car that is seen here, and what it was measured in. */
export function visibleRevision(store: Store, id: number, asker: string, room: string): Revision | undefined {
  const row = on(store).visible.get({ id, asker, room });
  if (row === undefined) return undefined;
  return row.own === 1 ? revision(row) : forOthers(row);
}
export const ownHistory = (store: Store, car: number, owner: string, limit: number, before?: number): readonly Revision[] =>
  on(store)
    .history.all({ car, owner, limit: Math.max(0, Math.trunc(limit)), before: before ?? Number.MAX_SAFE_INTEGER })
    .map(revision);
export const ownCars = (store: Store, asker: string, room: string): readonly CarView[] =>
  on(store)
    .own.all({ asker, room })
    .map((row) => view(row, revision(row)));
export const carsSeen = (store: Store, asker: string, room: string): readonly CarView[] =>
  on(store)
    .shared.all({ asker, room })
    .map((row) => view(row, forOthers(row)));
/** Redaction: the words that made these changes go, the changes stay. */
export const eraseText = (store: Store, ...causes: readonly string[]): void => {
  for (const cause of causes) on(store).eraseText.run(cause);
};
