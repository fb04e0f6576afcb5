import { setTimeout as pause } from 'node:timers/promises';
import Database from 'better-sqlite3';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { bodyOf, Club } from './club.js';
import { type Heard, isReplyTo, Member } from './member.js';

/** The same every run: a failure can be looked at again. */
function randomNumbers(seed: number): () => number {
  let state = seed;
  return () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state / 2 ** 32;
  };
}

describe('a bot that is killed again and again', () => {
  let club: Club;
  beforeAll(async () => {
    club = await Club.open();
  });
  afterAll(() => club?.close());

  it('answers each of 300 commands once and makes each change once, the homeserver going down in between', async () => {
    const { robin, bot, server } = club;
    const room = await club.room('paddock');
    await club.ask(robin, room, '!save turnip 2640 lb, 52.5% front, wheelbase 99 in');
    const random = randomNumbers(20261125);
    const asked: string[] = [];
    const wheelbases: number[] = [];
    let over = false;
    let kills = 0;
    const killer = (async () => {
      while (!over) {
        await pause(150 + 900 * random());
        if (over) break;
        await bot.end('SIGKILL');
        kills++;
        await bot.start();
      }
    })();
    for (let n = 0; n < 300; n++) {
      const isChange = n % 2 === 0;
      const wheelbase = 95 + n / 100;
      if (isChange) wheelbases.push(wheelbase);
      asked.push(
        await robin.say(
          room,
          isChange ? `!set wheelbase ${wheelbase.toFixed(2)} in` : `!gear ${5000 + n}rpm 2nd 1.93 final 3.73 245/40R17`,
        ),
      );
      if (n === 150) {
        await server.down();
        await pause(500);
        await server.up();
      }
      await pause(40 * random());
    }
    // The killing goes on while the last are answered, then stops, so that the rest can be.
    await pause(5000);
    over = true;
    await killer;
    // The homeserver's own account of the room, until every command has its reply there, or two minutes have gone.
    const answered = (heard: readonly Heard[]) => asked.filter((event) => heard.some((h) => isReplyTo(h, event, bot.id))).length;
    let heard = await robin.everything(room);
    for (let tries = 0; tries < 120 && answered(heard) < asked.length; tries++) {
      await pause(1000);
      heard = await robin.everything(room);
    }
    const counts = asked.map((event) => heard.filter((h) => isReplyTo(h, event, bot.id)).length);
    expect(kills).toBeGreaterThan(5);
    expect(counts.filter((count) => count !== 1)).toEqual([]);
    const order = heard.flatMap((h) => {
      const at = asked.findIndex((event) => isReplyTo(h, event, bot.id));
      return at < 0 ? [] : [at];
    });
    expect(order).toEqual(asked.map((_, at) => at));
    await bot.end();
    const database = new Database(bot.database, { readonly: true });
    const revisions = database.prepare<[], { facts: string }>('SELECT facts FROM revisions ORDER BY id').all();
    database.close();
    // One for the car that was saved, one for each change, in order.
    expect(revisions).toHaveLength(1 + wheelbases.length);
    const recorded = revisions.slice(1).map(({ facts }) => wheelbaseIn(facts));
    expect(recorded.map((metres) => Math.round(metres / 0.000254))).toEqual(wheelbases.map((inches) => Math.round(inches * 100)));
  });
});

/** The wheelbase in metres, wherever the stored form keeps it. */
function wheelbaseIn(facts: string): number {
  const found = /"wheelbase"[^0-9]*([0-9.]+)/.exec(facts);
  if (!found) throw new Error(`no wheelbase in ${facts}`);
  return Number(found[1]);
}

describe('the default rate limits of a homeserver', () => {
  let club: Club;
  beforeAll(async () => {
    club = await Club.open({ defaultLimits: true });
  });
  afterAll(() => club?.close());

  it('delay a burst of 25 questions, and every one is answered, to each member in order', async () => {
    const { robin, sam, bot, server } = club;
    const room = await club.room('paddock');
    // Three members, because the limits hold for each of them too: 25 lines of one would not arrive as a burst.
    const alex = await Member.join(server, await server.register('alex'));
    await alex.client.joinRoom(room);
    const members = [robin, sam, alex];
    const asked: string[] = [];
    for (let n = 0; n < 25; n++) {
      const member = members[n % members.length] ?? robin;
      asked.push(await member.say(room, `!gear ${6000 + n}rpm 2nd 1.93 final 3.73 245/40R17`));
    }
    alex.stop();
    for (const event of asked) await robin.reply(event, bot.id, 170_000);
    const replies = robin.heard.filter((h) => asked.some((event) => isReplyTo(h, event, bot.id)));
    const order = replies.map((h) => asked.findIndex((event) => isReplyTo(h, event, bot.id)));
    expect(order.toSorted((a, b) => a - b)).toEqual(asked.map((_, at) => at));
    // Members take turns: the order is that of each of them.
    for (const [who] of members.entries()) {
      const own = order.filter((at) => at % members.length === who);
      expect(own).toEqual(own.toSorted((a, b) => a - b));
    }
    expect(replies.every((h) => /mph/.test(bodyOf(h)))).toBe(true);
  });
});
