import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { PassThrough } from 'node:stream';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { ApartError } from '../../bot/apart.js';
import { writeFile } from '../../bot/console/files.js';
import { consoleWorld } from '../../bot/console/world.js';
import { runConsole } from '../../bot/console.js';
import { openDatabase, type Store } from '../../bot/records/database.js';
import { messageSchema } from '../../bot/render/json.js';
import { createRenderer } from '../../bot/render/renderer.js';
import { renderReply } from '../../bot/render/reply.js';
import type { Dispatch, Log } from '../../bot/work/world.js';
import { Work } from '../../bot/work.js';
import { type Answer, answer } from '../../commands/answer.js';
import type { Reply } from '../../commands/command.js';

let folder: string;
let store: Store;
let logged: string[];
const log: Log = { info: (_, text) => logged.push(text), warn: (_, text) => logged.push(text), error: (_, text) => logged.push(text) };
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'stubaxle-console-'));
  store = openDatabase(join(folder, 'console.db'));
  logged = [];
});
afterEach(() => {
  store.close();
  rmSync(folder, { recursive: true });
});

const chart = { title: 't', x: { label: 'x', unit: '' }, y: { label: 'y', unit: '' }, series: [], marks: [], words: 'from 1 to 2' };
const reply = (...answers: Answer[]): Reply => ({ answers, changes: [], read: [], seen: [] });
/** Commands of this test alone: what the console does with an answer is looked at here, not what is answered. */
const dispatch: Dispatch = async (text, { asker, room, garage }) => {
  if (text === 'silence') return reply();
  if (text === 'break') throw new Error('broken');
  if (text === 'draw') return reply(answer('told', 'drawn', { chart }));
  if (text === 'ask')
    return reply(
      answer('asked', 'which?', {
        choices: [
          { label: 'one', line: 'first' },
          { label: 'two', line: 'second' },
        ],
      }),
    );
  if (text === 'export') return { ...reply(answer('told', 'Here is your data.')), changes: [{ change: 'export me' }] };
  if (text === 'who') return reply(answer('told', garage.members.map((m) => m.name).join(', ')));
  if (text === 'long') return reply(answer('told', 'long', { notes: Array.from({ length: 30 }, (_, at) => `note ${at}`) }));
  return reply(answer('told', `${asker.name} says "${text}" in ${room.direct ? 'direct' : 'club'}`));
};
const picture = Buffer.from([1, 2, 3]);
const render = createRenderer({ draw: async ({ words }) => ({ png: picture, width: 4, height: 3, words }) }, log);

async function typed(
  lines: string,
  { json = false, as = 'robin', sitting = false, signal = new AbortController().signal } = {},
): Promise<string> {
  const input = Object.assign(new PassThrough(), sitting ? { isTTY: true, setRawMode: () => undefined } : {});
  const output = Object.assign(new PassThrough(), sitting ? { isTTY: true, columns: 80 } : {});
  let text = '';
  output.on('data', (d: Buffer) => {
    text += d.toString();
  });
  const world = consoleWorld(store, { dispatch, render }, log, '!');
  const ended = runConsole({
    world,
    work: new Work(world),
    input,
    output,
    environment: {},
    json,
    as,
    folder,
    welcome: ['Welcome.'],
    signal,
  });
  input.end(lines);
  await ended;
  return text;
}
const messages = async (lines: string) => {
  const text = await typed(lines, { json: true });
  expect(text === '' || text.endsWith('\n')).toBe(true);
  return text
    .split('\n')
    .slice(0, -1)
    .map((line) => messageSchema.parse(JSON.parse(line)));
};

describe('a script', () => {
  test('shows each line with who said it, and its answer; blank lines are passed over', async () => {
    expect(await typed('hello\n\n  \nhello again\n')).toBe(
      'robin> hello\nrobin says "hello" in club\n\nrobin> hello again\nrobin says "hello again" in club\n\n',
    );
  });
  test('needs no prefix, and takes one', async () => {
    expect(await typed('!hello\nroom direct\nhello\n!hello\n')).toContain(
      'robin (direct)> hello\nrobin says "hello" in direct\n\nrobin (direct)> !hello\nrobin says "hello" in direct',
    );
  });
  test('changes who speaks and where; a new name joins the club', async () => {
    const text = await typed('as Sam\nhello\nroom direct\nwho\nas robin\nroom club\nwho\nas <b>\nroom nowhere\n');
    expect(text).toContain('sam> hello\nsam says "hello" in club');
    expect(text).toContain('sam (direct)> who\nsam\n');
    expect(text).toContain('robin> who\nrobin, sam\n');
    expect(text).toContain('A name has 1 to 24 letters');
    expect(text).toContain('The console has two rooms');
  });
  test('answers a question by number, each speaker their own', async () => {
    const text = await typed('ask\nas sam\n2\nas robin\n2\n');
    expect(text).toContain('1 one\n2 two\n');
    expect(text).toContain('sam> 2\nsam says "2" in club');
    expect(text).toContain('robin> 2\nrobin says "second" in club');
  });
  test('ends at quit, and at a last line without a line feed', async () => {
    expect(await typed('quit\nhello\n')).toBe('robin> quit\nGoodbye.\n\n');
    expect(await typed('hello')).toBe('robin> hello\nrobin says "hello" in club\n\n');
    expect(await typed('hello\r\n')).toBe('robin> hello\nrobin says "hello" in club\n\n');
  });
  test('writes charts and data as files that are named, never over one another', async () => {
    const text = await typed('draw\ndraw\nexport\n');
    for (const name of ['chart-1.png', 'chart-2.png', 'data-of-robin-1.json']) {
      expect(text).toContain(name);
      expect(existsSync(join(folder, name))).toBe(true);
    }
    expect(readFileSync(join(folder, 'chart-1.png'))).toEqual(picture);
    expect(JSON.parse(readFileSync(join(folder, 'data-of-robin-1.json'), 'utf8'))).toMatchObject({ format: 'stubaxle member export' });
  });
  test('goes on after a line that broke, with a reference, and the log says nothing of the line', async () => {
    const text = await typed('break\nhello\n');
    expect(text).toMatch(/Something broke on my side.*[0-9A-F]{8}\n\n/s);
    expect(text).not.toContain('Reference to quote');
    expect(text).toContain('robin says "hello"');
    expect(logged).toEqual(['a line could not be answered']);
  });
  test('cannot steer the terminal that shows it', async () => {
    expect(await typed('\u001b[31mred\u0007\n')).not.toMatch(/[\u001b\u0007]/);
  });
});

describe('JSON lines', () => {
  test('are one for each line of input, silence, blank lines and the own words too', async () => {
    const all = await messages('hello\nsilence\n\nas sam\nask\nlong\nbreak\n');
    expect(all.map((m) => [m.as, m.said, m.silent])).toEqual([
      ['robin', 'hello', false],
      ['robin', 'silence', true],
      ['robin', '', true],
      ['sam', 'as sam', false],
      ['sam', 'ask', false],
      ['sam', 'long', false],
      ['sam', 'break', false],
    ]);
    expect(all[0]?.answers).toMatchObject([{ kind: 'told', headline: 'robin says "hello" in club' }]);
    expect(all[1]).toMatchObject({ answers: [], text: '', more: 0, files: [] });
    expect(all[4]?.answers).toMatchObject([
      {
        kind: 'asked',
        choices: [
          { label: 'one', line: 'first' },
          { label: 'two', line: 'second' },
        ],
      },
    ]);
    expect(all[5]?.more).toBe(23);
    expect(all[6]?.answers).toMatchObject([{ kind: 'refused', reference: expect.stringMatching(/^[0-9A-F]{8}$/) }]);
  });
  test('name the files', async () => {
    expect((await messages('draw\n'))[0]?.files).toEqual([join(folder, 'chart-1.png')]);
  });
  test('of no input are none', async () => {
    expect(await messages('')).toEqual([]);
  });
});

describe('somebody who sits at it', () => {
  test('is welcomed, prompted as who they are, and gets colour', async () => {
    const text = await typed('hello\nas sam\n', { sitting: true });
    expect(text).toContain('Welcome.\n');
    expect(text).toContain('robin> ');
    expect(text).toContain('sam> ');
    expect(text).toContain('\u001b[1m');
  });
  test('is let go by a signal while waiting for input', async () => {
    const stopping = new AbortController();
    const input = new PassThrough();
    const world = consoleWorld(store, { dispatch, render }, log, '!');
    const running = runConsole({
      ...{ world, work: new Work(world), input, output: new PassThrough(), environment: {}, json: false, as: 'robin', folder, welcome: [] },
      signal: stopping.signal,
    });
    setImmediate(() => stopping.abort());
    await running;
  });
});

test('a chart that cannot be drawn is said in words, and logged', async () => {
  const failing = createRenderer(
    {
      draw: async () => {
        throw new ApartError('slow');
      },
    },
    log,
  );
  const said = await failing(reply(answer('told', 'drawn', { chart })), {
    asker: { id: 'r', name: 'r', preferences: { units: 'us', decimalMark: '.' } },
    room: { id: 'c', direct: true },
  });
  expect(said.body).toBe('drawn\nThe picture could not be drawn. from 1 to\n2');
  expect(said.chart).toBeUndefined();
  expect(said.html).toBe(renderReply(reply(answer('told', 'drawn', { notes: ['The picture could not be drawn. from 1 to 2'] }))).html);
  expect(logged).toEqual(['a chart could not be drawn']);
});
test('files are numbered', () => {
  expect([1, 2].map(() => writeFile(join(folder, 'new'), 'x', 'txt', 'y'))).toEqual([
    join(folder, 'new', 'x-1.txt'),
    join(folder, 'new', 'x-2.txt'),
  ]);
});
