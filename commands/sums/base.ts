/**
 * The dimension of a sum, from the dimensions of what is in it: exponents of kilogram, metre, second, kelvin and radian. The SI counts an angle as a plain
 * number; here it is kept apart, so that a torque is no roll stiffness, a frequency no engine speed, and 2° no 0.035.
 */
import { type Dimension, dimensions } from '../../core/dimensions.js';
import { dimensionWords } from '../units.js';

export type Base = readonly [kilogram: number, metre: number, second: number, kelvin: number, radian: number];
const symbols = ['kg', 'm', 's', 'K', 'rad'] as const;
export const plain: Base = [0, 0, 0, 0, 0];
export const sameBase = (a: Base, b: Base): boolean => a.every((x, at) => Math.abs(x - (b[at] ?? 0)) < 1e-9);
export const isPlain = (b: Base): boolean => sameBase(b, plain);
const mapped = (a: Base, to: (exponent: number, at: number) => number): Base => [
  to(a[0], 0),
  to(a[1], 1),
  to(a[2], 2),
  to(a[3], 3),
  to(a[4], 4),
];
export const combine = (a: Base, b: Base, sign: 1 | -1): Base => settled(mapped(a, (x, at) => x + sign * (b[at] ?? 0)));
export const scaled = (a: Base, by: number): Base => settled(mapped(a, (x) => x * by));
export const withoutAngle = (a: Base): Base => [a[0], a[1], a[2], a[3], 0];

const unitBases: ReadonlyMap<string, Base> = new Map<string, Base>([
  ['kg', [1, 0, 0, 0, 0]],
  ['m', [0, 1, 0, 0, 0]],
  ['s', [0, 0, 1, 0, 0]],
  ['K', [0, 0, 0, 1, 0]],
  ['rad', [0, 0, 0, 0, 1]],
  ['Hz', [0, 0, -1, 0, 0]],
  ['N', [1, 1, -2, 0, 0]],
  ['Pa', [1, -1, -2, 0, 0]],
  ['J', [1, 2, -2, 0, 0]],
  ['W', [1, 2, -3, 0, 0]],
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
        return mapped(sum, (x, at) => x + (base[at] ?? 0) * Number(power));
      }, plain);
  const under = of(below[0] ?? '');
  return mapped(of(above), (x, at) => x - (under[at] ?? 0));
}

const bases = new Map<Dimension, Base>();
for (const name of Object.keys(dimensions) as Dimension[]) bases.set(name, baseOfUnit(dimensions[name].unit));
export function baseOf(dimension: Dimension): Base {
  const found = bases.get(dimension);
  if (!found) throw new Error(`no such dimension: ${dimension}`);
  return found;
}
/** Dimensions with these exponents, the likeliest first: a number a length is sooner a change of ratio than turns of a wheel. */
export function dimensionsOf(base: Base): readonly Dimension[] {
  const found = [...bases].flatMap(([name, one]) => (sameBase(one, base) ? [name] : []));
  return found.includes('ratioPerLength') ? ['ratioPerLength', ...found.filter((name) => name !== 'ratioPerLength')] : found;
}
/** Radians that a product brings in are none where without them it has a dimension: a speed is an engine speed times a length. */
function settled(base: Base): Base {
  if (base[4] < 1e-9 || dimensionsOf(base).length > 0) return base;
  const without = withoutAngle(base);
  return dimensionsOf(without).length > 0 ? without : base;
}

/** A coherent unit for the exponents: `N/m`, or composed, `kg m^2/s^3`. */
export function unitOf(base: Base): string {
  const [known] = dimensionsOf(base);
  if (known !== undefined) return dimensions[known].unit;
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
/** `a length`, `a rate`, or the unit: for sentences. */
export function dimensionInWords(base: Base): string {
  const [known] = dimensionsOf(base);
  return known === undefined ? `an amount in ${unitOf(base)}` : dimensionWords[known];
}
