/** What a line tells, laid over a car's facts: for good (`set`), or for one answer (`try`, `with`). */

import type { Fact, Facts, Told } from '../core/car.js';
import { type Entry, type Evidence, groupsSaid, halfWidth, isRefusal, isWorkedOut, type Value } from '../core/catalog.js';
import { nameAt, pathAt, type Situation } from '../core/engine.js';
import { readTireSize } from '../core/subjects/tires/readSize.js';
import { tireSize } from '../core/subjects/tires/told.js';
import { wheelSize } from '../core/subjects/wheels/told.js';
import { readWheelSize } from '../core/subjects/wheels/wheelSize.js';
import { asOfThen, catalog, hasState, numbersOf } from './looked.js';
import type { Item, Said } from './reading.js';
import { isSame } from './same.js';

/** How the facts are known: told by a line at a moment, or only supposed. */
export type How =
  | {
      readonly is: 'told';
      readonly evidence?: Evidence;
      /** Left out: only supposed to be so, with its doubt. */
      readonly told?: Told;
      /** Names the line among all that are ever told; says nothing of its text. */
      readonly source: string;
    }
  | { readonly is: 'tried' };

/** One fact at one place, before and after. */
export interface Altered {
  readonly path: string;
  readonly place: string;
  readonly entry: Entry;
  readonly before: Fact | undefined;
  readonly after: Fact | undefined;
}
export interface Laid {
  readonly situation: Situation;
  /** What was told, in the order of the line. */
  readonly told: readonly Altered[];
  /** Facts that said the same thing in another way, and went. */
  readonly forgot: readonly Altered[];
  /** State facts of before, brought to the car as it is now; `after` undefined: it could not be worked out, and went. */
  readonly carried: readonly Altered[];
  /** Whether state facts were among the told. */
  readonly measured: boolean;
}
export interface NotLaid {
  readonly refused: string;
  readonly line?: string;
}
export const isNotLaid = (v: Laid | NotLaid): v is NotLaid => 'refused' in v;

/** About: what a guess of one's own may be off by, where the catalog gives no width for an estimate. */
const guess = { relative: 0.1 };

function widthOf(entry: Entry, value: Value, said: Said, evidence: Evidence): number {
  if (typeof value === 'string') return 0;
  const within = evidence === 'estimated' ? (entry.within ?? guess) : entry.told?.[evidence];
  if (typeof value === 'object') return within === undefined ? 0 : 'relative' in within ? within.relative : 0;
  if (said.within !== undefined) return said.within;
  return within === undefined ? 0 : halfWidth(value, within);
}

/** The value that is meant: what was said, or the present one changed by it. */
function meantValue(item: Item, said: Said, place: string, situation: Situation): Value | NotLaid {
  if (said.change === undefined) return said.value;
  const { entry } = item;
  const name = nameAt(entry, place);
  const present = numbersOf(situation).number(pathAt(place, entry));
  if (isRefusal(present)) return { refused: `How much more or less can't be worked out: the ${name} is not known yet.` };
  if (typeof said.value !== 'number') throw new Error(`a change of ${entry.path} by ${JSON.stringify(said.value)}`);
  const value = said.change === 'plus' ? present + said.value : present * said.value;
  if (entry.sane && (value < entry.sane[0] || value > entry.sane[1])) return { refused: `That would take the ${name} out of its range.` };
  return value;
}

/**
 * Lays items over a car. When state facts (ride heights, scale readings) are told and the car has changed since the others were taken,
 * the others are carried on to now through the figures that say what they have become.
 */
export function lay(from: Situation, items: readonly Item[], how: How): Laid | NotLaid {
  const facts = new Map(from.facts);
  const told: Altered[] = [];
  const forgot: Altered[] = [];
  const tellers = new Map<string, Entry>();
  for (const [at, item] of items.entries()) {
    const { entry, said } = item;
    if (said === undefined) throw new Error(`${entry.path} was not told`);
    const evidence = how.is === 'told' ? (how.evidence ?? entry.told?.usually ?? 'spec') : 'spec';
    for (const place of item.places) {
      const path = pathAt(place, entry);
      const value = meantValue(item, said, place, from);
      if (typeof value === 'object' && 'refused' in value) return value;
      const groups = groupsSaid(entry, value);
      for (const what of entry.instead === undefined ? [entry.path, ...groups] : groups) {
        const key = `${place}.${what}`;
        const other = tellers.get(key);
        if (other) {
          const both =
            other === entry ? `The ${nameAt(entry, place)} is told twice` : `The ${other.name} and the ${entry.name} say the same thing`;
          return { refused: `${both}; tell it once.` };
        }
        tellers.set(key, entry);
      }
      const after: Fact =
        how.is === 'tried'
          ? { value, within: 0, evidence, source: 'tried' }
          : {
              value,
              within: widthOf(entry, value, said, evidence),
              evidence,
              source: `${how.source}.${at}`,
              ...(how.told && { told: how.told }),
            };
      told.push({ path, place, entry, before: facts.get(path), after });
      for (const twin of groups.length === 0 ? [] : catalog.entries) {
        if (twin === entry || twin.instead === undefined || !groups.includes(twin.instead)) continue;
        const gone = pathAt(place, twin);
        const before = facts.get(gone);
        if (!before) continue;
        facts.delete(gone);
        forgot.push({ path: gone, place, entry: twin, before, after: undefined });
      }
      facts.set(path, after);
    }
  }
  if (how.is === 'tried') forgot.push(...otherWheels(told, facts));
  const measured = told.some(({ entry }) => entry.state);
  const carried = measured ? carryOn(from, told, facts) : [];
  const then = from.then ?? (hasState(from.facts) ? from.facts : undefined);
  return { situation: measured || !then ? { facts } : { facts, then }, told, forgot, carried, measured };
}

/** A size that is only asked about stands on a wheel of its own diameter: the car's wheels of another are left out. */
function otherWheels(told: readonly Altered[], facts: Map<string, Fact>): Altered[] {
  const gone: Altered[] = [];
  for (const { entry, place, after } of told) {
    if (entry !== tireSize || typeof after?.value !== 'string') continue;
    const path = pathAt(place, wheelSize);
    const before = facts.get(path);
    if (typeof before?.value !== 'string' || told.some((one) => one.path === path)) continue;
    const [tire, wheel] = [readTireSize(after.value), readWheelSize(before.value)];
    if (isRefusal(tire) || isRefusal(wheel) || Math.abs(tire.rimDiameter - wheel.diameter) < 0.002) continue;
    facts.delete(path);
    gone.push({ path, place, entry: wheelSize, before, after: undefined });
  }
  return gone;
}

/** Brings the state facts that were not told again to the car as it stands, in `facts`. */
function carryOn(from: Situation, told: readonly Altered[], facts: Map<string, Fact>): Altered[] {
  const now = withoutStates(from, told);
  if (!hasChanged(now.then, now.facts)) return [];
  const carried: Altered[] = [];
  const numbers = numbersOf(now);
  for (const [path, before] of from.facts) {
    const node = catalog.node(path);
    if (!node.entry.state || told.some((one) => one.path === path)) continue;
    // A told result, and a state that says it itself, is what it has become; another state has a figure for it.
    const carriesItself = isWorkedOut(node.entry) || node.entry.carries.length > 0;
    const figure = carriesItself ? node.entry : catalog.entries.find((one) => one.carriesOn === node.entry);
    const became = figure ? numbers.number(pathAt(node.place, figure)) : undefined;
    const one = { path, place: node.place, entry: node.entry, before };
    if (figure === undefined || became === undefined || isRefusal(became)) {
      facts.delete(path);
      carried.push({ ...one, after: undefined });
    } else if (became !== before.value) {
      const within = Math.max(before.within, numbers.within(pathAt(node.place, figure)));
      // The evidence is still that reading, so it keeps who took it and when.
      const after: Fact = { ...before, value: became, within, evidence: 'estimated', source: carriedOn(before.source) };
      facts.set(path, after);
      carried.push({ ...one, after });
    }
  }
  return carried;
}
/** Another error than the reading's own, the same for all that were read at once: `X~1`, carried on again `X~2`. */
function carriedOn(source: string): string {
  const before = /~(\d+)$/.exec(source);
  return before === null ? `${source}~1` : `${source.slice(0, before.index)}~${Number(before[1]) + 1}`;
}
/** The car with the told facts that are not states, still measured as it was. */
function withoutStates(from: Situation, told: readonly Altered[]): Required<Pick<Situation, 'facts' | 'then'>> {
  const facts = new Map(from.facts);
  for (const { path, entry, after } of told) if (!entry.state && after) facts.set(path, after);
  return { facts, then: asOfThen(from.then ?? from.facts, facts) };
}
/** Whether the car itself is another than it was. */
const hasChanged = (then: Facts, now: Facts): boolean =>
  [...new Set([...then.keys(), ...now.keys()])].some((path) => {
    if (catalog.node(path).entry.state) return false;
    const before = then.get(path);
    const after = now.get(path);
    return before === undefined || after === undefined || !isSame(before.value, after.value);
  });

/** A car whose state facts are brought to now, so that one set of facts says all of it. */
export function settled(from: Situation): { readonly facts: Facts; readonly carried: readonly Altered[] } {
  const facts = new Map(from.facts);
  return { facts, carried: from.then === undefined ? [] : carryOn(from, [], facts) };
}
