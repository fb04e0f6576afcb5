import { describe, expect, it } from 'vitest';
import { type Wire, WireFailure } from '../../bot/matrix/wire.js';
import { transactionId } from '../../bot/records/outbox.js';
import { encryptedSentence } from '../simulation/bot.js';
import { me } from '../simulation/homeserver.js';
import { type Club, chat, club, empty, paddock, robin, sam } from './club.js';

const bodies = ({ server }: Club, room: string): readonly unknown[] => server.said(room).map(({ content }) => content.body);
const membership = ({ server }: Club, room: string): unknown => server.state(room, 'm.room.member', me)?.content.membership;
const count = ({ bot }: Club, sql: string): unknown => bot.store.database.prepare(sql).pluck().get();

describe('where the bot begins to listen', () => {
  it('a first start answers nothing that was said before it, and everything after', async () => {
    const it = empty();
    it.server.makeRoom(paddock, robin, sam, me);
    const before = it.server.say(paddock, robin, '!show before');
    await it.settle();
    expect(it.replies(paddock, before)).toEqual([]);
    expect(await it.ask(paddock, robin, '!show after')).toEqual(['ok show after']);
    expect(bodies(it, paddock)).toEqual(['ok show after']);
  });
  it('the first line of a new direct chat, said before the bot came in, is answered', async () => {
    const it = empty();
    await it.settle();
    it.server.makeRoom(chat, robin);
    const history = it.server.say(chat, robin, 'show history');
    it.server.invite(chat, robin, true);
    const first = it.server.say(chat, robin, 'show first');
    await it.settle();
    expect(it.replies(chat, first)).toHaveLength(1);
    expect(it.replies(chat, history)).toEqual([]);
  });
  it('in a room, only what was said after it came in, by position and not by clock', async () => {
    const it = empty();
    await it.settle();
    it.server.makeRoom(paddock, robin, sam);
    it.server.invite(paddock, robin);
    const before = it.server.say(paddock, robin, '!show before');
    it.server.join(paddock, me);
    it.server.clock -= 86_400_000;
    const after = it.server.say(paddock, robin, '!show after');
    it.server.clock += 86_400_000;
    await it.settle();
    expect([it.replies(paddock, before).length, it.replies(paddock, after).length]).toEqual([0, 1]);
  });
  it('also when so much was said since that the sync has none of its coming in', async () => {
    const it = empty();
    await it.settle();
    it.server.makeRoom(paddock, robin, sam);
    const before = it.server.say(paddock, robin, '!show before');
    it.server.join(paddock, me);
    const events = Array.from({ length: 350 }, (_, n) => it.server.say(paddock, robin, `!show ${n}`));
    await it.settle();
    expect(events.filter((event) => it.replies(paddock, event).length === 1)).toHaveLength(350);
    expect(it.replies(paddock, before)).toEqual([]);
  });
});

describe('intake', () => {
  it('answers all of a burst of 500 lines, in order', async () => {
    const it = await club();
    const events = Array.from({ length: 500 }, (_, n) => it.server.say(paddock, n % 2 === 0 ? robin : sam, `!show ${n}`));
    await it.settle();
    expect(it.server.counts.limited).toBeGreaterThan(0);
    expect(events.filter((event) => it.replies(paddock, event).length === 1)).toHaveLength(500);
    expect(bodies(it, paddock).slice(1)).toEqual(events.map((_, n) => `ok show ${n}`));
  });
  it('goes on where it was when the homeserver has forgotten the place', async () => {
    const it = await club();
    await it.ask(paddock, robin, '!show before');
    const lost = it.server.say(paddock, robin, '!show meanwhile');
    it.server.forgotBefore = Number.POSITIVE_INFINITY;
    await it.bot.round();
    it.server.forgotBefore = 0;
    await it.settle();
    expect(it.replies(paddock, lost)).toHaveLength(1);
    expect(bodies(it, paddock).filter((body) => body === 'ok show before')).toHaveLength(1);
  });
  it('and knows that it was put out of a room meanwhile', async () => {
    const it = await club();
    await it.ask(chat, robin, 'show a');
    it.server.leave(chat, me, robin);
    it.server.forgotBefore = Number.POSITIVE_INFINITY;
    it.server.add(paddock, robin, 'm.room.message', { msgtype: 'm.text', body: 'still here' });
    await it.bot.round();
    expect(count(it, `SELECT "left" FROM rooms WHERE id = '${chat}'`)).toBe(1);
    expect(count(it, `SELECT "left" FROM rooms WHERE id = '${paddock}'`)).toBe(0);
  });
  it('moves on only when the gap was filled', async () => {
    let broken = false;
    const it = await club((wire) => ({
      ...wire,
      request: (method, path, call) => {
        if (broken && path.endsWith('/messages')) return Promise.reject(new WireFailure(500, 'M_UNKNOWN', undefined, '500'));
        return wire.request(method, path, call);
      },
    }));
    const place = count(it, "SELECT value FROM meta WHERE key = 'sync'");
    broken = true;
    const events = Array.from({ length: 150 }, (_, n) => it.server.say(paddock, robin, `!show ${n}`));
    await it.settle();
    expect(count(it, "SELECT value FROM meta WHERE key = 'sync'")).toBe(place);
    expect(events.flatMap((event) => it.replies(paddock, event))).toEqual([]);
    broken = false;
    await it.settle();
    expect(events.filter((event) => it.replies(paddock, event).length === 1)).toHaveLength(150);
  });
  it('is not held up by an event that is malformed', async () => {
    const it = await club();
    it.server.add(paddock, robin, 'm.room.message', { msgtype: 7, body: ['!show'] });
    it.server.add(paddock, robin, 'm.room.message', {});
    it.server.add(paddock, robin, 'm.room.redaction', { redacts: 5 });
    it.server.add(paddock, robin, 'm.room.member', { membership: 'sideways' }, robin);
    it.server.add(paddock, robin, 'm.room.power_levels', { users: 'all' }, '');
    expect(await it.ask(paddock, robin, '!show a')).toEqual(['ok show a']);
  });
});

describe('rooms', () => {
  it('one welcome in a new room, that says how to be heard there', async () => {
    const it = await club();
    await it.settle();
    expect(bodies(it, paddock)).toEqual([expect.stringMatching(/^Hello\..*\nBegin a line with ! or with my name/)]);
    expect(bodies(it, chat)).toEqual([expect.stringMatching(/^Hello\..*\nJust type your question\./)]);
    expect(it.server.said(paddock)[0]?.content['m.mentions']).toEqual({});
    // Put out and invited again, it does not introduce itself twice.
    it.server.leave(paddock, me, robin);
    await it.settle();
    it.server.invite(paddock, robin);
    await it.settle();
    expect(membership(it, paddock)).toBe('join');
    expect(bodies(it, paddock)).toHaveLength(1);
    expect(await it.ask(paddock, robin, '!show a')).toEqual(['ok show a']);
  });
  it('comes where its club invites it, and politely nowhere else', async () => {
    const it = await club();
    const other = '!other:elsewhere.test';
    it.server.makeRoom(other, '@kim:elsewhere.test');
    it.server.invite(other, '@kim:elsewhere.test');
    await it.settle();
    expect([membership(it, paddock), membership(it, other)]).toEqual(['join', 'leave']);
  });
  it('leaves where it is told to, after its reply, and is silent where it was put out', async () => {
    const it = await club();
    await it.ask(paddock, robin, `!leave ${paddock}`);
    expect(bodies(it, paddock).at(-1)).toBe('going');
    expect(membership(it, paddock)).toBe('leave');
    expect(count(it, `SELECT "left" FROM rooms WHERE id = '${paddock}'`)).toBe(1);
    it.server.leave(chat, me, robin);
    await it.settle();
    const event = it.server.say(chat, robin, 'show a');
    await it.settle();
    expect(it.replies(chat, event)).toEqual([]);
    expect(count(it, 'SELECT count(*) FROM memberships')).toBe(0);
  });
  it('a chat is direct while two are in it', async () => {
    const it = await club();
    it.server.join(chat, sam);
    await it.settle();
    expect(await it.ask(chat, robin, 'show a')).toEqual([]);
    it.server.leave(chat, sam);
    await it.settle();
    expect(await it.ask(chat, robin, 'show a')).toEqual(['ok show a']);
  });
  it('knows who may change it, also somebody who comes in later', async () => {
    const it = await club();
    const power = () =>
      it.bot.store.database
        .prepare(`SELECT member FROM memberships WHERE room = '${paddock}' AND may_change_room = 1 ORDER BY member`)
        .pluck()
        .all();
    expect(power()).toEqual([robin]);
    it.server.add(paddock, robin, 'm.room.power_levels', { users: { [robin]: 100, '@alex:lane.test': 50 }, state_default: 50 }, '');
    it.server.join(paddock, '@alex:lane.test');
    await it.settle();
    expect(power()).toEqual(['@alex:lane.test', robin]);
    it.server.add(paddock, robin, 'm.room.power_levels', { users: {}, users_default: 50 }, '');
    await it.settle();
    expect(power()).toEqual(['@alex:lane.test', robin, sam]);
  });
});

describe('an encrypted room', () => {
  it('is told once, in clear, that it cannot be served, and nothing else', async () => {
    const it = empty();
    await it.settle();
    it.server.makeRoom(paddock, robin, sam);
    it.server.encrypt(paddock, robin);
    it.server.invite(paddock, robin);
    await it.settle();
    it.server.add(paddock, robin, 'm.room.encrypted', { ciphertext: 'x' });
    it.server.say(paddock, robin, '!show a');
    await it.settle();
    expect(bodies(it, paddock)).toEqual([encryptedSentence]);
    expect(count(it, "SELECT count(*) FROM inbox WHERE state = 'unreadable' AND content IS NULL")).toBe(1);
  });
  it('that was not one before gets nothing more of what was written for it', async () => {
    const it = await club();
    await it.ask(paddock, robin, '!show a');
    it.server.say(paddock, robin, '!show b');
    it.server.encrypt(paddock, robin);
    await it.settle();
    expect(bodies(it, paddock).slice(1)).toEqual(['ok show a', encryptedSentence]);
    expect(await it.ask(chat, robin, 'show c')).toEqual(['ok show c']);
  });
  it('is not taken for a clear one when the homeserver does not say', async () => {
    let mute = true;
    const it = await club((wire: Wire) => ({
      ...wire,
      request: (method, path, call) => {
        if (mute && path.includes('m.room.encryption')) return Promise.reject(new WireFailure(429, 'M_LIMIT_EXCEEDED', 1000, '429'));
        return wire.request(method, path, call);
      },
    }));
    expect(await it.ask(paddock, robin, '!show a')).toEqual([]);
    expect(bodies(it, paddock)).toEqual([]);
    mute = false;
    await it.settle();
    expect(bodies(it, paddock)).toEqual([expect.stringMatching(/^Hello/), 'ok show a']);
  });
  it('is found out by asking, where the sync did not tell', async () => {
    const it = await club((wire: Wire) => ({
      ...wire,
      request: (method, path, call) =>
        path.includes('m.room.encryption') && path.includes(encodeURIComponent(paddock))
          ? Promise.resolve({ algorithm: 'x' })
          : wire.request(method, path, call),
    }));
    await it.ask(paddock, robin, '!show a');
    expect(bodies(it, paddock)).toEqual([encryptedSentence]);
  });
});

describe('sending', () => {
  it('has the same transaction id for the same thing for ever', () => {
    // SHA-256 of ["$1",0,0,"send"], first 32 digits: worked out with another program (coreutils sha256sum).
    expect(transactionId('$1', 0, 0, 'send')).toBe('17e217707fc35bf5705124fd101a0d0b');
    expect(
      new Set([
        transactionId('$1', 0, 0, 'send'),
        transactionId('$1', 0, 0, 'edit'),
        transactionId('$1', 1, 0, 'send'),
        transactionId('$1', 0, 1, 'send'),
        transactionId('$2', 0, 0, 'send'),
      ]).size,
    ).toBe(5);
  });
  it('waits for the whole account when it is limited, as long as it is told, and keeps the order', async () => {
    let limited = 0;
    let tried = 0;
    const it = await club((wire: Wire) => ({
      ...wire,
      request: (method, path, call) => {
        if (method !== 'PUT' || !path.includes('/send/')) return wire.request(method, path, call);
        tried++;
        return limited-- > 0 ? Promise.reject(new WireFailure(429, 'M_LIMIT_EXCEEDED', 7000, '429')) : wire.request(method, path, call);
      },
    }));
    await it.settle();
    limited = 1;
    it.server.say(paddock, robin, '!show 1');
    it.server.say(chat, robin, 'show 2');
    it.server.say(paddock, robin, '!show 3');
    await it.bot.round();
    const from = it.server.clock;
    expect(it.bot.sender.nextDue()).toBe(from + 7000);
    it.server.clock += 6999;
    const before = tried;
    await it.bot.round();
    expect(tried).toBe(before);
    await it.settle();
    expect(bodies(it, paddock).slice(-2)).toEqual(['ok show 1', 'ok show 3']);
    expect(bodies(it, chat).at(-1)).toBe('ok show 2');
  });
  it('refused in one room goes on in it, and in the others', async () => {
    const it = await club();
    it.server.forbidden.add(paddock);
    await it.ask(paddock, robin, '!show a');
    it.server.forbidden.clear();
    expect(await it.ask(paddock, robin, '!show b')).toEqual(['ok show b']);
    expect(count(it, "SELECT count(*) FROM outbox WHERE state = 'refused'")).toBe(1);
  });
  it('too large is sent short, once', async () => {
    const it = await club();
    expect(await it.ask(chat, robin, 'big 7')).toEqual(['big 7\n(The rest could not be sent here.)']);
  });
  it('on a new device looks for what may have been sent', async () => {
    let lose = false;
    const it = await club((wire: Wire) => ({
      ...wire,
      request: async (method, path, call) => {
        const answer = await wire.request(method, path, call);
        if (lose && method === 'PUT') throw new WireFailure(undefined, undefined, undefined, 'socket hang up');
        return answer;
      },
    }));
    lose = true;
    const event = it.server.say(paddock, robin, '!show a');
    it.server.faults = { ...it.server.faults, before: 0 };
    await it.bot.round();
    await it.bot.round();
    lose = false;
    it.bot.device = 'D2';
    it.bot.restart();
    await it.settle();
    expect(it.replies(paddock, event)).toHaveLength(1);
    expect(count(it, "SELECT count(*) FROM outbox WHERE state <> 'sent'")).toBe(0);
  });
});
