/** Opening the one SQLite file: what every connection must have, and bringing an older file up to this program's schema. */
import { chmodSync, closeSync, existsSync, fsyncSync, mkdirSync, openSync, renameSync, rmSync } from 'node:fs';
import { dirname, resolve } from 'node:path';
import Database from 'better-sqlite3';
import { kinds as all, type Kinds } from '../../commands/records/kinds.js';
import { DatabaseRefused, refusal } from './refused.js';
import { type Migration, migrations as ours } from './schema.js';
import type { Store } from './store.js';

export { DatabaseRefused } from './refused.js';
export type { Store } from './store.js';

export interface Opening {
  readonly migrations?: readonly Migration[];
  readonly kinds?: Kinds;
  /** For the name of the copy. */
  readonly now?: () => number;
}
/** Marks a SQLite file as Stubaxle's (`PRAGMA application_id`): the letters STBX. */
export const applicationId = 0x53544258;

/** A number that a pragma answers with. */
export const pragmaNumber = (database: Database.Database, name: string): number => {
  const answer: unknown = database.pragma(name, { simple: true });
  if (typeof answer !== 'number') throw new Error(`PRAGMA ${name} answered ${String(answer)} instead of a number.`);
  return answer;
};

/**
 * Opens the database, making it when it is not there, and migrates it to the newest schema. A copy of an existing file is taken
 * and verified before it is migrated.
 * @throws DatabaseRefused for a newer schema, another program's file, or a damaged copy; a failed migration leaves the file as it was.
 */
export function openDatabase(file: string, { migrations = ours, kinds = all, now = Date.now }: Opening = {}): Store {
  const inMemory = file === ':memory:';
  const path = inMemory ? file : resolve(file);
  let database: Database.Database | undefined;
  try {
    if (!inMemory) makeFile(path);
    database = new Database(path, { timeout: 5000 });
    const found = admit(database, path, migrations.length);
    settle(database, inMemory);
    return storeOf(database, kinds, path, migrate(database, path, found, migrations, now));
  } catch (problem) {
    database?.close();
    throw refusal(problem, path) ?? problem;
  }
}
const storeOf = (database: Database.Database, kinds: Kinds, file: string, copiedTo: string | undefined): Store => ({
  file,
  database,
  kinds,
  copiedTo,
  transaction: (work) => database.transaction(work).immediate(),
  checkpoint: () => void database.pragma('wal_checkpoint(TRUNCATE)'),
  close: () => void database.close(),
});
/** Members' data: readable by the bot's own user only. SQLite gives its log the mode of the file. */
function makeFile(path: string): void {
  mkdirSync(dirname(path), { recursive: true });
  if (!existsSync(path)) closeSync(openSync(path, 'a', 0o600));
}
/** What SQLite does not remember from one opening to the next. A WAL database opened again reports synchronous NORMAL, so it is told and then asked. */
function settle(database: Database.Database, inMemory: boolean): void {
  const journal: unknown = database.pragma('journal_mode = WAL', { simple: true });
  if (!inMemory && journal !== 'wal') throw new Error(`The database's journal is ${String(journal)}, not a write-ahead log.`);
  database.pragma('synchronous = FULL');
  database.pragma('foreign_keys = ON');
  // What is deleted is overwritten: "forget me" must not leave readable pages behind.
  database.pragma('secure_delete = ON');
  database.pragma('trusted_schema = OFF');
  if (pragmaNumber(database, 'synchronous') !== 2) throw new Error('SQLite would not set synchronous to FULL.');
  if (pragmaNumber(database, 'foreign_keys') !== 1) throw new Error('SQLite would not check foreign keys.');
}

/** Before anything is written: whose file it is, and of which version. */
function admit(database: Database.Database, path: string, newest: number): { readonly version: number; readonly empty: boolean } {
  const version = pragmaNumber(database, 'user_version');
  const empty = database.prepare<[], { n: number }>('SELECT count(*) AS n FROM sqlite_schema').get()?.n === 0;
  if (!empty && pragmaNumber(database, 'application_id') !== applicationId)
    throw new DatabaseRefused(`${path} is another program's database; give the bot a file of its own.`);
  if (version > newest)
    throw new DatabaseRefused(
      `${path} has schema ${version} and this Stubaxle knows up to ${newest}; run the newer Stubaxle, or restore a backup from before it.`,
    );
  return { version, empty };
}

function migrate(
  database: Database.Database,
  path: string,
  { version, empty }: { readonly version: number; readonly empty: boolean },
  migrations: readonly Migration[],
  now: () => number,
): string | undefined {
  if (version === migrations.length) return undefined;
  const copiedTo = empty ? undefined : copyBefore(database, path, version, now());
  // Off while tables may be rebuilt; each migration is checked as a whole before it is committed.
  database.pragma('foreign_keys = OFF');
  for (const [at, migration] of migrations.entries()) {
    if (at < version) continue;
    database
      .transaction(() => {
        database.exec(migration.sql);
        const broken = database.pragma('foreign_key_check');
        if (!Array.isArray(broken) || broken.length > 0)
          throw new Error(`Migration ${at + 1} (${migration.does}) breaks a reference between tables.`);
        database.pragma(`application_id = ${applicationId}`);
        database.pragma(`user_version = ${at + 1}`);
      })
      .immediate();
  }
  database.pragma('foreign_keys = ON');
  return copiedTo;
}

/** A complete copy beside the file, verified before it gets its name. */
function copyBefore(database: Database.Database, path: string, version: number, at: number): string | undefined {
  if (path === ':memory:') return undefined;
  const name = `${path}.schema-${version}-${stamp(at)}.backup`;
  const partial = `${name}.partial`;
  rmSync(partial, { force: true });
  closeSync(openSync(partial, 'a', 0o600));
  database.prepare('VACUUM INTO ?').run(partial);
  const found = inspect(partial);
  if (found.problems.length > 0)
    throw new DatabaseRefused(`${path} was not migrated, because its copy is damaged (${found.problems[0]}); restore a backup.`);
  settleFile(partial, name);
  return name;
}

/** Date and time for a file name, UTC. */
export const stamp = (at: number): string => new Date(at).toISOString().replaceAll(/[-:]/g, '').replace(/\.\d+/, '');

/** Gives a finished file its name in a way that a power cut cannot halve. */
export function settleFile(from: string, to: string): void {
  chmodSync(from, 0o600);
  syncPath(from);
  renameSync(from, to);
  syncPath(dirname(to));
}
function syncPath(path: string): void {
  const handle = openSync(path, 'r');
  try {
    fsyncSync(handle);
  } finally {
    closeSync(handle);
  }
}

export interface Inspection {
  readonly version: number;
  readonly ours: boolean;
  /** In SQLite's words; empty for a sound file. */
  readonly problems: readonly string[];
}
/** Opens a database file for reading only and checks all of it: pages, indices, constraints, references. A file that cannot be read is a problem, not an exception. */
export function inspect(file: string): Inspection {
  let database: Database.Database | undefined;
  try {
    database = new Database(file, { readonly: true, fileMustExist: true });
    const problems = database
      .prepare<[], { line: string }>('SELECT integrity_check AS line FROM pragma_integrity_check')
      .all()
      .map((row) => row.line)
      .filter((line) => line !== 'ok');
    for (const row of database
      .prepare<[], { from: string; to: string }>('SELECT "table" AS "from", parent AS "to" FROM pragma_foreign_key_check')
      .all())
      problems.push(`a row of ${row.from} points to a missing row of ${row.to}`);
    return { version: pragmaNumber(database, 'user_version'), ours: pragmaNumber(database, 'application_id') === applicationId, problems };
  } catch (problem) {
    return { version: 0, ours: false, problems: [problem instanceof Error ? problem.message : String(problem)] };
  } finally {
    database?.close();
  }
}
