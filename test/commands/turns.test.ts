import { describe, expect, test } from 'vitest';
import { plainer, turns } from '../../commands/language/turns.js';

describe('turns of phrase', () => {
  test.each(turns.map(({ line, becomes }) => [line, becomes] as const))('%s', (line, becomes) => {
    expect(plainer(line).text).toBe(becomes);
  });
  test('each does what its line shows, and is needed for it', () => {
    for (const { said, line } of turns) expect(said.test(line), line).toBe(true);
  });
  test.each([
    'set front spring 450',
    'set front camber -2',
    'why rear ride frequency',
    'keep as which end',
    'calc 2 * 450 lb/in',
    'front camber at ride height',
    'compare dry with wet',
  ])('leaves %s alone', (line) => expect(plainer(line)).toEqual({ text: line, echoes: [] }));
  test('says what it assumed', () => {
    expect(plainer('balance on throttle').echoes).toEqual([expect.stringContaining('0.1 g')]);
    expect(plainer('balance on throttle 0.2 g').echoes).toEqual([]);
  });
  // One pass and no pattern inside a repeated pattern: the longest line that is read, of what a pattern looks for, takes no time to speak of.
  test('long lines of anything come back', () => {
    for (const piece of [
      '22 mm to ',
      'which end ',
      'why is a ',
      'left endlink 5 ',
      'move the endlink from ',
      '1 turn up on ',
      'against g ',
    ])
      expect(plainer(piece.repeat(40).slice(0, 400)).text.length).toBeGreaterThan(0);
  });
});
