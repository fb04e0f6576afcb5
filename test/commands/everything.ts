/** An answer as text, for tests. */
import type { Answer } from '../../commands/answer.js';

/** All that an answer says, one part a line. */
export const everything = (answer: Answer): string =>
  [
    answer.headline,
    ...answer.rows.map(({ label, cells }) => [label, ...cells.map((cell) => (typeof cell === 'string' ? cell : cell.text))].join(' | ')),
    ...answer.notes,
    ...answer.echoes,
    ...answer.assumptions,
    ...answer.cautions,
    ...answer.choices.map(({ line }) => `> ${line}`),
    ...answer.next.map(({ line }) => `+ ${line}`),
  ].join('\n');
