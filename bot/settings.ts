/** What whoever runs the bot can set: from a JSON file, the environment and flags, each value checked, each mistake one clear line. */
import { readFileSync, statSync } from 'node:fs';
import { dirname, resolve } from 'node:path';
import { z } from 'zod';
import { unknown } from './settings/spelling.js';
import { environmentName, names, type SettingName, table } from './settings/table.js';

export { environmentName, type SettingName, settingsTable } from './settings/table.js';

export interface Settings {
  readonly homeserver: string | undefined;
  readonly accessToken: string | undefined;
  /** Absolute. */
  readonly database: string;
  readonly inviteUsers: readonly string[];
  readonly inviteServers: readonly string[];
  readonly prefix: string;
  readonly keepTextsDays: number;
  readonly healthPort: number | undefined;
  readonly logLevel: 'debug' | 'info' | 'warn' | 'error' | 'silent';
  /** Absolute. */
  readonly files: string;
  readonly demo: boolean;
  /** What is not wrong, but worth a word when the bot starts. */
  readonly notes: readonly string[];
}
/** Settings can't be used; one line a mistake, none of them with a secret. */
export class SettingsRefused extends Error {
  override readonly name = 'SettingsRefused';
  readonly mistakes: readonly string[];
  constructor(mistakes: readonly string[]) {
    super(mistakes.join('\n'));
    this.mistakes = mistakes;
  }
}

interface Told {
  readonly value: unknown;
  readonly where: string;
  /** Paths are relative to it. */
  readonly folder: string;
}
function fromFile(file: string, mistakes: string[], notes: string[]): Map<SettingName, Told> {
  const told = new Map<SettingName, Told>();
  let json: unknown;
  try {
    json = JSON.parse(readFileSync(file, 'utf8').replace(/^\ufeff/, ''));
  } catch (problem) {
    const syntax = problem instanceof SyntaxError;
    // The parser's own sentence quotes what stands there, which may be a secret.
    mistakes.push(
      syntax
        ? `${file}: this is not JSON; a comma or a quotation mark is missing or too many.`
        : `${file}: the settings file can't be read.`,
    );
    return told;
  }
  const read = z.record(z.string(), z.unknown()).safeParse(json);
  if (!read.success) {
    mistakes.push(`${file}: settings are one JSON object, such as {"homeserver": "https://matrix.example.org"}.`);
    return told;
  }
  for (const [key, value] of Object.entries(read.data)) {
    const name = names.find((n) => n === key);
    if (name === undefined) mistakes.push(unknown(file, key, (n) => n));
    else told.set(name, { value, where: file, folder: dirname(file) });
  }
  if (told.has('accessToken') && process.platform !== 'win32' && (statSync(file).mode & 0o077) !== 0)
    notes.push(`${file} holds the access token and others can read it; make it private: chmod 600 ${file}`);
  return told;
}
function fromEnvironment(environment: NodeJS.ProcessEnv, folder: string, mistakes: string[]): Map<SettingName, Told> {
  const told = new Map<SettingName, Told>();
  for (const [key, value] of Object.entries(environment)) {
    if (!key.startsWith('STUBAXLE_') || key === 'STUBAXLE_SETTINGS' || key.startsWith('STUBAXLE_TEST_') || value === undefined) continue;
    const name = names.find((n) => environmentName(n) === key);
    if (name === undefined) mistakes.push(unknown('environment', key.slice('STUBAXLE_'.length), environmentName));
    else {
      const list = name === 'inviteUsers' || name === 'inviteServers';
      const items = list
        ? value
            .split(',')
            .map((v) => v.trim())
            .filter((v) => v !== '')
        : value;
      if (value !== '') told.set(name, { value: items, where: `environment, ${key}`, folder });
    }
  }
  return told;
}
const shown = (value: unknown): string => (JSON.stringify(value) ?? String(value)).replace(/[^\x20-\x7e]/g, '?').slice(0, 60);

export interface SettingsSource {
  /** Of the flag `--settings`; else STUBAXLE_SETTINGS; else `stubaxle.json`, if there is one. */
  readonly file?: string;
  readonly environment: NodeJS.ProcessEnv;
  readonly folder: string;
  /** Told by flags, which go before the environment, which goes before the file. */
  readonly flags?: Readonly<Partial<Record<SettingName, string>>>;
}
/** Reads and checks all settings. @throws SettingsRefused with every mistake that there is. */
export function readSettings({ file, environment, folder, flags = {} }: SettingsSource): Settings {
  const mistakes: string[] = [];
  const notes: string[] = [];
  const named = file ?? (environment.STUBAXLE_SETTINGS || undefined);
  const usual = resolve(folder, 'stubaxle.json');
  const settingsFile = named === undefined ? (isFile(usual) ? usual : undefined) : resolve(folder, named);
  const told = new Map([
    ...(settingsFile === undefined ? [] : fromFile(settingsFile, mistakes, notes)),
    ...fromEnvironment(environment, folder, mistakes),
    ...names.flatMap((name): [SettingName, Told][] =>
      flags[name] === undefined ? [] : [[name, { value: flags[name], where: `--${name}`, folder }]],
    ),
  ]);
  const get = <T>(name: SettingName, schema: z.ZodType<T>): T | undefined => {
    const it = told.get(name);
    if (it === undefined) return undefined;
    const read = schema.safeParse(it.value);
    if (read.success) return read.data;
    const came = 'secret' in table[name] ? '' : `, and ${shown(it.value)} came`;
    mistakes.push(`${it.where}: ${name} must be ${table[name].wanted}${came}.`);
    return undefined;
  };
  const at = (name: 'accessTokenFile' | 'database' | 'files'): string | undefined => {
    const value = get(name, table[name].schema);
    return value === undefined ? undefined : resolve(told.get(name)?.folder ?? folder, value);
  };

  const homeserver = get('homeserver', table.homeserver.schema);
  const tokenFile = at('accessTokenFile');
  const given = get('accessToken', table.accessToken.schema);
  const accessToken = given ?? (tokenFile === undefined ? undefined : tokenIn(tokenFile, mistakes));
  const inviteUsers = get('inviteUsers', table.inviteUsers.schema) ?? [];
  const inviteServers = get('inviteServers', table.inviteServers.schema) ?? [];
  if (given !== undefined && tokenFile !== undefined)
    mistakes.push('settings: accessToken and accessTokenFile say the same thing; keep one.');
  if (told.has('homeserver') && !told.has('accessToken') && !told.has('accessTokenFile'))
    mistakes.push(`settings: homeserver needs the bot's accessToken too (or accessTokenFile).`);
  if (told.has('homeserver') && !told.has('inviteUsers') && !told.has('inviteServers'))
    mistakes.push('settings: nobody could invite the bot; set inviteServers (or inviteUsers), such as ["example.org"].');
  const prefix = get('prefix', table.prefix.schema) ?? '!';
  if (prefix.normalize('NFKC').startsWith('/'))
    mistakes.push(
      'settings: prefix may not begin with /, which many chat clients take as a command of their own; use another mark, such as !.',
    );
  const settings: Settings = {
    ...{ homeserver, accessToken, inviteUsers, inviteServers },
    database: at('database') ?? resolve(folder, 'data', told.has('homeserver') ? 'stubaxle.db' : 'console.db'),
    prefix,
    keepTextsDays: get('keepTextsDays', table.keepTextsDays.schema) ?? 30,
    healthPort: get('healthPort', table.healthPort.schema),
    logLevel: get('logLevel', table.logLevel.schema) ?? (told.has('homeserver') ? 'info' : 'warn'),
    files: at('files') ?? resolve(folder, 'data', 'files'),
    demo: get('demo', table.demo.schema) ?? true,
    notes,
  };
  if (mistakes.length > 0) throw new SettingsRefused(mistakes);
  return settings;
}
const isFile = (file: string): boolean => statSync(file, { throwIfNoEntry: false })?.isFile() ?? false;
function tokenIn(file: string, mistakes: string[]): string | undefined {
  const text = isFile(file) ? readFileSync(file, 'utf8').trim() : undefined;
  if (text !== undefined && /^\S+$/.test(text)) return text;
  mistakes.push(
    `${file}: ${text === undefined ? "the file of the access token can't be read" : 'the file must hold the access token and nothing else'}.`,
  );
  return undefined;
}

/** Whether the settings let this member invite the bot. The server is what follows the first colon of the id. */
export const mayInvite =
  ({ inviteUsers, inviteServers }: Pick<Settings, 'inviteUsers' | 'inviteServers'>) =>
  (member: string): boolean => {
    const server = /^@[^:]*:(.+)$/.exec(member)?.[1];
    return inviteUsers.includes(member) || (server !== undefined && inviteServers.some((s) => s.toLowerCase() === server.toLowerCase()));
  };
