/** How a car's facts stand in the store: one compact JSON object, checked on its way in and out by a schema derived from the input catalog. */
import { z } from 'zod';
import type { Fact, Facts } from '../../core/car.js';
import { canBeTold, type Entry, type Evidence, isRefusal, type Value } from '../../core/catalog.js';
import { pathAt, placesOf } from '../../core/engine/places.js';
import { catalog } from '../../core/stubaxle.js';
import { pathNow } from './renamed.js';

/** Facts that the catalog does not know in this form; the message is a sentence. */
export class FactsRefused extends Error {
  override readonly name = 'FactsRefused';
}
export interface FactsFormat {
  /** From an object of paths; its issues are sentences. */
  readonly schema: z.ZodType<Facts>;
  /** @throws FactsRefused for an unknown path, a condition of a question, or a value of the wrong kind. */
  write(facts: Facts): string;
  /** The same before it is text. */
  plain(facts: Facts): Readonly<Record<string, unknown>>;
  /** @throws FactsRefused likewise: stored facts that this catalog does not know are never dropped silently. */
  read(text: string): Facts;
}
/** As it is stored: `[value, within, evidence, source]`, and from version 0.2.0 on who told it: `at, by, cause`. */
type Stored = readonly [Value, number, keyof typeof evidences, string, ...(readonly [] | readonly [number, string, string])];

const evidences = { m: 'measured', s: 'spec', e: 'estimated' } as const satisfies Record<string, Evidence>;
const letters = { measured: 'm', spec: 's', estimated: 'e' } as const satisfies Record<Evidence, keyof typeof evidences>;

const curve = z
  .strictObject({ x: z.array(z.number()).min(1), y: z.array(z.number()), between: z.enum(['line', 'step']) })
  .refine((it) => it.x.length === it.y.length && it.x.every((x, at) => at === 0 || x > it.x[at - 1]!), 'a table whose first column rises');

function valueSchema(entry: Entry): z.ZodType<Value> {
  switch (entry.kind) {
    case 'quantity':
    case 'figure':
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
  for (const entry of entries) {
    // A condition of a question is given for one answer, and never saved with a car.
    if (!canBeTold(entry) || entry.scope === 'question') continue;
    for (const place of placesOf(entry.scope)) byPath.set(pathAt(place, entry), entry);
  }
  // An entry's schema is made when its first fact comes: most are never needed in one run, and one schema of all paths reads twenty times slower.
  const made = new Map<Entry, ReturnType<typeof factSchema>>();
  const schemaOf = (entry: Entry): ReturnType<typeof factSchema> => {
    const known = made.get(entry) ?? factSchema(entry);
    made.set(entry, known);
    return known;
  };
  const schema = z.unknown().transform((object, context): Facts => {
    const facts = new Map<string, Fact>();
    const refuse = (sentence: string): Facts => {
      context.addIssue({ code: 'custom', message: sentence });
      return z.NEVER;
    };
    if (typeof object !== 'object' || object === null || Array.isArray(object)) return refuse('These are not the facts of a car.');
    for (const [named, stored] of Object.entries(object)) {
      const path = pathNow(named);
      const entry = byPath.get(path);
      if (entry === undefined) return refuse(`"${path}" is not a fact that can be recorded of a car.`);
      const shape = Array.isArray(stored) && stored.length > 4 ? 'told' : 'plain';
      const read = schemaOf(entry)[shape].safeParse(stored);
      if (!read.success) return refuse(sentenceOf(path, entry, stored, read.error.issues[0]?.path[0] === 0));
      const fact = factFrom(read.data);
      // What was read is known to be sound, and is written again as it came.
      known.set(fact, { entry, stored: read.data });
      facts.set(path, fact);
    }
    return facts;
  });
  const known = new WeakMap<Fact, { readonly entry: Entry; readonly stored: Stored }>();
  const check = (object: unknown): Facts => {
    const checked = schema.safeParse(object);
    if (checked.success) return checked.data;
    throw new FactsRefused(checked.error.issues[0]?.message ?? 'These are not the facts of a car.');
  };
  const storedFact = (path: string, fact: Fact): Stored => {
    const sound = known.get(fact);
    if (sound !== undefined && sound.entry === byPath.get(path)) return sound.stored;
    const stored = storedFrom(fact);
    check({ [path]: stored });
    const entry = byPath.get(path);
    if (entry !== undefined) known.set(fact, { entry, stored });
    return stored;
  };
  const plain = (facts: Facts): Readonly<Record<string, Stored>> =>
    Object.fromEntries([...facts].map(([path, fact]) => [path, storedFact(path, fact)]));
  return {
    schema,
    plain,
    write: (facts) => JSON.stringify(plain(facts)),
    read: (text) => check(JSON.parse(text)),
  };
}
const factSchema = (entry: Entry) => {
  const known = [valueSchema(entry), z.number().nonnegative(), z.enum(['m', 's', 'e']), z.string().max(400)] as const;
  return { plain: z.tuple(known), told: z.tuple([...known, z.int(), z.string(), z.string()]) };
};
const sentenceOf = (path: string, entry: Entry, stored: unknown, ofValue: boolean): string =>
  ofValue
    ? `${path} wants ${wanted(entry)}, and ${came(Array.isArray(stored) ? stored[0] : stored)} came.`
    : `${path} came without how well it is known (a half-width of 0 or more, an evidence, a source).`;

/** Most sources begin with the event that told them: it is stored once. */
const short = (source: string, cause: string): string =>
  source.startsWith(`${cause}#`) && source[cause.length + 1] !== '#'
    ? source.slice(cause.length)
    : source.startsWith('#')
      ? `#${source}`
      : source;
const long = (source: string, cause: string): string =>
  source.startsWith('##') ? source.slice(1) : source.startsWith('#') ? `${cause}${source}` : source;
function storedFrom({ value, within, evidence, source, told }: Fact): Stored {
  if (told === undefined) return [value, within, letters[evidence], source];
  return [value, within, letters[evidence], short(source, told.cause), told.at, told.by, told.cause];
}
function factFrom([value, within, evidence, source, ...told]: Stored): Fact {
  if (told.length === 0) return { value, within, evidence: evidences[evidence], source };
  const [at, by, cause] = told;
  return { value, within, evidence: evidences[evidence], source: long(source, cause), told: { at, by, cause } };
}

/** The format of the real catalog. */
export const format = factsFormat(catalog.entries);
