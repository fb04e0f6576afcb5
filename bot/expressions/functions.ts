/** The functions of a sum on values with their dimension. `commands/sums/sum.ts` says how many numbers each takes. */
import { baseOf, isPlain, plain, sameBase, scaled } from '../../commands/sums/base.js';
import { notPlain, unlike } from './operators.js';
import { isPlace, made, scaleOnly, type Tried, type Value } from './value.js';

type Several = (values: readonly Value[]) => Tried;
const angle = baseOf('angle');
const mostDecimals = 15;

/** Plain numbers in, a plain number (or an angle) out. */
const onPlain =
  (name: string, compute: (x: number, y: number) => number, base = plain): Several =>
  (values) => {
    const other = values.find((value) => !isPlain(value.base));
    if (other) return notPlain(other, name);
    const [x, y] = values;
    return x === undefined ? `${name} takes a number.` : made(compute(x.value, y?.value ?? Number.NaN), base, values);
  };
/** An angle, or a number of radians. */
const onAngle =
  (name: string, compute: (x: number) => number): Several =>
  (values) => {
    const [x] = values;
    if (x === undefined) return `${name} takes an angle.`;
    if (sameBase(x.base, angle)) return made(compute(x.value), plain, values);
    return isPlain(x.base) ? made(compute(x.value), plain, values, { assumed: 'radians' }) : notPlain(x, name);
  };
/** Values of one kind. `mixed`: their places on a scale may differ in number, and are counted. */
const alike =
  (name: string, compute: (numbers: readonly number[]) => number, mixed = false): Several =>
  (values) => {
    const [first, ...others] = values;
    if (first === undefined) return `${name} takes a number.`;
    const other = others.find((one) => !sameBase(one.base, first.base) || (!mixed && one.points !== first.points));
    if (other && sameBase(other.base, first.base)) return `In ${name} all must be counted from the same zero.`;
    if (other) return unlike(first, other, `put beside, in ${name},`);
    const points = mixed ? values.reduce((all, one) => all + one.points, 0) : first.points;
    const percent = values.every((one) => one.percent);
    return made(compute(values.map((one) => one.value)), first.base, values, { points, percent });
  };
/** Of amounts only: nothing is known of the size of a place on a scale. */
const ofAmounts =
  (several: Several): Several =>
  (values) =>
    values.some(isPlace) ? scaleOnly : several(values);
const root =
  (compute: (x: number) => number, by: number): Several =>
  ([x]) =>
    x === undefined ? 'A root takes a number.' : isPlace(x) ? scaleOnly : made(compute(x.value), scaled(x.base, by), [x]);

function round(values: readonly Value[]): Tried {
  const [x, decimals] = values;
  if (x === undefined) return 'round takes a number.';
  const other = values.find((value) => !isPlain(value.base));
  if (other) return notPlain(other, 'round');
  const n = decimals?.value ?? 0;
  if (!Number.isInteger(n) || Math.abs(n) > mostDecimals)
    return `round takes a whole number of decimals from -${mostDecimals} to ${mostDecimals}, and ${n} came.`;
  return made(Math.sign(x.value) * shifted(Math.round(shifted(Math.abs(x.value), n)), -n), plain, values);
}
/** Times a power of ten, by the digits: 1.005 times a hundred is 100.5, not 100.49999999999999. */
function shifted(x: number, by: number): number {
  const [digits = '0', exponent = '0'] = x.toExponential().split('e');
  return Number(`${digits}e${Number(exponent) + by}`);
}
function median(numbers: readonly number[]): number {
  const sorted = [...numbers].sort((a, b) => a - b);
  const middle = Math.floor(sorted.length / 2);
  const upper = sorted[middle] ?? Number.NaN;
  return sorted.length % 2 === 1 ? upper : ((sorted[middle - 1] ?? Number.NaN) + upper) / 2;
}
/** The machine's pi is not the whole one: what it leaves of the sine of half a turn is nothing. */
const settled = (ratio: number, x: number): number => (Math.abs(ratio) < 1e-15 * Math.max(1, Math.abs(x)) && Math.abs(x) > 1 ? 0 : ratio);
const sine = (x: number): number => settled(Math.sin(x), x);
const cosine = (x: number): number => settled(Math.cos(x), x);
const total = (numbers: readonly number[]): number => numbers.reduce((all, one) => all + one, 0);

const plainOnes: readonly (readonly [string, (x: number, y: number) => number])[] = [
  ['exp', Math.exp],
  ['log10', Math.log10],
  ['log2', Math.log2],
  ['ceil', Math.ceil],
  ['floor', Math.floor],
  ['sign', Math.sign],
];
const mean = alike('mean', total, true);
export const computed: ReadonlyMap<string, Several> = new Map<string, Several>([
  ...plainOnes.map(([name, compute]): [string, Several] => [name, onPlain(name, compute)]),
  ['log', (values) => onPlain('log', (x, y) => (values.length === 2 ? Math.log(x) / Math.log(y) : Math.log(x)))(values)],
  ['round', round],
  ['sin', onAngle('sin', sine)],
  ['cos', onAngle('cos', cosine)],
  ['tan', onAngle('tan', (x) => sine(x) / cosine(x))],
  ['asin', onPlain('asin', Math.asin, angle)],
  ['acos', onPlain('acos', Math.acos, angle)],
  ['atan', onPlain('atan', Math.atan, angle)],
  [
    'atan2',
    (values) => {
      const [y, x] = values;
      const same = ofAmounts(alike('atan2', () => 0))(values);
      return typeof same === 'string' || y === undefined || x === undefined ? same : made(Math.atan2(y.value, x.value), angle, values);
    },
  ],
  ['abs', ofAmounts(alike('abs', ([x = Number.NaN]) => Math.abs(x)))],
  ['hypot', ofAmounts(alike('hypot', (numbers) => Math.hypot(...numbers)))],
  ['min', alike('min', (numbers) => Math.min(...numbers))],
  ['max', alike('max', (numbers) => Math.max(...numbers))],
  ['sum', alike('sum', total, true)],
  [
    'mean',
    (values) => {
      const all = mean(values);
      return typeof all === 'string' ? all : { ...all, value: all.value / values.length, points: all.points / values.length };
    },
  ],
  ['median', alike('median', median)],
  ['sqrt', root(Math.sqrt, 1 / 2)],
  ['cbrt', root(Math.cbrt, 1 / 3)],
]);
