/** `npm run read -- 'LINE'`: how the reader came to what it makes of a line: the tree, the price of each token, the runner-up. */

import type { Setting } from '../language/setting.js';
import { writeReading } from '../language/write.js';
import { describeEdge } from './describe.js';
import { requestsOf } from './read.js';

export function trace(line: string, setting: Setting): string {
  return requestsOf(line, setting)
    .flatMap(({ text, tokens, candidates, chart }) => [
      `"${text}" (${chart.edges} edges)`,
      ...candidates.flatMap(({ reading, price, kind, left }, n) => [
        `${n + 1}. ${price.toFixed(2)} ${kind}: ${writeReading(reading, setting)}`,
        `   left over: ${left.map((at) => tokens[at]?.text ?? '').join(' ') || '-'}`,
      ]),
      ...(chart.rows[0]?.tiles.map((tile) => describeEdge(tile, tokens, 1)) ?? []),
    ])
    .join('\n');
}
