/** How long a line takes to read, once the vocabulary is made: the mean over every line of the corpora, the median of several rounds. */
import { performance } from 'node:perf_hooks';
import { read } from '../../commands/resolve.js';
import { languageLines } from '../commands/lines/language.js';
import { ownLines } from '../commands/lines/own.js';
import { hostileLines, phoneLines } from '../commands/lines/phone.js';
import { expand } from '../commands/reads.js';
import { setting } from '../commands/setting.js';

const rounds = 15;
const warmUp = 5;

/** Milliseconds for one line. */
export function measureLines(): { readonly lineMs: number } {
  const lines = [...phoneLines, ...hostileLines, ...languageLines, ...ownLines].map(([line]) => expand(line));
  const round = (): number => {
    const start = performance.now();
    for (const line of lines) read(line, setting);
    return (performance.now() - start) / lines.length;
  };
  for (let n = 0; n < warmUp; n++) round();
  const times = Array.from({ length: rounds }, round).sort((a, b) => a - b);
  return { lineMs: times[Math.floor(rounds / 2)] ?? Number.NaN };
}
