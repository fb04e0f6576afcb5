/** What holds for every line, and for every entry of the catalogs. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { curveText } from '../../commands/language/values.js';
import { type Item, isStop, type Reading, type Stop } from '../../commands/reading.js';
import { read, type Setting, writeItem, writeReading } from '../../commands/resolve.js';
import { type Entry, isInput } from '../../core/catalog.js';
import { placesOf } from '../../core/engine.js';
import { corneringLines } from './lines/cornering.js';
import { languageLines } from './lines/language.js';
import { ownLines } from './lines/own.js';
import { hostileLines, phoneLines } from './lines/phone.js';
import { describeReading, expand, itemText } from './reads.js';
import { setting } from './setting.js';

const metric: Setting = { ...setting, preferences: { units: 'metric', decimalMark: ',' } };
const lines = [...phoneLines, ...hostileLines, ...languageLines, ...ownLines, ...corneringLines].map(([line]) => expand(line));
const choicesOf = (got: Reading | Stop): readonly string[] =>
  isStop(got) ? (got.stop === 'asked' ? got.choices.map((choice) => choice.line) : got.line === undefined ? [] : [got.line]) : [];
const plain = (text: string): string => text.replace(/[^ -~]/g, '?');

describe('lines that are offered', () => {
  test.each([setting, metric].map((one) => [one.preferences.units, one] as const))(
    'every choice and every line of a refusal reads without a stop (%s)',
    (_, one) => {
      const bad: string[] = [];
      for (const line of lines)
        for (const choice of choicesOf(read(line, one))) {
          const got = read(choice, one);
          if (isStop(got)) bad.push(`${plain(line.slice(0, 60))} -> ${choice} -> ${got.sentence}`);
        }
      expect(bad).toEqual([]);
    },
  );
  test('at most four choices, which differ', () => {
    for (const line of lines) {
      const got = read(line, setting);
      if (!isStop(got) || got.stop !== 'asked') continue;
      expect(got.choices.length).toBeLessThanOrEqual(4);
      expect(new Set(got.choices.map((choice) => choice.line)).size).toBe(got.choices.length);
    }
  });
  test('a sentence ends, and fits a phone', () => {
    for (const line of lines) {
      const got = read(line, setting);
      if (isStop(got)) expect(got.sentence.length, got.sentence).toBeLessThan(280);
    }
  });
});

const groups = (entry: Entry): readonly (readonly string[])[] => {
  const all = placesOf(entry.scope);
  if (entry.scope === 'corner') return [...all.map((place) => [place]), ['lf', 'rf'], ['lr', 'rr'], ['lf', 'lr'], all];
  return all.length === 1 ? [all] : entry.scope === 'axle' ? [['front'], ['rear'], ['front', 'rear']] : all.map((place) => [place]);
};
const inputs = setting.catalog.entries.filter((entry) => isInput(entry) && entry.words !== undefined);
const itemsOf = (entry: Entry, part: number): readonly Item[] =>
  groups(entry)
    .filter((places) => !(entry.extensive && places.length > 1))
    .map((places): Item => {
      const at = { entry, places, placed: true };
      if (entry.kind === 'choice')
        return { ...at, said: { value: entry.options?.[Math.floor(part * (entry.options.length - 1))] ?? '', text: '' } };
      if (entry.kind === 'designation')
        return { ...at, said: { value: entry.path.startsWith('wheel') ? '17x8 ET35' : '245/40R17', text: '' } };
      const [low, high] = entry.sane ?? [0, 1];
      const value = low + (high - low) * (0.02 + 0.96 * part);
      if (entry.kind === 'quantity') return { ...at, said: { value, text: '' } };
      const [from, to] = entry.saneAlong ?? [0, 1];
      const x = [Math.max(0, from), Math.max(0, from) + (to - Math.max(0, from)) * 0.4, Math.max(0, from) + (to - Math.max(0, from)) * 0.9];
      return { ...at, said: { value: { x, y: [low + (high - low) * 0.1, value, low + (high - low) * 0.9], between: 'line' }, text: '' } };
    });
const near = (a: Item | undefined, b: Item): boolean => {
  const [x, y] = [a?.said?.value, b.said?.value];
  if (typeof x === 'number' && typeof y === 'number') return Math.abs(x - y) <= 1e-9 * Math.max(Math.abs(x), Math.abs(y), 1e-3);
  if (typeof x === 'object' && typeof y === 'object')
    return (
      x.between === y.between &&
      x.x.length === y.x.length &&
      x.x.every((one, n) => Math.abs(one - (y.x[n] ?? 0)) < 1e-9) &&
      x.y.every((one, n) => Math.abs(one / (y.y[n] ?? 0) - 1) < 1e-9)
    );
  return x === y;
};

describe('written and read again', () => {
  test('there are inputs to try', () => expect(inputs.length).toBeGreaterThan(60));
  test.each(inputs.map((entry) => [entry.path, entry] as const))('%s', (_, entry) => {
    for (const one of [setting, metric])
      for (const part of [0, 0.37, 1])
        for (const item of itemsOf(entry, part)) {
          // Conditions are never set: they are told with a question.
          const condition = entry.scope === 'question';
          const line = condition ? `show front ride frequency with ${writeItem(item, one)}` : `set ${writeItem(item, one)}`;
          const got = read(line, one);
          if (isStop(got)) throw new Error(`${line}: ${got.sentence}`);
          const [back, another] = condition ? got.tried : (got.sides[0]?.items ?? []);
          expect(another, line).toBeUndefined();
          expect(back?.entry.path, line).toBe(entry.path);
          expect([...(back?.places ?? [])].sort(), line).toEqual([...item.places].sort());
          expect(near(back, item), `${line}: ${back ? itemText(back) : 'nothing'}`).toBe(true);
        }
  });
  test('every figure with words is reached by them', () => {
    const lost: string[] = [];
    for (const entry of setting.catalog.entries) {
      if (entry.kind !== 'figure' || !entry.words) continue;
      const [place = ''] = placesOf(entry.scope);
      const line = `show ${writeItem({ entry, places: [place], placed: true }, setting)}`;
      const got = read(line, setting);
      const item = isStop(got) ? undefined : got.sides[0]?.items[0];
      if (item?.entry !== entry || item.places.join() !== place) lost.push(`${line}: ${isStop(got) ? got.sentence : item?.entry.path}`);
    }
    expect(lost).toEqual([]);
  });
  test('whole readings', () => {
    const bad: string[] = [];
    let tried = 0;
    for (const line of lines) {
      const got = read(line, setting);
      if (isStop(got) || got.verb === 'calc' || (got.sides.length === 0 && !got.everything) || got.names.length > 0) continue;
      tried++;
      const again = writeReading(got, setting);
      const back = read(again, setting);
      const items = (one: Reading) =>
        JSON.stringify([
          one.sides.map((side) => [side.items.map(itemText), side.subjects]),
          one.goal && itemText(one.goal),
          one.tried.map(itemText).sort(),
          one.against && itemText(one.against),
        ]);
      if (isStop(back)) bad.push(`${plain(line)} -> ${again} -> ${back.sentence}`);
      else if (items(back) !== items(got)) bad.push(`${plain(line)} -> ${again} -> ${items(back)} not ${items(got)}`);
    }
    expect(tried).toBeGreaterThan(150);
    expect(bad).toEqual([]);
  });
  test('curves, evenly and in steps', () => {
    const entry = setting.catalog.entries.find((one) => one.path === 'spring.rates');
    if (!entry) throw new Error('there is a spring curve');
    for (const between of ['line', 'step'] as const)
      for (const x of [
        [0, 0.1016],
        [0, 0.05, 0.1],
      ]) {
        const value = { x, y: x.map((_, n) => 80000 + 20000 * n), between };
        const got = read(`set rear ${curveText(value, entry, setting.preferences)} progressive spring`, setting);
        if (isStop(got)) throw new Error(got.sentence);
        const [item] = got.sides[0]?.items ?? [];
        expect(near(item, { entry, places: ['rear'], placed: true, said: { value, text: '' } }), JSON.stringify(item?.said)).toBe(true);
      }
  });
});

describe('any line at all', () => {
  const words = setting.catalog.entries.flatMap((entry) => entry.words ?? []).flatMap((phrase) => phrase.split(' '));
  const bits = fc.oneof(
    fc.constantFrom(...words),
    fc.constantFrom(
      'set',
      'show',
      'try',
      'find',
      'compare',
      'draw',
      'why',
      'front',
      'rear',
      'lf',
      'rr',
      'with',
      'at',
      'for',
      'vs',
      'from',
      'to',
      'or',
      'and',
      ',',
      '+',
      '?',
      'in',
      '2nd',
      'turnip',
      '@robin',
      'everything',
    ),
    fc.constantFrom(
      '450',
      '450 lb/in',
      '-2',
      '30 psi',
      '2.0 hz',
      '245/40R17',
      '17x8 et35',
      '500-700',
      '500/600',
      '742 699 571 598',
      '99 in',
      '6500',
      '4.10s',
      '54%',
      '±',
      '0',
    ),
    fc.string({ unit: 'binary', maxLength: 6 }),
  );
  test('random text is never a throw', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary', maxLength: 450 }), (line) => {
        const got = read(line, setting);
        expect(typeof got).toBe('object');
      }),
      { numRuns: 300 },
    );
  });
  test('words of the language in any order are read, asked or refused, and what is offered reads', () => {
    fc.assert(
      fc.property(fc.array(bits, { maxLength: 14 }), fc.constantFrom('us', 'metric'), (parts, units) => {
        // The setting itself holds the catalog, which a failure would print.
        const one = units === 'us' ? setting : metric;
        const line = parts.join(' ');
        const got = read(line, one);
        if (isStop(got) && got.stop === 'asked')
          for (const choice of got.choices) expect(isStop(read(choice.line, one)), `${line} -> ${choice.line}`).toBe(false);
      }),
      { numRuns: 300 },
    );
  });
  test('names of the prototype are words that nobody knows', () => {
    for (const word of Object.getOwnPropertyNames(Object.prototype)) {
      expect(isStop(read(word, setting)), word).toBe(true);
      expect(isStop(read(`set ${word} 5`, setting)), word).toBe(true);
      expect(isStop(read(`show front ${word}`, setting)), word).toBe(true);
    }
  });
  test('reading is pure: the same line reads the same', () => {
    const text = (got: Reading | Stop) => (isStop(got) ? JSON.stringify(got) : describeReading(got, setting));
    for (const line of lines) expect(text(read(line, setting))).toBe(text(read(line, setting)));
  });
});

describe('a change is never guessed', () => {
  test.each([
    'set springs 500/600',
    'set camber -2',
    'front 450',
    'set front spring 450 front spring 460',
    'set springs 450',
    'set weights 742 699 571 598',
  ])('%s', (line) => {
    const got = read(line, setting);
    expect(isStop(got) && got.stop).toBe('asked');
  });
  test('a mended change says so', () => {
    const got = read('set front sprnig 450', setting);
    expect(!isStop(got) && got.mended && got.echoes.some((echo) => echo.includes('sprnig'))).toBe(true);
  });
  test('nothing is set twice in one reading', () => {
    for (const line of lines) {
      const got = read(line, setting);
      if (isStop(got)) continue;
      for (const side of got.sides) {
        const paths = side.items
          .filter((item) => item.said !== undefined)
          .flatMap((item) => item.places.map((place) => `${place}.${item.entry.path}`));
        expect(new Set(paths).size, line).toBe(paths.length);
      }
    }
  });
});
describe('units that the member did not say are echoed', () => {
  test.each([
    ['set front spring 450', '450 read as 450 lb/in'],
    ['set wheelbase 2570', '2570 read as 2570 mm'],
    ['set tire pressure 30,5 psi', '30,5 psi read with a decimal comma'],
    ['set front share 54', '54 read as 54%'],
  ])('%s', (line, echo) => {
    const got = read(line, setting);
    expect(isStop(got) ? got.sentence : got.echoes.join('; ')).toContain(echo);
  });
  test('in the member’s system', () => {
    const got = read('set wheelbase 2570', metric);
    expect(!isStop(got) && got.sides[0]?.items[0]?.said?.value).toBeCloseTo(2.57, 9);
    const point = read('set wheelbase 2.570', metric);
    expect(!isStop(point) && point.sides[0]?.items[0]?.said?.value).toBeCloseTo(2.57, 9);
  });
});
