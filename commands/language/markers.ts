/** Words that part a line: with, versus, at, over, to, for, and. */
import type { Token } from '../scan.js';
import { between, forWords, isGrammar, joints, stem, withWords } from '../words.js';
import type { Atom } from './atom.js';
import type { Vocabulary } from './vocabulary.js';

/** The part that a word plays. */
export interface Marker {
  readonly atom: Atom;
  /** How many tokens it takes. */
  readonly length: number;
}
/** The line that a word stands in. */
interface Line {
  readonly tokens: readonly Token[];
  readonly vocabulary: Vocabulary;
  /** Whether something is sought, so that `for` brings the goal. */
  readonly find: boolean;
}
const isTold = (token: Token | undefined): boolean => token?.is === 'amount' || token?.is === 'size' || token?.is === 'rim';
/** The part that a word at a place plays, if it plays one. */
export function markerAt(text: string, n: number, { tokens, vocabulary, find }: Line): Marker | undefined {
  const put = (atom: Atom, length = 1): Marker => ({ atom, length });
  const nextToken = tokens[n + 1];
  const next = nextToken?.is === 'word' ? nextToken.text : undefined;
  const previous = tokens[n - 1];
  if ((text === 'with' || text === 'without') && withinName(tokens, n, vocabulary)) return put({ is: 'word', word: text, typed: text });
  if (text === 'without') return put({ is: 'with', without: true });
  if (text === 'if') return next === 'i' || next === 'we' ? put({ is: 'with', without: false }, 2) : put({ is: 'with', without: false });
  if (withWords.has(text)) return put({ is: 'with', without: false });
  if (between.has(text)) {
    const two =
      (text === 'instead' && next === 'of') ||
      (text === 'compared' && (next === 'to' || next === 'with')) ||
      (text === 'rather' && next === 'than');
    return put({ is: 'between', word: text }, two ? 2 : 1);
  }
  if (text === 'at') return put({ is: 'at' });
  if (text === 'over' && nextToken?.is === 'amount') return put({ is: 'over' });
  if (text === 'after' && nextToken?.is === 'amount') return put({ is: 'over' });
  if (text === 'rising' && next === 'to') return put({ is: 'to', colon: false }, 2);
  if (text === 'from') return put({ is: 'from' });
  const soon = isTold(nextToken) || isTold(tokens[n + 2]);
  if (text === 'to' && ((nextToken?.is === 'amount' && previous?.is === 'amount') || (soon && moves(tokens, n))))
    return put({ is: 'to', colon: false });
  if (find && forWords.has(text)) return put({ is: 'for', word: text });
  if (joints.has(text)) return put({ is: 'break', joint: 'and' });
  return undefined;
}
/** `roll stiffness with tire`: the word is part of a name, and no amount follows that it could bring. */
function withinName(tokens: readonly Token[], n: number, vocabulary: Vocabulary): boolean {
  const stems = (some: readonly Token[]) =>
    some.flatMap((token) => (token.is === 'word' && !isGrammar(token.text) ? [stem(token.text)] : []));
  const before = stems(tokens.slice(0, n));
  const rest = tokens.slice(n + 1);
  return vocabulary.withIn.some((name) => {
    const size = name.before.length;
    if (before.length < size || !name.before.every((word, k) => before[before.length - size + k] === word)) return false;
    const length = name.after.length;
    const next = rest[length];
    return (
      stems(rest.slice(0, length)).join(' ') === name.after.join(' ') &&
      !(next?.is === 'amount' || next?.is === 'size' || next?.is === 'rim')
    );
  });
}
/** Whether a `from` with an amount stands before a token: `from the 9 in hole to the 8 in hole`. */
function moves(tokens: readonly Token[], n: number): boolean {
  const from = tokens.findIndex((token) => token.is === 'word' && token.text === 'from');
  return from >= 0 && from < n && n - from <= 5 && tokens.slice(from, n).some(isTold);
}
