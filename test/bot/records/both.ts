/** The same club kept in memory and in SQLite: what one suite holds to the same behaviour. */
import { applyChanges } from '../../../bot/records/apply.js';
import type { Store } from '../../../bot/records/database.js';
import { garageFor } from '../../../bot/records/garage.js';
import { findMember } from '../../../bot/records/members.js';
import { SqlTables } from '../../../bot/records/tables.js';
import type { CarView, Change, Context, Garage, Member, Revision } from '../../../commands/context.js';
import { partsOf } from '../../../commands/records/kinds/part.js';
import { kinds as all, type Kinds } from '../../../commands/records/kinds.js';
import type { Tables } from '../../../commands/records/tables.js';
import { undoable } from '../../../commands/records/taking.js';
import { Club } from '../../commands/garage.js';
import { meetClub, newEvent, paddock } from './club.js';
import { opened } from './fresh.js';

export interface Kept {
  /** A message's changes; `line`: the line that it is an edit of. */
  change(name: string, changes: readonly Change[], event?: string, line?: string): void;
  garage(name: string): Garage;
  asker(name: string): Member;
  readonly tables: Tables;
}
const idOf = (name: string): string => `@${name}:example.org`;
export const usual = { units: 'us', decimalMark: '.' } as const;

export function inMemory(kinds?: Kinds): Kept {
  const club = new Club(kinds);
  for (const name of ['robin', 'sam']) club.join(name, {}, paddock);
  return {
    change: (name, changes, event, line) => void club.apply(name, changes, paddock, event, line),
    garage: (name) => club.garage(name, paddock),
    asker: (name) => club.member(name),
    get tables() {
      return club.tables;
    },
  };
}
export function inSqlite(kinds?: Kinds, store: Store = opened(':memory:', kinds ? { kinds } : {})): Kept {
  meetClub(store);
  const asker = (name: string): Member => findMember(store, idOf(name)) ?? { id: idOf(name), name, preferences: usual };
  return {
    change: (name, changes, event = newEvent(), line = event) =>
      void store.transaction(() => applyChanges(store, { asker: asker(name), room: paddock, changes, at: 1, cause: event, line })),
    garage: (name) => garageFor(store, idOf(name), paddock),
    asker,
    tables: new SqlTables(store),
  };
}
export const bothWays = [
  ['in memory', inMemory],
  ['in SQLite', inSqlite],
] as const;

export function contextOf(kept: Kept, name: string, event = newEvent(), line = event): Omit<Context, 'calculator' | 'conversation'> {
  const room = { id: paddock, direct: false };
  const breathe = (): Promise<void> => Promise.resolve();
  return { event: { id: event, line, nth: 0 }, asker: kept.asker(name), room, now: 1, garage: kept.garage(name), breathe };
}

/** A garage without its numbers, which differ between a draft and the store: revisions are named by their place in the car's history. */
export function described(garage: Garage): unknown {
  const car = (view: CarView): unknown => {
    const history = [...garage.history(view.id, 100)].reverse();
    const place = (id: number | undefined): number | undefined =>
      id === undefined ? undefined : history.findIndex((one) => one.id === id);
    const moment = (one: Revision): unknown => ({
      ...{ why: one.why, facts: [...one.facts].sort(), measuredIn: place(one.measuredIn) },
      ...{ undoes: place(one.undoes), parent: place(one.parent) },
    });
    return {
      ...{ name: view.name, shared: view.shared, chosen: garage.chosen?.id === view.id, head: place(view.head.id) },
      history: history.map(moment),
      setups: garage.setups(view.id).map(({ name, revision }) => [name, place(revision)]),
      parts: partsOf(garage, view.id).map(({ id: _, ...part }) => part),
    };
  };
  return garage.mine.map(car);
}
/** What an undo would take back, one after another. */
export function undoables(garage: Garage, member: string): unknown {
  return undoable(garage.records, member, 99).map((line) =>
    line.map(({ kind, before, after }) => [kind, before && all.named(kind).name, after && all.named(kind).name]),
  );
}
