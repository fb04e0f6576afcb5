/** Which input reaches a wanted figure: exactly, and as it can be bought or set. The saved car is never altered. */
import { type Entry, isInput, isRefusal } from '../../core/catalog.js';
import { nameAt, nameAtAll, pathAt, probe } from '../../core/engine.js';
import { type Sought, seek } from '../../core/seek.js';
import { answer } from '../answer.js';
import { lineOf, phrase, wordOf } from '../canonical.js';
import type { Command, Outcome } from '../command.js';
import type { Context, Preferences } from '../context.js';
import { isNotLaid, lay } from '../facts.js';
import { noCar, refused } from '../house/own.js';
import { catalog, type Looked, lookAt, lookAtFirst, numbersOf } from '../looked.js';
import type { Choice, Item, Reading } from '../reading.js';
import { partsOf } from '../records/kinds/part.js';
import { bare, sentence, valueToType, writing } from '../show/amount.js';
import { balanceText, tenth } from '../show/balance.js';
import { lineToTell } from '../show/figure.js';
import { partName, valueTyped } from '../show/partName.js';
import { moveSaid, spokenName } from '../show/sayings.js';
import { known, said, sayingOf, spoken } from '../show/spoken.js';
import { pathsOf, supposing } from './asked.js';
import { purposePaths } from './purposes.js';

interface Target {
  readonly path: string;
  readonly value: number;
  /** Whose figure it is, when it is another car's. */
  readonly of?: string;
}
type Paths = readonly [string, ...string[]];

/** The goal's path: the place that the sought inputs can reach. */
function goalPath(goal: Item, inputs: readonly string[]): readonly string[] {
  const paths = pathsOf(goal);
  const reached = paths.filter((path) => inputs.length === 0 || inputs.some((input) => catalog.dependsOn(path, input)));
  return reached.length > 0 ? reached : paths;
}
function targetOf(reading: Reading, goal: Item, inputs: readonly string[], looked: Looked, context: Context): Target | Outcome {
  const places = goalPath(goal, inputs);
  const [path, another] = places;
  if (path === undefined) throw new Error(`the goal ${goal.entry.path} has no place`);
  if (another !== undefined && !sameEnd(places, inputs)) return { answer: whichEnd(reading, goal, places) };
  if (goal.said) {
    const { value, change } = goal.said;
    if (typeof value !== 'number') throw new Error(`${goal.entry.path} is not a number`);
    if (change === undefined) return { path, value };
    // `15 lb/in more wheel rate`: from what it is now.
    const now = numbersOf(looked.situation).number(path);
    return isRefusal(now)
      ? refused(now.refused, lineToTell(numbersOf(looked.situation), now.because ?? []))
      : { path, value: change === 'plus' ? now + value : now * value };
  }
  // `moths front share`: the goal is what another car has.
  const subject = reading.sides[0]?.subjects[0];
  const theirs = subject === undefined ? undefined : lookAt(subject, context);
  if (theirs === undefined) return refused('How much of it is wanted?', `${phrase(goal.entry, ...goal.places)} ?`);
  if ('answer' in theirs) return theirs;
  const value = numbersOf(theirs.situation).number(path);
  return isRefusal(value) ? refused(`${theirs.label}: ${value.refused}`) : { path, value, of: theirs.label };
}
/** Several places of one goal are one when all inputs reach all of them: then the first stands for them. */
const sameEnd = (places: readonly string[], inputs: readonly string[]): boolean =>
  inputs.length > 0 && places.every((path) => inputs.every((input) => catalog.dependsOn(path, input)));

function whichEnd(reading: Reading, goal: Item, places: readonly string[]) {
  const sought = reading.sides[0]?.items.filter((item) => item.said === undefined) ?? [];
  const choices = places.slice(0, 4).map((path): Choice => {
    const { place } = catalog.node(path);
    const what = sought
      .map((item) => phrase(item.entry, ...(item.places.includes(place) ? [place] : item.placed ? item.places : [])))
      .join(' ');
    const line = `find ${what} for ${phrase(goal.entry, place)} ${goal.said?.text ?? ''}`.trim();
    return { label: nameAt(goal.entry, place), line };
  });
  return answer('asked', 'At which end?', { choices });
}

/** What can be bought or set on both sides of a value, nearest first; itself where no step is known, or where it lies on one. */
function nearest(value: number, path: string, preferences: Preferences): readonly number[] {
  const { step, sane } = catalog.node(path).entry;
  if (!step) return [value];
  const by = preferences.units === 'us' ? step.inch : step.metric;
  const steps = value / by;
  const on = Math.round(steps);
  const both = Math.abs(steps - on) < 1e-6 ? [on] : [Math.floor(steps), Math.ceil(steps)];
  const near = both.map((count) => count * by).sort((a, b) => Math.abs(a - value) - Math.abs(b - value));
  const had = near.filter((one) => !sane || (one >= sane[0] && one <= sane[1]));
  return had.length > 0 ? had : [value];
}

/** Inputs that could reach the goal and that the line did not name: those told or estimated, most telling first. */
async function candidates(looked: Looked, target: Target, reading: Reading, context: Context): Promise<readonly Choice[]> {
  const numbers = numbersOf(looked.situation);
  const reach: { readonly line: string; readonly label: string; readonly order: number; readonly told: boolean }[] = [];
  for (const { entry, place, path, then, layer } of catalog.nodes) {
    if (
      then ||
      layer !== 'best' ||
      entry.kind !== 'quantity' ||
      entry.scope === 'question' ||
      entry.state ||
      !catalog.dependsOn(target.path, path)
    )
      continue;
    // What can be bought or set, what was told, and what can be put in (none of it is there yet): not what the car simply is.
    const status = numbers.status(path);
    const addable = status === 'estimated' && numbers.number(path) === 0;
    if (status === 'unknown' || !(entry.step || status === 'told' || addable)) continue;
    // The wheels of an end are set alike.
    if (place === 'rf' || place === 'rr') continue;
    const places = entry.scope === 'corner' ? (place === 'lf' ? ['lf', 'rf'] : ['lr', 'rr']) : [place];
    const others = places.slice(1).map((other) => pathAt(other, entry));
    await context.breathe();
    const sought = seek(catalog, looked.situation, { inputs: [path, ...others], figure: target.path, target: target.value });
    if (isRefusal(sought) || sought.roots.length === 0) continue;
    const goal = catalog.node(target.path);
    const value = valueToType(goal.entry, target.value, { units: 'us', decimalMark: '.' }) ?? '';
    const plain = `find ${phrase(entry, ...places)} for ${phrase(goal.entry, goal.place)} ${value}`;
    // What another car has stays said as that.
    const theirs = { ...reading, sides: reading.sides.map((side) => ({ ...side, items: [{ entry, places, placed: true }] })) };
    const line = target.of === undefined ? plain : lineOf(theirs, context);
    const told = status === 'told';
    reach.push({ line, label: nameAtAll(entry, places).join(' and '), order: (entry.step ? 0 : 2) + (told ? 0 : 1), told });
  }
  // What is not there yet is offered only where little else would do.
  const there = reach.filter(({ told }) => told);
  return [...(there.length > 1 ? there : reach)].sort((a, b) => a.order - b.order).slice(0, 4);
}

function reachText(sought: Sought, target: Target, preferences: Preferences): string {
  const { entry, place } = catalog.node(target.path);
  const write = (si: number) => bare(si, entry.dimension ?? 'ratio', preferences, Math.abs(si) / 20, writing(entry)).text;
  const [low, high] = sought.reach;
  return `${nameAt(entry, place)} from ${write(low)} to ${write(high)}`;
}

/** How many of the pieces in the box are told of. */
const mostOwned = 3;
/** What the member's own pieces would give, nearest first: `In your box: 3.73 gives 61.5 mph.` */
function owned(root: number, inputs: Paths, target: Target, looked: Looked, context: Context): readonly string[] {
  if (!looked.current || !looked.car) return [];
  const { preferences } = context.asker;
  const { entry } = catalog.node(inputs[0]);
  const places = inputs.map((path) => catalog.node(path).place);
  const values = partsOf(context.garage, looked.car.id)
    // Pieces that go on together are no choice of one of them.
    .flatMap(({ facts }) => (facts.length === 1 ? facts : []))
    .filter((fact) => fact.entry === entry.path && places.every((place) => fact.places.includes(place)))
    .flatMap(({ can }) => (can.is === 'values' ? can.values.filter((value) => typeof value === 'number') : []));
  const near = [...new Set(values)].sort((a, b) => Math.abs(a - root) - Math.abs(b - root)).slice(0, mostOwned);
  const gives = probe(catalog, looked.situation, inputs, [target.path]);
  const told = near.flatMap((value) => {
    const [figure] = gives(value);
    if (figure === undefined) return [];
    const got = target.path.startsWith('balance')
      ? balanceText(figure, preferences, tenth)
      : spoken(figure, sayingOf(target.path), preferences);
    return [`${valueTyped(entry, value, preferences)} gives ${got}`];
  });
  return told.length === 0 ? [] : [`In your box: ${told.join(', ')}.`];
}

/** The other things that a member would notice of the nearest piece: how the car then sits, leans and balances. */
const mostBesides = 2;
async function besides(value: number, item: Item, target: Target, looked: Looked, { asker, breathe }: Context): Promise<readonly string[]> {
  const laid = lay(looked.situation, [{ ...item, said: { value, text: '' } }], { is: 'tried' });
  if (isNotLaid(laid)) return [];
  const after: Looked = { ...looked, situation: laid.situation };
  const paths = purposePaths(item.entry, item.places).filter((path) => catalog.node(path).entry !== catalog.node(target.path).entry);
  const said: string[] = [];
  for (const path of paths) {
    if (said.length === mostBesides) break;
    await breathe();
    const text = moveSaid(looked, after, path, asker.preferences);
    if (text !== undefined) said.push(text);
  }
  return said;
}
/** What is turned or pumped is set; all else is bought. */
const isSet = ({ dimension }: Entry): boolean => dimension === 'pressure' || dimension === 'angle' || dimension === 'ratio';
/** `425 lb/in gives 1.97 Hz, 450 gives 2.01`: what can be had, and what each gives. */
function hadText(near: readonly number[], inputs: Paths, target: Target, looked: Looked, preferences: Preferences): readonly string[] {
  const [input, goal] = [sayingOf(inputs[0]), sayingOf(target.path)];
  const gives = probe(catalog, looked.situation, inputs, [target.path]);
  const got = near.map((value) => gives(value)[0]);
  const apart = Math.min(...got.map((value) => (value === undefined ? 0 : Math.abs(value - target.value)))) || Math.abs(target.value) / 100;
  const doubt = Math.max(apart, Math.abs(target.value) * 5e-3);
  return near.map((value, n) => {
    const figure = got[n];
    const piece = n === 0 ? spoken(value, input, preferences) : said(value, input, preferences);
    if (figure === undefined) return piece;
    const is = target.path.startsWith('balance')
      ? balanceText(figure, preferences, tenth)
      : (n === 0 ? spoken : said)(figure, goal, preferences, doubt);
    return `${piece} gives ${is}`;
  });
}

/** One value of the inputs, exactly and as it can be had, what that gives and what else a member would notice of it. */
async function oneRoot(root: number, inputs: Paths, target: Target, looked: Looked, context: Context): Promise<Outcome> {
  const { preferences } = context.asker;
  const [first] = inputs;
  const { entry } = catalog.node(first);
  const places = inputs.map((path) => catalog.node(path).place);
  const item: Item = { entry, places, placed: true };
  const how = sayingOf(first);
  const near = nearest(root, first, preferences);
  const [best = root] = near;
  // What comes in no steps is told to its fourth digit.
  const exact = spoken(root, how, preferences, entry.step === undefined ? Math.abs(root) * 8e-4 : 0);
  const name = partName(entry, places);
  const gives = hadText(near, inputs, target, looked, preferences);
  const stepped = near.some((value) => Math.abs(value - root) > 1e-6 * Math.abs(root));
  await context.breathe();
  const now = known(numbersOf(looked.situation), target.path);
  const isBalance = target.path.startsWith('balance');
  const nowText =
    now === undefined
      ? 'it is not known'
      : isBalance
        ? balanceText(now, preferences, tenth)
        : `${spokenName(target.path)} ${spoken(now, sayingOf(target.path), preferences)}`;
  const typedOf = (value: number): string => valueTyped(entry, value, preferences) ?? '';
  const piece = spoken(best, how, preferences);
  const others = await besides(best, item, target, looked, context);
  return {
    answer: answer(
      'told',
      stepped ? `${exact}. Nearest to ${isSet(entry) ? 'set' : 'buy'}: ${gives.join(', ')}.` : `${sentence(name)} ${exact}.`,
      {
        amount: { si: root, dimension: how.dimension, text: exact },
        notes: [
          ...(stepped ? [`That's the ${name}.`] : []),
          `Now ${nowText}${target.of === undefined ? '' : `; wanted is that of ${target.of}`}.`,
          ...(others.length === 0
            ? []
            : [`With ${piece}: ${others.map((text) => text.charAt(0).toLowerCase() + text.slice(1)).join('; ')}.`]),
          ...owned(root, inputs, target, looked, context),
        ],
        choices: looked.current
          ? near.map((value) => ({
              label: `try ${spoken(value, how, preferences)}`,
              line: `try ${phrase(entry, ...places)} ${typedOf(value)}`,
            }))
          : [],
      },
    ),
  };
}

export async function findInput(reading: Reading, context: Context): Promise<Outcome> {
  const { goal } = reading;
  const [clause] = reading.sides;
  if (!goal) return refused('For how much of what?', 'what front spring for 2.0 Hz');
  const sought = (clause?.items ?? []).filter((item) => item.said === undefined && isInput(item.entry));
  // With an amount, subjects are the car that is worked on; without, the car whose figure is the goal.
  const base = lookAtFirst(goal.said ? (clause?.subjects ?? []) : [], context);
  if ('answer' in base) return base;
  const told = (clause?.items ?? []).filter((item) => item.said !== undefined);
  const looked = supposing(base, [...told, ...reading.tried]);
  if ('answer' in looked) return looked;
  const inputs = sought.flatMap(pathsOf);
  const target = targetOf(reading, goal, inputs, looked, context);
  if ('answer' in target) return target;
  const useful = inputs.filter((path) => catalog.dependsOn(target.path, path));
  const paths = useful.length > 0 ? useful : inputs;
  const [first, ...rest] = paths;
  if (first === undefined) {
    if (!looked.car) return noCar();
    const choices = await candidates(looked, target, reading, context);
    const name = nameAt(catalog.node(target.path).entry, catalog.node(target.path).place);
    return choices.length === 0
      ? refused(`Nothing known of ${looked.label || 'a car'} can bring the ${name} there.`, 'show everything')
      : { answer: answer('asked', `Reach that ${name} by changing what?`, { choices }) };
  }
  const entries = new Set(paths.map((path) => catalog.node(path).entry));
  const [entry, second] = [...entries];
  if (second)
    return refused(
      `One thing at a time: the ${entry?.name} or the ${second.name}?`,
      `find ${wordOf(second)} for ${phrase(goal.entry, ...goal.places)} ${goal.said?.text ?? ''}`.trim(),
    );
  if (entry?.kind !== 'quantity') return refused(`A ${entry?.name} is not an amount that can be sought.`, 'what front spring for 2.0 Hz');
  const found = seek(catalog, looked.situation, { inputs: [first, ...rest], figure: target.path, target: target.value });
  if (isRefusal(found)) {
    const [because] = found.because ?? [];
    const line = because !== undefined && catalog.byPath.has(because) ? `help measure ${wordOf(catalog.node(because).entry)}` : 'help find';
    return refused(found.refused, line);
  }
  return rootsAnswer(found, [first, ...rest], target, looked, context);
}
function rootsAnswer(found: Sought, inputs: Paths, target: Target, looked: Looked, context: Context): Outcome | Promise<Outcome> {
  const { preferences } = context.asker;
  const input = catalog.node(inputs[0]);
  const names = nameAtAll(
    input.entry,
    inputs.map((path) => catalog.node(path).place),
  ).join(' and ');
  const [root, another] = found.roots;
  if (root === undefined) {
    const [low, high] = input.entry.sane ?? [0, 0];
    const write = (si: number) => bare(si, input.entry.dimension ?? 'ratio', preferences, Math.abs(si) / 20, writing(input.entry)).text;
    return {
      answer: answer(
        'refused',
        `No ${names} does it: between ${write(low)} and ${write(high)} it gives ${reachText(found, target, preferences)}.`,
        {
          next: [
            {
              label: `draw ${phrase(catalog.node(target.path).entry, catalog.node(target.path).place)}`,
              line: drawLine(target.path, inputs[0]),
            },
          ],
        },
      ),
    };
  }
  if (another === undefined) return oneRoot(root, inputs, target, looked, context);
  const { dimension = 'ratio' } = input.entry;
  const rows = found.roots.map((value) => ({
    label: names,
    cells: [bare(value, dimension, preferences, Math.abs(value) * 1e-3, writing(input.entry))],
  }));
  return {
    answer: answer('told', `${found.roots.length} values of the ${names} give that.`, {
      rows,
      next: [{ label: 'draw it', line: drawLine(target.path, inputs[0]) }],
    }),
  };
}
const drawLine = (figure: string, input: string): string => {
  const [f, i] = [catalog.node(figure), catalog.node(input)];
  return `draw ${phrase(f.entry, f.place)} against ${phrase(i.entry, i.place)}`;
};

export const find: Command = {
  word: 'find',
  also: [],
  group: 'verb',
  summary: 'The input that reaches a wanted figure: what spring for 2.0 Hz. Nothing is saved.',
  examples: [
    { line: 'what front spring for 2.0 Hz', does: 'rounded to what can be bought' },
    { line: 'find final for 62 mph at 6500 in 2nd', does: 'under a condition' },
  ],
  takes: 'items',
  changes: false,
  run: findInput,
};
