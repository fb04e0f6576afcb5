/** Help that teaches: one screen for the index, one a command, one an entry of the catalogs. Every line in it works as it stands. */
import { type Entry, isInput, isRefusal } from '../core/catalog.js';
import { nameAt, pathAt, placesOf } from '../core/engine.js';
import { type Answer, answer } from './answer.js';
import { phrase, wordOf } from './canonical.js';
import type { Command, Outcome } from './command.js';
import type { Context, Preferences } from './context.js';
import { meant, withCar, withoutCar } from './helped.js';

export { messagesIn } from './helped.js';

import { refused } from './house/own.js';
import { catalog, lookAtCar, nothing, numbersOf } from './looked.js';
import { isStop, type Reading } from './reading.js';
import { read } from './resolve.js';
import { settingOf } from './setting.js';
import { bare, sentence, valueToType, writing } from './show/amount.js';
import { typed } from './show/typed.js';

/** Lines that can be typed stand by themselves, two spaces in: how a test finds them, and how a phone sets them off. */
const typedLines = (lines: readonly string[], { room }: Pick<Context, 'room'>): string =>
  lines.map((line) => `  ${typed(line, room)}`).join('\n');
function index(commands: readonly Command[], context: Context): Outcome {
  const has = context.garage.chosen !== undefined;
  const words = (group: Command['group']) =>
    commands
      .filter((one) => one.group === group)
      .map(({ word }) => word)
      .join(', ');
  return {
    answer: answer('told', 'Talk as you would to a clubmate. For example:', {
      notes: [
        typedLines(
          (has ? withCar : withoutCar).map(({ line }) => line),
          context,
        ),
        ...(has ? [] : ['With your car in: what if, which end goes first, what to change, cars side by side.']),
      ],
      further: [
        {
          name: 'all words',
          notes: [
            `${typed('help WORD', context.room)} tells more of any of these.`,
            `${words('verb')}.`,
            `Of one subject: ${words('topic')}.`,
            `The rest: ${words('house')}.`,
          ],
        },
      ],
    }),
  };
}

function ofCommand(command: Command, context: Context): Answer {
  const also = command.also.length === 0 ? [] : [`Also: ${command.also.join(', ')}.`];
  const lines = command.examples.map(({ line, does }) => `${typedLines(line.split('\n'), context)}\n${does}`);
  return answer('told', `${command.word}: ${command.summary}`, { notes: [...lines, ...also] });
}

/** A value that can be told or tried for an input: the car's own, else one from the middle of what is sane. */
function exampleValue(entry: Entry, place: string, context: Context): string | undefined {
  const { preferences } = context.asker;
  const looked = context.garage.chosen ? lookAtCar(context.garage.chosen, context) : nothing;
  const numbers = numbersOf(looked.situation);
  const path = pathAt(place, entry);
  const fact = looked.situation.facts.get(path);
  if (entry.kind === 'choice') {
    const words = (entry.options ?? []).flatMap((option) => [option, ...(entry.optionWords?.[option] ?? [])]);
    return words.find((word) => !isStop(read(`set ${phrase(entry, place)} ${word}`, settingOf(context, setOnly))));
  }
  if (fact) return valueToType(entry, fact.value, preferences);
  if (entry.kind !== 'quantity') return undefined;
  const known = numbers.number(path);
  const [low, high] = entry.sane ?? [0, 1];
  const middle = low > 0 ? Math.sqrt(low * high) : (low + high) / 2;
  // Two digits are enough for an example, and easier to type.
  return rounded(isRefusal(known) || known === 0 ? middle : known, entry, preferences);
}
function rounded(si: number, entry: Entry, preferences: Preferences): string {
  return bare(si, entry.dimension ?? 'ratio', preferences, Math.abs(si) * 0.2, { ...writing(entry) }).text.replaceAll(
    ',',
    preferences.decimalMark === ',' ? ',' : '',
  );
}

const firstPlace = (entry: Entry, context: Context): string => {
  const chosen = context.garage.chosen;
  const numbers = numbersOf(chosen ? lookAtCar(chosen, context).situation : nothing.situation);
  const places = placesOf(entry.scope);
  return places.find((place) => !isRefusal(numbers.get(pathAt(place, entry)))) ?? places[entry.scope === 'gear' ? 1 : 0] ?? '';
};

/** The figures that people ask for and that read an input most directly. */
function readBy(entry: Entry, place: string): readonly string[] {
  const path = pathAt(place, entry);
  return catalog
    .descendants(path)
    .filter((node) => !node.then && node.entry.kind === 'figure' && (node.entry.words?.length ?? 0) > 0)
    .slice(0, 3)
    .map((node) => nameAt(node.entry, node.place));
}

function ofEntry(entry: Entry, context: Context): Answer {
  const place = firstPlace(entry, context);
  const name = phrase(entry, place);
  const words = (entry.words ?? []).slice(0, 5).join(', ');
  const { preferences } = context.asker;
  const range = (ends: readonly [number, number]) =>
    ends.map((si) => bare(si, entry.dimension ?? 'ratio', preferences, Math.abs(ends[1] - ends[0]) / 50, writing(entry)).text).join(' to ');
  const cautions = entry.caution === undefined ? [] : [entry.caution];
  if (!isInput(entry)) {
    const lines = [name, `why ${name}`, `doubt ${name}`];
    const typical = entry.typical ? [`Typical: ${range(entry.typical.range)}, ${entry.typical.of}.`] : [];
    const formula = entry.formula === undefined ? [] : [`${entry.symbol ?? 'it'} = ${entry.formula}`];
    return answer('told', `${sentence(entry.name)}: I work it out for you`, {
      notes: [typedLines(lines, context), `Words: ${words}.`, ...typical, ...formula, `In print: ${entry.source ?? 'by definition'}.`],
      cautions,
    });
  }
  const value = exampleValue(entry, place, context);
  const question = entry.scope === 'question';
  const lines = value === undefined ? [name] : question ? [] : [`set ${name} ${value}`, `try ${name} ${value}`, name];
  const figures = readBy(entry, place);
  const notes = [
    ...(lines.length > 0 ? [typedLines(lines, context)] : []),
    ...(entry.measure === undefined ? [] : [`Measure: ${entry.measure}`]),
    `Words: ${words}.`,
    ...(entry.options ? [`One of: ${entry.options.join(', ')}.`] : []),
    ...(entry.sane && entry.kind === 'quantity' ? [`From ${range(entry.sane)}.`] : []),
    ...(figures.length > 0 ? [`Used for: ${figures.join(', ')}.`] : []),
    ...(entry.compute ? [`Until you tell me, I guess: ${entry.source ?? 'common practice, no source'}.`] : []),
  ];
  const headline = question ? `${sentence(entry.name)}: part of a question, never saved` : `${sentence(entry.name)}: tell me, and I use it`;
  return answer('told', headline, { notes, cautions });
}
/** How to measure it, first of all. */
function measuring(entry: Entry, context: Context): Answer {
  if (!isInput(entry) || entry.measure === undefined) return ofEntry(entry, context);
  const place = firstPlace(entry, context);
  const value = exampleValue(entry, place, context);
  const name = phrase(entry, place);
  return answer('told', `Measuring the ${entry.name}`, {
    notes: [
      entry.measure,
      ...(value === undefined || entry.scope === 'question'
        ? []
        : [`Then tell it:\n${typedLines([`set ${name} ${value}${entry.told ? ' measured' : ''}`], context)}`]),
    ],
    cautions: entry.caution === undefined ? [] : [entry.caution],
  });
}

/** The entry that some words mean, an input before a figure of the same words when it is to be measured. */
function entryOf(text: string, context: Context, wantsInput: boolean): Entry | undefined {
  const exact = catalog.entries.filter((entry) => wordOf(entry) === text && (entry.words?.length ?? 0) > 0);
  const fitting = exact.find((entry) => isInput(entry) === wantsInput) ?? exact[0];
  if (fitting) return fitting;
  const named = catalog.entries.filter((entry) => entry.words?.includes(text));
  const found = named.find((entry) => isInput(entry) === wantsInput) ?? named[0];
  if (found) return found;
  const reading = read(`show ${text}`, settingOf(context, showOnly));
  return isStop(reading) ? undefined : reading.sides[0]?.items[0]?.entry;
}
const only = (word: string, changes: boolean): readonly Pick<Command, 'word' | 'also' | 'takes' | 'changes' | 'group' | 'hears'>[] => [
  { word, also: [], takes: 'items', changes, group: 'verb' },
];
const showOnly = only('show', false);
const setOnly = only('set', true);

function ofWord(text: string, commands: readonly Command[], context: Context): Outcome {
  const measure = /^(?:measure|measuring|how to measure)\s+/i.exec(text);
  if (measure) {
    const entry = entryOf(text.slice(measure[0].length), context, true);
    return entry ? { answer: measuring(entry, context) } : unknown(text, context);
  }
  const said = meant[text];
  if (said) return { answer: answer('told', said.headline, { notes: said.notes, next: [{ label: said.line, line: said.line }] }) };
  const command = commands.find(({ word, also }) => word === text || also.includes(text));
  const entry = entryOf(text, context, true);
  if (command && (command.group !== 'topic' || !entry)) return { answer: ofCommand(command, context) };
  if (command && entry) {
    const [one, two] = [ofCommand(command, context), ofEntry(entry, context)];
    return { answer: { ...one, notes: [...one.notes, `${two.headline}.`, ...two.notes], cautions: two.cautions } };
  }
  const figure = entryOf(text, context, false);
  if (figure) return { answer: ofEntry(entry && catalog.entries.includes(entry) && entry.words?.includes(text) ? entry : figure, context) };
  return unknown(text, context);
}
function unknown(text: string, context: Context): Outcome {
  const reading = read(`show ${text}`, settingOf(context, showOnly));
  if (isStop(reading) && reading.stop !== 'asked') {
    const line = 'line' in reading ? reading.line?.replace(/^show /, 'help ') : undefined;
    return { answer: answer(reading.stop, reading.sentence, { next: [{ label: line ?? 'words', line: line ?? 'words' }] }) };
  }
  return refused(`No help is written on "${text}".`, 'words');
}

/** The commands that teach, over all commands: they are among them. */
export function teachers(all: () => readonly Command[]): readonly [help: Command, words: Command] {
  const help: Command = {
    word: 'help',
    also: ['?', 'how do i', 'commands'],
    group: 'house',
    summary: 'help WORD: a verb, a fact or a figure. help measure WORD: how to measure it.',
    examples: [
      { line: 'help', does: 'the index' },
      { line: 'help spring', does: 'one word' },
      { line: 'help measure tire rate', does: 'how to measure a fact' },
    ],
    takes: 'text',
    changes: false,
    run(reading: Reading, context) {
      const text = (reading.names.join(' ') || reading.rest).trim().toLowerCase().replace(/\?+$/, '');
      return text === '' ? index(all(), context) : ofWord(text, all(), context);
    },
  };
  const words: Command = {
    word: 'words',
    also: ['vocabulary', 'word list'],
    group: 'house',
    summary: 'The words for facts and figures; words spring: those about springs.',
    examples: [
      { line: 'words', does: 'all of them' },
      { line: 'words spring', does: 'those with spring in them' },
    ],
    takes: 'text',
    changes: false,
    run(reading: Reading) {
      const text = (reading.names.join(' ') || reading.rest).trim().toLowerCase();
      const about = catalog.entries.filter(
        (entry) =>
          (entry.words?.length ?? 0) > 0 && (text === '' || entry.name.includes(text) || entry.words?.some((word) => word.includes(text))),
      );
      if (about.length === 0) return refused(`No word here has "${text}" in it.`, 'words');
      const list = (wanted: (entry: Entry) => boolean) => [...new Set(about.filter(wanted).map(wordOf))].join(', ');
      const notes = [
        ['Facts to tell', list((entry) => isInput(entry) && entry.scope !== 'question')],
        ['Figures to ask for', list((entry) => !isInput(entry))],
        ['Conditions of a question', list((entry) => entry.scope === 'question' && isInput(entry))],
      ].flatMap(([head, found]) => (found === '' ? [] : [`${head}: ${found}.`]));
      const headline = text === '' ? `${about.length} things have words` : `${about.length} things about ${text}`;
      return { answer: answer('told', headline, { notes, next: [{ label: 'help', line: 'help' }] }) };
    },
  };
  return [help, words];
}
