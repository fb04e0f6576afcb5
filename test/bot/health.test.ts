import { request } from 'node:http';
import { afterEach, expect, test } from 'vitest';
import { duration, type HealthServer, healthOf, serveHealth } from '../../bot/health.js';

let server: HealthServer | undefined;
afterEach(async () => {
  await server?.close();
  server = undefined;
});
const ask = (
  path: string,
  { method = 'GET', host = '127.0.0.1', from = '127.0.0.1' } = {},
): Promise<{ status: number | undefined; body: string }> =>
  new Promise((resolve, reject) => {
    const asked = request({ host: from, port: server?.port, path, method, headers: { host }, agent: false }, (response) => {
      let body = '';
      response.on('data', (d: Buffer) => (body += d.toString()));
      response.on('end', () => resolve({ status: response.statusCode, body }));
    });
    asked.on('error', reject);
    asked.end();
  });

test('a line says what is not well first', () => {
  const parts = [
    { part: 'inbox', well: true, says: '0 waiting' },
    { part: 'sync', well: false, says: 'no sync for 4 min' },
  ];
  expect(healthOf(parts, 3_725_000)).toEqual({ well: false, line: 'not well: no sync for 4 min, 0 waiting, up 1 h 2 min', parts });
  expect(healthOf(parts.slice(0, 1), 1000).line).toBe('well: 0 waiting, up 1 s');
});
test('times in their two largest units', () => {
  expect([0, 59_000, 60_000, 3_600_000, 90_061_000].map(duration)).toEqual(['0 s', '59 s', '1 min', '1 h', '1 d 1 h']);
});
test('200 when well, 503 when not, as JSON', async () => {
  let well = true;
  server = await serveHealth(0, () => healthOf([{ part: 'sync', well, says: 'says' }], 0));
  expect(await ask('/health')).toMatchObject({ status: 200, body: expect.stringContaining('"well":true') });
  well = false;
  expect(await ask('/health')).toMatchObject({ status: 503, body: expect.stringContaining('not well: says') });
});
test('nothing else, in no other way, under no other name', async () => {
  server = await serveHealth(0, () => healthOf([], 0));
  expect((await ask('/')).status).toBe(404);
  expect((await ask('/health', { method: 'POST' })).status).toBe(405);
  expect((await ask('/health', { host: 'bot.example.org' })).status).toBe(403);
  expect((await ask('/health', { host: 'localhost:1' })).status).toBe(200);
  await expect(ask('/health', { from: '127.0.0.2' })).rejects.toThrow('ECONNREFUSED');
});
test('a port that is taken is an error for whoever starts it', async () => {
  server = await serveHealth(0, () => healthOf([], 0));
  await expect(serveHealth(server.port, () => healthOf([], 0))).rejects.toMatchObject({ code: 'EADDRINUSE' });
});
