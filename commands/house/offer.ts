/** A change whose words had to be mended is offered, never run. */
import { answer } from '../answer.js';
import { lineOf } from '../canonical.js';
import type { Outcome } from '../command.js';
import type { Context } from '../context.js';
import type { Reading } from '../reading.js';

export function offer(reading: Reading, context: Context): Outcome {
  const line = lineOf(reading, context);
  return { answer: answer('asked', `Did you mean: ${line}?`, { choices: [{ label: line, line }] }) };
}
