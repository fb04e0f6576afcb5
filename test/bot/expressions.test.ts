import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { type ClosableCalculator, createCalculator } from '../../bot/expressions/calculator.js';
import { deepestBrackets, longestExpression, prepare } from '../../bot/expressions/normalise.js';
import { baseOfUnit, dimensionInWords, plain, sameBase, unitOf } from '../../bot/expressions/quantities.js';
import { dimensions } from '../../core/dimensions.js';

let calculator: ClosableCalculator;
beforeAll(() => {
  calculator = createCalculator();
});
afterAll(() => calculator.close());

const names = new Map([
  ['q1', { si: 78_807, unit: 'N/m' }],
  ['front wheel rate', { si: 30_000, unit: 'N/m' }],
  ['travel', { si: 0.05, unit: 'm' }],
  ['mass', { si: 250, unit: 'kg' }],
  ['turn', { si: 0.5, unit: 'rad' }],
  ['s', { si: 3, unit: 'm' }],
]);
const value = async (expression: string): Promise<number> => {
  const worked = await calculator.calculate(expression, names);
  if ('refused' in worked) throw new Error(worked.refused);
  return worked.value;
};
const refusal = async (expression: string): Promise<string> => {
  const worked = await calculator.calculate(expression, names);
  if (!('refused' in worked)) throw new Error(`worked out: ${worked.value}`);
  return worked.refused;
};

describe('sums as people type them', () => {
  test.each([
    ['3 − 2', 1],
    ['2×3', 6],
    ['2 x 3', 6],
    ['6÷4', 1.5],
    ['½', 0.5],
    ['9½ * 2', 19],
    ['3²', 9],
    ['√16 + √(9)', 7],
    ['1 000 + 1', 1001],
    ['1\u202f000\u00a0000', 1_000_000],
    ['1,000 + 1', 1001],
    ['0,65 * 2', 1.3],
    ['max(1,5)', 5],
    ['max(0,65; 0,7)', 0.7],
    ['min(1, 2, -3)', -3],
    ['2^10 % 1000', 24],
    ['200 + 10%', 220],
    ['-2^2', -4],
    ['2(3 + 4)', 14],
    ['sin(pi/2)', 1],
    ['hypot(3, 4)', 5],
    ['round(2.567, 1)', 2.6],
    ['atan2(1, 1) * 4', Math.PI],
  ])('%s is %d', async (expression, expected) => {
    expect(await value(expression)).toBeCloseTo(expected, 9);
  });
});

describe('dimensions', () => {
  test('a rate times a ratio squared is a rate', async () => {
    const worked = await calculator.calculate('2 * q1 * 0.65^2', names);
    expect(worked).toMatchObject({ unit: 'N/m', base: [1, 0, -2, 0] });
    expect('value' in worked && worked.value).toBeCloseTo(2 * 78_807 * 0.65 ** 2, 6);
  });
  test('the root of a rate over a mass is a frequency', async () => {
    expect(await calculator.calculate('sqrt(front wheel rate / mass) / (2 pi)', names)).toMatchObject({ unit: 'Hz', base: [0, 0, -1, 0] });
  });
  test('a name with spaces, and SI symbols after numbers; a name goes before a symbol', async () => {
    expect(await calculator.calculate('front wheel rate * travel', names)).toMatchObject({ value: 1500, unit: 'N' });
    expect(await calculator.calculate('300 N + 2 kg * 10 m / 1 m * 1 N / 1 kg', names)).toMatchObject({ value: 320, unit: 'N' });
    expect(await calculator.calculate('s + 1 m', names)).toMatchObject({ value: 4, unit: 'm' });
  });
  test('an angle is a plain number', async () => {
    expect(await calculator.calculate('turn + sin(turn)', names)).toMatchObject({ unit: '', base: [0, 0, 0, 0] });
  });
  test.each([
    ['q1 + mass', "A mass can't be added to a rate."],
    ['travel - 3', "A plain number can't be taken from a length."],
    ['max(travel, mass)', "A mass can't be put beside, in max, a length."],
    ['sin(travel)', 'sin works on plain numbers, and a length came; divide by a unit first.'],
    ['2^travel', 'An exponent works on plain numbers, and a length came; divide by a unit first.'],
  ])('%s is refused', async (expression, sentence) => {
    expect(await refusal(expression)).toBe(sentence);
  });
  test('every unit of the core has the exponents of its dimension', () => {
    for (const { unit, base } of Object.values(dimensions)) expect(sameBase(baseOfUnit(unit), base), unit).toBe(true);
  });
  test('units that no dimension of ours has are composed', () => {
    expect(unitOf([1, 2, -3, 0])).toBe('W');
    expect(unitOf([2, 0, -4, 0])).toBe('kg^2/s^4');
    expect(unitOf([0, 0, -2, 0])).toBe('1/s^2');
    expect(unitOf(plain)).toBe('');
    expect(dimensionInWords([0, 1, -2, 0])).toBe('an acceleration');
  });
  test('a unit that is not one of ours is a mistake of ours', () => {
    expect(() => baseOfUnit('furlong')).toThrow('not a unit');
  });
});

describe('hostile input gets one sentence, and the next sum an answer', () => {
  test.each([
    ['1:1e9'],
    ['ones(20000,20000)'],
    ["constructor.constructor('return process')()"],
    ['f(x) = f(x - 1)'],
    ['f(x) = f(x); f(1)'],
    ['a = 1'],
    ['"text"'],
    ["'text'"],
    ['[1, 2, 3]'],
    ['{a: 1}'],
    ['mass.constructor'],
    ['mass["constructor"]'],
    ['import({a: 1})'],
    ['createUnit(1)'],
    ['evaluate(1)'],
    ['parse(1)'],
    ['simplify(1)'],
    ['derivative(1, 2)'],
    ['reviver(1)'],
    ['resolve(1)'],
    ['typed(1)'],
    ['cos.toString()'],
    ['170!'],
    ['true'],
    ['1 < 2'],
    ['1 ? 2 : 3'],
    ['1; 2'],
    ['2 | 3'],
    ['1 to 2'],
    ['__proto__'],
    ['sqrt'],
    ['sqrt()'],
    ['wibble + 1'],
    ['1 +'],
    ['2 3'],
    [''],
    ['   '],
  ])('%s', async (expression) => {
    const sentence = await refusal(expression);
    expect(sentence).toMatch(/[.)]$|calc/);
    expect(sentence).not.toMatch(/name_\d+_|undefined|NaN|TypeError/);
  });
  test.each([['1/0'], ['0/0'], ['sqrt(-1)'], ['log(0)'], ['9^9^9^9'], ['10^400']])('%s has no finite answer', async (expression) => {
    expect(await refusal(expression)).toContain('finite');
  });
  test('too long, too deep, too many parts', async () => {
    expect(await refusal('1+'.repeat(longestExpression))).toContain('characters long');
    expect(await refusal(`${'('.repeat(3000)}1${')'.repeat(3000)}`)).toContain('characters long');
    const deep = deepestBrackets + 1;
    expect(await refusal(`${'('.repeat(deep)}1${')'.repeat(deep)}`)).toContain('deep');
    expect(await refusal(`${'1+'.repeat(140)}1`)).toContain('parts');
    expect(await value(`${'('.repeat(deepestBrackets)}1${')'.repeat(deepestBrackets)}`)).toBe(1);
  });
  test('after all of that', async () => {
    expect(await value('1 + 1')).toBe(2);
  });
});

describe('the thread', () => {
  test('starts with the first sum, ends when idle, and starts again', async () => {
    const one = createCalculator({ idleMs: 20 });
    expect(one.running).toBe(false);
    expect(await one.calculate('1 + 1', new Map())).toMatchObject({ value: 2 });
    expect(one.running).toBe(true);
    while (one.running) await new Promise((resolve) => setTimeout(resolve, 5));
    expect(await one.calculate('2 + 2', new Map())).toMatchObject({ value: 4 });
    await one.close();
    expect(one.running).toBe(false);
  });
  test('sums that come together are all answered, each its own', async () => {
    const all = await Promise.all([1, 2, 3, 4, 5].map((n) => calculator.calculate(`${n} * 2`, new Map())));
    expect(all).toMatchObject([2, 4, 6, 8, 10].map((v) => ({ value: v })));
  });
});

test('names are replaced whole words at a time, the longest first', () => {
  const prepared = prepare('rate + front rate + rates', ['rate', 'front rate']);
  expect(prepared).toMatchObject({ text: 'name_1_ + name_0_ + rates' });
});
test('a name may be a quantity as it was typed, with its sign, fraction and group of digits', async () => {
  const typed = new Map([
    ['9½ in', { si: 0.2413, unit: 'm' }],
    ['1,300 lb/in', { si: 227_664, unit: 'N/m' }],
    ['−2 in', { si: -0.0508, unit: 'm' }],
  ]);
  expect(await calculator.calculate('9½ in −2 in', typed)).toMatchObject({ value: expect.closeTo(0.1905, 9), unit: 'm' });
  expect(await calculator.calculate('9½ in*−2 in', typed)).toMatchObject({ value: expect.closeTo(-0.01225804, 9) });
  expect(await calculator.calculate('1,300 lb/in * 0,5^2', typed)).toMatchObject({ value: 56_916, unit: 'N/m' });
});
