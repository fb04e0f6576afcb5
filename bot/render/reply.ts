/** A Reply as the bodies of one chat message. */
import type { Answer, Chart } from '../../commands/answer.js';
import type { Reply } from '../../commands/command.js';
import type { Choice } from '../../commands/reading.js';
import { clean, columnsOf, defang, escapeHtml, heldTogether, wrapped } from './clean.js';
import { type Block, layOut, linesOf, type Page } from './page.js';
import { asRest, namesOf } from './rest.js';

/** What a phone shows of a fixed-width type without scrolling sideways. */
export const phoneColumns = 34;
/** How much wider a phone shows what is not of a fixed width. */
const proseWider = 8;
/** Of a first screen, the lines of its headline counted. */
export const screenLines = 10;
/** Body and HTML together, in bytes: a Matrix event may have 64 KiB, and encryption makes it a third longer. */
const longestMessage = 40_000;

export interface RenderOptions {
  readonly width?: number;
  /** What a line for the bot has to begin with where the reply is read: suggested lines are shown with it. */
  readonly prefix?: string | undefined;
}
export interface Rendered {
  /** Plain text, complete alone. Empty for silence. */
  readonly body: string;
  /** Of `p br strong em pre` only; no links, and all that people wrote is escaped. */
  readonly html: string;
  /** Lines for `more`. */
  readonly rest: readonly string[];
  /** What the numbers in the text stand for, first is 1. */
  readonly choices: readonly Choice[];
  readonly chart?: Chart;
}
export interface Laid {
  readonly pages: readonly Page[];
  readonly rest: readonly string[];
  readonly choices: readonly Choice[];
  readonly chart?: Chart;
}

/** A headline that quotes what somebody sent may be long; what can be done about it is seen all the same. */
const leastRoom = 4;
/** Room for each of several answers: even shares of a page, what one does not need going to the next; at least two lines each. */
function shares(needs: readonly number[]): number[] {
  let left = Math.max(screenLines - needs.length, 2 * needs.length);
  const room = needs.map(() => 0);
  const order = needs.map((_, at) => at).sort((a, b) => (needs[a] ?? 0) - (needs[b] ?? 0));
  order.forEach((at, done) => {
    room[at] = Math.min(needs[at] ?? 0, Math.floor(left / (order.length - done)));
    left -= room[at] ?? 0;
  });
  return room;
}
/** One message carries one picture: of further charts, the values in words. */
function withoutSecondCharts(answers: readonly Answer[]): { answers: Answer[]; chart?: Chart } {
  const chart = answers.find((a) => a.chart !== undefined)?.chart;
  return {
    answers: answers.map((a) => (a.chart === undefined || a.chart === chart ? a : { ...a, notes: [...a.notes, a.chart.words] })),
    ...(chart === undefined ? {} : { chart }),
  };
}
/** The reply in pages, before it becomes text of one kind or another. */
export function laidOut(reply: Pick<Reply, 'answers'>, { width = phoneColumns, prefix = '' }: RenderOptions = {}): Laid {
  const { answers, chart } = withoutSecondCharts(reply.answers);
  const alone = answers.length === 1;
  const proseWidth = width + proseWider;
  const common = { width, proseWidth, ownMore: alone, suggest: alone, prefix };
  const headlines = answers.map(({ headline }) => wrapped(clean(headline), proseWidth).length);
  const room = alone
    ? [Math.max(leastRoom, screenLines - (headlines[0] ?? 1))]
    : shares(answers.map((a) => linesOf(a, { ...common, from: 1, room: 0 })));
  const pages: Page[] = [];
  let from = 1;
  answers.forEach((a, at) => {
    const page = layOut(a, { ...common, from, room: room[at] ?? 0 });
    pages.push(page);
    from += page.choices.length;
  });
  return {
    pages,
    rest: pages.flatMap((p) => restOf(p, alone)),
    choices: pages.flatMap((p) => p.choices),
    ...(chart === undefined ? {} : { chart }),
  };
}
/** Under several answers, the lines kept back begin with the headline that they belong to. */
const restOf = ({ headline, rest }: Page, alone: boolean): string[] =>
  rest.length === 0 ? [] : [...(alone ? [] : asRest([{ name: 'the other answers', fixed: false, lines: [headline] }])), ...rest];

/** The line that tells of what was kept back. */
export function moreLine(rest: readonly string[], prefix = '', width = phoneColumns + proseWider): string | undefined {
  if (rest.length === 0) return undefined;
  const names = namesOf(rest);
  const line = `${prefix}more: ${names.length === 0 ? 'the rest' : names.join(', ')}`;
  return columnsOf(line) <= width ? line : `${prefix}more: ${names.slice(0, 2).join(', ')} and so on`;
}

const unwrapped = (lines: readonly string[]): string => lines.map((l) => l.trim()).join(' ');
function blocksHtml(blocks: readonly Block[], more: string | undefined): string {
  const out: string[] = [];
  let paragraph: string[] = [];
  const close = (): void => {
    if (paragraph.length > 0) out.push(`<p>${paragraph.join('<br>')}</p>`);
    paragraph = [];
  };
  const shown = (text: string): string => escapeHtml(defang(text));
  const flowing = (text: string): string => shown(heldTogether(text));
  for (const { kind, lines } of blocks) {
    if (kind === 'fixed') {
      close();
      out.push(`<pre>${lines.map(shown).join('\n')}</pre>`);
    } else if (kind === 'choices') paragraph.push(...lines.map(flowing));
    else if (kind === 'caution') paragraph.push(`<strong>${flowing(unwrapped(lines))}</strong>`);
    else paragraph.push(flowing(unwrapped(lines)));
  }
  if (more !== undefined) paragraph.push(`<em>${escapeHtml(more)}</em>`);
  close();
  return out.join('');
}
const pageHtml = (page: Page, more: string | undefined): string =>
  `<p><strong>${escapeHtml(defang(heldTogether(page.headline)))}</strong></p>${blocksHtml(page.blocks, more)}`;
const pageText = ({ headline, blocks }: Page): string => [headline, ...blocks.flatMap((b) => b.lines)].map(defang).join('\n');

/** A message that is too large keeps its first answers; the others are there for `more`. */
function bodies({ pages, rest }: Laid, { prefix }: RenderOptions): { body: string; html: string; rest: readonly string[]; shown: number } {
  for (let shown = pages.length; ; shown--) {
    const hidden = pages
      .slice(shown)
      .flatMap((p) => [
        ...asRest([
          { name: 'the other answers', fixed: false, lines: [p.headline] },
          ...p.blocks.flatMap(({ kind, name, lines }) => (kind === 'choices' ? [] : [{ name, fixed: kind === 'fixed', lines }])),
        ]),
        ...p.rest,
      ]);
    const kept = shown === pages.length ? rest : [...pages.slice(0, shown).flatMap((p) => restOf(p, false)), ...hidden];
    const more = moreLine(kept, prefix);
    const visible = pages.slice(0, shown);
    const body = [visible.map(pageText).join('\n\n'), ...(more === undefined ? [] : [more])].join('\n');
    const html = visible.map((p, at) => pageHtml(p, at === visible.length - 1 ? more : undefined)).join('');
    if (shown <= 1 || Buffer.byteLength(body) + Buffer.byteLength(html) <= longestMessage) return { body, html, rest: kept, shown };
  }
}

/**
 * The message for a reply: plain body and HTML that say the same, the lines kept for `more`, and what its numbers stand for.
 * A reply without answers is silence: both bodies are empty.
 */
export function renderReply(reply: Pick<Reply, 'answers'>, options: RenderOptions = {}): Rendered {
  if (reply.answers.length === 0) return { body: '', html: '', rest: [], choices: [] };
  const laid = laidOut(reply, options);
  const { body, html, rest, shown } = bodies(laid, options);
  const choices = laid.pages.slice(0, shown).flatMap((p) => p.choices);
  return { body, html, rest: rest.map(clean), choices, ...(laid.chart === undefined ? {} : { chart: laid.chart }) };
}
