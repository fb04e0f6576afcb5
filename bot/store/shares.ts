/** Which car is shared in which room, and the one rule of who sees it. */
import { prepared, type Store } from './store.js';

// The view `seen` is the rule: shared in this room, and owner and asker both in this room now, and the bot too. Every query for another member's car goes through it.

const on = prepared((db) => ({
  share: db.prepare<[string, number]>('INSERT INTO shares (room, car) VALUES (?, ?) ON CONFLICT DO NOTHING'),
  unshare: db.prepare<[string, number]>('DELETE FROM shares WHERE room = ? AND car = ?'),
  rooms: db.prepare<[number], { room: string }>('SELECT room FROM shares WHERE car = ? ORDER BY room'),
}));
/** The caller has made sure that the car is the asker's, and the asker in the room. */
export const share = (store: Store, car: number, room: string): void => void on(store).share.run(room, car);
export const unshare = (store: Store, car: number, room: string): void => void on(store).unshare.run(room, car);
export const roomsOfCar = (store: Store, car: number): readonly string[] =>
  on(store)
    .rooms.all(car)
    .map((row) => row.room);
