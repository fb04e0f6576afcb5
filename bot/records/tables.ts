/** SQLite's tables as the state machine works on them: inside the transaction that commits a reply. */
import { type Held, type Id, isOf, type Of } from '../../commands/records/held.js';
import type { Kind } from '../../commands/records/kind.js';
import { cars } from '../../commands/records/kinds/car.js';
import { members } from '../../commands/records/kinds/member.js';
import { revisions } from '../../commands/records/kinds/revision.js';
import { setups } from '../../commands/records/kinds/setup.js';
import { shares } from '../../commands/records/kinds/share.js';
import type { Journal, Tables } from '../../commands/records/tables.js';
import { carTable } from './cars.js';
import { forgetMember } from './forget.js';
import { journalOf } from './journal.js';
import { memberTable } from './members.js';
import { recordTable } from './records.js';
import { revisionTable } from './revisions.js';
import { setupTable } from './setups.js';
import { shareTable } from './shares.js';
import type { Store } from './store.js';
import type { NumberedTable, Table } from './table.js';

/** Kinds with tables of their own; all others are among the records. */
const own: ReadonlyMap<string, Table<unknown, Id>> = new Map<string, Table<unknown, Id>>([
  [members.name, memberTable],
  [cars.name, carTable],
  [revisions.name, revisionTable],
  [setups.name, setupTable],
  [shares.name, shareTable],
]);
const general = new WeakMap<Kind<unknown, number>, NumberedTable<unknown>>();
function generalTable(kind: Kind<unknown, number>): NumberedTable<unknown> {
  const known = general.get(kind);
  if (known !== undefined) return known;
  const made = recordTable(kind);
  general.set(kind, made);
  return made;
}
function tableOf<D, I extends Id>(kind: Kind<D, I>): Table<D, I> {
  const table = own.get(kind.name) ?? generalTable(kind as Kind);
  // Under a kind's name stands the table of that kind.
  return table as unknown as Table<D, I>;
}
const isNumbered = <D>(table: Table<D, number>): table is NumberedTable<D> => 'next' in table;
function numbered<D>(kind: Kind<D, number>): NumberedTable<D> {
  const table = tableOf(kind);
  if (!isNumbered(table)) throw new Error(`records of the kind ${kind.name} have no numbers`);
  return table;
}

export class SqlTables implements Tables {
  readonly journal: Journal;
  readonly #store: Store;

  constructor(store: Store) {
    this.#store = store;
    this.journal = journalOf(store);
  }
  find<D, I extends Id>(kind: Kind<D, I>, id: I): Held<D, I> | undefined {
    return tableOf(kind).find(this.#store, id);
  }
  list<D, I extends Id>(kind: Kind<D, I>, of: Of): readonly Held<D, I>[] {
    return tableOf(kind)
      .list(this.#store, of)
      .filter((held) => isOf(held.of, of));
  }
  newest<D>(kind: Kind<D, number>, of: Of, limit: number, before?: number): readonly Held<D, number>[] {
    return numbered(kind).newest(this.#store, of, limit, before);
  }
  next(kind: Pick<Kind, 'name'>): number {
    return numbered<unknown>(this.#store.kinds.named(kind.name)).next(this.#store);
  }
  add<D, I extends Id>(kind: Kind<D, I>, held: Held<D, I>): void {
    tableOf(kind).add(this.#store, held);
  }
  replace<D, I extends Id>(kind: Kind<D, I>, held: Held<D, I>): void {
    tableOf(kind).replace(this.#store, held);
  }
  remove<D, I extends Id>(kind: Kind<D, I>, id: I): void {
    tableOf(kind).remove(this.#store, id);
  }
  forget(member: string): void {
    forgetMember(this.#store, member);
  }
}
