/** Cars: whose, called what, and which revision is the newest. */
import { prepared, type Store } from './store.js';

export interface CarRow {
  readonly id: number;
  readonly owner: string;
  readonly name: string;
  readonly head: number;
}
const on = prepared((db) => ({
  find: db.prepare<[number, string], CarRow>('SELECT id, owner, name, head FROM cars WHERE id = ? AND owner = ?'),
  head: db.prepare<[number], { head: number }>('SELECT head FROM cars WHERE id = ?'),
  named: db.prepare<[string, string], CarRow>('SELECT id, owner, name, head FROM cars WHERE owner = ? AND name_key = ?'),
  of: db.prepare<[string], CarRow>('SELECT id, owner, name, head FROM cars WHERE owner = ? ORDER BY id'),
  // Its first revision needs the car's number, so the head is set right after; the reference is checked at the end of the transaction.
  make: db.prepare<[string, string, string]>('INSERT INTO cars (owner, name, name_key, head) VALUES (?, ?, ?, 0)'),
  move: db.prepare<[number, number]>('UPDATE cars SET head = ? WHERE id = ?'),
  rename: db.prepare<[string, string, number]>('UPDATE cars SET name = ?, name_key = ? WHERE id = ?'),
  forget: db.prepare<[number]>('DELETE FROM cars WHERE id = ?'),
  erase: db.prepare<[string]>('DELETE FROM cars WHERE owner = ?'),
}));
/** What is the same for names that a reader takes for one. */
export const nameKey = (name: string): string => name.normalize('NFKC').toLowerCase().replace(/\s+/g, ' ').trim();
/** Undefined for another member's car, as for none. */
export const ownCar = (store: Store, car: number, owner: string): CarRow | undefined => on(store).find.get(car, owner);
/** Where the car stands; undefined when it is gone. For the bot's own use: not limited to what a member may see. */
export const headOf = (store: Store, car: number): number | undefined => on(store).head.get(car)?.head;
export const carNamed = (store: Store, owner: string, name: string): CarRow | undefined => on(store).named.get(owner, nameKey(name));
export const carsOf = (store: Store, owner: string): readonly CarRow[] => on(store).of.all(owner);
/** Inside a transaction only, followed by `moveHead`. */
export const makeCar = (store: Store, owner: string, name: string): number =>
  Number(on(store).make.run(owner, name, nameKey(name)).lastInsertRowid);
export const moveHead = (store: Store, car: number, revision: number): void => void on(store).move.run(revision, car);
export const renameCar = (store: Store, car: number, name: string): void => void on(store).rename.run(name, nameKey(name), car);
/** With its revisions, setups and shares. */
export const forgetCar = (store: Store, car: number): void => void on(store).forget.run(car);
export const eraseCars = (store: Store, owner: string): void => void on(store).erase.run(owner);
