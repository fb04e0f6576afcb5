/** Keeps a task going: again when it is woken, when something of it falls due, and after a pause when it broke. */
import type { Log } from '../work/world.js';
import { backOff } from './pace.js';

const longestPause_ms = 60_000;
export interface PumpOptions {
  readonly name: 'sending' | 'handling';
  readonly run: () => Promise<void>;
  /** When to run again unasked, by the clock of `now`; undefined: not before it is woken. */
  readonly nextDue: () => number | undefined;
  readonly log: Log;
  readonly now: () => number;
}
export class Pump {
  readonly #it: PumpOptions;
  #running: Promise<void> | undefined;
  #timer: NodeJS.Timeout | undefined;
  #failures = 0;
  #stopped = false;
  constructor(options: PumpOptions) {
    this.#it = options;
  }
  wake(): void {
    if (this.#stopped) return;
    clearTimeout(this.#timer);
    const running = this.#it.run();
    // Woken while it runs: the same run goes on, and is waited for already.
    if (running === this.#running) return;
    this.#running = running;
    running.then(
      () => {
        this.#failures = 0;
        const due = this.#stopped ? undefined : this.#it.nextDue();
        if (due !== undefined) this.#later(due - this.#it.now());
      },
      (problem: unknown) => {
        this.#it.log.error({ err: problem, task: this.#it.name }, 'a task broke off, and is tried again');
        this.#later(backOff(this.#failures++, longestPause_ms));
      },
    );
  }
  stop(): void {
    this.#stopped = true;
    clearTimeout(this.#timer);
  }
  #later(pause_ms: number): void {
    clearTimeout(this.#timer);
    if (!this.#stopped) this.#timer = setTimeout(() => this.wake(), Math.max(10, pause_ms));
  }
}
