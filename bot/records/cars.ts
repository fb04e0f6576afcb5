/** Cars: whose, called what, and which revision is the newest. */

import { nameKey } from '../../commands/names.js';
import type { Held } from '../../commands/records/held.js';
import type { CarData } from '../../commands/records/kinds/car.js';
import { prepared, type Store } from './store.js';
import type { NumberedTable } from './table.js';

interface CarRow {
  readonly id: number;
  readonly owner: string;
  readonly name: string;
  readonly head: number;
}
const on = prepared((db) => ({
  next: db.prepare<[], { id: number }>("SELECT coalesce(max(seq), 0) + 1 AS id FROM sqlite_sequence WHERE name = 'cars'"),
  find: db.prepare<[number], CarRow>('SELECT id, owner, name, head FROM cars WHERE id = ?'),
  of: db.prepare<[string], CarRow>('SELECT id, owner, name, head FROM cars WHERE owner = ? ORDER BY id'),
  // Its first revision comes after it; the reference is checked at the end of the transaction.
  add: db.prepare<[number, string, string, string, number]>('INSERT INTO cars (id, owner, name, name_key, head) VALUES (?, ?, ?, ?, ?)'),
  alter: db.prepare<[string, string, number, number]>('UPDATE cars SET name = ?, name_key = ?, head = ? WHERE id = ?'),
  remove: db.prepare<[number]>('DELETE FROM cars WHERE id = ?'),
  erase: db.prepare<[string]>('DELETE FROM cars WHERE owner = ?'),
}));
const heldOf = ({ id, owner, name, head }: CarRow): Held<CarData, number> => ({
  ...{ id, of: { member: owner }, data: { name, head }, told: undefined, text: '' },
});
/** Where the car stands; undefined when it is gone. For the bot's own use: not limited to what a member may see. */
export const headOf = (store: Store, car: number): number | undefined => on(store).find.get(car)?.head;
export const carTable: NumberedTable<CarData> = {
  find(store, id) {
    const row = on(store).find.get(id);
    return row && heldOf(row);
  },
  list: (store, { member }) => (member === undefined ? [] : on(store).of.all(member).map(heldOf)),
  newest: (store, { member }, limit, before = Number.MAX_SAFE_INTEGER) =>
    (member === undefined ? [] : on(store).of.all(member))
      .filter(({ id }) => id < before)
      .reverse()
      .slice(0, limit)
      .map(heldOf),
  next: (store) => on(store).next.get()?.id ?? 1,
  add: (store, { id, of, data: { name, head } }) => void on(store).add.run(id, of.member ?? '', name, nameKey(name), head),
  replace: (store, { id, data: { name, head } }) => void on(store).alter.run(name, nameKey(name), head, id),
  // With its revisions, setups, shares and records, and what the journal says of it.
  remove: (store, id) => void on(store).remove.run(id),
};
export const eraseCars = (store: Store, owner: string): void => void on(store).erase.run(owner);
