/**
 * The log: lines of JSON on standard error. What members write and every secret stay out of it by what may go in: a sentence as it stands in the code,
 * numbers, and texts of known shapes; of an error its class, its code and where it came from, never its message, which may quote anything.
 */
import { type DestinationStream, destination, pino } from 'pino';
import { codes, type ErrorTold, tellError } from './log/error.js';

export type Level = 'debug' | 'info' | 'warn' | 'error' | 'silent';
/** A sentence as it stands in the code: a text that is put together while the bot runs is none, and does not compile. */
export type Sentence<T extends string> = Record<never, never> extends Record<T, unknown> ? never : T;

/** All that a line can tell beside its sentence. What is not here is not logged, whoever passes it. */
export interface LogFields {
  readonly err?: unknown;
  /** Matrix ids. */
  readonly room?: string;
  readonly account?: string;
  /** What a member quotes when something broke. */
  readonly reference?: string;
  /** Of the homeserver, the system or SQLite. */
  readonly code?: string | undefined;
  readonly action?: 'send' | 'edit' | 'redact' | 'join' | 'leave';
  readonly task?: 'sending' | 'handling';
  readonly status?: number | undefined;
  readonly failures?: number;
  readonly pause_ms?: number;
  readonly tries?: number;
  readonly allowed?: boolean;
  readonly short?: boolean;
  readonly well?: boolean;
  readonly up_ms?: number;
  readonly sinceSync_ms?: number;
  readonly toHandle?: number;
  readonly toSend?: number;
  readonly refused?: number;
}
/** Each sentence with what belongs to it. */
export interface Log {
  info<T extends string>(fields: LogFields, sentence: T & Sentence<T>): void;
  warn<T extends string>(fields: LogFields, sentence: T & Sentence<T>): void;
  error<T extends string>(fields: LogFields, sentence: T & Sentence<T>): void;
}

const id = /^[!@][\w.~=+/-]{1,200}(?::[\w.:[\]-]{1,200})?$/;
/** The texts that are logged, by field; the types above hold for our code, these for whatever comes at run time. */
const shapes: Readonly<Record<string, RegExp>> = {
  room: id,
  account: id,
  reference: /^[0-9A-F]{8}$/,
  code: codes,
  action: /^(?:send|edit|redact|join|leave)$/,
  task: /^(?:sending|handling)$/,
};
const withheld = '(not logged)';
function told(name: string, value: unknown): number | boolean | string | ErrorTold | undefined {
  if (value === undefined || value === null) return undefined;
  if (name === 'err') return tellError(value);
  if (typeof value === 'number' || typeof value === 'boolean') return value;
  return typeof value === 'string' && shapes[name]?.test(value) ? value : withheld;
}

export interface LogOptions {
  readonly level: Level;
  readonly to?: DestinationStream;
}
export function createLog({ level, to = destination({ dest: 2, sync: true }) }: LogOptions): Log {
  const lines = pino(
    {
      level,
      base: null,
      timestamp: pino.stdTimeFunctions.isoTime,
      formatters: { level: (label) => ({ level: label }) },
      serializers: { err: (value: unknown) => value },
    },
    to,
  );
  const at =
    (one: Exclude<Level, 'silent' | 'debug'>) =>
    (fields: LogFields, sentence: string): void =>
      lines[one](Object.fromEntries(Object.entries(fields).map(([name, value]) => [name, told(name, value)])), '%s', sentence);
  return { info: at('info'), warn: at('warn'), error: at('error') };
}
