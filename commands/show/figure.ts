/** One entry of the catalogs at one place, as an answer: the number, the steps to it, what it rests on. */
import { type Entry, isRefusal } from '../../core/catalog.js';
import { type Evaluation, nameAt, pathAt } from '../../core/engine.js';
import { type Answer, answer, type Row } from '../answer.js';
import { phrase, wordOf } from '../canonical.js';
import type { Context, Preferences } from '../context.js';
import type { Looked } from '../looked.js';
import { numbersOf } from '../looked.js';
import { bare, cellOf, evidenceText, factCell, sentence, textOf, writing } from './amount.js';
import { labelAt, labelOf } from './label.js';
import { disagreements, restsOn } from './rests.js';
import { turnNotes } from './turn.js';

const mostSteps = 4;
/** A step without words of its own is for `why` to show, not for a row. */
const isSpoken = (entry: Entry): boolean => entry.kind === 'figure' && (entry.words?.length ?? 0) > 0;
const isFigure = (entry: Entry): boolean => entry.kind === 'figure';

/** The figures that lead to a figure, nearest first, then in the order of the catalog: `wheel rate`, then `ride rate`. */
export function stepsTo(numbers: Evaluation, path: string, most = mostSteps, isShown = isFigure): readonly string[] {
  const found: string[] = [];
  let level = [path];
  while (level.length > 0 && found.length < most) {
    const next: string[] = [];
    for (const one of level)
      for (const { path: need } of numbers.used(one)) {
        if (need === undefined || found.includes(need) || next.includes(need)) continue;
        const { entry, then } = numbers.catalog.node(need);
        if (entry.kind === 'place' || then) continue;
        // A row tells of the nearest way: what stands behind a structure (how the car stands) is for `why`.
        if (entry.kind === 'structure' && isShown !== isFigure) continue;
        if (numbers.status(need) === 'computed') next.push(need);
      }
    found.push(...next.filter((one) => isShown(numbers.catalog.node(one).entry)));
    level = next;
  }
  const order = (one: string): number => numbers.catalog.node(one).index;
  return found.slice(0, most).sort((a, b) => order(a) - order(b));
}

/** The place that mirrors another: the left wheel for the right one, the front for the rear. */
const mirrors: Readonly<Record<string, string>> = { rf: 'lf', rr: 'lr', rear: 'front' };
/** Steps that read the same for the left wheel and the right one, or at both ends, once. */
export function onceEach(numbers: Evaluation, steps: readonly string[]): readonly string[] {
  return steps.filter((step) => {
    const { entry, place } = numbers.catalog.node(step);
    const mirror = mirrors[place];
    if (mirror === undefined) return true;
    const twin = pathAt(mirror, entry);
    return !steps.includes(twin) || numbers.number(twin) !== numbers.number(step);
  });
}
/** The name of a step under a heading that already says where: `wheel rate`, not `rear wheel rate`. */
export function nameUnder(numbers: Evaluation, path: string, heading: string): string {
  const { entry, place } = numbers.catalog.node(path);
  const top = numbers.catalog.node(heading);
  const sameEnd = entry.scope === 'corner' && top.entry.scope === 'axle' && place.endsWith(top.place.slice(0, 1));
  if (place === top.place) return labelOf(entry);
  if (entry.scope === 'axle' && numbers.number(pathAt('front', entry)) === numbers.number(pathAt('rear', entry))) return labelOf(entry);
  if (!sameEnd) return labelAt(entry, place);
  const [left, right] = [numbers.number(pathAt(`l${place.slice(1)}`, entry)), numbers.number(pathAt(`r${place.slice(1)}`, entry))];
  // A weight could be that of both; a rate could not.
  const shared = entry.dimension === 'mass' || entry.dimension === 'force';
  return left === right ? `${labelOf(entry)}${shared ? ', each' : ''}` : `${place.startsWith('l') ? 'left' : 'right'} ${labelOf(entry)}`;
}
export function stepRows(numbers: Evaluation, path: string, preferences: Preferences): readonly Row[] {
  const named = (step: string): string => nameUnder(numbers, step, path);
  const index = (step: string): number => numbers.catalog.node(step).index;
  const isMain = (step: string): number => Number(numbers.catalog.node(step).entry.main === true);
  return (
    onceEach(numbers, stepsTo(numbers, path, 6 * mostSteps, isSpoken))
      .filter((step) => numbers.number(step) !== 0)
      // An axle's figure and its wheels' under one name and of one value are one row.
      .filter((step, at, all) => all.findIndex((one) => named(one) === named(step) && numbers.number(one) === numbers.number(step)) === at)
      .toSorted((a, b) => isMain(b) - isMain(a))
      .slice(0, mostSteps)
      .toSorted((a, b) => index(a) - index(b))
      .flatMap((step): Row[] => {
        const { entry } = numbers.catalog.node(step);
        const value = numbers.number(step);
        if (isRefusal(value)) return [];
        const cell = bare(value, entry.dimension ?? 'ratio', preferences, numbers.within(step), writing(entry));
        return [{ label: named(step), cells: [cell] }];
      })
  );
}

/** Paths to tell so that a refused figure has a value, as a line that works. */
export function lineToTell(numbers: Evaluation, because: readonly string[]): string | undefined {
  for (const path of because) {
    const node = numbers.catalog.byPath.get(path);
    if (node?.entry.measure !== undefined) return `help measure ${wordOf(node.entry)}`;
  }
  return undefined;
}

/** A fact that was told in other words than those asked for: a table of rates, where a spring's rate was meant. */
function toldOtherwise(numbers: Evaluation, path: string): string {
  const { entry, place } = numbers.catalog.node(path);
  if (entry.instead === undefined || numbers.status(path) === 'told') return path;
  const twin = numbers.catalog.entries.find((one) => one.instead === entry.instead && numbers.situation.facts.has(pathAt(place, one)));
  return twin ? pathAt(place, twin) : path;
}
/** An entry of a car, shown. `label` says whose, where it is not the asker's own car in use. */
export function showOne(looked: Looked, asked: string, context: Pick<Context, 'asker' | 'room'>, wantedUnit?: string): Answer {
  const { preferences } = context.asker;
  const numbers = numbersOf(looked.situation);
  const path = toldOtherwise(numbers, asked);
  const { entry, place } = numbers.catalog.node(path);
  const whose = looked.current || looked.label === '' ? '' : `${looked.label}: `;
  const name = whose === '' ? sentence(nameAt(entry, place)) : `${whose}${nameAt(entry, place)}`;
  const value = numbers.get(path);
  if (isRefusal(value)) {
    const line = lineToTell(numbers, value.because ?? [path]);
    return answer('refused', `${whose}${value.refused}`, { next: line === undefined ? [] : [{ label: line, line }] });
  }
  const cell = cellOf(numbers, path, preferences, wantedUnit === undefined ? {} : { wantedUnit });
  const text = cell === undefined ? 'known' : textOf(cell);
  const fact = looked.situation.facts.get(path);
  const status = numbers.status(path);
  if (status === 'told' && fact) {
    const shown = factCell(entry, fact, preferences, wantedUnit);
    const how = entry.told === undefined ? '' : `, ${evidenceText(fact.evidence)}`;
    return answer('told', `${name} ${textOf(shown)}${how}`, { ...(typeof shown === 'string' ? {} : { amount: shown }) });
  }
  const next = [
    { label: 'why', line: `why ${phrase(entry, place)}` },
    ...(entry.scope === 'axle' && status === 'computed'
      ? [{ label: `compare ${other(place)}`, line: `${phrase(entry, place)} vs ${phrase(entry, other(place))}` }]
      : []),
  ];
  if (status === 'estimated') {
    const line = `help measure ${wordOf(entry)}`;
    return answer('told', `${name} ${text}, assumed`, {
      ...(typeof cell === 'object' ? { amount: cell } : {}),
      assumptions: [`Not told: ${entry.source ?? 'common practice, no source'}.`],
      next: [{ label: line, line }],
    });
  }
  return answer('told', `${name} ${text}`, {
    ...(typeof cell === 'object' ? { amount: cell } : {}),
    rows: stepRows(numbers, path, preferences),
    notes: turnNotes(numbers, path, preferences),
    assumptions: [
      ...disagreements(numbers, ({ figure }) => figure === path || numbers.catalog.dependsOn(path, figure)),
      ...restsOn(numbers, path, context),
    ],
    cautions: entry.caution === undefined ? [] : [entry.caution],
    next: looked.current ? next : [],
  });
}
const other = (axle: string): string => (axle === 'front' ? 'rear' : 'front');
