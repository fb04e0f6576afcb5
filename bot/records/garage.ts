/** What one member may know, in one room, now: the garage that commands get. */
import type { Garage } from '../../commands/context.js';
import { garageOver, once } from '../../commands/records/garage.js';
import type { Held, Id, Of } from '../../commands/records/held.js';
import type { Kind } from '../../commands/records/kind.js';
import { cars } from '../../commands/records/kinds/car.js';
import type { JournalReads, Reads } from '../../commands/records/tables.js';
import { journalOf } from './journal.js';
import { isJoined, membersHere } from './memberships.js';
import { carsSeen, revisionSeen } from './revisions.js';
import type { Store } from './store.js';
import { SqlTables } from './tables.js';

/**
 * The asker's garage in a room. Read when it is first asked for and kept, so that one line sees one state; make a new one for each handling.
 * Of other members' cars only what the view `seen` lets through can be reached, each time by the query.
 */
export function garageFor(store: Store, asker: string, room: string): Garage {
  const others = once(() => carsSeen(store, asker, room));
  const members = once(() => membersHere(store, asker, room));
  return garageOver(new Seen(store, asker, room), {
    ...{ asker, room },
    get others() {
      return others();
    },
    get members() {
      return members();
    },
    revision: (id) => revisionSeen(store, id, asker, room),
  });
}

/** The tables as far as the asker may see them. */
class Seen implements Reads {
  readonly journal: JournalReads;
  readonly #tables: SqlTables;
  readonly #asker: string;
  readonly #room: string;
  readonly #own: () => ReadonlySet<number>;
  readonly #isHere: () => boolean;
  /** What was read, so that it stays as it was. */
  readonly #read = new Map<string, unknown>();

  constructor(store: Store, asker: string, room: string) {
    this.#tables = new SqlTables(store);
    this.#asker = asker;
    this.#room = room;
    this.#own = once(() => new Set(this.#tables.list(cars, { member: asker }).map(({ id }) => id)));
    this.#isHere = once(() => isJoined(store, room, asker));
    const own = journalOf(store);
    this.journal = {
      ofLine: (line) => own.ofLine(line).filter(({ member }) => member === asker),
      undoneBy: (line) => own.undoneBy(line).filter(({ member }) => member === asker),
      newest: (member, limit, before) => (member === asker ? own.newest(member, limit, before) : []),
    };
  }
  find<D, I extends Id>(kind: Kind<D, I>, id: I): Held<D, I> | undefined {
    if (kind.name === cars.name) return this.list(kind, { member: this.#asker }).find((held) => held.id === id);
    return this.#once(`${kind.name} ${id}`, () => {
      const held = this.#tables.find(kind, id);
      return held !== undefined && this.#maySee(kind, held.of) ? held : undefined;
    });
  }
  list<D, I extends Id>(kind: Kind<D, I>, of: Of): readonly Held<D, I>[] {
    // What is of nobody in particular is the asker's.
    if (kind.owner === 'car' && of.car === undefined && of.member === undefined)
      return [...this.#own()].flatMap((car) => this.list(kind, { ...of, car }));
    if (kind.owner === 'member' && of.member === undefined) return this.list(kind, { ...of, member: this.#asker });
    if (!this.#reaches(kind, of)) return [];
    return this.#once(`all ${kind.name} ${of.member} ${of.car} ${of.room}`, () =>
      this.#tables.list(kind, of).filter((held) => this.#maySee(kind, held.of)),
    );
  }
  newest<D>(kind: Kind<D, number>, of: Of, limit: number, before?: number): readonly Held<D, number>[] {
    if (!this.#reaches(kind, of)) return [];
    return this.#tables.newest(kind, of, limit, before).filter((held) => this.#maySee(kind, held.of));
  }
  /** The first that a message makes. */
  next(): number {
    return -1;
  }

  #maySee({ owner }: Kind, { member, car, room }: Of): boolean {
    if (owner === 'member') return member === this.#asker;
    if (owner === 'car') return car !== undefined && this.#own().has(car);
    return owner === 'club' || (room === this.#room && this.#isHere());
  }
  /** Whether anything that may be seen is of it. */
  #reaches({ owner }: Kind, { member, car, room }: Of): boolean {
    if (owner === 'member') return member === this.#asker;
    if (owner === 'car') return car === undefined ? member === this.#asker : this.#own().has(car);
    return owner === 'club' || ((room === undefined || room === this.#room) && this.#isHere());
  }
  #once<T>(key: string, read: () => T): T {
    if (!this.#read.has(key)) this.#read.set(key, read());
    // Under a key stands what was read for it.
    return this.#read.get(key) as T;
  }
}
