/** One value that reaches a target, exactly and as it can be bought or set: what each gives, and what else a member would notice of it. */
import type { Entry } from '../../core/catalog.js';
import { probe } from '../../core/engine.js';
import { answer } from '../answer.js';
import { phrase } from '../canonical.js';
import type { Outcome } from '../command.js';
import type { Context, Preferences } from '../context.js';
import { isNotLaid, lay } from '../facts.js';
import { catalog, type Looked, numbersOf } from '../looked.js';
import type { Item } from '../reading.js';
import { partsOf } from '../records/kinds/part.js';
import { sentence } from '../show/amount.js';
import { balanceText, tenth } from '../show/balance.js';
import { partName, pieceSaid, valueTyped } from '../show/partName.js';
import { moveSaid, spokenName } from '../show/sayings.js';
import { known, said, sayingOf, spoken } from '../show/spoken.js';
import { purposePaths } from './purposes.js';

import type { Paths, Target } from './target.js';
/** What can be bought or set on both sides of a value, nearest first; itself where no step is known, or where it lies on one. */
export function nearest(value: number, path: string, preferences: Preferences): readonly number[] {
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
  const { entry } = catalog.node(inputs[0]);
  const gives = probe(catalog, looked.situation, inputs, [target.path]);
  const got = near.map((value) => gives(value)[0]);
  const apart = Math.min(...got.map((value) => (value === undefined ? 0 : Math.abs(value - target.value)))) || Math.abs(target.value) / 100;
  const doubt = Math.max(apart, Math.abs(target.value) * 5e-3);
  return near.map((value, n) => {
    const figure = got[n];
    const piece = n === 0 || isSet(entry) ? pieceSaid(entry, value, preferences) : said(value, input, preferences);
    if (figure === undefined) return piece;
    const is = target.path.startsWith('balance')
      ? balanceText(figure, preferences, tenth)
      : (n === 0 ? spoken : said)(figure, goal, preferences, doubt);
    return `${piece} gives ${is}`;
  });
}

/** One value of the inputs, exactly and as it can be had, what that gives and what else a member would notice of it. */
export async function oneRoot(root: number, inputs: Paths, target: Target, looked: Looked, context: Context): Promise<Outcome> {
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
  const piece = pieceSaid(entry, best, preferences);
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
              label: `try ${pieceSaid(entry, value, preferences)}`,
              line: `try ${phrase(entry, ...places)} ${typedOf(value)}`,
            }))
          : [],
      },
    ),
  };
}
