/** The parts box in the store: a version 1 database takes it in, its owner alone sees it, and it goes with its car. */
import Database from 'better-sqlite3';
import { beforeEach, expect, test } from 'vitest';
import { inspect, pragmaNumber, type Store } from '../../../bot/store/database.js';
import { FactsRefused } from '../../../bot/store/facts.js';
import { garageFor } from '../../../bot/store/garage.js';
import { erasePartText, partsOf } from '../../../bot/store/parts.js';
import { migrations } from '../../../bot/store/schema.js';
import type { NewPart } from '../../../commands/parts/part.js';
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
const add = (part: NewPart, cause = newEvent(), owner = robin, to = car) =>
  change(store, owner, [{ change: 'add part', car: to, part, as: -1 }], cause);
const box = (owner = robin, of = car) => garageFor(store, owner, paddock).parts(of);

test('a database of version 1 migrates: its cars stay, the box is there and empty', () => {
  const file = freshFile();
  const old = opened(file, { migrations: migrations.slice(0, 1) });
  // In that version's own words: today's program can't write it.
  const before = 1;
  old.database.exec(`INSERT INTO members VALUES ('${robin}', 'robin', 'us', '.', NULL);
    BEGIN; INSERT INTO cars VALUES (1, '${robin}', 'turnip', 'turnip', 1);
    INSERT INTO revisions VALUES (1, 1, NULL, 7, '${robin}', 'car turnip', '{"mass":[1200,0,"m","told"]}', 1, NULL, '$made', 1); COMMIT`);
  const rows = old.database.prepare('SELECT * FROM revisions').all();
  expect(pragmaNumber(old.database, 'user_version')).toBe(1);
  old.close();
  const now = opened(file);
  expect(pragmaNumber(now.database, 'user_version')).toBe(migrations.length);
  expect(now.copiedTo).toMatch(/schema-1-/);
  expect(now.database.prepare('SELECT * FROM revisions').all()).toEqual(rows);
  expect(inspect(file).problems).toEqual([]);
  expect(garageFor(now, robin, paddock).parts(before)).toEqual([]);
  change(now, robin, [{ change: 'add part', car: before, part: bars }]);
  expect(garageFor(now, robin, paddock).parts(before)).toHaveLength(1);
  const copy = new Database(now.copiedTo!, { readonly: true });
  expect(copy.prepare("SELECT count(*) FROM sqlite_schema WHERE name = 'parts'").pluck().get()).toBe(0);
  copy.close();
});
test('what goes in comes out, in order', () => {
  for (const part of [bars, pressures, clicks]) add(part);
  expect(box().map(({ id: _, at: __, ...part }: NewPart & { id: number; at?: number }) => part)).toEqual([bars, pressures, clicks]);
});
test('a part made in a message can be forgotten in it', () => {
  change(store, robin, [
    { change: 'add part', car, part: bars, as: -1 },
    { change: 'add part', car, part: clicks, as: -2 },
    { change: 'forget part', car, part: -1 },
  ]);
  expect(box().map(({ note }) => note)).toEqual(['12 clicks of rear rebound']);
});
test('nobody else sees it, nor can change it, also where the car is shared', () => {
  add(bars);
  change(store, robin, [{ change: 'share', car, room: paddock }]);
  expect(garageFor(store, sam, paddock).others).toHaveLength(1);
  expect(box(sam)).toEqual([]);
  const [held] = box();
  const before = everything(store);
  expect(() => add(clicks, newEvent(), sam)).toThrow('not one of yours');
  expect(() => change(store, sam, [{ change: 'forget part', car, part: held!.id }])).toThrow('not one of yours');
  const moth = newCar(store, sam, 'moth');
  expect(() => change(store, sam, [{ change: 'forget part', car: moth, part: held!.id }])).toThrow('not in the box any more');
  expect(everything(store).parts).toEqual(before.parts);
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
  for (const part of wrong) expect(() => add(part), JSON.stringify(part)).toThrow(FactsRefused);
  expect(everything(store).parts).toEqual([]);
});
test('redaction takes the words and leaves the part', () => {
  const cause = newEvent();
  add(bars, cause);
  add(clicks);
  erasePartText(store, cause);
  expect(partsOf(store, car, robin).map(({ line }) => line)).toEqual(['', clicks.line]);
  expect(box()[0]!.facts).toEqual(bars.facts);
});
test('the export holds it, forgetting the car or the member erases it', () => {
  add(bars);
  add(pressures);
  const data = change(store, robin, [{ change: 'export me' }]).exported;
  expect(data?.cars[0]?.parts.map(({ at: _, ...part }) => part)).toEqual([bars, pressures]);
  const moth = newCar(store, sam, 'moth');
  add(clicks, newEvent(), sam, moth);
  change(store, robin, [{ change: 'forget car', car }]);
  expect(everything(store).parts).toHaveLength(1);
  change(store, sam, [{ change: 'forget me' }]);
  expect(everything(store).parts).toEqual([]);
});
