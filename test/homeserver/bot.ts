/** The built bot as a process of its own, as a member of staff would run it: settings in a file, one line when it is ready. */
import { type ChildProcess, spawn } from 'node:child_process';
import { createWriteStream } from 'node:fs';
import { mkdir, readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { Account, Synapse } from './synapse.js';

const program = join(import.meta.dirname, import.meta.dirname.includes('dist') ? '../../program/main.js' : '../../dist/program/main.js');

export class BotProcess {
  readonly id: string;
  readonly database: string;
  private readonly settings: string;
  private readonly dir: string;
  private child: ChildProcess | undefined;

  private constructor(id: string, dir: string, settings: string, database: string) {
    this.id = id;
    this.dir = dir;
    this.settings = settings;
    this.database = database;
  }

  static async prepare(server: Synapse, account: Account, dir: string, more: Readonly<Record<string, unknown>> = {}): Promise<BotProcess> {
    await mkdir(dir, { recursive: true });
    const { accessToken } = await server.login(account);
    const settings = join(dir, 'stubaxle.json');
    const database = join(dir, 'stubaxle.db');
    await writeFile(
      settings,
      JSON.stringify({ homeserver: server.url, accessToken, database, inviteServers: [server.name], ...more }, null, 2),
    );
    return new BotProcess(account.userId, dir, settings, database);
  }

  async start(): Promise<ChildProcess> {
    const child = spawn(process.execPath, [program, '--settings', this.settings], {
      cwd: this.dir,
      stdio: ['ignore', 'pipe', 'pipe'],
      env: { PATH: process.env.PATH ?? '', HOME: this.dir },
    });
    const log = createWriteStream(join(this.dir, 'bot.log'), { flags: 'a' });
    child.stdout.pipe(log, { end: false });
    child.stderr.pipe(log, { end: false });
    this.child = child;
    return child;
  }

  /** Ends the process by the signal, and waits until it has ended. */
  async end(signal: 'SIGTERM' | 'SIGKILL' = 'SIGTERM'): Promise<void> {
    const child = this.child;
    if (!child || child.exitCode !== null || child.signalCode !== null) return;
    const ended = new Promise((resolve) => child.once('exit', resolve));
    child.kill(signal);
    await ended;
  }

  log(): Promise<string> {
    return readFile(join(this.dir, 'bot.log'), 'utf8').catch(() => '(no log)');
  }
}
