/** `export my data`: only where it was asked, and only where nobody but the member can read it, now or ever; looked at when it is asked and when it is sent. */
import { describe, expect, it } from 'vitest';
import { type Wire, WireFailure } from '../../bot/matrix/wire.js';
import { exportFormat } from '../../bot/records/export.js';
import { exportElsewhere } from '../../commands/house/me.js';
import { type FakeEvent, me } from '../simulation/homeserver.js';
import { type Club, chat, club, paddock, robin, sam } from './club.js';

const trap = '!trap:lane.test';
const filesIn = ({ server }: Club, room: string): readonly FakeEvent[] =>
  server.said(room).filter(({ content }) => content.msgtype === 'm.file');
const anyFile = (it: Club): readonly string[] => [...it.server.rooms.keys()].filter((room) => filesIn(it, room).length > 0);
const ask = (it: Club, room: string, who = robin): Promise<readonly string[]> => it.ask(room, who, '!export');
const left = ({ bot }: Club): unknown =>
  bot.store.database
    .prepare('SELECT count(*) FROM outbox WHERE file IS NOT NULL OR rights IS NOT NULL OR instead IS NOT NULL')
    .pluck()
    .get();

describe('a member gets their data', () => {
  it('as a file in the chat where they ask for it', async () => {
    const it = await club();
    await it.ask(chat, robin, 'set 100');
    expect(await ask(it, chat)).toEqual(['on its way', 'my-data.json']);
    const [file] = filesIn(it, chat);
    expect(file?.content).toMatchObject({
      ...{ msgtype: 'm.file', filename: 'my-data.json', info: { mimetype: 'application/json' }, url: 'mxc://lane.test/1' },
      'm.mentions': { user_ids: [robin] },
    });
    const data = exportFormat(it.bot.store.kinds).parse(JSON.parse(Buffer.from(it.server.files.get('mxc://lane.test/1') ?? []).toString()));
    expect(data).toMatchObject({ member: { id: robin }, cars: [{ name: 'turnip' }] });
    expect([anyFile(it), left(it)]).toEqual([[chat], 0]);
  });
  it('once, however often it may have been sent already', async () => {
    let lose = false;
    const it = await club((wire: Wire) => ({
      ...wire,
      request: async (method, path, call) => {
        const answer = await wire.request(method, path, call);
        if (lose && method === 'PUT' && JSON.stringify(call?.body).includes('m.file'))
          throw new WireFailure(undefined, undefined, undefined, 'socket hang up');
        return answer;
      },
    }));
    lose = true;
    it.server.say(chat, robin, 'export');
    await it.bot.round();
    // It is in the room, which the bot does not know, and may not be sent any more.
    it.server.add(chat, robin, 'm.room.join_rules', { join_rule: 'public' }, '');
    lose = false;
    await it.settle();
    expect(filesIn(it, chat)).toHaveLength(1);
    expect(it.server.said(chat).map(({ content }) => content.body)).not.toContainEqual(expect.stringMatching(/not sent/));
    expect(left(it)).toBe(0);
  });
  it('told in words that the homeserver does not take files', async () => {
    const it = await club();
    it.server.refusesUploads = true;
    expect(await ask(it, chat)).toEqual([
      'on its way',
      'This homeserver does not take the file with your data. Whoever runs me can give it to you.',
    ]);
  });
  it('also after they were forgotten there and began anew', async () => {
    const it = await club();
    await it.ask(chat, robin, 'forget-me');
    await it.ask(chat, robin, 'set 100');
    expect(await ask(it, chat)).toHaveLength(2);
  });
  it('also when they are forgotten before it was sent', async () => {
    const it = await club();
    await it.ask(chat, robin, 'set 100');
    it.bot.holds = true;
    it.server.say(chat, robin, 'export');
    it.server.say(chat, robin, 'forget-me');
    await it.settle();
    it.bot.holds = false;
    await it.settle();
    expect(filesIn(it, chat)).toHaveLength(1);
    expect(JSON.stringify(it.bot.store.database.prepare('SELECT * FROM outbox').all()).replaceAll(chat, '')).not.toContain('robin');
  });
});

/** Each a way to a room that looks like a chat for two and is none; `robin` asks in it. */
const traps: readonly (readonly [string, (it: Club) => unknown])[] = [
  ['whose maker left, to come back and read', (it) => it.server.leave(trap, sam)],
  [
    'whose maker was never told of',
    (it) =>
      it.server.rooms.set(
        trap,
        it.server.events(trap).filter((e) => e.state_key !== sam),
      ),
  ],
  ['where somebody is whose name is a list', (it) => it.server.member(trap, sam, sam, { membership: 'join', displayname: ['x'] })],
  [
    'where somebody is who came under a name that is a list, after the bot',
    async (it) => {
      it.server.leave(trap, sam);
      await it.settle();
      it.server.member(trap, sam, sam, { membership: 'join', displayname: ['x'] });
    },
  ],
  [
    'whose maker was forgotten by the bot',
    async (it) => {
      it.server.say(trap, sam, '!forget-me');
      await it.settle();
      it.server.leave(trap, sam);
    },
  ],
  [
    'whose maker is forgotten by the bot, and still there',
    async (it) => {
      it.server.say(trap, sam, '!forget-me');
      await it.settle();
    },
  ],
];
describe('a room that another made, and that looks direct', () => {
  it.each(traps)('%s: nothing goes there, wherever it is asked', async (_, spring) => {
    const it = await club();
    it.server.makeRoom(trap, sam, robin);
    it.server.invite(trap, sam);
    await it.settle();
    await it.ask(chat, robin, 'set 100');
    await spring(it);
    await it.settle();
    for (const room of [trap, paddock]) expect(await ask(it, room)).toEqual([exportElsewhere]);
    // Somewhere else it is still given, and only there.
    expect(await ask(it, chat)).toHaveLength(2);
    expect(anyFile(it)).toEqual([chat]);
  });
  it('and that was made before the bot knew any other: the first of its rooms is not better than the rest', async () => {
    const it = await club();
    it.server.makeRoom('!a-trap:lane.test', sam, robin);
    it.server.invite('!a-trap:lane.test', sam);
    it.server.leave('!a-trap:lane.test', sam);
    await it.settle();
    expect(await ask(it, paddock)).toEqual([exportElsewhere]);
    expect(anyFile(it)).toEqual([]);
  });
});

/** Each ends the privacy of a chat for two. */
const openings: readonly (readonly [string, (it: Club) => void])[] = [
  [
    'its history can be read by everybody',
    (it) => it.server.add(chat, robin, 'm.room.history_visibility', { history_visibility: 'world_readable' }, ''),
  ],
  [
    'its history can be read by whom cannot be told',
    (it) => it.server.add(chat, robin, 'm.room.history_visibility', { history_visibility: ['shared'] }, ''),
  ],
  ['everybody may join', (it) => it.server.add(chat, robin, 'm.room.join_rules', { join_rule: 'public' }, '')],
  [
    'whoever is in another room may join',
    (it) => it.server.add(chat, robin, 'm.room.join_rules', { join_rule: 'restricted', allow: 'all' }, ''),
  ],
  ['whoever knocks may be let in', (it) => it.server.add(chat, robin, 'm.room.join_rules', { join_rule: 'knock' }, '')],
  ['who may join cannot be told', (it) => it.server.add(chat, robin, 'm.room.join_rules', {}, '')],
  ['somebody is invited', (it) => it.server.member(chat, robin, sam, { membership: 'invite' })],
  [
    'somebody was invited, and declined',
    (it) => {
      it.server.member(chat, robin, sam, { membership: 'invite' });
      it.server.leave(chat, sam);
    },
  ],
  ['somebody knocked', (it) => it.server.member(chat, sam, sam, { membership: 'knock', reason: ['x'] })],
  [
    'somebody came and went',
    (it) => {
      it.server.join(chat, sam);
      it.server.leave(chat, sam);
    },
  ],
  [
    'somebody was put out',
    (it) => {
      it.server.join(chat, sam);
      it.server.member(chat, robin, sam, { membership: 'ban', displayname: {} });
    },
  ],
  [
    'somebody is invited by an address elsewhere',
    (it) => it.server.add(chat, robin, 'm.room.third_party_invite', { display_name: 's...' }, 'token'),
  ],
  ['an event of it cannot be read', (it) => it.server.addRaw(chat, { type: 'm.room.member', sender: sam, state_key: 5, content: {} })],
  ['the member is not in it any more', (it) => it.server.leave(chat, robin)],
];
describe('a chat for two that is private no longer, because', () => {
  it.each(openings)('%s: asked then, the bot says how', async (_, open) => {
    const it = await club();
    open(it);
    await it.settle();
    const replies = await ask(it, chat);
    // Who has left says nothing there that a homeserver would let through; the bot gives them nothing either.
    expect(replies).toEqual([exportElsewhere]);
    expect(anyFile(it)).toEqual([]);
  });
  it.each(openings)('%s: asked before and not yet sent, it is not sent', async (_, open) => {
    const it = await club();
    it.bot.holds = true;
    const event = it.server.say(chat, robin, 'export');
    await it.settle();
    open(it);
    it.bot.holds = false;
    await it.settle();
    expect(anyFile(it)).toEqual([]);
    expect(it.replies(chat, event).map(({ content }) => content.body)).toEqual([
      'on its way',
      `Your data was not sent, since others could read it here by now. ${exportElsewhere}`,
    ]);
    expect([it.server.uploads, left(it)]).toEqual([0, 0]);
  });
  it.each(openings)('%s: the bot has not heard of it, and asks the homeserver before it sends', async (_, open) => {
    const it = await club();
    it.bot.holds = true;
    const event = it.server.say(chat, robin, 'export');
    await it.settle();
    open(it);
    // No sync in between.
    it.server.clock += 60_000;
    await it.bot.sender.run();
    expect(anyFile(it)).toEqual([]);
    expect(it.replies(chat, event)).toHaveLength(2);
  });
  it.each(openings)('%s while the file is sent to the homeserver: it is not put into the room', async (_, open) => {
    const box: { club?: Club } = {};
    const it = await club((wire: Wire) => ({
      ...wire,
      request: async (method, path, call) => {
        const answer = await wire.request(method, path, call);
        if (path.endsWith('/upload') && box.club) open(box.club);
        return answer;
      },
    }));
    box.club = it;
    await ask(it, chat);
    expect(it.server.uploads).toBe(1);
    expect(anyFile(it)).toEqual([]);
  });
  it('is not sent either while the homeserver does not say how the room is; and is once it does', async () => {
    let mute = true;
    const it = await club((wire: Wire) => ({
      ...wire,
      request: (method, path, call) =>
        mute && path.endsWith('/state')
          ? Promise.reject(new WireFailure(502, undefined, undefined, '502'))
          : wire.request(method, path, call),
    }));
    await ask(it, chat);
    expect(anyFile(it)).toEqual([]);
    mute = false;
    await it.settle();
    expect(anyFile(it)).toEqual([chat]);
  });
  it("was made a chat by the bot's own record alone: the homeserver does not tell of somebody who was there", async () => {
    const it = await club();
    it.server.join(chat, sam);
    it.server.leave(chat, sam);
    await it.settle();
    it.server.rooms.set(
      chat,
      it.server.events(chat).filter((e) => e.state_key !== sam),
    );
    it.bot.store.database.exec(`UPDATE rooms SET told = 1 WHERE id = '${chat}'`);
    expect(await ask(it, chat)).toEqual([exportElsewhere]);
    expect(it.server.state(chat, 'm.room.member', me)?.content.membership).toBe('join');
  });
});
