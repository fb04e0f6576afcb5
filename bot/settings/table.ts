/** Every setting: its name, what it must be, what it is for. */
import { z } from 'zod';

const memberId = /^@[^\s:]+:[^\s:]+(?::\d+)?$/;
const serverName = /^[A-Za-z0-9.-]+(?::\d+)?$|^\[[0-9A-Fa-f:.]+\](?::\d+)?$/;
const isHomeserver = (text: string): boolean => {
  const url = URL.canParse(text) ? new URL(text) : undefined;
  return url !== undefined && ['http:', 'https:'].includes(url.protocol) && url.username === '' && url.password === '';
};
const path = z.string().min(1);
/** The environment has only text. */
const wholeNumber = z.union([z.number(), z.string().regex(/^\d+$/).transform(Number)]);

/** One row a setting: the table that the README prints is this one. `wanted` ends the sentence "NAME must be ...". */
export const table = {
  homeserver: {
    schema: z.string().refine(isHomeserver),
    wanted: 'the address of a homeserver, such as https://matrix.example.org',
    about: "Address of the Matrix homeserver. Without it the bot's console starts.",
    standard: 'none',
  },
  accessToken: {
    schema: z.string().regex(/^\S+$/),
    wanted: "the access token of the bot's account, without spaces",
    about: "Access token of the bot's account. Keep the file readable by the bot's user only.",
    standard: 'none',
    secret: true,
  },
  accessTokenFile: {
    schema: path,
    wanted: 'the path of a file that holds the access token',
    about: 'File that holds the access token, instead of `accessToken`.',
    standard: 'none',
    file: true,
  },
  database: {
    schema: path,
    wanted: 'the path of a file',
    about: 'The SQLite file. Its folder is made when it is not there.',
    standard: '`data/stubaxle.db`; of the console, `data/console.db`',
    file: true,
  },
  inviteUsers: {
    schema: z.array(z.string().regex(memberId)),
    wanted: 'a list of members, such as ["@robin:example.org"]',
    about: 'Members whose invitations the bot accepts.',
    standard: 'nobody',
  },
  inviteServers: {
    schema: z.array(z.string().regex(serverName)),
    wanted: 'a list of servers, such as ["example.org"]',
    about: 'Servers whose members may all invite the bot.',
    standard: 'none',
  },
  prefix: {
    schema: z.string().regex(/^[^\s\p{L}\p{N}]\S{0,7}$/u),
    wanted: '1 to 8 characters without spaces, the first neither a letter nor a digit',
    about: 'What a line for the bot begins with in a room, where the room has no prefix of its own.',
    standard: '`!`',
  },
  keepTextsDays: {
    schema: wholeNumber.pipe(z.number().int().min(1).max(3650)),
    wanted: 'a number of days from 1 to 3650',
    about: 'Days for which the text of messages and replies is kept; cars and their changes stay.',
    standard: '30',
  },
  healthPort: {
    schema: wholeNumber.pipe(z.number().int().min(1).max(65_535)),
    wanted: 'a port from 1 to 65535',
    about: 'Port on 127.0.0.1 that answers `GET /health`: 200 when all is well, 503 when not.',
    standard: 'none: no port is opened',
  },
  logLevel: {
    schema: z.enum(['debug', 'info', 'warn', 'error', 'silent']),
    wanted: 'debug, info, warn, error or silent',
    about: 'How much is logged, as lines of JSON on standard error. Never what members write, and no secret.',
    standard: '`info`; of the console, `warn`',
  },
  files: {
    schema: path,
    wanted: 'the path of a folder',
    about: 'Folder in which the console writes charts, and the data that members asked for.',
    standard: '`data/files`',
    file: true,
  },
  demo: {
    schema: z.union([z.boolean(), z.enum(['true', 'false']).transform((t) => t === 'true')]),
    wanted: 'true or false',
    about: 'Whether the console of a new database starts with an invented club and its cars.',
    standard: '`true`',
  },
} as const;
export type SettingName = keyof typeof table;
export const names = Object.keys(table) as SettingName[];

/** `accessToken` is `STUBAXLE_ACCESS_TOKEN` in the environment. */
export const environmentName = (name: SettingName): string => `STUBAXLE_${name.replace(/[A-Z]/g, (c) => `_${c}`).toUpperCase()}`;
/** For the README: every setting, in order. */
export const settingsTable: readonly {
  readonly name: SettingName;
  readonly environment: string;
  readonly about: string;
  readonly standard: string;
}[] = names.map((name) => ({ name, environment: environmentName(name), about: table[name].about, standard: table[name].standard }));
