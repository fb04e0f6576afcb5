/** Named setups: a name on a revision. */
import type { Setup } from '../../commands/context.js';
import { nameKey } from './cars.js';
import { prepared, type Store } from './store.js';

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
