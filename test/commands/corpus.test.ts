/** Every line of the corpora, read against the real catalog and commands. */
import { describe, expect, test } from 'vitest';
import { read } from '../../commands/resolve.js';
import { chatLines } from './lines/chat.js';
import { corneringLines } from './lines/cornering.js';
import { languageLines } from './lines/language.js';
import { ownLines } from './lines/own.js';
import { hostileLines, phoneLines } from './lines/phone.js';
import { expand, expected, mismatch } from './reads.js';
import { setting } from './setting.js';

const check = (line: string, want: string) =>
  expect(mismatch(read(expand(line), setting), want, setting) ?? expected(want)).toBe(expected(want));

test('no corpus was lost', () => {
  expect(phoneLines.length).toBe(35);
  expect(hostileLines.length).toBe(18);
  expect(languageLines.length).toBeGreaterThanOrEqual(35);
  expect(corneringLines.length).toBeGreaterThanOrEqual(105);
  expect(ownLines.length).toBeGreaterThanOrEqual(322);
  expect(chatLines.length).toBeGreaterThanOrEqual(366);
});
describe('lines from members', () => {
  test.each(phoneLines)('%s', check);
});
describe('broken and hostile lines', () => {
  test.each(hostileLines.map(([line, , want]) => [line, want] as const))('%s', check);
});
describe('lines of the language page', () => {
  test.each(languageLines)('%s', check);
});
describe('lines of our own', () => {
  test.each(ownLines)('%s', check);
});
describe('lines from the chat', () => {
  test.each(chatLines)('%s', check);
});
describe('lines about bars and corners', () => {
  test.each(corneringLines)('%s', check);
});
