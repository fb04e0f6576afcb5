/** How facts stand in a member's export: in SI, with their units. */
import { z } from 'zod';
import type { Facts } from '../../../core/car.js';
import { dimensions } from '../../../core/dimensions.js';
import { catalog } from '../../../core/stubaxle.js';

const curve = z.object({ x: z.array(z.number()), y: z.array(z.number()), between: z.enum(['line', 'step']) });
const fact = z.object({
  value: z
    .union([z.number(), z.string(), curve])
    .describe('A number in `unit`, an option or a size as text, or a table in `unit` over `along`'),
  unit: z.string().optional().describe('SI; absent for words and plain numbers'),
  along: z.string().optional(),
  within: z.number().nonnegative().describe('Half-width that holds 19 in 20, in `unit` (of a table: a fraction)'),
  evidence: z.enum(['measured', 'spec', 'estimated']),
  source: z.string().describe('Facts of one source are wrong together'),
  told: z.object({ at: z.iso.datetime(), by: z.string(), event: z.string() }).optional().describe('When, by whom, in which event'),
});
export const exportedFacts = z.record(z.string(), fact);

/** SI units of a fact's numbers; absent for words and plain numbers. */
function unitsOf(path: string): { readonly unit?: string; readonly along?: string } {
  const entry = catalog.byPath.get(path)?.entry;
  const unit = entry?.dimension && dimensions[entry.dimension].unit;
  const along = entry?.along && dimensions[entry.along].unit;
  return { ...(unit ? { unit } : {}), ...(along ? { along } : {}) };
}
/** Checked against `exportedFacts` with the rest of the document. */
export const factsOf = (facts: Facts): Readonly<Record<string, object>> =>
  Object.fromEntries(
    [...facts].map(([path, { told, ...known }]) => [
      path,
      {
        ...known,
        ...unitsOf(path),
        ...(told === undefined ? {} : { told: { at: new Date(told.at).toISOString(), by: told.by, event: told.cause } }),
      },
    ]),
  );
