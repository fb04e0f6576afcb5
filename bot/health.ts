/** How the bot is: one line for people, and an answer for a monitor on the same machine. */
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';

export interface HealthPart {
  /** A word or two: `sync`, `inbox`, `database`. */
  readonly part: string;
  readonly well: boolean;
  /** `last sync 2 s ago`. No text of members. */
  readonly says: string;
}
export interface Health {
  readonly well: boolean;
  readonly line: string;
  readonly parts: readonly HealthPart[];
}

/** `3 d 4 h`, `2 min 5 s`: the two largest units of a time in milliseconds. */
export function duration(ms: number): string {
  const seconds = Math.max(0, Math.floor(ms / 1000));
  const parts: (readonly [number, string])[] = [
    [Math.floor(seconds / 86_400), 'd'],
    [Math.floor(seconds / 3600) % 24, 'h'],
    [Math.floor(seconds / 60) % 60, 'min'],
    [seconds % 60, 's'],
  ];
  const first = parts.findIndex(([n]) => n > 0);
  if (first < 0) return '0 s';
  return parts
    .slice(first, first + 2)
    .filter(([n]) => n > 0)
    .map(([n, unit]) => `${n} ${unit}`)
    .join(' ');
}
/** All parts in one line, what is not well first. */
export function healthOf(parts: readonly HealthPart[], upFor_ms: number): Health {
  const well = parts.every((p) => p.well);
  const ordered = [...parts].sort((a, b) => Number(a.well) - Number(b.well));
  return { well, line: `${well ? 'well' : 'not well'}: ${[...ordered.map((p) => p.says), `up ${duration(upFor_ms)}`].join(', ')}`, parts };
}

export interface HealthServer {
  readonly port: number;
  close(): Promise<void>;
}
/**
 * Answers `GET /health` on 127.0.0.1 and nothing anywhere else: 200 or 503, as JSON `{well, line, parts}`. Reachable from this machine only, and
 * only under a name of this machine, so that no web page can read it through a name of its own.
 * @throws what listening throws: the port is taken (`EADDRINUSE`).
 */
export async function serveHealth(port: number, health: () => Health): Promise<HealthServer> {
  const server = createServer((request, response) => {
    const host = (request.headers.host ?? '').replace(/:\d+$/, '');
    const answer = (status: number, body: object): void => {
      response.writeHead(status, { 'content-type': 'application/json', 'cache-control': 'no-store' });
      response.end(`${JSON.stringify(body)}\n`);
    };
    if (!['127.0.0.1', 'localhost'].includes(host)) return answer(403, { error: 'ask 127.0.0.1' });
    if (request.url !== '/health') return answer(404, { error: 'there is only /health' });
    if (request.method !== 'GET' && request.method !== 'HEAD') return answer(405, { error: 'GET only' });
    const now = health();
    answer(now.well ? 200 : 503, now);
  });
  server.requestTimeout = 5000;
  server.maxConnections = 16;
  await new Promise<void>((resolve, reject) => {
    server.once('error', reject);
    server.listen(port, '127.0.0.1', () => {
      server.off('error', reject);
      resolve();
    });
  });
  const address: AddressInfo | string | null = server.address();
  if (address === null || typeof address === 'string') throw new Error('the health port has no number');
  return {
    port: address.port,
    close: () =>
      new Promise((resolve) => {
        server.close(() => resolve());
        server.closeAllConnections();
      }),
  };
}
