/** One process a database: an exclusive lock on a file beside it, which the operating system frees when the process dies, however it dies. */
import { closeSync, existsSync, mkdirSync, openSync, realpathSync } from 'node:fs';
import { basename, dirname, join, resolve } from 'node:path';
import Database from 'better-sqlite3';
import { refusal } from './records/refused.js';

/** Another process, or another part of this one, uses the database. The message is one sentence for whoever runs the bot. */
export class LockHeld extends Error {
  override readonly name = 'LockHeld';
}
export interface Lock {
  readonly file: string;
  release(): void;
}

/** The one name of a file that may have several, and need not exist; its folder is made. */
export function realPath(file: string): string {
  const path = resolve(file);
  if (existsSync(path)) return realpathSync(path);
  mkdirSync(dirname(path), { recursive: true });
  return join(realpathSync(dirname(path)), basename(path));
}

/**
 * Takes the lock of a database, which need not exist yet. Held as an exclusive SQLite transaction on `FILE.lock`: SQLite's own file locks
 * work on every system that it runs on, and need no process id to be believed. The file stays when the lock is released; it is empty.
 * @throws LockHeld at once when it is held; DatabaseRefused where no file can be made.
 */
export function lockDatabase(database: string): Lock {
  let held: Database.Database | undefined;
  try {
    const file = `${realPath(database)}.lock`;
    if (!existsSync(file)) closeSync(openSync(file, 'a', 0o600));
    const lock = new Database(file, { timeout: 0 });
    held = lock;
    lock.exec('BEGIN EXCLUSIVE');
    return { file, release: () => void lock.close() };
  } catch (problem) {
    held?.close();
    if (problem instanceof Database.SqliteError && problem.code.startsWith('SQLITE_BUSY'))
      throw new LockHeld(`Another Stubaxle is using ${resolve(database)}; stop it first, or give this one a database of its own.`);
    throw refusal(problem, resolve(database)) ?? problem;
  }
}
