/** The log: lines of JSON on standard error. What members write and every secret stay out of it, whoever logs. */
import { type DestinationStream, destination, type Logger, pino } from 'pino';

/** Fields whose values are never written, at any depth: what is said, and what lets somebody in. */
const kept = new Set(
  [
    'body',
    'formatted_body',
    'html',
    'text',
    'content',
    'line',
    'said',
    'why',
    'words',
    'headline',
    'answers',
    'reply',
    'rest',
    'choices',
    'trial',
    'facts',
    'query',
  ].concat(['accesstoken', 'access_token', 'token', 'password', 'authorization', 'cookie', 'secret', 'headers', 'recoverykey']),
);
/** What stands in an address or a header and lets somebody in. */
const inText: readonly (readonly [RegExp, string])[] = [
  [/(access_token=)[^&\s"']+/gi, '$1***'],
  [/\b(Bearer\s+)\S+/gi, '$1***'],
  [/\b(?:syt|mct|mat|mcr)_\w{6,}/g, '***'],
];
const deepest = 6;

function scrubText(text: string, secrets: readonly string[]): string {
  const masked = secrets.reduce((t, secret) => t.replaceAll(secret, '***'), text);
  return inText.reduce((t, [from, to]) => t.replace(from, to), masked);
}
function scrub(value: unknown, secrets: readonly string[], depth: number): unknown {
  if (typeof value === 'string') return scrubText(value, secrets);
  if (typeof value !== 'object' || value === null) return value;
  if (depth > deepest) return '(deeper)';
  if (value instanceof Error) return scrubError(value, secrets, depth);
  if (Array.isArray(value)) return value.map((v) => scrub(v, secrets, depth + 1));
  return Object.fromEntries(
    Object.entries(value).map(([key, v]) => [
      key,
      kept.has(key.toLowerCase()) && v !== undefined ? '(not logged)' : scrub(v, secrets, depth + 1),
    ]),
  );
}
/** Name, message and where: none of the fields that libraries hang on an error (a request, with its headers and body). */
function scrubError(error: Error, secrets: readonly string[], depth: number): object {
  return {
    type: error.name === 'Error' ? error.constructor.name : error.name,
    message: scrubText(error.message, secrets),
    stack: scrubText(error.stack ?? '', secrets),
    ...('code' in error && typeof error.code === 'string' ? { code: error.code } : {}),
    ...(error.cause === undefined ? {} : { cause: scrub(error.cause, secrets, depth + 1) }),
  };
}

export interface LogOptions {
  readonly level: 'debug' | 'info' | 'warn' | 'error' | 'silent';
  /** Masked wherever they come up. */
  readonly secrets?: readonly string[];
  readonly to?: DestinationStream;
}
export function createLog({ level, secrets = [], to = destination({ dest: 2, sync: true }) }: LogOptions): Logger {
  const real = secrets.filter((s) => s.length >= 4);
  return pino(
    {
      level,
      base: null,
      timestamp: pino.stdTimeFunctions.isoTime,
      formatters: {
        level: (label) => ({ level: label }),
        log: (fields) =>
          Object.fromEntries(Object.entries(fields).map(([k, v]) => [k, kept.has(k.toLowerCase()) ? '(not logged)' : scrub(v, real, 1)])),
      },
      hooks: {
        logMethod(args, method) {
          const [first, ...others] = args;
          // The sentence too: an error that is logged alone brings its message.
          const safe =
            typeof first === 'string' ? scrubText(first, real) : first instanceof Error ? { err: scrubError(first, real, 1) } : first;
          const rest = others.map((o) => (typeof o === 'string' ? scrubText(o, real) : scrub(o, real, 1)));
          Reflect.apply(method, this, [safe, ...rest]);
        },
      },
      serializers: { err: (value: unknown) => value },
    },
    to,
  );
}
