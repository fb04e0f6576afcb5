import { beforeEach, expect, test } from 'vitest';
import { AlreadyMade, applyChanges, ChangeRefused, Moved } from '../../../bot/records/apply.js';
import { changesMadeBy } from '../../../bot/records/changed.js';
import type { Store } from '../../../bot/records/database.js';
import { garageFor } from '../../../bot/records/garage.js';
import { findMember } from '../../../bot/records/members.js';
import { recordMembership, recordPower } from '../../../bot/records/memberships.js';
import { eraseText } from '../../../bot/records/revisions.js';
import { findRoom, markEncrypted } from '../../../bot/records/rooms.js';
import type { Change } from '../../../commands/context.js';
import { FactsRefused } from '../../../commands/records/facts.js';
import {
  ash,
  change,
  everything,
  facts,
  garden,
  headOf,
  meetClub,
  newCar,
  newEvent,
  paddock,
  record,
  robin,
  robinsDirect,
  sam,
} from './club.js';
import { opened } from './fresh.js';

let store: Store;
let turnip: number;
let moth: number;
beforeEach(() => {
  store = opened();
  meetClub(store);
  turnip = newCar(store, robin, 'turnip', facts({ mass: 1200 }));
  moth = newCar(store, sam, 'moth', facts({ mass: 900 }));
});
const mine = (member = robin, room = paddock) => garageFor(store, member, room);
/** The change throws this, and not one row is different. */
function refused(
  asker: string,
  changes: readonly Change[],
  problem: new (...given: never[]) => Error,
  sentence: string,
  cause = newEvent(),
  room = paddock,
): void {
  const before = everything(store);
  let thrown: unknown;
  try {
    change(store, asker, changes, cause, room);
  } catch (error) {
    thrown = error;
  }
  expect(thrown).toBeInstanceOf(problem);
  expect(thrown).toMatchObject({ message: sentence });
  expect(everything(store)).toEqual(before);
}

test('a new car has one revision, measured in itself, and is chosen when that was asked', () => {
  const [first] = mine().history(turnip, 9);
  expect(first).toEqual({
    ...{ id: first!.id, car: turnip, parent: undefined, at: first!.at, by: robin, why: 'car turnip', undoes: undefined },
    facts: facts({ mass: 1200 }),
    measuredIn: first!.id,
  });
  expect(mine().chosen?.id).toBe(turnip);
  const applied = change(store, robin, [{ change: 'make car', car: -1, name: 'pickle', facts: facts({}), measured: false }]);
  const pickle = mine().mine.find((car) => car.name === 'pickle');
  expect(pickle?.id).toBe(applied.cars.get(-1));
  expect([pickle?.head.measuredIn, pickle?.head.facts.size, pickle?.head.why]).toEqual([undefined, 0, '']);
  expect(mine().chosen?.id).toBe(turnip);
});

test('numbers below 0 stand for what was stored, through a whole message', () => {
  const cause = newEvent();
  const applied = change(
    store,
    robin,
    [
      { change: 'make car', car: -1, name: 'pickle', facts: facts({ mass: 800 }), measured: true },
      { change: 'choose car', car: -1 },
      { change: 'keep', car: -1, name: 'first', revision: -1 },
      { change: 'record', car: -1, head: -1, facts: facts({ mass: 810 }), why: 'set weight 810', measuredIn: -1 },
      { change: 'record', car: -1, head: -2, facts: facts({ mass: 820 }), why: 'set weight 820', measuredIn: 'now' },
      { change: 'keep', car: -1, name: 'now', revision: 'now' },
      { change: 'share', car: -1, room: paddock },
    ],
    cause,
  );
  const car = applied.cars.get(-1)!;
  const ids = [-1, -2].map((made) => applied.revisions.get(made)!);
  expect(
    mine()
      .history(car, 9)
      .map((one) => [one.id, one.parent, one.measuredIn, one.undoes, one.facts.get('mass')?.value]),
  ).toEqual([
    [ids[1], ids[0], ids[1], undefined, 820],
    [ids[0], undefined, ids[0], undefined, 800],
  ]);
  expect(mine().setups(car)).toEqual([
    { name: 'first', revision: ids[0] },
    { name: 'now', revision: ids[1] },
  ]);
  expect(mine().chosen?.id).toBe(car);
  expect(mine(sam).others.map((one) => one.name)).toEqual(['pickle']);
  expect(changesMadeBy(store, cause)).toEqual(['choose car', 'keep', 'make car', 'record', 'share']);
});

test('a head that moved is refused, and so is one that never was', () => {
  const head = headOf(store, robin, turnip);
  record(store, robin, turnip, { mass: 1210 });
  const late: Change = { change: 'record', car: turnip, head, facts: facts({ mass: 1 }), why: 'late', measuredIn: undefined };
  refused(robin, [late], Moved, `Car ${turnip} has changed since the message was worked out.`);
  refused(robin, [{ ...late, head: 999 }], Moved, `Car ${turnip} has changed since the message was worked out.`);
  // Also after another change of the same message went well: all of it or none.
  refused(
    robin,
    [{ change: 'rename car', car: turnip, name: 'parsnip' }, late],
    Moved,
    `Car ${turnip} has changed since the message was worked out.`,
  );
});

test('an event changes things once', () => {
  const cause = newEvent();
  const head = headOf(store, robin, turnip);
  const first: Change = { change: 'record', car: turnip, head, facts: facts({ mass: 1210 }), why: 'set', measuredIn: 'now' };
  change(store, robin, [first], cause);
  const again: Change = { ...first, head: headOf(store, robin, turnip) };
  refused(robin, [again], AlreadyMade, `The changes of ${cause} were made before.`, cause);
  refused(robin, [{ change: 'prefer', preferences: { units: 'metric' } }], AlreadyMade, `The changes of ${cause} were made before.`, cause);
  // A question of the same event changes nothing, and may be asked again.
  expect(change(store, robin, [], cause).cars.size).toBe(0);
  // The table holds the line even if nobody asked first.
  store.database.prepare('DELETE FROM changed').run();
  const before = everything(store);
  expect(() =>
    store.database
      .prepare("INSERT INTO revisions (car, at, by, why, facts, cause, step) VALUES (?, 0, 'x', '', '{}', ?, 1)")
      .run(turnip, cause),
  ).toThrow('UNIQUE constraint failed: revisions.car, revisions.cause, revisions.step');
  expect(everything(store)).toEqual(before);
});

test("nobody changes another member's car, and its being there is not told", () => {
  const head = headOf(store, sam, moth);
  const sentence = 'That car is not one of yours any more.';
  change(store, sam, [{ change: 'share', car: moth, room: paddock }]);
  for (const car of [moth, 999, -1])
    for (const attempt of [
      { change: 'record', car, head, facts: facts({ mass: 1 }), why: 'mischief', measuredIn: undefined },
      { change: 'choose car', car },
      { change: 'rename car', car, name: 'mine' },
      { change: 'forget car', car },
      { change: 'keep', car, name: 'dry', revision: 'now' },
      { change: 'share', car, room: garden },
      { change: 'unshare', car, room: paddock },
    ] satisfies Change[])
      refused(robin, [attempt], ChangeRefused, sentence);
});

test("another car's revisions cannot be kept or measured in", () => {
  const pickle = newCar(store, robin, 'pickle');
  const head = headOf(store, robin, turnip);
  for (const foreign of [headOf(store, robin, pickle), headOf(store, sam, moth), 999]) {
    const sentence = 'turnip has no such moment in its history any more.';
    refused(robin, [{ change: 'keep', car: turnip, name: 'dry', revision: foreign }], ChangeRefused, sentence);
    const base = { change: 'record', car: turnip, head, facts: facts({ mass: 1 }), why: 'x' } as const;
    refused(robin, [{ ...base, measuredIn: foreign }], ChangeRefused, sentence);
  }
});

test('a fact that the catalog does not know is refused, and nothing is stored', () => {
  const head = headOf(store, robin, turnip);
  const base = { change: 'record', car: turnip, head, why: 'x', measuredIn: undefined } as const;
  refused(robin, [{ ...base, facts: facts({ turbo: 2 }) }], FactsRefused, '"turbo" is not a fact that can be recorded of a car.');
  refused(
    robin,
    [{ change: 'make car', car: -1, name: 'new', facts: facts({ turbo: 2 }), measured: true }],
    FactsRefused,
    '"turbo" is not a fact that can be recorded of a car.',
  );
});

test('two cars of a member never have one name, in any writing', () => {
  const sentence = 'You have a car called turnip already; give this one another name.';
  for (const name of ['turnip', 'Turnip', ' TURNIP ', 'ｔｕｒｎｉｐ']) {
    refused(robin, [{ change: 'make car', car: -1, name, facts: facts({}), measured: true }], ChangeRefused, sentence);
  }
  const pickle = newCar(store, robin, 'pickle');
  refused(robin, [{ change: 'rename car', car: pickle, name: 'TURNIP' }], ChangeRefused, sentence);
  change(store, robin, [{ change: 'rename car', car: turnip, name: 'Turnip' }]);
  expect(mine().mine.map((car) => car.name)).toEqual(['Turnip', 'pickle']);
  // Another member's car may have it.
  newCar(store, sam, 'turnip');
});

test('a setup name is kept once a car, and moves', () => {
  const first = headOf(store, robin, turnip);
  change(store, robin, [{ change: 'keep', car: turnip, name: 'Dry', revision: 'now' }]);
  const second = record(store, robin, turnip, { mass: 1210 });
  change(store, robin, [{ change: 'keep', car: turnip, name: 'wet', revision: first }]);
  change(store, robin, [{ change: 'keep', car: turnip, name: 'dry', revision: second }]);
  expect(mine().setups(turnip)).toEqual([
    { name: 'dry', revision: second },
    { name: 'wet', revision: first },
  ]);
  expect(mine(sam).setups(turnip)).toEqual([]);
});

test('a forgotten car leaves nothing, and the first of the others is in use', () => {
  const pickle = newCar(store, robin, 'pickle');
  const third = newCar(store, robin, 'third');
  change(store, robin, [
    { change: 'keep', car: third, name: 'dry', revision: 'now' },
    { change: 'share', car: third, room: paddock },
  ]);
  record(store, robin, third, { mass: 1 + 600 });
  change(store, robin, [{ change: 'forget car', car: third }]);
  expect(mine().mine.map((car) => car.id)).toEqual([turnip, pickle]);
  expect(mine().chosen?.id).toBe(turnip);
  const rows = everything(store);
  expect(JSON.stringify([rows.revisions, rows.setups, rows.shares, rows.cars])).not.toMatch(/third|601/);
  change(store, robin, [{ change: 'forget car', car: pickle }]);
  expect(mine().chosen?.id).toBe(turnip);
  change(store, robin, [{ change: 'forget car', car: turnip }]);
  expect([mine().mine, mine().chosen]).toEqual([[], undefined]);
  // Its numbers are never used again: an old number never means another car.
  expect(newCar(store, robin, 'again')).toBeGreaterThan(third);
});

test('sharing needs the owner in that room', () => {
  const sentence = 'A car can be shared only in a room that you are in.';
  refused(robin, [{ change: 'share', car: turnip, room: '!unknown' }], ChangeRefused, sentence);
  refused(sam, [{ change: 'share', car: moth, room: garden }], ChangeRefused, sentence);
  recordMembership(store, paddock, robin, 'leave');
  refused(robin, [{ change: 'share', car: turnip, room: paddock }], ChangeRefused, sentence);
});

test('preferences change one at a time', () => {
  change(store, robin, [{ change: 'prefer', preferences: { units: 'metric' } }]);
  change(store, robin, [{ change: 'prefer', preferences: { decimalMark: ',' } }]);
  expect(findMember(store, robin)?.preferences).toEqual({ units: 'metric', decimalMark: ',' });
  expect(findMember(store, sam)?.preferences).toEqual({ units: 'us', decimalMark: '.' });
});

test('a prefix is set in a room by a member with the power, in a direct chat by its member', () => {
  const wish = (room: string, prefix = 'sx:'): Change => ({ change: 'prefix', room, prefix });
  const power = "Only a member with the power to change this room's settings can set the prefix here.";
  refused(robin, [wish(paddock)], ChangeRefused, power);
  recordPower(store, paddock, [robin]);
  change(store, robin, [wish(paddock)]);
  expect(findRoom(store, paddock)?.prefix).toBe('sx:');
  refused(sam, [wish(paddock)], ChangeRefused, power);
  recordPower(store, paddock, [sam]);
  refused(robin, [wish(paddock)], ChangeRefused, power);
  change(store, robin, [wish(robinsDirect, '?')], newEvent(), robinsDirect);
  expect(findRoom(store, robinsDirect)?.prefix).toBe('?');
  for (const bad of ['', 'a b', 'much too long'])
    refused(sam, [wish(paddock, bad)], ChangeRefused, 'A prefix is 1 to 8 characters with no space, like ! or sx:');
  refused(ash, [wish(paddock)], ChangeRefused, 'Only somebody who is in a room can change it.');
  refused(sam, [wish(garden)], Error, 'A room is changed only from inside it.');
});

test('who has the power and leaves has it no longer after coming back', () => {
  recordPower(store, paddock, [robin]);
  recordMembership(store, paddock, robin, 'leave');
  recordMembership(store, paddock, robin, 'join');
  refused(
    robin,
    [{ change: 'prefix', room: paddock, prefix: '?' }],
    ChangeRefused,
    "Only a member with the power to change this room's settings can set the prefix here.",
  );
});

test('leaving a room is handed to the bot, and asked by somebody in it', () => {
  expect(change(store, robin, [{ change: 'leave room', room: paddock }]).leave).toEqual([paddock]);
  expect(findRoom(store, paddock)?.left).toBe(false);
  refused(ash, [{ change: 'leave room', room: paddock }], ChangeRefused, 'Only somebody who is in a room can change it.');
});

test('a revision is never altered, but redaction takes its words and keeps the change', () => {
  const cause = newEvent();
  const revision = record(store, robin, turnip, { mass: 1210 }, cause, 'set weight 1210, secretly');
  for (const column of ['car', 'parent', 'at', 'by', 'facts', 'measured_in', 'undoes', 'cause', 'step'])
    expect(() => store.database.prepare(`UPDATE revisions SET ${column} = ${column} WHERE id = ?`).run(revision), column).toThrow(
      'a revision is never altered',
    );
  expect(() => store.database.prepare("UPDATE revisions SET why = 'other' WHERE id = ?").run(revision)).toThrow(
    'a revision is never altered',
  );
  const facts = mine().revision(revision)?.facts;
  eraseText(store, cause, '$unknown');
  expect(mine().revision(revision)?.why).toBe('');
  expect(mine().revision(revision)?.facts).toEqual(facts);
  expect(JSON.stringify(everything(store))).not.toContain('secretly');
  // Only that event's.
  expect(
    mine()
      .history(turnip, 9)
      .map((one) => one.why),
  ).toEqual(['', 'car turnip']);
});

test('an encrypted room stays encrypted', () => {
  markEncrypted(store, paddock);
  markEncrypted(store, '!not-yet-entered');
  expect(findRoom(store, paddock)?.encrypted).toBe(true);
  expect(findRoom(store, '!not-yet-entered')).toMatchObject({ encrypted: true, left: true });
  expect(() => store.database.prepare('UPDATE rooms SET encrypted = 0').run()).toThrow('an encrypted room stays encrypted');
});

test('changes are refused outside a transaction: half of them could stay', () => {
  const before = everything(store);
  const asker = { id: robin, name: 'robin', preferences: { units: 'us', decimalMark: '.' } } as const;
  expect(() => applyChanges(store, { asker, room: paddock, changes: [{ change: 'forget me' }], at: 0, cause: '$x' })).toThrow(
    'inside a transaction',
  );
  expect(everything(store)).toEqual(before);
});
