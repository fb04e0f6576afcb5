/** An answer laid out in short lines: what is shown at once, and what is kept for `more`. */
import type { Answer } from '../../commands/answer.js';
import type { Choice } from '../../commands/reading.js';
import { clean, columnsOf, wrapped } from './clean.js';
import { tableLines } from './table.js';

export interface Block {
  /** `fixed` needs a fixed-width type; `prose` may be set in any. */
  readonly kind: 'fixed' | 'prose' | 'caution' | 'choices';
  readonly lines: readonly string[];
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

const oneLine = (text: string): string => clean(text).replace(/\s+/g, ' ').trim();
const cut = (text: string): string => {
  const characters = [...text];
  return characters.length <= longestHeadline ? text : `${characters.slice(0, longestHeadline - 1).join('')}…`;
};

/** A note that begins with two spaces is a step or a table of its own: its spaces are kept. */
function noteBlock(note: string, width: number): Block {
  const lines = clean(note).split('\n');
  const fixed = lines.some((l) => l.startsWith('  '));
  return {
    kind: fixed ? 'fixed' : 'prose',
    lines: lines.flatMap((line) => {
      const indent = /^ */.exec(line)?.[0] ?? '';
      return wrapped(line, width - indent.length, fixed ? '  ' : '').map((l) => indent + l);
    }),
  };
}
const proseBlocks = (texts: readonly string[], width: number, kind: 'prose' | 'caution' = 'prose'): Block[] =>
  texts.map((text) => ({ kind, lines: wrapped(oneLine(text), width) }));

function choiceBlock(choices: readonly Choice[], from: number, width: number): Block[] {
  const lines = choices.flatMap(({ label }, at) => {
    const number = `${from + at} `;
    return wrapped(number + oneLine(label), width, ' '.repeat(number.length));
  });
  return lines.length === 0 ? [] : [{ kind: 'choices', lines }];
}
/** `1 why   2 compare front   3 draw`: as many as two lines hold. */
function nextBlock(next: readonly Choice[], from: number, width: number): { blocks: Block[]; shown: Choice[] } {
  const lines: string[] = [];
  const shown: Choice[] = [];
  for (const choice of next) {
    const item = `${from + shown.length} ${oneLine(choice.label)}`;
    const longer = lines.length === 0 ? item : `${lines.at(-1)}   ${item}`;
    if (columnsOf(item) > width) continue;
    if (lines.length > 0 && columnsOf(longer) <= width) lines[lines.length - 1] = longer;
    else if (lines.length < longestNext) lines.push(item);
    else break;
    shown.push(choice);
  }
  return { blocks: lines.length === 0 ? [] : [{ kind: 'choices', lines }], shown };
}

const count = (blocks: readonly Block[]): number => blocks.reduce((sum, b) => sum + b.lines.length, 0);
function split(blocks: readonly Block[], room: number): { shown: Block[]; rest: string[] } {
  const shown: Block[] = [];
  const rest: string[] = [];
  let left = room;
  for (const { kind, lines } of blocks) {
    const now = rest.length === 0 ? lines.slice(0, left) : [];
    if (now.length > 0) shown.push({ kind, lines: now });
    rest.push(...lines.slice(now.length));
    left -= now.length;
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
}
function parts(answer: Answer, { width, from }: Sizes) {
  const body: Block[] = [
    ...(answer.rows.length > 0 ? [{ kind: 'fixed' as const, lines: tableLines(answer.rows, answer.columns, width) }] : []),
    ...(answer.continued === undefined ? [] : [{ kind: 'fixed' as const, lines: answer.continued.map(clean) }]),
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
    choices: choiceBlock(answer.choices, from, width),
  };
}

/**
 * What of an answer is shown in the room that there is, in the order of an Answer. When not all of it fits, choices and cautions come
 * first, then what the answer rests on, then as many rows as are left (three at least, if there are so many), and one line of suggestions where
 * rows are still seen.
 */
export function layOut(answer: Answer, sizes: Sizes): Page {
  const { room, width, from } = sizes;
  const { body, echoes, assumptions, cautions, choices } = parts(answer, sizes);
  const headline = cut(oneLine(answer.headline));
  const whole = [...body, ...echoes, ...assumptions, ...cautions, ...choices];
  const base = { kind: answer.kind, headline };
  const room1 = room - (sizes.ownMore ? 1 : 0);
  const suggested = (left: number) => {
    const { blocks, shown } = sizes.suggest ? nextBlock(answer.next, from + answer.choices.length, width) : { blocks: [], shown: [] };
    return count(blocks) <= left ? { blocks, shown } : { blocks: [], shown: [] };
  };
  if (count(whole) <= room) {
    const next = suggested(room - count(whole));
    return { ...base, blocks: [...whole, ...next.blocks], rest: [], choices: [...answer.choices, ...next.shown] };
  }
  let left = room1 - count(choices);
  const kept = new Set<Block>();
  const keep = (blocks: readonly Block[], rowsAtLeast: number): void => {
    for (const block of blocks) {
      if (block.lines.length > left - Math.min(count(body), rowsAtLeast)) continue;
      kept.add(block);
      left -= block.lines.length;
    }
  };
  keep(cautions, 1);
  keep(assumptions, 3);
  keep(echoes, 3);
  const next = count(body) <= left ? { blocks: [], shown: [] } : suggested(Math.min(1, left - 4));
  const { shown, rest } = split(body, Math.max(0, left - count(next.blocks)));
  const tail = [...echoes, ...assumptions, ...cautions];
  return {
    ...base,
    blocks: [...shown, ...tail.filter((b) => kept.has(b)), ...choices, ...next.blocks],
    rest: [...rest, ...tail.filter((b) => !kept.has(b)).flatMap((b) => b.lines)],
    choices: [...answer.choices, ...next.shown],
  };
}

/** How many lines the answer would take under its headline, suggestions aside. */
export function linesOf(answer: Answer, sizes: Sizes): number {
  const { body, echoes, assumptions, cautions, choices } = parts(answer, sizes);
  return count([...body, ...echoes, ...assumptions, ...cautions, ...choices]);
}
