import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { type ClosableCalculator, createCalculator } from '../../bot/expressions/calculator.js';
import { work } from '../../bot/expressions/work.js';
import { baseOf, baseOfUnit, dimensionInWords, dimensionsOf, plain, unitOf } from '../../commands/sums/base.js';
import { deepestBrackets, type Meant, type Sum } from '../../commands/sums/sum.js';
import { type Dimension, dimensions } from '../../core/dimensions.js';

let calculator: ClosableCalculator;
beforeAll(() => {
  calculator = createCalculator();
});
afterAll(() => calculator.close());

const meant = (si: number, dimension: Dimension): Meant => ({ si, base: baseOf(dimension), points: 0 });
const named = (said: string, ...all: readonly Meant[]) => ({ said, meant: all });
const names: Sum['names'] = new Map([
  ['rate', named('front wheel rate', meant(30_000, 'rate'))],
  ['travel', named('travel', meant(0.05, 'length'))],
  ['weight', named('250 kg', meant(250, 'mass'), meant(250 * 9.80665, 'force'))],
  ['mass', named('mass', meant(250, 'mass'))],
  ['turn', named('turn', meant(0.5, 'angle'))],
  ['warm', named('20 °C', { si: 293.15, base: baseOf('temperature'), points: 1, difference: 20 })],
]);
const worked = async (text: string) => {
  const result = await calculator.calculate({ text, names });
  if ('refused' in result) throw new Error(result.refused);
  return result.ways[0];
};
const refusal = async (text: string): Promise<string> => {
  const result = await calculator.calculate({ text, names });
  if (!('refused' in result)) throw new Error(`worked out: ${result.ways[0].value}`);
  return result.refused;
};

describe('numbers', () => {
  test.each([
    ['2 ^ 10 % 1000', 24],
    ['-2 ^ 2', -4],
    ['2 (3 + 4)', 14],
    ['sin(pi / 2)', 1],
    ['hypot(3, 4)', 5],
    ['round(2.567, 1)', 2.6],
    ['round(1.005, 2)', 1.01],
    ['round(-2.5)', -3],
    ['round(1234, -2)', 1200],
    ['atan2(1, 1) * 4', Math.PI],
    ['median(4, 1, 3, 2)', 2.5],
    ['min(1, 2, -3)', -3],
    ['log(8, 2)', 3],
    ['-7 % 3', 2],
    ['0.1 + 0.2 - 0.3', 0],
  ])('%s is %d', async (expression, expected) => {
    expect((await worked(expression)).value).toBeCloseTo(expected, 12);
  });
});

describe('dimensions', () => {
  test('come out of what goes in', async () => {
    expect(await worked('2 * rate * 0.65 ^ 2')).toMatchObject({ base: baseOf('rate'), value: expect.closeTo(2 * 30_000 * 0.65 ** 2, 6) });
    expect(await worked('rate * travel')).toMatchObject({ base: baseOf('force'), value: 1500 });
    expect(await worked('sqrt(rate / mass)')).toMatchObject({ base: baseOf('frequency') });
    expect(await worked('sin(turn)')).toMatchObject({ base: plain, value: expect.closeTo(Math.sin(0.5), 12) });
    expect(await worked('atan(1)')).toMatchObject({ base: baseOf('angle') });
  });
  test('an ambiguous unit is carried on in all its meanings', async () => {
    const result = await calculator.calculate({ text: 'weight / rate', names });
    expect(result).toMatchObject({
      ways: [
        {
          base: [0, 0, 2, 0, 0],
          meaning: new Map([
            ['weight', 0],
            ['rate', 0],
          ]),
        },
        {
          base: baseOf('length'),
          value: (250 * 9.80665) / 30_000,
          meaning: new Map([
            ['weight', 1],
            ['rate', 0],
          ]),
        },
      ],
    });
    const added = await calculator.calculate({ text: 'weight + mass', names });
    expect(added).toMatchObject({ ways: [{ base: baseOf('mass'), value: 500 }] });
    expect('ways' in added && added.ways).toHaveLength(1);
  });
  test('a place on a scale', async () => {
    expect(await worked('warm - warm')).toMatchObject({ value: 0, points: 0 });
    expect(await worked('warm + warm')).toMatchObject({ value: expect.closeTo(313.15, 9), points: 1 });
    expect(await worked('mean(warm, warm)')).toMatchObject({ value: expect.closeTo(293.15, 9), points: 1 });
    for (const sum of ['2 * warm', 'warm / warm', 'warm ^ 2', 'sqrt(warm)', 'abs(warm)', 'sum(warm, warm)', '-warm'])
      expect(await refusal(sum), sum).toContain('write them in K');
  });
  test.each([
    ['rate + mass', "A weight can't be added to a rate."],
    ['travel - 3', "A plain number can't be taken from a length."],
    ['max(travel, mass)', "A weight can't be put beside, in max, a length."],
    ['sin(travel)', 'sin works on plain numbers, and a length came; divide by a unit first.'],
    ['2 ^ travel', 'An exponent works on plain numbers, and a length came; divide by a unit first.'],
    ['turn + 1', "A plain number can't be added to an angle."],
    ['travel ^ 21', 'A unit can be raised to at most 20, and 21 came.'],
    ['round(1, 99)', 'round takes a whole number of decimals from -15 to 15, and 99 came.'],
  ])('%s is refused', async (expression, sentence) => {
    expect(await refusal(expression)).toBe(sentence);
  });
  test('every unit of the core has the exponents of its dimension', () => {
    for (const { unit, base } of Object.values(dimensions)) expect(baseOfUnit(unit).slice(0, 4), unit).toEqual(base);
  });
  test('units that no dimension of ours has are composed', () => {
    expect(unitOf([1, 2, -3, 0, 0])).toBe('W');
    expect(unitOf([2, 0, -4, 0, 0])).toBe('kg^2/s^4');
    expect(unitOf([0, 0, -2, 0, 0])).toBe('1/s^2');
    expect(unitOf([0, 0, 1, 0, -1])).toBe('s/rad');
    expect(unitOf(plain)).toBe('');
    expect(dimensionInWords([0, 1, -2, 0, 0])).toBe('an acceleration');
    expect(dimensionsOf([0, 0, -1, 0, 1])).toEqual(['angularSpeed']);
  });
  test('a unit that is not one of ours is a mistake of ours', () => {
    expect(() => baseOfUnit('furlong')).toThrow('not a unit');
  });
});

/** What no reader of ours would send: the walk is a wall of its own. */
describe('hostile input gets one sentence, and the next sum an answer', () => {
  const hostile = [
    ...['1:1e9', 'ones(20000,20000)', "constructor.constructor('return process')()", 'f(x) = f(x - 1)', 'f(x) = f(x); f(1)', 'a = 1'],
    ...['"text"', "'text'", '[1, 2, 3]', '{a: 1}', 'mass.constructor', 'mass["constructor"]', 'import({a: 1})', 'createUnit(1)'],
    ...['evaluate(1)', 'parse(1)', 'simplify(1)', 'derivative(1, 2)', 'reviver(1)', 'resolve(1)', 'typed(1)', 'cos.toString()'],
    ...[
      '170!',
      'true',
      '1 < 2',
      '1 ? 2 : 3',
      '1; 2',
      '2 | 3',
      '1 to 2',
      '__proto__',
      'sqrt',
      'sqrt()',
      'wibble + 1',
      '1 +',
      '2 3',
      '',
      '   ',
    ],
    ...[
      'constructor',
      'constructor(1)',
      'toString()',
      'hasOwnProperty(1)',
      '1/0',
      '0/0',
      'sqrt(-1)',
      'log(0)',
      '9^9^9^9',
      '10^400',
      '1e999',
      '5 % 0',
    ],
    `${'('.repeat(3000)}1${')'.repeat(3000)}`,
    `${'('.repeat(2 * deepestBrackets + 1)}1${')'.repeat(2 * deepestBrackets + 1)}`,
    `${'1+'.repeat(140)}1`,
    `${'-'.repeat(5000)}1`,
  ];
  test.each(hostile.map((text) => [text.slice(0, 40), text]))('%s', async (_, text) => {
    const sentence = await refusal(text);
    expect(sentence).toMatch(/^[A-Z"a-z].*\.$/);
    expect(sentence).not.toMatch(/undefined|NaN|TypeError/);
    // The same in this thread: nothing is thrown that the thread would have to survive.
    expect(work({ text, names })).toEqual({ refused: sentence });
  });
  test('too many meanings', async () => {
    const kinds = (['mass', 'length', 'time', 'temperature', 'rate', 'force'] as const).map((dimension) => meant(2, dimension));
    const many = new Map(['a', 'b', 'c', 'd'].map((name) => [name, named(name, ...kinds)]));
    expect(await calculator.calculate({ text: 'a * b * c * d', names: many })).toMatchObject({
      refused: expect.stringContaining('Too many'),
    });
  });
  test('after all of that', async () => {
    expect((await worked('1 + 1')).value).toBe(2);
  });
});

describe('the thread', () => {
  const sum = (text: string): Sum => ({ text, names: new Map() });
  test('starts with the first sum, ends when idle, and starts again', async () => {
    const one = createCalculator({ idleMs: 20 });
    expect(one.running).toBe(false);
    expect(await one.calculate(sum('1 + 1'))).toMatchObject({ ways: [{ value: 2 }] });
    expect(one.running).toBe(true);
    while (one.running) await new Promise((resolve) => setTimeout(resolve, 5));
    expect(await one.calculate(sum('2 + 2'))).toMatchObject({ ways: [{ value: 4 }] });
    await one.close();
    expect(one.running).toBe(false);
  });
  test('sums that come together are all answered, each its own', async () => {
    const all = await Promise.all([1, 2, 3, 4, 5].map((n) => calculator.calculate(sum(`${n} * 2`))));
    expect(all).toMatchObject([2, 4, 6, 8, 10].map((value) => ({ ways: [{ value }] })));
  });
  test('a number that is too large goes through, and is refused in words', async () => {
    const huge = new Map([['q0', named('1e308 mi', meant(Number.POSITIVE_INFINITY, 'length'))]]);
    expect(await calculator.calculate({ text: '(q0)', names: huge })).toEqual({ refused: 'One of those numbers is too large.' });
  });
});
