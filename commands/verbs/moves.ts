/** What moves in a car when something is changed, and how surely: for `try` and whoever asks what else a change does. */
import { isRefusal } from '../../core/catalog.js';
import { type Difference, difference } from '../../core/difference.js';
import { pathAt, placesOf } from '../../core/engine.js';
import type { Row } from '../answer.js';
import type { Breathe } from '../breathing.js';
import type { Preferences } from '../context.js';
import { catalog, type Looked, numbersOf } from '../looked.js';
import { isChange } from '../show/change.js';
import { labelAt } from '../show/label.js';
import { fewer, isAskable, isTelling } from '../show/lines.js';
import { endsSaid, sayingOf } from '../show/spoken.js';

export interface Move {
  readonly path: string;
  readonly difference: Difference;
}
/** Below this part of a number even a sure change is not much to look at: it keeps exact trifles from the top. */
const trifle = 0.005;

const weight = ({ difference: { change, within, from } }: Move): number => Math.abs(change) / Math.hypot(within, trifle * Math.abs(from));

/** What moved, for its rows, and how many figures moved beside them. */
export interface Moved {
  readonly rows: readonly Move[];
  readonly unseen: number;
}
/** At most so many rows: the rest is counted, and shown when it is named. */
const mostRows = 24;
/**
 * Figures with words of their own that moved from one state of a car to another: what was asked for by name, then what members talk of; where
 * they talk of nothing that moved, whatever did. Each largest first against the doubt of the move, which is dear, so it is worked out only of
 * these. A figure that only repeats what was told is left out.
 */
export async function moves(before: Looked, after: Looked, wanted: readonly string[], breathe: Breathe): Promise<Moved> {
  const [a, b] = [numbersOf(before.situation), numbersOf(after.situation)];
  const told = [...after.situation.facts].filter(([path, fact]) => before.situation.facts.get(path) !== fact);
  const repeats = (from: number, to: number) => told.some(([path, { value }]) => value === to && a.get(path) === from);
  const changed: string[] = [];
  for (const entry of catalog.entries) {
    if (entry.kind !== 'figure' || !isAskable(entry)) continue;
    for (const place of placesOf(entry.scope)) {
      await breathe();
      const path = pathAt(place, entry);
      const [from, to] = [a.number(path), b.number(path)];
      if (isRefusal(from) || isRefusal(to) || !isChange(from, to) || repeats(from, to)) continue;
      changed.push(path);
    }
  }
  const asked = changed.filter((path) => wanted.includes(path) || isTelling(path));
  const found: Move[] = [];
  for (const path of asked.length > 0 ? asked : changed) {
    await breathe();
    const moved = difference(a, b, path, { sameCar: true });
    if (!isRefusal(moved)) found.push({ path, difference: moved });
  }
  const named = wanted.flatMap((path) => found.find((one) => one.path === path) ?? []);
  const others = onlyOnce(found.filter(({ path }) => !wanted.includes(path))).sort((p, q) => weight(q) - weight(p));
  const rows = [...named, ...others].slice(0, mostRows);
  return { rows, unseen: changed.length - found.length + named.length + others.length - rows.length };
}
/** Two figures of one place that move by the same tell one thing (a height, and its change): the one that is nothing but the change goes. */
function onlyOnce(found: readonly Move[]): Move[] {
  const same = (a: Move, b: Move): boolean => {
    const [one, two] = [catalog.node(a.path), catalog.node(b.path)];
    const close = Math.abs(a.difference.change - b.difference.change) <= 1e-6 * Math.abs(a.difference.change);
    return one.place === two.place && one.entry.dimension === two.entry.dimension && close;
  };
  return found.filter((move) => move.difference.from !== 0 || !found.some((other) => other.difference.from !== 0 && same(other, move)));
}
/** The moves as rows, what is alike said once; without those that sentences tell. */
export const moveRows = (all: readonly Move[], preferences: Preferences, except: ReadonlySet<string> = new Set()): readonly Row[] =>
  fewer(all.map((move) => ({ path: move.path, row: moveRow(move, preferences) })))
    .filter(({ path }) => !except.has(path))
    .map(({ row }) => row);

/** `1.93`, `2.21 Hz`: both ends to the place that the change can be told to. */
function moveRow({ path, difference: moved }: Move, preferences: Preferences): Row {
  const { entry, place } = catalog.node(path);
  const how = sayingOf(path);
  const { now, was } = endsSaid(moved, how, preferences);
  return { label: labelAt(entry, place), cells: [was, now] };
}
