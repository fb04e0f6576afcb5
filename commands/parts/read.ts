/** A line of a member about what is in the parts box, read by the language of the catalogs: `i have 22 and 25 mm rear bars, 40 min to swap`. */
import { type Entry, isInput, type Value } from '../../core/catalog.js';
import { nameAt, placesOf } from '../../core/engine.js';
import { answer } from '../answer.js';
import { phrase } from '../canonical.js';
import type { Outcome } from '../command.js';
import type { Context, Preferences } from '../context.js';
import { refused } from '../house/own.js';
import type { Setting } from '../language/setting.js';
import { tidy } from '../language/tidy.js';
import { type Item, isStop, type Reading, type Stop } from '../reading.js';
import { read } from '../resolve.js';
import { settingOf } from '../setting.js';
import { effortOf } from './effort.js';
import type { NewPart, PartFact, Possible } from './part.js';
import { splitValues, stepOf, stepWorth } from './values.js';
import { partLine } from './write.js';

export const exampleLine = 'i have 22 and 25 mm rear bars, 40 min';
export interface Boxed {
  readonly parts: readonly NewPart[];
  readonly echoes: readonly string[];
}
export const isBoxed = (v: Boxed | Outcome): v is Boxed => 'parts' in v;

/** How such a line begins; what follows names the thing. */
export const opening =
  /^(?:(?:hey|ok|and|also|so)\s+)*(?:(?:i|we)\s+(?:also\s+)?(?:have|hav|haev|ahve|got|own|keep)(?:\s+got)?|(?:i|we)'?ve\s+(?:also\s+)?(?:got|have)|got|(?:i|we)\s+(?:also\s+)?(?:can|could))\b\s*(?:also\s+)?(?:set|change|adjust|run|get|buy|fit|swap(?:\s+(?:to|in))?|choose|order|use|make)?\b/i;
const unhooks = /\b(?:unhook|disconnect|unplug|unbolt|undo|take\s+off|remove|drop)\b/i;
const dampers = /\b(?:clicks?|dampers?|damping|shocks?|rebound|valving|compression)\b/i;

const onlySet: Setting['commands'] = [{ word: 'set', also: [], takes: 'items', changes: true, group: 'verb' }];
/** What the car is, not what can be put on it or set. */
const isCar = ({ nature, state }: Entry): boolean => state === true || nature === 'car';

const stopped = (stop: Stop): Outcome => {
  if (stop.stop === 'asked') {
    const choices = stop.choices.map(({ line }) => ({ label: line.replace(/^set /, ''), line: line.replace(/^set /, 'box add ') }));
    return { answer: answer('asked', stop.sentence, { choices }) };
  }
  const line = stop.line?.startsWith('set ') ? stop.line.replace(/^set /, 'i have ') : exampleLine;
  return { answer: answer(stop.stop, stop.sentence, { next: [{ label: line, line }] }) };
};
const itemsOf = (reading: Reading): readonly Item[] => [...reading.sides.flatMap((side) => side.items), ...reading.tried];

/** Why an item can't be in the box. */
function wrong({ entry, said, places }: Item): Outcome | undefined {
  const name = nameAt(entry, places[0] ?? '');
  if (!isInput(entry)) return refused(`The ${entry.name} is worked out, not a part or a setting.`, exampleLine);
  if (entry.scope === 'question') return refused(`The ${entry.name} is asked with a question, not kept in the box.`, exampleLine);
  if (said === undefined) return refused(`How much of the ${name}? A part needs its size or its setting.`, exampleLine);
  if (isCar(entry)) return refused(`The ${name} is what the car is: record it instead.`, `set ${phrase(entry, ...places)} ${said.text}`);
  if (said.change !== undefined) return refused(`The box holds sizes and settings as they are, not changes of them.`, exampleLine);
  return typeof said.value === 'object' ? refused('A table is no part of the box; tell one rate.', exampleLine) : undefined;
}
/** Which end, where it was not said and the ends may differ. */
function askEnd(item: Item, text: string): Outcome | undefined {
  const { entry, placed } = item;
  if (placed || entry.alike || placesOf(entry.scope).length === 1) return undefined;
  if (entry.scope !== 'gear') return whichEnd(text);
  const choices = ['1st', '2nd', '3rd', '4th'].map((gear) => ({ label: gear, line: `i have ${gear} ${text}` }));
  return { answer: answer('asked', 'Which gear?', { choices }) };
}
const ended = /\b(?:fronts?|rears?|back|frt|lf|rf|lr|rr|left|right)\b/i;
const whichEnd = (text: string): Outcome => ({
  answer: answer('asked', 'Which end?', {
    choices: ['front', 'rear', 'front and rear'].map((end) => ({ label: end, line: `i have ${end} ${text}` })),
  }),
});

const sameThing = (a: Item, b: Item): boolean => a.entry === b.entry && a.places.join() === b.places.join();
const most = 12;
/** A step at which a range has at most a dozen settings: that in which it is set, or a multiple. */
function usualStep(entry: Entry, from: number, to: number, { units }: Preferences): number {
  let step = entry.step?.[units === 'us' ? 'inch' : 'metric'] ?? (to - from) / 8;
  while ((to - from) / step > most) step *= 2;
  return step;
}

class Reader {
  readonly #context: Context;
  readonly #setting: Setting;
  readonly echoes: string[] = [];
  mended = false;
  constructor(context: Context) {
    this.#context = context;
    this.#setting = settingOf(context, onlySet);
  }
  #set(words: string, whole: string): readonly Item[] | Outcome {
    const reading = read(`set ${words}`, this.#setting);
    if (isStop(reading)) return reading.stop === 'asked' && !ended.test(words) ? whichEnd(whole) : stopped(reading);
    this.mended ||= reading.mended;
    // With which unit a bare number was read, the answer shows with each value.
    for (const echo of reading.echoes) if (!this.echoes.includes(echo) && !/^[-\d.,/ ]+ read as /.test(echo)) this.echoes.push(echo);
    const items = itemsOf(reading);
    const bad = items.map(wrong).find((one) => one !== undefined);
    return bad ?? (items.length === 0 ? refused('Which part, of what size?', exampleLine) : items);
  }
  /** One thing: values of one input, or facts that go on together. */
  facts(given: string, whole: string): readonly PartFact[] | Outcome {
    const { step, rest: text } = stepOf(given);
    const split = splitValues(text);
    if (!split) return this.#together(text, whole);
    const { words, values, range } = split;
    const items: Item[] = [];
    for (const value of values) {
      const found = this.#set(`${words[0]} ${value} ${words[1]}`.trim(), whole);
      if ('answer' in found) return found;
      const [item, another] = found;
      if (another || !item || (items[0] && !sameThing(items[0], item)))
        return values.length === 1 ? this.#bundle(found, whole) : oneThing(whole);
      items.push(item);
    }
    const [first] = items;
    if (!first) return oneThing(whole);
    const can = this.#possible(first.entry, items, range, step, values);
    if ('answer' in can) return can;
    return askEnd(first, whole) ?? [{ entry: first.entry.path, places: first.places, can }];
  }
  #possible(
    entry: Entry,
    items: readonly Item[],
    range: boolean,
    step: ReturnType<typeof stepOf>['step'],
    typed: readonly string[],
  ): Possible | Outcome {
    const values = items.flatMap(({ said }) => (said === undefined ? [] : [said.value]));
    const unique = [...new Set(values)].sort((a, b) => (typeof a === 'number' && typeof b === 'number' ? a - b : 0));
    const [from, to] = unique;
    if (!range) return { is: 'values', values: unique };
    const { preferences } = this.#context.asker;
    if (typeof from !== 'number' || typeof to !== 'number' || !entry.dimension)
      return refused(`A ${entry.name} has no range; name each.`, exampleLine);
    if (entry.nature === 'piece')
      return refused(
        `Which of them, from ${typed[0]} to ${typed[1]}? Parts are named one by one.`,
        `i have ${phrase(entry, ...(items[0]?.places ?? []))} ${typed.join(' and ')}`,
      );
    const worth =
      step === undefined ? usualStep(entry, from, to, preferences) : stepWorth(step, entry.dimension, typed[0] ?? '', preferences);
    if (worth === undefined || !(worth > 0) || worth > to - from)
      return refused(`A step of ${step?.text ?? '0'} does not fit that range.`, 'i can set rear pressure 24 to 34 psi by 1 psi, 2 min');
    // More settings than that are not worth trying one by one.
    return { is: 'range', from, to, step: Math.max(worth, (to - from) / 40) };
  }
  /** `15x8 et25 wheels with 225/45R15 tires`, `25 mm rear bar bore 19 mm`. */
  #together(text: string, whole: string): readonly PartFact[] | Outcome {
    const found = this.#set(text, whole);
    return 'answer' in found ? found : this.#bundle(found, whole);
  }
  #bundle(items: readonly Item[], whole: string): readonly PartFact[] | Outcome {
    const subjects = new Set(items.map(({ entry }) => entry.path.split('.')[0]));
    const sized = items.some(({ entry }) => entry.kind === 'designation');
    const ends = new Set(items.map(({ places }) => endsOf(places)));
    const alike = items.every(({ said }) => said?.to === undefined);
    const repeated = new Set(items.map(({ entry }) => entry)).size < items.length;
    if (!alike || repeated || (!sized && (subjects.size > 1 || ends.size > 1))) return oneThing(whole);
    for (const item of items) {
      const asked = askEnd(item, whole);
      if (asked) return asked;
    }
    return items.map((item) => ({ entry: item.entry.path, places: item.places, can: { is: 'values', values: [valueSaid(item)] } }));
  }
}
/** `front` for its axle and its wheels. */
const endsOf = (places: readonly string[]): string =>
  [...new Set(places.map((place) => (place === 'front' || place.endsWith('f') ? 'front' : 'rear')))].join();
const valueSaid = ({ entry, said }: Item): Value => {
  if (said === undefined) throw new Error(`${entry.path} was not told`);
  return said.value;
};
const oneThing = (whole: string): Outcome => {
  const cut = whole.split(/;|, /)[0] ?? '';
  return refused('One thing a line, please, or several with ; between them.', cut === whole ? exampleLine : `i have ${cut}`);
};

/** Said of parts without saying which. */
const beside =
  /\b(?:(?:\d|an?|one|two|three|four|another|extra|spare|some) )*(?:sets?|pairs?) of\b|\b(?:an? )?(?:spare|extra|other|used|new)\b|\b(?:lying around|on the shelf|in the (?:garage|shed|trunk|box|trailer)|at home)\b/gi;
function readOne(text: string, line: string, reader: Reader): NewPart | Outcome {
  const { minutes, price, rest: said } = effortOf(text);
  const rest = said.replace(beside, ' ').replace(/\s+/g, ' ').trim();
  if (rest === '') return refused('What is in the box? Name it with its size.', exampleLine);
  const cost = { ...(minutes === undefined ? {} : { minutes }), ...(price === undefined ? {} : { price }), line };
  if (dampers.test(rest)) return { facts: [], note: [...rest].slice(0, 80).join(''), ...cost };
  const off = unhooks.test(rest) && /\b(?:bar|arb)\b/i.test(rest);
  const facts = reader.facts(off ? `${rest.replace(unhooks, ' ').trim()} 0 mm` : rest, text);
  return 'answer' in facts ? facts : { facts, ...cost };
}

/** What a line puts into the box; several things where `;` stands between them. An Outcome is the refusal, or the question. */
export function readBox(line: string, context: Context): Boxed | Outcome {
  const text = (tidy(line) ?? '')
    .replace(/^(?:to|in|into)\s+(?:the|my)\s+box\b[:,]?\s*/i, '')
    .replace(opening, '')
    .replace(/^[\s:,]+/, '');
  if (text === '') return refused('What do you have? Name it with its size.', exampleLine);
  const reader = new Reader(context);
  const parts: NewPart[] = [];
  for (const piece of text.split(/\s*;\s*/).filter((one) => one !== '')) {
    const part = readOne(piece, line.trim(), reader);
    if ('answer' in part) return part;
    parts.push(part);
  }
  if (!reader.mended) return { parts, echoes: reader.echoes };
  const choices = parts.map((part) => partLine(part, context)).map((one) => ({ label: one, line: one }));
  return {
    answer: answer('asked', `Did you mean: ${choices.map(({ line: one }) => one).join('; ')}?`, { choices, echoes: reader.echoes }),
  };
}
