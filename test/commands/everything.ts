/** An answer as text, for tests. */
import type { Answer, Row } from '../../commands/answer.js';

const rowText = ({ label, cells }: Row): string =>
  [label, ...cells.map((cell) => (typeof cell === 'string' ? cell : cell.text))].join(' | ');
/** All that an answer says, one part a line. */
export const everything = (answer: Answer): string =>
  [
    answer.headline,
    ...answer.rows.map(rowText),
    ...answer.notes,
    ...(answer.further ?? []).flatMap(({ name, rows = [], notes = [] }) => [name, ...rows.map(rowText), ...notes]),
    ...answer.echoes,
    ...answer.assumptions,
    ...answer.cautions,
    ...answer.choices.map(({ line }) => `> ${line}`),
    ...answer.next.map(({ line }) => `+ ${line}`),
  ].join('\n');
