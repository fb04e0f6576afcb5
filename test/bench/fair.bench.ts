/** Whether one member's dear lines stop the others: what another waits for an everyday answer meanwhile, and for how long the process is held. */
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { monitorEventLoopDelay } from 'node:perf_hooks';
import { setTimeout as pause } from 'node:timers/promises';
import { enter } from '../../bot/console/session.js';
import { consoleWorld } from '../../bot/console/world.js';
import { demoMessages, seedDemo } from '../../bot/demo.js';
import { createLog } from '../../bot/log.js';
import { openDatabase } from '../../bot/records/database.js';
import { receive } from '../../bot/records/inbox.js';
import { createServices } from '../../bot/services.js';
import { Work } from '../../bot/work.js';
import { BotProcess } from '../homeserver/bot.js';
import { Member } from '../homeserver/member.js';
import { Synapse } from '../homeserver/synapse.js';
import { quantile } from './statistics.js';

const dearLines = 60;
const dear = 'compare turnip with moth';

export interface FairWait {
  /** The other member's p95 while the dear lines are worked out, over half a second more than one and a half times their p95 otherwise. */
  readonly fairWaitRatio: number;
  readonly details: Readonly<Record<'quietP95' | 'busyP95' | 'busyAnswers', number>>;
}
/** On a homeserver whose limits are lifted: robin floods the paddock, sam asks there one question after another. */
export async function measureFairWait(quietQuestions: number): Promise<FairWait> {
  const dir = await mkdtemp(join(tmpdir(), 'stubaxle-bench-'));
  const server = await Synapse.start({ dir: join(dir, 'homeserver') });
  const robin = await Member.join(server, await server.register('robin'));
  const sam = await Member.join(server, await server.register('sam'));
  const bot = await BotProcess.prepare(server, await server.register('stubaxle'), join(dir, 'bot'));
  try {
    await bot.start();
    const room = await robin.makeRoom({ name: 'paddock' });
    await sam.client.joinRoom(room);
    await robin.client.invite(room, bot.id);
    await robin.hear((h) => h.sender === bot.id && h.type === 'm.room.message', 'the welcome');
    for (const { lines } of demoMessages.filter(({ lines: [first] }) => first?.startsWith('save my car')))
      await robin.ask(room, `!${lines.join('\n')}`, bot.id);
    let n = 0;
    const asked = async (): Promise<number> => {
      const from = performance.now();
      await sam.reply(await sam.say(room, `!gear ${5000 + ++n}rpm 2nd 1.93 final 3.73 245/40R17`), bot.id, 120_000);
      return performance.now() - from;
    };
    const quiet: number[] = [];
    for (let k = -5; k < quietQuestions; k++) {
      const time = await asked();
      if (k >= 0) quiet.push(time);
    }
    await robin.ask(room, `!${dear}`, bot.id);
    const flood: string[] = [];
    const busy: number[] = [];
    let going = true;
    const flooding = (async () => {
      for (let k = 0; k < dearLines; k++) flood.push(await robin.say(room, `!${dear}`));
      for (const event of flood) await robin.reply(event, bot.id, 120_000);
      going = false;
    })();
    while (flood.length < 3) await asked();
    while (going) busy.push(await asked());
    await flooding;
    const details = { quietP95: quantile(quiet, 0.95), busyP95: quantile(busy, 0.95), busyAnswers: busy.length };
    return { fairWaitRatio: details.busyP95 / (1.5 * details.quietP95 + 500), details };
  } finally {
    robin.stop();
    sam.stop();
    await bot.end();
    await server.down();
    await rm(dir, { recursive: true, force: true });
  }
}

/** Milliseconds: the longest that the event loop had to wait while the same lines were handled in this process. */
export async function measureHeld(): Promise<{ readonly heldMs: number }> {
  const dir = await mkdtemp(join(tmpdir(), 'stubaxle-bench-'));
  const store = openDatabase(join(dir, 'stubaxle.db'));
  const log = createLog({ level: 'error' });
  const services = createServices(log);
  try {
    const world = consoleWorld(store, services, log, '!');
    const work = new Work(world);
    await seedDemo(world, work, (member) => enter(world, member));
    await work.ask({ member: 'robin', room: 'club', text: `!${dear}` });
    for (let k = 0; k < dearLines; k++) {
      const content = JSON.stringify({ msgtype: 'm.text', body: `!${dear}` });
      receive(store, { event: `dear:${k}`, room: 'club', sender: 'robin', kind: 'message', content, at: k });
    }
    const delay = monitorEventLoopDelay({ resolution: 5 });
    delay.enable();
    await pause(50);
    await work.run();
    // What was late is counted when the loop turns again.
    await pause(50);
    delay.disable();
    const answered = store.database.prepare<[], { n: number }>(
      "SELECT count(*) AS n FROM inbox WHERE event LIKE 'dear:%' AND state = 'answered'",
    );
    if (answered.get()?.n !== dearLines) throw new Error('the dear lines were not answered: nothing was measured');
    return { heldMs: delay.max / 1e6 };
  } finally {
    await services.close();
    store.close();
    await rm(dir, { recursive: true, force: true });
  }
}
