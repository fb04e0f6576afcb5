/** A kind of record in one file: what it says, whose it is, who sees it, what is erased, how it is taken back, how it is exported. */
import type { z } from 'zod';
import type { Row } from '../answer.js';
import type { Preferences } from '../context.js';
import type { Order } from './change.js';
import type { Held, Id } from './held.js';
import type { Reads } from './tables.js';

/** The parts of a record that are taken back apart from one another, by name; as JSON. */
export type Pieces = ReadonlyMap<string, unknown>;
export interface InPieces<D> {
  take(data: D): Pieces;
  /** With these pieces as they are given here; undefined: without it. */
  put(data: D, pieces: Pieces): unknown;
}
/** What the world allows, and does. A draft takes it that all is allowed: the store knows. */
export interface World {
  isIn(room: string): boolean;
  /** @throws ChangeRefused */
  order(order: Order): void;
}
/** What telling a member of a change needs. */
export interface Telling {
  readonly was: Reads;
  readonly is: Reads;
  readonly room: string;
  readonly preferences: Preferences;
}
export interface Kind<D = unknown, I extends Id = Id> {
  /** As it stands in the store. Never changed once released. */
  readonly name: string;
  /** Whose it is: it goes with them, and they alone change it; a room's and the club's are changed by whoever sees them. */
  readonly owner: 'member' | 'car' | 'room' | 'club';
  /** What it says; its issues are sentences. Data of an earlier version must still be read. */
  readonly schema: z.ZodType<D>;
  /** How data stand in the store, as JSON, where its data are not JSON themselves. */
  readonly format?: { plain(data: D): unknown; read(plain: unknown): D };
  /** Why it can't be so, as things stand now: a sentence for the member. */
  rule?(held: Held<D, I>, reads: Reads, world: Pick<World, 'isIn'>): string | undefined;
  /** Left out: it is taken back whole. */
  readonly pieces?: InPieces<D>;
  /** What changed, as rows of label, was and is; undefined: not there. */
  rows(was: Held<D, I> | undefined, is: Held<D, I> | undefined, telling: Telling): readonly Row[];
  /** The data without what the event typed. Left out: it holds nothing typed but names. */
  redacted?(data: D, event: string): D;
  /** Of a room's or the club's: the data without the member; undefined: nothing is left of it. */
  without?(data: D, member: string): D | undefined;
  /** Left out: it holds nothing of a member that is not told elsewhere. */
  readonly exported?: { readonly as: string; readonly schema: z.ZodType; write(held: Held<D, I>, reads: Reads): unknown };
  /** Said to whoever speaks of one that is not there any more. */
  readonly gone: string;
}

/** Taken back field by field. What is in no piece is not taken back. */
export const fieldByField = <D extends object>(...fields: readonly (keyof D & string)[]): InPieces<D> => ({
  take: (data) => new Map(fields.map((field) => [field, data[field]])),
  put: (data, pieces) => ({ ...data, ...Object.fromEntries([...pieces].filter(([name]) => fields.some((field) => field === name))) }),
});
/** Taken back row by row, of a list whose rows have names; `field` is where it stands in the data. */
export function rowByRow<D extends object, R>(
  field: keyof D & string,
  rowsOf: (data: D) => readonly R[],
  nameOf: (row: R) => string,
): InPieces<D> {
  const key = (row: R): string => `${field} ${nameOf(row)}`;
  return {
    take: (data) => new Map(rowsOf(data).map((row) => [key(row), row])),
    put(data, pieces) {
      const there = new Set(rowsOf(data).map(key));
      const kept = rowsOf(data).flatMap((row): readonly unknown[] => {
        const as = pieces.has(key(row)) ? pieces.get(key(row)) : row;
        return as === undefined ? [] : [as];
      });
      const more = [...pieces].flatMap(([name, row]) =>
        name.startsWith(`${field} `) && !there.has(name) && row !== undefined ? [row] : [],
      );
      return { ...data, [field]: [...kept, ...more] };
    },
  };
}
/** Pieces of several sorts. */
export const together = <D>(schema: z.ZodType<D>, ...sorts: readonly InPieces<D>[]): InPieces<D> => ({
  take: (data) => new Map(sorts.flatMap((sort) => [...sort.take(data)])),
  put: (data, pieces) => sorts.reduce((now: D, sort) => schema.parse(sort.put(now, pieces)), data),
});
const whole: InPieces<unknown> = { take: (data) => new Map([['', data]]), put: (_, pieces) => pieces.get('') };
export const piecesOf = <D>(kind: Kind<D, never> | Kind<D>): InPieces<D> => kind.pieces ?? whole;
/** Data as JSON, for the store. */
export const plainOf = <D, I extends Id>(kind: Kind<D, I>, data: D): unknown => (kind.format ? kind.format.plain(data) : data);
/** @throws for what the kind does not know: never dropped silently. */
export const dataOf = <D, I extends Id>(kind: Kind<D, I>, plain: unknown): D =>
  kind.format ? kind.format.read(plain) : kind.schema.parse(plain);
