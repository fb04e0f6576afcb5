/** A record as it is kept: what it is of, what it says, and who told it. The same in memory and in the store. */
import type { Told } from '../../core/car.js';

/** A number where records are counted, a text where what they are of names them (`car 3, in this room`). Numbers below 0: made in this message. */
export type Id = number | string;
/** What a record belongs to, and what else it is about. */
export interface Of {
  readonly member?: string;
  readonly car?: number;
  readonly room?: string;
}
export interface Held<D = unknown, I extends Id = Id> {
  readonly id: I;
  readonly of: Of;
  readonly data: D;
  /** Undefined where that is not kept. */
  readonly told: Told | undefined;
  /** What was typed; empty where nothing was, and once it was redacted. */
  readonly text: string;
}
/** Whether a record is of all that is named. */
export const isOf = (of: Of, wanted: Of): boolean =>
  (wanted.member === undefined || of.member === wanted.member) &&
  (wanted.car === undefined || of.car === wanted.car) &&
  (wanted.room === undefined || of.room === wanted.room);
