/** Who sees what: attacked from another room, a direct chat, after leaving, after unsharing, by guessed numbers. */
import { beforeEach, expect, test } from 'vitest';
import type { Store } from '../../../bot/records/database.js';
import { garageFor } from '../../../bot/records/garage.js';
import { emptyRoom, isJoined, recordMembership, speaks } from '../../../bot/records/memberships.js';
import { enterRoom, leaveRoom } from '../../../bot/records/rooms.js';
import type { Garage } from '../../../commands/context.js';
import { ash, change, everything, facts, garden, headOf, meetClub, newCar, paddock, record, robin, robinsDirect, sam } from './club.js';
import { opened } from './fresh.js';

let store: Store;
let turnip: number;
let moth: number;
/** Revisions of turnip, oldest first; the second is what its state was measured in. */
let moments: number[];
beforeEach(() => {
  store = opened();
  meetClub(store);
  turnip = newCar(store, robin, 'turnip', facts({ mass: 1200 }));
  moments = [headOf(store, robin, turnip)];
  const head = { car: turnip, head: moments[0]! };
  const measured = change(store, robin, [
    { change: 'record', ...head, facts: facts({ mass: 1210 }), why: 'on the scales at home', measuredIn: 'now' },
  ]);
  moments.push(measured.revisions.get(-1)!);
  moments.push(record(store, robin, turnip, { wheelbase: 2.57 }));
  moments.push(record(store, robin, turnip, { 'front.spring.rate': 78806 }));
  moth = newCar(store, robin, 'moth');
  change(store, robin, [{ change: 'choose car', car: turnip }]);
});
const share = (room = paddock): void => void change(store, robin, [{ change: 'share', car: turnip, room }]);
const names = (garage: Garage): string[] => garage.others.map((car) => `${car.name} of ${car.ownerName}`);
/** All that can be reached of turnip through a garage. */
const reach = (garage: Garage) => ({
  cars: [...garage.mine, ...garage.others].filter((car) => car.id === turnip).length,
  revisions: moments.filter((id) => garage.revision(id) !== undefined),
  history: garage.history(turnip, 100).length,
  setups: garage.setups(turnip).length,
});
const nothing = { cars: 0, revisions: [], history: 0, setups: 0 };

test('a member has their own cars anywhere, oldest first, and the chosen one', () => {
  for (const room of [paddock, garden, robinsDirect, '!unknown']) {
    const garage = garageFor(store, robin, room);
    expect(garage.mine.map((car) => [car.id, car.name, car.owner, car.ownerName, car.shared])).toEqual([
      [turnip, 'turnip', robin, 'robin', false],
      [moth, 'moth', robin, 'robin', false],
    ]);
    expect(garage.chosen?.id).toBe(turnip);
    expect(garage.others).toEqual([]);
  }
  const head = garageFor(store, robin, paddock).mine[0]!.head;
  expect(head).toEqual({
    ...{ id: moments[3], car: turnip, parent: moments[2], at: head.at, by: robin, why: 'set it', undoes: undefined },
    facts: facts({ mass: 1210, wheelbase: 2.57, 'front.spring.rate': 78806 }),
    measuredIn: moments[1],
  });
});

test('history is newest first, a page at a time, and own', () => {
  const garage = garageFor(store, robin, paddock);
  expect(garage.history(turnip, 2).map((one) => one.id)).toEqual([moments[3], moments[2]]);
  expect(garage.history(turnip, 2, moments[2]).map((one) => one.id)).toEqual([moments[1], moments[0]]);
  expect(garage.history(turnip, 2, moments[0])).toEqual([]);
  expect(garage.history(turnip, 0)).toEqual([]);
  expect(garage.history(turnip, -1)).toEqual([]);
});

test('a car that nobody shared is seen by nobody', () => {
  for (const [member, room] of [
    [sam, paddock],
    [ash, garden],
    [ash, paddock],
    [sam, robinsDirect],
  ] as const)
    expect(reach(garageFor(store, member, room))).toEqual(nothing);
});

test('shared, its head and what that was measured in are seen in that room: no other moment, no history, no setups, no words', () => {
  change(store, robin, [{ change: 'keep', car: turnip, name: 'dry', revision: moments[0]! }]);
  share();
  const garage = garageFor(store, sam, paddock);
  expect(names(garage)).toEqual(['turnip of Robin of the paddock']);
  expect(garage.mine).toEqual([]);
  expect(reach(garage)).toEqual({ cars: 1, revisions: [moments[1], moments[3]], history: 0, setups: 0 });
  const car = garage.others[0]!;
  expect(car.shared).toBe(true);
  expect(car.head).toEqual({
    ...{ id: moments[3], car: turnip, parent: undefined, at: car.head.at, by: robin, why: '', undoes: undefined },
    facts: facts({ mass: 1210, wheelbase: 2.57, 'front.spring.rate': 78806 }),
    measuredIn: moments[1],
  });
  expect(garage.revision(moments[3]!)).toEqual(car.head);
  expect(garage.revision(moments[1]!)?.why).toBe('');
  expect(garageFor(store, robin, paddock).mine.map((own) => own.shared)).toEqual([true, false]);
  expect(garageFor(store, robin, garden).mine.map((own) => own.shared)).toEqual([false, false]);
  expect(garageFor(store, robin, paddock).others).toEqual([]);
});

test('from another room, a direct chat, a room that does not exist', () => {
  share();
  recordMembership(store, garden, sam, 'join');
  enterRoom(store, '!sam-and-bot', true);
  recordMembership(store, '!sam-and-bot', sam, 'join');
  for (const room of [garden, '!sam-and-bot', robinsDirect, '!unknown', '', `${paddock}' OR '1'='1`])
    expect([room, reach(garageFor(store, sam, room))]).toEqual([room, nothing]);
});

test('by somebody who is not in the room: never was, invited, left, banned, or asks with a name in other case', () => {
  share();
  expect(reach(garageFor(store, ash, paddock))).toEqual(nothing);
  for (const state of ['invite', 'knock', 'leave', 'ban'] as const) {
    recordMembership(store, paddock, sam, state);
    const garage = garageFor(store, sam, paddock);
    expect([state, reach(garage), garage.members]).toEqual([state, nothing, []]);
  }
  recordMembership(store, paddock, sam, 'join');
  expect(reach(garageFor(store, sam, paddock)).cars).toBe(1);
  expect(reach(garageFor(store, sam.toUpperCase(), paddock))).toEqual(nothing);
});

test('a garage that is kept after its asker left gives no more revisions', () => {
  share();
  const garage = garageFor(store, sam, paddock);
  expect(garage.others).toHaveLength(1);
  recordMembership(store, paddock, sam, 'leave');
  expect(garage.revision(moments[3]!)).toBeUndefined();
});

test('the owner left: it is hidden, and stays so after coming back until it is shared again', () => {
  share();
  share(garden);
  recordMembership(store, paddock, robin, 'leave');
  expect(reach(garageFor(store, sam, paddock))).toEqual(nothing);
  recordMembership(store, paddock, robin, 'join');
  expect(reach(garageFor(store, sam, paddock))).toEqual(nothing);
  // Only there: in the other room nothing has changed.
  expect(everything(store).shares?.map((row) => Object(row).room)).toEqual([garden]);
  expect(names(garageFor(store, ash, garden))).toEqual(['turnip of robin']);
  share();
  expect(reach(garageFor(store, sam, paddock)).cars).toBe(1);
});

test('an owner who is only invited (again) is not in the room', () => {
  share();
  for (const state of ['invite', 'knock'] as const) {
    recordMembership(store, paddock, robin, state);
    expect([state, reach(garageFor(store, sam, paddock))]).toEqual([state, nothing]);
  }
});

test('unshared, it is hidden at once, and only there', () => {
  share();
  share(garden);
  change(store, robin, [{ change: 'unshare', car: turnip, room: paddock }]);
  expect(reach(garageFor(store, sam, paddock))).toEqual(nothing);
  expect(reach(garageFor(store, ash, garden)).cars).toBe(1);
});

test('the bot left the room: nothing is seen there, also not when it is back', () => {
  share();
  leaveRoom(store, paddock);
  expect(reach(garageFor(store, sam, paddock))).toEqual(nothing);
  expect(garageFor(store, sam, paddock).members).toEqual([]);
  emptyRoom(store, paddock);
  enterRoom(store, paddock, false);
  for (const member of [robin, sam]) recordMembership(store, paddock, member, 'join');
  expect(reach(garageFor(store, sam, paddock))).toEqual(nothing);
});

test('guessed numbers of revisions give others nothing', () => {
  const mine = record(store, robin, moth, { mass: 900 });
  share();
  const garage = garageFor(store, sam, paddock);
  const seen = Array.from({ length: 40 }, (_, n) => n - 10).filter((id) => garage.revision(id) !== undefined);
  expect(seen).toEqual([moments[1], moments[3]]);
  expect(garage.revision(mine)).toBeUndefined();
  expect(garage.revision(Number.NaN)).toBeUndefined();
  expect(garage.revision(1.5)).toBeUndefined();
});

test('what was measured in another revision follows the head, and the old one is closed again', () => {
  share();
  const head = headOf(store, robin, turnip);
  const again = change(store, robin, [
    { change: 'record', car: turnip, head, facts: facts({ mass: 1190 }), why: 'on the scales again', measuredIn: 'now' },
  ]).revisions.get(-1)!;
  const garage = garageFor(store, sam, paddock);
  expect(garage.revision(again)?.measuredIn).toBe(again);
  expect(reach(garage).revisions).toEqual([]);
});

test('the members of a room are those who are in it, for those who are in it, by their names there', () => {
  expect(garageFor(store, sam, paddock).members).toEqual([
    { id: robin, name: 'Robin of the paddock' },
    { id: sam, name: 'Sam' },
  ]);
  expect(garageFor(store, ash, garden).members).toEqual([
    { id: ash, name: 'ash' },
    { id: robin, name: 'robin' },
  ]);
  expect(garageFor(store, ash, paddock).members).toEqual([]);
});

test('who speaks is put back when forgotten, but never when known to have left', () => {
  recordMembership(store, paddock, sam, 'leave');
  speaks(store, paddock, sam, 'Sam');
  expect(isJoined(store, paddock, sam)).toBe(false);
  speaks(store, paddock, ash, 'Ash');
  expect(isJoined(store, paddock, ash)).toBe(true);
});

test('one garage is one state: what was read stays as it was', () => {
  const garage = garageFor(store, robin, paddock);
  const head = garage.mine[0]!.head;
  record(store, robin, turnip, { mass: 1300 });
  expect(garage.mine[0]!.head).toBe(head);
  expect(garage.chosen).toBe(garage.mine[0]);
  expect(garageFor(store, robin, paddock).mine[0]!.head.facts.get('mass')?.value).toBe(1300);
});

test('what a member sees is found by indices: no table is scanned', () => {
  const plans: string[] = [];
  const explain = (sql: string): void => {
    for (const row of store.database.prepare<[], { detail: string }>(`EXPLAIN QUERY PLAN ${sql}`).all()) plans.push(row.detail);
  };
  explain("SELECT * FROM seen WHERE seen.asker = 'a' AND seen.room = 'r'");
  explain("SELECT * FROM seen WHERE seen.asker = 'a' AND seen.room = 'r' AND seen.car = 1");
  explain("SELECT * FROM cars JOIN revisions AS r ON r.id = cars.head WHERE cars.owner = 'a' ORDER BY cars.id");
  explain('SELECT * FROM revisions WHERE car = 1 AND id < 9 ORDER BY id DESC');
  for (const of of ['car = 1', "member = 'a'", "room = 'r'"]) explain(`SELECT * FROM records WHERE ${of} AND kind = 'part' ORDER BY id`);
  for (const of of ["line = 'e'", "undone = 'e'", "member = 'a' AND id < 9", "kind = 'part' AND record = '1'"])
    explain(`SELECT * FROM journal WHERE ${of} ORDER BY id DESC`);
  expect(plans.length).toBeGreaterThan(10);
  expect(plans.filter((detail) => detail.startsWith('SCAN'))).toEqual([]);
});
