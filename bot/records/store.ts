/** What a table's module needs of the open database. Apart from `database.ts`, which needs all tables. */
import type Database from 'better-sqlite3';
import type { Kinds } from '../../commands/records/kinds.js';

/** The open database. Table modules prepare their statements on `database` through `prepared`. */
export interface Store {
  /** Absolute path, or `:memory:`. */
  readonly file: string;
  readonly database: Database.Database;
  /** The kinds of record that it keeps. */
  readonly kinds: Kinds;
  /** The verified copy that was taken before this opening migrated the file. */
  readonly copiedTo: string | undefined;
  /** Runs `work` in one immediate transaction (a savepoint inside another); whatever it throws undoes it. A promise is refused. */
  transaction<T>(work: () => T): T;
  /** Writes the log back into the file and empties it, so that what was erased is in neither. Not inside a transaction. */
  checkpoint(): void;
  close(): void;
}
/** Statements of a table, prepared once a database: `const on = prepared((db) => ({ find: db.prepare<[string], Row>('SELECT ...') }))`, then `on(store).find.get(id)`. */
export function prepared<S>(prepare: (database: Database.Database) => S): (store: Store) => S {
  const made = new WeakMap<Store, S>();
  return (store) => {
    const known = made.get(store);
    if (known !== undefined) return known;
    const statements = prepare(store.database);
    made.set(store, statements);
    return statements;
  };
}
