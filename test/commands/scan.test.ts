import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { tidy } from '../../commands/language/tidy.js';
import { numberOf, scan } from '../../commands/scan.js';

/** Tokens in short: kind:text, amounts as value, other end, unit. */
const short = (line: string): string =>
  scan(tidy(line) ?? '')
    .map((token) => {
      if (token.is === 'amount') {
        const end = token.end ? `@${token.end}` : '';
        const many = token.plural ? 's' : '';
        return `${token.value}${token.to === undefined ? '' : `..${token.to}`}${token.slashed ? `/${token.slashed.join('/')}` : ''}${many}${token.unit === undefined ? '' : `[${token.unit}]`}${end}`;
      }
      if (token.is === 'gear') return `gear ${token.gear}`;
      return token.is === 'word' || token.is === 'mark' ? token.text : `${token.is}(${token.text})`;
    })
    .join(' ');

describe('numbers', () => {
  test.each([
    ['450', 450],
    ['.71', 0.71],
    [',71', 0.71],
    ['30,5', 30.5],
    ['2,570', 2570],
    ['1,234,567.5', 1234567.5],
    ['9 1/2', 9.5],
    ['98-1/2', 98.5],
    ['3/8', 0.375],
    ['-2.5', -2.5],
  ])('%s', (text, value) => expect(numberOf(text).value).toBe(value));
});
describe('tokens', () => {
  test.each([
    ['9½ in hole', '9.5[in] hole'],
    ['5ft 8in', '68[in]'],
    ['8’ 2½”', '98.5[in]'],
    ['250–300 lb/in', '250..300[lb/in]'],
    ['300 - 800', '300..800'],
    ['500/600', '500/600'],
    ['742/699/571/598', '742/699/571/598'],
    ['−2.5° both', '-2.5[°] both'],
    ["-2° 30'", '-2.5[°]'],
    ['225 45 16', 'size(225 45 16)'],
    ['245/40ZR17 91W', 'size(245/40ZR17 91W)'],
    ['31x10.50R15LT', 'size(31x10.50R15LT)'],
    ['23.0x8.0-13', 'size(23.0x8.0-13)'],
    ['9999/1R17', 'size(9999/1R17)'],
    ['17x8 et35 than 15x7 +38', 'rim(17x8 et35) than rim(15x7 +38)'],
    ['2nd 1.93', 'gear 2 1.93'],
    ['6500 in 2nd', '6500 in gear 2'],
    ['3/8 in in mm', '0.375[in] in unit(mm)'],
    ['32 psi to bar', '32[psi] to unit(bar)'],
    ['350s to 4.10s', '350s to 4.1s'],
    ['450f 350r', '450[f]@front 350@rear'],
    ['8kg/mm', '8[kg/mm]'],
    ['450 lb per inch', '450[lb per inch]'],
    ['w/ 400', 'with 400'],
    ["moth's share", 'moths share'],
    ['‘old blue’', 'quoted(old blue)'],
    ['450, 350', '450 , 350'],
    ['@robin:example.org', 'who(@robin:example.org)'],
    ['rear spring - 50', 'rear spring - 50'],
    ['2.1bar', '2.1[bar]'],
  ])('%s', (line, tokens) => expect(short(line)).toBe(tokens));
});
describe('any line at all', () => {
  test('is scanned to its end, without a throw, and tokens stand in order', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary', maxLength: 500 }), (line) => {
        const text = tidy(line);
        if (text === undefined) return;
        const tokens = scan(text);
        for (let n = 1; n < tokens.length; n++) expect(tokens[n]!.at).toBeGreaterThan(tokens[n - 1]!.at);
        for (const token of tokens) expect(token.at).toBeLessThan(text.length);
      }),
      { numRuns: 500 },
    );
  });
  test('marks that do not show are gone', () => expect(tidy('\u202eset\u200b \u2066front\u2069\u00ad')).toBe('set front'));
  test('a line that is too long is no line', () => {
    expect(tidy('a'.repeat(401))).toBeUndefined();
    expect(tidy('('.repeat(100_000))).toBeUndefined();
    // One character that unfolds into eighteen does not get past the limit.
    expect(tidy('\ufdfa'.repeat(100))).toBeUndefined();
  });
});
