/** What commands want changed, made true: inside the caller's transaction, all of it or none. */
import type { Change, Member } from '../../commands/context.js';
import type { Order } from '../../commands/records/change.js';
import { cars } from '../../commands/records/kinds/car.js';
import { revisions } from '../../commands/records/kinds/revision.js';
import { applyChange } from '../../commands/records/machine.js';
import { ChangeRefused } from '../../commands/records/refused.js';
import { Work } from '../../commands/records/work.js';
import { changesMadeBy, noteChange } from './changed.js';
import { exportMember, type MemberExport } from './export.js';
import { isJoined, mayChangeRoom } from './memberships.js';
import { findRoom, setPrefix } from './rooms.js';
import type { Store } from './store.js';
import { SqlTables } from './tables.js';

export { ChangeRefused, Moved } from '../../commands/records/refused.js';
/** The event has made its changes before: undo the transaction, nothing is left to do. */
export class AlreadyMade extends Error {
  override readonly name = 'AlreadyMade';
}
export interface Applying {
  readonly asker: Member;
  /** The room in which it was asked. */
  readonly room: string;
  readonly changes: readonly Change[];
  /** Milliseconds since 1970. */
  readonly at: number;
  /** Id of the event that asked for it. */
  readonly cause: string;
  /** Of an edit: the line that was edited. */
  readonly line?: string;
}
export interface Applied {
  /** Numbers below 0 that the reply used, and what was stored for them. */
  readonly cars: ReadonlyMap<number, number>;
  readonly revisions: ReadonlyMap<number, number>;
  /** The data that the member asked for, as a file, where it was asked. */
  readonly exported: MemberExport | undefined;
  /** Somebody was forgotten: call the store's `checkpoint` once the transaction is committed, and write nothing of them afterwards that outlasts the reply. */
  readonly forgot: boolean;
  /** Rooms that the bot was told to leave, after its reply. */
  readonly leave: readonly string[];
}

/**
 * Applies a reply's changes in order. Call it inside a transaction, and let what it throws undo it.
 * @throws Moved, AlreadyMade, ChangeRefused, FactsRefused
 */
export function applyChanges(store: Store, { asker, room, changes, at, cause, line = cause }: Applying): Applied {
  if (!store.database.inTransaction) throw new Error('Changes are applied inside a transaction.');
  if (changes.length > 0 && changesMadeBy(store, cause).length > 0) throw new AlreadyMade(`The changes of ${cause} were made before.`);
  const orders = new Orders(store, asker.id, room, at);
  const work = new Work(new SqlTables(store), store.kinds, { asker, room, at, cause, line }, orders);
  for (const change of changes) {
    applyChange(work, change);
    noteChange(store, cause, change.change);
  }
  const { exported, forgot, leave } = orders;
  return { cars: work.made(cars), revisions: work.made(revisions), exported, forgot, leave };
}

/** What is done in the world. */
class Orders {
  readonly leave: string[] = [];
  exported: MemberExport | undefined;
  forgot = false;
  readonly #store: Store;
  readonly #asker: string;
  readonly #room: string;
  readonly #at: number;

  constructor(store: Store, asker: string, room: string, at: number) {
    this.#store = store;
    this.#asker = asker;
    this.#room = room;
    this.#at = at;
  }
  isIn(room: string): boolean {
    return isJoined(this.#store, room, this.#asker);
  }
  order(order: Order): void {
    switch (order.change) {
      case 'forget me':
        this.forgot = true;
        break;
      case 'export me':
        this.exported = exportMember(this.#store, this.#asker, this.#at);
        break;
      case 'prefix':
        this.#prefix(order.room, order.prefix);
        break;
      case 'leave room':
        this.#here(order.room);
        this.leave.push(order.room);
        break;
    }
  }

  #prefix(room: string, prefix: string): void {
    this.#here(room);
    if (!findRoom(this.#store, room)?.direct && !mayChangeRoom(this.#store, room, this.#asker))
      throw new ChangeRefused("Only a member with the power to change this room's settings can set the prefix here.");
    // Longer or with a space in it, nobody could type it before each line; the table refuses it too.
    if (!/^\S{1,8}$/u.test(prefix)) throw new ChangeRefused('A prefix is 1 to 8 characters with no space, like ! or sx:');
    setPrefix(this.#store, room, prefix);
  }
  /** A room is changed by somebody who is in it, where it was asked. */
  #here(room: string): void {
    if (room !== this.#room) throw new Error('A room is changed only from inside it.');
    if (!this.isIn(room)) throw new ChangeRefused('Only somebody who is in a room can change it.');
  }
}
