/** The rest of the last answer. */
import { answer } from '../answer.js';
import type { Command } from '../command.js';
import { refused } from './own.js';

/** Of an answer that told of a clubmate's car, which may not be seen any more. */
export const notSharedAnyMore = 'What the last answer was worked out from is not shared here any more; ask again.';
export const more: Command = {
  word: 'more',
  also: ['the rest', 'go on'],
  group: 'house',
  summary: 'The lines of the last answer that did not fit.',
  examples: [{ line: 'more', does: 'after an answer that says so' }],
  takes: 'nothing',
  changes: false,
  run(_, context) {
    const { rest, closed } = context.conversation;
    if (closed) return refused(notSharedAnyMore);
    return rest.length === 0
      ? refused('There is nothing more to the last answer.', 'help')
      : { answer: answer('told', 'The rest:', { continued: rest }) };
  },
};
