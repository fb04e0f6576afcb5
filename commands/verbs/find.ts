/** Which input reaches a wanted figure: exactly, and as it can be bought or set. The saved car is never altered. */
import { isInput, isRefusal } from '../../core/catalog.js';
import { nameAt, nameAtAll } from '../../core/engine.js';
import { type Sought, seekInPieces } from '../../core/seek.js';
import { answer } from '../answer.js';
import { inPieces } from '../breathing.js';
import { phrase, wordOf } from '../canonical.js';
import type { Command, Outcome } from '../command.js';
import type { Context, Preferences } from '../context.js';
import { noCar, refused } from '../house/own.js';
import { catalog, type Looked, lookAt, lookAtFirst, numbersOf } from '../looked.js';
import type { Choice, Item, Reading } from '../reading.js';
import { bare, writing } from '../show/amount.js';
import { lineToTell } from '../show/figure.js';
import { partName, pieceSaid, valueTyped } from '../show/partName.js';
import { listed, sayingOf, spoken } from '../show/spoken.js';
import { pathsOf, supposing } from './asked.js';
import { nearest, oneRoot } from './had.js';
import { candidates, type Paths, type Target } from './target.js';

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

function reachText(sought: Sought, target: Target, preferences: Preferences): string {
  const { entry, place } = catalog.node(target.path);
  const write = (si: number) => bare(si, entry.dimension ?? 'ratio', preferences, Math.abs(si) / 20, writing(entry)).text;
  const [low, high] = sought.reach;
  return `${nameAt(entry, place)} from ${write(low)} to ${write(high)}`;
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
  const found = await inPieces(
    seekInPieces(catalog, looked.situation, { inputs: [first, ...rest], figure: target.path, target: target.value }),
    context.breathe,
  );
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
  const { entry } = input;
  const places = inputs.map((path) => catalog.node(path).place);
  const how = sayingOf(inputs[0]);
  const nearby = found.roots.map((value) => nearest(value, inputs[0], preferences)[0] ?? value);
  return {
    answer: answer(
      'told',
      `${found.roots.length} of them do it, ${partName(entry, places)} ${listed(found.roots.map((value) => spoken(value, how, preferences)))}.`,
      {
        notes: [`In between it goes past ${spoken(target.value, sayingOf(target.path), preferences)} and comes back.`],
        choices: looked.current
          ? nearby.map((value) => ({
              label: `try ${pieceSaid(entry, value, preferences)}`,
              line: `try ${phrase(entry, ...places)} ${valueTyped(entry, value, preferences) ?? ''}`,
            }))
          : [],
        next: [{ label: 'draw it', line: drawLine(target.path, inputs[0]) }],
      },
    ),
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
