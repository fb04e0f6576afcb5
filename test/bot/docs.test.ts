import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { pages } from '../../bot/docs/pages.js';

const top = join(import.meta.dirname, '../..');

describe('generated pages', () => {
  it('are what the code would write today: if not, run npm run docs', async () => {
    const made = await pages(top);
    expect([...made.keys()]).toEqual([
      'README.md',
      'core/REFERENCE.md',
      'commands/REFERENCE.md',
      'bot/docs/CONVERSION.md',
      'bot/docs/chart.png',
    ]);
    for (const [path, text] of made) {
      const there = readFileSync(join(top, path));
      if (typeof text === 'string') expect(there.toString('utf8'), path).toBe(text);
      else expect(there.equals(text), path).toBe(true);
    }
  });
});
