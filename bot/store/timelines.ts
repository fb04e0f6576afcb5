/** How far the bot has read in each room that it is in. A room without a row here is one that it is not in, or has just come into. */
import { prepared, type Store } from './store.js';

export const ddl = `
CREATE TABLE timelines (
  room TEXT PRIMARY KEY,
  last TEXT,
  clear INTEGER NOT NULL DEFAULT 0 CHECK (clear IN (0, 1)),
  rulers TEXT
) STRICT, WITHOUT ROWID;
`;
export interface Timeline {
  /** The newest event that is in the inbox or was passed over; undefined in a room where nothing was seen yet. */
  readonly last: string | undefined;
  /** The homeserver was asked, and answered that the room is not encrypted. */
  readonly clear: boolean;
}
const on = prepared((db) => ({
  find: db.prepare<[string], { last: string | null; clear: number }>('SELECT last, clear FROM timelines WHERE room = ?'),
  advance: db.prepare<[string, string | null]>(
    'INSERT INTO timelines (room, last) VALUES (?, ?) ON CONFLICT (room) DO UPDATE SET last = coalesce(excluded.last, last)',
  ),
  clear: db.prepare<[string]>('UPDATE timelines SET clear = 1 WHERE room = ?'),
  rule: db.prepare<[string, string]>('UPDATE timelines SET rulers = ? WHERE room = ?'),
  rulers: db.prepare<[string], { rulers: string | null }>('SELECT rulers FROM timelines WHERE room = ?'),
  stop: db.prepare<[string]>('DELETE FROM timelines WHERE room = ?'),
}));
export const findTimeline = (store: Store, room: string): Timeline | undefined => {
  const row = on(store).find.get(room);
  return row && { last: row.last ?? undefined, clear: row.clear === 1 };
};
export const advanceTimeline = (store: Store, room: string, last: string | undefined): void =>
  void on(store).advance.run(room, last ?? null);
/** Who may change the room's state, in the room's own words: also those who are not in it now. */
export const rememberRulers = (store: Store, room: string, rulers: string): void => void on(store).rule.run(rulers, room);
export const recallRulers = (store: Store, room: string): string | undefined => on(store).rulers.get(room)?.rulers ?? undefined;
/** Only of a room that is followed. */
export const markClear = (store: Store, room: string): void => void on(store).clear.run(room);
export const stopTimeline = (store: Store, room: string): void => void on(store).stop.run(room);
