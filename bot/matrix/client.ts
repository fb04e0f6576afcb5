/**
 * The wire to a real homeserver, on matrix-bot-sdk's requests. Of the SDK only that part is loaded: the whole of it (its client, its encryption) takes
 * a quarter of a second and 20 MB, and our loop needs neither until encrypted rooms are served.
 */
import type { LogService } from 'matrix-bot-sdk';
import { z } from 'zod';
import { type Call, type Method, readRetryAfter, type Wire, WireFailure } from './wire.js';

interface Request {
  abort(): void;
}
type Callback = (problem: unknown, response?: unknown, body?: unknown) => void;
/** The function under the SDK that makes each HTTP request. */
type RequestFn = (options: object, callback: Callback) => Request;

const responseSchema = z.looseObject({ statusCode: z.number(), headers: z.record(z.string(), z.unknown()) });
const errorSchema = z.looseObject({ errcode: z.string().optional(), error: z.string().optional(), retry_after_ms: z.number().optional() });

/** The SDK keeps the error body and drops the headers; the failure is made here, where both are in reach. */
function failureOf(response: z.infer<typeof responseSchema>, body: unknown): WireFailure {
  const said = errorSchema.safeParse(typeof body === 'string' ? tryJson(body) : body).data;
  const header = response.headers['retry-after'];
  const waits = [said?.retry_after_ms, readRetryAfter(typeof header === 'string' ? header : undefined, Date.now())].filter(
    (w) => w !== undefined,
  );
  const retryAfter_ms = waits.length === 0 ? undefined : Math.max(...waits);
  return new WireFailure(
    response.statusCode,
    said?.errcode,
    retryAfter_ms,
    `${response.statusCode} ${said?.errcode ?? ''} ${said?.error ?? ''}`.trim(),
  );
}
const tryJson = (text: string): unknown => {
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
};

interface Requests {
  doHttpRequest(...call: Parameters<typeof import('matrix-bot-sdk/lib/http.js').doHttpRequest>): Promise<unknown>;
  getRequestFn(): RequestFn;
  setRequestFn(make: RequestFn): void;
  readonly LogService: Pick<typeof LogService, 'setLogger'>;
}
/** The SDK's requests and its log, by themselves. */
async function requests(): Promise<Requests> {
  const [http, request, log] = await Promise.all([
    import('matrix-bot-sdk/lib/http.js'),
    import('matrix-bot-sdk/lib/request.js'),
    import('matrix-bot-sdk/lib/logging/LogService.js'),
  ]);
  return { ...http, ...request, LogService: log.LogService };
}

/** @throws when the SDK itself cannot be loaded. */
export async function openWire(homeserver: string, accessToken: string): Promise<Wire> {
  const sdk = await requests();
  // The SDK logs refused requests by itself, with their texts; what fails is reported by whoever asked.
  const quiet = (): void => undefined;
  sdk.LogService.setLogger({ info: quiet, warn: quiet, error: quiet, debug: quiet, trace: quiet });
  const base = homeserver.replace(/\/+$/, '');
  const live = new Set<Request>();
  let closed = false;
  const make: RequestFn = sdk.getRequestFn();
  const watched: RequestFn = (options, callback) => {
    const request = make(options, (problem, response, body) => {
      live.delete(request);
      const read = responseSchema.safeParse(response);
      if (problem === null && read.success && (read.data.statusCode < 200 || read.data.statusCode > 299))
        callback(failureOf(read.data, body));
      else callback(problem, response, body);
    });
    live.add(request);
    return request;
  };
  sdk.setRequestFn(watched);
  return {
    async request(method: Method, path: string, call: Call = {}): Promise<unknown> {
      if (closed) throw new WireFailure(undefined, undefined, undefined, 'the connection was closed');
      const body = call.file === undefined ? call.body : Buffer.from(call.file.bytes);
      try {
        const answer: unknown = await sdk.doHttpRequest(
          base,
          method,
          path,
          call.query ?? null,
          body ?? null,
          { Authorization: `Bearer ${accessToken}` },
          call.timeout_ms ?? 60_000,
          false,
          call.file?.type ?? 'application/json',
        );
        return answer;
      } catch (problem) {
        if (problem instanceof WireFailure) throw problem;
        throw new WireFailure(undefined, undefined, undefined, problem instanceof Error ? problem.message : String(problem), {
          cause: problem,
        });
      }
    },
    close() {
      closed = true;
      for (const request of live) request.abort();
      live.clear();
    },
  };
}
