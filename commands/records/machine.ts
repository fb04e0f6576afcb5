/** The one state machine: what a change does to the tables, be they a message's draft or the store. */
import type { AddRecord, Change, RemoveRecord, ReplaceRecord } from './change.js';
import type { Held } from './held.js';
import type { Kind } from './kind.js';
import { cars, renameCar } from './kinds/car.js';
import { chooseCar, forgetCar, prefer } from './kinds/member.js';
import { keep } from './kinds/setup.js';
import { share, unshare } from './kinds/share.js';
import { makeCar, record } from './recording.js';
import { ChangeRefused, Moved } from './refused.js';
import { takeBack, undo } from './taking.js';
import type { Work } from './work.js';

/** @throws ChangeRefused, Moved, FactsRefused: the caller takes back what was done so far */
export function applyChange(work: Work, change: Change): void {
  switch (change.change) {
    case 'make car':
      makeCar(work, change);
      break;
    case 'record':
      record(work, change);
      break;
    case 'choose car':
      chooseCar(work, change);
      break;
    case 'rename car':
      renameCar(work, change);
      break;
    case 'forget car':
      forgetCar(work, change);
      break;
    case 'keep':
      keep(work, change);
      break;
    case 'share':
      share(work, change);
      break;
    case 'unshare':
      unshare(work, change);
      break;
    case 'prefer':
      prefer(work, change);
      break;
    case 'add record':
      addRecord(work, change);
      break;
    case 'replace record':
      replaceRecord(work, change);
      break;
    case 'remove record':
      removeRecord(work, change);
      break;
    case 'undo':
      undo(work, change);
      break;
    case 'take back':
      takeBack(work, change);
      break;
    case 'forget me':
      forgetMember(work);
      break;
    case 'prefix':
    case 'leave room':
    case 'export me':
      work.world.order(change);
      work.noteOrder(change.change);
      break;
  }
}

/** @throws ChangeRefused with the schema's sentence */
function checked<D>(kind: Kind<D>, data: unknown): D {
  const read = kind.schema.safeParse(data);
  if (read.success) return read.data;
  throw new ChangeRefused(read.error.issues[0]?.message ?? `That is no ${kind.name}.`);
}
function addRecord(work: Work, { kind: name, of, data, text }: AddRecord): void {
  const kind = work.kinds.numbered(name);
  const car = of.car === undefined ? {} : { car: work.kept(cars, of.car) };
  work.mine(kind, { ...of, ...car });
  work.add(kind, { ...of, ...car }, checked(kind, data), text);
}
function there(work: Work, name: string, id: Held['id']): { readonly kind: Kind; readonly held: Held } {
  const kind = work.kinds.named(name);
  const held = work.tables.find(kind, typeof id === 'number' ? work.kept(kind, id) : id);
  if (held === undefined) throw new ChangeRefused(kind.gone);
  work.mine(kind, held.of);
  return { kind, held };
}
function replaceRecord(work: Work, { kind: name, id, seen, data, text }: ReplaceRecord): void {
  const { kind, held } = there(work, name, id);
  if (held.told?.cause !== seen) throw new Moved(`The ${name} ${id} has changed since the message was worked out.`);
  work.put(kind, { ...held, data: checked(kind, data), told: work.told, text });
}
function removeRecord(work: Work, { kind: name, id }: RemoveRecord): void {
  const { kind, held } = there(work, name, id);
  work.remove(kind, held);
}
/** What is a room's or the club's stays without the member; all else goes. */
function forgetMember({ tables, kinds, asking, world }: Work): void {
  const { id } = asking.asker;
  for (const kind of kinds.all) {
    if (kind.owner !== 'room' && kind.owner !== 'club') continue;
    for (const held of tables.list(kind, {})) {
      const without = withoutMember(kind, held, id);
      if (without === undefined) tables.remove(kind, held.id);
      else if (without !== held) tables.replace(kind, without);
    }
  }
  tables.forget(id);
  world.order({ change: 'forget me' });
}
/** The same record when the member is not in it. */
export function withoutMember(kind: Kind, held: Held, member: string): Held | undefined {
  const data = kind.without === undefined ? held.data : kind.without(held.data, member);
  if (data === undefined) return undefined;
  if (held.told?.by === member) return { ...held, data, told: undefined, text: '' };
  return JSON.stringify(data) === JSON.stringify(held.data) ? held : { ...held, data };
}
