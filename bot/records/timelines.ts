/** How far the bot has read in each room that it is in. A room without a row here is one that it is not in, or has just come into. */
import { z } from 'zod';
import type { Holder } from './holder.js';
import { prepared, type Store } from './store.js';

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
  ruledBy: db.prepare<[string], { room: string }>('SELECT room FROM timelines WHERE instr(rulers, ?) > 0'),
  rooms: db.prepare<[], { room: string }>('SELECT room FROM timelines ORDER BY room'),
  stop: db.prepare<[string]>('DELETE FROM timelines WHERE room = ?'),
}));
export const findTimeline = (store: Store, room: string): Timeline | undefined => {
  const row = on(store).find.get(room);
  return row && { last: row.last ?? undefined, clear: row.clear === 1 };
};
export const advanceTimeline = (store: Store, room: string, last: string | undefined): void =>
  void on(store).advance.run(room, last ?? null);
/** Who may change the room's state, also those who are not in it now. */
const rulersSchema = z.object({ creators: z.array(z.string()), users: z.union([z.literal('everybody'), z.array(z.string())]) });
export type Rulers = z.infer<typeof rulersSchema>;
export const rememberRulers = (store: Store, room: string, rulers: Rulers): void => void on(store).rule.run(JSON.stringify(rulers), room);
export const recallRulers = (store: Store, room: string): Rulers | undefined => {
  const text = on(store).rulers.get(room)?.rulers;
  return typeof text === 'string' ? rulersSchema.parse(JSON.parse(text)) : undefined;
};
/** Only of a room that is followed. */
export const markClear = (store: Store, room: string): void => void on(store).clear.run(room);
/** Rooms that the bot is in, as far as it has heard. */
export const followedRooms = (store: Store): readonly string[] =>
  on(store)
    .rooms.all()
    .map(({ room }) => room);
export const stopTimeline = (store: Store, room: string): void => void on(store).stop.run(room);
/** The export tells the power with the membership. Who was forgotten has it again when the room's levels are next told. */
export const holder: Holder = {
  texts: () => [],
  erase(store, member) {
    for (const { room } of on(store).ruledBy.all(member)) {
      const rulers = recallRulers(store, room);
      if (rulers === undefined) continue;
      const others = (ids: readonly string[]): string[] => ids.filter((id) => id !== member);
      const { creators, users } = rulers;
      rememberRulers(store, room, { creators: others(creators), users: users === 'everybody' ? users : others(users) });
    }
  },
};
