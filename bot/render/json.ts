/** The JSON line of the console: one for each message, of this schema. */
import { z } from 'zod';
import type { Amount, Answer, Cell } from '../../commands/answer.js';
import { type Dimension, dimensions } from '../../core/dimensions.js';

const dimensionNames = Object.keys(dimensions) as Dimension[];
const amountSchema = z
  .strictObject({
    si: z.number().describe('the value in the coherent SI unit of its dimension'),
    unit: z.string().describe('that SI unit; empty for a plain number'),
    dimension: z.enum(dimensionNames),
    within: z.number().nonnegative().exactOptional().describe('half-width that holds 19 in 20, SI'),
    text: z.string().describe("as shown, in the asker's units"),
  })
  .describe('a number, exact and as shown');
const cellSchema = z.union([amountSchema, z.string()]);
const choiceSchema = z.strictObject({ label: z.string(), line: z.string().describe('the line to send instead') });
const point = z.tuple([z.number(), z.number()]);
export const chartSchema = z.strictObject({
  title: z.string(),
  x: z.strictObject({ label: z.string(), unit: z.string() }),
  y: z.strictObject({ label: z.string(), unit: z.string() }),
  series: z
    .array(
      z.strictObject({
        name: z.string(),
        points: z.array(point),
        band: z
          .array(z.tuple([z.number(), z.number(), z.number()]))
          .exactOptional()
          .describe('x, low, high'),
      }),
    )
    .max(4),
  marks: z.array(z.strictObject({ x: z.number(), y: z.number(), label: z.string() })),
  words: z.string().describe('the values in words'),
});
const answerSchema = z
  .strictObject({
    kind: z.enum(['told', 'changed', 'asked', 'refused', 'beyond']),
    headline: z.string().describe('what was asked for, in one line'),
    amount: amountSchema.exactOptional(),
    columns: z.array(z.string()).exactOptional().describe("heads of the rows' cells"),
    rows: z.array(z.strictObject({ label: z.string(), cells: z.array(cellSchema) })),
    notes: z.array(z.string()),
    echoes: z.array(z.string()).describe('what was read that was not literal'),
    assumptions: z.array(z.string()),
    cautions: z.array(z.string()),
    choices: z.array(choiceSchema),
    next: z.array(choiceSchema),
    chart: chartSchema.exactOptional(),
    further: z
      .array(
        z.strictObject({
          name: z.string(),
          columns: z.array(z.string()).exactOptional(),
          rows: z.array(z.strictObject({ label: z.string(), cells: z.array(cellSchema) })).exactOptional(),
          notes: z.array(z.string()).exactOptional(),
        }),
      )
      .exactOptional()
      .describe('what the first screen leaves out, in parts with names'),
    continued: z.array(z.string()).exactOptional().describe('lines of an earlier answer, for `more`'),
    reference: z.string().exactOptional().describe('to quote, when something broke on our side'),
  })
  .describe('one line of the message, answered');
export const messageSchema = z
  .strictObject({
    as: z.string().describe('who spoke'),
    room: z.string().describe('where'),
    said: z.string().describe('the message, as it was read'),
    silent: z.boolean().describe('true when the message gets no reply; there are no answers then'),
    answers: z.array(answerSchema).describe('one a line of the message that asks for something, in order'),
    text: z.string().describe('the reply as it would be sent: one page in plain text'),
    more: z.number().int().nonnegative().describe('lines kept for `more`'),
    files: z.array(z.string()).describe('paths of the files that came with the reply (a chart)'),
  })
  .describe('one message and its reply');
export type Message = z.infer<typeof messageSchema>;
type AnswerJson = z.infer<typeof answerSchema>;

const amountJson = ({ si, dimension, within, text }: Amount): z.infer<typeof amountSchema> => ({
  si,
  unit: dimensions[dimension].unit,
  dimension,
  ...(within === undefined ? {} : { within }),
  text,
});
const cellJson = (cell: Cell) => (typeof cell === 'string' ? cell : amountJson(cell));

/** An Answer as JSON has it: the same, each amount with its SI unit. Every field is named here, so that nothing new slips out undocumented. */
export function answerJson(a: Answer): AnswerJson {
  return {
    kind: a.kind,
    headline: a.headline,
    ...(a.amount === undefined ? {} : { amount: amountJson(a.amount) }),
    ...(a.columns === undefined ? {} : { columns: [...a.columns] }),
    rows: a.rows.map(({ label, cells }) => ({ label, cells: cells.map(cellJson) })),
    notes: [...a.notes],
    echoes: [...a.echoes],
    assumptions: [...a.assumptions],
    cautions: [...a.cautions],
    choices: a.choices.map(({ label, line }) => ({ label, line })),
    next: a.next.map(({ label, line }) => ({ label, line })),
    ...(a.chart === undefined ? {} : { chart: chartJson(a.chart) }),
    ...(a.further === undefined
      ? {}
      : {
          further: a.further.map(({ name, columns, rows, notes }) => ({
            name,
            ...(columns === undefined ? {} : { columns: [...columns] }),
            ...(rows === undefined ? {} : { rows: rows.map(({ label, cells }) => ({ label, cells: cells.map(cellJson) })) }),
            ...(notes === undefined ? {} : { notes: [...notes] }),
          })),
        }),
    ...(a.continued === undefined ? {} : { continued: [...a.continued] }),
    ...(a.reference === undefined ? {} : { reference: a.reference }),
  };
}
const chartJson = ({ title, x, y, series, marks, words }: NonNullable<Answer['chart']>): z.infer<typeof chartSchema> => ({
  title,
  x: { ...x },
  y: { ...y },
  series: series.map(({ name, points, band }) => ({
    name,
    points: points.map(([a, b]): [number, number] => [a, b]),
    ...(band === undefined ? {} : { band: band.map(([a, b, c]): [number, number, number] => [a, b, c]) }),
  })),
  marks: marks.map((m) => ({ ...m })),
  words,
});

/** One line of JSON, without its line feed. A number that is not finite is a mistake of ours and throws: JSON would make it null. */
export const jsonLine = (message: Message): string => JSON.stringify(messageSchema.parse(message));
