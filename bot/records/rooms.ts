/** Rooms that the bot is or was in. */
import type { Access, Word } from './access.js';
import { prepared, type Store } from './store.js';

export interface StoredRoom extends Pick<Access, 'kind' | 'joinRule' | 'history' | 'guests' | 'unreadable'> {
  readonly id: string;
  readonly direct: boolean;
  /** Undefined: the bot's usual one. */
  readonly prefix: string | undefined;
  /** The bot is not in it, or was told to leave it. */
  readonly left: boolean;
  readonly encrypted: boolean;
  /** Whether its whole state was read since the bot came in. */
  readonly told: boolean;
}
interface Row {
  readonly id: string;
  readonly direct: number;
  readonly prefix: string | null;
  readonly left: number;
  readonly encrypted: number;
  readonly kind: string | null;
  readonly join_rule: string | null;
  readonly history: string | null;
  readonly guests: string | null;
  readonly unreadable: number;
  readonly told: number;
}
const columns = 'id, direct, prefix, left, encrypted, kind, join_rule, history, guests, unreadable, told';
const unknown = 'kind = NULL, join_rule = NULL, history = NULL, guests = NULL';
const on = prepared((db) => ({
  find: db.prepare<[string], Row>(`SELECT ${columns} FROM rooms WHERE id = ?`),
  all: db.prepare<[], Row>(`SELECT ${columns} FROM rooms ORDER BY id`),
  enter: db.prepare<[string, number]>(
    'INSERT INTO rooms (id, direct) VALUES (?, ?) ON CONFLICT (id) DO UPDATE SET direct = excluded.direct, left = 0',
  ),
  leave: db.prepare<[string]>(`UPDATE rooms SET left = 1, told = 0, unreadable = 0, ${unknown} WHERE id = ?`),
  encrypt: db.prepare<[string]>(
    'INSERT INTO rooms (id, direct, left, encrypted) VALUES (?, 0, 1, 1) ON CONFLICT (id) DO UPDATE SET encrypted = 1',
  ),
  prefix: db.prepare<[string, string]>('UPDATE rooms SET prefix = ? WHERE id = ?'),
  direct: db.prepare<[number, string]>('UPDATE rooms SET direct = ? WHERE id = ?'),
  anew: db.prepare<[string]>(`UPDATE rooms SET told = 1, unreadable = 0, ${unknown} WHERE id = ?`),
  unreadable: db.prepare<[string]>('UPDATE rooms SET unreadable = 1 WHERE id = ?'),
  lost: db.prepare<[string]>('UPDATE rooms SET unreadable = 1, told = 0 WHERE id = ?'),
  kind: db.prepare<[string, string]>('UPDATE rooms SET kind = ? WHERE id = ?'),
  joinRule: db.prepare<[string, string]>('UPDATE rooms SET join_rule = ? WHERE id = ?'),
  history: db.prepare<[string, string]>('UPDATE rooms SET history = ? WHERE id = ?'),
  guests: db.prepare<[string, string]>('UPDATE rooms SET guests = ? WHERE id = ?'),
}));
const word = (stored: string | null): Word => stored ?? undefined;
const room = (row: Row): StoredRoom => ({
  id: row.id,
  direct: row.direct === 1,
  prefix: row.prefix ?? undefined,
  left: row.left === 1,
  encrypted: row.encrypted === 1,
  kind: word(row.kind),
  joinRule: word(row.join_rule),
  history: word(row.history),
  guests: word(row.guests),
  unreadable: row.unreadable === 1,
  told: row.told === 1,
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
/** The whole state of the room follows: nothing of what was told before stands. */
export const tellAnew = (store: Store, id: string): void => void on(store).anew.run(id);
export const tell = (store: Store, id: string, of: 'kind' | 'joinRule' | 'history' | 'guests', told: string): void =>
  void on(store)[of].run(told, id);
/** Something that may matter could not be read: until all of the state was read again. */
export const markUnreadable = (store: Store, id: string): void => void on(store).unreadable.run(id);
/** What happened in the room for a while is not known: its state must be read again. */
export const markLost = (store: Store, id: string): void => void on(store).lost.run(id);
/** Marks the room as left; who was in it and what was shared there is forgotten by `emptyRoom`. */
export const leaveRoom = (store: Store, id: string): void => void on(store).leave.run(id);
/** For ever: no function takes it back, and a trigger refuses it. */
export const markEncrypted = (store: Store, id: string): void => void on(store).encrypt.run(id);
export const setPrefix = (store: Store, id: string, prefix: string): void => void on(store).prefix.run(prefix, id);
