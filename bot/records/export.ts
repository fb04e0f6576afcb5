/** All that the store holds of a member, as a document of their own: each kind of record says how its records stand in it. */
import { z } from 'zod';
import type { Held } from '../../commands/records/held.js';
import { type Kind, plainOf } from '../../commands/records/kind.js';
import { cars } from '../../commands/records/kinds/car.js';
import { members } from '../../commands/records/kinds/member.js';
import { shares } from '../../commands/records/kinds/share.js';
import type { Kinds } from '../../commands/records/kinds.js';
import { withoutMember } from '../../commands/records/machine.js';
import type { Entry } from '../../commands/records/tables.js';
import { isFinal } from '../../commands/records/taking.js';
import { holders } from './holders.js';
import { membershipsOf } from './memberships.js';
import type { Store } from './store.js';
import { SqlTables } from './tables.js';

const moment = z.iso.datetime().describe('UTC');
const change = z.object({
  at: moment,
  what: z.string().describe('A kind of record'),
  before: z.unknown().optional().describe('Absent: it was not there'),
  after: z.unknown().optional(),
  takenBack: z.boolean(),
});
/** The document's format; a later version keeps what this one says. Beside what stands here, each kind of record has a list of its own. */
const base = z.object({
  format: z.literal('stubaxle member export'),
  version: z.literal(1),
  exported: moment,
  rooms: z.array(z.object({ room: z.string(), state: z.string(), mayChangeRoom: z.boolean(), name: z.string().optional() })),
  texts: z.array(z.object({ what: z.string(), room: z.string().optional(), at: moment.optional(), text: z.string() })),
  changes: z.array(change).describe('What the last changes were before and after: what undo goes by; oldest first'),
  notIncluded: z.array(z.string()),
});
const baseOfCar = z.object({
  name: z.string(),
  chosen: z.boolean(),
  sharedIn: z.array(z.string()).describe('Room ids'),
  head: z.int(),
});
type Listed = Readonly<Record<string, unknown>>;
export type MemberExport = z.infer<typeof base> & {
  readonly member?: unknown;
  readonly cars: readonly (z.infer<typeof baseOfCar> & Listed)[];
} & Listed;

/** A list under its own name for each kind that is exported. */
const listsOf = (kinds: readonly Kind[]): Record<string, z.ZodType> =>
  Object.fromEntries(kinds.flatMap(({ exported }) => (exported === undefined ? [] : [[exported.as, z.array(exported.schema)]])));
const ofCars = (kinds: Kinds): readonly Kind[] => kinds.all.filter(({ owner }) => owner === 'car');
const ofOthers = (kinds: Kinds): readonly Kind[] => kinds.all.filter((kind) => kind.owner !== 'car' && kind.name !== members.name);
/** What an export is checked against. */
export const exportFormat = (kinds: Kinds) =>
  base.extend({
    member: (members.exported?.schema ?? z.unknown()).optional(),
    cars: z.array(z.intersection(baseOfCar, z.object(listsOf(ofCars(kinds))))),
    ...listsOf(ofOthers(kinds)),
  });

const notIncluded = [
  'Ids of events that were handled: they are kept, say nothing of their content, and stop a message from being answered twice.',
  "What the homeserver and other people's devices hold of your messages: ask those who run them.",
  'Backups that whoever runs this bot has made: they hold what was true when they were made.',
  'Worked-out figures: they are computed from these facts whenever you ask.',
];
const time = (at: number): string => new Date(at).toISOString();

/** Everything held of the member. A member whom the bot has never met gets a document with nothing in it. */
export function exportMember(store: Store, id: string, at: number): MemberExport {
  const tables = new SqlTables(store);
  const member = tables.find(members, id);
  const written = (kind: Kind, held: readonly Held[]): Listed =>
    kind.exported === undefined ? {} : { [kind.exported.as]: held.map((one) => kind.exported?.write(one, tables)) };
  const lists = (kinds: readonly Kind[], of: (kind: Kind) => readonly Held[]): Listed =>
    Object.assign({}, ...kinds.map((kind) => written(kind, of(kind))));
  // Of a room's and the club's records those that the member is in.
  const theirs = (kind: Kind): readonly Held[] =>
    kind.owner === 'member'
      ? tables.list(kind, { member: id })
      : tables.list(kind, {}).filter((held) => withoutMember(kind, held, id) !== held);
  const document = {
    ...{ format: 'stubaxle member export', version: 1, exported: time(at) },
    ...(member === undefined ? {} : { member: members.exported?.write(member, tables) }),
    cars: tables.list(cars, { member: id }).map((car) => ({
      ...{ name: car.data.name, chosen: car.id === member?.data.chosen, head: car.data.head },
      sharedIn: tables.list(shares, { car: car.id }).map(({ of }) => of.room),
      ...lists(ofCars(store.kinds), (kind) => tables.list(kind, { car: car.id })),
    })),
    ...lists(ofOthers(store.kinds), theirs),
    changes: tables.journal
      .newest(id, Number.MAX_SAFE_INTEGER)
      .filter((entry) => !isFinal(entry))
      .map((entry) => changeOf(store, entry))
      .reverse(),
    rooms: membershipsOf(store, id),
    texts: holders
      .flatMap((holder) => holder.texts(store, id))
      .map((held) => ({ ...held, at: held.at === undefined ? undefined : time(held.at) })),
    notIncluded,
  };
  return exportFormat(store.kinds).parse(document);
}
function changeOf(store: Store, { kind, at, before, after, undone }: Entry): z.input<typeof change> {
  const image = (held: Held | undefined): Listed | undefined =>
    held && { ...held.of, data: plainOf(store.kinds.named(kind), held.data), ...(held.text === '' ? {} : { line: held.text }) };
  const images = { before: image(before), after: image(after) };
  return { at: time(at), what: kind, ...images, takenBack: undone !== undefined };
}
