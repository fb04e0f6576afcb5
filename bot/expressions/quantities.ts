/** The dimension of a sum, from the dimensions of what is in it: exponents of kilogram, metre, second, kelvin. An angle is a plain number. */
import { dimensions } from '../../core/dimensions.js';

export type Base = readonly [number, number, number, number];
export const plain: Base = [0, 0, 0, 0];
export const sameBase = (a: Base, b: Base): boolean => a.every((x, at) => Math.abs(x - (b[at] ?? 0)) < 1e-9);
export const isPlain = (b: Base): boolean => sameBase(b, plain);
export const combine = (a: Base, b: Base, sign: 1 | -1): Base => [
  a[0] + sign * b[0],
  a[1] + sign * b[1],
  a[2] + sign * b[2],
  a[3] + sign * b[3],
];
export const scaled = (a: Base, by: number): Base => [a[0] * by, a[1] * by, a[2] * by, a[3] * by];

/** Symbols of coherent SI units: a number in front of one is already in SI. */
export const unitBases: ReadonlyMap<string, Base> = new Map<string, Base>([
  ['kg', [1, 0, 0, 0]],
  ['m', [0, 1, 0, 0]],
  ['s', [0, 0, 1, 0]],
  ['K', [0, 0, 0, 1]],
  ['rad', plain],
  ['Hz', [0, 0, -1, 0]],
  ['N', [1, 1, -2, 0]],
  ['Pa', [1, -1, -2, 0]],
  ['J', [1, 2, -2, 0]],
  ['W', [1, 2, -3, 0]],
]);
/**
 * Exponents of a coherent SI unit as `core/dimensions.ts` writes it: `N m/rad`, `m/s^2`, `1/m`, or nothing for a plain number.
 * @throws for a text that is not one: units come from our own tables.
 */
export function baseOfUnit(unit: string): Base {
  const [above = '', ...below] = unit.split('/');
  if (below.length > 1) throw new Error(`not a unit: ${unit}`);
  const of = (part: string): Base =>
    part
      .split(/\s+/)
      .filter((factor) => factor !== '' && factor !== '1')
      .reduce((sum, factor) => {
        const [symbol = '', power = '1'] = factor.split('^');
        const base = unitBases.get(symbol);
        if (base === undefined || !/^-?\d+$/.test(power)) throw new Error(`not a unit: ${unit}`);
        return combine(sum, scaled(base, Number(power)), 1);
      }, plain);
  return combine(of(above), of(below[0] ?? ''), -1);
}
/** The first dimension of our table that has these exponents. */
const known = (base: Base) => Object.entries(dimensions).find(([, d]) => sameBase(d.base, base));
/** A coherent unit for the exponents: `N/m`, or composed, `kg m^2/s^3`. */
export function unitOf(base: Base): string {
  const found = known(base);
  if (found !== undefined) return found[1].unit;
  const symbols = ['kg', 'm', 's', 'K'];
  const part = (sign: 1 | -1): string =>
    base
      .flatMap((exponent, at) => {
        const size = Number((exponent * sign).toFixed(6));
        return size > 0 ? [size === 1 ? symbols[at] : `${symbols[at]}^${size}`] : [];
      })
      .join(' ');
  const [above, below] = [part(1), part(-1)];
  return below === '' ? above : `${above || '1'}/${below}`;
}
/** `a length`, `a spring rate`, or the unit: for sentences. */
export function dimensionInWords(base: Base): string {
  if (isPlain(base)) return 'a plain number';
  const name = known(base)?.[0];
  if (name === undefined) return `an amount in ${unitOf(base)}`;
  const words = name.replace(/[A-Z]/g, (c) => ` ${c.toLowerCase()}`);
  return `${/^[aeiou]/.test(words) ? 'an' : 'a'} ${words}`;
}
