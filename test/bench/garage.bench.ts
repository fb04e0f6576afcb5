/** How much slower `show` and `compare` are in a garage of 100,000 cars than in one of ten. Both are read through the store and answered by dispatch. */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { openDatabase } from '../../bot/records/database.js';
import { garageFor } from '../../bot/records/garage.js';
import type { Store } from '../../bot/records/store.js';
import type { Context } from '../../commands/context.js';
import { dispatch } from '../../commands/dispatch.js';
import { format } from '../../commands/records/facts.js';
import type { Fact } from '../../core/car.js';
import { median } from './statistics.js';

const clubOf = 5;
const carsEach = 2;
// One figure each: what is measured is the store, and working out whole cars would only hide it.
const questions = { show: 'show front ride frequency', compare: 'compare me with @sam front ride frequency' } as const;

const fact = (value: number, within: number): Fact => ({ value, within, evidence: 'measured', source: 'the bench' });
/** An invented car, SI. */
const facts = format.write(
  new Map([
    ['mass', fact(1250, 6)],
    ['frontShare', fact(0.54, 0.005)],
    ['wheelbase', fact(2.57, 0.005)],
    ['front.spring.rate', fact(78_800, 1600)],
    ['rear.spring.rate', fact(61_300, 1200)],
    ['front.spring.ratio', fact(0.95, 0.02)],
    ['rear.spring.ratio', fact(0.72, 0.02)],
  ]),
);

/**
 * Clubs of five members with two cars each, the first of them shared in the club's room. Written by SQL alone: a hundred thousand cars in a few seconds.
 * Ids count up: club n has the members 5n to 5n+4, member m the cars 2m+1 and 2m+2, and a car its revisions 2c-1 and 2c.
 */
export function fillGarage(store: Store, cars: number): number {
  const clubs = cars / (clubOf * carsEach);
  if (!Number.isInteger(clubs)) throw new Error(`${cars} cars do not make whole clubs of ${clubOf * carsEach}`);
  const count = (upTo: number): string => `WITH RECURSIVE count (n) AS (SELECT 0 UNION ALL SELECT n + 1 FROM count WHERE n + 1 < ${upTo})`;
  const member =
    "'@' || CASE n % 5 WHEN 0 THEN 'robin' WHEN 1 THEN 'sam' WHEN 2 THEN 'ash' WHEN 3 THEN 'wren' ELSE 'moss' END || '-' || (n / 5) || ':example.org'";
  const name = "CASE n % 5 WHEN 0 THEN 'robin' WHEN 1 THEN 'sam' WHEN 2 THEN 'ash' WHEN 3 THEN 'wren' ELSE 'moss' END";
  const carName = "CASE c % 2 WHEN 0 THEN 'turnip' ELSE 'moth' END";
  const people = clubs * clubOf;
  store.transaction(() => {
    store.database.exec(`
      ${count(clubs)} INSERT INTO rooms (id, direct) SELECT '!club-' || n, 0 FROM count;
      ${count(people)} INSERT INTO members (id, name, units, decimal_mark, chosen) SELECT ${member}, ${name}, 'us', '.', n * 2 + 1 FROM count;
      ${count(people)} INSERT INTO memberships (room, member, state, name) SELECT '!club-' || (n / 5), ${member}, 'join', ${name} FROM count;
      ${count(cars)} INSERT INTO cars (id, owner, name, name_key, head)
        SELECT c + 1, ${member}, ${carName}, ${carName}, c * 2 + 2 FROM (SELECT n AS c, n / 2 AS n FROM count);
      ${count(people)} INSERT INTO shares (room, car) SELECT '!club-' || (n / 5), n * 2 + 1 FROM count;
    `);
    // Two moments a car: as it was made, and as it is.
    store.database
      .prepare(
        `${count(cars * 2)} INSERT INTO revisions (id, car, parent, at, by, why, facts, measured_in, cause, step)
         SELECT r + 1, r / 2 + 1, CASE r % 2 WHEN 1 THEN r END, 1800000000000 + r, ${member}, 'the bench', ?, (r / 2) * 2 + 1, '$bench-' || r, 1
         FROM (SELECT n AS r, n / 4 AS n FROM count)`,
      )
      .run(facts);
  });
  store.checkpoint();
  return clubs;
}

/** Milliseconds for one question of robin in this club, from nothing but the store. */
async function ask(store: Store, club: number, line: string): Promise<number> {
  const asker = { id: `@robin-${club}:example.org`, name: 'robin', preferences: { units: 'us', decimalMark: '.' } } as const;
  const room = { id: `!club-${club}`, direct: false };
  const breathe = (): Promise<void> => Promise.resolve();
  const calculator: Context['calculator'] = { calculate: () => Promise.reject(new Error('the bench calculates nothing')) };
  const event = { id: '$asked', line: '$asked', nth: 0 };
  const start = performance.now();
  const garage = garageFor(store, asker.id, room.id);
  const reply = await dispatch(line, {
    event,
    asker,
    room,
    now: 1_900_000_000_000,
    garage,
    conversation: { rest: [], choices: [] },
    calculator,
    breathe,
  });
  const taken = performance.now() - start;
  const kinds = reply.answers.map((one) => one.kind).join();
  if (kinds !== 'told') throw new Error(`"${line}" was answered by ${kinds}: ${reply.answers[0]?.headline}`);
  return taken;
}

/** The larger of the two ratios of medians; the two garages are asked in turn, each question in another club where there is one. */
export async function measureGarage(rounds = 150): Promise<{ garageRatio: number }> {
  const folder = mkdtempSync(join(tmpdir(), 'stubaxle-bench-'));
  const [small, large] = [openDatabase(join(folder, 'ten.db')), openDatabase(join(folder, 'many.db'))];
  try {
    const garages = [
      { store: small, clubs: fillGarage(small, 10) },
      { store: large, clubs: fillGarage(large, 100_000) },
    ] as const;
    const ratios: number[] = [];
    for (const line of Object.values(questions)) {
      const taken: [number[], number[]] = [[], []];
      for (let round = -20; round < rounds; round++)
        for (const [which, { store, clubs }] of garages.entries()) {
          // A stride that visits far-apart clubs, so that no page is in the cache by luck.
          const time = await ask(store, ((round + 20) * 7919) % clubs, line);
          if (round >= 0) taken[which]?.push(time);
        }
      ratios.push(median(taken[1]) / median(taken[0]));
    }
    return { garageRatio: Math.max(...ratios) };
  } finally {
    small.close();
    large.close();
    rmSync(folder, { recursive: true });
  }
}
