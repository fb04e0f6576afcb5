/**
 * Nothing that a member writes comes into the log, wherever and however it breaks. A canary is written into every kind of thing that can go wrong, by
 * every way that an error can carry words, and looked for in all that was logged.
 */
import { spawn } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import fc from 'fast-check';
import { afterAll, describe, expect, it } from 'vitest';
import { z } from 'zod';
import { Apart, ApartError } from '../../bot/apart.js';
import { errorLine, tellError } from '../../bot/log/error.js';
import { createLog, type Log } from '../../bot/log.js';
import { Homeserver } from '../../bot/matrix/homeserver.js';
import { Intake } from '../../bot/matrix/intake.js';
import { startMatrix } from '../../bot/matrix/start.js';
import { SyncLoop } from '../../bot/matrix/sync.js';
import { type Method, type Wire, WireFailure } from '../../bot/matrix/wire.js';
import { openDatabase, type Store } from '../../bot/records/database.js';
import { receive } from '../../bot/records/inbox.js';
import { recordMembership } from '../../bot/records/memberships.js';
import { enterRoom } from '../../bot/records/rooms.js';
import { createRenderer } from '../../bot/render/renderer.js';
import type { Dispatch, Render, World } from '../../bot/work/world.js';
import { Work } from '../../bot/work.js';
import { answer } from '../../commands/answer.js';
import { dispatch } from '../../commands/dispatch.js';
import { littleDispatch, littleRender } from '../simulation/bot.js';
import { FakeHomeserver, me } from '../simulation/homeserver.js';
import { chat, paddock, robin, sam } from './club.js';

const folder = mkdtempSync(join(tmpdir(), 'stubaxle-log-'));
afterAll(() => rmSync(folder, { recursive: true }));

interface Logged {
  readonly log: Log;
  text(): string;
}
function logging(): Logged {
  let text = '';
  return { log: createLog({ level: 'debug', to: { write: (line) => (text += line) } }), text: () => text };
}
/** Neither the words nor what a serialiser may make of them. */
function hides({ text }: Logged, canary: string): void {
  const all = text();
  expect(all).not.toBe('');
  for (const line of all.trim().split('\n')) expect(() => JSON.parse(line)).not.toThrow();
  for (const form of [canary, JSON.stringify(canary).slice(1, -1), encodeURIComponent(canary), canary.toLowerCase()])
    expect(all.toLowerCase()).not.toContain(form.toLowerCase());
}

/** Words that nothing else of the log holds; some look like the log's own. */
const canaries = fc
  .tuple(
    fc.stringMatching(/^[a-z]{8}$/),
    fc.constantFrom('', ' lb-ft', '"', '\\', '\n    at x (file:///a.js:1:1)', '%s %o', '\u2028', '{"a":1}', '450'),
  )
  .map(([word, tail]) => `canary${word}${tail}`);

class MemberError extends Error {
  readonly body: string;
  constructor(canary: string) {
    super(`unexpected "${canary}"`);
    this.body = canary;
  }
}
/** Every way that we know in which an error carries somebody's words. */
const carriers: readonly ((canary: string) => unknown)[] = [
  (canary) => new Error(canary),
  (canary) => new Error('x', { cause: new Error('y', { cause: new Error(canary) }) }),
  (canary) => new Error('x', { cause: canary }),
  (canary) => new MemberError(canary),
  (canary) => Object.assign(new Error('x'), { name: canary }),
  (canary) => Object.assign(new Error('x'), { code: canary }),
  (canary) => Object.assign(new Error('x'), { status: canary, [canary]: canary }),
  (canary) => Object.assign(new Error(canary), { stack: `Error: x\n    at ${canary} (file:///${canary}.js:1:1)` }),
  (canary) => Object.assign(new Error('x'), { stack: `Error: x\n    at ${canary} (${import.meta.filename}:1:1)` }),
  (canary) => new AggregateError([new Error(canary)], canary),
  (canary) => canary,
  (canary) => ({ message: canary, body: canary }),
  (canary) => {
    try {
      return JSON.parse(`{"a": ${canary}`) as unknown;
    } catch (problem) {
      return problem;
    }
  },
  (canary) => {
    try {
      return new RegExp(`${canary}(`, 'u');
    } catch (problem) {
      return problem;
    }
  },
  (canary) => z.strictObject({ a: z.literal('b') }).safeParse({ a: canary, [canary]: 1 }).error,
  (canary) => new ApartError('broken', { cause: new SyntaxError(canary) }),
  (canary) => new WireFailure(400, canary, undefined, canary),
  (canary) =>
    Object.defineProperty(new Error('x'), 'cause', {
      get: () => {
        throw new Error(canary);
      },
    }),
];
const thrown = fc.tuple(canaries, fc.constantFrom(...carriers)).map(([canary, carry]) => ({ canary, problem: carry(canary) }));
const runs = { numRuns: 60, seed: 20260527 };

describe('a line of the log', () => {
  const lines = (act: (log: Log) => void): Record<string, unknown>[] => {
    const it = logging();
    act(it.log);
    return it
      .text()
      .trim()
      .split('\n')
      .map((line) => z.record(z.string(), z.unknown()).parse(JSON.parse(line)));
  };
  it('holds its sentence, numbers, and texts of known shapes', () => {
    const [line] = lines((log) => log.warn({ room: paddock, status: 403, code: 'M_FORBIDDEN', action: 'send', short: true }, 'refused'));
    expect(line).toMatchObject({
      level: 'warn',
      msg: 'refused',
      room: paddock,
      status: 403,
      code: 'M_FORBIDDEN',
      action: 'send',
      short: true,
    });
  });
  it('holds nothing else, whoever passes it', () => {
    const passed = {
      body: 'said',
      room: 'said so',
      code: 'said',
      nested: { text: 'said' },
      list: ['said'],
      account: '@a:b said',
      reference: 'said',
    };
    const [line] = lines((log) => Reflect.apply(log.info, log, [passed, 'came in']));
    expect(JSON.stringify(line)).not.toContain('said');
    expect(line).toMatchObject({ body: '(not logged)', room: '(not logged)', nested: '(not logged)' });
  });
  it('of an error holds its class, its code and the places of this program', () => {
    const inner = Object.assign(new TypeError('said'), { code: 'SQLITE_FULL', status: 507 });
    const [line] = lines((log) => log.error({ err: new MemberError('said'), task: 'sending' }, 'broke'));
    expect(line).toMatchObject({
      err: { type: 'MemberError', at: expect.arrayContaining([expect.stringMatching(/^test\/bot\/log\.test\.ts:\d+:\d+$/)]) },
    });
    expect(tellError(new Error('x', { cause: inner }))).toMatchObject({
      type: 'Error',
      cause: { type: 'TypeError', code: 'SQLITE_FULL', status: 507 },
    });
    expect(tellError(inner).at?.every((place) => !place.includes('said'))).toBe(true);
  });
  it('a sentence that is put together does not compile', () => {
    const { log } = logging();
    const name: string = 'x';
    // @ts-expect-error -- a text, not a sentence of the code
    log.info({}, name);
    // @ts-expect-error -- nor one with a text in it
    log.info({}, `said ${name}`);
    log.info({}, 'as it stands');
  });
  it('whatever was thrown', () => {
    fc.assert(
      fc.property(thrown, ({ canary, problem }) => {
        const it = logging();
        it.log.error({ err: problem }, 'broke');
        hides(it, canary);
        expect(errorLine(problem).toLowerCase()).not.toContain(canary.toLowerCase());
      }),
      { ...runs, numRuns: 500 },
    );
  });
});

/** A club in memory, its messages handled by the real work over a real store. */
function world(parts: Partial<World>, log: Log): { readonly world: World; readonly store: Store } {
  const store = openDatabase(':memory:');
  store.transaction(() => {
    for (const room of [paddock, chat]) {
      enterRoom(store, room, room === chat);
      for (const member of [robin, sam]) recordMembership(store, room, member, 'join', 'a member');
    }
  });
  const dispatching: Dispatch = littleDispatch(() => undefined);
  return {
    store,
    world: {
      ...{ store, dispatch: dispatching, render: littleRender, log, now: () => 1, prefix: '!', delivery: 'queue', mayInvite: () => true },
      ...{ me: { id: me, name: 'stubaxle' }, whyNotEncrypted: 'no' },
      ...parts,
    },
  };
}
async function handles(parts: Partial<World>, canary: string, before: (store: Store) => void = () => undefined): Promise<Logged> {
  const it = logging();
  const { world: made, store } = world(parts, it.log);
  before(store);
  const work = new Work(made);
  await work
    .ask({ member: robin, room: chat, text: `set ${canary}` })
    .catch((problem: unknown) => it.log.error({ err: problem }, 'the store failed'));
  store.close();
  return it;
}
const fails = (problem: unknown) => async (): Promise<never> => {
  throw problem;
};

describe('a canary that breaks', () => {
  it('a command', async () => {
    await fc.assert(
      fc.asyncProperty(thrown, async ({ canary, problem }) => hides(await handles({ dispatch: fails(problem) }, canary), canary)),
      runs,
    );
  });
  it('the renderer', async () => {
    await fc.assert(
      fc.asyncProperty(thrown, async ({ canary, problem }) => hides(await handles({ render: fails(problem) }, canary), canary)),
      runs,
    );
  });
  it('a picture', async () => {
    await fc.assert(
      fc.asyncProperty(thrown, async ({ canary, problem }) => {
        const it = logging();
        const chart = { title: canary, x: { label: '', unit: '' }, y: { label: '', unit: '' }, series: [], marks: [], words: canary };
        const draw: Render = createRenderer({ draw: fails(new ApartError('broken', { cause: problem })) }, it.log);
        await draw(
          { answers: [answer('told', canary, { chart })], changes: [], read: [], seen: [] },
          { asker: { id: robin, name: canary, preferences: { units: 'us', decimalMark: '.' } }, room: { id: chat, direct: true } },
        );
        hides(it, canary);
      }),
      runs,
    );
  });
  it('the calculator', async () => {
    await fc.assert(
      fc.asyncProperty(thrown, async ({ canary, problem }) => {
        const real: Dispatch = (_, situation) => dispatch('calc 1 + 1', { ...situation, calculator: { calculate: fails(problem) } });
        hides(await handles({ dispatch: real }, canary), canary);
      }),
      { ...runs, numRuns: 20 },
    );
  });
  it('a thread', async () => {
    const file = join(folder, 'thread.mjs');
    writeFileSync(
      file,
      `import { parentPort } from 'node:worker_threads';
       parentPort.on('message', (text) => { throw Object.assign(new SyntaxError('cannot read ' + text, { cause: text }), { code: text, text }); });
       parentPort.postMessage('ready');`,
    );
    await fc.assert(
      fc.asyncProperty(canaries, async (canary) => {
        const apart = new Apart<string, unknown>(
          { file: pathToFileURL(file), deadlineMs: 20_000, idleMs: 1000, heapMb: 32 },
          (reply) => reply,
        );
        const asked: Dispatch = async () => {
          await apart.ask(canary);
          throw new Error('the thread did not break');
        };
        const it = await handles({ dispatch: asked }, canary);
        await apart.close();
        expect(it.text()).toContain('"type":"ApartError"');
        hides(it, canary);
      }),
      { ...runs, numRuns: 5 },
    );
  });
  it('the store', async () => {
    const ways: readonly ((store: Store, canary: string) => void)[] = [
      (store, canary) =>
        store.database.exec(
          `CREATE TRIGGER planted BEFORE INSERT ON outbox BEGIN SELECT RAISE(ABORT, '${canary.replaceAll("'", "''")}'); END`,
        ),
      (store, canary) => {
        store.database.function('says', () => {
          throw new Error(canary);
        });
        store.database.exec('CREATE TRIGGER planted BEFORE INSERT ON revisions BEGIN SELECT says(); END');
      },
      (store, canary) =>
        store.database.exec(`DROP TABLE outbox; CREATE VIEW outbox AS SELECT '${canary.replaceAll("'", "''")}' AS seq FROM members`),
    ];
    await fc.assert(
      fc.asyncProperty(canaries, fc.constantFrom(...ways), async (canary, plant) => {
        const setting: Dispatch = (_, situation) => littleDispatch(() => undefined)('set 5', situation);
        hides(await handles({ dispatch: setting }, canary, (store) => plant(store, canary)), canary);
      }),
      runs,
    );
  });
  it('the handling of a row that cannot be read any more', async () => {
    await fc.assert(
      fc.asyncProperty(canaries, async (canary) => {
        const it = logging();
        const { world: made, store } = world({}, it.log);
        const work = new Work(made);
        receive(store, {
          event: `$${canary}`,
          room: chat,
          sender: '',
          kind: 'state',
          at: 1,
          content: JSON.stringify({ came: canary, events: canary }),
        });
        receive(store, { event: `invite:${canary}`, room: paddock, sender: canary, kind: 'invite', at: 1 });
        await work.run();
        expect(it.text()).toContain('cannot be read');
        receive(store, { event: `$not-json`, room: paddock, sender: '', kind: 'state', at: 1, content: `{${canary}` });
        await work.run().catch((problem: unknown) => it.log.error({ err: problem }, 'handling broke off'));
        expect(it.text()).toContain('SyntaxError');
        hides(it, canary);
        store.close();
      }),
      runs,
    );
  });
  it('the intake', async () => {
    const events = (canary: string): readonly unknown[] => [
      canary,
      { type: canary, content: canary, event_id: canary, sender: canary },
      { type: 'm.room.member', state_key: canary, sender: canary, event_id: '$1', content: { membership: canary, displayname: [canary] } },
      { type: 'm.room.message', sender: robin, event_id: '$2', content: { body: { [canary]: canary }, 'm.relates_to': canary } },
    ];
    const answers: readonly ((canary: string) => unknown)[] = [
      (canary) => canary,
      (canary) => ({ next_batch: [canary], rooms: canary }),
      (canary) => ({ next_batch: 's', rooms: { join: { [paddock]: { timeline: { events: events(canary), limited: canary } } } } }),
      (canary) => ({
        next_batch: 's',
        rooms: { join: { [paddock]: { state: { events: events(canary) }, timeline: { events: events(canary) } } } },
      }),
      (canary) => ({ next_batch: 's', rooms: { invite: { [paddock]: { invite_state: { events: events(canary) } } } } }),
    ];
    await fc.assert(
      fc.asyncProperty(thrown, fc.constantFrom(...answers), async ({ canary, problem }, sync) => {
        const it = logging();
        const store = openDatabase(':memory:');
        const replies = [() => sync(canary), () => Promise.reject(problem), () => sync(canary)];
        const homeserver = new Homeserver({ request: async () => (replies.shift() ?? (() => sync(canary)))(), close: () => undefined });
        const loop: SyncLoop = new SyncLoop({
          ...{
            intake: new Intake({ store, homeserver, me, log: it.log, now: () => 1 }),
            log: it.log,
            now: () => 1,
            unauthorized: () => loop.stop(),
          },
          synced: () => {
            if (replies.length === 0) loop.stop();
          },
        });
        setTimeout(() => loop.stop(), 5);
        await loop.run();
        it.log.info({}, 'ended');
        hides(it, canary);
        store.close();
      }),
      runs,
    );
  });
  it('the sending, and the whole bot that stops for it', async () => {
    const statuses = [400, 401, 403, 404, 413, 429, 500, undefined];
    await fc.assert(
      fc.asyncProperty(canaries, fc.constantFrom(...statuses), async (canary, status) => {
        const it = logging();
        const server = new FakeHomeserver();
        const real = server.wire('D1');
        let failed = 0;
        const wire: Wire = {
          close: () => real.close(),
          request: async (method: Method, path: string, call) => {
            if (method === 'PUT' || method === 'POST') {
              failed++;
              throw new WireFailure(status, status === 413 ? canary : 'M_UNKNOWN', undefined, canary, { cause: new Error(canary) });
            }
            if (path.endsWith('/sync')) await new Promise((resolve) => setTimeout(resolve, 2));
            return real.request(method, path, call);
          },
        };
        const settings = { homeserver: 'http://x', accessToken: canary, prefix: '!', inviteUsers: [], inviteServers: ['lane.test'] };
        const bot = await startMatrix(
          settings,
          openDatabase(':memory:'),
          littleDispatch(() => undefined),
          littleRender,
          it.log,
          { connect: async () => wire },
        );
        server.makeRoom(paddock, robin, sam);
        server.invite(paddock, robin);
        for (let waited = 0; failed === 0 && waited < 500; waited++) await new Promise((resolve) => setTimeout(resolve, 2));
        await new Promise((resolve) => setTimeout(resolve, 5));
        await bot.stop();
        expect(failed).toBeGreaterThan(0);
        expect(JSON.stringify(bot.health())).not.toContain(canary);
        hides(it, canary);
      }),
      { ...runs, numRuns: 24 },
    );
  });
});

it('a program that ends for what nobody foresaw says where, and not what', async () => {
  const planted = join(folder, 'planted.mjs');
  writeFileSync(
    planted,
    `setTimeout(() => { ${'process.env.PLANTED'} === 'rejection' ? Promise.reject(new Error('canary')) : (() => { throw new TypeError('canary'); })(); }, 2500);`,
  );
  for (const kind of ['rejection', 'exception']) {
    const child = spawn(process.execPath, ['--import', planted, join(import.meta.dirname, '../../dist/program/main.js')], {
      cwd: folder,
      env: { PATH: process.env.PATH ?? '', PLANTED: kind },
      stdio: 'pipe',
    });
    let err = '';
    child.stderr.on('data', (data: Buffer) => (err += data.toString()));
    const code = await new Promise((resolve) => child.on('close', resolve));
    expect(code, err).toBe(1);
    expect(err).toContain(kind === 'rejection' ? 'nobody foresaw: Error' : 'nobody foresaw: TypeError');
    expect(err).not.toContain('canary');
  }
});
