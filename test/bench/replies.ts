/** Stubaxle against a bare echo bot, on the same SDK, the same homeserver and in the same minutes: time to reply, time to start, memory. */
import { type ChildProcess, spawn } from 'node:child_process';
import { mkdtemp, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { BotProcess } from '../homeserver/bot.js';
import { Member } from '../homeserver/member.js';
import { type Account, Synapse } from '../homeserver/synapse.js';
import { median, quantile } from './statistics.js';

export interface ReplyRatios {
  readonly replyRatioP50: number;
  readonly replyRatioP95: number;
  readonly coldStartRatio: number;
  readonly memoryRatio: number;
  readonly details: Readonly<Record<string, number>>;
}
/** A bot under measurement: how to start it, and a room in which it answers. */
interface Contender {
  readonly account: Account;
  readonly room: string;
  start(): Promise<ChildProcess>;
  question(n: number): string;
}
const stop = (child: ChildProcess): Promise<void> =>
  new Promise((resolve) => {
    child.once('exit', () => resolve());
    child.kill('SIGTERM');
  });

/** Resident memory in bytes, as the kernel counts it. */
async function residentMemory(child: ChildProcess): Promise<number> {
  const status = await readFile(`/proc/${child.pid}/status`, 'utf8');
  const found = /^VmRSS:\s+(\d+) kB/m.exec(status);
  if (!found) throw new Error('no resident memory in the process status');
  return Number(found[1]) * 1024;
}

export async function measureReplies(options: {
  readonly rounds: number;
  readonly questions: number;
  readonly starts: number;
}): Promise<ReplyRatios> {
  const dir = await mkdtemp(join(tmpdir(), 'stubaxle-bench-'));
  const server = await Synapse.start({ dir: join(dir, 'homeserver') });
  const member = await Member.join(server, await server.register('robin'));
  const children = new Set<ChildProcess>();
  try {
    const contenders = { bot: await stubaxle(server, dir), echo: await echo(server, dir) } as const;
    for (const contender of Object.values(contenders)) {
      // The first start joins the room and stores where it stands; every later one answers what was said meanwhile.
      const child = await contender.start();
      children.add(child);
      await member.client.invite(contender.room, contender.account.userId);
      await member.hear(
        (h) => h.sender === contender.account.userId && h.type === 'm.room.member' && h.content.membership === 'join',
        'the bot join',
      );
      await member.ask(contender.room, contender.question(0), contender.account.userId);
      await stop(child);
      children.delete(child);
    }
    const times = { bot: [] as number[], echo: [] as number[] };
    const starts = { bot: [] as number[], echo: [] as number[] };
    const memory = { bot: [] as number[], echo: [] as number[] };
    let n = 0;
    for (let round = 0; round < Math.max(options.starts, options.rounds); round++) {
      // The order alternates, so that neither always runs on the warmer machine.
      for (const who of round % 2 === 0 ? (['bot', 'echo'] as const) : (['echo', 'bot'] as const)) {
        const { account, room, start, question } = contenders[who];
        const asked = await member.say(room, question(++n));
        const began = performance.now();
        const child = await start();
        children.add(child);
        await member.reply(asked, account.userId);
        starts[who].push(performance.now() - began);
        memory[who].push(await residentMemory(child));
        if (round < options.rounds)
          for (let k = 0; k < options.questions; k++) {
            const from = performance.now();
            await member.ask(room, question(++n), account.userId);
            if (k >= 5) times[who].push(performance.now() - from);
          }
        await stop(child);
        children.delete(child);
      }
    }
    const details = {
      botP50: median(times.bot),
      echoP50: median(times.echo),
      botP95: quantile(times.bot, 0.95),
      echoP95: quantile(times.echo, 0.95),
      botStart: median(starts.bot),
      echoStart: median(starts.echo),
      botMemory: median(memory.bot),
      echoMemory: median(memory.echo),
    };
    return {
      replyRatioP50: details.botP50 / details.echoP50,
      replyRatioP95: details.botP95 / details.echoP95,
      coldStartRatio: details.botStart / details.echoStart,
      memoryRatio: details.botMemory / details.echoMemory,
      details,
    };
  } finally {
    for (const child of children) await stop(child);
    member.stop();
    await server.down();
    await rm(dir, { recursive: true, force: true });
  }

  async function stubaxle(server: Synapse, dir: string): Promise<Contender> {
    const account = await server.register('stubaxle');
    const room = await member.makeRoom({ name: 'paddock' });
    const bot = await BotProcess.prepare(server, account, join(dir, 'bot'));
    // Questions that the core computes: a bare reading of the line would flatter the bot.
    return { account, room, start: () => bot.start(), question: (n) => `!gear ${5000 + n}rpm 2nd 1.93 final 3.73 245/40R17` };
  }
  async function echo(server: Synapse, dir: string): Promise<Contender> {
    const account = await server.register('echo');
    const room = await member.makeRoom({ name: 'yard' });
    const { accessToken } = await server.login(account);
    const program = join(import.meta.dirname, 'echo.js');
    const start = async () => spawn(process.execPath, [program, server.url, accessToken, join(dir, 'echo.json')], { stdio: 'ignore' });
    return { account, room, start, question: (n) => `!gear ${5000 + n}rpm 2nd 1.93 final 3.73 245/40R17` };
  }
}
