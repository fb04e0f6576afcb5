/** The thin layer under everything that the bot asks of a homeserver: one request, one answer or one failure. */
export type Method = 'GET' | 'POST' | 'PUT' | 'DELETE';
export interface Call {
  readonly query?: Readonly<Record<string, string | number>>;
  /** JSON, or a file. */
  readonly body?: unknown;
  readonly file?: { readonly bytes: Uint8Array; readonly type: string };
  readonly timeout_ms?: number;
}
export interface Wire {
  /** @throws WireFailure, and nothing else. */
  request(method: Method, path: string, call?: Call): Promise<unknown>;
  /** Gives up what is under way; nothing is asked after it. */
  close(): void;
}
/** The homeserver refused, or was not reached (`status` undefined): then it is not known whether it did what was asked. */
export class WireFailure extends Error {
  override readonly name = 'WireFailure';
  readonly status: number | undefined;
  /** The Matrix error code. */
  readonly code: string | undefined;
  /** What the homeserver asked for, from the body or from the header, whichever is longer. */
  readonly retryAfter_ms: number | undefined;
  constructor(
    status: number | undefined,
    code: string | undefined,
    retryAfter_ms: number | undefined,
    message: string,
    options?: ErrorOptions,
  ) {
    super(message, options);
    this.status = status;
    this.code = code;
    this.retryAfter_ms = retryAfter_ms;
  }
  /** Without the homeserver's own words, which may quote what it was sent. */
  get brief(): string {
    return [this.status ?? 'not reached', this.code].filter((part) => part !== undefined).join(' ');
  }
  /** Worth asking again, later, unchanged. */
  get passing(): boolean {
    return this.status === undefined || this.status === 408 || this.status === 429 || this.status >= 500;
  }
  get unauthorized(): boolean {
    return this.status === 401;
  }
}
/** RFC 9110, 10.2.3: seconds, or a date. Undefined when it is neither. */
export function readRetryAfter(header: string | undefined, now: number): number | undefined {
  if (header === undefined) return undefined;
  if (/^\s*\d+\s*$/.test(header)) return Number(header) * 1000;
  const date = Date.parse(header);
  return Number.isNaN(date) ? undefined : Math.max(0, date - now);
}
