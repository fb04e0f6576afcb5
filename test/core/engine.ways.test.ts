/** One kind of quantity: told, worked out in ways, or both; plain sums without guesses; told results of a car that has changed since. */
import { describe, expect, it } from 'vitest';
import {
  asMeasured,
  carry,
  choice,
  firstOf,
  front,
  given,
  ifTold,
  inverse,
  isInput,
  isRefusal,
  isWorkedOut,
  left,
  maybe,
  quantity,
  type Refusal,
  refine,
  refuse,
  right,
  structure,
  way,
  wheels,
} from '../../core/catalog.js';
import { compile, evaluate, probe, type Situation } from '../../core/engine.js';
import { fact, facts, told } from './small.js';

const source = 'made for this test';
const asked = { measure: 'A made input.', told } as const;

const mass = quantity({ ...asked, path: 'mass', scope: 'corner', name: 'mass', words: ['mass'], dimension: 'mass', sane: [50, 900] });
const spring = quantity({
  ...asked,
  path: 'spring',
  scope: 'axle',
  name: 'spring rate',
  words: ['spring'],
  dimension: 'rate',
  sane: [5e3, 4e5],
});
const ratio = quantity({
  ...asked,
  path: 'ratio',
  scope: 'axle',
  name: 'motion ratio',
  words: ['ratio'],
  dimension: 'ratio',
  sane: [0.3, 1.2],
  ways: [way({ needs: {}, compute: () => 0.8, within: { relative: 0.1 }, sort: 'estimate', source })],
});
const tire = quantity({
  ...asked,
  path: 'tire',
  scope: 'axle',
  name: 'tire rate',
  words: ['tire'],
  dimension: 'rate',
  sane: [1e5, 6e5],
  ways: [way({ needs: {}, compute: () => 2e5, within: { relative: 0.2 }, error: 'common', sort: 'estimate', source })],
});
const rubber = quantity({
  ...asked,
  path: 'rubber',
  scope: 'axle',
  name: 'rubber',
  words: ['rubber'],
  dimension: 'rate',
  sane: [1e4, 1e9],
});
const spacer = quantity({
  ...asked,
  path: 'spacer',
  scope: 'axle',
  name: 'spacer',
  words: ['spacer'],
  dimension: 'length',
  sane: [0, 0.1],
  ways: [way({ needs: {}, compute: () => 0, within: { absolute: 0 }, sort: 'estimate', source })],
});
const { axle: wheelRate, corner: cornerRate } = wheels({
  path: 'wheelRate',
  over: 'mean',
  name: 'wheel rate',
  symbol: 'k',
  words: ['wheel rate'],
  dimension: 'rate',
  sane: [1000, 9e5],
  ways: [
    way({
      needs: { spring, ratio, rubber: refine(rubber, Number.POSITIVE_INFINITY, 'rubber that gives') },
      compute: ({ spring, ratio, rubber }) =>
        ratio > 0 ? (1 / (1 / spring + 1 / rubber)) * ratio ** 2 : refuse('No ratio like that.', 'ratio'),
      source,
      basis: 'spring times ratio squared',
    }),
    way({ needs: { mass }, compute: ({ mass }) => mass * 64, within: { relative: 0.4 }, sort: 'estimate', source }),
  ],
});
const { axle: rideRate, corner: cornerRide } = wheels({
  path: 'rideRate',
  over: 'mean',
  name: 'ride rate',
  symbol: 'k_r',
  words: ['ride rate'],
  dimension: 'rate',
  sane: [1000, 9e5],
  ways: [way({ needs: { wheel: cornerRate, tire }, compute: ({ wheel, tire }) => (wheel * tire) / (wheel + tire), source })],
});
const frequency = quantity({
  path: 'frequency',
  scope: 'corner',
  name: 'frequency',
  symbol: 'f',
  words: ['frequency'],
  dimension: 'frequency',
  sane: [0.1, 9],
  ways: [
    way({ needs: { rate: cornerRide, mass }, compute: ({ rate, mass }) => Math.sqrt(rate / mass), source, basis: 'on springs and tires' }),
    way({ needs: { rate: cornerRate, mass }, compute: ({ rate, mass }) => Math.sqrt(rate / mass), source, basis: 'no tire in it' }),
  ],
});
inverse(cornerRide, {
  needs: { frequency: given(frequency), mass },
  compute: ({ frequency, mass }) => frequency ** 2 * mass,
  source,
  basis: 'from the frequency told',
});
inverse(cornerRate, {
  needs: { ride: given(cornerRide), tire: refine(tire, Number.POSITIVE_INFINITY, 'tires that flex') },
  compute: ({ ride, tire }) =>
    tire > ride ? 1 / (1 / ride - 1 / tire) : refuse('The ride rate is no lower than that of the tire.', 'ride', 'tire'),
  source,
  basis: 'from the ride rate told',
});
/** A part, from a result above it. */
inverse(spring, {
  needs: { rate: given(wheelRate), ratio: given(ratio) },
  compute: ({ rate, ratio }) => rate / ratio ** 2,
  source,
});
const law = structure({
  path: 'law',
  scope: 'corner',
  name: 'law',
  ways: [
    way({ needs: { rate: ifTold(cornerRate) }, compute: ({ rate }) => ({ rate, by: 'told' }), source }),
    way({ needs: { spring, ratio }, compute: ({ spring, ratio }) => ({ rate: spring * ratio ** 2, by: 'spring' }), source }),
  ],
});
const force = quantity({
  path: 'force',
  scope: 'corner',
  name: 'force',
  symbol: 'F',
  dimension: 'force',
  ways: [way({ needs: { law }, compute: ({ law }) => law.rate / 100, source })],
});
const sag = quantity({
  path: 'sag',
  scope: 'axle',
  name: 'sag',
  symbol: 's',
  dimension: 'length',
  ways: [
    way({
      needs: { rate: wheelRate, left: left(mass), right: right(mass), spacer },
      compute: ({ rate, left, right, spacer }) => ((left + right) * 5) / rate - spacer,
      source,
    }),
  ],
});
const height = quantity({
  ...asked,
  path: 'height',
  scope: 'axle',
  name: 'height',
  words: ['height'],
  dimension: 'length',
  sane: [0.05, 1],
  state: true,
});
carry(height, {
  needs: { read: asMeasured(given(height)), sag, before: asMeasured(sag) },
  compute: ({ read, sag, before }) => read - (sag - before),
  source,
});
const modulus = quantity({
  ...asked,
  path: 'modulus',
  scope: 'car',
  name: 'modulus',
  words: ['modulus'],
  dimension: 'stress',
  sane: [1e10, 1e12],
  ways: [way({ needs: {}, compute: () => 8e10, within: { relative: 0.03 }, sort: 'estimate', constant: true, source })],
});
const kind = choice({
  path: 'kind',
  scope: 'car',
  name: 'kind',
  words: ['kind'],
  measure: 'Look.',
  options: ['one', 'other'],
  estimate: { needs: {}, compute: () => 'one' as const, source, guess: true },
});
const all = [
  mass,
  spring,
  ratio,
  tire,
  rubber,
  spacer,
  wheelRate,
  cornerRate,
  rideRate,
  cornerRide,
  frequency,
  law,
  force,
  sag,
  height,
  modulus,
  kind,
];
const catalog = compile(all);
const plainly = (toldFacts: Readonly<Record<string, number>>, ...assume: string[]): Situation => ({
  facts: facts(toldFacts),
  assume: new Set(assume),
});
const number = (value: number | Refusal): number => {
  if (isRefusal(value)) throw new Error(value.refused);
  return value;
};

describe('kinds', () => {
  it('are told, worked out or both; an estimate or an inverse alone does not make a result', () => {
    expect([mass, spring, ratio, tire, height].every(isInput)).toBe(true);
    expect([wheelRate, cornerRate, frequency, force].every(isWorkedOut)).toBe(true);
    expect(() => evaluate(catalog, { facts: facts({ 'lf.force': 1 }) })).toThrow('nothing that can be told is called lf.force');
  });
  it('that are told without a tolerance of their own have that of their dimension; results are states', () => {
    expect(wheelRate.told).toEqual({ usually: 'spec', measured: { relative: 0.03 }, spec: { relative: 0.06 } });
    expect([wheelRate.state, spring.state]).toEqual([true, undefined]);
  });
});

describe('what is typical', () => {
  const spec = { path: 'x', scope: 'car', name: 'x', symbol: 'x', dimension: 'rate' } as const;
  it('is told by kind of car, and as one range for those that show one', () => {
    const road = { for: 'road car', range: [1e4, 3e4], source: 'a handbook' } as const;
    const race = { for: 'race car', range: [5e4, 9e4], source: 'common practice, no source' } as const;
    const it_ = quantity({ ...spec, typical: [road, race] });
    expect(it_.typicals).toEqual([road, race]);
    expect(it_.typical).toEqual({ range: [1e4, 9e4], of: 'road car, race car; a handbook; common practice, no source' });
  });
  it('is told in the older spelling, too', () => {
    const range = [1, 2] as const;
    expect(quantity({ ...spec, typical: { range, of: 'road cars; common practice, no source' } }).typicals).toEqual([
      { for: 'road cars', range, source: 'common practice, no source' },
    ]);
    expect(quantity({ ...spec, typical: { range, of: '3 Hz to 1 Hz' } }).typicals).toEqual([
      { for: '3 Hz to 1 Hz', range, source: 'common practice, no source' },
    ]);
    expect(quantity(spec).typicals).toEqual([]);
  });
});

describe('ways', () => {
  const sprung = { 'front.spring': 50_000, 'front.ratio': 0.9, 'lf.mass': 300, 'rf.mass': 300 };
  it('are tried in their order, and the first whose needs are known is taken', () => {
    const it_ = evaluate(catalog, { facts: facts(sprung) });
    expect(it_.number('lf.corner.wheelRate')).toBeCloseTo(40_500, 6);
    expect(it_.way('lf.corner.wheelRate')?.basis).toBe('spring times ratio squared');
    expect(it_.status('lf.corner.wheelRate')).toBe('computed');
    const bare = evaluate(catalog, { facts: facts({ 'lf.mass': 300 }) });
    expect(bare.number('lf.corner.wheelRate')).toBe(19_200);
    expect(bare.status('lf.corner.wheelRate')).toBe('estimated');
    expect(bare.shares('lf.corner.wheelRate')).toMatchObject([
      { error: 'rule lf.corner.wheelRate', amount: 0.4 * 19_200, evidence: 'rule' },
    ]);
  });
  it('that refuse for a told value end the search: no guess answers instead', () => {
    const it_ = evaluate(catalog, { facts: facts({ 'lf.corner.rideRate': 250_000, 'lf.mass': 300 }) });
    expect(it_.get('lf.corner.wheelRate')).toEqual({
      refused: 'The ride rate is no lower than that of the tire.',
      because: ['lf.corner.rideRate', 'front.tire'],
    });
  });
  it('leave out a refinement that is not known, and say what they count', () => {
    const without = evaluate(catalog, plainly(sprung));
    expect(number(without.number('lf.corner.wheelRate'))).toBeCloseTo(40_500, 6);
    expect(without.basis('lf.corner.wheelRate')).toEqual(['spring times ratio squared alone']);
    const counted = evaluate(catalog, plainly({ ...sprung, 'front.rubber': 50_000 }));
    expect(number(counted.number('lf.corner.wheelRate'))).toBeCloseTo(20_250, 6);
    expect(counted.basis('lf.corner.wheelRate')).toEqual(['spring times ratio squared, rubber that gives']);
  });
});

describe('a plain sum', () => {
  it('makes no guess, and takes the fullest way that runs on what was told', () => {
    const rates = { 'lf.corner.wheelRate': 20_000, 'lf.mass': 300 };
    expect(evaluate(catalog, plainly(rates)).number('lf.frequency')).toBeCloseTo(Math.sqrt(20_000 / 300), 12);
    expect(evaluate(catalog, plainly(rates)).basis('lf.frequency')).toEqual(['no tire in it']);
    expect(evaluate(catalog, { facts: facts(rates) }).basis('lf.frequency')).toEqual(['on springs and tires']);
  });
  it('assumes one thing that is named, at all places or at one', () => {
    const rates = { 'lf.corner.wheelRate': 20_000, 'lf.mass': 300 };
    const tires = Math.sqrt(1 / (1 / 20_000 + 1 / 200_000) / 300);
    expect(evaluate(catalog, plainly(rates, 'tire')).number('lf.frequency')).toBeCloseTo(tires, 12);
    expect(evaluate(catalog, plainly(rates, 'front.tire')).number('lf.frequency')).toBeCloseTo(tires, 12);
    expect(evaluate(catalog, plainly(rates, 'rear.tire')).basis('lf.frequency')).toEqual(['no tire in it']);
  });
  it('keeps conventions and constants, and names what is missing when it was only guessed', () => {
    const it_ = evaluate(catalog, plainly({ 'front.spring': 50_000 }));
    expect([it_.number('front.spacer'), it_.number('modulus')]).toEqual([0, 8e10]);
    expect(it_.get('front.wheelRate')).toEqual({ refused: 'Front wheel rate needs the front motion ratio.', because: ['front.ratio'] });
    expect([it_.status('kind'), evaluate(catalog, { facts: new Map() }).get('kind')]).toEqual(['unknown', 'one']);
  });
});

describe('a told result', () => {
  it('is used for all that reads it, and nothing under it is needed', () => {
    const it_ = evaluate(catalog, plainly({ 'front.rideRate': 30_000, 'lf.mass': 300, 'front.tire': 200_000 }));
    expect(it_.status('front.rideRate')).toBe('told');
    expect(it_.number('lf.frequency')).toBeCloseTo(10, 12);
    expect(it_.number('front.wheelRate')).toBeCloseTo(1 / (1 / 30_000 - 1 / 200_000), 6);
    expect(it_.basis('front.wheelRate')).toEqual(['from the ride rate told, tires that flex']);
  });
  it('of an axle holds for both wheels with one error, and a wheel of its own comes first', () => {
    const it_ = evaluate(catalog, { facts: facts({ 'front.wheelRate': fact(30_000, 900, 'book') }) });
    expect([it_.number('lf.corner.wheelRate'), it_.number('rf.corner.wheelRate')]).toEqual([30_000, 30_000]);
    expect(it_.shares('rf.corner.wheelRate').map(({ error, paths }) => [error, paths])).toEqual([['fact book', ['front.wheelRate']]]);
    const own = evaluate(catalog, { facts: facts({ 'front.wheelRate': 30_000, 'lf.corner.wheelRate': 20_000 }) });
    expect([own.number('lf.corner.wheelRate'), own.number('rf.corner.wheelRate')]).toEqual([20_000, 30_000]);
  });
  it('of both wheels makes the axle', () => {
    const it_ = evaluate(catalog, { facts: facts({ 'lf.corner.wheelRate': 20_000, 'rf.corner.wheelRate': 30_000 }) });
    expect(it_.number('front.wheelRate')).toBe(25_000);
  });
  it('tells a part under it, where the rest of the sum was told too', () => {
    const it_ = evaluate(catalog, { facts: facts({ 'front.wheelRate': 32_000, 'front.ratio': 0.8 }) });
    expect(it_.number('front.spring')).toBeCloseTo(50_000, 6);
    expect(evaluate(catalog, { facts: facts({ 'front.wheelRate': 32_000 }) }).status('front.spring')).toBe('unknown');
  });
  it('is read by structures only where it was told', () => {
    const sprung = { 'front.spring': 50_000, 'front.ratio': 0.9 };
    expect(evaluate(catalog, { facts: facts(sprung) }).get('lf.law')).toMatchObject({ by: 'spring' });
    expect(evaluate(catalog, { facts: facts({ ...sprung, 'front.wheelRate': 1e4 }) }).get('lf.law')).toEqual({ by: 'told', rate: 1e4 });
  });
  it('that is also known otherwise is said, with whether it fits', () => {
    const sprung = { 'front.spring': fact(50_000, 500), 'front.ratio': fact(0.9, 0.009) };
    const near = evaluate(catalog, { facts: facts({ ...sprung, 'front.wheelRate': fact(41_000, 400) }) });
    expect(near.contradicted()).toMatchObject([{ path: 'front.wheelRate', told: 41_000, guessed: false, disagree: false }]);
    expect(near.contradicted()[0]!.worked).toBeCloseTo(40_500, 6);
    const far = evaluate(catalog, { facts: facts({ ...sprung, 'front.wheelRate': fact(45_000, 400) }) });
    expect(far.contradicted()[0]).toMatchObject({ disagree: true });
    // Independent of each other: their half-widths add as squares.
    const { within } = far.contradicted()[0]!;
    expect(within).toBeCloseTo(Math.hypot(400, evaluate(catalog, { facts: facts(sprung) }).within('front.wheelRate')), 6);
  });
});

describe('a told result of a car that has changed since', () => {
  const then = facts({
    'front.spring': fact(50_000, 500, 'old'),
    'front.ratio': fact(0.9, 0.009, 'ratio'),
    'front.wheelRate': fact(38_000, 900, 'rate'),
    'lf.mass': 300,
    'rf.mass': 300,
  });
  const stiffer = new Map(then).set('front.spring', fact(60_000, 600, 'new'));
  it('moves by as much as its ways do, and the error of what did not change counts on the difference alone', () => {
    const it_ = evaluate(catalog, { facts: stiffer, then });
    expect(it_.number('front.wheelRate')).toBeCloseTo(38_000 + 10_000 * 0.81, 6);
    expect(it_.status('front.wheelRate')).toBe('computed');
    expect(it_.way('front.wheelRate')?.basis).toBe('as told, and what has changed since');
    const by = new Map(it_.shares('front.wheelRate').map(({ error, amount }) => [error, amount]));
    expect(by.get('fact rate')).toBeCloseTo(900, 6);
    expect(by.get('fact ratio')).toBeCloseTo(2 * 0.01 * 10_000 * 0.81, 1);
    expect(by.get('fact new')).toBeCloseTo(600 * 0.81, 6);
    expect(by.get('fact old')).toBeCloseTo(-500 * 0.81, 6);
  });
  it('moves what follows from it: wheels, structures, parts', () => {
    const it_ = evaluate(catalog, { facts: stiffer, then });
    expect(it_.number('lf.corner.wheelRate')).toBeCloseTo(46_100, 6);
    expect(it_.get('lf.law')).toMatchObject({ by: 'told', rate: expect.closeTo(46_100, 6) });
    const soft = facts({ 'lf.frequency': fact(9, 0.1, 'f'), 'lf.mass': 300, 'front.tire': fact(2e5, 0, 'old tire') });
    const retired = evaluate(catalog, { facts: new Map(soft).set('front.tire', fact(3e5, 0, 'new tire')), then: soft });
    // The spring is what it was, the tire another: the frequency told was that of the old one.
    const wheel = 1 / (1 / (81 * 300) - 1 / 2e5);
    expect(retired.number('lf.corner.wheelRate')).toBeCloseTo(wheel, 6);
    expect(retired.number('lf.frequency')).toBeCloseTo(Math.sqrt(1 / (1 / wheel + 1 / 3e5) / 300), 9);
  });
  it('is as told while nothing under it has changed', () => {
    const later = new Map(then).set('rear.spring', fact(1e4, 0, 'rear'));
    const it_ = evaluate(catalog, { facts: later, then });
    expect(it_.number('front.wheelRate')).toBe(38_000);
    expect(it_.status('front.wheelRate')).toBe('told');
    expect(it_.within('front.wheelRate')).toBe(900);
    expect(it_.basis('front.wheelRate')).toEqual([]);
    expect(it_.get('lf.law')).toEqual(evaluate(catalog, { facts: then }).get('lf.law'));
  });
  it('is taken as unchanged where nothing under it is known', () => {
    const bare = facts({ 'lf.frequency': fact(9, 0.1, 'f'), 'lf.mass': fact(300, 0, 'm') });
    const loaded = evaluate(catalog, { facts: new Map(bare).set('lf.mass', fact(330, 0, 'loaded')), then: bare });
    const it_ = evaluate(catalog, { facts: bare });
    expect(loaded.number('lf.corner.wheelRate')).toBeCloseTo(number(it_.number('lf.corner.wheelRate')), 6);
    expect(loaded.number('lf.frequency')).toBeCloseTo(9 * Math.sqrt(300 / 330), 9);
  });
  it('holds as it is when it is told again', () => {
    const again = new Map(stiffer).set('front.wheelRate', fact(50_000, 900, 'again'));
    expect(evaluate(catalog, { facts: again, then }).number('front.wheelRate')).toBe(50_000);
  });
  it('is gone when it is forgotten', () => {
    const forgotten = new Map(stiffer);
    forgotten.delete('front.wheelRate');
    expect(evaluate(catalog, { facts: forgotten, then }).number('front.wheelRate')).toBeCloseTo(48_600, 6);
  });
  it('that could not be true then is not answered by a guess now', () => {
    const wrong = facts({ 'lf.corner.rideRate': 250_000, 'lf.mass': 300 });
    const it_ = evaluate(catalog, { facts: new Map(wrong).set('lf.mass', fact(330)), then: wrong });
    expect(it_.get('lf.corner.wheelRate')).toMatchObject({ refused: 'The ride rate is no lower than that of the tire.' });
  });
  it('is carried on as the entry says, where it has no way of its own', () => {
    const measured = facts({ 'front.height': fact(0.3, 0.002, 'h'), 'front.wheelRate': 30_000, 'lf.mass': 300, 'rf.mass': 300 });
    const raised = evaluate(catalog, { facts: new Map(measured).set('front.spacer', fact(0.01)), then: measured });
    expect(evaluate(catalog, { facts: measured }).number('front.height')).toBe(0.3);
    expect(raised.number('front.height')).toBeCloseTo(0.31, 12);
    expect(raised.within('front.height')).toBeCloseTo(0.002, 12);
  });
});

describe('a part that can be worked out as well', () => {
  const wire = quantity({ ...asked, path: 'wire', scope: 'axle', name: 'wire', words: ['wire'], dimension: 'length', sane: [0.005, 0.03] });
  const coil = quantity({
    ...asked,
    path: 'coil',
    scope: 'axle',
    name: 'coil rate',
    words: ['coil'],
    dimension: 'rate',
    sane: [1e3, 9e5],
    part: true,
    ways: [way({ needs: { wire }, compute: ({ wire }) => wire * 5e6, source })],
  });
  const made = compile([wire, coil]);
  it('is an input: told it holds, whatever it could be worked out from has changed since', () => {
    expect([isInput(coil), isWorkedOut(coil), coil.state]).toEqual([true, false, undefined]);
    const then = facts({ 'front.wire': fact(0.01), 'front.coil': fact(40_000) });
    expect(evaluate(made, { facts: new Map(then).set('front.wire', fact(0.02)), then }).number('front.coil')).toBe(40_000);
    expect(evaluate(made, { facts: facts({ 'front.wire': 0.012 }) }).number('front.coil')).toBe(60_000);
    expect(evaluate(made, { facts: facts({ 'front.wire': 0.012 }) }).status('front.coil')).toBe('computed');
  });
  it('is asked for itself, rather than all that it could be worked out from', () => {
    const [a, b] = (['a', 'b'] as const).map((path) =>
      quantity({ ...asked, path, scope: 'axle', name: path, words: [path], dimension: 'rate', sane: [0, 9] }),
    );
    const made = quantity({
      ...asked,
      path: 'made',
      scope: 'axle',
      name: 'made rate',
      words: ['made'],
      dimension: 'rate',
      sane: [0, 9],
      part: true,
      ways: [way({ needs: { a: a!, b: b! }, compute: ({ a, b }) => a * b, source })],
    });
    const twice = quantity({
      path: 'twice',
      scope: 'axle',
      name: 'twice',
      symbol: 't',
      dimension: 'rate',
      ways: [way({ needs: { made }, compute: ({ made }) => 2 * made, source })],
    });
    expect(evaluate(compile([a!, b!, made, twice]), { facts: new Map() }).get('front.twice')).toEqual({
      refused: 'Front twice needs the front made rate.',
      because: ['front.made'],
    });
  });
  it('is asked for by what a guess about it would need, where guesses are made', () => {
    const guessed = quantity({
      ...asked,
      path: 'guessed',
      scope: 'axle',
      name: 'guessed',
      words: ['guessed'],
      dimension: 'mass',
      sane: [0, 9],
      ways: [way({ needs: { wire }, compute: ({ wire }) => wire, within: { relative: 0.1 }, sort: 'estimate', source })],
    });
    const made = compile([wire, guessed]);
    expect(evaluate(made, { facts: new Map() }).get('front.guessed')).toMatchObject({ because: ['front.wire'] });
    expect(evaluate(made, { facts: new Map(), assume: new Set() }).get('front.guessed')).toMatchObject({ because: ['front.guessed'] });
  });
});

describe('what was then', () => {
  const table = structure({
    path: 'table',
    scope: 'axle',
    name: 'table',
    ways: [
      way({ needs: { spring }, compute: ({ spring }) => ({ rate: spring }), source }),
      way({ needs: { rubber }, compute: ({ rubber }) => ({ rate: rubber }), source }),
    ],
  });
  const same = quantity({
    path: 'same',
    scope: 'axle',
    name: 'same',
    symbol: 's',
    dimension: 'ratio',
    ways: [way({ needs: { now: table, then: asMeasured(table) }, compute: ({ now, then }) => (now === then ? 1 : 0), source })],
  });
  const made = compile([...all, table, same]);
  it('is the very thing of now where it takes the same way from the same sources, whatever other ways would have read', () => {
    const then = facts({ 'front.spring': fact(50_000, 500, 's'), 'front.rubber': fact(1e5, 0, 'old') });
    const swapped = new Map(then).set('front.rubber', fact(2e5, 0, 'new'));
    expect(evaluate(made, { facts: swapped, then }).get('front.same')).toBe(1);
    expect(evaluate(made, { facts: new Map(then).set('front.spring', fact(6e4)), then }).get('front.same')).toBe(0);
  });
  it('does not follow any more once a probe has moved what is read now', () => {
    const then = facts({ 'front.spring': fact(50_000, 500, 's'), 'front.rubber': fact(1e5, 0, 'old') });
    const ask = probe(made, { facts: then, then: new Map(then).set('front.rubber', fact(3e5)) }, ['front.spring'], ['front.same']);
    expect([50_000, 60_000, 50_000].map((rate) => ask(rate)[0])).toEqual([0, 0, 0]);
    const rubbers = probe(made, { facts: then, then }, ['front.rubber'], ['front.same']);
    expect([1e5, 2e5].map((rate) => rubbers(rate)[0])).toEqual([1, 1]);
  });
});

describe('facts that say the same thing twice', () => {
  it('are told of the ways of one quantity, too: which was used, and whether the other fits', () => {
    const both = { 'front.spring': fact(50_000, 500, 's'), 'front.ratio': fact(0.9, 0.009, 'r') };
    const rate = quantity({
      path: 'rate',
      scope: 'axle',
      name: 'rate',
      symbol: 'k',
      words: ['made rate'],
      dimension: 'rate',
      sane: [1, 1e6],
      ways: [
        way({ needs: { spring }, compute: ({ spring }) => spring, source }),
        way({ needs: { rubber }, compute: ({ rubber }) => rubber / 2, source }),
      ],
    });
    const made = compile([spring, rubber, rate]);
    const found = (worth: number) =>
      evaluate(made, { facts: facts({ 'front.spring': both['front.spring'], 'front.rubber': fact(worth, 100) }) }).overridden();
    expect(found(100_500)).toEqual([
      {
        figure: 'front.rate',
        used: 'front.spring',
        unused: 'front.rubber',
        facts: ['front.rubber'],
        values: [50_000, 50_250],
        disagree: false,
      },
    ]);
    expect(found(120_000)).toMatchObject([{ disagree: true }]);
    expect(evaluate(made, { facts: facts({ 'front.spring': 50_000 }) }).overridden()).toEqual([]);
  });
});

describe('a catalog for told results', () => {
  it('is compiled once for each set of them, and the last few are kept', () => {
    const one = catalog.telling([wheelRate]);
    expect(catalog.telling([wheelRate, spring])).toBe(one);
    expect(one.telling([])).toBe(one);
    expect(catalog.telling([])).toBe(catalog);
    expect(one.telling([frequency])).toBe(catalog.telling([frequency, wheelRate]));
    expect(evaluate(catalog, { facts: facts({ 'front.wheelRate': 1e4 }) }).catalog).toBe(one);
    expect(one.byPath.has('model.front.wheelRate')).toBe(true);
    expect(catalog.byPath.has('model.front.wheelRate')).toBe(false);
  });
  it('reads a told result, or else something that was not, in two ways, not in one need', () => {
    const wrong = structure({
      path: 'wrong',
      scope: 'axle',
      name: 'wrong',
      needs: { it: firstOf(ifTold(wheelRate), spring) },
      compute: () => ({}),
      source,
    });
    expect(() => compile([...all, wrong], [wheelRate])).toThrow('wrong reads what was told, or else something that was not');
  });
  it('leaves out what may be missing when it was not told', () => {
    const gated = quantity({
      path: 'gated',
      scope: 'car',
      name: 'gated',
      symbol: 'g',
      dimension: 'rate',
      ways: [
        way({
          needs: { told: maybe(front(ifTold(wheelRate))), rate: refine(front(ifTold(wheelRate)), 7) },
          compute: ({ told, rate }) => (told === undefined ? -rate : rate),
          source,
        }),
      ],
    });
    const made = compile([...all, gated]);
    const sprung = { 'front.spring': 50_000, 'front.ratio': 0.9 };
    expect(evaluate(made, { facts: facts(sprung) }).get('gated')).toBe(-7);
    expect(evaluate(made, { facts: facts({ ...sprung, 'rear.wheelRate': 1e4 }) }).get('gated')).toBe(-7);
    expect(evaluate(made, { facts: facts({ ...sprung, 'front.wheelRate': 1e4 }) }).get('gated')).toBe(1e4);
  });
});
