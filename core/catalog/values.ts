/** What entries are worth: where they are read, what they may hold, how sure that is, and what says that there is no answer. */

/**
 * Where an entry is read: once a question (a condition, never saved), once a car, or at each axle, corner or gear.
 * Paths are a place, a dot and the entry's path: `front.spring.rate`, `lf.camber`, `2.gear.ratio`, `mass`.
 */
export type Scope = 'question' | 'car' | 'axle' | 'corner' | 'gear';

/** What an entry of scope S may read without saying where: its own place and the places that contain it. */
export type Around<S extends Scope> = {
  question: 'question';
  car: 'question' | 'car';
  axle: 'question' | 'car' | 'axle';
  corner: 'question' | 'car' | 'axle' | 'corner';
  gear: 'question' | 'car' | 'gear';
}[S];

/** A table that rises in x; `between` says what holds from one point to the next. */
export interface Curve {
  readonly x: readonly number[];
  readonly y: readonly number[];
  readonly between: 'line' | 'step';
}
/** What a member can record. A designation is recorded as its text. */
export type Value = number | string | Curve;
export const isCurve = (value: Value): value is Curve => typeof value === 'object';

/** A calculation that has no answer says which rule stopped it, and which paths would put it right. */
export interface Refusal {
  readonly refused: string;
  readonly because?: readonly string[];
  /** What the number that was asked for can be, SI, where it cannot be that. */
  readonly range?: readonly [least: number, most: number];
}
export const refuse = (refused: string, ...because: string[]): Refusal => ({ refused, because });
export const isRefusal = (v: unknown): v is Refusal => typeof v === 'object' && v !== null && 'refused' in v;

/** The half-width that holds 19 in 20, of the value or in its own SI unit (where the value may be near zero). */
export type Within = { readonly relative: number } | { readonly absolute: number };
export const halfWidth = (value: number, within: Within): number =>
  'relative' in within ? Math.abs(value) * within.relative : within.absolute;

/** How a fact came to be known. */
export type Evidence = 'measured' | 'spec' | 'estimated';
/** What tolerance a told value has, by how it is known, and which of the two is usual when the member does not say. */
export interface Told {
  readonly usually: 'measured' | 'spec';
  readonly measured: Within;
  readonly spec: Within;
}
