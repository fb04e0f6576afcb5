/** Which car is shared in which room, and the one rule of who sees it. */
import type { Sight } from '../../commands/context.js';
import type { Held } from '../../commands/records/held.js';
import { shareId } from '../../commands/records/kinds/share.js';
import { nextGeneration } from './generations.js';
import { prepared, type Store } from './store.js';
import type { Table } from './table.js';

// The view `seen` is the rule: shared in this room, and owner and asker both in this room now, and the bot too. Every query for another member's car goes through it.

interface Row {
  readonly room: string;
  readonly car: number;
  readonly owner: string;
}
const rows = 'SELECT shares.room, shares.car, cars.owner FROM shares JOIN cars ON cars.id = shares.car';
const on = prepared((db) => ({
  share: db.prepare<[string, number, number]>('INSERT INTO shares (room, car, generation) VALUES (?, ?, ?) ON CONFLICT DO NOTHING'),
  unshare: db.prepare<[string, number]>('DELETE FROM shares WHERE room = ? AND car = ?'),
  find: db.prepare<[string, number], Row>(`${rows} WHERE shares.room = ? AND shares.car = ?`),
  ofCar: db.prepare<[number], Row>(`${rows} WHERE shares.car = ? ORDER BY shares.room`),
  ofOwner: db.prepare<[string], Row>(`${rows} WHERE cars.owner = ? ORDER BY shares.car, shares.room`),
  seen: db.prepare<[string, string, number], { sharing: number }>('SELECT sharing FROM seen WHERE asker = ? AND room = ? AND car = ?'),
}));
const heldOf = ({ car, room, owner }: Row): Held<Record<string, never>, string> => ({
  ...{ id: shareId(car, room), of: { member: owner, car, room }, data: {}, told: undefined, text: '' },
});
/** `3 !room` is the car 3 in that room. */
function partsOf(id: string): readonly [string, number] {
  const space = id.indexOf(' ');
  return [id.slice(space + 1), Number(id.slice(0, space))];
}
/** The state machine has made sure that the car is the asker's, and the asker in the room. */
export const shareTable: Table<Record<string, never>, string> = {
  find(store, id) {
    const row = on(store).find.get(...partsOf(id));
    return row && heldOf(row);
  },
  list(store, { car, member }) {
    const found = car !== undefined ? on(store).ofCar.all(car) : member !== undefined ? on(store).ofOwner.all(member) : [];
    return found.map(heldOf);
  },
  // Also when an undo shares it again: by another sharing than before.
  add: (store, { of }) => void on(store).share.run(of.room ?? '', of.car ?? 0, nextGeneration(store)),
  // There is nothing in it to alter.
  replace: () => undefined,
  remove: (store, id) => void on(store).unshare.run(...partsOf(id)),
};
/** Whether the asker may still see all of this in the room, by the same sharing all the time: not lost and won again in between. */
export const seenStill = (store: Store, asker: string, room: string, sights: readonly Sight[]): boolean =>
  sights.every(({ car, sharing }) => on(store).seen.get(asker, room, car)?.sharing === sharing);
