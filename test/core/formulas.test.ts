/** Every formula that is printed, computed by mathjs and compared with the function that is run; its dimension derived and compared with the figure's. */
import {
  isConditionalNode,
  isConstantNode,
  isFunctionNode,
  isOperatorNode,
  isParenthesisNode,
  isSymbolNode,
  type MathNode,
  parse,
} from 'mathjs';
import { describe, expect, it } from 'vitest';
import { type AnyWay, type Entry, figure } from '../../core/catalog.js';
import { dimensions } from '../../core/dimensions.js';
import { type Catalog, evaluate } from '../../core/engine.js';
import { catalog } from '../../core/stubaxle.js';
import { type Random, randomCar, seeded } from './cars.js';
import * as small from './small.js';

const standardGravity = 9.80665; // m/s^2, exact by definition (BIPM SI brochure)
const comparisons = 20;
const tries = 4000;

/** Values that the needs of a figure have had in random cars. */
type Pools = ReadonlyMap<Entry, readonly unknown[]>;
function poolsOf(from: Catalog, cars: number): Pools {
  const pools = new Map<Entry, unknown[]>();
  for (let car = 0; car < cars; car++) {
    const it = evaluate(from, randomCar(from, 7000 + car));
    for (const node of from.nodes) {
      if (it.status(node.path) === 'unknown') continue;
      const pool = pools.get(node.entry) ?? [];
      pool.push(it.get(node.path));
      pools.set(node.entry, pool);
    }
  }
  return pools;
}
const oneOf = (list: readonly unknown[], random: Random): unknown => list[Math.floor(random() * list.length)];

/** Arguments for a way, each need from any car in which it, or another source of it, had a value: not one car, so that nothing cancels. */
function argumentsFor({ needs }: AnyWay, pools: Pools, random: Random): Record<string, unknown> {
  return Object.fromEntries(
    Object.entries(needs).map(([key, need]) => {
      const values = need.terms.flatMap((term) => pools.get(term.entry) ?? []);
      return [key, 'absent' in need && (values.length === 0 || random() < 0.2) ? need.absent : oneOf(values, random)];
    }),
  );
}

/** A way to work out an entry. */
interface Worked {
  readonly entry: Entry;
  readonly way: AnyWay;
}
const waysOf = (entry: Entry): readonly Worked[] => entry.ways.map((way) => ({ entry, way }));

/** How often the formula and the function were compared, and the first time they differed. */
function compare({ entry, way }: Worked, pools: Pools): { compared: number; differs?: string } {
  const random = seeded(entry.path.length);
  const formula = parse(way.formula!).compile();
  let compared = 0;
  for (let n = 0; n < tries && compared < comparisons; n++) {
    const given = argumentsFor(way, pools, random);
    const expected = way.compute(given);
    if (typeof expected !== 'number' || !Number.isFinite(expected)) continue;
    const got: unknown = formula.evaluate({ g: standardGravity, ...given });
    compared++;
    const scale = Math.max(Math.abs(expected), 1e-300);
    if (typeof got !== 'number' || Math.abs(got - expected) > 1e-9 * scale) {
      return {
        compared,
        differs: `${entry.path}: ${way.formula} is ${got}, the function gives ${expected}, for ${JSON.stringify(given)}`,
      };
    }
  }
  return { compared };
}

/** Exponents of kilogram, metre, second and kelvin; or a plain number, which has none and fits as 0 to all. */
type Base = readonly number[];
const plain: Base = [0, 0, 0, 0];
const same = (a: Base, b: Base): boolean => a.every((exponent, n) => Math.abs(exponent - b[n]!) < 1e-12);
const plainOnly = new Set(['sin', 'cos', 'tan', 'asin', 'acos', 'atan', 'exp', 'log', 'log10']);
const keeping = new Set(['abs', 'min', 'max', 'hypot', 'unaryMinus', 'unaryPlus', 'add', 'subtract']);

function must(fits: boolean, node: MathNode): void {
  if (!fits) throw new Error(`the dimensions in "${node.toString()}" do not fit`);
}
function baseOf(node: MathNode, names: ReadonlyMap<string, Base>): Base {
  const of = (other: MathNode): Base => baseOf(other, names);
  if (isParenthesisNode(node)) return of(node.content);
  if (isConstantNode(node)) return plain;
  if (isConditionalNode(node)) {
    of(node.condition);
    const [yes, no] = [of(node.trueExpr), of(node.falseExpr)];
    must(same(yes, no), node);
    return yes;
  }
  if (isSymbolNode(node)) {
    const base = names.get(node.name);
    if (!base) throw new Error(`${node.name} is not a need`);
    return base;
  }
  if (isOperatorNode(node)) return ofCall(node.fn, node.args);
  if (isFunctionNode(node)) return ofCall(node.fn.name, node.args);
  throw new Error(`the test does not know the dimension of a ${node.type}`);

  function ofCall(name: string, args: readonly MathNode[]): Base {
    const bases = args.map(of);
    const [a = plain, b = plain] = bases;
    if (name === 'multiply') return a.map((exponent, n) => exponent + b[n]!);
    if (name === 'divide') return a.map((exponent, n) => exponent - b[n]!);
    if (name === 'sqrt') return a.map((exponent) => exponent / 2);
    if (name === 'square') return a.map((exponent) => exponent * 2);
    if (name === 'pow') {
      must(same(b, plain), node);
      if (same(a, plain)) return plain;
      const power: unknown = args[1]!.evaluate();
      if (typeof power !== 'number') throw new Error(`"${node.toString()}" is a power that is no number`);
      return a.map((exponent) => exponent * power);
    }
    if (name === 'atan2') {
      must(same(a, b), node);
      return plain;
    }
    if (plainOnly.has(name)) {
      must(same(a, plain), node);
      return plain;
    }
    if (keeping.has(name) || ['smaller', 'larger', 'smallerEq', 'largerEq', 'equal'].includes(name)) {
      // A bare 0 is nothing of any dimension.
      const counted = bases.filter((_, n) => args[n]!.toString() !== '0');
      must(
        counted.every((base) => same(base, counted[0]!)),
        node,
      );
      return keeping.has(name) ? (counted[0] ?? plain) : plain;
    }
    throw new Error(`the test does not know the dimension of ${name}`);
  }
}

/** What is wrong with the dimension of a formula, or nothing. */
function wrongDimension({ entry, way }: Worked): string | undefined {
  const names = new Map<string, Base>([
    ['g', dimensions.acceleration.base],
    ['pi', plain],
    ['e', plain],
  ]);
  for (const [key, need] of Object.entries(way.needs)) {
    const bases = need.terms.flatMap(({ entry: of }) => (of.dimension ? [dimensions[of.dimension].base] : []));
    if (bases.some((base) => !same(base, bases[0]!))) return `${entry.path}: the sources of ${key} differ in dimension`;
    if (bases[0]) names.set(key, bases[0]);
  }
  try {
    const base = baseOf(parse(way.formula!), names);
    return same(base, dimensions[entry.dimension!].base)
      ? undefined
      : `${entry.path}: ${way.formula} has the dimension ${base}, not that of ${entry.dimension}`;
  } catch (failure) {
    return `${entry.path}: ${failure instanceof Error ? failure.message : failure}`;
  }
}

const withFormula = catalog.entries.flatMap(waysOf).filter(({ way }) => way.formula);
const pools = poolsOf(catalog, 300);

describe('formulas', () => {
  it('are there to be compared', () => {
    expect(withFormula.length).toBeGreaterThan(100);
  });
  for (const worked of withFormula) {
    const { entry, way } = worked;
    it(`${entry.path} = ${way.formula}, way ${entry.ways.indexOf(way) + 1}`, () => {
      const { compared, differs } = compare(worked, pools);
      expect(differs).toBeUndefined();
      expect(compared, 'random cars in which the figure has a value').toBe(comparisons);
      expect(wrongDimension(worked)).toBeUndefined();
    });
  }
});

describe('the comparison itself', () => {
  const spec = {
    scope: 'axle',
    name: 'x',
    symbol: 'x',
    source: 'made for this test',
    needs: { spring: small.spring, ratio: small.ratio, mass: small.mass },
  } as const;
  const made = poolsOf(small.catalog, 20);
  it('finds a formula that is not the function', () => {
    const right = figure({
      ...spec,
      path: 'a',
      dimension: 'rate',
      compute: ({ spring, ratio }) => spring * ratio ** 2,
      formula: 'spring * ratio^2',
    });
    const wrong = figure({
      ...spec,
      path: 'b',
      dimension: 'rate',
      compute: ({ spring, ratio }) => spring * ratio ** 2,
      formula: 'spring * ratio',
    });
    expect(compare(waysOf(right)[0]!, made)).toEqual({ compared: comparisons });
    expect(compare(waysOf(wrong)[0]!, made).differs).toContain('spring * ratio is');
  });
  it("finds a dimension that is not the figure's", () => {
    const of = (formula: string, dimension: Entry['dimension'] & string): string | undefined =>
      wrongDimension(waysOf(figure({ ...spec, path: 'c', dimension, compute: () => 1, formula }))[0]!);
    expect(of('spring * ratio^2', 'rate')).toBeUndefined();
    expect(of('sqrt(2 * spring / mass) / (2 * pi)', 'frequency')).toBeUndefined();
    expect(of('mass * g / spring', 'length')).toBeUndefined();
    expect(of('atan(ratio) + (mass > 0 ? 1 : 2)', 'angle')).toBeUndefined();
    expect(of('spring * ratio^2', 'force')).toContain('not that of force');
    expect(of('spring + mass', 'rate')).toContain('do not fit');
    expect(of('sin(mass)', 'ratio')).toContain('do not fit');
    expect(of('spring * nonsense', 'rate')).toContain('nonsense is not a need');
    expect(of('mass > spring ? 1 : 2', 'ratio')).toContain('do not fit');
  });
});
