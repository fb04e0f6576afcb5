/** A change whose words had to be mended, or that may be a remark, is offered, never run. */
import { answer } from '../answer.js';
import { lineOf } from '../canonical.js';
import type { Outcome } from '../command.js';
import type { Context } from '../context.js';
import type { Reading } from '../reading.js';
import { typed } from '../show/typed.js';

export function offer(reading: Reading, context: Context): Outcome {
  // A canonical line has no names; what ends in them has them as they were typed.
  const named = reading.names.length > 0 && reading.verb !== undefined && reading.verb !== 'save';
  const line = named ? `${reading.verb} ${reading.rest}` : lineOf(reading, context);
  return { answer: answer('asked', `Did you mean: ${typed(line, context.room)}?`, { choices: [{ label: line, line }] }) };
}
