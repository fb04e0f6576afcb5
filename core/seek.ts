/** Which value of an input gives a wanted figure: all of them within a range, or why there is none. */
import { isRefusal, type Refusal, refuse } from './catalog.js';
import { type Catalog, evaluate, nameAtAll, probe, type Situation, telling } from './engine.js';
import { bisect, type Scalar, turningPoint } from './seek/bracket.js';

export interface Goal {
  /** Quantities that are moved together, to one value: `['lr.tire.pressure', 'rr.tire.pressure']`. */
  readonly inputs: readonly [string, ...string[]];
  readonly figure: string;
  /** SI. */
  readonly target: number;
  /** SI; left out: the sane range that the inputs have in common. */
  readonly range?: readonly [number, number];
}
export interface Sought {
  /** Values of the inputs that give the target, ascending, SI. */
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
type Point = readonly [x: number, y: number];

const steps = 64;
/** A range over more than this is walked in equal ratios: spring rates, not camber angles. */
const wide = 20;
/** A change this small, against all that the figure can do, is none. */
const negligible = 1e-9;
/** From one double to the next a figure moves by less than this part of a step, or it jumps. */
const steep = 1e-6;

function grid([low, high]: readonly [number, number], also: readonly number[]): number[] {
  const geometric = low > 0 && high / low > wide;
  const at = (n: number): number => (geometric ? low * (high / low) ** (n / steps) : low + ((high - low) * n) / steps);
  const inner = Array.from({ length: steps - 1 }, (_, n) => at(n + 1));
  return [...new Set([low, ...inner, high, ...also.filter((x) => x > low && x < high)])].sort((a, b) => a - b);
}

/** Stretches of the range where the figure has a value, each walked from one edge to the other. */
function stretches(f: Scalar, xs: readonly number[]): Point[][] {
  const found: Point[][] = [];
  let open: Point[] | undefined;
  let before: number | undefined;
  const edge = (inside: number, outside: number): Point => {
    const x = bisect((at) => f(at) !== undefined, inside, outside)[0];
    return [x, f(x)!];
  };
  for (const x of xs) {
    const y = f(x);
    if (y !== undefined) {
      if (!open) {
        open = before === undefined ? [] : [edge(x, before)];
        found.push(open);
      }
      if (open.at(-1)?.[0] !== x) open.push([x, y]);
    } else if (open && before !== undefined) {
      const last = edge(before, x);
      if (last[0] !== before) open.push(last);
      open = undefined;
    }
    before = x;
  }
  return found;
}

/** Adds the turning points between the samples, so that a root on either side of one is not stepped over. */
function withTurns(f: Scalar, points: readonly Point[]): Point[] {
  const out: Point[] = [];
  points.forEach((point, n) => {
    out.push(point);
    const [before, after] = [points[n - 1], points[n + 1]];
    if (!before || !after || (point[1] - before[1]) * (after[1] - point[1]) >= 0) return;
    const turn = turningPoint(f, before[0], after[0], point[1] > before[1] ? 'greatest' : 'least');
    if (turn && turn[0] !== point[0]) out.push(turn);
  });
  return out.sort((a, b) => a[0] - b[0]);
}

function crossings(f: Scalar, points: readonly Point[], target: number): { roots: number[]; jumps: number[] } {
  const roots: number[] = [];
  const jumps: number[] = [];
  /** How far the figure goes from a sample to those beside it: what is small is small against this, also beside a pole. */
  const about = (n: number): number => {
    const y = points[n]![1];
    return Math.max(...[points[n - 1], points[n + 1]].map((other) => (other ? Math.abs(other[1] - y) : 0)));
  };
  const taken = points.map(([, y], n) => Math.abs(y - target) <= negligible * about(n));
  points.forEach(([x, y], n) => {
    const next = points[n + 1];
    if (taken[n]) {
      roots.push(x);
    } else if (next && !taken[n + 1] && y > target !== next[1] > target) {
      const [inside, outside] = bisect((at) => (f(at) ?? Number.NaN) > target === y > target, x, next[0]);
      const [a, b] = [f(inside), f(outside)];
      const jump = a === undefined || b === undefined || Math.abs(a - b) > steep * Math.abs(next[1] - y);
      (jump ? jumps : roots).push(inside);
    }
  });
  return { roots: distinct(roots), jumps };
}
/** Touching the target at a turning point is one root, however many samples lie there. */
const distinct = (xs: readonly number[]): number[] => xs.filter((x, n) => n === 0 || Math.abs(x - xs[n - 1]!) > 1e-6 * Math.abs(x) + 1e-12);

function commonRange(catalog: Catalog, inputs: readonly string[]): readonly [number, number] {
  const ranges = inputs.map((path) => catalog.node(path).entry.sane ?? [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY]);
  return [Math.max(...ranges.map(([low]) => low)), Math.min(...ranges.map(([, high]) => high))];
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

/**
 * Seeks the values of some inputs, moved together, that bring a figure to a target. The car stays as it is; what it was measured as, too.
 * The range is walked in 64 steps, turning points and the edges of what can be computed are found, and every crossing is bisected to the last digit.
 * Two roots nearer than a step, with no turn between two samples to tell of them, are not found.
 */
export function seek(catalog: Catalog, situation: Situation, goal: Goal): Sought | Refusal {
  const { inputs, figure, target, range = commonRange(catalog, inputs) } = goal;
  if (!inputs.some((input) => catalog.dependsOn(figure, input))) return noEffect(catalog, situation, goal);
  const ask = probe(catalog, situation, inputs, [figure]);
  const f: Scalar = (x) => ask(x)[0];
  const now = evaluate(catalog, situation);
  const here = inputs.map((path) => now.number(path)).filter((x) => typeof x === 'number');
  const parts = stretches(f, grid(range, here)).map((points) => withTurns(f, points));
  const ys = parts.flat().map(([, y]) => y);
  if (ys.length === 0) return nowhere(catalog, situation, goal, range);
  const reach: readonly [number, number] = [Math.min(...ys), Math.max(...ys)];
  const span = reach[1] - reach[0];
  if (span <= negligible * Math.max(Math.abs(reach[0]), Math.abs(reach[1]))) return noEffect(catalog, situation, goal);
  const found = parts.map((points) => crossings(f, points, target));
  const rises = parts.flatMap((points) => points.slice(1).map(([, y], n) => Math.sign(y - points[n]![1]))).filter((sign) => sign !== 0);
  return {
    roots: found.flatMap(({ roots }) => roots),
    reach,
    monotone: rises.every((sign) => sign === rises[0]),
    known: parts.map((points) => [points[0]![0], points.at(-1)![0]]),
    jumps: found.flatMap(({ jumps }) => jumps),
  };
}
/** No value anywhere in the range: what is missing is the same everywhere, so the middle tells it. */
function nowhere(catalog: Catalog, situation: Situation, { inputs, figure }: Goal, [low, high]: readonly [number, number]): Refusal {
  const middle = { value: (low + high) / 2, within: 0, evidence: 'estimated', source: 'tried' } as const;
  const facts = inputs.reduce((told, path) => telling(catalog, told, path, middle), situation.facts);
  const reason = evaluate(catalog, { facts, then: situation.then ?? situation.facts }).number(figure);
  return isRefusal(reason) ? reason : refuse(`The ${named(catalog, [figure])} has no value in that range.`, ...inputs);
}
