/** An answer laid out in short lines: what is shown at once, and what is kept for `more`. */
import type { Answer } from '../../commands/answer.js';
import type { Choice } from '../../commands/reading.js';
import { clean, columnsOf, wrapped } from './clean.js';
import { tableLines } from './table.js';

export interface Block {
  /** `fixed` needs a fixed-width type; `prose` may be set in any. */
  readonly kind: 'fixed' | 'prose' | 'caution' | 'choices';
  readonly lines: readonly string[];
  /** How many lines each part has that is not cut in two, in order: a row, a short paragraph. */
  readonly parts: readonly number[];
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
const block = (kind: Block['kind'], lines: readonly string[]): Block => ({ kind, lines, parts: partsOf(lines) });
const rowsBlock = (rows: readonly (readonly string[])[]): Block => ({
  kind: 'fixed',
  lines: rows.flat(),
  parts: rows.map((r) => r.length),
});

const oneLine = (text: string): string => clean(text).replace(/\s+/g, ' ').trim();
const cut = (text: string): string => {
  const characters = [...text];
  return characters.length <= longestHeadline ? text : `${characters.slice(0, longestHeadline - 1).join('')}…`;
};

/** A note that begins with two spaces is a step or a table of its own: its spaces are kept. */
function noteBlock(note: string, width: number): Block {
  const lines = clean(note).split('\n');
  const fixed = lines.some((l) => l.startsWith('  '));
  const broken = lines.map((line) => {
    const indent = /^ */.exec(line)?.[0] ?? '';
    return wrapped(line, width - indent.length, fixed ? '  ' : '').map((l) => indent + l);
  });
  return fixed && broken.flat().length > uncut ? rowsBlock(broken) : block(fixed ? 'fixed' : 'prose', broken.flat());
}
const proseBlocks = (texts: readonly string[], width: number, kind: 'prose' | 'caution' = 'prose'): Block[] =>
  texts.map((text) => block(kind, wrapped(oneLine(text), width)));

/** A label that can be typed as it stands is shown with what a line has to begin with here; others are picked by their number alone. */
const shownLabel = ({ label, line }: Choice, prefix: string): string => {
  const text = oneLine(label);
  return text === oneLine(line) ? `${prefix}${text}` : text;
};
function choiceBlock(choices: readonly Choice[], { from, width, prefix }: Sizes): Block[] {
  const lines = choices.flatMap((choice, at) => {
    const number = `${from + at} `;
    return wrapped(number + shownLabel(choice, prefix), width, ' '.repeat(number.length));
  });
  return lines.length === 0 ? [] : [block('choices', lines)];
}
/** A suggestion may be the beginning of its line: `why` alone, after a number, is of that number. */
const shownNext = (choice: Choice, prefix: string): string =>
  choice.line.startsWith(`${choice.label} `) ? `${prefix}${oneLine(choice.label)}` : shownLabel(choice, prefix);
/** `1 why   2 compare front   3 draw`: as many as two lines hold. */
function nextBlock(next: readonly Choice[], from: number, { width, prefix }: Sizes): { blocks: Block[]; shown: Choice[] } {
  const lines: string[] = [];
  const shown: Choice[] = [];
  for (const choice of next) {
    const item = `${from + shown.length} ${shownNext(choice, prefix)}`;
    const longer = lines.length === 0 ? item : `${lines.at(-1)}   ${item}`;
    if (columnsOf(item) > width) {
      // The one line that would work is worth several; what is only a suggestion is not.
      if (lines.length > 0 || next.length > 1) continue;
      lines.push(...wrapped(item, width, '  '));
    } else if (lines.length > 0 && columnsOf(longer) <= width) lines[lines.length - 1] = longer;
    else if (lines.length < longestNext) lines.push(item);
    else break;
    shown.push(choice);
  }
  return { blocks: lines.length === 0 ? [] : [{ kind: 'choices', lines, parts: [lines.length] }], shown };
}

const count = (blocks: readonly Block[]): number => blocks.reduce((sum, b) => sum + b.lines.length, 0);
function split(blocks: readonly Block[], room: number): { shown: Block[]; rest: string[] } {
  const shown: Block[] = [];
  const rest: string[] = [];
  let left = room;
  for (const { kind, lines, parts } of blocks) {
    let now = 0;
    for (const part of rest.length === 0 ? parts : []) {
      if (now + part > left) break;
      now += part;
    }
    // One that is longer than all the room there is is cut after all.
    if (now === 0 && shown.length === 0 && rest.length === 0) now = Math.min(left, lines.length);
    if (now > 0) shown.push(block(kind, lines.slice(0, now)));
    rest.push(...lines.slice(now));
    left -= now;
  }
  return { shown, rest };
}

export interface Sizes {
  readonly width: number;
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
  const { width } = sizes;
  const body: Block[] = [
    ...(answer.rows.length > 0 ? [rowsBlock(tableLines(answer.rows, answer.columns, width))] : []),
    ...(answer.continued === undefined ? [] : [rowsBlock(answer.continued.map((l) => [clean(l)]))]),
    ...answer.notes.map((note) => noteBlock(note, width)),
  ];
  const { reference } = answer;
  const cautions = answer.cautions.map((c) => (/^(caution|careful|warning)\b/i.test(c) ? c : `Caution: ${c}`));
  return {
    body,
    echoes: proseBlocks(answer.echoes, width),
    assumptions: proseBlocks(answer.assumptions, width),
    cautions: [
      ...proseBlocks(cautions, width, 'caution'),
      ...proseBlocks(reference === undefined || answer.headline.includes(reference) ? [] : [`Reference to quote: ${reference}`], width),
    ],
    choices: choiceBlock(answer.choices, sizes),
  };
}

/** What a caution warns of, without what to do about it, which `more` has: `Caution: A compressed spring can kill.` */
function shortened(caution: Block, { width, prefix }: Sizes): Block {
  const text = caution.lines.join(' ');
  const end = /(?<=^.{12,}?)[:.;](?=\s)/u.exec(text)?.index;
  const short = end === undefined ? caution : block('caution', wrapped(`${text.slice(0, end)}: ${prefix}more`, width));
  return short.lines.length < caution.lines.length ? short : caution;
}

/**
 * What of an answer is shown in the room that there is, in the order of an Answer. When not all of it fits, choices come first, then cautions (the
 * long ones cut to what they warn of), what was read that was not literal, what the answer rests on, then as many rows as are left (three lines at
 * least, if there are so many), and one line of suggestions where rows are still seen.
 */
export function layOut(answer: Answer, sizes: Sizes): Page {
  const { room, from } = sizes;
  const { body, echoes, assumptions, cautions, choices } = parts(answer, sizes);
  const base = { kind: answer.kind, headline: cut(oneLine(answer.headline)) };
  const whole = [...body, ...echoes, ...assumptions, ...cautions, ...choices];
  const suggested = (left: number) => {
    const none = { blocks: [], shown: [] };
    const next = sizes.suggest ? nextBlock(answer.next, from + answer.choices.length, sizes) : none;
    return count(next.blocks) <= left ? next : none;
  };
  if (count(whole) <= room) {
    const next = suggested(room - count(whole));
    return { ...base, blocks: [...whole, ...next.blocks], rest: [], choices: [...answer.choices, ...next.shown] };
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
    rest: [...rest, ...tail.filter((b) => kept.get(b) !== b).flatMap((b) => b.lines)],
    choices: [...answer.choices, ...next.shown],
  };
}

/** How many lines the answer would take under its headline, suggestions aside. */
export function linesOf(answer: Answer, sizes: Sizes): number {
  const { body, echoes, assumptions, cautions, choices } = parts(answer, sizes);
  return count([...body, ...echoes, ...assumptions, ...cautions, ...choices]);
}
