/** The program: reads how it was started, takes the database for itself, and runs the bot on a homeserver, or the console, until it is told to stop. */
import { readFileSync } from 'node:fs';
import { parseArgs } from 'node:util';
import { finish } from './finish.js';
import { LockHeld, lockDatabase } from './lock.js';
import { errorLine } from './log/error.js';
import { DatabaseRefused, openDatabase, type Store } from './records/database.js';
import { readSettings, type Settings, SettingsRefused } from './settings.js';

/** What the program's end means to whoever started it. */
export const exitCodes = { ended: 0, broken: 1, settings: 2, database: 3, homeserver: 4 } as const;

const help = `npm start [-- FLAGS]      the bot on the homeserver of the settings; without one, the console
npm -s start -- --json    the console, one JSON line for each line of input
npm run backup            a checked copy of the database

  --settings FILE   settings, instead of stubaxle.json
  --database FILE   the database, instead of the settings' one
  --files FOLDER    where the console writes charts
  --console         the console, also when there is a homeserver in the settings
  --as NAME         who speaks first in the console
  --json            JSON lines in the console
  --check           checks the settings, and ends
  --help, --version`;

/** One clear line for whoever runs the bot, and the code to end with. */
class Stop extends Error {
  readonly code: number;
  constructor(line: string, code: number) {
    super(line);
    this.code = code;
  }
}

function flagsOf(args: readonly string[]) {
  const text = { type: 'string' } as const;
  const yes = { type: 'boolean' } as const;
  const options = { settings: text, database: text, files: text, as: text, json: yes, console: yes, check: yes, help: yes, version: yes };
  try {
    return parseArgs({ args: [...args], options, allowPositionals: false }).values;
  } catch (problem) {
    // Node's sentence goes on with advice about its own syntax.
    const [first = ''] = (problem instanceof Error ? problem.message : String(problem)).split('. ');
    throw new Stop(`${first.replace(/\.$/, '')}; try: npm start -- --help`, exitCodes.settings);
  }
}
const say = (line: string): void => void process.stderr.write(`${line}\n`);

/** Aborted by the first SIGINT, SIGTERM or SIGHUP; the second ends the process at once. */
function untilSignalled(): AbortSignal {
  const stopping = new AbortController();
  for (const name of ['SIGINT', 'SIGTERM', 'SIGHUP'] as const)
    process.on(name, () => {
      if (stopping.signal.aborted) process.exit(exitCodes.broken);
      stopping.abort();
    });
  return stopping.signal;
}

/** Runs `work` with the database open and locked; both are let go however it ends. */
async function withStore<T>(file: string, work: (store: Store) => Promise<T>): Promise<T> {
  const lock = lockDatabase(file);
  try {
    const store = openDatabase(file);
    try {
      return await work(store);
    } finally {
      store.close();
    }
  } finally {
    lock.release();
  }
}

async function run(args: readonly string[]): Promise<number> {
  const flags = flagsOf(args);
  if (flags.help) process.stdout.write(`${help}\n`);
  else if (flags.version) process.stdout.write(`${versionOf()}\n`);
  if (flags.help || flags.version) return exitCodes.ended;
  const settings = readSettings({
    ...(flags.settings === undefined ? {} : { file: flags.settings }),
    environment: process.env,
    folder: process.cwd(),
    flags: {
      ...(flags.database === undefined ? {} : { database: flags.database }),
      ...(flags.files === undefined ? {} : { files: flags.files }),
    },
  });
  for (const note of settings.notes) say(note);
  if (flags.check) {
    say('The settings are in order.');
    return exitCodes.ended;
  }
  const { homeserver, accessToken } = settings;
  const onHomeserver = homeserver !== undefined && accessToken !== undefined && !flags.console && !flags.json;
  const signal = untilSignalled();
  return withStore(settings.database, async (store) => {
    if (onHomeserver) {
      const { runOnHomeserver } = await import('./online.js');
      return runOnHomeserver({ ...settings, homeserver, accessToken }, store, signal);
    }
    return await inConsole(settings, store, { json: flags.json === true, as: flags.as }, signal);
  });
}
async function inConsole(
  settings: Settings,
  store: Store,
  { json, as }: { json: boolean; as: string | undefined },
  signal: AbortSignal,
): Promise<number> {
  const { startConsole } = await import('./console/start.js');
  await startConsole({ settings, store, json, ...(as === undefined ? {} : { as }), signal });
  return exitCodes.ended;
}
function versionOf(): string {
  // Beside the folder of the built files, and beside that of the sources.
  for (const place of ['../../package.json', '../package.json']) {
    try {
      const text = readFileSync(new URL(place, import.meta.url), 'utf8');
      return `Stubaxle ${/"version": "([^"]+)"/.exec(text)?.[1]}`;
    } catch {
      // The other place.
    }
  }
  throw new Error('package.json is missing');
}

/** The line to say for what went wrong, and the code; undefined for what nobody foresaw. */
async function foreseen(problem: unknown): Promise<{ readonly lines: readonly string[]; readonly code: number } | undefined> {
  if (problem instanceof Stop) return { lines: [problem.message], code: problem.code };
  if (problem instanceof SettingsRefused) return { lines: problem.mistakes, code: exitCodes.settings };
  if (problem instanceof LockHeld || problem instanceof DatabaseRefused) return { lines: [problem.message], code: exitCodes.database };
  if (problem instanceof Error && problem.name === 'MatrixRefused') return { lines: [problem.message], code: exitCodes.homeserver };
  if (!(problem instanceof Error) || !('code' in problem)) return undefined;
  const { code } = problem;
  if (code === 'EADDRINUSE') return { lines: ['The health port is in use; set healthPort to another.'], code: exitCodes.settings };
  if (code === 'EACCES' || code === 'EROFS' || code === 'ENOSPC' || String(code).startsWith('SQLITE_'))
    return {
      lines: [`The database or its folder can't be used (${code}); check the folder, its permissions and the room on the disk.`],
      code: exitCodes.database,
    };
  return undefined;
}

// Node's own way to end says the message, and the line of the code.
for (const broken of ['uncaughtException', 'unhandledRejection'] as const)
  process.on(broken, (problem: unknown) => {
    say(errorLine(problem));
    process.exit(exitCodes.broken);
  });
// Whoever reads the output may stop reading it (`| head`): that is an end, not a fault.
process.stdout.on('error', (problem: NodeJS.ErrnoException) => process.exit(problem.code === 'EPIPE' ? exitCodes.ended : exitCodes.broken));
try {
  finish(await run(process.argv.slice(2)));
} catch (problem) {
  const known = await foreseen(problem);
  for (const line of known?.lines ?? [errorLine(problem)]) say(line);
  finish(known?.code ?? exitCodes.broken);
}
