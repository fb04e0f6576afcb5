/** All that the store holds of a member, as a document of their own. */
import { z } from 'zod';
import { dimensions } from '../../core/dimensions.js';
import { catalog } from '../../core/stubaxle.js';
import { carsOf } from './cars.js';
import { holders } from './holders.js';
import { chosenCar, findMember } from './members.js';
import { membershipsOf } from './memberships.js';
import { partsOf, storedPart } from './parts.js';
import { ownHistory } from './revisions.js';
import { setupsOf } from './setups.js';
import { roomsOfCar } from './shares.js';
import type { Store } from './store.js';

const moment = z.iso.datetime().describe('UTC');
const curve = z.object({ x: z.array(z.number()), y: z.array(z.number()), between: z.enum(['line', 'step']) });
const fact = z.object({
  value: z
    .union([z.number(), z.string(), curve])
    .describe('A number in `unit`, an option or a size as text, or a table in `unit` over `along`'),
  unit: z.string().optional().describe('SI; absent for words and plain numbers'),
  along: z.string().optional(),
  within: z.number().nonnegative().describe('Half-width that holds 19 in 20, in `unit` (of a table: a fraction)'),
  evidence: z.enum(['measured', 'spec', 'estimated']),
  source: z.string(),
});
const revision = z.object({
  number: z.int(),
  parent: z.int().optional(),
  at: moment,
  line: z.string().describe('What was typed; empty once it was redacted'),
  measuredIn: z.int().optional().describe('The revision in which ride heights and scale readings were taken'),
  undoes: z.int().optional(),
  facts: z.record(z.string(), fact),
});
/** The document's format; a later version keeps what this one says. */
export const memberExport = z.object({
  format: z.literal('stubaxle member export'),
  version: z.literal(1),
  exported: moment,
  member: z.object({ id: z.string(), name: z.string(), units: z.enum(['us', 'metric']), decimalMark: z.enum(['.', ',']) }).optional(),
  cars: z.array(
    z.object({
      name: z.string(),
      chosen: z.boolean(),
      sharedIn: z.array(z.string()).describe('Room ids'),
      head: z.int(),
      revisions: z.array(revision).describe('Oldest first'),
      setups: z.array(z.object({ name: z.string(), revision: z.int() })),
      parts: z
        .array(storedPart.extend({ at: moment, line: z.string().describe('What was typed; empty once it was redacted') }))
        .describe('The parts box; values in SI, minutes of work, money as it was told'),
    }),
  ),
  rooms: z.array(z.object({ room: z.string(), state: z.string(), mayChangeRoom: z.boolean(), name: z.string().optional() })),
  texts: z.array(z.object({ what: z.string(), room: z.string().optional(), at: moment.optional(), text: z.string() })),
  notIncluded: z.array(z.string()),
});
export type MemberExport = z.infer<typeof memberExport>;

const notIncluded = [
  'Ids of events that were handled: they are kept, say nothing of their content, and stop a message from being answered twice.',
  "What the homeserver and other people's devices hold of your messages: ask those who run them.",
  'Backups that whoever runs this bot has made: they hold what was true when they were made.',
  'Worked-out figures: they are computed from these facts whenever you ask.',
];
/** SI units of a fact's numbers; absent for words and plain numbers. */
function unitsOf(path: string): { readonly unit?: string; readonly along?: string } {
  const entry = catalog.byPath.get(path)?.entry;
  const unit = entry?.dimension && dimensions[entry.dimension].unit;
  const along = entry?.along && dimensions[entry.along].unit;
  return { ...(unit ? { unit } : {}), ...(along ? { along } : {}) };
}
const time = (at: number): string => new Date(at).toISOString();

/** Everything held of the member, checked against `memberExport`. A member whom the bot has never met gets a document with nothing in it. */
export function exportMember(store: Store, id: string, at: number): MemberExport {
  const member = findMember(store, id);
  const chosen = chosenCar(store, id);
  return memberExport.parse({
    format: 'stubaxle member export',
    version: 1,
    exported: time(at),
    member: member && { id: member.id, name: member.name, ...member.preferences },
    cars: carsOf(store, id).map((car) => ({
      name: car.name,
      chosen: car.id === chosen,
      sharedIn: roomsOfCar(store, car.id),
      head: car.head,
      revisions: [...ownHistory(store, car.id, id, Number.MAX_SAFE_INTEGER)].reverse().map((made) => ({
        number: made.id,
        parent: made.parent,
        at: time(made.at),
        line: made.why,
        measuredIn: made.measuredIn,
        undoes: made.undoes,
        facts: Object.fromEntries([...made.facts].map(([path, told]) => [path, { ...told, ...unitsOf(path) }])),
      })),
      setups: setupsOf(store, car.id, id),
      parts: partsOf(store, car.id, id).map(({ id: _, ...part }) => ({ ...part, at: time(part.at) })),
    })),
    rooms: membershipsOf(store, id),
    texts: holders
      .flatMap((holder) => holder.texts(store, id))
      .map((held) => ({ ...held, at: held.at === undefined ? undefined : time(held.at) })),
    notIncluded,
  });
}
