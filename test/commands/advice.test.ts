/** Advice by text: wishes read, answered from the box of the demo car. */
import { describe, expect, test } from 'vitest';
import { wantedOf } from '../../commands/advice/goal.js';
import { goalLines, othersLines } from './lines/parts.js';

const described = (line: string): string => {
  const it = wantedOf(line);
  if (!it) return 'none';
  if (it.wish === 'softer' || it.wish === 'stiffer') return it.wish;
  const phase = `${it.phase}${it.hardness === undefined ? '' : ` ${it.hardness} g`}`;
  return [`${it.wish} ${it.towards > 0 ? '+' : '-'}`, phase, ...(it.turn ? [it.turn] : [])].join(' | ');
};
describe('wishes', () => {
  test('are enough', () => expect(goalLines.length).toBeGreaterThanOrEqual(40));
  test.each(goalLines)('%s', (line, want) => expect(described(line)).toBe(want));
  test.each(othersLines)('none: %s', (line) => expect(described(line)).toBe('none'));
});
