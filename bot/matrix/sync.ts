/** The bot's own sync loop: one sync after another, longer pauses while the homeserver does not answer, and the time of the last good one. */
import type { Log } from '../work/world.js';
import type { Intake } from './intake.js';
import { backOff } from './pace.js';
import { WireFailure } from './wire.js';

const wait_ms = 30_000;
const longestPause_ms = 30_000;
export interface SyncOptions {
  readonly intake: Pick<Intake, 'once' | 'close'>;
  readonly log: Log;
  readonly now: () => number;
  /** After each good sync: how many rows are new, and whether the one before had failed. */
  readonly synced: (rows: number, recovered: boolean) => void;
  readonly unauthorized: (failure: WireFailure) => void;
}
export class SyncLoop {
  readonly #it: SyncOptions;
  #stopped = false;
  #wake: (() => void) | undefined;
  #failures = 0;
  #lastGood: number | undefined;
  constructor(options: SyncOptions) {
    this.#it = options;
  }
  /** Milliseconds since 1970 of the last good sync; undefined before the first. */
  get lastGood(): number | undefined {
    return this.#lastGood;
  }
  get failures(): number {
    return this.#failures;
  }
  /** Until it is stopped, or the access token is not accepted. Never rejects. */
  async run(): Promise<void> {
    const { intake, log, now, synced } = this.#it;
    // The first answer is wanted at once, so that the bot is known to be ready; what waits comes with it.
    for (let wait = 0; !this.#stopped; wait = wait_ms) {
      try {
        const rows = await intake.once(wait);
        if (this.#stopped) return;
        const recovered = this.#failures > 0;
        this.#failures = 0;
        this.#lastGood = now();
        synced(rows, recovered);
      } catch (problem) {
        if (this.#stopped) return;
        if (problem instanceof WireFailure && problem.unauthorized) return this.#it.unauthorized(problem);
        const asked = problem instanceof WireFailure ? (problem.retryAfter_ms ?? 0) : 0;
        const pause = Math.max(asked, backOff(this.#failures++, longestPause_ms));
        log.warn({ err: problem, failures: this.#failures, pause_ms: pause }, 'a sync failed; nothing is lost, it is asked again');
        await this.#pause(pause);
      }
    }
  }
  stop(): void {
    this.#stopped = true;
    this.#it.intake.close();
    this.#wake?.();
  }
  #pause(ms: number): Promise<void> {
    return new Promise((resolve) => {
      const timer = setTimeout(resolve, ms);
      this.#wake = () => {
        clearTimeout(timer);
        resolve();
      };
    });
  }
}
