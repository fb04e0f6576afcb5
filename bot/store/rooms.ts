/** Rooms that the bot is or was in. */
import { prepared, type Store } from './store.js';

export interface StoredRoom {
  readonly id: string;
  readonly direct: boolean;
  /** Undefined: the bot's usual one. */
  readonly prefix: string | undefined;
  /** The bot is not in it, or was told to leave it. */
  readonly left: boolean;
  readonly encrypted: boolean;
}
interface Row {
  readonly id: string;
  readonly direct: number;
  readonly prefix: string | null;
  readonly left: number;
  readonly encrypted: number;
}
const columns = 'id, direct, prefix, left, encrypted';
const on = prepared((db) => ({
  find: db.prepare<[string], Row>(`SELECT ${columns} FROM rooms WHERE id = ?`),
  all: db.prepare<[], Row>(`SELECT ${columns} FROM rooms ORDER BY id`),
  enter: db.prepare<[string, number]>(
    'INSERT INTO rooms (id, direct) VALUES (?, ?) ON CONFLICT (id) DO UPDATE SET direct = excluded.direct, left = 0',
  ),
  leave: db.prepare<[string]>('UPDATE rooms SET left = 1 WHERE id = ?'),
  encrypt: db.prepare<[string]>(
    'INSERT INTO rooms (id, direct, left, encrypted) VALUES (?, 0, 1, 1) ON CONFLICT (id) DO UPDATE SET encrypted = 1',
  ),
  prefix: db.prepare<[string, string]>('UPDATE rooms SET prefix = ? WHERE id = ?'),
  direct: db.prepare<[number, string]>('UPDATE rooms SET direct = ? WHERE id = ?'),
}));
const room = (row: Row): StoredRoom => ({
  id: row.id,
  direct: row.direct === 1,
  prefix: row.prefix ?? undefined,
  left: row.left === 1,
  encrypted: row.encrypted === 1,
});

export const findRoom = (store: Store, id: string): StoredRoom | undefined => {
  const row = on(store).find.get(id);
  return row && room(row);
};
export const allRooms = (store: Store): readonly StoredRoom[] => on(store).all.all().map(room);
/** The bot is in this room (again). */
export const enterRoom = (store: Store, id: string, direct: boolean): void => void on(store).enter.run(id, direct ? 1 : 0);
/** Whether only one member and the bot are in it, as known now. */
export const markDirect = (store: Store, id: string, direct: boolean): void => void on(store).direct.run(direct ? 1 : 0, id);
/** Marks the room as left; who was in it and what was shared there is forgotten by `emptyRoom`. */
export const leaveRoom = (store: Store, id: string): void => void on(store).leave.run(id);
/** For ever: no function takes it back, and a trigger refuses it. */
export const markEncrypted = (store: Store, id: string): void => void on(store).encrypt.run(id);
export const setPrefix = (store: Store, id: string, prefix: string): void => void on(store).prefix.run(prefix, id);
