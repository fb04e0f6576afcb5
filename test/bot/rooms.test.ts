/** Which rooms pass for direct: in a direct chat every line is for the bot, so a third person, however badly told, must end it. */
import { describe, expect, it } from 'vitest';
import { type Wire, WireFailure } from '../../bot/matrix/wire.js';
import { isPrivate } from '../../bot/work/privacy.js';
import { me } from '../simulation/homeserver.js';
import { type Club, chat, club, empty, paddock, robin, sam } from './club.js';

const alex = '@alex:lane.test';
const isDirect = ({ bot }: Club, room = chat): boolean =>
  bot.store.database.prepare('SELECT direct FROM rooms WHERE id = ?').pluck().get(room) === 1;
const memberOf = (who: string, content: unknown): Record<string, unknown> => ({
  type: 'm.room.member',
  sender: who,
  state_key: who,
  content,
});

/** Each tells of somebody, or of something, that cannot be read: as an event of the chat. */
const malformed: readonly (readonly [string, Record<string, unknown>])[] = [
  ['a member whose name is a list', memberOf(sam, { membership: 'join', displayname: ['sam'] })],
  ['a member whose name is a number', memberOf(sam, { membership: 'join', displayname: 5 })],
  ['a guest whose name is an object', memberOf(sam, { membership: 'invite', displayname: {}, reason: [] })],
  ['a membership that is a list', memberOf(sam, { membership: ['leave'] })],
  ['a membership of no known kind', memberOf(sam, { membership: 'sideways' })],
  ['a member event without a membership', memberOf(sam, {})],
  ['a member event whose content is a list', memberOf(sam, ['join'])],
  ['a member event without a content', memberOf(sam, undefined)],
  ['a member event whose key is a number', { ...memberOf(sam, { membership: 'join' }), state_key: 7 }],
  ['a member event whose key is null', { ...memberOf(sam, { membership: 'join' }), state_key: null }],
  ['a member event whose sender is a list', { ...memberOf(sam, { membership: 'join' }), sender: [sam] }],
  ['a member event without an id', { ...memberOf(sam, { membership: 'join' }), event_id: undefined }],
  ['a member event whose time is a word', { ...memberOf(sam, { membership: 'join' }), origin_server_ts: 'noon' }],
  ['a member event with odd things beside its content', { ...memberOf(sam, { membership: 'join' }), unsigned: 'none', redacts: 5 }],
  ['an event of no type', { type: 9, sender: sam, state_key: sam, content: {} }],
  [
    'somebody invited by an address elsewhere',
    { type: 'm.room.third_party_invite', sender: robin, state_key: 'token', content: { display_name: ['x'] } },
  ],
  ['a room that is made a space', { type: 'm.room.create', sender: robin, state_key: '', content: { type: ['m.space'] } }],
  ['a creation without a content', { type: 'm.room.create', sender: robin, state_key: '', content: null }],
];

describe('a chat does not pass for direct', () => {
  it.each(malformed)('with %s, told in the timeline', async (_, raw) => {
    const it_ = await club();
    expect(await it_.ask(chat, robin, 'show a')).toEqual(['ok show a']);
    it_.server.addRaw(chat, raw);
    await it_.settle();
    expect(isDirect(it_)).toBe(false);
    expect(await it_.ask(chat, robin, 'show a')).toEqual([]);
    // By its prefix it is heard as in any room.
    expect(await it_.ask(chat, robin, '!show a')).toEqual(['ok show a']);
  });
  it.each(malformed)('with %s, told in the state of a timeline cut short', async (_, raw) => {
    const it_ = await club();
    it_.server.addRaw(chat, raw);
    for (let n = 0; n < 150; n++) it_.server.say(chat, robin, 'see you');
    await it_.settle();
    expect(it_.server.counts.limited).toBeGreaterThan(0);
    expect(isDirect(it_)).toBe(false);
  });
  it.each(malformed)('with %s, told before the bot came in', async (_, raw) => {
    const it_ = empty();
    await it_.settle();
    it_.server.makeRoom(chat, robin);
    it_.server.addRaw(chat, raw);
    it_.server.invite(chat, robin, true);
    await it_.settle();
    expect(isDirect(it_)).toBe(false);
    expect(it_.server.said(chat)[0]?.content.body).toMatch(/Begin a line with !/);
  });
  it.each(malformed)('with %s, in a room that the bot was in before it first started', async (_, raw) => {
    const it_ = empty();
    it_.server.makeRoom(chat, robin, me);
    it_.server.addRaw(chat, raw);
    await it_.settle();
    expect(isDirect(it_)).toBe(false);
  });
});

describe('a chat is direct again', () => {
  it('when whoever came in has left, under whatever name', async () => {
    const it_ = await club();
    it_.server.member(chat, sam, sam, { membership: 'join', displayname: 'sam' });
    await it_.settle();
    expect(isDirect(it_)).toBe(false);
    it_.server.addRaw(chat, memberOf(sam, { membership: 'leave', displayname: ['sam'], reason: 5 }));
    await it_.settle();
    expect(isDirect(it_)).toBe(true);
    expect(isPrivate(it_.bot.store, chat, robin)).toBe(false);
  });
  it('when an invitation by an address elsewhere is taken back', async () => {
    const it_ = await club();
    it_.server.add(chat, robin, 'm.room.third_party_invite', { display_name: 's...' }, 'token');
    await it_.settle();
    expect(isDirect(it_)).toBe(false);
    it_.server.add(chat, robin, 'm.room.third_party_invite', {}, 'token');
    await it_.settle();
    expect(isDirect(it_)).toBe(true);
  });
  it('a malformed message hides nobody and ends nothing', async () => {
    const it_ = await club();
    it_.server.addRaw(chat, { type: 'm.room.message', sender: robin, content: ['x'] });
    it_.server.addRaw(chat, { type: 'm.room.message', sender: [robin], content: { body: 'x' } });
    it_.server.addRaw(chat, { type: 'm.room.encryption', sender: robin, state_key: 'elsewhere', content: { algorithm: 5 } });
    expect(await it_.ask(chat, robin, 'show a')).toEqual(['ok show a']);
  });
});

describe('whether a chat is private', () => {
  it('to the member who made it, from the beginning', async () => {
    const it_ = await club();
    expect([robin, sam].map((member) => isPrivate(it_.bot.store, chat, member))).toEqual([true, false]);
    expect([robin, sam].map((member) => isPrivate(it_.bot.store, paddock, member))).toEqual([false, false]);
  });
  it.each([
    ['m.room.join_rules', { join_rule: 'public' }],
    ['m.room.join_rules', { join_rule: 'knock' }],
    ['m.room.join_rules', { join_rule: ['invite'] }],
    ['m.room.history_visibility', { history_visibility: 'world_readable' }],
    ['m.room.history_visibility', {}],
    ['m.room.guest_access', { guest_access: ['x'] }],
  ] as const)('not any more once %s is %j, and again when it is as it was', async (type, content) => {
    const it_ = await club();
    const before = it_.server.state(chat, type, '')?.content ?? {};
    it_.server.add(chat, robin, type, content, '');
    await it_.settle();
    expect([isPrivate(it_.bot.store, chat, robin), isDirect(it_)]).toEqual([false, true]);
    it_.server.add(chat, robin, type, before, '');
    await it_.settle();
    expect(isPrivate(it_.bot.store, chat, robin)).toBe(true);
  });
  it.each(['invite', 'knock', 'ban', 'leave'])('never again where somebody else was once told: %s', async (membership) => {
    const it_ = await club();
    it_.server.member(chat, robin, sam, { membership });
    it_.server.leave(chat, sam);
    await it_.settle();
    expect([isPrivate(it_.bot.store, chat, robin), isDirect(it_)]).toEqual([false, true]);
  });
  it('not where somebody was who left before the bot came in', async () => {
    const it_ = empty();
    await it_.settle();
    it_.server.makeRoom(chat, sam, robin);
    it_.server.leave(chat, sam);
    it_.server.invite(chat, robin, true);
    await it_.settle();
    expect([isPrivate(it_.bot.store, chat, robin), isDirect(it_)]).toEqual([false, true]);
  });
  it('not while it is not known what happened in it, and again once all of its state was read', async () => {
    let broken = false;
    const it_ = await club((wire: Wire) => ({
      ...wire,
      request: (method, path, call) =>
        broken && (path.endsWith('/messages') || path.endsWith('/state'))
          ? Promise.reject(new WireFailure(403, 'M_FORBIDDEN', undefined, '403'))
          : wire.request(method, path, call),
    }));
    broken = true;
    it_.server.join(chat, sam);
    it_.server.leave(chat, sam);
    for (let n = 0; n < 150; n++) it_.server.say(chat, robin, 'see you');
    await it_.settle();
    expect([isPrivate(it_.bot.store, chat, robin), isDirect(it_)]).toEqual([false, false]);
    broken = false;
    it_.server.say(chat, robin, 'see you');
    await it_.settle();
    // By its state it is direct; and it tells of sam.
    expect([isPrivate(it_.bot.store, chat, robin), isDirect(it_)]).toEqual([false, true]);
  });
  it('is found out by reading its whole state where the store is from before it was looked at', async () => {
    const it_ = await club();
    it_.bot.store.database.exec('UPDATE rooms SET told = 0, kind = NULL, join_rule = NULL, history = NULL, guests = NULL');
    expect(isPrivate(it_.bot.store, chat, robin)).toBe(false);
    expect(await it_.ask(chat, robin, 'show a')).toEqual(['ok show a']);
    expect(isPrivate(it_.bot.store, chat, robin)).toBe(true);
  });
});

describe('somebody who is forgotten', () => {
  const forgottenIn = (it_: Club, room: string): unknown =>
    it_.bot.store.database.prepare("SELECT count(*) FROM memberships WHERE room = ? AND member LIKE '?somebody%'").pluck().get(room);

  it('is still counted: who comes after them is not alone with the bot', async () => {
    const it_ = await club();
    await it_.ask(chat, robin, 'forget-me');
    it_.server.join(chat, alex);
    await it_.settle();
    expect([isDirect(it_), isPrivate(it_.bot.store, chat, alex)]).toEqual([false, false]);
    it_.server.leave(chat, robin);
    await it_.settle();
    expect([isDirect(it_), isPrivate(it_.bot.store, chat, alex)]).toEqual([true, false]);
  });
  it('alone with the bot, finds the chat as it was when they speak again, or take another name', async () => {
    for (const again of ['speak', 'rename'] as const) {
      const it_ = await club();
      await it_.ask(chat, robin, 'forget-me');
      expect([isDirect(it_), forgottenIn(it_, chat), isPrivate(it_.bot.store, chat, robin)]).toEqual([true, 1, false]);
      if (again === 'rename') it_.server.member(chat, robin, robin, { membership: 'join', displayname: 'Robin the second' });
      expect(await it_.ask(chat, robin, 'show a')).toEqual(['ok show a']);
      expect([isDirect(it_), forgottenIn(it_, chat), isPrivate(it_.bot.store, chat, robin)]).toEqual([true, 0, true]);
    }
  });
  it('is not shown to those who are in the room', async () => {
    const it_ = await club();
    await it_.ask(paddock, robin, '!forget-me');
    expect(await it_.ask(paddock, sam, '!members')).toEqual(['members: sam']);
  });
});

describe('the bot is put out of a room and invited again before it looks', () => {
  it('what was shared there is not seen any more, and who is there is read anew', async () => {
    const it_ = await club();
    await it_.ask(paddock, robin, '!set 100');
    const { database } = it_.bot.store;
    database.exec(`INSERT INTO shares (room, car) VALUES ('${paddock}', 1)`);
    it_.server.leave(paddock, me, robin);
    it_.server.leave(paddock, sam);
    it_.server.invite(paddock, robin);
    await it_.settle();
    expect(await it_.ask(paddock, robin, '!members')).toEqual(['members: robin']);
    expect(database.prepare('SELECT count(*) FROM shares').pluck().get()).toBe(0);
  });
});
