/** Lanes side by side, one thing at a time in each: how both the inbox and the outbox are gone through. */
export interface Task {
  readonly lane: string;
  run(): Promise<void>;
}
export interface LanesOptions {
  /** What may be begun now, given the lanes in which something is under way. Asked again whenever something ended or `run` is called. */
  readonly next: (busy: ReadonlySet<string>) => readonly Task[];
  readonly atOnce: number;
}
export class Lanes {
  readonly #it: LanesOptions;
  #running: Promise<void> | undefined;
  #asked = false;
  #stopped = false;
  #ring: () => void = () => undefined;
  constructor(options: LanesOptions) {
    this.#it = options;
  }
  /** Looks again for what may be begun, where it is under way. */
  look(): void {
    this.#asked = true;
    this.#ring();
  }
  /** Resolves when nothing is left that may be begun; rejects with the first that broke, after what was under way has ended. */
  run(): Promise<void> {
    this.look();
    this.#running ??= this.#rounds();
    return this.#running;
  }
  get stopped(): boolean {
    return this.#stopped;
  }
  /** Begins nothing more. */
  halt(): void {
    this.#stopped = true;
    this.#ring();
  }
  /** Begins nothing more, and resolves when what is under way has ended. */
  async stop(): Promise<void> {
    this.halt();
    await this.#running?.catch(() => undefined);
  }

  async #rounds(): Promise<void> {
    try {
      // Who asks while the last round is ending is not told that all is done before it was looked at.
      while (this.#asked && !this.#stopped) {
        this.#asked = false;
        await this.#round();
      }
    } finally {
      this.#running = undefined;
    }
  }
  async #round(): Promise<void> {
    const busy = new Map<string, Promise<void>>();
    const broken: unknown[] = [];
    try {
      while (!this.#stopped && broken.length === 0) {
        const rung = new Promise<void>((resolve) => {
          this.#ring = resolve;
        });
        for (const { lane, run } of this.#it.next(new Set(busy.keys())).slice(0, this.#it.atOnce - busy.size)) {
          const task = run()
            .catch((problem: unknown) => {
              broken.push(problem);
            })
            .finally(() => busy.delete(lane));
          busy.set(lane, task);
        }
        if (busy.size === 0) break;
        await Promise.race([...busy.values(), rung]);
      }
    } finally {
      await Promise.all(busy.values());
    }
    if (broken.length > 0) throw broken[0];
  }
}
