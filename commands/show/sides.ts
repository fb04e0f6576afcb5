/** Two or more cars, setups or sizes side by side. */
import { type Entry, isInput, isRefusal } from '../../core/catalog.js';
import { type Difference, difference } from '../../core/difference.js';
import { nameAt, pathAt, placesOf } from '../../core/engine.js';
import { answer, type Row } from '../answer.js';
import { oneByOne } from '../breathing.js';
import type { Outcome } from '../command.js';
import type { Context, Preferences } from '../context.js';
import { firstCarLine, refused } from '../house/own.js';
import { catalog, type Looked, numbersOf } from '../looked.js';
import type { Item } from '../reading.js';
import { isSame } from '../same.js';
import { bare, cellOf, sentence, textOf, valueText, writing } from './amount.js';
import { changeText, endsWithin, isChange } from './change.js';
import { lineToTell } from './figure.js';
import { labelAt } from './label.js';
import { fewer, isTelling, type Line } from './lines.js';
import { restsOn } from './rests.js';
import { versusText } from './versus.js';

export interface Side {
  readonly label: string;
  readonly looked: Looked;
  /** Figures that were asked for. */
  readonly items: readonly Item[];
}
export interface SideLine extends Line {
  readonly name: string;
  /** The difference over its doubt: above 1 it exceeds it. 0: the same. */
  readonly weight: number;
  readonly sure: boolean;
  readonly moved: Difference;
}
/** A difference known exactly (a size's height) is as sure as can be: weighed by how much it is of the number. */
const trifle = 0.002;

/** Two sides are states of one car, or of none: their estimates are wrong together. */
const oneCar = (a: Side, b: Side): boolean => a.looked.car?.id === b.looked.car?.id;

/** A number on all sides, the difference told of two. `toPath`: the path on the second side, where it is another one. */
export function sideLine(
  path: string,
  sides: readonly Side[],
  preferences: Preferences,
  wantedUnit?: string,
  toPath = path,
): SideLine | undefined {
  const [first, second, ...others] = sides;
  if (!first || !second) return undefined;
  const [a, b] = [numbersOf(first.looked.situation), numbersOf(second.looked.situation)];
  // Most paths of two cars have no number, and why is not asked here: a reason takes as long as a hundred numbers.
  if (isRefusal(a.number(path)) || isRefusal(b.number(toPath))) return undefined;
  const moved = difference(a, b, path, { sameCar: oneCar(first, second), toPath });
  if (isRefusal(moved)) return undefined;
  const { entry, place } = catalog.node(path);
  const { dimension = 'ratio' } = entry;
  const how = writing(entry, wantedUnit);
  const equal = !isChange(moved.from, moved.to);
  const doubt = equal ? a.within(path) : endsWithin(moved);
  const ends = [bare(moved.from, dimension, preferences, doubt, how), bare(moved.to, dimension, preferences, doubt, how)];
  const rest =
    others.length > 0
      ? others.map((side) => cellOf(numbersOf(side.looked.situation), path, preferences, { doubt: false }) ?? 'not known')
      : [equal ? 'same' : changeText(moved, dimension, preferences, how)];
  return {
    path,
    name: nameAt(entry, place),
    row: { label: labelAt(entry, place), cells: [...ends, ...rest] },
    weight: equal ? 0 : Math.abs(moved.change) / Math.hypot(moved.within, trifle * Math.abs(moved.from)),
    moved,
    sure: !equal && Math.abs(moved.change) > moved.within,
  };
}
/** `Free diameter: 24.72 in vs 25.04 in, +0.315 in` */
export function lineText({ row, name }: SideLine, sides: number): string {
  const texts = row.cells.map(textOf);
  const change = texts.slice(sides).map((text) => (text === 'same' ? ', the same' : `, ${text}`));
  return `${sentence(name)}: ${texts.slice(0, sides).join(' vs ')}${change.join('')}`;
}

/** Of two, which has more of it, by its name; of several, all of them. */
function topText(top: SideLine, sides: readonly Side[], { asker }: Context, wantedUnit?: string): string {
  const [a, b] = sides.map(({ label }) => label);
  if (sides.length !== 2 || a === undefined || b === undefined) return `${lineText(top, sides.length)}.`;
  return versusText([a, b], top.moved, top.path, asker.preferences, wantedUnit);
}
/** Facts that differ and are no numbers: a size, a kind, a table. */
function factRows(sides: readonly Side[], preferences: Preferences): readonly Row[] {
  const lines = catalog.entries
    .filter((entry) => isInput(entry) && entry.kind !== 'quantity')
    .flatMap((entry) =>
      placesOf(entry.scope).flatMap((place): Line[] => {
        const path = pathAt(place, entry);
        const facts = sides.map((side) => side.looked.situation.facts.get(path));
        const [one, ...rest] = facts;
        if (facts.every((fact) => fact === undefined) || rest.every((fact) => fact && one && isSame(fact.value, one.value))) return [];
        const cells = facts.map((fact) => (fact ? valueText(entry, fact.value, preferences) : 'not told'));
        return [{ path, row: { label: labelAt(entry, place), cells } }];
      }),
    );
  return fewer(lines).map(({ row }) => row);
}

/** What is worth comparing when nothing was named: figures that members talk of, and amounts that all sides were told. */
function everyPath(sides: readonly Side[]): readonly string[] {
  const told = (path: string) => sides.every((side) => side.looked.situation.facts.has(path));
  const wanted = (entry: Entry, path: string) =>
    (entry.kind === 'figure' && entry.main === true) || (entry.kind === 'quantity' && told(path));
  return catalog.entries
    .filter(({ scope }) => scope !== 'question')
    .flatMap((entry) =>
      placesOf(entry.scope)
        .map((place) => pathAt(place, entry))
        .filter((path) => wanted(entry, path)),
    );
}
/** Why nothing can be compared: what the first asked number lacks on one of the sides. */
function whyNone(asked: readonly string[], sides: readonly Side[]): Outcome {
  for (const { looked, label } of sides) {
    const [path] = asked;
    const value = path === undefined ? undefined : numbersOf(looked.situation).number(path);
    if (value === undefined || !isRefusal(value)) continue;
    const line = lineToTell(numbersOf(looked.situation), value.because ?? []);
    return refused(`${label}: ${value.refused}`, line ?? firstCarLine);
  }
  return refused(`I know nothing of all of them to compare: ${sides.map(({ label }) => label).join(', ')}.`, 'help compare');
}

/** What stands over the columns: sizes are longer than the numbers under them, and the headline has them in this order. */
function headsOf(labels: readonly string[]): readonly string[] {
  const fits = (heads: readonly string[]): boolean => heads.join('').length <= longestHeads;
  if (fits(labels)) return labels;
  // Whose a car is, the sentence below says: `moth (robin)`.
  const short = labels.map((label) => label.replace(/ \(.*\)$/, ''));
  return fits(short) && new Set(short).size === short.length ? short : labels.map((_, at) => ordinals[at] ?? `${at + 1}`);
}
/** What the heads do not say: `First 245/40R17, second 255/40R17.`, or `turnip is robin's.` */
function legendOf(heads: readonly string[], labels: readonly string[]): readonly string[] {
  if (heads === labels) return [];
  if (heads[0] === ordinals[0]) return [`${sentence(labels.map((label, at) => `${heads[at]} ${label}`).join(', '))}.`];
  const owned = labels.flatMap((label, at) => {
    const owner = / \((.*)\)$/.exec(label)?.[1];
    return owner === undefined ? [] : [`${heads[at]} is ${owner}'s`];
  });
  return [`${owned.join(', ')}.`];
}
const longestHeads = 17;
const ordinals = ['first', 'second', 'third', 'fourth'];

export interface Comparing {
  /** Paths to compare in this order; else all that differ, what differs for sure and what cars are judged by first. */
  readonly paths: readonly string[];
  readonly wantedUnit?: string | undefined;
  readonly notes?: readonly string[];
  readonly cautions?: readonly string[];
}
export async function sideBySide(sides: readonly Side[], comparing: Comparing, context: Context): Promise<Outcome> {
  const { preferences } = context.asker;
  const named = comparing.paths.length > 0;
  const paths = named ? comparing.paths : everyPath(sides);
  const compared = await oneByOne(paths, context.breathe, (path) => sideLine(path, sides, preferences, comparing.wantedUnit));
  const all = compared.filter((line) => line !== undefined);
  const labels = sides.map(({ label }) => label);
  if (all.length === 0) return whyNone(comparing.paths, sides);
  const rank = (line: SideLine) => Number(line.sure) * 2 + Number(isTelling(line.path));
  const ordered = named ? all : all.filter(({ weight }) => weight > 0).sort((p, q) => rank(q) - rank(p) || q.weight - p.weight);
  const lines = fewer(ordered);
  const facts = named ? [] : factRows(sides, preferences);
  const [top] = lines;
  if (!top)
    return { answer: answer('told', `${labels.join(' and ')}: there's no number to tell them apart.`, { columns: labels, rows: facts }) };
  const heads = headsOf(labels);
  const legend = legendOf(heads, labels);
  const columns = sides.length === 2 ? [...heads, 'change'] : heads;
  const unsure = lines.filter((line) => line.weight > 0 && !line.sure).length;
  const counts = named || unsure === 0 ? [] : [`${lines.length - unsure} differ for sure, ${unsure} may not.`];
  const whole = facts.map((row) => ({ ...row, cells: [...row.cells, ...columns.slice(row.cells.length).map(() => '')] }));
  const last = sides.at(-1);
  return {
    answer: answer('told', topText(top, sides, context, comparing.wantedUnit), {
      columns,
      // The headline is the first of them.
      rows: [...lines.slice(1).map(({ row }) => row), ...whole],
      notes: [...legend, ...(comparing.notes ?? []), ...counts],
      assumptions: last && lines.length === 1 ? restsOn(numbersOf(last.looked.situation), top.path, context) : [],
      cautions: comparing.cautions ?? [],
    }),
  };
}
