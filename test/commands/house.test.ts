import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { endOfDay } from '../../commands/house/time.js';
import { nameOf } from '../../commands/names.js';
import { demoClub } from './demo.js';
import { ask, everything, say } from './say.js';

describe('names', () => {
  const refusedNames = [
    '',
    '   ',
    '<img src=x>',
    '[a](b)',
    '@robin',
    '#room',
    '12.5',
    'x'.repeat(25),
    'el\u202ett\u200bek',
    'a\u0000b',
    '\u3164',
    '---',
    'now',
    'me',
    '`code`',
    'a|b',
    '\u0301x',
  ];
  for (const name of refusedNames) it(`refuses ${JSON.stringify(name)}`, () => expect(nameOf(name, 'car')).toHaveProperty('refused'));
  for (const name of ['turnip', 'old blue', "sam's moth", 'Käfer 2', '茄子', 'moth-3'])
    it(`takes ${name}`, () => expect(nameOf(`  ${name} `, 'car')).toEqual({ name }));
  it('takes nothing that another mark could hide in', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary' }), (text) => {
        const checked = nameOf(text, 'car');
        if ('name' in checked) expect(checked.name).not.toMatch(/[<>&[\]@#|`*\p{Cc}\p{Cf}]/u);
        else expect(checked.refused).toMatch(/\.$/);
      }),
    );
  });
});

describe('days', () => {
  const wednesday = Date.UTC(2026, 4, 13, 18, 0);
  it('end at midnight UTC, the last one of that name', () => {
    expect(endOfDay('sunday', wednesday)).toBe(Date.UTC(2026, 4, 11));
    expect(endOfDay('Wed', wednesday)).toBe(Date.UTC(2026, 4, 14));
    expect(endOfDay('yesterday', wednesday)).toBe(Date.UTC(2026, 4, 13));
    expect(endOfDay('dry', wednesday)).toBeUndefined();
  });
});

describe('cars', () => {
  it('are listed, chosen, made, copied, renamed and erased after asking', async () => {
    const club = await demoClub();
    expect((await ask(club, 'robin', 'car')).rows.map(({ label }) => label)).toEqual(['pickle', 'turnip', 'moth']);
    await ask(club, 'robin', 'car pickle');
    expect(club.garage('robin').chosen?.name).toBe('pickle');
    await ask(club, 'robin', 'new car parsnip');
    expect(club.head('parsnip').facts.size).toBe(0);
    await ask(club, 'robin', 'copy turnip as test mule');
    expect([...club.head('test mule').facts]).toEqual([...club.head('turnip').facts]);
    await ask(club, 'robin', "rename parsnip to 'old blue'");
    expect(club.car('old blue').owner).toBe('@robin:example.org');
    expect((await ask(club, 'robin', 'forget pickle')).kind).toBe('asked');
    expect(club.car('pickle').owner).toBe('@robin:example.org');
    await ask(club, 'robin', '1');
    expect(club.garage('robin').mine.map(({ name }) => name)).not.toContain('pickle');
  });
  it('that were measured before they changed are copied as they stand now', async () => {
    const club = await demoClub();
    await say(club, 'robin', 'set lr ride height 26 in, rr ride height 26 in, lf ride height 25 in, rf ride height 25 in');
    await say(club, 'robin', 'set rear spring rate 400');
    const before = (await ask(club, 'robin', 'rear ride height')).amount?.si;
    await say(club, 'robin', 'copy turnip to mule');
    expect((await ask(club, 'robin', 'rear ride height')).amount?.si).toBeCloseTo(before!, 9);
  });
  const refusals = [
    'rename turnip to pickle',
    'rename turnip to <b>x</b>',
    'copy turnip to turnip',
    'new car 12',
    'car wibble',
    'erase car',
    'rename moth to mine2',
    'forget moth',
    'share moth',
    'forget front camber',
    'keep as front',
  ];
  for (const line of refusals)
    it(`change nothing by: ${line}`, async () => {
      const club = await demoClub();
      const { answers, changes } = await say(club, 'robin', line);
      expect(changes).toEqual([]);
      expect(answers[0]?.kind, everything(answers[0]!)).toBe('refused');
    });
  it('forget one fact, and undo brings it back', async () => {
    const club = await demoClub();
    await ask(club, 'robin', 'forget rear tire');
    expect(club.head('turnip').facts.has('rear.tire.size')).toBe(false);
    await ask(club, 'robin', 'undo');
    expect(club.head('turnip').facts.get('rear.tire.size')?.value).toBe('205/50R15');
  });
});

describe('sharing', () => {
  it('is for this room, for its members, until it is taken back', async () => {
    const club = await demoClub();
    club.join('robin', {}, 'pits');
    club.join('lee', {}, 'pits');
    const sees = async (who: string, room: string) => (await say(club, who, 'turnip', room)).answers[0]?.kind === 'told';
    expect(await sees('lee', 'paddock')).toBe(false);
    await say(club, 'robin', 'share', 'pits');
    expect(await sees('lee', 'pits')).toBe(true);
    expect(await sees('lee', 'paddock')).toBe(false);
    club.leave('lee', 'pits');
    expect(await sees('lee', 'pits')).toBe(false);
    club.join('lee', {}, 'pits');
    await say(club, 'robin', 'unshare', 'pits');
    expect(await sees('lee', 'pits')).toBe(false);
  });
  it('needs somebody to share with', async () => {
    const club = await demoClub();
    club.rooms.set('alone', { direct: true, members: new Set(['@robin:example.org']) });
    const { answers, changes } = await say(club, 'robin', 'share', 'alone');
    expect(answers[0]?.kind).toBe('refused');
    expect(changes).toEqual([]);
  });
});

describe('the member', () => {
  it('has units and a decimal mark, for the next line of the message too', async () => {
    const club = await demoClub();
    const { answers } = await say(club, 'robin', 'units metric\nwheelbase\nunits comma\nset wheelbase 2500,5');
    expect(answers[1]?.headline).toMatch(/2,514\.6 mm/);
    expect(club.head('turnip').facts.get('wheelbase')?.value).toBeCloseTo(2.5005, 12);
    expect((await ask(club, 'robin', 'wheelbase')).headline).toMatch(/2500,5 mm/);
    expect((await ask(club, 'robin', 'units furlongs')).kind).toBe('refused');
  });
  it('is forgotten only after a yes', async () => {
    const club = await demoClub();
    expect((await say(club, 'robin', 'forget me')).changes).toEqual([]);
    expect((await say(club, 'robin', '1')).changes).toEqual([{ change: 'forget me' }]);
    expect(club.garage('robin').mine).toEqual([]);
  });
  it('gets the data where nobody else can read it, and elsewhere is told how, in one sentence', async () => {
    const club = await demoClub();
    const { dispatch } = await import('../../commands/dispatch.js');
    const context = club.context('robin');
    for (const line of ['export my data', 'export', 'download my data']) {
      const given = await dispatch(line, { ...context, room: { id: 'chat', direct: true, private: true } });
      expect([line, given.changes]).toEqual([line, [{ change: 'export me' }]]);
      for (const room of [context.room, { id: 'chat', direct: true }, { id: 'chat', direct: true, private: false }]) {
        const { answers, changes } = await dispatch(line, { ...context, room });
        expect(changes).toEqual([]);
        expect(answers).toMatchObject([
          {
            ...{ kind: 'told', next: [] },
            headline: 'To get your data, open a new direct chat with me that nobody else was ever in, and type there: export my data',
          },
        ]);
      }
    }
  });
  it('sets the prefix, sends the bot away', async () => {
    const club = await demoClub();
    expect((await say(club, 'robin', 'prefix ?')).changes).toEqual([{ change: 'prefix', room: 'paddock', prefix: '?' }]);
    for (const bad of ['prefix abc', 'prefix !!!!', 'prefix <', 'prefix']) expect((await say(club, 'robin', bad)).changes).toEqual([]);
    expect((await say(club, 'robin', 'leave')).changes).toEqual([]);
    expect((await say(club, 'robin', '1')).changes).toEqual([{ change: 'leave room', room: 'paddock' }]);
  });
  it('gets the lines that did not fit', async () => {
    const club = await demoClub();
    const more = await import('../../commands/house/more.js');
    const context = { ...club.context('robin'), conversation: { rest: ['one', 'two'], choices: [] } };
    const { dispatch } = await import('../../commands/dispatch.js');
    expect(more.more.word).toBe('more');
    expect((await dispatch('more', context)).answers[0]?.continued).toEqual(['one', 'two']);
  });
});
