/** The room: its prefix, and leaving it. */
import { answer } from '../answer.js';
import type { Command } from '../command.js';
import { refused } from './own.js';

export const prefix: Command = {
  word: 'prefix',
  also: ['set prefix'],
  group: 'house',
  summary: 'The mark that lines for me begin with in this room; for who may change the room.',
  examples: [{ line: 'prefix ?', does: 'lines begin with ? from now on' }],
  takes: 'text',
  changes: true,
  run(reading, context) {
    const mark = (reading.rest.trim() || reading.names.join(' ').trim()).normalize('NFKC');
    if (context.room.direct) return refused('A direct chat needs no prefix: just type.', 'help');
    if (mark === '') return refused('Which mark shall it be?', 'prefix !');
    if (mark.startsWith('/'))
      return refused(
        `Many chat clients take a line that begins with / as a command of their own, so that it never comes to me.`,
        'prefix !',
      );
    if ([...mark].length > 3 || !/^[\p{P}\p{S}]+$/u.test(mark) || /[<>&`"'@#]/.test(mark)) {
      return refused('A prefix is 1 to 3 marks such as ! or ? or %, without letters and spaces.', 'prefix !');
    }
    return {
      answer: answer('changed', `Lines for me begin with ${mark} in this room.`, {
        notes: ['Only a member who may change the room can set it.'],
      }),
      changes: [{ change: 'prefix', room: context.room.id, prefix: mark }],
    };
  },
};

export const leave: Command = {
  word: 'leave',
  also: ['leave room', 'go away', 'leave this room'],
  group: 'house',
  summary: 'I leave this room; cars shared here are no longer seen here.',
  examples: [{ line: 'leave', does: 'asks first' }],
  takes: 'nothing',
  changes: true,
  run: (_, context) =>
    context.room.direct
      ? refused('This is your direct chat; leave it, and I am gone.', 'help')
      : {
          answer: answer('asked', 'Shall I leave this room?', {
            choices: [
              { label: 'leave', line: 'leave now' },
              { label: 'stay', line: 'help' },
            ],
          }),
        },
};
export const leaveNow: Command = {
  word: 'leave now',
  also: [],
  group: 'house',
  summary: 'I leave this room at once.',
  examples: [{ line: 'leave now', does: 'without asking' }],
  takes: 'nothing',
  changes: true,
  run: (_, context) => ({ answer: answer('changed', 'Goodbye.'), changes: [{ change: 'leave room', room: context.room.id }] }),
};
