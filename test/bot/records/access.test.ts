/** Who can read what is said in a room, by its state events alone: every way in which one may be malformed counts against privacy. */
import { describe, expect, test } from 'vitest';
import { accessOf, isDirect, isPrivateTo, type StateEvent } from '../../../bot/records/access.js';

const me = '@stubaxle:lane.test';
const robin = '@robin:lane.test';
const sam = '@sam:lane.test';
const state = (type: string, content: Record<string, unknown>, key = '', sender = robin): StateEvent => ({
  ...{ type: `m.room.${type}`, state_key: key, sender, content },
});
const member = (who: string, content: Record<string, unknown>): StateEvent => state('member', content, who, who);
/** As Synapse makes a room by the preset `trusted_private_chat` (read from one). */
const chat = [
  state('create', { room_version: '12', additional_creators: [me] }),
  state('power_levels', { users: {}, state_default: 50 }),
  state('join_rules', { join_rule: 'invite' }),
  state('history_visibility', { history_visibility: 'shared' }),
  state('guest_access', { guest_access: 'can_join' }),
  member(robin, { membership: 'join', displayname: 'robin' }),
  member(me, { membership: 'join', displayname: 'Stubaxle' }),
];
/** The chat with these in the place of those of the same type and key. */
const changed = (...events: readonly StateEvent[]): readonly StateEvent[] => {
  const keys = new Set(events.map(({ type, state_key }) => `${type} ${state_key}`));
  return [...chat.filter(({ type, state_key }) => !keys.has(`${type} ${state_key}`)), ...events];
};
const without = (type: string): readonly StateEvent[] => chat.filter((event) => event.type !== `m.room.${type}`);
const judged = (events: readonly StateEvent[]): string => {
  const access = accessOf(events, me);
  return [isDirect(access) ? 'direct' : '', isPrivateTo(access, robin) ? 'private' : ''].join(' ').trim();
};

test('a chat for two is direct, and private to the member who is in it, and to nobody else', () => {
  expect(judged(chat)).toBe('direct private');
  for (const other of [sam, me, '', '@ROBIN:lane.test']) expect(isPrivateTo(accessOf(chat, me), other)).toBe(false);
});
test('the order of its events makes no difference', () => {
  for (let n = 0; n < chat.length; n++) expect(judged([...chat.slice(n), ...chat.slice(0, n)])).toBe('direct private');
  const third = [...changed(), member(sam, { membership: 'leave' })];
  for (let n = 0; n < third.length; n++) expect(judged([...third.slice(n), ...third.slice(0, n)])).toBe('direct');
});

describe('somebody else', () => {
  test.each<[string, Record<string, unknown>, string]>([
    ['joined', { membership: 'join' }, ''],
    ['joined under a name that is a list', { membership: 'join', displayname: ['x'] }, ''],
    ['joined under a name that is a number, with a picture that is an object', { membership: 'join', displayname: 5, avatar_url: {} }, ''],
    ['invited', { membership: 'invite' }, ''],
    ['invited under a name that is an object', { membership: 'invite', displayname: {}, reason: [1] }, ''],
    ['of no membership', {}, ''],
    ['of a membership that is a list', { membership: ['leave'] }, ''],
    ['of a membership that nobody knows', { membership: 'sideways' }, ''],
    ['of an empty one', { membership: '' }, ''],
    ['who left', { membership: 'leave' }, 'direct'],
    ['who left under a name that is a list', { membership: 'leave', displayname: ['x'], reason: {} }, 'direct'],
    ['who is banned', { membership: 'ban', displayname: {} }, 'direct'],
    ['who knocks', { membership: 'knock', reason: 7 }, 'direct'],
  ])('%s', (_, content, expected) => {
    expect(judged([...chat, member(sam, content)])).toBe(expected);
  });
  test.each(['sam', '', 'hello world', '@', '?somebody'])('under the malformed id %j', (id) => {
    expect(judged([...chat, member(id, { membership: 'join' })])).toBe('');
    expect(judged([...chat, member(id, { membership: 'leave' })])).toBe('direct');
  });
  test('invited by an address elsewhere, until the invitation is taken back', () => {
    for (const content of [{ display_name: 's...' }, { display_name: ['x'] }, { public_key: 3 }])
      expect(judged([...chat, state('third_party_invite', content, 'token')])).toBe('');
    expect(judged([...chat, state('third_party_invite', {}, 'token')])).toBe('direct');
  });
  test('who made the room, of whom no membership is told', () => {
    expect(judged(changed(state('create', { room_version: '11' }, '', sam)))).toBe('direct');
    expect(judged(changed(state('create', { room_version: '11' }, '', me)))).toBe('direct private');
  });
});

describe('the room', () => {
  test.each<[string, Record<string, unknown>, string]>([
    ['a space', { type: 'm.space' }, ''],
    ['of any other type', { type: 'org.example.board' }, ''],
    ['of a type that is a list', { type: ['m.space'] }, ''],
    ['of a type that is a number', { type: 5 }, ''],
    ['of no type that is told', { type: null }, ''],
    ['of an empty type', { type: '' }, ''],
    ['an ordinary one', {}, 'direct private'],
  ])('%s', (_, content, expected) => {
    expect(judged(changed(state('create', content)))).toBe(expected);
  });
  test('of which it is not told how it was made', () => expect(judged(without('create'))).toBe(''));
  test.each<[unknown, string]>([
    ['invite', 'direct private'],
    ['public', 'direct'],
    ['knock', 'direct'],
    ['restricted', 'direct'],
    ['knock_restricted', 'direct'],
    ['private', 'direct'],
    ['sometimes', 'direct'],
    ['INVITE', 'direct'],
    [['invite'], 'direct'],
    [undefined, 'direct'],
    [7, 'direct'],
  ])('of the join rule %j', (rule, expected) => {
    expect(judged(changed(state('join_rules', { join_rule: rule })))).toBe(expected);
  });
  test.each<[unknown, string]>([
    ['shared', 'direct private'],
    ['invited', 'direct private'],
    ['joined', 'direct private'],
    ['world_readable', 'direct'],
    ['all', 'direct'],
    [['shared'], 'direct'],
    [undefined, 'direct'],
  ])('of the history visibility %j', (history, expected) => {
    expect(judged(changed(state('history_visibility', { history_visibility: history })))).toBe(expected);
  });
  test.each<[unknown, string]>([
    ['can_join', 'direct private'],
    ['forbidden', 'direct private'],
    ['perhaps', 'direct'],
    [['forbidden'], 'direct'],
    [undefined, 'direct'],
  ])('of the guest access %j', (guests, expected) => {
    expect(judged(changed(state('guest_access', { guest_access: guests })))).toBe(expected);
  });
  test('of which a rule is not told', () => {
    expect(['join_rules', 'history_visibility', 'guest_access'].map((type) => judged(without(type)))).toEqual([
      'direct',
      'direct',
      // Without one, guests are kept out (Matrix client-server API, "Guest access").
      'direct private',
    ]);
  });
  test("of which a rule is told under another key: it is not the room's", () => {
    for (const [type, content] of [
      ['join_rules', { join_rule: 'invite' }],
      ['history_visibility', { history_visibility: 'shared' }],
    ] as const) {
      const open = changed(
        state('join_rules', { join_rule: 'public' }),
        state('history_visibility', { history_visibility: 'world_readable' }),
      );
      expect(judged([...open, state(type, content, 'elsewhere')])).toBe('direct');
    }
    expect(judged([...chat, state('join_rules', { join_rule: 'public' }, 'elsewhere')])).toBe('direct private');
  });
  test('of which an event cannot be read at all', () => {
    expect(judged([...chat, { type: '?', state_key: '', sender: '', content: {} }])).toBe('');
  });
});
