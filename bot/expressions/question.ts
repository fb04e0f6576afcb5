/** What the bot and its thread for sums tell each other. */
import { z } from 'zod';
import type { Sum, WorkedOut } from '../../commands/sums/sum.js';

const base = z.tuple([z.number(), z.number(), z.number(), z.number(), z.number()]).readonly();
export const sumSchema: z.ZodType<Sum> = z.object({
  text: z.string(),
  names: z.map(
    z.string(),
    z.object({
      said: z.string(),
      meant: z
        .array(
          z.object({
            // A number that is too large is refused by the walk, in a sentence.
            si: z.number().or(z.literal([Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY])),
            base,
            points: z.literal([0, 1]),
            difference: z.number().exactOptional(),
            percent: z.boolean().exactOptional(),
          }),
        )
        .readonly(),
    }),
  ),
});
const way = z.object({
  value: z.number(),
  base,
  points: z.number(),
  percent: z.boolean(),
  assumed: z.array(z.enum(['percent of', 'radians'])).readonly(),
  meaning: z.map(z.string(), z.number()),
});
export const workedSchema: z.ZodType<WorkedOut> = z.union([
  z.object({ ways: z.tuple([way], way).readonly() }),
  z.object({ refused: z.string() }),
]);
