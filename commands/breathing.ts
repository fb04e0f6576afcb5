/** Dear work in pieces: between figures, points and candidates a command awaits a breath, and whoever else waits has a turn. */
import type { InPieces } from '../core/pieces.js';

/** Resolves when it is this message's turn again. @throws OutOfTime */
export type Breathe = () => Promise<void>;

/** The message has had all the work that one may ask for. Whoever awaits a breath lets it pass: the line ends, and nothing of it is kept. */
export class OutOfTime extends Error {
  override readonly name = 'OutOfTime';
  constructor() {
    super('the work that one message may ask for is used up');
  }
}
/** What `take` makes of each, in their order, a breath before each. */
export async function oneByOne<T, R>(all: Iterable<T>, breathe: Breathe, take: (one: T) => R | Promise<R>): Promise<R[]> {
  const taken: R[] = [];
  for (const one of all) {
    await breathe();
    taken.push(await take(one));
  }
  return taken;
}
/** What the core works out in pieces, a breath between each two. */
export async function inPieces<T>(work: InPieces<T>, breathe: Breathe): Promise<T> {
  for (;;) {
    const step = work.next();
    if (step.done) return step.value;
    await breathe();
  }
}
