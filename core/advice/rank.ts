/** Changes that could be made to a car, ranked by how far each takes a figure toward where it is wanted, per minute of work. */
import { isRefusal, type Refusal } from '../catalog.js';
import { type Difference, difference } from '../difference.js';
import { type Catalog, type Evaluation, evaluate, type Situation } from '../engine.js';
import { type InPieces, whole } from '../pieces.js';

export interface Aim {
  /** Full path of a figure. */
  readonly path: string;
  /** 1: more of it is wanted; -1: less. */
  readonly towards: 1 | -1;
}
export interface Goal {
  /** One figure, or several that shall all move; those are weighed by their part of what they are. */
  readonly aims: readonly Aim[];
  /** A figure that shall stay, and by how much it may move all the same; SI. */
  readonly hold?: { readonly path: string; readonly slack: number };
}
/** A car with a change made to it. `what` is the caller's own. */
export interface Candidate<T> {
  readonly what: T;
  readonly situation: Situation;
  /** Of work; undefined where it is not known. */
  readonly minutes: number | undefined;
  /** Settings of one adjuster: only the best of them is ranked. */
  readonly group?: string;
}
/**
 * `helps`: toward the goal by more than its doubt. `upsets`: that too, and what should stay moves by more than it may.
 * `unsure`: toward it by less than its doubt. `away`: away from it, or nowhere. `unweighed`: toward it, its doubt not worked out.
 */
export type Verdict = 'helps' | 'upsets' | 'unsure' | 'unweighed' | 'away';
export interface Ranked<T> extends Candidate<T> {
  readonly numbers: Evaluation;
  /** Toward the goal: of one aim in its SI unit; of several the mean of their relative moves. */
  readonly gain: number;
  /** Half-width of the gain that holds 19 in 20; undefined where it was not worked out. */
  readonly within: number | undefined;
  /** Of what should stay; signed. */
  readonly held: number | undefined;
  readonly verdict: Verdict;
}
export interface Ranking<T> {
  readonly before: Evaluation;
  /** By verdict; what helps by gain a minute, then what helps with work that is not known, by gain. */
  readonly ranked: readonly Ranked<T>[];
  /** What has no such figure: beyond an end of travel, no equilibrium. */
  readonly impossible: readonly { readonly what: T; readonly why: Refusal }[];
}
/** Work of no time at all is not infinitely good. */
const leastMinutes = 1;
/** Part of the figure below which a move is arithmetic. */
const arithmetic = 1e-9;

/** Gain a minute; undefined where the work is not known. */
export const perMinute = ({ gain, minutes }: { readonly gain: number; readonly minutes: number | undefined }): number | undefined =>
  minutes === undefined ? undefined : gain / Math.max(leastMinutes, minutes);

/** The change over all aims. The widths of several are added: never too little, for their errors may be the same. */
function gainOf(aims: readonly Aim[], moves: readonly Pick<Difference, 'from' | 'change' | 'within'>[]) {
  const single = moves.length === 1;
  let [gain, within] = [0, 0];
  moves.forEach((move, n) => {
    const weight = single ? 1 : 1 / Math.abs(move.from) / moves.length;
    gain += weight * (aims[n]?.towards ?? 1) * move.change;
    within += weight * move.within;
  });
  return { gain, within };
}
const upsets = ({ hold }: Goal, held: number | undefined): boolean => hold !== undefined && Math.abs(held ?? 0) > hold.slack;
const order: Readonly<Record<Verdict, number>> = { helps: 0, upsets: 1, unsure: 2, unweighed: 3, away: 4 };

function compareRanked(a: Ranked<unknown>, b: Ranked<unknown>): number {
  if (a.verdict !== b.verdict) return order[a.verdict] - order[b.verdict];
  const [p, q] = [perMinute(a), perMinute(b)];
  if (p === undefined || q === undefined || a.verdict === 'away')
    return Number(p === undefined) - Number(q === undefined) || b.gain - a.gain;
  return q - p;
}

/**
 * Works each candidate out in full, both ends: across a lift, a stop or a knee a slope misleads. Those that go the right way are weighed, best first:
 * their doubt is that of the difference, in which what the car and the changed car share cancels, error by error.
 * @param closely how many are weighed at most
 * @returns a refusal where the car as it is has no such figure
 */
export const rank = <T>(
  catalog: Catalog,
  before: Situation,
  candidates: readonly Candidate<T>[],
  goal: Goal,
  closely = 8,
): Ranking<T> | Refusal => whole(rankCandidates(catalog, before, candidates, goal, closely));
/** The same, in pieces of one candidate each. */
export function* rankCandidates<T>(
  catalog: Catalog,
  before: Situation,
  candidates: readonly Candidate<T>[],
  goal: Goal,
  closely: number,
): InPieces<Ranking<T> | Refusal> {
  const base = evaluate(catalog, before);
  const paths = [...goal.aims.map((aim) => aim.path), ...(goal.hold ? [goal.hold.path] : [])];
  const from: number[] = [];
  for (const path of paths) {
    const value = base.number(path);
    if (isRefusal(value)) return value;
    from.push(value);
  }
  const impossible: { what: T; why: Refusal }[] = [];
  const found: Ranked<T>[] = [];
  for (const candidate of candidates) {
    yield;
    const numbers = evaluate(catalog, candidate.situation);
    const to = paths.map((path) => numbers.number(path));
    const why = to.find((one) => isRefusal(one));
    if (why !== undefined && isRefusal(why)) {
      impossible.push({ what: candidate.what, why });
      continue;
    }
    const changes = to.map((value, n) => (isRefusal(value) ? 0 : value - from[n]!));
    const moves = goal.aims.map((_, n) => ({ from: from[n]!, change: changes[n]!, within: 0 }));
    const { gain } = gainOf(goal.aims, moves);
    const least = arithmetic * (goal.aims.length === 1 ? 1 + Math.abs(from[0]!) : 1);
    const held = goal.hold ? changes.at(-1) : undefined;
    found.push({ ...candidate, numbers, gain, held, within: undefined, verdict: gain > least ? 'unweighed' : 'away' });
  }
  const kept = bestOfGroups(found, goal).sort(compareRanked);
  const ranked: Ranked<T>[] = [];
  for (const [n, one] of kept.entries()) {
    const counts = n < closely && one.verdict === 'unweighed';
    if (counts) yield;
    ranked.push(counts ? weighed(one, base, goal) : one);
  }
  return { before: base, ranked: ranked.sort(compareRanked), impossible };
}
/** Of the settings of one adjuster the one that gains most, of those that leave alone what should stay where any do. */
function bestOfGroups<T>(found: readonly Ranked<T>[], goal: Goal): Ranked<T>[] {
  const best = new Map<string, Ranked<T>>();
  const alone: Ranked<T>[] = [];
  for (const one of found) {
    const other = one.group === undefined ? undefined : best.get(one.group);
    if (one.group === undefined) alone.push(one);
    else if (!other || Number(upsets(goal, other.held)) - Number(upsets(goal, one.held)) > 0) best.set(one.group, one);
    else if (upsets(goal, one.held) === upsets(goal, other.held) && one.gain > other.gain) best.set(one.group, one);
  }
  return [...alone, ...best.values()];
}
function weighed<T>(one: Ranked<T>, base: Evaluation, goal: Goal): Ranked<T> {
  const within = doubtOf(base, one.numbers, goal)?.within;
  if (within === undefined) return one;
  const verdict = one.gain > within ? (upsets(goal, one.held) ? 'upsets' : 'helps') : 'unsure';
  return { ...one, within, verdict };
}
function doubtOf(from: Evaluation, to: Evaluation, goal: Goal): { readonly gain: number; readonly within: number } | undefined {
  const moves = goal.aims.map(({ path }) => difference(from, to, path, { sameCar: true }));
  const told = moves.flatMap((one) => (isRefusal(one) ? [] : [one]));
  return told.length < moves.length ? undefined : gainOf(goal.aims, told);
}

/** Whether two changes differ by no more than the doubt of their difference: then neither is the better one. */
export function isEqual<T>(a: Ranked<T>, b: Ranked<T>, goal: Goal): boolean {
  const between = doubtOf(a.numbers, b.numbers, goal);
  return between !== undefined && Math.abs(between.gain) <= between.within;
}
/** Every two of them that can be done together. */
export const pairsOf = <T>(singles: readonly T[], collide: (a: T, b: T) => boolean): readonly (readonly [T, T])[] =>
  singles.flatMap((a, n) => singles.slice(n + 1).flatMap((b) => (collide(a, b) ? [] : [[a, b] as const])));
