/** How long to wait before asking a homeserver again. */
const shortest_ms = 1000;
/** Doubling from one second; `most_ms` at most. */
export const backOff = (failures: number, most_ms: number): number => Math.min(most_ms, shortest_ms * 2 ** Math.min(failures, 20));

/** The limit on the whole account: while it holds, nothing is sent at all. */
export class Pace {
  #until = 0;
  #refused = 0;
  get until(): number {
    return this.#until;
  }
  /** Refused with 429: as long as the homeserver says, and longer each time in a row. Those that were under way together count once. */
  limited(now: number, asked_ms: number | undefined): void {
    const again = now >= this.#until;
    const wait = Math.max(asked_ms ?? 0, backOff(this.#refused, 60_000));
    this.#until = Math.max(this.#until, now + wait);
    if (again) this.#refused++;
  }
  passed(): void {
    this.#refused = 0;
  }
}
