/** The bot on a homeserver: everything of this folder put together, started, stopped, and asked how it is. */

import { setTimeout as pause } from 'node:timers/promises';
import { eraseTalksBefore } from '../records/conversation.js';
import type { Store } from '../records/database.js';
import { countIncoming, eraseIncomingBefore } from '../records/inbox.js';
import { recall, remember } from '../records/meta.js';
import { countOutgoing, countRefused, eraseOutgoingBefore, hurry, silenceRoom } from '../records/outbox.js';
import { markEncrypted } from '../records/rooms.js';
import { mayInvite } from '../settings.js';
import { sayOnce } from '../work/replies.js';
import type { Dispatch, Log, Render, World } from '../work/world.js';
import { Work } from '../work.js';
import { openWire } from './client.js';
import { encryption } from './encryption.js';
import { Homeserver } from './homeserver.js';
import { Intake } from './intake.js';
import { backOff } from './pace.js';
import { Pump } from './pump.js';
import { Sender } from './send.js';
import { SyncLoop } from './sync.js';
import { type Wire, WireFailure } from './wire.js';

export interface MatrixSettings {
  /** Its base address: `https://example.org`. */
  readonly homeserver: string;
  readonly accessToken: string;
  readonly prefix: string;
  /** Members who may invite the bot, by id (`@robin:example.org`). */
  readonly inviteUsers: readonly string[];
  /** Homeservers all of whose members may. */
  readonly inviteServers: readonly string[];
  /** How long messages and replies are kept as text: 30 days when it is not said. */
  readonly keepTexts_days?: number;
}
export interface MatrixHealth {
  /** `stopped`: by itself, for the reason in `problem`. */
  readonly state: 'running' | 'stopped';
  readonly account: string;
  /** Milliseconds since 1970; undefined before the first. */
  readonly lastSync: number | undefined;
  /** Syncs that have failed since. */
  readonly failedSyncs: number;
  /** Rows that wait to be handled, and to be sent. */
  readonly toHandle: number;
  readonly toSend: number;
  /** Messages that the homeserver has refused, ever. */
  readonly refused: number;
  /** Why encrypted rooms can't be served. */
  readonly encryption: string;
  readonly problem: string | undefined;
}
export interface RunningMatrix {
  /** Ends what is under way, starts nothing more, and lets go of the homeserver. The store stays open. */
  stop(): Promise<void>;
  health(): MatrixHealth;
  /** Resolves when the bot stopped by itself (its access token is not accepted any more), with the reason. */
  readonly ended: Promise<string>;
}
/** The bot cannot start as it is set up; the message is one sentence for whoever runs it. */
export class MatrixRefused extends Error {
  override readonly name = 'MatrixRefused';
}
export interface StartOptions {
  readonly now?: () => number;
  readonly connect?: (settings: MatrixSettings) => Promise<Wire>;
  /** As the world's. */
  readonly warm?: () => Promise<void>;
  /** Gives up waiting for a homeserver that does not answer when the bot starts. */
  readonly signal?: AbortSignal;
}
const dayMs = 86_400_000;

/**
 * Connects, and returns once the account is known; a homeserver that does not answer is waited for.
 * @throws MatrixRefused when it is told to stop before, and for an access token that is not accepted, or a database of another account.
 */
export async function startMatrix(
  settings: MatrixSettings,
  store: Store,
  dispatch: Dispatch,
  render: Render,
  log: Log,
  options: StartOptions = {},
): Promise<RunningMatrix> {
  const { now = Date.now, connect = ({ homeserver, accessToken }) => openWire(homeserver, accessToken), signal, warm } = options;
  const secret = encryption();
  log.info({}, "encrypted rooms can't be served: this version has no encryption yet");
  const wire = await connect(settings);
  const homeserver = new Homeserver(wire);
  const me = await patiently(() => whoIs(homeserver), log, signal).catch((problem: unknown) => {
    wire.close();
    throw problem;
  });
  const known = recall(store, 'account');
  if (known !== undefined && known !== me.id) {
    wire.close();
    throw new MatrixRefused(
      `This database belongs to ${known}, and the access token to ${me.id}; give the bot the database or the token of the other.`,
    );
  }
  remember(store, 'account', me.id);

  let problem: string | undefined;
  let end: (reason: string) => void = () => undefined;
  const ended = new Promise<string>((resolve) => {
    end = resolve;
  });
  const unauthorized = (failure: WireFailure): void => {
    problem ??= `the homeserver does not accept the access token any more (${failure.brief})`;
    log.error({ err: failure }, 'the homeserver does not accept the access token any more');
    void stop().then(() => end(problem ?? ''));
  };
  const world: World = {
    ...{ store, dispatch, render, log, now, prefix: settings.prefix, mayInvite: mayInvite(settings), delivery: 'queue' },
    ...(warm === undefined ? {} : { warm }),
    me: { id: me.id, name: me.name },
    whyNotEncrypted: secret.sentence,
  };
  const encrypted = (room: string): void =>
    store.transaction(() => {
      markEncrypted(store, room);
      silenceRoom(store, room);
      sayOnce(world, 'encrypted', room, secret.sentence, true);
    });
  const sender = new Sender({ store, homeserver, me: me.id, device: me.device, log, now, encrypted, unauthorized });
  const sending = new Pump({ name: 'sending', run: () => sender.run(), nextDue: () => sender.nextDue(), log, now });
  const work = new Work(world, () => sending.wake());
  const working = new Pump({ name: 'handling', run: () => work.run(), nextDue: () => undefined, log, now });
  const loop = new SyncLoop({
    ...{ intake: new Intake({ store, homeserver, me: me.id, log, now }), log, now, unauthorized },
    synced: (rows, recovered) => {
      if (recovered) hurry(store);
      if (rows > 0) working.wake();
      if (recovered) sending.wake();
    },
  });
  const forgetOld = (): void => {
    const before = now() - (settings.keepTexts_days ?? 30) * dayMs;
    store.transaction(() => {
      eraseIncomingBefore(store, before);
      eraseOutgoingBefore(store, before);
      eraseTalksBefore(store, before);
    });
  };
  forgetOld();
  const daily = setInterval(forgetOld, dayMs / 24);
  let stopping: Promise<void> | undefined;
  const stop = (): Promise<void> => {
    stopping ??= (async () => {
      clearInterval(daily);
      loop.stop();
      working.stop();
      sending.stop();
      // What is being handled or sent is finished first; a message that nobody answers for is not waited for longer than this.
      await Promise.race([Promise.all([work.stop(), sender.stop()]), sleep(5000)]);
      wire.close();
    })();
    return stopping;
  };
  // What an earlier process left undone comes first.
  working.wake();
  sending.wake();
  void loop.run();
  return {
    stop,
    ended,
    health: () => ({
      ...{ state: problem === undefined ? 'running' : 'stopped', account: me.id, lastSync: loop.lastGood, failedSyncs: loop.failures },
      ...{ toHandle: countIncoming(store), toSend: countOutgoing(store), refused: countRefused(store), encryption: secret.why, problem },
    }),
  };
}
const sleep = (ms: number, signal?: AbortSignal): Promise<void> =>
  pause(ms, undefined, signal === undefined ? {} : { signal }).catch(() => undefined);
async function whoIs(homeserver: Homeserver): Promise<{ readonly id: string; readonly name: string | undefined; readonly device: string }> {
  const { user, device } = await homeserver.whoAmI();
  return { id: user, device, name: await homeserver.displayName(user) };
}
async function patiently<T>(ask: () => Promise<T>, log: Log, signal: AbortSignal | undefined): Promise<T> {
  for (let failures = 0; ; failures++) {
    try {
      return await ask();
    } catch (problem) {
      if (!(problem instanceof WireFailure)) throw problem;
      if (problem.unauthorized)
        throw new MatrixRefused(`The homeserver does not accept the access token (${problem.brief}); give the bot a new one.`);
      if (!problem.passing) throw new MatrixRefused(`The homeserver does not answer as one (${problem.brief}); check its address.`);
      log.warn({ err: problem, failures: failures + 1 }, 'the homeserver does not answer yet');
      await sleep(Math.max(backOff(failures, 30_000), problem.retryAfter_ms ?? 0), signal);
      if (signal?.aborted) throw new MatrixRefused('Stopped before the homeserver answered.');
    }
  }
}
