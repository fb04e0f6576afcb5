import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { existsSync, statSync, symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, expect, test } from 'vitest';
import { builtBeside } from '../../bot/apart.js';
import { LockHeld, lockDatabase } from '../../bot/lock.js';
import { DatabaseRefused } from '../../bot/records/refused.js';
import { freshFile, freshFolder } from './records/fresh.js';

// Processes run built files: Node 20 cannot run our sources.
const built = builtBeside(new URL('../../bot/main.ts', import.meta.url).href, 'lock.js').href;
const children: ChildProcess[] = [];
afterEach(() => {
  for (const child of children.splice(0)) child.kill('SIGKILL');
});

/** A process that takes the lock, says how that went, and keeps it until it is ended. */
async function another(database: string): Promise<{ readonly child: ChildProcess; readonly said: string }> {
  const script = `
    const { lockDatabase } = await import(process.argv[1]);
    try { globalThis.lock = lockDatabase(process.argv[2]); console.log('held'); setInterval(() => {}, 1000); }
    catch (problem) { console.log(problem.name + ': ' + problem.message); }`;
  const child = spawn(process.execPath, ['--input-type=module', '-e', script, built, database], { stdio: ['pipe', 'pipe', 'inherit'] });
  children.push(child);
  const [said]: unknown[] = await once(child.stdout, 'data');
  return { child, said: String(said).trim() };
}
async function end(child: ChildProcess, signal: 'SIGKILL' | 'SIGTERM'): Promise<void> {
  const gone = once(child, 'exit');
  child.kill(signal);
  await gone;
}

test('the second process is told so in one sentence, the first keeps its lock', async () => {
  const file = freshFile();
  const first = await another(file);
  const sentence = `Another Stubaxle is using ${file}; stop it first, or give this one a database of its own.`;
  expect(first.said).toBe('held');
  expect((await another(file)).said).toBe(`LockHeld: ${sentence}`);
  expect(() => lockDatabase(file)).toThrow(sentence);
  expect(first.child.exitCode).toBeNull();
});

test.each(['SIGKILL', 'SIGTERM'] as const)('%s frees it', async (signal) => {
  const file = freshFile();
  const first = await another(file);
  expect(() => lockDatabase(file)).toThrow(LockHeld);
  await end(first.child, signal);
  const second = await another(file);
  expect(second.said).toBe('held');
  await end(second.child, 'SIGKILL');
  lockDatabase(file).release();
});

test('the same process cannot hold it twice, and can take it again once it is released', () => {
  const file = freshFile();
  const lock = lockDatabase(file);
  expect(() => lockDatabase(file)).toThrow(LockHeld);
  // Refused, the second has not let go of the first's.
  expect(() => lockDatabase(file)).toThrow(LockHeld);
  lock.release();
  const again = lockDatabase(file);
  again.release();
  expect(again.file).toBe(`${file}.lock`);
  expect(statSync(again.file).size).toBe(0);
});

test('a refused second does not free the lock for a third process', async () => {
  const file = freshFile();
  const lock = lockDatabase(file);
  expect(() => lockDatabase(file)).toThrow(LockHeld);
  expect((await another(file)).said).toMatch(/^LockHeld/);
  lock.release();
  expect((await another(file)).said).toBe('held');
});

test('two names of one database are one lock; two databases are two', () => {
  const file = freshFile();
  const folder = freshFolder();
  const other = join(folder, 'link');
  symlinkSync(join(file, '..'), other);
  const lock = lockDatabase(file);
  expect(() => lockDatabase(join(other, 'club.db'))).toThrow(LockHeld);
  const second = lockDatabase(join(folder, 'club.db'));
  second.release();
  lock.release();
});

test('taking the lock makes no database', () => {
  const file = freshFile();
  lockDatabase(file).release();
  expect(existsSync(file)).toBe(false);
});

test('where no file can be made, a sentence says so', () => {
  const under = freshFile();
  writeFileSync(under, '');
  const beyond = join(under, 'club.db');
  expect(() => lockDatabase(beyond)).toThrow(
    new DatabaseRefused(`${beyond} can't be opened for writing; check the folder and its permissions.`),
  );
});
