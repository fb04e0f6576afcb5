import { createHash } from 'node:crypto';
import { mkdirSync, readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import Database from 'better-sqlite3';
import { expect, test } from 'vitest';
import { applicationId, DatabaseRefused, inspect, openDatabase, pragmaNumber } from '../../../bot/records/database.js';
import { frozen, type Migration, migrationFolder, migrations } from '../../../bot/records/schema.js';
import { freshFile, opened } from './fresh.js';

const tablesOf = (file: string): string[] => {
  const database = new Database(file, { readonly: true });
  const names = database
    .prepare<[], { name: string }>("SELECT name FROM sqlite_schema WHERE type = 'table' AND name NOT LIKE 'sqlite_%' ORDER BY name")
    .all();
  database.close();
  return names.map((row) => row.name);
};
const one: Migration = { does: 'a table', sql: 'CREATE TABLE things (id INTEGER PRIMARY KEY, name TEXT NOT NULL) STRICT;' };
const two: Migration = {
  does: 'a second table',
  sql: "CREATE TABLE others (id INTEGER PRIMARY KEY, thing INTEGER REFERENCES things (id)) STRICT; INSERT INTO things (name) VALUES ('made by two');",
};
const now = () => Date.UTC(2026, 4, 6, 7, 8, 9);

test('the first opening makes the newest schema, and the second finds it', () => {
  const file = freshFile();
  opened(file).close();
  const again = opened(file);
  expect(pragmaNumber(again.database, 'user_version')).toBe(migrations.length);
  expect(pragmaNumber(again.database, 'application_id')).toBe(applicationId);
  expect(again.copiedTo).toBeUndefined();
  expect(inspect(file)).toEqual({ version: migrations.length, ours: true, problems: [] });
});

test('every opening is durable: synchronous FULL, a write-ahead log, references checked, erased pages overwritten', () => {
  const file = freshFile();
  for (const opening of [1, 2, 3]) {
    const store = opened(file);
    expect([opening, pragmaNumber(store.database, 'synchronous')]).toEqual([opening, 2]);
    expect(store.database.pragma('journal_mode', { simple: true })).toBe('wal');
    expect(pragmaNumber(store.database, 'foreign_keys')).toBe(1);
    expect(pragmaNumber(store.database, 'secure_delete')).toBe(1);
    expect(pragmaNumber(store.database, 'busy_timeout')).toBe(5000);
    store.close();
  }
});

test('the file is for its owner alone', () => {
  const file = freshFile();
  opened(file);
  expect(statSync(file).mode & 0o777).toBe(0o600);
});

test('the migrations are frozen: each file is there in its place, is as it was released, and no file stands beside them', () => {
  expect(readdirSync(migrationFolder).sort()).toEqual(frozen.map(({ file }) => file));
  for (const [at, { file, sha256 }] of frozen.entries()) {
    expect(file.startsWith(`${String(at + 1).padStart(4, '0')}-`)).toBe(true);
    expect([
      file,
      createHash('sha256')
        .update(readFileSync(new URL(file, migrationFolder)))
        .digest('hex'),
    ]).toEqual([file, sha256]);
  }
  // The two of 0.1.1, written here once more: who edits one must edit this line too.
  expect(frozen.slice(0, 2).map(({ sha256 }) => sha256.slice(0, 8))).toEqual(['97ff4b3a', 'eb630a23']);
});

test('all tables are STRICT', () => {
  const rows = opened()
    .database.prepare<[], { name: string; strict: number }>(
      "SELECT name, strict FROM pragma_table_list WHERE schema = 'main' AND type = 'table' AND name NOT LIKE 'sqlite_%'",
    )
    .all();
  expect(rows.length).toBeGreaterThanOrEqual(8);
  expect(rows.filter((row) => row.strict !== 1)).toEqual([]);
});

test('every reference has an index, so that forgetting does not scan', () => {
  const database = opened().database;
  const references = database
    .prepare<[], { name: string; column: string }>(
      "SELECT t.name, f.\"from\" AS column FROM pragma_table_list AS t, pragma_foreign_key_list(t.name) AS f WHERE t.schema = 'main' AND t.type = 'table'",
    )
    .all();
  const leading = new Set(
    database
      .prepare<[], { name: string; column: string }>(
        "SELECT t.name, x.name AS column FROM pragma_table_list AS t, pragma_index_list(t.name) AS i, pragma_index_info(i.name) AS x WHERE t.schema = 'main' AND t.type = 'table' AND x.seqno = 0",
      )
      .all()
      .map((row) => `${row.name}.${row.column}`),
  );
  expect(references.length).toBeGreaterThanOrEqual(10);
  expect(references.map((row) => `${row.name}.${row.column}`).filter((name) => !leading.has(name))).toEqual([]);
});

test('an older file is copied, the copy verified, and then migrated', () => {
  const file = freshFile();
  const old = opened(file, { migrations: [one] });
  old.database.exec("INSERT INTO things (name) VALUES ('turnip')");
  old.close();
  const store = opened(file, { migrations: [one, two], now });
  expect(store.copiedTo).toBe(`${file}.schema-1-20260506T070809Z.backup`);
  expect(store.database.prepare('SELECT name FROM things ORDER BY id').pluck().all()).toEqual(['turnip', 'made by two']);
  const copy = new Database(store.copiedTo, { readonly: true });
  expect(copy.prepare('SELECT name FROM things').pluck().all()).toEqual(['turnip']);
  expect(pragmaNumber(copy, 'user_version')).toBe(1);
  copy.close();
  expect(statSync(store.copiedTo!).mode & 0o777).toBe(0o600);
  expect(inspect(store.copiedTo!)).toEqual({ version: 1, ours: true, problems: [] });
});

test('a migration that fails half way leaves the file as it was, and the next opening can try again', () => {
  const file = freshFile();
  opened(file, { migrations: [one] }).close();
  const half: Migration = { does: 'half of it', sql: 'CREATE TABLE half (id INTEGER) STRICT; INSERT INTO nowhere VALUES (1);' };
  expect(() => openDatabase(file, { migrations: [one, two, half], now })).toThrow('no such table: nowhere');
  // The migration before it was a whole step, and stays.
  expect(inspect(file)).toEqual({ version: 2, ours: true, problems: [] });
  expect(tablesOf(file)).toEqual(['others', 'things']);
  expect(pragmaNumber(opened(file, { migrations: [one, two] }).database, 'user_version')).toBe(2);
});

test('a migration that breaks a reference is undone whole', () => {
  const file = freshFile();
  opened(file, { migrations: [one, two] }).close();
  const breaks: Migration = { does: 'a dangling row', sql: 'INSERT INTO others (thing) VALUES (99);' };
  expect(() => openDatabase(file, { migrations: [one, two, breaks], now })).toThrow(
    'Migration 3 (a dangling row) breaks a reference between tables.',
  );
  const store = opened(file, { migrations: [one, two] });
  expect(store.database.prepare('SELECT count(*) FROM others').pluck().get()).toBe(0);
  expect(pragmaNumber(store.database, 'user_version')).toBe(2);
});

test('a newer schema is refused in one sentence, and nothing is written', () => {
  const file = freshFile();
  opened(file, { migrations: [one, two] }).close();
  const before = readFileSync(file);
  let refused: unknown;
  try {
    openDatabase(file, { migrations: [one] });
  } catch (problem) {
    refused = problem;
  }
  expect(refused).toBeInstanceOf(DatabaseRefused);
  expect(refused).toMatchObject({
    message: `${file} has schema 2 and this Stubaxle knows up to 1; run the newer Stubaxle, or restore a backup from before it.`,
  });
  expect(readFileSync(file).equals(before)).toBe(true);
});

test("another program's database and a file that is none are refused, and left alone", () => {
  const other = freshFile();
  const database = new Database(other);
  database.exec('CREATE TABLE theirs (id INTEGER)');
  database.close();
  const before = readFileSync(other);
  expect(() => openDatabase(other)).toThrow(`${other} is another program's database; give the bot a file of its own.`);
  expect(readFileSync(other).equals(before)).toBe(true);
  expect(tablesOf(other)).toEqual(['theirs']);
  const text = freshFile();
  writeFileSync(
    text,
    'Notes on springs, of more than a hundred bytes, so that SQLite has a header to look at and to find wanting. '.repeat(3),
  );
  expect(() => openDatabase(text)).toThrow(`${text} is not a SQLite database; give the bot another file, or restore a backup.`);
});

test('a place that cannot be written is refused in one sentence', () => {
  const file = freshFile();
  mkdirSync(file);
  expect(() => openDatabase(file)).toThrow(
    new DatabaseRefused(`${file} can't be opened for writing; check the folder and its permissions.`),
  );
  const under = freshFile();
  writeFileSync(under, '');
  const beyond = join(under, 'club.db');
  expect(() => openDatabase(beyond)).toThrow(
    new DatabaseRefused(`${beyond} can't be opened for writing; check the folder and its permissions.`),
  );
});

test('a damaged schema is refused in one sentence', () => {
  const file = freshFile();
  const store = opened(file);
  store.checkpoint();
  store.close();
  const bytes = readFileSync(file);
  // The schema's own page, after the header.
  bytes.fill(0x5a, 100, 4096);
  writeFileSync(file, bytes);
  expect(() => openDatabase(file)).toThrow(new DatabaseRefused(`${file} is damaged; restore a backup.`));
});

test('a transaction undoes all of it, and refuses to be asynchronous', () => {
  const store = opened(freshFile(), { migrations: [one] });
  const insert = store.database.prepare<[string]>('INSERT INTO things (name) VALUES (?)');
  expect(() =>
    store.transaction(() => {
      insert.run('moth');
      throw new Error('stop');
    }),
  ).toThrow('stop');
  expect(() =>
    store.transaction(async () => {
      insert.run('moth');
    }),
  ).toThrow('promise');
  expect(store.database.prepare('SELECT count(*) FROM things').pluck().get()).toBe(0);
  expect(store.transaction(() => Number(insert.run('turnip').lastInsertRowid))).toBe(1);
});

test('a database in memory works the same, for tests', () => {
  const store = opened(':memory:');
  expect(pragmaNumber(store.database, 'user_version')).toBe(migrations.length);
  expect(pragmaNumber(store.database, 'foreign_keys')).toBe(1);
  expect(store.file).toBe(':memory:');
});

test('no copy is left half made', () => {
  const file = freshFile();
  opened(file, { migrations: [one] }).close();
  opened(file, { migrations: [one, two], now });
  expect(readdirSync(dirname(file)).filter((name) => name.includes('partial'))).toEqual([]);
});
