/** Which car is shared in which room, and the one rule of who sees it. */
import type { Sight } from '../../commands/context.js';
import { nextGeneration } from './generations.js';
import { prepared, type Store } from './store.js';

// The view `seen` is the rule: shared in this room, and owner and asker both in this room now, and the bot too. Every query for another member's car goes through it.

const on = prepared((db) => ({
  share: db.prepare<[string, number, number]>('INSERT INTO shares (room, car, generation) VALUES (?, ?, ?) ON CONFLICT DO NOTHING'),
  unshare: db.prepare<[string, number]>('DELETE FROM shares WHERE room = ? AND car = ?'),
  rooms: db.prepare<[number], { room: string }>('SELECT room FROM shares WHERE car = ? ORDER BY room'),
  seen: db.prepare<[string, string, number], { sharing: number }>('SELECT sharing FROM seen WHERE asker = ? AND room = ? AND car = ?'),
}));
/** The caller has made sure that the car is the asker's, and the asker in the room. */
export const share = (store: Store, car: number, room: string): void => void on(store).share.run(room, car, nextGeneration(store));
export const unshare = (store: Store, car: number, room: string): void => void on(store).unshare.run(room, car);
export const roomsOfCar = (store: Store, car: number): readonly string[] =>
  on(store)
    .rooms.all(car)
    .map((row) => row.room);
/** Whether the asker may still see all of this in the room, by the same sharing all the time: not lost and won again in between. */
export const seenStill = (store: Store, asker: string, room: string, sights: readonly Sight[]): boolean =>
  sights.every(({ car, sharing }) => on(store).seen.get(asker, room, car)?.sharing === sharing);
