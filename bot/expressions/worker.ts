/** The thread that works sums out. mathjs is loaded here and nowhere else: it takes a quarter of a second and some 60 MB. */
import { parentPort } from 'node:worker_threads';
// The edition for plain numbers: no matrices, no units of its own, less to get wrong.
import { all, create, type MathNode } from 'mathjs/number';
import { dimensionOf, NotAllowed } from './allowed.js';
import { baseOfUnit, unitBases, unitOf } from './quantities.js';
import { type Question, questionSchema, type Worked } from './question.js';

if (all === undefined) throw new Error('mathjs has no functions');
const math = create(all, {});
const { parse } = math;
const off = (name: string) => (): never => {
  throw new NotAllowed(`"${name}" isn't a function that a sum can use.`);
};
// The walk lets none of these through; this is the second wall.
const dangerous = [
  'import',
  'createUnit',
  'reviver',
  'evaluate',
  'parse',
  'simplify',
  'derivative',
  'resolve',
  'compile',
  'parser',
  'chain',
  'config',
  'help',
];
math.import(Object.fromEntries(dangerous.map((name) => [name, off(name)])), { override: true });

function work({ text, names }: Question): Worked {
  const scope = new Map<string, number>([...unitBases.keys()].map((unit) => [unit, 1]));
  for (const [name, { si }] of names) scope.set(name, si);
  const numberOf = (node: MathNode): number => {
    const value: unknown = node.compile().evaluate(scope);
    if (typeof value !== 'number' || !Number.isFinite(value))
      throw new NotAllowed('That has no finite answer: a division by zero, or a root or logarithm of less than zero.');
    return value;
  };
  try {
    const tree = parse(text);
    const known = new Map([...names].map(([name, { unit, said }]) => [name, { base: baseOfUnit(unit), said }]));
    const base = dimensionOf(tree, known, numberOf);
    return { value: numberOf(tree), unit: unitOf(base), base };
  } catch (error) {
    if (error instanceof NotAllowed) return { refused: error.message };
    // mathjs's own sentence quotes our identifiers and counts characters that the member did not type.
    if (error instanceof SyntaxError) return { refused: 'That sum does not read as one; try: calc 2 * 450 lb/in * 0.65^2' };
    throw error;
  }
}

const port = parentPort;
if (port === null) throw new Error('this file runs as a thread');
port.on('message', (message: unknown) => port.postMessage(work(questionSchema.parse(message))));
port.postMessage('ready');
