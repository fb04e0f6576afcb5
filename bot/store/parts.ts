/** The parts box of a car: what its owner can change on it. Nobody else ever sees it, also where the car is shared. */
import { z } from 'zod';
import { currencies, type NewPart, type Part } from '../../commands/parts/part.js';
import { isInput } from '../../core/catalog.js';
import { pathAt, placesOf } from '../../core/engine/places.js';
import { catalog } from '../../core/stubaxle.js';
import { FactsRefused, format } from './facts.js';
import { prepared, type Store } from './store.js';

const amount = z.number();
const possible = z.discriminatedUnion('is', [
  z.strictObject({ is: z.literal('values'), values: z.array(z.union([amount, z.string().max(60)])).min(1) }),
  z
    .strictObject({ is: z.literal('range'), from: amount, to: amount, step: amount.positive() })
    .refine(({ from, to }) => from < to, 'a range that rises'),
]);
/** How a part stands in the store and in an export. */
export const storedPart = z.strictObject({
  facts: z.array(z.strictObject({ entry: z.string(), places: z.array(z.string()).min(1), can: possible })),
  note: z.string().min(1).max(80).optional(),
  minutes: amount.nonnegative().optional(),
  price: z.strictObject({ amount: amount.nonnegative(), currency: z.enum(currencies) }).optional(),
});
type Stored = z.infer<typeof storedPart>;

/** @throws FactsRefused for an input, a place or a value that the catalog does not know. */
function check(part: Stored): Stored {
  if (part.facts.length === 0 && part.note === undefined) throw new FactsRefused('A part is an input with its values, or a note.');
  for (const { entry, places, can } of part.facts) {
    const found = catalog.entries.find(({ path }) => path === entry);
    if (!found || !isInput(found) || !places.every((place) => placesOf(found.scope).includes(place)))
      throw new FactsRefused(`"${entry}" at ${places.join(', ')} is not something that can be changed on a car.`);
    const values = can.is === 'range' ? [can.from, can.to] : can.values;
    for (const value of values)
      format.write(new Map([[pathAt(places[0] ?? '', found), { value, within: 0, evidence: 'spec' as const, source: 'parts box' }]]));
  }
  return part;
}
interface Row {
  readonly id: number;
  readonly at: number;
  readonly part: string;
  readonly line: string;
}
const on = prepared((db) => ({
  add: db.prepare<[number, number, string, string, string]>('INSERT INTO parts (car, at, part, line, cause) VALUES (?, ?, ?, ?, ?)'),
  of: db.prepare<[number, string], Row>(
    'SELECT parts.id, at, part, line FROM parts JOIN cars ON cars.id = parts.car WHERE cars.id = ? AND cars.owner = ? ORDER BY parts.id',
  ),
  forget: db.prepare<[number, number]>('DELETE FROM parts WHERE id = ? AND car = ?'),
  eraseText: db.prepare<[string]>("UPDATE parts SET line = '' WHERE cause = ? AND line <> ''"),
}));
/** The caller has made sure that the car is the asker's. @throws FactsRefused */
export function addPart(store: Store, car: number, { line, ...part }: NewPart, at: number, cause: string): number {
  const stored = storedPart.safeParse(part);
  if (!stored.success) throw new FactsRefused(`That is no part of a box: ${stored.error.issues[0]?.message ?? 'it can not be read'}.`);
  return Number(on(store).add.run(car, at, JSON.stringify(check(stored.data)), line, cause).lastInsertRowid);
}
export interface HeldPart extends Part {
  readonly at: number;
}
/** None for another member's car. @throws FactsRefused for what this catalog does not know: never dropped silently. */
export const partsOf = (store: Store, car: number, owner: string): readonly HeldPart[] =>
  on(store)
    .of.all(car, owner)
    .map(({ id, at, part, line }) => ({ ...check(storedPart.parse(JSON.parse(part))), id, at, line }));
/** Whether it was there. */
export const forgetPart = (store: Store, car: number, part: number): boolean => on(store).forget.run(part, car).changes === 1;
/** Redaction: the words go, what they put into the box stays. */
export const erasePartText = (store: Store, cause: string): void => void on(store).eraseText.run(cause);
