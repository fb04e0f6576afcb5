/** The console: the same bot without a homeserver, for one terminal. Piped input is a script: each line a message. */
import { relative } from 'node:path';
import { createInterface } from 'node:readline';
import { type Said, Session } from './console/session.js';
import { clean } from './render/clean.js';
import { answerJson, jsonLine } from './render/json.js';
import { laidOut } from './render/reply.js';
import { terminalText, wantsColour } from './render/terminal.js';
import type { World } from './work/world.js';
import type { Work } from './work.js';

export interface ConsoleOptions {
  readonly world: World;
  readonly work: Pick<Work, 'ask'>;
  readonly input: NodeJS.ReadableStream & { readonly isTTY?: boolean };
  readonly output: NodeJS.WritableStream & { readonly isTTY?: boolean; readonly columns?: number };
  readonly environment: NodeJS.ProcessEnv;
  /** One JSON line a message, and nothing else. */
  readonly json: boolean;
  /** Who speaks first. */
  readonly as: string;
  /** Where charts and exports are written. */
  readonly folder: string;
  /** Shown when somebody sits at the terminal. */
  readonly welcome: readonly string[];
  /** Ends the console, as the end of its input does. */
  readonly signal: AbortSignal;
}

function json(said: Said, line: string): string {
  return jsonLine({
    as: said.as,
    room: said.room,
    said: line,
    silent: said.answers.length === 0 && said.text === '',
    answers: said.answers.map(answerJson),
    text: said.text,
    more: said.rest.length,
    files: [...said.files],
  });
}

/** Runs until the input ends, `quit`, or the signal. One line is answered before the next is read. */
export async function runConsole(options: ConsoleOptions): Promise<void> {
  const { world, work, input, output, environment, as, folder, welcome, signal } = options;
  const session = new Session(world, work, folder, as);
  const sitting = input.isTTY === true && output.isTTY === true && !options.json;
  const colour = wantsColour(output, environment);
  const write = (text: string): Promise<void> =>
    new Promise((resolve) => (output.write(text) ? resolve() : void output.once('drain', resolve)));
  const prompt = (): string => `${session.as}${session.room === 'direct' ? ' (direct)' : ''}> `;
  const shown = (said: Said): string => {
    const text =
      said.answers.length === 0 ? said.text : terminalText(laidOut({ answers: said.answers }), { colour, columns: output.columns || 80 });
    const files = said.files.map((f) => `file: ${relative('', f) || f}`).join('\n');
    return [text.trimEnd(), files].filter((t) => t !== '').join('\n');
  };

  const lines = createInterface({
    input,
    ...(sitting ? { output, prompt: prompt(), historySize: 200 } : {}),
    crlfDelay: Number.POSITIVE_INFINITY,
  });
  // From here on, so that nothing that is typed during the welcome is lost.
  const typed = lines[Symbol.asyncIterator]();
  const end = (): void => lines.close();
  signal.addEventListener('abort', end, { once: true });
  lines.once('SIGINT', end);
  try {
    if (sitting) {
      await write(`${welcome.join('\n')}\n\n`);
      lines.prompt();
    }
    for await (const line of { [Symbol.asyncIterator]: () => typed }) {
      if (signal.aborted) break;
      if (!options.json && line.trim() === '') {
        if (sitting) lines.prompt();
        continue;
      }
      // Who is asked shows who asked, in a script too.
      if (!options.json && !sitting) await write(`${prompt()}${clean(line)}\n`);
      const said = await session.say(line);
      if (options.json) await write(`${json(said, line)}\n`);
      else {
        const text = shown(said);
        await write(text === '' ? '' : `${text}\n${sitting ? '' : '\n'}`);
      }
      if (said.ended) break;
      if (sitting) {
        lines.setPrompt(prompt());
        lines.prompt();
      }
    }
    if (sitting) await write('\n');
  } finally {
    signal.removeEventListener('abort', end);
    lines.close();
  }
}
