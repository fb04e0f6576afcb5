/**
 * What a command wants changed: data. The state machine applies it to the draft of the message for its next line, and to the store in one transaction
 * with the reply. Numbers below 0 are of what the message itself makes: the first car that it makes is -1, the second -2, its revisions likewise.
 */
import type { Facts } from '../../core/car.js';
import type { Preferences } from '../context.js';
import type { Held, Id, Of } from './held.js';
import type { Kind } from './kind.js';

export interface MakeCar {
  readonly change: 'make car';
  /** The number that lines after it call it by: `next` of the cars. */
  readonly car: number;
  readonly name: string;
  readonly facts: Facts;
  readonly measured: boolean;
  /** The line that made it. */
  readonly why?: string;
}
export interface RecordFacts {
  /** Refused by the store when the car no longer stands at `head`. Records of one message make one revision. */
  readonly change: 'record';
  readonly car: number;
  readonly head: number;
  readonly facts: Facts;
  readonly why: string;
  /** `now`: this revision's state facts were taken in it; else the revision that they were taken in. */
  readonly measuredIn: number | 'now' | undefined;
}
export interface Keep {
  readonly change: 'keep';
  readonly car: number;
  readonly name: string;
  readonly revision: number | 'now';
}
/** A record of a kind that has no change of its own. Made by `added`, `replaced` and `removed`. */
export interface AddRecord {
  readonly change: 'add record';
  readonly kind: string;
  readonly of: Of;
  readonly data: unknown;
  readonly text: string;
}
export interface ReplaceRecord {
  readonly change: 'replace record';
  readonly kind: string;
  readonly id: Id;
  /** The event that last changed it when it was read: changed since, the line is worked out again. */
  readonly seen: string | undefined;
  readonly data: unknown;
  readonly text: string;
}
export interface RemoveRecord {
  readonly change: 'remove record';
  readonly kind: string;
  readonly id: Id;
}
/** What lines of the asker's changed is taken back, the newest first. */
export interface Undo {
  readonly change: 'undo';
  /** Events of the lines. */
  readonly lines: readonly string[];
}
/** The same for a line that was edited, as if it had not been asked for; what it changes instead comes after. */
export interface TakeBack {
  readonly change: 'take back';
  readonly line: string;
  readonly why: string;
}
/** What is done in the world and can't be taken back. */
export type Order =
  | { readonly change: 'forget me' }
  /** The room's prefix, by a member with the power to change the room. */
  | { readonly change: 'prefix'; readonly room: string; readonly prefix: string }
  | { readonly change: 'leave room'; readonly room: string }
  /** Export: the bot gathers the asker's data and sends it as a file. */
  | { readonly change: 'export me' };
export type Change =
  | MakeCar
  | RecordFacts
  | Keep
  | { readonly change: 'choose car'; readonly car: number }
  | { readonly change: 'rename car'; readonly car: number; readonly name: string }
  | { readonly change: 'forget car'; readonly car: number }
  | { readonly change: 'share' | 'unshare'; readonly car: number; readonly room: string }
  | { readonly change: 'prefer'; readonly preferences: Partial<Preferences> }
  | AddRecord
  | ReplaceRecord
  | RemoveRecord
  | Undo
  | TakeBack
  | Order;

/** A new record of a kind that has no change of its own. */
export const added = <D>(kind: Kind<D, number>, of: Of, data: D, text: string): AddRecord => ({
  ...{ change: 'add record', kind: kind.name, of, data, text },
});
/** The record with other data: mended by whoever read it as it is. */
export const replaced = <D, I extends Id>(kind: Kind<D, I>, held: Held<D, I>, data: D, text: string): ReplaceRecord => ({
  ...{ change: 'replace record', kind: kind.name, id: held.id, seen: held.told?.cause, data, text },
});
export const removed = <D, I extends Id>(kind: Kind<D, I>, { id }: { readonly id: I }): RemoveRecord => ({
  ...{ change: 'remove record', kind: kind.name, id },
});
