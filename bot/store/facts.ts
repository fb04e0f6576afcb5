/** How a car's facts stand in the store: one compact JSON object, checked on its way in and out by a schema derived from the input catalog. */
import { z } from 'zod';
import type { Fact, Facts } from '../../core/car.js';
import { type Entry, type Evidence, isInput, isRefusal, type Value } from '../../core/catalog.js';
import { pathAt, placesOf } from '../../core/engine/places.js';
import { catalog } from '../../core/stubaxle.js';

/** Facts that the catalog does not know in this form; the message is a sentence. */
export class FactsRefused extends Error {
  override readonly name = 'FactsRefused';
}
export interface FactsFormat {
  /** Path to `[value, within, evidence, source]`. */
  readonly schema: z.ZodType<Readonly<Record<string, StoredFact | undefined>>>;
  /** @throws FactsRefused for an unknown path, a condition of a question, or a value of the wrong kind. */
  write(facts: Facts): string;
  /** @throws FactsRefused likewise: stored facts that this catalog does not know are never dropped silently. */
  read(text: string): Facts;
}
type StoredFact = [Value, number, keyof typeof evidences, string];

const evidences = { m: 'measured', s: 'spec', e: 'estimated' } as const satisfies Record<string, Evidence>;
const letters = { measured: 'm', spec: 's', estimated: 'e' } as const satisfies Record<Evidence, keyof typeof evidences>;

const curve = z
  .strictObject({ x: z.array(z.number()).min(1), y: z.array(z.number()), between: z.enum(['line', 'step']) })
  .refine((it) => it.x.length === it.y.length && it.x.every((x, at) => at === 0 || x > it.x[at - 1]!), 'a table whose first column rises');

function valueSchema(entry: Entry): z.ZodType<Value> {
  switch (entry.kind) {
    case 'quantity':
      return z.number();
    case 'choice':
      return z.enum(entry.options ?? []);
    case 'curve':
      return curve;
    case 'designation':
      return z.string().superRefine((text, context) => {
        const read = entry.parse?.(text);
        if (read === undefined || isRefusal(read))
          context.addIssue({ code: 'custom', message: read?.refused ?? 'a text that can be read' });
      });
    default:
      throw new Error(`${entry.path} is not an input.`);
  }
}
const wanted = (entry: Entry): string => {
  if (entry.kind === 'choice') return `one of ${entry.options?.join(', ')}`;
  if (entry.kind === 'curve') return 'a table whose first column rises';
  return entry.kind === 'designation' ? 'a text that it can read' : 'a number';
};
const came = (value: unknown): string =>
  typeof value === 'object' ? 'something else' : typeof value === 'string' ? JSON.stringify(value) : String(value);

/** The format of the facts of all inputs of these entries, at all their places. */
export function factsFormat(entries: Iterable<Entry>): FactsFormat {
  const byPath = new Map<string, Entry>();
  const shape: Record<string, z.ZodOptional<z.ZodType<StoredFact>>> = {};
  for (const entry of entries) {
    // A condition of a question is given for one answer, and never saved with a car.
    if (!isInput(entry) || entry.scope === 'question') continue;
    const fact = z.tuple([valueSchema(entry), z.number().nonnegative(), z.enum(['m', 's', 'e']), z.string().max(400)]).optional();
    for (const place of placesOf(entry.scope)) {
      const path = pathAt(place, entry);
      byPath.set(path, entry);
      shape[path] = fact;
    }
  }
  const schema = z.strictObject(shape);
  const check = (object: unknown): Readonly<Record<string, StoredFact | undefined>> => {
    const checked = schema.safeParse(object);
    if (checked.success) return checked.data;
    const issue = checked.error.issues[0];
    if (issue?.code === 'unrecognized_keys') throw new FactsRefused(`"${issue.keys[0]}" is not a fact that can be recorded of a car.`);
    const [path, part] = issue?.path ?? [];
    const entry = typeof path === 'string' ? byPath.get(path) : undefined;
    if (entry === undefined || typeof path !== 'string') throw new FactsRefused('These are not the facts of a car.');
    if (part !== 0) throw new FactsRefused(`${path} came without how well it is known (a half-width of 0 or more, an evidence, a source).`);
    throw new FactsRefused(`${path} wants ${wanted(entry)}, and ${came(valueAt(object, path))} came.`);
  };
  return {
    schema,
    write(facts) {
      const stored = [...facts].map(([path, fact]) => [path, [fact.value, fact.within, letters[fact.evidence], fact.source]] as const);
      return JSON.stringify(check(Object.fromEntries(stored)));
    },
    read(text) {
      const facts = new Map<string, Fact>();
      for (const [path, fact] of Object.entries(check(JSON.parse(text))))
        if (fact !== undefined) facts.set(path, { value: fact[0], within: fact[1], evidence: evidences[fact[2]], source: fact[3] });
      return facts;
    },
  };
}
const valueAt = (object: unknown, path: string): unknown => {
  const fact: unknown = z.record(z.string(), z.unknown()).safeParse(object).data?.[path];
  return Array.isArray(fact) ? fact[0] : fact;
};

/** The format of the real catalog. */
export const format = factsFormat(catalog.entries);
