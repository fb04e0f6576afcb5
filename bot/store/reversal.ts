/** Taking back what an event changed, for an edited line: what its revisions touched, whether that was touched since, and the car as it would be without them. */
import type { Change, Garage, Revision } from '../../commands/context.js';
import { isSameFact, linesStanding, type Without, without } from '../../commands/takingBack.js';
import type { Facts } from '../../core/car.js';
import { nameAt } from '../../core/engine/places.js';
import { catalog } from '../../core/stubaxle.js';
import { ownCar } from './cars.js';
import { changesMadeBy } from './changed.js';
import { anyRevision, ownHistory, revisionsMadeBy } from './revisions.js';
import type { Store } from './store.js';

/** One car that the event changed. */
export interface Reversal extends Without {
  readonly car: number;
  /** Made by the event, oldest first. */
  readonly revisions: readonly number[];
  readonly head: number;
}
export type Revertible =
  | { readonly revertible: true; readonly cars: readonly Reversal[] }
  /** A sentence for the member. `undone`: all of it was taken back already, by an undo. */
  | { readonly revertible: false; readonly because: string; readonly undone?: true; readonly cars: readonly Reversal[] };

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
  const not = (because: string): Extract<Revertible, { revertible: false }> => ({ revertible: false, because, cars });
  const changes = events.flatMap((one) => changesMadeBy(store, one));
  const others = [...new Set(changes)].filter((change) => change !== 'record');
  if (others.length > 0) return not(`It did more than record facts (${others.join(', ')}), which an edit can't take back.`);
  if (changes.length > 0 && cars.length === 0) return not('The car that it changed is not there any more.');
  if (cars.length > 0 && cars.every((one) => isUndone(store, one, owner)))
    return { ...not('It was taken back since, with undo.'), undone: true };
  const since = cars.flatMap((one) => one.changedSince);
  if (since.length > 0) return not(`What it changed was changed again since: ${since.map(nameOf).join(', ')}.`);
  return { revertible: true, cars };
}

function reversal(store: Store, made: readonly Revision[], headId: number): Reversal {
  const head = anyRevision(store, headId);
  const first = made[0];
  if (first === undefined || head === undefined) throw new Error('A car without a revision.');
  const parentOf = ({ parent }: Revision): Revision | undefined => (parent === undefined ? undefined : anyRevision(store, parent));
  return { car: first.car, revisions: made.map((one) => one.id), head: headId, ...without(head, made, parentOf) };
}
/** How far back an undo is looked for. */
const deepest = 1000;
function isUndone(store: Store, { car, revisions }: Reversal, owner: string): boolean {
  const history = ownHistory(store, car, owner, deepest);
  const standing = new Set([...linesStanding(history)].flat().map(({ id }) => id));
  return revisions.every((id) => history.some((one) => one.id === id) && !standing.has(id));
}
/** As people call it. */
export const nameOf = (path: string): string => {
  const node = catalog.byPath.get(path);
  return node === undefined ? path : nameAt(node.entry, node.place);
};

/** The garage as it would be without the event's changes, under the same heads: what the edited line is worked out on. Its records then both revert and reapply. */
export function garageWithout(garage: Garage, cars: readonly Reversal[], history: Garage['history'] = garage.history): Garage {
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
    history,
    setups: (car) => garage.setups(car),
    parts: (car) => garage.parts(car),
  };
}

/** The history in which the event's changes are not: what an edited line looks back on, and takes back. */
export const historyWithout =
  (garage: Garage, cars: readonly Reversal[]): Garage['history'] =>
  (car, limit, before) => {
    const gone = cars.find((one) => one.car === car)?.revisions ?? [];
    return garage
      .history(car, limit + gone.length, before)
      .filter(({ id }) => !gone.includes(id))
      .slice(0, limit);
  };

/** The edited line's changes, and for each car that they no longer record on, the record that only reverts. */
export function withReversals(changes: readonly Change[], cars: readonly Reversal[], why: string): readonly Change[] {
  const recorded = new Set(changes.flatMap((change) => (change.change === 'record' || change.change === 'forget car' ? [change.car] : [])));
  const reverting = cars
    .filter((one) => !recorded.has(one.car) && one.touched.length > 0)
    .map((one): Change => ({ change: 'record', car: one.car, head: one.head, facts: one.facts, why, measuredIn: one.measuredIn }));
  return [...reverting, ...changes];
}

/** What an edited line no longer says: names of facts that are as they were before it. */
export function givenBack(changes: readonly Change[], cars: readonly Reversal[]): readonly string[] {
  return cars.flatMap((one) => {
    const recorded = changes.findLast((change) => change.change === 'record' && change.car === one.car);
    const now: Facts = recorded?.change === 'record' ? recorded.facts : one.facts;
    return one.touched.filter((path) => isSameFact(now.get(path), one.facts.get(path))).map(nameOf);
  });
}
