/** What a command may know of the world: narrow, read-only, and synchronous but for the calculator. */
import type { Facts } from '../core/car.js';
import type { NewPart, Part } from './parts/part.js';
import type { Choice } from './reading.js';

export interface Preferences {
  /** `us`: lb, in, lb/in, psi, mph. `metric`: kg, mm, N/mm, bar, km/h. */
  readonly units: 'us' | 'metric';
  readonly decimalMark: '.' | ',';
}
export interface Member {
  /** The chat's own id (`@robin:example.org`), or the console's name. */
  readonly id: string;
  readonly name: string;
  readonly preferences: Preferences;
}
export interface Room {
  readonly id: string;
  /** Only the asker and the bot are in it. */
  readonly direct: boolean;
  /** Nobody but the asker and the bot can read what is said in it, now or later: what may go nowhere else goes here. */
  readonly private?: boolean;
  /** Thread root, when the line stands in one. */
  readonly thread?: string;
}
/** A car's facts at one moment; never altered. */
export interface Revision {
  readonly id: number;
  readonly car: number;
  readonly parent: number | undefined;
  /** Milliseconds since 1970. */
  readonly at: number;
  readonly by: string;
  /** What was changed, in words: the line that did it. Empty once it was erased. */
  readonly why: string;
  readonly facts: Facts;
  /** The revision in which the ride heights and scale readings were taken. */
  readonly measuredIn: number | undefined;
  /** Of an undo: the oldest revision that it took back; all since then are taken back with it. */
  readonly undoes: number | undefined;
}
export interface CarView {
  readonly id: number;
  readonly owner: string;
  readonly ownerName: string;
  readonly name: string;
  readonly head: Revision;
  /** Shared in this room. */
  readonly shared: boolean;
  /** Of a clubmate's car: the sharing by which it is seen here. Lost and won again, the right to see it has another number. */
  readonly sharing?: number;
}
/** A clubmate's car that an answer tells anything of, its name included, and the sharing by which it was seen. */
export interface Sight {
  readonly car: number;
  readonly sharing: number;
}
export interface Setup {
  readonly name: string;
  readonly revision: number;
}
/** The asker's cars, and the clubmates' cars that the asker may see here and now. Nothing else can be reached through it. */
export interface Garage {
  readonly mine: readonly CarView[];
  /** The asker's car in use. */
  readonly chosen: CarView | undefined;
  /** Shared in this room by members who are in it. */
  readonly others: readonly CarView[];
  /** Members of this room that have a car here or not: to tell "has shared nothing" from "who?". */
  readonly members: readonly { readonly id: string; readonly name: string }[];
  /** Undefined for a revision of a car that the asker may not see. Others' cars: their head, and what it was measured in. */
  revision(id: number): Revision | undefined;
  /** Newest first; own cars only. */
  history(car: number, limit: number, before?: number): readonly Revision[];
  /** Own cars only. */
  setups(car: number): readonly Setup[];
  /** What is in the parts box of a car, in the order of telling; own cars only. */
  parts(car: number): readonly Part[];
}
/** What one command leaves for the next line of the same asker in the same room and thread. */
export interface Conversation {
  /** Lines of the last answer that were not shown. */
  readonly rest: readonly string[];
  /** Facts of the last `try`, for `save that`. */
  readonly trial?:
    | {
        readonly car: number;
        readonly head: number;
        readonly line: string;
        readonly facts: Facts;
        readonly seen?: readonly Sight[];
      }
    | undefined;
  /** An open question or the last answer's suggestions; the bot resolves a bare number before it dispatches. */
  readonly choices: readonly Choice[];
  /** What all of this was worked out from: whoever gives any of it again tells of these cars again. */
  readonly seen?: readonly Sight[];
  /** There was more, and it may not be given again: a clubmate's car that it was worked out from may not be seen any more. */
  readonly closed?: true;
}
/** Free expressions, worked out apart. Names are the member's figures, SI with their dimension. */
export interface Calculator {
  calculate(
    expression: string,
    names: ReadonlyMap<string, { readonly si: number; readonly unit: string }>,
  ): Promise<
    | {
        readonly value: number;
        readonly unit: string /** exponents of kg, m, s, K */;
        readonly base: readonly [number, number, number, number];
      }
    | { readonly refused: string }
  >;
}
export interface Context {
  readonly asker: Member;
  readonly room: Room;
  readonly now: number;
  readonly garage: Garage;
  readonly conversation: Conversation;
  readonly calculator: Calculator;
}

/**
 * What a command wants changed: data, applied by the bot in one transaction with the reply, in order, or by a Draft for the next line of the message.
 * Ids below 0 are the Draft's own: of cars made in this message (`car`), and of revisions and parts made in it (`as`). Wherever a later change of the same
 * reply, or its trial, speaks of one of them (`head`, `revision`, `measuredIn`, `undoes`, `part`), the one that was stored for it is meant.
 */
export type Change =
  | {
      readonly change: 'make car';
      readonly car: number;
      readonly name: string;
      readonly facts: Facts;
      readonly measured: boolean;
      /** The line that made it. */
      readonly why?: string;
      readonly as?: number;
    }
  | {
      /** A new revision on top of `head`; refused by the store when the head has moved. */
      readonly change: 'record';
      readonly car: number;
      readonly head: number;
      readonly facts: Facts;
      readonly why: string;
      /** `now`: this revision's state facts were taken in it; else the revision that they were taken in. */
      readonly measuredIn: number | 'now' | undefined;
      readonly undoes?: number;
      readonly as?: number;
    }
  | { readonly change: 'choose car'; readonly car: number }
  | { readonly change: 'rename car'; readonly car: number; readonly name: string }
  | { readonly change: 'forget car'; readonly car: number }
  | { readonly change: 'keep'; readonly car: number; readonly name: string; readonly revision: number | 'now' }
  | { readonly change: 'share'; readonly car: number; readonly room: string }
  | { readonly change: 'unshare'; readonly car: number; readonly room: string }
  | { readonly change: 'prefer'; readonly preferences: Partial<Preferences> }
  /** Into the parts box of a car; `as`: the Draft's own id for it. */
  | { readonly change: 'add part'; readonly car: number; readonly part: NewPart; readonly as?: number }
  | { readonly change: 'forget part'; readonly car: number; readonly part: number }
  | { readonly change: 'forget me' }
  /** The room's prefix, by a member with the power to change the room. */
  | { readonly change: 'prefix'; readonly room: string; readonly prefix: string }
  | { readonly change: 'leave room'; readonly room: string }
  /** Export: the bot gathers the asker's data and gives it to them as a file, where it was asked; refused where others could read it. */
  | { readonly change: 'export me' };
