/** Whether a line calls the bot or speaks of it. */
import { describe, expect, it } from 'vitest';
import { asks, namingIn } from '../../commands/language/calling.js';
import { commands } from '../../commands/registry.js';
import { catalog } from '../../core/stubaxle.js';

/** With the name as it stands in the line. */
const naming = (line: string) => {
  const [, before = '', name = '', after = ''] = /^(.*?)(@?stubaxle(?:['’]s)?)(.*)$/isu.exec(line) ?? [];
  return namingIn(before, name, after);
};

describe('a call', () => {
  it.each([
    ['stubaxle show everything', 'show everything'],
    ['stubaxle, show everything', 'show everything'],
    ['Stubaxle: set front spring 450', 'set front spring 450'],
    ['stubaxle - front spring', 'front spring'],
    ['stubaxle! help', 'help'],
    ['@stubaxle set front spring 450', 'set front spring 450'],
    ['hey stubaxle set front spring 450', 'set front spring 450'],
    ['Hey, stubaxle, set front spring 450', 'set front spring 450'],
    ['ok now stubaxle undo', 'undo'],
    ['good morning stubaxle', ''],
    ['stubaxle', ''],
    ['Stubaxle?', ''],
    ['@stubaxle', ''],
    ['stubaxle!!', ''],
    ['stubaxle my front spring is 450', 'my front spring is 450'],
    ['stubaxle can you show me the front spring', 'can you show me the front spring'],
    ['stubaxle does it rub', 'does it rub'],
    ['stubaxle will the 245/40R17 fit', 'will the 245/40R17 fit'],
    ['stubaxle is there a stiffer bar', 'is there a stiffer bar'],
    ['stubaxle how stiff is 450', 'how stiff is 450'],
    ['stubaxle springs 450', 'springs 450'],
    ['stubaxle 245/40R17 vs 255/40R17', '245/40R17 vs 255/40R17'],
    ['stubaxle, said and done: undo', 'said and done: undo'],
  ])('%s', (line, text) => {
    expect(naming(line)).toEqual({ leads: true, spokenOf: false, text });
  });
  it.each(['show a, stubaxle', 'show everything stubaxle', 'could you, stubaxle, show everything', 'set front spring 450 lbs stubaxle'])(
    'as an aside: %s',
    (line) => {
      expect(naming(line)).toMatchObject({ leads: false, spokenOf: false });
    },
  );
  it.each([...new Set(commands.flatMap(({ word, also }) => [word, ...also]))].filter((word) => /\p{L}/u.test(word)))(
    "with a command's words: stubaxle %s",
    (words) => {
      expect(naming(`stubaxle ${words}`)).toMatchObject({ spokenOf: false });
    },
  );
  it("with the catalogs' words", () => {
    const taken = catalog.entries.flatMap(({ words = [] }) => words).filter((words) => naming(`stubaxle ${words} 450`).spokenOf);
    expect(taken).toEqual([]);
  });
});

describe('a remark', () => {
  it.each([
    'stubaxle said my spring is 480',
    'stubaxle says my front spring is 480',
    'Stubaxle told me to set front spring 480',
    'stubaxle thinks my front spring is 480',
    'stubaxle just told sam my front spring is 480',
    'stubaxle actually recommends 480 front springs',
    'stubaxle suggested front spring 480',
    'stubaxle gave me front spring 480',
    'stubaxle is right, my front spring is 480',
    'stubaxle was wrong',
    'stubaxle has my front spring as 480',
    'stubaxle had 480',
    'stubaxle can work out my front spring is 480',
    "stubaxle doesn't know my front spring is 480",
    'stubaxle and sam say my front spring is 480',
    "stubaxle's answer was front spring 480",
    '@stubaxle said my front spring is 480',
    'hey stubaxle said my front spring is 480',
    'stubaxle rocks',
  ])('that begins with the name: %s', (line) => {
    expect(naming(line)).toMatchObject({ leads: true, spokenOf: true });
  });
  it.each([
    'I asked stubaxle yesterday, my front spring is 480',
    'I asked stubaxle yesterday if my front spring is 480',
    'yesterday, stubaxle said my front spring is 480',
    'thanks stubaxle, my front spring is 480',
    'my front spring is 480 says stubaxle',
    'my front spring is 480 according to stubaxle',
    'my front spring is 480, as stubaxle said',
    'sam and stubaxle set front spring 480',
    'use stubaxle to set front spring 480',
  ])('%s', (line) => {
    expect(naming(line)).toMatchObject({ leads: false, spokenOf: true });
  });
});

it('asks with a question mark, or a word that asks', () => {
  expect(['is it 480?', 'what is it', "what's it", 'how stiff', '480？'].map(asks)).toEqual(Array(5).fill(true));
  expect(['my spring is 480', 'somewhat stiff', 'ok'].map(asks)).toEqual([false, false, false]);
});
