/** Named setups: a name on a revision. */
import type { Setup } from '../../commands/context.js';
import { nameKey } from './cars.js';
import { prepared, type Store } from './store.js';

export const ddl = `
CREATE TABLE setups (
  car INTEGER NOT NULL REFERENCES cars (id) ON DELETE CASCADE,
  name TEXT NOT NULL CHECK (length(name) > 0),
  name_key TEXT NOT NULL,
  revision INTEGER NOT NULL REFERENCES revisions (id) ON DELETE CASCADE,
  PRIMARY KEY (car, name_key)
) STRICT, WITHOUT ROWID;
CREATE INDEX setups_by_revision ON setups (revision);
`;
const on = prepared((db) => ({
  keep: db.prepare<[number, string, string, number]>(
    'INSERT INTO setups (car, name, name_key, revision) VALUES (?, ?, ?, ?) ON CONFLICT (car, name_key) DO UPDATE SET revision = excluded.revision, name = excluded.name',
  ),
  of: db.prepare<[number, string], Setup>(
    'SELECT setups.name, revision FROM setups JOIN cars ON cars.id = setups.car WHERE cars.id = ? AND cars.owner = ? ORDER BY setups.name',
  ),
}));
/** The caller has made sure that the revision is the car's. A name that is in use moves to this revision. */
export const keepSetup = (store: Store, car: number, name: string, revision: number): void =>
  void on(store).keep.run(car, name, nameKey(name), revision);
/** None for another member's car. */
export const setupsOf = (store: Store, car: number, owner: string): readonly Setup[] => on(store).of.all(car, owner);
