import { spawnSync } from 'node:child_process';
import { existsSync, readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import Database from 'better-sqlite3';
import { expect, test } from 'vitest';
import { builtBeside } from '../../bot/apart.js';
import { backup, main, restore } from '../../bot/backup.js';
import { lockDatabase } from '../../bot/lock.js';
import { inspect, type Store } from '../../bot/records/database.js';
import { findMember, meetMember } from '../../bot/records/members.js';
import { migrations } from '../../bot/records/schema.js';
import { freshFile, freshFolder, opened } from './records/fresh.js';

const at = Date.UTC(2026, 4, 6, 7, 8, 9);
const club = (file: string, ...names: string[]): Store => {
  const store = opened(file);
  for (const name of names) meetMember(store, `@${name}:example.org`, name);
  return store;
};
const namesIn = (file: string): unknown[] => {
  const database = new Database(file, { readonly: true });
  const names = database.prepare('SELECT name FROM members ORDER BY name').pluck().all();
  database.close();
  return names;
};
async function said(args: readonly string[], database: string, environment: NodeJS.ProcessEnv = { STUBAXLE_DATABASE: database }) {
  const lines: string[] = [];
  const code = await main(args, { environment, folder: dirname(database), now: at, say: (line) => lines.push(line) });
  return { code, lines };
}

test('a backup of a database in use holds what was committed, is whole, and stands alone', async () => {
  const file = freshFile();
  const store = club(file, 'robin', 'sam');
  const to = join(freshFolder(), 'kept', 'club.backup');
  const done = await backup(file, to);
  expect(done).toEqual({ file: to, bytes: statSync(to).size, version: migrations.length });
  expect(namesIn(to)).toEqual(['robin', 'sam']);
  expect(inspect(to)).toEqual({ version: migrations.length, ours: true, problems: [] });
  expect(statSync(to).mode & 0o777).toBe(0o600);
  expect(readdirSync(dirname(to))).toEqual(['club.backup']);
  meetMember(store, '@ash:example.org', 'ash');
  expect(findMember(store, '@ash:example.org')?.name).toBe('ash');
  expect(namesIn(to)).toEqual(['robin', 'sam']);
});

test('a backup never takes the place of a file, and needs a database', async () => {
  const file = freshFile();
  await expect(backup(file, `${file}.backup`)).rejects.toThrow(`There is no database ${file} to back up.`);
  club(file, 'robin');
  writeFileSync(`${file}.backup`, 'mine');
  await expect(backup(file, `${file}.backup`)).rejects.toThrow(`${file}.backup is there already; name another file.`);
  expect(readFileSync(`${file}.backup`, 'utf8')).toBe('mine');
});

test('a damaged database gives no backup', async () => {
  const file = freshFile();
  const store = club(file, ...Array.from({ length: 3000 }, (_, n) => `member-${n}`));
  store.checkpoint();
  store.close();
  const bytes = readFileSync(file);
  // The middle of the file is overwritten: its pages no longer agree with each other.
  bytes.fill(0x5a, Math.floor(bytes.length / 2), Math.floor(bytes.length / 2) + 8192);
  writeFileSync(file, bytes);
  await expect(backup(file, `${file}.backup`)).rejects.toThrow('is damaged');
  expect(readdirSync(dirname(file)).filter((name) => name.includes('backup'))).toEqual([]);
});

test('restoring puts the backup in place, keeps what was there, and the bot opens it durable', async () => {
  const file = freshFile();
  const store = club(file, 'robin');
  await backup(file, `${file}.backup`);
  meetMember(store, '@later:example.org', 'later');
  store.close();
  const done = await restore(`${file}.backup`, file, at);
  expect(done).toEqual({ file, version: migrations.length, aside: `${file}.aside-20260506T070809Z` });
  expect(namesIn(file)).toEqual(['robin']);
  expect(namesIn(done.aside!)).toEqual(['later', 'robin']);
  const again = opened(file);
  expect(again.database.pragma('synchronous', { simple: true })).toBe(2);
  expect(again.copiedTo).toBeUndefined();
  expect(readdirSync(dirname(file)).filter((name) => name.includes('restoring'))).toEqual([]);
});

test('what a killed bot left in its log goes aside with its database', async () => {
  const file = freshFile();
  const store = club(file, 'robin');
  await backup(file, `${file}.backup`);
  meetMember(store, '@later:example.org', 'later');
  // As a kill leaves it: the last commit is in the log only.
  const [main, log] = [readFileSync(file), readFileSync(`${file}-wal`)];
  store.close();
  writeFileSync(file, main);
  writeFileSync(`${file}-wal`, log);
  const done = await restore(`${file}.backup`, file, at);
  expect(namesIn(file)).toEqual(['robin']);
  expect(namesIn(done.aside!)).toEqual(['later', 'robin']);
});

test('restoring where there is nothing', async () => {
  const file = freshFile();
  club(file, 'robin').close();
  await backup(file, `${file}.backup`);
  const elsewhere = freshFile();
  expect(await restore(`${file}.backup`, elsewhere, at)).toEqual({ file: elsewhere, version: migrations.length, aside: undefined });
  expect(namesIn(elsewhere)).toEqual(['robin']);
});

test('restoring is refused while the bot runs, and changes nothing', async () => {
  const file = freshFile();
  const store = club(file, 'robin');
  await backup(file, `${file}.backup`);
  meetMember(store, '@later:example.org', 'later');
  const lock = lockDatabase(file);
  await expect(restore(`${file}.backup`, file, at)).rejects.toThrow(`Another Stubaxle is using ${file}`);
  lock.release();
  expect(namesIn(file)).toEqual(['later', 'robin']);
  expect(readdirSync(dirname(file)).filter((name) => name.includes('aside'))).toEqual([]);
});

test('what is no sound Stubaxle database of a known schema is refused, and the database stays', async () => {
  const file = freshFile();
  club(file, 'robin').close();
  const folder = freshFolder();
  const text = join(folder, 'text');
  writeFileSync(text, 'not a database at all, but long enough to have a header of a hundred bytes. '.repeat(20));
  const foreign = join(folder, 'foreign');
  const theirs = new Database(foreign);
  theirs.exec('CREATE TABLE theirs (id INTEGER)');
  theirs.close();
  const newer = join(folder, 'newer');
  club(newer, 'ash').close();
  const ahead = new Database(newer);
  ahead.pragma(`user_version = ${migrations.length + 1}`);
  ahead.close();
  const dangling = join(folder, 'dangling');
  club(dangling, 'ash').close();
  const broken = new Database(dangling);
  broken.pragma('foreign_keys = OFF');
  broken.exec("INSERT INTO memberships (room, member, state) VALUES ('!nowhere', '@ash:example.org', 'join')");
  broken.close();
  await expect(restore(text, file, at)).rejects.toThrow(`${text} can't be read as a database`);
  await expect(restore(foreign, file, at)).rejects.toThrow(`${foreign} is not a Stubaxle database.`);
  await expect(restore(newer, file, at)).rejects.toThrow(
    `has schema ${migrations.length + 1} and this Stubaxle knows up to ${migrations.length}`,
  );
  await expect(restore(dangling, file, at)).rejects.toThrow('is damaged: a row of memberships points to a missing row of rooms.');
  await expect(restore(join(folder, 'none'), file, at)).rejects.toThrow('There is no backup');
  await expect(restore(file, file, at)).rejects.toThrow('is the database itself');
  expect(readdirSync(dirname(file)).sort()).toEqual(['club.db', 'club.db.lock']);
  expect(namesIn(file)).toEqual(['robin']);
});

test('the program says what it did, in words', async () => {
  const file = freshFile();
  expect(await said([], file)).toEqual({ code: 1, lines: [`There is no database ${file} to back up.`] });
  club(file, 'robin').close();
  const first = await said([], file);
  expect(first.code).toBe(0);
  expect(first.lines[0]).toMatch(/club\.db\.20260506T070809Z\.backup \(schema \d+, \d+ kB\); the copy was opened and checked whole\.$/);
  const named = `${file}.named`;
  expect((await said(['--to', named], file)).code).toBe(0);
  expect(existsSync(named)).toBe(true);
  expect(await said(['restore', named], file)).toEqual({
    code: 0,
    lines: [
      `Restored ${file} from ${named} (schema ${migrations.length}), which was checked whole.`,
      `The database that was there is now ${file}.aside-20260506T070809Z.`,
    ],
  });
});

test('the database is the one of the settings, or the one that is named', async () => {
  const file = freshFile();
  club(file, 'robin').close();
  const folder = dirname(file);
  writeFileSync(join(folder, 'own.json'), JSON.stringify({ database: 'club.db' }));
  expect((await said(['--settings', 'own.json', '--to', 'one'], file, {})).code).toBe(0);
  expect(namesIn(join(folder, 'one'))).toEqual(['robin']);
  // Named, it needs no other setting to be right.
  const wrong = { STUBAXLE_HOMESERVER: 'nonsense' };
  const refused = await said(['--to', 'two'], file, wrong);
  expect(refused.code).toBe(1);
  expect(refused.lines.join('\n')).toContain('homeserver');
  expect((await said(['--database', 'club.db', '--to', 'two'], file, wrong)).code).toBe(0);
  expect(await said([], file, {})).toEqual({ code: 1, lines: [`There is no database ${join(folder, 'data', 'console.db')} to back up.`] });
});

test('it runs as a program', () => {
  const file = freshFile();
  club(file, 'robin').close();
  const program = fileURLToPath(builtBeside(new URL('../../bot/main.ts', import.meta.url).href, 'backup.js'));
  const run = (...args: string[]) =>
    spawnSync(process.execPath, [program, '--database', file, ...args], { encoding: 'utf8', cwd: dirname(file) });
  const kept = run('--to', 'kept');
  expect([kept.status, kept.stderr]).toEqual([0, '']);
  expect(kept.stdout).toMatch(/^Backed up to .*kept \(schema/);
  const back = run('restore', 'kept');
  expect([back.status, back.stdout.split('\n').length]).toEqual([0, 3]);
  expect(run('restore', 'nothing').status).toBe(1);
});

test.each([[['restore']], [['restore', 'a', 'b']], [['repair', 'a']], [['restore', 'a', '--to', 'b']], [['--form', 'a']]])(
  '%j is answered by how to use it',
  async (args) => {
    const { code, lines } = await said(args, freshFile());
    expect(code).toBe(1);
    expect(lines).toHaveLength(1);
    expect(lines[0]).toContain('Use: npm run backup');
  },
);
