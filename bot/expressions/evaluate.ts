/**
 * What an expression comes to. The parsed tree is walked by this program alone, and what is not on its lists is refused: nothing of the parser's own is ever
 * run. A name that can mean several things is carried on in all its meanings, as far as they make sense together.
 */
import type { ConstantNode, FunctionNode, MathNode, OperatorNode, ParenthesisNode, SymbolNode } from 'mathjs';
import { plain } from '../../commands/sums/base.js';
import { constants, functions, type Sum, type Worked, type WorkedOut } from '../../commands/sums/sum.js';
import { computed } from './functions.js';
import { binary, unary } from './operators.js';
import { isPlace, made, notFinite, scaleOnly, type Tried, type Value } from './value.js';

/** The expression is refused, with one sentence for the member. */
class NotAllowed extends Error {}

const mostNodes = 200;
const mostWays = 32;
const constantValues: Readonly<Record<string, number>> = { pi: Math.PI, e: Math.E, tau: 2 * Math.PI };

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

/** Those that make sense, each kind once; the first sentence of those that don't, when none does. */
function sensible(tried: readonly Tried[]): readonly Value[] {
  const ways = new Map<string, Value>();
  let refused: string | undefined;
  for (const one of tried) {
    if (typeof one === 'string') refused ??= one;
    else {
      const key = `${one.base.map((exponent) => exponent.toFixed(6)).join()}|${one.points}|${one.percent}|${one.value.toPrecision(12)}`;
      if (!ways.has(key)) ways.set(key, one);
    }
  }
  if (ways.size === 0) throw new NotAllowed(refused ?? notFinite);
  if (ways.size > mostWays)
    throw new NotAllowed('Too many of those units can mean several things; write them out, such as lbf for a force, or take fewer.');
  return [...ways.values()];
}

class Walk {
  readonly #names: Sum['names'];
  #nodes = 0;
  constructor(names: Sum['names']) {
    this.#names = names;
  }
  of(node: MathNode): readonly Value[] {
    if (++this.#nodes > mostNodes) throw new NotAllowed(`That sum has more than ${mostNodes} parts.`);
    if (isConstant(node)) {
      const value: unknown = node.value;
      if (typeof value !== 'number') throw new NotAllowed('A sum holds numbers, names and units only, and a text came.');
      if (!Number.isFinite(value)) throw new NotAllowed('One of those numbers is too large.');
      return sensible([made(value, plain, [])]);
    }
    if (isSymbol(node)) return this.#symbol(node.name);
    if (isParenthesis(node)) return this.of(node.content);
    if (isOperator(node)) return this.#operator(node);
    if (isFunction(node)) return this.#function(node);
    throw new NotAllowed('A sum holds numbers, names, + - * / ^, brackets and functions only.');
  }
  #symbol(name: string): readonly Value[] {
    if (constants.has(name)) return sensible([made(constantValues[name] ?? Number.NaN, plain, [])]);
    const named = this.#names.get(name);
    if (named === undefined) throw new NotAllowed(`"${name}" isn't a number, a unit or a figure that I know.`);
    return sensible(
      named.meant.map(({ si, base, points, difference, percent = false }, at): Tried => {
        if (!Number.isFinite(si)) return 'One of those numbers is too large.';
        const value: Value = { value: si, base, points, percent, assumed: [], meant: [[name, at]] };
        return difference === undefined ? value : { ...value, difference };
      }),
    );
  }
  #operator(node: OperatorNode): readonly Value[] {
    const fn: string = node.fn;
    const [a, b] = node.args;
    const one = b === undefined ? unary.get(fn) : undefined;
    const two = b === undefined ? undefined : binary.get(fn);
    if (a === undefined || node.args.length > 2 || (!one && !two)) throw new NotAllowed(`"${node.op}" isn't part of a sum here.`);
    if (one) return sensible(this.of(a).map(one));
    const [first, second] = [this.of(a), b === undefined ? [] : this.of(b)];
    return sensible(first.flatMap((x) => second.flatMap((y) => two?.(x, y) ?? [])));
  }
  #function(node: FunctionNode): readonly Value[] {
    const called: MathNode = node.fn;
    const name = isSymbol(called) ? called.name : '';
    const takes = functions.get(name);
    const compute = computed.get(name);
    if (takes === undefined || compute === undefined)
      throw new NotAllowed(`That isn't a function that a sum can use: ${[...functions.keys()].join(', ')}.`);
    const [least, most] = takes;
    if (node.args.length < least || node.args.length > most)
      throw new NotAllowed(
        `${name} takes ${least === most ? least : `${least} to ${most}`} ${most === 1 ? 'number' : 'numbers'}, and ${node.args.length} came.`,
      );
    const [first = [], ...others] = node.args.map((arg) => this.of(arg));
    // Each meaning of the first goes with the likeliest of the others that make sense beside it.
    return sensible(
      first.map((x) => compute([x, ...others.map((ways) => ways.find((y) => sameKind(x, y)) ?? ways[0]).filter((y) => y !== undefined)])),
    );
  }
}
const sameKind = (a: Value, b: Value): boolean => a.points === b.points && a.base.every((exponent, at) => exponent === b.base[at]);

/** All ways that make sense, or the sentence that refuses the sum. @throws nothing else than a mistake of ours would throw. */
export function evaluate(tree: MathNode, names: Sum['names']): WorkedOut {
  try {
    const ways = sensible(
      // A temperature that was halved or doubled on the way is none.
      new Walk(names).of(tree).map((one) => (isPlace(one) && Math.abs(one.points - 1) > 1e-9 ? scaleOnly : one)),
    ).map(
      ({ value, base, points, percent, assumed, meant }): Worked => ({ value, base, points, percent, assumed, meaning: new Map(meant) }),
    );
    const [first, ...others] = ways;
    return first === undefined ? { refused: notFinite } : { ways: [first, ...others] };
  } catch (problem) {
    if (problem instanceof NotAllowed) return { refused: problem.message };
    throw problem;
  }
}
