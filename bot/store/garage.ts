/** What one member may know of the cars, in one room, now: the garage that commands get. */
import type { CarView, Garage } from '../../commands/context.js';
import { chosenCar } from './members.js';
import { membersHere } from './memberships.js';
import { partsOf } from './parts.js';
import { carsSeen, ownCars, ownHistory, visibleRevision } from './revisions.js';
import { setupsOf } from './setups.js';
import type { Store } from './store.js';

/** A value that is worked out once, when it is first asked for. */
function once<T>(make: () => T): () => T {
  let made: { readonly value: T } | undefined;
  return () => {
    made ??= { value: make() };
    return made.value;
  };
}
/**
 * The asker's garage in a room. Read when it is first asked for and kept, so that one line sees one state; make a new one for each handling.
 * Who may see what is decided by the queries (`seen` in shares.ts), each time, not here.
 */
export function garageFor(store: Store, asker: string, room: string): Garage {
  const mine = once(() => ownCars(store, asker, room));
  const others = once(() => carsSeen(store, asker, room));
  const members = once(() => membersHere(store, asker, room));
  const chosen = once((): CarView | undefined => {
    const id = chosenCar(store, asker);
    return mine().find((car) => car.id === id);
  });
  return {
    get mine() {
      return mine();
    },
    get chosen() {
      return chosen();
    },
    get others() {
      return others();
    },
    get members() {
      return members();
    },
    revision: (id) => visibleRevision(store, id, asker, room),
    history: (car, limit, before) => ownHistory(store, car, asker, limit, before),
    setups: (car) => setupsOf(store, car, asker),
    parts: (car) => partsOf(store, car, asker),
  };
}
