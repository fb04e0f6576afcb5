import fc from 'fast-check';
import { expect, test } from 'vitest';
import { FactsRefused, factsFormat, format } from '../../../commands/records/facts.js';
import type { Fact, Facts } from '../../../core/car.js';
import { canBeTold, choice, curve, designation, figure, isNumeric, quantity, refuse, type Value } from '../../../core/catalog.js';
import { placesOf } from '../../../core/engine/places.js';
import { catalog } from '../../../core/stubaxle.js';

const told = { usually: 'spec', measured: { relative: 0.01 }, spec: { relative: 0.05 } } as const;
const common = { words: ['x'], measure: 'Look.' } as const;
const rate = quantity({ ...common, path: 'rate', scope: 'axle', name: 'rate', dimension: 'rate', sane: [1, 1e6], told });
const driven = choice({ ...common, path: 'driven', scope: 'car', name: 'driven', options: ['front', 'rear'] });
const force = curve({
  ...common,
  path: 'force',
  scope: 'corner',
  name: 'force',
  dimension: 'force',
  along: 'length',
  sane: [0, 1e6],
  saneAlong: [0, 1],
  told,
});
const size = designation({
  ...common,
  path: 'size',
  scope: 'axle',
  name: 'size',
  parse: (text) => (/^\d+\/\d+R\d+$/.test(text) ? { text } : refuse(`"${text}" is not a size.`)),
  write: (it: { text: string }) => it.text,
});
const speed = quantity({ ...common, path: 'speed', scope: 'question', name: 'speed', dimension: 'speed', sane: [0, 100], told });
const double = figure({
  path: 'double',
  scope: 'axle',
  name: 'double',
  symbol: 'd',
  dimension: 'rate',
  needs: { rate },
  compute: (it) => it.rate * 2,
  source: 'arithmetic',
});
const small = factsFormat([rate, driven, force, size, speed, double]);
const fact = (value: Value, within = 0): Fact => ({ value, within, evidence: 'spec', source: 'the box' });
const one = (path: string, value: Value): Facts => new Map([[path, fact(value)]]);
/** What a wrongly typed caller would hand over. */
const given = (object: object): string => JSON.stringify(object);

test('all kinds of value come back as they were, at every place', () => {
  const facts: Facts = new Map([
    ['front.rate', fact(78806.3123456789, 1576.5)],
    ['rear.rate', fact(1 / 3)],
    ['driven', fact('rear')],
    ['lf.force', fact({ x: [0, 0.05, 0.1], y: [0, 4000, 9000.5], between: 'line' }, 0.05)],
    ['rear.size', fact('245/40R17')],
  ]);
  expect(small.read(small.write(facts))).toEqual(facts);
  expect(small.read(small.write(new Map()))).toEqual(new Map());
});

test('a fact that was told says by whom, when and in which event, and what has its source from that event is stored without repeating it', () => {
  const told = { at: 1_800_000_000_000, by: '@robin:example.org', cause: '$told' };
  const facts: Facts = new Map([
    ['front.rate', { ...fact(500), source: '$told#0.1', told }],
    ['rear.rate', { ...fact(400), source: '#of another shape', told }],
    ['driven', { ...fact('rear'), source: '$other#0.1', told }],
  ]);
  expect(small.write(new Map([...facts].slice(0, 1)))).toBe('{"front.rate":[500,0,"s","#0.1",1800000000000,"@robin:example.org","$told"]}');
  expect(small.read(small.write(facts))).toEqual(facts);
});

test('a fact of version 0.1.1 is read: who told it is not known', () => {
  expect(small.read('{"front.rate":[500,0,"s","the box"]}').get('front.rate')).toEqual(fact(500));
});

test('a fact is stored in a few characters more than it has', () => {
  expect(small.write(one('front.rate', 78806.3))).toBe('{"front.rate":[78806.3,0,"s","the box"]}');
});

test.each([
  ['front.rates', 500, '"front.rates" is not a fact that can be recorded of a car.'],
  ['rate', 500, '"rate" is not a fact that can be recorded of a car.'],
  ['lf.rate', 500, '"lf.rate" is not a fact that can be recorded of a car.'],
  ['front.double', 500, '"front.double" is not a fact that can be recorded of a car.'],
  ['speed', 20, '"speed" is not a fact that can be recorded of a car.'],
  ['__proto__', 20, '"__proto__" is not a fact that can be recorded of a car.'],
  ['front.rate', 'stiff', 'front.rate wants a number, and "stiff" came.'],
  ['front.rate', Number.NaN, 'front.rate wants a number, and NaN came.'],
  ['front.rate', Number.POSITIVE_INFINITY, 'front.rate wants a number, and Infinity came.'],
  ['driven', 'both', 'driven wants one of front, rear, and "both" came.'],
  ['driven', 2, 'driven wants one of front, rear, and 2 came.'],
  ['front.size', 'wide', 'front.size wants a text that it can read, and "wide" came.'],
  ['lf.force', 3, 'lf.force wants a table whose first column rises, and 3 came.'],
  ['lf.force', { x: [0, 0], y: [1, 2], between: 'line' }, 'lf.force wants a table whose first column rises, and something else came.'],
  ['lf.force', { x: [0, 1], y: [1], between: 'line' }, 'lf.force wants a table whose first column rises, and something else came.'],
] as const)('%s of %j is refused with a sentence', (path, value, sentence) => {
  let refused: unknown;
  try {
    small.write(one(path, value));
  } catch (problem) {
    refused = problem;
  }
  expect(refused).toBeInstanceOf(FactsRefused);
  expect(refused).toMatchObject({ message: sentence });
});

test.each([[-1], [Number.NaN]])('a half-width of %d is refused', (within) => {
  expect(() => small.write(new Map([['front.rate', fact(500, within)]]))).toThrow('front.rate came without how well it is known');
});

test.each([
  [given({ 'front.rate': [500, 0, 'x', 'the box'] })],
  [given({ 'front.rate': [500, 0, 's'] })],
  [given({ 'front.rate': [500, 0, 's', 'the box', 1] })],
  [given({ 'front.rate': [500, 0, 's', 'the box', 1, 'robin'] })],
  [given({ 'front.rate': 500 })],
  [given({ 'front.rate': ['500', 0, 's', 'the box'] })],
  [given({ gone: [500, 0, 's', 'the box'] })],
  [given([1, 2])],
  ['null'],
])('what the store could not have written is not read: %s', (text) => {
  expect(() => small.read(text)).toThrow(FactsRefused);
});

test('every input of the real catalog has its place, and nothing else has', () => {
  const saved = catalog.entries.filter((entry) => canBeTold(entry) && entry.scope !== 'question');
  expect(saved.length).toBeGreaterThan(40);
  for (const entry of catalog.entries) {
    const place = placesOf(entry.scope)[0] ?? '';
    const path = place === '' ? entry.path : `${place}.${entry.path}`;
    // A table is never a quantity's, and a number never anything else's: the sentence tells whether the path is known.
    const wrong: Value = isNumeric(entry) ? 'much' : 1;
    const sentence = saved.includes(entry) ? `${path} wants` : `"${path}" is not a fact`;
    expect(() => format.write(one(path, wrong)), path).toThrow(sentence);
  }
});

const finite = fc.double({ noNaN: true, noDefaultInfinity: true }).map((n) => (Object.is(n, -0) ? 0 : n));
const table = fc.uniqueArray(finite, { minLength: 1, maxLength: 6 }).chain((x) =>
  fc.record({
    x: fc.constant(x.toSorted((a, b) => a - b)),
    y: fc.array(finite, { minLength: x.length, maxLength: x.length }),
    between: fc.constantFrom('line', 'step'),
  }),
);
const someFact = (value: fc.Arbitrary<Value>): fc.Arbitrary<Fact> =>
  fc
    .record({
      value,
      within: finite.map(Math.abs),
      evidence: fc.constantFrom('measured', 'spec', 'estimated'),
      source: fc.oneof(fc.string({ maxLength: 100 }), fc.constantFrom('$e#1.2', '#1', '##', '$e#', '$e')),
      told: fc.option(fc.record({ at: fc.nat(), by: fc.string(), cause: fc.constantFrom('$e', '', '#') }), { nil: undefined }),
    })
    .map(({ told, ...known }) => (told === undefined ? known : { ...known, told }));

test('property: whatever the real catalog can record comes back bit for bit', () => {
  const arbitraries: Record<string, fc.Arbitrary<Fact>> = {};
  for (const { entry, path, then, layer } of catalog.nodes) {
    if (then || layer !== 'best' || entry.scope === 'question' || !canBeTold(entry)) continue;
    if (isNumeric(entry)) arbitraries[path] = someFact(finite);
    if (entry.kind === 'curve') arbitraries[path] = someFact(table);
    if (entry.kind === 'choice') arbitraries[path] = someFact(fc.constantFrom(...(entry.options ?? [])));
  }
  fc.assert(
    fc.property(fc.record(arbitraries, { requiredKeys: [] }), (object) => {
      const facts: Facts = new Map(Object.entries(object).flatMap(([path, one]) => (one === undefined ? [] : [[path, one]])));
      expect(format.read(format.write(facts))).toEqual(facts);
    }),
    { numRuns: 60 },
  );
});
