/** The garage that commands get, over what their asker may read: the same for a snapshot of the store and for the draft of a message. */
import type { CarView, Garage, Revision } from '../context.js';
import { cars, type HeldCar } from './kinds/car.js';
import { members } from './kinds/member.js';
import { type HeldRevision, revisions } from './kinds/revision.js';
import { setups } from './kinds/setup.js';
import { shares } from './kinds/share.js';
import type { Reads } from './tables.js';

/** Who asks where, and what of others can be seen there; a message's own changes do not alter it. */
export interface Sight {
  readonly asker: string;
  readonly room: string;
  readonly others: readonly CarView[];
  readonly members: Garage['members'];
  /** Of another member's car: its head, and what that was measured in. */
  revision(id: number): Revision | undefined;
}
/** Of a garage in which the asker's own cars stand otherwise. */
export const sightOf = (garage: Garage, asker: string, room: string, others: () => readonly CarView[] = () => garage.others): Sight => ({
  ...{ asker, room },
  get others() {
    return others();
  },
  get members() {
    return garage.members;
  },
  revision(id) {
    const moment = garage.revision(id);
    return moment && garage.others.some((one) => one.id === moment.car) ? moment : undefined;
  },
});
const moments = new WeakMap<HeldRevision, Revision>();
/** The same for the same record: what was worked out of its facts is found by them. */
export function momentOf(held: HeldRevision): Revision {
  const known = moments.get(held);
  if (known !== undefined) return known;
  const { id, of, data, told, text } = held;
  const moment: Revision = {
    ...{ id, car: of.car ?? 0, parent: data.parent, at: told?.at ?? 0, by: told?.by ?? '', why: text },
    get facts() {
      return data.facts;
    },
    ...{ measuredIn: data.measuredIn, undoes: data.undoes },
  };
  moments.set(held, moment);
  return moment;
}
/** A value that is worked out once, when it is first asked for. */
export function once<T>(make: () => T): () => T {
  let made: { readonly value: T } | undefined;
  return () => {
    made ??= { value: make() };
    return made.value;
  };
}

/**
 * Read when it is first asked for, and kept: one line sees one state.
 * @param looked told when the facts of an own car are looked at
 */
export function garageOver(records: Reads, sight: Sight, looked: (car: number) => void = () => undefined): Garage {
  const { asker, room } = sight;
  const me = once(() => records.find(members, asker));
  const shared = once(() => {
    const here = records.list(shares, { member: asker, room });
    return new Set(here.map(({ of }) => of.car));
  });
  const view = ({ id, data }: HeldCar): CarView => ({
    ...{ id, owner: asker, ownerName: me()?.data.name ?? asker, name: data.name },
    get head() {
      const head = records.find(revisions, data.head);
      looked(id);
      if (head === undefined) throw new Error(`car ${id} has no revision ${data.head}`);
      return momentOf(head);
    },
    get shared() {
      return shared().has(id);
    },
  });
  const mine = once(() => records.list(cars, { member: asker }).map(view));
  const chosen = once(() => mine().find(({ id }) => id === me()?.data.chosen));
  const own = (car: number): boolean => mine().some(({ id }) => id === car);
  return {
    records,
    get mine() {
      return mine();
    },
    get chosen() {
      return chosen();
    },
    get others() {
      return sight.others;
    },
    get members() {
      return sight.members;
    },
    revision(id) {
      const held = records.find(revisions, id);
      return held === undefined ? sight.revision(id) : momentOf(held);
    },
    history: (car, limit, before) => (own(car) ? records.newest(revisions, { car }, limit, before).map(momentOf) : []),
    setups: (car) =>
      own(car)
        ? records
            .list(setups, { car })
            .map(({ data: { name, revision } }) => ({ name, revision }))
            .sort((a, b) => (a.name < b.name ? -1 : 1))
        : [],
  };
}
