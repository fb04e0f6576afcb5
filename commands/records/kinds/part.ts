/** What is in the parts box of a car: what its owner can change on it. Nobody else ever sees it, also where the car is shared. */

import { z } from 'zod';
import { isInput } from '../../../core/catalog.js';
import { pathAt, placesOf } from '../../../core/engine.js';
import { catalog } from '../../../core/stubaxle.js';
import type { Garage } from '../../context.js';
import { currencies, type NewPart, type Part } from '../../parts/part.js';
import { thingText } from '../../parts/write.js';
import { added, removed } from '../change.js';
import { FactsRefused, format } from '../facts.js';
import type { Held } from '../held.js';
import type { Kind } from '../kind.js';
import { entryNow } from '../renamed.js';

const amount = z.number();
const possible = z.discriminatedUnion('is', [
  z.strictObject({ is: z.literal('values'), values: z.array(z.union([amount, z.string().max(60)])).min(1) }),
  z
    .strictObject({ is: z.literal('range'), from: amount, to: amount, step: amount.positive() })
    .refine(({ from, to }) => from < to, 'a range that rises'),
]);
const stored = z.strictObject({
  facts: z.array(z.strictObject({ entry: z.string().transform(entryNow), places: z.array(z.string()).min(1), can: possible })),
  note: z.string().min(1).max(80).optional(),
  minutes: amount.nonnegative().optional(),
  price: z.strictObject({ amount: amount.nonnegative(), currency: z.enum(currencies) }).optional(),
});
export type PartData = z.infer<typeof stored>;

/** What is wrong with it: an input, a place or a value that the catalog does not know. */
function problem({ facts, note }: PartData): string | undefined {
  if (facts.length === 0 && note === undefined) return 'A part is an input with its values, or a note.';
  for (const { entry, places, can } of facts) {
    const found = catalog.entries.find(({ path }) => path === entry);
    if (!found || !isInput(found) || !places.every((place) => placesOf(found.scope).includes(place)))
      return `"${entry}" at ${places.join(', ')} is not something that can be changed on a car.`;
    for (const value of can.is === 'range' ? [can.from, can.to] : can.values) {
      try {
        format.write(new Map([[pathAt(places[0] ?? '', found), { value, within: 0, evidence: 'spec', source: 'parts box' }]]));
      } catch (refused) {
        if (refused instanceof FactsRefused) return refused.message;
        throw refused;
      }
    }
  }
  return undefined;
}

export const parts: Kind<PartData, number> = {
  name: 'part',
  owner: 'car',
  schema: stored.superRefine((part, context) => {
    const message = problem(part);
    if (message !== undefined) context.addIssue({ code: 'custom', message });
  }),
  rows(was, is, { preferences }) {
    const thing = (held: Held<PartData> | undefined): string =>
      held === undefined ? 'nothing' : thingText({ ...held.data, line: '' }, preferences);
    return [{ label: 'in the box', cells: [thing(was), thing(is)] }];
  },
  exported: {
    as: 'parts',
    schema: stored
      .extend({ at: z.iso.datetime(), line: z.string().describe('What was typed; empty once it was redacted') })
      .describe('The parts box; values in SI, minutes of work, money as it was told'),
    write: ({ data, told, text }) => ({ ...data, at: new Date(told?.at ?? 0).toISOString(), line: text }),
  },
  gone: 'That is not in the box any more.',
};
/** In the order of telling; own cars only. */
export const partsOf = ({ records }: Pick<Garage, 'records'>, car: number): readonly Part[] =>
  records.list(parts, { car }).map(({ id, data, text }) => ({ ...data, id, line: text }));
export const addedPart = (car: number, { line, ...part }: NewPart) => added(parts, { car }, stored.parse(part), line);
export const removedPart = ({ id }: Part) => removed(parts, { id });
