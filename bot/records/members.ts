/** Members: who has spoken to the bot, how they want numbers, and which of their cars is in use. */
import type { Member, Preferences } from '../../commands/context.js';
import type { Held } from '../../commands/records/held.js';
import type { MemberData } from '../../commands/records/kinds/member.js';
import { prepared, type Store } from './store.js';
import type { Table } from './table.js';

interface Row {
  readonly id: string;
  readonly name: string;
  readonly units: Preferences['units'];
  readonly decimal_mark: Preferences['decimalMark'];
}
const on = prepared((db) => ({
  find: db.prepare<[string], Row>('SELECT id, name, units, decimal_mark FROM members WHERE id = ?'),
  meet: db.prepare<[string, string, string, string]>(
    'INSERT INTO members (id, name, units, decimal_mark) VALUES (?, ?, ?, ?) ON CONFLICT (id) DO UPDATE SET name = excluded.name WHERE name <> excluded.name',
  ),
  kept: db.prepare<[string], Row & { chosen: number | null }>('SELECT id, name, units, decimal_mark, chosen FROM members WHERE id = ?'),
  alter: db.prepare<[string, string, number | null, string]>('UPDATE members SET units = ?, decimal_mark = ?, chosen = ? WHERE id = ?'),
  erase: db.prepare<[string]>('DELETE FROM members WHERE id = ?'),
}));

export function findMember(store: Store, id: string): Member | undefined {
  const row = on(store).find.get(id);
  return row && { id: row.id, name: row.name, preferences: { units: row.units, decimalMark: row.decimal_mark } };
}
/** The member of this id, made with these preferences when unknown; the name is brought up to date. Writes nothing when nothing is new. */
export function meetMember(store: Store, id: string, name: string, preferences: Preferences = { units: 'us', decimalMark: '.' }): Member {
  on(store).meet.run(id, name, preferences.units, preferences.decimalMark);
  const member = findMember(store, id);
  if (member === undefined) throw new Error('A member who was just met is not there.');
  return member;
}
const find = (store: Store, id: string): Held<MemberData, string> | undefined => {
  const row = on(store).kept.get(id);
  if (row === undefined) return undefined;
  const data = { name: row.name, units: row.units, decimalMark: row.decimal_mark, ...(row.chosen === null ? {} : { chosen: row.chosen }) };
  return { id, of: { member: id }, data, told: undefined, text: '' };
};
export const memberTable: Table<MemberData, string> = {
  find,
  list(store, { member }) {
    const held = member === undefined ? undefined : find(store, member);
    return held === undefined ? [] : [held];
  },
  add: (store, { id, data: { name, units, decimalMark } }) => void meetMember(store, id, name, { units, decimalMark }),
  replace: (store, { id, data: { units, decimalMark, chosen } }) => void on(store).alter.run(units, decimalMark, chosen ?? null, id),
  remove: (store, id) => eraseMember(store, id),
};
/** Only after the member's cars are gone. */
export const eraseMember = (store: Store, id: string): void => void on(store).erase.run(id);
