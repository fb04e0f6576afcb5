/** Export gives a member all that is held of them; forgetting leaves no trace of it, in any table nor in the file. */
import { readFileSync } from 'node:fs';
import { beforeEach, expect, test } from 'vitest';
import { z } from 'zod';
import { leaveTalk } from '../../../bot/records/conversation.js';
import type { Store } from '../../../bot/records/database.js';
import { exportFormat } from '../../../bot/records/export.js';
import { garageFor } from '../../../bot/records/garage.js';
import { findIncoming, finishIncoming, receive } from '../../../bot/records/inbox.js';
import { findMember, meetMember } from '../../../bot/records/members.js';
import { recordMembership, recordPower } from '../../../bot/records/memberships.js';
import { markSent, queue } from '../../../bot/records/outbox.js';
import { enterRoom } from '../../../bot/records/rooms.js';
import { advanceTimeline, recallRulers, rememberRulers } from '../../../bot/records/timelines.js';
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

const gull = '@gullible:example.org';
const room = '!nest:example.org';
/** Words that are nobody else's. */
const traces = ['gullible', 'Gull of the nest', 'quincemobile', 'damsonset', 'medlarline', 'sloereply', 'bullacequestion', 'loquatmark'];
let store: Store;
let car: number;
beforeEach(() => {
  store = opened();
  meetClub(store);
  enterRoom(store, room, false);
  meetMember(store, gull, 'gullible', { units: 'metric', decimalMark: ',' });
  recordMembership(store, room, gull, 'join', 'Gull of the nest');
  recordPower(store, room, [gull, '@elder:example.org']);
  advanceTimeline(store, room, undefined);
  rememberRulers(store, room, { creators: [gull], users: ['@elder:example.org', gull] });
  recordMembership(store, paddock, gull, 'join', 'Gull of the nest');
  recordMembership(store, garden, gull, 'join', 'Gull of the nest');
  recordMembership(store, garden, gull, 'leave');
  const given = new Map(facts({ mass: 1234.5, 'front.spring.rate': 78806 })).set('wheelbase', {
    value: 2.57,
    within: 0.005,
    evidence: 'measured',
    source: 'loquatmark',
  });
  car = newCar(store, gull, 'quincemobile', given);
  record(store, gull, car, { mass: 1240 }, newEvent(), 'set weight 1240 medlarline');
  change(store, gull, [
    { change: 'keep', car, name: 'damsonset', revision: headOf(store, gull, car) },
    { change: 'share', car, room: paddock },
  ]);
  store.transaction(() => {
    receive(store, {
      event: '$asked',
      room,
      sender: gull,
      kind: 'message',
      content: JSON.stringify({ msgtype: 'm.text', body: 'medlarline' }),
      at: 1,
    });
    finishIncoming(store, findIncoming(store, '$asked')!.seq, 'answered');
    const txn = queue(store, {
      ...{ command: '$asked', part: 0, version: 0, action: 'send', room, to: gull, at: 2 },
      content: JSON.stringify({ msgtype: 'm.notice', body: 'sloereply', 'm.mentions': { user_ids: [gull] } }),
    });
    markSent(store, txn!, '$answer');
    leaveTalk(store, {
      ...{ command: '$asked', asker: gull, room, thread: '', rest: ['bullacequestion'], heads: [{ car, head: 1 }], seen: [], at: 3 },
      choices: [{ label: 'one', line: 'show bullacequestion' }],
      trial: { car, head: 1, line: 'try bullacequestion', facts: given },
    });
  });
});
const exported = (member = gull) => {
  const data = change(store, member, [{ change: 'export me' }]).exported;
  if (data === undefined) throw new Error('nothing was exported');
  return data;
};

/** What a program that reads the document may count on. */
const known = z.looseObject({
  member: z.unknown(),
  cars: z.array(
    z.looseObject({
      revisions: z.array(
        z.looseObject({
          number: z.int(),
          parent: z.int().optional(),
          line: z.string(),
          measuredIn: z.int().optional(),
          at: z.string(),
          facts: z.record(z.string(), z.unknown()),
        }),
      ),
    }),
  ),
  rooms: z.array(z.unknown()),
  texts: z.array(z.looseObject({ what: z.string(), room: z.string(), text: z.string() })),
  notIncluded: z.array(z.string()),
});
test('the export is the documented format, also after a round trip, and holds everything', () => {
  const data = exported();
  const back = known.parse(exportFormat(store.kinds).parse(JSON.parse(JSON.stringify(data))));
  expect(exportFormat(store.kinds).parse(JSON.parse(JSON.stringify(data)))).toEqual(JSON.parse(JSON.stringify(data)));
  expect(back.member).toEqual({ id: gull, name: 'gullible', units: 'metric', decimalMark: ',' });
  const [only, ...more] = back.cars;
  expect(more).toEqual([]);
  const [first, second] = garageFor(store, gull, room).history(car, 9).toReversed();
  expect(only).toMatchObject({
    name: 'quincemobile',
    chosen: true,
    sharedIn: [paddock],
    head: second!.id,
    setups: [{ name: 'damsonset', revision: second!.id }],
  });
  expect(only!.revisions.map((one) => [one.number, one.parent, one.line, one.measuredIn, Date.parse(one.at)])).toEqual([
    [first!.id, undefined, 'car quincemobile', first!.id, first!.at],
    [second!.id, first!.id, 'set weight 1240 medlarline', first!.id, second!.at],
  ]);
  expect(only!.revisions[1]!.facts).toEqual({
    mass: { value: 1240, unit: 'kg', within: 0, evidence: 'measured', source: 'told' },
    'front.spring.rate': { value: 78806, unit: 'N/m', within: 0, evidence: 'measured', source: 'told' },
    wheelbase: { value: 2.57, unit: 'm', within: 0.005, evidence: 'measured', source: 'loquatmark' },
  });
  expect(back.rooms).toEqual([
    { room: garden, state: 'leave', mayChangeRoom: false },
    { room: room, state: 'join', mayChangeRoom: true, name: 'Gull of the nest' },
    { room: paddock, state: 'join', mayChangeRoom: false, name: 'Gull of the nest' },
  ]);
  expect(back.texts.map((one) => [one.what, one.room, one.text])).toEqual([
    ['message', room, 'medlarline'],
    ['reply', room, 'sloereply'],
    ['open question', room, 'bullacequestion'],
    ['open question', room, 'try bullacequestion'],
    ['open question', room, 'show bullacequestion'],
  ]);
  expect(back.notIncluded.length).toBeGreaterThan(0);
  for (const trace of traces) expect(JSON.stringify(data), trace).toContain(trace);
});

test('the export holds nothing of others, also of cars that are shared with the member', () => {
  const turnip = newCar(store, robin, 'turnip');
  change(store, robin, [{ change: 'share', car: turnip, room: paddock }]);
  expect(garageFor(store, gull, paddock).others).toHaveLength(1);
  expect(JSON.stringify(exported())).not.toMatch(/turnip|robin/);
  expect(exported(ash)).toMatchObject({ cars: [], texts: [], rooms: [{ room: garden, state: 'join', mayChangeRoom: false }] });
});

test('somebody whom the bot has never met gets a document with nothing in it', () => {
  expect(exported('@nobody:example.org')).toMatchObject({ cars: [], rooms: [], texts: [] });
  expect(exported('@nobody:example.org').member).toBeUndefined();
});

test('forgotten, a member leaves no trace in any column of any table, and others keep everything', () => {
  const turnip = newCar(store, robin, 'turnip');
  change(store, robin, [{ change: 'share', car: turnip, room: paddock }]);
  const before = JSON.stringify(everything(store));
  for (const trace of traces) expect(before, trace).toContain(trace);
  const others = [robin, sam, ash].map((member) => exported(member));
  const applied = change(store, gull, [{ change: 'forget me' }]);
  expect(applied.forgot).toBe(true);
  const after = JSON.stringify(everything(store));
  for (const trace of traces) expect(after, trace).not.toContain(trace);
  expect([robin, sam, ash].map((member) => ({ ...exported(member), exported: '' }))).toEqual(
    others.map((one) => ({ ...one, exported: '' })),
  );
  // What was handled stays known as handled.
  expect(findIncoming(store, '$asked')).toMatchObject({ event: '$asked', state: 'answered', content: null, sender: '' });
  expect(recallRulers(store, room)).toEqual({ creators: [], users: ['@elder:example.org'] });
  expect(everything(store).changed?.length).toBeGreaterThan(0);
  expect(store.database.pragma('foreign_key_check')).toEqual([]);
});

test('forgotten, a member leaves no trace in the bytes of the files', () => {
  store.checkpoint();
  const bytes = (): string => readFileSync(store.file, 'latin1') + readFileSync(`${store.file}-wal`, 'latin1');
  for (const trace of traces) expect(bytes(), trace).toContain(trace);
  change(store, gull, [{ change: 'forget me' }]);
  store.checkpoint();
  for (const trace of traces) expect(bytes().includes(trace), trace).toBe(false);
  expect(bytes()).toContain('robin');
});

test('forgotten in the middle of a message, a member can begin anew in its next line', () => {
  change(store, gull, [
    { change: 'forget me' },
    { change: 'make car', car: -1, name: 'quincemobile', facts: facts({}), measured: false },
    { change: 'choose car', car: -1 },
  ]);
  expect(garageFor(store, gull, room).mine.map((one) => one.name)).toEqual(['quincemobile']);
  expect(findMember(store, gull)?.preferences).toEqual({ units: 'us', decimalMark: '.' });
});

test('forgetting somebody who has nothing, twice, and beside a direct chat', () => {
  change(store, robin, [{ change: 'forget me' }], newEvent(), robinsDirect);
  change(store, robin, [{ change: 'forget me' }], newEvent(), robinsDirect);
  change(store, '@nobody:example.org', [{ change: 'forget me' }]);
  expect(JSON.stringify(everything(store).memberships)).not.toContain('@robin');
  expect(garageFor(store, sam, paddock).members.map((one) => one.id)).toEqual([gull, sam]);
});
