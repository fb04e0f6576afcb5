import { describe, expect, it } from 'vitest';
import { commands, registryProblems } from '../../commands/registry.js';
import { show } from '../../commands/verbs/show.js';
import { demoClub } from './demo.js';
import { everything, say } from './say.js';

describe('the registry', () => {
  it('has no problem', () => {
    expect(registryProblems()).toEqual([]);
    expect(commands.length).toBeGreaterThan(30);
  });
  it('notices two commands of one word, a missing example and a long summary', () => {
    const twice = registryProblems([
      show,
      { ...show, word: 'look', also: ['show'], summary: 'x'.repeat(200), examples: [{ line: ' ', does: 'x' }] },
    ]);
    expect(twice).toHaveLength(3);
    expect(twice[0]).toMatch(/"show" means show and look/);
  });
});

/** `more` needs lines that the bot's pages left over: there are none in these tests. */
const needsMore = new Set(['more']);

describe('every example', () => {
  for (const command of commands)
    for (const { line } of command.examples)
      it(`${command.word}: ${line.replace('\n', ' / ')}`, async () => {
        const club = await demoClub();
        const { answers, changes } = await say(club, 'robin', line);
        expect(answers).toHaveLength(line.split('\n').length);
        for (const one of answers)
          expect(needsMore.has(line) || !['refused', 'beyond'].includes(one.kind), `${line}: ${everything(one)}`).toBe(true);
        if (!command.changes && !line.includes('\n')) expect(changes).toEqual([]);
      });
});
