/**
 * Sums of every kind against what they come to by other means: a right value, or one refusal; never a throw, NaN, Infinity or a wrong dimension.
 * Seeded, so that it is the same each time; `npm run test:sums` looks further, each time elsewhere.
 */
import fc from 'fast-check';
import { beforeAll, describe, expect, test } from 'vitest';
import type { Answer } from '../../../commands/answer.js';
import { tidy } from '../../../commands/language/tidy.js';
import { functions } from '../../../commands/sums/sum.js';
import { spellings as all, meaningsOf, units } from '../../../commands/units.js';
import { type Dimension, dimensions } from '../../../core/dimensions.js';
import { demoClub } from '../demo.js';
import type { Club } from '../garage.js';
import { ask } from '../say.js';
import { baseOf, isAngled, isSpecial, line, same, trees, worked } from './oracle.js';

/** As they stand in a line: a phone's degree sign is made plain before anything reads it. */
const spellings = [...new Set(all.map((one) => tidy(one) ?? one))];

const times = Number(process.env.STUBAXLE_TEST_TIMES ?? '1');
const runs = (count: number) => ({ numRuns: count * times, ...(times > 1 ? {} : { seed: 20260527 }) });

let club: Club;
beforeAll(async () => {
  club = await demoClub();
});
const calc = (sum: string): Promise<Answer> => ask(club, 'robin', `calc ${sum}`);

const dimensionNames = Object.keys(dimensions) as Dimension[];
const near = (a: number, b: number, scale = 0, relative = 1e-9): boolean => Math.abs(a - b) <= relative * Math.max(Math.abs(b), scale);

/** What is true of every answer to a sum, whatever it is. */
function sound(answer: Answer): void {
  expect(answer.reference, answer.headline).toBeUndefined();
  expect(['told', 'refused']).toContain(answer.kind);
  const said = [answer.headline, ...answer.notes, ...answer.assumptions].join(' ');
  expect(said).not.toMatch(/\bNaN\b|Infinity|undefined|\bq\d+\b|TypeError|\[object/);
  if (answer.amount) expect(Number.isFinite(answer.amount.si), answer.headline).toBe(true);
  if (answer.kind === 'refused') {
    expect(answer.headline).toMatch(/[.:]$|\?|\.$/);
    expect(answer.next.length, answer.headline).toBeGreaterThan(0);
  }
}
/** The number and the unit after the last `=`. */
function shownIn(answer: Answer): { readonly number: number; readonly unit: string } {
  const text = answer.headline.slice(answer.headline.lastIndexOf(' = ') + 3);
  const [, number = '', unit = ''] = /^(-?[\d,]*\.?\d*(?:e-?\d+)?) ?(.*)$/.exec(text) ?? [];
  return { number: Number(number.replaceAll(',', '')), unit };
}
/** The value as it is shown, in SI: what is read is what was worked out. */
function shownSI(answer: Answer): number {
  const { number, unit } = shownIn(answer);
  const dimension = answer.amount?.dimension;
  if (dimension === undefined || unit === '1/s') return number;
  const one = units[dimension].find(({ shown }) => shown === unit);
  expect(one, answer.headline).toBeDefined();
  return number * (one?.factor ?? Number.NaN);
}
const siBase = (base: readonly number[]): readonly number[] => base.slice(0, 4);

describe('the kinds that broke', () => {
  test.each([
    ['100 lb-ft / 2', 'torque', (100 * 4.4482216152605 * 0.3048) / 2, '50 lb-ft'],
    ['120 ft-lb in Nm', 'torque', 120 * 4.4482216152605 * 0.3048, '162.7 N·m'],
    ['-2.5 deg + 1 deg', 'angle', (-1.5 * Math.PI) / 180, '-1.5°'],
    ['round(3.7, -1)', 'ratio', 0, '0'],
    ['round(37, -1)', 'ratio', 40, '40'],
    ['tan(2 deg)', 'ratio', Math.tan((2 * Math.PI) / 180), '0.034921'],
    ['sin(30 deg)', 'ratio', 0.5, '0.5'],
    ['3²', 'ratio', 9, '9'],
    ['9⅕ * 2', 'ratio', 18.4, '18.4'],
    ['500 lb-ft / 2 deg', 'rollStiffness', (250 * 4.4482216152605 * 0.3048 * 180) / Math.PI, '250 lb-ft/deg'],
    ['100 lb / (450 lb/in)', 'length', (100 / 450) * 0.0254, '0.22222 in'],
    ['70 F + 10 F', 'temperature', 80 * (5 / 9) + (459.67 * 5) / 9, '80 °F'],
    ['2 * 30 psia in psi', 'pressure', 60 * 6894.757293168361 - 101325, '45.304 psi'],
    ['300 K', 'temperature', 300, '300 K'],
    ['300 K / 290 K', 'ratio', 300 / 290, '1.0345'],
    ['450 lb/in + 10%', 'rate', 495 * (4.4482216152605 / 0.0254), '495 lb/in'],
    ['54% + 2%', 'ratio', 0.56, '56 %'],
    ['10% of 450 lb/in', 'rate', 45 * (4.4482216152605 / 0.0254), '45 lb/in'],
    ['1e-20 m', 'length', 1e-20, '1e-20 m'],
    ['5ft 8in + 2 in', 'length', 70 * 0.0254, '70 in'],
    ['100 lb / 2 in', 'rate', 50 * (4.4482216152605 / 0.0254), '50 lb/in'],
    ['300 Nm * 6000 rpm', 'power', 300 * 200 * Math.PI, '252.78 hp'],
    ['12 in in in', 'length', 12 * 0.0254, '12 in'],
    ['3/8 in in mm', 'length', (3 / 8) * 0.0254, '9.525 mm'],
  ] as const)('%s', async (sum, dimension, si, text) => {
    const answer = await calc(sum);
    sound(answer);
    expect(answer.headline).toMatch(new RegExp(` = ${text.replace(/[.*+?^${}()|[\]\\]/g, '\\$&')}$`));
    expect(answer.amount?.dimension).toBe(dimension);
    expect(answer.amount?.si).toBeCloseTo(si, 9);
  });
  test('what is no length of ours is still a number in its unit', async () => {
    expect((await calc('3 in^2')).headline).toBe('3 in^2 = 0.0019355 m^2');
    expect((await calc('3 in * 4 in in in^2')).headline).toBe('3 in * 4 in = 12 in^2');
    expect((await calc('200 lb / 32 psi in in^2')).headline).toBe('200 lb / 32 psi = 6.25 in^2');
  });
  test.each([
    ['5 - 3 mm', "A length can't be taken from a plain number."],
    ['6000 rpm in Hz', 'That comes out as an engine speed, which Hz is not.'],
    ['70 F * 2', /averaged; to multiply or divide them, write them in K\.$/],
    ['120 F / 70 F', /write them in K\.$/],
    ['1/0', /no finite answer/],
    ['1/(1/0)', /no finite answer/],
    ['1e300 * 1e300', /no finite answer/],
    ['sqrt(-1)', /no finite answer/],
    ['2 deg + 0.1', "A plain number can't be added to an angle."],
    ['12 in / 3/4 in', /two ways/],
    ['3 in 4 mm', /a sign is missing/],
    ['round(3.7, 0.5)', /whole number of decimals/],
    ['furlong + 1', '"furlong" isn\'t a number, a unit or a figure that I know.'],
    ['gear ratio * 2', 'Which gear ratio? They differ from place to place.'],
    ['(1 + 2', 'A bracket is opened and not closed.'],
    ['1 + 2)', 'A bracket is closed that was not opened.'],
    ['3 in in furlongs', /furlongs/],
  ])('%s is refused', async (sum, sentence) => {
    const answer = await calc(sum);
    sound(answer);
    expect(answer.kind).toBe('refused');
    if (typeof sentence === 'string') expect(answer.headline).toBe(sentence);
    else expect(answer.headline).toMatch(sentence);
  });
  test("a clubmate's figure is the clubmate's", async () => {
    const answer = await calc('moth rear spring * 2');
    expect(answer.headline).toBe('moth rear spring * 2 = 500 lb/in');
    expect(answer.assumptions).toEqual(['From your car, its ± left out: spring rate of moth (sam).']);
  });
});

describe('every unit', () => {
  const scales = new Set(['temperature']);
  test.each(spellings.map((spelling) => [spelling]))('%s', async (spelling) => {
    const meanings = meaningsOf(spelling);
    const isScale = meanings.every(({ dimension }) => scales.has(dimension));
    const absolute = meanings.some(({ dimension, unit }) => dimension === 'pressure' && unit.offset !== undefined);
    for (const [sum, expected] of [
      [`100 ${spelling} / 2`, 50],
      [`-2.5 ${spelling} + 1 ${spelling}`, -1.5],
      [`5 ${spelling} - 3 ${spelling}`, 2],
      [`2 * (1,000 ${spelling})`, 2000],
    ] as const) {
      const answer = await calc(sum);
      sound(answer);
      if (isScale && /[*/]/.test(sum.replace(spelling, '')) && answer.kind === 'refused') continue;
      expect(answer.kind, sum).toBe('told');
      if (isScale || absolute) {
        expect(shownIn(answer).number, sum).toBeCloseTo(expected, 6);
        continue;
      }
      const si = answer.amount?.si ?? Number.NaN;
      expect(
        meanings.some(({ dimension, unit }) => dimension === answer.amount?.dimension && near(si, expected * unit.factor)),
        `${sum}: ${si}`,
      ).toBe(true);
      expect(near(shownSI(answer), si, 0, 1e-4), answer.headline).toBe(true);
    }
  });
  test('into others of its kind, and into none of another', async () => {
    // All pairs are 180,000: the longer run takes more of them, and others each time.
    const oneIn = Math.max(1, Math.round(37 / times));
    for (const from of spellings)
      for (const [at, to] of spellings.entries()) {
        if ((at + from.length) % oneIn !== 0) continue;
        // `100 in lb` is a torque.
        if (spellings.includes(`in ${to}`)) continue;
        const fits = meaningsOf(from).flatMap((a) => meaningsOf(to).flatMap((b) => (a.dimension === b.dimension ? [{ a, b }] : [])));
        const isRight = (answer: Answer): boolean =>
          fits.some(({ a, b }) => {
            // The bare degree is the member's own.
            if (Number.isNaN(a.unit.factor) || Number.isNaN(b.unit.factor)) return true;
            const si = 100 * a.unit.factor + (a.unit.offset ?? 0);
            return near(shownIn(answer).number, (si - (b.unit.offset ?? 0)) / b.unit.factor, 0, 1e-4);
          });
        const sum = `100 ${from} in ${to}`;
        const answer = await calc(sum);
        sound(answer);
        if (fits.length > 0) {
          expect(answer.kind, `${sum}: ${answer.headline}`).toBe('told');
          expect(isRight(answer), `${sum}: ${answer.headline}`).toBe(true);
          // The same without its verb may be read as something else, but never as another number.
          const bare = await ask(club, 'robin', sum);
          expect(bare.reference).toBeUndefined();
          if (bare.kind === 'told' && bare.headline.includes(' = ')) expect(isRight(bare), `${sum}: ${bare.headline}`).toBe(true);
        } else if (answer.kind === 'told') {
          // Of one base under two names (a change of ratio, and turns, over a length), or `in` as inches.
          const alike = meaningsOf(from).some((a) => meaningsOf(to).some((b) => same(baseOf(a.dimension), baseOf(b.dimension))));
          expect(alike || /^in\b/.test(to), `${sum}: ${answer.headline}`).toBe(true);
        }
      }
  }, 3_600_000);
});

test.each([
  ['1,5 mm * 2', '3 mm'],
  ['1.234.567,5 / 2', '617284'],
  ['max(0,5; 0,7)', '0,7'],
  ['max(1, 5)', '5'],
  ['1,300 * 2', '2,6'],
  ['sqrt(0,25)', '0,5'],
  ['2 lb in kg', '0,90718 kg'],
  ['front spring * 2', /N\/mm$/],
])('%s, where the comma is the decimal mark', async (sum, text) => {
  const metric = await demoClub();
  await ask(metric, 'robin', 'units metric');
  await ask(metric, 'robin', 'units decimal comma');
  const answer = await ask(metric, 'robin', `calc ${sum}`);
  const shown = answer.headline.slice(answer.headline.lastIndexOf(' = ') + 3);
  if (typeof text === 'string') expect(shown).toBe(text);
  else expect(shown).toMatch(text);
});

test('sums of any shape', async () => {
  const seen = { told: 0, refused: 0 };
  await fc.assert(
    fc.asyncProperty(trees, async (tree) => {
      const sum = line(tree);
      if (sum.length > 390) return;
      const answer = await calc(sum);
      sound(answer);
      const possible = worked(tree, !isAngled(tree));
      if (answer.kind === 'refused') {
        seen.refused++;
        // A unit that has a zero of its own has tests of its own; radians come and go.
        const answerable = possible.filter(
          ({ value, scale }) => Number.isFinite(value) && (value === 0 || Math.abs(value) > 1e-12 * scale),
        );
        const excused =
          isSpecial(tree) || isAngled(tree) || /several things|finite|two ways|too long|comma in the brackets/.test(answer.headline);
        expect(answerable.length === 0 || excused, `${sum}: ${answer.headline}`).toBe(true);
        return;
      }
      seen.told++;
      if (isSpecial(tree)) return;
      const { amount } = answer;
      const si = amount?.si ?? shownIn(answer).number;
      const fits = possible.filter(({ value, scale }) => near(si, value, scale, amount ? 1e-9 : 1e-4));
      expect(fits.length, `${sum}: ${si}, not ${possible.map(({ value }) => value).join(' or ')}`).toBeGreaterThan(0);
      if (amount) {
        const base = dimensions[amount.dimension].base;
        expect(
          fits.some((one) => same(siBase(one.base), base)),
          `${sum}: ${amount.dimension}`,
        ).toBe(true);
        expect(near(shownSI(answer), si, 0, 1e-4), answer.headline).toBe(true);
      } else if (!isAngled(tree))
        expect(
          dimensionNames.some((name) => fits.every((one) => same(one.base, baseOf(name)))),
          sum,
        ).toBe(false);
    }),
    runs(1200),
  );
  expect(seen.told).toBeGreaterThan(400);
  expect(seen.refused).toBeGreaterThan(100);
}, 3_600_000);

test('figures of the car in sums', async () => {
  for (const words of ['front spring', 'rear motion ratio', 'wheelbase', 'rear ride frequency', '1st gear ratio', 'front wheel rate']) {
    const answer = await calc(`2 * ${words} - ${words}`);
    const shown = await ask(club, 'robin', `show ${words}`);
    expect(answer.kind, answer.headline).toBe('told');
    expect(answer.amount?.si, words).toBeCloseTo(shown.amount?.si ?? Number.NaN, 9);
  }
});

test('anything at all is told or refused', async () => {
  const words = [
    ...spellings,
    ...functions.keys(),
    'pi',
    'e',
    'rear spring',
    'front',
    'wheelbase',
    'x',
    'of',
    'in',
    'to',
    'as',
    'squared',
    'plus',
    'wibble',
  ];
  const signs = [
    '+',
    '-',
    '*',
    '/',
    '^',
    '%',
    '(',
    ')',
    ',',
    ';',
    '**',
    '√',
    '½',
    '²',
    '×',
    '÷',
    '.',
    '=',
    '?',
    '!',
    ':',
    '"',
    "'",
    '[',
    '{',
    '\\',
    '|',
    '_',
    '__proto__',
  ];
  const parts = fc.oneof(
    fc.constantFrom(...words),
    fc.constantFrom(...signs),
    fc.nat(2000).map(String),
    fc.double({ noNaN: true, noDefaultInfinity: true }).map((n) => String(n)),
    fc.string({ unit: 'grapheme', maxLength: 3 }),
  );
  const soup = fc.array(fc.tuple(parts, fc.constantFrom('', ' ')), { minLength: 1, maxLength: 14 }).map((all) => all.flat().join(''));
  await fc.assert(
    fc.asyncProperty(fc.oneof(soup, fc.string({ unit: 'grapheme', maxLength: 60 })), async (sum) => {
      if (/[\n\r\u2028\u2029]/.test(sum)) return;
      const answer = await calc(sum);
      expect(answer.reference).toBeUndefined();
      expect(answer.headline).not.toMatch(/\bNaN\b|-?Infinity(?![^"]*")|\bundefined\b/);
      if (answer.amount) expect(Number.isFinite(answer.amount.si)).toBe(true);
    }),
    runs(1200),
  );
}, 3_600_000);
