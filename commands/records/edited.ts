/** A line that was edited: what it changed is taken back before it is worked out anew. */
import type { Context, Garage } from '../context.js';
import type { Change } from './change.js';
import { garageOver } from './garage.js';
import { cars } from './kinds/car.js';
import type { Kinds } from './kinds.js';
import { applyChange } from './machine.js';
import { Overlay } from './overlay.js';
import { Work } from './work.js';

export interface Edited {
  /** As it would be without what the line changed. */
  readonly garage: Garage;
  /** To be made before those of the line as it is now. */
  readonly changes: readonly Change[];
  /** Heads of the cars on which that rests. */
  readonly read: readonly { readonly car: number; readonly head: number }[];
}
/**
 * @param why what the history says where the line as it is now records nothing in its place
 * @throws ChangeRefused for what can't be taken back, or was changed again since
 */
export function withoutLine(
  { garage, event, asker, room, now }: Omit<Context, 'calculator' | 'conversation'>,
  why: string,
  kinds: Kinds,
): Edited {
  const entries = garage.records.journal.ofLine(event.line).filter(({ undone }) => undone === undefined);
  if (entries.length === 0) return { garage, changes: [], read: [] };
  const records = new Overlay(garage.records);
  const asking = { asker, room: room.id, at: now, cause: event.id, line: event.line };
  const change: Change = { change: 'take back', line: event.line, why };
  applyChange(new Work(records, kinds, asking, { isIn: () => true, order: () => undefined }), change);
  const ids = new Set(entries.flatMap(({ car }) => car ?? []));
  const read = [...ids].flatMap((car) => {
    const head = garage.records.find(cars, car)?.data.head;
    return head === undefined ? [] : [{ car, head }];
  });
  return {
    garage: garageOver(records, {
      ...{ asker: asker.id, room: room.id },
      get others() {
        return garage.others;
      },
      get members() {
        return garage.members;
      },
      revision: (id) => {
        const moment = garage.revision(id);
        return moment && garage.others.some((one) => one.id === moment.car) ? moment : undefined;
      },
    }),
    changes: [change],
    read,
  };
}
