/** What one message may cost, and how dear work ends when the bot is stopped: through the inbox, with the commands themselves. */
import { expect, it } from 'vitest';
import { clubRoom, enter } from '../../../bot/console/session.js';
import { consoleWorld } from '../../../bot/console/world.js';
import { garageFor } from '../../../bot/records/garage.js';
import { receive } from '../../../bot/records/inbox.js';
import type { Store } from '../../../bot/records/store.js';
import type { World } from '../../../bot/work/world.js';
import { Work } from '../../../bot/work.js';
import { dispatch } from '../../../commands/dispatch.js';
import { quiet } from '../../simulation/bot.js';
import { opened } from '../records/fresh.js';

const worldOf = (store: Store): World => {
  const calculator = { calculate: () => Promise.reject(new Error('nothing is calculated here')) };
  const world = consoleWorld(
    store,
    {
      dispatch: (text, situation) => dispatch(text, { ...situation, calculator }),
      render: ({ answers }) => ({ body: answers.map(({ headline }) => headline).join('\n'), html: '', rest: [], choices: [] }),
    },
    quiet,
    '!',
  );
  enter(world, 'robin');
  return world;
};
const car = ['save my car turnip 2640 lb, 52.5% front', 'set wheelbase 99 in, front spring 450 lb/in, front motion ratio 0.7'];
const wheelbase = (store: Store): unknown => garageFor(store, 'robin', clubRoom).chosen?.head.facts.get('wheelbase')?.value;
const ask = (work: Work, text: string) => work.ask({ member: 'robin', room: clubRoom, text: `!${text}` });

it('a message that costs more than one may is ended with a sentence; its lines so far stand, with their changes', async () => {
  const store = opened();
  const world = worldOf(store);
  await ask(new Work(world), car.join('\n'));
  let worked = 0;
  const slow = new Work(world, undefined, { worked: () => (worked += 100) });
  const { reply, state } = await ask(slow, 'set wheelbase 98 in\nshow everything\nset wheelbase 97 in');
  expect(state).toBe('answered');
  expect(reply?.answers.map(({ kind }) => kind)).toEqual(['changed', 'refused']);
  expect(reply?.answers[1]?.headline).toContain('line 1 of 3 is answered, and nothing of lines 2 to 3 was done');
  expect(wheelbase(store)).toBeCloseTo(98 * 0.0254, 9);
  // The next message has all of its own.
  expect((await ask(slow, 'show wheelbase')).reply?.answers.map(({ kind }) => kind)).toEqual(['told']);
});
it('dear work ends at its next breath when the bot is stopped, and is done after the next start, as if for the first time', async () => {
  const store = opened();
  const world = worldOf(store);
  await ask(new Work(world), car.join('\n'));
  let worked = 0;
  // The event loop never turns again: what awaits a breath would wait for ever.
  const work = new Work(world, undefined, { worked: () => (worked += 20), later: () => undefined });
  const content = JSON.stringify({ msgtype: 'm.text', body: '!set wheelbase 98 in\nshow everything' });
  receive(store, { event: '$dear', room: clubRoom, sender: 'robin', kind: 'message', content, at: 1 });
  const running = work.run();
  await Promise.resolve();
  await work.stop();
  await running;
  const row = store.database.prepare('SELECT state, tries FROM inbox WHERE event = ?');
  expect(row.get('$dear')).toEqual({ state: 'new', tries: 0 });
  expect(wheelbase(store)).toBeCloseTo(99 * 0.0254, 9);
  await new Work(world).run();
  expect(row.get('$dear')).toEqual({ state: 'answered', tries: 1 });
  expect(wheelbase(store)).toBeCloseTo(98 * 0.0254, 9);
});
