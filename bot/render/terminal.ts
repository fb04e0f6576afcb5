/** A reply for a terminal: the same lines, with colour where it helps and is wanted. */
import { styleText } from 'node:util';
import { wrapped } from './clean.js';
import type { Block, Page } from './page.js';
import { type Laid, moreLine } from './reply.js';

export interface TerminalOptions {
  readonly colour: boolean;
  /** For headlines, which are not kept to a phone's width. */
  readonly columns: number;
}
/** Colour only on a terminal that has it, and never against `NO_COLOR` (any value that is not empty: no-color.org). */
export const wantsColour = (stream: { readonly isTTY?: boolean }, environment: NodeJS.ProcessEnv): boolean =>
  stream.isTTY === true && (environment.NO_COLOR ?? '') === '' && environment.TERM !== 'dumb';

type Style = Parameters<typeof styleText>[0];
const headlineStyle: Readonly<Record<Page['kind'], Style>> = {
  told: ['bold'],
  changed: ['bold', 'green'],
  asked: ['bold', 'cyan'],
  refused: ['bold', 'yellow'],
  beyond: ['bold', 'yellow'],
};
const blockStyle: Readonly<Partial<Record<Block['kind'], Style>>> = { caution: ['yellow'], choices: ['cyan'] };

/** The text to print for a reply; lines end with a line feed. Empty for silence. */
export function terminalText({ pages, rest }: Laid, { colour, columns }: TerminalOptions): string {
  const paint = (style: Style | undefined, text: string): string =>
    colour && style !== undefined ? styleText(style, text, { validateStream: false }) : text;
  const shown = pages.map(({ kind, headline, blocks }) =>
    [
      ...wrapped(headline, Math.max(20, columns)).map((l) => paint(headlineStyle[kind], l)),
      ...blocks.flatMap((b) => b.lines.map((l) => paint(blockStyle[b.kind], l))),
    ].join('\n'),
  );
  const more = moreLine(rest);
  const text = [shown.join('\n\n'), ...(more === undefined ? [] : [paint(['dim'], more)])].join('\n');
  return text === '' ? '' : `${text}\n`;
}
