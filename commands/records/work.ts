/** What the changes of a message are made with: each write goes to the tables and into the journal. */
import type { Member } from '../context.js';
import type { Held, Id, Of } from './held.js';
import type { Kind, World } from './kind.js';
import { cars } from './kinds/car.js';
import type { Kinds } from './kinds.js';
import { ChangeRefused } from './refused.js';
import type { Tables } from './tables.js';

export interface Asking {
  readonly asker: Member;
  /** The room in which it was asked. */
  readonly room: string;
  /** Milliseconds since 1970. */
  readonly at: number;
  /** Id of the event that asked for it. */
  readonly cause: string;
  /** The event of the line: the same, or the line that was edited. */
  readonly line: string;
}
/** In a draft it is taken that all is allowed: the store knows. */
export const drafted = (tables: Tables, kinds: Kinds, asking: Asking): Work =>
  new Work(tables, kinds, asking, { isIn: () => true, order: () => undefined });
/** `quietly`: as if it had not been asked for. `back`: because something is taken back. */
type Noting = 'as asked' | 'back' | 'quietly';

export class Work {
  readonly tables: Tables;
  readonly kinds: Kinds;
  readonly asking: Asking;
  readonly world: World;
  /** What this message has made: the first of a kind is -1 in it. */
  readonly #made = new Map<string, number[]>();
  #noting: Noting = 'as asked';

  constructor(tables: Tables, kinds: Kinds, asking: Asking, world: World) {
    this.tables = tables;
    this.kinds = kinds;
    this.asking = asking;
    this.world = world;
  }
  get told(): { readonly at: number; readonly by: string; readonly cause: string } {
    return { at: this.asking.at, by: this.asking.asker.id, cause: this.asking.cause };
  }
  noting(how: Noting, work: () => void): void {
    const before = this.#noting;
    this.#noting = how;
    try {
      work();
    } finally {
      this.#noting = before;
    }
  }

  /** @throws ChangeRefused for what the asker has no right to change: answered as if it were not there */
  mine(kind: Kind, { member, car, room }: Of): void {
    const { tables, asking, world } = this;
    const allowed =
      kind.owner === 'member'
        ? member === asking.asker.id
        : kind.owner === 'car'
          ? car !== undefined && tables.find(cars, car)?.of.member === asking.asker.id
          : kind.owner === 'club' || (room !== undefined && world.isIn(room));
    if (!allowed) throw new ChangeRefused(kind.gone);
  }
  /** The number under which something is kept that this message made: of a number below 0; any other stands for itself. */
  kept({ name }: Pick<Kind, 'name'>, id: number): number {
    return id < 0 ? (this.#made.get(name)?.[-id - 1] ?? id) : id;
  }
  /** Numbers below 0 that the message used, and what was made for them. */
  made({ name }: Pick<Kind, 'name'>): ReadonlyMap<number, number> {
    return new Map(this.#made.get(name)?.map((id, at) => [-at - 1, id]));
  }
  /** Without a word in the journal. */
  insert<D, I extends Id>(kind: Kind<D, I>, held: Held<D, I>): void {
    // In a draft they are what they are called.
    if (typeof held.id === 'number' && held.id > 0 && held.id === this.tables.next(kind))
      this.#made.set(kind.name, [...(this.#made.get(kind.name) ?? []), held.id]);
    this.tables.add(kind, held);
  }
  /** A new record under the next number. */
  add<D>(kind: Kind<D, number>, of: Of, data: D, text: string): number {
    const id = this.tables.next(kind);
    this.put(kind, { id, of, data, told: this.told, text });
    return id;
  }
  /** A record under its own name, new or in the place of what stands there; or one that is put back. */
  put<D, I extends Id>(kind: Kind<D, I>, held: Held<D, I>): void {
    const sentence = kind.rule?.(held, this.tables, this.world);
    if (sentence !== undefined) throw new ChangeRefused(sentence);
    const before = this.tables.find(kind, held.id);
    if (before === undefined) this.insert(kind, held);
    else if (JSON.stringify(before) === JSON.stringify(held)) return;
    else this.tables.replace(kind, held);
    this.note(kind, held, before, held);
  }
  remove<D, I extends Id>(kind: Kind<D, I>, held: Held<D, I>): void {
    this.tables.remove(kind, held.id);
    this.note(kind, held, held, undefined);
  }
  /** That something was done which can't be taken back. */
  noteOrder(what: string): void {
    this.note({ name: 'order' }, { id: what, of: {}, data: undefined, told: undefined, text: '' }, undefined, undefined);
  }
  /** `record`: what it is of and called. */
  note<D, I extends Id>(kind: Pick<Kind<D, I>, 'name'>, record: Held, before: Held | undefined, after: Held | undefined): void {
    if (this.#noting === 'quietly') return;
    const { asker, at, cause, line } = this.asking;
    this.tables.journal.add({
      ...{ line, cause, member: asker.id, at, kind: kind.name, record: record.id, car: record.of.car, before, after },
      ...{ back: this.#noting === 'back', undone: undefined },
    });
  }
}
