/** An invented club to try the store on: robin and sam in the paddock room, ash in a room of their own. */

import { type Applied, applyChanges } from '../../../bot/records/apply.js';
import type { Store } from '../../../bot/records/database.js';
import { garageFor } from '../../../bot/records/garage.js';
import { meetMember } from '../../../bot/records/members.js';
import { recordMembership } from '../../../bot/records/memberships.js';
import { enterRoom } from '../../../bot/records/rooms.js';
import type { Change, Member } from '../../../commands/context.js';
import type { Fact, Facts } from '../../../core/car.js';

export const paddock = '!paddock:example.org';
export const garden = '!garden:example.org';
export const robinsDirect = '!robin-and-bot:example.org';
export const robin = '@robin:example.org';
export const sam = '@sam:example.org';
export const ash = '@ash:example.org';

export const told = (value: number, within = 0): Fact => ({ value, within, evidence: 'measured', source: 'told' });
export const facts = (given: Readonly<Record<string, number>>): Facts =>
  new Map(Object.entries(given).map(([path, value]) => [path, told(value)]));

let events = 0;
export const newEvent = (): string => `$event-${++events}`;
export function change(store: Store, asker: string, changes: readonly Change[], cause = newEvent(), room = paddock): Applied {
  const member: Member = { id: asker, name: asker.slice(1).split(':')[0] ?? asker, preferences: { units: 'us', decimalMark: '.' } };
  return store.transaction(() => applyChanges(store, { asker: member, room, changes, at: 1_800_000_000_000 + events, cause }));
}
/** A car with these facts, chosen. */
export function newCar(store: Store, owner: string, name: string, given: Facts = facts({ mass: 1200 }), cause = newEvent()): number {
  const applied = change(
    store,
    owner,
    [
      { change: 'make car', car: -1, name, facts: given, measured: true, why: `car ${name}` },
      { change: 'choose car', car: -1 },
    ],
    cause,
  );
  const id = applied.cars.get(-1);
  if (id === undefined) throw new Error('no car was made');
  return id;
}
export const headOf = (store: Store, owner: string, car: number): number => {
  const head = garageFor(store, owner, paddock).mine.find((one) => one.id === car)?.head.id;
  if (head === undefined) throw new Error(`car ${car} is not ${owner}'s`);
  return head;
};
/** Records these facts on top of the car's head, and gives the revision. */
export function record(
  store: Store,
  owner: string,
  car: number,
  given: Readonly<Record<string, number>>,
  cause = newEvent(),
  why = 'set it',
): number {
  const garage = garageFor(store, owner, paddock);
  const head = garage.mine.find((one) => one.id === car)?.head;
  if (head === undefined) throw new Error(`car ${car} is not ${owner}'s`);
  const now = new Map([...head.facts, ...facts(given)]);
  const applied = change(store, owner, [{ change: 'record', car, head: head.id, facts: now, why, measuredIn: head.measuredIn }], cause);
  const id = applied.revisions.get(-1);
  if (id === undefined) throw new Error('no revision was made');
  return id;
}
export function meetClub(store: Store): void {
  enterRoom(store, paddock, false);
  enterRoom(store, garden, false);
  enterRoom(store, robinsDirect, true);
  for (const [member, name] of [
    [robin, 'robin'],
    [sam, 'sam'],
    [ash, 'ash'],
  ] as const)
    meetMember(store, member, name);
  for (const member of [robin, sam]) recordMembership(store, paddock, member, 'join', member === robin ? 'Robin of the paddock' : 'Sam');
  for (const member of [robin, ash]) recordMembership(store, garden, member, 'join');
  recordMembership(store, robinsDirect, robin, 'join', 'Robin');
}
/** Every row of every table, to compare before and after. */
export function everything(store: Store): Readonly<Record<string, readonly unknown[]>> {
  const tables = store.database
    .prepare<[], { name: string }>("SELECT name FROM sqlite_schema WHERE type = 'table' AND name NOT LIKE 'sqlite_%' ORDER BY name")
    .all();
  return Object.fromEntries(tables.map(({ name }) => [name, store.database.prepare(`SELECT * FROM "${name}"`).all()]));
}
