/** Which measurement would make a number surer. */

import type { Fact } from './car.js';
import { type Evidence, halfWidth, isRefusal } from './catalog.js';
import { type Evaluation, evaluate, pathAt, type Share, type Situation } from './engine.js';

export interface Measurement {
  /** The inputs to measure: those that share the error. */
  readonly paths: readonly string[];
  /** The error that it replaces, and how that is known now. */
  readonly error: string;
  readonly evidence: Evidence | 'rule';
  /** Half-widths of the number now, and when those inputs have been measured as well as they usually are; SI. */
  readonly now: number;
  readonly after: number;
}

/** The input as it would be told after measuring, or undefined where measuring tells no more than is known. */
function measured(evaluation: Evaluation, path: string, source: string): Fact | undefined {
  const { entry } = evaluation.catalog.node(path);
  if (!entry.told) return undefined;
  const fact = evaluation.situation.facts.get(path);
  const value = entry.kind === 'curve' ? fact?.value : evaluation.number(path);
  if (value === undefined || isRefusal(value)) return undefined;
  // The doubt of a curve is a fraction of it.
  const within = halfWidth(typeof value === 'number' ? value : 1, entry.told.measured);
  const before = entry.kind === 'curve' ? (fact?.within ?? 0) : evaluation.within(path);
  return within < before ? { value, within, evidence: 'measured', source } : undefined;
}

/** Of a guess that cannot be told itself: what is told instead, as if it turned out as it was guessed. */
function asked({ catalog }: Evaluation, path: string, source: string): { readonly path: string; readonly fact: Fact } | undefined {
  const { entry, place } = catalog.node(path);
  if (entry.asks?.as === undefined) return undefined;
  return { path: pathAt(place, entry.asks.tell), fact: { value: entry.asks.as, within: 0, evidence: 'measured', source } };
}

function whenMeasured(evaluation: Evaluation, share: Share): Situation | undefined {
  const { facts, then } = evaluation.situation;
  // One tool, one error: what was wrong together is measured together.
  const source = `measuring ${share.error}`;
  const next = new Map(facts);
  const past = then && new Map(then);
  for (const path of share.paths) {
    const told = asked(evaluation, path, source) ?? { path, fact: measured(evaluation, path, source) };
    if (!told.fact) continue;
    // What has not changed since the car was measured is now known better for then, too.
    if (past && past.get(told.path)?.source === facts.get(told.path)?.source) past.set(told.path, told.fact);
    next.set(told.path, told.fact);
  }
  if (![...next.values()].some((fact) => fact.source === source)) return undefined;
  return { ...evaluation.situation, facts: next, ...(past ? { then: past } : {}) };
}

/**
 * For the errors that a number rests on most: what its plus-or-minus would become if those inputs were measured. Best first; only what helps.
 * @param most how many of the largest shares are looked at, each an evaluation of the car
 */
export function measureNext(evaluation: Evaluation, path: string, most = 5): readonly Measurement[] {
  const now = evaluation.within(path);
  return evaluation
    .shares(path)
    .slice(0, most)
    .flatMap((share): Measurement[] => {
      const situation = whenMeasured(evaluation, share);
      if (!situation) return [];
      const after = evaluate(evaluation.catalog, situation).within(path);
      return after < now ? [{ paths: share.paths, error: share.error, evidence: share.evidence, now, after }] : [];
    })
    .sort((a, b) => a.after - b.after);
}
