/** What is kept of robin goes into no room in which sam could read it, now or later, however the room came to be so. */
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { exportElsewhere } from '../../commands/house/me.js';
import { Attack, isFile } from './attack.js';
import { bodyOf } from './club.js';
import type { Member } from './member.js';

let attack: Attack;
let robin: Member;
let sam: Member;
let bot: string;
let car: string;
beforeAll(async () => {
  attack = await Attack.open();
  ({ robin, sam } = attack.club);
  bot = attack.club.bot.id;
  car = await attack.plant();
});
afterAll(() => attack?.club.close());

const line = '!export my data';
const files = async (who: Member, room: string): Promise<number> => (await attack.told(who, room)).filter(isFile).length;
const state = (who: Member, room: string, type: string, content: object, key?: string): Promise<unknown> =>
  attack.state(who, room, type, content, key);
/** What robin is told in reply; a room that is not direct any more is asked by the prefix, which every room takes. */
const ask = async (room: string): Promise<string> => bodyOf(await robin.ask(room, line, bot));

/** A room of robin's own, with nobody in it but robin and the bot. */
const own = (): Promise<string> => robin.makeRoom({ direct: true, invite: [bot] });
/** A room that sam has made for robin and the bot, and in which sam has been. */
async function lured(direct: boolean): Promise<string> {
  const room = await sam.makeRoom({ direct, invite: [robin.id, bot] });
  await attack.comeBack(robin, room);
  await attack.botIsIn(robin, room, 1);
  return room;
}

interface Trap {
  readonly what: string;
  /** Makes it; in robin's own room, where robin got the data before. */
  readonly spoil?: (room: string) => Promise<unknown>;
  /** Or a room in which it was so from the start. */
  readonly make?: () => Promise<string>;
  /** How sam comes to read the room, where a homeserver lets them. */
  readonly read?: (room: string) => Promise<unknown>;
}
const comeIn = (room: string): Promise<void> => attack.comeBack(sam, room);
const invited = async (room: string): Promise<void> => {
  await robin.client.invite(room, sam.id);
};
const traps: readonly Trap[] = [
  {
    what: 'sam made it, lured robin into it, left, and comes back',
    make: async () => {
      const room = await lured(false);
      await sam.client.leave(room);
      return room;
    },
    read: comeIn,
  },
  {
    what: 'sam made it as a chat for two, and left',
    make: async () => {
      const room = await lured(true);
      await sam.client.leave(room);
      return room;
    },
  },
  {
    what: 'sam is in it under a name that is a list',
    make: async () => {
      const room = await lured(true);
      await state(sam, room, 'm.room.member', { membership: 'join', displayname: ['sam'] }, sam.id);
      return room;
    },
  },
  {
    what: 'sam was in it under a name that is a list, and comes back',
    make: async () => {
      const room = await lured(false);
      await state(sam, room, 'm.room.member', { membership: 'join', displayname: ['sam'] }, sam.id);
      await sam.client.leave(room);
      return room;
    },
    read: comeIn,
  },
  {
    what: 'sam was in it while the bot was not',
    make: async () => {
      const room = await made(undefined, 'private_chat');
      await invited(room);
      await comeIn(room);
      await robin.client.kick(room, bot);
      await robin.client.kick(room, sam.id);
      await robin.client.invite(room, bot);
      await attack.botIsIn(robin, room, 2);
      return room;
    },
    read: async (room) => {
      await invited(room);
      await comeIn(room);
    },
  },
  { what: 'sam is invited', spoil: invited, read: comeIn },
  {
    what: 'sam was invited, and is so no more',
    spoil: async (room) => {
      await invited(room);
      await robin.client.kick(room, sam.id);
    },
  },
  { what: 'sam is banned from it', spoil: (room) => robin.client.ban(room, sam.id) },
  {
    what: 'sam has knocked',
    spoil: async (room) => {
      await state(robin, room, 'm.room.join_rules', { join_rule: 'knock' });
      await sam.client.http.authedRequest('POST' as never, `/knock/${encodeURIComponent(room)}`, undefined, {});
      await state(robin, room, 'm.room.join_rules', { join_rule: 'invite' });
    },
  },
  { what: 'everybody may come in', spoil: (room) => state(robin, room, 'm.room.join_rules', { join_rule: 'public' }), read: comeIn },
  {
    what: 'who is in another room may come in',
    spoil: (room) =>
      state(robin, room, 'm.room.join_rules', { join_rule: 'restricted', allow: [{ type: 'm.room_membership', room_id: attack.sams }] }),
    read: comeIn,
  },
  {
    what: 'who may come in is told in words that cannot be read',
    spoil: (room) => state(robin, room, 'm.room.join_rules', { join_rule: ['invite'] }),
  },
  { what: 'who may come in is not told', spoil: (room) => state(robin, room, 'm.room.join_rules', {}) },
  {
    what: 'all the world may read it',
    spoil: (room) => state(robin, room, 'm.room.history_visibility', { history_visibility: 'world_readable' }),
  },
  {
    what: 'who may read it is told in words that cannot be read',
    spoil: (room) => state(robin, room, 'm.room.history_visibility', { history_visibility: ['joined'] }),
  },
  {
    what: 'guests are told of in words that cannot be read',
    spoil: (room) => state(robin, room, 'm.room.guest_access', { guest_access: 5 }),
  },
  {
    what: 'somebody is invited by an address elsewhere',
    spoil: (room) =>
      state(
        robin,
        room,
        'm.room.third_party_invite',
        { display_name: 's…', key_validity_url: 'https://lane.test', public_key: 'a' },
        'token',
      ),
  },
  { what: 'it is a space', make: () => made('m.space') },
  { what: 'what it is for is told in words that cannot be read', make: () => made(['m.space']) },
];
/** Robin's own, of a type. */
async function made(type: unknown, preset = 'trusted_private_chat'): Promise<string> {
  const { room_id } = await robin.client.createRoom({
    ...{ preset: preset as never, invite: [bot], is_direct: true },
    ...(type === undefined ? {} : { creation_content: { type } as never }),
  });
  await attack.botIsIn(robin, room_id, 1);
  return room_id;
}

describe("robin's data", () => {
  it('goes to robin, in a chat in which nobody else ever was', async () => {
    expect(await ask(attack.robins)).toMatch(/^Here is all/);
    await robin.hear((h) => h.room === attack.robins && h.content.msgtype === 'm.file', 'the file');
    expect(await files(robin, attack.robins)).toBe(1);
    expect(bodyOf(await robin.ask(attack.robins, `show ${car}`, bot))).toMatch(/437 lb\/in/);
  });
  it('is no longer where it was, for sam', async () => {
    await expect(sam.everything(attack.robins)).rejects.toThrow(/403|not in room/i);
  });
  it.each(traps)('is not given where $what', async ({ spoil, make, read }) => {
    const room = await (make ?? own)();
    let before = 0;
    if (spoil !== undefined) {
      await attack.botIsIn(robin, room, 1);
      expect(await ask(room)).toMatch(/^Here is all/);
      await attack.fence(robin, room);
      before = await files(robin, room);
      expect(before).toBe(1);
      await spoil(room);
    }
    const told = await ask(room);
    await attack.fence(robin, room);
    expect(told.split('\n')[0]).toBe(exportElsewhere);
    expect(await files(robin, room)).toBe(before);
    await read?.(room);
    // What was said before sam came is robin's affair: nothing was said since.
    const now = (await attack.told(sam, room)).filter(isFile);
    expect(now.length).toBeLessThanOrEqual(before);
  });
  it('is not sent into a room that is opened while the bot is away, between the question and the answer', async () => {
    for (const first of ['asked', 'opened'] as const) {
      const room = await own();
      await attack.botIsIn(robin, room, 1);
      await attack.fence(robin, room);
      await attack.club.bot.end('SIGKILL');
      const asked = first === 'asked' ? await robin.say(room, line) : undefined;
      await state(robin, room, 'm.room.join_rules', { join_rule: 'public' });
      await comeIn(room);
      const event = asked ?? (await robin.say(room, line));
      await attack.club.bot.start();
      await robin.reply(event, bot);
      await attack.fence(robin, room);
      expect(await files(robin, room)).toBe(0);
      expect(await files(sam, room)).toBe(0);
    }
  });
});
