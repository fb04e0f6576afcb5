/** A real homeserver for the suite: Synapse from PyPI in a virtual environment beside the checkout, on loopback, in a folder of its own. */
import { type ChildProcess, execFile, spawn } from 'node:child_process';
import { createHmac, randomBytes } from 'node:crypto';
import { existsSync } from 'node:fs';
import { mkdir, readFile, writeFile } from 'node:fs/promises';
import { createServer } from 'node:net';
import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import { promisify } from 'node:util';

const run = promisify(execFile);
const version = '1.163.2';
const environment = join(import.meta.dirname, '../../.venv/synapse');
const python = join(environment, 'bin/python');
const sharedSecret = 'only-for-tests-on-loopback';

/** Installs the homeserver once; later calls find it. */
async function install(): Promise<void> {
  const probe = existsSync(python)
    ? await run(python, ['-c', 'import synapse; print(synapse.__version__)']).catch(() => undefined)
    : undefined;
  if (probe?.stdout.startsWith(version)) return;
  await run('python3', ['-m', 'venv', environment]);
  await run(python, ['-m', 'pip', 'install', '--quiet', `matrix-synapse==${version}`], { maxBuffer: 1 << 26 });
}

export function freePort(): Promise<number> {
  return new Promise((resolve, reject) => {
    const server = createServer();
    server.once('error', reject);
    server.listen(0, '127.0.0.1', () => {
      const address = server.address();
      const port = typeof address === 'object' && address !== null ? address.port : 0;
      server.close(() => resolve(port));
    });
  });
}

export interface SynapseOptions {
  readonly dir: string;
  /** Keep Synapse's default limits on messages (0.2 a second, burst of 10) instead of lifting them. */
  readonly defaultLimits?: boolean;
}
export class Synapse {
  readonly name = 'lane.test';
  readonly url: string;
  private readonly dir: string;
  private process: ChildProcess | undefined;

  private constructor(dir: string, port: number) {
    this.dir = dir;
    this.url = `http://127.0.0.1:${port}`;
  }

  static async start({ dir, defaultLimits = false }: SynapseOptions): Promise<Synapse> {
    await install();
    await mkdir(dir, { recursive: true });
    const port = await freePort();
    const lifted = { per_second: 10_000, burst_count: 10_000 };
    const limits = {
      ...(defaultLimits ? {} : { rc_message: lifted }),
      rc_login: { address: lifted, account: lifted, failed_attempts: lifted },
      rc_registration: lifted,
      rc_room_creation: lifted,
      rc_joins: { local: lifted, remote: lifted },
      rc_invites: { per_room: lifted, per_user: lifted, per_issuer: lifted },
    };
    // JSON is YAML: no other format is needed for the configuration.
    const config = {
      server_name: 'lane.test',
      pid_file: join(dir, 'synapse.pid'),
      listeners: [{ port, bind_addresses: ['127.0.0.1'], type: 'http', tls: false, resources: [{ names: ['client'], compress: false }] }],
      database: { name: 'sqlite3', args: { database: join(dir, 'homeserver.db') } },
      log_config: join(dir, 'log.yaml'),
      media_store_path: join(dir, 'media'),
      registration_shared_secret: sharedSecret,
      report_stats: false,
      signing_key_path: join(dir, 'signing.key'),
      trusted_key_servers: [],
      macaroon_secret_key: 'macaroons-for-tests',
      form_secret: 'forms-for-tests',
      federation_domain_whitelist: [],
      presence: { enabled: false },
      caches: { sync_response_cache_duration: '0s' },
      ...limits,
    };
    await writeFile(join(dir, 'homeserver.yaml'), JSON.stringify(config, null, 2));
    await writeFile(
      join(dir, 'log.yaml'),
      JSON.stringify({
        version: 1,
        formatters: { plain: { format: '%(asctime)s %(levelname)s %(name)s %(message)s' } },
        handlers: { file: { class: 'logging.FileHandler', filename: join(dir, 'synapse.log'), formatter: 'plain' } },
        root: { level: 'WARNING', handlers: ['file'] },
      }),
    );
    await run(python, ['-m', 'synapse.app.homeserver', '--config-path', join(dir, 'homeserver.yaml'), '--generate-keys']);
    const server = new Synapse(dir, port);
    await server.up();
    return server;
  }

  /** Starts the process (again) on the same folder and port, and waits until it answers. */
  async up(): Promise<void> {
    const child = spawn(python, ['-m', 'synapse.app.homeserver', '--config-path', join(this.dir, 'homeserver.yaml')], { stdio: 'ignore' });
    this.process = child;
    for (let tries = 0; tries < 300; tries++) {
      if (child.exitCode !== null) throw new Error(`the homeserver ended at once:\n${await this.log()}`);
      const answers = await fetch(`${this.url}/_matrix/client/versions`).then(
        (r) => r.ok,
        () => false,
      );
      if (answers) return;
      await pause(100);
    }
    throw new Error(`the homeserver did not come up:\n${await this.log()}`);
  }

  async down(): Promise<void> {
    const child = this.process;
    if (!child || child.exitCode !== null || child.signalCode !== null) return;
    const ended = new Promise((resolve) => child.once('exit', resolve));
    child.kill('SIGTERM');
    await ended;
  }

  async log(): Promise<string> {
    return readFile(join(this.dir, 'synapse.log'), 'utf8').catch(() => '(no log)');
  }

  /** Registers an account by the shared secret. */
  async register(username: string, password = `${username}-password`): Promise<Account> {
    const at = `${this.url}/_synapse/admin/v1/register`;
    const { nonce } = (await (await fetch(at)).json()) as { nonce: string };
    const mac = createHmac('sha1', sharedSecret).update([nonce, username, password, 'notadmin'].join('\0')).digest('hex');
    const response = await fetch(at, {
      method: 'POST',
      body: JSON.stringify({ nonce, username, displayname: username, password, admin: false, mac }),
    });
    if (!response.ok) throw new Error(`registration of ${username}: ${response.status} ${await response.text()}`);
    return { userId: `@${username}:${this.name}`, password };
  }

  /** A new device and its access token. */
  async login(account: Account): Promise<{ readonly accessToken: string; readonly deviceId: string }> {
    const response = await fetch(`${this.url}/_matrix/client/v3/login`, {
      method: 'POST',
      body: JSON.stringify({
        type: 'm.login.password',
        identifier: { type: 'm.id.user', user: account.userId },
        password: account.password,
        device_id: randomBytes(5).toString('hex').toUpperCase(),
      }),
    });
    if (!response.ok) throw new Error(`login of ${account.userId}: ${response.status} ${await response.text()}`);
    const { access_token, device_id } = (await response.json()) as { access_token: string; device_id: string };
    return { accessToken: access_token, deviceId: device_id };
  }
}
export interface Account {
  readonly userId: string;
  readonly password: string;
}
