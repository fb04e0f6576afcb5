import { describe, expect, it } from 'vitest';
import { asMeasured, figure, firstOf, front, isRefusal, quantity, type Refusal, rear } from '../../core/catalog.js';
import { compile, evaluate, nameAtAll, placesOf, telling } from '../../core/engine.js';
import { entriesOf } from '../../core/entries.js';
import * as small from './small.js';
import { catalog, fact, facts } from './small.js';

const number = (value: number | Refusal): number => {
  if (isRefusal(value)) throw new Error(value.refused);
  return value;
};
const tub = facts({ mass: 1000, 'front.spring.rate': 50_000, 'rear.spring.rate': 40_000 });

describe('places and turns', () => {
  it('puts an entry at every place of its scope, and reads its own place and those around it', () => {
    expect(placesOf('corner')).toEqual(['lf', 'rf', 'lr', 'rr']);
    expect(placesOf('gear')).toEqual(['1', '2', '3', '4', '5', '6', '7', '8']);
    const it = evaluate(catalog, {
      facts: facts({ mass: 1000, frontShare: 0.6, 'lf.camber': 0.01, 'rf.camber': 0.02, 'lr.camber': 0.03, 'rr.camber': 0.04 }),
    });
    expect(it.get('front.axleMass')).toBe(600);
    expect(it.get('rear.axleMass')).toBe(400);
    // The signs and factors are those of `sideways`: side from the corner, axle from the axle around it.
    expect(['lf', 'rf', 'lr', 'rr'].map((at) => it.get(`${at}.sideways`))).toEqual([0.01, -0.02, 0.3, -0.4]);
  });
  it('composes turns: the front left reading is not the rear right one', () => {
    const it = evaluate(catalog, { facts: facts({ 'lf.scale': 100, 'rf.scale': 200, 'lr.scale': 300, 'rr.scale': 50 }) });
    expect(it.get('massFromScales')).toBe(650);
    const missing = evaluate(catalog, { facts: facts({ 'lf.scale': 100, 'rf.scale': 200, 'lr.scale': 300 }) });
    expect(missing.get('massFromScales')).toMatchObject({ because: ['rr.scale'] });
  });
  it('reads the next gear up, and none above the top', () => {
    const it = evaluate(catalog, { facts: facts({ '2.gear.ratio': 2, '3.gear.ratio': 1.5, '8.gear.ratio': 0.6 }) });
    expect(it.get('2.gear.drop')).toBe(0.75);
    expect(it.get('3.gear.drop')).toEqual({
      refused: 'Drop to the next gear in 3rd needs the gear ratio in 4th.',
      because: ['4.gear.ratio'],
    });
    expect(it.get('8.gear.drop')).toEqual({
      refused: 'There is no gear above the top one for the drop to the next gear in 8th.',
      because: [],
    });
  });
  it('names several places in few words', () => {
    expect(nameAtAll(small.spring, ['front', 'rear'])).toEqual(['front and rear spring rate']);
    expect(nameAtAll(small.camber, ['lf', 'rf', 'lr', 'rr'])).toEqual(['camber at each wheel']);
    expect(nameAtAll(small.camber, ['lr', 'rr'])).toEqual(['camber at both rear wheels']);
    expect(nameAtAll(small.camber, ['lf', 'rr'])).toEqual(['left front camber', 'right rear camber']);
  });
});

describe('compile', () => {
  const spec = { scope: 'car', name: 'x', words: ['x'], dimension: 'ratio', sane: [0, 1], measure: 'x', told: small.told } as const;
  it('refuses two entries of one path, also across a place', () => {
    expect(() => compile([quantity({ ...spec, path: 'x' }), quantity({ ...spec, path: 'x' })])).toThrow('two entries are called x');
    expect(() => compile([quantity({ ...spec, path: 'front.x' }), quantity({ ...spec, path: 'x', scope: 'axle' })])).toThrow('front.x');
    expect(() => entriesOf([{ a: quantity({ ...spec, path: 'x' }) }, { b: quantity({ ...spec, path: 'x' }) }])).toThrow(
      'two entries are called x',
    );
  });
  it('refuses an entry that needs itself', () => {
    const a = figure({
      path: 'a',
      scope: 'car',
      name: 'a',
      symbol: 'a',
      dimension: 'ratio',
      needs: { mass: small.mass },
      compute: () => 1,
      source: 'x',
    });
    const needs: Record<string, typeof a> = { b: a };
    Object.assign(a.ways[0]!, { needs });
    expect(() => compile([a])).toThrow('a needs itself');
  });
  it('orders a subject by its file, and subjects as given', () => {
    const [second, first] = [quantity({ ...spec, path: 'b' }), quantity({ ...spec, path: 'a' })];
    expect(entriesOf([{ a: first, z: second, note: 'text' }, { mass: small.mass }]).map((entry) => entry.path)).toEqual(['b', 'a', 'mass']);
  });
  it('compiles `then` only where something needs it', () => {
    expect(catalog.byPath.has('then.front.sag')).toBe(true);
    expect(catalog.byPath.has('then.front.rollRate')).toBe(false);
  });
  it('knows what depends on what', () => {
    expect(catalog.dependsOn('frequencyRatio', 'rear.spring.rate')).toBe(true);
    expect(catalog.dependsOn('front.frequency', 'rear.spring.rate')).toBe(false);
    expect(catalog.descendants('rear.kind').map((node) => node.path)).toEqual(['rear.kind', 'rear.rollRate']);
  });
});

describe('values', () => {
  it('gives words, curves, structures and parsed designations to computes', () => {
    const it = evaluate(catalog, {
      facts: facts({ 'front.spring.table': fact({ x: [0, 0.1], y: [0, 900], between: 'line' }, 0.1), 'front.tire.size': fact('245x17') }),
    });
    expect(it.get('front.kind')).toBe('independent');
    expect(it.get('front.tire.size')).toEqual({ width: 245, rim: 17 });
    expect(it.get('front.rim')).toBe(17);
    expect(it.get('front.fullForce')).toBe(900);
    // A curve's error scales it whole, through the structure that reads it; the structure kept its own arguments.
    expect(it.within('front.fullForce')).toBeCloseTo(90, 9);
    expect(it.within('front.forceLaw')).toBe(0);
    expect(it.number('front.forceLaw')).toMatchObject({ refused: 'The front force law is not a number.' });
  });
  it('says how each came to be', () => {
    const it = evaluate(catalog, { facts: tub });
    expect(it.status('mass')).toBe('told');
    expect(it.status('front.spring.ratio')).toBe('estimated');
    expect(it.status('front.frequency')).toBe('computed');
    expect(it.status('lf.camber')).toBe('unknown');
    expect(it.status('lf.inverse')).toBe('unknown');
    expect(it.used('totalMass')).toEqual([{ need: 'mass', path: 'mass' }]);
    expect(it.used('front.rollRate')).toEqual([
      { need: 'kind', path: 'front.kind' },
      { need: 'wheel', path: 'front.wheelRate' },
      { need: 'base', path: undefined },
    ]);
    expect(it.used('mass')).toEqual([]);
  });
  it('keeps a told value where there is a rule', () => {
    const it = evaluate(catalog, { facts: facts({ ...Object.fromEntries(tub), 'front.spring.ratio': fact(0.9, 0.01) }) });
    expect(it.get('front.wheelRate')).toBeCloseTo(50_000 * 0.81, 6);
    expect(it.shares('front.wheelRate').map((share) => share.evidence)).toEqual(['measured']);
  });
  it('reads conditions of a question as facts', () => {
    expect(evaluate(catalog, { facts: facts({ mass: 1000, 'road.speed': 10 }) }).get('energy')).toBe(50_000);
  });
});

describe('refusals', () => {
  const bare = evaluate(catalog, { facts: facts({}) });
  it('name the inputs that are missing at the bottom, with their places', () => {
    expect(bare.get('mass')).toEqual({ refused: 'The mass is not known.', because: ['mass'] });
    expect(bare.get('front.frequency')).toEqual({
      refused: 'Front ride frequency needs the mass and the front spring rate.',
      because: ['mass', 'front.spring.rate'],
    });
    expect(bare.get('frequencyRatio')).toEqual({
      refused: 'Frequency ratio needs the mass and the front and rear spring rate.',
      because: ['mass', 'front.spring.rate', 'rear.spring.rate'],
    });
  });
  it('ask for the way that asks least: one mass rather than four readings', () => {
    expect(bare.get('totalMass')).toEqual({ refused: 'Total mass needs the mass.', because: ['mass'] });
  });
  it('pass on what a compute refuses, with what would put it right', () => {
    const it = evaluate(catalog, { facts: facts({ 'front.spring.rate': 50_000, 'front.kind': fact('beam') }) });
    expect(it.get('front.rollRate')).toEqual({
      refused: 'A beam axle rolls on its spring base, which is not known.',
      because: ['front.base'],
    });
    expect(it.number('front.rollRate')).toEqual(it.get('front.rollRate'));
  });
  it('are given for what is not finite', () => {
    const it = evaluate(catalog, { facts: facts({ 'lf.camber': 0 }) });
    expect(it.get('lf.inverse')).toEqual({ refused: 'The inverse of camber has no finite value for this car.', because: ['lf.camber'] });
  });
  it('are given for a designation that cannot be read', () => {
    const it = evaluate(catalog, { facts: facts({ 'front.tire.size': fact('big') }) });
    expect(it.get('front.rim')).toMatchObject({ refused: 'big is no size.' });
  });
  it('say so when a number was not known at the time of measuring', () => {
    const it = evaluate(catalog, {
      facts: facts({ ...Object.fromEntries(tub), 'front.height': 0.3 }),
      then: facts({ mass: 1000, 'front.height': 0.3 }),
    });
    expect(it.get('front.rideHeight')).toEqual({
      refused: 'Front ride height needs the front spring rate as it was when the car was measured.',
      because: ['then.front.spring.rate'],
    });
  });
  it('throw for what nothing can hold: that is the schema that failed', () => {
    expect(() => evaluate(catalog, { facts: facts({ nonsense: 1 }) })).toThrow('nothing that can be told is called nonsense');
    expect(() => evaluate(catalog, { facts: facts({ totalMass: 1 }) })).toThrow('nothing that can be told is called totalMass');
    expect(() => evaluate(catalog, { facts: facts({ mass: fact('heavy') }) })).toThrow('mass is a quantity');
    expect(() => evaluate(catalog, { facts: facts({ mass: Number.NaN }) })).toThrow('mass is a quantity');
    expect(() => evaluate(catalog, { facts: facts({ 'front.kind': fact('sideways') }) })).toThrow('front.kind is a choice');
    expect(() => bare.get('nonsense')).toThrow('nothing in the catalog is called nonsense');
  });
});

describe('plus-or-minus', () => {
  it('takes a told tolerance as the half-width, and adds independent ones as squares', () => {
    const it = evaluate(catalog, { facts: facts({ 'front.spring.rate': fact(50_000, 500), 'front.spring.ratio': fact(0.8, 0.008) }) });
    expect(it.within('front.spring.rate')).toBeCloseTo(500, 9);
    // One part in a hundred each; the ratio counts twice: sqrt(1 + 4) in a hundred.
    expect(it.within('front.wheelRate') / number(it.number('front.wheelRate'))).toBeCloseTo(Math.sqrt(5) / 100, 5);
    expect(it.shares('front.wheelRate').map((share) => share.paths)).toEqual([['front.spring.ratio'], ['front.spring.rate']]);
  });
  it('moves facts of one source together', () => {
    const apart = evaluate(catalog, { facts: facts({ mass: fact(1000, 10, 'a'), frontShare: fact(0.5, 0.005, 'b') }) });
    const together = evaluate(catalog, { facts: facts({ mass: fact(1000, 10, 'a'), frontShare: fact(0.5, 0.005, 'a') }) });
    expect(apart.within('front.axleMass')).toBeCloseTo(Math.hypot(5, 5), 6);
    expect(together.within('front.axleMass')).toBeCloseTo(10, 3);
    // What is left of the product of both errors: 10 kg of 0.005, bent the same way at both ends.
    expect(together.within('rear.axleMass')).toBeCloseTo(Math.sqrt(3) * 0.05, 6);
  });
  it('knows rules that are wrong together from rules that are wrong each for itself', () => {
    const it = evaluate(catalog, { facts: tub });
    expect(it.errors().map(({ error }) => error)).toEqual([
      'rule frontShare',
      'rule front.spring.ratio',
      'rule rear.spring.ratio',
      'rule tire.rate',
    ]);
    expect(it.shares('frequencyRatio').find(({ error }) => error === 'rule tire.rate')?.paths).toEqual([
      'front.tire.rate',
      'rear.tire.rate',
    ]);
    // Both ends move alike, so that the ratio hardly moves.
    expect(Math.abs(it.shares('frequencyRatio').find(({ error }) => error === 'rule tire.rate')!.amount)).toBeLessThan(0.005);
    expect(Math.abs(it.shares('frequencyRatio').find(({ error }) => error === 'rule rear.spring.ratio')!.amount)).toBeGreaterThan(0.05);
  });
  it('takes an absolute width of a rule as it is', () => {
    expect(evaluate(catalog, { facts: tub }).within('frontShare')).toBeCloseTo(0.05, 12);
  });
  it('is 0 for what is told exactly, and for words', () => {
    const it = evaluate(catalog, { facts: tub });
    expect(it.within('mass')).toBe(0);
    expect(it.within('front.kind')).toBe(0);
  });
  it('looks to one side where the other has no value, and is infinite where neither has', () => {
    const edge = figure({
      path: 'edge',
      scope: 'car',
      name: 'edge',
      symbol: 'e',
      dimension: 'mass',
      source: 'x',
      needs: { mass: small.mass },
      compute: ({ mass }) => (mass > 1000 ? Number.NaN : 3 * mass),
    });
    const needle = figure({
      ...edge,
      path: 'needle',
      needs: { mass: small.mass },
      compute: ({ mass }) => (mass === 1000 ? mass : Number.NaN),
      symbol: 'n',
      dimension: 'mass',
      scope: 'car',
      source: 'x',
    });
    const it = evaluate(compile([small.mass, edge, needle]), { facts: facts({ mass: fact(1000, 10) }) });
    expect(it.within('edge')).toBeCloseTo(30, 9);
    expect(it.within('needle')).toBe(Number.POSITIVE_INFINITY);
  });
  describe('where a number is not linear within a doubt', () => {
    /** The half-width of a figure of the mass, told as 1000 kg give or take 10. */
    function widthOf(compute: (mass: number) => number): number {
      const bent = figure({ ...plain, path: 'bent', needs: { mass: small.mass }, compute: ({ mass }) => compute(mass) });
      return evaluate(compile([small.mass, bent]), { facts: facts({ mass: fact(1000, 10) }) }).within('bent');
    }
    const plain = { scope: 'car', name: 'bent', symbol: 'b', dimension: 'mass', source: 'made for this test' } as const;
    it('takes the whole of what happens on one side: a knee at the number, a jump within the doubt', () => {
      expect(widthOf((mass) => 7 * Math.max(0, mass - 1000))).toBeCloseTo(70, 9);
      expect(widthOf((mass) => (mass > 1007 ? 40 : 0))).toBeCloseTo(40, 9);
      expect(widthOf((mass) => (mass > 1011 ? 40 : 0))).toBe(0);
    });
    it('looks halfway too, where the ends differ: a turn in between, an end without a value', () => {
      // Up by 50 at 5, back to 10 at the end; 0 on the other side.
      expect(widthOf((mass) => (mass < 1000 ? 0 : mass <= 1005 ? 10 * (mass - 1000) : 50 - 8 * (mass - 1005)))).toBeCloseTo(50, 9);
      // One side is 3 a kilogram as far as it goes, beyond 1006 there is no value; the other side is 1.
      expect(widthOf((mass) => (mass > 1006 ? Number.NaN : (mass > 1000 ? 3 : 1) * (mass - 1000)))).toBeCloseTo(
        Math.sqrt(20 ** 2 + 3 * 10 ** 2),
        9,
      );
    });
    it('hardly differs from linear where a number is only curved', () => {
      expect(widthOf((mass) => mass ** 2) / (2 * 1000 * 10)).toBeCloseTo(1, 4);
    });
  });
  it('does not change its ways within a doubt: the source that was used stays', () => {
    const shy = figure({
      path: 'shy',
      scope: 'car',
      name: 'shy',
      symbol: 's',
      dimension: 'mass',
      source: 'x',
      needs: { mass: small.mass },
      compute: ({ mass }) => (mass > 1000 ? Number.NaN : mass),
    });
    const other = quantity({
      path: 'other',
      scope: 'car',
      name: 'other',
      dimension: 'mass',
      sane: [0, 9e9],
      words: ['other'],
      measure: 'x',
      told: small.told,
    });
    const either = figure({
      path: 'either',
      scope: 'car',
      name: 'either',
      symbol: 'e',
      dimension: 'mass',
      source: 'x',
      needs: { it: firstOf(shy, other) },
      compute: ({ it }) => it,
    });
    const it = evaluate(compile([small.mass, other, shy, either]), { facts: facts({ mass: fact(1000, 10), other: 5e6 }) });
    expect(it.within('either')).toBeCloseTo(10, 9);
  });
  it('leaves the values as they were', () => {
    const it = evaluate(catalog, { facts: tub });
    const before = catalog.nodes.map((node) => it.get(node.path));
    it.errors();
    expect(catalog.nodes.map((node) => it.get(node.path))).toEqual(before);
  });
});

describe('the car as it was measured', () => {
  const measuredThen = facts({
    mass: fact(1000, 10, 'm'),
    'front.spring.rate': fact(50_000, 500, 'old'),
    'front.height': fact(0.3, 0.002, 'h'),
  });
  it('is the car now when nothing else is said, and its errors cancel', () => {
    const it = evaluate(catalog, { facts: measuredThen });
    expect(it.get('front.rideHeight')).toBe(0.3);
    expect(it.within('front.rideHeight')).toBeCloseTo(0.002, 12);
  });
  it('keeps its facts when the car changes, and what did not change keeps its errors', () => {
    const now = new Map(measuredThen).set('front.spring.rate', fact(60_000, 600, 'new'));
    const it = evaluate(catalog, { facts: now, then: measuredThen });
    const sag = (rate: number): number => (500 * 9.80665) / 2 / (rate * 0.64);
    expect(it.get('front.rideHeight')).toBeCloseTo(0.3 - sag(60_000) + sag(50_000), 12);
    // The motion ratio is one estimate then and now: its error acts on the difference of the sags, not on each.
    const ratio = it.shares('front.rideHeight').find(({ error }) => error === 'rule front.spring.ratio')!;
    expect(Math.abs(ratio.amount)).toBeCloseTo(2 * 0.1 * (sag(50_000) - sag(60_000)), 3);
    expect(it.shares('front.rideHeight').map(({ error }) => error)).toContain('fact old');
    expect(it.get('rear.rideHeight')).toMatchObject({ because: ['rear.spring.rate', 'rear.height'] });
  });
  it('has the same table, also where it was read twice from where it is kept: what it says is compared', () => {
    const table = () => fact({ x: [0, 0.1], y: [0, 900], between: 'line' }, 0.1, 'book');
    const stiffening = figure({
      path: 'stiffening',
      scope: 'axle',
      name: 'stiffening',
      symbol: 's',
      dimension: 'force',
      source: 'x',
      needs: { law: small.forceLaw, before: asMeasured(small.forceLaw), force: small.fullForce },
      compute: ({ law, before, force }) => (law === before ? 0 : force),
    });
    const it = evaluate(compile([...small.all, stiffening]), {
      facts: facts({ 'front.spring.table': table() }),
      then: facts({ 'front.spring.table': table() }),
    });
    expect([it.get('front.stiffening'), it.within('front.stiffening')]).toEqual([0, 0]);
    const other = fact({ x: [0, 0.1], y: [0, 950], between: 'line' }, 0.1, 'book');
    const changed = evaluate(it.catalog, {
      facts: facts({ 'front.spring.table': table() }),
      then: facts({ 'front.spring.table': other }),
    });
    expect(changed.get('front.stiffening')).toBe(900);
  });
  it('follows an estimate that has been told since', () => {
    const now = new Map(measuredThen).set('front.spring.ratio', fact(0.8, 0.001, 'tape'));
    const it = evaluate(catalog, { facts: now, then: measuredThen });
    expect(it.shares('front.rideHeight').map(({ error }) => error)).toContain('rule front.spring.ratio');
    expect(
      evaluate(catalog, { facts: now, then: now })
        .shares('front.rideHeight')
        .map(({ error }) => error),
    ).toEqual(['fact h']);
  });
});

describe('facts that say the same thing twice', () => {
  const plain = { scope: 'car', name: 'made', symbol: 'x', dimension: 'mass', source: 'made for this test' } as const;
  const scales = { 'lf.scale': 250, 'rf.scale': 250, 'lr.scale': 250, 'rr.scale': 250 };
  it('tells which was used, and whether they disagree beyond their doubt', () => {
    const near = evaluate(catalog, { facts: facts({ ...scales, mass: fact(1005, 10) }) });
    expect(near.get('totalMass')).toBe(1000);
    expect(near.overridden()).toEqual([
      { figure: 'totalMass', used: 'massFromScales', unused: 'mass', facts: ['mass'], values: [1000, 1005], disagree: false },
    ]);
    const far = evaluate(catalog, { facts: facts({ ...scales, mass: fact(1050, 10) }) });
    expect(far.overridden()[0]?.disagree).toBe(true);
  });
  it('is silent where the fact serves another figure, or says it of another place', () => {
    const serves = figure({ ...plain, path: 'serves', words: ['serves'], needs: { mass: small.mass }, compute: ({ mass }) => mass });
    const either = figure({
      ...plain,
      path: 'either',
      needs: { end: firstOf(front(small.spring), rear(small.spring)) },
      compute: ({ end }) => end,
    });
    const with_ = compile([...small.all, serves, either]);
    const told = facts({ ...scales, mass: 1050, 'front.spring.rate': 50_000, 'rear.spring.rate': 40_000 });
    expect(evaluate(with_, { facts: told }).overridden()).toEqual([]);
  });
  it('is silent about estimates', () => {
    expect(evaluate(catalog, { facts: facts(scales) }).overridden()).toEqual([]);
    expect(evaluate(catalog, { facts: tub }).overridden()).toEqual([]);
  });
});

describe('telling', () => {
  const spec = {
    scope: 'car',
    name: 'x',
    words: ['x'],
    dimension: 'ratio',
    sane: [0, 1],
    measure: 'x',
    told: small.told,
    instead: 'fuel',
  } as const;
  it('forgets what says the same in another way', () => {
    const two = compile([quantity({ ...spec, path: 'litres' }), quantity({ ...spec, path: 'share' }), small.mass]);
    const told = telling(two, facts({ litres: 0.1, mass: 900 }), 'share', fact(0.5));
    expect([...told.keys()]).toEqual(['mass', 'share']);
  });
});
