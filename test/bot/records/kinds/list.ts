/** A kind for tests alone: a list whose rows are mended by name, such as what shall be taken along for a car. Its file, and nothing else. */
import { z } from 'zod';
import { type Kind, rowByRow } from '../../../../commands/records/kind.js';

const row = z.strictObject({ name: z.string().min(1), count: z.int().positive('a count from 1 on'), note: z.string(), cause: z.string() });
const data = z.strictObject({ rows: z.array(row).max(20, 'A list holds 20 rows.') });
export type ListData = z.infer<typeof data>;

export const lists: Kind<ListData, number> = {
  name: 'test list',
  owner: 'car',
  schema: data,
  pieces: rowByRow<ListData, z.infer<typeof row>>(
    'rows',
    ({ rows }) => rows,
    ({ name }) => name,
  ),
  rows(was, is) {
    const names = [...new Set([...(was?.data.rows ?? []), ...(is?.data.rows ?? [])].map(({ name }) => name))];
    return names.flatMap((name) => {
      const [before, after] = [was, is].map((held) => held?.data.rows.find((one) => one.name === name));
      return JSON.stringify(before) === JSON.stringify(after)
        ? []
        : [{ label: name, cells: [before, after].map((one) => (one ? `${one.count} ${one.note}`.trim() : 'not listed')) }];
    });
  },
  redacted: ({ rows }, event) => ({ rows: rows.map((one) => (one.cause === event ? { ...one, note: '' } : one)) }),
  exported: {
    as: 'testLists',
    schema: z.strictObject({ rows: z.array(row.omit({ cause: true })), line: z.string() }),
    write: ({ data: { rows }, text }) => ({ rows: rows.map(({ cause: _, ...one }) => one), line: text }),
  },
  gone: 'That list is not there any more.',
};
