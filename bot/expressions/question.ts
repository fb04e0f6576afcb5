/** What the bot and its thread for sums tell each other. */
import { z } from 'zod';

export const questionSchema = z.object({
  /** Prepared: what mathjs reads, with identifiers of our own for names. */
  text: z.string(),
  /** By identifier: the SI value, its coherent SI unit, and what the member calls it. */
  names: z.map(z.string(), z.object({ si: z.number(), unit: z.string(), said: z.string() })),
});
export type Question = z.infer<typeof questionSchema>;
const base = z.tuple([z.number(), z.number(), z.number(), z.number()]).readonly();
export const workedSchema = z.union([z.object({ value: z.number(), unit: z.string(), base }), z.object({ refused: z.string() })]);
export type Worked = z.infer<typeof workedSchema>;
