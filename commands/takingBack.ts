/** Taking changes back: which revisions belong together, which are taken back already, and a car without some of them. */
import type { Fact, Facts } from '../core/car.js';
import type { Revision } from './context.js';
import { isSame } from './same.js';

type Done = readonly [Revision, ...Revision[]];

/**
 * What each line did that still stands, the newest line first: its revisions, its edits' included, newest first. A revision that no edit belongs to
 * stands alone.
 *
 * An undo names a revision: it has taken back that one and all since, each with its whole line.
 * @param history - of one car, newest first
 */
export function* linesStanding(history: readonly Revision[]): Iterable<Done> {
  const passed = new Set<string>();
  let until: number | undefined;
  for (const revision of history) {
    const { line } = revision;
    const known = line !== undefined && passed.has(line);
    if (line !== undefined) passed.add(line);
    if (until !== undefined) {
      if (revision.id === until) until = undefined;
    } else if (!known) {
      until = revision.undoes;
      yield [revision, ...history.filter((other) => line !== undefined && other.line === line && other !== revision)];
    }
  }
}
/** Those of them that an undo takes back next: not the undos themselves. */
export function* linesToTakeBack(history: readonly Revision[]): Iterable<Done> {
  for (const done of linesStanding(history)) if (done[0].undoes === undefined) yield done;
}

export interface Without {
  /** Paths that the revisions set, altered or forgot, all taken together. */
  readonly touched: readonly string[];
  /** Those of them that no longer are as the revisions left them. */
  readonly changedSince: readonly string[];
  /** The car's facts now, with those that were touched as they were before. */
  readonly facts: Facts;
  readonly measuredIn: number | undefined;
}
type Moment = Pick<Revision, 'id' | 'facts' | 'measuredIn'>;

export const isSameFact = (a: Fact | undefined, b: Fact | undefined): boolean =>
  a === undefined || b === undefined
    ? a === b
    : isSame(a.value, b.value) && a.within === b.within && a.evidence === b.evidence && a.source === b.source;
const differing = (a: Facts, b: Facts): string[] =>
  [...new Set([...a.keys(), ...b.keys()])].filter((path) => !isSameFact(a.get(path), b.get(path)));

/**
 * A car as it would be without some of its revisions. Each is taken against its own parent: others may stand between them, and are left alone.
 * @param made - oldest first
 * @param parentOf - the revision before one; undefined before the first
 */
export function without(head: Moment, made: readonly Revision[], parentOf: (one: Revision) => Moment | undefined): Without {
  const was = new Map<string, Fact | undefined>();
  const left = new Map<string, Fact | undefined>();
  for (const one of made) {
    const parent: Facts = parentOf(one)?.facts ?? new Map();
    for (const path of differing(parent, one.facts)) {
      if (!was.has(path)) was.set(path, parent.get(path));
      left.set(path, one.facts.get(path));
    }
  }
  const touched = [...was.keys()].filter((path) => !isSameFact(was.get(path), left.get(path))).sort();
  const facts = new Map(head.facts);
  for (const path of touched) {
    const old = was.get(path);
    if (old === undefined) facts.delete(path);
    else facts.set(path, old);
  }
  return {
    touched,
    changedSince: touched.filter((path) => !isSameFact(head.facts.get(path), left.get(path))),
    facts,
    measuredIn: measuredWithout(head.measuredIn, made, parentOf),
  };
}
/** When the heights were taken, if not in what goes: before that one, and so on. */
function measuredWithout(now: number | undefined, made: readonly Revision[], parentOf: (one: Revision) => Moment | undefined) {
  let measuredIn = now;
  for (const one of [...made].reverse()) if (measuredIn === one.id) measuredIn = parentOf(one)?.measuredIn;
  return measuredIn;
}
