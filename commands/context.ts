/** What a command may know of the world: narrow, read-only, and synchronous but for the calculator and the breath between pieces of dear work. */
import type { Facts } from '../core/car.js';
import type { Breathe } from './breathing.js';
import type { Choice } from './reading.js';
import type { Reads } from './records/tables.js';
import type { Sum, WorkedOut } from './sums/sum.js';

export type { Change } from './records/change.js';

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
  /** What a line for the bot begins with, where one has to. */
  readonly prefix?: string;
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
  /** Of an undo: a revision that it took back; all since then are taken back with it, each with its whole line. */
  readonly undoes: number | undefined;
  /** In a history, of a line that was edited: the same for all that the line and its edits made. */
  readonly line?: string;
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
  /** Records of every kind, as far as the asker may see them here and now. */
  readonly records: Reads;
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
/** Sums, worked out apart. */
export interface Calculator {
  calculate(sum: Sum): Promise<WorkedOut>;
}
/** The message that is answered: what it records carries its id, never its text. */
export interface Event {
  readonly id: string;
  /** The same; or, of an edit, the message that was edited. */
  readonly line: string;
  /** Which line of the message it is, from 0. */
  readonly nth: number;
}
export interface Context {
  readonly event: Event;
  readonly asker: Member;
  readonly room: Room;
  readonly now: number;
  readonly garage: Garage;
  readonly conversation: Conversation;
  /** The line may speak of the bot, not to it: it is answered, and what it would change is offered, never done. */
  readonly remark?: true;
  readonly calculator: Calculator;
  /** Awaited between pieces of dear work, a few milliseconds each: nobody else's line has to wait for the whole of it. */
  readonly breathe: Breathe;
}
