/** What people say beside their questions: answered in one line, and nothing is done. */
import { answer } from '../answer.js';
import type { Command } from '../command.js';
import { told } from './own.js';

const plainly = (also: readonly string[], word: string, summary: string, does: string, run: Command['run']): Command => ({
  ...{ word, also, summary, run, group: 'house', takes: 'nothing', changes: false },
  examples: [{ line: word, does }],
});
const greetings = ['hi', 'hey', 'hi there', 'hey there', 'hello there', 'good morning', 'morning', 'evening', 'good evening', 'yo', 'sup'];
export const hello = plainly(
  greetings,
  'hello',
  'A greeting, and a line to begin with.',
  'a line to begin with',
  (_, { asker, garage }) => {
    const line = garage.chosen ? 'show everything' : 'tire 245/40R17 vs 255/40R17';
    return told(`Hello ${asker.name}. Ask as you would ask a clubmate.`, {
      next: [
        { label: line, line },
        { label: 'help', line: 'help' },
      ],
    });
  },
);

const pleased = [
  'thank you',
  'thx',
  'ty',
  'cheers',
  'cool',
  'nice',
  'great',
  'awesome',
  'perfect',
  'good bot',
  'lol',
  'haha',
  'ok',
  'okay',
  'got it',
];
export const thanks = plainly(pleased, 'thanks', 'A kind word; nothing is done.', 'is taken as meant', () => told('Any time.'));

const refusals = ['nevermind', 'nvm', 'forget it', 'forget that', 'no', 'nope', 'nah', 'no thanks', 'cancel', 'leave it'];
export const neverMind = plainly(
  refusals,
  'never mind',
  'Leaves an open question unanswered; nothing is changed.',
  'leaves what was asked or tried as it was',
  () => told('Nothing was changed.'),
);

const assents = ['yep', 'yeah', 'yup', 'sure', 'yes please', 'do it', 'please do'];
export const yes = plainly(assents, 'yes', 'Says which answers an open question has.', 'shows the choices again', (_, { conversation }) => {
  const { choices } = conversation;
  return choices.length === 0
    ? told('Nothing is open to say yes to.')
    : { answer: answer('asked', 'Which one? Say its number:', { choices }) };
});
