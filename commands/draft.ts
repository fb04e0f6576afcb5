/**
 * A garage with the changes of a message laid over it, so that each line sees what the lines before it did, and the record of what was read.
 * The records of one car in one message become one revision. What names a moment closes the revision that is open: `keep as`, and an undo.
 */
import type { Fact, Facts } from '../core/car.js';
import type { CarView, Change, Context, Garage, Member, Revision, Setup, Sight } from './context.js';
import type { Part } from './parts/part.js';
import { isSame } from './same.js';

type Recording = Extract<Change, { change: 'record' }>;
type Make = Extract<Change, { change: 'make car' }>;

/** A car as the message has left it so far. */
interface Car {
  readonly id: number;
  readonly owner: string;
  readonly ownerName: string;
  name: string;
  shared: boolean;
  head: () => Revision;
  /** Revisions of this message, oldest first. */
  readonly made: Revision[];
  /** Where in `changes` the revision stands that further records join. */
  open: number | undefined;
  setups: readonly Setup[];
  parts: readonly Part[];
}

const factsAgree = (a: Facts, b: Facts): boolean => {
  if (a.size !== b.size) return false;
  for (const [path, fact] of a) {
    const other: Fact | undefined = b.get(path);
    if (!other || other.within !== fact.within || other.source !== fact.source || !isSame(other.value, fact.value)) return false;
  }
  return true;
};

export class Draft {
  readonly #base: Garage;
  readonly #room: string;
  readonly #now: number;
  readonly #read = new Map<number, number>();
  readonly #seen = new Map<number, Sight>();
  readonly #changes: (Change | undefined)[] = [];
  readonly #revisions = new Map<number, Revision>();
  readonly #others: readonly CarView[];
  #mine: Car[];
  #chosen: number | undefined;
  #asker: Member;
  #lastRevision = 0;
  #lastPart = 0;

  constructor(context: Pick<Context, 'garage' | 'asker' | 'room' | 'now'>) {
    this.#base = context.garage;
    this.#asker = context.asker;
    this.#room = context.room.id;
    this.#now = context.now;
    this.#mine = context.garage.mine.map((view) => this.#carOf(view));
    this.#chosen = context.garage.chosen?.id;
    this.#others = context.garage.others.map((view) => this.#seeing(view));
  }

  /** The asker, with the preferences as the message has left them. */
  get asker(): Member {
    return this.#asker;
  }
  /** What the message wants changed so far, in order, each car's records joined. */
  get changes(): readonly Change[] {
    return this.#changes.filter((change) => change !== undefined);
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
    for (const [at, { name }] of this.#base.others.entries()) if (said.includes(lettersOf(name))) void this.#others[at]?.head;
  }
  /** The garage as the message has left it; a snapshot that later changes don't alter. */
  get garage(): Garage {
    const views = new Map(this.#mine.map((car) => [car.id, viewOf(car)]));
    const chosen = this.#chosen === undefined ? undefined : views.get(this.#chosen);
    const made = new Map(this.#mine.map((car) => [car.id, [...car.made].reverse()]));
    const setups = new Map(this.#mine.map((car) => [car.id, car.setups]));
    const parts = new Map(this.#mine.map((car) => [car.id, car.parts]));
    const base = this.#base;
    return {
      mine: [...views.values()],
      chosen,
      others: this.#others,
      members: base.members,
      revision: (id) => (id < 0 ? this.#revisions.get(id) : base.revision(id)),
      history: (car, limit, before) => {
        const own = made.get(car);
        if (!own) return [];
        const recent = before === undefined ? own : before < 0 ? own.slice(own.findIndex((r) => r.id === before) + 1) : [];
        const older =
          car < 0 ? [] : base.history(car, Math.max(0, limit - recent.length), before !== undefined && before > 0 ? before : undefined);
        return [...recent.slice(0, limit), ...(recent.length < limit ? older : [])];
      },
      setups: (car) => setups.get(car) ?? [],
      parts: (car) => parts.get(car) ?? [],
    };
  }

  /** @throws when a change speaks of a car that is not the asker's, or of a head that is not the car's: a mistake of the command. */
  apply(change: Change): void {
    switch (change.change) {
      case 'make car':
        this.#make(change);
        return;
      case 'record':
        this.#record(change);
        return;
      case 'choose car':
        this.#chosen = this.#car(change.car).id;
        break;
      case 'rename car':
        this.#car(change.car).name = change.name;
        break;
      case 'forget car': {
        const gone = this.#car(change.car).id;
        this.#mine = this.#mine.filter((car) => car.id !== gone);
        if (this.#chosen === gone) this.#chosen = this.#mine[0]?.id;
        break;
      }
      case 'keep': {
        this.#keep(change);
        return;
      }
      case 'add part': {
        const car = this.#car(change.car);
        const id = --this.#lastPart;
        car.parts = [...car.parts, { ...change.part, id }];
        this.#changes.push({ ...change, as: id });
        return;
      }
      case 'forget part': {
        const car = this.#car(change.car);
        if (!car.parts.some(({ id }) => id === change.part)) throw new Error(`car ${car.id} has no part ${change.part}`);
        car.parts = car.parts.filter(({ id }) => id !== change.part);
        break;
      }
      case 'share':
      case 'unshare': {
        const car = this.#car(change.car);
        if (change.room === this.#room) car.shared = change.change === 'share';
        break;
      }
      case 'prefer':
        this.#asker = { ...this.#asker, preferences: { ...this.#asker.preferences, ...change.preferences } };
        break;
      case 'forget me':
        this.#mine = [];
        this.#chosen = undefined;
        break;
      case 'prefix':
      case 'leave room':
      case 'export me':
        break;
    }
    this.#changes.push(change);
  }

  #make(change: Make): void {
    if (this.#mine.some((car) => car.id === change.car) || change.car >= 0) throw new Error(`a new car cannot be called ${change.car}`);
    const as = --this.#lastRevision;
    const revision = this.#store({
      ...{ id: as, car: change.car, parent: undefined, at: this.#now, by: this.#asker.id, why: change.why ?? '', facts: change.facts },
      measuredIn: change.measured ? as : undefined,
      undoes: undefined,
    });
    this.#mine = [
      ...this.#mine,
      {
        ...{ id: change.car, owner: this.#asker.id, ownerName: this.#asker.name, name: change.name, shared: false, setups: [], parts: [] },
        head: () => revision,
        made: [revision],
        open: this.#changes.length,
      },
    ];
    this.#changes.push({ ...change, as });
  }

  #record(change: Recording): void {
    const car = this.#car(change.car);
    const head = car.head();
    if (head.id !== change.head) throw new Error(`car ${car.id} stands at ${head.id}, not at ${change.head}`);
    if (car.open !== undefined && change.undoes === head.id) this.#takeBack(car, car.open);
    else if (car.open !== undefined && change.undoes === undefined) this.#join(car, car.open, change);
    else this.#add(car, change);
  }

  /** A new revision. An undo is a revision of its own, so that a later undo finds what it took back. */
  #add(car: Car, change: Recording): void {
    const as = --this.#lastRevision;
    const revision = this.#store({
      ...{ id: as, car: car.id, parent: change.head, at: this.#now, by: this.#asker.id, why: change.why, facts: change.facts },
      measuredIn: change.measuredIn === 'now' ? as : change.measuredIn,
      undoes: change.undoes,
    });
    car.made.push(revision);
    car.head = () => revision;
    car.open = change.undoes === undefined ? this.#changes.length : undefined;
    this.#changes.push({ ...change, as });
  }

  /** The message's revision takes the next line's facts in. */
  #join(car: Car, at: number, change: Recording): void {
    const before = car.head();
    const why = before.why === '' ? change.why : `${before.why}; ${change.why}`;
    const measuredIn = change.measuredIn === 'now' ? before.id : change.measuredIn;
    const revision = this.#store({ ...before, facts: change.facts, why, measuredIn });
    const own = measuredIn === before.id;
    const earlier = this.#changes[at];
    if (earlier?.change === 'make car') this.#changes[at] = { ...earlier, facts: change.facts, measured: own, why };
    else if (earlier?.change === 'record')
      this.#changes[at] = { ...earlier, facts: change.facts, why, measuredIn: own ? 'now' : measuredIn };
    else throw new Error(`car ${car.id} has no open revision`);
    car.made.splice(-1, 1, revision);
    car.head = () => revision;
    const parent = revision.parent === undefined ? undefined : this.#revision(revision.parent);
    if (parent && parent.measuredIn === measuredIn && factsAgree(parent.facts, revision.facts)) this.#takeBack(car, at);
  }

  /** The message's own revision goes, as if it had not been asked for. */
  #takeBack(car: Car, at: number): void {
    const gone = car.made.pop();
    const parent = gone?.parent === undefined ? undefined : this.#revision(gone.parent);
    if (!parent) throw new Error(`car ${car.id} has nothing before its first revision`);
    this.#changes[at] = undefined;
    car.open = undefined;
    car.head = () => parent;
  }

  #keep(change: Extract<Change, { change: 'keep' }>): void {
    const car = this.#car(change.car);
    const revision = change.revision === 'now' ? car.head().id : change.revision;
    // A name is given to a moment: what is recorded after it is another revision.
    if (revision < 0) car.open = undefined;
    car.setups = [...car.setups.filter((setup) => setup.name.toLowerCase() !== change.name.toLowerCase()), { name: change.name, revision }];
    this.#changes.push({ ...change, revision });
  }

  #store(revision: Revision): Revision {
    this.#revisions.set(revision.id, revision);
    return revision;
  }
  #revision(id: number): Revision | undefined {
    return id < 0 ? this.#revisions.get(id) : this.#base.revision(id);
  }
  #car(id: number): Car {
    const car = this.#mine.find((one) => one.id === id);
    if (!car) throw new Error(`car ${id} is not ${this.#asker.id}'s`);
    return car;
  }
  #carOf(view: CarView): Car {
    const noting = this.#noting(view);
    return {
      ...{ id: view.id, owner: view.owner, ownerName: view.ownerName, name: view.name, shared: view.shared },
      head: () => noting.head,
      made: [],
      open: undefined,
      setups: this.#base.setups(view.id),
      parts: this.#base.parts(view.id),
    };
  }
  /** A clubmate's car: not even its name is for everybody. */
  #seeing(view: CarView): CarView {
    const look = (): CarView => {
      this.#read.set(view.id, view.head.id);
      if (view.sharing !== undefined) this.#seen.set(view.id, { car: view.id, sharing: view.sharing });
      return view;
    };
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
  /** The same view, which notes that its facts were looked at. */
  #noting(view: CarView): CarView {
    const read = this.#read;
    return {
      ...{ id: view.id, owner: view.owner, ownerName: view.ownerName, name: view.name, shared: view.shared },
      get head() {
        const head = view.head;
        read.set(view.id, head.id);
        return head;
      },
    };
  }
}

const lettersOf = (text: string): string =>
  text
    .normalize('NFKC')
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, '');
const viewOf = (car: Car): CarView => {
  const head = car.head;
  return {
    ...{ id: car.id, owner: car.owner, ownerName: car.ownerName, name: car.name, shared: car.shared },
    get head() {
      return head();
    },
  };
};
