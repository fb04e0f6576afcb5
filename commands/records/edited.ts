/** A line that was edited: what it changed is taken back before it is worked out anew. */
import type { Context, Garage } from '../context.js';
import type { Change } from './change.js';
import { garageOver, sightOf } from './garage.js';
import { cars } from './kinds/car.js';
import { factName, type HeldRevision, revisions, sameFact } from './kinds/revision.js';
import type { Kinds } from './kinds.js';
import { applyChange } from './machine.js';
import { Overlay } from './overlay.js';
import { touchedBy } from './recording.js';
import type { Entry, Reads } from './tables.js';
import { drafted, type Work } from './work.js';

export interface Edited {
  /** As it would be without what the line changed. */
  readonly garage: Garage;
  /** To be made before those of the line as it is now. */
  readonly changes: readonly Change[];
  /** Heads of the cars on which that rests. */
  readonly read: readonly { readonly car: number; readonly head: number }[];
  /** All that it changed was taken back already, by an undo. */
  readonly undone: boolean;
  /** What it changed. */
  readonly entries: readonly Entry[];
}
type Asked = Pick<Context, 'garage' | 'event' | 'asker' | 'room' | 'now'>;
const workOn = (records: Overlay, kinds: Kinds, { event, asker, room, now }: Asked): Work =>
  drafted(records, kinds, { asker, room: room.id, at: now, cause: event.id, line: event.line });

/**
 * @param why what the history says where the line as it is now records nothing in its place
 * @throws ChangeRefused for what can't be taken back, or was changed again since
 */
export function withoutLine(asked: Asked, why: string, kinds: Kinds): Edited {
  const { garage, event, asker, room } = asked;
  // What an edit of it took back is gone already.
  const all = garage.records.journal.ofLine(event.line).filter(({ undone }) => undone !== event.line);
  const entries = all.filter(({ undone }) => undone === undefined);
  if (entries.length === 0) return { garage, changes: [], read: [], undone: all.length > 0, entries };
  const records = new Overlay(garage.records);
  const change: Change = { change: 'take back', line: event.line, why };
  applyChange(workOn(records, kinds, asked), change);
  const read = [...new Set(entries.flatMap(({ car }) => car ?? []))].flatMap((car) => {
    const head = garage.records.find(cars, car)?.data.head;
    return head === undefined ? [] : [{ car, head }];
  });
  return { garage: garageOver(records, sightOf(garage, asker.id, room.id)), changes: [change], read, undone: false, entries };
}

const headIn = (reads: Reads, car: number): HeldRevision | undefined => {
  const held = reads.find(cars, car);
  return held && reads.find(revisions, held.data.head);
};
/** What the line no longer says: names of what is as it was before it, now that it has changed what it changes. */
export function givenBack({ entries, garage: without }: Edited, changes: readonly Change[], asked: Asked, kinds: Kinds): readonly string[] {
  const was = asked.garage.records;
  const is = new Overlay(without.records);
  const work = workOn(is, kinds, asked);
  for (const change of changes) applyChange(work, change);
  const telling = { was, is, room: asked.room.id, preferences: asked.asker.preferences };
  const names = entries.flatMap((entry) => {
    const { kind: name, record, car } = entry;
    if (name === revisions.name && car !== undefined) {
      const [before, after] = [without.records, is].map((reads) => headIn(reads, car)?.data.facts);
      return [...touchedBy(entry).paths].sort().flatMap((path) => (sameFact(before?.get(path), after?.get(path)) ? factName(path) : []));
    }
    const kind = kinds.named(name);
    const [before, after] = [without.records, is].map((reads) => reads.find(kind, record));
    return JSON.stringify(before) === JSON.stringify(after)
      ? kind.rows(was.find(kind, record), after, telling).map(({ label }) => label)
      : [];
  });
  return [...new Set(names)];
}
