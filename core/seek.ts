/** Which value of something that can be told gives a wanted number: all of them within a range, or why there is none. */
import { isRefusal, type Refusal, refuse } from './catalog.js';
import { type Catalog, catalogTrying, evaluate, nameAtAll, probe, type Situation, telling } from './engine.js';
import type { Scalar } from './numeric/bracket.js';
import { crossings, grid, negligible, type Point, stretches, withTurns } from './numeric/walk.js';
import { type InPieces, whole } from './pieces.js';

export interface Goal {
  /** What is moved together: `['lr.tire.pressure', 'rr.tire.pressure']`. Results that can be told, too: which wheel rate gives a frequency. */
  readonly inputs: readonly [string, ...string[]];
  /** `to` one value (left out), or each `by` the same amount from where it is: all four perches up by as many turns. */
  readonly moved?: 'to' | 'by';
  readonly figure: string;
  /** SI. */
  readonly target: number;
  /** SI, of the value or of the change; left out: what keeps all inputs sane. */
  readonly range?: readonly [number, number];
}
export interface Sought {
  /** Values of the inputs, or changes of them, that give the target, ascending, SI. */
  readonly roots: readonly number[];
  /** Least and greatest value of the figure within the range. */
  readonly reach: readonly [number, number];
  /** Whether the figure only rises, or only falls, wherever it has a value. */
  readonly monotone: boolean;
  /** Where in the range the figure has a value, ascending. */
  readonly known: readonly (readonly [number, number])[];
  /** Where the figure jumps past the target without taking it. */
  readonly jumps: readonly number[];
}

/** What keeps all inputs sane: of each what it may be, less where it is moved from. */
function saneRange(catalog: Catalog, inputs: readonly string[], from: readonly number[]): readonly [number, number] {
  const ranges = inputs.map((path) => catalog.node(path).entry.sane ?? [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY]);
  return [Math.max(...ranges.map(([low], n) => low - from[n]!)), Math.min(...ranges.map(([, high], n) => high - from[n]!))];
}

function named(catalog: Catalog, paths: readonly string[]): string {
  const places = paths.map((path) => catalog.node(path).place);
  return nameAtAll(catalog.node(paths[0]!).entry, places).join(' and ');
}

/** The figure stays where it is: either nothing leads to it from the inputs, or what it reads was told in another way. */
function noEffect(catalog: Catalog, situation: Situation, { inputs, figure }: Goal): Refusal {
  const used = evaluate(catalog, situation)
    .overridden(inputs)
    .find(({ facts }) => facts.some((path) => inputs.includes(path)))?.used;
  const because = used ? `: the ${named(catalog, [used])} is used instead` : '';
  return refuse(
    `The ${named(catalog, inputs)} does not change the ${named(catalog, [figure])} of this car${because}.`,
    ...(used ? [used] : inputs),
  );
}

/** Where each input is moved from: 0 where all are moved to one value. */
function startOf(catalog: Catalog, situation: Situation, { inputs, moved = 'to' }: Goal): readonly number[] | Refusal {
  if (moved === 'to') return inputs.map(() => 0);
  const now = evaluate(catalog, situation);
  const from: number[] = [];
  for (const path of inputs) {
    const value = now.number(path);
    if (isRefusal(value))
      return refuse(`By how much is not known, since it is not known where it is. ${value.refused}`, ...(value.because ?? []));
    from.push(value);
  }
  return from;
}

/**
 * Seeks the values of some inputs, moved together, that bring a figure to a target, of a car or in a plain sum. The car stays as it is; what it was
 * measured as, too. The range is walked in 64 steps, turning points and the edges of what can be computed are found, and every crossing is bisected to
 * the last digit. Two roots nearer than a step, with no turn between two samples to tell of them, are not found.
 */
export const seek = (catalog: Catalog, situation: Situation, goal: Goal): Sought | Refusal => whole(seekInPieces(catalog, situation, goal));
/** The same, in pieces of a few milliseconds. */
export function* seekInPieces(catalog: Catalog, situation: Situation, goal: Goal): InPieces<Sought | Refusal> {
  const { inputs, figure, target } = goal;
  const trial = catalogTrying(catalog, situation, inputs);
  if (!inputs.some((input) => trial.dependsOn(figure, input))) return noEffect(catalog, situation, goal);
  const { sane } = catalog.node(figure).entry;
  if (sane && !(target >= sane[0] && target <= sane[1]))
    return { ...refuse(`No car has such a ${named(catalog, [figure])}.`, figure), range: sane };
  const from = startOf(catalog, situation, goal);
  if (isRefusal(from)) return from;
  const range = goal.range ?? saneRange(catalog, inputs, from);
  const ask = probe(catalog, situation, inputs, [figure], from);
  const f: Scalar = (x) => ask(x)[0];
  const parts: (readonly Point[])[] = [];
  for (const points of yield* stretches(f, grid(range, present(catalog, situation, inputs, from)))) parts.push(yield* withTurns(f, points));
  const ys = parts.flat().map(([, y]) => y);
  if (ys.length === 0) return nowhere(catalog, situation, goal, range, from);
  const reach: readonly [number, number] = [Math.min(...ys), Math.max(...ys)];
  if (reach[1] - reach[0] <= negligible * Math.max(Math.abs(reach[0]), Math.abs(reach[1]))) return noEffect(catalog, situation, goal);
  const found: { readonly roots: readonly number[]; readonly jumps: readonly number[] }[] = [];
  for (const points of parts) found.push(yield* crossings(f, points, target));
  return {
    roots: found.flatMap(({ roots }) => roots),
    reach,
    monotone: isMonotone(parts),
    known: parts.map((points) => [points[0]![0], points.at(-1)![0]]),
    jumps: found.flatMap(({ jumps }) => jumps),
  };
}
/** Where the inputs are, in what is sought: the walk looks there, too. */
function present(catalog: Catalog, situation: Situation, inputs: readonly string[], from: readonly number[]): readonly number[] {
  const now = evaluate(catalog, situation);
  return inputs.flatMap((path, n) => {
    const value = now.number(path);
    return isRefusal(value) ? [] : [value - from[n]!];
  });
}
function isMonotone(parts: readonly (readonly Point[])[]): boolean {
  const rises = parts.flatMap((points) => points.slice(1).map(([, y], n) => Math.sign(y - points[n]![1]))).filter((sign) => sign !== 0);
  return rises.every((sign) => sign === rises[0]);
}
/** No value anywhere in the range: what is missing is the same everywhere, so the middle tells it. */
function nowhere(
  catalog: Catalog,
  situation: Situation,
  goal: Goal,
  [low, high]: readonly [number, number],
  from: readonly number[],
): Refusal {
  const { inputs, figure } = goal;
  const facts = inputs.reduce((told, path, n) => {
    const middle = { value: (low + high) / 2 + from[n]!, within: 0, evidence: 'estimated', source: 'tried' } as const;
    return telling(catalog, told, path, middle);
  }, situation.facts);
  const reason = evaluate(catalog, { ...situation, facts, then: situation.then ?? situation.facts }).number(figure);
  return isRefusal(reason) ? reason : refuse(`The ${named(catalog, [figure])} has no value in that range.`, ...inputs);
}
