/** Sam sees robin's car while it is shared, and tries everything to see it after that. */
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { Attack, isCanary, isFile, isPicture, type Told } from './attack.js';
import { bodyOf } from './club.js';
import type { Member } from './member.js';

let attack: Attack;
let robin: Member;
let sam: Member;
/** A room of both in which nothing was ever shared. */
let yard: string;
beforeAll(async () => {
  attack = await Attack.open();
  ({ robin, sam } = attack.club);
  yard = await attack.club.room('yard');
});
afterAll(() => attack?.club.close());
const ask = (who: Member, room: string, line: string): Promise<string> => attack.club.ask(who, room, line);

interface Stage {
  readonly room: string;
  readonly car: string;
  /** The line that shared it. */
  readonly shared: string;
}
interface Loss {
  readonly what: string;
  readonly lose: (stage: Stage) => Promise<unknown>;
  /** It may be seen again, by another sharing: only what was told before it must not be told again. */
  readonly again?: true;
  /** Sam has the say in the room; else robin has. */
  readonly sams?: true;
}
const comeBack = (who: Member, room: string): Promise<void> => attack.comeBack(who, room);
const losses: readonly Loss[] = [
  { what: 'it is shared no more', lose: ({ room }) => ask(robin, room, '!unshare') },
  {
    what: 'it is shared no more, and again',
    lose: async ({ room }) => {
      await ask(robin, room, '!unshare');
      await ask(robin, room, '!share');
    },
    again: true,
  },
  {
    what: 'it is shared no more, and has another name',
    lose: async ({ room, car }) => {
      await ask(robin, room, '!unshare');
      await ask(robin, attack.robins, `rename ${car} to ${car}two`);
    },
  },
  { what: 'the sharing was undone', lose: ({ room }) => ask(robin, room, '!undo') },
  {
    what: 'the line that shared it was edited into another',
    lose: async ({ room, shared }) => {
      await robin.edit(room, shared, '!hello');
      await attack.fence(robin, room);
    },
  },
  { what: 'its owner has left', lose: ({ room }) => robin.client.leave(room) },
  { what: 'its owner was put out by sam', lose: ({ room }) => sam.client.kick(room, robin.id), sams: true },
  { what: 'its owner was banned by sam', lose: ({ room }) => sam.client.ban(room, robin.id), sams: true },
  {
    what: 'its owner was put out, and is only invited',
    lose: async ({ room }) => {
      await sam.client.kick(room, robin.id);
      await sam.client.invite(room, robin.id);
    },
    sams: true,
  },
  {
    what: 'its owner has left and come back',
    lose: async ({ room }) => {
      await robin.client.leave(room);
      await comeBack(robin, room);
    },
  },
  {
    what: 'sam has left and come back',
    lose: async ({ room }) => {
      await sam.client.leave(room);
      await comeBack(sam, room);
    },
    again: true,
  },
  {
    what: 'sam was put out, invited and came back',
    lose: async ({ room }) => {
      await robin.client.kick(room, sam.id);
      await robin.client.invite(room, sam.id);
      await comeBack(sam, room);
    },
    again: true,
  },
  { what: 'its owner has erased it', lose: ({ car }) => ask(robin, attack.robins, `erase car ${car}`) },
  {
    what: 'the bot was put out and came back',
    lose: async ({ room }) => {
      await robin.client.kick(room, attack.club.bot.id);
      await robin.client.invite(room, attack.club.bot.id);
      await attack.botIsIn(robin, room, 2);
    },
  },
  { what: 'its owner has been forgotten', lose: () => ask(robin, attack.robins, 'erase me') },
];

/** Each in a thread of its own, so that each leaves what it leaves; and what is tried there when the car may not be seen any more. */
const baits: readonly { readonly line: (car: string) => string; readonly then: readonly string[] }[] = [
  { line: (car) => `!show everything ${car}`, then: ['!more', 'more', '!1', '!doubt'] },
  { line: (car) => `!show ${car}`, then: ['1', '!2', '!yes', '!history'] },
  { line: (car) => `!compare moth with ${car}`, then: ['!more', '!why', '!draw', '!pairs', '!compare'] },
  { line: (car) => `!try ${car} front spring 300`, then: ['!save that', '!keep that', '!more', '!1', '!show everything'] },
  { line: (car) => `!draw front ride frequency of ${car} against front spring 250 to 600`, then: ['!draw', '!more', '!why', '1'] },
  { line: (car) => `!set front spring like ${car}`, then: ['1', '!1', '!yes', '!more'] },
];
/** Said anew where sam is, when the car may not be seen. */
const anew = (car: string): readonly string[] => [
  ...[
    `show everything ${car}`,
    `compare me with ${car}`,
    'compare me with @robin',
    `compare moth with ${car}two`,
    `${car}`,
    `history ${car}`,
  ],
  ...[`why front spring ${car}`, `draw front ride frequency of ${car} against front spring 250 to 600`, `doubt ${car}`, `box ${car}`],
  ...[`try ${car} front spring 300`, `split me against ${car}`, `copy ${car} to fig`, `share ${car}`, `use ${car}`, `rename ${car} to fig`],
  ...[`back to ${car}`, `help ${car}`, `calc ${car}`, `what front spring for 2 Hz on ${car}`, "robin's front spring?", 'units metric'],
  ...[`show everything ${car}`, 'units us', 'show everything', 'more', 'me', 'car', 'history'],
];

async function gathered(sams = false): Promise<Stage> {
  const car = await attack.plant();
  const room = await attack.club.room('paddock', ...(sams ? [sam, robin] : [robin, sam]));
  const shared = await robin.say(room, '!share');
  await robin.reply(shared, attack.club.bot.id);
  return { room, car, shared };
}
/** What sam is told from here on, anywhere. */
async function newlyTold(room: string, known: ReadonlySet<string>): Promise<readonly Told[]> {
  const told = await Promise.all([room, yard, attack.sams].map((one) => attack.told(sam, one)));
  return told.flat().filter((one) => !known.has(one.event.id) && !attack.isRobins(one));
}
/** Lines that tell a number; not those that would be the same of any car. */
const figuresIn = (text: string): readonly string[] =>
  text
    .split('\n')
    .map((line) => line.trim())
    .filter((line) => /\d/.test(line) && !/read as|assumed|not told|more: |^\d !/.test(line));
const idsOf = (told: readonly Told[]): ReadonlySet<string> => new Set(told.map(({ event }) => event.id));

describe('a car that may not be seen any more', () => {
  it.each(losses)('is not told of: $what', async ({ lose, again, sams }) => {
    const stage = await gathered(sams);
    const { room, car } = stage;
    // The bait is good: its owner sees it, and so does sam as long as it is shared.
    expect(await ask(robin, attack.robins, `show ${car}`)).toMatch(/437 lb\/in/);
    const edited = await sam.say(room, '!tire 245/40R17');
    const threads = [];
    for (const { line, then } of baits) threads.push({ ...(await attack.inThread(sam, room, line(car))), then });
    // By name, or a figure of it that is worked out.
    for (const { reply } of threads) expect(bodyOf(reply)).toMatch(/quince|ride frequency .*Hz/i);
    expect(isCanary({ event: threads[0]!.reply, asked: '', text: bodyOf(threads[0]!.reply) })).toBe(true);
    expect(threads.filter(({ reply }) => reply.content.msgtype === 'm.image')).toHaveLength(1);

    await lose(stage);
    await attack.fence(sam, room);
    const known = idsOf(await newlyTold(room, new Set()));
    for (const { root, reply, then } of threads) {
      for (const line of then) await sam.inThread(room, root, line);
      await sam.say(room, '1', { 'm.relates_to': { 'm.in_reply_to': { event_id: reply.id } } });
    }
    if (!again) {
      for (const { asked } of threads) await sam.edit(room, asked, `!show everything ${car} in metric`);
      await sam.edit(room, edited, `!show everything ${car}`);
    }
    if (!again) for (const line of anew(car)) await sam.say(room, `!${line}`);
    await sam.say(attack.sams, 'export my data');
    for (const one of [room, attack.sams]) await attack.fence(sam, one);

    const told = await newlyTold(room, known);
    expect(told.length).toBeGreaterThan(again ? 20 : 60);
    expect(told.filter(isCanary).map((one) => [one.asked, one.text])).toEqual([]);
    // Nor is any line that was shown of it said again.
    const shown = threads.flatMap(({ reply }) => figuresIn(bodyOf(reply)));
    expect(shown.length).toBeGreaterThan(15);
    expect(shown.filter((line) => told.some(({ text }) => figuresIn(text).includes(line)))).toEqual([]);
    expect(told.filter(isPicture)).toEqual([]);
    expect(told.filter(isFile)).toHaveLength(1);
    if (again) await ask(robin, room, '!unshare');
  });

  it('nor elsewhere, while it is shared in one room', async () => {
    const { room, car } = await gathered();
    expect(await ask(sam, room, `!show ${car}`)).toMatch(/437 lb\/in/);
    const known = idsOf(await newlyTold(room, new Set()));
    for (const line of anew(car)) {
      await sam.say(yard, `!${line}`);
      await sam.say(attack.sams, line);
    }
    for (const one of [yard, attack.sams]) await attack.fence(sam, one);
    const told = await newlyTold(room, known);
    expect(told.length).toBeGreaterThan(50);
    expect(told.filter(isCanary)).toEqual([]);
    expect(told.filter(isPicture)).toEqual([]);
    await ask(robin, room, '!unshare');
  });

  it('nor when the bot comes back to hear of both at once: that it is shared no more, and the question', async () => {
    const { room, car } = await gathered();
    expect(await ask(sam, room, `!show ${car}`)).toMatch(/437 lb\/in/);
    const known = idsOf(await newlyTold(room, new Set()));
    await attack.club.bot.end('SIGKILL');
    await sam.say(room, '!tire 245/40R17');
    await robin.say(room, '!unshare');
    const asked = await sam.say(room, `!show everything ${car}`);
    await sam.say(room, '!more');
    await attack.club.bot.start();
    await sam.reply(asked, attack.club.bot.id);
    await attack.fence(sam, room);
    const told = await newlyTold(room, known);
    expect(told.length).toBeGreaterThan(2);
    expect(told.filter(isCanary)).toEqual([]);
  });

  it('nor to whoever calls themselves as its owner does, or has a car of that name', async () => {
    const { room, car } = await gathered();
    await ask(robin, room, '!unshare');
    await sam.client.setDisplayName('robin');
    await ask(sam, attack.sams, `new car ${car} 2000 lb`);
    const known = idsOf(await newlyTold(room, new Set()));
    for (const line of [`show everything ${car}`, 'compare me with robin', 'show my car', 'compare moth with robin']) {
      await sam.say(room, `!${line}`);
      await sam.say(attack.sams, line);
    }
    for (const one of [room, attack.sams]) await attack.fence(sam, one);
    const told = await newlyTold(room, known);
    expect(told.length).toBeGreaterThan(8);
    expect(told.filter(({ text }) => isCanary({ asked: 'quince', text } as Told)).map(({ text }) => text)).toEqual([]);
    await ask(sam, attack.sams, `erase car ${car}`);
    await sam.client.setDisplayName('sam');
  });
});
