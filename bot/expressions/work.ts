/** Working a sum out: parsed by mathjs, walked by us. Loaded by the thread alone (mathjs takes a quarter of a second and some 60 MB), and by tests. */
// The edition for plain numbers: no matrices, no units of its own, less to get wrong.
import { create, type MathNode, parseDependencies } from 'mathjs/number';
import { deepestBrackets, type Sum, type WorkedOut } from '../../commands/sums/sum.js';
import { evaluate } from './evaluate.js';

if (parseDependencies === undefined) throw new Error('mathjs has no parser');
// The parser alone: what could run, import or evaluate anything is not even made.
const { parse } = create(parseDependencies, {});

/** How deep the brackets are nested at most. */
function depthOf(text: string): number {
  let depth = 0;
  let deepest = 0;
  for (const character of text) {
    if (character === '(') deepest = Math.max(deepest, ++depth);
    else if (character === ')') depth--;
  }
  return deepest;
}
function parsed(text: string): MathNode | undefined {
  try {
    return parse(text);
  } catch (problem) {
    // The parser's own sentence quotes our names and counts characters that the member did not type.
    if (problem instanceof SyntaxError) return undefined;
    throw problem;
  }
}
export function work({ text, names }: Sum): WorkedOut {
  if (depthOf(text) > 2 * deepestBrackets) return { refused: `Those brackets are nested more than ${deepestBrackets} deep.` };
  const tree = parsed(text);
  return tree === undefined ? { refused: 'That sum does not read as one.' } : evaluate(tree, names);
}
