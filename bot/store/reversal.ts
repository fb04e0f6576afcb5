/** Taking back what an event changed, for an edited line: what its revisions touched, whether that was touched since, and the car as it would be without them. */
import type { Change, Garage, Revision } from '../../commands/context.js';
import { isSame } from '../../commands/same.js';
import type { Fact, Facts } from '../../core/car.js';
import { nameAt } from '../../core/engine/places.js';
import { catalog } from '../../core/stubaxle.js';
import { ownCar } from './cars.js';
import { changesMadeBy } from './changed.js';
import { anyRevision, revisionsMadeBy } from './revisions.js';
import type { Store } from './store.js';

/** One car that the event changed. */
export interface Reversal {
  readonly car: number;
  /** Made by the event, oldest first. */
  readonly revisions: readonly number[];
  readonly head: number;
  /** Paths that the event set, altered or forgot. */
  readonly touched: readonly string[];
  /** Those of them that are no longer as the event left them. */
  readonly changedSince: readonly string[];
  /** The car's facts now, with those that the event touched as they were before it. */
  readonly facts: Facts;
  readonly measuredIn: number | undefined;
}
export type Revertible =
  | { readonly revertible: true; readonly cars: readonly Reversal[] }
  /** A sentence for the member. */
  | { readonly revertible: false; readonly because: string; readonly cars: readonly Reversal[] };

const sameFact = (a: Fact | undefined, b: Fact | undefined): boolean =>
  a === undefined || b === undefined
    ? a === b
    : isSame(a.value, b.value) && a.within === b.within && a.evidence === b.evidence && a.source === b.source;
const differing = (a: Facts, b: Facts): string[] =>
  [...new Set([...a.keys(), ...b.keys()])].filter((path) => !sameFact(a.get(path), b.get(path))).sort();

/**
 * Whether the changes that an event made can be taken back: only records of facts can, and only while nothing else has touched those facts.
 * An event that changed nothing can always be (no cars).
 * @param event - the event, or it and the edits of it, oldest first: what they did together.
 */
export function revertible(store: Store, event: string | readonly string[], owner: string): Revertible {
  const events = typeof event === 'string' ? [event] : event;
  const byCar = new Map<number, Revision[]>();
  for (const made of events.flatMap((one) => revisionsMadeBy(store, one))) byCar.set(made.car, [...(byCar.get(made.car) ?? []), made]);
  const cars = [...byCar].flatMap(([car, made]) => {
    const head = ownCar(store, car, owner)?.head;
    return head === undefined ? [] : [reversal(store, made, head)];
  });
  const changes = events.flatMap((one) => changesMadeBy(store, one));
  const others = [...new Set(changes)].filter((change) => change !== 'record');
  if (others.length > 0)
    return { revertible: false, because: `It did more than record facts (${others.join(', ')}), which an edit can't take back.`, cars };
  if (changes.length > 0 && cars.length === 0)
    return { revertible: false, because: 'The car that it changed is not there any more.', cars };
  const since = cars.flatMap((one) => one.changedSince);
  if (since.length > 0)
    return { revertible: false, because: `What it changed was changed again since: ${since.map(nameOf).join(', ')}.`, cars };
  return { revertible: true, cars };
}

/** Each revision against its own parent: between those of a line and of its edit, others may stand, which are left alone. */
function reversal(store: Store, made: readonly Revision[], headId: number): Reversal {
  const head = anyRevision(store, headId);
  const first = made[0];
  if (first === undefined || head === undefined) throw new Error('A car without a revision.');
  const was = new Map<string, Fact | undefined>();
  const left = new Map<string, Fact | undefined>();
  for (const one of made) {
    const parent: Facts = parentOf(store, one)?.facts ?? new Map();
    for (const path of differing(parent, one.facts)) {
      if (!was.has(path)) was.set(path, parent.get(path));
      left.set(path, one.facts.get(path));
    }
  }
  const touched = [...was.keys()].filter((path) => !sameFact(was.get(path), left.get(path))).sort();
  const changedSince = touched.filter((path) => !sameFact(head.facts.get(path), left.get(path)));
  const facts = new Map(head.facts);
  for (const path of touched) {
    const old = was.get(path);
    if (old === undefined) facts.delete(path);
    else facts.set(path, old);
  }
  const own = made.map((one) => one.id);
  const measuredIn = head.measuredIn !== undefined && own.includes(head.measuredIn) ? parentOf(store, first)?.measuredIn : head.measuredIn;
  return { car: first.car, revisions: own, head: headId, touched, changedSince, facts, measuredIn };
}
const parentOf = (store: Store, one: Revision): Revision | undefined =>
  one.parent === undefined ? undefined : anyRevision(store, one.parent);
/** As people call it. */
const nameOf = (path: string): string => {
  const node = catalog.byPath.get(path);
  return node === undefined ? path : nameAt(node.entry, node.place);
};

/** The garage as it would be without the event's changes, under the same heads: what the edited line is worked out on. Its records then both revert and reapply. */
export function garageWithout(garage: Garage, cars: readonly Reversal[]): Garage {
  const byCar = new Map(cars.map((one) => [one.car, one]));
  const laid = (made: Revision): Revision => {
    const one = byCar.get(made.car);
    if (one === undefined || one.head !== made.id) return made;
    return { ...made, facts: one.facts, measuredIn: one.measuredIn };
  };
  return {
    get mine() {
      return garage.mine.map((car) => (byCar.has(car.id) ? { ...car, head: laid(car.head) } : car));
    },
    get chosen() {
      const car = garage.chosen;
      return car && byCar.has(car.id) ? { ...car, head: laid(car.head) } : car;
    },
    get others() {
      return garage.others;
    },
    get members() {
      return garage.members;
    },
    revision: (id) => {
      const made = garage.revision(id);
      return made && laid(made);
    },
    history: (car, limit, before) => garage.history(car, limit, before),
    setups: (car) => garage.setups(car),
    parts: (car) => garage.parts(car),
  };
}

/** The edited line's changes, and for each car that they no longer record on, the record that only reverts. */
export function withReversals(changes: readonly Change[], cars: readonly Reversal[], why: string): readonly Change[] {
  const recorded = new Set(changes.flatMap((change) => (change.change === 'record' || change.change === 'forget car' ? [change.car] : [])));
  const reverting = cars
    .filter((one) => !recorded.has(one.car) && one.touched.length > 0)
    .map((one): Change => ({ change: 'record', car: one.car, head: one.head, facts: one.facts, why, measuredIn: one.measuredIn }));
  return [...reverting, ...changes];
}
