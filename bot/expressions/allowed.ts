/**
 * What an expression may hold. The parsed tree is walked before anything runs: what is not on the lists here is refused. The same walk works out the
 * dimension of the result, so that a length is never added to a rate.
 */
import type { ConstantNode, FunctionNode, MathNode, OperatorNode, ParenthesisNode, SymbolNode } from 'mathjs';
import { type Base, combine, dimensionInWords, isPlain, plain, sameBase, scaled, unitBases } from './quantities.js';

/** The expression is refused, with one sentence for the member. */
export class NotAllowed extends Error {}

const mostNodes = 200;
/** What each function does to the dimension of what it is given, and how many it takes. */
interface FunctionRule {
  readonly gives: 'same' | 'plain' | 'half' | 'third' | 'angle';
  readonly takes: readonly [number, number];
}
const ruled = (gives: FunctionRule['gives'], least: number, most: number, ...names: readonly string[]): [string, FunctionRule][] =>
  names.map((name) => [name, { gives, takes: [least, most] }]);
const functions: ReadonlyMap<string, FunctionRule> = new Map([
  ...ruled('same', 1, 1, 'abs'),
  ...ruled('same', 1, 50, 'min', 'max', 'sum', 'mean', 'median', 'hypot'),
  ...ruled('plain', 1, 1, 'sin', 'cos', 'tan', 'asin', 'acos', 'atan', 'exp', 'log10', 'log2', 'ceil', 'floor', 'sign'),
  ...ruled('plain', 1, 2, 'log', 'round'),
  ...ruled('angle', 2, 2, 'atan2'),
  ...ruled('half', 1, 1, 'sqrt'),
  ...ruled('third', 1, 1, 'cbrt'),
]);
export const allowedFunctions: readonly string[] = [...functions.keys()];
const constants: ReadonlySet<string> = new Set(['pi', 'e', 'tau']);

/** What a symbol stands for, as far as the walk needs it. */
export type Names = ReadonlyMap<string, { readonly base: Base; readonly said: string }>;

// A node says its kind by `type`, which mathjs's declarations leave a string.
const is =
  <N extends MathNode>(type: string) =>
  (node: MathNode): node is N =>
    node.type === type;
const isConstant = is<ConstantNode>('ConstantNode');
const isSymbol = is<SymbolNode>('SymbolNode');
const isOperator = is<OperatorNode>('OperatorNode');
const isParenthesis = is<ParenthesisNode>('ParenthesisNode');
const isFunction = is<FunctionNode>('FunctionNode');

/** Walks a tree, or throws NotAllowed. `numberOf` works out an exponent: a part that was walked and is a plain number. */
export function dimensionOf(tree: MathNode, names: Names, numberOf: (node: MathNode) => number): Base {
  let nodes = 0;
  const alike = (bases: readonly Base[], doing: string): Base => {
    const [first = plain, ...others] = bases;
    for (const other of others)
      if (!sameBase(first, other))
        throw new NotAllowed(`${capital(dimensionInWords(other))} can't be ${doing} ${dimensionInWords(first)}.`);
    return first;
  };
  const wantPlain = (base: Base, by: string): void => {
    if (!isPlain(base)) throw new NotAllowed(`${by} works on plain numbers, and ${dimensionInWords(base)} came; divide by a unit first.`);
  };

  const ofOperator = (node: OperatorNode): Base => {
    const fn: string = node.fn;
    const [a, b] = node.args;
    if (a === undefined || node.args.length > 2) throw new NotAllowed(`"${node.op}" isn't part of a sum here.`);
    if (b === undefined) {
      if (fn !== 'unaryMinus' && fn !== 'unaryPlus') throw new NotAllowed(`"${node.op}" isn't part of a sum here.`);
      return walk(a);
    }
    if (fn === 'multiply' || fn === 'divide') return combine(walk(a), walk(b), fn === 'multiply' ? 1 : -1);
    if (fn === 'add') return alike([walk(a), walk(b)], 'added to');
    if (fn === 'subtract') return alike([walk(a), walk(b)], 'taken from');
    if (fn === 'mod') return alike([walk(a), walk(b)], 'the divisor of');
    if (fn !== 'pow') throw new NotAllowed(`"${node.op}" isn't part of a sum here.`);
    const base = walk(a);
    wantPlain(walk(b), 'An exponent');
    return isPlain(base) ? base : scaled(base, numberOf(b));
  };
  const ofFunction = (node: FunctionNode): Base => {
    const called: MathNode = node.fn;
    const name = isSymbol(called) ? called.name : undefined;
    const rule = name === undefined ? undefined : functions.get(name);
    if (name === undefined || rule === undefined)
      throw new NotAllowed(
        `${name === undefined ? 'That' : `"${said(name)}"`} isn't a function that a sum can use: ${allowedFunctions.join(', ')}.`,
      );
    const [least, most] = rule.takes;
    if (node.args.length < least || node.args.length > most)
      throw new NotAllowed(
        `${name} takes ${least === most ? least : `${least} to ${most}`} ${most === 1 ? 'number' : 'numbers'}, and ${node.args.length} came.`,
      );
    const bases = node.args.map(walk);
    if (rule.gives === 'plain') for (const base of bases) wantPlain(base, name);
    const common = alike(bases, `put beside, in ${name},`);
    if (rule.gives === 'half') return scaled(common, 1 / 2);
    if (rule.gives === 'third') return scaled(common, 1 / 3);
    return rule.gives === 'same' ? common : plain;
  };
  const said = (symbol: string): string => names.get(symbol)?.said ?? symbol;
  const walk = (node: MathNode): Base => {
    if (++nodes > mostNodes) throw new NotAllowed(`That sum has more than ${mostNodes} parts.`);
    if (isConstant(node)) {
      const value: unknown = node.value;
      if (typeof value !== 'number') throw new NotAllowed('A sum holds numbers, names and units only, and a text came.');
      if (!Number.isFinite(value)) throw new NotAllowed('One of those numbers is too large.');
      return plain;
    }
    if (isSymbol(node)) {
      if (constants.has(node.name)) return plain;
      const base = names.get(node.name)?.base ?? unitBases.get(node.name);
      if (base === undefined) throw new NotAllowed(`"${node.name}" isn't a number, a unit or a figure that I know.`);
      return base;
    }
    if (isParenthesis(node)) return walk(node.content);
    if (isOperator(node)) return ofOperator(node);
    if (isFunction(node)) return ofFunction(node);
    throw new NotAllowed('A sum holds numbers, names, + - * / ^, brackets and functions only.');
  };
  return walk(tree);
}
const capital = (text: string): string => text.slice(0, 1).toUpperCase() + text.slice(1);
