/** Text that came from people, made fit to show: nothing invisible, nothing that a client turns into a link, a mention or markup. */
import { units } from '../../commands/units.js';

/** Control characters, direction marks and zero-width characters: with them a name can pose as another, or a terminal can be steered. */
const hidden = /(?!\n)[\p{Cc}\p{Cf}\p{Default_Ignorable_Code_Point}]/gu;
/** A letter with more marks on it than any language stacks is there to spill over its neighbours. */
const pile = /(\p{M}{3})\p{M}+/gu;

/** One text without hidden characters; line breaks are kept. Lone surrogates, which no encoding can carry, become U+FFFD. */
export const clean = (text: string): string =>
  text
    .replace(/\p{Surrogate}/gu, '\ufffd')
    .replace(/[\t\u2028\u2029]/gu, ' ')
    .replace(hidden, '')
    .replace(pile, '$1');

/** A word joiner: takes no room and ends what a client would read as a link. */
const joint = '\u2060';
/**
 * The same text, in which a chat client finds no link and nobody to mention: `@robin:example.org`, `#room:example.org`, `@room`,
 * `https://...`, `matrix:u/...` and bare domains are broken by a word joiner, which shows as nothing. (Clients make pills of such text
 * on their own, in the plain body too.)
 */
export const defang = (text: string): string =>
  text
    .replace(/(?<=[@#!+$])(?=[^\s:]*:\S|room\b)/giu, joint)
    .replace(/(?<=\p{L}):(?=\/\/|[a-z]+\/)/giu, `:${joint}`)
    .replace(/(?<=[\p{L}\p{N}])\.(?=\p{L}{2})/gu, `.${joint}`);

const entities: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;', "'": '&#39;' };
export const escapeHtml = (text: string): string => text.replace(/[&<>"']/g, (c) => entities[c] ?? c);

const twoColumns =
  /[\u1100-\u115f\u2e80-\u303e\u3041-\u33ff\u3400-\u4dbf\u4e00-\u9fff\ua000-\ua4cf\uac00-\ud7a3\uf900-\ufaff\ufe30-\ufe4f\uff00-\uff60\uffe0-\uffe6]|\p{Emoji_Presentation}|[\u{20000}-\u{3fffd}]/u;
/** How many columns of a fixed-width type the text takes: wide characters two, combining marks none. */
export function columnsOf(text: string): number {
  let columns = 0;
  for (const character of text) columns += /\p{M}|\u2060/u.test(character) ? 0 : twoColumns.test(character) ? 2 : 1;
  return columns;
}
/** The text with spaces after it, up to a width in columns. */
export const padded = (text: string, width: number): string => text + ' '.repeat(Math.max(0, width - columnsOf(text)));

/** Breaks what has no space in it; a wide character that would stick out goes to the next piece. */
function pieces(word: string, width: number): string[] {
  const found: string[] = [];
  let piece = '';
  for (const character of word) {
    if (piece !== '' && columnsOf(piece + character) > width) {
      found.push(piece);
      piece = '';
    }
    piece += character;
  }
  return piece === '' ? found : [...found, piece];
}
const unitNames = Object.values(units)
  .flat()
  .map(({ shown }) => shown)
  .filter((shown) => shown !== '')
  .sort((a, b) => b.length - a.length)
  .map((shown) => shown.replace(/[.*+?^${}()|[\]\\/]/g, '\\$&'))
  .join('|');
const beforeUnit = new RegExp(`(?<=[\\d½¼¾]) (?=(?:${unitNames})(?:[\\s,.;:)?]|$))| (?=± ?\\d)|(?<=±) (?=\\d)`, 'gu');
/** A number is held to its unit and its plus-or-minus by spaces that no line breaks at. */
export const heldTogether = (text: string): string => text.replace(beforeUnit, '\u00a0');
/**
 * A paragraph broken at spaces into lines of at most `width` columns. Spaces that hold a number to its unit or its plus-or-minus are kept
 * together where the line allows. Lines after the first begin with `hang`.
 */
export function wrapped(text: string, width: number, hang = ''): string[] {
  const lines: string[] = [];
  let line = '';
  const bound = heldTogether(text);
  const put = (word: string): void => {
    const start = lines.length === 0 ? '' : hang;
    const room = width - columnsOf(start);
    const longer = line === '' ? word : `${line} ${word}`;
    if (columnsOf(longer) <= room) line = longer;
    else if (columnsOf(word) > room && word.includes('\u00a0')) for (const part of word.split('\u00a0')) put(part);
    else if (line !== '') {
      lines.push(start + line);
      line = '';
      put(word);
    } else {
      const [first = '', ...others] = pieces(word, room);
      lines.push(start + first);
      for (const other of others) put(other);
    }
  };
  for (const word of bound.split(/ +/)) if (word !== '') put(word);
  if (line !== '') lines.push((lines.length === 0 ? '' : hang) + line);
  return lines.map((l) => l.replaceAll('\u00a0', ' '));
}
