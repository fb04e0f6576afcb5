/** What can be told of an error without its words: a message may quote a member, a token, a whole request. */
import { existsSync } from 'node:fs';
import { dirname, relative } from 'node:path';
import { fileURLToPath } from 'node:url';

export interface ErrorTold {
  /** Its class. */
  readonly type: string;
  /** Of the homeserver, the system or SQLite. */
  readonly code?: string;
  /** Of HTTP. */
  readonly status?: number;
  /** Files of this program and what it depends on, with line and column, innermost first. */
  readonly at?: readonly string[];
  readonly cause?: ErrorTold;
}
export const codes = /^(?:M_[A-Z_]{1,60}|E[A-Z0-9]{2,30}|ERR_[A-Z0-9_]{1,60}|SQLITE_[A-Z_]{1,60})$/;
const isCode = (code: unknown): code is string => typeof code === 'string' && codes.test(code);
const mostFrames = 12;
const deepest = 4;

/** The folder of this program. */
const root = ((): string => {
  let folder = dirname(fileURLToPath(import.meta.url));
  while (!existsSync(`${folder}/package.json`)) {
    const up = dirname(folder);
    if (up === folder) return dirname(fileURLToPath(import.meta.url));
    folder = up;
  }
  return folder;
})();
/**
 * Where it was thrown. A stack begins with the message, whose lines can look like frames; so of a line only the place is taken, and only if a file of this
 * program is there: whatever else the line says, names of functions too, is left out.
 */
function framesOf(stack: string): readonly string[] {
  return stack
    .split('\n')
    .flatMap((line) => {
      const [, url = '', path = '', place = ''] = /^\s+at (?:.*\()?(file:\/\/)?(\/[^()\n]{1,500}?):(\d{1,7}:\d{1,7})\)?$/.exec(line) ?? [];
      const file = url === '' ? path : fromUrl(`${url}${path}`);
      if (!file.startsWith(`${root}/`) || !existsSync(file)) return [];
      return [`${relative(root, file)}:${place}`];
    })
    .slice(0, mostFrames);
}
function fromUrl(url: string): string {
  try {
    return fileURLToPath(url);
  } catch {
    return '';
  }
}
const fieldOf = (error: object, name: string): unknown => {
  try {
    return Reflect.get(error, name);
  } catch {
    return undefined;
  }
};

/** Of anything that was thrown. */
export function tellError(thrown: unknown, depth = 0): ErrorTold {
  if (!(thrown instanceof Error)) return { type: `thrown ${typeof thrown}` };
  const made: unknown = fieldOf(Object.getPrototypeOf(thrown) ?? {}, 'constructor');
  // The class, not the name, which anybody can set.
  const type = typeof made === 'function' && /^[A-Za-z]\w{0,60}$/.test(made.name) ? made.name : 'Error';
  const [code, status, stack, cause] = ['code', 'status', 'stack', 'cause'].map((name) => fieldOf(thrown, name));
  const at = typeof stack === 'string' ? framesOf(stack) : [];
  return {
    type,
    ...(isCode(code) ? { code } : {}),
    ...(typeof status === 'number' ? { status } : {}),
    ...(at.length > 0 ? { at } : {}),
    ...(cause === undefined || depth >= deepest ? {} : { cause: tellError(cause, depth + 1) }),
  };
}
/** The same as a line for whoever runs the bot. */
export function errorLine(thrown: unknown): string {
  const { type, code, status, at, cause } = tellError(thrown);
  const what = [type, code, status].filter((part) => part !== undefined).join(' ');
  return [
    `Something broke that nobody foresaw: ${what}${at ? `, at ${at.join(', ')}` : ''}`,
    ...(cause ? [`  because of ${JSON.stringify(cause)}`] : []),
  ].join('\n');
}
