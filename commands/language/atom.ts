/** What a line is made of once its words are known: the kinds of atom. */
import type { Subject } from '../reading.js';
import type { AmountAtom, TextAtom } from './values.js';

/** Words, places and amounts name things; the others part the line. */
export type Atom =
  | AmountAtom
  | TextAtom
  | { readonly is: 'word'; readonly word: string; readonly typed: string }
  | { readonly is: 'place'; readonly word: string; readonly places: readonly string[]; readonly plural: boolean; readonly all: boolean }
  | { readonly is: 'gear'; readonly gear: string }
  | { readonly is: 'break'; readonly joint: 'and' | ',' | '+' }
  | { readonly is: 'subject'; readonly subject: Subject; readonly name: string; readonly on: boolean; readonly possessive: boolean }
  | { readonly is: 'between'; readonly word: string }
  | { readonly is: 'with'; readonly without: boolean }
  | { readonly is: 'at' }
  | { readonly is: 'for'; readonly word: string }
  | { readonly is: 'from' }
  | { readonly is: 'to'; readonly colon: boolean }
  | { readonly is: 'over' }
  | { readonly is: 'everything' };

/** Whether an atom is an amount, the end of the line being none. */
export const isAmount = (atom: Atom | undefined): atom is AmountAtom => atom?.is === 'amount';
