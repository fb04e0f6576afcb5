/** Two or more cars, setups, sizes or figures, side by side. */
import { type Entry, isInput, isRefusal } from '../../core/catalog.js';
import { difference } from '../../core/difference.js';
import { nameAt, pathAt, placesOf } from '../../core/engine.js';
import { type Answer, answer, type Row } from '../answer.js';
import type { Command, Outcome } from '../command.js';
import type { Context, Preferences } from '../context.js';
import { refused } from '../house/own.js';
import { catalog, firstCarLine, type Looked, lookAt, lookAtFirst, numbersOf } from '../looked.js';
import type { Clause, Item, Reading } from '../reading.js';
import { isSame } from '../same.js';
import { bare, cellOf, changeOf, sentence, textOf, valueText, writing } from '../show/amount.js';
import { lineToTell } from '../show/figure.js';
import { restsOn } from '../show/rests.js';
import { pathsOf, supposing } from './asked.js';
import { isAskable } from './show.js';

export interface Side {
  readonly label: string;
  readonly looked: Looked;
  readonly items: readonly Item[];
}
interface Line {
  readonly row: Row;
  /** Change over its doubt: above 1 it exceeds it. */
  readonly weight: number;
  readonly text: string;
  readonly sure: boolean;
}
/** A difference known exactly (a size's height) is as sure as can be: weighed by how much it is of the number. */
const trifle = 0.002;

const isFigure = (item: Item): boolean => item.said === undefined || !isInput(item.entry);

/** A side of the line: its car, with what it tells laid over it. */
function sideOf(clause: Clause, reading: Reading, context: Context): Side | Outcome {
  const base = lookAtFirst(clause.subjects, context);
  if ('answer' in base) return base;
  const looked = supposing(base, [...clause.items.filter((item) => !isFigure(item)), ...reading.tried]);
  if ('answer' in looked) return looked;
  const facts = clause.items.filter((item) => !isFigure(item));
  const told = facts.map((item) => item.said?.text ?? '').join(', ');
  const label = facts.length > 0 ? told : base.label || 'now';
  return { label, looked, items: clause.items.filter(isFigure) };
}
/** One side only: against the car as it is now. */
export function sidesOf(reading: Reading, context: Context): readonly Side[] | Outcome {
  const sides: Side[] = [];
  for (const clause of reading.sides) {
    const side = sideOf(clause, reading, context);
    if ('answer' in side) return side;
    sides.push(side);
  }
  if (sides.length > 1) return sides;
  const [only] = sides;
  if (!only?.looked.car || (only.label === 'now' && only.items.length === 0))
    return refused('Compare what with what?', 'compare 245/40R17 vs 255/40R17');
  const now = lookAt({ is: 'now' }, context);
  if ('answer' in now) return now;
  return [only, { label: 'now', looked: now, items: only.items }];
}

/** Two sides are states of one car, or of none: their estimates are wrong together. */
const oneCar = (a: Side, b: Side): boolean => a.looked.car?.id === b.looked.car?.id;

/** A figure on all sides, the difference told of the first two. */
function lineFor(path: string, toPath: string, sides: readonly Side[], preferences: Preferences, wantedUnit?: string): Line | undefined {
  const [first, second, ...others] = sides;
  if (!first || !second) return undefined;
  const [a, b] = [numbersOf(first.looked.situation), numbersOf(second.looked.situation)];
  const moved = difference(a, b, path, { sameCar: oneCar(first, second), toPath });
  if (isRefusal(moved)) return undefined;
  const { entry, place } = catalog.node(path);
  const { dimension = 'ratio' } = entry;
  const how = writing(entry, wantedUnit);
  const cells = [
    bare(moved.from, dimension, preferences, moved.within, how),
    bare(moved.to, dimension, preferences, moved.within, how),
    ...others.map((side) => cellOf(numbersOf(side.looked.situation), path, preferences, { doubt: false }) ?? 'not known'),
  ];
  const equal = Math.abs(moved.change) <= 1e-9 * Math.max(Math.abs(moved.from), Math.abs(moved.to));
  const change = changeOf(moved.change, dimension, preferences, moved.within, how).text;
  const name = path === toPath ? nameAt(entry, place) : entry.name;
  const more = others.length > 0 ? [] : [equal ? 'same' : change];
  return {
    row: { label: name, cells: [...cells, ...more] },
    weight: equal ? 0 : Math.abs(moved.change) / Math.hypot(moved.within, trifle * Math.abs(moved.from)),
    text: `${sentence(name)}: ${cells.map(textOf).join(' vs ')}${equal ? ', the same' : `, ${change}`}`,
    sure: !equal && Math.abs(moved.change) > moved.within,
  };
}

/** Facts that both sides were told and that differ, where no number says so: a size, a kind, a table. */
function factRows(sides: readonly Side[], preferences: Preferences): readonly Row[] {
  const rows: Row[] = [];
  for (const entry of catalog.entries) {
    if (!isInput(entry) || entry.kind === 'quantity') continue;
    for (const place of placesOf(entry.scope)) {
      const path = pathAt(place, entry);
      const facts = sides.map((side) => side.looked.situation.facts.get(path));
      const [one, ...rest] = facts;
      if (facts.every((fact) => fact === undefined)) continue;
      if (rest.every((fact) => fact && one && isSame(fact.value, one.value))) continue;
      rows.push({
        label: nameAt(entry, place),
        cells: facts.map((fact) => (fact ? valueText(entry, fact.value, preferences) : 'not told')),
      });
    }
  }
  return rows;
}

/** Entries with numbers that are worth comparing when none was named: figures people ask for, and quantities that were told. */
function everyPath(sides: readonly Side[]): readonly string[] {
  const told = (path: string) => sides.every((side) => side.looked.situation.facts.has(path));
  const wanted = (entry: Entry, path: string) => (entry.kind === 'figure' && isAskable(entry)) || (entry.kind === 'quantity' && told(path));
  return catalog.entries
    .filter(({ scope }) => scope !== 'question')
    .flatMap((entry) =>
      placesOf(entry.scope)
        .map((place) => pathAt(place, entry))
        .filter((path) => wanted(entry, path)),
    );
}

/** Rows that say the same of both ends are one: `tire diameter`, not front and rear. */
export function merged(lines: readonly (Line & { readonly path: string })[]): readonly Line[] {
  const out: (Line & { readonly path: string })[] = [];
  for (const line of lines) {
    const { entry } = catalog.node(line.path);
    const cells = line.row.cells.map(textOf).join('|');
    const twins = lines.filter((one) => catalog.node(one.path).entry === entry);
    const alike = twins.length > 1 && twins.every((one) => one.row.cells.map(textOf).join('|') === cells);
    if (!alike) out.push(line);
    else if (twins[0] === line) {
      const rest = line.text.slice(line.row.label.length);
      out.push({ ...line, row: { ...line.row, label: entry.name }, text: sentence(entry.name) + rest });
    }
  }
  return out;
}

/** The sides, the figures asked for or those that differ, largest first. `first` are paths to put before the others. */
export function sideBySide(
  sides: readonly Side[],
  asked: readonly string[],
  context: Context,
  wantedUnit?: string,
  first: readonly string[] = [],
): Outcome {
  const { preferences } = context.asker;
  const [a, b] = sides;
  if (!a || !b) throw new Error('two sides are compared');
  const paths = asked.length > 0 ? asked : everyPath(sides);
  const all = paths.flatMap((path) => {
    const line = lineFor(path, path, sides, preferences, wantedUnit);
    return line ? [{ ...line, path }] : [];
  });
  const labels = sides.map(({ label }) => label);
  const columns = sides.length === 2 ? [...labels, 'change'] : labels;
  if (all.length === 0) {
    const [path] = asked;
    const numbers = numbersOf(a.looked.situation);
    const one = path === undefined ? undefined : numbers.number(path);
    const two = path === undefined ? undefined : numbersOf(b.looked.situation).number(path);
    const why = one !== undefined && isRefusal(one) ? one : two !== undefined && isRefusal(two) ? two : undefined;
    const line = why ? lineToTell(numbers, why.because ?? []) : undefined;
    return refused(why?.refused ?? `Nothing that both have told can be compared: ${labels.join(', ')}.`, line ?? firstCarLine);
  }
  const differing = asked.length > 0 ? all : all.filter(({ weight }) => weight > 0);
  const rank = ({ path }: { readonly path: string }) => (first.includes(path) ? first.indexOf(path) : first.length);
  const ordered =
    asked.length > 0
      ? differing
      : [...differing].sort((p, q) => rank(p) - rank(q) || Number(q.sure) - Number(p.sure) || q.weight - p.weight);
  const lines = merged(ordered);
  const facts = asked.length > 0 ? [] : factRows(sides, preferences);
  const [top] = lines;
  if (!top) return { answer: answer('told', `${labels.join(' and ')}: no number differs.`, { columns: labels, rows: facts }) };
  const unsure = lines.filter((line) => line.weight > 0 && !line.sure).length;
  const sure = lines.filter((line) => line.sure).length;
  const [path] = ordered.map((line) => line.path);
  const notes = asked.length > 0 || unsure === 0 ? [] : [`${sure} differ by more than their doubt, ${unsure} may be no difference.`];
  return {
    answer: answer('told', top.text, {
      columns,
      rows: [
        ...(asked.length > 0 ? [] : []),
        ...(lines.length > 1 ? lines.map(({ row }) => row) : []),
        ...facts.map((row) => pad(row, columns.length)),
      ],
      notes,
      assumptions: path !== undefined && asked.length > 0 ? restsOn(numbersOf(b.looked.situation), path, preferences) : [],
    }),
  };
}
const pad = (row: Row, cells: number): Row => ({
  ...row,
  cells: [...row.cells, ...Array.from({ length: cells - row.cells.length }, () => '')],
});

/** `rear ride frequency vs front ride frequency`: two paths of one car. */
function twoFigures(sides: readonly Side[], preferences: Preferences, wantedUnit?: string): Answer | undefined {
  const [a, b] = sides;
  const [p, q] = [a?.items.flatMap(pathsOf), b?.items.flatMap(pathsOf)];
  const [from, to] = [p?.[0], q?.[0]];
  if (!a || !b || sides.length !== 2 || p?.length !== 1 || q?.length !== 1 || from === undefined || to === undefined || from === to)
    return undefined;
  if (catalog.node(from).entry.dimension !== catalog.node(to).entry.dimension) return undefined;
  const line = lineFor(from, to, sides, preferences, wantedUnit);
  if (!line) return undefined;
  const name = (path: string) => nameAt(catalog.node(path).entry, catalog.node(path).place);
  const [one, two] = line.row.cells.map(textOf);
  return answer('told', `${sentence(name(from))} ${one}, ${name(to)} ${two}`, {
    rows: [{ label: 'difference', cells: [line.row.cells[2] ?? ''] }],
    assumptions: restsOn(numbersOf(b.looked.situation), to, preferences),
  });
}

export function compareSides(reading: Reading, context: Context): Outcome {
  const sides = sidesOf(reading, context);
  if ('answer' in sides) return sides;
  const two = twoFigures(sides, context.asker.preferences, reading.wantedUnit);
  if (two) return { answer: two };
  const asked = [...new Set(sides.flatMap((side) => side.items.flatMap(pathsOf)))];
  const known = asked.filter((path) => sides.some((side) => !isRefusal(numbersOf(side.looked.situation).number(path))));
  return sideBySide(sides, known.length > 0 ? known : asked, context, reading.wantedUnit, toldPaths(reading));
}
/** Numbers that the line itself tells come last of what differs: they are known. Nothing is put first by them. */
const toldPaths = (_: Reading): readonly string[] => [];

export const compare: Command = {
  word: 'compare',
  also: ['vs', 'versus', 'difference between'],
  group: 'verb',
  summary: 'Cars, setups, sizes or figures side by side; what differs for sure comes first.',
  examples: [
    { line: 'compare turnip with moth', does: 'two cars' },
    { line: 'keep as dry\ncompare now with dry', does: 'the car and a setup' },
    { line: '245/40R17 vs 255/40R17', does: 'two sizes, no verb needed' },
    { line: 'turnip vs moth rear ride frequency', does: 'one figure of both' },
  ],
  takes: 'items',
  changes: false,
  run: compareSides,
};
