/** What a command says, as data. Renderers make text, HTML, JSON and pictures of it; none of them knows a formula, and no command knows a renderer. */
import type { Dimension } from '../core/dimensions.js';
import type { Choice } from './reading.js';

/** A number as shown: `text` is in the asker's units, its digits following the plus-or-minus; the rest is SI, for JSON. */
export interface Amount {
  readonly si: number;
  readonly dimension: Dimension;
  /** Half-width that holds 19 in 20. */
  readonly within?: number;
  readonly text: string;
}
export type Cell = Amount | string;
export interface Row {
  readonly label: string;
  readonly cells: readonly Cell[];
}
export interface Chart {
  readonly title: string;
  readonly x: { readonly label: string; readonly unit: string };
  readonly y: { readonly label: string; readonly unit: string };
  /** At most four, in the asker's units. */
  readonly series: readonly {
    readonly name: string;
    readonly points: readonly (readonly [number, number])[];
    readonly band?: readonly (readonly [number, number, number])[];
  }[];
  readonly marks: readonly { readonly x: number; readonly y: number; readonly label: string }[];
  /** The values in words: the picture's alternative text. */
  readonly words: string;
}
export type AnswerKind = 'told' | 'changed' | 'asked' | 'refused' | 'beyond';

/** What is only shown when asked for: `more` names it. */
export interface Section {
  /** In a few words: `steps`, `rear`. */
  readonly name: string;
  readonly columns?: readonly string[];
  readonly rows?: readonly Row[];
  readonly notes?: readonly string[];
}
/** In the order in which it is shown. */
export interface Answer {
  readonly kind: AnswerKind;
  /** The number that was asked for first, in one line. */
  readonly headline: string;
  readonly amount?: Amount;
  /** Heads of the rows' cells, where there is more than one. */
  readonly columns?: readonly string[];
  readonly rows: readonly Row[];
  /** Words between the rows and the echoes: steps of a formula, a help text. One entry a paragraph. */
  readonly notes: readonly string[];
  /** What was read that was not literal. */
  readonly echoes: readonly string[];
  /** What the answer rests on, and what to measure next. */
  readonly assumptions: readonly string[];
  readonly cautions: readonly string[];
  readonly choices: readonly Choice[];
  /** Lines to type next; shown numbered, and answered by number as choices are. */
  readonly next: readonly Choice[];
  readonly chart?: Chart;
  /** What the first screen leaves out, in parts with names. */
  readonly further?: readonly Section[];
  /** Lines of an earlier answer that did not fit, as the renderer left them. */
  readonly continued?: readonly string[];
  /** A reference to quote, when something broke on our side. */
  readonly reference?: string;
}
const nothing = { rows: [], notes: [], echoes: [], assumptions: [], cautions: [], choices: [], next: [] } as const;
/** An answer with the parts that are given, and nothing in the others. */
export const answer = (kind: AnswerKind, headline: string, parts: Partial<Omit<Answer, 'kind' | 'headline'>> = {}): Answer => ({
  ...nothing,
  ...parts,
  kind,
  headline,
});
