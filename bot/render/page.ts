/** An answer laid out in short lines: what is shown at once, and what is kept for `more`. */
import type { Answer } from '../../commands/answer.js';
import type { Choice } from '../../commands/reading.js';
import { clean, columnsOf, wrapped } from './clean.js';
import { asRest, type Kept, keptOf } from './rest.js';
import { tableLines } from './table.js';

export interface Block {
  /** `fixed` needs a fixed-width type; `prose` may be set in any. */
  readonly kind: 'fixed' | 'prose' | 'caution' | 'choices';
  readonly lines: readonly string[];
  /** How many lines each part has that is not cut in two, in order: a row, a short paragraph. */
  readonly parts: readonly number[];
  /** What `more` calls it: `steps`, `what it rests on`. */
  readonly name: string;
}
export interface Page {
  readonly kind: Answer['kind'];
  readonly headline: string;
  readonly blocks: readonly Block[];
  readonly rest: readonly string[];
  /** What the numbers shown stand for. */
  readonly choices: readonly Choice[];
}

/** Longer headlines quote what somebody sent: they are cut, visibly. */
const longestHeadline = 400;
const longestNext = 2;

/** A paragraph that is longer may be cut. */
const uncut = 4;
const partsOf = (lines: readonly string[]): number[] => (lines.length <= uncut ? [lines.length] : lines.map(() => 1));
const block = (kind: Block['kind'], lines: readonly string[], name: string): Block => ({ kind, lines, parts: partsOf(lines), name });
const rowsBlock = (rows: readonly (readonly string[])[], name: string): Block => ({
  kind: 'fixed',
  lines: rows.flat(),
  parts: rows.map((r) => r.length),
  name,
});

const oneLine = (text: string): string => clean(text).replace(/\s+/g, ' ').trim();
const cut = (text: string): string => {
  const characters = [...text];
  return characters.length <= longestHeadline ? text : `${characters.slice(0, longestHeadline - 1).join('')}…`;
};

/** A note that begins with two spaces is a step or a table of its own: its spaces are kept. */
function noteBlock(note: string, { width, proseWidth }: Pick<Sizes, 'width' | 'proseWidth'>, name: string): Block {
  const lines = clean(note).split('\n');
  const fixed = lines.some((l) => l.startsWith('  '));
  const broken = lines.map((line) => {
    const indent = /^ */.exec(line)?.[0] ?? '';
    if (fixed && columnsOf(line) <= width) return [line];
    return wrapped(line, (fixed ? width : proseWidth) - indent.length, fixed ? '  ' : '').map((l) => indent + l);
  });
  return fixed && broken.flat().length > uncut ? rowsBlock(broken, name) : block(fixed ? 'fixed' : 'prose', broken.flat(), name);
}
const proseBlocks = (texts: readonly string[], width: number, name: string, kind: 'prose' | 'caution' = 'prose'): Block[] =>
  texts.map((text) => block(kind, wrapped(oneLine(text), width), name));

/** A label that can be typed as it stands is shown with what a line has to begin with here; others are picked by their number alone. */
const shownLabel = ({ label, line }: Choice, prefix: string): string => {
  const text = oneLine(label);
  return text === oneLine(line) ? `${prefix}${text}` : text;
};
function choiceBlock(choices: readonly Choice[], { from, proseWidth, prefix }: Sizes): Block[] {
  const lines = choices.flatMap((choice, at) => {
    const number = `${from + at} `;
    return wrapped(number + shownLabel(choice, prefix), proseWidth, ' '.repeat(number.length));
  });
  return lines.length === 0 ? [] : [block('choices', lines, 'choices')];
}
/** A suggestion may be the beginning of its line: `why` alone, after a number, is of that number. */
const shownNext = (choice: Choice, prefix: string): string =>
  choice.line.startsWith(`${choice.label} `) ? `${prefix}${oneLine(choice.label)}` : shownLabel(choice, prefix);
/** One a line, at most two: what does not fit a line is left out, but for the one line that would work. */
function nextBlock(
  next: readonly Choice[],
  from: number,
  { proseWidth, prefix }: Sizes,
  most = longestNext,
): { blocks: Block[]; shown: Choice[] } {
  const lines: string[] = [];
  const shown: Choice[] = [];
  for (const choice of next) {
    if (shown.length === most) break;
    const item = wrapped(`${from + shown.length} ${shownNext(choice, prefix)}`, proseWidth, '  ');
    if (item.length > 1 && next.length > 1) continue;
    lines.push(...item);
    shown.push(choice);
  }
  return { blocks: lines.length === 0 ? [] : [{ kind: 'choices', lines, parts: lines.map(() => 1), name: 'choices' }], shown };
}

const count = (blocks: readonly Block[]): number => blocks.reduce((sum, b) => sum + b.lines.length, 0);
function split(blocks: readonly Block[], room: number): { shown: Block[]; rest: Kept[] } {
  const shown: Block[] = [];
  const rest: Kept[] = [];
  let left = room;
  for (const one of blocks) {
    const { kind, lines, parts, name } = one;
    let now = 0;
    for (const part of rest.length === 0 ? parts : []) {
      if (now + part > left) break;
      now += part;
    }
    // One that is longer than all the room there is is cut after all.
    if (now === 0 && shown.length === 0 && rest.length === 0) now = Math.min(left, lines.length);
    if (now > 0) shown.push({ ...block(kind, lines.slice(0, now), name) });
    if (now < lines.length) rest.push({ name, fixed: kind === 'fixed', lines: lines.slice(now) });
    left -= now;
  }
  return { shown, rest };
}

export interface Sizes {
  /** Of a fixed-width type. */
  readonly width: number;
  /** Of what may be set in any type: a phone shows more of it. */
  readonly proseWidth: number;
  /** Number of the first choice. */
  readonly from: number;
  /** Lines under the headline. */
  readonly room: number;
  /** Whether the line that tells of `more` has to fit into the room too. */
  readonly ownMore: boolean;
  /** Suggestions are for a message of one line: under several answers they would be noise. */
  readonly suggest: boolean;
  /** What a line begins with where it is read. */
  readonly prefix: string;
}
function parts(answer: Answer, sizes: Sizes) {
  const { width, proseWidth } = sizes;
  const continued = answer.continued === undefined ? [] : keptOf(answer.continued.map((l) => clean(l)));
  const body: Block[] = [
    ...(answer.rows.length > 0 ? [rowsBlock(tableLines(answer.rows, answer.columns, width), 'the other rows')] : []),
    ...continued.flatMap((kept) => continuedBlocks(kept, sizes, continued.length > 1)),
    ...answer.notes.map((note) => noteBlock(note, sizes, 'notes')),
  ];
  const further = (answer.further ?? []).flatMap(({ name, columns, rows = [], notes = [] }) => [
    ...(rows.length > 0 ? [rowsBlock(tableLines(rows, columns, width), name)] : []),
    ...notes.map((note) => noteBlock(note, sizes, name)),
  ]);
  const { reference } = answer;
  return {
    body,
    further,
    echoes: proseBlocks(answer.echoes, proseWidth, 'how I read it'),
    assumptions: proseBlocks(answer.assumptions, proseWidth, 'what it rests on'),
    cautions: [
      ...proseBlocks(answer.cautions, proseWidth, 'take care', 'caution'),
      ...proseBlocks(
        reference === undefined || answer.headline.includes(reference) ? [] : [`Reference to quote: ${reference}`],
        proseWidth,
        'reference',
      ),
    ],
    choices: choiceBlock(answer.choices, sizes),
  };
}
/** What was kept back, laid out again; under its name where there are several. */
function continuedBlocks({ name, fixed, lines }: Kept, { width, proseWidth }: Sizes, named: boolean): Block[] {
  const title = named && name !== '' ? [block('prose', wrapped(`${name.charAt(0).toUpperCase()}${name.slice(1)}:`, proseWidth), name)] : [];
  if (fixed)
    return [
      ...title,
      rowsBlock(
        lines.map((line) => wrappedFixed(line, width)),
        name,
      ),
    ];
  return [...title, ...lines.map((line) => block('prose', wrapped(line, proseWidth), name))];
}
const wrappedFixed = (line: string, width: number): string[] => {
  const indent = /^ */.exec(line)?.[0] ?? '';
  return columnsOf(line) <= width ? [line] : wrapped(line, width - indent.length).map((l) => indent + l);
};

/** What a caution warns of, without what to do about it, which `more` has: `Caution: A compressed spring can kill.` */
function shortened(caution: Block, { proseWidth, prefix }: Sizes): Block {
  const text = caution.lines.join(' ');
  const end = /(?<=^.{12,}?)[:.;](?=\s)/u.exec(text)?.index;
  const short = end === undefined ? caution : block('caution', wrapped(`${text.slice(0, end)}: ${prefix}more`, proseWidth), caution.name);
  return short.lines.length < caution.lines.length ? short : caution;
}

/**
 * What of an answer is shown in the room that there is, in the order of an Answer. When not all of it fits, choices come first, then cautions (the
 * long ones cut to what they warn of), what was read that was not literal, what the answer rests on, then as many rows as are left (three lines at
 * least, if there are so many), and one line of suggestions where rows are still seen.
 */
export function layOut(answer: Answer, sizes: Sizes): Page {
  const { room, from } = sizes;
  const { body, further, echoes, assumptions, cautions, choices } = parts(answer, sizes);
  const base = { kind: answer.kind, headline: cut(oneLine(answer.headline)) };
  const whole = [...body, ...echoes, ...assumptions, ...cautions, ...choices];
  const suggested = (left: number) => {
    for (const most of sizes.suggest ? [longestNext, 1] : []) {
      const next = nextBlock(answer.next, from + answer.choices.length, sizes, most);
      if (count(next.blocks) <= left) return next;
    }
    return { blocks: [], shown: [] };
  };
  const later = further.map(({ name, kind, lines }): Kept => ({ name, fixed: kind === 'fixed', lines }));
  const moreToTell = later.length > 0 && sizes.ownMore ? 1 : 0;
  if (count(whole) <= room - moreToTell) {
    const next = suggested(room - moreToTell - count(whole));
    return { ...base, blocks: [...whole, ...next.blocks], rest: asRest(later), choices: [...answer.choices, ...next.shown] };
  }
  let left = room - (sizes.ownMore ? 1 : 0) - count(choices);
  /** What stands for each block in the page. */
  const kept = new Map<Block, Block>();
  const keep = (blocks: readonly Block[], rowsAtLeast: number, as = (b: Block): Block => b): void => {
    for (const one of blocks) {
      const shown = as(one);
      if (shown.lines.length > left - Math.min(count(body), rowsAtLeast)) continue;
      kept.set(one, shown);
      left -= shown.lines.length;
    }
  };
  keep(cautions, 1, (c) => shortened(c, sizes));
  keep(echoes, 3);
  keep(assumptions, 3);
  const next = count(body) <= left ? suggested(0) : suggested(Math.min(1, left - 4));
  const { shown, rest } = split(body, Math.max(0, left - count(next.blocks)));
  const tail = [...echoes, ...assumptions, ...cautions];
  return {
    ...base,
    blocks: [...shown, ...tail.flatMap((b) => kept.get(b) ?? []), ...choices, ...next.blocks],
    rest: asRest([
      ...rest,
      ...tail.filter((b) => kept.get(b) !== b).map(({ name, kind, lines }) => ({ name, fixed: kind === 'fixed', lines })),
      ...later,
    ]),
    choices: [...answer.choices, ...next.shown],
  };
}

/** How many lines the answer would take under its headline, suggestions aside. */
export function linesOf(answer: Answer, sizes: Sizes): number {
  const { body, echoes, assumptions, cautions, choices } = parts(answer, sizes);
  return count([...body, ...echoes, ...assumptions, ...cautions, ...choices]);
}
