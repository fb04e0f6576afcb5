import { describe, expect, it } from 'vitest';
import { wordOf } from '../../commands/canonical.js';
import { messagesIn } from '../../commands/help.js';
import { commands } from '../../commands/registry.js';
import { isInput } from '../../core/catalog.js';
import { catalog } from '../../core/stubaxle.js';
import { demoClub } from './demo.js';
import type { Club } from './garage.js';
import { ask, everything, say } from './say.js';

const demo = await demoClub();
/** A line on a club of which nothing is kept: lines of help may change cars. */
async function works(club: Club, line: string, from: string): Promise<void> {
  const { answers } = await say(club, 'robin', line);
  for (const one of answers) expect(['refused', 'beyond'], `${from} -> ${line}: ${everything(one)}`).not.toContain(one.kind);
}

describe('help', () => {
  it('has an index with lines that work and all words of commands', async () => {
    const index = await ask(demo, 'robin', 'help');
    const lines = messagesIn(index);
    expect(lines.flatMap((line) => line.split('\n')).length).toBeGreaterThanOrEqual(8);
    for (const line of lines) await works(await demoClub(), line, 'help');
    for (const { word } of commands) expect(everything(index)).toContain(word);
  });
  for (const { word } of commands)
    it(`tells of ${word}, in lines that work`, async () => {
      const told = await ask(demo, 'robin', `help ${word}`);
      expect(told.kind, everything(told)).toBe('told');
      const club = await demoClub();
      for (const line of messagesIn(told))
        if (line !== 'more') await works(club.people.size > 0 ? await demoClub() : club, line, `help ${word}`);
    }, 60_000);
  it('names the unknown word and a line that works', async () => {
    const told = await ask(demo, 'robin', 'help wibble');
    expect(told.kind).toBe('refused');
    expect(told.headline).toContain('wibble');
    await works(await demoClub(), told.next[0]!.line, 'help wibble');
  });
  it('teaches how to measure a fact, with its caution', async () => {
    const told = await ask(demo, 'robin', 'help measure spring length');
    expect(told.headline).toMatch(/^Measuring the/);
    expect(told.cautions).toHaveLength(1);
  });
});

describe('every entry with words', () => {
  const entries = catalog.entries.filter((entry) => (entry.words?.length ?? 0) > 0);
  it('has a screen of its own, in lines that work', async () => {
    expect(entries.length).toBeGreaterThan(150);
    const club = await demoClub();
    let typed = 0;
    for (const entry of entries) {
      const word = wordOf(entry);
      const told = await ask(club, 'robin', `help ${word}`);
      expect(told.kind, `help ${word}: ${everything(told)}`).toBe('told');
      for (const line of messagesIn(told)) {
        typed += line.split('\n').length;
        // A figure that this car has no facts for is refused with the reason: that is the right answer to its line.
        const { answers } = await say(await fresh(club), 'robin', line);
        for (const one of answers)
          if (isInput(entry))
            expect(one.kind === 'refused' && !/needs|not known/.test(one.headline), `help ${word} -> ${line}: ${everything(one)}`).toBe(
              false,
            );
          else expect(one.kind === 'beyond', `${line}: ${everything(one)}`).toBe(false);
      }
    }
    expect(typed).toBeGreaterThan(300);
  }, 120_000);
});
/** The same club again: copying it is cheaper than telling it anew. */
async function fresh(club: Club): Promise<Club> {
  const { Club: Made } = await import('./garage.js');
  const copy = new Made();
  copy.calculator = club.calculator;
  for (const name of club.people.keys()) copy.join(name);
  // What the copy changes lies over what it was copied from.
  copy.tables = club.tables;
  return copy;
}
