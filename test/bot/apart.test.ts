import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { Apart, builtBeside } from '../../bot/apart.js';

let folder: string;
let thread: Apart<string, unknown>;
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'stubaxle-apart-'));
  const file = join(folder, 'thread.mjs');
  writeFileSync(
    file,
    `import { parentPort } from 'node:worker_threads';
     parentPort.on('message', (m) => {
       if (m === 'spin') for (;;);
       if (m === 'grow') { const all = []; for (;;) all.push(new Array(10_000).fill(all.length)); }
       if (m === 'throw') throw new Error('thrown');
       if (m === 'exit') process.exit(0);
       parentPort.postMessage(m === 'secrets' ? Object.keys(process.env) : m);
     });
     parentPort.postMessage('ready');`,
  );
  thread = new Apart({ file: pathToFileURL(file), deadlineMs: 1500, idleMs: 10_000, heapMb: 64 }, (reply) => reply);
});
afterAll(async () => {
  await thread.close();
  rmSync(folder, { recursive: true });
});

test.each([
  ['spin', 'slow'],
  ['grow', 'memory'],
  ['throw', 'broken'],
  ['exit', 'broken'],
])('a thread that should %s is given up as %s, and the next question gets a new one', async (question, why) => {
  await expect(thread.ask(question)).rejects.toMatchObject({ why });
  expect(await thread.ask('hello')).toBe('hello');
});
test('questions behind one that hangs are answered', async () => {
  const hangs = thread.ask('spin');
  const waits = thread.ask('next');
  await expect(hangs).rejects.toMatchObject({ why: 'slow' });
  expect(await waits).toBe('next');
});
test('a thread sees nothing of the environment', async () => {
  expect(await thread.ask('secrets')).toEqual([]);
});
test('a caller that runs from source is pointed at the built file', () => {
  const root = new URL('../../', import.meta.url);
  expect(builtBeside(new URL('bot/expressions/calculator.ts', root).href, './worker.js').href).toBe(
    new URL('dist/bot/expressions/worker.js', root).href,
  );
  expect(builtBeside('file:///app/dist/bot/expressions/calculator.js', './worker.js').href).toBe(
    'file:///app/dist/bot/expressions/worker.js',
  );
});
