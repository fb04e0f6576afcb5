/** What makes a figure differ between two cars, or two states of one: its change split over the inputs that differ. */
import { attribute } from './attribution.js';
import type { Fact, Facts } from './car.js';
import { type Entry, isRefusal, type Refusal, refuse } from './catalog.js';
import { type Catalog, evaluate, pathAt, type Situation } from './engine.js';
import { type InPieces, whole } from './pieces.js';
import { barLinkSpacing, barRatio } from './subjects/bars/told.js';
import { track as trackOf } from './subjects/mass/told.js';
import { axleKind, rollCenterHeight, springBase } from './subjects/suspension/told.js';

/** Inputs that are changed together: the wheels of one end, or the several ways of telling one spring. */
export interface Cause {
  readonly paths: readonly string[];
  /** What it adds to the change, in the figure's unit. All parts together are the whole change. */
  readonly part: number;
  /** Standard error of the part: 0 where every order of changing was worked out. */
  readonly error: number;
}
export interface Causes {
  readonly from: number;
  readonly to: number;
  /** Largest first. */
  readonly causes: readonly Cause[];
}

const endOf: Readonly<Record<string, string>> = { lf: 'front', rf: 'front', lr: 'rear', rr: 'rear' };
const sameValue = (a: Fact | undefined, b: Fact | undefined): boolean =>
  a === b || (a !== undefined && b !== undefined && JSON.stringify(a.value) === JSON.stringify(b.value));
/** Facts that differ and that the figure can depend on, in groups. */
function differing(catalog: Catalog, from: Facts, to: Facts, figure: string): readonly (readonly string[])[] {
  const groups = new Map<string, string[]>();
  for (const path of new Set([...from.keys(), ...to.keys()])) {
    if (sameValue(from.get(path), to.get(path)) || !catalog.dependsOn(figure, path)) continue;
    const { entry, place } = catalog.node(path);
    const key = `${endOf[place] ?? place} ${entry.instead ?? entry.path}`;
    groups.set(key, [...(groups.get(key) ?? []), path]);
  }
  return [...groups.values()];
}
/** Where springs and bar act on a beam. */
const places: readonly Entry[] = [springBase, barLinkSpacing];
/** An axle's kind decides what its springs and bar act on and what is assumed of it: said outright, so that each is a cause of its own. */
function spelledOut(catalog: Catalog, one: Situation, other: Situation): Facts {
  const numbers = evaluate(catalog, one);
  const others = evaluate(catalog, other);
  const facts = new Map(one.facts);
  for (const end of ['front', 'rear'] as const) {
    const at = (entry: Entry) => catalog.byPath.get(pathAt(end, entry))?.path;
    const kind = at(axleKind);
    if (kind === undefined || numbers.get(kind) === others.get(kind)) continue;
    const track = numbers.number(pathAt(end, trackOf));
    for (const entry of [...places, rollCenterHeight, barRatio]) {
      const path = at(entry);
      const isPlace = places.includes(entry);
      if (path === undefined || (facts.has(path) && !isPlace)) continue;
      // Wheels that move alone: springs and bar act at the track.
      const apart = numbers.get(kind) === 'independent' && isPlace;
      const value = apart ? track : numbers.number(path);
      if (!isRefusal(value)) facts.set(path, { value, within: 0, evidence: 'estimated', source: 'spelled out' });
    }
  }
  return facts;
}
/** Random numbers that are the same every time: an answer does not change by being asked again. */
function repeatable(): () => number {
  let state = 20_250_101;
  return () => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    return state / 2 ** 32;
  };
}
const unmixed = refuse('A mixture of the two has no such figure, so that its change can not be split.');
/** Orders drawn where there are too many groups for all: the error of a part is then a few per cent of the change. */
const orders = 48;

/**
 * Splits the change of a figure over the inputs that differ, by Shapley's value: in no order, and nothing left over.
 * Where ride heights or scale readings differ, give situations that are brought to now (no `then`).
 * @param figure path of a number
 * @returns a refusal where one of the ends, or a mixture of both, has no such number
 */
export const causesOf = (catalog: Catalog, from: Situation, to: Situation, figure: string): Causes | Refusal =>
  whole(causesInPieces(catalog, from, to, figure));
/** The same, in pieces of a few milliseconds. */
export function* causesInPieces(catalog: Catalog, from: Situation, to: Situation, figure: string): InPieces<Causes | Refusal> {
  const [a, b] = [spelledOut(catalog, from, to), spelledOut(catalog, to, from)];
  const all = differing(catalog, a, b, figure);
  const then = to.then ?? from.then;
  const mixture = (groups: readonly (readonly string[])[], mask: bigint): number | undefined => {
    const facts = new Map(a);
    groups.forEach((paths, n) => {
      if ((mask & (1n << BigInt(n))) === 0n) return;
      for (const path of paths) {
        const fact = b.get(path);
        if (fact) facts.set(path, fact);
        else facts.delete(path);
      }
    });
    const number = evaluate(catalog, then ? { facts, then } : { facts }).number(figure);
    return isRefusal(number) ? undefined : number;
  };
  const everything = (1n << BigInt(all.length)) - 1n;
  const [start, end] = [mixture(all, 0n), mixture(all, everything)];
  if (start === undefined || end === undefined) {
    const reason = evaluate(catalog, start === undefined ? from : to).number(figure);
    return isRefusal(reason) ? reason : refuse('One of the two has no such figure.');
  }
  // Wheels are tied first and untied last, while springs and bar act at the track: else half of what their places do would go to the kind.
  const bitOf = (n: number) => 1n << BigInt(n);
  const kinds = all.flatMap((paths, n) => (paths.some((path) => catalog.node(path).entry === axleKind) ? [n] : []));
  const tied = kinds.filter((n) => b.get(all[n]?.[0] ?? '')?.value === 'beam');
  const first = tied.reduce((mask, n) => mask | bitOf(n), 0n);
  const last = kinds.filter((n) => !tied.includes(n)).reduce((mask, n) => mask | bitOf(n), 0n);
  const [begin, finish] = [mixture(all, first), mixture(all, everything ^ last)];
  if (begin === undefined || finish === undefined) return unmixed;
  const whichKind = (mask: bigint, part: number): Cause[] =>
    kinds.filter((n) => mask & bitOf(n)).map((n, _, some): Cause => ({ paths: all[n] ?? [], part: part / some.length, error: 0 }));
  // What moves nothing, neither alone nor as the last of all, is left out: it would double the work.
  const others: number[] = [];
  for (const n of all.keys()) {
    if (kinds.includes(n)) continue;
    yield;
    const bit = bitOf(n);
    if (mixture(all, first | bit) !== begin || mixture(all, (everything ^ last) & ~bit) !== finish) others.push(n);
  }
  const value = (mask: bigint) =>
    mixture(
      all,
      others.reduce((sum, n, at) => (mask & bitOf(at) ? sum | bitOf(n) : sum), first),
    );
  const split = yield* attribute(others.length, value, orders, repeatable());
  if (!split) return unmixed;
  const causes = [
    ...whichKind(first, begin - start),
    ...whichKind(last, end - finish),
    ...others.map((n, at): Cause => ({ paths: all[n] ?? [], part: split.parts[at] ?? 0, error: split.errors[at] ?? 0 })),
  ];
  return { from: start, to: end, causes: causes.sort((p, q) => Math.abs(q.part) - Math.abs(p.part)) };
}
