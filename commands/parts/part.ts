/** What a member's parts box holds: data, as the store keeps it. */
import type { Value } from '../../core/catalog.js';

/** What an input can be: one of the pieces that are there, or anything of a range in steps. SI. */
export type Possible =
  | { readonly is: 'values'; readonly values: readonly Value[] }
  | { readonly is: 'range'; readonly from: number; readonly to: number; readonly step: number };
export interface PartFact {
  /** Path of an input, without its place. */
  readonly entry: string;
  /** Of its scope, at least one; those of one end go on together. */
  readonly places: readonly string[];
  readonly can: Possible;
}
export const currencies = ['$', '€', '£'] as const;
/** Money as it was told: nothing is converted. */
export interface Price {
  readonly amount: number;
  readonly currency: (typeof currencies)[number];
}
export interface NewPart {
  /** Several: they go on together, and each has one value. None: a note, which no figure reads. */
  readonly facts: readonly PartFact[];
  /** What it is, where no input stands for it: damper clicks. */
  readonly note?: string | undefined;
  /** Of work; undefined where it was not told. */
  readonly minutes?: number | undefined;
  readonly price?: Price | undefined;
  /** The line that told it; empty once it was redacted. */
  readonly line: string;
}
export interface Part extends NewPart {
  /** Below 0: made in this message. */
  readonly id: number;
}
