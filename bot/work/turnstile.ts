/**
 * One process works out the lines of many, and takes in, sends and tells its health beside it. Dear work comes here between its pieces: once it has
 * held the process for a while the event loop has a turn, and then whoever has had the least goes on. What each message costs is counted.
 */
import { type Breathe, OutOfTime } from '../../commands/breathing.js';

/** So long one piece of work after another may hold the process; a piece that takes longer holds it for as long as it takes. */
const slice_ms = 10;
/** What has cost more than this is dear: others of its room are not kept waiting for it. Everyday lines cost a few milliseconds. */
export const dear_ms = 50;
/** The most that one message may cost. The dearest single lines cost a quarter to one second, so it is room for several of them. */
export const most_ms = 5000;

export interface TurnstileOptions {
  /** Milliseconds of CPU that the process has used. */
  readonly worked?: () => number;
  /** Calls back after the event loop has had a turn. */
  readonly later?: (go: () => void) => void;
  readonly most_ms?: number;
}
/** The bot is being stopped: whoever awaits a breath lets it pass. The row stays as it was, and is handled after the next start. */
export class Stopped extends Error {
  override readonly name = 'Stopped';
}
/** Of one message. */
export interface Pass {
  readonly breathe: Breathe;
  /** Whether it has turned out to be dear. */
  readonly dear: boolean;
}
interface Counted {
  dear: boolean;
  spent: number;
  /** What the process had worked, and what of it had been counted to anybody, when this message was last looked at. */
  since: number;
  counted: number;
}
interface Waiting {
  readonly it: Counted;
  readonly go: () => void;
  readonly end: (why: Stopped) => void;
}
const cpu = (): number => {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1000;
};

export class Turnstile {
  readonly #worked: () => number;
  readonly #later: (go: () => void) => void;
  readonly #most_ms: number;
  #waiting: Waiting[] = [];
  #began: number;
  #counted = 0;
  #stopped = false;

  constructor(options: TurnstileOptions = {}) {
    this.#worked = options.worked ?? cpu;
    this.#later = options.later ?? setImmediate;
    this.#most_ms = options.most_ms ?? most_ms;
    this.#began = this.#worked();
  }
  /** `turnedDear` is called once, when the message has. */
  enter(turnedDear: () => void = () => undefined): Pass {
    const it: Counted = { dear: false, spent: 0, since: this.#worked(), counted: this.#counted };
    const breathe = async (): Promise<void> => {
      if (this.#stopped) throw new Stopped('the bot is being stopped');
      this.#count(it);
      if (it.spent > this.#most_ms) throw new OutOfTime();
      if (!it.dear && it.spent > dear_ms) {
        it.dear = true;
        turnedDear();
      }
      if (it.since - this.#began >= slice_ms) await this.#wait(it);
    };
    return {
      breathe,
      get dear() {
        return it.dear;
      },
    };
  }
  /** Whoever awaits a breath, now or later, ends with `Stopped`. */
  stop(): void {
    this.#stopped = true;
    for (const { end } of this.#waiting.splice(0)) end(new Stopped('the bot is being stopped'));
  }

  /** What was counted to others meanwhile (while this one waited for a sum that is worked out apart) is not its own. */
  #count(it: Counted): void {
    const now = this.#worked();
    const own = now - it.since - (this.#counted - it.counted);
    it.spent += own;
    this.#counted += own;
    it.since = now;
    it.counted = this.#counted;
  }
  #wait(it: Counted): Promise<void> {
    return new Promise((go, end) => {
      this.#waiting.push({ it, go, end });
      if (this.#waiting.length === 1) this.#later(this.#next);
    });
  }
  readonly #next = (): void => {
    const least = this.#waiting.reduce<Waiting | undefined>((a, b) => (a && a.it.spent <= b.it.spent ? a : b), undefined);
    if (!least) return;
    this.#waiting = this.#waiting.filter((one) => one !== least);
    // One a turn of the event loop: together they would hold it for as long as all of them take.
    if (this.#waiting.length > 0) this.#later(this.#next);
    least.it.since = this.#began = this.#worked();
    least.it.counted = this.#counted;
    least.go();
  };
}
