/** What a number with a unit can stand for in a sum. */
import type { Dimension } from '../../core/dimensions.js';
import type { Preferences } from '../context.js';
import { type Meaning, meaningsOf, toSI } from '../units.js';
import { type Base, baseOf } from './base.js';
import type { Meant } from './sum.js';

/** A meaning with what an answer is written by. */
export interface Told extends Meant {
  readonly dimension: Dimension;
  /** The unit as it is written. */
  readonly shown: string;
}
/** Whether a unit counts from a zero of its own: `°F`, `psi absolute`, and the bare degree, which is the member's own scale. */
const hasZero = ({ unit }: Meaning): boolean => unit.offset !== undefined || Number.isNaN(unit.factor);
const vacuum = (one: Meaning): boolean => one.dimension === 'pressure';

/** The likeliest first: a spelling that is just how one of its units is written (`K`, `min`) means that one. */
export function meaningsIn(typed: string): readonly Meaning[] {
  const all = meaningsOf(typed);
  const exact = (one: Meaning): boolean => /^\p{L}/u.test(typed) && one.unit.shown === typed;
  return [...all.filter(exact), ...all.filter((one) => !exact(one))];
}
/** Whether a number in this unit may be a place on a scale, so that its sign belongs to it. */
export const isScale = (typed: string): boolean => meaningsOf(typed).some(hasZero);

/** All that a number with a unit can be: `5 lb` a weight and a force. */
export function amount(value: number, typed: string, preferences: Preferences): readonly Told[] {
  return meaningsIn(typed).flatMap((one): Told[] => {
    const { dimension, unit } = one;
    const told = { dimension, shown: unit.shown, base: baseOf(dimension) };
    const size = toSI(value, unit, preferences, true);
    // Counted from a vacuum, in which the offset is not.
    if (hasZero(one) && vacuum(one)) return [{ ...told, si: size, points: 1 }];
    if (dimension === 'temperature') {
      const place: Told = { ...told, si: toSI(value, unit, preferences), points: 1, difference: size };
      // Kelvins count from nothing: they can be so much as well as so warm.
      return hasZero(one) ? [place] : [place, { ...told, si: size, points: 0 }];
    }
    return [{ ...told, si: size, points: 0, ...(unit.shown === '%' ? { percent: true } : {}) }];
  });
}
/** Units that people say one after the other, `5 ft 8 in`, by how they are written. */
const pairs: readonly (readonly [string, string])[] = [
  ['ft', 'in'],
  ['yd', 'ft'],
  ['m', 'cm'],
  ['°', "'"],
  ['h', 'min'],
  ['min', 's'],
  ['lb', 'oz'],
  ['kg', 'g'],
];
/** Whether a quantity in a smaller unit goes on from another. */
export function goesOn(a: Told, unitOfA: string, b: Told, unitOfB: string): boolean {
  const shown = (typed: string) => meaningsOf(typed).find(({ dimension }) => dimension === a.dimension)?.unit.shown;
  return (
    a.dimension === b.dimension &&
    a.points + b.points === 0 &&
    pairs.some(([large, small]) => large === shown(unitOfA) && small === shown(unitOfB))
  );
}
/** One of a unit, to be raised to a power or stand behind a bracket: what has a zero of its own has no such thing. */
export const one = (typed: string, preferences: Preferences): readonly Told[] =>
  meaningsIn(typed).flatMap((meaning): Told[] => {
    const { dimension, unit } = meaning;
    if (hasZero(meaning)) return [];
    return [{ dimension, shown: unit.shown, base: baseOf(dimension), si: toSI(1, unit, preferences, true), points: 0 }];
  });
/** A figure of the car. */
export const figure = (si: number, dimension: Dimension): readonly Told[] => [
  { dimension, shown: '', base: baseOf(dimension), si, points: dimension === 'temperature' ? 1 : 0 },
];
export type { Base };
