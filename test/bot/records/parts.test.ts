/** The parts box in the store: what an older database holds of it stays, its owner alone sees it, and it goes with its car. */
import Database from 'better-sqlite3';
import { beforeEach, expect, test } from 'vitest';
import { inspect, pragmaNumber, type Store } from '../../../bot/records/database.js';
import { garageFor } from '../../../bot/records/garage.js';
import { eraseTexts } from '../../../bot/records/redact.js';
import { migrations } from '../../../bot/records/schema.js';
import type { NewPart } from '../../../commands/parts/part.js';
import { type AddRecord, added } from '../../../commands/records/change.js';
import { addedPart, parts, partsOf, removedPart } from '../../../commands/records/kinds/part.js';
import { ChangeRefused } from '../../../commands/records/refused.js';
import { change, everything, meetClub, newCar, newEvent, paddock, robin, sam } from './club.js';
import { freshFile, opened } from './fresh.js';

const bars: NewPart = {
  facts: [{ entry: 'bar.diameter', places: ['rear'], can: { is: 'values', values: [0.022, 0.025] } }],
  minutes: 40,
  line: 'i have 22 and 25 mm rear bars, 40 min',
};
const pressures: NewPart = {
  facts: [{ entry: 'tire.pressure', places: ['lr', 'rr'], can: { is: 'range', from: 165_000, to: 234_000, step: 6894.757293168361 } }],
  price: { amount: 15, currency: '€' },
  line: 'i can set rear pressure',
};
const clicks: NewPart = { facts: [], note: '12 clicks of rear rebound', minutes: 1, line: 'i have 12 clicks' };
let store: Store;
let car: number;
beforeEach(() => {
  store = opened();
  meetClub(store);
  car = newCar(store, robin, 'turnip');
});
const add = (part: NewPart, cause = newEvent(), owner = robin, to = car) => change(store, owner, [addedPart(to, part)], cause);
const box = (owner = robin, of = car) => partsOf(garageFor(store, owner, paddock), of);

test('a database of version 2 migrates: what is in the box stays, under its numbers', () => {
  const file = freshFile();
  const old = opened(file, { migrations: migrations.slice(0, 2) });
  const { line, ...part } = bars;
  old.database.pragma('foreign_keys = OFF');
  old.database.exec(`
    INSERT INTO members (id, name, units, decimal_mark) VALUES ('${robin}', 'robin', 'us', '.');
    INSERT INTO cars (id, owner, name, name_key, head) VALUES (3, '${robin}', 'turnip', 'turnip', 5);
    INSERT INTO revisions (id, car, at, by, why, facts, cause, step) VALUES (5, 3, 1, '${robin}', 'car turnip', '{}', '$a', 1);
    INSERT INTO parts (id, car, at, part, line, cause) VALUES (7, 3, 2, '${JSON.stringify(part)}', '${line}', '$b'), (8, 3, 2, '{}', '', '$b');
    DELETE FROM parts WHERE id = 8;`);
  old.close();
  const now = opened(file);
  expect(pragmaNumber(now.database, 'user_version')).toBe(migrations.length);
  expect(now.copiedTo).toMatch(/schema-2-/);
  expect(inspect(file).problems).toEqual([]);
  expect(partsOf(garageFor(now, robin, paddock), 3)).toEqual([{ ...bars, id: 7 }]);
  // A number is never used again.
  change(now, robin, [addedPart(3, clicks)]);
  expect(partsOf(garageFor(now, robin, paddock), 3).map(({ id }) => id)).toEqual([7, 9]);
  const copy = new Database(now.copiedTo!, { readonly: true });
  expect(copy.prepare("SELECT count(*) FROM sqlite_schema WHERE name = 'records'").pluck().get()).toBe(0);
  copy.close();
});
test('what goes in comes out, in order', () => {
  for (const part of [bars, pressures, clicks]) add(part);
  expect(box().map(({ id: _, ...part }) => part)).toEqual([bars, pressures, clicks]);
});
test('a part made in a message can be forgotten in it', () => {
  change(store, robin, [addedPart(car, bars), addedPart(car, clicks), removedPart({ ...bars, id: -1 })]);
  expect(box().map(({ note }) => note)).toEqual(['12 clicks of rear rebound']);
});
test('nobody else sees it, nor can change it, also where the car is shared', () => {
  add(bars);
  change(store, robin, [{ change: 'share', car, room: paddock }]);
  expect(garageFor(store, sam, paddock).others).toHaveLength(1);
  expect(box(sam)).toEqual([]);
  const [held] = box();
  const before = everything(store);
  expect(() => add(clicks, newEvent(), sam)).toThrow('not in the box');
  expect(() => change(store, sam, [removedPart(held!)])).toThrow('not in the box any more');
  expect(() => change(store, robin, [removedPart({ ...held!, id: 999 })])).toThrow('not in the box any more');
  expect(everything(store).records).toEqual(before.records);
});
test('what the catalog does not know is refused, and nothing is written', () => {
  const wrong: readonly NewPart[] = [
    { facts: [{ entry: 'flumph', places: ['rear'], can: { is: 'values', values: [1] } }], line: '' },
    { facts: [{ entry: 'rideFrequency', places: ['rear'], can: { is: 'values', values: [1] } }], line: '' },
    { facts: [{ entry: 'bar.diameter', places: ['lr'], can: { is: 'values', values: [0.02] } }], line: '' },
    { facts: [{ entry: 'bar.diameter', places: ['rear'], can: { is: 'values', values: ['thick'] } }], line: '' },
    { facts: [{ entry: 'tire.size', places: ['rear'], can: { is: 'values', values: ['9999/1R17'] } }], line: '' },
    { facts: [{ entry: 'bar.diameter', places: ['rear'], can: { is: 'range', from: 0.02, to: 0.01, step: 0.001 } }], line: '' },
    { facts: [], line: '' },
    { ...bars, minutes: -1 },
  ];
  for (const { line, ...part } of wrong) {
    const put: AddRecord = { ...added(parts, { car }, { facts: [] }, line), data: part };
    expect(() => change(store, robin, [put]), JSON.stringify(part)).toThrow(ChangeRefused);
  }
  expect(everything(store).records).toEqual([]);
});
test('redaction takes the words and leaves the part', () => {
  const cause = newEvent();
  add(bars, cause);
  add(clicks);
  store.transaction(() => eraseTexts(store, cause));
  expect(box().map(({ line }) => line)).toEqual(['', clicks.line]);
  expect(box()[0]!.facts).toEqual(bars.facts);
});
test('the export holds it, forgetting the car or the member erases it', () => {
  add(bars);
  add(pressures);
  const data = change(store, robin, [{ change: 'export me' }]).exported;
  const at = expect.any(String);
  expect(data?.cars[0]?.parts).toEqual([bars, pressures].map((part) => ({ ...part, at })));
  const moth = newCar(store, sam, 'moth');
  add(clicks, newEvent(), sam, moth);
  change(store, robin, [{ change: 'forget car', car }]);
  expect(everything(store).records).toHaveLength(1);
  change(store, sam, [{ change: 'forget me' }]);
  expect(everything(store).records).toEqual([]);
});
