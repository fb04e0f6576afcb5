/** How many changes: what is no number of anything is refused, and a question mark behind a command is no name. */
import { describe, expect, it } from 'vitest';
import { isStop } from '../../commands/reading.js';
import { commands } from '../../commands/registry.js';
import { read } from '../../commands/resolve.js';
import { countOf } from '../../commands/verbs/count.js';
import { Club } from './garage.js';
import { ask, say } from './say.js';
import { setting } from './setting.js';

const springs = async (): Promise<Club> => {
  const club = new Club();
  club.join('robin');
  await say(club, 'robin', 'save my car radish 2000 lb');
  for (const rate of [300, 350, 400]) await say(club, 'robin', `set front spring ${rate} lb/in`);
  return club;
};
const rate = async (club: Club): Promise<string> => (await ask(club, 'robin', 'front spring')).headline;

describe('undo', () => {
  it.each(['99999999999', '201', '0', '-3', '1.5', '1e5', '1,000', '3 4', 'banana', 'all', 'front spring', '2 bananas', '٣', '½'])(
    'of %j is refused with a line that works, and nothing is taken back',
    async (count) => {
      const club = await springs();
      const { answers, changes } = await say(club, 'robin', `undo ${count}`);
      expect(changes).toEqual([]);
      expect(answers).toMatchObject([{ kind: 'refused' }]);
      expect(answers[0]?.headline).toMatch(/^Undo takes a number of changes, from 1 to 200, not |digits is too long/);
      expect(await rate(club)).toContain('400');
    },
  );
  it.each([
    ['undo', '350'],
    ['undo 1', '350'],
    ['undo the last change', '350'],
    ['undo it please', '350'],
    ['undo?', '350'],
    ['undo 2', '300'],
    ['undo the last 2 changes', '300'],
    ['undo twice', '300'],
    ['undo two.', '300'],
  ])('%s', async (line, left) => {
    const club = await springs();
    await say(club, 'robin', line);
    expect(await rate(club)).toContain(left);
  });
});

it.each(['history 99999999999', 'history 0', 'history -3', 'history 1.5', 'back 99999999999', 'back to 0', 'back to -1', 'back to 1.5'])(
  '%s is refused by its number',
  async (line) => {
    const { answers, changes } = await say(await springs(), 'robin', line);
    expect(changes).toEqual([]);
    expect(answers).toMatchObject([{ kind: 'refused', headline: expect.stringMatching(/1 to \d+/) }]);
  },
);

it('counts in words and digits, and gives no count for what is none', () => {
  expect(['', 'the last', '3', 'three changes', 'once', '9'].map((text) => countOf(text, 9))).toEqual([1, 1, 3, 3, 1, 9]);
  expect(['10', '0', 'x', '1 2', '007007007007', '-1', '١'].map((text) => countOf(text, 9))).toEqual(Array(7).fill(undefined));
});

describe('a question mark behind a command', () => {
  // `prefix ?` sets that mark; the others are asked after when it is stuck to them. A question mark itself asks for help.
  const spellings = commands.flatMap(({ word, also }) => [word, ...also]).filter((spelling) => /\p{L}$/u.test(spelling));
  it.each(spellings)('%s?', (spelling) => {
    const [plain, asked, twice] = [spelling, `${spelling}?`, `${spelling}??`].map((line) => {
      const reading = read(line, setting);
      return isStop(reading) ? reading : { ...reading, rest: reading.rest.replace(/\?+$/, '') };
    });
    expect(asked).toEqual(plain);
    expect(twice).toEqual(plain);
  });
  it.each(['history ?', 'car ?', 'units ?', 'share ?', 'undo ?', 'history？'])('%s', (line) => {
    expect(read(line, setting)).toEqual(read(line.replace(/ ?[?？]$/u, ''), setting));
  });
  it('is the mark that is meant, where a mark is told', () => {
    expect(read('prefix ?', setting)).toMatchObject({ verb: 'prefix', rest: '?' });
    expect(read('prefix?', setting)).toMatchObject({ verb: 'prefix', rest: '' });
  });
  it('stays where it ends a question', async () => {
    const club = new Club();
    club.join('sam');
    expect((await ask(club, 'sam', 'car?')).headline).toBe('You have no saved car yet.');
    expect(read('help spring?', setting)).toMatchObject({ verb: 'help' });
  });
});
