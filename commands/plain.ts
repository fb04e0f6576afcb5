/** Sums of a line's own data: what the line tells is all there is, guesses are off, and the basis is said. */
import { isRefusal } from '../core/catalog.js';
import type { Evaluation } from '../core/engine.js';
import type { Section } from './answer.js';
import type { Context } from './context.js';
import { isNotLaid, lay } from './facts.js';
import { catalog, type Looked, nothing, numbersOf } from './looked.js';
import type { Item } from './reading.js';
import { amount, sentence, writing } from './show/amount.js';

/** No guesses at all. */
const none: ReadonlySet<string> = new Set();
/** More words than this are a list, not a basis. */
const mostBasis = 3;

/** The paths of what was told that a number was worked out from. */
function readBy(numbers: Evaluation, path: string): ReadonlySet<string> {
  const read = new Set<string>();
  const seen = new Set<string>();
  const visit = (at: string): void => {
    if (seen.has(at)) return;
    seen.add(at);
    const { place, entry } = numbers.catalog.node(at);
    read.add(place === '' ? entry.path : `${place}.${entry.path}`);
    for (const { path: need } of numbers.used(at)) if (need !== undefined) visit(need);
  };
  visit(path);
  return read;
}
/**
 * The line's own data as a car of its own, where they give all of what is asked and every one of them is read for it: a sum that brings its own
 * numbers needs no car. Undefined where it does not.
 */
export function plainSum(told: readonly Item[], asked: readonly string[]): Looked | undefined {
  const said = told.filter(({ said }) => said !== undefined);
  // What changes what is there needs to know what is there.
  if (said.length === 0 || asked.length === 0 || said.some((item) => item.said?.change !== undefined || item.said?.to !== undefined))
    return undefined;
  const laid = lay(nothing.situation, said, { is: 'tried' });
  if (isNotLaid(laid)) return undefined;
  const looked: Looked = { ...nothing, situation: { ...laid.situation, assume: none } };
  const numbers = numbersOf(looked.situation);
  const read = new Set<string>();
  for (const path of asked) {
    if (isRefusal(numbers.get(path))) return undefined;
    for (const one of readBy(numbers, path)) read.add(one);
  }
  const unread = laid.told.filter(({ path }) => !read.has(path));
  // One place of what was told without a place is enough: `spring 450` is of either end.
  const passedOver = said.filter((item) => laid.told.filter(({ entry }) => entry === item.entry).every((one) => unread.includes(one)));
  return passedOver.length > 0 || isOnlyTold(numbers, asked) ? undefined : looked;
}
/** Nothing was worked out: what was asked for is what was told. */
const isOnlyTold = (numbers: Evaluation, asked: readonly string[]): boolean => asked.every((path) => numbers.status(path) === 'told');

/** How a plain sum was worked out, in a few words; nothing where text books would agree anyway. */
export function basisLine(looked: Looked, path: string): readonly string[] {
  if (looked.situation.assume === undefined) return [];
  const words = numbersOf(looked.situation).basis(path);
  return words.length === 0 ? [] : [`${sentence(words.slice(0, mostBasis).join('; '))}.`];
}
/** What the saved car, or parts of the usual kind, would make of the same: for whoever asks for more, where it moves the number that is shown. */
export function fuller(plain: Looked, full: Looked, path: string, { asker: { preferences } }: Pick<Context, 'asker'>): readonly Section[] {
  const [own, all] = [numbersOf(plain.situation), numbersOf(full.situation)];
  const [value, other] = [own.number(path), all.number(path)];
  if (isRefusal(value) || isRefusal(other)) return [];
  const { entry } = catalog.node(path);
  const { dimension = 'ratio' } = entry;
  const shown = amount(other, dimension, preferences, all.within(path), writing(entry));
  if (Math.abs(other - value) <= Math.max(own.within(path), 0.005 * Math.abs(value))) return [];
  const name = full.car ? `on ${full.car.name}` : 'with usual parts';
  return [{ name, notes: [`${sentence(name)}: ${shown.text}.`] }];
}
