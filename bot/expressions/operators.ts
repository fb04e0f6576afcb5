/** The operators of a sum on values with their dimension. */
import { combine, dimensionInWords, isPlain, sameBase, scaled } from '../../commands/sums/base.js';
import { isPlace, made, scaleOnly, type Tried, type Value } from './value.js';

const capital = (text: string): string => text.slice(0, 1).toUpperCase() + text.slice(1);
/** Two values that should be of one kind, and are not. */
export const unlike = (first: Value, other: Value, doing: string): string =>
  `${capital(dimensionInWords(other.base))} can't be ${doing} ${dimensionInWords(first.base)}.`;
export const notPlain = (value: Value, by: string): string =>
  `${by} works on plain numbers, and ${dimensionInWords(value.base)} came; divide by a unit first.`;
/** Higher powers of a unit mean nothing to anybody. */
const highestPower = 20;

/** What is left of a difference below the digits that numbers are kept with is no difference: 0.1 + 0.2 - 0.3 is nothing. */
const settled = (sum: number, a: number, b: number): number => (Math.abs(sum) <= 2e-15 * Math.max(Math.abs(a), Math.abs(b)) ? 0 : sum);

type Binary = (a: Value, b: Value) => readonly Tried[];

const sum =
  (sign: 1 | -1): Binary =>
  (a, b) => {
    // 450 lb/in + 10%: of the 450; but 54% + 2% are 56%.
    if (b.percent && !a.percent) {
      const factor = 1 + sign * b.value;
      return [made(a.value * factor, a.base, [a, b], { points: a.points * factor, assumed: 'percent of' })];
    }
    if (!sameBase(a.base, b.base)) return [unlike(a, b, sign === 1 ? 'added to' : 'taken from')];
    const together = made(settled(a.value + sign * b.value, a.value, b.value), a.base, [a, b], {
      points: a.points + sign * b.points,
      percent: a.percent && b.percent,
    });
    // 70 °F + 10 °F: the second is a rise.
    if (sign === 1 && isPlace(a) && b.difference !== undefined)
      return [together, made(a.value + b.difference, a.base, [a, b], { points: a.points })];
    return [together];
  };
const multiply: Binary = (a, b) => {
  const [number, other] = isPlain(a.base) ? [a, b] : [b, a];
  const base = combine(a.base, b.base, 1);
  if (isPlain(number.base)) return [made(a.value * b.value, base, [a, b], { points: other.points * number.value })];
  return [isPlace(a) || isPlace(b) ? scaleOnly : made(a.value * b.value, base, [a, b])];
};
const divide: Binary = (a, b) => {
  const base = combine(a.base, b.base, -1);
  if (isPlain(b.base)) return [made(a.value / b.value, base, [a, b], { points: a.points / b.value })];
  return [isPlace(a) || isPlace(b) ? scaleOnly : made(a.value / b.value, base, [a, b])];
};
const remainder: Binary = (a, b) => {
  if (!sameBase(a.base, b.base)) return [unlike(a, b, 'the divisor of')];
  return [isPlace(a) || isPlace(b) ? scaleOnly : made(a.value - b.value * Math.floor(a.value / b.value), a.base, [a, b])];
};
const power: Binary = (a, b) => {
  if (!isPlain(b.base)) return [notPlain(b, 'An exponent')];
  if (isPlace(a)) return [scaleOnly];
  if (isPlain(a.base)) return [made(a.value ** b.value, a.base, [a, b])];
  if (Math.abs(b.value) > highestPower) return [`A unit can be raised to at most ${highestPower}, and ${b.value} came.`];
  return [made(a.value ** b.value, scaled(a.base, b.value), [a, b])];
};

export const binary: ReadonlyMap<string, Binary> = new Map([
  ['add', sum(1)],
  ['subtract', sum(-1)],
  ['multiply', multiply],
  ['divide', divide],
  ['mod', remainder],
  ['pow', power],
]);
export const unary: ReadonlyMap<string, (a: Value) => Tried> = new Map([
  ['unaryMinus', (a: Value): Tried => made(-a.value, a.base, [a], { points: -a.points, percent: a.percent })],
  ['unaryPlus', (a: Value): Tried => a],
]);
