/**
 * Reads one line of a member against the catalogs, the commands and the names that can be seen here. Pure and synchronous.
 * The way through: tidied (language/tidy), cut into tokens (scan), a verb found (language/verb), words made atoms (language/atoms), sections cut
 * (language/sections), each cut into spans that name entries (language/spans), settled and put together (language/items).
 */

import { isInput } from '../core/catalog.js';
import { beyondStop, findBeyond } from './beyond.js';
import { stemsIn } from './language/atoms.js';
import { readItems } from './language/items.js';
import { readNames } from './language/naming.js';
import type { Setting } from './language/setting.js';
import type { Asked } from './language/spoken.js';
import { longestLine, tidy } from './language/tidy.js';
import { plainer } from './language/turns.js';
import { asksToFind, needsToHave, type VerbFound, verbOf } from './language/verb.js';
import { vocabularyOf } from './language/vocabulary.js';
import { type Item, isStop, type Reading, type Stop } from './reading.js';
import { mostDigits, scan, type Token } from './scan.js';
import { meaningsOf } from './units.js';
import { placeWords, stem } from './words.js';

export type { Setting } from './language/setting.js';
export { writeItem, writeItems, writeReading, writeSubject } from './language/write.js';

const example = 'tire 245/40R17 vs 255/40R17';
const restOf = (text: string, tokens: readonly Token[], from: number): string => {
  const token = tokens[from];
  return token ? text.slice(token.at) : '';
};

/**
 * The reading of a line, or why there is none: two readings that differ in the answer are asked, never guessed.
 * @param line as it was typed, without prefix or mention
 */
export function read(line: string, setting: Setting): Reading | Stop {
  const text = tidy(line);
  if (text === undefined)
    return { stop: 'refused', sentence: `That line is too long: I read up to ${longestLine} characters.`, line: example };
  if (text === '') return { stop: 'refused', sentence: 'Nothing to read.', line: example };
  const digits = /\d{16,}/.exec(text.replace(/[.,]/g, ''));
  if (digits)
    return { stop: 'refused', sentence: `A number of ${digits[0].length} digits is too long: I read up to ${mostDigits}.`, line: example };

  const isVerbatim = verbOf(scan(text), setting, vocabularyOf(setting.catalog)).command?.verbatim === true;
  const { text: plain, echoes } = isVerbatim ? { text, echoes: [] } : plainer(text);
  for (const said of new Set([text, plain])) {
    const hearing = setting.commands.find((command) => command.hears?.(said));
    if (hearing) return { verb: hearing.word, sides: [], tried: [], rest: said, echoes: [], mended: false, names: [said] };
  }
  const reading = sure(readPlain(plain, setting), setting);
  return isStop(reading) || echoes.length === 0 ? reading : { ...reading, echoes: [...echoes, ...reading.echoes] };
}
/** Only lines that read are offered: what would be asked again, or refused, is left out. */
function sure(got: Reading | Stop, setting: Setting): Reading | Stop {
  if (!isStop(got)) return got;
  const reads = (line: string) => !isStop(readPlain(plainer(line).text, setting));
  if (got.stop === 'asked') {
    const choices = got.choices.filter((choice) => reads(choice.line));
    // A question whose every answer fell away is none.
    if (choices.length === 0 && got.choices.length > 0)
      return { stop: 'refused', sentence: got.sentence.replace(/\. Did you mean:$/, '.'), line: 'help' };
    return { ...got, choices };
  }
  return got.line === undefined || reads(got.line) ? got : { ...got, line: 'help' };
}
/** `history?`, `units ?`: a question mark behind a command is no name, and none of its text; of a text it is a part when it stands apart (`prefix ?`). */
function unquestioned(
  text: string,
  tokens: readonly Token[],
  { command, from }: VerbFound,
): { readonly text: string; readonly tokens: readonly Token[] } {
  const last = tokens.findLastIndex((token) => !(token.is === 'mark' && token.text === '?'));
  const mark = tokens[last + 1];
  const whole = { text, tokens };
  if (mark === undefined || command === undefined || from === 0 || last + 1 < from) return whole;
  const behindWord = last + 1 === from;
  if (command.takes === 'text' ? !behindWord || text[mark.at - 1] === ' ' : command.takes === 'items' && !behindWord) return whole;
  return { text: text.slice(0, mark.at).trimEnd(), tokens: tokens.slice(0, last + 1) };
}
function readPlain(typed: string, setting: Setting): Reading | Stop {
  const scanned = scan(typed);
  const vocabulary = vocabularyOf(setting.catalog);
  const found = verbOf(scanned, setting, vocabulary);
  const { text, tokens } = unquestioned(typed, scanned, found);
  const needed = needsToHave(tokens);
  if (needed !== undefined && setting.commands.some(({ word }) => word === 'find')) {
    const goal = readItems(
      { verb: 'find', changes: false, topic: false, text, tokens: tokens.slice(needed), names: [], goalOnly: true },
      setting,
    );
    if (!isStop(goal)) return { ...goal, sides: withSought(goal.sides, soughtIn(tokens, needed, text, setting)) };
  }
  const { command, from } = found;
  const rest = restOf(text, tokens, from);
  const echoes = found.echo ? [found.echo] : [];
  const bare: Omit<Reading, 'names'> = { verb: command?.word, sides: [], tried: [], rest, echoes, mended: found.echo !== undefined };
  switch (command?.takes) {
    case 'nothing':
      return { ...bare, names: [] };
    case 'text': {
      // "how do i set the endlinks": help has nothing to say of what is not built.
      const beyond =
        command.word === 'help' && !/^(?:help|\?)/.test(text.toLowerCase()) ? findBeyond(stemsIn(tokens), vocabulary) : undefined;
      if (beyond) return beyondStop(beyond.subject);
      return { ...bare, names: rest === '' ? [] : [rest] };
    }
    case 'names':
      return readNames(bare, tokens.slice(from), rest, setting, vocabulary);
  }
  const asked: Asked = {
    verb: command?.word,
    changes: command?.changes ?? false,
    topic: command?.group === 'topic',
    text: rest,
    tokens: tokens.slice(from),
    names: [],
    ...(found.echo ? { echo: found.echo } : {}),
  };
  if (asked.topic) return replacing(readTopic(asked, text, tokens, from, setting), text);
  if (asked.verb === 'save') return readNames(bare, tokens.slice(from), rest, setting, vocabulary);
  if (asked.tokens.length === 0 && asked.verb !== undefined && asked.verb !== 'set' && asked.verb !== 'find' && asked.verb !== 'compare')
    return { ...bare, names: [] };
  const reading = readItems(asked, setting);
  // `what ... for ...` that finds nothing is a plain question after all.
  if (isStop(reading) && asked.verb === 'find' && asksToFind(tokens) && setting.commands.some(({ word }) => word === 'show')) {
    const plain = readItems({ ...asked, verb: 'show' }, setting);
    if (!isStop(plain)) return plain;
  }
  return replacing(reading, text);
}
const takesThePlace = /\b(?:instead of|in place of|rather than)\b/i;
const replacing = (reading: Reading | Stop, text: string): Reading | Stop =>
  !isStop(reading) && reading.sides.length === 2 && takesThePlace.test(text) ? { ...reading, replacing: true } : reading;

/** `what rear bar would mine need to have ...`: what is to be changed, where the line says it. */
function soughtIn(tokens: readonly Token[], needed: number, text: string, setting: Setting): readonly Item[] {
  const end = tokens.findIndex(
    (token, n) => n > 0 && n < needed && token.is === 'word' && /^(?:would|do|does|will|must|should)$/.test(token.text),
  );
  if (end < 2) return [];
  const reading = readItems({ verb: 'forget', changes: false, topic: false, text, tokens: tokens.slice(1, end), names: [] }, setting);
  return isStop(reading) ? [] : reading.sides.flatMap(({ items }) => items).filter(({ entry }) => isInput(entry));
}
const withSought = (sides: Reading['sides'], items: readonly Item[]): Reading['sides'] =>
  items.length === 0
    ? sides
    : sides.length === 0
      ? [{ items, subjects: [] }]
      : sides.map((side, n) => (n === 0 ? { ...side, items } : side));

/** Whether a topic's word and the next one belong to one name of the catalogs: `corner weight`, `bar rate`, but not `corner turnip`. */
function belongsTo(topic: string, tokens: readonly Token[], from: number, setting: Setting): boolean {
  const next = tokens.slice(from).find((token) => !(token.is === 'word' && placeWords.has(token.text)));
  const { holding, phrases } = vocabularyOf(setting.catalog);
  if (next?.is === 'amount' && next.unit !== undefined && !next.soft) {
    // `gear 6500 rpm`: no gear is told in rpm.
    const dimensions = meaningsOf(next.unit).map(({ dimension }) => dimension);
    const named = (holding.get(stem(topic)) ?? []).flatMap((key) => phrases.get(key) ?? []);
    return named.some(({ entry }) => isInput(entry) && entry.dimension !== undefined && dimensions.includes(entry.dimension));
  }
  if (next?.is !== 'word') return true;
  const other = stem(next.text);
  return (holding.get(stem(topic)) ?? []).some((key) => key.split(' ').includes(other));
}
/** A topic's word may be a word of the catalogs too: `wheel rate`, `spring 450`. The whole is read first, then what follows the word. */
function readTopic(asked: Asked, text: string, tokens: readonly Token[], from: number, setting: Setting): Reading | Stop {
  const topic = { verb: asked.verb, sides: [], tried: [], names: [], rest: asked.text, echoes: [], mended: false };
  if (asked.tokens.length === 0) return topic;
  const { verb: _, ...rest } = asked;
  const after = () => readItems(asked, setting);
  if (asked.verb !== undefined && !belongsTo(asked.verb, tokens, from, setting)) {
    const reading = after();
    if (!isStop(reading)) return { ...reading, verb: asked.verb };
  }
  const whole = readItems({ ...rest, ...(asked.verb ? { about: asked.verb } : {}), verb: undefined, topic: false, text, tokens }, setting);
  const first = tokens[from];
  const sized = first?.is === 'size' || first?.is === 'rim';
  if (sized) {
    const reading = after();
    return isStop(reading) && !isStop(whole) ? whole : reading;
  }
  if (isStop(whole)) {
    const reading = after();
    return isStop(reading) && !(whole.stop === 'refused' && reading.stop === 'asked') ? whole : reading;
  }
  const items = whole.sides.flatMap((side) => side.items);
  // `bar anti-roll bar 22 mm`: the topic's word is no item of its own beside facts that have words.
  const unsaid = new Set(items.filter((item) => item.said === undefined).map((item) => item.entry));
  const [alone] = unsaid;
  const topicWord = tokens[from - 1];
  const named = topicWord?.is === 'word' ? (vocabularyOf(setting.catalog).phrases.get(stem(topicWord.text)) ?? []) : [];
  if (unsaid.size === 1 && named.some(({ entry }) => entry === alone)) {
    const reading = after();
    if (
      !isStop(reading) &&
      reading.sides.some((side) => side.items.length > 0) &&
      reading.sides.every((side) => side.items.every((item) => item.said !== undefined))
    )
      return reading;
  }
  const told = items.filter((item) => item.said !== undefined);
  // `tire pressure 30 psi` tells a pressure: without a size there is no tire to speak of.
  if (asked.verb === 'tire' && told.length > 0 && !told.some(({ entry }) => entry.kind === 'designation')) return whole;
  const placed = items.some((item) => item.placed && item.entry.scope !== 'car');
  const onlyFacts = items.length > 0 && told.length === items.length && whole.verb === undefined;
  // What is told of bars alone is the bar's, at whichever end.
  const own = asked.verb === 'bar' && told.length === items.length && items.every(({ entry }) => entry.path.startsWith('bar.'));
  return (onlyFacts && !placed) || own ? { ...whole, verb: asked.verb } : whole;
}
