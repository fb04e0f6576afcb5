/** Members: who has spoken to the bot, how they want numbers, and which of their cars is in use. */
import type { Member, Preferences } from '../../commands/context.js';
import { prepared, type Store } from './store.js';

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
  prefer: db.prepare<[string | null, string | null, string]>(
    'UPDATE members SET units = coalesce(?, units), decimal_mark = coalesce(?, decimal_mark) WHERE id = ?',
  ),
  choose: db.prepare<[number | null, string]>('UPDATE members SET chosen = ? WHERE id = ?'),
  chosen: db.prepare<[string], { chosen: number | null }>('SELECT chosen FROM members WHERE id = ?'),
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
export const preferFor = (store: Store, id: string, wanted: Partial<Preferences>): void =>
  void on(store).prefer.run(wanted.units ?? null, wanted.decimalMark ?? null, id);
/** The caller has made sure that the car is the member's. */
export const chooseCar = (store: Store, id: string, car: number | undefined): void => void on(store).choose.run(car ?? null, id);
export const chosenCar = (store: Store, id: string): number | undefined => on(store).chosen.get(id)?.chosen ?? undefined;
/** Only after the member's cars are gone. */
export const eraseMember = (store: Store, id: string): void => void on(store).erase.run(id);
