/**
 * Sums for the property test, with what they come to by other means: trees are made first, worked out here by plain arithmetic on the factors of our table
 * (which another test compares with mathjs's units), each ambiguous unit tried in all its meanings, and only then written as a line.
 */
import fc from 'fast-check';
import { type Meaning, meaningsOf, spellings } from '../../../commands/units.js';
import { type Dimension, dimensions } from '../../../core/dimensions.js';

export type Tree =
  | { readonly is: 'number'; readonly text: string; readonly value: number }
  | { readonly is: 'quantity'; readonly text: string; readonly value: number; readonly unit: string }
  | { readonly is: 'negative'; readonly of: Tree }
  | { readonly is: 'operation'; readonly operator: '+' | '-' | '*' | '/' | '^'; readonly a: Tree; readonly b: Tree }
  | { readonly is: 'call'; readonly name: string; readonly given: readonly Tree[] };

export interface Possible {
  readonly value: number;
  /** Kilogram, metre, second, kelvin, radian. */
  readonly base: readonly number[];
  /** How large what it is a difference of was, for the tolerance. */
  readonly scale: number;
}
const none = [0, 0, 0, 0, 0];
/** Powers of the radian, by hand: the SI counts none, `core/dimensions.ts` neither. */
const radians: Partial<Record<Dimension, number>> = { angle: 1, angularSpeed: 1, rollStiffness: -1 };
export const baseOf = (dimension: Dimension): readonly number[] => [...dimensions[dimension].base, radians[dimension] ?? 0];
export const same = (a: readonly number[], b: readonly number[]): boolean => a.every((x, at) => Math.abs(x - (b[at] ?? 0)) < 1e-9);
const isPlain = ({ base }: Possible): boolean => same(base, none);
const plus = (a: readonly number[], b: readonly number[], sign: number): number[] => a.map((x, at) => x + sign * (b[at] ?? 0));

const onPlain: Readonly<Record<string, (x: number) => number>> = {
  exp: Math.exp,
  log: Math.log,
  log2: Math.log2,
  log10: Math.log10,
  ceil: Math.ceil,
  floor: Math.floor,
  sign: Math.sign,
  round: (x) => Math.sign(x) * Math.round(Math.abs(x)),
};
const onAngle: Readonly<Record<string, (x: number) => number>> = { sin: Math.sin, cos: Math.cos, tan: Math.tan };
const toAngle: Readonly<Record<string, (x: number) => number>> = { asin: Math.asin, acos: Math.acos, atan: Math.atan };
const onAlike: Readonly<Record<string, (all: readonly number[]) => number>> = {
  min: (all) => Math.min(...all),
  max: (all) => Math.max(...all),
  sum: (all) => all.reduce((a, b) => a + b, 0),
  mean: (all) => all.reduce((a, b) => a + b, 0) / all.length,
  median: (all) => {
    const sorted = [...all].sort((a, b) => a - b);
    return (sorted[Math.floor((sorted.length - 1) / 2)]! + sorted[Math.ceil((sorted.length - 1) / 2)]!) / 2;
  },
  hypot: (all) => Math.sqrt(all.reduce((a, b) => a + b * b, 0)),
};
export const functionNames = [
  ...Object.keys(onPlain),
  ...Object.keys(onAngle),
  ...Object.keys(toAngle),
  ...Object.keys(onAlike),
  ...['abs', 'sqrt', 'cbrt', 'atan2'],
];

function operated(operator: string, x: Possible, y: Possible): Possible[] {
  switch (operator) {
    case '+':
    case '-': {
      if (!same(x.base, y.base)) return [];
      return [{ value: operator === '+' ? x.value + y.value : x.value - y.value, base: x.base, scale: x.scale + y.scale }];
    }
    case '*':
      return [{ value: x.value * y.value, base: plus(x.base, y.base, 1), scale: x.scale * y.scale }];
    case '/':
      return [{ value: x.value / y.value, base: plus(x.base, y.base, -1), scale: x.scale / Math.abs(y.value) }];
    default: {
      const value = x.value ** y.value;
      return isPlain(y) ? [{ value, base: x.base.map((one) => one * y.value), scale: x.scale ** y.value }] : [];
    }
  }
}
function called(name: string, given: readonly Possible[]): Possible[] {
  const [x, y] = given;
  if (!x) return [];
  const made = (value: number, base: readonly number[] = none, scale = 0): Possible[] => [
    { value, base, scale: Math.max(Math.abs(value), scale) },
  ];
  if (name in onPlain) {
    // Where a step is, the last digit decides.
    const atStep =
      /^(?:ceil|floor|round|sign)$/.test(name) && Math.abs(x.value * 2 - Math.round(x.value * 2)) <= 1e-9 * Math.max(1, x.scale);
    const value = onPlain[name]!(x.value);
    return isPlain(x) ? made(value, none, atStep ? Number.POSITIVE_INFINITY : name === 'exp' ? Math.abs(value) * x.scale : 1) : [];
  }
  if (name in onAngle) return isPlain(x) || same(x.base, baseOf('angle')) ? made(onAngle[name]!(x.value), none, x.scale) : [];
  if (name in toAngle) return isPlain(x) ? made(toAngle[name]!(x.value), baseOf('angle')) : [];
  if (name === 'abs') return made(Math.abs(x.value), x.base);
  if (name === 'sqrt' || name === 'cbrt') {
    const by = name === 'sqrt' ? 1 / 2 : 1 / 3;
    return made(
      name === 'sqrt' ? Math.sqrt(x.value) : Math.cbrt(x.value),
      x.base.map((one) => one * by),
    );
  }
  if (!given.every((one) => same(one.base, x.base))) return [];
  if (name === 'atan2') return y ? made(Math.atan2(x.value, y.value), baseOf('angle')) : [];
  return made(onAlike[name]!(given.map(({ value }) => value)), x.base);
}
/**
 * All that a tree can come to; none where it makes no sense. Not finite where it has no answer.
 * @param countsRadians - else an angle is a plain number, as in the SI
 */
export function worked(tree: Tree, countsRadians: boolean): Possible[] {
  const worked = (part: Tree): Possible[] =>
    parts(part, worked).map((one) => (countsRadians ? one : { ...one, base: [...one.base.slice(0, 4), 0] }));
  return worked(tree);
}
function parts(tree: Tree, worked: (part: Tree) => Possible[]): Possible[] {
  switch (tree.is) {
    case 'number':
      return [{ value: tree.value, base: none, scale: Math.abs(tree.value) }];
    case 'quantity':
      return meaningsOf(tree.unit).map(({ dimension, unit }) => {
        const value = tree.value * unit.factor;
        return { value, base: baseOf(dimension), scale: Math.abs(value) };
      });
    case 'negative':
      return worked(tree.of).map((one) => ({ ...one, value: -one.value }));
    case 'operation': {
      const b = worked(tree.b);
      return worked(tree.a).flatMap((x) => b.flatMap((y) => operated(tree.operator, x, y)));
    }
    case 'call': {
      const all = tree.given.map(worked).reduce<Possible[][]>((ways, one) => ways.flatMap((way) => one.map((p) => [...way, p])), [[]]);
      return all.flatMap((given) => called(tree.name, given));
    }
  }
}

const someUnit = (tree: Tree, is: (meaning: Meaning) => boolean): boolean => {
  switch (tree.is) {
    case 'number':
      return false;
    case 'quantity':
      return meaningsOf(tree.unit).some(is);
    case 'negative':
      return someUnit(tree.of, is);
    case 'operation':
      return someUnit(tree.a, is) || someUnit(tree.b, is);
    case 'call':
      return tree.given.some((one) => someUnit(one, is));
  }
};
/** Whether a place on a scale goes into it, or a percentage: then only tests of their own know the right answer. */
export const isSpecial = (tree: Tree): boolean =>
  someUnit(tree, ({ dimension, unit }) => dimension === 'temperature' || unit.offset !== undefined || unit.shown === '%');
/** Whether radians come and go in it. */
export const isAngled = (tree: Tree): boolean =>
  (tree.is === 'call' && tree.name in toAngle) ||
  (tree.is === 'call' && (tree.name === 'atan2' || tree.given.some(isAngled))) ||
  (tree.is === 'operation' && (isAngled(tree.a) || isAngled(tree.b))) ||
  (tree.is === 'negative' && isAngled(tree.of)) ||
  someUnit(tree, ({ dimension }) => radians[dimension] !== undefined);

/** How tightly a part holds together, so that brackets stand only where they must. A quantity is a product of its number and its unit. */
function strength(tree: Tree): number {
  if (tree.is === 'operation') return { '+': 1, '-': 1, '*': 2, '/': 2, '^': 4 }[tree.operator];
  if (tree.is === 'negative') return 1;
  return tree.is === 'quantity' ? 3 : 5;
}
const within = (tree: Tree, least: number): string => (strength(tree) < least ? `(${line(tree)})` : line(tree));
/** The tree as a member would type it. */
export function line(tree: Tree): string {
  switch (tree.is) {
    case 'number':
      return tree.text;
    case 'quantity':
      return tree.text;
    case 'negative':
      return `-${within(tree.of, 4)}`;
    case 'operation': {
      const own = strength(tree);
      // What is subtracted, divided by or raised stands in brackets when it holds no tighter.
      return `${within(tree.a, own === 4 ? 5 : own)} ${tree.operator} ${within(tree.b, own === 4 ? 5 : own + 1)}`;
    }
    case 'call':
      return `${tree.name}(${tree.given.map(line).join(', ')})`;
  }
}

const numbers: fc.Arbitrary<{ readonly text: string; readonly value: number }> = fc.oneof(
  fc.integer({ min: 0, max: 999 }).map((value) => ({ text: String(value), value })),
  fc.integer({ min: 1, max: 99_999 }).map((value) => ({ text: String(value / 100), value: value / 100 })),
  fc.integer({ min: 1000, max: 999_999 }).map((value) => ({ text: String(value).replace(/\B(?=(\d{3})+$)/g, ','), value })),
  fc.integer({ min: 1000, max: 99_999 }).map((value) => ({ text: String(value).replace(/\B(?=(\d{3})+$)/g, ' '), value })),
  fc
    .tuple(fc.integer({ min: 1, max: 99 }), fc.integer({ min: -6, max: 6 }))
    .map(([m, e]) => ({ text: `${m}e${e}`, value: Number(`${m}e${e}`) })),
  fc.constantFrom(
    { text: '1/2', value: 0.5 },
    { text: '3/8', value: 0.375 },
    { text: '9 1/2', value: 9.5 },
    { text: '9½', value: 9.5 },
    { text: '.5', value: 0.5 },
  ),
);
const isWord = (spelling: string): boolean => /^[\p{L}%°"'#/:]/u.test(spelling);
const quantity = (unit: string): fc.Arbitrary<Tree> =>
  fc.tuple(numbers, fc.boolean()).map(([{ text, value }, apart]): Tree => {
    const space = apart || /^\d/.test(unit) || !isWord(unit) || /e-?\d+$|\/\d+$/.test(text) ? ' ' : '';
    return { is: 'quantity', text: `${text}${space}${unit}`, value, unit };
  });
const plainNumber: fc.Arbitrary<Tree> = numbers
  // 3/8 alone is a division, and 9 1/2 of another number a sum: in brackets.
  .map(({ text, value }): Tree => ({ is: 'number', text: text.includes('/') ? `(${text})` : text, value }));
/** A tree whose parts often fit: operands of a sum share a unit, or one of the same kind. */
export const trees: fc.Arbitrary<Tree> = fc.constantFrom(...spellings).chain((unit) => {
  const kinds = meaningsOf(unit).map(({ dimension }) => dimension);
  const alike = spellings.filter((other) => meaningsOf(other).some(({ dimension }) => kinds.includes(dimension)));
  const ofKind = fc.oneof(quantity(unit), fc.constantFrom(...alike).chain(quantity));
  return fc.letrec<{ tree: Tree; fitting: Tree }>((tie) => ({
    fitting: fc.oneof(
      { maxDepth: 2, depthSize: 'small' },
      ofKind,
      fc
        .tuple(fc.constantFrom('+' as const, '-' as const), tie('fitting'), tie('fitting'))
        .map(([operator, a, b]): Tree => ({ is: 'operation', operator, a, b })),
      fc
        .tuple(fc.constantFrom('*' as const, '/' as const), tie('fitting'), plainNumber)
        .map(([operator, a, b]): Tree => ({ is: 'operation', operator, a, b })),
      fc
        .tuple(fc.constantFrom('min', 'max', 'sum', 'mean', 'median', 'hypot'), fc.array(tie('fitting'), { minLength: 1, maxLength: 3 }))
        .map(([name, given]): Tree => ({ is: 'call', name, given })),
      tie('fitting').map((of): Tree => ({ is: 'negative', of })),
    ),
    tree: fc.oneof(
      { maxDepth: 2, depthSize: 'small' },
      { weight: 3, arbitrary: tie('fitting') },
      plainNumber,
      fc.constantFrom(...spellings).chain(quantity),
      fc
        .tuple(fc.constantFrom('+' as const, '-' as const, '*' as const, '/' as const), tie('tree'), tie('tree'))
        .map(([operator, a, b]): Tree => ({ is: 'operation', operator, a, b })),
      fc.tuple(tie('tree'), fc.constantFrom('2', '3', '0.5', '-1')).map(
        ([a, text]): Tree => ({
          is: 'operation',
          operator: '^',
          a,
          b: { is: 'number', text: text === '-1' ? '(-1)' : text, value: Number(text) },
        }),
      ),
      fc.tuple(fc.constantFrom(...functionNames), fc.array(tie('tree'), { minLength: 1, maxLength: 2 })).map(
        ([name, given]): Tree => ({
          is: 'call',
          name,
          given: /^(?:atan2|min|max|sum|mean|median|hypot)$/.test(name) ? given : given.slice(0, 1),
        }),
      ),
    ),
  })).tree;
});
