/**
 * Text-book sums that carry their own data and need no car: what a row is, and how it comes out in the core.
 * The expected numbers were worked out apart from the core, with plain arithmetic, from the source that each row names.
 */
import type { Fact } from '../../../core/car.js';
import { canBeTold, type Entry, isRefusal, type Value } from '../../../core/catalog.js';
import { type Evaluation, evaluate, type Situation } from '../../../core/engine.js';
import { catalog } from '../../../core/stubaxle.js';

/** A full path, and its value in SI, an option, a size or a curve. */
export type Told = readonly [path: string, value: Value];

interface Question {
  readonly name: string;
  /** Book and chapter, or how it was derived. */
  readonly source: string;
  readonly told: readonly Told[];
  /** What was different when the car was last measured: the sum is about the change. */
  readonly before?: readonly Told[];
  readonly asked: string;
  readonly why?: string;
}
export interface Sum extends Question {
  /** SI. */
  readonly expected: number;
  /** Relative, unless `absolute`. */
  readonly tolerance: number;
  readonly absolute?: true;
  /** Words that the basis has to contain. */
  readonly basis?: readonly string[];
}
export interface RefusedSum extends Question {
  /** Words of the sentence that refuses it. */
  readonly refuses: RegExp;
}
/** A told value that makes no sense: the range of its entry has to keep it out, before anything is worked out. */
export interface OutsideSum extends Question {
  readonly outside: string;
}
export type PlainSum = Sum | RefusedSum | OutsideSum;

/** How a row came out. */
export type Outcome =
  | 'right'
  | 'a path is not in the catalog'
  | 'a result cannot be told'
  | 'a told value is outside its range'
  | 'a value out of range is let in'
  | 'asks for more'
  | 'another number'
  | 'the basis is not said'
  | 'is not refused'
  | 'is refused in other words';
export interface Result {
  readonly outcome: Outcome;
  /** What was got: a number, a sentence, a path. */
  readonly got: string;
}

/** Expected numbers are written to ten digits. */
export const tenDigits = 1e-8;
/** The same value at both wheels of an axle. */
export function wheels(axle: 'front' | 'rear', path: string, value: Value): readonly Told[] {
  return (axle === 'front' ? ['lf', 'rf'] : ['lr', 'rr']).map((corner) => [`${corner}.${path}`, value] as const);
}
/** The same value at both axles. */
export const ends = (path: string, value: Value): readonly Told[] => [
  [`front.${path}`, value],
  [`rear.${path}`, value],
];

/** The plain mode: guesses are off, and what is told is all there is. */
const core = {
  plain: (situation: Situation): Evaluation => evaluate(catalog, { ...situation, assume: new Set() }),
  tellable: (entry: Entry): boolean => canBeTold(entry),
  basisOf: (evaluation: Evaluation, path: string): readonly string[] => evaluation.basis(path),
};

const factsOf = (told: readonly Told[]): ReadonlyMap<string, Fact> =>
  new Map(told.map(([path, value]) => [path, { value, within: 0, evidence: 'spec', source: `${path} ${JSON.stringify(value)}` }]));

function isOutside([path, value]: Told): boolean {
  const { sane } = catalog.node(path).entry;
  return typeof value === 'number' && sane !== undefined && (value < sane[0] || value > sane[1]);
}
/** What keeps a row from being put to the core at all. */
function obstacle(row: PlainSum): Result | undefined {
  const told = [...row.told, ...(row.before ?? [])];
  const unknown = [...told.map(([path]) => path), row.asked].find((path) => !catalog.byPath.has(path));
  if (unknown !== undefined) return { outcome: 'a path is not in the catalog', got: unknown };
  const untellable = told.find(([path]) => !core.tellable(catalog.node(path).entry));
  if (untellable) return { outcome: 'a result cannot be told', got: untellable[0] };
  const outside = told.filter(isOutside).map(([path]) => path);
  if ('outside' in row) {
    return outside.includes(row.outside)
      ? { outcome: 'right', got: row.outside }
      : { outcome: 'a value out of range is let in', got: row.outside };
  }
  return outside[0] === undefined ? undefined : { outcome: 'a told value is outside its range', got: outside[0] };
}

function judged(row: Sum, got: number, basis: string): Result {
  const { expected, tolerance, absolute } = row;
  const off = Math.abs(got - expected) / (absolute ? tolerance : tolerance * Math.abs(expected));
  if (!(off <= 1)) return { outcome: 'another number', got: `${got}, not ${expected}` };
  const unsaid = row.basis?.find((words) => !basis.includes(words.toLowerCase()));
  return unsaid === undefined ? { outcome: 'right', got: String(got) } : { outcome: 'the basis is not said', got: `${unsaid}: ${basis}` };
}
/** Works a row out from its own data alone. */
export function resultOf(row: PlainSum): Result {
  const kept = obstacle(row);
  if (kept || 'outside' in row) return kept ?? { outcome: 'a value out of range is let in', got: row.asked };
  const then = row.before && factsOf([...row.told, ...row.before]);
  const evaluation = core.plain({ facts: factsOf(row.told), ...(then ? { then } : {}) });
  const got = evaluation.number(row.asked);
  if ('refuses' in row) {
    if (!isRefusal(got)) return { outcome: 'is not refused', got: String(got) };
    return { outcome: row.refuses.test(got.refused) ? 'right' : 'is refused in other words', got: got.refused };
  }
  if (isRefusal(got)) return { outcome: 'asks for more', got: got.refused };
  return judged(row, got, core.basisOf(evaluation, row.asked).join('; ').toLowerCase());
}
