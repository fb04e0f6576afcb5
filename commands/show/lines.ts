/** Fewer lines that say as much: what reads the same at several places is said once, and a corner's figure not again where its axle's says it. */
import { type Entry, isInput } from '../../core/catalog.js';
import { nameAtAll } from '../../core/engine.js';
import type { Row } from '../answer.js';
import { catalog } from '../looked.js';
import { textOf } from './amount.js';
import { labelAtAll } from './label.js';

export interface Line {
  readonly path: string;
  readonly row: Row;
  /** What it is called in a sentence. */
  readonly name?: string;
}
const ends: Readonly<Record<string, string>> = { lf: 'front', rf: 'front', lr: 'rear', rr: 'rear' };
const textsOf = ({ row }: Line): string => row.cells.map(textOf).join('|');

/** Whether people would call both by the same words: the ride frequency of an axle and of its wheels. */
export function sameWords(a: Entry, b: Entry): boolean {
  if (a.dimension !== b.dimension) return false;
  return a.words?.some((word) => b.words?.includes(word)) ?? false;
}
/** Places of one entry that read the same: all of them, or both wheels of an end. */
function together(line: Line, all: readonly Line[]): readonly Line[] {
  const { entry, place } = catalog.node(line.path);
  const alike = all.filter((one) => catalog.node(one.path).entry === entry && textsOf(one) === textsOf(line));
  const others = all.filter((one) => catalog.node(one.path).entry === entry);
  if (alike.length === others.length) return alike;
  if (entry.scope !== 'corner') return [line];
  return alike.filter((one) => ends[catalog.node(one.path).place] === ends[place]);
}
/** A line with the name and label of all that it now stands for. */
function named<L extends Line>(line: L, group: readonly Line[]): L {
  if (group.length < 2) return line;
  const { entry } = catalog.node(line.path);
  const places = group.map(({ path }) => catalog.node(path).place);
  const name = entry.scope === 'axle' && places.length === 2 ? entry.name : nameAtAll(entry, places).join(' and ');
  return { ...line, name, row: { ...line.row, label: labelAtAll(entry, places) } };
}

/** Merges lines in their order. Labels are left alone where nothing was merged. */
export function fewer<L extends Line>(lines: readonly L[]): readonly L[] {
  const out: L[] = [];
  const said = new Set<string>();
  for (const line of lines) {
    if (said.has(line.path)) continue;
    const group = together(line, lines);
    for (const { path } of group) said.add(path);
    const { entry } = catalog.node(line.path);
    if (group.every((one) => saidByFigure(one, lines))) continue;
    if (entry.scope === 'corner' && group.every((corner) => saidByAxle(corner, entry, lines))) continue;
    out.push(named(line, group));
  }
  return out;
}
/** A fact that a figure of the same words and place repeats: the weight of the car, and its weight as it stands. */
function saidByFigure(line: Line, lines: readonly Line[]): boolean {
  const { entry, place } = catalog.node(line.path);
  if (!isInput(entry)) return false;
  return lines.some((one) => {
    const node = catalog.node(one.path);
    return !isInput(node.entry) && node.place === place && sameWords(node.entry, entry) && textsOf(one) === textsOf(line);
  });
}
/** Its axle's figure of the same words is in the list, and its other wheel reads the same. */
function saidByAxle(line: Line, entry: Entry, lines: readonly Line[]): boolean {
  const end = ends[catalog.node(line.path).place];
  const twin = lines.some((one) => {
    const node = catalog.node(one.path);
    return node.entry.scope === 'axle' && node.place === end && sameWords(node.entry, entry);
  });
  const wheels = lines.filter((one) => catalog.node(one.path).entry === entry && ends[catalog.node(one.path).place] === end);
  return twin && wheels.length === 2 && wheels.every((one) => textsOf(one) === textsOf(line));
}
/** Figures worth a row of their own are those that people have words for. */
export const isAskable = (entry: Entry): boolean => (entry.words?.length ?? 0) > 0;
/** Figures that members talk of come before the steps to them; an axle's before its wheels'. */
export const isTelling = (path: string): boolean => {
  const { entry } = catalog.node(path);
  return entry.main === true && entry.scope !== 'corner';
};
