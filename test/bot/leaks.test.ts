/** The three leaks of version 0.1.1, as they were found: with the real commands, by what members of the rooms get to read. */
import { expect, it } from 'vitest';
import type { FakeEvent } from '../simulation/homeserver.js';
import { realSpeech } from '../simulation/speech.js';
import { chat, club, paddock, robin, sam } from './club.js';

const trap = '!a-trap:lane.test';
const isFile = ({ content }: FakeEvent): boolean => content.msgtype === 'm.file';

it('a room whose maker has left gets no data of the member whom they lured into it', async () => {
  const { server, settle, ask } = await club(undefined, realSpeech);
  server.makeRoom(trap, sam, robin);
  server.invite(trap, sam);
  await settle();
  server.leave(trap, sam);
  await settle();
  await ask(paddock, robin, '!save quincecar 2613 lb, 52.5% front');
  await ask(paddock, robin, '!export my data');
  server.join(trap, sam);
  expect(server.said(trap).filter(isFile)).toEqual([]);
  await ask(chat, robin, 'export my data');
  expect([trap, paddock, chat].map((room) => server.said(room).filter(isFile).length)).toEqual([0, 0, 1]);
});
it('a member whose name is a list is seen: their room does not pass for direct', async () => {
  const { server, settle, ask } = await club(undefined, realSpeech);
  server.makeRoom(trap, robin);
  server.member(trap, sam, sam, { membership: 'join', displayname: ['sam'] });
  server.invite(trap, robin);
  await settle();
  // Said to sam, not to the bot.
  expect(await ask(trap, robin, 'tire 245/40R17')).toEqual([]);
  await ask(trap, robin, '!export my data');
  expect(server.said(trap).filter(isFile)).toEqual([]);
});
it('the rest of an answer about a car is not told any more once the car is not shared', async () => {
  const { ask } = await club(undefined, realSpeech);
  await ask(paddock, robin, '!save quincecar 2613 lb, 52.5% front');
  await ask(paddock, robin, '!set wheelbase 99 in, front spring 437 lb/in, rear spring 281 lb/in');
  await ask(paddock, robin, '!share');
  await ask(paddock, sam, '!show everything quincecar');
  await ask(paddock, robin, '!unshare');
  expect((await ask(paddock, sam, '!more')).join('\n')).not.toMatch(/quince|437|281|2,?613/);
});
