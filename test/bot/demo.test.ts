import { afterAll, beforeEach, describe, expect, test } from 'vitest';
import { enter } from '../../bot/console/session.js';
import { consoleWorld } from '../../bot/console/world.js';
import { demoMembers, demoMessages, seedDemo } from '../../bot/demo.js';
import { openDatabase, type Store } from '../../bot/records/database.js';
import { garageFor } from '../../bot/records/garage.js';
import { receive } from '../../bot/records/inbox.js';
import { createServices } from '../../bot/services.js';
import type { Dispatch, Log } from '../../bot/work/world.js';
import { Work } from '../../bot/work.js';
import type { Answer } from '../../commands/answer.js';

const quiet: Log = {
  info: () => undefined,
  warn: () => undefined,
  error: (fields, text) => expect.fail(`${text} ${JSON.stringify(fields)}`),
};
const services = createServices(quiet);
afterAll(() => services.close());

interface Answered {
  readonly line: string;
  readonly answer: Answer;
}
let store: Store;
let answered: Answered[];
let onLine: () => void;
beforeEach(() => {
  store = openDatabase(':memory:');
  answered = [];
  onLine = () => undefined;
  return () => store.close();
});
const dispatch: Dispatch = async (text, situation) => {
  onLine();
  const reply = await services.dispatch(text, situation);
  const lines = text.split('\n');
  for (const [at, answer] of reply.answers.entries()) answered.push({ line: lines[at] ?? '', answer });
  return reply;
};
const world = () => consoleWorld(store, { dispatch, render: services.render }, quiet, '!');
const seed = (work = new Work(world())): Promise<boolean> => seedDemo(world(), work, (member) => enter(world(), member));
/** Cars with their facts and how many changes they have seen: what a seeding leaves behind. */
const garage = () =>
  ['robin', 'sam', 'jo', 'lee'].map((member) =>
    garageFor(store, member, 'club').mine.map((car) => ({
      name: car.name,
      shared: car.shared,
      facts: [...car.head.facts].map(([path, { value }]) => [path, value]).sort(),
      changes: garageFor(store, member, 'club').history(car.id, 100).length,
      setups: garageFor(store, member, 'club')
        .setups(car.id)
        .map((s) => s.name),
    })),
  );

describe('the invented club', () => {
  test('is told in lines that all do what they say', async () => {
    expect(await seed()).toBe(true);
    expect(answered.length).toBe(demoMessages.flatMap((m) => m.lines).length);
    for (const { line, answer } of answered) {
      expect(['told', 'changed'], `${line}: ${answer.headline}`).toContain(answer.kind);
      expect(answer.choices, line).toEqual([]);
    }
    const [[turnip] = [], [moth] = [], [pickle] = [], none] = garage();
    expect([turnip, moth, pickle].map((c) => [c?.name, c?.shared])).toEqual([
      ['turnip', true],
      ['moth', true],
      ['pickle', true],
    ]);
    expect(none).toEqual([]);
    expect(turnip?.setups).toEqual(['dry', 'wet']);
    expect(pickle?.setups).toEqual(['old axle', 'swapped axle']);
    expect(demoMembers).toContain('lee');
  });
  test('has cars that every figure of riding and gearing is known of', async () => {
    await seed();
    const work = new Work(world());
    for (const line of ['rear ride frequency', 'front wheel rate', 'speed at 6500 in 2nd'])
      for (const member of ['robin', 'sam', 'jo']) {
        const { reply } = await work.ask({ member, room: `direct:${member}`, text: line });
        expect(reply?.answers[0]?.amount?.si, `${member}: ${line}: ${reply?.answers[0]?.headline}`).toBeGreaterThan(0);
      }
  });
  test('is seeded once', async () => {
    await seed();
    const before = garage();
    answered = [];
    expect(await seed()).toBe(true);
    expect(answered).toEqual([]);
    expect(garage()).toEqual(before);
  });
  test('is whole after a seeding that was cut off between any two messages', async () => {
    await seed();
    const whole = garage();
    for (let cutAfter = 0; cutAfter <= demoMessages.length; cutAfter += 2) {
      store.close();
      store = openDatabase(':memory:');
      const cut = new Work(world());
      let handled = 0;
      onLine = () => {
        if (++handled > cutAfter) void cut.stop();
      };
      if (cutAfter === 0) await cut.stop();
      await seed(cut);
      onLine = () => undefined;
      expect(await seed()).toBe(true);
      expect(garage(), `cut after ${cutAfter}`).toEqual(whole);
    }
  });
  test('never comes into a database that was used for something else', async () => {
    enter(world(), 'robin');
    receive(store, { event: '$1', room: 'club', sender: 'robin', kind: 'message', content: '{}', at: 1 });
    expect(await seed()).toBe(false);
    expect(answered).toEqual([]);
  });
});
