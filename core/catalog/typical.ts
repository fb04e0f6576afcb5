/** What is typical of a quantity, by kind of car: for those who ask whether a number is too much. */

export interface Typical {
  /** Of what: `road car`, `autocross car on slicks`. */
  readonly for: string;
  /** SI. */
  readonly range: readonly [low: number, high: number];
  /** In print, or `common practice, no source`. */
  readonly source: string;
}
/** One range and words about it, in one: the older spelling, and what is shown where there is room for one only. */
export interface TypicalOverAll {
  readonly range: readonly [number, number];
  readonly of: string;
}
export type TypicalSpec = TypicalOverAll | readonly Typical[];

const isList = (spec: TypicalSpec): spec is readonly Typical[] => Array.isArray(spec);
const unsourced = 'common practice, no source';
/** What is typical of a kind of car by common practice, SI: no source is known to us. */
export const inPractice = (kind: string, low: number, high: number): Typical => ({ for: kind, range: [low, high], source: unsourced });

/** Both spellings, from either. */
export function typically(spec: TypicalSpec | undefined): { typical?: TypicalOverAll; typicals: readonly Typical[] } {
  if (spec === undefined) return { typicals: [] };
  if (!isList(spec)) {
    const [words, source] = spec.of.split(/[;,] (?=common practice)|; /);
    return { typical: spec, typicals: [{ for: words ?? spec.of, range: spec.range, source: source ?? unsourced }] };
  }
  if (spec.length === 0) return { typicals: [] };
  const range = [Math.min(...spec.map((one) => one.range[0])), Math.max(...spec.map((one) => one.range[1]))] as const;
  const kinds = spec.map((one) => one.for).join(', ');
  const sources = [...new Set(spec.map(({ source }) => source))].join('; ');
  return { typical: { range, of: `${kinds}; ${sources}` }, typicals: spec };
}

/** Where a value stands: within what is typical, or on which side of it. */
export const standing = (value: number, [low, high]: readonly [number, number]): 'below' | 'within' | 'above' =>
  value < low ? 'below' : value > high ? 'above' : 'within';
