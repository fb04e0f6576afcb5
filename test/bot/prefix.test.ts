/** The prefix of a room: what is one, how it may be typed, and that lines which the bot suggests begin with it. */
import { afterAll, describe, expect, it } from 'vitest';
import { Session } from '../../bot/console/session.js';
import { consoleWorld } from '../../bot/console/world.js';
import { createRenderer } from '../../bot/render/renderer.js';
import { renderReply } from '../../bot/render/reply.js';
import { readSettings, SettingsRefused } from '../../bot/settings.js';
import { withoutPrefix } from '../../bot/work/addressed.js';
import { Work } from '../../bot/work.js';
import { answer } from '../../commands/answer.js';
import { littleDispatch, quiet } from '../simulation/bot.js';
import { chat, club, paddock, robin } from './club.js';
import { realClub, said, withCar } from './realClub.js';
import { freshFolder, opened } from './records/fresh.js';

describe('typed with another width, it is the same prefix', () => {
  it.each([
    ['！show a', '!', 'show a'],
    ['！ show a\n!show b', '!', 'show a\nshow b'],
    ['!show a', '！', 'show a'],
    ['％％show a', '%%', 'show a'],
    ['？show a', '?', 'show a'],
    ['!！', '!', undefined],
    ['！！show a', '!', undefined],
    ['‼show a', '!', undefined],
    ['i', '!', undefined],
    ['', '!', undefined],
  ])('%j with %s', (body, prefix, text) => {
    expect(withoutPrefix(body, prefix)).toBe(text);
  });
  it('in a room, where it was set so, and in the console', async () => {
    const it = await club();
    expect(await it.ask(paddock, robin, '！show a')).toEqual(['ok show a']);
    const store = opened();
    const world = consoleWorld(
      store,
      { dispatch: littleDispatch(() => undefined), render: createRenderer({ draw: () => Promise.reject() }, quiet) },
      quiet,
      '!',
    );
    const session = new Session(world, new Work(world), freshFolder(), 'robin');
    for (const line of ['show a', '!show a', '！show a']) expect((await session.say(line)).text).toBe('ok show a');
  });
  it('is kept in its plain width', async () => {
    const it = await realClub();
    await it.ask(paddock, robin, '!prefix ％');
    expect(it.bot.store.database.prepare('SELECT prefix FROM rooms WHERE id = ?').get(paddock)).toEqual({ prefix: '%' });
    expect(await it.ask(paddock, robin, '%units')).toHaveLength(1);
    expect(await it.ask(paddock, robin, '!units')).toEqual([]);
  });
});

describe('a prefix that chat clients keep for themselves', () => {
  it.each(['/', '//', '/!', '／'])('is refused with the reason: %s', async (mark) => {
    const it = await realClub();
    expect(await it.ask(paddock, robin, `!prefix ${mark}`)).toEqual([
      'Many chat clients take a line that begins with / as a command of their own, so that it never comes to me.\n1 !prefix !',
    ]);
    expect(it.bot.store.database.prepare('SELECT prefix FROM rooms WHERE id = ?').get(paddock)).toEqual({ prefix: null });
    expect(() => readSettings({ environment: { STUBAXLE_PREFIX: mark }, folder: freshFolder() })).toThrow(SettingsRefused);
  });
});

describe('lines that the bot suggests begin with it', () => {
  const suggesting = answer('asked', 'Which?', {
    rows: Array.from({ length: 20 }, (_, k) => ({ label: `row ${k}`, cells: ['1'] })),
    choices: [
      { label: 'set front spring 450', line: 'set front spring 450' },
      { label: 'record it', line: 'set rear spring 450' },
    ],
    next: [
      { label: 'undo', line: 'undo' },
      { label: 'why', line: 'why ride rate' },
      { label: 'draw it', line: 'draw ride rate' },
    ],
  });
  it('in text and HTML; what a number stands for has none', () => {
    const alone = { ...suggesting, rows: [] };
    const { body, html, choices } = renderReply({ answers: [alone] }, { prefix: '%<' });
    expect(body).toBe('Which?\n1 %<set front spring 450\n2 record it\n3 %<undo   4 %<why   5 draw it');
    expect(html).toContain('1 %&lt;set front spring 450');
    expect(html).toContain('3 %&lt;undo');
    expect(choices).toEqual([...alone.choices, ...alone.next]);
    expect(renderReply({ answers: [suggesting] }, { prefix: '%<' })).toMatchObject({
      body: expect.stringMatching(/\n%<more: [^\n]+$/),
      html: expect.stringMatching(/<em>%&lt;more: [^<]+<\/em>/),
    });
  });
  it('and with none where none is needed', () => {
    expect(renderReply({ answers: [suggesting] }).body).toMatch(/\nmore: [^\n]+$/);
    expect(renderReply({ answers: [{ ...suggesting, rows: [] }] }).body).toContain('1 set front spring 450\n');
  });
  // Lines that answer with choices, suggestions, a sample line, a line inside a sentence, or a page of help.
  const lines = [
    'help',
    'help set',
    'help front spring',
    'help ride frequency',
    'help measure tire rate',
    'hello',
    'units',
    'set front spring 450',
    'front spring 480',
    'set spring 480',
    'undo banana',
    'nonsense',
    'try rear spring 650',
    'history 1',
    'show everything',
    'rear ride frequency',
    'tire 245/40R17 wheel 17x8 vs 225/45R17 wheel 17x7',
    'springs alone are 60% front, what front bar for 70% front',
    'keep as dry',
    'kep as dry',
    'box',
    'what should i change',
    'why rear ride frequency',
    'doubt',
    'rear ride frequency vs front ride frequency',
    'find front spring for 2 hz',
  ];
  let found = 0;
  afterAll(() => expect(found).toBeGreaterThan(30));
  it.each(lines)('%s', async (line) => {
    const [inRoom, alone] = [await withCar(), await withCar()];
    for (const one of [inRoom, alone]) await one.ask(chat, robin, 'set front spring 425\nkeep as dry\nset front spring 430');
    const event = await said(inRoom, paddock, robin, `!${line}`);
    const shown = inRoom.replies(paddock, event)[0];
    const [room, direct] = [String(shown?.content.body).replaceAll('\u2060', ''), (await alone.ask(chat, robin, line))[0] ?? ''];
    // Those that can be typed are found by their numbers, by two spaces before them, and by a colon.
    const typed = (text: string): readonly string[] =>
      [
        ...text.matchAll(
          /(?:^\d+ |^ {2}|: )((?:!)?(?:set|show|try|why|help|undo|history|keep|units|words|save|tire|what|rename|draw|doubt|compare|find|i have|more)\b[^\n]*)/gm,
        ),
      ].map(([, found]) => found ?? '');
    expect(typed(direct).filter((found) => found.startsWith('!'))).toEqual([]);
    expect(room).not.toContain('Something broke');
    expect(typed(room)).toHaveLength(typed(direct).length);
    found += typed(room).length;
    expect(typed(room).filter((found) => !found.startsWith('!') && !/^(?:help|set|undo|keep): /.test(found))).toEqual([]);
    // The same is said, but for the prefix and where lines are broken for it.
    const plain = (text: string) =>
      text
        .replaceAll('!', '')
        .replace(/more: [^\n<]+/, '')
        .replace(/\s+/g, ' ')
        .trim();
    expect(plain(room).slice(0, 60)).toBe(plain(direct).slice(0, 60));
  });
});
