/** What the parts of a line are made into, by category: the meanings that productions take and make. */
import type { Evidence } from '../../core/catalog.js';
import type { Item, Subject } from '../reading.js';
import type { AmountToken } from '../scan.js';
import type { Relation } from './lexicon.js';
import type { NameLeaf } from './names.js';

/** An amount or a size, as the scanner has it. */
export interface Amount {
  readonly token: AmountToken | { readonly is: 'size' | 'rim'; readonly text: string };
  /** Said in words: `half`, `two`. */
  readonly wordy?: true;
}
/** Where: corners and ends, or gears. */
export interface Where {
  readonly places: readonly string[];
  readonly gear?: true;
  /** All round: as good as nothing said, but said. */
  readonly all?: true;
}
/** An amount with what is said around it. */
export interface Value {
  readonly first: Amount;
  readonly change?: 1 | -1;
  readonly negative?: true;
  readonly within?: AmountToken;
  readonly evidence?: Evidence;
  /** The others of `22, 24 or 26`: one side each. */
  readonly others?: readonly Amount[];
  /** How they were joined. */
  readonly joined?: 'versus' | 'instead' | 'to' | 'from to';
  /** `300 to 500 over 3 in`. */
  readonly over?: AmountToken;
}
export interface PlacedValue {
  readonly where: Where;
  readonly value: Value;
  /** Which came first. */
  readonly order: 'place first' | 'value first';
}
export interface Name {
  readonly leaf: NameLeaf;
  readonly where?: Where;
}
/** Something told. */
export interface Fact {
  readonly items: readonly Item[];
  /** Of `22 or 24`: the items of the other sides. */
  readonly others?: readonly (readonly Item[])[];
  readonly joined?: Value['joined'];
  readonly named: boolean;
  readonly evidence?: Evidence;
  /** Its range: `300 to 600`. */
  readonly range?: readonly Item[];
}
/** Something named without an amount. */
export interface Asked {
  readonly items: readonly Item[];
  readonly alternatives?: true;
}
export interface Sems {
  amount: Amount;
  list: { readonly tokens: readonly AmountToken[]; readonly slashed: boolean };
  where: Where;
  name: Name;
  option: NameLeaf['options'][number];
  relation: { readonly relation: Relation; readonly word: string };
  subject: { readonly subject: Subject; readonly self: boolean };
  unit: { readonly unit: string };
  evidence: { readonly evidence: Evidence };
  everything: Record<never, never>;
  change: { readonly sign: 1 | -1; readonly word: string };
  none: Record<never, never>;
  negative: Record<never, never>;
  plusMinus: Record<never, never>;
  joint: { readonly mark: string };
  value: Value;
  placed: PlacedValue;
  placeds: { readonly all: readonly PlacedValue[]; readonly order: PlacedValue['order'] };
  namedAt: Name;
  fact: Fact;
  asked: Asked;
}
export type Category = keyof Sems;
/** A span of tokens with what it may mean. */
export interface Edge<C extends Category = Category> {
  readonly category: C;
  readonly from: number;
  readonly to: number;
  readonly sem: Sems[C];
  readonly price: number;
  readonly made: string;
  readonly parts: readonly Edge[];
  /** Tokens inside it that nothing of it explains. */
  readonly gaps: readonly number[];
}
