/** Work that is done in a thread of its own: started when first needed, stopped when it takes too long, ended when nothing comes for a while. */
import { Worker } from 'node:worker_threads';
import { topOf } from './top.js';

export interface ApartOptions {
  /** From the caller's file to the built worker. Threads run built files only: Node 20 cannot run our sources. */
  readonly file: URL;
  readonly deadlineMs: number;
  readonly idleMs: number;
  readonly heapMb: number;
}
/** The thread did not answer: `why` says whether it was too slow, ran out of memory or broke. */
export class ApartError extends Error {
  readonly why: 'slow' | 'memory' | 'broken';
  constructor(why: 'slow' | 'memory' | 'broken', options?: ErrorOptions) {
    super({ slow: 'took too long', memory: 'needed too much memory', broken: 'broke' }[why], options);
    this.why = why;
  }
}

/** The built file that stands where `name` would stand beside the caller: the same for a caller that runs from source, as under test. */
export function builtBeside(caller: string, name: string): URL {
  const beside = new URL(name, caller);
  if (!caller.endsWith('.ts')) return beside;
  const root = topOf(caller);
  return new URL(beside.href.slice(root.href.length), new URL('dist/', root));
}

/** One thread and the questions that wait for it; one question at a time. `R` is checked by `read`, since it comes from outside this thread. */
export class Apart<Q, R> {
  readonly #options: ApartOptions;
  readonly #read: (reply: unknown) => R;
  #worker: Worker | undefined;
  #idle: NodeJS.Timeout | undefined;
  #last: Promise<unknown> = Promise.resolve();

  constructor(options: ApartOptions, read: (reply: unknown) => R) {
    this.#options = options;
    this.#read = read;
  }
  /** Whether a thread is there now. */
  get running(): boolean {
    return this.#worker !== undefined;
  }
  /** Asks the thread. Rejects with an ApartError; the next question then gets a new thread. */
  ask(question: Q): Promise<R> {
    const asked = this.#last.then(() => this.#ask(question));
    this.#last = asked.catch(() => undefined);
    return asked;
  }
  /** Ends the thread, after the questions that wait. */
  async close(): Promise<void> {
    await this.#last;
    await this.#end();
  }

  async #end(): Promise<void> {
    clearTimeout(this.#idle);
    const worker = this.#worker;
    this.#worker = undefined;
    await worker?.terminate();
  }
  async #start(): Promise<Worker> {
    const { file, heapMb } = this.#options;
    const worker = new Worker(file, {
      resourceLimits: { maxOldGenerationSizeMb: heapMb, maxYoungGenerationSizeMb: Math.ceil(heapMb / 4) },
      // Nothing of the bot's secrets is in reach of what runs there.
      env: {},
    });
    this.#worker = worker;
    // A thread that breaks between two questions must not end the bot: the next question gets a new one.
    worker.on('error', () => undefined);
    worker.on('exit', () => {
      if (this.#worker === worker) this.#worker = undefined;
    });
    // The deadline is for the question, not for loading the libraries: a started thread says so first.
    await this.#next(worker, Math.max(20_000, this.#options.deadlineMs));
    return worker;
  }
  async #ask(question: Q): Promise<R> {
    clearTimeout(this.#idle);
    try {
      const worker = this.#worker ?? (await this.#start());
      worker.ref();
      worker.postMessage(question);
      const reply = this.#read(await this.#next(worker, this.#options.deadlineMs));
      worker.unref();
      this.#idle = setTimeout(() => void this.#end(), this.#options.idleMs).unref();
      return reply;
    } catch (error) {
      await this.#end();
      throw error instanceof ApartError ? error : new ApartError('broken', { cause: error });
    }
  }
  #next(worker: Worker, deadlineMs: number): Promise<unknown> {
    return new Promise((resolve, reject) => {
      const settle = (act: () => void): void => {
        clearTimeout(timer);
        // One by one: removeAllListeners would take the thread's own away, and with them its messages.
        worker.off('message', onMessage).off('error', onError).off('exit', onExit);
        act();
      };
      const onMessage = (reply: unknown): void => settle(() => resolve(reply));
      const onError = (error: NodeJS.ErrnoException): void =>
        settle(() => reject(new ApartError(error.code === 'ERR_WORKER_OUT_OF_MEMORY' ? 'memory' : 'broken', { cause: error })));
      const onExit = (): void => settle(() => reject(new ApartError('broken')));
      const timer = setTimeout(() => settle(() => reject(new ApartError('slow'))), deadlineMs);
      worker.on('message', onMessage).on('error', onError).on('exit', onExit);
    });
  }
}
