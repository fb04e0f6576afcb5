import { createServer, type Server } from 'node:http';
import { createRequire } from 'node:module';
import { afterEach, describe, expect, it } from 'vitest';
import { openWire } from '../../bot/matrix/client.js';
import { MatrixRefused, type MatrixSettings, type RunningMatrix, startMatrix } from '../../bot/matrix/start.js';
import { readRetryAfter, type Wire, WireFailure } from '../../bot/matrix/wire.js';
import { openDatabase } from '../../bot/records/database.js';
import { littleDispatch, littleRender, quiet } from '../simulation/bot.js';
import { FakeHomeserver, me } from '../simulation/homeserver.js';
import { paddock, robin } from './club.js';

const settings: MatrixSettings = {
  homeserver: 'http://127.0.0.1:1',
  accessToken: 'token',
  prefix: '!',
  inviteUsers: [],
  inviteServers: ['lane.test'],
};
const after: (() => unknown)[] = [];
afterEach(async () => {
  for (const end of after.splice(0).reverse()) await end();
});
/** A long poll that ends at once would keep the test's processor busy. */
const unhurried = (wire: Wire): Wire => ({
  ...wire,
  request: async (method, path, call) => {
    if (path.endsWith('/sync')) await new Promise((resolve) => setTimeout(resolve, 5));
    return wire.request(method, path, call);
  },
});
async function until(holds: () => boolean): Promise<void> {
  for (let k = 0; k < 400; k++) {
    if (holds()) return;
    await new Promise((resolve) => setTimeout(resolve, 5));
  }
  throw new Error('it never came to that');
}
function world(): { server: FakeHomeserver; store: ReturnType<typeof openDatabase>; start: (wire?: Wire) => Promise<RunningMatrix> } {
  const server = new FakeHomeserver();
  const store = openDatabase(':memory:');
  after.push(() => store.close());
  return {
    server,
    store,
    async start(wire = server.wire('D1')) {
      const bot = await startMatrix(
        settings,
        store,
        littleDispatch(() => undefined),
        littleRender,
        quiet,
        { connect: async () => unhurried(wire) },
      );
      after.push(() => bot.stop());
      return bot;
    },
  };
}

describe('the bot, started on a homeserver', () => {
  it('comes in, answers, tells how it is, and stops', async () => {
    const { server, start } = world();
    const bot = await start();
    await until(() => bot.health().lastSync !== undefined);
    server.makeRoom(paddock, robin);
    server.invite(paddock, robin);
    await until(() => server.said(paddock).length === 1);
    const event = server.say(paddock, robin, '!show a');
    await until(() => server.repliesTo(paddock, event).length === 1);
    await until(() => bot.health().toSend === 0);
    expect(bot.health()).toMatchObject({
      state: 'running',
      account: me,
      failedSyncs: 0,
      toHandle: 0,
      toSend: 0,
      refused: 0,
      problem: undefined,
    });
    expect(bot.health().encryption).toMatch(/^Encrypted rooms can't be served: /);
    await bot.stop();
    const late = server.say(paddock, robin, '!show b');
    await new Promise((resolve) => setTimeout(resolve, 50));
    expect(server.repliesTo(paddock, late)).toEqual([]);
  });
  it('first answers what waited when it was stopped', async () => {
    const { server, start } = world();
    const first = await start();
    await until(() => first.health().lastSync !== undefined);
    server.makeRoom(paddock, robin);
    server.invite(paddock, robin);
    await until(() => server.said(paddock).length === 1);
    await first.stop();
    const event = server.say(paddock, robin, '!show a');
    await start();
    await until(() => server.repliesTo(paddock, event).length === 1);
  });
  it('ends by itself, with the reason, when its token is not accepted any more', async () => {
    const { server, start } = world();
    const bot = await start();
    await until(() => bot.health().lastSync !== undefined);
    server.tokenIsGood = false;
    expect(await bot.ended).toBe('the homeserver does not accept the access token any more (401 M_UNKNOWN_TOKEN)');
    expect(bot.health().state).toBe('stopped');
  });
  it('does not start with a token that is not accepted, or on the database of another account', async () => {
    const { server, store, start } = world();
    server.tokenIsGood = false;
    await expect(start()).rejects.toThrow(MatrixRefused);
    server.tokenIsGood = true;
    store.database.prepare("INSERT INTO meta (key, value) VALUES ('account', '@other:lane.test')").run();
    await expect(start()).rejects.toThrow(/^This database belongs to @other:lane\.test/);
  });
  it('waits for a homeserver that does not answer yet, and stops waiting when it is told to', async () => {
    const { server, store } = world();
    server.faults = { ...server.faults, before: 1 };
    const stopping = new AbortController();
    const starting = startMatrix(
      settings,
      store,
      littleDispatch(() => undefined),
      littleRender,
      quiet,
      { connect: async () => server.wire('D1'), signal: stopping.signal },
    );
    setTimeout(() => stopping.abort(), 20);
    await expect(starting).rejects.toThrow('Stopped before the homeserver answered.');
  });
});

describe('the SDK', () => {
  it('loads whole without a native encryption module, whose place says so to whoever asks it for something', async () => {
    expect(typeof (await import('matrix-bot-sdk')).MatrixClient).toBe('function');
    const inItsPlace: unknown = createRequire(import.meta.url)('@matrix-org/matrix-sdk-crypto-nodejs');
    expect(() => Reflect.get(Object(inItsPlace), 'OlmMachine')).toThrow('encryption (OlmMachine) is not part of this bot');
  });
});

describe('the wire', () => {
  async function answering(status: number, headers: Record<string, string>, body: string): Promise<Wire> {
    const server: Server = createServer((request, response) => {
      if (request.url === '/hang') return;
      response.writeHead(status, headers);
      response.end(
        request.url === '/echo' ? JSON.stringify({ method: request.method, authorization: request.headers.authorization }) : body,
      );
    });
    await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
    after.push(() => {
      server.closeAllConnections();
      server.close();
    });
    const address = server.address();
    return openWire(`http://127.0.0.1:${typeof address === 'object' ? address?.port : ''}`, 'sesame');
  }
  const failure = (asked: Promise<unknown>): Promise<unknown> =>
    asked.then(
      () => undefined,
      (problem: unknown) => problem,
    );
  it('asks with the token and gives the answer', async () => {
    const wire = await answering(200, { 'content-type': 'application/json' }, '{}');
    expect(await wire.request('PUT', '/echo', { body: { a: 1 } })).toEqual({ method: 'PUT', authorization: 'Bearer sesame' });
  });
  it.each([
    { headers: {}, body: '{"errcode":"M_LIMIT_EXCEEDED","error":"slow","retry_after_ms":1500}', wait: 1500 },
    { headers: { 'retry-after': '7' }, body: '{"errcode":"M_LIMIT_EXCEEDED","error":"slow"}', wait: 7000 },
    { headers: { 'retry-after': '2' }, body: '{"errcode":"M_LIMIT_EXCEEDED","error":"slow","retry_after_ms":3000}', wait: 3000 },
    { headers: {}, body: '<html>busy</html>', wait: undefined },
  ])('reads how long to wait from body and header: $wait', async ({ headers, body, wait }) => {
    const problem = await failure((await answering(429, headers, body)).request('GET', '/x'));
    expect(problem).toBeInstanceOf(WireFailure);
    expect(problem).toMatchObject({ status: 429, retryAfter_ms: wait, passing: true });
  });
  it('tells passing failures from refusals', async () => {
    for (const [status, passing] of [
      [400, false],
      [401, false],
      [403, false],
      [404, false],
      [413, false],
      [408, true],
      [500, true],
      [502, true],
      [504, true],
    ] as const)
      expect(await failure((await answering(status, {}, '{"errcode":"M_X","error":"x"}')).request('GET', '/x'))).toMatchObject({
        status,
        code: 'M_X',
        passing,
      });
  });
  it('fails as not reached where nobody answers, and when it is closed', async () => {
    const nobody = await openWire('http://127.0.0.1:1', 'sesame');
    expect(await failure(nobody.request('GET', '/x'))).toMatchObject({ name: 'WireFailure', status: undefined, passing: true });
    const wire = await answering(200, {}, '{}');
    wire.close();
    expect(await failure(wire.request('GET', '/x'))).toMatchObject({ name: 'WireFailure', status: undefined });
  });
  it('reads the header in seconds or as a date (RFC 9110, 10.2.3)', () => {
    expect(readRetryAfter('120', 0)).toBe(120_000);
    // The date of the RFC's own example.
    expect(readRetryAfter('Fri, 31 Dec 1999 23:59:59 GMT', Date.UTC(1999, 11, 31, 23, 59, 0))).toBe(59_000);
    expect([readRetryAfter(undefined, 0), readRetryAfter('soon', 0)]).toEqual([undefined, undefined]);
  });
});
