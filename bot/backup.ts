/** Backups of the database while the bot runs, and putting one back: the program behind `npm run backup`. */
import { closeSync, existsSync, mkdirSync, openSync, realpathSync, renameSync, rmSync, statSync } from 'node:fs';
import { dirname, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import Database from 'better-sqlite3';
import { finish } from './finish.js';
import { LockHeld, lockDatabase, realPath } from './lock.js';
import { errorLine } from './log/error.js';
import { DatabaseRefused, type Inspection, inspect, settleFile, stamp } from './records/database.js';
import { migrations } from './records/schema.js';
import { readSettings, SettingsRefused } from './settings.js';

export interface BackedUp {
  readonly file: string;
  readonly bytes: number;
  readonly version: number;
}
export interface Restored {
  readonly file: string;
  readonly version: number;
  /** Where the database that was there before is now. */
  readonly aside: string | undefined;
}

/** A whole copy of a database, also of one in use, as a file without a log, and what an inspection of it found. */
async function copyWhole(from: string, to: string): Promise<Inspection> {
  rmSync(to, { force: true });
  closeSync(openSync(to, 'a', 0o600));
  const source = new Database(from, { fileMustExist: true, timeout: 5000 });
  try {
    await source.backup(to);
  } finally {
    source.close();
  }
  const copy = new Database(to);
  copy.pragma('journal_mode = DELETE');
  copy.close();
  return inspect(to);
}
function refuseUnsound(found: Inspection, what: string): void {
  if (found.problems.length > 0) throw new DatabaseRefused(`${what} is damaged: ${found.problems.slice(0, 3).join('; ')}.`);
  if (!found.ours) throw new DatabaseRefused(`${what} is not a Stubaxle database.`);
}

/**
 * Copies the database with SQLite's online backup, then opens the copy and checks all of it; only then does it get its name.
 * @throws DatabaseRefused when there is none, when the copy is damaged, or when `to` is there already.
 */
export async function backup(database: string, to: string): Promise<BackedUp> {
  const [file, target] = [resolve(database), resolve(to)];
  if (!existsSync(file)) throw new DatabaseRefused(`There is no database ${file} to back up.`);
  if (existsSync(target)) throw new DatabaseRefused(`${target} is there already; name another file.`);
  mkdirSync(dirname(target), { recursive: true });
  const partial = `${target}.partial`;
  try {
    const found = await copyWhole(file, partial);
    refuseUnsound(found, `The copy of ${file}`);
    settleFile(partial, target);
    return { file: target, bytes: statSync(target).size, version: found.version };
  } finally {
    rmSync(partial, { force: true });
  }
}

/**
 * Puts a backup in the database's place. The backup is copied and checked first; the database that was there is kept aside under another name.
 * @throws DatabaseRefused for a backup that is damaged, foreign, or of a newer schema; LockHeld while the bot runs.
 */
export async function restore(from: string, database: string, at: number): Promise<Restored> {
  const [source, file] = [resolve(from), realPath(database)];
  if (!existsSync(source)) throw new DatabaseRefused(`There is no backup ${source}.`);
  const lock = lockDatabase(file);
  const partial = `${file}.restoring`;
  try {
    if (existsSync(file) && file === realpathSync(source)) throw new DatabaseRefused(`${source} is the database itself.`);
    const found = await copyChecked(source, partial);
    const aside = existsSync(file) ? keepAside(file, at) : undefined;
    settleFile(partial, file);
    return { file, version: found.version, aside };
  } finally {
    rmSync(partial, { force: true });
    lock.release();
  }
}
async function copyChecked(source: string, partial: string): Promise<Inspection> {
  let found: Inspection;
  try {
    found = await copyWhole(source, partial);
  } catch (problem) {
    throw new DatabaseRefused(`${source} can't be read as a database: ${problem instanceof Error ? problem.message : String(problem)}.`);
  }
  refuseUnsound(found, source);
  if (found.version > migrations.length)
    throw new DatabaseRefused(
      `${source} has schema ${found.version} and this Stubaxle knows up to ${migrations.length}; run the newer Stubaxle.`,
    );
  return found;
}
/** Under another name with its log, whose name SQLite expects beside it. A damaged file is kept all the same. */
function keepAside(file: string, at: number): string {
  const aside = `${file}.aside-${stamp(at)}`;
  if (existsSync(aside)) throw new DatabaseRefused(`${aside} is there already; try again in a second.`);
  renameSync(file, aside);
  for (const tail of ['-wal', '-shm']) if (existsSync(file + tail)) renameSync(file + tail, aside + tail);
  return aside;
}

const usage = 'npm run backup [-- --to FILE], or npm run backup -- restore FILE; --settings FILE and --database FILE say which database';
const options = { to: { type: 'string' }, settings: { type: 'string' }, database: { type: 'string' } } as const;

export interface World {
  readonly environment: NodeJS.ProcessEnv;
  /** Names are relative to it. */
  readonly folder: string;
  readonly now: number;
  say(line: string): void;
}
/** The program: backs up, or restores, the database of the settings. Gives its exit code. */
export async function main(args: readonly string[], { environment, folder, now, say }: World): Promise<number> {
  try {
    const { values, positionals } = parseArgs({ args: [...args], options, allowPositionals: true });
    const [verb, from, ...more] = positionals;
    const restoring = verb === 'restore' && from !== undefined && more.length === 0 && values.to === undefined;
    if (verb !== undefined && !restoring) throw new DatabaseRefused(`Use: ${usage}.`);
    // A database that is named needs no other setting: a backup is not kept from being made by a token that is missing.
    const file = values.settings === undefined ? {} : { file: values.settings };
    const database =
      values.database === undefined ? readSettings({ environment, folder, ...file }).database : resolve(folder, values.database);
    if (from === undefined) {
      const done = await backup(database, values.to === undefined ? `${database}.${stamp(now)}.backup` : resolve(folder, values.to));
      say(`Backed up to ${done.file} (schema ${done.version}, ${Math.ceil(done.bytes / 1024)} kB); the copy was opened and checked whole.`);
      return 0;
    }
    const source = resolve(folder, from);
    const done = await restore(source, database, now);
    say(`Restored ${done.file} from ${source} (schema ${done.version}), which was checked whole.`);
    say(done.aside === undefined ? 'There was no database before.' : `The database that was there is now ${done.aside}.`);
    return 0;
  } catch (problem) {
    const misspelled = problem instanceof TypeError && 'code' in problem && String(problem.code).startsWith('ERR_PARSE_ARGS');
    if (misspelled) say(`${problem.message.split('. ')[0]}. Use: ${usage}.`);
    else if (problem instanceof SettingsRefused) for (const mistake of problem.mistakes) say(mistake);
    else if (problem instanceof DatabaseRefused || problem instanceof LockHeld) say(problem.message);
    else throw problem;
    return 1;
  }
}

if (isProgram(import.meta.url))
  finish(
    await main(process.argv.slice(2), {
      environment: process.env,
      folder: process.cwd(),
      now: Date.now(),
      say: (line) => process.stdout.write(`${line}\n`),
    }).catch((problem: unknown) => {
      process.stderr.write(`${errorLine(problem)}\n`);
      return 1;
    }),
  );
/** Whether this file was started, and not imported. */
function isProgram(url: string): boolean {
  const started = process.argv[1];
  return started !== undefined && existsSync(started) && realpathSync(started) === fileURLToPath(url);
}
