import { expect, it } from 'vitest';
import { markSent, outgoingHeads, queue, transactionId } from '../../../bot/records/outbox.js';
import type { Store } from '../../../bot/records/store.js';
import { opened } from './fresh.js';

const put = (store: Store, command: string, room: string, to?: string): void =>
  void queue(store, { command, part: 0, version: 0, action: 'send', room, content: '{}', at: 1, ...(to === undefined ? {} : { to }) });
const heads = (store: Store): readonly string[] => outgoingHeads(store).map(({ command }) => command);
const sent = (store: Store, ...commands: readonly string[]): void => {
  for (const command of commands) markSent(store, transactionId(command, 0, 0, 'send'), `event of ${command}`);
};

it('may be sent next: the oldest to each member of each room', () => {
  const store = opened();
  for (const [command, room, to] of [
    ['robin 1', '!here', '@robin'],
    ['robin 2', '!here', '@robin'],
    ['sam 1', '!here', '@sam'],
    ['robin 3', '!there', '@robin'],
    ['sam 2', '!here', '@sam'],
  ] as const)
    put(store, command, room, to);
  expect(heads(store)).toEqual(['robin 1', 'sam 1', 'robin 3']);
  sent(store, 'robin 1');
  expect(heads(store)).toEqual(['robin 2', 'sam 1', 'robin 3']);
});
it('what is to nobody passes nothing in its room, and nothing passes it', () => {
  const store = opened();
  put(store, 'robin 1', '!here', '@robin');
  put(store, 'sam 1', '!here', '@sam');
  put(store, 'to all', '!here');
  put(store, 'sam 2', '!here', '@sam');
  put(store, 'jo 1', '!here', '@jo');
  expect(heads(store)).toEqual(['robin 1', 'sam 1']);
  sent(store, 'sam 1');
  expect(heads(store)).toEqual(['robin 1']);
  sent(store, 'robin 1');
  expect(heads(store)).toEqual(['to all']);
  sent(store, 'to all');
  expect(heads(store)).toEqual(['sam 2', 'jo 1']);
});
