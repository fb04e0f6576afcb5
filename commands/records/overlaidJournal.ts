/** The journal of a message's draft: its own entries over those that can be read. */
import { type Entry, type Journal, type JournalReads, newer } from './tables.js';

export class OverlaidJournal implements Journal {
  readonly #base: JournalReads;
  /** By number, as they are here; undefined where they were taken away. */
  readonly #entries = new Map<number, Entry | undefined>();
  readonly #dropped: ((entry: Entry) => boolean)[] = [];
  readonly #step: -1 | 1;
  #next: number;

  /** @param step from one number to the next: -1 in a draft, 1 in a store in memory */
  constructor(base: JournalReads, step: -1 | 1) {
    this.#base = base;
    this.#step = step;
    this.#next = base instanceof OverlaidJournal ? base.#next : step;
  }
  ofLine(line: string): readonly Entry[] {
    return this.#over(this.#base.ofLine(line), (entry) => entry.line === line);
  }
  undoneBy(line: string): readonly Entry[] {
    return this.#over(this.#base.undoneBy(line), (entry) => entry.undone === line);
  }
  newest(member: string, limit: number, before?: number): readonly Entry[] {
    const below = this.#base.newest(member, limit + this.#entries.size, before);
    const all = this.#over(below, (entry) => entry.member === member && (before === undefined || newer(before, entry.id) < 0));
    return [...all].sort((a, b) => newer(a.id, b.id)).slice(0, limit);
  }

  add(entry: Omit<Entry, 'id'>): void {
    this.#entries.set(this.#next, { ...entry, id: this.#next });
    this.#next += this.#step;
  }
  replace(entry: Entry): void {
    this.#entries.set(entry.id, entry);
  }
  remove(entry: Entry): void {
    this.#entries.set(entry.id, undefined);
  }
  /** Whatever is so, here and below. */
  drop(goes: (entry: Entry) => boolean): void {
    for (const [id, entry] of this.#entries) if (entry && goes(entry)) this.#entries.set(id, undefined);
    this.#dropped.push(goes);
  }
  /** What lies below as it is seen from here, and the message's own. */
  #over(below: readonly Entry[], wanted: (entry: Entry) => boolean): readonly Entry[] {
    const known = new Set(below.map(({ id }) => id));
    const seen = below.flatMap((entry) =>
      this.#entries.has(entry.id) ? (this.#entries.get(entry.id) ?? []) : this.#dropped.some((goes) => goes(entry)) ? [] : [entry],
    );
    const here = [...this.#entries.values()].flatMap((entry) => (entry && !known.has(entry.id) ? [entry] : []));
    // What is altered here is wanted by what it has become.
    return [...seen, ...here].filter((entry) => !this.#entries.has(entry.id) || wanted(entry));
  }
}
