/** What the reader makes of one line, before any command runs. Data: no entry is looked up twice, no word is read twice. */
import type { Entry, Evidence, Value } from '../core/catalog.js';

/** A value as it was typed. */
export interface Said {
  /** SI number, option, curve, or a designation's canonical text. */
  readonly value: Value;
  /** The other end, where a range was typed: `300 to 800`. SI. */
  readonly to?: number;
  /** `+180 lb`, `2 psi less`, `10 % stiffer`: a change of what is there. `times` multiplies. */
  readonly change?: 'plus' | 'times';
  /** `±`, `+/-`, `give or take`: told tolerance, SI half-width. */
  readonly within?: number;
  /** As typed, tidied. */
  readonly text: string;
}
/** One thing that the line names: an entry, where, and how much. */
export interface Item {
  readonly entry: Entry;
  /** Places of the entry's scope that fit the words: `['front']`, `['lf','rf']`, `['']` for the car; all of them when none was said. */
  readonly places: readonly string[];
  /** Whether the words said where (true for a scope of one place). */
  readonly placed: boolean;
  readonly said?: Said;
}
/** A car, a named setup or a clubmate, as far as words can tell. */
export type Subject =
  | { readonly is: 'car'; readonly id: number }
  | { readonly is: 'setup'; readonly name: string }
  | { readonly is: 'member'; readonly id: string }
  | { readonly is: 'now' };

/** A run of items that belong together, on whom. */
export interface Clause {
  readonly items: readonly Item[];
  readonly subjects: readonly Subject[];
}
/*
 * What stands where, by verb:
 *   set, save, and facts without a verb   facts in `sides[0].items`, each with `said`; conditions that they were taken in: `tried`
 *   try                                   facts in `sides[0].items` with `said`; figures to look at: items without `said`; more facts: `tried`
 *   show, why, doubt, a bare name         `sides[0].items` without `said`; facts and conditions for the answer: `tried`
 *   find                                  inputs sought: `sides[0].items` without `said`; the target: `goal`; facts and conditions: `tried`
 *   compare, two sides without a verb     one side each, its facts with `said`; figures asked of both are in every side, without `said`
 *   draw                                  figures: `sides[0].items`; `against`, with its range in `said` and `said.to`
 *   topics                                everything in `sides`, in order: facts with `said`, figures without; conditions (`at`, `in 2nd`, `with`): `tried`
 *   a conversion (`3/8 in in mm`)         verb `calc`, the amounts as typed in `names`, `wantedUnit`, the whole in `rest`
 *   forget, rename, car, keep, back ...   cars and setups in `sides[0].subjects`, facts in `sides[0].items`, all names as typed in `names`
 * Conditions are inputs of the scope `question`. A gear (`in 2nd`) is the place of an entry of that scope where one is named.
 */
export interface Reading {
  /** The command's word in its canonical form, or undefined when none was said. */
  readonly verb: string | undefined;
  /** One, or one for each side of `vs`, `or`, `against`, `instead of`, `from ... to`. */
  readonly sides: readonly Clause[];
  /** `instead of`: the first side is to take the place of the second, rather than to be compared with it. */
  readonly replacing?: true;
  /** `find`: the figure that is wanted and how much of it. */
  readonly goal?: Item;
  /** `with ...`, `if I go to ...`: facts for this answer only (for `set`: conditions that the facts were taken in). */
  readonly tried: readonly Item[];
  /** `draw`: what to draw against. */
  readonly against?: Item;
  /** `in mm`, `in metric`: the unit in which the answer is wanted. */
  readonly wantedUnit?: string;
  /** `measured`, `from the box`, `about`: how what is told is known. */
  readonly evidence?: Evidence;
  /** `everything`, with the places in `sides[0]`. */
  readonly everything?: { readonly places: readonly string[] };
  /** Names and numbers that some commands take as text: `keep as NAME`, `car NAME`, `rename A to B`, `history 20`, `help WORD`. */
  readonly names: readonly string[];
  /** The line after the verb, tidied but otherwise as typed: for `calc`, `help`. */
  readonly rest: string;
  /** What was not literal: an assumed unit, a decimal comma, a typo mended, a car chosen. Sentences to show. */
  readonly echoes: readonly string[];
  /** Whether a misspelled word was mended: a change is then offered, never run. */
  readonly mended: boolean;
}
/** A line that can be typed instead, and what it is called in a choice. */
export interface Choice {
  readonly label: string;
  readonly line: string;
}
/** The reader cannot go on alone: two readings that differ in the answer, or none. */
export type Stop =
  | { readonly stop: 'asked'; readonly sentence: string; readonly choices: readonly Choice[] }
  | { readonly stop: 'refused'; readonly sentence: string; readonly line?: string }
  /** Understood, and beyond what is built: one honest sentence. */
  | { readonly stop: 'beyond'; readonly sentence: string; readonly line?: string };
export const isStop = (v: Reading | Stop): v is Stop => 'stop' in v;
