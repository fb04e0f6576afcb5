import { describe, expect, test } from 'vitest';
import { beyond, findBeyond } from '../../commands/beyond.js';
import { stemsOf, vocabularyOf } from '../../commands/language/vocabulary.js';
import { isStop } from '../../commands/reading.js';
import { read } from '../../commands/resolve.js';
import { setting } from './setting.js';

const vocabulary = vocabularyOf(setting.catalog);

describe('what is not built', () => {
  test.each(beyond.map((subject) => [subject.name, subject] as const))('%s: one sentence, and a line that is read', (_, subject) => {
    expect(subject.sentence).toMatch(/^[A-Z].*\.$/);
    expect(isStop(read(subject.line, setting))).toBe(false);
  });
  test('a phrase is of one subject', () => {
    const seen = new Map<string, string>();
    for (const subject of beyond)
      for (const words of subject.words) {
        const key = stemsOf(words).join(' ');
        expect(seen.get(key) ?? subject.name, key).toBe(subject.name);
        seen.set(key, subject.name);
      }
  });
  test('each subject is still reached by some phrase of its own', () => {
    for (const subject of beyond)
      expect(
        subject.words.some((words) => findBeyond(stemsOf(words), vocabulary)?.subject === subject),
        subject.name,
      ).toBe(true);
  });
  test('what the catalogs name is never beyond', () => {
    for (const entry of setting.catalog.entries)
      for (const words of entry.kind === 'structure' ? [] : (entry.words ?? [])) {
        const found = findBeyond(stemsOf(words), vocabulary);
        expect(
          found === undefined || stemsOf(words).length > found.words.split(' ').length ? undefined : found.words,
          words,
        ).toBeUndefined();
      }
  });
});
