/** Named setups: a name on a revision. */
import { nameKey } from '../../commands/names.js';
import type { Held } from '../../commands/records/held.js';
import { type SetupData, setupId } from '../../commands/records/kinds/setup.js';
import { prepared, type Store } from './store.js';
import type { Table } from './table.js';

interface Row {
  readonly car: number;
  readonly name: string;
  readonly revision: number;
}
const on = prepared((db) => ({
  keep: db.prepare<[number, string, string, number]>(
    'INSERT INTO setups (car, name, name_key, revision) VALUES (?, ?, ?, ?) ON CONFLICT (car, name_key) DO UPDATE SET revision = excluded.revision, name = excluded.name',
  ),
  find: db.prepare<[number, string], Row>('SELECT car, name, revision FROM setups WHERE car = ? AND name_key = ?'),
  of: db.prepare<[number], Row>('SELECT car, name, revision FROM setups WHERE car = ? ORDER BY name'),
  remove: db.prepare<[number, string]>('DELETE FROM setups WHERE car = ? AND name_key = ?'),
}));
const heldOf = ({ car, name, revision }: Row): Held<SetupData, string> => ({
  ...{ id: setupId(car, name), of: { car }, data: { name, revision }, told: undefined, text: '' },
});
/** `3 dry` is the car 3's. */
function partsOf(id: string): readonly [number, string] {
  const space = id.indexOf(' ');
  return [Number(id.slice(0, space)), id.slice(space + 1)];
}
const keep = (store: Store, { of, data: { name, revision } }: Held<SetupData, string>): void =>
  void on(store).keep.run(of.car ?? 0, name, nameKey(name), revision);
export const setupTable: Table<SetupData, string> = {
  find(store, id) {
    const row = on(store).find.get(...partsOf(id));
    return row && heldOf(row);
  },
  list: (store, { car }) => (car === undefined ? [] : on(store).of.all(car).map(heldOf)),
  add: keep,
  replace: keep,
  remove: (store, id) => void on(store).remove.run(...partsOf(id)),
};
