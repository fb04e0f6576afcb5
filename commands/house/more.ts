/** The rest of the last answer. */
import { answer } from '../answer.js';
import type { Command } from '../command.js';
import { refused } from './own.js';

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
    if (closed) return refused('What the last answer was worked out from is not shared here any more; ask again.');
    return rest.length === 0
      ? refused('There is nothing more to the last answer.', 'help')
      : { answer: answer('told', 'The rest:', { continued: rest }) };
  },
};
