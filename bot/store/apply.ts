/** What commands want changed, made true: inside the caller's transaction, all of it or none. */
import type { Change, Member } from '../../commands/context.js';
import { type CarRow, carNamed, carsOf, forgetCar, makeCar, moveHead, ownCar, renameCar } from './cars.js';
import { changesMadeBy, noteChange } from './changed.js';
import { exportMember, type MemberExport } from './export.js';
import { forgetMember } from './forget.js';
import { chooseCar, chosenCar, findMember, meetMember, preferFor } from './members.js';
import { isJoined, mayChangeRoom } from './memberships.js';
import { addPart, forgetPart } from './parts.js';
import { addRevision, isRevisionOf, stepsOf } from './revisions.js';
import { findRoom, setPrefix } from './rooms.js';
import { keepSetup } from './setups.js';
import { share, unshare } from './shares.js';
import type { Store } from './store.js';

/** The car stands elsewhere than the message was worked out on: undo the transaction and work it out again. */
export class HeadMoved extends Error {
  override readonly name = 'HeadMoved';
  readonly car: number;
  constructor(car: number) {
    super(`Car ${car} has changed since the message was worked out.`);
    this.car = car;
  }
}
/** The event has made its changes before: undo the transaction, nothing is left to do. */
export class AlreadyMade extends Error {
  override readonly name = 'AlreadyMade';
}
/** Not allowed, or not possible as things stand now. The message is a sentence for the member. */
export class ChangeRefused extends Error {
  override readonly name = 'ChangeRefused';
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
}
export interface Applied {
  /** Numbers below 0 that the reply used, and what was stored for them. */
  readonly cars: ReadonlyMap<number, number>;
  readonly revisions: ReadonlyMap<number, number>;
  /** The data that the member asked for, to be sent as a file to a direct chat. */
  readonly exported: MemberExport | undefined;
  /** Somebody was forgotten: call the store's `checkpoint` once the transaction is committed, and write nothing of them afterwards that outlasts the reply. */
  readonly forgot: boolean;
  /** Rooms that the bot was told to leave, after its reply. */
  readonly leave: readonly string[];
}

/**
 * Applies a reply's changes in order. Call it inside a transaction, and let what it throws undo it.
 * @throws HeadMoved, AlreadyMade, ChangeRefused, FactsRefused
 */
export function applyChanges(store: Store, { asker, room, changes, at, cause }: Applying): Applied {
  if (!store.database.inTransaction) throw new Error('Changes are applied inside a transaction.');
  if (changes.length > 0 && changesMadeBy(store, cause).length > 0) throw new AlreadyMade(`The changes of ${cause} were made before.`);
  const work = new Application(store, asker, room, at, cause);
  for (const change of changes) {
    work.apply(change);
    noteChange(store, cause, change.change);
  }
  return work;
}

class Application implements Applied {
  readonly cars = new Map<number, number>();
  readonly revisions = new Map<number, number>();
  readonly leave: string[] = [];
  readonly #parts = new Map<number, number>();
  exported: MemberExport | undefined;
  forgot = false;
  readonly #store: Store;
  readonly #asker: Member;
  readonly #room: string;
  readonly #at: number;
  readonly #cause: string;

  constructor(store: Store, asker: Member, room: string, at: number, cause: string) {
    this.#store = store;
    this.#asker = asker;
    this.#room = room;
    this.#at = at;
    this.#cause = cause;
  }

  apply(change: Change): void {
    const store = this.#store;
    switch (change.change) {
      case 'make car':
        this.#make(change);
        break;
      case 'record':
        this.#record(change);
        break;
      case 'choose car':
        chooseCar(store, this.#asker.id, this.#own(change.car).id);
        break;
      case 'rename car': {
        const car = this.#own(change.car);
        this.#nameIsFree(change.name, car.id);
        renameCar(store, car.id, change.name);
        break;
      }
      case 'forget car':
        this.#forget(this.#own(change.car));
        break;
      case 'keep': {
        const car = this.#own(change.car);
        keepSetup(store, car.id, change.name, change.revision === 'now' ? car.head : this.#revisionOf(car, change.revision));
        break;
      }
      case 'share': {
        const car = this.#own(change.car);
        if (!isJoined(store, change.room, this.#asker.id)) throw new ChangeRefused('A car can be shared only in a room that you are in.');
        share(store, car.id, change.room);
        break;
      }
      case 'add part': {
        const part = addPart(store, this.#own(change.car).id, change.part, this.#at, this.#cause);
        if (change.as !== undefined) this.#parts.set(change.as, part);
        break;
      }
      case 'forget part': {
        const part = this.#parts.get(change.part) ?? change.part;
        if (!forgetPart(store, this.#own(change.car).id, part)) throw new ChangeRefused('That is not in the box any more.');
        break;
      }
      case 'unshare':
        unshare(store, this.#own(change.car).id, change.room);
        break;
      case 'prefer':
        this.#met();
        preferFor(store, this.#asker.id, change.preferences);
        break;
      case 'forget me':
        forgetMember(store, this.#asker.id);
        this.forgot = true;
        break;
      case 'export me':
        this.exported = exportMember(store, this.#asker.id, this.#at);
        break;
      case 'prefix':
        this.#prefix(change.room, change.prefix);
        break;
      case 'leave room':
        this.#here(change.room);
        this.leave.push(change.room);
        break;
    }
  }

  #make(change: Extract<Change, { change: 'make car' }>): void {
    this.#met();
    this.#nameIsFree(change.name, undefined);
    const car = makeCar(this.#store, this.#asker.id, change.name);
    this.cars.set(change.car, car);
    this.#add(car, change.as, {
      parent: undefined,
      why: change.why ?? '',
      facts: change.facts,
      measuredIn: change.measured ? 'now' : undefined,
      undoes: undefined,
    });
  }

  #record(change: Extract<Change, { change: 'record' }>): void {
    const car = this.#own(change.car);
    const head = change.head < 0 ? this.#made(change.head) : change.head;
    if (car.head !== head) throw new HeadMoved(car.id);
    // A draft that was measured in itself says so by its own number.
    const measuredIn =
      change.measuredIn === undefined || change.measuredIn === 'now'
        ? change.measuredIn
        : change.measuredIn === change.as
          ? 'now'
          : this.#revisionOf(car, change.measuredIn);
    const undoes = change.undoes === undefined ? undefined : this.#revisionOf(car, change.undoes);
    this.#add(car.id, change.as, { parent: car.head, why: change.why, facts: change.facts, measuredIn, undoes });
  }

  #add(
    car: number,
    as: number | undefined,
    made: Pick<Parameters<typeof addRevision>[1], 'parent' | 'why' | 'facts' | 'measuredIn' | 'undoes'>,
  ): void {
    const step = stepsOf(this.#store, car, this.#cause) + 1;
    const id = addRevision(this.#store, { ...made, car, at: this.#at, by: this.#asker.id, cause: this.#cause, step });
    moveHead(this.#store, car, id);
    if (as !== undefined) this.revisions.set(as, id);
  }

  /** The chosen car gone, the first of those left is the one in use: as in a draft. */
  #forget(car: CarRow): void {
    const wasChosen = chosenCar(this.#store, this.#asker.id) === car.id;
    forgetCar(this.#store, car.id);
    if (wasChosen) chooseCar(this.#store, this.#asker.id, carsOf(this.#store, this.#asker.id)[0]?.id);
  }

  #prefix(room: string, prefix: string): void {
    this.#here(room);
    if (!findRoom(this.#store, room)?.direct && !mayChangeRoom(this.#store, room, this.#asker.id))
      throw new ChangeRefused("Only a member with the power to change this room's settings can set the prefix here.");
    // Longer or with a space in it, nobody could type it before each line; the table refuses it too.
    if (!/^\S{1,8}$/u.test(prefix)) throw new ChangeRefused('A prefix is 1 to 8 characters with no space, like ! or sx:');
    setPrefix(this.#store, room, prefix);
  }

  /** A room is changed by somebody who is in it, where it was asked. */
  #here(room: string): void {
    if (room !== this.#room) throw new Error('A room is changed only from inside it.');
    if (!isJoined(this.#store, room, this.#asker.id)) throw new ChangeRefused('Only somebody who is in a room can change it.');
  }
  /** Somebody who was just forgotten, in the same message, is met again. */
  #met(): void {
    const { id, name, preferences } = this.#asker;
    if (findMember(this.#store, id) === undefined) meetMember(this.#store, id, name, preferences);
  }
  /** Another member's car is answered like none: nobody learns that it is there. */
  #own(car: number): CarRow {
    const id = car < 0 ? this.cars.get(car) : car;
    const row = id === undefined ? undefined : ownCar(this.#store, id, this.#asker.id);
    if (row === undefined) throw new ChangeRefused('That car is not one of yours any more.');
    return row;
  }
  #made(draft: number): number {
    const id = this.revisions.get(draft);
    if (id === undefined) throw new Error(`No change of this reply made the revision ${draft}.`);
    return id;
  }
  #revisionOf(car: CarRow, revision: number): number {
    const id = revision < 0 ? this.#made(revision) : revision;
    if (!isRevisionOf(this.#store, id, car.id)) throw new ChangeRefused(`${car.name} has no such moment in its history any more.`);
    return id;
  }
  #nameIsFree(name: string, except: number | undefined): void {
    const other = carNamed(this.#store, this.#asker.id, name);
    if (other !== undefined && other.id !== except)
      throw new ChangeRefused(`You have a car called ${other.name} already; give this one another name.`);
  }
}
