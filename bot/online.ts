/** The bot on a homeserver, with its log and its health, until it is told to stop or cannot go on. */
import { duration, type Health, type HealthPart, healthOf, serveHealth } from './health.js';
import { createLog } from './log.js';
import { openWire } from './matrix/client.js';
import { type MatrixHealth, startMatrix } from './matrix/start.js';
import type { Store } from './records/database.js';
import { createServices } from './services.js';
import type { Settings } from './settings.js';

/** A long poll lasts half a minute; a sync that is older than this is missing. */
const syncMissing_ms = 120_000;
const healthEvery_ms = 3_600_000;

/** The parts of the health line, of what the bot knows of itself. */
export function healthParts(now: number, startedAt: number, health: MatrixHealth): readonly HealthPart[] {
  const { state, lastSync, failedSyncs, toHandle, toSend, refused, problem } = health;
  const since = now - (lastSync ?? startedAt);
  const sync = lastSync === undefined ? `no sync yet after ${duration(since)}` : `last sync ${duration(since)} ago`;
  return [
    { part: 'bot', well: state === 'running', says: problem ?? `${health.account} is running` },
    { part: 'sync', well: since < syncMissing_ms, says: failedSyncs > 0 ? `${sync}, ${failedSyncs} failed since` : sync },
    { part: 'inbox', well: true, says: `${toHandle} to answer` },
    { part: 'outbox', well: true, says: `${toSend} to send` },
    { part: 'refusals', well: true, says: `${refused} refused by the homeserver` },
  ];
}

/** @returns the exit code: 0 when told to stop, 4 when the homeserver does not let the bot in any more. @throws MatrixRefused; what the health port throws */
export async function runOnHomeserver(
  settings: Settings & { readonly homeserver: string; readonly accessToken: string },
  store: Store,
  signal: AbortSignal,
): Promise<number> {
  const log = createLog({ level: settings.logLevel });
  const startedAt = Date.now();
  const services = createServices(log);
  // A failure comes up again with the first line.
  const warm = (): Promise<void> => services.warm().catch(() => undefined);
  try {
    const bot = await startMatrix(
      {
        homeserver: settings.homeserver,
        accessToken: settings.accessToken,
        prefix: settings.prefix,
        inviteUsers: settings.inviteUsers,
        inviteServers: settings.inviteServers,
        keepTexts_days: settings.keepTextsDays,
      },
      store,
      services.dispatch,
      services.render,
      log,
      {
        signal,
        warm,
        connect: async ({ homeserver, accessToken }) => {
          const wire = await openWire(homeserver, accessToken);
          // While the homeserver works on the first request.
          setTimeout(() => void warm(), 1);
          return wire;
        },
      },
    );
    try {
      const health = (): Health => healthOf(healthParts(Date.now(), startedAt, bot.health()), Date.now() - startedAt);
      const server = settings.healthPort === undefined ? undefined : await serveHealth(settings.healthPort, health);
      const logHealth = (): void => {
        const now = Date.now();
        const { lastSync, failedSyncs: failures, toHandle, toSend, refused } = bot.health();
        const fields = { up_ms: now - startedAt, sinceSync_ms: now - (lastSync ?? startedAt), failures, toHandle, toSend, refused };
        if (health().well) log.info(fields, 'all is well');
        else log.warn(fields, 'not all is well');
      };
      const hourly = setInterval(logHealth, healthEvery_ms);
      log.info({ account: bot.health().account }, 'ready');
      try {
        const why = await Promise.race([bot.ended, stopped(signal)]);
        log.info({}, why === undefined ? 'stopping' : 'stopped by itself');
        return why === undefined ? 0 : 4;
      } finally {
        clearInterval(hourly);
        await server?.close();
      }
    } finally {
      await bot.stop();
    }
  } finally {
    await services.close();
  }
}
const stopped = (signal: AbortSignal): Promise<undefined> =>
  new Promise((resolve) => {
    if (signal.aborted) resolve(undefined);
    else signal.addEventListener('abort', () => resolve(undefined), { once: true });
  });
