/** What a message has changed so far: each line sees what the lines before it did, and nothing is stored. */
import type { CarView, Context, Garage, Member, Sight } from '../context.js';
import type { Change } from './change.js';
import { garageOver, once, sightOf } from './garage.js';
import { cars } from './kinds/car.js';
import { members } from './kinds/member.js';
import { kinds as all, type Kinds } from './kinds.js';
import { applyChange } from './machine.js';
import { Overlay } from './overlay.js';
import type { Reads } from './tables.js';
import { type Asking, drafted } from './work.js';

export class Draft {
  readonly #asking: Asking;
  readonly #kinds: Kinds;
  readonly #base: Garage;
  readonly #read = new Map<number, number>();
  readonly #seen = new Map<number, Sight>();
  readonly #others: () => readonly CarView[];
  #records: Reads;
  #changes: readonly Change[] = [];

  constructor(context: Pick<Context, 'garage' | 'asker' | 'room' | 'now' | 'event'>, kinds: Kinds = all) {
    const { garage, asker, room, now, event } = context;
    this.#asking = { asker, room: room.id, at: now, cause: event.id, line: event.line };
    this.#kinds = kinds;
    this.#base = garage;
    this.#records = garage.records;
    this.#others = once(() => garage.others.map((view) => this.#seeing(view)));
  }
  /** The asker, with the preferences as the message has left them. */
  get asker(): Member {
    const { asker } = this.#asking;
    const data = this.#records.find(members, asker.id)?.data;
    return data === undefined ? asker : { ...asker, preferences: { units: data.units, decimalMark: data.decimalMark } };
  }
  /** What the message wants changed so far, in order; nothing, where it comes to nothing. */
  get changes(): readonly Change[] {
    const { cause, line } = this.#asking;
    const changed =
      this.#changes.some(({ change }) => change === 'forget me') ||
      this.#records.journal.ofLine(line).some((entry) => entry.cause === cause);
    return changed ? this.#changes : [];
  }
  /** Heads of the stored cars that were looked at. */
  get read(): readonly { readonly car: number; readonly head: number }[] {
    return [...this.#read].map(([car, head]) => ({ car, head }));
  }
  /** Clubmates' cars of which anything was looked at. */
  get seen(): readonly Sight[] {
    return [...this.#seen.values()];
  }
  /** What was said or is answered: a clubmate's car that is named in it was seen. */
  hear(text: string): void {
    const said = lettersOf(text);
    for (const view of this.#base.others) if (said.includes(lettersOf(view.name))) this.#see(view);
  }
  /** The garage as the message has left it; later changes don't alter it. */
  get garage(): Garage {
    const { asker, room } = this.#asking;
    const sight = sightOf(this.#base, asker.id, room, this.#others);
    return garageOver(this.#records, sight, (car) => this.#note(car, this.#base.records.find(cars, car)?.data.head));
  }
  /**
   * All of a line's changes, or none.
   * @throws ChangeRefused; Moved when a change speaks of a head that is not the car's: a mistake of the command
   */
  apply(...changes: readonly Change[]): void {
    const records = new Overlay(this.#records);
    const work = drafted(records, this.#kinds, this.#asking);
    for (const change of changes) applyChange(work, change);
    this.#records = records;
    this.#changes = [...this.#changes, ...changes];
  }

  #note(car: number, head: number | undefined): void {
    if (car >= 0 && head !== undefined && head >= 0) this.#read.set(car, head);
  }
  #see(view: CarView): CarView {
    this.#note(view.id, view.head.id);
    if (view.sharing !== undefined) this.#seen.set(view.id, { car: view.id, sharing: view.sharing });
    return view;
  }
  /** A clubmate's car, which notes that it was looked at: not even its name is for everybody. */
  #seeing(view: CarView): CarView {
    const look = (): CarView => this.#see(view);
    return {
      ...{ id: view.id, owner: view.owner, shared: view.shared },
      get ownerName() {
        return look().ownerName;
      },
      get name() {
        return look().name;
      },
      get head() {
        return look().head;
      },
    };
  }
}
const lettersOf = (text: string): string =>
  text
    .normalize('NFKC')
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, '');
