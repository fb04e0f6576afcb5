import { type ChildProcess, spawn } from 'node:child_process';
import { chmodSync, existsSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { createServer, type Server } from 'node:http';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { lockDatabase } from '../../bot/lock.js';
import { healthParts } from '../../bot/online.js';
import { type Message, messageSchema } from '../../bot/render/json.js';

const program = join(import.meta.dirname, '../../dist/program/main.js');
let folder: string;
let started: ChildProcess[];
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'stubaxle-main-'));
  started = [];
});
afterEach(() => {
  for (const child of started) child.kill('SIGKILL');
  rmSync(folder, { recursive: true });
});

interface Ended {
  readonly out: string;
  readonly err: string;
  readonly code: number | null;
}
/** The built program, as whoever runs the bot starts it, in an empty folder. */
function start(
  args: readonly string[],
  environment: NodeJS.ProcessEnv = {},
): { readonly child: ChildProcess; readonly ended: Promise<Ended>; out(): string; err(): string } {
  const child = spawn(process.execPath, [program, ...args], {
    cwd: folder,
    env: { PATH: process.env.PATH ?? '', ...environment },
    stdio: 'pipe',
  });
  started.push(child);
  let out = '';
  let err = '';
  child.stdout.on('data', (d: Buffer) => (out += d.toString()));
  child.stderr.on('data', (d: Buffer) => (err += d.toString()));
  const ended = new Promise<Ended>((resolve) => child.on('close', (code) => resolve({ out, err, code })));
  return { child, ended, out: () => out, err: () => err };
}
function run(args: readonly string[], input = '', environment: NodeJS.ProcessEnv = {}): Promise<Ended> {
  const { child, ended } = start(args, environment);
  child.stdin?.end(input);
  return ended;
}
async function until(what: () => boolean, name: string): Promise<void> {
  for (let waited = 0; !what(); waited += 20) {
    if (waited > 20_000) throw new Error(`waited in vain for ${name}`);
    await new Promise((resolve) => setTimeout(resolve, 20));
  }
}
const settingsFile = (content: unknown): string => {
  const file = join(folder, 'settings.json');
  writeFileSync(file, JSON.stringify(content));
  chmodSync(file, 0o600);
  return file;
};

describe('how it is started', () => {
  test('help, version, check', async () => {
    const help = await run(['--help']);
    expect(help).toMatchObject({ code: 0, err: '' });
    expect(help.out.split('\n').every((line) => line.length <= 100)).toBe(true);
    expect((await run(['--version'])).out).toMatch(/^Stubaxle \d+\.\d+\.\d+\n$/);
    expect(await run(['--check', '--settings', settingsFile({ prefix: '?' })])).toEqual({
      code: 0,
      out: '',
      err: 'The settings are in order.\n',
    });
  });
  test.each([
    [['--wibble'], "Unknown option '--wibble'; try: npm start -- --help\n"],
    [['wibble'], "Unexpected argument 'wibble'; try: npm start -- --help\n"],
    [['--settings', 'nowhere.json'], expect.stringMatching(/nowhere\.json: the settings file can't be read\.\n$/)],
  ])('%j: one clear line, and code 2', async (args, err) => {
    expect(await run(args)).toEqual({ code: 2, out: '', err });
  });
  test('every mistake in the settings is a line', async () => {
    const { code, err } = await run(['--settings', settingsFile({ prefix: 'a', tokn: 'x' })]);
    expect(code).toBe(2);
    expect(err.trim().split('\n')).toHaveLength(2);
  });
  test('a database in use, or that is none: one line, and code 3', async () => {
    const database = join(folder, 'club.db');
    const lock = lockDatabase(database);
    expect(await run(['--database', database])).toMatchObject({
      code: 3,
      out: '',
      err: expect.stringMatching(/^Another Stubaxle is using .*club\.db; .*\n$/),
    });
    lock.release();
    writeFileSync(database, 'not a database, and longer than one hundred bytes '.repeat(4));
    expect(await run(['--database', database])).toMatchObject({
      code: 3,
      out: '',
      err: expect.stringMatching(/^.*club\.db is not a SQLite database.*\n$/),
    });
  });
});

describe('the console', () => {
  test('answers a script from an empty folder, on the invented club', async () => {
    const { out, err, code } = await run([], 'show rear ride frequency\nhelp\n');
    expect({ code, err }).toEqual({ code: 0, err: '' });
    expect(out).toMatch(/^robin> show rear ride frequency\nRear ride frequency \d+\.\d+ Hz ± \d/i);
    expect(out).not.toContain('\u001b');
    expect(existsSync(join(folder, 'data', 'console.db'))).toBe(true);
  });
  test('gives one JSON line for each line of input, and nothing else', async () => {
    const lines = [
      'show rear ride frequency',
      '',
      'flumph the wibble by 3 sprongs',
      'as sam',
      'show weight',
      'draw rear ride frequency against rear spring 300 to 800',
    ];
    const { out, err, code } = await run(['--json'], `${lines.join('\n')}\n`);
    expect({ code, err }).toEqual({ code: 0, err: '' });
    const messages: Message[] = out
      .split('\n')
      .slice(0, -1)
      .map((line) => messageSchema.parse(JSON.parse(line)));
    expect(messages.map((m) => m.said)).toEqual(lines);
    expect(messages.map((m) => m.as)).toEqual(['robin', 'robin', 'robin', 'sam', 'sam', 'sam']);
    expect(messages[0]?.answers[0]).toMatchObject({ kind: 'told', amount: { dimension: 'frequency', unit: 'Hz' } });
    expect(messages[1]).toMatchObject({ silent: true, answers: [] });
    expect(messages[2]?.answers[0]?.kind).toBe('refused');
    expect(messages[5]?.answers[0]?.chart?.series[0]?.points.length).toBeGreaterThan(10);
    expect(messages[5]?.files).toHaveLength(1);
    for (const file of messages[5]?.files ?? []) expect(existsSync(file)).toBe(true);
  });
  test('remembers from one start to the next, and does not seed the club again', async () => {
    await run([], 'forget turnip\n1\n');
    await run(['--as', 'lee'], 'save my car radish 2200 lb\n');
    const { out } = await run(['--as', 'lee'], 'show weight\nas robin\nshow turnip weight\n');
    expect(out).toContain('2,200 lb');
    expect(out).not.toMatch(/turnip.*2,6\d\d lb/i);
  });
  test('starts empty when the demo is turned off', async () => {
    const { out } = await run([], 'show rear ride frequency\n', { STUBAXLE_DEMO: 'false' });
    expect(out).not.toMatch(/turnip|\d Hz/);
  });
  test('ends by SIGTERM as by the end of its input, and lets go of the database', async () => {
    const { child, ended, out } = start([]);
    child.stdin?.write('show rear ride frequency\n');
    await until(() => /Hz/.test(out()), 'an answer');
    child.kill('SIGTERM');
    expect((await ended).code).toBe(0);
    lockDatabase(join(folder, 'data', 'console.db')).release();
  });
  test('goes on where it was killed, the club seeded once', async () => {
    const { child, ended } = start([]);
    await until(() => existsSync(join(folder, 'data', 'console.db')), 'the database');
    await new Promise((resolve) => setTimeout(resolve, 150));
    child.kill('SIGKILL');
    await ended;
    const { out, code } = await run(['--json'], 'show rear ride frequency\nhistory\n');
    expect(code).toBe(0);
    const [first, second] = out.split('\n').map((line) => (line === '' ? undefined : messageSchema.parse(JSON.parse(line))));
    expect(first?.answers[0]?.kind).toBe('told');
    const whole = await run(['--json', '--database', 'other.db'], 'show rear ride frequency\nhistory\n');
    const [, expected] = whole.out.split('\n').map((line) => (line === '' ? undefined : messageSchema.parse(JSON.parse(line))));
    expect(second?.answers[0]?.rows.length).toBe(expected?.answers[0]?.rows.length);
  });
});

describe('on a homeserver', () => {
  let server: Server | undefined;
  afterEach(() => {
    server?.close();
    server?.closeAllConnections();
  });
  async function homeserver(answer: (path: string) => { readonly status: number; readonly body: unknown } | undefined): Promise<string> {
    server = createServer((request, response) => {
      const it = answer(request.url ?? '');
      // Left hanging, as a long poll is.
      if (it === undefined) return;
      response.writeHead(it.status, { 'content-type': 'application/json' }).end(JSON.stringify(it.body));
    });
    await new Promise<void>((resolve) => server?.listen(0, '127.0.0.1', resolve));
    const address = server.address();
    return typeof address === 'object' && address !== null ? `http://127.0.0.1:${address.port}` : '';
  }
  const token = 'a-token-that-is-secret';
  test('that does not take its token: one line, code 4, and the token nowhere', async () => {
    const url = await homeserver(() => ({ status: 401, body: { errcode: 'M_UNKNOWN_TOKEN', error: 'no' } }));
    const file = settingsFile({ homeserver: url, accessToken: token, inviteServers: ['example.org'], logLevel: 'error' });
    const { code, err, out } = await run(['--settings', file]);
    expect({ code, out }).toEqual({ code: 4, out: '' });
    expect(err).toContain('does not accept the access token');
    expect(err).not.toContain(token);
  });
  test('it logs lines of JSON, says how it is on its port, and ends by SIGTERM', async () => {
    const url = await homeserver((path) => {
      if (path.includes('whoami')) return { status: 200, body: { user_id: '@stubaxle:example.org', device_id: 'D' } };
      if (path.includes('/sync') && !path.includes('since=')) return { status: 200, body: { next_batch: 's1' } };
      if (path.includes('/sync')) return undefined;
      return { status: 404, body: { errcode: 'M_NOT_FOUND', error: 'no' } };
    });
    const port = 20_000 + (process.pid % 20_000);
    const file = settingsFile({
      homeserver: url,
      accessToken: token,
      inviteServers: ['example.org'],
      healthPort: port,
      database: 'club.db',
    });
    const { child, ended, err } = start(['--settings', file]);
    await until(() => err().includes('"ready"'), 'the line that it is ready');
    const health = await fetch(`http://127.0.0.1:${port}/health`);
    expect(health.status).toBe(200);
    expect(await health.json()).toMatchObject({ well: true, line: expect.stringContaining('@stubaxle:example.org is running') });
    child.kill('SIGTERM');
    const { code, err: all } = await ended;
    expect(code).toBe(0);
    for (const line of all.trim().split('\n')) expect(() => JSON.parse(line)).not.toThrow();
    expect(all).not.toContain(token);
    lockDatabase(join(folder, 'club.db')).release();
  });
});

test('what of the bot is well: a sync that is missing for two minutes is not, nor a bot that stopped', () => {
  const health = {
    state: 'running',
    account: '@b:x',
    lastSync: 100_000,
    failedSyncs: 0,
    toHandle: 1,
    toSend: 2,
    refused: 3,
    encryption: '',
    problem: undefined,
  } as const;
  const wellOf = (now: number, parts: Partial<Parameters<typeof healthParts>[2]> = {}): boolean =>
    healthParts(now, 0, { ...health, ...parts }).every((p) => p.well);
  expect(wellOf(110_000)).toBe(true);
  expect(wellOf(230_000)).toBe(false);
  expect(wellOf(130_000, { lastSync: undefined })).toBe(false);
  expect(wellOf(110_000, { state: 'stopped', problem: 'the token is not accepted' })).toBe(false);
  expect(healthParts(110_000, 0, { ...health, failedSyncs: 2 }).map((p) => p.says)).toEqual([
    '@b:x is running',
    'last sync 10 s ago, 2 failed since',
    '1 to answer',
    '2 to send',
    '3 refused by the homeserver',
  ]);
});
