/** Tables in memory, laid over what can be read: a change alters the overlay alone. Overlays lie on one another, line upon line. */
import { type Held, type Id, isOf, type Of } from './held.js';
import type { Kind } from './kind.js';
import { cars } from './kinds/car.js';
import { OverlaidJournal } from './overlaidJournal.js';
import { newer, type Reads, type Tables } from './tables.js';

/** Of one kind, by id: as it is here, or undefined where it was taken away. In the order of making. */
type Shelf<D, I extends Id> = Map<I, Held<D, I> | undefined>;

/** In the order of telling, also what was put back. */
const asTold = (a: Held, b: Held): number => (typeof a.id === 'number' && typeof b.id === 'number' ? newer(b.id, a.id) : 0);

export class Overlay implements Tables {
  readonly journal: OverlaidJournal;
  readonly #base: Reads;
  readonly #step: -1 | 1;
  readonly #shelves = new Map<string, Shelf<unknown, Id>>();
  readonly #next = new Map<string, number>();
  readonly #goneCars = new Set<number>();
  readonly #gonePeople = new Set<string>();

  /** @param counting down: what a message makes has numbers below 0. Up: for a store in memory. */
  constructor(base: Reads, counting: 'down' | 'up' = 'down') {
    this.#base = base;
    this.#step = counting === 'down' ? -1 : 1;
    this.journal = new OverlaidJournal(base.journal, this.#step);
  }
  find<D, I extends Id>(kind: Kind<D, I>, id: I): Held<D, I> | undefined {
    const shelf = this.#shelf(kind);
    if (shelf.has(id)) return shelf.get(id);
    const held = this.#base.find(kind, id);
    return held === undefined || this.#isGone(held) ? undefined : held;
  }
  list<D, I extends Id>(kind: Kind<D, I>, of: Of): readonly Held<D, I>[] {
    const shelf = this.#shelf(kind);
    const below = this.#below(kind, this.#base.list(kind, of));
    const known = new Set(below.map(({ id }) => id));
    const here = [...shelf.values()].flatMap((held) => (held && !known.has(held.id) && isOf(held.of, of) ? [held] : []));
    return here.length === 0 ? below : [...below, ...here].sort(asTold);
  }
  newest<D>(kind: Kind<D, number>, of: Of, limit: number, before?: number): readonly Held<D, number>[] {
    const most = Math.max(0, Math.trunc(limit));
    const shelf = this.#shelf(kind);
    const made = [...shelf.values()]
      .flatMap((held) => (held && isOf(held.of, of) && this.#base.find(kind, held.id) === undefined ? [held] : []))
      .sort((a, b) => newer(a.id, b.id));
    const within = before === undefined || made.some(({ id }) => id === before);
    const recent = before === undefined ? made : within ? made.filter(({ id }) => newer(before, id) < 0) : [];
    const below = this.#base.newest(kind, of, most + shelf.size, within ? undefined : before);
    return [...recent, ...this.#below(kind, below)].slice(0, most);
  }
  next(kind: Pick<Kind, 'name'>): number {
    return this.#next.get(kind.name) ?? this.#base.next(kind);
  }

  add<D, I extends Id>(kind: Kind<D, I>, held: Held<D, I>): void {
    this.#shelf(kind).set(held.id, held);
    if (typeof held.id === 'number' && held.id === this.next(kind)) this.#next.set(kind.name, held.id + this.#step);
  }
  replace<D, I extends Id>(kind: Kind<D, I>, held: Held<D, I>): void {
    this.#shelf(kind).set(held.id, held);
  }
  remove<D, I extends Id>(kind: Kind<D, I>, id: I): void {
    this.#shelf(kind).set(id, undefined);
    if (kind.name !== cars.name || typeof id !== 'number') return;
    this.#goneCars.add(id);
    this.#drop(({ of }) => of.car === id);
    this.journal.drop(({ car }) => car === id);
  }
  forget(member: string): void {
    for (const { id } of this.list(cars, { member })) this.remove(cars, id);
    this.#gonePeople.add(member);
    this.#drop(({ of }) => of.member === member);
    this.journal.drop((entry) => entry.member === member);
  }

  #drop(goes: (held: Held) => boolean): void {
    for (const shelf of this.#shelves.values()) for (const [id, held] of shelf) if (held && goes(held)) shelf.set(id, undefined);
  }
  /** What lies below, as it is seen through this overlay. */
  #below<D, I extends Id>(kind: Kind<D, I>, held: readonly Held<D, I>[]): readonly Held<D, I>[] {
    const shelf = this.#shelf(kind);
    return held.flatMap((one) => (shelf.has(one.id) ? (shelf.get(one.id) ?? []) : this.#isGone(one) ? [] : [one]));
  }
  #isGone({ of }: Held): boolean {
    return (of.car !== undefined && this.#goneCars.has(of.car)) || (of.member !== undefined && this.#gonePeople.has(of.member));
  }
  #shelf<D, I extends Id>(kind: Kind<D, I>): Shelf<D, I> {
    const known = this.#shelves.get(kind.name);
    // Under a kind's name lie records of that kind alone: `add` and `replace` put them there.
    if (known !== undefined) return known as unknown as Shelf<D, I>;
    const shelf: Shelf<D, I> = new Map();
    this.#shelves.set(kind.name, shelf as unknown as Shelf<unknown, Id>);
    return shelf;
  }
}
