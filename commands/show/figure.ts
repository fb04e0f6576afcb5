/** One entry of the catalogs at one place, as an answer: the number, the steps to it, what it rests on. */
import { type Entry, isRefusal } from '../../core/catalog.js';
import { type Evaluation, pathAt } from '../../core/engine.js';
import { balanceIndex } from '../../core/subjects/cornering/balance.js';
import { type Answer, answer, type Row } from '../answer.js';
import { phrase, wordOf } from '../canonical.js';
import type { Context, Preferences } from '../context.js';
import type { Looked } from '../looked.js';
import { numbersOf } from '../looked.js';
import { bare, cellOf, evidenceText, factCell, sentence, textOf, writing } from './amount.js';
import { firstToGo, pushText } from './firstToGo.js';
import { labelAt, labelOf } from './label.js';
import { partName } from './partName.js';
import { disagreements, isUnknowable, measuring, restsMost } from './rests.js';
import { basisOfCar, sayingAt, turnAt } from './saying.js';
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
/** `turnip: `, where it is not the asker's own car in use. */
export const whoseText = (looked: Pick<Looked, 'current' | 'label'>): string =>
  looked.current || looked.label === '' ? '' : `${looked.label}: `;

/** The headline of a number: what it is, how much, on what basis; that it can't be said yet, where the doubt is as large. */
export function headlineOf(
  looked: Looked,
  path: string,
  { asker: { preferences } }: Pick<Context, 'asker'>,
  { wantedUnit, name }: { readonly wantedUnit?: string | undefined; readonly name?: string } = {},
): string {
  const numbers = numbersOf(looked.situation);
  const cell = cellOf(numbers, path, preferences, wantedUnit === undefined ? {} : { wantedUnit });
  const text = cell === undefined ? 'known' : textOf(cell);
  const at = turnAt(numbers, path, preferences);
  const whose = whoseText(looked);
  if (isUnknowable(numbers, path) && typeof cell === 'object') {
    const [value = '', doubt = ''] = text.split(' ± ');
    return `${whose === '' ? 'Can' : `${whose}can`}'t say yet: ${value}${at}, but my guesses leave ± ${doubt}.`;
  }
  const basis = looked.situation.assume === undefined ? basisOfCar(numbers, path) : undefined;
  const line = `${name ?? sayingAt(numbers, path)} ${text}${at}${basis === undefined ? '' : `, ${basis}`}.`;
  return whose === '' ? sentence(line) : `${whose}${line}`;
}
/** An entry of a car, shown. `label` says whose, where it is not the asker's own car in use. */
export function showOne(looked: Looked, asked: string, context: Pick<Context, 'asker' | 'room'>, wantedUnit?: string): Answer {
  const { preferences } = context.asker;
  const numbers = numbersOf(looked.situation);
  const path = toldOtherwise(numbers, asked);
  const { entry, place } = numbers.catalog.node(path);
  const whose = whoseText(looked);
  const value = numbers.get(path);
  if (isRefusal(value)) {
    const line = lineToTell(numbers, value.because ?? [path]);
    return answer('refused', `${whose}${value.refused}`, { next: line === undefined ? [] : [{ label: 'how to measure it', line }] });
  }
  const cell = cellOf(numbers, path, preferences, wantedUnit === undefined ? {} : { wantedUnit });
  const shown = typeof cell === 'object' ? { amount: cell } : {};
  const status = numbers.status(path);
  const fact = looked.situation.facts.get(path);
  if (status === 'told' && fact) {
    const told = factCell(entry, fact, preferences, wantedUnit);
    const how = entry.told === undefined ? '' : `, ${evidenceText(fact.evidence)}`;
    const line = `${partName(entry, [place])} ${textOf(told)}${how}.`;
    return answer('told', whose === '' ? sentence(line) : `${whose}${line}`, typeof told === 'string' ? {} : { amount: told });
  }
  if (status === 'estimated') {
    const line = `${sayingAt(numbers, path)} ${cell === undefined ? 'known' : textOf(cell)}, my guess.`;
    return answer('told', whose === '' ? sentence(line) : `${whose}${line}`, {
      ...shown,
      assumptions: [`Nobody told me; it goes by: ${entry.source ?? 'common practice, no source'}.`],
      next: [{ label: 'how to measure it', line: `help measure ${wordOf(entry)}` }],
    });
  }
  const measure = measuring(numbers, path, context);
  const isBalance = entry === balanceIndex;
  const plain = looked.situation.assume !== undefined;
  const both = entry.scope === 'axle' && status === 'computed' && !plain ? otherEnd(looked, path, preferences, wantedUnit) : [];
  const steps = plain ? [] : stepRows(numbers, path, preferences);
  const rests = restsMost(numbers, path, context);
  return answer('told', isBalance ? firstToGo(numbers, whose, preferences) : headlineOf(looked, path, context, { wantedUnit }), {
    ...shown,
    notes: [...(isBalance ? [pushText(numbers, preferences)] : []), ...both, ...turnNotes(numbers, path, preferences)],
    assumptions: [
      ...disagreements(numbers, ({ figure }) => figure === path || numbers.catalog.dependsOn(path, figure)),
      ...(measure ? [measure.sentence] : []),
    ],
    further: [
      ...(steps.length === 0 ? [] : [{ name: 'steps', rows: steps }]),
      ...(rests.length === 0 || plain ? [] : [{ name: 'what it rests on', notes: rests }]),
    ],
    next:
      looked.current && !plain
        ? [...(measure ? [{ label: 'how to measure it', line: measure.line }] : []), { label: 'why', line: `why ${phrase(entry, place)}` }]
        : [],
  });
}
/** The same of the other end, in a line. */
function otherEnd({ situation }: Looked, path: string, preferences: Preferences, wantedUnit?: string): readonly string[] {
  const numbers = numbersOf(situation);
  const { entry, place } = numbers.catalog.node(path);
  const twin = pathAt(other(place), entry);
  const cell = cellOf(numbers, twin, preferences, { doubt: false, ...(wantedUnit === undefined ? {} : { wantedUnit }) });
  return cell === undefined || numbers.status(twin) !== 'computed' ? [] : [`${sentence(other(place))} ${textOf(cell)}.`];
}
const other = (axle: string): string => (axle === 'front' ? 'rear' : 'front');
